"""What things cost to buy, each price with its day and source, and a plain refusal where there is none."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from functools import cache
from typing import Any

from casewright.measure.units import Cents
from casewright.pricing.bundled import bundled, typed_amount


class PriceKind(StrEnum):
    """What sort of thing a price is for; consumables are charged by the piece or by a share, never both."""

    LUMBER = "lumber"
    SHEET = "sheet"
    HARDWARE = "hardware"
    FINISH = "finish"
    CONSUMABLE = "consumable"
    TRAVEL = "travel"


class NoPrice(ValueError):
    """There is no price for something that the piece needs.

    Attributes:
        message: the sentence, for the person who can put the price in
    """

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceRow:
    """One price.

    Attributes:
        kind: lumber, sheet, hardware, finish, consumable or travel
        item: the wood, or the thing's plain name
        size: thickness class or sheet thickness; empty where there is only one
        unit: what the price is for: bd ft, sheet, each, pair, quart ...
        price: for one of them [cent]
        on: the day on which it was quoted
        source: who quoted it
        basis: example, or on what ground it stands
    """

    kind: PriceKind
    item: str
    unit: str
    price: Cents
    size: str = ""
    on: date | None = None
    source: str = "the shop's own price list"
    basis: str = "learned"

    def __post_init__(self) -> None:
        if not self.item.strip() or not self.unit.strip():
            raise ValueError(
                "A price names what it is for and the unit that it buys, such as cherry by the bd ft."
            )
        if self.price < 0:
            raise ValueError(f"The price of {self.item} is below zero; make it 0 or more.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceBook:
    """Every price that a shop buys at; a quote keeps the one that it was made with.

    Attributes:
        rows: the prices, at most one for each kind, item and size
    """

    rows: tuple[PriceRow, ...]

    def __post_init__(self) -> None:
        keys = [key_of(row) for row in self.rows]
        twice = sorted({" ".join(key) for key in keys if keys.count(key) > 1})
        if twice:
            raise ValueError(f"Priced twice: {'; '.join(twice)}. Keep the price that holds today.")

    def changed(self, *own: PriceRow) -> "PriceBook":
        """The same book with these prices in the place of those for the same things.

        Args:
            own: prices to put in

        Returns:
            A new book.

        Source: common practice.
        """
        by_key = {key_of(row): row for row in self.rows} | {key_of(row): row for row in own}
        return replace(self, rows=tuple(by_key.values()))

    def find(self, kind: PriceKind, item: str, size: str = "") -> PriceRow:
        """The price of one thing.

        Args:
            kind: the sort of thing
            item: its name; letter case and underscores do not matter
            size: its thickness class or thickness; empty where there is only one

        Returns:
            The price with its unit, day and source.

        Raises:
            NoPrice: with a sentence that names the thing and the row to write for it.

        Source: common practice.
        """
        wanted = (kind.value, plain(item), plain(size))
        for row in self.rows:
            if key_of(row) == wanted:
                return row
        raise NoPrice(missing(kind, item, size))

    def lumber(self, wood: str, size: str) -> PriceRow:
        """The price of a wood in a thickness class, by the board foot.

        Quartersawn and rift-sawn boards have a price of their own where the yard was asked for it, by a size
        such as `4/4 quartersawn`; where there is none, that of the class stands for it.

        Args:
            wood: its common name
            size: thickness class, with the cut where it is not flat-sawn

        Returns:
            The price.

        Raises:
            NoPrice: there is none for that wood in that class.

        Source: common practice.
        """
        thickness_class, _, cut = plain(size).partition(" ")
        try:
            return self.find(PriceKind.LUMBER, wood, size)
        except NoPrice:
            if not cut:
                raise
        return self.find(PriceKind.LUMBER, wood, thickness_class)


def plain(name: str) -> str:
    """A name as it is compared: small letters, single blanks, no underscores.

    Args:
        name: as it was written

    Returns:
        The plain name.

    Source: common practice.
    """
    return " ".join(name.lower().replace("_", " ").split())


def key_of(row: PriceRow) -> tuple[str, str, str]:
    """What a price is found by.

    Args:
        row: the price

    Returns:
        Kind, plain item and plain size.

    Source: common practice.
    """
    return (row.kind.value, plain(row.item), plain(row.size))


def missing(kind: PriceKind, item: str, size: str = "") -> str:
    """The sentence that says which price is missing, and where to put it.

    Args:
        kind: the sort of thing
        item: its name
        size: its thickness class or thickness; may be empty

    Returns:
        A sentence for the maker.

    Source: common practice.
    """
    sized = f' and size "{size}"' if size else ""
    thing = f"{item} {size}".strip()
    return (
        f"There is no price for {thing} ({kind.value}). Add a row to the price file with "
        f'kind "{kind.value}", item "{item}"{sized}, its unit, price and day.'
    )


def price_row(row: Mapping[str, str]) -> PriceRow:
    """One price read from a row of a price file.

    Args:
        row: kind, item, size, unit, price in whole currency units as text, day, source and basis

    Returns:
        The price.

    Raises:
        ValueError: something is missing or not what it should be, with a sentence that says what.

    Source: common practice.
    """
    lacking = [name for name in ("kind", "item", "unit", "price") if not str(row.get(name, "")).strip()]
    if lacking:
        raise ValueError(f"A price row lacks its {', '.join(lacking)}: {dict(row)}.")
    kinds = [kind.value for kind in PriceKind]
    if row["kind"] not in kinds:
        raise ValueError(f"“{row['kind']}” is no kind of price; it is one of {', '.join(kinds)}.")
    optional = {name: row[name] for name in ("size", "source", "basis") if name in row}
    return PriceRow(
        kind=PriceKind(row["kind"]),
        item=row["item"],
        unit=row["unit"],
        price=typed_amount(row["price"], f"the price of {row['item']}"),
        on=quoted_on(row.get("on", "")),
        **optional,
    )


def quoted_on(text: str) -> date | None:
    """The day on which a price was quoted.

    Args:
        text: year, month and day as 2026-01-31; may be empty

    Returns:
        The day, or None where none was written.

    Raises:
        ValueError: it is not a day.

    Source: common practice.
    """
    if not text:
        return None
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise ValueError(f"“{text}” is not a day. Write it as 2026-01-31.") from None


def price_book(held: Mapping[str, Any]) -> PriceBook:
    """A shop's prices, read from what its price file holds.

    Args:
        held: a list of rows under the name `prices`

    Returns:
        The book.

    Raises:
        ValueError: there are no prices, or one of them cannot be read.

    Source: common practice.
    """
    rows = held.get("prices")
    if not rows:
        raise ValueError("The price file holds no prices; put them in a list named “prices”.")
    return PriceBook(rows=tuple(price_row(row) for row in rows))


@cache
def example_prices() -> PriceBook:
    """The prices of a made-up shop, to be replaced by the shop's own.

    Source: an example; every row says so.
    """
    return price_book(bundled("prices.json"))
