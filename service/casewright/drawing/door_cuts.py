"""Doors cut open: what a section from front to back, or a plan, shows of a leaf that hangs closed."""

from collections.abc import Iterator, Sequence

from casewright.drawing.canvas import Point
from casewright.drawing.drawer_section import BEVEL
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import LeafPlan
from casewright.pieces.layout.parts import Part
from casewright.pieces.panels.frame import PanelFrame

Span = tuple[Inches, Inches]
Groove = tuple[Inches, Inches, Inches]
"""From where to where it is wide, counted back from the front of the case, and how deep it is [in]."""
Cut = tuple[Part, Sequence[Point]]
"""A part, and the corners of its section: back from the front of the case, then up or to the right [in]."""


def cut_from_the_side(unit: Construction, plane: Inches) -> Iterator[Cut]:
    """What an upright cut from front to back shows of the doors.

    Args:
        unit: the unit, worked out
        plane: where it is cut, from the outside of the left case side [in]

    Yields:
        Each part that is cut, with its corners: back from the front edge of the case, and up from the floor.

    Source: geometry of the leaves.
    """
    for door in unit.doors:
        for leaf in door.plan.leaves:
            if leaf.x < plane < leaf.x + door.plan.width:
                yield from _cut(unit, door, leaf, plane, is_level=False)


def is_through(door: Door, plane: Inches) -> bool:
    """Whether an upright cut from front to back passes through one of the leaves of an opening.

    Args:
        door: the doors of the opening
        plane: where it is cut, from the outside of the left case side [in]

    Returns:
        Whether it does; not where it passes between two leaves.

    Source: geometry of the leaves.
    """
    return any(leaf.x < plane < leaf.x + door.plan.width for leaf in door.plan.leaves)


def cut_from_above(unit: Construction, level: Inches) -> Iterator[Cut]:
    """What a level cut shows of the doors.

    Args:
        unit: the unit, worked out
        level: how high above the floor it is cut [in]

    Yields:
        Each part that is cut, with its corners: back from the front edge of the case, and to the right from
        the outside of its left side.

    Source: geometry of the leaves.
    """
    for door in unit.doors:
        for leaf in door.plan.leaves:
            if door.plan.z < level < door.plan.z + door.plan.height:
                yield from _cut(unit, door, leaf, level, is_level=True)


def _cut(unit: Construction, door: Door, leaf: LeafPlan, at: Inches, *, is_level: bool) -> Iterator[Cut]:
    """The parts of one leaf that are cut: of a frame its members with their grooves, and its panels."""
    parts = [part for part in unit.parts if part.code.startswith(f"{leaf.code}-")]
    frame = door.plan.frame
    met = [part for part in parts if _holds(_across(part, is_level), at)]
    if frame is None:
        for part in met:
            yield part, _plain(part, _along(part, is_level))
        return
    # A tenon lies within what it is let into, and a panel within its groove: there the other member is cut.
    running = [part for part in met if _mark(part) == ("R" if is_level else "S")]
    if is_level:
        inner = (leaf.x + frame.asked.how.stile, leaf.x + door.plan.width - frame.asked.how.stile)
        if running:
            yield from ((part, _plain(part, inner)) for part in running)
            met = [part for part in met if _mark(part) == "S"]
    elif running:
        yield running[0], _plain(running[0], _along(running[0], is_level))
        return
    panels = [part for part in met if _mark(part) == "P"]
    standing = [part for part in met if _mark(part) == "M"] if not is_level else []
    if standing:
        panels = []
    groove = _groove(frame, parts)
    members = ("S", "M") if is_level else ("R",)
    for part in met:
        mark = _mark(part)
        if mark in members:
            yield part, _grooved(part, _along(part, is_level), panels, groove, is_level=is_level)
        elif mark == "M":
            low, high = _along(part, is_level)
            yield part, _plain(part, (low + frame.stub, high - frame.stub))
    for part in panels:
        yield part, _panel(part, frame, _along(part, is_level), is_level=is_level)


def _mark(part: Part) -> str:
    """Which member of a frame a part is: S, R, M or P."""
    return part.code.rpartition("-")[2][:1]


def _across(part: Part, is_level: bool) -> Span:
    """From where to where a part reaches in the direction in which the cut is laid."""
    box = part.box
    return (box.z, box.z + box.height) if is_level else (box.x, box.x + box.width)


def _along(part: Part, is_level: bool) -> Span:
    """From where to where a part reaches along the cut."""
    return _across(part, not is_level)


def _holds(span: Span, at: Inches) -> bool:
    return span[0] < at < span[1]


def _plain(part: Part, along: Span) -> Sequence[Point]:
    front, back = part.box.y, part.box.y + part.box.depth
    low, high = along
    return (front, low), (back, low), (back, high), (front, high)


def _groove(frame: PanelFrame, parts: Sequence[Part]) -> Groove:
    """The grooves of a frame: level with the inner faces of its panels, which are thinned from outside."""
    panel = next(part for part in parts if _mark(part) == "P")
    back = panel.box.y + panel.box.depth
    return back - frame.groove, back, frame.stub


def _grooved(
    part: Part, along: Span, panels: Sequence[Part], groove: Groove, *, is_level: bool
) -> Sequence[Point]:
    """A member with a groove at each side at which a panel stands."""
    front, back = part.box.y, part.box.y + part.box.depth
    (low, high), (start, end, deep) = along, groove
    spans = [_along(panel, is_level) for panel in panels]
    corners: list[Point] = [(front, low)]
    if any(span[0] < low < span[1] for span in spans):
        corners += [(start, low), (start, low + deep), (end, low + deep), (end, low)]
    corners += [(back, low), (back, high)]
    if any(span[0] < high < span[1] for span in spans):
        corners += [(end, high), (end, high - deep), (start, high - deep), (start, high)]
    return [*corners, (front, high)]


def _panel(part: Part, frame: PanelFrame, along: Span, *, is_level: bool) -> Sequence[Point]:
    """A panel: in its grooves as thick as they are wide, its field raised to the outside."""
    front, back = part.box.y, part.box.y + part.box.depth
    low, high = along
    raised = back - front - frame.groove
    if raised < 1e-6:
        return _plain(part, along)
    whole, clear = (
        (frame.panel_width, frame.clear_width) if is_level else (frame.panel_height, frame.clear_height)
    )
    edge, tongue = (whole - clear) / 2, back - frame.groove
    slope = min(BEVEL * raised, clear / 4)
    return [
        (back, low),
        (back, high),
        (tongue, high),
        (tongue, high - edge),
        (front, high - edge - slope),
        (front, low + edge + slope),
        (tongue, low + edge),
        (tongue, low),
    ]
