"""Dovetails drawn to scale with their settings: the plan of the corner, and the two ends that close."""

from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby

from casewright.drawing.canvas import Sheet
from casewright.drawing.corner_plan import Corner, corner_plan, plan_extent
from casewright.drawing.page import KEPT, PAPER, Drawing, fitted, letter_lines
from casewright.drawing.tail_views import Ends, side_end, socket_end
from casewright.drawing.view import View
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.layout import TailLayout
from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Number

PLAN_SCALES = (4, 3, 2, 1.5, 1, 1 / 2, 1 / 4)
"""How large the plan may be drawn on paper; the largest that fits its patch is taken."""
PLAN_PATCH = (2.4, 2.2)
"""Width and height that the plan may take up on paper [in]."""
LEAST_PLAN = 1.4
REST = 3.8
"""Height on paper of everything but the plan and the two ends: title, dimensions, notes [in]."""


@lru_cache(maxsize=KEPT)
def half_blind_drawing(
    joint: HalfBlindJoint,
    serves: tuple[str, ...] = (),
    unit: LengthUnit = LengthUnit.INCH,
    name: str = "joint-front",
) -> Drawing:
    """The joint of a side and a front: plan of the corner, end of the front, end of the side.

    Args:
        joint: the joint, worked out
        serves: codes of the drawers that have it; its own mark when left out
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing.

    Source: common practice of technical drawing.
    """
    given = joint.given
    corner = Corner(
        across="front",
        thickness=joint.gauge_1 + joint.lap,
        lap=joint.lap,
        length=joint.gauge_1,
        tail=joint.gauge_2,
        side=joint.side_seen,
        rabbet=joint.rabbet_seen,
        proud=joint.proud_seen,
        gauge="gauge 2",
        length_gauge="gauge 1",
        wrong=joint.wrong_gauge_2,
    )
    groove = given.groove
    ends = Ends(
        layout=joint.layout,
        tails=joint.layout.tails,
        depth=joint.gauge_1,
        gauge="gauge 1",
        name="front",
        thickness=joint.gauge_1 + joint.lap,
        lap=joint.lap,
        board=joint.layout.height + given.front_excess,
        offset=0.0,
        groove=(groove.height, groove.top, groove.depth) if groove else None,
    )
    return _joint_drawing(
        corner, ends, f"Half-blind dovetail, front of {_served(serves or (given.mark,))}", unit, name
    )


@lru_cache(maxsize=KEPT)
def through_drawing(
    joint: ThroughJoint,
    serves: tuple[str, ...] = (),
    unit: LengthUnit = LengthUnit.INCH,
    name: str = "joint-back",
) -> Drawing:
    """The joint of a side and a back: plan of the corner, end of the back, end of the side.

    Args:
        joint: the joint, worked out
        serves: codes of the drawers that have it; its own mark when left out
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing.

    Source: common practice of technical drawing.
    """
    given = joint.given
    corner = Corner(
        across="back",
        thickness=given.back,
        lap=0.0,
        length=joint.gauge_side,
        tail=joint.gauge_back,
        side=given.side,
        rabbet=given.rabbet,
        proud=0.0,
        gauge="gauge, back",
        length_gauge="gauge, side",
        wrong=joint.wrong_gauge_back,
    )
    ends = Ends(
        layout=joint.layout,
        tails=joint.side_tails,
        depth=joint.gauge_side,
        gauge="gauge, side",
        name="back",
        thickness=given.back,
        lap=0.0,
        board=joint.layout.height,
        offset=joint.lower_edge_offset,
        groove=None,
    )
    return _joint_drawing(
        corner, ends, f"Through dovetail, back of {_served(serves or (given.mark,))}", unit, name
    )


def _joint_drawing(corner: Corner, ends: Ends, title: str, unit: LengthUnit, name: str) -> Drawing:
    return fitted(
        lambda sheet: _draw(sheet, corner, ends),
        unit,
        name=name,
        title=title,
        subject="Plan and both ends",
        work=(0.0, ends.top),
    )


def _draw(sheet: Sheet, corner: Corner, ends: Ends) -> None:
    letters = sheet.letters
    left = side_end(View(sheet), ends)
    socket_end(View(sheet, left - 1.2 * letters - ends.thickness), ends)
    start, _, _, top = sheet.reach
    width, height = plan_extent(corner)
    high = min(PLAN_PATCH[1], max(LEAST_PLAN, PAPER[1] - REST - ends.top / sheet.scale))
    fits = (scale for scale in PLAN_SCALES if width * scale <= PLAN_PATCH[0] and height * scale <= high)
    on_paper = next(fits, PLAN_SCALES[-1])
    factor = on_paper * sheet.scale
    room = max(sheet.width_of(f"gauge 1: {sheet.size(corner.length)}"), 5 * letters) + 3 * letters
    low = top + 4.2 * letters + (height - corner.thickness) * factor
    corner_plan(View(sheet, start + room, low, factor), corner)
    _letter_notes(sheet, ends.layout, on_paper)


def _letter_notes(sheet: Sheet, layout: TailLayout, plan_scale: Number) -> None:
    """What cannot be measured off the drawing."""
    left, bottom, right, _ = sheet.reach
    size = sheet.size
    plan = {1: "full size", 1 / 2: "half size"}.get(plan_scale, f"{plan_scale:g} times full size")
    notes = (
        f"Positions from the bottom edge of the side. Slope 1:{layout.slope:g}, {layout.bevel_degrees:.1f}°. "
        f"Dividers {size(layout.pitch)}: the last of {layout.count} lands {size(layout.pin)} past the mark. "
        f"Pins {size(layout.pin)} at the end of the tails, {size(layout.pin_inside)} at the baseline. "
        f"The plan is drawn {plan}."
    )
    letter_lines(sheet, notes, (left, bottom - 1.3 * sheet.letters), right - left)
    sheet.say(notes.rstrip("."))


def _served(codes: Sequence[str]) -> str:
    """The drawers of one row together: A-R1-1 to 6, A-R2-1."""
    rows = [list(group) for _, group in groupby(codes, lambda code: code.rpartition("-")[0])]
    return ", ".join(
        row[0]
        if len(row) == 1
        else f"{row[0]} {'to' if len(row) > 2 else 'and'} {row[-1].rpartition('-')[2]}"
        for row in rows
    )
