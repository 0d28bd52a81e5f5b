"""Nothing that is lettered in a view stands on a line of it, by shapely: of starting units, and of doors."""

from collections.abc import Iterator
from functools import cache
from itertools import pairwise

import pytest
from shapely import LineString, Point, STRtree, box
from test_drawing_reader import SVG, Read, corners

from casewright.drawing.elevation import elevation
from casewright.drawing.opened import opened_view
from casewright.drawing.plan import plan_view
from casewright.drawing.section import section
from casewright.pieces.asked.presets import presets
from units import built, chest

SHRUNK = 0.08
"""The least patch of a letter, drawn in by so much of its height: what touches its edge is not on it."""
LINES = ("witness", "seen", "hidden", "break", "dimension", "front", "object", "cut", "floor")
VIEWS = {"front": elevation, "section": section, "plan": plan_view, "opened": opened_view}


def bank(width, **doors):
    """Drawers over doors, rows of their own between them; a shelf behind the first."""
    data = chest()
    data["body"] = {"width": str(width), "depth": "18", "overall_height": "36"}
    first = {"holds": "doors", "leaves": 2, "shelves": 1}
    rows = [{"columns": 2}, {}, {}]
    data["rows"] = [
        {"columns": 3, "height": "6"},
        {"across": [first, {"rows": rows}, {"holds": "doors", "hinged": "right"}]},
    ]
    return data | {"doors": doors}


CASES = {each.key: each.spec_json for each in presets()} | {
    "bank with doors": bank(60),
    "wide bank with doors": bank(150),
    "bank with overlay doors": bank(60, style="full overlay", make={"kind": "slab", "held": "breadboard"}),
}


@cache
def unit_of(key):
    return built(CASES[key])


def strokes(group) -> Iterator[LineString]:
    """Every straight stroke of a group, and its circles."""
    for each in group:
        kind = each.tag.removeprefix(SVG)
        if kind == "circle":
            middle = Point(float(each.get("cx")), -float(each.get("cy")))
            yield middle.buffer(float(each.get("r"))).exterior
        for run in runs(kind, each):
            yield from (LineString(pair) for pair in pairwise(run))


def runs(kind, each):
    """The points that a stroke goes through, one after the other."""
    if kind == "rect":
        x, y, width, height = (float(each.get(name)) for name in ("x", "y", "width", "height"))
        return [[(x, -y), (x + width, -y), (x + width, -y - height), (x, -y - height), (x, -y)]]
    if kind == "path":
        return [corners(part.replace("L", " ")) for part in each.get("d").split("M")[1:]]
    if kind in ("polygon", "polyline"):
        found = corners(each.get("points"))
        return [[*found, found[0]] if kind == "polygon" else found]
    return []


@pytest.mark.parametrize("view", sorted(VIEWS))
@pytest.mark.parametrize("key", sorted(CASES))
def test_nothing_that_is_lettered_stands_on_a_line(key, view):
    read = Read(VIEWS[view](unit_of(key)).svg())
    drawn = [each for group in read.all("g") if group.get("class") in LINES for each in strokes(group)]
    tree = STRtree(drawn)

    struck = []
    for words, patch in read.lettering:
        inset = SHRUNK * min(patch.width, patch.height)
        place = box(
            patch.x + inset,
            patch.y + inset,
            patch.x + patch.width - inset,
            patch.y + patch.height - inset,
        )
        struck += [words for _ in tree.query(place, predicate="intersects")]
    assert struck == []
    assert read.clashes == []
