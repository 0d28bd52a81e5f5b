"""A unit in a few lines, to be told from others at a glance: no size, no code."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from casewright.drawing.bases import foot_outline, is_in_front
from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.doors import knob_of, seen_of
from casewright.drawing.legs import leg_outlines
from casewright.drawing.page import Drawing
from casewright.drawing.view import View
from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.doors.hanging import Door

LARGEST = 1.75
"""The longer side of the work on paper [in]."""
KNOB = 0.7
"""Radius of the dot that stands for a pull [in]."""


def small_elevation(unit: Construction) -> Drawing:
    """The front of a unit in outline: case, top, base, drawers and pulls.

    Args:
        unit: the unit, worked out

    Returns:
        The drawing.

    Source: common practice of catalogues.
    """
    return _drawn(unit, _scale_of(unit))


def small_elevations(units: Sequence[Construction]) -> tuple[Drawing, ...]:
    """Several fronts beside each other, in one scale and on one ground, so that the larger one looks larger.

    All are given the same width and height: whatever shrinks them to the room there is shrinks them alike.

    Args:
        units: the units, worked out

    Returns:
        A drawing for each.

    Source: common practice of catalogues.
    """
    scale = max(map(_scale_of, units), default=1.0)
    drawn = [_drawn(unit, scale) for unit in units]
    wide, high = (max((getattr(each, of) for each in drawn), default=0.0) for of in ("width", "height"))
    return tuple(
        replace(
            each,
            left=each.left - (wide - each.width) / 2,
            top=each.top - (high - each.height),
            width=wide,
            height=high,
        )
        for each in drawn
    )


def _scale_of(unit: Construction) -> Number:
    return max(unit.spec.overall_width, unit.face.overall_height) / LARGEST


def _drawn(unit: Construction, scale: Number) -> Drawing:
    spec = unit.spec
    view = View(Sheet(scale, spec.unit))
    _draw(view, unit)
    left, bottom, right, top = view.sheet.reach
    margin = 0.04 * view.sheet.scale
    return Drawing(
        name=f"{spec.code}-small",
        title=f"{spec.name}, front",
        description=_described(unit),
        scale=view.sheet.scale,
        left=left - margin,
        top=-top - margin,
        width=right - left + 2 * margin,
        height=top - bottom + 2 * margin,
        body=view.sheet.body(),
    )


def _described(unit: Construction) -> str:
    doors = sum(space.leaves for space in unit.face.spaces)
    rows = sum(1 for row in unit.face.all_rows if row.openings)
    also = f", {_counted(doors, 'door')}" if doors else ""
    return f"{_counted(len(unit.drawers), 'drawer')} in {_counted(rows, 'row')}{also}."


def _counted(count: int, one: str) -> str:
    return f"{count} {one}{'' if count == 1 else 's'}"


def _draw(view: View, unit: Construction) -> None:
    spec, face = unit.spec, unit.face
    over, base = spec.top.overhang_sides, face.base_height
    view.polygon(Line.OBJECT, list(_outline(unit)))
    if spec.top.over:
        view.rectangle(Line.OBJECT, -over, base + face.body_height, spec.body.width + 2 * over, spec.top.over)
    for outline in leg_outlines(unit, spec.body.width):
        view.polygon(Line.OBJECT, outline)
    for part in unit.case.parts:
        if part.line[0] != "B" or not is_in_front(unit, part):
            continue
        if foot := foot_outline(unit, part):
            view.polygon(Line.OBJECT, foot)
        else:
            view.rectangle(Line.OBJECT, part.box.x, part.box.z, part.box.width, part.box.height)
    for space in face.spaces:
        if not (space.knee or space.leaves):
            view.rectangle(Line.FRONT, space.left, base + space.bottom, space.width, space.height)
    for door in unit.doors:
        _door(view, unit, door)
    for opening in face.openings:
        where = (opening.left, base + opening.bottom, opening.width, opening.height)
        view.rectangle(Line.TONE, *where)
        view.rectangle(Line.FRONT, *where)
    for drawer in unit.drawers:
        opening = drawer.sizes.opening
        for centre in drawer.pulls:
            view.circle(
                Line.FRONT, (centre, base + opening.bottom + opening.height / 2), _knob(opening.height)
            )


def _outline(unit: Construction) -> Iterator[Point]:
    """The body, from its lower left corner round; a knee space is left out of it."""
    base, face, width = unit.face.base_height, unit.face, unit.spec.body.width
    tops = iter([base + space.bottom + space.height for space in face.spaces if space.knee])
    standing = list(_standing(unit))
    for number, (left, right) in enumerate(standing):
        if number:
            top = next(tops)
            yield standing[number - 1][1], top
            yield left, top
        yield left, base
        yield right, base
    yield width, base + face.body_height
    yield 0.0, base + face.body_height


def _standing(unit: Construction) -> Iterator[tuple[Inches, Inches]]:
    """From where to where something stands on the floor: pedestals, and a side beside a knee space."""
    width, side, pedestals = unit.spec.body.width, unit.spec.frame.side, unit.face.pedestals
    if pedestals[0].left > 0:
        yield 0.0, side
    for each in pedestals:
        yield each.left, each.right
    if pedestals[-1].right < width - side / 2:
        yield width - side, width


def _door(view: View, unit: Construction, door: Door) -> None:
    """The leaves of an opening with what is seen of their parts, and their knobs."""
    plan = door.plan
    for leaf in plan.leaves:
        view.rectangle(Line.TONE, leaf.x, plan.z, plan.width, plan.height)
        parts = [part for part in unit.parts if part.code.startswith(f"{leaf.code}-")]
        for _, box in seen_of(door, leaf, parts):
            view.rectangle(Line.FRONT, box.x, box.z, box.width, box.height)
        view.circle(Line.FRONT, knob_of(door, leaf), _knob(plan.height))


def _knob(height: Inches) -> Inches:
    return min(KNOB, height / 5)
