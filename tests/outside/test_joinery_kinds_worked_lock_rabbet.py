"""Lock rabbets against what magazines print."""

import pytest

from casewright.joinery.kinds import solve
from casewright.measure.findings import Verdict, worst

THREE_CUTS = "“The Quarter-Quarter-Quarter Drawer System”, This Is Carpentry, 2014"
LAGE = "Lage, “Locking Rabbet Joint”, Woodsmith"
COMMON = "common practice: front = width of the box - 2 * (side - depth of the groove)"


def values(found):
    return {setting.name: setting.value for setting in found.settings}


@pytest.mark.parametrize("setting", ["cutter", "fence", "groove_depth", "rabbet_width", "tongue"])
def test_boards_of_half_an_inch_take_three_settings_of_a_quarter(setting):
    found = solve("lock-rabbet", {"height": 4.0, "front": 0.5, "side": 0.5})

    # 1/4 wide, 1/4 high, 1/4 from the fence, for boards of a true 1/2 in
    assert values(found.joint)[setting] == 0.25, THREE_CUTS
    assert worst(found.joint.findings) is Verdict.PASS, THREE_CUTS


@pytest.mark.parametrize("thickness", [0.375, 0.625, 0.75])
def test_with_boards_of_other_thickness_the_groove_is_half_as_deep_as_the_side(thickness):
    found = solve("lock-rabbet", {"height": 4.0, "front": thickness, "side": thickness})

    assert values(found.joint)["groove_depth"] == thickness / 2, "common practice: half of the thickness"


@pytest.mark.parametrize(
    ("width", "side", "reach", "front"),
    [(16.0, 0.5, 0.25, 15.5), (20.5, 0.625, 0.25, 19.75), (12.0, 0.375, 0.1875, 11.625)],
)
def test_a_front_between_the_sides_is_as_long_as_by_pencil(width, side, reach, front):
    asked = {"height": 4.0, "front": 0.75, "side": side, "reach": reach, "box_width": width}

    assert values(solve("lock-rabbet", asked).joint)["front_length"] == front, COMMON


def test_a_front_of_three_quarters_with_a_lip_is_cut_as_printed():
    # in 3/4 in stock a groove of 3/8 in leaves a lip of 1/4 and a tongue of 1/8; the sides are 1/2 in
    found = solve(
        "lock-rabbet",
        {"height": 5.0, "front": 0.75, "side": 0.5, "lip": 0.25, "tongue": 0.125, "drawer_depth": 20.0},
    ).joint

    assert found.given.from_end == 0.375, LAGE
    # the sides are cut to the depth of the drawer less the lip
    assert values(found)["side_length"] == 19.75, LAGE
    assert worst(found.findings) is Verdict.PASS, LAGE
