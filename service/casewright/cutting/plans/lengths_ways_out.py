"""Ways out for parts that found no place on stock that is only cut to length."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.stock_spec import LengthStock
from casewright.cutting.budget import Budget, never, say_nothing
from casewright.cutting.plans.blanks import cut_length
from casewright.cutting.plans.lengths_plan import LengthLot, plan_lengths
from casewright.cutting.plans.values import LotPlan, Unplaced, WayOut
from casewright.cutting.plans.worths import worths_of
from casewright.measure.lengths import write_with_unit
from casewright.measure.saying import Words, say

FOOT = 12.0
USUAL = 8 * FOOT
"""Mouldings and edging are sold to 8 ft and longer (common practice) [in]."""
SECONDS = 0.3
CODE = "one more"


def length_ways_out(
    file: CutFile, lot: LengthLot, unplaced: Sequence[Unplaced], budget: Budget
) -> tuple[WayOut, ...]:
    """How parts without a length could have one, the best first.

    Args:
        file: the cut file
        lot: what is cut from what
        unplaced: the parts without a place
        budget: of the layout; the ways out take a little more

    Returns:
        Spare stock, and how many more lengths it takes.

    Source: common practice, each way tried.
    """
    short = Counter({each.code: each.count for each in unplaced})
    parts = tuple(
        part.model_copy(update={"count": short[part.code]}) for part in lot.parts if short[part.code]
    )
    if not parts:
        return ()
    seconds = budget.seconds if budget.steps is not None else SECONDS
    own = replace(budget, seconds=seconds, tell=say_nothing, stop=never)
    spare = tuple(each for each in file.lengths if each.spare and each.wood.casefold() == lot.wood.casefold())
    longest = max(cut_length(part, file.saw) for part in parts)
    held = [each for each in (*lot.stock, *spare) if each.length - 2 * each.trim >= longest]
    size = max((each.length for each in held), default=max(USUAL, math.ceil(longest / FOOT) * FOOT))
    trim = max((each.trim for each in held), default=0.0)
    taken = {each.code for each in (*file.boards, *file.sheets, *file.lengths)}
    code = next(each for each in (CODE, *(f"{CODE} {number}" for number in range(2, 9))) if each not in taken)
    more = LengthStock.model_validate(
        {"code": code, "wood": lot.wood, "length": write_with_unit(size), "trim": write_with_unit(trim)}
    )
    found = []
    for stock in (spare, (more,)):
        made = plan_lengths(file, LengthLot(wood=lot.wood, parts=parts, stock=stock), own) if stock else None
        if made is not None and made.lengths:
            found.append(_way(file, lot, made, sum(short.values()), more))
    return tuple(sorted(found, key=lambda way: (way.lacking, way.cost)))


def _way(file: CutFile, lot: LengthLot, made: LotPlan, short: int, more: LengthStock) -> WayOut:
    worths = worths_of(file, lot.wood, "", is_length=True)
    by_code = {each.code: each for each in (*file.lengths, more)}
    bars = [by_code[bar.code] for bar in made.lengths]
    count, codes = len(bars), sorted({bar.code for bar in made.lengths})
    is_bought = more.code in codes
    words: Words = say("Take {} too", ", ".join(codes))
    change: dict[str, object] = {"stock": codes}
    if is_bought:
        what = "one more length" if count == 1 else f"{count} more lengths"
        words = say("Get {} of {}, {}", what, lot.wood, more.length)
        data = {"code": more.code, "wood": lot.wood, "length": write_with_unit(more.length), "count": count}
        change = {"more": {"lengths": [{**data, "trim": write_with_unit(more.trim)}]}}
    return WayOut(
        kind="one more" if is_bought else "other stock",
        words=words,
        codes=tuple(part.mark.code for bar in made.lengths for part in bar.laid),
        short=short,
        boards=tuple(f"{bar.code} no. {bar.number}" for bar in made.lengths),
        cost=sum(map(worths.of, bars)),
        measure=worths.measure,
        feet=sum(each.length for each in bars) / FOOT,
        change=change,
    )
