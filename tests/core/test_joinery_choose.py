"""Choosing a layout: only those that pass are ranked, and the better looking come first."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.choose import (
    LOOKS,
    family_pitch,
    points_for_family,
    points_for_width,
    rank,
    refusals,
    widest_tail,
)
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.groove import Groove
from casewright.joinery.layout import lay_out
from casewright.measure.findings import Verdict

DRESSER = (8.40625, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32)
"""Height, side, tail length, half pin, pin, slope and kerf of worked joint J1."""

heights = st.floats(1, 20)
sides = st.floats(0.25, 0.75)
pins = st.floats(1 / 16, 0.5)


@given(heights, sides, pins)
def test_the_ranking_falls_from_the_first_to_the_last_and_what_opens_in_dry_rooms_comes_after_all_else(
    height: float, side: float, pin: float
) -> None:
    widest = widest_tail(side) + 1e-9
    choices = rank(height, side, 0.625, 0.125, pin, 8, 1 / 32)
    tight = [choice.score for choice in choices if choice.tail_width <= widest]
    wide = [choice.score for choice in choices if choice.tail_width > widest]

    assert [choice.score for choice in choices] == tight + wide
    assert tight == sorted(tight, reverse=True)
    assert wide == sorted(wide, reverse=True)


@given(heights, sides, pins, st.floats(0.1, 1))
def test_every_layout_that_is_offered_passes_the_checks_that_refuse(
    height: float, side: float, pin: float, groove_height: float
) -> None:
    groove = Groove(height=groove_height, width=0.25, depth=0.125)
    choices = rank(height, side, 0.625, 0.125, pin, 8, 1 / 32, groove=groove)

    joints = [
        half_blind(
            HalfBlind(
                height=height,
                front=0.8125,
                lap=0.1875,
                side=side,
                rabbet=0.0,
                half_pin=0.125,
                pin=pin,
                tails=choice.count,
                groove=groove,
            )
        )
        for choice in choices
    ]
    stopped = [
        finding
        for joint in joints
        for finding in joint.findings
        if finding.rule in {"JC5", "JC6", "JC8"} and finding.verdict is Verdict.STOP
    ]
    assert stopped == []


@given(heights, sides, pins)
def test_every_number_of_tails_is_either_offered_or_refused_with_a_reason(
    height: float, side: float, pin: float
) -> None:
    sizes = (height, side, 0.625, 0.125, pin, 8, 1 / 32)
    offered = {choice.count for choice in rank(*sizes)}
    refused = {refusal.count for refusal in refusals(*sizes) if str(refusal.why).endswith(".")}

    assert offered | refused == set(range(1, max(offered | refused) + 1))
    assert not offered & refused


@given(st.floats(2.01, 20))
def test_one_tail_does_not_hold_a_high_board(height: float) -> None:
    assert 1 not in {choice.count for choice in rank(height, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32)}


@given(sides, st.floats(0.25, 3))
def test_a_tail_too_wide_by_a_factor_costs_as_much_as_one_too_narrow_by_it(
    side: float, factor: float
) -> None:
    ideal = LOOKS.tail_sides.value * side

    # float error only
    assert points_for_width(ideal * factor, side) == pytest.approx(
        points_for_width(ideal / factor, side), abs=1e-9
    )


@given(st.floats(0.5, 3), st.floats(-0.1, 0.1))
def test_a_spacing_within_a_tenth_of_the_familys_costs_nothing(family: float, part: float) -> None:
    # float error only
    assert points_for_family(family * (1 + part), family) == pytest.approx(0.0, abs=1e-9)


def test_a_spacing_half_as_wide_again_costs_sixteen_points():
    # 40 · (0.5 - 0.1)
    assert points_for_family(1.5, 1.0) == pytest.approx(16.0, abs=1e-9)  # float error only


@given(heights)
def test_without_a_family_the_spacing_costs_nothing(height: float) -> None:
    assert points_for_family(height, None) == 0.0


def test_the_familys_spacing_can_overrule_the_best_looking_tail():
    alone = rank(*DRESSER)[0]
    among_narrow_ones = rank(*DRESSER, family_pitch=1.3)[0]

    # six tails are spaced 1.38 in; five, at 1.66, lose 40 · (0.274 - 0.1) = 7.0 of their 99.3
    assert (alone.count, among_narrow_ones.count) == (5, 6)


@pytest.mark.parametrize(
    ("pitches", "expected"),
    [((1.66,), 1.66), ((1.5, 1.9, 1.6), 1.6), ((1.5, 1.6, 1.7, 1.9), 1.65)],
)
def test_the_familys_spacing_is_the_middle_one(pitches, expected):
    assert family_pitch(pitches) == pytest.approx(expected, abs=1e-12)  # float error only


def test_a_piece_without_dovetails_has_no_family():
    with pytest.raises(ValueError, match="no spacing to share"):
        family_pitch(())


def test_other_widths_of_the_pin_are_ranked_among_each_other():
    ranked = rank(*DRESSER, pins=(0.0625, 0.25, 0.125))

    assert {choice.pin for choice in ranked} == {0.0625, 0.125, 0.25}
    # each width is tried once
    assert len({(choice.count, choice.pin) for choice in ranked}) == len(ranked)


def test_pins_too_narrow_for_the_saw_are_left_out():
    assert rank(*DRESSER[:-1], 0.125) == ()


def test_a_groove_leaves_out_the_tails_that_would_not_hide_it():
    high = Groove(height=1.0, width=0.25, depth=0.25)

    counts = {choice.count for choice in rank(*DRESSER, groove=high)}

    # with six tails the lowest ends at 1/8 + 1-1/4 - 5/64, above 1-1/4; with seven at 1.11
    assert counts == {2, 3, 4, 5, 6}


@pytest.mark.parametrize(
    ("sizes", "count", "why"),
    [
        (DRESSER, 1, "One tail does not hold a board 8-13/32 in high."),
        (DRESSER, 11, "A tail would be ≈15/32 in at the baseline; it needs 1/2."),
        ((*DRESSER[:4], 0.03125, *DRESSER[5:]), 2, "A pin of 1/32 in is too narrow; make it 1/16."),
    ],
)
def test_a_refusal_says_what_is_wrong_and_what_would_do(sizes, count, why):
    refused = {refusal.count: refusal.why for refusal in refusals(*sizes)}

    assert str(refused[count]) == why


def test_a_groove_that_would_show_is_a_reason_to_refuse():
    refused = refusals(*DRESSER, groove=Groove(height=1.0, width=0.25, depth=0.25))

    seven = next(refusal for refusal in refused if refusal.count == 7)
    assert str(seven.why) == (
        "The lowest tail covers 13/64 to ≈1-7/64 in at the inside face, and the groove lies from 1 to 1-1/4."
    )


def test_a_choice_says_what_cost_it_points():
    three = next(choice for choice in rank(*DRESSER, family_pitch=1.5) if choice.count == 3)

    assert [str(reason).split(" off: ")[1] for reason in three.reasons] == [
        "a tail is ≈2-41/64 in wide.",
        "its spacing of ≈2-49/64 in differs from the other drawers'.",
        "tails of ≈2-41/64 in open in dry rooms.",
    ]
    # 100 less what the reasons say, which are printed to a tenth
    said = sum(float(str(reason).split(" ")[0]) for reason in three.reasons)
    assert three.score == pytest.approx(100 - said, abs=0.2)


def test_tails_little_wider_than_their_pins_cost_points():
    slim = next(choice for choice in rank(8.40625, 0.5, 0.625, 0.125, 0.4, 8, 1 / 32) if choice.count == 6)

    # tails of 1.026 in are 2.6 pins wide
    assert slim.off_for_slim == LOOKS.slim_points.value
    assert str(slim.reasons[-1]) == "10.0 off: a tail is only 2.6 pins wide."


def test_the_taste_is_the_shops_to_set():
    slender = replace(LOOKS, tail_sides=replace(LOOKS.tail_sides, value=1.5))

    assert rank(*DRESSER, looks=slender)[0].count > rank(*DRESSER)[0].count


@given(heights, sides, pins)
def test_a_choice_has_the_sizes_of_the_layout_that_it_stands_for(
    height: float, side: float, pin: float
) -> None:
    choices = rank(height, side, 0.625, 0.125, pin, 8, 1 / 32)

    layouts = [lay_out(height, 0.125, pin, choice.count, 0.625, 8) for choice in choices]
    assert [(choice.pitch, choice.tail_width, choice.neck) for choice in choices] == [
        (layout.pitch, layout.tail_width, layout.neck) for layout in layouts
    ]


def test_one_tail_holds_a_board_of_just_two_inches():
    assert rank(2.0, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32)[0].count == 1


def test_a_tail_of_just_two_inches_is_not_too_wide():
    # two tails of 2 in, a pin of 1/8 and half pins of 1/8
    two = next(choice for choice in rank(4.375, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32) if choice.count == 2)

    assert (two.tail_width, two.off_for_wide) == (2.0, 0.0)
