"""The corners of drawers: every joint gives its boards the lengths by which it closes, and is counted."""

from collections import Counter

import pytest

from casewright.labour.drivers import Driver
from casewright.measure.findings import Verdict
from casewright.papers.unit_report import joints_section
from casewright.papers.writing import Writing
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.built.gauges_to_set import gauges_to_set
from casewright.pieces.built.joints import other_joints
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from closing import faults
from units import built, chest, dresser, estimated

FRONT, SIDE, BACK, LENGTH, WIDTH = 0.8125, 0.5, 0.5, 18.75, 18.5625
"""Of the drawers of the top row of worked dresser A [in]."""


def joined(front="half-blind dovetail", back="through dovetail", **more):
    """Worked dresser A with other joints at the corners of its drawers."""
    changes = {"drawers.front_joint": {"kind": front}, "drawers.back_joint": {"kind": back}}
    return built(dresser(changes | more))


def sizes_of(unit):
    return unit.drawers[0].sizes


def part(unit, mark):
    return next(each for each in unit.parts if each.code == f"A-R1-1-{mark}")


def findings(unit, rule):
    return [each for each in unit.findings if each.rule == rule and each.about.startswith("A-R1-1")]


@pytest.mark.parametrize(
    ("front", "more", "length"),
    [
        # The length of the drawer less what the front keeps before the end of the side.
        ("half-blind dovetail", {}, LENGTH - 3 / 16),
        ("through dovetail", {}, LENGTH),
        ("box joint", {}, LENGTH),
        ("lock rabbet", {}, LENGTH),
        ("lock rabbet", {"lip": "1/4"}, LENGTH - 1 / 4),
        ("rabbet and pins", {"lip": "5/16"}, LENGTH - 5 / 16),
        ("sliding dovetail", {"depth": "1/4"}, LENGTH - FRONT + 1 / 4),
    ],
)
def test_a_side_is_as_long_as_its_front_joint_leaves_it(front, more, length):
    unit = joined(front, **{"drawers.front_joint": {"kind": front, **more}})

    assert sizes_of(unit).side_length == pytest.approx(length), "geometry: length less what is not engaged"
    assert {part(unit, mark).length for mark in ("SL", "SR")} == {sizes_of(unit).side_length}


def test_a_back_that_is_pinned_takes_its_lip_off_the_sides_too():
    unit = joined(
        "rabbet and pins",
        "as the front",
        **{"drawers.front_joint": {"kind": "rabbet and pins", "lip": "1/4"}},
    )

    assert sizes_of(unit).side_length == pytest.approx(LENGTH - 2 * 1 / 4)


def test_the_front_of_a_lock_rabbet_is_as_long_as_its_tongues_reach():
    joint = {"kind": "lock rabbet", "reach": "1/4"}
    unit = joined("lock rabbet", "as the front", **{"drawers.front_joint": joint})

    between = WIDTH - 2 * (SIDE - 1 / 4)  # box width less what the grooves leave of both sides
    assert part(unit, "F").length == pytest.approx(between)
    assert part(unit, "B").length == pytest.approx(between)


def test_a_housed_back_is_shorter_and_stands_in_from_the_ends_of_the_sides():
    joint = {"kind": "housing", "depth": "1/8", "set_in": "3/4"}
    unit = joined(back="housing", **{"drawers.back_joint": joint})
    sizes, back, bottom = sizes_of(unit), part(unit, "B"), part(unit, "N")

    assert back.length == pytest.approx(WIDTH - 2 * SIDE + 2 * 1 / 8)
    assert back.box.y + back.box.depth == pytest.approx(LENGTH - 3 / 4)
    assert part(unit, "SL").box.y + part(unit, "SL").length == pytest.approx(LENGTH)
    assert sizes.inside.depth == pytest.approx(LENGTH - 3 / 4 - FRONT - BACK)
    assert bottom.width == pytest.approx(LENGTH - 3 / 4 - FRONT + 1 / 4), "up to the rear of the back"


def test_unlike_sides_give_a_housed_back_what_lies_between_them():
    measured = {"parts": {"R1-1-SL": {"thickness": "17/32"}}}
    unit = joined(
        back="housing", measured=measured, **{"drawers.back_joint": {"kind": "housing", "depth": "1/8"}}
    )

    assert part(unit, "B").length == pytest.approx(WIDTH - SIDE - 17 / 32 + 2 * 1 / 8)


FRONTS = ("through dovetail", "sliding dovetail", "lock rabbet", "box joint", "rabbet and pins")


PAIRS = [(front, back) for front in FRONTS for back in ("through dovetail", "housing", "as the front")]


@pytest.mark.parametrize(("front", "back"), PAIRS)
def test_the_joints_close_in_space(front, back):
    unit = joined(front, back)

    for placed in drawer_ends(unit):
        assert faults(placed.joint.shape) == [], placed.title


@pytest.mark.parametrize("front", FRONTS)
def test_every_other_corner_has_a_card_that_names_its_parts_once(front):
    unit = joined(front, "housing")
    held = [each for each in other_joints(unit) if each.key.startswith(("front_", "back_"))]

    served = Counter(code for each in held for code in each.parts)
    for drawer in unit.drawers:
        assert served[f"{drawer.code}-F"] == 1
        assert served[f"{drawer.code}-SL"] == 2, "its front end and its rear end"
        assert served[f"{drawer.code}-B"] == 1
    assert sum(each.places for each in held) == 4 * len(unit.drawers)


def test_a_card_calls_the_boards_of_a_drawer_by_their_names():
    [slid] = {each.title: each for each in drawer_ends(joined("sliding dovetail"))}.values()
    words = " ".join(str(each.label) + str(each.note) for each in slid.joint.settings)

    assert "case side" not in words
    assert "divider" not in words.lower()
    assert {board.name for board in slid.joint.shape.boards} == {"front", "side"}
    said = {each.name: each.value for each in slid.joint.settings}
    assert said["side_length"] == sizes_of(joined("sliding dovetail")).side_length


def test_a_back_joined_as_the_front_is_called_the_back():
    backs = [
        each for each in drawer_ends(joined("lock rabbet", "as the front")) if each.key.startswith("back")
    ]
    said = " ".join(str(each.note) for held in backs for each in held.joint.settings)

    assert "front" not in said
    assert "on the ends and edges of the back" in said


@pytest.mark.parametrize("front", ["half-blind dovetail", "sliding dovetail"])
def test_a_back_as_a_front_that_keeps_a_lap_is_dovetailed_through_and_says_so(front):
    asked, usual = joined(front, "as the front"), joined(front, "through dovetail")

    [said] = [each for each in asked.findings if each.rule == "back as the front"]
    assert said.verdict is Verdict.CAUTION
    assert f"A back has no {front}" in str(said.message)
    assert [each.sizes for each in asked.drawers] == [each.sizes for each in usual.drawers]
    assert describe(asked) == describe(usual)
    assert not [each for each in usual.findings if each.rule == "back as the front"]


def test_a_lock_rabbet_without_room_is_refused_beside_its_field():
    with pytest.raises(CannotBuild, match=r"drawers\.front_joint: .*make the front"):
        joined(**{"drawers.front_joint": {"kind": "lock rabbet", "lip": "1/2", "tongue": "3/8"}})


def test_a_box_lowered_to_whole_fingers_has_the_fingers_of_its_cutter():
    unit = joined(
        **{"drawers.front_joint": {"kind": "box joint", "finger": "1/2", "height": "whole fingers"}}
    )

    for drawer in unit.drawers:
        assert drawer.sizes.height % (1 / 2) == pytest.approx(0)
        assert drawer.sizes.opening.height - drawer.sizes.height >= 1 / 32
        cutter = next(each.value for each in drawer.joints.front.settings if each.name == "cutter")
        assert cutter == pytest.approx(1 / 2), "common practice: a finger is as wide as its cutter, exactly"


@pytest.mark.parametrize("style", ["full overlay", "applied front", "half overlay"])
def test_the_usual_box_jointed_drawer_has_whole_fingers_by_one_cutter_and_nothing_stops_it(style):
    """Fingers from half to twice the board; the groove from 3/8 to 5/8 lies in one of 3/8."""
    unit = joined("box joint", **{"drawers.style": {"kind": style}})

    cutters = {
        each.value
        for drawer in unit.drawers
        for each in drawer.joints.front.settings
        if each.name == "cutter"
    }
    assert {round(cutter, 9) for cutter in cutters} == {3 / 8}
    for rule in ("cutter at hand", "groove and fingers", "number of fingers"):
        assert {each.verdict for each in findings(unit, rule)} == {Verdict.PASS}, rule
    chosen = {each.name: each.value for each in unit.chosen}
    assert chosen["finger"] == 3 / 8
    assert chosen["play"] == 0.004


def test_joints_that_show_say_so_and_a_show_front_covers_them():
    plain = joined("through dovetail")
    covered = joined("through dovetail", **{"drawers.style": {"kind": "applied front"}})

    assert [each.verdict for each in findings(plain, "ends at the face")] == [Verdict.CAUTION]
    assert "stop it 13/16 in short of the front end" in str(findings(plain, "groove at the face")[0].message)
    assert [each.verdict for each in findings(covered, "ends at the face")] == [Verdict.PASS]
    assert [each.verdict for each in findings(covered, "groove at the face")] == [Verdict.PASS]
    assert findings(joined(), "ends at the face") == []


def test_a_sliding_dovetail_wants_a_front_wider_than_its_box():
    inset = findings(joined("sliding dovetail"), "front beyond the side")
    overlaid = findings(
        joined("sliding dovetail", **{"drawers.style": {"kind": "full overlay"}}), "front beyond the side"
    )

    assert [each.verdict for each in inset] == [Verdict.STOP]
    assert [each.verdict for each in overlaid] == [Verdict.PASS]


@pytest.mark.parametrize("front", ["through dovetail", "sliding dovetail", "lock rabbet", "rabbet and pins"])
def test_what_the_groove_leaves_of_a_side_is_checked_with_every_joint(front):
    deep = joined(front, **{"drawers.groove": {"depth": "3/8"}})

    [side] = findings(deep, "side behind groove")
    assert side.verdict is Verdict.STOP
    assert side.needed == pytest.approx(max(1 / 8, SIDE / 2)), "the greater of 1/8 in and half the side"


@pytest.mark.parametrize("back", ["as the front", "through dovetail"])
def test_a_box_joint_in_an_inset_front_is_cut_by_one_cutter_and_its_top_finger_has_the_rest(back):
    unit = joined("box joint", back)

    said = [each.rule for each in unit.findings if each.verdict is Verdict.STOP]
    assert not {"cutter at hand", "groove and fingers", "number of fingers"} & set(said)
    for placed in drawer_ends(unit):
        spans = sorted((*placed.joint.of.front_fingers, *placed.joint.of.side_fingers))
        widths = [high - low for low, high in spans]
        assert widths[:-1] == pytest.approx([3 / 8] * (len(widths) - 1)), "one cutter for every drawer"
        assert widths[-1] + 1e-9 >= 3 / 16
        assert widths[-1] < 3 / 8 * 1.5
        assert faults(placed.joint.shape) == []


def test_hours_count_what_is_cut():
    dovetailed = estimated(dresser()).drivers
    boxed = estimated(
        dresser(
            {"drawers.front_joint": {"kind": "box joint"}, "drawers.back_joint": {"kind": "as the front"}}
        )
    ).drivers
    locked = estimated(
        dresser({"drawers.front_joint": {"kind": "lock rabbet"}, "drawers.back_joint": {"kind": "housing"}})
    ).drivers

    assert dovetailed[Driver.DOVETAIL_JOINTS] == 24
    assert Driver.BOX_JOINT_CORNERS not in dovetailed
    assert (boxed[Driver.DRAWER_TAILS], boxed[Driver.DOVETAIL_JOINTS]) == (0, 0)
    assert boxed[Driver.BOX_JOINT_CORNERS] == 24
    assert locked[Driver.LOCK_RABBET_CORNERS] == 12
    assert locked[Driver.LOCK_RABBET_BATCHES] == 1, "one set-up for all fronts of one thickness"
    assert locked[Driver.DRAWER_HOUSINGS] == 12
    assert locked[Driver.RABBETED_ENDS] == 0, "the rabbet belongs to half-blind dovetails"


def test_gauges_of_other_joints_are_on_the_sheet_with_what_they_serve():
    lines = gauges_to_set(joined("rabbet and pins"))

    [first] = [each for each in lines if each.name == "Drawer front, gauge 1"]
    assert first.setting == pytest.approx(FRONT - sizes_of(joined("rabbet and pins")).side_start)
    assert {f"{each.code}-F" for each in joined().drawers} <= set(first.serves)
    assert not [each for each in lines if each.name == "Gauge 2"]


def test_the_report_has_no_dovetails_where_none_are_cut():
    text = joints_section(joined("box joint", "housing"), Writing())

    assert "left of the side after the rabbet" not in text
    assert "Front, half-blind" not in text
    assert "Drawer front, box joint" in text
    assert "Drawer back, housing" in text


def test_a_file_without_a_kind_means_the_dovetails_it_always_meant():
    before = built(chest({"drawers.front_joint": {"slope": 6}}))

    assert before.drawers[0].joints.half_blind is not None
    assert before.drawers[0].joints.half_blind.layout.slope == 6
    assert before.drawers[0].joints.through is not None


def test_tails_through_the_front_are_gauged_on_the_front():
    [first, *_] = drawer_ends(joined("through dovetail"))
    said = {str(each.label): each.value for each in first.joint.settings}

    assert said["Gauge on the side"] == pytest.approx(FRONT), (
        "the thickness of the board that they go through"
    )
    assert said["Gauge on the front"] == pytest.approx(SIDE)
    assert not [label for label in said if "back" in label.lower()]
    assert {board.name for board in first.joint.shape.boards} == {"front", "side"}


def test_what_was_left_out_of_a_joint_is_named_with_its_ground():
    chosen = {each.name: each for each in joined("rabbet and pins").chosen}

    assert {"lip", "pin", "pin_length"} <= set(chosen)
    assert chosen["pin_length"].value == pytest.approx(3 * SIDE), "from memory: three times the side"
    typed = joined(**{"drawers.front_joint": {"kind": "rabbet and pins", "lip": "5/16"}})
    assert "lip" not in {each.name for each in typed.chosen}
