"""Every function of the core says what it gives, of what, in which unit, and where its rule comes from."""

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from types import ModuleType
from typing import Annotated, Any, Literal, get_args, get_origin

import pint
import pytest

import casewright
from casewright.measure.docstrings import read_docstring, units_in
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import LengthUnit
from casewright.measure.printing import hints
from casewright.measure.units import Count, Inches, Number, Percent, PerPercent, SquareInches, Unit, registry

ROOMS_OF_FORMULAS = ("measure", "wood", "joinery", "labour", "pricing", "stability")
ROOMS_OF_PIECES = ("pieces", "drawing", "cutting")

IN_WORDS = {
    "sq in": "inch**2",
    "cu in": "inch**3",
    "sq ft": "foot**2",
    "cu ft": "foot**3",
    "bd ft": "board_foot",
    "in-lb": "inch*force_pound",
    "lb per cu ft": "pound/foot**3",
    "lb/cu ft": "pound/foot**3",
    "sq ft per quart": "foot**2/quart",
    "1 per % moisture": "1/percent",
    "percentage points": "percent",
    "1": "dimensionless",
    "in its own unit": "dimensionless",
}
"""Units as the trade writes them; pint reads all the others by itself."""


def modules(*rooms: str) -> Iterator[ModuleType]:
    """Every module of the rooms that are there."""
    for found in pkgutil.walk_packages(casewright.__path__, "casewright."):
        if found.name.split(".")[1] in rooms:
            yield importlib.import_module(found.name)


def public(module: ModuleType) -> Iterator[Any]:
    """The functions and classes that a module makes itself and does not keep to itself."""
    for name, member in vars(module).items():
        made_here = getattr(member, "__module__", None) == module.__name__
        if made_here and not name.startswith("_") and (inspect.isclass(member) or is_function(member)):
            yield member


def is_function(member: object) -> bool:
    """Whether it is a function, if need be inside a cache."""
    return callable(member) and inspect.isfunction(inspect.unwrap(member))


def methods(owner: type) -> Iterator[Any]:
    """The public methods and properties that a class writes itself."""
    for name, member in vars(owner).items():
        function = getattr(member, "fget", None) or getattr(member, "__func__", member)
        if (
            not name.startswith("_")
            and inspect.isfunction(function)
            and function.__module__ == owner.__module__
        ):
            yield function


def named(member: Any) -> str:
    """Where a function or class stands, without the name of the package."""
    return f"{member.__module__.removeprefix('casewright.')}.{member.__qualname__}"


MODULES = list(modules(*ROOMS_OF_FORMULAS, *ROOMS_OF_PIECES))
FORMULAS = [
    member for module in modules(*ROOMS_OF_FORMULAS) for member in public(module) if is_function(member)
]
CLASSES = [member for module in MODULES for member in public(module) if inspect.isclass(member)]
METHODS = [
    method
    for owner in CLASSES
    if owner.__module__.split(".")[1] in ROOMS_OF_FORMULAS
    for method in methods(owner)
]
OF_PIECES = [
    member for module in modules(*ROOMS_OF_PIECES) for member in public(module) if is_function(member)
]


def summary_faults(member: Any) -> list[str]:
    """What is wrong with the first line."""
    summary = read_docstring(member).summary
    return [] if summary.endswith((".", "?")) else [f"the first line is not a whole sentence: “{summary}”"]


def faults(function: Callable[..., object]) -> list[str]:
    """All that is wrong with the docstring and the annotations of a formula."""
    described = read_docstring(function)
    kinds = hints(inspect.unwrap(function))
    return [
        *summary_faults(function),
        *argument_faults(function, described.args),
        *(f"the annotation of {name} cannot be read" for name in described.args if name not in kinds),
        *(
            fault
            for name in described.args
            for fault in quantity_faults(name, kinds.get(name), described.args[name])
        ),
        *quantity_faults("what it returns", kinds.get("return"), described.returns),
        *([] if described.returns or not described.args else return_faults(kinds)),
        *([] if described.source else ["it has no Source"]),
    ]


def return_faults(kinds: Mapping[str, object]) -> list[str]:
    """An answer that is not described; where nothing goes in, the first line has already said it."""
    return ["it does not say what it returns"] if kinds.get("return") not in (None, type(None)) else []


def argument_faults(function: Callable[..., object], described: Mapping[str, str]) -> list[str]:
    """Arguments that are not described, and descriptions without an argument."""
    actual = list(inspect.signature(function).parameters)
    return [] if actual == list(described) else [f"it takes {actual} and describes {list(described)}"]


def quantity_faults(name: str, kind: object, text: str) -> list[str]:
    """A quantity without a unit in its type, or with none or another one in its description."""
    said, unknown = units_said(text)
    typed = list(quantities(kind))
    expected = [registry().Unit(unit.name) for unit in typed if isinstance(unit, Unit)]
    return [
        *(f"{name} is a bare {bare.__name__}" for bare in typed if isinstance(bare, type)),
        *(
            f"{name} is not said to be in {unit}"
            for unit in expected
            if not unit.dimensionless and unit not in said
        ),
        *(f"{name} is said to be in {unit} and is not" for unit in said if expected and unit not in expected),
        *(f"{name} is in “{unit}”, which pint does not know" for unit in unknown if expected),
    ]


def units_said(text: str) -> tuple[list[pint.Unit], list[str]]:
    """The units in brackets, and those brackets that hold none."""
    said, unknown = [], []
    for words in units_in(text):
        try:
            said.append(registry().Unit(IN_WORDS.get(words, words)))
        except (pint.errors.UndefinedUnitError, pint.errors.DefinitionSyntaxError, ValueError):
            unknown.append(words)
    return said, unknown


def quantities(kind: object) -> Iterator[Unit | type]:
    """The unit of every quantity in an annotation, however deep, and every number that has none.

    A choice that offers an exact number is exempt: that is a number as it was typed, before it has a unit. So
    is a literal, which is a name.
    """
    arms = get_args(kind)
    if kind in (float, int):
        yield kind
    elif get_origin(kind) is Annotated:
        units = [mark for mark in arms[1:] if isinstance(mark, Unit)]
        yield from units or quantities(arms[0])
    elif get_origin(kind) is not Literal:
        found = [unit for arm in arms for unit in quantities(arm)]
        exact = Fraction in arms or Decimal in arms
        yield from (unit for unit in found if isinstance(unit, Unit) or not exact)


@pytest.mark.parametrize("function", FORMULAS, ids=named)
def test_a_formula_says_what_it_gives_of_what_in_which_unit_and_whence(function):
    found = faults(function)

    assert not found, "\n".join(found)


@pytest.mark.parametrize("member", [*CLASSES, *METHODS, *OF_PIECES], ids=named)
def test_a_value_and_what_it_can_do_are_described_in_a_sentence(member):
    assert summary_faults(member) == []


@pytest.mark.parametrize("module", MODULES, ids=lambda module: module.__name__)
def test_a_module_says_what_it_is_for(module):
    assert summary_faults(module) == []


def well_described(width: Inches, part: Percent, shop: LengthUnit, ledger: Ledger | None = None) -> Inches:
    """A part of a width.

    Args:
        width: the whole width [in]
        part: how much of it [%]
        shop: the shop's unit
        ledger: where the working is kept

    Returns:
        The part [in]

    Source: common practice.
    """
    return width * part / 100


def as_typed(
    value: float | Decimal, sizes: tuple[tuple[Inches, PerPercent], ...] = (), count: Count = 1
) -> Number:
    """A number as it was typed.

    Args:
        value: what was typed
        sizes: each size and its coefficient [in] [1 per % moisture]
        count: how often

    Returns:
        The number [in its own unit]

    Source: common practice.
    """
    return float(value) * count


@pytest.mark.parametrize("function", [well_described, as_typed])
def test_a_good_docstring_has_no_faults(function):
    assert faults(function) == []


def without_a_full_stop() -> None:
    """A summary

    Source: common practice.
    """


def without_a_source() -> None:
    """A summary."""


def with_an_argument_left_out(width: Inches) -> None:
    """A summary.

    Source: common practice.
    """


def with_an_argument_too_many() -> None:
    """A summary.

    Args:
        width: there is no such argument [in]

    Source: common practice.
    """


def with_bare_numbers(widths: dict[str, tuple[float, ...]], count: int | None) -> None:
    """A summary.

    Args:
        widths: what goes in [in]
        count: how many

    Source: common practice.
    """


def without_its_unit(width: Inches) -> SquareInches:
    """A summary.

    Args:
        width: the width

    Returns:
        The area.

    Source: common practice.
    """
    return width * width


def with_another_unit(width: Inches) -> None:
    """A summary.

    Args:
        width: the width [in] or [mm] or [armful]

    Source: common practice.
    """


def without_annotations(width):
    """A summary.

    Args:
        width: the width [in]

    Source: common practice.
    """


def without_what_it_returns(shop: LengthUnit) -> str:
    """A summary.

    Args:
        shop: the shop's unit

    Source: common practice.
    """
    return shop.value


@pytest.mark.parametrize(
    ("function", "expected"),
    [
        (without_a_full_stop, ["the first line is not a whole sentence: “A summary”"]),
        (without_a_source, ["it has no Source"]),
        (with_an_argument_left_out, ["it takes ['width'] and describes []"]),
        (
            with_an_argument_too_many,
            ["it takes [] and describes ['width']", "the annotation of width cannot be read"],
        ),
        (without_annotations, ["the annotation of width cannot be read"]),
        (with_bare_numbers, ["widths is a bare float", "count is a bare int"]),
        (
            without_its_unit,
            ["width is not said to be in inch", "what it returns is not said to be in inch ** 2"],
        ),
        (
            with_another_unit,
            [
                "width is said to be in millimeter and is not",
                "width is in “armful”, which pint does not know",
            ],
        ),
        (without_what_it_returns, ["it does not say what it returns"]),
    ],
)
def test_a_fault_in_a_docstring_is_found(function, expected):
    assert faults(function) == expected


def test_the_formulas_of_several_rooms_are_read():
    assert {named(member).split(".")[0] for member in FORMULAS} >= {"measure", "wood", "labour"}
