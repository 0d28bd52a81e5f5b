"""The end of a job: what is open is named before it is delivered or closed, and stays in sight after."""

from datetime import date

import pytest
from sqlalchemy import select

from benchwork import drawer_ids
from casewright.records.bench import Drawer
from casewright.records.jobs import Job, JobState, Payment
from casewright.records.papers import QuoteState
from casewright.records.sessions import reading, writing
from jobs import take_on, with_quote, with_unit


@pytest.fixture
def job(shop):
    """A job that is delivered, a price of $10,600.00 agreed, none of its three drawers begun."""
    with writing(shop.engine, shop.shop_id) as db:
        held = take_on(db, shop, 7, JobState.DELIVERED, name="Hall chest")
        with_unit(db, shop, held)
        with_quote(db, shop, held, QuoteState.ACCEPTED)
        return held.id


def state_of(shop, job):
    with reading(shop.engine, shop.shop_id) as db:
        return db.get_one(Job, (shop.shop_id, job)).state


def put(shop, job, state=None, stage=None, paid=0):
    """Moves a job, its drawers and its money to where a test begins."""
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Job, (shop.shop_id, job))
        held.state = state or held.state
        for drawer in db.scalars(select(Drawer)) if stage is not None else ():
            drawer.stage = stage
        if paid:
            given = {"received_on": date(2027, 2, 1), "at": shop.clock.now, "who": "Ada"}
            db.add(Payment(job_id=job, amount_cents=paid, **given))


@pytest.mark.parametrize(("held", "to"), [("ready", "delivered"), ("delivered", "closed")])
def test_what_is_open_is_named_before_a_job_is_delivered_or_closed(shop, maker, job, held, to):
    put(shop, job, JobState(held))

    asked = maker.post(f"/jobs/{job}/state", state=to)
    before = state_of(shop, job).value
    maker.send(f"/jobs/{job}/state")

    assert "$10,600.00 of what was agreed has not come in." in asked.text
    assert "3 of 3 drawers are not in the case by the board: 3 not begun." in asked.text
    assert (before, state_of(shop, job).value) == (held, to)
    assert f"The job is {to} now, {held} before: $10,600.00 of what was agreed" in maker.page.text


def test_the_way_to_the_end_leads_through_what_is_open(shop, maker, job):
    page = maker.get(f"/jobs/{job}")

    assert f"/jobs/{job}/left-open" in page.seen.links
    assert 'value="closed"' not in page.html


def test_a_timer_that_runs_is_named_with_whose_it_is(shop, maker, bench, job):
    put(shop, job, stage="in", paid=1_060_000)
    bench.post("/timer", job=job, operation="D06", back="/board")

    page = maker.post(f"/jobs/{job}/state", state="closed")

    assert "A timer runs on it: Cy Roper." in page.text
    assert "by the board" not in page.text
    assert state_of(shop, job) is JobState.DELIVERED


def test_a_job_with_nothing_open_is_closed_at_one_press(shop, maker, job):
    put(shop, job, stage="in", paid=1_060_000)

    button = maker.get(f"/jobs/{job}").html
    maker.post(f"/jobs/{job}/state", state="closed")

    assert 'value="closed"' in button
    assert "The job is closed now, delivered before." in maker.page.text


def test_a_job_that_is_not_near_its_end_is_asked_nothing(shop, maker, job):
    put(shop, job, JobState.IN_HAND)

    page = maker.get(f"/jobs/{job}/left-open")

    assert page.seen.headings == ["7 · Hall chest"]


def test_a_closed_job_says_what_is_still_open_on_its_page_and_in_the_list(shop, maker, job):
    put(shop, job, JobState.CLOSED, paid=600_000)

    pages = [maker.get(f"/jobs/{job}"), maker.get("/jobs?state=closed")]

    assert ["$4,600.00 still open" in page.text for page in pages] == [True, True]


def test_a_closed_job_that_is_paid_says_nothing_of_money(shop, maker, job):
    put(shop, job, JobState.CLOSED, paid=1_060_000)

    assert "still open" not in maker.get("/jobs?state=closed").text
