"""The demo: brought in by set-up or by its page, marked on every page, and taken out without a trace."""

import re
from collections import Counter
from datetime import date, timedelta
from typing import Any

import pytest
from sqlalchemy import select

from casewright.measure.money import show_money
from casewright.records.base import Base
from casewright.records.bench import BenchEvent, Drawer
from casewright.records.jobs import Customer, History, Job, JobState
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Role, Shop
from casewright.records.sessions import reading, writing
from casewright.shop.demo.made import bring_demo_in
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_text
from casewright.shop.jobs import JobFacts, take_on_job
from casewright.shop.units import units_of
from casewright.web.door.demo import demo_paper
from pages.crawl import kind_of
from people import Clock, new_shop
from units import TODAY, dresser_estimate

KEY = b"a key for tests, and for nothing else"
MARK = "The demo's jobs and customers are made up."
EACH_KIND = 2
CONFIRMED = {"sure": "1"}
UNLIKE = {("shop", "demo"), ("shop", "version")}


@pytest.fixture
def demo(shop: Any) -> Any:
    """The shop, with the demo in it."""
    return with_demo(shop)


@pytest.fixture(scope="module")
def made_once(app: Any, books: Any, clock: Clock) -> Any:
    """A shop with the demo in it, which takes a second to make."""
    clock.now = Clock().now
    return with_demo(new_shop(app, books, clock))


@pytest.fixture
def demo_as_made(made_once: Any, clock: Clock) -> Any:
    """A shop with the demo in it for tests that only look."""
    clock.now = Clock().now
    return made_once


def with_demo(shop: Any) -> Any:
    """The shop, once the demo is brought in."""
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Shop, shop.shop_id)
        person = shop.people[Role.OWNER]
        bring_demo_in(db, held, person, secret=KEY, paper=demo_paper, now=shop.clock.now)
    return shop


def everything(shop: Any) -> dict[str, list[dict[str, Any]]]:
    """Every row of the shop, table by table; a sign-in's last use is no matter."""
    with reading(shop.engine, shop.shop_id) as db:
        tables = [each.class_ for each in Base.registry.mappers if hasattr(each.class_, "shop_id")]
        return {
            table.__tablename__: [
                _row(each) for each in db.scalars(select(table).order_by(*table.__table__.primary_key))
            ]
            for table in tables
        }


def _row(held: Any) -> dict[str, Any]:
    return {
        each.key: getattr(held, each.key)
        for each in held.__mapper__.column_attrs
        if (held.__tablename__, each.key) not in UNLIKE
    }


def jobs_by_state(shop: Any) -> dict[JobState, Job]:
    """The demo's jobs, one for each state."""
    with reading(shop.engine, shop.shop_id) as db:
        return {job.state: job for job in db.scalars(select(Job).where(Job.demo.is_(True)))}


def take_out(owner: Any) -> Any:
    """Takes the demo out as an owner does."""
    owner.get("/shop/demo/removal")
    return owner.send("/shop/demo/removal", **CONFIRMED)


@pytest.mark.one_database
def test_the_demo_has_jobs_in_every_state_but_closed(demo_as_made):
    assert set(jobs_by_state(demo_as_made)) == set(JobState) - {JobState.CLOSED}


@pytest.mark.one_database
def test_a_quote_of_the_demo_was_sent_twelve_days_ago_and_stands_for_eighteen_more(demo_as_made):
    today = demo_as_made.clock.now.date()

    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        quote = db.scalars(select(Quote).where(Quote.state == QuoteState.SENT)).one()

    assert (quote.issued_at.date(), quote.valid_until) == (
        today - timedelta(days=12),
        today + timedelta(days=18),
    )


@pytest.mark.one_database
def test_an_order_of_the_demo_is_late(demo_as_made):
    today = demo_as_made.clock.now.date()

    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        job = db.scalars(select(Job).where(Job.state == JobState.ACCEPTED)).one()
        order = db.scalars(select(Paper).where(Paper.job_id == job.id)).one()

    assert order.kind is PaperKind.LUMBER_ORDER
    assert date.fromisoformat(order.content["paper"]["needed_by"]) == today - timedelta(days=14)


@pytest.mark.one_database
def test_a_due_date_of_the_demo_is_past(demo_as_made):
    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        in_hand = select(Job.name).where(Job.state == JobState.IN_HAND)
        late = db.scalars(in_hand.where(Job.due_on < demo_as_made.clock.now.date())).all()

    assert late == ["Two bedside cases for room 4"]


@pytest.mark.one_database
def test_a_chest_of_the_demo_is_half_done_at_the_bench(demo_as_made):
    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        cabinet = db.scalars(select(Job).where(Job.name == "Cabinet for shells")).one()
        stages = [each.stage for each in db.scalars(select(Drawer).where(Drawer.job_id == cabinet.id))]
        kinds = {each.kind for each in db.scalars(select(BenchEvent).where(BenchEvent.job_id == cabinet.id))}

    assert len(stages) == 20
    assert {"milled", "fitted", "joints", "dry", "glued", "run"} == set(stages)
    assert kinds == {"reached", "taken_back", "ticked", "measured", "note"}


@pytest.mark.one_database
def test_nothing_of_the_demo_lies_in_the_future(demo_as_made):
    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        moments = [*db.scalars(select(History.at)), *db.scalars(select(BenchEvent.at))]

    assert max(moments) <= demo_as_made.clock.now


@pytest.mark.one_database
def test_the_demo_is_the_same_however_often_it_is_brought_in(demo, owner):
    def told() -> list[tuple[str, Any]]:
        with reading(demo.engine, demo.shop_id) as db:
            asked = select(History.what, History.at).where(History.job_id.is_not(None))
            return [(re.sub(r"\d+", "n", what), at) for what, at in db.execute(asked.order_by(History.at))]

    first = told()
    take_out(owner)
    owner.send("/shop/demo")

    assert sorted(told()) == sorted(first)


@pytest.mark.one_database
def test_every_page_of_the_demo_answers_and_says_that_it_is_one(demo_as_made):
    pages = crawl(demo_as_made.visitor(), "/jobs")

    unmarked = [page.address for page in pages if MARK not in page.text]
    assert len(pages) > 60
    assert unmarked == []


def crawl(visitor: Any, start: str) -> list[Any]:
    """The pages that links lead to from a page on, some of each kind; each answers 200."""
    waiting, seen, kinds, pages = [start], {start}, Counter[str](), []
    while waiting:
        page = visitor.get(waiting.pop(0))
        if "<html" not in page.html:
            continue
        pages.append(page)
        for link in {link.partition("#")[0] for link in page.seen.links} - seen:
            seen.add(link)
            kinds[kind_of(link)] += 1
            if link.startswith("/") and not link.startswith("/static") and kinds[kind_of(link)] <= EACH_KIND:
                waiting.append(link)
    return pages


@pytest.mark.one_database
def test_what_a_job_of_the_demo_costs_is_what_the_core_says(demo_as_made):
    owner = demo_as_made.visitor()
    job = jobs_by_state(demo_as_made)[JobState.ENQUIRY]
    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        held = db.scalars(select(Job).where(Job.name == "Chest for the bay window")).one()
        shop = db.get_one(Shop, demo_as_made.shop_id)
        texts = tuple(each.text for each in units_of(db, held))
        text = figures_text(db, shop, held)
    asked = estimated_job(texts, text, demo_as_made.clock.now.date()).price.asked

    page = owner.get(f"/jobs/{held.id}")

    assert job.state is JobState.ENQUIRY
    assert show_money(int(asked), "$") in page.text


@pytest.mark.one_database
def test_the_dresser_of_the_demo_is_worked_dresser_a(demo_as_made):
    with reading(demo_as_made.engine, demo_as_made.shop_id) as db:
        held = db.scalars(select(Job).where(Job.name == "Dresser for the front bedroom")).one()
        texts = tuple(each.text for each in units_of(db, held))
        text = figures_text(db, db.get_one(Shop, demo_as_made.shop_id), held)

    found = estimated_job(texts, text, TODAY)

    worked = dresser_estimate()
    assert [each.sizes for each in found.units[0].unit.drawers] == [
        each.sizes for each in worked.unit.drawers
    ]
    assert found.order == worked.order
    assert found.minutes == worked.minutes


def test_taking_the_demo_out_leaves_every_table_as_it_was_but_for_numbers_and_two_sentences(shop, owner):
    owner.get("/shop/demo")
    before = everything(shop)

    owner.send("/shop/demo")
    take_out(owner)

    after = everything(shop)
    said = {row["what"] for row in after.pop("history")}
    assert said == {"Brought the demo in.", "Took the demo out: 9 jobs and 9 customers."}
    assert {row["name"]: row["value"] for row in after.pop("counter")} == {
        "job": 9,
        "quote": 7,
        "lumber order": 5,
        "cut list": 2,
        "joint cards": 2,
        "caution sheet": 1,
        "supply order": 1,
        "delivery": 1,
        "stock board": 20,
        "stock offcut": 1,
    }
    assert before.pop("history") == before.pop("counter") == []
    assert after == before


def test_a_job_of_ones_own_stays_with_its_customer_who_is_then_ones_own(demo, owner):
    marian = a_customer(demo, "Marian Calder")
    with writing(demo.engine, demo.shop_id) as db:
        facts = JobFacts(name="Bed for Marian", customer_id=marian.id)
        own = take_on_job(db, facts, "Ada Marsh", demo.clock.now)

    confirm = owner.get("/shop/demo/removal")
    take_out(owner)

    left = everything(demo)
    assert "1 customer of the demo, because you have taken on a job of your own" in confirm.text
    assert [row["id"] for row in left["job"]] == [own.id]
    assert [(row["name"], row["demo"]) for row in left["customer"]] == [("Marian Calder", False)]


def a_customer(shop: Any, name: str) -> Customer:
    with reading(shop.engine, shop.shop_id) as db:
        return db.scalars(select(Customer).where(Customer.name == name)).one()


@pytest.mark.one_database
def test_ones_own_customers_stay(demo, owner):
    owner.get("/customers/new")
    owner.send("/customers", name="Ada Marsh", note="Oak.")

    take_out(owner)

    assert [row["name"] for row in everything(demo)["customer"]] == ["Ada Marsh"]


@pytest.mark.one_database
def test_what_was_put_into_the_demos_own_jobs_is_named_before_it_goes(demo, owner):
    demo.clock.pass_by(minutes=5)
    with writing(demo.engine, demo.shop_id) as db:
        job = db.scalars(select(Job).where(Job.name == "Drawers under the stairs")).one()
        shop = db.get_one(Shop, demo.shop_id)
        add_a_unit(db, shop, job, demo.clock.now)

    page = owner.get("/shop/demo/removal")

    assert "1 design of a unit" in page.text


def add_a_unit(db: Any, shop: Shop, job: Job, now: Any) -> None:
    from casewright.pieces.asked.presets import preset  # noqa: PLC0415
    from casewright.shop.figures import figures  # noqa: PLC0415
    from casewright.shop.units import add_unit  # noqa: PLC0415

    add_unit(db, job, preset("bedside").spec(), figures(db, shop, job), "Ada Marsh", now)


@pytest.mark.one_database
def test_the_demo_is_not_taken_out_without_the_tick(demo_as_made):
    owner = demo_as_made.visitor()
    owner.get("/shop/demo/removal")

    page = owner.send("/shop/demo/removal", status=422)

    assert "Tick this first" in page.text
    assert len(everything(demo_as_made)["job"]) == 9


def test_the_demo_comes_once_and_goes_once(shop, owner):
    owner.get("/shop/demo")
    owner.post("/shop/demo")
    owner.post("/shop/demo")
    there = len(everything(shop)["job"])
    owner.post("/shop/demo/removal", **CONFIRMED)
    owner.post("/shop/demo/removal", **CONFIRMED)

    assert (there, len(everything(shop)["job"])) == (9, 0)


@pytest.mark.one_database
def test_pages_carry_no_mark_once_the_demo_is_out(demo, owner):
    marked = owner.get("/customers").text

    take_out(owner)

    assert MARK in marked
    assert MARK not in owner.get("/customers").text


@pytest.mark.one_database
def test_the_demo_of_one_shop_is_nothing_to_another(demo, other_shop):
    take_out(demo.visitor())

    assert everything(other_shop)["job"] == []


@pytest.fixture
def other_shop(shop: Any) -> Any:
    """Another shop in the same database, with the demo in it, too."""
    return new_shop(shop.app, shop.engine, shop.clock)


@pytest.mark.parametrize("role", [Role.MAKER, Role.BENCH])
def test_only_the_owner_brings_the_demo_in(shop, role):
    shop.visitor(role).post("/shop/demo", status=403)

    assert everything(shop)["job"] == []


@pytest.mark.one_database
def test_what_is_the_demo_s_is_marked_as_such_where_it_stands_among_ones_own(demo, owner):
    owner.get("/jobs/new")
    owner.send("/jobs", name="Walnut dresser", new__name="Quill Osterhout")

    pages = [owner.get(address) for address in ("/jobs", "/customers", "/board")]
    rows = {
        text: row
        for page in pages[:2]
        for row in page.html.split("<tr")
        for text in ("Pell", "Osterhout")
        if text in row
    }

    assert 'class="demo-tag"' in rows["Pell"]
    assert 'class="demo-tag"' not in rows["Osterhout"]
    assert " – demo</option>" in pages[2].html
    assert 'demo-tag">demo</b></span> <a href="/jobs/' in pages[2].html
    assert "demo, 555-0123" in owner.get("/search?q=pell").text


@pytest.mark.one_database
def test_nobody_of_the_shop_is_said_to_have_done_what_the_demo_did(demo_as_made):
    owner = demo_as_made.visitor()
    board = owner.get("/board")
    job = re.search(r"/jobs/([0-9a-z]+)/hours", board.html)[1]

    pages = [board, owner.get(f"/jobs/{job}/history"), owner.get(f"/jobs/{job}/hours")]

    assert ["Edmund Crane" in pages[0].text, "Greta Bexley" in pages[1].text] == [True, True]
    assert "Edmund Crane" in pages[2].html.partition('id="log"')[2]
    assert [
        page.html.partition("<main")[2].partition("<footer")[0].count("Ada Marsh, ") for page in pages
    ] == [0] * 3
