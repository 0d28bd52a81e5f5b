"""Why a figure is what it is: the explanation comes from the rule's own docstring and the ledger."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Annotated

import pytest

from casewright.measure import units
from casewright.measure.docstrings import read_docstring, units_in, without_unit
from casewright.measure.findings import Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.lengths import LengthUnit
from casewright.measure.printing import WRITTEN, Style, show_number, show_value, unit_of
from casewright.measure.units import (
    BoardFeet,
    Cents,
    Count,
    Fahrenheit,
    Hours,
    Inches,
    Number,
    Percent,
    PerPercent,
    Pounds,
    Unit,
)
from casewright.measure.working import NoSuchFigure, explain, find

METRIC = Style(length=LengthUnit.MILLIMETRE, symbol="€")


def shoulder(side: Inches, rabbet: Inches, proud: Inches = 0.0) -> Inches:
    """What is left of the side after the rabbet.

    A second paragraph, which is not part of any section.

    Rule: side - rabbet
        - proud

    Args:
        side: thickness of the side [in]
        rabbet: depth of the rabbet,
            measured twice: once at each end [in]
        proud: how far the side stands proud [in]

    Returns:
        The gauge setting [in]

    Raises:
        ValueError: nothing is left.

    Source: geometry of the joint,
        and common practice.
    """
    return side - rabbet - proud


def bill(price: Cents, boards: tuple[BoardFeet, ...], ledger: Ledger, wood: str = "walnut") -> Cents:
    """What the boards come to.

    Args:
        price: price of a board foot [cent]
        boards: each board [bd ft]
        ledger: where the working is kept
        wood: the species

    Source: common practice.
    """
    return round(price * sum(boards))


def undocumented(size):
    return size * 2


@pytest.fixture
def ledger() -> Ledger:
    """A drawer's working: a given side, a shoulder made of it, and another drawer beside."""
    ledger = Ledger()
    drawer = ledger.under("A.R5-1")
    side = drawer.given("side", 0.5, "the unit file")
    drawer.take("gauge_2", shoulder, rabbet=0.05, side=side)
    ledger.under("A.R5-2").take("gauge_2", shoulder, side=0.5, rabbet=0.125)
    price = ledger.given("price", 1250, "the shop's settings")
    boards = (ledger.given("first_board", 4.5, "measured"), 6.0)
    ledger.take("bill", bill, price=price, boards=boards, ledger=ledger)
    ledger.take("twice", undocumented, size=2.0)
    ledger.given("unused", 9.0, "a default")
    ledger.given("season", 9.0, "a default", Percent)
    return ledger


def test_a_figure_is_explained_by_its_rule(ledger):
    explained = explain(ledger, "A.R5-1.gauge_2")

    assert explained.figure == "A.R5-1.gauge_2"
    assert explained.value == "≈29/64 in (0.45)"
    assert explained.what == "What is left of the side after the rabbet."
    assert explained.rule == "side - rabbet - proud"
    assert explained.source == "geometry of the joint, and common practice."
    assert explained.basis == ""


def test_what_went_in_stands_in_the_order_of_the_rule_with_its_meaning_and_origin(ledger):
    side, rabbet, proud = explain(ledger, "A.R5-1.gauge_2").inputs

    assert (side.name, side.meaning, side.value) == ("side", "thickness of the side", "1/2 in")
    assert side.origin == "A.R5-1.side"
    assert rabbet.meaning == "depth of the rabbet, measured twice: once at each end"
    assert rabbet.value == "≈3/64 in (0.05)"
    assert rabbet.origin == ""
    assert (proud.name, proud.value) == ("proud", "0 in")


def test_a_given_figure_says_who_gave_it_in_the_unit_of_its_first_use(ledger):
    explained = explain(ledger, "A.R5-1.side")

    assert explained.value == "1/2 in"
    assert explained.basis == "the unit file"
    assert explained.inputs == ()
    assert explain(ledger, "price").value == "$12.50"


def test_a_given_figure_that_no_rule_used_is_a_bare_number(ledger):
    assert explain(ledger, "unused").value == "9"


def test_a_given_figure_can_say_its_own_unit(ledger):
    assert explain(ledger, "season").value == "9%"


def test_a_shop_that_works_in_millimetres_reads_millimetres_and_its_own_money(ledger):
    assert explain(ledger, "A.R5-2.gauge_2", METRIC).value == "≈9.5 mm (9.525)"
    assert explain(ledger, "bill", METRIC).value == "€131.25"


def test_a_list_shows_its_members_and_the_figures_that_they_came_from(ledger):
    price, boards, wood = explain(ledger, "bill").inputs

    assert (price.value, price.origin) == ("$12.50", "price")
    assert (boards.value, boards.origin) == ("4.5 bd ft, 6 bd ft", "first_board")
    assert (wood.value, wood.origin) == ("walnut", "")


def test_a_rule_without_a_docstring_still_shows_its_numbers(ledger):
    explained = explain(ledger, "twice")

    assert (explained.value, explained.what, explained.source) == ("4", "", "")
    assert explained.inputs[0].value == "2"


def test_a_figure_that_is_not_there_is_refused_with_the_nearest(ledger):
    with pytest.raises(NoSuchFigure, match=r"no figure “A\.R5-1\.guage_2” .* Did you mean A\.R5-1\.gauge_2"):
        explain(ledger, "A.R5-1.guage_2")


def test_a_figure_like_none_of_them_is_refused_without_a_guess(ledger):
    with pytest.raises(NoSuchFigure, match=r"“zzzzzz” in this working\.$"):
        explain(ledger, "zzzzzz")


@pytest.mark.parametrize(
    ("pattern", "figures"),
    [
        ("A.R5-1.side", ("A.R5-1.side",)),
        ("A.R5-1", ("A.R5-1.side", "A.R5-1.gauge_2")),
        ("A.R5-1.", ("A.R5-1.side", "A.R5-1.gauge_2")),
        ("A", ("A.R5-1.side", "A.R5-1.gauge_2", "A.R5-2.gauge_2")),
        ("gauge_2", ("A.R5-1.gauge_2", "A.R5-2.gauge_2")),
        ("guage_2", ("A.R5-1.gauge_2", "A.R5-2.gauge_2")),
        (" price ", ("price",)),
        ("zzzzzz", ()),
        ("", ()),
        ("x" * 1_000_000, ()),
    ],
)
def test_a_name_finds_the_figures_that_it_may_mean(ledger, pattern, figures):
    assert find(ledger, pattern) == figures


def test_a_docstring_is_read_section_by_section():
    described = read_docstring(shoulder)

    assert described.summary == "What is left of the side after the rabbet."
    assert list(described.args) == ["side", "rabbet", "proud"]
    assert described.returns == "The gauge setting [in]"
    assert described.raises == {"ValueError": "nothing is left."}


def test_a_function_without_a_docstring_has_empty_sections():
    assert read_docstring(undocumented).summary == ""
    assert read_docstring(undocumented).args == {}


def test_prose_after_a_section_is_not_part_of_it():
    def documented() -> None:
        """Summary.

        Source: a handbook.

        Prose that follows.
        """

    assert read_docstring(documented).source == "a handbook."


def test_the_unit_at_the_end_of_a_description_is_found_and_can_be_left_out():
    assert units_in("width of the pin [in] and its time [min]") == ("in", "min")
    assert without_unit("width of the pin [in]") == "width of the pin"
    assert without_unit("width [in] of the pin") == "width [in] of the pin"


class Heavy:
    """Something that prints itself on two lines."""

    def __str__(self) -> str:
        return "two\nlines"


@dataclass(frozen=True)
class Board:
    """A board."""

    width: Inches
    clear_faces: Count


@dataclass(frozen=True)
class Species:
    """A wood."""

    name: str
    movement: PerPercent


@pytest.mark.parametrize(
    ("value", "kind", "shown"),
    [
        (7 + 13 / 32, Inches, "7-13/32 in"),
        (8.41, Inches, "≈8-13/32 in (8.41)"),
        (8.41, Inches | None, "≈8-13/32 in (8.41)"),
        (Fraction(13, 16), Inches, "13/16 in"),
        (float("nan"), Inches, "NaN in"),
        (None, Inches | None, "none"),
        (12.5, BoardFeet, "12.5 bd ft"),
        (8.0, Percent, "8%"),
        (0.00245, PerPercent, "0.00245 per % moisture"),
        (70.0, Fahrenheit, "70°F"),
        (1234.5, Pounds, "1,234.5 lb"),
        (63.666666, Hours, "63.6667 h"),
        (120582, Cents, "$1,205.82"),
        (12.5, Cents, "12.5 cents"),
        (Decimal("1.15"), Number, "1.15"),
        (7, Count, "7"),
        (3.0, "not a kind at all", "3"),
        (2.0, Annotated[float, Unit("furlong")], "2 furlong"),
        (True, Count, "yes"),
        (False, None, "no"),
        ("walnut", str, "walnut"),
        ("", str, "none"),
        ("two\nlines", str, "two lines"),
        (Heavy(), None, "two lines"),
        (Verdict.CAUTION, Verdict, "caution"),
        ((), tuple[Inches, ...], "none"),
        ((1.0, 0.5), tuple[Inches, ...], "1 in, 1/2 in"),
        ((1.0, 8.0), tuple[Inches, Percent], "1 in, 8%"),
        (((1.0, 0.5), (2.0, 0.5)), tuple[tuple[Inches, Inches], ...] | None, "1 in, 1/2 in, 2 in, 1/2 in"),
        (tuple(range(10)), tuple[Count, ...], "0, 1, 2, 3, 4, 5 and 4 more"),
        ({"oak": 8.0}, Mapping[str, Percent], "oak: 8%"),
        ({"oak": 8.0}, None, "oak: 8"),
        (Board(width=5.5, clear_faces=1), Board, "board (width 5-1/2 in, clear faces 1)"),
        (Species(name="walnut", movement=0.0027), Species, "walnut"),
        (shoulder, None, "shoulder"),
    ],
)
def test_a_value_is_shown_as_a_maker_reads_it(value, kind, shown):
    assert show_value(value, kind) == shown


def test_a_long_value_is_cut_short():
    shown = show_value("walnut " * 100)

    assert len(shown) <= 160
    assert shown.endswith("…")


@pytest.mark.parametrize(
    ("value", "shown"),
    [
        (0.0, "0"),
        (1.5, "1.5"),
        (-2.0, "-2"),
        (0.0000125, "0.0000125"),
        (1234567.8, "1,234,568"),
        (1e21, f"{10**21:,}"),
    ],
)
def test_a_bare_number_has_no_idle_zeros_and_no_powers_of_ten(value, shown):
    assert show_number(value) == shown


ALIASES = [alias for alias in vars(units).values() if unit_of(alias)]


@pytest.mark.parametrize("alias", ALIASES, ids=str)
def test_every_unit_of_the_core_has_a_way_of_writing_it(alias):
    assert unit_of(alias).name in WRITTEN
