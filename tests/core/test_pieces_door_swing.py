"""How far doors open: what an inset leaf meets past square, by the angles of right-angled triangles."""

from math import asin, atan, degrees

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.built.door_swing import opens_to_a_drawer, opens_to_a_wall
from units import built, chest

ABOUT = 0.01


def doors(*columns, **more):
    """One row of columns, 20 high, in a case 60 wide."""
    data = chest({"body": {"width": "60", "depth": "18", "opening_total": "20"}, **more})
    return built(data | {"rows": [{"across": list(columns)}]})


def meets(unit):
    return {found.about: found for found in unit.findings if found.rule == "door meets"}


def test_the_angles_by_hand():
    # A leaf 10 wide, 5 from a wall: 30 degrees past square.
    assert opens_to_a_wall(clear=5, width=10) == pytest.approx(120)
    assert opens_to_a_wall(clear=12, width=10) == 180
    # Drawn out 5, a drawer 5 away is met at its corner, 45 past square; drawn out far, at its side.
    assert opens_to_a_drawer(clear=5, width=10, travel=5) == pytest.approx(135)
    assert opens_to_a_drawer(clear=5, width=10, travel=20) == pytest.approx(120)
    assert opens_to_a_drawer(clear=11, width=10, travel=20) == 180


def test_a_leaf_hinged_beside_a_drawer_is_cautioned_and_at_its_other_side_it_is_not():
    stack = {"rows": [{}, {}]}
    at_it, away = (
        doors(stack, {"holds": "doors", "hinged": side, "leaves": 1}) for side in ("left", "right")
    )

    found = meets(at_it)["A-R1-2-D1"]
    leaf, drawer = at_it.doors[0].plan, at_it.drawers[0]
    face = drawer.sizes.face
    clear = leaf.leaves[0].x - face.left - face.width
    past = max(degrees(asin(clear / leaf.width)), degrees(atan(clear / drawer.travel)))
    assert found.verdict is Verdict.CAUTION
    assert found.found == pytest.approx(90 + past, abs=ABOUT)
    assert "Hinge it at its other side" in str(found.remedy)
    assert meets(away) == {}


def test_two_leaves_at_one_partition_open_against_each_other():
    toward = [{"holds": "doors", "hinged": side, "leaves": 1} for side in ("right", "left")]
    unit = doors({}, *toward)

    found = meets(unit)["A-R1-2-D1"]
    one, other = (door.plan for door in unit.doors)
    clear = other.leaves[0].x - one.leaves[0].x - one.width
    assert found.found == pytest.approx(90 + degrees(asin(clear / 2 / one.width)), abs=ABOUT)
    assert "A-R1-3-D1" in str(found.message)


def test_a_leaf_beside_a_wall_opens_to_it():
    site = {"recess": "61", "scribe": "1/2"}
    built_in = doors({"holds": "doors", "hinged": "left", "leaves": 1}, {}, site=site)
    free = doors({"holds": "doors", "hinged": "left", "leaves": 1}, {})

    width = built_in.doors[0].plan.width
    assert meets(built_in)["A-R1-1-D1"].found == pytest.approx(90 + degrees(asin(1.25 / width)), abs=ABOUT)
    assert meets(free) == {}
