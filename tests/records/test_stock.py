"""Orders, deliveries and the rack in the books, on both databases: what lasts, counts once, or goes."""

from datetime import date

import pytest
from sqlalchemy import Engine, func, select, text, update
from sqlalchemy.exc import DBAPIError

from casewright.pricing.prices import PriceKind
from casewright.pricing.supplier_quotes import SupplierQuote
from casewright.records.base import new_id
from casewright.records.jobs import Customer, Job
from casewright.records.sessions import NoShop, reading, writing
from casewright.records.stock import (
    Delivery,
    OrderJob,
    OrderLine,
    OrderState,
    PieceState,
    StockEvent,
    StockPiece,
    SupplyOrder,
)
from casewright.records.stock_lists import ordered_for, rack
from casewright.shop.demo.removal import remove_demo_rows
from casewright.shop.orders import LineFacts, issue_order, move_order
from casewright.shop.receiving import (
    Billed,
    begin_delivery,
    claim_lines,
    key_of,
    load_delivery,
    take_back,
    tally_piece,
    write_bill,
)
from casewright.shop.refusals import Refused, Stale
from casewright.shop.stock import PieceFacts, StockSort, label, label_offcut, move_piece
from casewright.shop.supplier_prices import note_quote
from casewright.shop.suppliers import SupplierFacts, add_supplier
from people import Clock, ShopInTest, new_shop

NOW = Clock().now
CHERRY = StockSort(material="cherry", size="4/4", cut="flat", grade="FAS")
LINE = LineFacts(
    kind=PriceKind.LUMBER, item="cherry", cut="flat", size="4/4", grade="FAS", quantity=40, unit="bd ft"
)


@pytest.fixture
def shop(books: Engine) -> ShopInTest:
    return new_shop(None, books, Clock())


def job_in(db, number=1, demo=False):
    customer = Customer(id=new_id(), name="Ida Lund", created_at=NOW, demo=demo)
    db.add(customer)
    db.flush()
    made = Job(
        id=new_id(),
        number=number,
        name="Chest",
        customer_id=customer.id,
        created_at=NOW,
        moved_at=NOW,
        demo=demo,
    )
    db.add(made)
    db.flush()
    return made


def bought(db, job, price=950):
    """An order of a job, and a delivery of one board for it."""
    yard = add_supplier(db, SupplierFacts(name="Yard", kinds=(PriceKind.LUMBER,)), "Ada", NOW)
    db.flush()
    lines = [LineFacts(**{name: getattr(LINE, name) for name in LINE.__slots__} | {"price_cents": price})]
    note_quote(
        db, yard, SupplierQuote(kind=PriceKind.LUMBER, item="cherry", price=price, on=NOW.date()), "Ada", NOW
    )
    order = issue_order(db, yard, [job], lines, lambda number: {"number": number}, None, "Ada", NOW)
    delivery = begin_delivery(db, yard, order, date(2027, 3, 1), "Ada", NOW)
    db.flush()
    loaded = load_delivery(db, delivery.id)
    piece = tally_piece(db, loaded, CHERRY, PieceFacts(width=8, length=144), "tap", "Cy", NOW)
    return order, loaded, piece


def test_an_order_keeps_its_number_its_paper_and_its_jobs(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        job = job_in(db)
        order, _, _ = bought(db, job)
        job_id, order_id = job.id, order.id

    with reading(shop.engine, shop.shop_id) as db:
        held = db.get_one(SupplyOrder, (shop.shop_id, order_id))
        assert (held.number, held.state, held.content) == (1, OrderState.OPEN, {"number": "P-0001"})
        ((line, number, issued_at),) = ordered_for(db, [job_id])
        assert (line.quantity, line.price_cents, number, issued_at) == (40.0, 950, 1, NOW)


def test_an_order_of_nothing_or_for_nobody_is_refused(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        yard, job = add_supplier(db, SupplierFacts(name="Yard"), "Ada", NOW), job_in(db)

        with pytest.raises(Refused, match="at least one thing"):
            issue_order(db, yard, [job], [], lambda number: {}, None, "Ada", NOW)


@pytest.mark.parametrize("table", ["order_line", "order_job", "stock_event", "supplier_price"])
@pytest.mark.parametrize("did", ["UPDATE {} SET shop_id = shop_id", "DELETE FROM {}"])
def test_the_database_lets_nobody_rewrite_what_was_ordered_or_happened(
    shop: ShopInTest, table: str, did: str
):
    with writing(shop.engine, shop.shop_id) as db:
        bought(db, job_in(db))

    with pytest.raises(DBAPIError, match=r"written once|kept for good"), shop.engine.begin() as connection:
        connection.execute(text(did.format(table) + f" WHERE shop_id = '{shop.shop_id}'"))


def test_a_line_cannot_be_changed_in_a_session_either(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        bought(db, job_in(db))
        line = db.scalars(select(OrderLine)).one()
        line.quantity = 4

        with pytest.raises(NoShop, match="written once"):
            db.flush()
        db.expire(line)


def test_of_two_who_move_an_order_the_second_is_told(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        order, _, _ = bought(db, job_in(db))
        db.flush()
        move_order(db, order, OrderState.HERE, order.version, "Ada", NOW)
        db.flush()

        with pytest.raises(Stale):
            move_order(db, order, OrderState.OPEN, order.version - 1, "Ben", NOW)


def test_labels_count_within_their_kind_and_a_tap_counts_once(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        _, loaded, piece = bought(db, job_in(db))
        again = tally_piece(db, loaded, CHERRY, PieceFacts(width=9, length=96), "tap", "Cy", NOW)
        other = tally_piece(db, loaded, CHERRY, PieceFacts(width=9, length=96), "tap 2", "Cy", NOW)
        off = label_offcut(db, CHERRY, PieceFacts(width=3, length=20), "tap 3", "Cy", NOW, origin=piece)

        assert again.id == piece.id
        assert [label(each) for each in (piece, other, off)] == ["B1", "B2", "O1"]


def test_everything_that_happens_to_a_board_is_kept_in_order(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        job = job_in(db)
        _, _, piece = bought(db, job)
        for act in ("keep", "release", "use", "return"):
            move_piece(db, piece, act, job, "Cy", NOW)
        db.flush()

        kinds = db.scalars(select(StockEvent.kind).order_by(StockEvent.id)).all()
        assert list(kinds) == ["tallied", "keep", "release", "use", "return"]
        assert (piece.state, piece.for_job) == (PieceState.STOCK, None)


def test_a_board_that_was_sent_back_cannot_be_kept(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        job = job_in(db)
        _, _, piece = bought(db, job)
        move_piece(db, piece, "send back", None, "Cy", NOW, "shake")

        with pytest.raises(Refused, match="is sent back"):
            move_piece(db, piece, "keep", job, "Cy", NOW)


def test_what_is_taken_back_is_neither_on_the_rack_nor_on_the_claim(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        _, loaded, piece = bought(db, job_in(db))
        take_back(db, loaded, piece, "Cy", NOW)
        db.flush()

        assert rack(db) == ([], 0)


def test_the_bill_is_divided_over_the_boards_and_the_claim_is_its_difference(shop: ShopInTest):
    """By hand: 8 ft came of 10 billed at 9.50; 19.00 to ask back, and the board cost the whole bill."""
    with writing(shop.engine, shop.shop_id) as db:
        _, loaded, piece = bought(db, job_in(db))
        bill = {key_of(piece): Billed(quantity=10, cents=9500)}
        write_bill(db, loaded, [piece], bill, "77", loaded.delivery.version, "Ada", NOW)
        (line,) = claim_lines(loaded.delivery, db.scalars(select(OrderLine)).all(), [piece])

        assert piece.cost_cents == 9500
        assert (line.ordered, line.billed, line.received, line.claim_cents) == (40.0, 10.0, 8.0, 1900)
        assert line.short == pytest.approx(0.2)


def test_a_delivery_is_for_an_order_of_its_own_supplier(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        order, _, _ = bought(db, job_in(db))
        other = add_supplier(db, SupplierFacts(name="Other"), "Ada", NOW)
        db.flush()

        with pytest.raises(Refused, match="another supplier"):
            begin_delivery(db, other, order, date(2027, 3, 1), "Ada", NOW)


def count(db, table):
    return db.scalar(select(func.count(table.shop_id)))


BOUGHT = (SupplyOrder, OrderLine, OrderJob, Delivery, StockPiece, StockEvent)


def test_what_was_bought_for_the_demo_goes_with_it_and_nothing_else(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        bought(db, job_in(db, 1, demo=True))
        db.execute(update(StockPiece).values(tap="of the demo"))
        bought(db, job_in(db, 2))
        db.flush()
        remove_demo_rows(db)

        assert [count(db, table) for table in BOUGHT] == [1] * len(BOUGHT)
        assert db.scalars(select(SupplyOrder.number)).all() == [2]


def test_a_real_board_that_is_kept_for_a_demo_job_stays(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        demo = job_in(db, 1, demo=True)
        _, _, piece = bought(db, job_in(db, 2))
        move_piece(db, piece, "keep", demo, "Cy", NOW)
        db.flush()
        remove_demo_rows(db)

        ((row,), total) = rack(db)
        assert (total, row.job) == (1, None)
