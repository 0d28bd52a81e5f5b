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


@pytest.fixture
def worked(shop, bench, job):
    """The closed job, with three quarters of an hour in its log."""
    put(shop, job, JobState.IN_HAND)
    bench.get(f"/jobs/{job}/hours")
    bench.send(f"/jobs/{job}/hours", operation="D06", time="45")
    put(shop, job, JobState.CLOSED)
    return job


@pytest.mark.parametrize(
    ("path", "typed"),
    [
        ("/timer", {"operation": "D06"}),
        ("/jobs/{job}/hours", {"operation": "D06", "time": "45", "day": "2027-03-01"}),
        ("/jobs/{job}/units", {"start": "dresser"}),
    ],
)
def test_nothing_more_is_worked_on_a_closed_job(shop, maker, worked, path, typed):
    page = maker.post(path.format(job=worked), status=409, job=worked, **typed)

    assert "The job is closed; open it again to" in page.text


def test_the_pages_of_a_closed_job_offer_no_work(shop, maker, worked):
    drawer = drawer_ids(shop, worked)["R1-1"]

    pages = [maker.get(f"/bench/{drawer}"), maker.get(f"/jobs/{worked}/hours"), maker.get(f"/jobs/{worked}")]

    assert [form.action for page in pages for form in page.seen.forms if form.action == "/timer"] == []
    assert "Write time down" not in pages[1].text
    assert "Add a unit" not in pages[2].text


def test_a_timer_that_rests_on_a_closed_job_is_written_down_and_does_not_run_on(shop, bench, job):
    bench.post("/timer", job=job, operation="D06", back="/board")
    shop.clock.pass_by(minutes=10)
    bench.post("/timer/pause")
    put(shop, job, JobState.CLOSED)

    bench.post("/timer/run", status=409)
    bench.post("/timer/end", back=f"/jobs/{job}/hours")

    assert "0:10 h" in bench.page.text


def test_time_on_a_closed_job_is_taken_back_with_its_reason(shop, maker, worked):
    page = maker.get(f"/jobs/{worked}/hours")
    address = next(form.action for form in page.seen.forms if form.action.endswith("/correction"))

    asked = maker.post(address, status=422)
    maker.post(address, why="It belongs to the hall table.")

    assert "Write in a few words what was wrong with this time" in asked.text
    assert "takes an entry back, by Ben Tull: It belongs to the hall table." in maker.page.text
