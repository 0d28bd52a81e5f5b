"""A new order: for which jobs, what the rack gives, what is bought of whom; one order for each supplier."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import show_in
from casewright.measure.saying import refusal
from casewright.papers.order_pdf import order_words
from casewright.papers.supply_order import OrderNeed
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.words.wording import joined
from casewright.pricing.prices import PriceKind
from casewright.records.stock import Supplier
from casewright.records.stock_lists import JobRow, jobs_to_order_for, suppliers
from casewright.shop.keeping import once
from casewright.shop.refusals import Refused
from casewright.shop.stock import inches, keep_for, usable
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.stock.needs import Before, JobsAtHand, KnownPrice, RackOffer, SheetOffer, jobs_at_hand
from casewright.web.stock.sheet_needs import with_sheets
from casewright.web.stock.wanted import FIELDS, KINDS, much_words, read_wanted, words_of

router = APIRouter()
NAMES = {
    "needed_by": "Needed by",
    "delivery": "Delivery",
    "surfacing": "Surfacing",
    "remarks": "What else they should know",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class LineShown:
    """One line that may be bought.

    Attributes:
        place: by what its fields are named
        need: what it is
        words: how it is called
        exact: feet before rounding, or how sheets were counted, in words
        before: what was ordered of it before, in words
        from_rack: what the rack gives of it, in words
        quoted: since when the price holds, in words
        filled: for whom the price was filled in, and how much it was, as the form sends it back
        others: what suppliers quote for it, in words
        choices: the suppliers who sell it
    """

    place: int
    need: OrderNeed
    words: str
    exact: str
    before: str
    from_rack: str
    quoted: str
    filled: str
    others: Sequence[str]
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
    ticked = asked.getlist("take") if asked.get("asked") else None
    if at_hand is None:
        return show(visit, _page(visit, chosen, None, None, ()))
    at_hand = with_sheets(visit, at_hand, ticked)
    every = [each.piece.id for each in at_hand.every_offer]
    return show(visit, _page(visit, chosen, at_hand, None, every if ticked is None else ticked))


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
    at_hand = with_sheets(visit, at_hand, visit.typed.all("take"))
    taken = at_hand.taken(visit.typed.all("take"))
    known = {each.id: each for each in suppliers(visit.db)}
    wanted = read_wanted(read, at_hand, taken, known, sees_cost=visit.is_owner)
    if read.faults:
        return show(visit, _page(visit, chosen, at_hand, read.form, visit.typed.all("take")), 422)

    def make() -> str:
        made = [wanted.issue(visit, at_hand, taken, supplier) for supplier in wanted.suppliers]
        for job in at_hand.jobs:
            ticked = set(visit.typed.all("take"))
            kept = [each for each in at_hand.every_offer if each.piece.id in ticked]
            mine = [each.piece for each in kept if each.job.id == job.id]
            keep_for(visit.db, mine, job, visit.who, visit.now)
        return f"/stock/orders/{made[0]}" if len(made) == 1 else "/stock/orders"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


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
    lines = _lines(at_hand, taken, sellers, visit.shop.symbol) if at_hand else ()
    return NewOrderPage(
        title="New order",
        jobs=jobs_to_order_for(visit.db),
        chosen=chosen,
        offers=tuple(_offer(each, set(taken), visit) for each in at_hand.every_offer) if at_hand else (),
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


def _before_words(before: Before, need: OrderNeed) -> str:
    """What was ordered of a line or cut up for it before, and what of that changes after approval scrap."""
    had = []
    if before.orders:
        had.append(f"Ordered before: {much_words(before.quantity, need)} in order {', '.join(before.orders)}")
    if before.boards:
        had.append(f"Cut up for it: {before.cut:.2f} bd ft of {', '.join(before.boards)}")
    lost = before.quantity + before.cut - before.serves
    if lost:
        gone = much_words(round(lost, 2), need)
        had.append(f"{gone} of it went into parts that {joined(before.lost_by)} scraps")
    return "; ".join(had)


def _lines(
    at_hand: JobsAtHand, ids: Sequence[str], sellers: Sequence[Supplier], symbol: str
) -> tuple[LineShown, ...]:
    found, offers = [], at_hand.taken(ids)
    for place, need in enumerate(at_hand.needs, 1):
        exact, before = at_hand.exact.get(need.key), at_hand.before.get(need.key)
        mine = [each for each in offers if each.key == need.key]
        selling = [each for each in sellers if need.kind.value in each.kinds]
        proposed = selling[0].id if selling and at_hand.to_buy(need, offers) > 0 else ""
        known = at_hand.price_of(need, proposed)
        found.append(
            LineShown(
                place=place,
                need=need,
                words=words_of(need),
                exact=_counted(at_hand, need, exact),
                before=_before_words(before, need) if before else "",
                from_rack=f"{sum(each.serves.order for each in mine):.2f} bd ft less: "
                f"{', '.join(each.label for each in mine)}"
                if mine
                else ", ".join(each.label for each in at_hand.sheets_taken(ids) if each.key == need.key),
                quoted=_quoted_words(known),
                filled=f"{proposed} {_typed(known)}",
                others=tuple(_others(at_hand, need, selling, symbol)),
                choices=(("", "not now"), *((each.id, each.name) for each in selling)),
            )
        )
    return tuple(found)


def _counted(at_hand: JobsAtHand, need: OrderNeed, exact: float | None) -> str:
    """How much of it was counted, and how."""
    if exact is not None:
        return f"{exact:.2f} bd ft, waste included"
    if need.kind is not PriceKind.SHEET:
        return ""
    counted = at_hand.sheets.get(need.key)
    return counted.words if counted else "by area, job by job, not laid out"


def _quoted_words(known: KnownPrice | None) -> str:
    if known is None:
        return ""
    if known.is_quoted:
        return f"quoted {known.on.isoformat()}" if known.on else "quoted"
    return f"price book, {known.on.isoformat()}" if known.on else "price book"


def _others(at_hand: JobsAtHand, need: OrderNeed, selling: Sequence[Supplier], symbol: str) -> Iterator[str]:
    """What each supplier who sells it quotes, where there are several to choose from."""
    for each in selling if len(selling) > 1 else ():
        quote = at_hand.quote_of(need, each.id)
        if quote is not None:
            yield f"{each.name} {symbol}{quote.price / 100:,.2f}"


def _typed(known: KnownPrice | None) -> str:
    return f"{known.price / 100:.2f}" if known else ""


def _first(at_hand: JobsAtHand, lines: Sequence[LineShown], taken: Sequence[RackOffer]) -> dict[str, str]:
    """What stands in the form before anybody typed: who sells a line, how much of it, at the known price."""
    values: dict[str, str] = {}
    for line in lines:
        seller, _, price = line.filled.partition(" ")
        start = f"buy.{line.place}"
        values |= {
            f"{start}.supplier": seller,
            f"{start}.quantity": f"{at_hand.to_buy(line.need, taken):.1f}".removesuffix(".0"),
            f"{start}.price": price,
            f"{start}.filled": line.filled,
        }
    return values | {"surfacing": order_words()["surfacing"]}


def _offer(each: RackOffer | SheetOffer, taken: set[str], visit: Visit) -> OfferShown:
    piece = each.piece
    length = inches(piece.length_ticks) or 0.0
    size = f"{show_in(usable(piece), visit.unit)} × {show_in(length, visit.unit)}"
    return OfferShown(
        id=piece.id,
        label=each.label,
        words=f"{piece.material} {piece.size}, {size}{f', {piece.place}' if piece.place else ''}",
        holds=_holds(each),
        feet="spares new sheets"
        if isinstance(each, SheetOffer)
        else f"{each.serves.order:.2f} bd ft less to buy",
        taken=piece.id in taken,
    )


def _holds(each: RackOffer | SheetOffer) -> str:
    """For whom a piece is, in words."""
    if isinstance(each, RackOffer):
        return f"job {each.job.number}: {', '.join(each.serves.parts)}"
    return f"parts of job{'s' if len(each.jobs) > 1 else ''} {', '.join(map(str, each.jobs))}"
