"""The order in which blanks are laid out, where they do not all ask the same of the wood.

Blanks that ask alike are one problem for the engine. Where some may have no sapwood, or must come from one
log or a thick board, the pickier are laid out first; the others then fill what is free of the boards that
were begun, before another is begun.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.problem import First
from casewright.cutting.plans.blanks import Blank, Broken
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import Filled, fill, part_of
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.sawing import Way
from casewright.cutting.plans.spots import Spot
from casewright.measure.units import Count, Ticks

FIRST = {Way.RIP: First.ALONG, Way.CROSSCUT: First.ACROSS, None: First.EITHER}
TRIAL = 0.15
"""Of the time, for finding out which log serves best [1]."""


@dataclass(frozen=True, slots=True, order=True)
class Wish:
    """What a blank asks of its board, the pickiest first when sorted.

    Attributes:
        one_tree: the set whose boards come from one log
        thinnest: minus the thickness that its board needs [tick]
        takes_sap: may it have sapwood?
        takes_back: may its back have a defect?
    """

    no_tree: bool
    one_tree: str
    thinnest: Ticks
    takes_sap: bool
    takes_back: bool


@dataclass(slots=True)
class Outcome:
    """What came of laying out a lot one way.

    Attributes:
        desk: where everything lies
        unplaced: the blanks for which there was no room
        broken: sets that could not be kept
        bound: no layout costs less; 0 where the engine's own bound does not hold [dimensionless]
        proven: is it proven to be the best?
    """

    desk: Desk
    unplaced: tuple[Blank, ...]
    broken: tuple[Broken, ...]
    bound: Count
    proven: bool

    @property
    def lacking(self) -> Count:
        """How much area found no room, in square ticks [dimensionless]."""
        return sum(blank.length * blank.width for blank in self.unplaced)


def by_wish(blanks: Iterable[Blank], lot: Lot) -> dict[Wish, list[Blank]]:
    """Blanks by what they ask, as far as it makes a difference with the boards that there are.

    Args:
        blanks: the blanks
        lot: their lot

    Returns:
        Those that ask alike, by what they ask.

    Source: common practice.
    """
    some_sap = any(ground.sap for ground in lot.grounds)
    some_back = any(ground.back for ground in lot.grounds)
    thinnest = min((ground.thickness for ground in lot.grounds), default=0)
    found: dict[Wish, list[Blank]] = {}
    for blank in blanks:
        wish = Wish(
            no_tree=not blank.one_tree,
            one_tree=blank.one_tree,
            thinnest=-blank.thickness if thinnest < blank.thickness else 0,
            takes_sap=not (blank.sapless and some_sap),
            takes_back=not (blank.both_faces and some_back),
        )
        found.setdefault(wish, []).append(blank)
    return found


def lay_out(
    start: Desk, blanks: Sequence[Blank], way: Way | None, stages: Count, budget: Budget, *, as_pickiest: bool
) -> Outcome:
    """Lays out blanks one way.

    Args:
        start: what lies already; it is not changed
        blanks: what is laid out
        way: which way the first cuts run; None for board by board
        stages: how often the direction may change, 2 or 3 [dimensionless]
        budget: time and steps
        as_pickiest: are all blanks laid out at once, as if each asked for what the pickiest asks?

    Returns:
        The layout.

    Source: common practice: show before hidden.
    """
    desk = start.copy(way)
    wishes = by_wish(blanks, desk.lot)
    is_one = len(wishes) == 1 and not desk.begun and not any(wish.thinnest for wish in wishes)
    if as_pickiest:
        wishes = _merged(wishes)
    broken: list[Broken] = []
    result: Filled | None = None
    unplaced: list[Blank] = []
    waiting = len(blanks)
    for wish, held in sorted(wishes.items(), key=lambda one: one[0]):
        share = budget.left() * len(held) / max(1, waiting)
        waiting -= len(held)
        log = None
        if wish.one_tree:
            log = _best_log(desk, held, wish, stages, part_of(budget, share, quiet=True))
            share *= 1 - TRIAL
            if log is None:
                broken.append(
                    Broken(name=wish.one_tree, way="one tree", reason="no log that is marked holds all of it")
                )
        quiet = len(wishes) > 1 or bool(desk.begun)
        result = _fill(desk, held, wish, log, stages, part_of(budget, share, quiet=quiet))
        desk.keep(result)
        unplaced += result.unplaced
    return Outcome(
        desk=desk,
        unplaced=tuple(unplaced),
        broken=tuple(broken),
        bound=result.bound if is_one and result else 0,
        proven=bool(is_one and result and result.proven),
    )


def _merged(wishes: dict[Wish, list[Blank]]) -> dict[Wish, list[Blank]]:
    """The wishes with sapwood and backs as the pickiest of them has it."""
    sap, back = all(wish.takes_sap for wish in wishes), all(wish.takes_back for wish in wishes)
    merged: dict[Wish, list[Blank]] = {}
    for wish, held in wishes.items():
        merged.setdefault(replace(wish, takes_sap=sap, takes_back=back), []).extend(held)
    return merged


def _fill(
    desk: Desk, held: Sequence[Blank], wish: Wish, log: str | None, stages: int, budget: Budget
) -> Filled:
    """Lays out what asks alike: offcuts that come last only for what nothing else held."""

    def may(ground: Ground) -> bool:
        return ground.thickness >= -wish.thinnest and (log is None or ground.log == log)

    least = min((min(blank.length, blank.width) for blank in held), default=0)
    beds = list(desk.beds(may, lambda ground: shut_for(ground, wish), least))
    if desk.offcuts != "last" or all(bed.ground.stock.offcut == beds[0].ground.stock.offcut for bed in beds):
        return fill(held, beds, desk.kerf, FIRST[desk.way], stages, budget)
    whole = [bed for bed in beds if not bed.ground.stock.offcut or bed.number]
    some = part_of(budget, budget.left() * 0.8, quiet=True)
    first = fill(held, whole, desk.kerf, FIRST[desk.way], stages, some)
    if not first.unplaced:
        return first
    used = Counter(bed for bed, _ in first.beds if bed.number)
    others = [bed for bed in beds if bed.ground.stock.offcut and not bed.number and bed not in used]
    more = fill(first.unplaced, others, desk.kerf, FIRST[desk.way], stages, budget)
    return Filled(beds=first.beds + more.beds, unplaced=more.unplaced, bound=0, proven=False)


def shut_for(ground: Ground, wish: Wish) -> tuple[Spot, ...]:
    """What a board may not give to a blank.

    Args:
        ground: the board
        wish: what the blank asks

    Returns:
        The rectangles.

    Source: common practice.
    """
    return (
        *ground.shut,
        *(() if wish.takes_sap else ground.sap),
        *(() if wish.takes_back else ground.back),
    )


def _best_log(desk: Desk, held: Sequence[Blank], wish: Wish, stages: int, budget: Budget) -> str | None:
    """The log from which a set comes at the least cost; None where none holds all of it."""
    logs = sorted({ground.log for ground in desk.lot.grounds if ground.log})
    time = budget.left() * TRIAL / max(1, len(logs))
    tried = []
    for log in logs:
        filled = _fill(desk, held, wish, log, stages, part_of(budget, time))
        if not filled.unplaced:
            tried.append((filled.cost, log))
    return min(tried)[1] if tried else None
