"""What the form of a new order asks for, and the orders that come of it: one for each supplier."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from casewright.measure.units import Cents
from casewright.papers.supply_order import OrderNeed, part_of_order
from casewright.pricing.prices import PriceKind
from casewright.records.stock import OrderLine, Supplier
from casewright.shop.orders import LineFacts, issue_order
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Visit
from casewright.web.stock.needs import JobsAtHand, RackOffer, head_for
from casewright.web.stock.sorts import CUTS

KINDS = {
    PriceKind.LUMBER: "Lumber",
    PriceKind.SHEET: "Sheets",
    PriceKind.HARDWARE: "Hardware",
    PriceKind.FINISH: "Finish",
    PriceKind.CONSUMABLE: "Sundries",
}
FIELDS = ("supplier", "quantity", "price")


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
                quoted=tuple(_quoted(at_hand, mine, supplier, visit)),
                with_sundries=any(need.kind is PriceKind.CONSUMABLE for need, _, _ in mine),
            )
            return paper.model_dump(mode="json")

        lines = [_facts(need, much, price, at_hand) for need, much, price in mine]
        return issue_order(visit.db, supplier, jobs, lines, write, self.needed_by, visit.who, visit.now).id


def _quoted(
    at_hand: JobsAtHand,
    mine: Sequence[tuple[OrderNeed, float, int | None]],
    supplier: Supplier,
    visit: Visit,
) -> Iterator[str]:
    """The prices that this supplier quoted, each with its day: it is held to them."""
    for need, _, price in mine:
        known = at_hand.price_of(need, supplier.id)
        if known and known.is_quoted and known.on and price == known.price:
            day = f"{known.on.day} {known.on:%B %Y}"
            amount = f"{visit.shop.symbol}{known.price / 100:,.2f}"
            yield f"{words_of(need)}: {amount} for one {known.unit}, as quoted on {day}."


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
        areas=at_hand.sheets[need.key].areas if need.key in at_hand.sheets else {},
        needs=shares,
    )


def read_wanted(
    read: Reader,
    at_hand: JobsAtHand,
    taken: Sequence[RackOffer],
    known: dict[str, Supplier],
    *,
    sees_cost: bool,
) -> Wanted:
    """What the form asks for, read line by line.

    Args:
        read: the form
        at_hand: what the jobs take
        taken: what the rack gives
        known: the suppliers by their ids
        sees_cost: may whoever asks see what things cost?
    """
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
        price = _read_price(read, place, need, at_hand, supplier, sees_cost=sees_cost)
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


def _read_price(
    read: Reader, place: int, need: OrderNeed, at_hand: JobsAtHand, supplier: str, *, sees_cost: bool
) -> Cents | None:
    """The price of a line: as the owner typed it, else as it is known of this supplier.

    What stands in the field was filled in for the supplier who was proposed. Where another was chosen and
    the price left as it was, it is the price of the one who was chosen. A maker sees no cost.
    """
    known, name = at_hand.price_of(need, supplier), f"buy.{place}.price"
    typed = read.typed.get(name).strip()
    proposed, _, filled = read.typed.get(f"buy.{place}.filled").partition(" ")
    if not sees_cost or not typed or (supplier != proposed and typed == filled):
        return known.price if known else None
    return read.money(name)


def words_of(need: OrderNeed) -> str:
    """A line in words."""
    cut = CUTS.get(need.cut, "")
    size = f"{need.size} in" if need.kind is PriceKind.SHEET else need.size
    words = " ".join(part for part in (need.item, size, cut, need.grade) if part)
    return words[:1].upper() + words[1:]


def need_of(line: OrderLine) -> OrderNeed:
    """A line of an order as it is bought."""
    return OrderNeed(
        kind=PriceKind(line.kind),
        item=line.item,
        cut=line.cut,
        size=line.size,
        grade=line.grade,
        quantity=line.quantity,
        unit=line.unit,
    )
