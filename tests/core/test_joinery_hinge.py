"""Butt hinges let in: places on door and case, how wide and deep their gains are; and that they close."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.hinge.asked import gain_depth, hinges_by_height, usual_leaf
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Stroke
from casewright.measure.findings import Verdict
from closing import faults
from joints import finding, setting, sizes

DOOR = {"height": 24.0, "thickness": 0.75}


def solved(**changes):
    return solve("hinge", {**DOOR, **changes}).joint


@given(
    height=sizes(12, 84),
    thickness=sizes(0.625, 1.5),
    gap=st.sampled_from([0.0, 1 / 32, 1 / 16]),
    over=st.sampled_from([0.0, 0.375, 0.6875]),
    all_in_door=st.sampled_from([0, 1]),
)
def test_door_hinge_and_case_fill_each_other(height, thickness, gap, over, all_in_door):
    joint = solved(height=height, thickness=thickness, gap=gap, over=over, all_in_door=all_in_door)

    assert faults(joint.shape) == []


def test_an_inset_door_by_hand():
    """24 high, 3/4 thick, 1/16 of gap all round; hinges of 2-1/2, 3/16 thick when closed.

    The lowest begins as far up as it is long, 2-1/2; the upper ends 2-1/2 below the top: 24 - 5 = 19. On the
    case both stand 1/16 higher. Of 3/4 the leaf leaves 1/8. Half of 3/16 less 1/16 is 1/16; half of the hinge
    alone, 3/32, would leave no gap.
    """
    joint = solved()

    assert joint.on_door == (2.5, 19.0)
    assert joint.on_case == (2.5625, 19.0625)
    assert setting(joint, "gauge_width").value == 0.625
    assert setting(joint, "gauge_depth").value == 0.0625
    assert setting(joint, "gauge_depth").wrong == 0.09375
    assert setting(joint, "case_1").wrong == 2.5
    assert str(setting(joint, "door_2").note) == (
        "up to 21-1/2 in, from the lower end; its middle at 20-1/4 in; from the upper end 2-1/2 in to 5 in"
    )


def test_an_overlay_door_by_hand():
    """It reaches 11/16 over every edge and lies on the case: nothing of the hinge is left for a gap."""
    joint = solved(over=0.6875)

    assert joint.on_case == pytest.approx((2.5 - 0.6875, 19 - 0.6875))
    assert setting(joint, "gauge_width").value == 0.5625
    assert setting(joint, "gauge_depth").value == 0.09375
    assert setting(joint, "gauge_depth").wrong is None
    assert setting(joint, "line").value == 0.6875


def test_all_in_the_door_is_all_of_the_hinge_but_the_gap():
    joint = solved(all_in_door=1)

    assert joint.depth == pytest.approx(3 / 16 - 1 / 16)
    assert [strip.board for strip in joint.shape.strips] == ["door"]


@given(closed=sizes(0.125, 0.5), gap=sizes(0.0, 0.109375))
def test_both_gains_and_the_gap_are_what_the_hinge_is_thick(closed, gap):
    assert 2 * gain_depth(closed=closed, gap=gap, boards=2) + gap == pytest.approx(closed)


@pytest.mark.parametrize(("height", "count"), [(12, 2), (40, 2), (41, 3), (60, 3), (61, 4), (81, 5)])
def test_high_doors_hang_on_more_hinges(height, count):
    assert hinges_by_height(height) == count
    assert len(solved(height=float(height)).on_door) == count


def test_three_hinges_stand_evenly():
    # 48 high: from 2-1/2 to 43, and halfway between both, 22-3/4
    assert solved(height=48.0).on_door == (2.5, 22.75, 43.0)


def test_a_leaf_leaves_an_eighth_or_half_of_thin_wood():
    assert usual_leaf(0.75) == 0.625
    assert usual_leaf(0.875) == 0.75
    assert usual_leaf(0.1875) == 0.09375


def test_the_strips_bear_the_places_of_door_and_case():
    door, case = solved().shape.strips

    assert (door.foot, case.foot) == ("lower end", "lower edge of the opening")
    for strip, places in ((door, (2.5, 19.0)), (case, (2.5625, 19.0625))):
        stops = sorted(line.start[1] for line in strip.lines if line.stroke is Stroke.STOP)
        assert stops == [end for low in places for end in (low, low + 2.5)]
        assert {line.start[0] for line in strip.lines if line.stroke is Stroke.GAUGE} == {0.625}
    assert door.height == 24


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"leaf": 0.6875}, "wood behind the hinge"),
        ({"leaf": 0.4375}, "leaf of the hinge"),
        ({"over": 0.375}, "leaf of the hinge"),
        ({"gap": 0.15}, "gain depth"),
    ],
)
def test_what_does_not_hold_is_cautioned_with_a_size_that_does(changes, rule):
    found = finding(solved(**changes), rule)

    assert found.verdict is Verdict.CAUTION
    assert any(sign.isdigit() for sign in str(found.remedy))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"leaf": 0.75}, "does not lie on the 3/4 in that the door is thick; take one of 3/8"),
        ({"gap": 0.1875}, "so nothing is let in; leave a gap of 1/16"),
        ({"hinges": 1}, "hang it on 2"),
        ({"height": 8.0, "hinges": 4}, "4 hinges of 2-1/2 in do not fit"),
        ({"over": 0.6875, "offset": 0.5}, "begins 3/16 in below the opening"),
    ],
)
def test_what_cannot_be_let_in_is_refused_with_what_can(changes, said):
    with pytest.raises(CannotBeLaidOut, match=said):
        solved(**changes)
