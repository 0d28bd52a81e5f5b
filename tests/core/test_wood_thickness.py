"""Which class to buy for a finished thickness."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.findings import Verdict
from casewright.wood.softwood import dressed_size
from casewright.wood.thickness import (
    TooThick,
    check_class,
    class_named,
    resaw_class,
    spare_thickness,
    thickness_class,
    thickness_classes,
    usual_classes,
)


@pytest.mark.parametrize(
    ("finish", "name"),
    [
        (3 / 8, "4/4"),
        (13 / 16, "4/4"),
        (53 / 64, "5/4"),
        (1 + 1 / 16, "5/4"),
        (1 + 5 / 64, "6/4"),
        (1 + 5 / 16, "6/4"),
        (1 + 21 / 64, "8/4"),
        (1 + 3 / 4, "8/4"),
        (1 + 49 / 64, "10/4"),
        (2 + 1 / 4, "10/4"),
        (2 + 3 / 4, "12/4"),
        (3 + 3 / 4, "16/4"),
    ],
)
def test_the_thinnest_class_that_holds_the_part_is_bought(finish: float, name: str) -> None:
    assert thickness_class(finish).name == name


@pytest.mark.parametrize(("finish", "name"), [(3 / 4, "4/4"), (49 / 64, "5/4"), (1, "5/4"), (1.75, "10/4")])
def test_a_part_that_must_be_flattened_loses_a_sixteenth_of_every_limit(finish: float, name: str) -> None:
    assert thickness_class(finish, flattening=True).name == name


def test_a_thickness_reached_by_sums_is_not_sent_to_the_next_class() -> None:
    ten_steps = sum([13 / 160] * 10)

    assert ten_steps > 13 / 16
    assert thickness_class(ten_steps).name == "4/4"


@given(st.floats(0.01, 3.75))
def test_a_class_holds_its_part_and_the_next_thinner_one_does_not(finish: float) -> None:
    bought = thickness_class(finish)

    thinner = [each for each in usual_classes() if each.rough < bought.rough]

    # the comparison forgives a billionth of an inch
    assert bought.surfaced >= finish - 1e-8
    assert all(each.surfaced < finish for each in thinner)


def test_a_part_thicker_than_any_class_is_to_be_glued_up() -> None:
    with pytest.raises(TooThick, match="16/4 gives 3-3/4"):
        thickness_class(4)


@pytest.mark.parametrize("finish", [0, -1, float("nan")])
def test_a_part_without_thickness_is_refused(finish: float) -> None:
    with pytest.raises(ValueError, match="thicker than"):
        thickness_class(finish)


@pytest.mark.parametrize(
    ("finish", "flattening", "verdict", "said"),
    [
        (3 / 4, False, Verdict.PASS, "1/16 to spare"),
        (13 / 16, False, Verdict.CAUTION, "0 to spare"),
        (25 / 32, False, Verdict.CAUTION, "1/32 to spare"),
        (3 / 4, True, Verdict.CAUTION, "0 to spare"),
        (7 / 8, False, Verdict.STOP, "1/16 short"),
    ],
)
def test_a_part_close_to_the_limit_of_its_class_is_looked_at_twice(
    finish: float, flattening: bool, verdict: Verdict, said: str
) -> None:
    found = check_class(finish, class_named("4/4"), flattening=flattening, about="F3")

    assert found.verdict is verdict
    assert said in str(found.message)
    assert found.about == "F3"
    assert bool(str(found.remedy)) is (verdict is not Verdict.PASS)


def test_spare_thickness_is_what_lies_between_part_and_limit() -> None:
    assert spare_thickness(0.75, class_named("4/4").surfaced) == 0.0625


@pytest.mark.parametrize(
    ("finish", "needed", "name", "saves"),
    [
        (1 / 2, 1.375, "6/4", True),
        (3 / 8, 1.125, "5/4", True),
        (5 / 8, 1.625, "8/4", False),
        (3 / 4, 1.875, "8/4", False),
        (13 / 16, 2.0, "8/4", False),
        (7 / 8, 2.125, "10/4", False),
        (1, 2.375, "10/4", False),
    ],
)
def test_two_parts_from_one_board_are_set_against_one_from_each(
    finish: float, needed: float, name: str, saves: bool
) -> None:
    resaw = resaw_class(finish)

    assert resaw.needed == needed
    assert resaw.bought.name == name
    assert resaw.saves is saves


def test_parts_too_thick_for_two_from_one_are_sawn_singly() -> None:
    with pytest.raises(TooThick, match="Saw them singly"):
        resaw_class(2)


def test_seven_quarter_stock_is_in_the_rules_but_not_in_the_yard() -> None:
    assert "7/4" in [each.name for each in thickness_classes()]
    assert "7/4" not in [each.name for each in usual_classes()]


def test_a_class_that_is_not_one_is_refused_with_those_that_are() -> None:
    with pytest.raises(ValueError, match="4/4, 5/4, 6/4, 8/4"):
        class_named("9/4")


@pytest.mark.parametrize("name", ["1x", "12", "1 by 12", "ax12", "1x12x8", ""])
def test_a_softwood_name_that_is_not_one_is_refused_with_an_example(name: str) -> None:
    with pytest.raises(ValueError, match="such as 1x12 or 5/4x6"):
        dressed_size(name)


def test_a_softwood_size_that_is_not_sold_is_refused() -> None:
    with pytest.raises(ValueError, match="no board called “1x13”"):
        dressed_size("1x13")
