"""A unit in a few lines: doors look like doors, and units beside each other are in one scale."""

from xml.etree import ElementTree

import pytest

from casewright.drawing.small import small_elevation, small_elevations
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct


def sideboard(width):
    asked = preset("sideboard").spec_json
    asked["body"]["width"] = width
    return construct(read_as(UnitSpec, asked), example_shop())


def started(name):
    return construct(read_as(UnitSpec, preset(name).spec_json), example_shop())


def marks(drawing, kind):
    tree = ElementTree.fromstring(drawing.svg(standalone=True))  # noqa: S314  of our own making
    return tree.findall(f".//{{*}}{kind}")


def test_a_door_has_its_knob_on_the_free_stile_as_a_drawer_has_its_pull():
    """Three drawers with a pull each, three doors with a knob each."""
    unit = sideboard("60")
    centres = sorted(
        (float(dot.get("cx")), -float(dot.get("cy"))) for dot in marks(small_elevation(unit), "circle")
    )

    assert len(centres) == 6
    # The first leaf hangs at the left in an opening that begins at 3/4, with 1/16 of gap: it ends at
    # 13/16 + 18-27/32, and half a stile of 2-1/4 in from there is 18-17/32.
    low = sorted(x for x, z in centres if z < 24)
    assert low[0] == pytest.approx(18 + 17 / 32, abs=0.01)


def test_units_beside_each_other_are_drawn_in_one_scale_and_shrink_alike():
    """66 in wide and 70 in wide, 67-1/2 and 71-1/2 with their tops: 1.75 in on paper for the wider."""
    narrow, wide = small_elevations([sideboard("66"), sideboard("70")])

    assert wide.scale == pytest.approx(71.5 / 1.75)
    assert narrow.scale == wide.scale
    assert (narrow.width, narrow.height) == (wide.width, wide.height)
    # Both have the middle of the piece in the middle of the drawing, and the floor at its foot.
    assert narrow.left + narrow.width / 2 == pytest.approx(33)
    assert wide.left + wide.width / 2 == pytest.approx(35)
    assert narrow.top + narrow.height == pytest.approx(wide.top + wide.height)


def test_a_low_unit_beside_a_high_one_stands_on_the_same_ground():
    low, high = small_elevations([started("bedside"), started("tall-chest")])

    assert low.top + low.height == pytest.approx(high.top + high.height)
    assert low.height == high.height


def test_nothing_beside_nothing_is_no_drawing():
    assert small_elevations([]) == ()
