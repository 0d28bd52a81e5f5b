"""What wood is worth that a layout does not cut yet, so that ways out can be ranked."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.stock_spec import Board, LengthStock, SheetStock
from casewright.cutting.plans.ground import class_thickness
from casewright.measure.units import Count, Inches, Number

Anything = Board | SheetStock | LengthStock


@dataclass(frozen=True, slots=True, kw_only=True)
class Worths:
    """The worth of stock of one wood, whatever its class.

    Attributes:
        measure: `money`, or where nothing of it has a cost `area`, or `length` for lengths
        rate: what one unit of volume is worth: of boards a square inch one inch thick, of sheets a square
            inch, of lengths an inch [dimensionless]
        thickness: of the class that is spoken of, by which an area is reckoned [in]
    """

    measure: str
    rate: Number
    thickness: Inches

    def of(self, stock: Anything) -> Count:
        """What a board, sheet or length is worth.

        Rule: its cost; where it has none, its volume at the mean of what has one

        Args:
            stock: the board, sheet or length

        Returns:
            Cents, or hundredths of a square inch of that class, or of an inch [dimensionless]

        Source: common practice.
        """
        if self.measure == "money" and stock.cost is not None:
            return stock.cost
        return max(1, round(self.rate * volume(stock)))


def volume(stock: Anything) -> Number:
    """How much wood a piece of stock is.

    Rule: of a board, its area by the thickness of its class; of a sheet, its area; of a length, its length

    Args:
        stock: the board, sheet or length

    Returns:
        Cubic inches, square inches or inches [dimensionless]

    Source: arithmetic.
    """
    if isinstance(stock, Board):
        return stock.length * stock.widest * class_thickness(stock.thickness_class)
    return stock.length * stock.width if isinstance(stock, SheetStock) else stock.length


def worths_of(file: CutFile, wood: str, thickness_class: str, *, is_length: bool = False) -> Worths:
    """What stock of a wood is worth.

    Args:
        file: the cut file
        wood: the wood, or the kind of sheet or length
        thickness_class: the class that is spoken of; empty for sheets and lengths
        is_length: is it stock that is only cut to length?

    Returns:
        The worths, by what all stock of that wood costs that has a cost, spare stock too.

    Source: common practice.
    """
    kinds: Iterable[Anything] = file.lengths if is_length else file.boards if thickness_class else file.sheets
    priced = [each for each in kinds if each.wood.casefold() == wood.casefold() and each.cost is not None]
    thickness = class_thickness(thickness_class) if thickness_class else 1.0
    if priced:
        rate = sum(each.cost or 0 for each in priced) / sum(map(volume, priced))
        return Worths(measure="money", rate=rate, thickness=thickness)
    return Worths(measure="length" if is_length else "area", rate=100 / thickness, thickness=thickness)
