"""A frame's tenon in space.

The frame stands upright with its face towards one, at its upper right corner: the rail comes from the left,
and its shoulder closes at x = 0, from where the stile runs to the right; the faces are at z = 0. Heights run
up from the inner edge of the rail, the one with the groove, to its outer edge; there the stile ends, or runs
on. So one looks into the mortise, at the left of the stile, when the two are drawn apart.

Three gaps are meant, and lie outside the block that the boards fill: the room for the glue below the tenon,
the groove where the panel goes, and the slack of a rear joint before its shoulder and the tip of its haunch.
"""

from collections.abc import Iterator

from casewright.joinery.families.frame_tenon.asked import FrameTenon
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Flat,
    Marked,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import Room, carved, haunch_length, within
from casewright.measure.units import Inches

BELOW = 0.7
"""How far the stile is drawn past the rail, in widths of the wider one."""
BESIDE = 0.8
"""How far the rail is drawn past its shoulder, in lengths of the tenon and a thickness."""


def frame_shape(joint: FrameTenon) -> Shape:
    """The joint in space.

    Args:
        joint: the joint

    Returns:
        Rail and stile, their views, and what is marked on them.

    Source: geometry of the joint.
    """
    reach = joint.length - joint.slack
    return Shape(
        boards=(_rail(joint), _stile(joint)),
        cuts=(_plan(joint), _elevation(joint)),
        engaged=reach,
        filled=_filled(joint),
        strips=tuple(_strips(joint)),
    )


def _reach_of_haunch(joint: FrameTenon) -> Inches:
    return haunch_length(joint.groove_depth, joint.tenon, joint.length)


def _cheeks(joint: FrameTenon) -> Flat:
    return joint.face, joint.face + joint.tenon


def _heights(joint: FrameTenon) -> Flat:
    """From where to where the tenon runs up its rail."""
    return joint.groove_depth, joint.groove_depth + joint.width


def _haunch_cheeks(joint: FrameTenon) -> Flat:
    """A haunch is as thick as what it fills: the groove, or else the mortise."""
    return joint.groove_span if joint.groove else _cheeks(joint)


def _left(joint: FrameTenon) -> Inches:
    """Where the rail is cut off in the drawing."""
    return -joint.slack - BESIDE * (joint.length + joint.thickness)


def _rail(joint: FrameTenon) -> Board:
    shoulder, left, _, top = -joint.slack, _left(joint), *_heights(joint)
    body: Room = ((left, shoulder), (0.0, joint.rail), (0.0, joint.thickness))
    groove: tuple[Room, ...] = ()
    if joint.groove:
        groove = (((left, shoulder), (0.0, joint.groove_depth), joint.groove_span),)
    ends = [block((shoulder, joint.length - joint.slack), _heights(joint), _cheeks(joint))]
    if joint.rail - top > TOLERANCE:
        tip = _reach_of_haunch(joint) - joint.slack
        if tip > shoulder + TOLERANCE:
            ends.append(block((shoulder, tip), (top, joint.rail), _haunch_cheeks(joint)))
    return Board(name="rail", prisms=(*carved(body, groove), *ends), apart=(-1.0, 0.0, 0.0))


def _stile(joint: FrameTenon) -> Board:
    low, high = -BELOW * max(joint.rail, joint.stile), joint.rail + joint.beyond
    body: Room = ((0.0, joint.stile), (low, high), (0.0, joint.thickness))
    holes: list[Room] = [((0.0, joint.depth), _heights(joint), _cheeks(joint))]
    top = _heights(joint)[1]
    if joint.groove:
        holes.append(((0.0, joint.groove_depth), (low, high), joint.groove_span))
    elif joint.rail - top > TOLERANCE:
        holes.append(((0.0, _reach_of_haunch(joint)), (top, joint.rail), _cheeks(joint)))
    return Board(name="stile", prisms=tuple(carved(body, tuple(holes))))


def _filled(joint: FrameTenon) -> Room:
    """Where nothing is to be open: with slack or too thin a tenon only about the tenon itself."""
    low, high = _heights(joint)
    thin = joint.groove is not None and joint.tenon < joint.groove.width - TOLERANCE
    across = _cheeks(joint) if thin else (0.0, joint.thickness)
    if joint.slack or thin:
        return (0.0, joint.length - joint.slack), (low, high), across
    return (_left(joint), joint.length), (low, joint.rail), across


def _plan(joint: FrameTenon) -> Cut:
    near, far = _cheeks(joint)
    shoulder = -joint.slack
    gap = (Dimension(name="slack", start=shoulder, end=0.0, level=True),) if joint.slack else ()
    return Cut(
        axis=Axis.Y,
        at=within(*_heights(joint)),
        title="plan, through the tenon",
        dimensions=(
            Dimension(name="stile", start=0.0, end=joint.stile, level=True, row=0),
            *gap,
            Dimension(name="tenon", start=shoulder, end=joint.length + shoulder, level=True, after=False),
            Dimension(name="mortise", start=0.0, end=joint.depth, level=True, after=False, row=1),
            Dimension(name="front shoulder", start=0.0, end=near, level=False, after=False),
            Dimension(name="tenon", start=near, end=far, level=False, after=False),
            Dimension(name="back shoulder", start=far, end=joint.thickness, level=False, after=False),
            Dimension(name="thickness", start=0.0, end=joint.thickness, level=False),
        ),
    )


def _elevation(joint: FrameTenon) -> Cut:
    low, high = _heights(joint)
    shoulder = -joint.slack
    spans = (("groove", 0.0, low), ("tenon", low, high), ("haunch", high, joint.rail))
    haunch: tuple[Dimension, ...] = ()
    if joint.rail - high > TOLERANCE:
        tip = _reach_of_haunch(joint) + shoulder
        haunch = (Dimension(name="haunch", start=shoulder, end=tip, level=True),)
    beyond: tuple[Dimension, ...] = ()
    if joint.beyond:
        end = joint.rail + joint.beyond
        beyond = (Dimension(name="beyond", start=joint.rail, end=end, level=False),)
    return Cut(
        axis=Axis.Z,
        at=within(*_cheeks(joint)),
        title="the frame from its face, cut open through the tenon",
        dimensions=(
            *haunch,
            *(
                Dimension(name=name, start=start, end=end, level=False, after=False)
                for name, start, end in spans
                if end - start > TOLERANCE
            ),
            Dimension(name="rail", start=0.0, end=joint.rail, level=False, after=False, row=1),
            *(
                Dimension(name=name, start=start, end=end, level=False)
                for name, start, end in (("mortise", low, high),)
            ),
            *beyond,
        ),
    )


def _strips(joint: FrameTenon) -> Iterator[Strip]:
    """What is marked: on the stile from its end, on the rail from the end of its tenon."""
    near, far = _cheeks(joint)
    low, high = _heights(joint)
    end = joint.rail + joint.beyond
    mortise = end - high, end - low
    yield Strip(
        board="stile",
        face="inner edge",
        foot="face",
        length=end,
        height=joint.thickness,
        lines=(
            *(_gauged(mortise, at) for at in (near, far)),
            *(
                Marked(stroke=Stroke.STOP, start=(at, 0.0), end=(at, joint.thickness), label=label)
                for at, label in zip(mortise, ("mortise", ""), strict=True)
            ),
            Marked(
                stroke=Stroke.GAUGE,
                start=(joint.beyond, 0.0),
                end=(joint.beyond, joint.thickness),
                label="outer edge of the rail",
            ),
        ),
        waste=(box(mortise, (near, far)),),
    )
    shoulder = joint.length
    haunch = _reach_of_haunch(joint)
    waste = [box((0.0, shoulder), (0.0, low))] if low > TOLERANCE else []
    lines = [
        Marked(stroke=Stroke.SAW, start=(shoulder, 0.0), end=(shoulder, joint.rail), label="shoulder"),
    ]
    if joint.rail - high > TOLERANCE:
        lines.append(Marked(stroke=Stroke.SAW, start=(0.0, high), end=(shoulder - haunch, high)))
        if shoulder - haunch > TOLERANCE:
            waste.append(box((0.0, shoulder - haunch), (high, joint.rail)))
            tip = shoulder - haunch
            lines.append(Marked(stroke=Stroke.SAW, start=(tip, high), end=(tip, joint.rail), label="haunch"))
    yield Strip(
        board="rail",
        face="face",
        foot="inner edge",
        length=shoulder,
        height=joint.rail,
        lines=tuple(lines),
        waste=tuple(waste),
    )
    yield Strip(
        board="rail",
        face="outer edge",
        foot="face",
        length=shoulder,
        height=joint.thickness,
        lines=tuple(_gauged((0.0, shoulder), at) for at in (near, far)),
        waste=(box((0.0, shoulder), (0.0, near)), box((0.0, shoulder), (far, joint.thickness))),
    )


def _gauged(along: Flat, at: Inches) -> Marked:
    return Marked(stroke=Stroke.GAUGE, start=(along[0], at), end=(along[1], at))
