"""Plan, open view and the links of the front: what is read back from the drawing is what the model holds."""

import json

import pytest
from hypothesis import given
from test_drawing_reader import Read, cases

from casewright.drawing.drawings import unit_drawings
from casewright.drawing.elevation import elevation
from casewright.drawing.opened import opened_view, rows_open
from casewright.drawing.plan import plan_level, plan_view
from casewright.pieces.asked.presets import presets
from units import built, changed, chest, dresser

STACKED = {
    "body.width": "40",
    "body.opening_total": "20",
    "rows": [
        {"height": "5", "columns": 2},
        {"across": [{"width": "12", "rows": [{}, {"height": "6"}]}, {"holds": "doors"}]},
    ],
}


def close(one, other):
    """Alike but for the rounding of coordinates."""
    return one == pytest.approx(other, abs=1e-4)


@given(cases())
def test_whatever_the_plan_cuts_lies_where_the_model_has_it(data):
    unit = built(data)
    level = plan_level(unit)

    drawn = Read(plan_view(unit).svg()).outlines

    cut = [part for part in unit.parts if part.box.z < level < part.box.z + part.box.height]
    assert set(drawn) == {part.code for part in cut}
    for part in cut:
        across, deep = zip(*drawn[part.code], strict=True)
        assert close(min(across), part.box.x)
        assert close(max(across), part.box.x + part.box.width)
        assert close(min(deep), part.box.y)
        assert close(max(deep), part.box.y + part.box.depth)


def test_the_plan_of_the_worked_dresser_is_lettered_with_its_widths_and_depths():
    words = Read(plan_view(built(dresser())).svg()).words

    assert {"R1-1", "R1-2", "18-5/8", "overall 41", "19-3/4", "18-3/4"} <= set(words)


KITCHEN = next(each.spec_json for each in presets() if each.key == "kitchen-bank")
NOTCHED = changed(KITCHEN, {"rows.1": {"notch": {"width": "8", "depth": "9", "off": "1", "toward": "right"}}})


def test_the_plan_of_a_notched_drawer_is_a_u_with_its_sizes():
    unit = built(NOTCHED)

    read = Read(plan_view(unit).svg())

    # Drawer 21-17/32: (21-17/32 - 8) / 2 + 1 at the left, 8, and the rest; the notch begins at 22 - 9.
    assert {"7-49/64", "8", "5-49/64", "13", "22", "R2-1"} <= set(read.words)
    boards = {code.rpartition("-")[2] for code in read.outlines if code.startswith("A-R2-1-")}
    assert {"SL", "SR", "BL", "BR", "IL", "IR", "IB"} <= boards
    left, right = ([x for x, _ in read.outlines[f"A-R2-1-{mark}"]] for mark in ("IL", "IR"))
    assert close(min(right) - max(left), 8)
    assert close(max(y for _, y in read.outlines["A-R2-1-IB"]), 13)


@pytest.mark.parametrize("data", [NOTCHED, KITCHEN], ids=["notched", "plain"])
def test_the_files_of_a_unit_have_every_view(data):
    files = unit_drawings(built(data))

    assert {"elevation.svg", "section.svg", "plan.svg", "opened.svg"} <= set(files)
    assert all("<title" in files[f"{view}.svg"] for view in ("plan", "opened"))


def test_a_notch_changes_nothing_of_the_elevation():
    plain, notched = (Read(elevation(built(data)).svg()) for data in (KITCHEN, NOTCHED))

    assert (plain.words, plain.rectangles) == (notched.words, notched.rectangles)


@given(cases())
def test_every_drawer_is_drawn_out_by_its_travel_at_its_height(data):
    unit = built(data)

    read = Read(opened_view(unit).svg())

    boxes = {part.code: part.box for part in unit.parts}
    for drawer in rows_open(unit):
        side, front = read.rectangles[f"{drawer.code}-SL"], read.rectangles[f"{drawer.code}-F"]
        low = unit.face.base_height + drawer.sizes.opening.bottom + unit.spec.drawers.clearances.bottom
        shut = boxes[f"{drawer.code}-F"]
        assert close((side.x, side.width), (-drawer.travel, drawer.travel))
        assert close((side.y, side.height), (low, drawer.sizes.height))
        assert close((front.x, front.width), (shut.y - drawer.travel, shut.depth))
        assert close((front.y, front.height), (shut.z, shut.height))
        assert any(close(inches, drawer.travel) for _, inches in read.sizes)


def test_an_overlay_front_is_drawn_before_the_case_and_over_its_edges():
    unit = built(chest({"drawers.style": {"kind": "full overlay"}}))

    drawer = rows_open(unit)[0]
    front = Read(opened_view(unit).svg()).rectangles[f"{drawer.code}-F"]

    assert front.x + front.width == pytest.approx(-drawer.travel, abs=1e-4)
    assert front.height > drawer.sizes.opening.height


def test_a_framed_side_is_drawn_with_its_stiles_and_rails():
    unit = built(chest({"case.sides": "framed"}))

    drawn = Read(opened_view(unit).svg()).rectangles

    frame = unit.case.plan.frame
    stiles = [part for part in unit.parts if part.line == "V1" and part.box.x < 1]
    assert len(stiles) == 2
    for part in stiles:
        assert close((drawn[part.code].x, drawn[part.code].width), (part.box.y, part.box.depth))
    assert frame is not None


def test_one_drawer_stands_for_all_at_its_height():
    unit = built(dresser())

    assert [each.code for each in rows_open(unit)] == ["A-R1-1", "A-R2-1", "A-R3-1", "A-R4-1", "A-R5-1"]


@pytest.mark.parametrize("key", [each.key for each in presets()])
def test_every_starting_unit_has_its_plan_and_its_open_view(key):
    unit = built(next(each for each in presets() if each.key == key).spec_json)

    assert Read(plan_view(unit).svg()).words
    assert Read(opened_view(unit).svg()).words


def links(unit):
    """The links of its front, by what they stand on."""
    read = Read(elevation(unit, where=lambda code: f"#{code}").svg())
    return {each.get("data-pick"): each for each in read.all("a")}, read


@pytest.mark.parametrize("data", [dresser(), chest(STACKED)], ids=["dresser", "stacked"])
def test_every_opening_has_a_link_as_large_as_it_and_named(data):
    unit = built(json.loads(json.dumps(data)))

    found, _ = links(unit)

    for opening in (*unit.face.openings, *unit.face.spaces):
        place = found[opening.code][0]
        low = unit.face.base_height + opening.bottom
        assert float(place.get("x")) == pytest.approx(opening.left, abs=1e-4)
        assert float(place.get("width")) == pytest.approx(opening.width, abs=1e-4)
        assert -float(place.get("y")) >= low + opening.height - 1e-4
        assert found[opening.code].get("aria-label").startswith(f"{opening.code}: ")
    assert {"top", "base", "side", "R1"} <= set(found)


def test_links_change_nothing_of_what_is_drawn():
    unit = built(dresser())

    _, linked = links(unit)
    plain = Read(elevation(unit).svg())

    assert linked.page == plain.page
    assert linked.words == plain.words
    assert plain.all("a") == []
