"""What a piece stands on is drawn as it is, and one that hangs is not measured from a floor."""

import pytest
from test_drawing_reader import Read, corners

from casewright.drawing.elevation import elevation
from casewright.drawing.opened import opened_view
from casewright.drawing.section import section
from casewright.pieces.asked.presets import preset
from units import built, chest


def standing(key):
    return built(preset(key).spec_json)


@pytest.mark.parametrize("key", ["wall-hung-bank", "hall-case", "bedside"])
@pytest.mark.parametrize("view", [elevation, opened_view])
def test_a_piece_on_the_wall_is_measured_from_its_underside(key, view):
    drawn = view(standing(key))

    assert "floor" not in Read(drawn.svg()).words
    assert "underside" in Read(drawn.svg()).words
    assert "from the floor" not in drawn.description


def heavy_lines(drawn):
    """What is drawn as heavy as a floor or a wall."""
    return [line for group in Read(drawn.svg()).all("g") if group.get("class") == "floor" for line in group]


def test_the_wall_stands_behind_a_piece_that_hangs():
    unit = standing("wall-hung-bank")

    assert heavy_lines(elevation(unit)) == []
    for view in (section, opened_view):
        (wall,) = heavy_lines(view(unit))
        (first, _), (second, _) = corners(wall.get("points"))
        assert first == second == pytest.approx(unit.spec.body.depth)


def test_the_height_of_a_case_alone_is_lettered_once():
    unit = standing("wall-hung-bank")
    sizes = [inches for _, inches in Read(elevation(unit).svg()).sizes]

    # Once at the left, and once in the column at the right.
    assert sizes.count(pytest.approx(unit.face.overall_height)) == 2


@pytest.mark.parametrize("base", [{"kind": "brackets"}, {"kind": "turned"}, {"kind": "toe"}, {}])
def test_a_side_with_open_drawers_stands_on_what_it_is_made_with(base):
    unit = built(chest({"base": base}))
    drawn = opened_view(unit)
    reach = [
        across
        for outline in Read(drawn.svg()).all("polygon")
        for across, up in corners(outline.get("points"))
        if up == 0
    ]

    if base.get("kind") in ("brackets", "turned"):
        assert len(reach) >= 4
    else:
        assert not reach


@pytest.mark.parametrize("hinged", ["left", "right"])
def test_the_code_of_a_door_stands_in_its_panel(hinged):
    data = chest({"body.width": "44", "body.opening_total": "30"})
    data["rows"] = [{"columns": 2, "height": "6"}, {"across": [{"holds": "doors", "hinged": hinged}, {}]}]
    unit = built(data)
    read = Read(elevation(unit).svg())

    panel = next(patch for code, patch in read.rectangles.items() if "-P" in code)
    code = next(patch for words, patch in read.lettering if words == "R2-1")
    assert panel.holds(code)
