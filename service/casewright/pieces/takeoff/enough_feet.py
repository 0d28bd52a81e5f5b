"""How many feet are enough before anybody has seen the boards: loads drawn by chance, each laid out."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import accumulate, islice

from casewright.cutting.guillotine.problem import Piece, Stock
from casewright.cutting.panels.holding import lacking
from casewright.cutting.panels.problem import Panel, PanelProblem, StripRule
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Count, Inches
from casewright.pieces.takeoff.feet_asked import EnoughFeet, FeetAsked, FeetPart
from casewright.wood.loads import DrawnBoard, board_habit, drawn_load
from casewright.wood.tally import billed_thickness

STEP = 64
"""Parts of an inch in which a load is laid out; a part is rounded up, a board down."""
MOST_LOADS, LEAST_LOADS = 60, 10
WORK = 1_000
"""Loads times parts: a large order is drawn less often, for its feet change less from load to load."""
ROUNDS = 1
"""Rounds of improvement before a load is said to be short of a part."""
SPARE_BOARDS = 2
BEYOND = 5.0
MORE_BOARDS = 12
"""A load of so many times the parts, and these boards more, that still lacks a part will never hold it."""


def enough_feet(asked: FeetAsked, loads: Count | None = None) -> EnoughFeet:
    """How many feet of a grade give all parts with a certain chance, before the boards are known.

    Loads are drawn board by board: first those that the order names, for they are wide or long, then what
    comes. Each load is laid out by the engine that lays out boards which are known: panels are glued up from
    strips as wide as the boards allow, and single parts come from what is left. The least number of its
    boards that holds every part is found. A yard sends whole boards until it has the feet, so feet are enough
    as soon as that board has to be sent; what is over is sent and billed, too.

    Args:
        asked: the parts, the grade and what the saw takes
        loads: how many loads to draw; None for 10 to 60, fewer of many parts [dimensionless]

    Returns:
        The feet, how often those of the order would do, and what no load held.

    Source: NHLA Rules Book (facts only) for sizes, clear parts and tally; the spread of boards over the sizes
    is common practice of dealers; drawing and laying out loads is computed.
    """
    number = loads or min(max(WORK // max(1, _count(asked)), LEAST_LOADS), MOST_LOADS)
    finder = _Finder(asked)
    found, boards, never = [], [], dict[str, None]()
    for place in range(number):
        load = _Load(asked, place)
        enough, held_back = finder.least(load)
        never |= dict.fromkeys(held_back)
        found.append(math.inf if enough is None else load.feet_for(enough))
        boards.append(enough or 0)
    order = sorted(found)
    return EnoughFeet(
        feet=_whole(order[math.ceil(asked.sure * number) - 1]),
        usual=_whole(order[math.ceil(number / 2) - 1]),
        chance=sum(each <= asked.ordered for each in found) / number,
        loads=number,
        boards=sorted(boards)[math.ceil(number / 2) - 1],
        never=tuple(never),
    )


def _whole(feet: float) -> int | None:
    return None if math.isinf(feet) else round(feet)


def _count(asked: FeetAsked) -> int:
    return sum(part.count for part in asked.parts)


def _area(asked: FeetAsked) -> float:
    return sum(part.width * part.length * part.count for part in asked.parts)


@dataclass
class _Load:
    """One load, of which as many boards are drawn as are looked at."""

    asked: FeetAsked
    place: int
    _drawn: list[DrawnBoard] = field(default_factory=list)
    _more: Iterator[DrawnBoard] = field(init=False)

    def __post_init__(self) -> None:
        asked = self.asked
        self._more = drawn_load(
            board_habit(asked.grade),
            asked.named,
            seed=asked.seed * MOST_LOADS + self.place,
            average=asked.average,
            end_trim=asked.end_trim,
            edge_trim=asked.edge_trim,
        )

    def first(self, count: int) -> Sequence[DrawnBoard]:
        """The first so many boards of it."""
        self._drawn += islice(self._more, max(0, count - len(self._drawn)))
        return self._drawn[:count]

    def reaching(self, area: float) -> int:
        """How many of its boards have so much clear area together [sq in]."""
        count = 0
        for sum_of in accumulate(self._areas()):
            count += 1
            if sum_of >= area:
                break
        return count

    def clear_area(self, count: int) -> float:
        """Clear area of its first boards [sq in]."""
        return sum(islice(self._areas(), count))

    def feet_for(self, count: int) -> int:
        """The feet for which a yard has to send so many of its boards; no fewer than the parts have."""
        surface = sum(board.surface for board in self.first(count - 1))
        thickness = billed_thickness(self.asked.thickness)
        least = math.ceil(self.asked.rough - TOLERANCE)
        return max(least, math.floor(surface * thickness + TOLERANCE) + 1)

    def _areas(self) -> Iterator[float]:
        place = 0
        while True:
            board = self.first(place + 1)[place]
            yield (board.width - self.asked.edge_trim) * sum(board.clear)
            place += 1


class _Finder:
    """Finds the least number of a load's boards; it begins where the loads before it ended."""

    def __init__(self, asked: FeetAsked) -> None:
        self.asked = asked
        self.area = _area(asked)
        self.problem = _problem(asked)
        self.taken = [1.15]

    def least(self, load: _Load) -> tuple[int | None, tuple[str, ...]]:
        """The least number of boards that hold all parts; else None, and the parts that none held."""
        fewest, most = load.reaching(self.area), load.reaching(BEYOND * self.area) + MORE_BOARDS
        count = max(load.reaching(self.area * sum(self.taken) / len(self.taken)), fewest)
        short, marks = fewest - 1, self.lacking(load, count)
        while marks:
            if count >= most:
                return None, marks
            short = count
            count += 1 if count < 2 * fewest + 2 else max(1, count // 4)  # far off, in longer strides
            marks = self.lacking(load, count)
        while count > short + 1 and not self.lacking(load, count - 1):
            count -= 1
        self.taken.append(max(1.0, load.clear_area(count - 1) / self.area))
        return count, ()

    def lacking(self, load: _Load, count: int) -> tuple[str, ...]:
        """The marks of the parts that its first boards do not hold."""
        asked, boards = self.asked, load.first(count + SPARE_BOARDS)
        problem = replace(self.problem, stocks=tuple(_stocks(asked, boards)))
        own = sum(len(board.clear) for board in boards[:count])
        found = lacking(problem, own, rounds=ROUNDS, seed=asked.seed)
        glued, single = _parts(asked, is_glued=True), _parts(asked, is_glued=False)
        short = (*zip(glued, found.panels, strict=True), *zip(single, found.pieces, strict=True))
        return tuple(part.mark for part, missing in short if missing)


def _parts(asked: FeetAsked, *, is_glued: bool) -> list[FeetPart]:
    return [part for part in asked.parts if part.is_glued is is_glued]


def _problem(asked: FeetAsked) -> PanelProblem:
    """What is to come out of a load, whose boards are still to be named."""
    panels, pieces = _parts(asked, is_glued=True), _parts(asked, is_glued=False)
    return PanelProblem(
        panels=tuple(
            Panel(width=_up(each.width), length=_up(each.length + asked.kerf), count=each.count)
            for each in panels
        ),
        pieces=tuple(
            Piece(width=_up(each.width + asked.kerf), length=_up(each.length + asked.kerf), count=each.count)
            for each in pieces
        ),
        stocks=(),
        strips=StripRule(
            allowance=_up(asked.jointing + asked.kerf),
            narrowest=_up(asked.narrowest - asked.jointing),
            widest=_down(asked.widest - asked.jointing),
        ),
    )


def _stocks(asked: FeetAsked, boards: Sequence[DrawnBoard]) -> Iterator[Stock]:
    """Every clear piece of some boards: a board is crosscut at its faults first."""
    for board in boards:
        width = _down(board.width - asked.edge_trim + asked.kerf)
        for clear in board.clear:
            length = _down(clear + asked.kerf)
            yield Stock(width=width, length=length, cost=width * length, limit=1)


def _up(size: Inches) -> Count:
    return math.ceil(size * STEP - 1e-6)


def _down(size: Inches) -> Count:
    return math.floor(size * STEP + 1e-6)
