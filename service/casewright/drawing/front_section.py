"""The front of a drawer cut from front to back, with its lips, its bead, or the box's own front behind it."""

from collections.abc import Iterator, Sequence

from casewright.drawing.canvas import Point
from casewright.drawing.drawer_section import bottom_outline
from casewright.drawing.view import box
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_fronts import CockBeaded, Lipped
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.front_parts import bead_rabbet

Outline = Sequence[Point]


def front_sections(spec: UnitSpec, drawer: Drawer) -> Iterator[tuple[str, Outline]]:
    """The sections of all that lies in front of a drawer's sides.

    Args:
        spec: what the maker chose
        drawer: the drawer

    Returns:
        The mark of each part and its corners: back from the face of the board that the sides are joined to,
        and up from the lower edge of the sides [in]

    Source: geometry.
    """
    sizes, style = drawer.sizes, spec.drawers.style
    face = sizes.face
    low = face.bottom - sizes.opening.bottom - drawer.run.foot - sizes.foot
    high = low + face.height
    if spec.drawers.has_box_front:
        yield "F", box(-face.thickness, low, face.thickness, face.height)
        yield "BF", _joined(spec, drawer, (0.0, sizes.front_height), (0.0, 0.0))
    elif isinstance(style, Lipped):
        yield "F", _joined(spec, drawer, (low, high), (style.thick, style.thick if style.bottom else 0.0))
    elif isinstance(style, CockBeaded):
        yield from _beaded(spec, style, drawer)
    else:
        # In its opening a front stands level with its box; before the case it may reach below it.
        low = low if sizes.stand else 0.0
        yield "F", _joined(spec, drawer, (low, low + face.height), (0.0, 0.0))


def bottom_section(spec: UnitSpec, drawer: Drawer) -> Outline:
    """The section of a drawer's bottom: in its grooves, or under the box.

    Args:
        spec: what the maker chose
        drawer: the drawer

    Returns:
        Its corners, as those of the front [in]

    Source: geometry.
    """
    if not spec.drawers.screwed_under:
        return bottom_outline(drawer, spec.drawers.groove)
    thick = drawer.bottom.thickness
    return box(0.0, -thick, drawer.bottom.deep, thick)


def _groove(spec: UnitSpec, drawer: Drawer) -> list[Point]:
    """The groove in the inside face, from below."""
    groove, inner = spec.drawers.groove, drawer.sizes.front
    if spec.drawers.screwed_under:
        return []
    floor, top = inner - groove.depth, groove.height + groove.width
    return [(inner, groove.height), (floor, groove.height), (floor, top), (inner, top)]


def _joined(
    spec: UnitSpec, drawer: Drawer, between: tuple[Inches, Inches], lips: tuple[Inches, Inches]
) -> Outline:
    """A board from its lower edge to its upper, with lips of a thickness at the top and at the bottom."""
    sizes, (low, high), (upper, lower) = drawer.sizes, between, lips
    inner, top = sizes.front, sizes.side_height if upper else high
    foot = [(lower, low), (lower, 0.0), (inner, 0.0)] if lower else [(inner, low)]
    head = [(inner, top), (upper, top), (upper, high)] if upper else [(inner, high)]
    return [(0.0, low), *foot, *_groove(spec, drawer), *head, (0.0, high)]


def _beaded(spec: UnitSpec, style: CockBeaded, drawer: Drawer) -> Iterator[tuple[str, Outline]]:
    """A front whose lower edge is rabbeted for its bead, and the beads at top and bottom."""
    sizes, bead, before = drawer.sizes, style.bead, style.projection
    rabbet, inner, top = bead_rabbet(style, drawer), sizes.front, sizes.joint_height
    head: list[Point] = [(inner, top), (0.0, top), (0.0, bead), (rabbet, bead)]
    yield "F", [(rabbet, 0.0), (inner, 0.0), *_groove(spec, drawer), *head]
    yield "CT", box(-before, top, inner + before, bead)
    yield "CB", box(-before, 0.0, rabbet + before, bead)
