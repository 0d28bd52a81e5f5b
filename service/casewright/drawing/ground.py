"""What a piece stands on or hangs on, in its views."""

from casewright.drawing.canvas import Line
from casewright.drawing.view import View
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction


def is_hung(unit: Construction) -> bool:
    """Whether a piece hangs on a wall, so that nobody knows how high above the floor.

    Args:
        unit: the unit, worked out

    Returns:
        True for a case without a base that has a cleat, or is fixed to the building.

    Source: common practice.
    """
    return unit.spec.hangs or not (unit.face.base_height or unit.spec.use.free_standing)


def heights_from(unit: Construction) -> tuple[str, str]:
    """What its heights are measured from: the name of the lowest mark, and the heading over them.

    Args:
        unit: the unit, worked out

    Returns:
        The floor, or the underside of a piece that hangs.

    Source: common practice of shop drawing.
    """
    return ("underside", "from the\nunderside") if is_hung(unit) else ("floor", "from the\nfloor")


def ground_before(view: View, unit: Construction) -> None:
    """The floor under a front view; nothing under a piece that hangs.

    Args:
        view: the front view
        unit: the unit, worked out

    Source: common practice of shop drawing.
    """
    if not is_hung(unit):
        over = unit.spec.top.overhang_sides + view.sheet.letters
        view.polyline(Line.FLOOR, (-over, 0.0), (unit.spec.body.width + over, 0.0))


def ground_beside(view: View, unit: Construction, front: Inches) -> None:
    """The floor under a view from the side, or the wall behind a piece that hangs.

    Args:
        view: the view, its front at the left
        unit: the unit, worked out
        front: how far it reaches to the front, below nothing before the case [in]

    Source: common practice of shop drawing.
    """
    over, depth = view.sheet.letters, unit.spec.body.depth
    if is_hung(unit):
        wall = depth + unit.spec.top.overhang_back
        view.polyline(Line.FLOOR, (wall, -over), (wall, unit.face.overall_height + over))
    else:
        view.polyline(Line.FLOOR, (front - over, 0.0), (depth + over, 0.0))
