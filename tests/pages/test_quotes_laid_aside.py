"""Quotes of jobs that went another way: lost ones, ones at work already, ones that were drawn anew."""

import pytest

from casewright.records.jobs import JobState
from casewright.records.papers import QuoteState
from casewright.records.sessions import reading
from casewright.shop.jobs import load_job
from pages.commissions import commission, kept, link_on

YES = {"answer": "accept", "agreed": "1", "name": "Tom Marsh"}


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


@pytest.fixture
def quote(job, maker):
    """A quote that was sent."""
    return job.send(maker)


@pytest.fixture
def link(quote, maker):
    """Its link."""
    return link_on(maker.get(f"/quotes/{quote}"))


def test_the_quote_of_a_job_that_was_lost_is_read_and_not_answered(job, quote, link, stranger, maker, shop):
    at_once = stranger.get(link).form(f"{link}/answer")
    maker.post(f"/jobs/{job.job_id}/state", state="lost", why="no word for a month")

    page = stranger.get(link)
    late = stranger.post(f"{link}/answer", 409, **YES)

    assert at_once.fields
    for each in (page, late):
        assert "has laid this piece aside" in each.text
        assert [form.action for form in each.seen.forms] == []
    quote_page = maker.get(f"/quotes/{quote}")
    assert f"/quotes/{quote}/answer" not in [form.action for form in quote_page.seen.forms]
    told = maker.post(f"/quotes/{quote}/answer", 409, answer="accept", way="spoken", name="Tom")
    assert "The job is lost; take it up again to take an answer down." in told.text
    assert kept(shop, quote).state is QuoteState.SENT


def test_the_quote_of_a_job_that_is_taken_up_again_stands_again(job, quote, link, stranger, maker, shop):
    maker.post(f"/jobs/{job.job_id}/state", state="lost", why="no word for a month")
    maker.post(f"/jobs/{job.job_id}/state", state="enquiry")

    stranger.get(link)
    stranger.post(f"{link}/answer", **YES)

    assert kept(shop, quote).state is QuoteState.ACCEPTED


def test_a_further_quote_that_is_accepted_leaves_a_job_that_is_at_work_there(
    job, link, stranger, maker, shop
):
    stranger.post(f"{link}/answer", **YES)
    maker.post(f"/jobs/{job.job_id}/state", state="in hand")
    further = link_on(maker.get(f"/quotes/{job.send(maker)}"))

    stranger.post(f"{further}/answer", **YES)

    with reading(shop.engine, shop.shop_id) as db:
        assert load_job(db, job.job_id).state is JobState.IN_HAND


def test_an_order_for_what_was_drawn_after_the_quote_says_so_before_it_is_issued(job, link, stranger, maker):
    job.revise(job.unit_ids()[0], **{"body.width": "30"})
    stranger.post(f"{link}/answer", **YES)

    form = maker.get(f"/jobs/{job.job_id}/lumber-order")
    issued = maker.post(f"/jobs/{job.job_id}/papers", kind="lumber order")

    said = "unit A was drawn at revision 2, and the customer had accepted revision 1"
    assert f"Before you issue it: {said}." in form.text
    assert f"When it was issued, {said}." in issued.text


def test_an_order_for_what_was_accepted_says_nothing_of_it(job, link, stranger, maker):
    stranger.post(f"{link}/answer", **YES)

    assert "Before you issue it" not in maker.get(f"/jobs/{job.job_id}/lumber-order").text
