"""From a cut file to its layout, lot by lot, within a budget of time."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.budget import Budget, Progress
from casewright.cutting.plans.bounds import least_cost, what_lies
from casewright.cutting.plans.by_hand import NotThere, put_by_hand
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import part_of
from casewright.cutting.plans.finished import boards_of, parts_area, sawing, worth_left
from casewright.cutting.plans.gluing import glued_together
from casewright.cutting.plans.lengths_plan import LengthLot, length_lots, plan_lengths
from casewright.cutting.plans.lengths_ways_out import length_ways_out
from casewright.cutting.plans.lots import Lot, lots_of, weighed
from casewright.cutting.plans.making_up import made_up
from casewright.cutting.plans.phases import Outcome, by_wish, lay_out
from casewright.cutting.plans.put_together import glued_panels
from casewright.cutting.plans.reasons import unplaced_of
from casewright.cutting.plans.rescue import rescued
from casewright.cutting.plans.sawing import Way
from casewright.cutting.plans.sets import broken_sets
from casewright.cutting.plans.values import CutPlan, LotPlan, Tried
from casewright.cutting.plans.wanted import Wanted, wanted
from casewright.cutting.plans.ways_out import LaidLot, ways_out
from casewright.measure.lengths import to_ticks
from casewright.measure.units import TICKS_PER_INCH, Count, Number

WAYS: dict[str, Way | None] = {
    "rip first": Way.RIP,
    "crosscut first": Way.CROSSCUT,
    "board by board": None,
}
QUICK = 200
"""So many blanks are laid out in no time that anybody notices: then every way is tried, come what may."""
SHARES = {"rip first": 1, "crosscut first": 1, "board by board": 2}
"""How the time is shared between the ways that are tried: board by board is all but always the best."""
TOGETHER = "strips as boards allow"
"""What the way is called in which the strips of panels are chosen board by board."""
TOGETHER_SHARE = 0.6
"""Of the time, for that way [1]."""
AT_ONCE = 1.0
"""Who gives less time than this wants a layout at once, and no ways out tried after it [s]."""


LITTLE = 36 * TICKS_PER_INCH**2
"""What is left over is not worth a cut more where it differs by less, some 6 × 6 in, in square ticks."""


def plan_cuts(file: CutFile, budget: Budget) -> CutPlan:
    """The layout of everything that a cut file asks for.

    Args:
        file: the cut file
        budget: time and steps; a lot with more parts gets more of the time

    Returns:
        The layout, with what could not be placed and why.

    Source: the engines of this room; common practice for what the wood asks.
    """
    lots = list(lots_of(file))
    ones = list(length_lots(file))
    weights = [
        *(sum(part.count for part in lot.parts) for lot in lots),
        *(sum(part.count for part in one.parts) for one in ones),
    ]
    plans: list[LotPlan] = []
    laid: list[LaidLot] = []
    both: list[Lot | LengthLot] = [*lots, *ones]
    for place, lot in enumerate(both):
        time = budget.left() * weights[place] / sum(weights[place:])
        own = replace(part_of(budget, time), tell=_Teller(plans, budget).heard)
        if isinstance(lot, Lot):
            plan, desk = plan_lot(file, lot, own)
            laid.append(LaidLot(lot=lot, desk=desk, unplaced=plan.unplaced))
        else:
            plan = plan_lengths(file, lot, own)
            plan = replace(plan, ways_out=length_ways_out(file, lot, plan.unplaced, own))
        plans.append(plan)
    for place, one in enumerate(laid if budget.seconds >= AT_ONCE else ()):
        plans[place] = replace(plans[place], ways_out=ways_out(file, one, laid, budget))
    return CutPlan(file=file, lots=tuple(plans), seconds=budget.spent())


class _Teller:
    """Tells how far the whole layout has come: lots that are done, and the best of the one in work."""

    def __init__(self, done: Sequence[LotPlan], budget: Budget) -> None:
        self._budget = budget
        self._cost = sum(plan.counted for plan in done)
        self._bound = sum(plan.bound for plan in done)
        self._best = math.inf

    def heard(self, progress: Progress) -> None:
        """An engine has come farther; another way may have come farther before."""
        if progress.cost < self._best:
            self._best = progress.cost
            self._budget.tell(
                Progress(
                    cost=self._cost + progress.cost,
                    bound=self._bound + min(progress.bound, progress.cost),
                    seconds=self._budget.spent(),
                )
            )


def plan_lot(file: CutFile, lot: Lot, budget: Budget) -> tuple[LotPlan, Desk]:
    """The layout of one lot of boards or sheets.

    Args:
        file: the cut file
        lot: what is laid out together
        budget: time and steps

    Returns:
        The best of the ways that were tried, and what lies on which board.

    Source: common practice: rip first and crosscut first are both tried, and the better is taken.
    """
    desk = Desk(lot, to_ticks(file.saw.kerf), file.offcuts)
    misplaced = tuple(put_by_hand(desk, file.saw))
    asked = wanted(lot, file.saw)
    stages = file.stages if lot.is_sheets else 3
    outcomes: list[tuple[str, Outcome]] = []
    together = asked.panels and not lot.is_sheets and file.first_cut in ("best", "board by board")
    if together:
        some = part_of(budget, budget.left() * TOGETHER_SHARE)
        found = glued_together(desk, asked, some)
        if found is not None:
            outcomes.append((TOGETHER, rescued(found, asked, file, stages, some)))
    blanks = [*asked.blanks, *made_up(desk, asked, stages, budget)]
    wishes = by_wish(blanks, lot)
    is_mixed = len({(wish.takes_sap, wish.takes_back) for wish in wishes}) > 1
    ways = _ways(file, lot)
    for place, name in enumerate(ways):
        if outcomes and budget.left() <= 0 and (len(blanks) > QUICK or budget.seconds == 0):
            break
        share = SHARES[name] / sum(SHARES[each] for each in ways[place:])
        own = part_of(budget, budget.left() * share)
        tries = []
        for number, as_pickiest in enumerate((False, True) if is_mixed else (False,)):
            some = part_of(own, own.left() / (2 - number if is_mixed else 1) * 0.9)
            first = lay_out(desk, blanks, WAYS[name], stages, some, as_pickiest=as_pickiest)
            tries.append(rescued(first, asked, file, stages, own))
        best = min(tries, key=lambda one: _rank(one, file)) if is_mixed else tries[0]
        outcomes.append((name, best))
    taken = min(
        range(len(outcomes)), key=lambda one: (*_rank(outcomes[one][1], file, coarse=lot.is_sheets), one)
    )
    return _lot_plan(file, lot, asked, outcomes, taken, misplaced), outcomes[taken][1].desk


def _ways(file: CutFile, lot: Lot) -> tuple[str, ...]:
    """The ways that are tried; for a sheet first the one that is safe for one person, long rips."""
    if file.first_cut != "best":
        return (file.first_cut,)
    return ("rip first", "crosscut first") if lot.is_sheets else tuple(WAYS)


def _rank(outcome: Outcome, file: CutFile, *, coarse: bool = False) -> tuple[Number, ...]:
    """What makes one layout better: all placed, then cost, then what is left over, then cuts and settings.

    Of sheets that cost the same the way that is tried first is taken, for it is the safer one.
    """
    cost = outcome.desk.cost()
    if coarse:
        return outcome.lacking, cost
    left = worth_left(outcome.desk, file)
    return outcome.lacking, cost, -round(left / LITTLE), sum(sawing(boards_of(outcome.desk, file)))


def _lot_plan(
    file: CutFile,
    lot: Lot,
    asked: Wanted,
    outcomes: Sequence[tuple[str, Outcome]],
    taken: int,
    misplaced: tuple[NotThere, ...],
) -> LotPlan:
    chosen = outcomes[taken][1]
    made = [boards_of(outcome.desk, file) for _, outcome in outcomes]
    boards = made[taken]
    kerf = to_ticks(file.saw.kerf)
    weights = {ground.stock.code: weighed(lot, ground, file.offcuts) for ground in lot.grounds}
    counted = chosen.desk.cost()
    panels = [panel.blank for panel in asked.panels]
    # A set that was given up on the way leaves more freedom than the bound knows of.
    is_whole = not (chosen.unplaced or misplaced or chosen.broken)
    if is_whole:
        bound = least_cost(asked.blanks, panels, lot.grounds, weights, _by_hand(chosen.desk), kerf)
        bound = max(bound, _engine_bound(outcomes, has_panels=bool(asked.panels)))
    else:
        lying = what_lies(chosen.desk, asked.panels)
        bound = least_cost(*lying, lot.grounds, weights, _by_hand(chosen.desk), kerf)
    outer = sum(board.ground.outer.area for board in boards)
    return LotPlan(
        wood=lot.wood,
        thickness_class=lot.thickness_class,
        boards=boards,
        glued=tuple(glued_panels(boards, asked.panels, lot, file.saw)),
        unplaced=tuple(unplaced_of(chosen.unplaced, asked, lot)),
        broken=tuple(broken_sets(lot.sets, boards, kerf, (*asked.broken, *chosen.broken))),
        misplaced=misplaced,
        tried=tuple(
            Tried(
                name=name,
                cost=sum(lot.costs[code] for code, _ in outcome.desk.begun),
                share=parts_area(outcome.desk) / max(1, _outer(outcome.desk)),
                unplaced=len(outcome.unplaced),
                cuts=sawing(made[number])[0],
                set_ups=sawing(made[number])[1],
                is_taken=number == taken,
            )
            for number, (name, outcome) in enumerate(outcomes)
        ),
        measure=lot.measure,
        cost=sum(board.cost for board in boards),
        counted=counted,
        bound=min(bound, counted),
        bounds_all=is_whole,
        proven=is_whole and bound >= counted > 0,
        stages=file.stages if lot.is_sheets else 0,
        share=sum(each.spot.area for board in boards for each in board.laid) / max(1, outer),
    )


def _by_hand(desk: Desk) -> Counter[str]:
    """How many boards of each mark have something that was put there by hand."""
    return Counter(code for (code, _), lies in desk.begun.items() if any(each.by_hand for each in lies))


def _outer(desk: Desk) -> int:
    return sum(desk.ground(code).outer.area for code, _ in desk.begun)


def _engine_bound(outcomes: Sequence[tuple[str, Outcome]], *, has_panels: bool) -> Count:
    """No layout counts less, whichever of the ways it is made; 0 where no engine can say so.

    With panels only that way counts in which their strips are chosen: the others know but one choice.
    """
    bounds = {name: outcome.bound for name, outcome in outcomes}
    if has_panels:
        return bounds.get(TOGETHER, 0)
    either = bounds.pop("board by board", 0)
    return max(either, min(bounds.values(), default=0))
