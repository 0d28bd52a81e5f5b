"""An option in words: what changes, in place of what, and nothing about what stays."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.pieces.words.otherwise import otherwise
from units import built, chest


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        (
            {"woods.case": "walnut"},
            "The case, the top and the drawer fronts are walnut instead of cherry.",
        ),
        ({"woods.top": "hard maple"}, "The top is hard maple instead of cherry."),
        (
            {"woods.drawers": {"wood": "soft maple", "cut": "quarter"}},
            "The drawer sides and backs are quartersawn soft maple instead of soft maple.",
        ),
        (
            {"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}},
            "The drawers have bottoms of birch plywood instead of solid wood.",
        ),
        (
            {"case.divider_end": "sliding dovetail"},
            "The rails between the rows slide into the sides with a dovetail.",
        ),
        ({"pulls.item": "knob"}, "With knobs instead of pulls."),
        ({"pulls.item": "Brass ring, 3 in"}, "With pulls “Brass ring, 3 in” instead of pulls."),
        (
            {"finish.product": "oil", "finish.show_coats": 3},
            "Finished with oil instead of wiping varnish. "
            "Three coats of finish on the outside instead of four.",
        ),
        ({"count": 2}, "Two are made instead of one."),
        ({"body.width": "30"}, "Overall 31-1/2 in wide instead of 25-1/2."),
        ({"rows": [{"columns": 2}, {}, {}]}, "Four drawers instead of three."),
        ({}, ""),
    ],
)
def test_an_option_says_what_changes_in_place_of_what(changes, said):
    assert otherwise(built(chest()), built(chest(changes))) == said


def test_sizes_are_in_the_unit_that_the_shop_shows():
    other = built(chest({"body.depth": "18"}))

    assert otherwise(built(chest()), other, LengthUnit.MILLIMETRE) == "Overall 476 mm deep instead of 425."


def test_another_way_of_running_is_said_in_place_of_what():
    fronts = {"drawers.style": {"kind": "applied front"}}
    base, other = (built(chest(fronts | way)) for way in ({}, {"drawers.running": {"kind": "slides"}}))

    assert "Every drawer runs on metal slides (instead of: runs wood on wood" in otherwise(base, other)
