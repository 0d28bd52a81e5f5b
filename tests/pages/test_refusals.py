"""Pages that say why there is no other: in the frame of whoever is signed in, with the way back."""

import pytest

from casewright.records.jobs import Job
from casewright.records.people import Shop
from casewright.records.sessions import writing
from pages.commissions import commission, link_on
from pages.visitor import ORIGIN

NAVIGATION = 'aria-label="Main"'
SEARCH = 'role="search"'
BACK = ">Back</a>"


def asked_from(visitor, referer, address):
    """Gets a page from a link on another page."""
    return visitor._look(visitor.browser.get(address, headers={"referer": referer}), 404)


def moved_from(visitor, referer, job, state="ready"):
    """Asks for a move that has no arrow, from a page."""
    answer = visitor.browser.post(f"{job}/state", data={"state": state}, headers={"referer": referer})
    return visitor._look(answer, 409)


@pytest.fixture
def job(shop):
    """The address of a job with one small chest."""
    return f"/jobs/{commission(shop).job_id}"


@pytest.mark.one_database
@pytest.mark.parametrize("address", ["/no/such/page", "/jobs/0000000000000", "/customers/x"])
def test_who_is_signed_in_finds_the_whole_frame_around_a_page_that_is_not_there(owner, address):
    page = owner.get(address, status=404)

    assert page.seen.headings == ["Not found"]
    assert NAVIGATION in page.html
    assert SEARCH in page.html
    assert "Ada Marsh, owner" in page.text


@pytest.mark.one_database
def test_nobody_in_particular_finds_no_frame_of_a_shop(stranger):
    page = stranger.get("/no/such/page", status=404)

    assert NAVIGATION not in page.html
    assert SEARCH not in page.html


@pytest.mark.one_database
def test_whoever_may_not_come_in_finds_their_own_rooms(bench):
    page = bench.get("/customers", status=403)

    assert NAVIGATION in page.html
    assert 'href="/board"' in page.html
    assert 'href="/customers"' not in page.html
    assert SEARCH not in page.html


@pytest.mark.one_database
def test_a_refused_move_is_no_change_by_somebody_else_and_leads_back(maker, job):
    page = moved_from(maker, f"{ORIGIN}{job}", job)

    assert page.seen.headings == ["This cannot be done"]
    assert NAVIGATION in page.html
    assert f'href="{job}"{BACK}' in page.html


def test_what_somebody_else_changed_is_called_so(shop, maker):
    job = commission(shop)
    unit = f"/units/{job.unit_ids()[0]}"
    job.revise(job.unit_ids()[0], **{"body.depth": "20"})

    page = maker.post(f"{unit}/approval", status=409, number="1")

    assert page.seen.headings == ["Changed meanwhile"]


@pytest.mark.one_database
def test_a_page_of_the_demo_keeps_its_mark_when_something_is_refused(shop, maker, job):
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Shop, shop.shop_id).demo = True

    page = moved_from(maker, f"{ORIGIN}{job}", job)

    assert "The demo's jobs and customers are made up." in page.text


@pytest.mark.one_database
def test_the_way_back_does_not_say_again_what_was_done(maker, job):
    page = asked_from(maker, f"{ORIGIN}/jobs?state=quoted&said=saved", "/jobs/0000000000000")

    assert f'href="/jobs?state=quoted"{BACK}' in page.html


@pytest.mark.one_database
def test_a_page_that_is_not_there_says_of_nothing_that_it_was_saved(maker):
    page = maker.get("/jobs/0000000000000?said=saved", status=404)

    assert "Saved." not in page.text


@pytest.mark.one_database
def test_from_an_address_that_only_takes_forms_the_way_leads_to_its_page(maker, job):
    page = moved_from(maker, f"{ORIGIN}{job}/state", job)

    assert f'href="{job}"{BACK}' in page.html


@pytest.mark.one_database
@pytest.mark.parametrize(
    "referer",
    [
        "",
        "https://elsewhere.test/jobs",
        "http://shop.test.elsewhere.test/jobs",
        "http://shop.test//elsewhere.test/",
        "http://[shop.test/jobs",
        "/jobs",
        "javascript:alert(1)",
        f"{ORIGIN}/jobs/0000000000000",
    ],
)
def test_the_way_back_leads_to_another_page_of_this_site_or_nowhere(maker, referer):
    page = asked_from(maker, referer, "/jobs/0000000000000")

    assert BACK not in page.html


@pytest.mark.one_database
@pytest.mark.parametrize(("is_demo", "marks"), [(True, 1), (False, 0)])
def test_the_customers_page_of_a_demo_quote_says_that_it_is_made_up(shop, maker, stranger, is_demo, marks):
    held = commission(shop)
    link = link_on(maker.get(f"/quotes/{held.send(maker)}"))
    with writing(shop.engine, shop.shop_id) as db:
        db.get_one(Job, (shop.shop_id, held.job_id)).demo = is_demo

    page = stranger.get(link)

    assert page.html.count('class="demo-mark"') == marks
    assert page.text.count("This quote is made up") == marks
