"""One box over everything in the shop, and never over the fence."""

import re

import pytest
from sqlalchemy import select

from casewright.records.base import new_id
from casewright.records.bench import Drawer
from casewright.records.jobs import Customer
from casewright.records.papers import Paper, PaperKind, QuoteState
from casewright.records.search import slips
from casewright.records.sessions import writing
from counting import MOST, counted
from jobs import many_jobs, take_on, with_quote, with_unit


@pytest.fixture
def filled(shop):
    """A shop with one job that has everything."""
    with writing(shop.engine, shop.shop_id) as db:
        job = take_on(
            db,
            shop,
            14,
            name="Walnut dresser",
            customer="Eleanor Whitcombe",
            note="Joints as in the sample, 13/16 fronts. 100% sure.",
            asked="Room for long gloves.",
        )
        customer = db.get_one(Customer, (shop.shop_id, job.customer_id))
        customer.phone, customer.email = "(555) 026-2000", "eleanor@example.com"
        customer.address, customer.note = "12 Mill Lane", "A dog called Biscuit."
        with_unit(db, shop, job, name="Chest for the landing")
        with_quote(db, shop, job, QuoteState.SENT, 12)
        for kind, revision in (
            (PaperKind.LUMBER_ORDER, 1),
            (PaperKind.LUMBER_ORDER, 2),
            (PaperKind.CUT_LIST, 1),
            (PaperKind.CAUTION_SHEET, 1),
        ):
            db.add(
                Paper(
                    id=new_id(),
                    job_id=job.id,
                    kind=kind,
                    number=8,
                    revision=revision,
                    content={},
                    basis_hash="0",
                    issued_at=shop.clock.now,
                    who="Ada Marsh",
                )
            )
        take_on(db, shop, 15, name="Ash bench", customer="Tom Roe")
    return shop


def kinds(page):
    """What was found, kind by kind, with how many."""
    return dict(re.findall(r"<h2 id=\"kind-\d\">(\w+) <span class=\"tally\">([\d+]+)</span>", page.html))


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("walnut", {"Jobs": "1"}),
        ("dresser whitcombe", {"Jobs": "1"}),
        ("WHITCOMBE", {"Jobs": "1", "Customers": "1"}),
        ("14", {"Jobs": "1"}),
        ("JOB-0014", {"Jobs": "1"}),
        ("#14", {"Jobs": "1"}),
        ("eleanor@example", {"Customers": "1"}),
        ("026-2000", {"Customers": "1"}),
        ("5550262000", {"Customers": "1"}),
        ("Q-12", {"Quotes": "1"}),
        ("Q-0012", {"Quotes": "1"}),
        ("L-0008", {"Papers": "2"}),
        ("l8", {"Papers": "2"}),
        ("lumber order 8", {"Papers": "2"}),
        ("C-0008", {"Papers": "1"}),
        ("Cut list 8", {"Papers": "1"}),
        ("S-0008", {"Papers": "1"}),
        ("caution sheet 8", {"Papers": "1"}),
        ("landing", {"Units": "1"}),
        ("14-A", {"Units": "1"}),
        ("14-A-R2-1", {"Drawers": "1"}),
        ("a-r2-1", {"Drawers": "1"}),
        ("R2-1", {"Drawers": "1"}),
        ("14-A-R2", {"Drawers": "1"}),
        ("13/16", {"Notes": "1"}),
        ("100%", {"Notes": "1"}),
        ("gloves", {"Notes": "1"}),
        ("biscuit", {"Notes": "1"}),
        ("mill lane", {"Notes": "1"}),
    ],
)
def test_one_box_finds_everything_by_what_it_is_called(maker, filled, words, found):
    page = maker.browser.get("/search", params={"q": words})

    assert kinds(maker.get(page.url.raw_path.decode())) == found


@pytest.mark.parametrize("words", ["walnt", "wallnut", "walmut", "wlanut", "Whitcomb", "whitkombe"])
def test_one_wrong_letter_still_finds_it_and_says_so(maker, filled, words):
    page = maker.get(f"/search?q={words}")

    assert "Walnut dresser" in page.text
    assert ("differ from it by a letter" in page.text) is (words != "Whitcomb")


@pytest.mark.one_database
@pytest.mark.parametrize(
    "words",
    ["wlant", "%", "_", "walnut ash", "14-A-R9-1", "99", "Q-99", "L-0009", "J-0008", "\\", "' OR 1=1"],
)
def test_what_is_not_there_is_not_found(maker, filled, words):
    page = maker.browser.get("/search", params={"q": words})

    shown = maker.get(page.url.raw_path.decode())

    assert "Nothing found" in shown.text or kinds(shown) == {"Notes": "1"}


def test_an_empty_box_says_what_can_be_searched(maker):
    page = maker.get("/search")

    assert "What can be found" in page.text
    assert "14-A-R4-1" in page.text


def test_a_note_is_shown_around_the_word(maker, filled):
    page = maker.get("/search?q=sample")

    assert "Joints as in the sample, 13/16 fronts." in page.text


def test_what_is_found_leads_to_its_page(maker, filled):
    with writing(filled.engine, filled.shop_id) as db:
        drawer = db.scalars(select(Drawer.id).where(Drawer.code == "R2-1")).one()

    page = maker.get("/search?q=14-A-R2-1")

    assert f"/bench/{drawer}" in page.seen.links


def test_a_paper_is_shown_by_its_number_and_job_the_latest_first(maker, filled):
    page = maker.get("/search?q=L-0008")

    shown = page.text.partition("Papers")[2]
    assert "lumber order, job 14 · Walnut dresser" in shown
    assert shown.index("L-0008, revision 2") < shown.index("L-0008, revision 1")
    assert len([link for link in page.seen.links if link.startswith("/papers/")]) == 2


def test_a_search_never_looks_over_the_fence(app, books, clock, filled):
    from people import new_shop  # noqa: PLC0415

    stranger = new_shop(app, books, clock).visitor()

    found = [
        kinds(stranger.get(f"/search?q={words}"))
        for words in (
            "walnut",
            "walnt",
            "14",
            "Q-12",
            "L-0008",
            "landing",
            "14-A-R2-1",
            "gloves",
            "5550262000",
        )
    ]

    assert found == [{}] * 9


@pytest.mark.one_database
@pytest.mark.parametrize("words", ["chest", "chset", "R1-1", "Q-7", "L-7", "555", "everything under the sun"])
def test_a_search_takes_few_queries(owner, shop, words):
    many_jobs(shop, 60)

    with counted(shop.engine) as statements:
        owner.get(f"/search?q={words}")

    assert len(statements) <= MOST


def test_of_very_many_only_the_first_are_shown(owner, shop):
    many_jobs(shop, 30)

    page = owner.get("/search?q=chest")

    assert kinds(page) == {"Jobs": "20+"}
    assert "There are more; add a word to find the one." in page.text


def test_slips_of_a_word_are_told_by_patterns_that_take_wild_signs_literally():
    found = set(slips("10%x"))

    assert {"%_0\\%x%", "%1\\%x%", "%1_0\\%x%", "%01\\%x%"} <= found
