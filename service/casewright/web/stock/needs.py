"""What some jobs take together: line by line, what was ordered of it before, and what the rack gives."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property
from typing import Any

from casewright.measure.lengths import LengthUnit, from_ticks
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Cents, Count, SquareInches
from casewright.papers.head import PaperHead
from casewright.papers.order import OrderPaper
from casewright.papers.supply_order import OrderNeed, SupplyOrderPaper, joined_order, needs_of
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.costs.priced import bought_as
from casewright.pieces.takeoff.on_hand import PieceOnHand, Serves, served_from_rack
from casewright.pricing.prices import NoPrice, PriceBook, PriceKind, PriceRow
from casewright.pricing.supplier_quotes import SupplierQuote, quote_for
from casewright.records.change_orders import LostRow, lost_in_changes
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.stock import PieceKind, StockPiece
from casewright.records.stock_lists import free_on_hand, ordered_for
from casewright.shop.figures import figures_from, figures_text
from casewright.shop.jobs import load_job, refuse_if_over
from casewright.shop.orders import order_number
from casewright.shop.papers import JobAtHand, job_at_hand
from casewright.shop.refusals import Refused
from casewright.shop.stock import label, usable
from casewright.shop.supplier_prices import quotes_in_force
from casewright.shop.waiting import change_number
from casewright.web.frame.paper_says import OrderWords, paper_of
from casewright.web.frame.visits import Visit
from casewright.web.stock.cut_up import cut_up
from casewright.wood.movement import Cut

MOST_JOBS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class RackOffer:
    """A piece on the rack that holds parts of a job.

    Attributes:
        piece: the piece
        label: its code
        job: the job
        key: the line of the order that it serves
        serves: what it gives
    """

    piece: StockPiece
    label: str
    job: Job
    key: str
    serves: Serves


@dataclass(frozen=True, slots=True, kw_only=True)
class Before:
    """What was ordered of a line before, and what was cut up of the rack for it.

    Attributes:
        quantity: how much
        orders: the numbers of the orders
        area: of sheets, that of the parts they were ordered for; 0 where nobody wrote it down [sq in]
        lost: of lumber, how much of it went into parts that changes after approval scrap
        lost_by: the numbers of those change orders
        cut: of lumber, how much was cut up of the rack for these jobs [bd ft]
        boards: the labels of those boards
    """

    quantity: float
    orders: tuple[str, ...]
    area: SquareInches = 0.0
    lost: float = 0.0
    lost_by: tuple[str, ...] = ()
    cut: float = 0.0
    boards: tuple[str, ...] = ()

    @property
    def serves(self) -> float:
        """How much of it serves still."""
        return max(0.0, self.quantity + self.cut - self.lost)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetOffer:
    """A sheet or an offcut of one on the rack that spares new sheets.

    Attributes:
        piece: the piece
        label: its code
        job: the job for which it is kept, the one with most of its area
        key: the line of the order that it serves
        jobs: the numbers of all jobs whose parts come out of it
    """

    piece: StockPiece
    label: str
    job: Job
    key: str
    jobs: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetCount:
    """How the sheets of one kind were counted.

    Attributes:
        sheets: new sheets for all parts, what is taken of the rack left out
        areas: the area of each job's parts, by its id [sq in]
        offers: what the rack holds for them
        words: how it was counted
    """

    sheets: Count
    areas: Mapping[str, SquareInches]
    offers: tuple[SheetOffer, ...]
    words: str

    def still(self, before: Before | None) -> Count:
        """How many are still to be bought, once so many parts have theirs by earlier orders."""
        area = math.fsum(self.areas.values())
        if before is None or not area:
            return self.sheets
        if not before.area:
            return max(0, self.sheets - math.floor(before.quantity + TOLERANCE))
        left = max(0.0, area - before.area)
        return 0 if left < TOLERANCE * area else math.ceil(self.sheets * left / area - TOLERANCE)


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownPrice:
    """What one of a thing is known to cost.

    Attributes:
        price: for one [cent]
        unit: what one of it is
        on: the day on which it was quoted; None where nobody wrote it down
        is_quoted: was it quoted by the supplier who is asked for? Else the price book has it.
    """

    price: Cents
    unit: str
    on: date | None
    is_quoted: bool


@dataclass(frozen=True, kw_only=True)
class JobsAtHand:
    """Some jobs worked out together.

    Attributes:
        jobs: the jobs, in the order of their numbers
        at_hand: each worked out
        order: all that they take, as one order
        shares: how much of each line each job takes, by the line's key and the job's id
        before: what was ordered before, by the line's key
        offers: what the rack holds for them
        prices: what things cost by the shop's price book
        quotes: what each supplier quotes, by its id
        sheets: how sheets were counted for all jobs together, by the line's key
    """

    jobs: tuple[Job, ...]
    at_hand: tuple[JobAtHand, ...]
    order: SupplyOrderPaper
    shares: Mapping[str, Mapping[str, float]]
    before: Mapping[str, Before]
    offers: tuple[RackOffer, ...]
    prices: PriceBook
    quotes: Mapping[str, Sequence[SupplierQuote]]
    sheets: Mapping[str, SheetCount] = field(default_factory=dict)

    @cached_property
    def needs(self) -> tuple[OrderNeed, ...]:
        """The lines, as they are bought."""
        return needs_of(self.order)

    @cached_property
    def exact(self) -> Mapping[str, float]:
        """Feet of each line of lumber before they are rounded."""
        return {need.key: line.exact_bd_ft for need, line in zip(self.needs, self.order.lumber, strict=False)}

    def taken(self, ids: Iterable[str]) -> tuple[RackOffer, ...]:
        """The offers of some pieces."""
        chosen = set(ids)
        return tuple(each for each in self.offers if each.piece.id in chosen)

    @property
    def sheet_offers(self) -> tuple[SheetOffer, ...]:
        """What the rack holds of sheets."""
        return tuple(offer for each in self.sheets.values() for offer in each.offers)

    @property
    def every_offer(self) -> tuple[RackOffer | SheetOffer, ...]:
        """What the rack holds of lumber and of sheets."""
        return (*self.offers, *self.sheet_offers)

    def sheets_taken(self, ids: Iterable[str]) -> tuple[SheetOffer, ...]:
        """The offers of some pieces of sheet."""
        chosen = set(ids)
        return tuple(each for each in self.sheet_offers if each.piece.id in chosen)

    def to_buy(self, need: OrderNeed, taken: Sequence[RackOffer]) -> float:
        """How much of a line is still to be bought: less what was ordered before, and what the rack gives."""
        if need.key in self.sheets:
            return float(self.sheets[need.key].still(self.before.get(need.key)))
        saved = math.fsum(each.serves.order for each in taken if each.key == need.key)
        whole = self.exact.get(need.key, need.quantity) - saved
        before = self.before.get(need.key)
        left = max(0.0, whole - (before.serves if before else 0.0))
        return left if need.kind is PriceKind.CONSUMABLE else float(math.ceil(left - 1e-9))

    def price_of(self, need: OrderNeed, supplier_id: str = "") -> KnownPrice | None:
        """What one of it costs: as the supplier quotes it, else by the price book; None where nobody says."""
        quote = self.quote_of(need, supplier_id)
        if quote is not None:
            return KnownPrice(price=quote.price, unit=need.unit, on=quote.on, is_quoted=True)
        row = book_price(self.prices, need)
        return KnownPrice(price=row.price, unit=row.unit, on=row.on, is_quoted=False) if row else None

    def quote_of(self, need: OrderNeed, supplier_id: str) -> SupplierQuote | None:
        """What a supplier quotes for a line, if it does."""
        return quoted_for(self.quotes.get(supplier_id, ()), need)


def book_price(prices: PriceBook, need: OrderNeed) -> PriceRow | None:
    """What the price book says of a line; None where it says nothing."""
    try:
        if need.kind is PriceKind.LUMBER:
            return prices.lumber(need.item, bought_as(need.size, Cut(need.cut)))
        return prices.find(need.kind, need.item, need.size)
    except NoPrice:
        return None


def quoted_for(quotes: Iterable[SupplierQuote], need: OrderNeed) -> SupplierQuote | None:
    """Which of a supplier's quotes holds for a line."""
    return quote_for(quotes, need.kind, need.item, cut=need.cut, size=need.size, grade=need.grade)


def price_book(visit: Visit) -> PriceBook:
    """The shop's own price book."""
    return figures_from(figures_text(visit.db, visit.shop)).prices


def jobs_at_hand(visit: Visit, job_ids: Iterable[str], surfacing: str = "") -> JobsAtHand:
    """Some jobs worked out together.

    Raises:
        NotFound: the shop has no such job
        Refused: a job is over, or too many are named
        CannotBuild, CannotGraduate …: a job cannot be worked out
    """
    ids = tuple(dict.fromkeys(job_ids))
    if len(ids) > MOST_JOBS:
        raise Refused(f"One order serves {MOST_JOBS} jobs at most; write two.", 422)
    jobs = tuple(sorted((load_job(visit.db, each) for each in ids), key=lambda job: job.number))
    for job in jobs:
        refuse_if_over(job, "order for it")
    at_hand = tuple(job_at_hand(visit.db, visit.shop, job, visit.today) for job in jobs)
    papers = []
    for job, each in zip(jobs, at_hand, strict=True):
        papers.append((job, _paper(head_for(visit, (job,)), each.estimate, surfacing)))
    order = joined_order(head_for(visit, jobs), [(str(job.number), paper) for job, paper in papers])
    shares: dict[str, dict[str, float]] = {}
    for job, paper in papers:
        feet = {need.key: line.exact_bd_ft for need, line in zip(needs_of(paper), paper.lumber, strict=False)}
        for need in needs_of(paper):
            shares.setdefault(need.key, {})[job.id] = feet.get(need.key, need.quantity)
    return JobsAtHand(
        jobs=jobs,
        at_hand=at_hand,
        order=order,
        shares=shares,
        before=_before(visit, ids, needs_of(order), shares),
        offers=_offers(visit, jobs, at_hand),
        prices=price_book(visit),
        quotes={of: tuple(held.values()) for of, held in quotes_in_force(visit.db).items()},
    )


def _paper(head: PaperHead, estimate: JobEstimate, surfacing: str) -> OrderPaper:
    paper = paper_of(PaperKind.LUMBER_ORDER, head, estimate, OrderWords(surfacing=surfacing))
    if not isinstance(paper, OrderPaper):
        raise TypeError("the paper of a lumber order is an order")
    return paper


def head_for(visit: Visit, jobs: Sequence[Job], number: str = "") -> PaperHead:
    """The head of an order: its number and those of its jobs, and no customer."""
    return PaperHead(
        shop=visit.shop.name,
        number=number,
        job_number=", ".join(str(job.number) for job in jobs),
        job_name="",
        issued_on=visit.today if number else None,
        unit=LengthUnit(visit.shop.unit),
    )


def _before(
    visit: Visit, ids: Sequence[str], needs: Iterable[OrderNeed], taken: Mapping[str, Mapping[str, float]]
) -> dict[str, Before]:
    """What earlier orders have for these jobs, of one for others their share; and what was cut up."""
    found: dict[str, Before] = {}
    changes = lost_in_changes(visit.db, ids)
    by_key = {each.key: each for each in needs}
    for line, number, issued_at in ordered_for(visit.db, ids):
        shares, areas = ({**line.detail.get(name, {})} for name in ("shares", "areas"))
        mine = math.fsum(shares.get(each, 0.0) for each in ids)
        if mine:
            key = "/".join((line.kind, line.item, line.cut, line.size, line.grade))
            earlier = found.get(key, Before(quantity=0.0, orders=()))
            spent = {each.number: each for each in changes if each.agreed_at > issued_at}
            found[key] = Before(
                quantity=earlier.quantity + mine,
                orders=tuple(dict.fromkeys((*earlier.orders, order_number(number)))),
                area=earlier.area + math.fsum(areas.get(each, 0.0) for each in ids),
                **_lost((line.item, line.cut, line.size), spent.values(), earlier),
            )
    for key, cut in cut_up(visit.db, ids, taken).items():
        earlier = found.get(key, Before(quantity=0.0, orders=()))
        spent = {each.number: each for each in changes if each.agreed_at > cut.at}
        need = by_key[key]
        lost = _lost((need.item, need.cut, need.size), spent.values(), earlier)
        found[key] = replace(earlier, cut=cut.feet, boards=cut.boards, **lost)
    return found


def _lost(sort: tuple[str, str, str], changes: Iterable[LostRow], earlier: Before) -> dict[str, Any]:
    """What later changes took of a line: counted once, however many orders have that line."""
    of_line = {
        change_number(change.number): math.fsum(
            each["feet"] for each in change.lost or () if sort == (each["wood"], each["cut"], each["size"])
        )
        for change in changes
    }
    fresh = {name: feet for name, feet in of_line.items() if feet and name not in earlier.lost_by}
    return {"lost": earlier.lost + math.fsum(fresh.values()), "lost_by": (*earlier.lost_by, *fresh)}


def _offers(visit: Visit, jobs: Sequence[Job], at_hand: Sequence[JobAtHand]) -> tuple[RackOffer, ...]:
    """What the rack holds for each job, in the order of their numbers; no piece is offered twice."""
    woods = {line.wood for each in at_hand for line in each.estimate.order}
    free = {
        piece.id: piece for piece in free_on_hand(visit.db, woods, [job.id for job in jobs], is_sheet=False)
    }
    found = []
    for job, each in zip(jobs, at_hand, strict=True):
        figures = figures_from(each.figures_text)
        for line in each.estimate.order:
            fit = [
                PieceOnHand(
                    id=piece.id,
                    width=usable(piece),
                    length=from_ticks(piece.length_ticks),
                    is_offcut=piece.kind is PieceKind.OFFCUT,
                )
                for piece in free.values()
                if (piece.material, piece.size) == (line.wood, line.bought.name)
                and piece.cut in {"", line.cut.value}
                and not piece.defects
                and piece.for_job in {None, job.id}
            ]
            key = "/".join(("lumber", line.wood, line.cut.value, line.bought.name, line.grade.value))
            for serves in served_from_rack(line, fit, figures):
                piece = free.pop(serves.piece.id)
                found.append(RackOffer(piece=piece, label=label(piece), job=job, key=key, serves=serves))
    return tuple(found)
