"""The states of a quote: where it may go, what it takes along, and when it expires."""

import pytest
from sqlalchemy import select

from casewright.records.jobs import Job, JobState, Unit
from casewright.records.papers import Quote, QuoteState
from casewright.records.sessions import reading, writing
from casewright.shop.quotes import ARROWS
from counting import MOST, counted
from pages.commissions import change_figures, commission, id_in, kept
from pages.visitor import Visitor

COST = ("For you alone", "Least to accept", "Cost if it goes as usual", "Line by line")


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


def in_books(shop, table, **keys):
    """The rows of a table with these values."""
    with reading(shop.engine, shop.shop_id) as db:
        return list(db.scalars(select(table).filter_by(**keys)))


def set_state(shop, quote_id, state):
    """Puts a quote into a state, whatever the arrows say."""
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Quote, (shop.shop_id, quote_id)).state = state


def test_a_new_revision_supersedes_the_one_before_when_it_is_sent(job, maker, shop):
    first = job.send(maker)
    second = id_in(maker.post(f"/quotes/{first}/revisions").address)
    between = kept(shop, first).state

    page = maker.post(f"/quotes/{second}/sending")

    assert between is QuoteState.SENT
    assert kept(shop, first).state is QuoteState.SUPERSEDED
    assert page.seen.headings == ["Quote Q-0001, revision 2"]


def test_an_earlier_revision_that_was_accepted_is_not_superseded(job, maker, shop):
    first = job.send(maker)
    second = id_in(maker.post(f"/quotes/{first}/revisions").address)
    maker.post(f"/quotes/{first}/answer", answer="accept", way="spoken", name="Tom Marsh")

    page = maker.post(f"/quotes/{second}/sending", status=409)

    assert "accepted meanwhile" in page.text
    assert kept(shop, first).state is QuoteState.ACCEPTED


def test_the_quotes_of_other_numbers_that_wait_give_way_to_the_accepted_one(job, maker, shop):
    first, second = job.send(maker), job.send(maker)

    maker.post(f"/quotes/{second}/answer", answer="accept", way="signed", name="Tom Marsh")

    assert kept(shop, first).state is QuoteState.SUPERSEDED
    assert kept(shop, second).state is QuoteState.ACCEPTED


ACTS = {
    QuoteState.SENT: ("sending", {"sure": "1"}),
    QuoteState.ACCEPTED: ("answer", {"answer": "accept", "way": "spoken", "name": "Tom Marsh"}),
    QuoteState.DECLINED: ("answer", {"answer": "decline", "way": "spoken", "name": "Tom Marsh"}),
}


NO_ARROWS = [(was, act) for was in QuoteState for act in ACTS if act not in ARROWS[was]]


@pytest.mark.one_database
@pytest.mark.parametrize("who", ["owner", "maker"])
@pytest.mark.parametrize(("was", "act"), NO_ARROWS)
def test_where_there_is_no_arrow_a_quote_does_not_move(job, shop, request, who, was, act):
    visitor: Visitor = request.getfixturevalue(who)
    quote_id = job.send(visitor)
    set_state(shop, quote_id, was)
    path, fields = ACTS[act]

    visitor.post(f"/quotes/{quote_id}/{path}", status=409, **fields)

    assert kept(shop, quote_id).state is was


@pytest.mark.one_database
@pytest.mark.parametrize("was", [state for state in QuoteState if QuoteState.SUPERSEDED not in ARROWS[state]])
def test_no_revision_is_made_of_what_cannot_be_superseded(job, maker, shop, was):
    quote_id = job.send(maker)
    set_state(shop, quote_id, was)

    maker.post(f"/quotes/{quote_id}/revisions", status=409)

    assert len(in_books(shop, Quote)) == 1


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("state", "remedy"), [(JobState.CLOSED, "open it again"), (JobState.LOST, "take it up again")]
)
def test_a_quote_of_a_job_that_is_over_is_neither_revised_nor_sent(job, maker, shop, state, remedy):
    sent = job.send(maker)
    draft = job.draft(maker)
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Job, (shop.shop_id, job.job_id)).state = state

    revising = maker.post(f"/quotes/{sent}/revisions", status=409)
    sending = maker.post(f"/quotes/{draft}/sending", status=409, sure="1")
    pages = [maker.get(f"/quotes/{sent}"), maker.get(f"/quotes/{draft}")]

    why = f"The job is {state.value}; {remedy} to write papers for it."
    assert [why in page.text for page in (revising, sending, *pages)] == [True] * 4
    assert [form.action for page in pages for form in page.seen.forms if "revisions" in form.action] == []
    assert [form.action for page in pages for form in page.seen.forms if "sending" in form.action] == []
    assert len(in_books(shop, Quote)) == 2


def test_a_quote_is_not_accepted_when_its_job_has_no_unit_any_more(job, maker, shop):
    quote_id = job.send(maker)
    job.take_out(job.unit_ids()[0])

    page = maker.post(
        f"/quotes/{quote_id}/answer", status=409, answer="accept", way="spoken", name="Tom Marsh"
    )

    assert "The job has no unit, so there is nothing to call accepted" in page.text
    assert kept(shop, quote_id).state is QuoteState.SENT


@pytest.mark.one_database
@pytest.mark.parametrize(
    "act", ["words", "sending", "revisions", "answer", "removal", "link", "link/ending", "options"]
)
def test_the_bench_has_nothing_to_do_with_quotes(job, maker, bench, act):
    quote_id = job.send(maker)

    bench.post(f"/quotes/{quote_id}/{act}", status=403)
    bench.get(f"/quotes/{quote_id}", status=403)
    bench.get(f"/quotes/{quote_id}/quote.pdf", status=403)


def test_a_quote_expires_by_itself_and_cannot_be_accepted_then(job, maker, shop, clock):
    quote_id = job.send(maker)
    clock.pass_by(days=31)
    later = shop.visitor()

    page = later.post(
        f"/quotes/{quote_id}/answer", status=409, answer="accept", way="spoken", name="Tom Marsh"
    )

    assert "It has expired" in page.text
    assert "expired" in later.get(f"/quotes/{quote_id}").text


def test_on_its_last_day_a_quote_still_stands(job, maker, shop, clock):
    quote_id = job.send(maker)
    clock.pass_by(days=30)

    shop.visitor().post(f"/quotes/{quote_id}/answer", answer="accept", way="signed", name="Tom Marsh")

    assert kept(shop, quote_id).state is QuoteState.ACCEPTED


def test_that_it_expired_is_written_down_when_a_revision_is_made(job, maker, shop, clock):
    quote_id = job.send(maker)
    clock.pass_by(days=31)
    held = kept(shop, quote_id).state

    shop.visitor().post(f"/quotes/{quote_id}/revisions")

    assert held is QuoteState.SENT
    assert kept(shop, quote_id).state is QuoteState.EXPIRED


def test_a_spoken_yes_approves_the_units_at_the_quoted_revision_and_moves_the_job(job, maker, shop):
    quote_id = job.send(maker)
    job.revise(job.unit_ids()[0], **{"body.width": "30"})

    page = maker.post(
        f"/quotes/{quote_id}/answer", answer="accept", way="spoken", name="Tom Marsh", words="By telephone."
    )

    unit = in_books(shop, Unit, id=job.unit_ids()[0])[0]
    assert (unit.approved, unit.revision) == (1, 2)
    assert in_books(shop, Job, id=job.job_id)[0].state.value == "accepted"
    assert "by Tom Marsh, by word of mouth, taken down by Ben Tull" in page.text
    assert "By telephone." in page.text


def test_a_no_leaves_job_and_units_as_they_are(job, maker, shop):
    quote_id = job.send(maker)

    maker.post(f"/quotes/{quote_id}/answer", answer="decline", way="written", name="Tom Marsh")

    assert in_books(shop, Job, id=job.job_id)[0].state.value == "quoted"
    assert in_books(shop, Unit, id=job.unit_ids()[0])[0].approved is None


@pytest.mark.one_database
def test_the_owner_sees_what_a_quote_leaves_and_the_maker_never_receives_it(job, owner, maker, shop):
    quote_id = job.send(maker)
    change_figures(shop, markup=1.5)

    seen, received = owner.get(f"/quotes/{quote_id}"), maker.get(f"/quotes/{quote_id}")

    assert [words for words in COST if words not in seen.text] == []
    assert [words for words in COST if words in received.html] == []


def test_a_page_of_a_quote_asks_the_database_little_however_many_units_there_are(job, owner, shop):
    job.add()
    job.add()
    quote_id = job.draft(owner)

    with counted(shop.engine) as asked:
        owner.get(f"/quotes/{quote_id}")

    assert len(asked) <= MOST
