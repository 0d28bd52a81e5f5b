"""What a supplier quotes: the prices that hold, one to add, one to take out. The owner's alone."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pricing.prices import PriceKind
from casewright.pricing.supplier_quotes import SupplierQuote
from casewright.records.stock import Supplier
from casewright.shop.keeping import once
from casewright.shop.supplier_prices import end_quote, note_quote, quotes_in_force, thing_words
from casewright.shop.suppliers import SOLD, load_supplier
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Owner, Visit
from casewright.web.stock.needs import price_book
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.sheets import sheets
from casewright.wood.species import UnknownWood, wood, woods
from casewright.wood.thickness import thickness_classes

router = APIRouter()
OLD_AFTER = timedelta(days=90)
"""A yard's price is asked again after a quarter (common practice)."""
KINDS = {
    PriceKind.LUMBER: "Lumber",
    PriceKind.SHEET: "Sheets",
    PriceKind.HARDWARE: "Hardware",
    PriceKind.FINISH: "Finish",
    PriceKind.CONSUMABLE: "Sundries",
}
FOR_ONE = {
    PriceKind.LUMBER: "bd ft",
    PriceKind.SHEET: "sheet",
    PriceKind.HARDWARE: "piece",
    PriceKind.FINISH: "quart",
    PriceKind.CONSUMABLE: "unit",
}
NAMES = {
    "kind": "What sort of thing",
    "item": "What",
    "size": "Class or thickness",
    "cut": "Cut",
    "grade": "Grade",
    "price": "Price",
    "on": "Quoted on",
}
CUTS = (("", "as they come"), *((each.value, each.sawn) for each in Cut if each is not Cut.FLAT))


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteShown:
    """One price that holds: what for, how much, since when, and whether it should be asked again."""

    id: str
    words: str
    price_cents: int
    unit: str
    on: str
    age: int
    is_old: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplierPricesPage(Page):
    """What a supplier quotes."""

    template: ClassVar[str] = "stock/supplier_prices.html"
    supplier: Supplier
    groups: Sequence[tuple[str, Sequence[QuoteShown]]]
    form: Form
    names: dict[str, str]
    kinds: Sequence[tuple[str, str]]
    cuts: Sequence[tuple[str, str]]
    grades: Sequence[tuple[str, str]]
    items: Sequence[str]


@router.get("/stock/suppliers/{supplier_id}/prices")
def show_supplier_prices(visit: Owner, supplier_id: str) -> Response:
    """The prices of one supplier that hold."""
    return show(visit, _page(visit, load_supplier(visit.db, supplier_id), form_of()))


@router.post("/stock/suppliers/{supplier_id}/prices")
def save_supplier_price(visit: Owner, supplier_id: str) -> Response:
    """Notes what a supplier quotes."""
    held = load_supplier(visit.db, supplier_id)
    read = Reader(visit.typed)
    quote = _read_quote(read, held, visit)
    if quote is None:
        return show(visit, _page(visit, held, read.form), 422)
    address = f"/stock/suppliers/{held.id}/prices"

    def make() -> str:
        note_quote(visit.db, held, quote, visit.who, visit.now)
        return address

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.post("/stock/suppliers/{supplier_id}/prices/{price_id}/end")
def save_price_end(visit: Owner, supplier_id: str, price_id: str) -> Response:
    """Notes that a supplier quotes a price no more."""
    held = load_supplier(visit.db, supplier_id)
    end_quote(visit.db, held, price_id, visit.today, visit.who, visit.now)
    return see(f"/stock/suppliers/{held.id}/prices", "saved")


def _read_quote(read: Reader, held: Supplier, visit: Visit) -> SupplierQuote | None:
    kind = PriceKind(read.choice("kind", _sold(held)))
    item = read.line("item", most=120, needed="Say what it is a price of, such as cherry or brass knob.")
    size, cut, grade = read.line("size", most=40), "", ""
    if kind is PriceKind.LUMBER:
        try:
            item = wood(item).name if item else item
        except UnknownWood as error:
            read.fault("item", str(error))
        known = [each.name for each in thickness_classes()]
        if size not in known:
            read.fault("size", f"Write the class that it is sold by: {', '.join(known)}.")
        cut = read.choice("cut", [value for value, _ in CUTS], default="")
        grade = read.choice("grade", ["", *(each.value for each in GradeName)], default="")
    elif kind is PriceKind.SHEET and not size:
        read.fault("size", "Write the thickness that it is sold by, such as 1/2.")
    price, on = read.money("price"), read.day("on")
    if on and on > visit.today:
        read.fault("on", f"{on.isoformat()} is still to come. Write the day on which it was quoted.")
    if read.faults:
        return None
    return SupplierQuote(
        kind=kind, item=item, cut=cut, size=size, grade=grade, price=price, on=on or visit.today
    )


def _sold(held: Supplier) -> list[str]:
    return [each.value for each in SOLD if each.value in held.kinds]


def _page(visit: Visit, held: Supplier, form: Form) -> SupplierPricesPage:
    quotes = quotes_in_force(visit.db, held.id).get(held.id, {})
    shown = {kind: [] for kind in KINDS}  # type: dict[PriceKind, list[QuoteShown]]
    for row_id, quote in sorted(quotes.items(), key=lambda each: thing_words(each[1]).casefold()):
        age = visit.today - quote.on
        shown[quote.kind].append(
            QuoteShown(
                id=row_id,
                words=thing_words(quote),
                price_cents=int(quote.price),
                unit=FOR_ONE[quote.kind],
                on=quote.on.isoformat(),
                age=age.days,
                is_old=age > OLD_AFTER,
            )
        )
    known = {row.item for row in price_book(visit).rows if row.kind is not PriceKind.LUMBER}
    return SupplierPricesPage(
        title=f"Prices of {held.name}",
        supplier=held,
        groups=tuple((KINDS[kind], rows) for kind, rows in shown.items() if rows),
        form=form,
        names=NAMES,
        kinds=tuple((value, KINDS[PriceKind(value)]) for value in _sold(held)),
        cuts=CUTS,
        grades=(("", "any"), *((each.value, each.value) for each in GradeName)),
        items=tuple(sorted({each.name for each in woods()} | {each.kind for each in sheets()} | known)),
    )
