"""Rows that do not fit: the height is told first, with what it would take; no drawer is blamed."""

import pytest

from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.sizes import CannotBuild
from units import built, chest

EVERY_RULE = [{"rule": "step"}, {"rule": "equal"}, {"rule": "ratio", "ratio": 1.1}, {"rule": "roots"}]


def rows(count, body, **changes):
    data = chest({name.replace("__", "."): value for name, value in changes.items()})
    return data | {"rows": [{}] * count, "body": {"width": "24", "depth": "16", **body}}


def refused(data):
    with pytest.raises(REFUSALS) as error:
        built(data)
    return str(error.value)


@pytest.mark.parametrize("rule", EVERY_RULE, ids=lambda rule: rule["rule"])
def test_five_rows_in_twelve_inches_are_told_that_they_do_not_fit(rule):
    """Top 7/8, plinth 4, rail, bottom and four dividers of 3/4 leave 12 - 9-3/8 = 2-5/8.

    A drawer: groove 3/8 up and 1/4 wide, a dovetailed back 1 high and 1/8 down, 1/32 above: 1-25/32. Openings
    are whole 16ths, so five take 5 × 1-13/16 = 9-1/16, and the piece 9-3/8 more: 18-7/16.
    """
    assert refused(rows(5, {"overall_height": "12"}, graduation=rule)) == (
        "body.overall_height: 5 rows do not fit in 12 in: that leaves 2-5/8 in for 5 of them, and a drawer "
        "takes an opening of 1-25/32 in or more; equal rows want 18-7/16 in at the least, and rows that grow "
        "more; or take rows out"
    )


def test_the_height_that_is_named_does_for_equal_rows():
    made = built(rows(5, {"overall_height": "18-7/16"}, graduation={"rule": "equal"}))

    assert len(made.drawers) == 5


@pytest.mark.parametrize(
    ("body", "begins"),
    [
        ({"overall_height": "8"}, "body.overall_height: 5 rows do not fit in 8 in: what divides them leaves"),
        ({"opening_total": "5"}, "body.opening_total: 5 rows do not fit in 5 in: a drawer takes"),
        ({"body_height": "7"}, "body.body_height: 5 rows do not fit in 7 in: that leaves 2-1/2 in"),
    ],
)
def test_the_height_that_was_typed_is_named(body, begins):
    assert refused(rows(5, body)).startswith(begins)


def test_rows_of_a_column_are_told_by_their_column():
    data = rows(2, {"overall_height": "16"})
    data["rows"] = [{"across": [{"rows": [{}] * 5}, {}]}, {}]

    assert refused(data).startswith("row 1, column 1: 5 rows do not fit in ")


def test_aprons_too_low_for_their_rows_are_named():
    data = rows(4, {"overall_height": "26"}, construction={"kind": "legs", "apron_height": "6"})

    assert refused(data).startswith(
        "construction.apron_height: 4 rows do not fit in 6 in: that leaves 2-1/4 in"
    )


def test_one_low_opening_is_told_by_its_height_and_a_typed_groove_by_the_groove():
    low = rows(2, {"opening_total": "12"})
    low["rows"] = [{"height": "1"}, {}]

    with pytest.raises(CannotBuild, match="opening R1-1 is 1 in high, too low for a drawer"):
        built(low)
    with pytest.raises(CannotBuild, match=r"drawers\.groove\.height: 3/4 is too much"):
        built(low | {"drawers": {"groove": {"height": "3/4"}}})


def test_rows_that_grow_too_fast_are_told_to_take_a_smaller_step():
    with pytest.raises(CannotGraduate, match="use a smaller step"):
        built(rows(5, {"opening_total": "7"}))


def test_open_spaces_take_no_room_from_a_drawer():
    data = rows(3, {"opening_total": "5"}, graduation={"rule": "equal"})
    data["rows"] = [{}, {"holds": "open"}, {"holds": "open"}]

    assert len(built(data).drawers) == 1
