"""Graduated openings: the table of rules for five rows in 35 in, rounding, locked rows, and refusals."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.pieces.asked.graduation import (
    CannotGraduate,
    Contents,
    Equal,
    Ratio,
    Roots,
    Step,
    by_contents,
    contents_need,
    graduated,
    locked_height,
    rounded_openings,
)
from units import built, chest

SIXTEENTH = 1 / 16

# Common rules of graduation for five openings in 35 in with dividers of 3/4, each worked out beside its
# formula by hand and printed to thousandths.
TABLE = [
    (Equal(rule="equal"), (7.0, 7.0, 7.0, 7.0, 7.0)),
    (Step(rule="step", step=0.75), (5.5, 6.25, 7.0, 7.75, 8.5)),
    (Step(rule="step"), (5.5, 6.25, 7.0, 7.75, 8.5)),
    (Step(rule="step", first=6.0), (6.0, 6.5, 7.0, 7.5, 8.0)),
    (Ratio(rule="ratio", ratio=1.12), (5.509, 6.170, 6.911, 7.740, 8.669)),
    (Ratio(rule="ratio", first=5.5), (5.500, 6.165, 6.910, 7.745, 8.681)),
    (Ratio(rule="ratio", ratio=1.12, on="pitch"), (5.350, 6.082, 6.901, 7.820, 8.848)),
    (Roots(rule="roots"), (4.175, 5.905, 7.232, 8.351, 9.337)),
    (Roots(rule="roots", start=4), (5.757, 6.436, 7.050, 7.615, 8.141)),
]
RULES = st.one_of(
    st.just(Equal(rule="equal")),
    st.floats(0, 1).map(lambda step: Step(rule="step", step=step)),
    st.floats(1, 1.4).map(lambda ratio: Ratio(rule="ratio", ratio=ratio)),
    st.floats(1, 1.1).map(lambda ratio: Ratio(rule="ratio", ratio=ratio, on="pitch")),
    st.integers(1, 100).map(lambda start: Roots(rule="roots", start=start)),
)


def heights_of(changes):
    return [row.height for row in built(chest(changes)).face.rows]


@pytest.mark.parametrize(("rule", "expected"), TABLE)
def test_the_openings_grow_as_the_table_of_rules_prints_them(rule, expected):
    assert graduated(rule, 35, 5, 0.75) == pytest.approx(expected, abs=0.0005)


def test_the_ratio_that_fills_the_height_is_found():
    openings = graduated(Ratio(rule="ratio", first=5.5), 35, 5, 0.75)

    assert openings[1] / openings[0] == pytest.approx(1.12085, abs=0.000005)  # printed to five decimals


@given(RULES, st.floats(20, 60), st.integers(1, 6))
def test_by_any_rule_the_openings_fill_the_height(rule, total, count):
    openings = graduated(rule, total, count, 0.75)

    assert len(openings) == count
    # float sums of six numbers below 60
    assert sum(openings) == pytest.approx(total, abs=1e-9)


@given(RULES, st.floats(20, 60), st.integers(2, 6))
def test_by_any_rule_no_opening_is_lower_than_the_one_above(rule, total, count):
    openings = graduated(rule, total, count, 0.75)

    # equal openings may differ by a float's error
    assert [below > above - 1e-9 for above, below in pairwise(openings)] == [True] * (count - 1)


def test_a_single_row_takes_all_the_height_whatever_its_first_opening_was_to_be():
    assert graduated(Step(rule="step", first=4.0), 9.0, 1, 0.75) == (9.0,)
    assert graduated(Ratio(rule="ratio", first=4.0), 9.0, 1, 0.75) == (9.0,)


@given(st.lists(st.floats(1, 20), min_size=1, max_size=12))
def test_what_rounding_leaves_goes_into_the_bottom_opening(heights):
    total = sum(heights)

    rounded = rounded_openings(heights, total)

    assert [height % SIXTEENTH for height in rounded[:-1]] == [0] * (len(heights) - 1)
    assert sum(rounded) == pytest.approx(total, abs=1e-9)  # float sums of twelve numbers below 240
    # each of the others is out by half a sixteenth at most
    assert abs(rounded[-1] - heights[-1]) <= (len(heights) - 1) * SIXTEENTH / 2 + 1e-9


def test_the_residue_of_three_equal_rows_is_shown_in_the_lowest():
    # 20 in three: 6.667 is nearest 6-11/16, twice; what is left is 6-5/8
    openings = heights_of({"body.opening_total": "20", "graduation": {"rule": "equal"}})

    assert openings == [6.6875, 6.6875, 6.625]


def test_a_locked_row_keeps_its_height_and_the_others_share_the_rest():
    # 18 - 4 = 14 in two rows a divider of 3/4 apart: 6-5/8 and 7-3/8
    openings = heights_of({"rows": [{}, {"height": "4"}, {}]})

    assert openings == [6.625, 4.0, 7.375]


def test_rows_that_are_all_locked_are_taken_as_they_are():
    openings = heights_of({"rows": [{"height": "5"}, {"height": "6"}, {"height": "7"}]})

    assert openings == [5.0, 6.0, 7.0]


def test_a_locked_height_is_what_was_typed():
    assert locked_height(6.125) == 6.125


def test_contents_need_their_height_the_bottom_and_a_hand_above():
    # 4-1/2 of contents, groove at 3/8 and 1/4 wide, 1/2 to spare
    assert contents_need(4.5, 0.375 + 0.25, 0.5) == 5.625


def test_openings_by_contents_hold_them_and_share_the_spare_equally():
    rows = [{"contents": "2"}, {"contents": "3"}, {"contents": "5"}]

    openings = heights_of({"rows": rows, "graduation": {"rule": "contents"}})

    # needs of 3-1/8, 4-1/8 and 6-1/8 make 13-3/8 of 18; 4-5/8 to spare is 1.5417 each, rounded to 1/16
    assert openings == [4.6875, 5.6875, 7.625]


def test_the_spare_may_be_shared_in_proportion():
    needs = (3.0, 6.0)

    openings = by_contents(Contents(rule="contents", spare="proportion"), needs, 12.0)

    assert openings == pytest.approx((4.0, 8.0), abs=1e-12)  # float division


@given(st.lists(st.floats(1, 10), min_size=1, max_size=8), st.floats(0, 20), st.booleans())
def test_openings_by_contents_never_fall_below_the_need(needs, spare, equally):
    rule = Contents(rule="contents", spare="equal" if equally else "proportion")

    openings = by_contents(rule, needs, sum(needs) + spare)

    assert sum(openings) == pytest.approx(sum(needs) + spare, abs=1e-9)  # float sums below 100
    assert [need for need, opening in zip(needs, openings, strict=True) if opening < need - 1e-9] == []


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"graduation": {"rule": "step", "step": "8"}}, "leave nothing for the smallest; use a smaller step"),
        ({"graduation": {"rule": "ratio", "first": "7"}}, "make the first opening 6 or less"),
        ({"graduation": {"rule": "ratio", "first": "1/128"}}, "no ratio fills 18 in"),
        ({"graduation": {"rule": "step", "first": "14"}}, "leave nothing for the smallest"),
        ({"graduation": {"rule": "contents"}}, "row 1 does not say how tall its contents are"),
        (
            {"graduation": {"rule": "contents"}, "rows": [{"contents": "9"}, {"contents": "9"}]},
            "the contents need 20-1/4 in of openings and there are 18; make the case 2-1/4 in taller",
        ),
        ({"rows": [{"height": "9"}, {"height": "10"}, {}]}, "the locked rows take 19 in of 18"),
        ({"rows": [{"height": "9"}, {"height": "8"}]}, "the rows add up to 17 in of 18"),
        (
            {"body": {"width": "24", "depth": "16", "body_height": "2"}},
            "rows do not fit in 2 in: what divides them",
        ),
        (
            {"body.opening_total": "1/16", "graduation": {"rule": "equal"}},
            "rows do not fit in 1/16 in: a drawer",
        ),
        ({"rows": [{"columns": 12}], "body.width": "20"}, "row 1 leaves .* in for a drawer; use fewer"),
        ({"rows.0.widths": ["22", None]}, "row 1 leaves 0 in for a drawer; use fewer columns"),
        ({"rows.0.widths": ["10", "11"]}, "of row 1 .* 21-3/4 in but the case is 22-1/2 wide inside"),
    ],
)
def test_heights_and_widths_that_cannot_be_are_refused_with_what_would_do(changes, sentence):
    with pytest.raises(CannotGraduate, match=sentence):
        built(chest(changes))
