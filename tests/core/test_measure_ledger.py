"""The ledger: what went in, what came out, and which rule made it."""

import copy
import json
import pickle

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.ledger import UNKEPT, Figure, Ledger, WholeFigure
from casewright.measure.units import Cents, Count, Inches


def what_is_left(whole: Inches, part: Inches = 0.25) -> Inches:
    """What is left of a board."""
    return whole - part


def the_larger(first: Inches, second: Inches) -> Inches:
    """The larger of two."""
    return max(first, second)


def line(price: Cents, count: Count) -> Cents:
    """A line of a bill."""
    return price * count


def both(first: Inches, second: Inches) -> tuple[Inches, Inches]:
    """Two sizes."""
    return first, second


def too_thin(whole: Inches) -> bool:
    """Whether a board is too thin."""
    return whole < 0.5


def stored_and_fetched(figure: object) -> object:
    """A figure after a stay in a store or a trip to another process."""
    return pickle.loads(pickle.dumps(figure))  # noqa: S301 - it was written a moment ago


def test_a_figure_is_kept_with_its_rule_and_all_that_went_in():
    ledger = Ledger()

    left = ledger.take("left", what_is_left, whole=1.0, part=0.125)

    assert left == 0.875
    assert ledger["left"].rule is what_is_left
    assert ledger["left"].inputs == {"whole": 1.0, "part": 0.125}
    assert ledger["left"].value == 0.875


def test_a_figure_that_was_given_is_kept_with_who_gave_it():
    ledger = Ledger()

    side = ledger.given("side", 0.5, "the unit file")

    assert side == 0.5
    assert ledger["side"].rule is None
    assert ledger["side"].basis == "the unit file"


def test_figures_stand_in_the_order_in_which_they_were_made():
    ledger = Ledger()

    whole = ledger.given("whole", 1.0, "the unit file")
    ledger.take("left", what_is_left, whole=whole)
    ledger.take("larger", the_larger, first=1.0, second=2.0)

    assert [working.figure for working in ledger] == ["whole", "left", "larger"]
    assert len(ledger) == 3


def test_a_figure_taken_again_replaces_the_earlier_one():
    ledger = Ledger()

    ledger.take("left", what_is_left, whole=1.0)
    ledger.take("left", what_is_left, whole=2.0)

    assert len(ledger) == 1
    assert ledger["left"].value == 1.75


def test_an_input_remembers_the_figure_that_it_came_from():
    ledger = Ledger()

    whole = ledger.given("whole", 1.0, "the unit file")
    left = ledger.take("left", what_is_left, whole=whole)
    ledger.take("larger", the_larger, first=left, second=whole)

    inputs = ledger["larger"].inputs
    assert isinstance(inputs["first"], Figure)
    assert inputs["first"].name == "left"
    assert inputs["second"].name == "whole"


def test_a_rule_that_hands_an_input_on_makes_a_figure_of_its_own():
    ledger = Ledger()

    larger = ledger.take("larger", the_larger, first=ledger.given("whole", 1.0, "the unit file"), second=0.5)

    assert larger.name == "larger"


def test_an_amount_in_cents_remembers_its_figure_too():
    ledger = Ledger()

    total = ledger.take("total", line, price=ledger.given("price", 950, "the shop's settings"), count=3)

    assert total == 2850
    assert total.name == "total"
    assert ledger["total"].inputs["price"].name == "price"


def owed(size, ledger):
    """A working that is not written down before somebody reads it."""
    return ledger.take("left", what_is_left, whole=size)


def test_what_a_ledger_owes_stands_where_it_was_noted():
    ledger = Ledger()

    whole = ledger.given("whole", 1.0, "the unit file")
    ledger.under("A").owe(owed, whole)
    ledger.take("larger", the_larger, first=1.0, second=2.0)

    assert [working.figure for working in ledger] == ["whole", "A.left", "larger"]
    assert ledger["A.left"].inputs["whole"].name == "whole"
    assert ledger.result("A").name == "A.left"


def test_what_is_owed_may_itself_owe():
    ledger = Ledger()

    ledger.under("A").owe(lambda size, inner: inner.under("B").owe(owed, size), 1.0)

    assert [working.figure for working in ledger] == ["A.B.left"]


def test_a_copy_of_a_ledger_owes_the_same_and_what_it_is_given_more_is_its_own():
    ledger = Ledger()
    ledger.under("A").owe(owed, 1.0)
    copied = ledger.copied()

    copied.under("B").owe(owed, 2.0)

    assert [working.figure for working in ledger] == ["A.left"]
    assert [working.figure for working in copied] == ["A.left", "B.left"]


@pytest.mark.parametrize("name", ["A", "A.", "A.right"])
def test_the_name_under_which_a_working_is_owed_is_no_figure(name):
    ledger = Ledger()

    ledger.under("A").owe(owed, 1.0)

    assert name not in ledger


def test_what_is_not_a_number_comes_back_as_it_is():
    ledger = Ledger()

    assert ledger.take("thin", too_thin, whole=0.25) is True
    assert ledger.take("both", both, first=1.0, second=2.0) == (1.0, 2.0)
    assert ledger.given("wood", "walnut", "the unit file") == "walnut"


def test_figures_under_a_name_are_in_the_same_ledger():
    ledger = Ledger()

    ledger.under("A").under("R5-1").take("left", what_is_left, whole=1.0)

    assert "A.R5-1.left" in ledger
    assert "left" not in ledger


def test_a_rule_that_refuses_leaves_nothing_in_the_ledger():
    ledger = Ledger()

    with pytest.raises(TypeError):
        ledger.take("left", what_is_left, hole=1.0)

    assert len(ledger) == 0


def test_a_ledger_that_keeps_nothing_still_works_everything_out():
    left = UNKEPT.under("A").take("left", what_is_left, whole=UNKEPT.given("whole", 1.0, "the unit file"))

    assert left == 0.75
    assert len(UNKEPT) == 0


@pytest.mark.parametrize("figure", [Figure(0.75, "left"), WholeFigure(75, "left")])
@pytest.mark.parametrize("again", [copy.copy, copy.deepcopy, stored_and_fetched])
def test_a_copied_figure_keeps_its_name(figure, again):
    copied = again(figure)

    assert copied == figure
    assert copied.name == "left"


@given(st.floats(allow_nan=False), st.integers())
def test_a_figure_is_an_ordinary_number_in_every_other_way(value, whole):
    figure, count = Figure(value, "a"), WholeFigure(whole, "b")

    assert (figure, count) == (value, whole)
    assert (hash(figure), hash(count)) == (hash(value), hash(whole))
    assert json.dumps([figure, count]) == json.dumps([value, whole])
    assert f"{figure:.3f} {count:,}" == f"{value:.3f} {whole:,}"
    assert type(figure + 1.0) is float
    assert type(count + 1) is int
