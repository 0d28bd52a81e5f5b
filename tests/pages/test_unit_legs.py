"""The editor of a piece on legs: the choice, the fields that count with it, the drawing, the papers."""

import json

import pytest

from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import bedside

pytestmark = pytest.mark.one_database

LEGS = {"construction.kind": "legs", "construction.apron_height": "18", "construction.leg": "1-3/4"}


@pytest.fixture
def job(shop):
    """A job of a shop with figures of its own."""
    use_figures(shop, EXAMPLE_FIGURES)
    return new_job(shop)


@pytest.fixture
def chest(shop, job):
    """A plain chest; its address."""
    text = json.dumps(
        {
            "casewright": 1,
            "name": "Chest",
            "body": {"width": "24", "depth": "16", "overall_height": "30"},
            "rows": [{}, {}],
            "woods": {"case": "cherry", "drawers": "soft maple", "inside": "poplar"},
            "base": None,
        }
    )
    return f"/units/{new_unit(shop, job, text)}"


@pytest.fixture
def on_legs(shop, job):
    """Worked bedside B; its address."""
    return f"/units/{new_unit(shop, job, json.dumps(bedside()))}"


def file_of(maker, unit):
    return json.loads(maker.get(f"{unit}/unit-file.json").html)


def test_a_chest_is_put_on_legs_and_saved_with_what_counts_then(maker, chest):
    saved = maker.post(chest, **filled(maker.get(chest), chest, LEGS))

    assert "Saved." in saved.text
    held = file_of(maker, chest)
    assert held["construction"] == {"kind": "legs", "leg": "1-3/4", "apron_height": "18"}
    assert "base" not in held
    assert "apron" in saved.html


def test_a_piece_on_legs_is_made_a_carcase_again(maker, on_legs):
    typed = {"construction.kind": "carcase", "body.height": "16"}

    saved = maker.post(on_legs, **filled(maker.get(on_legs), on_legs, typed))

    assert "Saved." in saved.text
    assert "construction" not in file_of(maker, on_legs)


def test_what_was_saved_on_legs_stands_in_the_form_again(maker, on_legs):
    form = maker.get(on_legs).form(on_legs)

    assert form.value("construction.kind") == "legs"
    assert (form.value("construction.tenon"), form.value("construction.rail_width")) == ("1", "1-1/2")
    assert form.value("drawers.groove.slips") == "1"
    assert form.value("drawers.groove.slips.depth") == "3/16"


def test_saving_it_as_it_stands_changes_nothing(maker, on_legs):
    before = file_of(maker, on_legs)

    maker.post(on_legs, **filled(maker.get(on_legs), on_legs, {}))

    after = file_of(maker, on_legs)
    assert after == before | {"season": after["season"], "use": after["use"]}


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        ({"construction.setback": "2"}, "construction-setback", "2 is too much"),
        ({"construction.apron_height": "40"}, "construction-apron_height", "make the piece higher"),
        ({"construction.leg": "thick"}, "construction-leg", "thick"),
        ({"body.height_as": "opening_total"}, "body-height", "give the overall height"),
    ],
)
def test_what_cannot_be_built_stands_beside_its_field(maker, chest, typed, field, sentence):
    page = maker.post(f"{chest}/working", status=422, **filled(maker.get(chest), chest, LEGS | typed))

    assert f'href="#{field}"' in page.html
    assert sentence in page.text


def test_on_legs_two_drawers_stand_side_by_side(maker, chest):
    typed = LEGS | {"rows.1.columns": "2"}

    page = maker.post(f"{chest}/working", **filled(maker.get(chest), chest, typed))

    assert "R1-2" in page.text


def test_slips_that_are_ticked_are_as_usual_and_gone_when_they_are_not(maker, chest):
    maker.post(chest, **filled(maker.get(chest), chest, {"drawers.groove.slips": "1"}))
    with_slips = file_of(maker, chest)["drawers"]["groove"]
    maker.post(chest, **filled(maker.get(chest), chest, {"drawers.groove.slips": ""}))

    assert with_slips == {"slips": {}}
    assert "drawers" not in file_of(maker, chest)


@pytest.mark.parametrize(
    "page", ["joints", "joints/case", "cut-list", "lumber", "hours", "price", "checks", "layouts", "working"]
)
def test_every_page_of_a_piece_on_legs_is_whole(maker, on_legs, page):
    found = maker.get(f"{on_legs}/{page}")

    assert found.status == 200


def test_its_case_joints_name_legs_and_aprons(maker, on_legs):
    page = maker.get(f"{on_legs}/joints/case")

    assert "Side and back aprons into the back legs" in page.text
    assert "Lower front rail into the front legs" in page.text


def test_the_starting_unit_on_legs_has_a_price_and_its_choice(maker, job):
    maker.get(f"/jobs/{job}/units/new")

    page = maker.post(f"/jobs/{job}/units", start="bedside-on-legs")

    address = page.address.partition("?")[0]
    assert page.form(address).value("construction.kind") == "legs"
    assert "No price" not in page.text
