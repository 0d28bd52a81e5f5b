"""The box joint: fingers from the reference edge, the cutter, the play, the groove; and that it closes."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.box.joint import Box, box_joint
from casewright.joinery.families.box.sizes import usual_fingers
from casewright.joinery.groove import Groove
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from closing import faults

SIZES = st.integers(8, 64).map(lambda marks: marks / 64)


def joint(**given):
    return box_joint(Box(**{"height": 4.0, "side": 0.5, "front": 0.5, "fingers": 8, **given}))


def verdicts(found):
    return {finding.rule: finding.verdict for finding in found.findings}


@given(st.integers(64, 960).map(lambda marks: marks / 64), SIZES, SIZES, st.integers(2, 24))
def test_every_box_joint_closes(height, side, front, fingers):
    assert faults(joint(height=height, side=side, front=front, fingers=fingers).shape) == []


@given(st.integers(64, 960).map(lambda marks: marks / 64), st.integers(2, 40))
def test_fingers_fill_the_height_without_drift(height, fingers):
    found = joint(height=height, fingers=fingers)

    spans = sorted((*found.front_fingers, *found.side_fingers))
    assert spans[0][0] == 0.0
    assert spans[-1][1] == height
    assert all(high == low for (_, high), (low, _) in pairwise(spans))
    assert found.front_fingers[0][0] == 0.0


def test_the_height_is_divided_as_near_to_the_finger_as_it_goes():
    assert [usual_fingers(height, 0.5) for height in (4.0, 4.2, 4.3, 0.6)] == [8, 8, 9, 2]


def test_a_finger_that_no_cutter_has_is_stopped_with_the_height_that_would_do():
    found = joint(height=4.25)

    finding = next(each for each in found.findings if each.rule == "cutter at hand")
    assert finding.verdict is Verdict.STOP
    assert (
        str(finding.remedy) == "Make the boards 4 in high at the joint for 8 fingers with the 1/2 in cutter, "
        "or stack one to 0.5312 in."
    )


def test_three_fingers_are_too_few():
    assert verdicts(joint(height=1.5, fingers=3))["number of fingers"] is Verdict.STOP


@pytest.mark.parametrize(
    ("play", "verdict"),
    [(0.003, Verdict.PASS), (0.005, Verdict.PASS), (0.002, Verdict.CAUTION), (0.006, Verdict.CAUTION)],
)
def test_play_from_3_to_5_thousandths_passes(play, verdict):
    assert verdicts(joint(play=play))["play for the glue"] is verdict


@pytest.mark.parametrize(
    ("height", "verdict", "said"),
    [
        (0.125, Verdict.PASS, "a finger of the front"),
        (0.625, Verdict.PASS, "a finger of the side"),
        (0.375, Verdict.STOP, "runs over two fingers"),
    ],
)
def test_a_groove_stays_within_one_finger(height, verdict, said):
    found = joint(groove=Groove(height=height, width=0.25, depth=0.25))

    finding = next(each for each in found.findings if each.rule == "groove and fingers")
    assert finding.verdict is verdict
    assert said in str(finding.message)


def test_one_finger_is_no_joint():
    with pytest.raises(CannotBeLaidOut, match="8 of 1/2"):
        joint(fingers=1)


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve("box", {"height": 4.0, "side": 0.5})

    assert {each.name: each.value for each in found.chosen} == {
        "front": 0.5,
        "finger": 0.5,
        "fingers": 8,
        "play": 0.004,
    }
    assert all(str(each.why) and each.source for each in found.chosen)


def test_the_fingers_of_both_boards_are_given_from_the_bottom_edge():
    spans = dict(joint(height=2.0, fingers=4).spans)

    assert spans == {
        "Fingers of the front, from the bottom edge": ((0.0, 0.5), (1.0, 1.5)),
        "Fingers of the side, from the bottom edge": ((0.5, 1.0), (1.5, 2.0)),
    }


def test_the_key_that_gives_the_usual_play_is_named():
    loose = next(each for each in joint(play=0.01).findings if each.rule == "play for the glue")

    assert str(loose.remedy).startswith("Shim or sand the key of the jig to 0.496 in, for a play of 0.004 in")


@pytest.mark.parametrize(
    ("height", "cutter", "count", "top"),
    [
        (5.0, 0.5, 10, 0.5),
        (5.171875, 0.5, 10, 0.671875),  # 11/64 is less than half a finger: it goes to the top one
        (5.25, 0.5, 11, 0.25),
        (5.375, 0.5, 11, 0.375),
        (4.875, 0.375, 13, 0.375),
    ],
)
def test_what_a_cutter_leaves_of_the_height_goes_to_the_top_finger(height, cutter, count, top):
    made = solve("box", {"height": height, "side": 0.5, "cutter": cutter}).joint

    spans = sorted((*made.front_fingers, *made.side_fingers))
    assert len(spans) == count
    assert spans[-1][1] == pytest.approx(height)
    assert spans[-1][1] - spans[-1][0] == pytest.approx(top)
    assert made.finger == cutter
    assert ("top_finger" in [each.name for each in made.settings]) == (abs(top - cutter) > 1e-9)
