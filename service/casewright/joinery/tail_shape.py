"""A row of tails in space: the boards of a dovetailed corner, how it is cut open, what is marked on it.

The board across is a front with a lap, or a back or case end that the tails go through. Its outside face is
at z = 0, its end at x = 0; the tails come from the side at z, and stand proud at x where that is wanted.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from casewright.joinery.groove import Groove
from casewright.joinery.layout import Tail, TailLayout
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Heights,
    Marked,
    Outline,
    Prism,
    Shape,
    Steps,
    Strip,
    Stroke,
    block,
)
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches

BEYOND = 1.5
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""
SHOWN = 1.1
"""How much of the boards the plan shows past the corner, in thicknesses of the side."""
STUB = 0.8
"""How much of the side is shown behind the baseline, in lengths of a tail."""


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
        layout: the row of tails, from the lower edge of the board across
        groove: the groove for the bottom in both boards; None where there is none
        goes_on: how far the side is drawn past its upper edge, where it goes on [in]
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
    layout: TailLayout
    groove: Groove | None = None
    goes_on: Inches = 0.0
    gauge_length: str = "gauge 1"
    gauge_socket: str = "gauge 2"
    wrong_socket: Inches | None = None

    @property
    def tails(self) -> tuple[Tail, ...]:
        """Every tail, measured from the side's lower edge, the lowest first."""
        return tuple(tail.raised(self.low) for tail in self.layout.tails)

    @property
    def inside(self) -> Inches:
        """The inside face of the side, along x [in]."""
        return self.side_thickness - self.proud

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
        notes=tuple(_notes(corner.layout)),
    )


def _beyond(corner: TailCorner) -> Inches:
    return BEYOND * max(corner.thickness, corner.side_thickness)


def _board_across(corner: TailCorner) -> Board:
    upright, reach = (corner.low, corner.high), (corner.socket, corner.socket + _beyond(corner))
    prisms = [block(reach, upright, (0.0, corner.thickness))]
    if corner.lap > 0:
        prisms.append(block((0.0, corner.socket), upright, (0.0, corner.lap)))
    prisms += [
        Prism(along=Axis.X, outline=outline, start=0.0, end=corner.socket, name=f"pin-{number}")
        for number, outline in enumerate(_pins(corner), start=1)
    ]
    return Board(name=corner.across, prisms=tuple(prisms), apart=(0.0, 0.0, -1.0))


def _side(corner: TailCorner) -> Board:
    across, top = (-corner.proud, corner.inside), corner.side_high + corner.goes_on
    prisms = [block(across, (0.0, top), (corner.thickness, corner.thickness + _beyond(corner)))]
    # Where the board across does not reach, below it and above it, the side runs on to its end.
    for low, high in ((0.0, corner.low), (corner.high, top)):
        if high - low > TOLERANCE:
            prisms.append(block(across, (low, high), (corner.lap, corner.thickness)))
    prisms += [
        Prism(
            along=Axis.X,
            outline=_outline(corner, tail),
            start=-corner.proud,
            end=corner.socket,
            name=f"tail-{number}",
        )
        for number, tail in enumerate(corner.tails, start=1)
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
    yield _plan(corner)
    yield _end_across(corner)
    yield _end_of_side(corner)


def _plan(corner: TailCorner) -> Cut:
    """The corner cut level through a tail: what meets what, and where the gauges stand."""
    first, shown = corner.tails[0], SHOWN * corner.side_thickness
    wrong = say("not {:bare}", corner.wrong_socket) if corner.wrong_socket is not None else ""
    left = [
        Dimension(name=corner.gauge_length, start=corner.end, end=corner.thickness, level=False, after=False)
    ]
    if corner.lap > 0:
        left.append(Dimension(name="lap", start=0.0, end=corner.lap, level=False, after=False))
    below = Dimension(name=corner.side, start=-corner.proud, end=corner.inside, level=True, after=False)
    if corner.inside - corner.socket > TOLERANCE:
        left.append(Dimension(name="rabbet", start=corner.socket, end=corner.inside, level=True, after=False))
        below = replace(below, row=1)
    return Cut(
        axis=Axis.Y,
        at=(first.lower_base + first.upper_base) / 2,
        title="plan through the lowest tail",
        dimensions=(
            Dimension(name=corner.gauge_socket, start=0.0, end=corner.socket, level=True, note=wrong),
            *left,
            Dimension(name=corner.across, start=0.0, end=corner.thickness, level=False),
            below,
        ),
        window=((-corner.proud, corner.inside + shown), (min(0.0, corner.end), corner.thickness + shown)),
        enlarged=True,
    )


def _end_across(corner: TailCorner) -> Cut:
    """The end of the board with the sockets, its inside face at the right."""
    tails, layout, groove = corner.tails, corner.layout, corner.groove
    spans = [
        ("half pin", corner.low, tails[0].lower_end),
        ("tail", tails[0].lower_end, tails[0].upper_end),
        *([("pin", tails[0].upper_end, tails[1].lower_end)] if len(tails) > 1 else []),
        ("half pin", tails[-1].upper_end, corner.high),
    ]
    if corner.low > TOLERANCE:
        spans.insert(0, ("offset", 0.0, corner.low))
    floor = corner.thickness - groove.depth if groove else 0.0
    return Cut(
        axis=Axis.X,
        at=corner.socket / 2,
        title=say("{}, {:bare} high", corner.across, corner.high - corner.low),
        dimensions=tuple(
            Dimension(name=name, start=start, end=end, level=False, after=False) for name, start, end in spans
        ),
        boards=(corner.across,),
        behind=None if corner.lap > 0 else corner.socket + TOLERANCE,
        hidden=(
            (
                (corner.thickness, groove.height),
                (floor, groove.height),
                (floor, groove.top),
                (corner.thickness, groove.top),
            ),
        )
        if groove
        else (),
        steps=Steps(start=tails[0].lower_end, pitch=layout.pitch, count=layout.count),
    )


def _end_of_side(corner: TailCorner) -> Cut:
    """The end of the side seen from outside, its tails at the left, with every position."""
    tails, top = corner.tails, corner.side_high + corner.goes_on
    shown = corner.end + (1 + STUB) * (corner.thickness - corner.end)
    gauge = corner.gauge_length
    return Cut(
        axis=Axis.X,
        at=corner.socket / 2,
        title=corner.side if corner.goes_on else say("{}, {:bare} high", corner.side, corner.side_high),
        dimensions=(Dimension(name=gauge, start=corner.end, end=corner.thickness, level=True, after=False),),
        boards=(corner.side,),
        hatched=False,
        window=((corner.end, shown), (0.0, top - corner.goes_on / 2)),
        beside=True,
        scribed=(((corner.thickness, 0.0), (corner.thickness, top - corner.goes_on / 2)),),
        hidden=tuple(
            ((corner.end, level), (shown, level))
            for level in (
                (corner.groove.height, corner.groove.top) if corner.groove and corner.groove.in_side else ()
            )
        ),
        columns=(
            Heights(
                heading=("at the", "end"),
                marks=_marks((tail.lower_end, tail.upper_end) for tail in tails),
                edge=corner.end,
                after=False,
            ),
            Heights(
                heading=("at the", "baseline"),
                marks=_marks((tail.lower_base, tail.upper_base) for tail in tails),
                edge=corner.thickness,
                after=True,
            ),
        ),
    )


def _marks(edges: Iterable[tuple[Inches, Inches]]) -> tuple[tuple[Inches, str], ...]:
    return tuple(
        mark
        for number, (lower, upper) in enumerate(edges, start=1)
        for mark in ((lower, f"tail {number} from"), (upper, "to"))
    )


def _notes(layout: TailLayout) -> Iterator[Words]:
    """What cannot be measured off the drawing."""
    yield "Positions from the side's bottom edge."
    yield say("Slope 1:{:g}, {:.1f}°.", layout.slope, layout.bevel_degrees)
    yield say("Dividers: the last of {:d} lands {:bare} past the mark.", layout.count, layout.pin)
    yield say("Pins {:bare} at the baseline.", layout.pin_inside)


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
