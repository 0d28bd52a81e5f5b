"""The demo at the yard: an order, what came of it board by board, and what of it was cut up."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import select

from casewright.pricing.prices import PriceKind
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.papers import PaperKind
from casewright.records.stock import StockPiece, Supplier, SupplierPrice, SupplyOrder
from casewright.records.stock_lists import lines_of_order, pieces_of_delivery
from casewright.shop.demo.scene import Act, Scene
from casewright.shop.orders import LineFacts, issue_order
from casewright.shop.papers import Issue, job_at_hand
from casewright.shop.receiving import (
    Billed,
    begin_delivery,
    end_delivery,
    key_of,
    load_delivery,
    tally_piece,
    write_bill,
)
from casewright.shop.stock import PieceFacts, StockSort, move_piece

OTHERS = ("sheets", "hardware", "finishes", "consumables")
"""What an order of lumber leaves out."""


def supplier_of_demo(scene: Scene, held: Mapping[str, Any]) -> Supplier:
    """The demo's yard with what it quotes. No sentence in the shop's history tells of it."""
    made = Supplier(id=new_id(), created_at=scene.moment(held["acts"][0]), demo=True, **held["supplier"])
    scene.db.add(made)
    scene.db.flush()
    for quote in held["quotes"]:
        scene.db.add(
            SupplierPrice(
                id=new_id(),
                supplier_id=made.id,
                kind=PriceKind.LUMBER.value,
                item=quote["item"],
                cut="",
                size=quote["size"],
                grade=quote["grade"],
                price_cents=quote["price_cents"],
                quoted_on=scene.day(quote["day"]),
                at=scene.moment(quote),
                who=scene.who,
            )
        )
    scene.db.flush()
    return made


def buy(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """Orders the lumber of one wood for a job, as its paper has it, at the prices that the yard quotes."""
    supplier = scene.db.scalars(select(Supplier).where(Supplier.demo.is_(True))).one()
    quotes = {
        (each.item, each.size): each.price_cents
        for each in scene.db.scalars(select(SupplierPrice).where(SupplierPrice.supplier_id == supplier.id))
    }
    needed = scene.day(act["needed"])
    words = {
        **act,
        "kind": PaperKind.LUMBER_ORDER.value,
        "supplier": supplier.name,
        "needed_by": needed,
    }
    at_hand = job_at_hand(scene.db, scene.shop, job, now.date())
    write = scene.paper(scene.shop, job, at_hand, now.date(), words)

    def content(number: str) -> dict[str, Any]:
        whole = write(Issue(number=number, revision=1, supersedes=None)).content
        wanted = [line for line in whole["lumber"] if line["wood"] == act["wood"]]
        return {**whole, "lumber": wanted, **{name: [] for name in OTHERS}}

    lines = [
        LineFacts(
            kind=PriceKind.LUMBER,
            item=line["wood"],
            cut=line["cut"],
            size=line["bought"],
            grade=line["grade"],
            quantity=float(line["feet_bd_ft"]),
            unit="bd ft",
            price_cents=quotes.get((line["wood"], line["bought"])),
            shares={job.id: float(line["feet_bd_ft"])},
            needs={job.id: line["exact_bd_ft"]},
        )
        for line in content("")["lumber"]
    ]
    issue_order(scene.db, supplier, [job], lines, content, needed, scene.who, now)


def receive(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """Tallies what came of the order, writes its bill down, and says that all of it is here."""
    order = scene.db.scalars(select(SupplyOrder).where(SupplyOrder.demo.is_(True))).one()
    supplier = scene.db.get_one(Supplier, (scene.db.shop_id, order.supplier_id))
    begun = begin_delivery(scene.db, supplier, order, now.date(), scene.who, now)
    scene.db.flush()
    loaded = load_delivery(scene.db, begun.id)
    lines = {each.size: each for each in lines_of_order(scene.db, order.id)}
    for place, board in enumerate(act["boards"], 1):
        line = lines[board["size"]]
        sort = StockSort(material=line.item, cut=line.cut, size=line.size, grade=line.grade)
        facts = PieceFacts(**{name: value for name, value in board.items() if name != "size"})
        tally_piece(scene.db, loaded, sort, facts, f"demo-{begun.id}-{place}", scene.bench, now)
    pieces = pieces_of_delivery(scene.db, begun.id)
    # The yard counted a foot more than was ordered: the claim sheet sets it against the tally.
    feet = {key_of(piece): lines[piece.size].quantity + act["billed_more"] for piece in pieces}
    prices = {key_of(piece): lines[piece.size].price_cents or 0 for piece in pieces}
    billed = {key: Billed(quantity=much, cents=round(much * prices[key])) for key, much in feet.items()}
    write_bill(scene.db, loaded, pieces, billed, act["bill_number"], loaded.delivery.version, scene.who, now)
    end_delivery(scene.db, loaded, scene.who, now, all_here=True)


def cut_up(scene: Scene, job: Job, act: Act, now: datetime) -> None:
    """Cuts some of the boards up for the job, in the order in which they were tallied."""
    pieces = scene.db.scalars(
        select(StockPiece)
        .where(StockPiece.demo.is_(True), StockPiece.delivery_id.is_not(None))
        .order_by(StockPiece.number)
    ).all()
    for place in act["boards"]:
        move_piece(scene.db, pieces[place - 1], "use", job, scene.bench, now)
