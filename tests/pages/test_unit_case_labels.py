"""Labels of the editor that follow another choice: heights of openings or fronts, and which front it is."""

import json

import pytest

from casewright.pieces.asked.presets import preset
from pages.unit_jobs import new_job, new_unit
from units import changed

pytestmark = pytest.mark.one_database

KITCHEN = preset("kitchen-bank").spec_json


@pytest.fixture
def unit_of(shop):
    """The address of a unit with these choices."""
    return lambda data: f"/units/{new_unit(shop, new_job(shop), json.dumps(data))}"


def test_fronts_that_cover_the_case_give_the_rows_their_heights(maker, unit_of):
    page = maker.get(unit_of(KITCHEN)).html

    assert '<th scope="col" id="heights-called">Height of the front</th>' in page
    assert "Row 1: height of the front" in page


def test_with_something_between_the_rows_they_are_heights_of_openings(maker, unit_of):
    divided = changed(KITCHEN, {"case.divider_kind": "rail"})

    assert '<th scope="col" id="heights-called">Opening height</th>' in maker.get(unit_of(divided)).html
    assert (
        '<th scope="col" id="heights-called">Opening height</th>'
        in maker.get(unit_of(preset("dresser").spec_json)).html
    )


def test_a_box_with_a_front_of_its_own_is_joined_by_that(maker, unit_of):
    boxed = maker.get(unit_of(KITCHEN)).html
    plain = maker.get(unit_of(preset("dresser").spec_json)).html

    assert ">Sides and the box’s front<" in boxed
    assert ">Show front<" in boxed
    assert ">Sides and front<" in plain
    assert ">Show front<" not in plain


def test_the_joints_page_says_why_something_was_chosen_without_a_stop_in_the_middle(maker, unit_of):
    page = maker.get(f"{unit_of(preset('dresser').spec_json)}/joints").text

    said = page.partition("Left empty, so chosen:")[2].partition("The dovetails")[0]
    assert "(a quarter of the 3/4 in front, to the nearest 1/16, and no less than 1/8)" in said
    assert "(an eighth of the 1/2 in side, rounded down to 1/32)" in said
    assert ".)" not in said


def test_the_doors_of_a_unit_stand_with_their_hinges_on_the_page_of_its_joints(maker, unit_of):
    page = maker.get(f"{unit_of(preset('sideboard').spec_json)}/joints/case")

    assert "butt hinge 2-1/2 in" in page.text
    row = page.html[page.html.index('<th scope="row">A-R2-3-D1</th>') :]
    assert "3-3/4" in row[: row.index("</tr>")]
    assert 'href="#joint-hinges_1"' in row[: row.index("</tr>")]
    assert "Hinges of the doors on the case side, let in" in page.text
    assert "working?figure=R2-3.door.hinge_1" in row[: row.index("</tr>")]
