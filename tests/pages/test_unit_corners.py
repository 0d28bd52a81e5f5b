"""Fronts and corners of drawers on the pages: asked in the form, shown with their joints and at the bench."""

import json
from pathlib import Path

import pytest

from benchwork import drawer_ids, job_in_hand
from casewright.pieces.asked.reading import read_unit, write_unit
from casewright.web.units.form import read_values, values_of
from casewright.web.units.groups import SINGLE
from pages.unit_jobs import filled, new_job, new_unit
from units import chest, dresser

pytestmark = pytest.mark.one_database

BOXED = {
    "drawers.style": {"kind": "full overlay", "gap": "3/32", "share": "over the dividers"},
    "drawers.front_joint": {"kind": "box joint", "finger": "1/2", "height": "whole fingers"},
    "drawers.back_joint": {"kind": "as the front"},
}


def text_of(data):
    return write_unit(read_unit(json.dumps(data)))


@pytest.fixture
def unit(shop):
    """Worked dresser A with boxed drawers before the case; its address."""
    return f"/units/{new_unit(shop, new_job(shop), text_of(dresser(BOXED)))}"


@pytest.mark.parametrize(
    "changes",
    [
        BOXED,
        {"drawers.style": {"kind": "lipped", "lip": "5/16", "bottom": True}},
        {
            "drawers.style": {"kind": "cock-beaded", "rabbet": "1/8"},
            "drawers.bottom": {"kind": "solid", "edges": "plain"},
        },
        {"drawers.front_joint": {"kind": "sliding dovetail", "depth": "1/4", "stop": "1/2"}},
        {"drawers.front_joint": {"kind": "rabbet and pins", "lip": "1/4", "thick": "3/16"}},
        {
            "drawers.front_joint": {"kind": "lock rabbet", "tongue": "1/4"},
            "drawers.back_joint": {"kind": "housing", "set_in": "3/4"},
        },
        {"drawers.bottom": {"kind": "solid", "screwed_under": True}},
    ],
)
def test_the_form_gives_back_the_choices_that_it_shows(changes):
    spec = read_unit(text_of(chest(changes)))

    read = read_values(values_of(write_unit(spec)), spec)

    assert read.faults == {}
    assert read.spec is not None
    assert read.spec.drawers == spec.drawers


def test_fields_of_a_joint_that_is_not_chosen_do_not_count(maker, unit):
    page = maker.get(unit)
    typed = {"drawers.front_joint.kind": "through dovetail", "drawers.front_joint.finger": "no size"}

    saved = maker.post(unit, **filled(page, unit, typed))

    assert "Saved." in saved.text
    assert maker.get(unit).form(unit).value("drawers.front_joint.kind") == "through dovetail"


def test_a_size_of_the_chosen_joint_is_refused_beside_its_field(maker, unit):
    page = maker.get(unit)

    refused = maker.post(unit, 422, **filled(page, unit, {"drawers.front_joint.finger": "wide"}))

    assert refused.form(unit).value("drawers.front_joint.finger") == "wide"
    assert "Finger: “wide” is not a size." in refused.text


def test_every_corner_is_shown_with_its_settings_and_drawing(maker, unit):
    page = maker.get(f"{unit}/joints/case")

    assert "Drawer front, box joint" in page.text
    assert "Drawer back, box joint" in page.text
    assert "Fingers of a front" in page.text
    assert "Half-blind" not in maker.get(f"{unit}/joints").text


def test_a_corner_without_tails_has_no_layouts_to_choose_from(maker, unit):
    assert "no such row of tails" in maker.get(f"{unit}/layouts?row=1&end=front", 404).text


def test_the_style_sheet_hides_every_field_that_does_not_count():
    sheet = (Path(__file__).parents[2] / "static" / "house.css").read_text(encoding="utf-8")

    for field in SINGLE:
        assert not field.when or f".{field.switched}" in sheet, field.name


def test_the_bench_shows_the_settings_of_a_boxed_drawer(shop, bench):
    job = job_in_hand(shop, changes=BOXED)
    drawer = drawer_ids(shop, job)["R1-1"]

    page = bench.get(f"/bench/{drawer}")

    assert "Cutter" in page.text
    assert "high × wide, as it is seen" in page.text
    assert "Back: Cutter" in page.text
