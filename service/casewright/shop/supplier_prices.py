"""What suppliers quote: noting a price, and that one is quoted no more."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime

from casewright.pricing.prices import PriceKind
from casewright.pricing.supplier_quotes import SupplierQuote
from casewright.records.base import new_id
from casewright.records.sessions import Fenced
from casewright.records.stock import Supplier, SupplierPrice
from casewright.records.supplier_prices import prices_of_suppliers
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused

MOST_QUOTES = 500
"""Prices of one supplier that hold at a time."""


def quotes_in_force(db: Fenced, supplier_id: str = "") -> Mapping[str, Mapping[str, SupplierQuote]]:
    """What holds today, by supplier and by the row that says so; one query.

    Args:
        db: the session
        supplier_id: of one supplier alone
    """
    latest: dict[tuple[str, ...], tuple[SupplierPrice, SupplierQuote]] = {}
    for row in prices_of_suppliers(db, supplier_id):
        quote = _quote(row)
        latest[(row.supplier_id, *quote.key)] = row, quote  # later rows come later
    found: dict[str, dict[str, SupplierQuote]] = {}
    for row, quote in latest.values():
        if row.price_cents is not None:
            found.setdefault(row.supplier_id, {})[row.id] = quote
    return found


def _quote(row: SupplierPrice) -> SupplierQuote:
    return SupplierQuote(
        kind=PriceKind(row.kind),
        item=row.item,
        cut=row.cut,
        size=row.size,
        grade=row.grade,
        price=row.price_cents or 0,
        on=row.quoted_on,
    )


def note_quote(
    db: Fenced, supplier: Supplier, quote: SupplierQuote, who: str, now: datetime
) -> SupplierPrice:
    """Notes what a supplier quotes; it takes the place of an earlier quote for the same.

    Raises:
        Refused: the supplier does not sell such things, or quotes too many already
    """
    if quote.kind.value not in supplier.kinds:
        raise Refused(f"{supplier.name} does not sell such things; change what they sell first.", 422)
    held = quotes_in_force(db, supplier.id).get(supplier.id, {})
    if len(held) >= MOST_QUOTES and quote.key not in {each.key for each in held.values()}:
        raise Refused(f"{MOST_QUOTES} prices of one supplier hold at most; take some out first.", 422)
    note_history(db, who, now, f"Noted a price of {supplier.name}: {thing_words(quote)}.")
    return _add(db, supplier, quote, quote.price, who, now)


def end_quote(
    db: Fenced, supplier: Supplier, row_id: str, today: date, who: str, now: datetime
) -> SupplierPrice | None:
    """Notes that a supplier quotes a price no more; nothing where it was taken out before.

    Raises:
        NotFound: the supplier never quoted such a price
    """
    quote = quotes_in_force(db, supplier.id).get(supplier.id, {}).get(row_id)
    if quote is None:
        row = db.get(SupplierPrice, (db.shop_id, row_id))
        if row is None or row.supplier_id != supplier.id:
            raise NotFound("price")
        return None
    note_history(db, who, now, f"{supplier.name} quotes no price any more: {thing_words(quote)}.")
    return _add(db, supplier, replace(quote, on=today), None, who, now)


def _add(
    db: Fenced, supplier: Supplier, quote: SupplierQuote, price: int | None, who: str, now: datetime
) -> SupplierPrice:
    made = SupplierPrice(
        id=new_id(),
        supplier_id=supplier.id,
        kind=quote.kind.value,
        item=quote.item,
        cut=quote.cut,
        size=quote.size,
        grade=quote.grade,
        price_cents=price,
        quoted_on=quote.on,
        at=now,
        who=who,
    )
    db.add(made)
    db.flush()
    return made


def thing_words(quote: SupplierQuote) -> str:
    """What a quote is for, such as `cherry 4/4 FAS`."""
    cut = f"{quote.cut}sawn" if quote.cut == "quarter" else f"{quote.cut}-sawn" if quote.cut else ""
    size = f"{quote.size} in" if quote.kind is PriceKind.SHEET else quote.size
    return " ".join(part for part in (quote.item, size, cut, quote.grade) if part)
