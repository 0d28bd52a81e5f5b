"""The fronts of drawers: in their openings, around them or before the case, of the size that covers it."""

from itertools import pairwise

import pytest

from casewright.drawing.elevation import elevation
from casewright.drawing.hidden import in_sight
from casewright.drawing.section import section
from casewright.measure.findings import Verdict
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.rules import drawer_rules, front_rules
from units import built, chest, dresser

HANDBOOK_CHERRY = 0.00248
"""Tangential coefficient of black cherry: Wood Handbook, FPL-GTR-190 (2010), table 13-5."""
SWELLING = 2.5
WIDTH, HEIGHT, BODY = 18.625, 5.5, 39.5
"""Opening of the top row of worked dresser A; height of its body, and width as well [in]."""


def styled(kind, more=None, **changes):
    return built(dresser({"drawers.style": {"kind": kind, **(more or {})}, **changes}))


def face_of(unit, code="A-R1-1"):
    return unit.drawer(code).sizes.face


def part(unit, mark, code="A-R1-1"):
    return next(each for each in unit.parts if each.code == f"{code}-{mark}")


def findings(unit, rule):
    return [each for each in unit.findings if each.rule == rule]


def test_a_drawer_is_as_much_shorter_as_the_lap_of_its_front():
    assert drawer_rules.side_length(length=18.75, lap=3 / 16) == 18 + 9 / 16, "worked check K11"


def test_a_lipped_front_covers_its_opening_by_the_lip_less_the_clearance():
    unit = styled("lipped", {"lip": "3/8", "bottom": True})

    assert face_of(unit).width == pytest.approx(WIDTH + 2 * (3 / 8 - 1 / 32))
    assert face_of(unit).height == pytest.approx(HEIGHT + 2 * (3 / 8 - 1 / 32))


def test_a_lip_at_the_top_alone_leaves_the_lower_edge_level_with_the_sides():
    unit = styled("lipped", {"lip": "3/8"})
    front, side = part(unit, "F"), part(unit, "SL")

    assert front.width == pytest.approx(HEIGHT + 3 / 8 - 1 / 32)
    assert front.box.z == pytest.approx(side.box.z)


def test_the_joint_of_a_lipped_front_is_laid_out_inside_its_rabbet():
    unit = built(chest({"drawers.style": {"kind": "lipped", "lip": "3/8", "thick": "3/8"}}))
    drawer, front, side = unit.drawers[0], part(unit, "F"), part(unit, "SL")

    assert drawer.joints.front.given.height == drawer.sizes.height
    assert drawer.joints.front.lap == pytest.approx(3 / 8), "its sockets go up to the lip"
    assert front.box.y == pytest.approx(-3 / 8)
    assert side.box.y == pytest.approx(0.0), "the side begins where the lip lies on the case"
    assert side.box.y + side.length == pytest.approx(drawer.sizes.length)


def test_full_overlay_fronts_cover_the_case_but_for_reveals_and_gaps():
    unit = styled("full overlay", {"edge": "1/16", "gap": "1/8"})
    column = [face_of(unit, f"A-R{row}-1") for row in range(1, 6)]

    assert sum(face.height for face in column) == pytest.approx(BODY - 2 / 16 - 4 / 8)
    assert column[-1].width == pytest.approx(BODY - 2 / 16), "case width less both reveals"
    two = face_of(unit), face_of(unit, "A-R1-2")
    assert sum(face.width for face in two) == pytest.approx(BODY - 2 / 16 - 1 / 8)
    for above, below in pairwise(column):
        assert above.bottom - below.top == pytest.approx(1 / 8)
    assert column[-1].bottom == pytest.approx(1 / 16)
    assert BODY - column[0].top == pytest.approx(1 / 16)


def test_full_overlay_fronts_share_the_height_as_the_openings_do():
    unit = styled("full overlay", {"share": "as the openings"})
    total = BODY - 2 / 16 - 4 / 8

    for row in range(1, 5):
        face, opening = face_of(unit, f"A-R{row}-1"), unit.drawer(f"A-R{row}-1").sizes.opening
        assert face.height == pytest.approx(total * opening.height / 35, abs=1 / 128), "35 in of openings"
        assert face.height * 64 == pytest.approx(round(face.height * 64))


def test_equal_openings_get_equal_fronts():
    unit = built(chest({"graduation": {"rule": "equal"}, "drawers.style": {"kind": "full overlay"}}))

    heights = {round(drawer.sizes.face.height, 6) for drawer in unit.drawers}
    assert max(heights) - min(heights) <= 3 / 64


def test_gaps_over_the_dividers_leave_no_opening_uncovered():
    shared, over = (
        styled("full overlay", {"share": how}) for how in ("as the openings", "over the dividers")
    )

    assert Verdict.STOP in {each.verdict for each in findings(shared, "front covers its opening")}
    assert {each.verdict for each in findings(over, "front covers its opening")} == {Verdict.PASS}
    for drawer in over.drawers:
        face, opening = drawer.sizes.face, drawer.sizes.opening
        assert face.bottom < opening.bottom < opening.bottom + opening.height < face.top


def test_fronts_left_to_themselves_cover_every_opening_and_keep_their_sum():
    """Sum of fronts = face height - 2 edge - (n - 1) gap, however they share it."""
    unit, over = styled("full overlay"), styled("full overlay", {"share": "over the dividers"})
    column = [face_of(unit, f"A-R{row}-1") for row in range(1, 6)]

    assert {each.verdict for each in findings(unit, "front covers its opening")} == {Verdict.PASS}
    assert [face.height for face in column] == [face_of(over, f"A-R{row}-1").height for row in range(1, 6)]
    assert sum(face.height for face in column) == pytest.approx(BODY - 2 / 16 - 4 / 8)


def test_columns_that_differ_part_their_fronts_over_the_upright():
    rows = [{"columns": 2, "widths": ["6", None]}, {}, {}]
    unit = built(chest({"rows": rows, "drawers.style": {"kind": "full overlay"}}))

    assert {each.verdict for each in findings(unit, "front covers its opening")} == {Verdict.PASS}
    left, right = face_of(unit, "A-R1-1"), face_of(unit, "A-R1-2")
    assert left.width + right.width == pytest.approx(24 - 2 / 16 - 1 / 8)


def test_columns_with_rows_of_their_own_share_their_own_part_of_the_face():
    nested = [{"across": [{"rows": [{}, {}]}, {}]}]
    unit = built(chest({"rows": nested, "drawers.style": {"kind": "full overlay"}}))
    upper, lower = (face_of(unit, f"A-R1-1-{row}-1") for row in (1, 2))
    tall = face_of(unit, "A-R1-2")

    assert upper.height + 1 / 8 + lower.height == pytest.approx(tall.height)
    assert upper.width == lower.width
    assert tall.left - upper.right == pytest.approx(1 / 8)


def test_half_overlay_fronts_cover_each_edge_by_the_overlay():
    unit = styled("half overlay", {"overlay": "1/4"})
    usual = styled("half overlay")

    assert (face_of(unit).width, face_of(unit).height) == (WIDTH + 1 / 2, HEIGHT + 1 / 2)
    gaps = findings(usual, "gap between fronts")
    assert min(each.found for each in gaps) >= 1 / 32
    assert face_of(usual).width == pytest.approx(WIDTH + 2 * (3 / 4 - 1 / 8) / 2), "a gap of 1/8 on 3/4"


def test_the_gap_of_two_cherry_fronts_when_they_are_wettest():
    gap = front_rules.gap_when_wettest(
        gap=1 / 8, front=10, other=10, coefficient=HANDBOOK_CHERRY, swelling=SWELLING
    )

    assert gap == pytest.approx(0.125 - 10 * 0.00248 * 2.5), "handbook: size × coefficient × change"
    assert gap == pytest.approx(0.063)


def test_fronts_that_would_meet_when_wet_stop_the_unit():
    tight = styled("full overlay", {"gap": "1/16"})
    [lowest] = [each for each in findings(tight, "gap between fronts") if each.about == "A-R5-1"]
    fronts = face_of(tight, "A-R5-1").height + face_of(tight, "A-R4-1").height

    assert lowest.found == pytest.approx(1 / 16 - fronts / 2 * HANDBOOK_CHERRY * SWELLING)
    assert lowest.verdict is Verdict.STOP
    assert "Make the gap" in str(lowest.remedy)
    assert "front_gap_wettest" in " ".join(each.figure for each in tight.ledger)


def test_an_overlay_drawer_has_a_box_by_the_same_height_rule_and_its_own_front():
    inset, unit = built(dresser()), styled("full overlay")
    front, box_front = part(unit, "F"), part(unit, "BF")

    assert unit.drawers[0].sizes.height == pytest.approx(
        drawer_rules.drawer_height(
            opening=HEIGHT, bottom_gap=0.0, top_gap=1 / 32, coefficient=0.00289, swelling=SWELLING
        )
    )
    assert front.box.y == pytest.approx(-13 / 16)
    # sides of 1/2 dovetailed into it with a lap: 1/8 more than they are
    assert (box_front.thickness, box_front.width) == (5 / 8, unit.drawers[0].sizes.height)
    assert box_front.box.y == 0.0
    assert part(unit, "SL").length == pytest.approx(18.75 - unit.drawers[0].sizes.lap)
    assert unit.spec.overall_depth == pytest.approx(inset.spec.body.depth + 13 / 16), "less than 3/4 of top"
    assert unit.masses.total > inset.masses.total


def test_an_applied_front_takes_its_thickness_off_the_box_behind_it():
    unit = styled("applied front", **{"drawers.box_front": "5/8"})
    sizes = unit.drawers[0].sizes

    assert sizes.box_length == pytest.approx(18.75 - 13 / 16)
    assert part(unit, "BF").box.y == pytest.approx(13 / 16)
    assert sizes.inside.depth == pytest.approx(18.75 - 13 / 16 - 5 / 8 - 1 / 2)
    [slots] = [each for each in findings(unit, "slots for the show front") if each.about == "A-R5-1"]
    assert "through slots" in str(slots.message)


def test_a_cock_bead_goes_over_the_front_and_into_its_lap():
    unit = styled("cock-beaded", {"bead": "1/8", "projection": "1/16"})
    drawer = unit.drawers[0]
    top, bottom, end = (part(unit, mark) for mark in ("CT", "CB", "CL"))

    assert part(unit, "F").width == pytest.approx(drawer.sizes.height - 1 / 8)
    assert drawer.joints.front.given.height == pytest.approx(drawer.sizes.height - 1 / 8)
    assert top.width == pytest.approx(13 / 16 + 1 / 16), "over the whole thickness of the front"
    assert bottom.width == end.width == pytest.approx(3 / 16 + 1 / 16), "as far in as the lap"
    assert (top.length, end.length) == (drawer.sizes.width, drawer.sizes.height)
    assert top.box.z + top.box.height == pytest.approx(part(unit, "SL").box.z + drawer.sizes.height)
    assert {each.verdict for each in findings(unit, "bead in the lap")} == {Verdict.PASS}


def test_a_bead_that_cuts_into_the_sockets_is_stopped():
    deep = styled("cock-beaded", {"rabbet": "1/4"})

    assert {each.verdict for each in findings(deep, "bead in the lap")} == {Verdict.STOP}


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"drawers.style": {"kind": "cock-beaded"}, "drawers.front_joint": {"kind": "box joint"}},
            "half-blind",
        ),
        (
            {"drawers.style": {"kind": "lipped"}, "drawers.front_joint": {"kind": "through dovetail"}},
            "half-blind",
        ),
        ({"drawers.style": {"kind": "lipped", "thick": "7/8"}}, "drawers.style.thick"),
        ({"drawers.style": {"kind": "full overlay", "gap": "9"}}, "drawers.style: reveals and gaps"),
        ({"drawers.style": {"kind": "lipped"}, "drawers.stops": {"inset": "1/16"}}, "drawers.stops.inset"),
        (
            {"drawers.style": {"kind": "lipped"}, "drawers.bottom": {"kind": "solid", "screwed_under": True}},
            "choose a groove",
        ),
    ],
)
def test_what_does_not_go_together_is_refused_with_what_would(changes, said):
    with pytest.raises(CannotBuild, match=said):
        built(dresser(changes))


def test_a_bottom_screwed_under_makes_the_boards_lower_and_needs_no_groove():
    unit = built(dresser({"drawers.bottom": {"kind": "ply", "nominal": "1/2", "hold": "screwed under"}}))
    sizes, bottom, side = unit.drawers[0].sizes, part(unit, "N"), part(unit, "SL")

    assert side.width == pytest.approx(sizes.height - bottom.thickness)
    assert side.box.z == pytest.approx(bottom.box.z + bottom.thickness)
    assert (bottom.length, bottom.width) == pytest.approx((sizes.width, sizes.length))
    assert sizes.inside.height == pytest.approx(HEIGHT - bottom.thickness - 1 / 8)
    assert findings(unit, "JC8") == [] == findings(unit, "room over runner")


def test_a_plain_bottom_has_a_groove_of_its_own_thickness():
    plain = {"kind": "solid", "thickness": "5/16", "edges": "plain"}
    unit = built(chest({"drawers.bottom": plain}))
    typed = built(chest({"drawers.bottom": plain, "drawers.groove": {"width": "1/4"}}))

    assert unit.spec.drawers.groove.width == pytest.approx(5 / 16)
    assert {each.verdict for each in findings(typed, "plain bottom fits its groove")} == {Verdict.STOP}


@pytest.mark.parametrize("kind", ["cock-beaded", "lipped", "full overlay", "half overlay", "applied front"])
def test_every_style_is_drawn(kind):
    unit = styled(kind)

    for drawn in (elevation(unit), section(unit)):
        assert "A-R5-1-F" in drawn.svg(standalone=True)


def test_of_a_case_only_what_no_front_covers_is_drawn():
    rail = (0.75, 10.0, 38.0, 0.75)
    fronts = ((0.0625, 4.0, 39.375, 6.3125), (0.0625, 10.4375, 39.375, 7.0))

    assert in_sight(rail, fronts) == [pytest.approx((0.75, 10.3125, 38.0, 0.125))]
    assert in_sight(rail, ((0.0, 0.0, 40.0, 40.0),)) == []
    assert in_sight(rail, ()) == [rail]
