"""Which cutter of the rack makes a width, and what the families choose by it."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.chisels import RACK
from casewright.joinery.cutters import cutter_at_hand, how_it_is_cut, made_by, nearest_cutter
from casewright.joinery.families.box.sizes import usual_finger
from casewright.joinery.families.lock_rabbet.asked import usual_tongue
from casewright.joinery.kinds import solve
from casewright.measure.findings import Verdict

WIDTHS = st.integers(1, 128).map(lambda marks: marks / 64)
CUTTERS = st.lists(WIDTHS, unique=True).map(sorted).map(tuple)


@given(WIDTHS, CUTTERS)
def test_the_passes_cover_the_width_and_one_fewer_would_not(width, cutters):
    made = made_by(width, cutters)

    if made is None:
        assert all(cutter > width for cutter in cutters)
    else:
        assert made.cutter == max(cutter for cutter in cutters if cutter <= width)
        assert (made.passes - 1) * made.cutter < width <= made.passes * made.cutter


@given(WIDTHS, CUTTERS)
def test_a_width_that_a_cutter_has_takes_one_pass(width, cutters):
    made = made_by(width, tuple(sorted({*cutters, width})))

    assert made is not None
    assert (made.cutter, made.passes) == (width, 1)


@pytest.mark.parametrize(
    ("width", "cutters", "verdict", "said"),
    [
        (0.25, RACK.cutters, Verdict.PASS, "The groove is 1/4 in wide: the 1/4 in cutter, in one pass."),
        (0.754, RACK.cutters, Verdict.PASS, "The groove is 0.754 in wide: the 3/4 in cutter, in 2 passes."),
        (
            0.0625,
            RACK.cutters,
            Verdict.CAUTION,
            "The groove is 1/16 in wide; the narrowest cutter is 1/8 in.",
        ),
        (0.25, (), Verdict.CAUTION, "The groove is 1/4 in wide, and no cutter is listed on the rack."),
    ],
)
def test_a_groove_names_its_cutter(width, cutters, verdict, said):
    found = cutter_at_hand("groove", width, cutters)

    assert (found.verdict, str(found.message)) == (verdict, said)
    assert bool(found.remedy) == (verdict is Verdict.CAUTION)


@given(st.integers(128, 960).map(lambda marks: marks / 64), st.sampled_from(RACK.cutters), CUTTERS)
def test_a_chosen_finger_is_a_cutter_that_divides_the_height_or_the_boards_thickness(height, thin, cutters):
    finger = usual_finger(height, thin, cutters)

    divides = finger in cutters and (height / finger).is_integer()
    assert divides or finger == thin


@given(st.integers(4, 40), st.sampled_from(RACK.cutters))
def test_a_height_of_whole_fingers_is_cut_without_a_stop(fingers, cutter):
    solved = solve("box", {"height": fingers * cutter, "side": cutter})

    assert {each.rule: each.verdict for each in solved.findings}["cutter at hand"] is Verdict.PASS


def test_another_height_takes_the_cutter_nearest_to_square_that_divides_it():
    solved = solve("box", {"height": 4.125, "side": 0.5})

    assert solved.joint.finger == 0.375
    assert "Of the cutters that divide 4-1/8 in evenly, 3/8 in is the nearest" in str(solved.chosen[1].why)


def test_a_box_is_stopped_with_the_nearest_cutter_of_the_shops_own_rack():
    rack = replace(RACK, cutters=(0.25, 0.75))

    solved = solve("box", {"height": 4.0, "side": 0.5, "fingers": 8}, rack=rack)

    found = next(each for each in solved.findings if each.rule == "cutter at hand")
    assert found.verdict is Verdict.STOP
    assert str(found.remedy).startswith(
        "Make the boards 2 in high at the joint for 8 fingers with the 1/4 in"
    )


@given(WIDTHS, WIDTHS, CUTTERS)
def test_a_chosen_tongue_is_a_cutter_of_the_rack_or_the_thinnest_that_holds(side, room, cutters):
    tongue = usual_tongue(side, room, cutters)

    assert tongue == 0.125 or (tongue in cutters and tongue <= side / 2)


@pytest.mark.parametrize("width", [0.1, 0.3, 0.9])
def test_the_nearest_cutter_is_as_near_as_any(width):
    near = nearest_cutter(width, RACK.cutters)

    assert near is not None
    assert abs(near - width) == min(abs(cutter - width) for cutter in RACK.cutters)


def test_a_housing_says_which_cutter_makes_it():
    solved = solve("housing", {"divider": 0.75, "case_side": 0.75}, rack=replace(RACK, cutters=(0.5,)))

    width = next(each for each in solved.joint.settings if each.name == "width")
    assert str(width.note).endswith("; the 1/2 in cutter, in 2 passes")


def test_a_gap_that_no_cutter_enters_is_sawn_and_chiselled():
    assert how_it_is_cut(0.0625, RACK.cutters) == "sawn and chiselled: no cutter is so narrow"
