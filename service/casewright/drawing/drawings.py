"""Every drawing of a unit, by the name of the file it goes into."""

from collections.abc import Iterable, Iterator

from casewright.drawing.elevation import elevation
from casewright.drawing.joint_views import shape_drawing
from casewright.drawing.opened import opened_view
from casewright.drawing.page import Drawing
from casewright.drawing.plan import plan_view
from casewright.drawing.section import section
from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.joints import other_joints
from casewright.pieces.drawers.alike import half_blind_alike, through_alike
from casewright.pieces.drawers.drawer import Drawer


def unit_drawings(unit: Construction) -> dict[str, str]:
    """Every drawing of a unit as a file: its four views, and each joint that differs from the others.

    Args:
        unit: the unit, worked out

    Returns:
        SVG files by their names; a joint is named after the first row that has it, such as
        `joint-R5-front.svg`.

    Source: common practice: the views for the customer and the bench, joints for the bench.
    """
    drawings = {
        "elevation": elevation(unit),
        "section": section(unit),
        "plan": plan_view(unit),
        "opened": opened_view(unit),
    }
    drawings |= dict(_front_joints(unit))
    drawings |= dict(_back_joints(unit))
    drawings |= dict(_other_joints(unit))
    return {f"{name}.svg": drawing.svg(standalone=True) for name, drawing in drawings.items()}


def _front_joints(unit: Construction) -> Iterator[tuple[str, Drawing]]:
    groups = half_blind_alike(unit.drawers)
    for name, (joint, drawers) in zip(_names(groups, "front"), groups, strict=True):
        codes = tuple(drawer.code for drawer in drawers)
        yield name, half_blind_drawing(joint, codes, unit.spec.unit, f"{unit.spec.code}-{name}")


def _back_joints(unit: Construction) -> Iterator[tuple[str, Drawing]]:
    groups = through_alike(unit.drawers)
    for name, (joint, drawers) in zip(_names(groups, "back"), groups, strict=True):
        codes = tuple(drawer.code for drawer in drawers)
        yield name, through_drawing(joint, codes, unit.spec.unit, f"{unit.spec.code}-{name}")


def _other_joints(unit: Construction) -> Iterator[tuple[str, Drawing]]:
    for each in other_joints(unit):
        name = f"joint-{each.key.replace('_', '-')}"
        yield name, shape_drawing(each.joint.shape, each.title, unit.spec.unit, f"{unit.spec.code}-{name}")


def _names(groups: Iterable[tuple[object, list[Drawer]]], end: str) -> Iterator[str]:
    """A name of its own for each group of drawers with the same joint."""
    taken: set[str] = set()
    for _, drawers in groups:
        opening = drawers[0].sizes.opening
        row = opening.row_code
        yield f"joint-{opening.code if row in taken else row}-{end}"
        taken.add(row)
