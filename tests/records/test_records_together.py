"""Several people at once: one number each, one record for one form, one winner of one version."""

import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from typing import TypeVar

import pytest
from sqlalchemy import Engine, func, select
from sqlalchemy.orm.exc import StaleDataError

from casewright.records.jobs import Customer
from casewright.records.people import Once
from casewright.records.sessions import reading, writing
from casewright.shop.customers import CustomerFacts, add_customer, change_customer, load_customer
from casewright.shop.keeping import next_number, once
from casewright.shop.refusals import Stale
from people import Clock, ShopInTest, new_shop

NOW = datetime(2027, 3, 1, 15, 0, tzinfo=UTC)
Result = TypeVar("Result")


@pytest.fixture
def shop(books: Engine) -> ShopInTest:
    """A shop of this test's own."""
    return new_shop(None, books, Clock())


def at_once(count: int, act: Callable[[int], Result]) -> list[Result]:
    """What several who start together get."""
    start = threading.Barrier(count)

    def begin(number: int) -> Result:
        start.wait()
        return act(number)

    with ThreadPoolExecutor(count) as pool:
        return list(pool.map(begin, range(count)))


def test_twenty_who_ask_for_a_number_get_twenty_and_none_is_left_out(shop: ShopInTest):
    def ask(_: int) -> int:
        with writing(shop.engine, shop.shop_id) as db:
            return next_number(db, "job")

    assert sorted(at_once(20, ask)) == list(range(1, 21))


def take_and_fail(shop: ShopInTest) -> None:
    """Takes a number for an act that fails."""
    with writing(shop.engine, shop.shop_id) as db:
        next_number(db, "quote")
        raise RuntimeError


def test_a_number_whose_act_fails_is_given_to_the_next(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        next_number(db, "quote")
    with pytest.raises(RuntimeError):
        take_and_fail(shop)

    with writing(shop.engine, shop.shop_id) as db:
        assert next_number(db, "quote") == 2


def test_each_shop_and_each_name_counts_for_itself(shop: ShopInTest):
    other = new_shop(None, shop.engine, Clock())
    with writing(shop.engine, shop.shop_id) as db:
        next_number(db, "job")
        next_number(db, "job")

        assert next_number(db, "quote") == 1
    with writing(other.engine, other.shop_id) as db:
        assert next_number(db, "job") == 1


def test_a_form_that_is_sent_ten_times_at_once_makes_one_record(shop: ShopInTest):
    def send(number: int) -> str:
        with writing(shop.engine, shop.shop_id) as db:

            def act() -> str:
                return (
                    f"/customers/{add_customer(db, CustomerFacts(name='Once'), f'sender {number}', NOW).id}"
                )

            return once(db, "mark of the form", NOW, act)

    addresses = at_once(10, send)

    with reading(shop.engine, shop.shop_id) as db:
        made = db.scalars(select(Customer.id).where(Customer.name == "Once")).all()
    assert [f"/customers/{made_id}" for made_id in made] == list(set(addresses))


def test_a_form_whose_act_failed_can_be_sent_again(shop: ShopInTest):
    def fail() -> str:
        raise RuntimeError

    with pytest.raises(RuntimeError), writing(shop.engine, shop.shop_id) as db:
        once(db, "again", NOW, fail)

    with writing(shop.engine, shop.shop_id) as db:
        assert once(db, "again", NOW, lambda: "/made") == "/made"


def test_a_mark_is_forgotten_after_a_month(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        once(db, "first", NOW, lambda: "/made")
        once(db, "second", NOW + timedelta(days=29), lambda: "/made")
        once(db, "third", NOW + timedelta(days=31), lambda: "/made")

        assert set(db.scalars(select(Once.key))) == {"second", "third"}


def test_a_form_without_a_mark_is_done_each_time(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        assert [once(db, "", NOW, lambda: "a"), once(db, "", NOW, lambda: "b")] == ["a", "b"]


def test_of_ten_who_save_the_same_version_at_once_one_wins(shop: ShopInTest):
    with writing(shop.engine, shop.shop_id) as db:
        made = add_customer(db, CustomerFacts(name="Before"), "Ada Marsh", NOW)
        db.flush()
        customer_id, version = made.id, made.version

    def save(number: int) -> bool:
        try:
            with writing(shop.engine, shop.shop_id) as db:
                held = load_customer(db, customer_id)
                change_customer(db, held, CustomerFacts(name=f"After {number}"), version, f"{number}", NOW)
        except (Stale, StaleDataError):
            return False
        return True

    won = at_once(10, save)

    with reading(shop.engine, shop.shop_id) as db:
        held = load_customer(db, customer_id)
        assert won.count(True) == 1
        assert (held.name, held.version) == (f"After {won.index(True)}", version + 1)


def test_fifty_who_read_while_somebody_writes_see_whole_acts(shop: ShopInTest):
    def act(number: int) -> bool:
        if number % 5 == 0:
            with writing(shop.engine, shop.shop_id) as db:
                for half in ("left", "right"):
                    add_customer(db, CustomerFacts(name=f"{half} {number}"), "Ada Marsh", NOW)
                    db.flush()
            return True
        with reading(shop.engine, shop.shop_id) as db:
            return db.execute(select(func.count(Customer.id))).scalar_one() % 2 == 0

    with ThreadPoolExecutor(10) as pool:
        assert all(pool.map(act, range(50)))
