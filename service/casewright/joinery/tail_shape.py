"""A row of tails in space: the boards of a dovetailed corner, how it is cut open, what is marked on it.

The board across is a front with a lap, or a back or case end that the tails go through. Its outside face is
at z = 0, its end at x = 0; the tails come from the side at z, and stand proud at x where that is wanted.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from casewright.joinery.layout import Tail
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Marked,
    Outline,
    Prism,
    Shape,
    Strip,
    Stroke,
    block,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import Inches

BEYOND = 2.5
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TailCorner:
    """A dovetailed corner.

    Attributes:
        across: what the board across is: front, back, case bottom
        side: what the board with the tails is
        thickness: of the board across [in]
        lap: what is left of it before the tails; 0 where they go through [in]
        low: lower edge of the board across, above the side's own [in]
        high: its upper edge [in]
        side_high: upper edge of the side [in]
        side_thickness: of the side [in]
        socket: how far the tails reach into it from its end [in]
        proud: how far the side's outside stands past that end [in]
        tails_proud: how far the ends of through tails stand past its outside face [in]
        tails: every tail, measured from the side's lower edge, the lowest first
        gauge_length: what the gauge for the tails' length is called
        gauge_socket: what the gauge for the sockets is called
        wrong_socket: the number easily taken for it; None where there is no such trap [in]
    """

    across: str
    side: str = "side"
    thickness: Inches
    lap: Inches = 0.0
    low: Inches = 0.0
    high: Inches
    side_high: Inches
    side_thickness: Inches
    socket: Inches
    proud: Inches = 0.0
    tails_proud: Inches = 0.0
    tails: tuple[Tail, ...]
    gauge_length: str = "gauge 1"
    gauge_socket: str = "gauge 2"
    wrong_socket: Inches | None = None

    @property
    def length(self) -> Inches:
        """From the baseline to the outside face of the board across, or to the floor of its sockets [in]."""
        return self.thickness - self.lap

    @property
    def end(self) -> Inches:
        """Where the tails end, along z [in]."""
        return self.lap - self.tails_proud


def tail_shape(corner: TailCorner) -> Shape:
    """A dovetailed corner in space.

    Args:
        corner: the corner

    Returns:
        Boards, cuts and what is marked.

    Source: geometry of the joint.
    """
    return Shape(
        boards=(_board_across(corner), _side(corner)),
        cuts=tuple(_cuts(corner)),
        engaged=corner.length + corner.tails_proud,
        filled=((0.0, corner.socket), (corner.low, corner.high), (0.0, corner.thickness)),
        strips=(_side_strip(corner), _end_strip(corner)),
    )


def _beyond(corner: TailCorner) -> Inches:
    return BEYOND * max(corner.thickness, corner.side_thickness)


def _board_across(corner: TailCorner) -> Board:
    upright, reach = (corner.low, corner.high), (corner.socket, corner.socket + _beyond(corner))
    prisms = [block(reach, upright, (0.0, corner.thickness))]
    if corner.lap > 0:
        prisms.append(block((0.0, corner.socket), upright, (0.0, corner.lap)))
    prisms += [
        Prism(along=Axis.X, outline=outline, start=0.0, end=corner.socket) for outline in _pins(corner)
    ]
    return Board(name=corner.across, prisms=tuple(prisms), apart=(0.0, 0.0, -1.0))


def _side(corner: TailCorner) -> Board:
    inside = corner.side_thickness - corner.proud
    body = block(
        (-corner.proud, inside),
        (0.0, corner.side_high),
        (corner.thickness, corner.thickness + _beyond(corner)),
    )
    prisms = [body]
    # Where the board across does not reach, below it and above it, the side runs on to its end.
    for low, high in ((0.0, corner.low), (corner.high, corner.side_high)):
        if high - low > TOLERANCE:
            prisms.append(block((-corner.proud, inside), (low, high), (corner.lap, corner.thickness)))
    prisms += [
        Prism(along=Axis.X, outline=outline, start=-corner.proud, end=corner.socket)
        for outline in (_outline(corner, tail) for tail in corner.tails)
    ]
    return Board(name=corner.side, prisms=tuple(prisms), apart=(0.0, 0.0, 1.0))


def _outline(corner: TailCorner, tail: Tail) -> Outline:
    """A tail as one sees it from its outside, its end at the left."""
    more = (tail.lower_base - tail.lower_end) * corner.tails_proud / corner.length
    return (
        (corner.end, tail.lower_end - more),
        (corner.thickness, tail.lower_base),
        (corner.thickness, tail.upper_base),
        (corner.end, tail.upper_end + more),
    )


def _pins(corner: TailCorner) -> Iterator[Outline]:
    """What stands between the tails, within the board across."""
    near, far = corner.lap, corner.thickness
    lower = (corner.low, corner.low)
    for tail in (*corner.tails, None):
        upper = (tail.lower_end, tail.lower_base) if tail else (corner.high, corner.high)
        if upper[1] - lower[1] > TOLERANCE:
            corners = ((near, lower[0]), (far, lower[1]), (far, upper[1]), (near, upper[0]))
            yield corners if upper[0] - lower[0] > TOLERANCE else corners[:3]
        if tail:
            lower = (tail.upper_end, tail.upper_base)


def _cuts(corner: TailCorner) -> Iterator[Cut]:
    first = corner.tails[0]
    wrong = say("not {:fraction}", corner.wrong_socket) if corner.wrong_socket is not None else ""
    ends = [
        Dimension(name=corner.gauge_length, start=corner.lap, end=corner.thickness, level=False, after=False)
    ]
    if corner.lap > 0:
        ends.append(Dimension(name="lap", start=0.0, end=corner.lap, level=False, after=False))
    yield Cut(
        axis=Axis.Y,
        at=(first.lower_base + first.upper_base) / 2,
        title="plan, through the lowest tail",
        dimensions=(
            Dimension(name=corner.gauge_socket, start=0.0, end=corner.socket, level=True, note=wrong),
            *ends,
            Dimension(name=corner.across, start=0.0, end=corner.thickness, level=False),
            Dimension(
                name=corner.side,
                start=-corner.proud,
                end=corner.side_thickness - corner.proud,
                level=True,
                after=False,
            ),
        ),
    )
    yield Cut(
        axis=Axis.X,
        at=corner.socket / 2,
        title=f"{corner.side}, cut along its tails",
        dimensions=tuple(_heights(corner)),
    )


def _heights(corner: TailCorner) -> Iterator[Dimension]:
    """Tails and pins at the end of the side, and the height of both boards."""
    edges = [
        corner.low,
        *(edge for tail in corner.tails for edge in (tail.lower_end, tail.upper_end)),
        corner.high,
    ]
    for number, (start, end) in enumerate(pairwise(edges)):
        if end - start > TOLERANCE:
            name = "tail" if number % 2 else "half pin" if number in {0, len(edges) - 2} else "pin"
            yield Dimension(name=name, start=start, end=end, level=False, after=False)
    yield Dimension(name=corner.across, start=corner.low, end=corner.high, level=False)
    if corner.side_high - corner.high > TOLERANCE or corner.low > TOLERANCE:
        yield Dimension(name=corner.side, start=0.0, end=corner.side_high, level=False, row=1)


def _side_strip(corner: TailCorner) -> Strip:
    """The tails on the outside face of the side, from its end."""
    long = corner.length + corner.tails_proud
    outlines = [tuple((z - corner.end, y) for z, y in _outline(corner, tail)) for tail in corner.tails]
    saw = [line for outline in outlines for line in ((outline[0], outline[1]), (outline[3], outline[2]))]
    return Strip(
        board=corner.side,
        face="outside face",
        length=long,
        height=corner.side_high,
        lines=(
            Marked(
                stroke=Stroke.GAUGE,
                start=(long, 0.0),
                end=(long, corner.side_high),
                label=corner.gauge_length,
            ),
            *(Marked(stroke=Stroke.SAW, start=start, end=end) for start, end in saw),
        ),
        waste=tuple(tuple((z - corner.end, y) for z, y in pin) for pin in _waste(corner)),
    )


def _waste(corner: TailCorner) -> list[Outline]:
    """What is cut away between the tails, out to their ends."""
    outlines = [_outline(corner, tail) for tail in corner.tails]
    lower = [((corner.end, corner.low), (corner.thickness, corner.low))]
    lower += [(outline[3], outline[2]) for outline in outlines]
    upper = [(outline[0], outline[1]) for outline in outlines]
    upper.append(((corner.end, corner.high), (corner.thickness, corner.high)))
    return [
        (low[0], low[1], high[1], high[0])
        for low, high in zip(lower, upper, strict=True)
        if high[1][1] - low[1][1] > TOLERANCE
    ]


def _end_strip(corner: TailCorner) -> Strip:
    """The sockets on the end of the board across: lap line, and the tails' ends below it.

    Heights run up from the edge of the board across; the strip's length runs from its inside face outwards.
    """
    length, high = corner.length, corner.high - corner.low
    lines = []
    for tail in _measured_from(corner.tails, corner.low):
        lines += [
            ((0.0, tail.lower_base), (length, tail.lower_end)),
            ((0.0, tail.upper_base), (length, tail.upper_end)),
        ]
    return Strip(
        board=corner.across,
        face="end",
        left="inside face",
        length=corner.thickness,
        height=high,
        lines=(
            *(
                [Marked(stroke=Stroke.GAUGE, start=(length, 0.0), end=(length, high), label="lap line")]
                if corner.lap > 0
                else []
            ),
            *(Marked(stroke=Stroke.SAW, start=start, end=end) for start, end in lines),
        ),
        waste=tuple(
            (
                (0.0, tail.lower_base),
                (length, tail.lower_end),
                (length, tail.upper_end),
                (0.0, tail.upper_base),
            )
            for tail in _measured_from(corner.tails, corner.low)
        ),
    )


def _measured_from(tails: Sequence[Tail], edge: Inches) -> list[Tail]:
    return [tail.raised(-edge) for tail in tails]
