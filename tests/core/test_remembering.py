"""What is kept from one computation to the next is what would be worked out again, working and all."""

from dataclasses import dataclass, replace

import pytest

from casewright.joinery.choose import LOOKS, rank
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.sourced import Sourced
from casewright.measure.ledger import UNKEPT, Figure, Ledger
from casewright.measure.remembering import of_the_same, remembered
from casewright.measure.units import Inches

JOINT = HalfBlind(
    height=8.40625, front=0.8125, lap=0.1875, side=0.5, rabbet=0.0625, half_pin=0.125, pin=0.125, tails=5
)


@dataclass(frozen=True)
class Asked:
    """A question."""

    size: float


def twice(size: Inches) -> Inches:
    """Doubles."""
    return 2 * size


def counted() -> tuple[list[float], object]:
    """A remembered function, and a list of every question that it really worked on."""
    worked: list[float] = []

    def work(asked: Asked, ledger: Ledger) -> float:
        worked.append(asked.size)
        if asked.size < 0:
            raise ValueError("below nothing")
        return ledger.take("double", twice, size=asked.size)

    return worked, remembered(work)


def test_the_same_question_is_worked_out_once_and_written_into_each_ledger() -> None:
    worked, double = counted()
    for ledger in (Ledger(), Ledger()):
        assert double(Asked(3.0), ledger.under("A")) == 6.0
    assert worked == [3.0]
    assert ledger["A.double"].inputs == {"size": 3.0}


def test_another_name_or_another_origin_has_a_working_of_its_own() -> None:
    _, double = counted()
    ledger = Ledger()
    double(Asked(3.0), ledger.under("A"))
    double(Asked(3.0), ledger.under("B"))
    double(Asked(Figure(3.0, "body.width")), ledger.under("C"))
    assert [entry.figure for entry in ledger] == ["A.double", "B.double", "C.double"]
    assert ledger["B.double"].inputs == {"size": 3.0}
    origin = ledger["C.double"].inputs["size"]
    assert isinstance(origin, Figure)
    assert origin.name == "body.width"


def test_the_working_is_owed_until_somebody_reads_it() -> None:
    worked, double = counted()
    ledger = Ledger()
    double(Asked(3.0), ledger.under("A"))
    double(Asked(3.0), ledger.under("B"))
    assert "masses.total" not in ledger
    assert worked == [3.0]
    assert "B.double" in ledger
    assert worked == [3.0, 3.0, 3.0]
    assert len(ledger) == 2
    assert worked == [3.0, 3.0, 3.0]


def test_a_drawer_that_is_alike_has_a_joint_of_its_own_mark() -> None:
    first = half_blind(replace(JOINT, mark="A-R1-1"), Ledger().under("x"))
    second = half_blind(replace(JOINT, mark="A-R1-2"), Ledger().under("y"))
    alone = half_blind(replace(JOINT, mark="A-R1-2"))
    assert second.layout is first.layout
    assert (second.given.mark, second.findings) == ("A-R1-2", alone.findings)
    assert second == alone


def test_what_is_refused_is_refused_each_time_and_nothing_is_kept_without_a_ledger() -> None:
    worked, double = counted()
    for _ in range(2):
        with pytest.raises(ValueError, match="below nothing"):
            double(Asked(-1.0), Ledger().under("A"))
        double(Asked(1.0), UNKEPT)
    assert worked == [-1.0, 1.0, -1.0, 1.0]


def test_what_is_kept_for_an_object_is_never_another_objects() -> None:
    worked: list[float] = []

    @of_the_same(8)
    def size(asked: Asked) -> float:
        worked.append(asked.size)
        return asked.size

    first = Asked(1.0)
    assert (size(first), size(first), size(Asked(1.0))) == (1.0, 1.0, 1.0)
    assert worked == [1.0, 1.0]
    for number in range(40):  # objects that are gone at once: their places in memory are used again
        assert size(Asked(float(number))) == number


def test_a_joint_from_memory_has_the_working_of_one_worked_out() -> None:
    fresh, again = Ledger(), Ledger()
    first, second = half_blind(JOINT, fresh.under("x")), half_blind(JOINT, again.under("x"))
    assert second == first
    assert [(entry.figure, entry.value) for entry in again] == [
        (entry.figure, entry.value) for entry in fresh
    ]
    assert half_blind(JOINT, UNKEPT) == first


def test_a_ranking_follows_the_taste_although_two_tastes_share_a_number() -> None:
    """Looks are kept under one of their numbers; a change in another must not find the old ranking."""
    ask = (6.0, 0.5, 0.5, 0.125, 0.125, 8.0, 1 / 32)
    usual = rank(*ask)
    heavy = replace(LOOKS, width_weight=Sourced(value=80.0, source="a test", basis="from memory"))
    assert hash(heavy) == hash(LOOKS)
    assert [choice.score for choice in rank(*ask, looks=heavy)] != [choice.score for choice in usual]
    assert rank(*ask) == usual
