"""Direct materials: what is bought for this piece, line by line, and consumables in one way only."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.money import times
from casewright.measure.units import Cents, Number
from casewright.pricing.prices import PriceKind, PriceRow, plain


@dataclass(frozen=True, slots=True, kw_only=True)
class MaterialLine:
    """One thing bought for the piece.

    Attributes:
        kind: lumber, sheet, hardware, finish or consumable
        label: what it is
        quantity: how much of it, in its own unit [dimensionless]
        unit: what the price is for
        unit_price: for one of them [cent]
        amount: what the line comes to [cent]
        source: who quoted the price, and when
        priced_as: what the price book calls it; empty where the line is no thing of the book
        stands_in: the size that was wanted, where the price is that of another
    """

    kind: PriceKind
    label: str
    quantity: Number
    unit: str
    unit_price: Cents
    amount: Cents
    source: str = ""
    priced_as: str = ""
    stands_in: str = ""


def line_amount(price: Cents, quantity: Number) -> Cents:
    """What a line comes to.

    Rule: price * quantity, rounded once to the cent

    Args:
        price: for one of them [cent]
        quantity: how many, in the unit of the price [dimensionless]

    Returns:
        The amount [cent]

    Raises:
        ValueError: the quantity is below zero.

    Source: common practice.
    """
    if quantity < 0:
        raise ValueError("A line cannot hold less than nothing; give a quantity of 0 or more.")
    return times(price, quantity)


def material_line(row: PriceRow, quantity: Number, label: str = "", wanted: str = "") -> MaterialLine:
    """A line for something that the price book knows.

    Args:
        row: its price
        quantity: how much of it, in the unit of the price [dimensionless]
        label: what to call it; empty for its name and size
        wanted: the size that was wanted; empty for that of the price

    Returns:
        The line with its amount.

    Source: common practice.
    """
    quoted = f"{row.source}, {row.on.isoformat()}" if row.on else row.source
    return MaterialLine(
        kind=row.kind,
        label=label or f"{row.item} {wanted or row.size}".strip(),
        quantity=quantity,
        unit=row.unit,
        unit_price=row.price,
        amount=line_amount(row.price, quantity),
        source=quoted,
        priced_as=f"{row.item} {row.size}".strip(),
        stands_in=wanted if plain(wanted) not in {"", plain(row.size)} else "",
    )


def direct_amount(lines: Iterable[MaterialLine]) -> Cents:
    """What all the lines come to.

    Args:
        lines: material lines

    Returns:
        The sum of their rounded amounts [cent]

    Source: common practice.
    """
    return sum(line.amount for line in lines)


def with_consumables(lines: tuple[MaterialLine, ...], consumables: Number) -> tuple[MaterialLine, ...]:
    """The lines with glue, abrasives and the like as a share of the others, where the shop charges them so.

    Rule: one more line of consumables * (sum of the lines)

    Args:
        lines: direct materials
        consumables: the share; 0 where they are itemised or not charged [dimensionless]

    Returns:
        The lines, and one more when the share is above 0.

    Raises:
        ValueError: consumables are itemised as well, so they would be charged twice.

    Source: common practice: either itemised or as a share of direct materials, never both.
    """
    if consumables < 0:
        raise ValueError("The share for consumables is 0 or more.")
    itemised = [line.label for line in lines if line.kind is PriceKind.CONSUMABLE]
    if consumables and itemised:
        raise ValueError(
            f"Consumables are itemised ({', '.join(itemised)}) and also charged as {consumables:.0%} "
            "of materials. Keep one: take those lines out, or set the share to 0."
        )
    if not consumables:
        return lines
    base = direct_amount(lines)
    added = MaterialLine(
        kind=PriceKind.CONSUMABLE,
        label="consumables",
        quantity=consumables,
        unit="of direct materials",
        unit_price=base,
        amount=times(base, consumables),
    )
    return (*lines, added)
