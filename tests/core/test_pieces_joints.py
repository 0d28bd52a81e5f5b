"""The joints of a whole piece: every part that is joined has its joint, cut to the sizes of the cut list."""

import pytest
from hypothesis import given

from carcases import carcases
from casewright.joinery.families.carcase.joint import CarcaseJoint
from casewright.joinery.families.frame_tenon.joint import FrameTenonJoint
from casewright.joinery.families.housing.joint import HousingJoint
from casewright.joinery.families.sliding.joint import SlidingJoint
from casewright.measure.findings import Verdict
from casewright.pieces.asked.presets import presets
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.joints import other_joints
from closing import faults
from units import built, chest, dresser


def joints_of(made):
    return {each.key: each for each in other_joints(made)}


def part_of(made, code):
    return next(part for part in made.parts if part.code == code)


def test_every_part_of_a_case_that_is_joined_has_a_joint():
    made = built(dresser())

    joined = {code for each in other_joints(made) for code in each.parts}

    for part in made.parts:
        # Top and plinth are screwed on and mitred; drawer backs have dovetails of their own.
        if not part.code.startswith(("A-T", "A-B-")) and not part.code.endswith("-B"):
            assert part.code in joined, part.code
    assert joined <= {part.code for part in made.parts}


def test_places_are_counted_as_the_hours_count_them():
    made = built(dresser())
    joints = joints_of(made)

    assert (joints["rails"].places, joints["bottom"].places) == (4, 2)
    assert joints["dividers"].places == 2 * sum(1 for part in made.parts if part.line in ("C3", "W1"))
    frames = [each for key, each in joints.items() if key.startswith(("runners", "kickers"))]
    assert sum(each.places for each in frames) == 2 * sum(
        1 for part in made.parts if part.line in ("W2", "W3", "W4", "W5")
    )
    assert len(joints["rails"].joint.layout.tails) == made.corners[0].tails
    assert len(joints["bottom"].joint.layout.tails) == made.corners[1].tails


@given(carcases())
def test_lengths_that_follow_from_a_joint_are_those_of_the_cut_list(data):
    made = built(data)

    for each in other_joints(made):
        parts = [part_of(made, code) for code in each.serves[0][1]]
        joint = each.joint
        if isinstance(joint, CarcaseJoint):
            found = next(setting.value for setting in joint.settings if setting.name == "tail_board_length")
        elif isinstance(joint, HousingJoint):
            found = next(setting.value for setting in joint.settings if setting.name == "divider_length")
        elif isinstance(joint, FrameTenonJoint):
            found = joint.rail_length
        else:
            continue
        assert [part.length for part in parts] == pytest.approx([found] * len(parts)), each.key


@given(carcases())
def test_bottoms_and_muntins_are_as_large_as_those_of_the_cut_list(data):
    made = built(data)
    bottoms = [each for each in other_joints(made) if each.key.startswith("bottom_R")]

    assert sum(each.places for each in bottoms) == len(made.drawers)
    for each in bottoms:
        for board, codes in each.serves:
            for part in (part_of(made, code) for code in codes):
                if "bottom" in board:
                    sizes = (each.joint.bottom_width, each.joint.bottom_depth)
                    assert (part.length, part.width) == pytest.approx(sizes), part.code
                elif board == "muntin":
                    assert part.length == pytest.approx(each.joint.muntin_length), part.code


@given(carcases())
def test_every_joint_of_a_case_closes_without_overlap_or_gap(data):
    made = built(data)

    for each in made.case_joints:
        assert not list(faults(each.joint.shape)), each.key


@pytest.mark.parametrize("start", presets(), ids=lambda start: start.key)
def test_no_preset_has_a_case_joint_that_is_warned_of(start):
    made = construct(start.spec(), example_shop())

    warned = [
        (each.key, found.rule)
        for each in made.case_joints
        for found in each.joint.findings
        if found.verdict is not Verdict.PASS
    ]
    assert warned == []


def test_a_measured_side_changes_the_lap_and_not_the_gauge():
    drawn = joints_of(built(dresser()))["bottom"].joint
    thin = {"measured": {"parts": {"C-SL": {"thickness": "11/16"}}}}

    found = joints_of(built(dresser(thin)))["bottom"].joint

    assert found.gauge_1 == drawn.gauge_1 == 0.5
    assert (drawn.given.lap, found.given.lap) == (0.25, 0.1875)


def test_a_measured_divider_has_a_housing_of_its_own():
    thick = {"measured": {"parts": {"D1-RF": {"thickness": "49/64"}}}}

    joints = joints_of(built(dresser(thick)))

    own = next(each for each in joints.values() if "A-D1-RF" in each.parts and "divider" in dict(each.serves))
    assert own.cut_on("divider") == ("A-D1-RF",)
    assert own.joint.width == pytest.approx(49 / 64 + 0.004)
    assert joints["dividers_1" if own.key == "dividers_2" else "dividers_2"].joint.width == pytest.approx(
        0.754
    )


def test_a_bottom_between_unlike_sides_is_as_wide_as_the_room_between_them():
    """Worked by hand: 18-9/16 less 1-1/32 for the sides, and 1/2 of groove less 1/16 of play: 17-31/32."""
    thick = {"measured": {"parts": {"R1-2-SL": {"thickness": "17/32"}, "R1-2-SR": {"thickness": "1/2"}}}}
    made = built(dresser(thick))

    own = next(each for each in other_joints(made) if each.drawers == ("A-R1-2",))

    assert own.joint.bottom_width == part_of(made, "A-R1-2-N").length == 17 + 31 / 32


def test_a_measured_side_that_the_groove_cuts_in_two_is_stopped_and_breaks_nothing():
    made = built(dresser({"measured": {"parts": {"R1-2-SL": {"thickness": "1/4"}}}}))

    stops = [each for each in made.findings if each.verdict is Verdict.STOP and each.about == "A-R1-2"]
    assert "side behind groove" in {each.rule for each in stops}
    assert not any("A-R1-2" in each.drawers for each in other_joints(made))


def test_the_mortise_of_a_kicker_lies_in_whole_wood():
    """Worked by hand: a kicker begins 1/2 in from the rail's end, where its tails have their baseline."""
    kicker = joints_of(built(dresser()))["kickers_1"].joint

    starts = next(each.value for each in kicker.settings if each.name == "mortise_start")
    assert starts == 0.5 + 0.375
    assert kicker.width == 2.5 - 0.375


def test_dividers_slide_in_where_the_maker_asks_for_it():
    joints = joints_of(built(dresser({"case.divider_end": "sliding dovetail"})))

    assert isinstance(joints["dividers"].joint, SlidingJoint)


def test_uprights_in_thin_rails_leave_a_third_of_them():
    """Worked by hand: a third of 1/2 in, down to a 32nd, is 5/32; two of them leave 3/16 of the rail."""
    made = built(chest({"case.divider": "1/2", "rows": [{"columns": 2}, {"columns": 2}, {"columns": 2}]}))

    middle = joints_of(made)["uprights_R2"].joint

    assert middle.given.depth == 5 / 32
    assert part_of(made, "A-R2-U1").length == pytest.approx(made.face.rows[1].height + 5 / 16)


def test_a_joint_that_cannot_be_laid_out_stops_the_unit_and_says_so():
    made = built(dresser({"case.upright_housing": "3/4"}))

    found = [each for each in made.findings if each.rule == "joint of the case"]

    assert [each.verdict for each in found] == [Verdict.STOP]
    assert "goes through the rail of 3/4; make it 1/4" in str(found[0].remedy)
    assert not any(key.startswith("uprights") for key in joints_of(made))
