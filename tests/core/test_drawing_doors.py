"""Doors in the front elevation: what is drawn is what is made, hinges and knobs where they go."""

from typing import Any

import pytest
from test_drawing_reader import Patch, Read

from casewright.drawing.elevation import elevation
from casewright.pieces.built.construct import Construction
from units import built, chest

MAKES = [
    {"kind": "frame-and-panel"},
    {"kind": "frame-and-panel", "middle_rails": 1, "muntins": 1},
    {"kind": "slab", "held": "battens"},
    {"kind": "slab", "held": "breadboard"},
]


def sideboard(leaves: int = 1, **doors: Any) -> Construction:
    data = chest()
    data["body"] = {"width": "60", "depth": "18", "overall_height": "36"}
    data["rows"] = [
        {"columns": 3, "height": "6"},
        {"across": [{"holds": "doors", "leaves": leaves}, {}, {"holds": "doors", "hinged": "right"}]},
    ]
    return built(data | {"doors": doors})


@pytest.mark.parametrize("make", MAKES)
@pytest.mark.parametrize("style", ["inset", "full overlay"])
@pytest.mark.parametrize("leaves", [1, 2])
def test_what_is_seen_of_a_leaf_fills_it_to_its_edges(make, style, leaves):
    unit = sideboard(leaves, make=make, style=style)
    patches = Read(elevation(unit).svg()).rectangles

    for door in unit.doors:
        for leaf in door.plan.leaves:
            seen = [patch for code, patch in patches.items() if code.startswith(f"{leaf.code}-")]
            assert min(patch.x for patch in seen) == pytest.approx(leaf.x, abs=1e-4)
            assert min(patch.y for patch in seen) == pytest.approx(door.plan.z, abs=1e-4)
            area = sum(patch.width * patch.height for patch in seen)
            assert area == pytest.approx(door.plan.width * door.plan.height, rel=1e-4)


def test_a_batten_is_not_seen_from_the_front():
    unit = sideboard(make=MAKES[2])

    assert not [code for code in Read(elevation(unit).svg()).rectangles if code.endswith(("-B1", "-B2"))]


def test_the_drawing_says_which_match_is_given_up():
    data = chest({"rows": [{"columns": 2}, {}, {}]})
    data["grain"] = {"given_up": [{"name": "fronts of row 1", "reason": "one was remade"}]}
    drawing = elevation(built(data))

    assert "Not matched: fronts of row 1 (one was remade)" in drawing.svg()
    assert "Not matched: fronts of row 1" in drawing.description


def test_what_an_overlay_door_covers_of_the_case_is_not_drawn_through_it():
    unit = sideboard(style="full overlay")
    svg = Read(elevation(unit).svg())
    leaf, plan = unit.doors[0].plan.leaves[0], unit.doors[0].plan
    cover = Patch(leaf.x, plan.z, plan.width, plan.height)

    through = [
        code
        for code, patch in svg.rectangles.items()
        if code in {part.code for part in unit.case.parts} and cover.meets(patch)
    ]

    assert through == []
