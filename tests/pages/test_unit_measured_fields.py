"""Every opening has fields for what was measured of it: drawers follow, faults stand beside them."""

import json

import pytest

from pages.unit_jobs import filled, new_job, new_unit
from units import dresser

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    return f"/units/{new_unit(shop, new_job(shop))}"


def typed(maker, unit, fields, **more):
    """The form of a unit with some fields filled in."""
    return filled(maker.get(unit), unit, {"note": "Measured.", **fields, **more})


def test_what_was_drawn_stands_faintly_in_each_field(maker, unit):
    page = maker.get(unit)

    # The lowest opening of worked dresser A is 8-1/2 high and 38 wide: 39-1/2 less two sides of 3/4.
    assert 'id="measured-R5-1-height" name="measured.R5-1.height" value="" ' in page.html
    assert 'placeholder="38"' in page.html
    assert 'aria-label="R5-1 height"' in page.html


def test_a_measured_opening_is_kept_and_its_drawer_follows(maker, unit):
    before = maker.get(unit).text
    saved = maker.post(
        unit, **typed(maker, unit, {"measured.R5-1.height": "8-1/4, 8-3/16", "measured.R5-1.width": "37-7/8"})
    )
    after = saved.form(unit)

    assert after.value("measured.R5-1.height") == "8-3/16"
    assert after.value("measured.R5-1.width") == "37-7/8"
    assert after.value("measured") == ""
    assert "Measured 2 sizes" in saved.text
    assert "R5-1 measured 8-3/16 37-7/8" in saved.text
    assert "R5-1 measured" not in before


def test_an_echo_says_which_of_several_counts(maker, unit):
    page = maker.post(f"{unit}/working", **typed(maker, unit, {"measured.R5-1.height": "8-1/4, 8-3/16"}))

    assert "the least of 2: 8-3/16 in = 208.0 mm" in page.text
    assert page.form(unit).value("measured.R5-1.height") == "8-1/4; 8-3/16"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("tall", "R5-1 height: “tall” is not a size. Write it as 7-13/32, 7.4 or 188 mm."),
        ("85", "R5-1 height: 85 in is far from the"),
    ],
)
def test_what_is_wrong_is_said_beside_its_own_field_and_kept(maker, unit, text, said):
    page = maker.post(unit, 422, **typed(maker, unit, {"measured.R5-1.height": text}))

    assert said in page.text
    assert '<a href="#measured-R5-1-height">' in page.html
    assert page.form(unit).value("measured.R5-1.height") == text
    assert 'id="group-measured" open' in page.html


def test_a_size_of_an_opening_that_is_not_there_is_said_in_plain_words(maker, unit):
    page = maker.post(unit, 422, **typed(maker, unit, {"measured": "R9-1 height 3"}))

    assert "R9-1: there is no such opening; did you mean R5-1?" in page.text
    assert "openings.R9" not in page.text
    assert page.form(unit).value("measured") == "R9-1 height 3"


def test_undo_takes_a_measured_size_back(maker, unit):
    fields = {"measured.R5-1.height": "8-1/4"}
    done = maker.post(f"{unit}/working", **typed(maker, unit, fields))

    undone = maker.post(f"{unit}/working", **filled(done, unit, {"do": "undo"}))

    assert undone.form(unit).value("measured.R5-1.height") == ""


def test_a_measured_size_goes_with_its_opening_when_a_row_is_added_above(maker, unit):
    fields = {"measured.R5-1.height": "8-1/4"}
    moved = maker.post(f"{unit}/working", **typed(maker, unit, fields, do="row-up-5")).form(unit)

    assert moved.value("measured.R4-1.height") == "8-1/4"
    assert moved.value("measured.R5-1.height") == ""


def test_measured_sizes_are_written_in_the_other_unit_too(maker, unit):
    fields = {"measured.R5-1.height": "8-1/4", "measured": "R5-1-SL thickness 1/2"}
    metric = maker.post(f"{unit}/working", **typed(maker, unit, fields, do="unit-mm")).form(unit)

    assert metric.value("measured.R5-1.height") == "209.55"  # 8.25 in x 25.4
    assert metric.value("measured") == "R5-1-SL thickness 12.7"


def test_a_space_without_a_drawer_can_be_measured_too(shop, maker):
    rows = [{"across": [{"holds": "doors"}, {}]}, {}]
    unit = f"/units/{new_unit(shop, new_job(shop), json.dumps(dresser({'rows': rows})))}"

    saved = maker.post(unit, **typed(maker, unit, {"measured.R1-1.width": "18-1/2"}))

    assert saved.form(unit).value("measured.R1-1.width") == "18-1/2"


def test_a_caution_about_a_measured_size_leads_to_its_own_field(maker, unit):
    """5 in is more than half of the 8-1/2 drawn and much less than it: it may be another opening's."""
    page = maker.post(f"{unit}/working", **typed(maker, unit, {"measured.R5-1.height": "5"}))

    assert '<a href="#measured-R5-1-height">measured beside drawn</a>' in page.html
