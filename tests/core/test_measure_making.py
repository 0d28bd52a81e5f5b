"""A frozen value that is made quickly is the same value, as well locked as any other."""

import copy
import inspect
import pickle
from dataclasses import FrozenInstanceError, dataclass, field, replace
from typing import Any

import pytest

from casewright.measure.findings import Finding, Verdict
from casewright.measure.making import changer, maker, quickly_made
from casewright.pieces.layout.parts import Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Slow:
    """As the library makes it."""

    width: float
    name: str = "board"
    marks: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        if self.width <= 0:
            raise ValueError("no width")


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Quick:
    """The same, made quickly."""

    width: float
    name: str = "board"
    marks: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        if self.width <= 0:
            raise ValueError("no width")


@pytest.mark.parametrize(
    "given", [{"width": 2.0}, {"width": 2.0, "name": "leg"}, {"width": 1.5, "marks": ["A"]}]
)
def test_it_has_the_fields_and_defaults_that_the_library_gives(given: dict[str, Any]) -> None:
    slow, quick = Slow(**given), Quick(**given)

    assert type(quick) is Quick
    assert repr(quick) == repr(slow).replace("Slow", "Quick")
    assert quick == replace(quick) == copy.deepcopy(quick)
    assert quick != replace(quick, width=9.0)


def test_each_has_its_own_of_what_is_made_by_default() -> None:
    Quick(width=1.0).marks.append("A")

    assert Quick(width=1.0).marks == []


def test_nobody_changes_it() -> None:
    quick = Quick(width=1.0)

    with pytest.raises(FrozenInstanceError):
        quick.width = 2.0  # type: ignore[misc] # refused, which is what is tried
    with pytest.raises(FrozenInstanceError):
        del quick.width


def test_it_refuses_what_it_would_refuse_otherwise() -> None:
    with pytest.raises(ValueError, match="no width"):
        Quick(width=0.0)


@pytest.mark.parametrize("given", [{}, {"width": 1.0, "depth": 2.0}])
def test_it_takes_its_own_fields_and_no_others(given: dict[str, Any]) -> None:
    with pytest.raises(TypeError):
        Quick(**given)
    with pytest.raises(TypeError):
        Quick(1.0)  # type: ignore[misc] # by name only, which is what is tried


def test_its_fields_are_asked_for_as_the_library_asks() -> None:
    slow, quick = (inspect.signature(kind).parameters for kind in (Slow, Quick))

    assert [(each.name, each.kind) for each in quick.values()] == [
        (each.name, each.kind) for each in slow.values()
    ]


new_quick = maker(Quick)


@pytest.mark.parametrize(
    "given", [{"width": 2.0}, {"width": 2.0, "name": "leg"}, {"width": 1.5, "marks": ["A"]}]
)
def test_a_maker_makes_the_same_value_as_its_kind_and_as_well_locked(given: dict[str, Any]) -> None:
    made = new_quick(**given)

    assert type(made) is Quick
    assert made == Quick(**given)
    with pytest.raises(FrozenInstanceError):
        made.width = 3.0  # type: ignore[misc] # refused, which is what is tried


def test_a_maker_refuses_what_its_kind_refuses() -> None:
    with pytest.raises(ValueError, match="no width"):
        new_quick(width=0.0)
    with pytest.raises(TypeError):
        new_quick(width=1.0, depth=2.0)  # type: ignore[call-arg] # a field that it has not
    with pytest.raises(TypeError):
        new_quick(1.0)  # type: ignore[misc] # by name only, which is what is tried


changed_quick = changer(Quick)


def test_a_changed_value_is_another_one_and_the_first_stays() -> None:
    quick = Quick(width=2.0, marks=["A"])

    changed = changed_quick(quick, name="leg")

    assert type(changed) is Quick
    assert changed == replace(quick, name="leg")
    assert quick.name == "board"
    with pytest.raises(FrozenInstanceError):
        changed.name = "rail"  # type: ignore[misc] # refused, which is what is tried


def test_what_a_kind_refuses_no_change_makes() -> None:
    with pytest.raises(ValueError, match="no width"):
        changed_quick(Quick(width=2.0), width=0.0)
    with pytest.raises(TypeError):
        changed_quick(Quick(width=2.0), depth=1.0)


def test_a_kind_may_take_its_fields_in_order() -> None:
    box = Box(0.0, 1.0, 2.0, 3.0, 4.0, 5.0)

    assert box.height == 5.0


def test_it_survives_being_packed_and_hashed() -> None:
    found = Finding(rule="lap", verdict=Verdict.PASS, message="it holds", found=0.25)

    assert pickle.loads(pickle.dumps(found)) == found  # noqa: S301 - our own bytes
    assert hash(found) == hash(replace(found))
