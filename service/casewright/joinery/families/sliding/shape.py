"""The sliding dovetail in space: a divider that goes into a case side from the front or the back."""

from casewright.joinery.solid import Axis, Board, Cut, Dimension, Marked, Prism, Shape, Strip, Stroke, block
from casewright.measure.units import Inches

SHOWN_LENGTH = 4.0
"""How much of the joint is drawn at the most, from front to back [in]."""
ABOVE = 2.0
"""How much of the case side is drawn above and below, in thicknesses of the divider."""
BEYOND = 4.0
"""How much of the divider is drawn, likewise."""


def sliding_shape(
    divider: Inches, case_side: Inches, depth: Inches, tip: Inches, neck: Inches, length: Inches
) -> Shape:
    """A sliding dovetail in space: the outside of the case side at x = 0, the divider's underside at y = 0.

    Args:
        divider: thickness of the divider [in]
        case_side: thickness of the case side [in]
        depth: how deep the socket is [in]
        tip: the tail at its widest [in]
        neck: the tail at its shoulders [in]
        length: from front to back; 0 where it is not known [in]

    Returns:
        Boards, cuts and what is marked.

    Source: geometry of the joint.
    """
    floor, mouth, middle = case_side - depth, case_side, divider / 2
    long = min(length, SHOWN_LENGTH) or SHOWN_LENGTH
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
    )
    body = block((mouth, mouth + BEYOND * divider), (0.0, divider), (0.0, long))
    return Shape(
        boards=(
            Board(name="case side", prisms=side),
            Board(
                name="divider",
                prisms=(body, Prism(along=Axis.Z, outline=tail, start=0.0, end=long)),
                apart=(0.0, 0.0, -1.0),
            ),
        ),
        cuts=(
            Cut(
                axis=Axis.Z,
                at=long / 2,
                title="from the front",
                dimensions=(
                    Dimension(name="left of the side", start=0.0, end=floor, level=True, after=False),
                    Dimension(name="depth", start=floor, end=mouth, level=True),
                    Dimension(name="tip", start=tail[0][1], end=tail[3][1], level=False, after=False),
                    Dimension(name="neck", start=tail[1][1], end=tail[2][1], level=False, row=1),
                    Dimension(name="divider", start=0.0, end=divider, level=False),
                ),
            ),
        ),
        engaged=long * 0.7,
        filled=((0.0, mouth), (low, high), (0.0, long)),
        strips=(_end(divider, depth, tip, neck),),
    )


def _end(divider: Inches, depth: Inches, tip: Inches, neck: Inches) -> Strip:
    """The tail on the front edge of the divider, from its end."""
    middle = divider / 2
    cheeks = (
        ((0.0, middle - tip / 2), (depth, middle - neck / 2)),
        ((0.0, middle + tip / 2), (depth, middle + neck / 2)),
    )
    return Strip(
        board="divider",
        face="front edge",
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
