"""The first page of the day: jobs by state, what is late, what each waits for."""

import re
from datetime import date

import pytest
from sqlalchemy import select

from casewright.records.bench import Drawer
from casewright.records.jobs import JobState, Payment
from casewright.records.papers import QuoteState
from casewright.records.sessions import writing
from counting import MOST, counted
from jobs import many_jobs, take_on, with_quote, with_unit


def line(page, name):
    """The words of one job's line in the list."""
    row = next(row for row in re.findall(r"<tr>.*?</tr>", page.html, re.S) if name in row)
    return " ".join(re.sub(r"<[^>]+>", " ", row).split())


def test_an_empty_shop_says_what_to_do_first(owner):
    page = owner.get("/jobs")

    assert "Take on the first job" in page.text
    assert page.text.count("to do") == 5
    assert "/shop/rate" in page.seen.links


def test_the_first_steps_tick_themselves(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1)
        with_unit(db, shop, job)
        with_quote(db, shop, job, QuoteState.SENT)

    page = maker.get("/jobs")

    assert re.findall(r"(done|to do) (Take on|Describe|Put your|Send|Tap)", page.text) == [
        ("done", "Take on"),
        ("done", "Describe"),
        ("to do", "Put your"),
        ("done", "Send"),
        ("to do", "Tap"),
    ]
    assert "/shop/rate" not in page.seen.links


def test_the_demo_takes_no_first_step(owner, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, demo=True)
        with_unit(db, shop, job)

    page = owner.get("/jobs")

    assert page.text.count("to do") == 5


def test_the_first_steps_can_be_put_away_and_brought_back(owner, maker):
    owner.get("/jobs")
    owner.send("/first-steps")

    assert "Put this list away" not in owner.get("/jobs").text
    assert "Put this list away" in maker.get("/jobs").text
    assert "Put this list away" in owner.send("/first-steps").text


def test_closed_and_lost_jobs_are_out_of_the_way_on_their_own_list(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        for number, state in enumerate(JobState, 1):
            take_on(db, shop, number, state, name=f"The {state.value} one")

    every = maker.get("/jobs")
    closed = maker.get("/jobs?state=closed")

    assert "The in hand one" in every.text
    assert "The closed one" not in every.text
    assert "The lost one" not in every.text
    assert re.search(
        r"open 6 in hand 1 accepted 1 quoted 1 enquiry 1 ready 1 delivered 1 closed 1 lost 1", every.text
    )
    assert "The closed one" in closed.text
    assert "The in hand one" not in closed.text


def test_a_shop_whose_jobs_are_all_over_is_led_to_a_new_one_and_to_the_old(maker, shop):
    many_jobs(shop, 2, JobState.CLOSED)

    page = maker.get("/jobs")

    empty = page.html.partition('<div class="empty">')[2]
    assert 'href="/jobs/new"' in empty
    assert 'href="/jobs?state=closed"' in empty
    assert "Show all open jobs" not in page.text


def test_what_is_worked_on_comes_first_and_the_nearest_date_before_the_others(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        take_on(db, shop, 1, JobState.ENQUIRY, name="Asked")
        take_on(db, shop, 2, JobState.IN_HAND, name="Undated")
        take_on(db, shop, 3, JobState.IN_HAND, name="July", due_on=date(2027, 7, 1))
        take_on(db, shop, 4, JobState.IN_HAND, name="May", due_on=date(2027, 5, 1))

    page = maker.get("/jobs")

    assert re.findall(r"</span> (Asked|Undated|July|May)</a>", page.html) == [
        "May",
        "July",
        "Undated",
        "Asked",
    ]


@pytest.mark.parametrize(
    ("due_on", "words"),
    [
        (date(2027, 2, 26), "26 Feb 2027 3 days late"),
        (date(2027, 1, 1), "1 Jan 2027 8 weeks late"),
        (date(2027, 3, 1), "1 Mar 2027 today"),
        (date(2027, 3, 2), "2 Mar 2027 tomorrow"),
        (date(2027, 3, 7), "7 Mar 2027 on Sunday"),
        (date(2027, 3, 8), "8 Mar 2027 no unit yet"),
    ],
)
def test_a_date_that_is_late_or_near_is_said_in_words(maker, shop, due_on, words):
    with writing(shop.engine, shop.shop_id) as db:
        take_on(db, shop, 1, name="Hall chest", due_on=due_on)

    assert words in line(maker.get("/jobs"), "Hall chest")


def test_what_is_delivered_is_no_longer_late(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        take_on(db, shop, 1, JobState.DELIVERED, due_on=date(2027, 2, 1))

    page = maker.get("/jobs")

    assert "Nothing is late or due within a week." in page.text


def test_late_jobs_have_a_list_of_their_own(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        take_on(db, shop, 1, JobState.IN_HAND, name="Late chest", due_on=date(2027, 2, 1))
        take_on(db, shop, 2, JobState.IN_HAND, name="Soon chest", due_on=date(2027, 3, 5))
        take_on(db, shop, 3, JobState.IN_HAND, name="Far chest", due_on=date(2027, 9, 1))

    late, soon = maker.get("/jobs?due=late"), maker.get("/jobs?due=soon")

    assert "1 late 1 due within a week" in late.text
    assert ("Late chest" in late.text, "Soon chest" in late.text, "Far chest" in late.text) == (
        True,
        False,
        False,
    )
    assert ("Late chest" in soon.text, "Soon chest" in soon.text, "Far chest" in soon.text) == (
        False,
        True,
        False,
    )


@pytest.mark.parametrize(
    ("state", "quote", "words"),
    [
        (JobState.ENQUIRY, None, "no quote yet"),
        (JobState.ENQUIRY, QuoteState.DRAFT, "Q-0007 is not sent yet"),
        (JobState.QUOTED, QuoteState.SENT, "Q-0007 sent 1 Mar, no answer yet"),
        (JobState.QUOTED, QuoteState.DECLINED, "Q-0007 declined 1 Mar"),
        (JobState.ACCEPTED, QuoteState.ACCEPTED, "payment open: signing, $1,060.00"),
        (JobState.IN_HAND, QuoteState.ACCEPTED, "3 drawers, none begun payment open: signing, $1,060.00"),
        (JobState.READY, QuoteState.ACCEPTED, "to be delivered payment open: signing, $1,060.00"),
        (JobState.DELIVERED, QuoteState.ACCEPTED, "payment open: signing, $1,060.00"),
        (JobState.DELIVERED, None, "can be closed"),
    ],
)
def test_each_job_says_what_it_waits_for(maker, shop, state, quote, words):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 7, state, name="Hall chest")
        with_unit(db, shop, job)
        _ = quote and with_quote(db, shop, job, quote)

    assert line(maker.get("/jobs"), "Hall chest").endswith(words)


def test_a_quote_that_ran_out_is_seen_without_anybody_closing_it(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 7, JobState.QUOTED, name="Hall chest")
        with_quote(db, shop, job, QuoteState.SENT, valid_until=date(2027, 2, 20))

    assert "Q-0007 ran out on 20 Feb without an answer" in line(maker.get("/jobs"), "Hall chest")


def test_a_job_that_is_paid_and_delivered_can_be_closed(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 7, JobState.DELIVERED, name="Hall chest")
        with_quote(db, shop, job, QuoteState.ACCEPTED)
        paid = {
            "amount_cents": 1_060_000,
            "received_on": date(2027, 2, 1),
            "at": shop.clock.now,
            "who": "Ada",
        }
        db.add(Payment(job_id=job.id, **paid))

    assert "can be closed" in line(maker.get("/jobs"), "Hall chest")


@pytest.mark.parametrize(
    ("stages", "said"),
    [
        (("in", "glued", ""), "2 of 3 drawers not in the case by the board to be delivered"),
        (("in", "in", "in"), "to be delivered"),
        (("", "", ""), "to be delivered"),
    ],
)
def test_a_job_called_ready_says_which_drawers_the_board_holds_back(maker, shop, stages, said):
    with writing(shop.engine, shop.shop_id) as db:
        with_unit(db, shop, take_on(db, shop, 7, JobState.READY, name="Hall chest"))
        for drawer, stage in zip(db.scalars(select(Drawer)).all(), stages, strict=True):
            drawer.stage = stage

    words = line(maker.get("/jobs"), "Hall chest")

    assert words.endswith(said)
    assert ("by the board" in words) == ("by the board" in said)


def test_many_jobs_come_page_by_page_and_keep_the_filter(maker, shop):
    many_jobs(shop, 120)

    first = maker.get("/jobs?state=enquiry&sort=name")
    third = maker.get("/jobs?page=3&state=enquiry&sort=name")

    assert "Page 1 of 3" in first.text
    assert "/jobs?page=2&amp;state=enquiry&amp;sort=name" in first.html
    assert third.html.count('scope="row"') == 20


@pytest.mark.parametrize("query", ["page=99", "page=0", "page=-4", "state=nowhere", "sort=%27", "due=x"])
def test_an_address_with_a_slip_still_shows_jobs_or_says_where_they_are(maker, shop, query):
    many_jobs(shop, 2)

    page = maker.get(f"/jobs?{query}")

    assert "open 2" in page.text


def test_a_list_of_many_jobs_takes_as_few_queries_as_one_of_a_few(owner, shop):
    with writing(shop.engine, shop.shop_id) as db:
        for number in range(1, 61):
            job = take_on(db, shop, number, JobState.ACCEPTED)
            with_quote(db, shop, job, QuoteState.ACCEPTED)

    with counted(shop.engine) as statements:
        owner.get("/jobs")

    assert len(statements) <= MOST, statements


def test_a_shop_sees_no_job_of_another(app, books, clock, owner):
    from people import new_shop  # noqa: PLC0415

    other = new_shop(app, books, clock)
    many_jobs(other, 3)

    assert "No jobs yet" in owner.get("/jobs").text
