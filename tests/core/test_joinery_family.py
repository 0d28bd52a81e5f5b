"""A piece's rows laid out as one family: every pin that the saw leaves room for, scored by all its rows."""

from dataclasses import replace
from statistics import fmean, median

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.choose import rank
from casewright.joinery.family import (
    USUAL_PINS,
    BoardEnd,
    Row,
    SetOut,
    families,
    row_choices,
    shared_pitch,
    tried_pins,
)

DRESSER = SetOut(half_pin=0.125, pin=0.125, slope=8, side=0.5, kerf=1 / 32)
HEIGHTS = (5.40625, 6.15625, 6.90625, 7.65625, 8.40625)

heights = st.lists(st.floats(2.5, 14), min_size=1, max_size=12)


def rows(*board_heights, tails=None):
    """One row for each height, as drawn."""
    ends = [BoardEnd(height=height, tail_length=0.625) for height in board_heights]
    return [
        Row(name=f"row {number}", end=end, drawn=end, tails=(tails or {}).get(number))
        for number, end in enumerate(ends, start=1)
    ]


def test_the_usual_pins_run_from_a_sixteenth_to_a_quarter_and_name_their_ground():
    assert [each.value for each in USUAL_PINS] == [1 / 16, 3 / 32, 1 / 8, 3 / 16, 1 / 4]
    assert all(each.source and each.basis == "common practice" for each in USUAL_PINS)


def test_the_pin_that_is_set_out_is_tried_first_and_once():
    assert tried_pins(DRESSER) == (1 / 8, 1 / 16, 3 / 32, 3 / 16, 1 / 4)
    assert tried_pins(replace(DRESSER, pin=0.15))[:2] == (0.15, 1 / 16)


@given(heights)
def test_a_row_has_in_its_family_exactly_what_the_ranking_gives_it(board_heights):
    for_all = families(DRESSER, rows(*board_heights))

    expected = [
        rank(height, 0.5, 0.625, 0.125, family.pin, 8, 1 / 32, family_pitch=family.pitch)
        for family in for_all
        for height in board_heights
    ]
    assert [row.choices for family in for_all for row in family.rows] == expected


@given(heights)
def test_a_family_shares_the_middle_of_what_its_rows_would_choose_for_themselves(board_heights):
    for_all = families(DRESSER, rows(*board_heights))

    alone = [
        [rank(height, 0.5, 0.625, 0.125, family.pin, 8, 1 / 32)[0].pitch for height in board_heights]
        for family in for_all
    ]
    # float error only
    assert [family.pitch for family in for_all] == pytest.approx([median(each) for each in alone], abs=1e-12)


@given(heights)
def test_families_fall_in_score_and_each_has_the_mean_of_its_rows(board_heights):
    for_all = families(DRESSER, rows(*board_heights))

    scores = [family.score for family in for_all]
    means = [fmean(row.taken.score for row in family.rows) for family in for_all]
    assert scores == sorted(scores, reverse=True)
    assert scores == pytest.approx(means, abs=1e-9)  # float error only


@given(heights, st.integers(0, 11))
def test_a_row_is_offered_every_count_with_every_pin_best_first(board_heights, number):
    for_all = families(DRESSER, rows(*board_heights))
    number %= len(board_heights)

    offered = row_choices(for_all, number)

    scores = [choice.score for choice in offered]
    assert scores == sorted(scores, reverse=True)
    assert len(offered) == sum(len(family.rows[number].choices) for family in for_all)
    assert len({(choice.count, choice.pin) for choice in offered}) == len(offered)


def test_a_pin_too_narrow_for_the_saw_makes_no_family():
    coarse = replace(DRESSER, kerf=5 / 64)

    # 5/64 and 1/64 over: 3/32 just passes
    assert {family.pin for family in families(coarse, rows(8.0))} == {3 / 32, 1 / 8, 3 / 16, 1 / 4}
    assert [str(each.why) for each in coarse.refused(rows(8.0)[0].end, [1 / 16])] == [
        "A pin of 1/16 in is too narrow; make it 3/32."
    ]


def test_the_makers_own_number_stands_in_the_family_and_lowers_its_score():
    own = families(DRESSER, rows(*HEIGHTS, tails={5: 8}), [0.125])[0]
    free = families(DRESSER, rows(*HEIGHTS), [0.125])[0]

    assert own.rows[4].taken.count == 8
    assert own.score < free.score
    assert own.worst.row.name == "row 5"
    # nobody else's tails change for it: the family's spacing is by what each row would choose for itself
    assert [row.taken for row in own.rows[:4]] == [row.taken for row in free.rows[:4]]


def test_a_number_that_does_not_pass_is_a_reason_against_its_family():
    own = families(DRESSER, rows(*HEIGHTS, tails={1: 20}), [0.125])[0]

    assert own.rows[0].taken is None
    assert own.worst.row.name == "row 1"
    assert [(each.count, str(each.why)) for each in own.refused] == [
        (20, "row 1: A tail would be ≈15/32 in at the baseline; it needs 1/2.")
    ]


def test_families_in_which_every_row_passes_come_first():
    # Two tails of 21/32, which leave necks of just 1/2, with a pin of 1/8: a wider pin has no room.
    found = families(DRESSER, rows(*HEIGHTS, 1.6875, tails={6: 2}))

    assert [(family.pin <= 1 / 8, bool(family.refused)) for family in found] == [
        *[(True, False)] * 3,
        *[(False, True)] * 2,
    ]


def test_a_measured_row_does_not_change_the_family():
    plain = rows(*HEIGHTS)
    measured = [*plain[:-1], replace(plain[-1], end=BoardEnd(height=5.0, tail_length=0.625))]

    assert families(DRESSER, measured, [0.125])[0].pitch == families(DRESSER, plain, [0.125])[0].pitch


def test_a_family_in_which_nothing_costs_points_names_no_worst_row():
    # tails of just three sides: two of 1-1/2 with a pin of 1/8 and half pins of 1/8
    family = families(DRESSER, rows(3.375), [0.125])[0]

    assert family.rows[0].taken.score == pytest.approx(100, abs=1e-9)  # float error only
    assert family.worst is None


def test_rows_without_a_layout_share_no_spacing():
    assert shared_pitch(DRESSER, [BoardEnd(height=0.5, tail_length=0.625)]) is None


def test_a_piece_without_rows_has_no_family():
    with pytest.raises(ValueError, match="no family"):
        families(DRESSER, [])
