"""The sliding dovetail in space: a divider that goes into a case side from the front or the back."""

from collections.abc import Iterator

from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Marked,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.units import Inches

SHOWN_LENGTH = 4.0
"""How much of the joint is drawn at the most, from front to back [in]."""
ABOVE = 2.0
"""How much of the case side is drawn above and below, in thicknesses of the divider."""
BEYOND = 4.0
"""How much of the divider is drawn, likewise."""


def sliding_shape(
    divider: Inches,
    case_side: Inches,
    depth: Inches,
    tip: Inches,
    neck: Inches,
    length: Inches,
    stop: Inches = 0.0,
) -> Shape:
    """A sliding dovetail in space: the outside of the case side at x = 0, the divider's underside at y = 0.

    Args:
        divider: thickness of the divider [in]
        case_side: thickness of the case side [in]
        depth: how deep the socket is [in]
        tip: the tail at its widest [in]
        neck: the tail at its shoulders [in]
        length: depth of the divider from front to back; 0 where it is not known [in]
        stop: how far back of the front edge the socket stops; 0 where it runs through [in]

    Returns:
        Boards, cuts and what is marked.

    Source: geometry of the joint.
    """
    floor, mouth, middle = case_side - depth, case_side, divider / 2
    shown = stop + SHOWN_LENGTH
    long = min(length, shown) or shown
    stopped = stop > TOLERANCE
    start = stop if stopped else 0.0
    low, high = -ABOVE * divider, (1 + ABOVE) * divider
    tail = (
        (floor, middle - tip / 2),
        (mouth, middle - neck / 2),
        (mouth, middle + neck / 2),
        (floor, middle + tip / 2),
    )
    below = ((floor, low), (mouth, low), tail[1], tail[0])
    above = (tail[3], tail[2], (mouth, high), (floor, high))
    side = (
        block((0.0, floor), (low, high), (0.0, long)),
        *(Prism(along=Axis.Z, outline=outline, start=0.0, end=long) for outline in (below, above)),
        # Before the stop the side keeps its wood, and the tail is notched away.
        *((Prism(along=Axis.Z, outline=tail, start=0.0, end=stop),) if stopped else ()),
    )
    body = block((mouth, mouth + BEYOND * divider), (0.0, divider), (0.0, long))
    return Shape(
        boards=(
            Board(name="case side", prisms=side),
            Board(
                name="divider",
                prisms=(body, Prism(along=Axis.Z, outline=tail, start=start, end=long)),
                apart=(0.0, 0.0, 1.0 if stopped else -1.0),
            ),
        ),
        cuts=(
            Cut(
                axis=Axis.Z,
                at=(start + long) / 2,
                title="from the front, cut open" if stopped else "from the front",
                dimensions=(
                    Dimension(name="left of the side", start=0.0, end=floor, level=True, after=False),
                    Dimension(name="depth", start=floor, end=mouth, level=True),
                    Dimension(name="tip", start=tail[0][1], end=tail[3][1], level=False, after=False),
                    Dimension(name="neck", start=tail[1][1], end=tail[2][1], level=False, row=1),
                    Dimension(name="divider", start=0.0, end=divider, level=False),
                ),
            ),
            *((_plan(case_side, depth, divider, stop),) if stopped else ()),
        ),
        engaged=(long - start) * 0.7,
        filled=((0.0, mouth), (low, high), (0.0, long)),
        strips=tuple(_strips(divider, depth, tip, neck, start, long)),
    )


def _plan(case_side: Inches, depth: Inches, divider: Inches, stop: Inches) -> Cut:
    return Cut(
        axis=Axis.Y,
        at=divider / 2,
        title="plan, through the divider",
        dimensions=(
            Dimension(name="depth", start=case_side - depth, end=case_side, level=True),
            Dimension(name="stop", start=0.0, end=stop, level=False),
        ),
    )


def _strips(
    divider: Inches, depth: Inches, tip: Inches, neck: Inches, stop: Inches, long: Inches
) -> Iterator[Strip]:
    yield _end(divider, depth, tip, neck, "rear edge" if stop else "front edge")
    yield _socket(divider, neck, stop, long)
    if stop:
        yield Strip(
            board="divider",
            face="upper face, from its end and its front edge",
            foot="front edge",
            length=depth,
            height=long,
            lines=(
                Marked(stroke=Stroke.GAUGE, start=(depth, 0.0), end=(depth, long), label="shoulder"),
                Marked(stroke=Stroke.SAW, start=(0.0, stop), end=(depth, stop), label="notch"),
            ),
            waste=(box((0.0, depth), (0.0, stop)),),
        )


def _socket(divider: Inches, neck: Inches, stop: Inches, long: Inches) -> Strip:
    """The socket's mouth on the inside face of the case side; the strip is as high as the divider is thick.

    So its edges lie on the divider's faces, as a story stick marks them.
    """
    low, high = (divider - neck) / 2, (divider + neck) / 2
    walls = (
        Marked(stroke=Stroke.GAUGE, start=(stop, low), end=(long, low), label="lower wall, at the mouth"),
        Marked(stroke=Stroke.GAUGE, start=(stop, high), end=(long, high), label="upper wall, at the mouth"),
    )
    end = Marked(stroke=Stroke.STOP, start=(stop, low), end=(stop, high), label="stop")
    return Strip(
        board="case side",
        face="inside face, from its front edge; its edges are the divider's faces",
        foot="lower face of the divider",
        length=long,
        height=divider,
        lines=(*walls, end) if stop else walls,
        waste=(box((stop, long), (low, high)),),
    )


def _end(divider: Inches, depth: Inches, tip: Inches, neck: Inches, edge: str) -> Strip:
    """The tail on an edge of the divider, from its end: the front one, or the rear one of a notched tail."""
    middle = divider / 2
    cheeks = (
        ((0.0, middle - tip / 2), (depth, middle - neck / 2)),
        ((0.0, middle + tip / 2), (depth, middle + neck / 2)),
    )
    return Strip(
        board="divider",
        face=f"{edge}, its end at the left",
        foot="lower face",
        length=depth,
        height=divider,
        lines=(
            Marked(stroke=Stroke.GAUGE, start=(depth, 0.0), end=(depth, divider), label="shoulder"),
            *(Marked(stroke=Stroke.SAW, start=start, end=end) for start, end in cheeks),
        ),
        waste=(
            ((0.0, 0.0), (depth, 0.0), cheeks[0][1], cheeks[0][0]),
            (cheeks[1][0], cheeks[1][1], (depth, divider), (0.0, divider)),
        ),
    )
