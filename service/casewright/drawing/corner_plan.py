"""The corner of a drawer cut level through a tail: what meets what, and where the gauges stand."""

from dataclasses import dataclass

from casewright.drawing.canvas import Line, Point
from casewright.drawing.dimensions import Side, Span, heights, widths
from casewright.drawing.view import View
from casewright.measure.units import Inches

BEYOND = 1.1
"""How far boards are drawn beyond the corner, in thicknesses of the side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """The corner as both kinds of joint have it.

    Attributes:
        across: what the board across is: the front or the back
        thickness: thickness of the board across [in]
        lap: what is left of it beyond the tails; 0 where they go through [in]
        length: length of the tails [in]
        tail: thickness of a tail, which is the gauge on the board across [in]
        side: thickness of the side [in]
        rabbet: depth of the rabbet on the inside of the tails [in]
        proud: how far the side stands proud of the end of the board across [in]
        gauge: what the gauge for the tails' thickness is called
        length_gauge: what the gauge for the tails' length is called
        wrong: the thickness that is easily taken for that gauge; None where there is no such trap [in]
    """

    across: str
    thickness: Inches
    lap: Inches
    length: Inches
    tail: Inches
    side: Inches
    rabbet: Inches
    proud: Inches
    gauge: str
    length_gauge: str
    wrong: Inches | None


def corner_plan(view: View, corner: Corner) -> None:
    """The plan of the corner, the board across at the top and the side running down.

    Args:
        view: where it is drawn; its zero is the inside of the board across, at its end
        corner: the corner

    Source: common practice of technical drawing.
    """
    _board_across(view, corner)
    _side_board(view, corner)
    _gauges(view, corner)
    _thicknesses(view, corner)


def _long(corner: Corner) -> Inches:
    """How far to the right the board across is drawn [in]."""
    return corner.side * (1 + BEYOND)


def _low(corner: Corner) -> Inches:
    """How far down the side is drawn [in]."""
    return -corner.side * BEYOND


def _board_across(view: View, corner: Corner) -> None:
    """The front or back, its socket left open for the tail."""
    top, end, floor = corner.thickness, _long(corner), corner.thickness - corner.lap
    if corner.lap > 0:
        outline: list[Point] = [
            (end, 0.0),
            (corner.tail, 0.0),
            (corner.tail, floor),
            (0.0, floor),
            (0.0, top),
        ]
    else:
        outline = [(end, 0.0), (corner.tail, 0.0), (corner.tail, top)]
    outline.append((end, top))
    view.hatch(outline)
    view.polyline(Line.CUT, *outline)
    view.broken(outline[-1], outline[0])


def _side_board(view: View, corner: Corner) -> None:
    """The side with its tail, and the shoulder of the rabbet closed on the inside."""
    outside, low = -corner.proud, _low(corner)
    inside = outside + corner.side
    outline = [(inside, low), (inside, 0.0), (corner.tail, 0.0), (corner.tail, corner.length)]
    outline += [(outside, corner.length), (outside, low)]
    view.hatch(outline, rising=False)
    view.polyline(Line.CUT, *outline)
    view.broken(outline[-1], outline[0])
    if corner.lap > 0:
        view.polyline(Line.HIDDEN, (corner.tail, corner.length), (_long(corner), corner.length))


def _gauges(view: View, corner: Corner) -> None:
    """The settings: along the end of the board across, and along its length."""
    sheet, letters = view.sheet, view.sheet.letters
    wrong = f", not {sheet.size(corner.wrong)}" if corner.wrong is not None else ""
    line = view.at(0, corner.thickness)[1] + 1.1 * letters
    gauge = Span(0.0, corner.tail, corner.gauge, words=f"{corner.gauge}:", after=wrong)
    widths(view, [gauge], line, Side.AFTER, corner.thickness)
    along = Span(0.0, corner.length, corner.length_gauge, words=f"{corner.length_gauge}:")
    spans = [along]
    if corner.lap > 0:
        spans.append(Span(corner.length, corner.thickness, "lap", words="lap"))
    heights(view, spans, -corner.proud, view.at(-corner.proud, 0)[0] - 1.3 * letters, Side.BEFORE)


def _thicknesses(view: View, corner: Corner) -> None:
    """What the boards measure, and the rabbet."""
    letters, low = view.sheet.letters, _low(corner)
    side = Span(-corner.proud, corner.side - corner.proud, "side", words="side")
    line = view.at(0, low)[1] - 1.8 * letters
    widths(view, [side], line, Side.BEFORE, low)
    if corner.rabbet > 0:
        rabbet = Span(corner.tail, corner.tail + corner.rabbet, "rabbet", words="rabbet")
        widths(view, [rabbet], view.at(0, low / 2)[1], Side.BEFORE)
    across = Span(0.0, corner.thickness, corner.across, words=corner.across)
    heights(view, [across], _long(corner), view.at(_long(corner), 0)[0] + 1.3 * letters, Side.AFTER)


def plan_extent(corner: Corner) -> tuple[Inches, Inches]:
    """How much of the corner is drawn: to the right, and from the lowest to the highest.

    Args:
        corner: the corner

    Returns:
        Width and height of the plan without its dimensions [in]

    Source: geometry.
    """
    return _long(corner), corner.thickness - _low(corner)
