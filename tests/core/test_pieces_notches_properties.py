"""Whatever is notched around pipes: the U closes, every board has a size, and weights and rooms add up."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import SIDES, UPRIGHT, carcases, sixteenths
from casewright.measure.findings import Verdict
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.built.joints import other_joints
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.notches import ARM_LEAST
from closing import faults
from units import built, changed

CLOSE = 1e-9
FRONTS = ("half-blind dovetail", "through dovetail", "lock rabbet", "box joint", "rabbet and pins")
BACKS = ("through dovetail", "housing", "as the front")
HOLDS = ("four grooves", "under the back", "screwed under")


def share(draw, most):
    """Up to so much, in sixteenths; at least 1."""
    return max(1.0, round(draw(st.floats(0, 1)) * most * 16) / 16)


@st.composite
def notched(draw):
    """A carcase whose first row is notched, with any corners; not all of them can be built."""
    case = draw(carcases())
    columns, body = case["rows"][0]["columns"], case["body"]
    wide = (body["width"] - SIDES + UPRIGHT) / columns - UPRIGHT
    # Two arms of 3 and four boards beside it; as much before it, and what stays behind a drawer.
    notch = {
        "width": share(draw, wide - 9),
        "depth": share(draw, body["depth"] - 9) + 1.5,
        "off": draw(sixteenths(0, 2)),
        "toward": draw(st.sampled_from(["left", "right"])),
    }
    return changed(
        case,
        {
            "rows.0.notch": notch,
            "drawers.bottom": {"kind": "ply", "nominal": "1/4", "hold": draw(st.sampled_from(HOLDS))},
            "drawers.front_joint": {"kind": draw(st.sampled_from(FRONTS))},
            "drawers.back_joint": {"kind": draw(st.sampled_from(BACKS))},
        },
    )


def made(data):
    """The unit; None where it is refused, which says what would do."""
    try:
        return built(data)
    except REFUSALS:
        return None


def with_notches(unit):
    """Its notched drawers, each with its parts by their marks."""
    for drawer in unit.drawers if unit else ():
        if drawer.sizes.notch:
            code = f"{drawer.code}-"
            parts = {p.code.removeprefix(code): p for p in unit.parts if p.code.startswith(code)}
            yield drawer, drawer.sizes.notch, parts


@settings(max_examples=25)
@given(notched())
def test_the_u_closes(data):
    for drawer, notch, _ in with_notches(made(data)):
        inside = drawer.sizes.inside
        across = notch.left_arm + notch.left_inner + notch.width + notch.right_inner + notch.right_arm
        assert across == pytest.approx(inside.width)
        assert notch.room + notch.taken == pytest.approx(inside.depth)
        assert min(notch.left_arm, notch.right_arm, notch.room) >= ARM_LEAST - CLOSE


@settings(max_examples=25)
@given(notched())
def test_every_board_around_a_notch_has_a_size_and_stays_in_its_drawer(data):
    unit = made(data)
    for drawer, _, parts in with_notches(unit):
        assert {"BL", "BR", "IL", "IR", "IB", "N"} <= parts.keys()
        assert not {"B", "M", "N1", "N2"} & parts.keys()
        left, right = parts["SL"].box.x, parts["SR"].box.x + parts["SR"].box.width
        rear = parts["SL"].box.y + drawer.sizes.box_length
        for mark in ("BL", "BR", "IL", "IR", "IB"):
            part = parts[mark]
            assert min(part.thickness, part.width, part.length) > 0
            assert left - CLOSE <= part.box.x
            assert part.box.x + part.box.width <= right + CLOSE
            assert part.box.y + part.box.depth <= rear + CLOSE
    if unit:
        assert len({part.code for part in unit.parts}) == len(unit.parts)


@settings(max_examples=25)
@given(notched())
def test_nothing_stands_in_the_notch(data):
    for _, notch, parts in with_notches(made(data)):
        start = parts["IL"].box.x + parts["IL"].box.width
        front = parts["IB"].box.y + parts["IB"].box.depth
        for mark in ("BL", "BR", "IL", "IR", "IB"):
            box = parts[mark].box
            beside = box.x + box.width <= start + CLOSE or box.x >= start + notch.width - CLOSE
            assert beside or box.y + box.depth <= front + CLOSE
        cut, bottom = parts["N"].cut_out, parts["N"].box
        # The bottom is cut out at least as wide as the notch, and no farther than its inner sides reach.
        assert bottom.x + cut.along <= start + CLOSE
        assert bottom.x + cut.along + cut.length >= start + notch.width - CLOSE
        assert bottom.x + cut.along >= parts["IL"].box.x - CLOSE


@settings(max_examples=25)
@given(notched())
def test_the_weights_add_up_and_a_notched_drawer_holds_less(data):
    unit = made(data)
    if unit is None:
        return
    drawers = sum(mass.weight for mass in unit.masses.drawers.values())
    assert unit.masses.case.weight + drawers == pytest.approx(unit.masses.total)
    bodies = {body.label: body for body in unit.stand.piece.drawers}
    for drawer, notch, parts in with_notches(unit):
        inside, body = drawer.sizes.inside, bodies[drawer.code]
        whole = inside.width * inside.depth * max(0.0, inside.height) / 1728
        share = 1 - notch.around * notch.taken / (inside.width * inside.depth)
        assert body.volume == pytest.approx(whole * share)
        assert body.fill_centre < drawer.sizes.stand + drawer.sizes.inner + inside.depth / 2
        bottom = parts["N"]
        assert 0 < bottom.volume < bottom.thickness * bottom.width * bottom.length


@settings(max_examples=25)
@given(notched())
def test_every_corner_of_a_notched_drawer_has_its_joint(data):
    unit = made(data)
    for drawer, _, parts in with_notches(unit):
        around = [
            each for each in drawer_ends(unit) if each.key.startswith("notch") and drawer.code in each.drawers
        ]
        cut_on = {code for each in around for code in each.parts}
        assert {parts[mark].code for mark in ("BL", "BR", "IL", "IR", "IB")} <= cut_on
        assert [each for each in around if faults(each.joint.shape)] == []
    if unit:
        places = sum(each.places for each in other_joints(unit) if each.key.startswith("notch"))
        assert places == 4 * sum(1 for _ in with_notches(unit))
        stops = [each for each in unit.findings if each.verdict is Verdict.STOP and not each.remedy]
        assert stops == []
