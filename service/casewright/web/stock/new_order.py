"""A new order: for which jobs, what the rack gives, what is bought of whom; one order for each supplier."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import show_in
from casewright.measure.saying import refusal
from casewright.papers.order_pdf import order_words
from casewright.papers.supply_order import OrderNeed, part_of_order
from casewright.pieces.built.refusals import REFUSALS
from casewright.pricing.prices import PriceKind, PriceRow
from casewright.records.stock import Supplier
from casewright.records.stock_lists import JobRow, jobs_to_order_for, suppliers
from casewright.shop.keeping import once
from casewright.shop.orders import LineFacts, issue_order
from casewright.shop.refusals import Refused
from casewright.shop.stock import inches, keep_for, usable
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.stock.needs import JobsAtHand, RackOffer, head_for, jobs_at_hand
from casewright.web.stock.sorts import CUTS

router = APIRouter()
NAMES = {
    "needed_by": "Needed by",
    "delivery": "Delivery",
    "surfacing": "Surfacing",
    "remarks": "What else they should know",
}
KINDS = {
    PriceKind.LUMBER: "Lumber",
    PriceKind.SHEET: "Sheets",
    PriceKind.HARDWARE: "Hardware",
    PriceKind.FINISH: "Finish",
    PriceKind.CONSUMABLE: "Sundries",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShown:
    """One line that may be bought.

    Attributes:
        place: by what its fields are named
        need: what it is
        words: how it is called
        exact: feet before rounding, in words; empty where there are none
        before: what was ordered of it before, in words
        from_rack: what the rack gives of it, in words
        quoted: since when the price holds, in words
        choices: the suppliers who sell it
    """

    place: int
    need: OrderNeed
    words: str
    exact: str
    before: str
    from_rack: str
    quoted: str
    choices: Sequence[tuple[str, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferShown:
    """A piece on the rack that holds parts, and whether it is taken."""

    id: str
    label: str
    words: str
    holds: str
    feet: str
    taken: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class NewOrderPage(Page):
    """For which jobs is bought, and what of whom."""

    template: ClassVar[str] = "stock/new_order.html"
    jobs: Sequence[JobRow]
    chosen: Sequence[str]
    offers: Sequence[OfferShown]
    groups: Sequence[tuple[str, Sequence[LineShown]]]
    form: Form
    names: dict[str, str]
    has_suppliers: bool
    fields: Sequence[tuple[str, str]]
    remark: str
    trouble: str


@router.get("/stock/needs")
def new_order(visit: Office) -> Response:
    """Asks for which jobs, then what is bought of whom."""
    asked = visit.request.query_params
    chosen = [each[:13] for each in asked.getlist("job") if each]
    try:
        at_hand = jobs_at_hand(visit, chosen, asked.get("surfacing", "")[:120]) if chosen else None
    except REFUSALS as error:
        return show(visit, _page(visit, chosen, None, None, (), refusal(error, visit.unit)), 422)
    taken = (
        asked.getlist("take")
        if asked.get("asked")
        else [each.piece.id for each in at_hand.offers]
        if at_hand
        else []
    )
    return show(visit, _page(visit, chosen, at_hand, None, taken))


@router.post("/stock/orders")
def save_new_order(visit: Office) -> Response:
    """Issues an order to each supplier of whom something is bought, and keeps what the rack gives."""
    read = Reader(visit.typed)
    chosen = [each[:13] for each in visit.typed.all("job")]
    if not chosen:
        raise Refused("Choose the jobs first for which something is to be bought.", 422)
    surfacing = read.line("surfacing", most=120)
    try:
        at_hand = jobs_at_hand(visit, chosen, surfacing or order_words()["surfacing"])
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None
    taken = at_hand.taken(visit.typed.all("take"))
    known = {each.id: each for each in suppliers(visit.db)}
    wanted = _read(read, at_hand, taken, known, sees_cost=visit.is_owner)
    if read.faults:
        return show(visit, _page(visit, chosen, at_hand, read.form, visit.typed.all("take")), 422)

    def make() -> str:
        made = [wanted.issue(visit, at_hand, taken, supplier) for supplier in wanted.suppliers]
        for job in at_hand.jobs:
            mine = [each.piece for each in taken if each.job.id == job.id]
            keep_for(visit.db, mine, job, visit.who, visit.now)
        return f"/stock/orders/{made[0]}" if len(made) == 1 else "/stock/orders"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What the form asks for: how much of each line of whom, at what price."""

    lines: tuple[tuple[OrderNeed, Supplier, float, int | None], ...]
    needed_by: date | None
    delivery: str
    remarks: tuple[str, ...]

    @property
    def suppliers(self) -> tuple[Supplier, ...]:
        """Of whom something is bought."""
        return tuple({supplier.id: supplier for _, supplier, _, _ in self.lines}.values())

    def issue(self, visit: Visit, at_hand: JobsAtHand, taken: Sequence[RackOffer], supplier: Supplier) -> str:
        """Issues the order to one of them; gives its id."""
        mine = [(need, much, price) for need, of, much, price in self.lines if of.id == supplier.id]
        keys = {need.key for need, _, _ in mine}
        jobs = tuple(
            job for job in at_hand.jobs if any(job.id in at_hand.shares.get(key, {}) for key in keys)
        )
        rack: dict[str, tuple[tuple[str, ...], float]] = {}
        for each in taken:
            labels, feet = rack.get(each.key, ((), 0.0))
            rack[each.key] = ((*labels, each.label), feet + each.serves.order)

        def write(number: str) -> dict[str, object]:
            paper = part_of_order(
                at_hand.order,
                {need.key: much for need, much, _ in mine},
                rack,
                head=head_for(visit, jobs, number),
                supplier=supplier.name,
                needed_by=self.needed_by,
                delivery=self.delivery,
                remarks=self.remarks,
                quoted=tuple(_quoted(at_hand, mine, visit)),
                with_sundries=any(need.kind is PriceKind.CONSUMABLE for need, _, _ in mine),
            )
            return paper.model_dump(mode="json")

        lines = [_facts(need, much, price, at_hand) for need, much, price in mine]
        return issue_order(visit.db, supplier, jobs, lines, write, self.needed_by, visit.who, visit.now).id


def _quoted(
    at_hand: JobsAtHand, mine: Sequence[tuple[OrderNeed, float, int | None]], visit: Visit
) -> Iterator[str]:
    """The prices that were quoted, each with its day: the supplier is held to them."""
    for need, _, price in mine:
        row = at_hand.price_of(need)
        if row and row.on and price == row.price:
            day = f"{row.on.day} {row.on:%B %Y}"
            amount = f"{visit.shop.symbol}{row.price / 100:,.2f}"
            yield f"{words_of(need)}: {amount} for one {row.unit}, as quoted on {day}."


def _facts(need: OrderNeed, much: float, price: int | None, at_hand: JobsAtHand) -> LineFacts:
    shares = at_hand.shares.get(need.key, {})
    whole = sum(shares.values()) or 1.0
    return LineFacts(
        kind=need.kind,
        item=need.item,
        cut=need.cut,
        size=need.size,
        grade=need.grade,
        quantity=much,
        unit=need.unit,
        price_cents=price,
        shares={job: round(much * each / whole, 4) for job, each in shares.items()},
    )


def _read(
    read: Reader,
    at_hand: JobsAtHand,
    taken: Sequence[RackOffer],
    known: dict[str, Supplier],
    *,
    sees_cost: bool,
) -> Wanted:
    lines = []
    for place, need in enumerate(at_hand.needs, 1):
        supplier = read.choice(f"buy.{place}.supplier", ["", *known], default="")
        if not supplier:
            continue
        if read.typed.get(f"buy.{place}.what") != need.key:
            read.fault(
                f"buy.{place}.supplier",
                "The jobs changed while you were writing: look at this line again, then issue.",
            )
        if need.kind is PriceKind.CONSUMABLE:
            much = read.number(f"buy.{place}.quantity", least=0, most=10**6, example="2")
        else:
            much = float(read.whole(f"buy.{place}.quantity", least=0, most=10**6))
        price = _read_price(read, place, at_hand.price_of(need), sees_cost=sees_cost)
        if much > 0:
            lines.append((need, known[supplier], much, price))
    if not lines and not read.faults:
        read.fault(
            "buy.1.supplier", "Nothing is bought yet: say of whom for one line at least, and how much."
        )
    return Wanted(
        lines=tuple(lines),
        needed_by=read.day("needed_by"),
        delivery=read.line("delivery", most=200),
        remarks=tuple(line.strip() for line in read.text("remarks", most=2000).splitlines() if line.strip()),
    )


def much_words(quantity: float, need: OrderNeed) -> str:
    """How much of a line, in words: 39 bd ft, 2 quarts, 6."""
    if need.unit == "each":
        return f"{quantity:g}"
    counted = need.unit in {"sheet", "quart", "unit"} and quantity != 1
    return f"{quantity:g} {need.unit}{'s' if counted else ''}"


def _read_price(read: Reader, place: int, known: PriceRow | None, *, sees_cost: bool) -> int | None:
    """The price of a line: as the owner typed it; for a maker, who sees no cost, that of the price book."""
    if not sees_cost:
        return known.price if known else None
    name = f"buy.{place}.price"
    return read.money(name) if read.typed.get(name).strip() else None


def words_of(need: OrderNeed) -> str:
    """A line in words."""
    cut = CUTS.get(need.cut, "")
    size = f"{need.size} in" if need.kind is PriceKind.SHEET else need.size
    words = " ".join(part for part in (need.item, size, cut, need.grade) if part)
    return words[:1].upper() + words[1:]


def _page(
    visit: Visit,
    chosen: Sequence[str],
    at_hand: JobsAtHand | None,
    form: Form | None,
    taken: Sequence[str],
    trouble: str = "",
) -> NewOrderPage:
    sellers = suppliers(visit.db)
    offers = at_hand.taken(taken) if at_hand else ()
    lines = _lines(at_hand, offers, sellers) if at_hand else ()
    return NewOrderPage(
        title="New order",
        jobs=jobs_to_order_for(visit.db),
        chosen=chosen,
        offers=tuple(_offer(each, set(taken), visit) for each in at_hand.offers) if at_hand else (),
        groups=tuple(
            (title, mine)
            for kind, title in KINDS.items()
            if (mine := [line for line in lines if line.need.kind is kind])
        ),
        form=form or form_of(**(_first(at_hand, lines, offers) if at_hand else {})),
        names=NAMES | {f"buy.{line.place}.{field}": line.words for line in lines for field in FIELDS},
        has_suppliers=bool(sellers),
        fields=(("supplier", "Of whom"), ("quantity", "How many"), ("price", "Price of one"))[
            : 3 if visit.is_owner else 2
        ],
        remark="; ".join(
            f"job {job.number}: {each.remark}"
            for job, each in zip(at_hand.jobs, at_hand.at_hand, strict=True)
            if each.remark
        )
        if at_hand
        else "",
        trouble=trouble,
    )


FIELDS = ("supplier", "quantity", "price")


def _lines(
    at_hand: JobsAtHand, taken: Sequence[RackOffer], sellers: Sequence[Supplier]
) -> tuple[LineShown, ...]:
    found = []
    for place, need in enumerate(at_hand.needs, 1):
        exact, before = at_hand.exact.get(need.key), at_hand.before.get(need.key)
        mine = [each for each in taken if each.key == need.key]
        row = at_hand.price_of(need)
        found.append(
            LineShown(
                place=place,
                need=need,
                words=words_of(need),
                exact=f"{exact:.2f} bd ft, waste included" if exact is not None else "",
                before=f"{much_words(before.quantity, need)} in order {', '.join(before.orders)}"
                if before
                else "",
                from_rack=f"{sum(each.serves.order for each in mine):.2f} bd ft less: "
                f"{', '.join(each.label for each in mine)}"
                if mine
                else "",
                quoted=f"quoted {row.on.isoformat()}"
                if row and row.on
                else "from the price book"
                if row
                else "",
                choices=(
                    ("", "not now"),
                    *((each.id, each.name) for each in sellers if need.kind.value in each.kinds),
                ),
            )
        )
    return tuple(found)


def _first(at_hand: JobsAtHand, lines: Sequence[LineShown], taken: Sequence[RackOffer]) -> dict[str, str]:
    """What stands in the form before anybody typed: who sells a line, how much of it, at the known price."""
    values: dict[str, str] = {}
    for line in lines:
        much, row = at_hand.to_buy(line.need, taken), at_hand.price_of(line.need)
        start = f"buy.{line.place}"
        seller = line.choices[1][0] if len(line.choices) > 1 and much > 0 else ""
        values |= {
            f"{start}.supplier": seller,
            f"{start}.quantity": f"{much:.1f}".removesuffix(".0"),
            f"{start}.price": f"{row.price / 100:.2f}" if row else "",
        }
    return values | {"surfacing": order_words()["surfacing"]}


def _offer(each: RackOffer, taken: set[str], visit: Visit) -> OfferShown:
    piece = each.piece
    length = inches(piece.length_ticks) or 0.0
    size = f"{show_in(usable(piece), visit.unit)} × {show_in(length, visit.unit)}"
    return OfferShown(
        id=piece.id,
        label=each.label,
        words=f"{piece.material} {piece.size}, {size}{f', {piece.place}' if piece.place else ''}",
        holds=f"job {each.job.number}: {', '.join(each.serves.parts)}",
        feet=f"{each.serves.order:.2f} bd ft less to buy",
        taken=piece.id in taken,
    )
