"""The customer's link: read without an account, answered once, and of no use to anybody else."""

import gzip
import re
from concurrent.futures import ThreadPoolExecutor

import pytest
from sqlalchemy import select, update

from casewright.pieces.words.offer import OfferedStage
from casewright.records.jobs import History, Job, Unit
from casewright.records.papers import Quote, QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import reading, writing
from casewright.web.quotes.offer_shown import shown
from pages.commissions import commission, id_in, kept, link_on
from pages.visitor import Visitor
from printed import offered

YES = {"answer": "accept", "agreed": "1", "name": "Tom Marsh"}
NO = {"answer": "decline", "name": "Tom Marsh"}


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


@pytest.fixture
def link(job, maker):
    """The link of a quote that was sent."""
    return link_on(maker.get(f"/quotes/{job.send(maker)}"))


def quote_of(shop):
    """The only quote of the shop."""
    with reading(shop.engine, shop.shop_id) as db:
        return db.scalars(select(Quote)).one()


def test_the_customer_reads_the_quote_without_account_or_cookie(link, stranger):
    page = stranger.get(link)

    assert page.seen.headings == ["Quote Q-0001"]
    assert "Marrow Street Furniture has made this quote for you" in page.text
    assert "It stands until 31 Mar 2027" in page.text
    assert "set-cookie" not in page.headers


def test_the_shop_copies_the_link_with_one_press(job, maker):
    page = maker.get(f"/quotes/{job.send(maker)}")

    assert 'data-copy="link-address"' in page.html
    assert 'id="link-address-said"' in page.html
    assert "/static/copy." in page.html


def test_a_quote_whose_pieces_were_taken_out_is_not_accepted_and_says_whom_to_ask(job, link, stranger, shop):
    job.take_out(job.unit_ids()[0])
    stranger.get(link)

    page = stranger.post(f"{link}/answer", 409, **YES)

    assert "The shop has taken out what this quote offers" in page.text
    assert page.form(f"{link}/answer").value("name") == "Tom Marsh"
    assert quote_of(shop).state is QuoteState.SENT


def test_the_page_leads_nowhere_into_the_shop(link, stranger):
    page = stranger.get(link)

    outside = [each for each in page.seen.links if not each.startswith(("#", "tel:", "mailto:", link))]
    actions = [form.action for form in page.seen.forms]
    assert outside == []
    assert actions == [f"{link}/answer"]


def test_the_page_is_kept_by_nobody_and_tells_nobody_its_address(link, stranger):
    headers = stranger.get(link).headers

    assert headers["cache-control"] == "no-store"
    assert headers["referrer-policy"] == "no-referrer"
    assert headers["x-robots-tag"] == "noindex, nofollow"


def test_the_page_weighs_less_than_60_kb_with_its_style(link, stranger):
    page = stranger.get(link)

    sheets = re.findall(r'(?:href|src)="(/static/[^"]+)"', page.html)
    files = [stranger.browser.get(each).content for each in sheets]
    weight = sum(len(gzip.compress(each, 5)) for each in (page.html.encode(), *files))
    assert weight < 60_000


def test_no_figure_of_the_shop_is_in_what_the_customer_gets(job, maker, shop, stranger):
    quote_id = job.send(maker)
    page = stranger.get(link_on(maker.get(f"/quotes/{quote_id}")))

    basis = kept(shop, quote_id).basis["estimate"]
    secrets = [
        basis["cost_cents"],
        basis["lowest_cents"],
        basis["rate_cents"],
        basis["before_rounding_cents"],
    ]
    printed = [f"{cents / 100:,.2f}" for cents in secrets]
    assert [amount for amount in printed if amount in page.html] == []


def test_opening_a_link_is_noted_once_and_answers_nothing(link, shop, clock, stranger):
    first = clock.now
    stranger.get(link)
    clock.pass_by(hours=5)

    stranger.get(link)

    held = quote_of(shop)
    assert held.opened_at == first
    assert held.state is QuoteState.SENT


def test_the_shop_looking_at_its_own_link_does_not_count(link, shop, maker):
    maker.get(link)

    assert quote_of(shop).opened_at is None


@pytest.mark.one_database
@pytest.mark.parametrize("method", ["get", "head"])
def test_a_program_that_looks_at_every_link_accepts_nothing(link, shop, stranger, method):
    getattr(stranger.browser, method)(link)
    getattr(stranger.browser, method)(f"{link}/answer")
    getattr(stranger.browser, method)(f"{link}/quote.pdf")

    assert quote_of(shop).state is QuoteState.SENT


def test_a_yes_is_kept_with_name_time_and_words_and_told_on_both_pages(link, job, shop, stranger, maker):
    stranger.get(link)

    page = stranger.post(f"{link}/answer", **YES, words="When can we see the wood?")

    held = quote_of(shop)
    assert (held.state, held.answered_name, held.answered_at) == (
        QuoteState.ACCEPTED,
        "Tom Marsh",
        shop.clock.now,
    )
    assert "Accepted by Tom Marsh on 1 Mar 2027, 10:00" in page.text
    assert "When can we see the wood?" in maker.get(f"/quotes/{held.id}").text


def test_a_yes_moves_the_job_approves_the_units_and_is_in_the_history(link, job, shop, stranger):
    stranger.post(f"{link}/answer", **YES)

    with reading(shop.engine, shop.shop_id) as db:
        assert db.scalars(select(Job)).one().state.value == "accepted"
        assert db.scalars(select(Unit)).one().approved == 1
        said = [each.what for each in db.scalars(select(History).where(History.job_id == job.job_id))]
    assert "Quote Q-0001, revision 1, is accepted now: accepted by Tom Marsh by the link." in said


def test_a_no_is_kept_as_well(link, shop, stranger):
    page = stranger.post(f"{link}/answer", **NO)

    assert quote_of(shop).state is QuoteState.DECLINED
    assert "Declined by Tom Marsh" in page.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"name": ""}, "Write your name, as under a letter."),
        ({"agreed": ""}, "Tick that you accept the price, the drawing and the terms."),
        ({"answer": "perhaps"}, "Choose one of the list."),
        ({"answer": ""}, "Choose one of the list."),
        ({"name": "x" * 121}, "120 are the most"),
    ],
)
def test_an_answer_that_lacks_something_is_not_taken_and_what_was_typed_stays(
    link, shop, stranger, changed, said
):
    page = stranger.post(f"{link}/answer", status=422, **YES | {"words": "Kept."} | changed)

    assert said in page.text
    assert page.form(f"{link}/answer").value("words") == "Kept."
    assert quote_of(shop).state is QuoteState.SENT


@pytest.mark.parametrize("again", [YES, NO])
@pytest.mark.parametrize("first", [YES, NO])
def test_an_answer_is_final(link, shop, stranger, first, again):
    stranger.post(f"{link}/answer", **first)
    before = quote_of(shop)

    page = stranger.post(f"{link}/answer", status=409, **again | {"name": "Somebody else"})

    after = quote_of(shop)
    assert (after.state, after.answered_name) == (before.state, "Tom Marsh")
    assert "by Tom Marsh" in page.text


def test_of_twenty_answers_in_one_moment_one_is_taken(link, shop):
    def answer(number):
        visitor = Visitor(shop.app)
        fields = (YES if number % 2 else NO) | {"name": f"Visitor {number}"}
        return visitor.browser.post(f"{link}/answer", data=fields, follow_redirects=False).status_code

    with ThreadPoolExecutor(20) as pool:
        statuses = list(pool.map(answer, range(20)))

    with reading(shop.engine, shop.shop_id) as db:
        told = [each.what for each in db.scalars(select(History)) if " by Visitor " in each.what]
    assert sorted(statuses) == [303] + [409] * 19
    assert len(told) == 1


def test_an_expired_quote_says_so_and_takes_no_answer(link, shop, clock, stranger):
    clock.pass_by(days=31)

    page = stranger.post(f"{link}/answer", status=410, **YES)

    assert "This quote stood until 31 Mar 2027 and can no longer be accepted" in page.text
    assert quote_of(shop).answered_at is None


def test_a_superseded_quote_says_so_and_takes_no_answer(job, maker, shop, stranger):
    first = job.send(maker)
    link = link_on(maker.get(f"/quotes/{first}"))
    second = id_in(maker.post(f"/quotes/{first}/revisions").address)
    maker.post(f"/quotes/{second}/sending")

    page = stranger.post(f"{link}/answer", status=409, **YES)

    assert "The shop has sent a newer quote" in page.text
    assert kept(shop, second).state is QuoteState.SENT


def test_an_ended_link_says_so_and_shows_and_takes_nothing(link, maker, shop, stranger):
    held = quote_of(shop)
    maker.post(f"/quotes/{held.id}/link/ending")

    page = stranger.get(link)

    assert "The shop has ended this link" in page.text
    assert "Total in USD" not in page.text
    stranger.post(f"{link}/answer", status=410, **YES)
    stranger.get(f"{link}/quote.pdf", status=404)
    assert quote_of(shop).state is QuoteState.SENT


def test_a_new_link_stops_the_old_one(link, maker, shop, stranger):
    page = maker.post(f"/quotes/{quote_of(shop).id}/link")

    fresh = link_on(page)
    assert fresh != link
    stranger.get(link, status=404)
    stranger.get(fresh)


def test_the_link_is_kept_as_a_hash_and_given_out_only_to_the_shop(link, shop):
    secret = link.partition(".")[2]

    assert len(secret) == 43
    assert secret not in repr(vars(quote_of(shop)))


WRONG = {
    "one sign other": lambda link: link[:-1] + ("A" if link[-1] != "A" else "B"),
    "one sign short": lambda link: link[:-1],
    "one sign more": lambda link: f"{link}A",
    "another shop": lambda link: re.sub(r"/quote/\w+", "/quote/0000000000000", link),
    "nothing to speak of": lambda link: "/quote/x",
    "a quotation mark": lambda link: f"{link}'--",
    "very long": lambda link: f"/quote/{'a' * 4000}",
}


@pytest.mark.one_database
@pytest.mark.parametrize("slip", list(WRONG))
@pytest.mark.parametrize("more", ["", "/quote.pdf"])
def test_a_link_with_a_slip_in_it_opens_nothing(link, stranger, slip, more):
    page = stranger.get(f"{WRONG[slip](link)}{more}", status=404)

    assert "No quote at this address" in page.text
    assert page.seen.links == ["#main"]


def test_an_answer_by_a_wrong_link_is_not_taken(link, shop, stranger):
    stranger.post(f"{link[:-1]}_/answer", status=404, **YES)

    assert quote_of(shop).state is QuoteState.SENT


def test_who_tries_links_is_made_to_wait_and_good_links_are_not(link, stranger):
    tries = [stranger.browser.get(f"{link[:-4]}{number:04d}").status_code for number in range(40)]

    assert tries[:30] == [404] * 30
    assert set(tries[30:]) == {429}
    stranger.get(link)
    stranger.post(f"{link}/answer", **YES)


def test_a_browser_that_names_no_origin_from_a_page_without_referrer_may_answer(link, shop, stranger):
    stranger.browser.headers["origin"] = "null"

    stranger.post(f"{link}/answer", **YES)

    assert quote_of(shop).state is QuoteState.ACCEPTED


@pytest.mark.parametrize("headers", [{"origin": "http://elsewhere.test"}, {"sec-fetch-site": "cross-site"}])
def test_a_page_elsewhere_cannot_answer(link, shop, stranger, headers):
    stranger.browser.headers.update(headers)

    stranger.post(f"{link}/answer", status=403, **YES)

    assert quote_of(shop).state is QuoteState.SENT


def test_the_shops_telephone_stands_where_something_has_ended(link, shop, clock, stranger, owner):
    with_phone(shop, "+1 802 555 0137")
    clock.pass_by(days=31)

    page = stranger.get(link)

    assert "Marrow Street Furniture is at +1 802 555 0137" in page.text
    assert "tel:+18025550137" in page.seen.links


def test_who_accepts_reads_what_is_paid_first_and_when(link, shop, stranger):
    page = stranger.post(f"{link}/answer", **YES)

    first = quote_of(shop).offer["stages"][0]["amount_cents"] / 100
    assert f"The first payment, ${first:,.2f}, falls due on signing; the shop will be in touch." in page.text


@pytest.mark.parametrize(
    ("trigger", "due"),
    [
        ("completion, not delivery", "on completion, not delivery"),
        ("before material is bought", "before material is bought"),
        ("three quarters complete", "at this stage: three quarters complete"),
    ],
)
def test_the_first_payment_falls_due_as_its_stage_says(trigger, due):
    stage = OfferedStage(trigger=trigger, share=0.5, amount_cents=123_456)

    said = shown(offered().model_copy(update={"stages": (stage,)})).first_payment

    assert said == f"The first payment, $1,234.56, falls due {due}; the shop will be in touch."


@pytest.mark.one_database
@pytest.mark.parametrize("answer", [{}, YES, NO])
def test_a_shop_that_gave_neither_telephone_nor_e_mail_is_named_as_whom_to_ask(link, shop, stranger, answer):
    stranger.browser.post(f"{link}/answer", data=answer)

    assert "Ask Marrow Street Furniture, from whom you have this link." in stranger.get(link).text


def with_phone(shop, phone):
    """Gives the shop a telephone number."""
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Shop, shop.shop_id).phone = phone


def test_an_address_that_opens_on_this_machine_alone_says_so(job, maker):
    quote_id = job.send(maker)

    here = maker.browser.get(f"/quotes/{quote_id}", headers={"host": "localhost:8000"}).text
    away = maker.browser.get(f"/quotes/{quote_id}").text

    assert "This address opens on this machine alone" in here
    assert "This address opens on this machine alone" not in away


@pytest.mark.parametrize("offer", [None, {"total_cents": "much"}])
def test_a_quote_that_cannot_be_read_back_opens_nothing(link, stranger, shop, offer):
    with writing(shop.engine, shop.shop_id) as db:
        db.execute(update(Quote).values(offer=offer))

    page = stranger.get(link, status=404)

    assert page.seen.headings == ["No quote at this address"]
