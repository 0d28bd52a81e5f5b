"""The quote of a job that went no further: read by its link, answered only when the job is taken up again."""

import pytest

from casewright.records.papers import QuoteState
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
