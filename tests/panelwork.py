"""Random jobs of glued-up panels, and a check of their plans that knows nothing of the planner."""

import random
from itertools import combinations

from casewright.cutting.guillotine.problem import Area, Piece, Rect, Stock
from casewright.cutting.panels.problem import (
    BoardPlan,
    Laid,
    Panel,
    PanelAnswer,
    PanelProblem,
    StripRule,
)

KERF = JOINTING = 2
"""In sixteenths of an inch."""
RULE = StripRule(allowance=KERF + JOINTING, narrowest=24, widest=72)


def random_job(seed: int, panels: int | None = None, pieces: int = 0, defects: int = 0) -> PanelProblem:
    """A job of so many panels (5 to 30) from random-width boards, in sixteenths of an inch.

    Panels are 14 to 49 in long and 8 to 23 wide; boards 6 to 14 ft long and 4 to 11 in wide, twice the area.
    """
    draw = random.Random(seed)  # noqa: S311 - the same job on every run
    count = panels or draw.randint(5, 30)
    wanted = tuple(
        Panel(
            length=16 * draw.randint(14, 48) + draw.randint(0, 15) + KERF,
            width=16 * draw.randint(8, 22) + draw.randint(0, 15),
        )
        for _ in range(count)
    )
    singles = tuple(
        Piece(
            length=draw.randint(160, 700) + KERF, width=draw.randint(24, 60) + KERF, count=draw.randint(1, 4)
        )
        for _ in range(pieces)
    )
    area = sum(each.area * each.count for each in singles) + sum(each.width * each.length for each in wanted)
    stocks: list[Stock] = []
    while sum(each.area for each in stocks) < 2.2 * area:
        length = 192 * draw.choice((6, 7, 8, 8, 9, 10, 10, 11, 12, 12, 14)) + draw.randint(0, 60)
        width = draw.randint(64, 176)
        forbidden = tuple(
            Rect(
                x=draw.randint(0, length - 30),
                y=draw.randint(0, width - 12),
                length=draw.randint(4, 30),
                width=draw.randint(4, 12),
            )
            for _ in range(defects)
        )
        stocks.append(
            Stock(
                width=width + KERF,
                length=length + KERF,
                cost=width * length,
                limit=1,
                forbidden=forbidden,
            )
        )
    return PanelProblem(panels=wanted, pieces=singles, stocks=tuple(stocks), strips=RULE)


def equal_strips(problem: PanelProblem) -> PanelProblem:
    """The same job with each panel ripped into the fewest strips that are equally wide."""
    rule = problem.strips
    strips = []
    for panel in problem.panels:
        count = -(-panel.width // rule.widest)
        strips.append(
            Piece(
                width=-(-panel.width // count) + rule.allowance,
                length=panel.length,
                count=count * panel.count,
            )
        )
    return PanelProblem(panels=(), pieces=problem.pieces + tuple(strips), stocks=problem.stocks, strips=rule)


def wrong_with(problem: PanelProblem, answer: PanelAnswer) -> list[str]:
    """Everything that is wrong with a plan; nothing if it holds."""
    found = [wrong for plan in answer.boards for wrong in _on_board(problem, plan)]
    laid = [each for plan in answer.boards for each in plan.laid]
    widths: dict[tuple[int, int], list[int]] = {}
    for each in laid:
        if each.panel is not None:
            widths.setdefault((each.panel, each.copy), []).append(each.net)
    for kind, panel in enumerate(problem.panels):
        made = [key for key in widths if key[0] == kind and sum(widths[key]) >= panel.width]
        if len(made) + answer.unplaced_panels[kind] != panel.count:
            found.append(f"panel {kind} is made {len(made)} times")
    for glued in answer.panels:
        if sorted(glued.strips) != sorted(widths[glued.panel, glued.copy]):
            found.append(f"panel {glued.panel} is put together of other strips")
    for kind, piece in enumerate(problem.pieces):
        if sum(each.piece == kind for each in laid) + answer.unplaced_pieces[kind] != piece.count:
            found.append(f"part {kind} is not made as often as asked")
    for kind, stock in enumerate(problem.stocks):
        if stock.limit is not None and sum(plan.stock == kind for plan in answer.boards) > stock.limit:
            found.append(f"board {kind} is used too often")
    if answer.cost != sum(problem.stocks[plan.stock].cost for plan in answer.boards):
        found.append("another cost")
    return found


def _on_board(problem: PanelProblem, plan: BoardPlan) -> list[str]:
    """What is wrong with one board."""
    stock = problem.stocks[plan.stock]
    found = [wrong for each in plan.laid for wrong in _sizes(problem, each)]
    rects = [each.rect for each in plan.laid]
    for rect in rects:
        inside = rect.x + rect.length <= stock.length and rect.y + rect.width <= stock.width
        if rect.x < 0 or rect.y < 0 or not inside:
            found.append("outside")
        if any(_meet(rect, bad) for bad in stock.forbidden):
            found.append("on a defect")
    if any(_meet(one, other) for one, other in combinations(rects, 2)):
        found.append("overlap")
    freed = {each.piece: each.rect for each in _leaves(plan.cuts) if each.piece is not None}
    if freed != dict(enumerate(rects)):
        found.append("the cuts do not free just these parts")
    return found


def _sizes(problem: PanelProblem, laid: Laid) -> list[str]:
    """What is wrong with the size of a part or strip."""
    if laid.piece is not None:
        asked = problem.pieces[laid.piece]
        same = (laid.rect.width, laid.rect.length) == (asked.width, asked.length)
        return [] if same else [f"part {laid.piece} has another size"]
    assert laid.panel is not None
    rule, found = problem.strips, []
    if laid.rect.length != problem.panels[laid.panel].length:
        found.append(f"a strip of panel {laid.panel} has another length")
    if not rule.narrowest <= laid.net <= rule.widest:
        found.append(f"a strip of panel {laid.panel} is {laid.net} wide")
    if laid.rect.width != laid.net + rule.allowance:
        found.append(f"a strip of panel {laid.panel} lacks its allowance")
    return found


def _meet(one: Rect, other: Rect) -> bool:
    return (
        one.x < other.x + other.length
        and other.x < one.x + one.length
        and one.y < other.y + other.width
        and other.y < one.y + one.width
    )


def _leaves(area: Area) -> list[Area]:
    """The rectangles at the ends of the tree; parts of a cut must fill what is cut, side by side."""
    if not area.parts:
        return [area]
    assert sum(each.rect.length * each.rect.width for each in area.parts) == (
        area.rect.length * area.rect.width
    )
    assert all(
        each.rect.length == area.rect.length or each.rect.width == area.rect.width for each in area.parts
    )
    return [leaf for each in area.parts for leaf in _leaves(each)]
