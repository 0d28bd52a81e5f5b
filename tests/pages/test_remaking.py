"""A change that was agreed at the bench: what is made again is marked until it is done, and can be undone."""

import re

import pytest
from sqlalchemy import select

from benchwork import (
    approved_unit,
    case_id,
    case_reaches,
    drawer_ids,
    drawer_reaches,
    events,
    job_in_hand,
    kept_stage,
    unit_address,
)
from casewright.records.bench import Carcase, Drawer
from casewright.records.jobs import Job, JobState
from casewright.records.sessions import reading, writing
from casewright.shop.bench import case_place, drawer_place, refold
from casewright.shop.jobs import move_job
from pages.unit_jobs import EXAMPLE_FIGURES, filled, use_figures
from printed import text_of

WALNUT = {"woods.fronts.wood": "walnut"}


@pytest.fixture
def job(shop):
    """A chest of three drawers in hand: its case glued, its lowest drawer glued, the one above milled."""
    use_figures(shop, EXAMPLE_FIGURES)
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    ids = drawer_ids(shop, job)
    drawer_reaches(shop, ids["R3-1"], "glued")
    drawer_reaches(shop, ids["R2-1"], "milled")
    return job


@pytest.fixture
def unit(shop, owner, job):
    """The unit, approved at its first revision."""
    return approved_unit(shop, owner, job)


def revise(who, unit, **typed):
    sent = filled(who.get(unit), unit, {"note": "Ben measured wrong.", **typed})
    return who.post(unit, **sent)


def ordered(owner, unit, note="", number=2):
    """A change order, made by going the whole way from the unit's page."""
    page = owner.get(unit)
    [rework] = [link for link in page.seen.links if link.endswith("/rework")][:1]
    page = owner.get(rework)
    [price] = [link for link in page.seen.links if "/change-order?" in link]
    page = owner.get(price)
    address = f"{unit}/revisions/{number}/change-order"
    return owner.post(address, **filled(page, address, {"act": "make it", "note": note}))


def agreed(owner, unit):
    """The change order once the customer has signed; its address."""
    address = ordered(owner, unit).address.partition("?")[0]
    owner.send(f"{address}/agreement", name="Ines Cole", way="signed")
    return address


def stages(shop, job):
    ids = drawer_ids(shop, job)
    return {code: kept_stage(shop, each) for code, each in ids.items()}


def test_saving_a_changed_unit_that_is_approved_leads_to_what_the_change_does(owner, unit):
    page = revise(owner, unit, **WALNUT)

    assert "Revision 2 is not agreed yet; agreed is revision 1." in page.text
    assert f"{unit}/revisions/2/rework" in page.seen.links
    page = owner.get(f"{unit}/revisions/2/rework")
    assert "Revision 2 held against revision 1 , which is agreed" in page.text
    assert "The drawer fronts are walnut instead of cherry." in page.text


@pytest.mark.one_database
def test_a_unit_that_nobody_approved_is_saved_without_a_word_of_change_orders(shop, owner):
    job = job_in_hand(shop)
    unit = unit_address(shop, job)

    assert "not agreed yet" not in revise(owner, unit, **WALNUT).text


def test_until_it_is_agreed_the_bench_is_warned_and_nothing_moves(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    before = stages(shop, job)
    page = ordered(owner, unit)

    assert "R3-1 glued up → not begun new: front, 2 sides, back" in page.text
    assert "R2-1 milled → not begun new: front" in page.text
    assert stages(shop, job) == before
    assert "changed, not agreed yet" in bench.get("/board").text
    drawer = drawer_ids(shop, job)["R3-1"]
    assert "revision 2 is not agreed yet, agreed is revision 1" in bench.get(f"/bench/{drawer}").text


def test_once_agreed_the_drawers_go_back_and_say_what_is_made_again(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    address = agreed(owner, unit)

    assert stages(shop, job) == {"R1-1": "", "R2-1": "", "R3-1": ""}
    board = bench.get("/board").text
    assert "Glued up: 0 of 3" in board
    assert "To remake CO-0001: new: front, 2 sides, back" in board
    assert "was glued up put back, Ada Marsh" in board
    assert "changed, not agreed yet" not in board
    page = bench.get(f"/bench/{drawer_ids(shop, job)['R3-1']}").text
    assert "To remake for change order CO-0001: it was “glued up” and begins again with “milled”." in page
    assert "Make new: front, 3/4 × 6-21/32 × 22-7/16 in of walnut." in page
    assert "Stays: bottom." in page
    page = owner.get(f"/jobs/{job}")
    assert "To remake for change order CO-0001 , not done yet: drawers A-R2-1, A-R3-1." in page.text
    assert address in page.seen.links


def test_the_marks_go_once_the_drawers_are_where_they_were(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    agreed(owner, unit)
    ids = drawer_ids(shop, job)

    drawer_reaches(shop, ids["R2-1"], "milled")
    assert "drawer A-R3-1." in owner.get(f"/jobs/{job}").text
    drawer_reaches(shop, ids["R3-1"], "glued")

    assert "To remake" not in bench.get("/board").text
    assert "To remake" not in owner.get(f"/jobs/{job}").text
    assert stages(shop, job) == {"R1-1": "", "R2-1": "milled", "R3-1": "glued"}


def test_the_lists_are_gone_through_again_and_new_boards_measured_anew(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    drawer = drawer_ids(shop, job)["R3-1"]
    assert "Dry-fit: 11 of 11" in bench.get(f"/bench/{drawer}").text

    agreed(owner, unit)

    page = bench.get(f"/bench/{drawer}")
    assert "Dry-fit: 0 of 11" in page.text
    assert "Before marking out: 0 of 4" in page.text
    sizes = page.form(f"/bench/{drawer}/sizes")
    assert sizes.value("SL.thickness") == ""  # the sides are glued to the front: they are new, too
    assert sizes.value("opening.height") == "6-3/4"  # the case stays as it is


def test_that_it_stands_as_it_was_brings_stages_lists_and_sizes_back(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    agreed(owner, unit)
    drawer = drawer_ids(shop, job)["R3-1"]
    count = len(events(shop))

    bench.get(f"/bench/{drawer}")
    page = bench.send(f"/drawers/{drawer}/remake/undo")

    assert kept_stage(shop, drawer) == "glued"
    assert "To remake" not in page.text
    assert "Dry-fit: 11 of 11" in page.text
    assert page.form(f"/bench/{drawer}/sizes").value("SL.thickness") == "1/2"
    assert len(events(shop)) > count  # nothing that was tapped is taken out of the books
    assert "To remake CO-0001: new: front" in bench.get("/board").text  # the other one


@pytest.mark.one_database
def test_after_ten_minutes_the_bench_asks_the_owner_and_the_owner_may(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    agreed(owner, unit)
    drawer = drawer_ids(shop, job)["R3-1"]
    shop.clock.pass_by(minutes=11)

    assert f"/drawers/{drawer}/remake/undo" not in bench.get(f"/bench/{drawer}").html
    told = bench.post(f"/drawers/{drawer}/remake/undo", status=403, change="CO-0001")
    assert "ask the owner or a maker" in told.text
    owner.get(f"/bench/{drawer}")
    owner.send(f"/drawers/{drawer}/remake/undo")

    assert kept_stage(shop, drawer) == "glued"


@pytest.mark.one_database
def test_a_drawer_that_went_on_since_stays_where_it_is(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    agreed(owner, unit)
    drawer = drawer_ids(shop, job)["R3-1"]
    drawer_reaches(shop, drawer, "milled")

    told = owner.post(f"/drawers/{drawer}/remake/undo", status=403, change="CO-0001", back=f"/bench/{drawer}")

    assert "its work has gone on since" in told.text
    assert kept_stage(shop, drawer) == "milled"


def test_a_wider_case_goes_back_to_its_panels_and_comes_back_by_one_press(shop, owner, bench, job, unit):
    revise(owner, unit, **{"body.width": "26"})
    agreed(owner, unit)

    def case():
        with reading(shop.engine, shop.shop_id) as db:
            return db.scalars(select(Carcase).where(Carcase.job_id == job)).one()

    assert (case().stage, case().again) == ("", "CO-0001")
    assert "was glued up put back" in bench.get("/board").text
    drawer = drawer_ids(shop, job)["R3-1"]
    sizes = bench.get(f"/bench/{drawer}").form(f"/bench/{drawer}/sizes")
    assert sizes.value("opening.width") == ""  # it is another opening

    bench.get("/board")
    bench.send(f"/cases/{case().id}/remake/undo")

    assert (case().stage, case().again) == ("glued", "")


@pytest.mark.one_database
def test_what_was_measured_of_an_opening_comes_back_with_the_case(shop, owner, bench, job, unit):
    drawer = drawer_ids(shop, job)["R1-1"]  # nothing of it is cut yet
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/sizes", opening__height="5-9/32")

    def measured():
        return bench.get(f"/bench/{drawer}").form(f"/bench/{drawer}/sizes").value("opening.height")

    revise(owner, unit, **{"body.width": "26"})
    agreed(owner, unit)
    assert measured() == ""
    bench.get("/board")

    bench.send(f"/cases/{case_id(shop, job)}/remake/undo")

    assert measured() == "5-9/32"


@pytest.mark.one_database
def test_what_is_kept_of_drawers_and_cases_is_what_their_taps_lead_to(shop, owner, unit):
    revise(owner, unit, **{"body.width": "26"})
    agreed(owner, unit)

    with writing(shop.engine, shop.shop_id) as db:
        drawers = db.scalars(select(Drawer)).all()
        again = [each.again for each in drawers]
        places = [drawer_place(db, each.id) for each in drawers]
        moved = [refold(each) for each in (*places, case_place(db, drawers[0].carcase_id))]

    assert not any(moved)
    assert sorted(again) == ["", "CO-0001", "CO-0001"]


@pytest.mark.one_database
def test_one_that_is_withdrawn_puts_nothing_back(shop, owner, job, unit):
    before = stages(shop, job)
    revise(owner, unit, **WALNUT)
    address = ordered(owner, unit).address.partition("?")[0]

    owner.send(f"{address}/removal")

    assert stages(shop, job) == before


def test_a_change_of_what_is_delivered_is_warned_of_and_goes_on(shop, owner, job, unit):
    revise(owner, unit, **WALNUT)
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Job, (shop.shop_id, job))
        for state in (JobState.READY, JobState.DELIVERED):
            move_job(db, held, state, "Ada Marsh", shop.clock.now)

    assert "The job is delivered since 1 March 2027" in owner.get(f"{unit}/revisions/2/rework").text
    assert "The job is delivered since" in owner.get(f"{unit}/revisions/2/change-order").text
    page = ordered(owner, unit)
    assert "The job is delivered since" in page.text
    owner.send(f"{page.address.partition('?')[0]}/agreement", name="Ines Cole", way="signed")

    page = owner.get(f"/jobs/{job}").text
    assert (
        "not done yet: drawers A-R2-1, A-R3-1. The job is delivered, so the board does not show it." in page
    )


def test_the_words_for_the_customer_are_shown_before_and_the_note_of_the_shop_is_not_among_them(owner, unit):
    revise(owner, unit, **{**WALNUT, "body.width": "26"})
    address = f"{unit}/revisions/2/change-order"
    page = owner.get(address)
    words = "As you asked: walnut in front."

    page = owner.post(address, **filled(page, address, {"act": "work it out", "note": words}))
    shown = re.search(r"<blockquote.*?</blockquote>", page.html, re.DOTALL)[0]
    assert words in shown
    assert "Width over all: 25-1/2 in becomes 27-1/2 in." in shown
    assert "Ben measured wrong." not in shown
    page = owner.post(address, **filled(page, address, {"act": "make it"}))

    order = page.address.partition("?")[0]
    printed = text_of(owner.browser.get(f"{order}/paper.pdf").content)
    assert words in printed
    assert "Width over all: 25-1/2 in becomes 27-1/2 in." in printed
    assert "the case and two drawers are made again" in printed
    assert "Ben measured wrong." not in printed
    assert "Page 1 of 1" in printed


@pytest.mark.one_database
def test_words_for_the_customer_that_are_too_many_are_refused_and_kept(owner, unit):
    revise(owner, unit, **WALNUT)
    address = f"{unit}/revisions/2/change-order"
    page = owner.get(address)

    page = owner.post(address, 422, **filled(page, address, {"act": "make it", "note": "long " * 150}))

    assert "characters; 600 are the most." in page.text


@pytest.mark.one_database
def test_parts_that_are_alike_are_one_line_with_their_number(owner, unit):
    revise(owner, unit, **{"body.width": "26"})

    page = owner.get(f"{unit}/revisions/2/rework").text

    assert "5 shiplap back boards A-K-1, A-K-2, A-K-3, A-K-4, A-K-5" in page
    assert "2 divider rails A-D1-RF, A-D2-RF" in page
    assert "are made in the place of scrapped ones" in page


@pytest.mark.one_database
def test_a_change_that_waits_for_an_answer_is_led_to_from_the_rework(owner, unit):
    revise(owner, unit, **WALNUT)
    address = ordered(owner, unit).address.partition("?")[0]

    page = owner.get(f"{unit}/revisions/2/rework")

    assert "Change order CO-0001 waits for an answer" in page.text
    assert address in page.seen.links


@pytest.mark.one_database
def test_pieces_that_have_one_story_are_told_once(shop, owner):
    job = job_in_hand(shop, changes={"count": 3})
    case_reaches(shop, job, "glued")  # the first alone
    unit = unit_address(shop, job)
    revise(owner, unit, **{"body.width": "26"})

    page = owner.get(f"{unit}/revisions/2/rework")

    assert re.findall(r'<h2 id="piece-[0-9]">([^<]*)</h2>', page.html) == ["Piece 1", "Pieces 2 and 3, each"]


def test_approved_without_a_change_order_the_bench_goes_back_all_the_same(shop, owner, bench, job, unit):
    revise(owner, unit, **WALNUT)
    owner.get(f"{unit}/revisions/2/rework")

    owner.send(f"{unit}/approval")

    assert stages(shop, job) == {"R1-1": "", "R2-1": "", "R3-1": ""}
    assert "To remake revision 2: new: front, 2 sides, back" in bench.get("/board").text
    drawer = drawer_ids(shop, job)["R3-1"]
    assert "To remake for revision 2:" in bench.get(f"/bench/{drawer}").text
    page = owner.get(f"/jobs/{job}").text
    assert "To remake for revision 2, not done yet: drawers A-R2-1, A-R3-1." in page
    assert "Put back at the bench for revision 2: R2-1; R3-1." in page

    owner.get(f"/bench/{drawer}")
    owner.send(f"/drawers/{drawer}/remake/undo")

    assert kept_stage(shop, drawer) == "glued"


@pytest.mark.one_database
def test_a_first_approval_and_a_second_of_the_same_put_nothing_back(shop, owner, job, unit):
    before = stages(shop, job)

    owner.post(f"{unit}/approval", number="1")

    assert stages(shop, job) == before
