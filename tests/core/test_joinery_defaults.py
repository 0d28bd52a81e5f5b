"""What is chosen for a number that was left out, and the reason that goes with it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.defaults import (
    chosen_half_pin,
    chosen_lap,
    chosen_pin,
    chosen_rabbet,
    chosen_slope,
    chosen_tails,
    slope_habit,
    usual_lap,
    usual_pin,
    usual_rabbet,
)
from casewright.joinery.groove import Groove
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sourced import rows


@pytest.mark.parametrize(
    ("front", "lap"),
    [
        (13 / 16, 3 / 16),
        (3 / 4, 3 / 16),
        (7 / 8, 3 / 16),
        (1.0, 1 / 4),
        (5 / 8, 1 / 8),
        (1 / 2, 1 / 8),
        (3 / 8, 1 / 8),
    ],
)
def test_the_lap_is_a_quarter_of_the_front_to_a_16th_and_at_least_an_eighth(front, lap):
    assert usual_lap(front) == lap


@pytest.mark.parametrize(
    ("side", "rabbet"),
    [(1 / 2, 1 / 16), (3 / 8, 1 / 32), (5 / 8, 1 / 16), (3 / 4, 3 / 32), (1 / 4, 1 / 32), (3 / 16, 1 / 64)],
)
def test_the_rabbet_is_an_eighth_of_the_side_down_to_a_32nd(side, rabbet):
    assert usual_rabbet(side) == rabbet


@given(st.floats(0.125, 1))
def test_the_usual_rabbet_passes_its_own_check(side: float) -> None:
    # deep enough to register and no deeper than a sixth of the side
    assert 1 / 64 <= usual_rabbet(side) <= side / 6


@pytest.mark.parametrize(
    ("side", "pin"), [(5 / 16, 3 / 32), (3 / 8, 3 / 32), (25 / 64, 1 / 8), (1 / 2, 1 / 8)]
)
def test_pins_are_finer_in_thin_sides(side, pin):
    assert usual_pin(side) == pin


@pytest.mark.parametrize(("softwood", "slope"), [(False, 8), (True, 6)])
def test_softwood_has_the_stronger_slope(softwood, slope):
    assert slope_habit(softwood).value == slope


@pytest.mark.parametrize(
    ("chosen", "name", "value", "why"),
    [
        (
            chosen_lap(0.8125),
            "lap",
            3 / 16,
            "A quarter of the 13/16 in front, to the nearest 1/16, and no less than 1/8.",
        ),
        (chosen_rabbet(0.375), "rabbet", 1 / 32, "An eighth of the 3/8 in side, rounded down to 1/32."),
        (chosen_half_pin(at_front=True), "half_pin", 1 / 8, "1/8 in is usual at a drawer's front."),
        (chosen_half_pin(at_front=False), "half_pin", 3 / 16, "3/16 in is usual at a drawer's back."),
        (chosen_pin(0.375), "pin", 3 / 32, "3/32 in is usual with sides of 3/8 in."),
        (chosen_slope(), "slope", 8, "1:8 is usual in hardwood."),
        (chosen_slope(softwood=True), "slope", 6, "1:6 is usual in softwood."),
        (
            chosen_tails(8.40625, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32),
            "tails",
            5,
            "Looks best of the 9 that pass, at 99.3 of 100; next 6, at 93.6.",
        ),
        (
            chosen_tails(1.5, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32),
            "tails",
            1,
            "The only number that passes, at 93.4 of 100 for looks.",
        ),
    ],
)
def test_a_choice_says_why(chosen, name, value, why):
    assert (chosen.name, chosen.value, str(chosen.why)) == (name, value, why)
    assert chosen.source


def test_when_no_number_of_tails_passes_each_is_refused_with_its_reason():
    with pytest.raises(CannotBeLaidOut) as refused:
        chosen_tails(2.25, 1.0, 0.625, 0.125, 0.125, 8, 1 / 32)

    assert str(refused.value) == (
        "No number of tails passes. 1: One tail does not hold a board 2-1/4 in high. 2: A tail would be "
        "25/32 in at the baseline; it needs 1. Make the board 2-11/16 in high or higher, or the board with "
        "the tails 25/32 in thick or thinner."
    )


@pytest.mark.parametrize("name", ["limits", "looks", "defaults", "rack"])
def test_every_number_of_the_room_has_its_source_and_basis(name):
    bases = {"published", "common practice", "from memory", "learned"}

    bare = [key for key, row in rows(name).items() if not row["source"] or row["basis"] not in bases]
    assert bare == []


@pytest.mark.parametrize("name", ["limits", "looks", "defaults", "rack"])
def test_what_is_common_practice_or_from_memory_says_so_in_its_source(name):
    published = [
        key
        for key, row in rows(name).items()
        if row["basis"] != "published" and row["basis"] not in row["source"]
    ]
    assert published == []


def test_a_groove_that_no_number_of_tails_hides_leaves_the_best_looking_one():
    low = Groove(height=0.125, width=0.25, depth=0.25)

    chosen = chosen_tails(8.40625, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32, groove=low)

    assert chosen.value == 5
    assert chosen.why.endswith("next 6, at 93.6. No number of tails hides the groove.")


def test_a_groove_that_is_hidden_is_not_spoken_of():
    usual = Groove(height=0.375, width=0.25, depth=0.25)

    chosen = chosen_tails(8.40625, 0.5, 0.625, 0.125, 0.125, 8, 1 / 32, groove=usual)

    assert "groove" not in chosen.why
