"""What was issued stays as it was issued: page, PDF and books, whatever happens to units and figures."""

import re

import pytest

from casewright.measure.money import show_money, times
from casewright.pieces.words.offer import Offer
from casewright.records.people import Shop
from casewright.records.sessions import writing
from pages.commissions import change_figures, commission, kept, link_on
from printed import text_of

CHERRY = {"kind": "lumber", "item": "cherry", "size": "4/4", "unit": "bd ft", "price": "10.64"}


@pytest.fixture
def job(shop):
    """A job with two units."""
    held = commission(shop)
    held.add(name="Pair of bedsides", count=2)
    return held


@pytest.fixture
def quote_id(job, maker):
    """A quote of it that was sent."""
    return job.send(maker)


def letter_in(page):
    """The quote within a page, as it stands there."""
    return re.search(r'<article class="sheet letter">.*?</article>', page.html, re.S)[0]


def upset(job, shop):
    """Changes whatever a price is made from."""
    job.revise(job.unit_ids()[0], **{"body.width": "36", "woods.case": "walnut"})
    change_figures(shop, markup=0.9, tax_rate=0.11, prices=[CHERRY])


def test_page_link_and_pdf_say_the_same_after_everything_has_changed(job, quote_id, maker, shop, stranger):
    page = maker.get(f"/quotes/{quote_id}")
    before = letter_in(page), maker.browser.get(f"/quotes/{quote_id}/quote.pdf").content
    link = link_on(page)
    upset(job, shop)

    after = maker.get(f"/quotes/{quote_id}")

    again = maker.browser.get(f"/quotes/{quote_id}/quote.pdf").content
    assert (letter_in(after), again) == before
    assert letter_in(stranger.get(link)).replace("<h1>", "").replace("</h1>", "") == before[0].replace(
        '<p class="letter-number">Quote Q-0001</p>', "Quote Q-0001"
    )
    assert stranger.browser.get(f"{link}/quote.pdf").content == again


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_quote_is_the_same_byte_for_byte_on_either_sheet(quote_id, maker, paper):
    first = maker.browser.get(f"/quotes/{quote_id}/quote.pdf?paper={paper}").content

    assert maker.browser.get(f"/quotes/{quote_id}/quote.pdf?paper={paper}").content == first


def test_every_amount_is_the_same_on_page_paper_and_in_the_books(quote_id, maker, shop):
    offer = Offer.model_validate(kept(shop, quote_id).offer)
    amounts = {
        *(unit.price_cents for unit in offer.units),
        *(stage.amount_cents for stage in offer.stages),
        *(offer.net_cents, offer.tax_cents, offer.total_cents),
    }
    printed = {show_money(int(cents)) for cents in amounts}

    page = maker.get(f"/quotes/{quote_id}").text
    paper = text_of(maker.browser.get(f"/quotes/{quote_id}/quote.pdf").content)

    assert {amount for amount in printed if amount not in page} == set()
    assert {amount for amount in printed if amount not in paper} == set()
    assert sum(unit.price_cents for unit in offer.units) + offer.tax_cents == offer.total_cents
    assert sum(stage.amount_cents for stage in offer.stages) == kept(shop, quote_id).total_cents


def test_the_quote_says_that_it_is_out_of_date_why_and_what_it_would_be_today(job, quote_id, maker, shop):
    upset(job, shop)

    page = maker.get(f"/quotes/{quote_id}")

    assert "Out of date: unit A is at revision 2, quoted at 1" in page.text
    assert "the shop's figures: markup, prices, tax rate" in page.html.replace("&#39;", "'")
    assert re.search(r"Before tax it was \$[\d,.]+; today it would be \$[\d,.]+ \(\+\$", page.text)


def test_nothing_is_out_of_date_while_nothing_has_changed(quote_id, maker):
    assert "Out of date" not in maker.get(f"/quotes/{quote_id}").text


def test_another_name_of_the_shop_makes_no_price_out_of_date(quote_id, maker, shop):
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Shop, shop.shop_id).name = "Elm Street Furniture"

    assert "Out of date" not in maker.get(f"/quotes/{quote_id}").text


def test_the_owner_sees_line_by_line_what_a_dearer_wood_adds(shop, owner):
    job = commission(shop)
    quote_id = job.send(owner)
    estimate = kept(shop, quote_id).basis["estimate"]
    then = {each["label"]: each["amount_cents"] for each in estimate["lines"]}
    direct = sum(each["amount_cents"] for each in estimate["materials"])
    feet = then["cherry 4/4"] // 950
    change_figures(shop, tax_rate=0.06, prices=[CHERRY])

    page = owner.get(f"/quotes/{quote_id}")

    more = feet * (1064 - 950)
    rows = rows_of(page)
    assert rows["cherry 4/4"] == [
        show_money(then["cherry 4/4"]),
        show_money(feet * 1064),
        f"+{show_money(more)}",
    ]
    assert rows["mark-up on materials"][2] == f"+{show_money(times(direct + more, 0.2) - times(direct, 0.2))}"
    assert "labour" not in rows


def rows_of(page):
    """The lines of the table of then and now: by label, what stands in their cells."""
    table = re.search(r"<tbody>.*?</tbody>", page.html.partition('id="changes"')[2], re.S)[0]
    return {
        re.search(r'<th scope="row">(.*?)<br>', row)[1]: re.findall(
            r'<td class="number"[^>]*>(.*?)</td>', row
        )
        for row in table.split("</tr>")[:-1]
    }


def test_the_maker_receives_no_line_of_it(job, quote_id, maker, shop):
    upset(job, shop)

    page = maker.get(f"/quotes/{quote_id}")

    assert "Line by line" not in page.html
    assert "mark-up on materials" not in page.html


def test_what_cannot_be_built_today_is_said_and_the_quote_still_stands(job, quote_id, maker, shop):
    first, second = job.unit_ids()
    job.take_out(first)
    job.take_out(second)

    page = maker.get(f"/quotes/{quote_id}")

    assert "unit A has been taken out; unit B has been taken out" in page.text
    assert "It cannot be priced today: This job has no unit yet" in page.text
    assert "Total in USD" in page.text


def test_a_draft_is_printed_as_a_draft(job, maker):
    draft = job.draft(maker)

    printed = maker.browser.get(f"/quotes/{draft}/quote.pdf")

    assert "This is a draft of Quote Q-0001, revision 1" in text_of(printed.content)
    assert printed.headers["content-disposition"] == 'inline; filename="Q-0001-1-draft.pdf"'


def test_a_quote_is_kept_with_all_that_it_was_made_from(job, quote_id, shop):
    basis = kept(shop, quote_id).basis

    assert [(each["code"], each["revision"]) for each in basis["units"]] == [("A", 1), ("B", 1)]
    assert basis["figures_revision"] == 1
    assert basis["figures"]["tax_rate"] == 0.06
    assert {"item", "unit_price_cents", "source"} <= set(basis["estimate"]["materials"][0])
