"""Usual sizes follow what was typed: whatever side a maker takes, no default is warned of."""

import pytest
from hypothesis import given
from hypothesis import strategies as some

from casewright.joinery.defaults import usual_lap
from casewright.joinery.families.sliding.rules import usual_shoulder
from casewright.joinery.lap import lap_index
from casewright.measure.findings import Verdict
from units import built, chest

SIDES = ("3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4")
OF_THE_JOINT_ITSELF = {"ends at the face", "groove at the face", "back as the front"}
"""What is warned of because such a joint was asked for, whatever its sizes."""
BESIDE = ("tip ", "composite-wood", "wide boards")
OVERLAY = {"style": {"kind": "full overlay"}}


def warned(drawers):
    """What is warned of that the usual sizes could mend."""
    unit = built(chest({"drawers": drawers}))
    return {
        (found.rule, str(found.message))
        for found in unit.findings
        if found.verdict is not Verdict.PASS
        and found.rule not in OF_THE_JOINT_ITSELF
        and not found.rule.startswith(BESIDE)
    }


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize(
    "joint", ["half-blind dovetail", "through dovetail", "lock rabbet", "box joint", "rabbet and pins"]
)
@pytest.mark.parametrize("back", ["through dovetail", "housing", "as the front"])
@pytest.mark.parametrize("style", [{}, OVERLAY], ids=["inset", "overlay"])
def test_no_usual_size_is_warned_of_whatever_the_side_and_the_joint(side, joint, back, style):
    asked = {"side": side, "front_joint": {"kind": joint}, "back_joint": {"kind": back}, **style}

    assert warned(asked) == set()


@pytest.mark.parametrize("side", SIDES)
def test_a_side_that_slides_into_an_overlay_front_keeps_its_neck(side):
    assert warned({"side": side, "front_joint": {"kind": "sliding dovetail"}, **OVERLAY}) == set()


@pytest.mark.parametrize(
    ("front", "side", "lap"),
    [
        (3 / 4, 1 / 2, 3 / 16),  # 3 × (1/2 ÷ 3/16)² = 21: a quarter does
        (3 / 4, 5 / 8, 1 / 4),  # 3/16 would have an index of 33; 5/8 × √0.1 = 0.198, up to 1/4
        (3 / 4, 3 / 4, 1 / 4),  # 3/4 × √0.1 = 0.237
        (7 / 8, 3 / 4, 1 / 4),
        (1 / 2, 1 / 2, 3 / 16),  # 1/2 × √0.1 = 0.158
        (3 / 8, 3 / 4, 3 / 16),  # no more than half of the front
    ],
)
def test_a_lap_follows_the_side_whose_tails_it_holds(front, side, lap):
    assert usual_lap(front, side) == lap


@given(some.integers(40, 72), some.integers(16, 48))
def test_a_lap_for_a_side_no_thicker_than_its_front_is_never_stopped(front, side):
    lap = usual_lap(front / 64, min(front, side) / 64)

    assert lap_index(min(front, side) / 64, lap) <= 30 + 1e-9


def test_a_front_is_thicker_than_its_sides_and_a_groove_leaves_half_of_them():
    thick, thin = (built(chest({"drawers.side": side})) for side in ("3/4", "3/8"))

    assert thick.spec.drawers.front == 7 / 8  # 3/4 and 1/8
    assert thick.ledger["drawers.front"].value == 7 / 8
    assert thin.spec.drawers.front == 3 / 4
    assert thin.spec.drawers.groove.depth == 3 / 16


def test_what_was_typed_stays_and_is_warned_of():
    typed = built(chest({"drawers": {"side": "3/8", "front": "3/4", "groove": {"depth": "1/4"}}}))

    assert typed.spec.drawers.groove.depth == 1 / 4
    assert [each.rule for each in typed.findings if each.verdict is Verdict.STOP] == [
        "side behind groove"
    ] * 3


def test_a_shoulder_of_a_thin_side_leaves_half_of_it():
    # a socket 1/4 deep at 1:6 takes 1/24 off each face: 3/8 - 3/16 leaves 3/16, 3/32 a face, 5/96 of shoulder
    assert usual_shoulder(3 / 8, 1 / 4, 6) == 3 / 64
    assert usual_shoulder(3 / 4, 1 / 4, 6) == 1 / 16


def test_a_case_lap_follows_a_thick_bottom():
    """3/4 × √0.1 = 0.237, so 1/4 as ever; 1 × √0.1 = 0.316, up to 21/64."""
    plain, thick = built(chest()), built(chest({"case.bottom": "1"}))

    assert (plain.spec.case.lap, thick.spec.case.lap) == (1 / 4, 21 / 64)
    assert not [each for each in thick.findings if each.rule == "JC2" and each.verdict is not Verdict.PASS]


def test_fingers_are_fine_enough_for_the_lowest_box():
    """Three rows in 7-1/2: the lowest opening takes fewer than four fingers of 3/4, four of 3/8 and more."""
    low = chest({"drawers": {"side": "3/4", "front_joint": {"kind": "box joint"}, **OVERLAY}})
    low["body"] = {"width": "24", "depth": "16", "opening_total": "7-1/2"}

    unit = built(low)
    assert not [
        each for each in unit.findings if each.rule == "number of fingers" and each.verdict is Verdict.STOP
    ]
