"""Whatever the fronts and corners of the drawers: they clear, their parts go together, nothing is lost."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import carcases
from casewright.measure.findings import Verdict
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.built.refusals import REFUSALS
from closing import faults
from units import built, changed

CLOSE = 1e-9
STYLES = ("inset", "cock-beaded", "lipped", "full overlay", "half overlay", "applied front")
FRONTS = (
    *("half-blind dovetail", "through dovetail", "sliding dovetail"),
    *("lock rabbet", "box joint", "rabbet and pins"),
)
BACKS = ("through dovetail", "housing", "as the front")


@st.composite
def drawers(draw):
    """A carcase with drawers of any style and any joints; not all of them can be built."""
    joints = {
        "drawers.style": {"kind": draw(st.sampled_from(STYLES))},
        "drawers.front_joint": {"kind": draw(st.sampled_from(FRONTS))},
        "drawers.back_joint": {"kind": draw(st.sampled_from(BACKS))},
    }
    return changed(draw(carcases()), joints)


def made(data):
    """The unit; None where it is refused, which says what would do."""
    try:
        return built(data)
    except REFUSALS:
        return None


def of_drawer(unit, drawer):
    return {
        part.code.rsplit("-", 1)[-1]: part
        for part in unit.parts
        if part.code.rsplit("-", 1)[0] == drawer.code
    }


@given(drawers())
def test_every_drawer_clears_when_it_is_wettest(data):
    unit = made(data)
    for drawer in unit.drawers if unit else ():
        sizes = drawer.sizes
        assert sizes.gaps.wettest >= unit.spec.drawers.clearances.top - CLOSE
        assert sizes.height <= sizes.opening.height
        assert sizes.length < sizes.opening.depth


@given(drawers())
def test_the_boards_of_a_box_reach_from_its_front_to_its_back(data):
    unit = made(data)
    for drawer in unit.drawers if unit else ():
        parts, sizes = of_drawer(unit, drawer), drawer.sizes
        side, back = parts["SL"], parts["B"]
        joined = parts.get("BF", parts["F"])
        assert joined.box.y == pytest.approx(sizes.box_start)
        assert side.box.y - sizes.side_start == pytest.approx(sizes.box_start)
        assert side.box.y + side.length <= sizes.box_start + sizes.box_length + CLOSE
        assert back.box.y + back.thickness == pytest.approx(sizes.box_start + sizes.to_the_back)
        assert side.length == pytest.approx(sizes.side_length)
        assert all(min(part.thickness, part.width, part.length) > 0 for part in parts.values())


@given(drawers())
def test_weights_add_up_and_nothing_is_worked_out_twice(data):
    unit = made(data)
    if unit is None:
        return
    whole = unit.masses.case.weight + sum(each.weight for each in unit.masses.drawers.values())
    assert unit.masses.total == pytest.approx(whole)
    assert len({part.code for part in unit.parts}) == len(unit.parts)
    assert sum(line.quantity for line in unit.lines) == len(unit.parts)


@settings(max_examples=15)
@given(drawers())
def test_fronts_never_overlap_unless_a_check_stops_them(data):
    unit = made(data)
    if unit is None:
        return
    faces = [drawer.sizes.face for drawer in unit.drawers]
    apart = all(
        min(one.right, other.right) <= max(one.left, other.left) + CLOSE
        or min(one.top, other.top) <= max(one.bottom, other.bottom) + CLOSE
        for one, other in combinations(faces, 2)
    )
    stops = [
        each for each in unit.findings if each.rule == "gap between fronts" and each.verdict is Verdict.STOP
    ]
    assert apart or stops


@settings(max_examples=12)
@given(drawers())
def test_the_first_joint_of_each_kind_closes(data):
    unit = made(data)
    held = {each.title: each for each in drawer_ends(unit)} if unit else {}
    for placed in held.values():
        assert faults(placed.joint.shape) == [], placed.title
