"""From the planner's rows of numbers to boards with their cuts, and panels put together."""

from collections import defaultdict
from collections.abc import Sequence

from casewright.cutting.guillotine.problem import Area, First, Rect
from casewright.cutting.panels.arrays import Ints, Plan
from casewright.cutting.panels.gluing import put_together
from casewright.cutting.panels.kernels import SINGLE
from casewright.cutting.panels.problem import BoardPlan, GluedUp, Laid, PanelAnswer, PanelProblem
from casewright.measure.units import Count, Seconds

WAYS = (First.ACROSS, First.ALONG)


def answer_of(
    problem: PanelProblem,
    plan: Plan,
    stock_of: Sequence[Count],
    need: Ints,
    short: Ints,
    *,
    bound: Count,
    seconds: Seconds,
) -> PanelAnswer:
    """A plan in the problem's own terms.

    Args:
        problem: what was asked
        plan: what was found
        stock_of: which stock each board of the plan is [1]
        need: how many of each single part found no room [1]
        short: the net width that each panel, one by one, still lacks [1]
        bound: of the cost [1]
        seconds: how long it took [s]

    Returns:
        The answer. Strips of a panel that is not complete are left out: they make nothing.
    """
    one_by_one = [(kind, copy) for kind, panel in enumerate(problem.panels) for copy in range(panel.count)]
    used, ways, counts, rows = plan
    boards = []
    nets: dict[tuple[Count, Count], list[Count]] = defaultdict(list)
    for board in used.nonzero()[0].tolist():
        laid = []
        for kind, which, across, along, width, length in rows[board, : counts[board]].tolist():
            rect = Rect(x=along, y=across, length=length, width=width)
            if kind == SINGLE:
                laid.append(Laid(rect=rect, piece=which))
            elif short[which] == 0:
                panel, copy = one_by_one[which]
                net = width - problem.strips.allowance
                laid.append(Laid(rect=rect, panel=panel, copy=copy, net=net))
                nets[panel, copy].append(net)
        if laid:
            stock = problem.stocks[stock_of[board]]
            whole = Rect(x=0, y=0, length=stock.length, width=stock.width)
            way = WAYS[ways[board]]
            cuts = cut_up(whole, [(each.rect, place) for place, each in enumerate(laid)], way)
            boards.append(BoardPlan(stock=stock_of[board], first=way, laid=tuple(laid), cuts=cuts))
    panels = []
    for (panel, copy), strips in sorted(nets.items()):
        asked = problem.panels[panel]
        order, trimmed, clear = put_together(strips, asked.width, asked.keep_off)
        panels.append(GluedUp(panel=panel, copy=copy, strips=order, trimmed=trimmed, lines_clear=clear))
    lacking = [0] * len(problem.panels)
    for place, (panel, _) in enumerate(one_by_one):
        lacking[panel] += int(short[place] > 0)
    cost = sum(problem.stocks[each.stock].cost for each in boards)
    complete = not any(lacking) and not need.any()
    return PanelAnswer(
        boards=tuple(boards),
        panels=tuple(panels),
        unplaced_panels=tuple(lacking),
        unplaced_pieces=tuple(need.tolist()),
        cost=cost,
        bound=bound,
        proven=complete and cost <= bound,
        seconds=seconds,
    )


def cut_up(whole: Rect, laid: Sequence[tuple[Rect, Count]], way: First) -> Area:
    """The tree of cuts that frees parts which lie apart on a rectangle.

    Rule: cut from edge to edge wherever no part is in the way, in the given direction if there is such a
    cut, else in the other; then the same with what comes off

    Args:
        whole: the rectangle
        laid: parts with their places in a list [1]
        way: which way the first cuts run

    Returns:
        The tree.

    Raises:
        ValueError: no cut from edge to edge frees any of the parts
    """
    if not laid:
        return Area(rect=whole)
    if len(laid) == 1 and laid[0][0] == whole:
        return Area(rect=whole, piece=laid[0][1])
    for turn in (way, First.ALONG if way is First.ACROSS else First.ACROSS):
        lines = _free_lines(whole, [rect for rect, _ in laid], turn)
        if not lines:
            continue
        ends = [*lines, _end(whole, turn)]
        begin = _start(whole, turn)
        parts = []
        for end in ends:
            piece = _slice(whole, begin, end, turn)
            inside = [each for each in laid if begin <= _start(each[0], turn) < end]
            other = First.ALONG if turn is First.ACROSS else First.ACROSS
            parts.append(cut_up(piece, inside, other))
            begin = end
        return Area(rect=whole, cut=turn, parts=tuple(parts))
    raise ValueError("no cut from edge to edge frees any of these parts")


def _start(rect: Rect, way: First) -> Count:
    return rect.x if way is First.ACROSS else rect.y


def _end(rect: Rect, way: First) -> Count:
    return rect.x + rect.length if way is First.ACROSS else rect.y + rect.width


def _slice(whole: Rect, begin: Count, end: Count, way: First) -> Rect:
    if way is First.ACROSS:
        return Rect(x=begin, y=whole.y, length=end - begin, width=whole.width)
    return Rect(x=whole.x, y=begin, length=whole.length, width=end - begin)


def _free_lines(whole: Rect, rects: Sequence[Rect], way: First) -> list[Count]:
    """Where it can be cut from edge to edge, inside the rectangle, at the start or the end of a part."""
    places = sorted({_start(each, way) for each in rects} | {_end(each, way) for each in rects})
    return [
        place
        for place in places
        if _start(whole, way) < place < _end(whole, way)
        and all(_end(each, way) <= place or _start(each, way) >= place for each in rects)
    ]
