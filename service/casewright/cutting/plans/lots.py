"""Lots: parts and stock of one wood and class, or one kind of sheet, which are laid out together."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.parts_spec import CutPart, GrainSet
from casewright.cutting.asked.stock_spec import Board, SheetStock
from casewright.cutting.plans.ground import Ground, ground_of
from casewright.measure.units import TICKS_PER_INCH, Count

OFFCUT_SHARE = 1000
"""Where offcuts go first, one counts a thousandth of what it would: a whole board is worth more."""

Measure = Literal["money", "area"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """What is laid out together.

    Attributes:
        wood: the wood or kind of sheet, as the parts name it
        thickness_class: of boards; empty for sheets
        parts: what is cut from it
        sets: those of its parts that match
        grounds: boards or sheets
        spare: boards or sheets that are cut up only where parts find no place else, if somebody says so
        costs: what each board or sheet counts, by its mark: cents, or hundredths of a square inch
            [dimensionless]
        measure: what the costs are in
    """

    wood: str
    thickness_class: str
    parts: tuple[CutPart, ...]
    sets: tuple[GrainSet, ...]
    grounds: tuple[Ground, ...]
    spare: tuple[Ground, ...]
    costs: Mapping[str, Count]
    measure: Measure

    @property
    def is_sheets(self) -> bool:
        """Is it cut from sheets?"""
        return not self.thickness_class

    @property
    def by_code(self) -> dict[str, CutPart]:
        """Its parts by their marks."""
        return {part.code: part for part in self.parts}


def lots_of(file: CutFile) -> Iterator[Lot]:
    """The lots of a cut file that boards or sheets are laid out for.

    Args:
        file: the cut file

    Returns:
        A lot for each wood and class, and each kind of sheet, in the order of the parts.

    Source: common practice: a part comes from a board of its wood and class.
    """
    found: dict[tuple[str, str], list[CutPart]] = {}
    for part in file.parts:
        if part.width is not None:
            found.setdefault((part.wood.casefold(), part.thickness_class or ""), []).append(part)
    for (_, thickness_class), parts in found.items():
        yield lot_of(file, parts[0].wood, thickness_class, parts)


def lot_of(file: CutFile, wood: str, thickness_class: str, parts: Sequence[CutPart]) -> Lot:
    """What is laid out together of one wood and class, or of one kind of sheet.

    Args:
        file: the cut file
        wood: the wood or kind of sheet
        thickness_class: of boards; empty for sheets
        parts: what is cut from it

    Returns:
        The lot; spare stock on which something was put by hand is spare no more.

    Source: common practice.
    """
    stock: Iterable[Board | SheetStock] = (
        (board for board in file.boards if board.thickness_class == thickness_class)
        if thickness_class
        else file.sheets
    )
    held = [
        ground
        for each in stock
        if each.wood.casefold() == wood.casefold() and (ground := ground_of(each, file.saw)) is not None
    ]
    begun = {hand.on for part in parts for hand in part.placed}
    spare = tuple(ground for ground in held if ground.stock.spare and ground.stock.code not in begun)
    grounds = tuple(ground for ground in held if ground not in spare)
    costs, measure = costs_of(grounds)
    codes = {part.code for part in parts}
    return Lot(
        wood=wood,
        thickness_class=thickness_class,
        parts=tuple(parts),
        sets=tuple(each for each in file.sets if each.rows[0][0] in codes),
        grounds=grounds,
        spare=spare,
        costs=costs,
        measure=measure,
    )


def costs_of(grounds: Iterable[Ground]) -> tuple[dict[str, Count], Measure]:
    """What each board or sheet counts.

    Where some have a cost, those without one count by their area at the mean of the others; where none has,
    all count by their area.

    Args:
        grounds: the boards or sheets

    Returns:
        Cents or hundredths of a square inch by the mark of the stock, and which of the two.

    Source: common practice: a board is bought whole, so all of it counts.
    """
    held = list(grounds)
    areas = {ground.stock.code: ground.outer.area / TICKS_PER_INCH**2 for ground in held}
    priced = [ground.stock for ground in held if ground.stock.cost is not None]
    if not priced:
        return {code: max(1, round(area * 100)) for code, area in areas.items()}, "area"
    rate = sum(stock.cost or 0 for stock in priced) / sum(areas[stock.code] for stock in priced)
    return {
        ground.stock.code: max(
            1,
            ground.stock.cost if ground.stock.cost is not None else round(rate * areas[ground.stock.code]),
        )
        for ground in held
    }, "money"


def weighed(lot: Lot, ground: Ground, offcuts: str) -> Count:
    """What a board or sheet counts when it is chosen.

    Args:
        lot: its lot
        ground: the board or sheet
        offcuts: `first`, `by cost` or `last`

    Returns:
        Its cost; almost nothing for an offcut that is to be used first [dimensionless]

    Source: common practice.
    """
    cost = lot.costs[ground.stock.code]
    return max(1, cost // OFFCUT_SHARE) if ground.stock.offcut and offcuts == "first" else cost
