"""A board or sheet with all that is cut from it: parts by their marks, defects, cuts by their numbers.

The first end is at the left and the near edge at the bottom, as the board lies before the one who cuts it.
"""

from collections.abc import Iterator

from casewright.cutting.asked.stock_spec import Board
from casewright.cutting.plans.spots import Spot
from casewright.cutting.plans.steps import Step, step_words, steps_of
from casewright.cutting.plans.values import BoardLayout, CutPlan
from casewright.drawing.bar_layout import alike, bar_drawing, letter_in
from casewright.drawing.canvas import Line, Point, Sheet
from casewright.drawing.page import Drawing, fitted
from casewright.drawing.view import View, box
from casewright.measure.lengths import LengthUnit, from_ticks, to_ticks
from casewright.measure.units import Inches

NUMBER = 0.55
"""Size of the number of a cut [of the usual]."""
SAP_APART = 3.0
"""Between two strokes of sapwood, against those of a defect."""


def layout_drawings(plan: CutPlan, unit: LengthUnit) -> Iterator[tuple[str, Drawing]]:
    """A drawing of every board and sheet, and of every length that is cut otherwise than one before it.

    Args:
        plan: the layout
        unit: the shop's unit

    Returns:
        The name of its file, and the drawing.

    Source: common practice: a chalk line on the board before it is cut.
    """
    for lot in plan.lots:
        for board in lot.boards:
            suffix = "" if board.ground.limit == 1 else f"-{board.number}"
            yield f"{_file_name(board.ground.stock.code)}{suffix}.svg", board_drawing(board, unit)
        for bars in alike(lot.lengths):
            yield f"{_file_name(bars[0].code)}-{bars[0].number}.svg", bar_drawing(bars, lot.wood, unit)


def _file_name(code: str) -> str:
    """A mark as the name of a file."""
    return "".join(sign if sign.isalnum() or sign in "-_." else "-" for sign in code).lstrip(".") or "board"


def board_drawing(board: BoardLayout, unit: LengthUnit, *, lettered: bool = True) -> Drawing:
    """One board or sheet with all that is cut from it.

    Args:
        board: the board
        unit: the shop's unit
        lettered: whether its name, size and scale stand above it

    Returns:
        The drawing; its description has every part with its place, and every cut.

    Source: common practice.
    """
    stock, outer = board.ground.stock, board.ground.outer
    steps = steps_of(board)
    sizes = Sheet(1, unit)
    subject = f"{stock.wood}, {sizes.size(from_ticks(outer.length))} × {sizes.size(from_ticks(outer.width))}"

    def draw(sheet: Sheet) -> None:
        view = View(sheet)
        _draw_board(view, board)
        _draw_parts(view, board)
        _draw_left(view, board)
        _draw_cuts(view, steps)
        _tell(sheet, board, steps, unit)

    return fitted(
        draw,
        unit,
        name=f"layout-{board.name.replace(' ', '-')}",
        title=board.name,
        subject=subject,
        work=(from_ticks(outer.length), from_ticks(outer.width)),
        lettered=lettered,
    )


def _inches(spot: Spot) -> tuple[Inches, Inches, Inches, Inches]:
    return from_ticks(spot.x), from_ticks(spot.y), from_ticks(spot.length), from_ticks(spot.width)


def _draw_board(view: View, board: BoardLayout) -> None:
    """The board's outline, its defects and its sapwood."""
    ground = board.ground
    stock = ground.stock
    if isinstance(stock, Board):
        edge = [(place, width) for place, width in stock.outline]
        corners: list[Point] = [(0.0, 0.0), (stock.length, 0.0), *reversed(edge)]
        view.polygon(Line.FRONT, corners)
        for defect in stock.defects:
            spot = Spot(*map(to_ticks, (defect.from_end, defect.from_edge, defect.length, defect.width)))
            within = spot.within(ground.outer)
            if within:
                corners_of = box(*_inches(within))
                line = Line.HIDDEN if defect.face == "back" else Line.OBJECT
                view.polygon(line, corners_of)
                if defect.face != "back":
                    view.hatch(corners_of)
    else:
        view.rectangle(Line.FRONT, 0, 0, stock.length, stock.width)
    for sap in ground.sap:
        view.hatch(box(*_inches(sap)), rising=False, apart=SAP_APART)


def _draw_parts(view: View, board: BoardLayout) -> None:
    for laid in board.laid:
        x, y, length, width = _inches(laid.spot)
        view.rectangle(Line.TONE, x, y, length, width)
        view.rectangle(Line.OBJECT, x, y, length, width, laid.mark.code)
        size = f"{view.sheet.size(max(length, 0))} × {view.sheet.size(width)}"
        letter_in(view.sheet, (x, y, length, width), (laid.label, size))


def _draw_left(view: View, board: BoardLayout) -> None:
    for left in board.left:
        x, y, length, width = _inches(left.spot)
        view.rectangle(Line.HIDDEN, x, y, length, width)
        size = f"{view.sheet.size(length)} × {view.sheet.size(width)}"
        letter_in(view.sheet, (x, y, length, width), ("left", size))


def _draw_cuts(view: View, steps: tuple[Step, ...]) -> None:
    """Every cut with the number of its step where it begins, if there is room for one."""
    sheet = view.sheet
    for step in steps:
        for line in step.lines:
            x, y, length, width = _inches(line)
            sheet.polyline(Line.SEEN, [view.at(x, y), view.at(x + length, y + width)])
    for step in steps:
        for line in step.lines[:1] if len(step.lines) > 2 else step.lines:
            x, y, length, width = _inches(line)
            words = str(step.number)
            half = sheet.width_of(words, NUMBER) / 2 + 0.1 * sheet.letters
            for at in _starts((x, y, length, width), half, sheet.letters):
                if sheet.is_free(sheet.patch(at, words, size=NUMBER)):
                    sheet.letter(at, words, size=NUMBER)
                    break


def _starts(line: tuple[Inches, Inches, Inches, Inches], half: Inches, letters: Inches) -> Iterator[Point]:
    """Where the number of a cut may stand: before its beginning, behind its end, beside it."""
    x, y, length, width = line
    high = NUMBER * letters
    if width:
        yield x, y - high
        yield x, y + width + high
        yield x + half, y + high
    else:
        yield x - half, y
        yield x + length + half, y
        yield x + half, y + high


def _tell(sheet: Sheet, board: BoardLayout, steps: tuple[Step, ...], unit: LengthUnit) -> None:
    """The drawing in words."""
    for laid in board.laid:
        x, y, length, width = map(sheet.size, _inches(laid.spot))
        sheet.say(f"{laid.label}: {length} along × {width} across, {x} from the end and {y} from the edge")
    for left in board.left:
        size = (sheet.size(from_ticks(each)) for each in (left.spot.length, left.spot.width))
        sheet.say(f"left over {' × '.join(size)}")
    for step in steps:
        words = step_words(step, board).in_unit(unit).removesuffix(".")
        sheet.say(f"cut {step.number}: {words}")
