"""Where a job stands: what its page says of day, price and papers, and what may be done next."""

from datetime import date

import pytest

from casewright.records.jobs import JobState
from casewright.records.papers import QuoteState
from casewright.records.sessions import writing
from casewright.shop.jobs import load_job
from jobs import offer_of, take_on, with_quote, with_unit
from pages.commissions import commission


@pytest.mark.parametrize(("state", "promises"), [(JobState.ACCEPTED, True), (JobState.CLOSED, False)])
def test_only_a_job_that_is_not_begun_says_when_it_could_be_ready(maker, shop, state, promises):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, state)
        with_unit(db, shop, job)
        job_id = job.id

    page = maker.get(f"/jobs/{job_id}")

    assert ("Could be ready" in page.text) is promises


def test_the_day_that_the_accepted_quote_promises_stands_on_the_job(maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(db, shop, 1, JobState.ACCEPTED, due_on=date(2027, 6, 18))
        with_quote(db, shop, job, QuoteState.ACCEPTED, offer=offer_of() | {"ready_by": "2027-07-02"})

    page = maker.get(f"/jobs/{job.id}")

    assert "wanted by 18 Jun 2027 promised for 2 Jul 2027" in page.text
    assert "Promised 2 Jul 2027 in the accepted quote; later than wanted" in page.text


@pytest.mark.parametrize("state", ["enquiry", "quoted"])
def test_a_job_without_a_unit_is_not_offered_as_quoted_or_accepted(maker, shop, state):
    with writing(shop.engine, shop.shop_id) as db:
        address = f"/jobs/{take_on(db, shop, 1, JobState(state)).id}"

    page = maker.get(address)

    assert "Mark as quoted" not in page.text
    assert "Mark as accepted" not in page.text
    assert "Lost …" in page.text


def test_a_job_with_a_unit_can_be_marked_as_accepted(shop, maker):
    page = maker.get(f"/jobs/{commission(shop).job_id}")

    assert "Mark as quoted" in page.text
    assert "Mark as accepted" in page.text


@pytest.mark.parametrize(("state", "first"), [("closed", "open it again"), ("lost", "take it up again")])
def test_no_paper_is_written_for_a_job_that_is_over(shop, maker, state, first):
    job = commission(shop).job_id
    paper = maker.post(f"/jobs/{job}/papers", kind="cut list").address
    with writing(shop.engine, shop.shop_id) as db:
        load_job(db, job).state = JobState(state)

    page = maker.get(f"/jobs/{job}")
    refused = [
        maker.post(f"/jobs/{job}/papers", status=409, kind="cut list"),
        maker.post(f"/jobs/{job}/quotes", status=409),
        maker.get(f"/jobs/{job}/lumber-order", status=409),
    ]

    assert f"The job is {state}. Its papers stay to be read; {first} to write more." in page.text
    assert [form.action for form in page.seen.forms if form.action.endswith(("/papers", "/quotes"))] == []
    assert [each for each in refused if f"The job is {state}; {first}" not in each.text] == []
    assert "Issue it again" not in maker.get(paper).text
