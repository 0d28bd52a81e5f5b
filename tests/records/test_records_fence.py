"""Nobody reads or writes over the fence of their shop, and what happened stays, whoever asks."""

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from datetime import UTC, date, datetime

import pytest
from sqlalchemy import Engine, delete, func, insert, select, text, update
from sqlalchemy.exc import DBAPIError

from casewright.records.base import Lasting, new_id
from casewright.records.jobs import Customer, History, Job, Payment
from casewright.records.people import Person, Role, Shop, ShopFigures
from casewright.records.sessions import NoShop, across_shops, reading, writing
from casewright.records.tables import METADATA
from casewright.shop.customers import CustomerFacts, add_customer, load_customer
from casewright.shop.refusals import NotFound
from people import Clock, ShopInTest, new_shop

NOW = datetime(2027, 3, 1, 15, 0, tzinfo=UTC)


@dataclass(frozen=True)
class Two:
    """Two shops, each with a customer, a job and a payment."""

    engine: Engine
    ours: ShopInTest
    theirs: ShopInTest
    their_customer: str
    our_payment: str


@pytest.fixture
def two(books: Engine) -> Two:
    """Two shops in one database."""
    ours, theirs = new_shop(None, books, Clock()), new_shop(None, books, Clock())
    their_customer, _ = with_work(books, theirs)
    _, our_payment = with_work(books, ours)
    return Two(books, ours, theirs, their_customer, our_payment)


def with_work(engine: Engine, shop: ShopInTest) -> tuple[str, str]:
    """A customer and a payment of theirs."""
    with writing(engine, shop.shop_id) as db:
        held = add_customer(db, CustomerFacts(name=f"Customer of {shop.shop_id}"), "Ada Marsh", NOW)
        db.flush()
        job = Job(
            id=new_id(),
            number=1,
            name="A chest",
            customer_id=held.id,
            due_on=None,
            created_at=NOW,
            moved_at=NOW,
        )
        db.add(job)
        db.flush()
        paid = Payment(
            id=new_id(),
            job_id=job.id,
            amount_cents=100,
            received_on=date(2027, 3, 1),
            corrects_id=None,
            at=NOW,
            who="Ada",
        )
        db.add(paid)
        return held.id, paid.id


@pytest.mark.parametrize("owned", [Customer, Job, Payment, History, Person, Shop, ShopFigures])
def test_a_query_gets_the_rows_of_its_own_shop_alone(two: Two, owned: type[Customer]):
    with reading(two.engine, two.ours.shop_id) as db:
        assert set(db.scalars(select(owned.shop_id))) == {two.ours.shop_id}


def test_a_query_without_a_shop_is_a_fault(two: Two):
    with reading(two.engine, None) as db, pytest.raises(NoShop):
        db.scalars(select(Customer))


def test_a_session_without_a_shop_has_none_to_name(two: Two):
    with reading(two.engine, None) as db, pytest.raises(NoShop):
        _ = db.shop_id


ROUND_ABOUT: list[Callable[[], object]] = [
    lambda: select(Customer.__table__),
    lambda: select(Customer.__table__.c.name),
    lambda: select(func.count()).select_from(Customer.__table__),
    lambda: update(Customer.__table__).values(name="x"),
    lambda: delete(Customer.__table__),
    lambda: insert(Customer.__table__).values(name="x"),
]


@pytest.mark.parametrize("statement", ROUND_ABOUT)
def test_a_query_over_a_bare_table_is_a_fault(two: Two, statement: Callable[[], object]):
    with reading(two.engine, two.ours.shop_id) as db, pytest.raises(NoShop):
        db.execute(statement())  # type: ignore[call-overload]


def test_another_shops_customer_is_not_there(two: Two):
    with reading(two.engine, two.ours.shop_id) as db, pytest.raises(NotFound):
        load_customer(db, two.their_customer)


def test_another_shops_row_is_not_there_even_by_its_whole_key(two: Two):
    with reading(two.engine, two.ours.shop_id) as db:
        assert db.get(Customer, (two.theirs.shop_id, two.their_customer)) is None


def test_a_join_stays_inside_the_shop_on_both_sides(two: Two):
    joined = select(Job.shop_id, Customer.shop_id).join(Customer, Customer.name.is_not(None))

    with reading(two.engine, two.ours.shop_id) as db:
        assert {tuple(row) for row in db.execute(joined)} == {(two.ours.shop_id, two.ours.shop_id)}


def test_a_change_or_removal_by_query_reaches_no_other_shop(two: Two):
    with writing(two.engine, two.ours.shop_id) as db:
        db.execute(update(Customer).values(note="seen"))
    with across_shops(two.engine) as db:
        theirs = db.get_one(Customer, (two.theirs.shop_id, two.their_customer))

    assert theirs.note == ""


def row(shop_id: str | None) -> dict[str, object]:
    return {"shop_id": shop_id, "id": new_id(), "name": "x", "created_at": NOW}


@pytest.mark.parametrize("whose", ["theirs", "nobody's"])
def test_a_new_row_of_another_shop_is_a_fault(two: Two, whose: str):
    shop_id = two.theirs.shop_id if whose == "theirs" else None

    with pytest.raises(NoShop), writing(two.engine, two.ours.shop_id) as db:
        db.execute(insert(Customer), [row(two.ours.shop_id), row(shop_id)])


def test_an_object_of_another_shop_is_a_fault(two: Two):
    with pytest.raises(NoShop), writing(two.engine, two.ours.shop_id) as db:
        db.add(Customer(**row(two.theirs.shop_id)))


def test_a_new_object_without_a_shop_gets_the_sessions(two: Two):
    with writing(two.engine, two.ours.shop_id) as db:
        made = Customer(**{**row(None)})
        db.add(made)
        db.flush()

        assert made.shop_id == two.ours.shop_id


def test_a_reference_into_another_shop_is_refused_by_the_database(two: Two):
    with pytest.raises(DBAPIError), writing(two.engine, two.ours.shop_id) as db:
        db.add(
            Job(
                id=new_id(),
                number=7,
                name="x",
                customer_id=two.their_customer,
                due_on=None,
                created_at=NOW,
                moved_at=NOW,
            )
        )


def test_a_payment_cannot_be_changed(two: Two):
    with pytest.raises(NoShop, match="written once"), writing(two.engine, two.ours.shop_id) as db:
        db.get_one(Payment, (two.ours.shop_id, two.our_payment)).amount_cents = 5


def test_a_payment_cannot_be_removed(two: Two):
    with pytest.raises(NoShop, match="for good"), writing(two.engine, two.ours.shop_id) as db:
        db.delete(db.get_one(Payment, (two.ours.shop_id, two.our_payment)))


LASTING = sorted(
    name
    for name in METADATA.tables
    if any(
        issubclass(each.class_, Lasting) and each.local_table.description == name
        for each in Person.registry.mappers
    )
)


@pytest.mark.parametrize("statement", ["UPDATE payment SET amount_cents = 5", "DELETE FROM payment"])
def test_the_database_itself_refuses_to_change_what_happened(two: Two, statement: str):
    with pytest.raises(DBAPIError, match=r"written once|kept for good"), two.engine.begin() as connection:
        connection.execute(text(statement))


def test_what_happened_is_guarded_in_every_table_that_lasts(two: Two):
    asked = {
        "sqlite": "SELECT DISTINCT tbl_name FROM sqlite_master WHERE type = 'trigger'",
        "postgresql": "SELECT DISTINCT event_object_table FROM information_schema.triggers",
    }[two.engine.dialect.name]

    with two.engine.connect() as connection:
        assert sorted(connection.execute(text(asked)).scalars()) == LASTING


def test_a_session_across_shops_sees_both(two: Two):
    with across_shops(two.engine) as db:
        assert {two.ours.shop_id, two.theirs.shop_id} <= set(db.scalars(select(Shop.shop_id)))


def rename_and_fail(engine: Engine, shop_id: str) -> None:
    """Renames a shop, then fails."""
    with writing(engine, shop_id) as db:
        db.execute(update(Shop).values(name="Renamed"))
        raise RuntimeError


def test_a_session_that_raises_keeps_nothing(two: Two):
    with pytest.raises(RuntimeError):
        rename_and_fail(two.engine, two.ours.shop_id)

    with reading(two.engine, two.ours.shop_id) as db:
        assert db.scalars(select(Shop.name)).one() == "Marrow Street Furniture"


def test_a_session_that_reads_keeps_nothing(two: Two):
    with suppress(DBAPIError), reading(two.engine, two.ours.shop_id) as db:
        db.execute(update(Shop).values(name="Renamed"))

    with reading(two.engine, two.ours.shop_id) as db:
        assert db.scalars(select(Shop.name)).one() == "Marrow Street Furniture"


def test_one_person_of_each_role_is_in_the_shop(two: Two):
    with reading(two.engine, two.ours.shop_id) as db:
        assert set(db.scalars(select(Person.role))) == set(Role)
