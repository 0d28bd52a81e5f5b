"""The lock rabbet: with and without a lip; its lengths, its limits on both sides, and that it closes."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.chisels import RACK
from casewright.joinery.families.lock_rabbet.asked import LockRabbet, usual_reach, usual_tongue
from casewright.joinery.families.lock_rabbet.joint import KIND, front_taken_off, lock_rabbet
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from closing import faults

SIZES = st.integers(4, 48).map(lambda marks: marks / 64)
SIZES_OR_NONE = st.one_of(st.just(0.0), SIZES)


def joint(**given):
    usual = {
        "height": 4.0,
        "front": 0.5,
        "side": 0.5,
        "tongue": 0.25,
        "reach": 0.25,
        "from_end": 0.25,
    }
    return lock_rabbet(LockRabbet(**{**usual, **given}))


def lipped(**given):
    return joint(**{"front": 0.75, "tongue": 0.125, "from_end": 0.375, "lip": 0.25, **given})


def verdicts(found):
    return {finding.rule: finding.verdict for finding in found.findings}


def remedy(found, rule):
    return str(next(finding.remedy for finding in found.findings if finding.rule == rule))


def settings(found):
    return {setting.name: setting for setting in found.settings}


@given(SIZES, SIZES, SIZES, SIZES, SIZES_OR_NONE, SIZES_OR_NONE)
def test_every_lock_rabbet_closes(tongue, from_end, side, left, lip, shoulder):
    front = lip + from_end + tongue + shoulder
    found = joint(front=front, side=side + left, tongue=tongue, reach=side, from_end=from_end, lip=lip)

    assert faults(found.shape) == []


@given(SIZES, SIZES, st.integers(64, 2560).map(lambda marks: marks / 64))
def test_without_a_lip_sides_and_front_make_up_the_width_of_the_box(reach, left, inside):
    side = reach + left
    width = inside + 2 * side
    found = joint(side=side, reach=reach, box_width=width)

    front = settings(found)["front_length"]
    assert front.value + 2 * left == pytest.approx(width, abs=1e-9)  # sums of 64ths are exact in a float
    assert front.wrong == pytest.approx(inside, abs=1e-9)


def test_a_front_with_a_lip_is_as_long_as_the_box_is_wide_and_its_sides_end_at_the_lip():
    found = settings(lipped(box_width=16.0, drawer_depth=18.0))

    assert found["front_length"].value == 16.0
    assert found["side_length"].value == 17.75
    assert found["side_length"].wrong == 17.25


def test_a_side_without_a_lip_is_as_long_as_the_drawer_is_deep():
    assert settings(joint(drawer_depth=18.0))["side_length"].value == 18.0


def test_where_the_box_is_not_known_what_is_taken_off_is_given():
    assert settings(joint())["front_taken_off"].value == 0.5
    assert "side_taken_off" not in settings(joint())
    assert settings(lipped())["front_taken_off"].value == 0.0
    assert settings(lipped())["side_taken_off"].value == 0.25


def test_the_fence_goes_to_the_near_wall_and_the_gauge_from_the_face_of_the_front():
    found = settings(lipped())

    assert (found["fence"].value, found["fence"].wrong) == (0.375, 0.5)
    assert (found["tongue_gauge"].value, found["tongue_gauge"].wrong) == (0.625, 0.375)
    assert (found["tongue_cut"].value, found["slot_depth"].value) == (0.25, 0.5)


def test_without_a_lip_the_rabbet_is_as_wide_as_the_tongue_is_long_and_not_as_the_side_is_thick():
    found = settings(joint())

    assert (found["rabbet_width"].value, found["rabbet_width"].wrong) == (0.25, 0.5)
    assert {"slot_depth", "lip", "shoulder"}.isdisjoint(found)


def test_a_tongue_off_the_inside_face_has_a_shoulder_behind_it():
    assert settings(joint(front=0.75))["shoulder"].value == 0.25
    assert settings(lipped(front=0.8125))["shoulder"].value == 0.0625


def test_the_groove_for_the_bottom_stops_in_the_tongues_groove_where_no_lip_hides_it():
    assert settings(joint())["groove_stop"].value == 0.5
    assert "groove_stop" not in settings(lipped())


@pytest.mark.parametrize(
    ("asked", "rule", "verdict"),
    [
        ({"from_end": 0.25}, "short grain at the end", Verdict.PASS),
        ({"from_end": 0.234375, "side": 0.375, "reach": 0.125}, "short grain at the end", Verdict.STOP),
        ({"front": 0.75, "side": 0.75, "from_end": 0.375}, "end of the side", Verdict.PASS),
        ({"front": 0.75, "side": 0.75, "from_end": 0.359375}, "end of the side", Verdict.STOP),
        ({"reach": 0.25}, "groove depth", Verdict.PASS),
        ({"reach": 0.265625}, "groove depth", Verdict.STOP),
        ({"tongue": 0.125}, "tongue", Verdict.PASS),
        ({"tongue": 0.109375}, "tongue", Verdict.CAUTION),
        ({"tongue": 0.1875}, "cutter at hand", Verdict.PASS),
        (
            {"tongue": 6 / 25.4, "from_end": 0.26, "rack": replace(RACK, cutters=(6 / 25.4,))},
            "cutter at hand",
            Verdict.PASS,
        ),
        ({"tongue": 0.203125}, "cutter at hand", Verdict.CAUTION),
        ({"front": 0.75, "lip": 0.125}, "lip", Verdict.PASS),
        ({"front": 0.75, "lip": 0.109375}, "lip", Verdict.CAUTION),
    ],
)
def test_each_limit_holds_on_both_sides(asked, rule, verdict):
    assert verdicts(joint(**asked))[rule] is verdict


def test_a_joint_without_a_lip_is_not_asked_about_one():
    assert "lip" not in verdicts(joint())


def test_a_short_end_is_mended_with_what_the_front_allows():
    moved = remedy(joint(front=0.75, from_end=0.1875), "short grain at the end")
    thinner = remedy(joint(from_end=0.1875, tongue=0.3125), "short grain at the end")
    thicker = remedy(joint(front=0.3125, from_end=0.125, tongue=0.1875), "short grain at the end")

    assert moved == "Put the groove 1/4 in from the end."
    assert thinner == (
        "Put the groove 1/4 in from the end and make the tongue 1/4 in thick, or the front 9/16 in."
    )
    assert thicker == "Make the front 7/16 in thick, and put the groove 1/4 in from the end."


def test_what_is_said_to_mend_a_short_end_does():
    mended = joint(front=0.4375, from_end=0.25, tongue=0.1875)

    assert verdicts(mended)["short grain at the end"] is Verdict.PASS


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"front": 0.4375}, "make the front 1/2 in thick"),
        ({"lip": 0.25}, "make the front 3/4 in thick"),
        ({"from_end": 0.0}, "make the front 1/2 in thick"),
        ({"reach": 0.5}, "goes through the side of 1/2; make it 1/4"),
        ({"box_width": 1.0}, "make it wider than 1 in"),
        ({"drawer_depth": 0.5}, "ends within its front of 1/2 in; make it deeper"),
    ],
)
def test_what_has_no_room_is_refused_with_what_would(asked, said):
    with pytest.raises(CannotBeLaidOut, match=said):
        joint(**asked)


def test_a_front_too_thin_for_any_tongue_is_refused_with_the_thickness_that_works():
    with pytest.raises(CannotBeLaidOut, match="make the front 3/8 in thick"):
        solve("lock-rabbet", {"height": 4.0, "front": 0.125, "side": 0.5})


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve("lock-rabbet", {"height": 4.0, "front": 0.75, "side": 0.5})

    assert {each.name: each.value for each in found.chosen} == {
        "lip": 0.0,
        "tongue": 0.25,
        "reach": 0.25,
        "from_end": 0.5,
    }
    assert all(str(each.why) and each.source for each in found.chosen)


@given(
    st.integers(32, 72).map(lambda marks: marks / 64),
    st.integers(24, 56).map(lambda marks: marks / 64),
)
def test_what_is_chosen_for_usual_boards_passes_every_stop(front, side):
    asked = {"height": 4.0, "front": max(front, side), "side": side}
    found = solve("lock-rabbet", asked).joint

    assert Verdict.STOP not in verdicts(found).values()


def test_a_thin_side_has_a_thinner_tongue_so_that_its_end_holds():
    assert usual_tongue(0.5, 0.5) == 0.25
    assert usual_tongue(0.375, 0.375) == 0.125
    assert (usual_reach(0.625), usual_reach(0.1)) == (0.3125, 0.05)


def test_only_a_front_without_a_lip_is_shortened():
    assert front_taken_off(0.75, 0.25, 0.0) == 1.0
    assert front_taken_off(0.75, 0.25, 0.125) == 0.0


def test_the_strips_mark_the_groove_and_what_is_cut_off_the_front():
    strips = [(strip.board, strip.face, strip.waste[0]) for strip in lipped().shape.strips]

    assert strips == [
        ("side", "inside face", ((0.375, 0.0), (0.5, 0.0), (0.5, 4.0), (0.375, 4.0))),
        ("front", "inside face", ((0.0, 0.0), (0.25, 0.0), (0.25, 4.0), (0.0, 4.0))),
    ]
    assert [strip.face for strip in joint(front=0.75).shape.strips] == [
        "inside face",
        "outside face",
        "inside face",
    ]


def test_its_name_and_title_are_the_trades():
    assert (KIND.name, KIND.title) == ("lock-rabbet", "Lock rabbet of a side and a front")
