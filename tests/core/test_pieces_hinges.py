"""The hinges of a unit's doors: what the maker types, what they serve, and what reports and files say."""

from typing import Any

import pytest

from casewright.joinery.families.hinge.joint import HingeJoint
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.working import explain
from casewright.papers.boring import boring_files, hinge_templates
from casewright.papers.data import unit_data
from casewright.papers.doors import doors_section
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.writing import Writing
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.joints import PlacedJoint
from printed import head
from units import built, chest


def sideboard(leaves: int = 1, **doors: Any) -> Construction:
    """A drawer over two openings with doors, the right one hinged at the right where it is single."""
    data = chest()
    data["body"] = {"width": "40", "depth": "16", "overall_height": "36"}
    across = [{"holds": "doors", "leaves": leaves}, {"holds": "doors", "leaves": leaves, "hinged": "right"}]
    data["rows"] = [{"height": "6"}, {"across": across}]
    return built(data | {"doors": doors})


def placed(unit: Construction) -> list[PlacedJoint]:
    return [each for each in unit.case_joints if each.kind == "hinge"]


def joint_of(unit: Construction) -> HingeJoint:
    joint = placed(unit)[0].joint
    assert isinstance(joint, HingeJoint)
    return joint


def test_the_hinges_stand_on_the_case_where_the_closed_door_has_them():
    unit = sideboard()
    joint, door = joint_of(unit), unit.doors[0]

    base = unit.face.base_height
    for number, middle in enumerate(door.hinges):
        on_door = door.plan.z + middle - joint.given.length / 2
        on_case = base + door.plan.opening.bottom + joint.on_case[number]
        assert on_door == pytest.approx(on_case)


def test_a_gap_of_an_eighth_is_taken_from_the_gains():
    # closed 3/16 less a gap of 1/8, and half of it in each: 1/32
    joint = joint_of(sideboard(gap="1/8"))

    assert joint.depth == pytest.approx(1 / 32)
    assert joint.on_case[0] - joint.on_door[0] == pytest.approx(1 / 8)


def test_leaves_that_hang_alike_share_a_card_and_both_sides_are_on_it():
    unit = sideboard()

    [each] = placed(unit)
    assert each.places == 4
    assert dict(each.serves) == {
        "door": ("A-R2-1-D1-S1", "A-R2-2-D1-S2"),
        "case side": ("A-C-SL", "A-C-SR"),
    }


def test_two_leaves_hang_on_the_side_and_on_the_upright():
    unit = sideboard(leaves=2)

    names = {name for each in placed(unit) for name, _ in each.serves}
    assert names == {"door", "case side", "upright"}
    codes = {part.code for part in unit.parts}
    assert all(set(each.parts) <= codes for each in placed(unit))


def test_what_the_maker_types_of_the_hinge_is_taken():
    joint = joint_of(
        sideboard(
            hinge_length="2", hinge_offset="3", hinge_leaf="1/2", hinge_closed="1/4", hinge_gains="door"
        )
    )

    assert joint.on_door[0] == 3
    assert (joint.given.length, joint.given.leaf) == (2, 0.5)
    assert joint.depth == pytest.approx(1 / 4 - 1 / 16)
    assert joint.given.all_in_door


def test_hinges_that_are_not_let_in_have_no_card_and_keep_their_places():
    unit = sideboard(hinge_gains="none")

    assert placed(unit) == []
    assert "not let in" in doors_section(unit, Writing())
    assert all(each["gains"] is None for each in unit_data(unit)["doors"])
    assert hinge_templates(unit) == ()


def test_hinges_thinner_than_the_gap_are_cautioned_at_their_door():
    unit = sideboard(gap="1/4")

    [found] = [each for each in unit.findings if each.rule == "hinges let in"]
    assert found.verdict is Verdict.CAUTION
    assert "leave a gap of 1/16" in str(found.remedy)


def test_an_overlay_leaf_is_let_into_what_it_reaches_over():
    unit = sideboard(style="full overlay")
    joint, plan = joint_of(unit), unit.doors[0].plan

    assert joint.given.over == plan.over.left == 0.6875
    assert joint.on_case[0] == pytest.approx(joint.on_door[0] - plan.over.below)


def test_a_place_says_where_it_comes_from():
    unit = sideboard()

    told = explain(unit.ledger, "case.joints.hinges.case_1")
    assert "lower + foot" in told.rule
    assert explain(unit.ledger, "case.joints.hinges.gauge_depth").source
    assert explain(unit.ledger, "case.joints.hinges.gauge_width").source == "common practice."
    assert "default" in str(unit.ledger["doors.hinge_closed"].basis)


def test_report_and_data_name_every_hinge_from_below_and_from_above():
    unit = sideboard()
    plan = unit.doors[0].plan

    first = unit_data(unit)["doors"][0]
    assert first["hinges_from_below_in"] == pytest.approx([3.75, plan.height - 3.75])
    assert first["hinges_from_above_in"] == pytest.approx([plan.height - 3.75, 3.75])
    assert first["gains"]["depth_in"] == pytest.approx(1 / 16)
    line = next(line for line in doors_section(unit, Writing()).splitlines() if "A-R2-1-D1" in line)
    assert "2-1/2 × 5/8 × 1/16" in line
    assert doors_section(built(chest()), Writing()) == ""


def test_the_templates_of_hinges_come_beside_those_of_pulls():
    unit = sideboard()

    files = boring_files(unit, unit.spec.unit)
    assert "A-hinges-template.pdf" in files
    door, case = hinge_templates(unit)
    assert door.serves == "A-R2-1-D1-S1, A-R2-2-D1-S2"
    assert case.serves == "A-C-SL, A-C-SR"
    assert not [name for name in boring_files(built(chest()), unit.spec.unit) if "hinges" in name]


@pytest.mark.parametrize("unit", LengthUnit)
def test_the_cards_of_a_job_have_the_hinges_with_their_templates_and_gauges(unit):
    paper = joint_cards_paper(head(unit=unit), [sideboard()])

    [card] = [each for each in paper.others if each.title == "Hinges of the doors, let in"]
    assert card.drawing
    strips = [each for each in paper.strips if each.title == "Hinges of the doors, let in"]
    assert [(each.board, each.serves) for each in strips] == [
        ("door", "A-R2-1-D1-S1, A-R2-2-D1-S2"),
        ("case side", "A-C-SL, A-C-SR"),
    ]
    gauges = [each for each in paper.gauges if each.name.startswith("Hinges of the doors")]
    assert len(gauges) == 2
