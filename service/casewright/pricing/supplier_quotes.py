"""What suppliers quote for the same things, each in its own words of class, cut and grade."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from casewright.measure.units import Cents
from casewright.pricing.prices import PriceKind, plain


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierQuote:
    """A price that a supplier quotes.

    Attributes:
        kind: lumber, sheet, hardware, finish or consumable
        item: the wood, or the thing's plain name
        cut: how a wood is sawn; empty for boards as they come
        size: thickness class or sheet thickness; empty where there is only one
        grade: the grade of a wood; empty for any
        price: for one of them [cent]
        on: the day on which it was quoted
    """

    kind: PriceKind
    item: str
    cut: str = ""
    size: str = ""
    grade: str = ""
    price: Cents
    on: date

    def __post_init__(self) -> None:
        if self.price < 0:
            raise ValueError(f"The price of {self.item} is below zero; make it 0 or more.")

    @property
    def key(self) -> tuple[str, ...]:
        """By what a quote takes the place of an earlier one."""
        return (self.kind.value, plain(self.item), self.cut, plain(self.size), self.grade)


def quote_for(
    quotes: Iterable[SupplierQuote],
    kind: PriceKind,
    item: str,
    *,
    cut: str = "",
    size: str = "",
    grade: str = "",
) -> SupplierQuote | None:
    """The quote that holds for a thing: the one that names it most closely.

    A quote for a wood without a grade holds for every grade, and one without a cut for boards as they come
    and for those that the yard quotes no price of their own for.

    Args:
        quotes: of one supplier, the latest of each thing
        kind: the sort of thing
        item: the wood, or the thing's name; letter case does not matter
        cut: how a wood is sawn
        size: thickness class or sheet thickness
        grade: the grade of a wood

    Returns:
        The quote; None where the supplier quotes nothing for it.

    Source: common practice.
    """
    fit = [
        each
        for each in quotes
        if (each.kind, plain(each.item), plain(each.size)) == (kind, plain(item), plain(size))
        and each.cut in {"", cut}
        and each.grade in {"", grade}
    ]
    return max(fit, key=lambda each: (bool(each.cut), bool(each.grade)), default=None)
