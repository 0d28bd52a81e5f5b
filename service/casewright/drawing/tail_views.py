"""The two ends of a dovetail seen square on: the side with its tails, the board with the sockets for them.

They stand side by side as they will close, both on the bottom edge that they are laid out from.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.drawing.canvas import Line, Point
from casewright.drawing.dimensions import Side, Span, heights, levels, widths
from casewright.drawing.view import View, box
from casewright.joinery.layout import Tail, TailLayout
from casewright.measure.units import Inches

STUB = 0.8
"""How far the side is drawn behind the baseline, in lengths of a tail."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """What both kinds of joint show of their two ends.

    Attributes:
        layout: the row of tails, from the lower edge of the board with the sockets
        tails: the same tails from the bottom edge of the side
        depth: from the end of the side to the baseline [in]
        gauge: what the gauge for that is called
        name: what the board with the sockets is: front or back
        thickness: thickness of that board [in]
        lap: what is left of it before the tails; 0 where they go through [in]
        board: height of that board [in]
        offset: how far its lower edge stands above that of the side [in]
        groove: where the groove for the bottom runs in side and front: a lower edge, an upper edge and a
            depth; None where there is none, or it is not known [in]
    """

    layout: TailLayout
    tails: tuple[Tail, ...]
    depth: Inches
    gauge: str
    name: str
    thickness: Inches
    lap: Inches
    board: Inches
    offset: Inches
    groove: tuple[Inches, Inches, Inches] | None

    @property
    def top(self) -> Inches:
        """The upper edge of the board with the sockets, from the bottom edge of the side [in]."""
        return self.offset + self.board

    @property
    def goes_on(self) -> bool:
        """Does the side go on below and above the joint, as it does where a back stands on the bottom?"""
        return self.offset > 0


def tail_outline(tail: Tail, end: Inches, base: Inches) -> tuple[Point, Point, Point, Point]:
    """A tail by its four corners, which are those of the socket for it too.

    Args:
        tail: the tail
        end: where its wide end stands, across [in]
        base: where its neck stands, across [in]

    Returns:
        The corners, from the lower one at the neck, round by the wide end.

    Source: geometry of the joint.
    """
    return (base, tail.lower_base), (end, tail.lower_end), (end, tail.upper_end), (base, tail.upper_base)


def side_end(view: View, ends: Ends) -> Inches:
    """The side seen from outside, its end to the left, with every position from its bottom edge.

    Args:
        view: where it is drawn; its zero is the end of the side at its bottom edge
        ends: the joint

    Returns:
        How far to the left on the sheet its dimensions reach [in]

    Source: geometry of the joint.
    """
    letters, stub = view.sheet.letters, ends.depth * (1 + STUB)
    outline = list(_side_outline(ends, stub))
    view.polyline(Line.OBJECT, *outline)
    view.broken((stub, 0.0), (stub, outline[-1][1]))
    if ends.goes_on:
        view.broken(outline[-1], (stub, outline[-1][1]))
    for number, tail in enumerate(ends.tails, start=1):
        view.polygon(Line.TONE, tail_outline(tail, 0.0, ends.depth), f"tail-{number}")
    view.polyline(Line.WITNESS, (ends.depth, 0.0), (ends.depth, outline[-1][1]))
    if ends.groove:
        low, high, _ = ends.groove
        view.polyline(Line.HIDDEN, (0.0, low), (stub, low))
        view.polyline(Line.HIDDEN, (0.0, high), (stub, high))
    at_end = list(_edges(ends.tails, "end"))
    at_base = list(_edges(ends.tails, "base"))
    left = levels(view, at_end, 0.0, view.x - 0.9 * letters, Side.BEFORE, "at the\nend")
    column = view.at(stub, 0)[0] + 0.9 * letters
    levels(view, at_base, ends.depth, column, Side.AFTER, "at the\nbaseline")
    # Where tails are many, the lettering of the columns reaches below the side.
    foot = min(view.y, view.sheet.reach[1] + 0.5 * letters)
    view.sheet.letter((view.at(ends.depth, 0)[0] + 0.3 * letters, foot - 1.1 * letters), "side", "start")
    below = foot - 2.9 * letters
    gauge = Span(0.0, ends.depth, f"{ends.gauge}, on the side", words=f"{ends.gauge}:")
    widths(view, [gauge], below, Side.BEFORE, 0.0)
    return left


def _side_outline(ends: Ends, stub: Inches) -> Iterator[Point]:
    """The outline of the side from its lower edge round by its end to its upper edge."""
    low, high = ends.offset, ends.top
    yield (stub, 0.0)
    if ends.goes_on:
        yield from ((0.0, 0.0), (0.0, low))
    yield (ends.depth, low)
    for tail in ends.tails:
        yield from tail_outline(tail, 0.0, ends.depth)
    side_top = high if ends.goes_on else ends.layout.height
    yield (ends.depth, side_top)
    if ends.goes_on:
        above = high + ends.layout.pitch / 4
        yield from ((0.0, high), (0.0, above))
    else:
        yield (stub, side_top)


def _edges(tails: tuple[Tail, ...], where: str) -> Iterator[tuple[Inches, str]]:
    for number, tail in enumerate(tails, start=1):
        lower, upper = (
            (tail.lower_end, tail.upper_end) if where == "end" else (tail.lower_base, tail.upper_base)
        )
        yield from ((lower, f"tail {number} from"), (upper, "to"))


def socket_end(view: View, ends: Ends) -> None:
    """The end of the board with the sockets, its inside face to the right, and the steps of the dividers.

    Args:
        view: where it is drawn; its zero is the outside face of that board, at the bottom edge of the side
        ends: the joint

    Source: geometry of the joint.
    """
    if ends.lap > 0:
        view.cut(list(_end_grain(ends)), "sockets")
    else:
        view.polygon(Line.SEEN, box(0.0, ends.offset, ends.thickness, ends.board))
        for number, pin in enumerate(_pins(ends), start=1):
            view.cut(pin, f"pin-{number}")
    if ends.groove and ends.lap > 0:
        low, high, depth = ends.groove
        inside, floor = ends.thickness, ends.thickness - depth
        view.polyline(Line.HIDDEN, (inside, low), (floor, low), (floor, high), (inside, high))
    letters = view.sheet.letters
    middle = view.at(ends.thickness / 2, 0)[0]
    view.sheet.letter((middle, view.at(0, ends.offset)[1] - 1.1 * letters), ends.name)
    reach = _widths_of_pins(view, ends)
    _steps(view, ends, reach)


def _end_grain(ends: Ends) -> Iterator[Point]:
    """The end of a front: the lap unbroken, the sockets open to the inside face."""
    yield from ((0.0, ends.offset), (ends.thickness, ends.offset))
    for tail in ends.tails:
        yield from tail_outline(tail, ends.lap, ends.thickness)
    yield from ((ends.thickness, ends.top), (0.0, ends.top))


def _pins(ends: Ends) -> Iterator[tuple[Point, Point, Point, Point]]:
    """The pins of a back from the bottom up, half pins too."""
    outside, inside = 0.0, ends.thickness
    low, low_inside = ends.offset, ends.offset
    for tail in ends.tails:
        yield (outside, low), (inside, low_inside), (inside, tail.lower_base), (outside, tail.lower_end)
        low, low_inside = tail.upper_end, tail.upper_base
    yield (outside, low), (inside, low_inside), (inside, ends.top), (outside, ends.top)


def _widths_of_pins(view: View, ends: Ends) -> Inches:
    """Half pins, one tail and one pin where they are laid out; how far to the left that reaches."""
    tails, letters = ends.tails, view.sheet.letters
    spans = [
        Span(ends.offset, tails[0].lower_end, "lower half pin", words="half pin"),
        Span(tails[0].lower_end, tails[0].upper_end, "tail", words="tail"),
    ]
    if len(tails) > 1:
        spans.append(Span(tails[0].upper_end, tails[1].lower_end, "pin", words="pin"))
    spans.append(Span(tails[-1].upper_end, ends.top, "upper half pin", words="half pin"))
    if ends.offset:
        spans.insert(0, Span(0.0, ends.offset, "back above the bottom edge of the side", words="offset"))
    return heights(view, spans, 0.0, view.x - 1.0 * letters, Side.BEFORE)


def _steps(view: View, ends: Ends, reach: Inches) -> None:
    """The dividers' steps from the lower half-pin mark, lettered once for all of them."""
    layout, sheet = ends.layout, view.sheet
    first = ends.tails[0].lower_end
    marks = [view.at(0, first + number * layout.pitch)[1] for number in range(layout.count + 1)]
    line, tick = reach - 0.8 * sheet.letters, 0.3 * sheet.letters
    sheet.strokes(Line.DIMENSION, [((line, marks[0]), (line, marks[-1]))])
    sheet.strokes(Line.DIMENSION, [((line - tick, mark), (line + tick, mark)) for mark in marks])
    words = f"dividers {sheet.size(layout.pitch)}, {_counted(layout.count)}"
    sheet.letter(
        (line - 1.0 * sheet.letters, (marks[0] + marks[-1]) / 2), words, upright=True, inches=layout.pitch
    )
    sheet.say(words)


def _counted(steps: int) -> str:
    return "1 step" if steps == 1 else f"{steps} steps"
