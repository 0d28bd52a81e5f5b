"""The engine that fills rectangles, asked in ticks: kerfs folded in, sizes in steps of a common measure."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from casewright.cutting.budget import Budget, say_nothing
from casewright.cutting.guillotine.problem import First, Piece, Problem, Rect, Stock
from casewright.cutting.guillotine.solving import solve
from casewright.cutting.plans.blanks import Blank
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.spots import Spot
from casewright.measure.units import TICKS_PER_INCH, Count, Seconds, Ticks

FINE: Ticks = TICKS_PER_INCH // 64
"""The step where sizes have no common measure: 1/64 in; parts are rounded up to it and stock down."""
FINEST: Ticks = 32
"""No common measure below 1/20 mm is used."""
MOST_STEPS = 30_000
"""A common measure is used only where the stock is no more steps of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """A rectangle that can be filled: an untouched board or sheet, or what is free of one that was begun.

    Attributes:
        ground: the board or sheet
        number: which of those that are alike; 0 for any that is untouched [dimensionless]
        spot: the rectangle
        shut: what no blank may have of it
        cost: what it costs to begin it, in the lot's own measure [dimensionless]
        limit: how many there are; None for as many as it takes [dimensionless]
    """

    ground: Ground
    number: Count
    spot: Spot
    shut: tuple[Spot, ...]
    cost: Count
    limit: Count | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Lies:
    """A blank where it lies.

    Attributes:
        blank: the blank
        spot: its place on the board or sheet
        turned: does its grain side lie across the stock's grain?
        by_hand: was it put there by hand?
    """

    blank: Blank
    spot: Spot
    turned: bool = False
    by_hand: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """What came of filling beds with blanks.

    Attributes:
        beds: each bed that was used with what lies on it, one entry for each board or sheet
        unplaced: the blanks for which there was no room
        bound: no layout of all blanks costs less, in the lot's own measure [dimensionless]
        proven: is the answer proven to be the best?
    """

    beds: tuple[tuple[Bed, tuple[Lies, ...]], ...]
    unplaced: tuple[Blank, ...]
    bound: Count
    proven: bool

    @property
    def cost(self) -> Count:
        """Of all beds that were used [dimensionless]."""
        return sum(bed.cost for bed, _ in self.beds)


def fill(
    blanks: Sequence[Blank],
    beds: Sequence[Bed],
    kerf: Ticks,
    first: First,
    stages: Count,
    budget: Budget,
) -> Filled:
    """Lays blanks on beds at the least cost.

    Args:
        blanks: what is laid out, each by itself
        beds: what there is; a blank may lie on any of them
        kerf: what a cut takes [tick]
        first: which way the first cuts run
        stages: how often the direction may change, 2 or 3 [dimensionless]
        budget: time and steps

    Returns:
        The layout.

    Source: the engine's own; the kerf is folded in as part + kerf in stock + kerf.
    """
    if not blanks or not beds:
        return Filled(beds=(), unplaced=tuple(blanks), bound=0, proven=not blanks)
    free_grain = not any(bed.ground.has_grain for bed in beds)
    kinds: dict[tuple[int, int, bool], list[Blank]] = {}
    for blank in blanks:
        kinds.setdefault((blank.length, blank.width, blank.may_turn or free_grain), []).append(blank)
    grid = grid_for([size + kerf for length, width, _ in kinds for size in (length, width)], beds, kerf)
    step = grid.step
    beds = [bed for bed in beds if min(bed.spot.length, bed.spot.width) + kerf >= step]
    if not beds:
        return Filled(beds=(), unplaced=tuple(blanks), bound=0, proven=False)
    problem = Problem(
        pieces=tuple(
            Piece(
                width=grid.up(width + kerf), length=grid.up(length + kerf), count=len(held), may_turn=may_turn
            )
            for (length, width, may_turn), held in kinds.items()
        ),
        stocks=tuple(grid.stock(bed) for bed in beds),
        stages=2 if stages == 2 else 3,
        first=first,
    )
    answer = solve(problem, budget)
    waiting = [list(reversed(held)) for held in kinds.values()]
    filled = []
    for sheet in answer.sheets:
        bed = beds[sheet.stock]
        for _ in range(sheet.copies):
            lies = tuple(
                lies_at(waiting[placed.piece].pop(), bed, (placed.x * step, placed.y * step), placed.turned)
                for placed in sheet.placed
            )
            filled.append((bed, lies))
    return Filled(
        beds=tuple(filled),
        unplaced=tuple(blank for held in waiting for blank in reversed(held)),
        bound=math.ceil(answer.bound) if grid.is_exact else 0,
        proven=answer.proven and grid.is_exact,
    )


def lies_at(blank: Blank, bed: Bed, at: tuple[Ticks, Ticks], turned: bool = False) -> Lies:
    """A blank at a place that the engine gave.

    Args:
        blank: the blank
        bed: its bed
        at: from the bed's first end and its near edge, its grain running along [tick]
        turned: does its length lie across the grain?

    Returns:
        The blank on its board.

    Source: geometry.
    """
    length, width = (blank.width, blank.length) if turned else (blank.length, blank.width)
    spot = Spot(*at, length, width)
    placed = spot.flipped() if bed.ground.grain_across else spot
    return Lies(blank=blank, spot=placed.moved(bed.spot.x, bed.spot.y), turned=turned)


@dataclass(frozen=True, slots=True)
class Grid:
    """The measure in which the engine is asked.

    Attributes:
        step: of the measure [tick]
        kerf: what a cut takes [tick]
        is_exact: are all sizes whole steps? Else they are rounded up, and no bound holds
    """

    step: Ticks
    kerf: Ticks
    is_exact: bool

    def up(self, size: Ticks) -> Count:
        """A size of a blank in whole steps.

        Args:
            size: the size [tick]

        Returns:
            The steps, rounded up [dimensionless]

        Source: arithmetic.
        """
        return -(-size // self.step)

    def stock(self, bed: Bed) -> Stock:
        """A bed as the engine has it, its grain along its length.

        Args:
            bed: the bed

        Returns:
            The stock, rounded down.

        Source: arithmetic; the kerf is folded in.
        """
        spot = bed.spot.flipped() if bed.ground.grain_across else bed.spot
        return Stock(
            width=(spot.width + self.kerf) // self.step,
            length=(spot.length + self.kerf) // self.step,
            cost=bed.cost,
            limit=bed.limit,
            forbidden=tuple(filter(None, (self._shut(each, bed) for each in bed.shut))),
        )

    def _shut(self, shut: Spot, bed: Bed) -> Rect | None:
        """What no blank may have. A blank brings the kerf behind it, which may lie over a defect."""
        common = shut.within(bed.spot)
        if common is None:
            return None
        local = common.moved(-bed.spot.x, -bed.spot.y)
        local = local.flipped() if bed.ground.grain_across else local
        (x, right), (y, far) = (
            self._ends(local.x, local.right),
            self._ends(local.y, local.far),
        )
        return Rect(x=x, y=y, length=right - x, width=far - y)

    def _ends(self, start: Ticks, end: Ticks) -> tuple[int, int]:
        low, high = (start + self.kerf) // self.step, -(-end // self.step)
        if high > low:
            return low, high
        # Narrower than the kerf: a cut may swallow it, but no blank may lie over it.
        middle = start // self.step
        return middle, middle + 1


def grid_for(sizes: Sequence[Ticks], beds: Sequence[Bed], kerf: Ticks) -> Grid:
    """The measure for some blanks and beds; where there are defects, fine enough to lie close to them.

    Args:
        sizes: of the blanks, kerf included [tick]
        beds: what they are laid on
        kerf: what a cut takes [tick]

    Returns:
        The grid.

    Source: arithmetic.
    """
    marks = [*sizes, FINE * 4] if any(bed.shut for bed in beds) else sizes
    step = common_step(marks, max(max(bed.spot.length, bed.spot.width) for bed in beds))
    return Grid(step=step, kerf=kerf, is_exact=all(size % step == 0 for size in sizes))


def common_step(sizes: Sequence[Ticks], longest: Ticks) -> Ticks:
    """The greatest measure of which every size is a whole number of steps, where it is not too fine.

    Args:
        sizes: of what is laid out, kerf included [tick]
        longest: the longest stock [tick]

    Returns:
        The step; 1/64 in where the common measure is too fine [tick]

    Source: arithmetic.
    """
    common = math.gcd(*sizes)
    return common if longest // common <= MOST_STEPS and common >= FINEST else FINE


def part_of(budget: Budget, seconds: Seconds, *, quiet: bool = False) -> Budget:
    """A budget for a part of the work, within the whole one.

    Args:
        budget: of the whole work
        seconds: how long this part may take at the most [s]
        quiet: is what comes of it only a part of a layout, of which nothing is told?

    Returns:
        The budget, beginning now.

    Source: common practice.
    """
    tell = say_nothing if quiet else budget.tell
    return replace(budget, seconds=max(0.0, min(seconds, budget.left())), tell=tell)
