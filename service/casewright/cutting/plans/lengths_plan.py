"""The layout of stock that is only cut to length: rods, mouldings, edging."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.parts_spec import CutPart
from casewright.cutting.asked.stock_spec import LengthStock
from casewright.cutting.budget import Budget
from casewright.cutting.lengths.problem import Answer, Piece, Problem, Stock
from casewright.cutting.lengths.solving import solve
from casewright.cutting.plans.blanks import cut_length
from casewright.cutting.plans.filling import common_step
from casewright.cutting.plans.lots import OFFCUT_SHARE
from casewright.cutting.plans.values import LengthLaid, LengthLayout, LotPlan, Mark, Tried, Unplaced
from casewright.measure.lengths import to_ticks
from casewright.measure.saying import Words, say
from casewright.measure.units import TICKS_PER_INCH, Count, Ticks


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthLot:
    """Parts and stock of one kind that is only cut to length.

    Attributes:
        wood: the kind, as the parts name it
        parts: what is cut from it
        stock: what there is
    """

    wood: str
    parts: tuple[CutPart, ...]
    stock: tuple[LengthStock, ...]


def length_lots(file: CutFile) -> Iterator[LengthLot]:
    """The lots of a cut file that are only cut to length.

    Args:
        file: the cut file

    Returns:
        A lot for each kind, in the order of the parts.

    Source: common practice.
    """
    found: dict[str, list[CutPart]] = {}
    for part in file.parts:
        if part.width is None:
            found.setdefault(part.wood.casefold(), []).append(part)
    for wood, parts in found.items():
        stock = tuple(each for each in file.lengths if each.wood.casefold() == wood and not each.spare)
        yield LengthLot(wood=parts[0].wood, parts=tuple(parts), stock=stock)


def usable_length(stock: LengthStock) -> Ticks:
    """What can be used of a length.

    Rule: length - 2 * trim

    Args:
        stock: the length

    Returns:
        Its length without its ends [tick]

    Source: arithmetic.
    """
    return to_ticks(stock.length) - 2 * to_ticks(stock.trim)


def plan_lengths(file: CutFile, lot: LengthLot, budget: Budget) -> LotPlan:
    """The layout of one lot that is only cut to length.

    Args:
        file: the cut file
        lot: what is cut from what
        budget: time and steps

    Returns:
        The layout.

    Source: the engine for lengths; the kerf is folded in as part + kerf in stock + kerf.
    """
    kerf = to_ticks(file.saw.kerf)
    sizes = [to_ticks(cut_length(part, file.saw)) for part in lot.parts]
    stock = [each for each in lot.stock if usable_length(each) >= min(sizes)]
    if not stock:
        counts = [part.count for part in lot.parts]
        return LotPlan(wood=lot.wood, thickness_class="", unplaced=tuple(_unplaced(lot, sizes, counts)))
    costs, measure = _costs(stock)
    step = common_step([size + kerf for size in sizes], max(map(usable_length, stock)))
    answer = solve(
        Problem(
            pieces=tuple(
                Piece(length=-(-(size + kerf) // step), count=part.count)
                for size, part in zip(sizes, lot.parts, strict=True)
            ),
            stocks=tuple(
                Stock(
                    length=(usable_length(each) + kerf) // step,
                    cost=max(1, cost // OFFCUT_SHARE) if each.offcut and file.offcuts == "first" else cost,
                    limit=each.count,
                )
                for each, cost in zip(stock, costs, strict=True)
            ),
        ),
        budget,
    )
    layouts = tuple(_layouts(answer, lot, stock, costs, sizes, kerf))
    is_whole = not any(answer.unplaced)
    cut = sum(part.length for bar in layouts for part in bar.laid)
    share = cut / max(1, sum(bar.length for bar in layouts))
    cost = sum(bar.cost for bar in layouts)
    sizes_cut = [[part.length for part in bar.laid] for bar in layouts]
    tried = Tried(
        name="to length",
        cost=cost,
        share=share,
        unplaced=sum(answer.unplaced),
        cuts=sum(map(len, sizes_cut)),
        set_ups=sum(len(set(each)) for each in sizes_cut),
        is_taken=True,
    )
    return LotPlan(
        wood=lot.wood,
        thickness_class="",
        lengths=layouts,
        unplaced=tuple(_unplaced(lot, sizes, answer.unplaced)),
        tried=(tried,),
        measure=measure,
        cost=cost,
        counted=answer.cost,
        bound=min(answer.bound if is_whole else _least(layouts, stock, costs, kerf), answer.cost),
        bounds_all=is_whole,
        proven=is_whole and answer.proven,
        share=share,
    )


def _least(
    layouts: Sequence[LengthLayout], stock: Sequence[LengthStock], costs: Sequence[Count], kerf: Ticks
) -> Count:
    """Below which the parts that have a place do not come: all their lengths at the best price for a length.

    An offcut that goes first counts next to nothing, so where there is one nothing can be said.
    """
    if any(each.offcut for each in stock):
        return 0
    need = sum(part.length + kerf for bar in layouts for part in bar.laid)
    pairs = zip(stock, costs, strict=True)
    return math.ceil(need * min(cost / (usable_length(each) + kerf) for each, cost in pairs) - 1e-9)


def _layouts(
    answer: Answer,
    lot: LengthLot,
    stock: list[LengthStock],
    costs: list[int],
    sizes: list[Ticks],
    kerf: Ticks,
) -> Iterator[LengthLayout]:
    """Every length with its parts, from its first end on."""
    numbers = [0] * len(lot.parts)
    used = [0] * len(stock)
    for bar in answer.bars:
        each = stock[bar.stock]
        for _ in range(bar.copies):
            used[bar.stock] += 1
            place, laid = to_ticks(each.trim), []
            for piece in bar.pieces:
                numbers[piece] += 1
                mark = Mark(code=lot.parts[piece].code, number=numbers[piece])
                laid.append(LengthLaid(mark=mark, start=place, length=sizes[piece]))
                place += sizes[piece] + kerf
            yield LengthLayout(
                code=each.code,
                number=used[bar.stock],
                length=to_ticks(each.length),
                laid=tuple(laid),
                left=max(0, to_ticks(each.length) - to_ticks(each.trim) - place),
                cost=costs[bar.stock],
                place=each.place,
            )


def _unplaced(lot: LengthLot, sizes: list[Ticks], counts: Sequence[int]) -> Iterator[Unplaced]:
    """The parts for which there is no length, with why."""
    longest = max(map(usable_length, lot.stock), default=0)
    for part, size, number in zip(lot.parts, sizes, counts, strict=True):
        reason: Words = f"the lengths of {lot.wood} are used up"
        if not lot.stock:
            reason = f"no length of {lot.wood} is in the stock"
        elif size > longest:
            reason = say(
                "it is {} long, and the longest piece gives {}",
                size / TICKS_PER_INCH,
                longest / TICKS_PER_INCH,
            )
        if number:
            yield Unplaced(code=part.code, count=number, reason=reason)


def _costs(stock: list[LengthStock]) -> tuple[list[Count], str]:
    """What each length counts: cents where one has a cost, else hundredths of an inch."""
    priced = [each for each in stock if each.cost is not None]
    if not priced:
        return [max(1, round(each.length * 100)) for each in stock], "length"
    rate = sum(each.cost or 0 for each in priced) / sum(each.length for each in priced)
    return [
        max(1, each.cost if each.cost is not None else round(rate * each.length)) for each in stock
    ], "money"
