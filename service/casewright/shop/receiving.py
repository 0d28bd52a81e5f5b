"""Receiving: a delivery is begun, tallied piece by piece, billed, claimed for, and ended."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from casewright.measure.lengths import from_ticks
from casewright.measure.saying import Words
from casewright.pricing.usable import claim, cost_of_each
from casewright.records.base import new_id
from casewright.records.sessions import Fenced
from casewright.records.stock import (
    Delivery,
    OrderLine,
    OrderState,
    PieceKind,
    PieceState,
    StockPiece,
    Supplier,
    SupplyOrder,
)
from casewright.records.stock_lists import delivery_with_supplier, jobs_of_orders
from casewright.shop.keeping import next_number, note_history
from casewright.shop.refusals import NotFound, Refused, Stale
from casewright.shop.stock import (
    PieceFacts,
    StockSort,
    feet_of,
    inches,
    label,
    make_piece,
    note_event,
    sort_of,
)
from casewright.wood.arrival import faults_on_arrival, tally_difference
from casewright.wood.tally import Tally, YardBoard, tally
from casewright.wood.thickness import class_named

COUNTER = "delivery"
LUMBER = "lumber"


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedDelivery:
    """A delivery, who sent it, and the order that it is for."""

    delivery: Delivery
    supplier: Supplier
    order: SupplyOrder | None

    @property
    def number(self) -> str:
        """Its number as people write it."""
        return f"D-{self.delivery.number:04d}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Billed:
    """What was billed for one line: feet or pieces, and the amount.

    Attributes:
        quantity: feet, or pieces
        cents: what they cost together [cent]
    """

    quantity: float
    cents: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimLine:
    """One line of a claim: what was ordered, billed and received.

    Attributes:
        key: by what the line is known
        words: what it is
        unit: feet or pieces
        ordered: how much was ordered; None for what nobody did
        billed: how much was billed; None where no bill was written down
        received: how much came and stays, counted as the yard counts
        exact: the same, exact feet; pieces for what is not lumber
        short: billed less received, as a share of what was billed
        price_cents: what one of it was billed at [cent]
        claim_cents: what to ask back [cent]
        faults: what is wrong with which piece, and stays or went back
        sent_back: labels of what went back
    """

    key: str
    words: str
    unit: str
    ordered: float | None
    billed: float | None
    received: float
    exact: float
    short: float
    price_cents: int | None
    claim_cents: int
    faults: tuple[tuple[str, Words], ...]
    sent_back: tuple[str, ...]

    @property
    def missing(self) -> float:
        """How much was billed and did not come, in its unit."""
        return max(0.0, (self.billed or 0.0) - self.received)


def load_delivery(db: Fenced, delivery_id: str) -> LoadedDelivery:
    """A delivery of the shop; one query.

    Raises:
        NotFound: the shop has no such delivery
    """
    found = delivery_with_supplier(db, delivery_id)
    if found is None:
        raise NotFound("delivery")
    return LoadedDelivery(delivery=found[0], supplier=found[1], order=found[2])


def begin_delivery(
    db: Fenced, supplier: Supplier, order: SupplyOrder | None, arrived_on: date, who: str, now: datetime
) -> Delivery:
    """Begins to receive what a supplier sent, for an order or without one.

    Raises:
        Refused: the order went to another supplier, or was called off
    """
    if order and order.supplier_id != supplier.id:
        raise Refused("This order went to another supplier; begin without an order.", 422)
    if order and order.state is OrderState.CALLED_OFF:
        raise Refused("This order was called off; begin without an order.", 422)
    made = Delivery(
        id=new_id(),
        number=next_number(db, COUNTER),
        supplier_id=supplier.id,
        order_id=order.id if order else None,
        arrived_on=arrived_on,
        bill={},
        created_at=now,
        who=who,
        demo=bool(order and order.demo),
    )
    db.add(made)
    note_history(
        db, who, now, f"Began delivery D-{made.number:04d} of {supplier.name}.", job_id=_job_of(db, order)
    )
    return made


def _job_of(db: Fenced, order: SupplyOrder | None) -> str | None:
    """The job in whose history a delivery stands: that of its order, where it is for one alone."""
    jobs = jobs_of_orders(db, [order.id]).get(order.id, []) if order else []
    return jobs[0].id if len(jobs) == 1 else None


def tally_piece(
    db: Fenced, loaded: LoadedDelivery, sort: StockSort, facts: PieceFacts, tap: str, who: str, now: datetime
) -> StockPiece:
    """Tallies a board or a sheet; a tap that is sent twice is one piece.

    Raises:
        Refused: the tally was ended
    """
    refuse_if_ended(loaded.delivery)
    kind = PieceKind.SHEET if sort.is_sheet else PieceKind.BOARD
    delivery = loaded.delivery
    return make_piece(db, kind, sort, facts, tap, who, now, delivery_id=delivery.id, demo=delivery.demo)


def take_back(db: Fenced, loaded: LoadedDelivery, piece: StockPiece, who: str, now: datetime) -> None:
    """Takes a tap back: the piece was not there, or was measured wrongly.

    Raises:
        NotFound: the piece is of another delivery
        Refused: the tally was ended, or the piece is not on the rack any more
    """
    if piece.delivery_id != loaded.delivery.id:
        raise NotFound("piece of stock")
    refuse_if_ended(loaded.delivery)
    if piece.state is PieceState.TAKEN_BACK:
        return
    if piece.state is not PieceState.STOCK:
        raise Refused(
            f"{label(piece)} is {piece.state.value}; release it before it is taken out of the tally."
        )
    piece.state = PieceState.TAKEN_BACK
    note_event(db, piece, "taken back", {}, who, now)


def refuse_if_ended(delivery: Delivery) -> None:
    """Lets nothing be tallied in a delivery that was ended.

    Raises:
        Refused: it was ended
    """
    if delivery.ended_at:
        raise Refused("The tally of this delivery was ended; open it again to go on.")


def end_delivery(
    db: Fenced, loaded: LoadedDelivery, who: str, now: datetime, *, all_here: bool, back: bool = False
) -> None:
    """Ends a tally, or opens it again; where nothing more will come, the order is here.

    Args:
        db: the session
        loaded: the delivery
        who: who ends it
        now: the moment
        all_here: whether nothing more will come for the order
        back: opens it again
    """
    loaded.delivery.ended_at = None if back else now
    order = loaded.order
    if order and not back and all_here and order.state is OrderState.OPEN:
        order.state, order.moved_at = OrderState.HERE, now
    did = "Opened" if back else "Ended"
    note_history(db, who, now, f"{did} the tally of delivery {loaded.number}.", job_id=_job_of(db, order))


def line_key(material: str, cut: str, size: str, grade: str) -> str:
    """By what lumber and sheets of one sort are known in a bill and a claim."""
    return "/".join((material, cut, size, grade))


def key_of(piece: StockPiece) -> str:
    """The line of a bill that a piece belongs to."""
    return line_key(piece.material, piece.cut, piece.size, piece.grade)


def bill_of(delivery: Delivery) -> dict[str, Billed]:
    """What was billed, by line."""
    return {
        key: Billed(quantity=float(row["quantity"]), cents=int(row["cents"]))
        for key, row in delivery.bill.get("lines", {}).items()
    }


def write_bill(
    db: Fenced,
    loaded: LoadedDelivery,
    pieces: Sequence[StockPiece],
    lines: Mapping[str, Billed],
    bill_number: str,
    version: int,
    who: str,
    now: datetime,
    *,
    got_cents: int | None = None,
) -> None:
    """Writes down what was billed, and divides each line over its pieces by their feet.

    Args:
        db: the session
        loaded: the delivery
        pieces: what was tallied
        lines: what was billed, by line
        bill_number: the number of the bill
        version: the version that the form shows
        who: who writes
        now: the moment
        got_cents: what the supplier gave back, once it is known [cent]

    Raises:
        Stale: somebody else wrote since
    """
    delivery = loaded.delivery
    if delivery.version != version:
        raise Stale({})
    held: dict[str, Any] = {
        "lines": {key: {"quantity": row.quantity, "cents": row.cents} for key, row in lines.items()}
    }
    if got_cents is not None:
        held["got_cents"] = got_cents
    delivery.bill, delivery.bill_number = held, bill_number
    for key, row in lines.items():
        mine = [each for each in pieces if key_of(each) == key and each.state is not PieceState.SENT_BACK]
        weights = tuple(1.0 if each.is_sheet else feet_of(each) for each in mine)
        for piece, cents in zip(mine, cost_of_each(row.cents, weights), strict=True):
            piece.cost_cents = cents
    note_history(
        db, who, now, f"Wrote down the bill of delivery {loaded.number}.", job_id=_job_of(db, loaded.order)
    )


def tallies_of(pieces: Sequence[StockPiece]) -> dict[str, Tally]:
    """The lumber of a delivery, counted line by line as a yard counts it, in the order of the tally."""
    by_line: dict[str, list[StockPiece]] = {}
    for piece in pieces:
        if not piece.is_sheet:
            by_line.setdefault(key_of(piece), []).append(piece)
    return {
        key: tally(
            class_named(mine[0].size).rough,
            (
                YardBoard(
                    width=from_ticks(each.width_ticks), length=from_ticks(each.length_ticks), mark=label(each)
                )
                for each in mine
            ),
        )
        for key, mine in by_line.items()
    }


def claim_lines(
    delivery: Delivery, ordered: Sequence[OrderLine], pieces: Sequence[StockPiece]
) -> tuple[ClaimLine, ...]:
    """What was ordered, billed and received, line by line.

    Args:
        delivery: the delivery
        ordered: lines of its order; none where it had none
        pieces: what was tallied

    Returns:
        A line for each sort of lumber and sheet that was ordered, billed or received.
    """
    lines = {
        line_key(each.item, each.cut, each.size, each.grade): each
        for each in ordered
        if each.kind in {LUMBER, "sheet"}
    }
    billed = bill_of(delivery)
    staying = [each for each in pieces if each.state is not PieceState.SENT_BACK]
    counted = tallies_of(staying)
    sorts = {key_of(each): sort_of(each) for each in pieces}
    found = []
    for key in dict.fromkeys((*lines, *billed, *sorts)):
        mine = [each for each in pieces if key_of(each) == key]
        here = [each for each in mine if each.state is not PieceState.SENT_BACK]
        row, line = billed.get(key), lines.get(key)
        lumber = key in counted or bool(line and line.kind == LUMBER) or _is_lumber(key, sorts)
        received = float(counted[key].feet if key in counted else 0 if lumber else len(here))
        price = _price(row, line)
        found.append(
            ClaimLine(
                key=key,
                words=" ".join(part for part in key.split("/", 1)[0:1] + _rest(key) if part),
                unit="bd ft" if lumber else "sheet",
                ordered=line.quantity if line else None,
                billed=row.quantity if row else None,
                received=received,
                exact=sum(map(feet_of, here)) if lumber else received,
                short=tally_difference(row.quantity, received) if row else 0.0,
                price_cents=price,
                claim_cents=claim(price, row.quantity, received) if row and price is not None else 0,
                faults=tuple((label(each), said) for each in mine for said in faults_of(each)),
                sent_back=tuple(label(each) for each in mine if each.state is PieceState.SENT_BACK),
            )
        )
    return tuple(found)


def _rest(key: str) -> list[str]:
    """Class, cut and grade of a line, in the order in which they are said."""
    _, cut, *size, grade = key.split("/")
    return ["/".join(size), "" if cut == "flat" else cut, grade]


def _is_lumber(key: str, sorts: Mapping[str, StockSort]) -> bool:
    return key in sorts and not sorts[key].is_sheet


def _price(row: Billed | None, line: OrderLine | None) -> int | None:
    if row and row.quantity:
        return round(row.cents / row.quantity)
    return line.price_cents if line else None


def faults_of(piece: StockPiece) -> tuple[Words, ...]:
    """What is wrong with a board, as the order says what goes back."""
    if piece.is_sheet:
        return ()
    return faults_on_arrival(class_named(piece.size), inches(piece.thickness_ticks), piece.moisture)
