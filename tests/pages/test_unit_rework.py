"""A change of a unit that is being made: what it does to each part, on a page and as text."""

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand, unit_address
from pages.unit_jobs import filled

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """A chest of three drawers: its case glued, its lowest drawer glued, the one above milled."""
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    ids = drawer_ids(shop, job)
    drawer_reaches(shop, ids["R3-1"], "glued")
    drawer_reaches(shop, ids["R2-1"], "milled")
    return unit_address(shop, job)


def revise(maker, unit, typed):
    sent = filled(maker.get(unit), unit, {"note": "The customer asks for it.", **typed})
    maker.post(unit, **sent)


def test_another_wood_scraps_what_is_made_and_says_so_for_the_change_order(maker, unit):
    revise(maker, unit, {"woods.fronts.wood": "walnut"})

    page = maker.get(f"{unit}/revisions/2/rework").text

    assert "Drawer front, row 2 A-R2-1-F cut to size" in page
    assert "It is cherry, and cut to size; the new design has walnut." in page
    assert "2 drawer sides A-R3-1-SL, A-R3-1-SR glued in" in page
    assert "It is glued to the drawer front, which cannot stay." in page
    assert "5 parts no longer usable: A-R2-1-F, A-R3-1-F, A-R3-1-SL, A-R3-1-SR, A-R3-1-B." in page
    assert "hours have gone into parts that are no longer usable." in page
    assert "board feet of finished wood go to the offcut bin." in page


def test_a_drawer_that_nobody_has_cut_is_lost_to_nobody(maker, unit):
    revise(maker, unit, {"woods.fronts.wood": "walnut"})

    page = maker.get(f"{unit}/revisions/2/rework").text

    assert "Not cut yet, so nothing is lost: walnut in place of cherry." in page


def test_the_list_of_revisions_leads_there_and_names_what_it_is_held_against(maker, unit):
    revise(maker, unit, {"drawers.side": "7/16"})

    page = maker.get(f"{unit}/revisions/2/rework")

    assert f"{unit}/revisions/2/rework" in maker.get(f"{unit}/revisions").html
    assert "Revision 2 held against revision 1" in page.text
    assert "Plane it from 1/2 in to 7/16 in" in page.text


def test_the_first_revision_has_nothing_before_it(maker, unit):
    assert maker.browser.get(f"{unit}/revisions/1/rework").status_code == 404
    assert maker.browser.get(f"{unit}/revisions/1/rework?against=1").status_code == 404
