"""A quote from draft to answer, as the shop sees it: drawn up, looked at, sent, revised, answered."""

import pytest
from sqlalchemy import select

from casewright.records.jobs import History, Job
from casewright.records.papers import Quote, QuoteState
from casewright.records.sessions import reading
from pages.commissions import change_figures, commission, kept, link_on


@pytest.fixture
def job(shop):
    """A job with one small chest."""
    return commission(shop)


def in_books(shop, table, **keys):
    """The rows of a table with these values."""
    with reading(shop.engine, shop.shop_id) as db:
        return list(db.scalars(select(table).filter_by(**keys)))


def test_a_draft_shows_what_the_customer_will_read(job, maker):
    page = maker.post(f"/jobs/{job.job_id}/quotes")

    assert page.seen.headings == ["Quote Q-0001"]
    assert "Tom &lt;Marsh&gt;" in page.html
    assert "dovetailed at all four corners" in page.text
    assert "draft, not yet an offer" in page.text
    assert "Total in USD" in page.text
    assert 'role="img"' in page.html


def test_a_job_has_one_draft(job, maker, owner):
    first = job.draft(maker)

    assert job.draft(owner) == first


def test_a_draft_is_worked_out_anew_at_each_look(job, maker, shop):
    page = maker.get(f"/quotes/{job.draft(maker)}")
    before = page.text

    change_figures(shop, markup=1.5)

    assert total_on(maker.get(page.address)) != total_on_text(before)


def total_on(page):
    """The total that a page names."""
    return total_on_text(page.text)


def total_on_text(text):
    """The total in the words of a page."""
    return text.partition("Total in USD ")[2].split()[0]


def test_a_job_without_a_unit_has_no_price_yet_and_the_page_says_so(job, maker):
    job.take_out(job.unit_ids()[0])

    page = maker.post(f"/jobs/{job.job_id}/quotes")

    assert "This job has no unit yet; draw one first." in page.text
    assert "Send the quote" not in page.text


def test_the_words_of_a_draft_are_kept_and_read_by_the_customer(job, maker, stranger):
    quote_id = job.draft(maker)
    maker.get(f"/quotes/{quote_id}")
    maker.send(f"/quotes/{quote_id}/words", note="Thank you for the tea.", days="10", ready_by="2027-12-24")
    page = maker.send(f"/quotes/{quote_id}/sending")

    read = stranger.get(link_on(page))

    assert "Thank you for the tea." in read.text
    assert "Valid until 11 Mar 2027" in read.text
    assert "Ready by 24 Dec 2027" in read.text


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("days", "many", "Write a whole number"),
        ("days", "0", "0 is outside 1 to 730"),
        ("ready_by", "Christmas", "“Christmas” is not a day"),
    ],
)
def test_a_bad_field_of_a_draft_is_refused_beside_it_and_kept(job, maker, field, typed, said):
    quote_id = job.draft(maker)
    maker.get(f"/quotes/{quote_id}")

    page = maker.send(f"/quotes/{quote_id}/words", status=422, **{field: typed, "note": "Kept."})

    assert said in page.text
    assert page.form(f"/quotes/{quote_id}/words").value("note") == "Kept."


def test_of_two_who_change_a_draft_the_second_sees_both_texts(job, maker, owner):
    quote_id = job.draft(maker)
    owner.get(f"/quotes/{quote_id}")
    maker.get(f"/quotes/{quote_id}")
    maker.send(f"/quotes/{quote_id}/words", note="Walnut suits the light.")

    page = owner.send(f"/quotes/{quote_id}/words", status=409, note="Cherry suits the light.")

    assert "Theirs: Walnut suits the light." in page.text
    assert "Cherry suits the light." in owner.send(f"/quotes/{quote_id}/words").html


@pytest.mark.parametrize(
    ("theirs", "said"),
    [
        ({"days": "10"}, "Theirs: 10"),
        ({"ready_by": "2027-12-24"}, "Theirs: 2027-12-24"),
        ({"note": "Walnut suits the light."}, "Theirs: Walnut suits the light."),
    ],
)
def test_the_second_of_two_is_told_whatever_the_first_changed_in_a_draft(job, maker, owner, theirs, said):
    quote_id = job.draft(maker)
    owner.get(f"/quotes/{quote_id}")
    maker.get(f"/quotes/{quote_id}")
    maker.send(f"/quotes/{quote_id}/words", **theirs)

    page = owner.send(f"/quotes/{quote_id}/words", status=409)

    assert "Somebody else saved this while you were writing." in page.text
    assert said in page.text


def test_the_second_of_two_is_told_of_an_option_that_the_first_left_out(job, maker, owner):
    quote_id = job.draft(maker)
    option = add_option(job, maker, quote_id)
    owner.get(f"/quotes/{quote_id}")
    maker.get(f"/quotes/{quote_id}")
    maker.send(f"/quotes/{quote_id}/words", **{f"offer.{option}": ""})

    page = owner.send(f"/quotes/{quote_id}/words", status=409)

    assert "Theirs: left out" in page.text
    assert (f"offer.{option}", "1") in page.form(f"/quotes/{quote_id}/words").sent()


def test_an_option_that_came_after_a_form_was_opened_is_not_left_out_by_it(job, maker, owner):
    quote_id = job.draft(maker)
    owner.get(f"/quotes/{quote_id}")
    option = add_option(job, maker, quote_id)

    page = owner.send(f"/quotes/{quote_id}/words", status=422, days="many")

    assert (f"offer.{option}", "1") in page.form(f"/quotes/{quote_id}/words").sent()


def add_option(job, who, quote_id):
    """Offers the job's first unit in walnut; gives the option's id."""
    fields = {"unit": job.unit_ids()[0], "label": "In walnut", "case": "walnut"}
    page = who.post(f"/quotes/{quote_id}/options", **fields)
    return page.form(f"/quotes/{quote_id}/words").value("option")


def test_words_of_a_draft_saved_by_a_double_press_are_saved(job, maker):
    quote_id = job.draft(maker)
    form = dict(maker.get(f"/quotes/{quote_id}").form(f"/quotes/{quote_id}/words").sent())
    typed = form | {"note": "Walnut suits the light.", "days": "10"}

    maker.post(f"/quotes/{quote_id}/words", **typed)
    second = maker.post(f"/quotes/{quote_id}/words", **typed)

    assert "Saved." in second.text
    assert "Walnut suits the light." in second.html


def test_a_day_earlier_than_the_estimate_promises_is_pointed_out(job, maker):
    quote_id = job.draft(maker)
    maker.get(f"/quotes/{quote_id}")

    page = maker.send(f"/quotes/{quote_id}/words", ready_by="2027-03-02")

    assert "You promise an earlier day than the estimate" in page.text


def test_figures_of_the_example_are_pointed_out_before_sending(job, maker, shop):
    before = maker.get(f"/quotes/{job.draft(maker)}").text

    change_figures(shop, yearly_costs={"Everything": "90000"})

    after = maker.get(maker.page.address).text
    assert "Prices of an example shop: cherry" in before
    assert "worked out from an example" in before
    assert "worked out from an example" not in after


def test_the_owner_is_led_to_what_is_an_example_still_and_a_maker_is_told_who_can_change_it(
    job, maker, owner
):
    quote_id = job.draft(maker)

    by_owner, by_maker = owner.get(f"/quotes/{quote_id}"), maker.get(f"/quotes/{quote_id}")

    assert 'It belongs under <a href="/shop">Shop</a>.' in by_owner.html
    assert "The owner can put in the shop's own figures." in by_maker.text
    assert "It belongs under" not in by_maker.text
    assert 'href="/shop"' not in by_maker.html


def test_what_has_no_price_stops_the_sending_until_somebody_is_sure(job, maker):
    job.revise(job.unit_ids()[0], **{"pulls.item": "Brass ring"})
    page = maker.get(f"/quotes/{job.draft(maker)}")

    refused = maker.post(f"{page.address}/sending", status=422)
    sent = maker.post(f"{page.address}/sending", sure="1")

    assert "There is no price for Brass ring" in page.text
    assert "Checks say stop" in refused.text
    assert "The customer's link" in sent.text


def test_what_changed_since_it_was_looked_at_is_not_sent_unseen(job, maker, shop):
    quote_id = job.draft(maker)
    maker.get(f"/quotes/{quote_id}")
    form = dict(maker.page.form(f"/quotes/{quote_id}/sending").sent())
    change_figures(shop, markup=1.5)

    page = maker.post(f"/quotes/{quote_id}/sending", status=409, **form)

    assert "changed since you looked" in page.text
    assert kept(shop, quote_id).state is QuoteState.DRAFT


def test_a_sent_quote_moves_the_job_on_and_is_in_its_history(job, maker, shop):
    job.send(maker)

    assert in_books(shop, Job, id=job.job_id)[0].state.value == "quoted"
    said = [each.what for each in in_books(shop, History, job_id=job.job_id)]
    assert "Quote Q-0001, revision 1, is sent now." in said


def test_a_form_sent_twice_sends_once(job, maker):
    quote_id = job.draft(maker)
    maker.get(f"/quotes/{quote_id}")
    form = dict(maker.page.form(f"/quotes/{quote_id}/sending").sent())

    first = maker.post(f"/quotes/{quote_id}/sending", **form)
    second = maker.post(f"/quotes/{quote_id}/sending", **form)

    assert link_on(first) == link_on(second)


def test_a_draft_can_be_thrown_away_and_a_sent_quote_cannot(job, maker, shop):
    draft = job.draft(maker)
    maker.post(f"/quotes/{draft}/removal")
    sent = job.send(maker)

    maker.post(f"/quotes/{sent}/removal", status=409)

    maker.get(f"/quotes/{draft}", status=404)
    assert [each.id for each in in_books(shop, Quote)] == [sent]
