"""The dovetails of a drawer, drawn with the drawers that they serve."""

from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby

from casewright.drawing.joint_views import shape_drawing
from casewright.drawing.page import KEPT, Drawing
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.measure.lengths import LengthUnit


@lru_cache(maxsize=KEPT)
def half_blind_drawing(
    joint: HalfBlindJoint,
    serves: tuple[str, ...] = (),
    unit: LengthUnit = LengthUnit.INCH,
    name: str = "joint-front",
) -> Drawing:
    """The joint of a side and a front: the corner in plan and as one sees it, and both ends.

    Args:
        joint: the joint, worked out
        serves: codes of the drawers that have it; its own mark when left out
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing.

    Source: common practice of technical drawing.
    """
    title = f"Half-blind dovetail, front of {_served(serves or (joint.given.mark,))}"
    return shape_drawing(joint.shape, title, unit, name)


@lru_cache(maxsize=KEPT)
def through_drawing(
    joint: ThroughJoint,
    serves: tuple[str, ...] = (),
    unit: LengthUnit = LengthUnit.INCH,
    name: str = "joint-back",
) -> Drawing:
    """The joint of a side and a back: the corner in plan and as one sees it, and both ends.

    Args:
        joint: the joint, worked out
        serves: codes of the drawers that have it; its own mark when left out
        unit: the shop's unit
        name: short name of the drawing

    Returns:
        The drawing.

    Source: common practice of technical drawing.
    """
    title = f"Through dovetail, back of {_served(serves or (joint.given.mark,))}"
    return shape_drawing(joint.shape, title, unit, name)


def _served(codes: Sequence[str]) -> str:
    """The drawers of one row together: A-R1-1 to 6, A-R2-1."""
    rows = [list(group) for _, group in groupby(codes, lambda code: code.rpartition("-")[0])]
    return ", ".join(
        row[0]
        if len(row) == 1
        else f"{row[0]} {'to' if len(row) > 2 else 'and'} {row[-1].rpartition('-')[2]}"
        for row in rows
    )
