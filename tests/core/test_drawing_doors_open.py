"""Doors cut open in section and plan, and swung open: what is read back from the drawings is what is made."""

import math
from functools import cache
from typing import Any

import pytest
from test_drawing_reader import Read

from casewright.drawing.door_swing import open_from_above
from casewright.drawing.open_front import clear_between
from casewright.drawing.opened import opened_view, rows_open
from casewright.drawing.plan import plan_levels, plan_view
from casewright.drawing.section import doors_plane, section, section_plane
from casewright.pieces.built.construct import Construction
from units import built, chest

FRAMED = {"kind": "frame-and-panel"}
MAKES = [
    FRAMED,
    {"kind": "frame-and-panel", "middle_rails": 1, "muntins": 1},
    {"kind": "slab", "held": "battens"},
    {"kind": "slab", "held": "breadboard"},
]


def sideboard(leaves: int = 1, **doors: Any) -> Construction:
    """Three drawers over three openings with doors: a shelf in the first, the last hinged at the right."""
    data = chest()
    data["body"] = {"width": "60", "depth": "18", "overall_height": "36"}
    first = {"holds": "doors", "leaves": leaves, "shelves": 1}
    data["rows"] = [
        {"columns": 3, "height": "6"},
        {"across": [first, {"holds": "doors"}, {"holds": "doors", "hinged": "right"}]},
    ]
    return built(data | {"doors": doors})


@cache
def nested() -> Construction:
    """Drawers stand between the doors, where a section finds most of them."""
    data = chest()
    data["body"] = {"width": "60", "depth": "18", "overall_height": "36"}
    rows = [{}, {}, {}]
    data["rows"] = [{"columns": 3, "height": "6"}, {"across": [{"holds": "doors"}, {"rows": rows}, {}]}]
    return built(data)


def close(one, other):
    """Alike but for the rounding of coordinates."""
    return one == pytest.approx(other, abs=1e-4)


def area(corners):
    """Of an outline, by its corners in turn."""
    pairs = zip(corners, [*corners[1:], corners[0]], strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


@pytest.mark.parametrize("make", MAKES)
@pytest.mark.parametrize("style", ["inset", "full overlay"])
def test_the_section_shows_the_door_that_it_cuts_from_end_to_end(make, style):
    unit = sideboard(make=make, style=style)
    drawn = Read(section(unit).svg()).outlines
    plane, door = section_plane(unit), unit.doors[0]

    leaf = next(
        leaf for each in unit.doors for leaf in each.plan.leaves if leaf.x < plane < leaf.x + each.plan.width
    )
    cut = [corners for code, corners in drawn.items() if code.startswith(f"{leaf.code}-")]
    ups = [up for corners in cut for _, up in corners]
    backs = [back for corners in cut for back, _ in corners]
    front = 0.0 if style == "inset" else -door.plan.thickness
    assert close((min(ups), max(ups)), (door.plan.z, door.plan.z + door.plan.height))
    assert close(min(backs), front)


def test_the_sections_of_a_frame_are_those_of_the_drawing_board():
    """Rails of 2-1/4 × 3/4 with a groove of 3/8 × 1/4: 1-11/16 less 3/32; see the sum for the panel.

    The panel of 1/2 lies with its inner face level with the grooves; its tongue is as thick as they are wide.
    """
    unit = sideboard()
    drawn, frame = Read(section(unit).svg()).outlines, unit.doors[0].plan.frame
    assert frame is not None

    rail = next(corners for code, corners in drawn.items() if code.endswith("D1-R1"))
    assert area(rail) == pytest.approx(2.25 * 0.75 - 0.375 * 0.25, abs=1e-3)
    panel = next(corners for code, corners in drawn.items() if code.endswith("D1-P1"))
    backs = sorted({round(back, 4) for back, _ in panel})
    assert max(backs) - min(backs) == pytest.approx(0.5)
    tongue = [back for back, up in panel if abs(up - max(up for _, up in panel)) < 1e-4]
    assert max(tongue) - min(tongue) == pytest.approx(frame.groove)


def test_a_section_does_not_run_between_two_leaves_or_along_a_stile():
    unit = sideboard(leaves=2)

    plane, stile = section_plane(unit), 2.25
    assert not any(
        leaf.x <= plane <= leaf.x + stile
        or leaf.x + door.plan.width - stile <= plane <= leaf.x + door.plan.width
        for door in unit.doors
        for leaf in door.plan.leaves
    )


def test_doors_that_the_section_passes_by_have_one_of_their_own():
    unit = nested()
    door = unit.doors[0].plan

    assert doors_plane(unit, section_plane(unit)) == pytest.approx(door.leaves[0].x + door.width / 2)
    read = Read(section(unit).svg())
    assert "Through R2-1" in read.words
    assert any(close(inches, door.height) for _, inches in read.sizes)
    assert doors_plane(sideboard(), section_plane(sideboard())) is None


@pytest.mark.parametrize("make", MAKES)
@pytest.mark.parametrize("leaves", [1, 2])
def test_the_plan_shows_every_leaf_from_edge_to_edge(make, leaves):
    unit = sideboard(leaves, make=make)
    drawn = Read(plan_view(unit).svg()).outlines

    first, second = plan_levels(unit)
    assert second < first
    for door in unit.doors:
        for leaf in door.plan.leaves:
            corners = [at for code, each in drawn.items() if code.startswith(f"{leaf.code}-") for at in each]
            across = [x for x, _ in corners]
            assert close((min(across), max(across)), (leaf.x, leaf.x + door.plan.width))


def test_the_plans_say_how_high_they_are_cut_and_how_far_a_door_swings():
    unit = sideboard()
    read = Read(plan_view(unit).svg())
    wide = max(door.plan.width for door in unit.doors)

    first, second = plan_levels(unit)
    assert f"Cut through R1, {sized(first)} above the floor" in read.words
    assert f"Cut through R2, {sized(second)} above the floor" in read.words
    assert any(close(inches, wide) for _, inches in read.sizes)
    assert "A-R2-3-D1 swings open to the right" in read.description


def sized(inches):
    """A size by the 64th, as it is lettered."""
    whole, parts = divmod(round(inches * 64), 64)
    if not parts:
        return str(whole)
    shared = math.gcd(parts, 64)
    return f"{whole}-{parts // shared}/{64 // shared}"


def test_an_open_leaf_by_hand():
    """An inset leaf turns about its front edge and stands before its opening, 3/4 of it; one over the case
    turns about the edge of its back and stands beside that edge."""
    inset, over = sideboard().doors, sideboard(style="full overlay").doors

    left, right = inset[0], inset[2]
    assert open_from_above(left, left.plan.leaves[0])[::2] == pytest.approx((0.8125, 0.75))
    assert open_from_above(right, right.plan.leaves[0])[0] == pytest.approx(60 - 0.8125 - 0.75)
    outer = over[0]
    assert open_from_above(outer, outer.plan.leaves[0])[0] == pytest.approx(1 / 16 - 0.75)
    # 19 less the gap of 1/16 at the hinges and the leaf's 3/4
    assert clear_between(left) == pytest.approx((0.75 + 1 / 16 + 0.75, 0.75 + 19))
    assert clear_between(outer) == pytest.approx((0.75, 0.75 + 19))


@pytest.mark.parametrize("style", ["inset", "full overlay"])
@pytest.mark.parametrize("leaves", [1, 2])
def test_the_open_view_has_each_leaf_edge_on_and_its_way_before_the_case(style, leaves):
    unit = sideboard(leaves, style=style)
    read = Read(opened_view(unit).svg())

    for door in unit.doors:
        for leaf in door.plan.leaves:
            patch = read.rectangles[f"{leaf.code}-open"]
            assert close((patch.width, patch.height), (door.plan.thickness, door.plan.height))
        clear = clear_between(door)
        assert any(close(inches, clear[1] - clear[0]) for _, inches in read.sizes)
    widest = max(unit.doors, key=lambda door: door.plan.width).plan
    beside = read.rectangles[widest.leaves[-1].code]
    assert close((beside.x, beside.width), (-widest.width, widest.width))
    assert close((beside.y, beside.height), (widest.z, widest.height))


def test_the_hinges_of_an_open_leaf_stand_where_the_model_has_them():
    unit = sideboard()
    door = unit.doors[0]

    marks = [
        float(rect.get("height"))
        for rect in Read(opened_view(unit).svg()).all("rect")
        if not rect.get("data-code")
    ]
    # Two hinges of 2-1/2 on the leaf beside the case, and two on each of three leaves in front.
    assert sum(abs(high - 2.5) < 1e-4 for high in marks) == 2 + 2 * 3
    assert len(door.hinges) == 2


def test_a_door_beside_drawers_that_come_out_is_dashed_from_the_side():
    read = Read(opened_view(nested()).svg())

    door = nested().doors[0].plan
    assert door.leaves[-1].code not in read.rectangles
    assert any(close(inches, door.width) for _, inches in read.sizes)


def test_of_drawers_that_hide_each_other_the_nearest_is_drawn_and_the_others_are_told():
    data = chest()
    data["body"] = {"width": "60", "depth": "18", "opening_total": "24"}
    data["rows"] = [{"across": [{"rows": [{}, {}, {}]}, {"rows": [{}, {}]}]}]
    unit = built(data)

    assert [each.sizes.code for each in rows_open(unit)] == ["R1-2-1-1", "R1-2-2-1"]
    words = " ".join(Read(opened_view(unit).svg()).words)
    assert "Behind them, so far out: R1-1-1-1" in words


@pytest.mark.parametrize("view", [section, plan_view, opened_view])
@pytest.mark.parametrize("make", MAKES)
@pytest.mark.parametrize("leaves", [1, 2])
def test_no_lettering_stands_in_other_lettering(view, make, leaves):
    for unit in (sideboard(leaves, make=make), nested()):
        read = Read(view(unit).svg())
        assert read.clashes == []
        assert all(read.page.holds(patch) for _, patch in read.lettering)
