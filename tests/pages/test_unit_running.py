"""The editor of how drawers run: what is chosen, what counts with it, what is refused beside its field."""

import json

import pytest

from pages.commissions import change_figures
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures

pytestmark = pytest.mark.one_database

ON_SLIDES = {"drawers.style.kind": "applied front", "drawers.running.kind": "slides"}


@pytest.fixture
def chest(shop):
    """A plain chest; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    text = json.dumps(
        {
            "casewright": 1,
            "name": "Chest",
            "body": {"width": "24", "depth": "20", "overall_height": "30"},
            "rows": [{}, {}, {}],
            "woods": {"case": "cherry", "drawers": "soft maple", "inside": "poplar"},
        }
    )
    return f"/units/{new_unit(shop, new_job(shop), text)}"


def file_of(maker, unit):
    """What the unit's file holds."""
    return json.loads(maker.get(f"{unit}/unit-file.json").html)


@pytest.mark.parametrize(
    ("typed", "held"),
    [
        ({"drawers.running.kind": "side-hung", "drawers.running.batten": "3/8"}, {"batten": "3/8"}),
        (
            {"drawers.running.kind": "centre guide", "drawers.running.guide_width": "3/4"},
            {"guide_width": "3/4"},
        ),
        ({"drawers.running.kind": "full-length runners"}, {}),
        ({"drawers.running.kind": "slides", "drawers.running.length": "16"}, {"length": "16"}),
    ],
)
def test_another_way_of_running_is_chosen_and_saved(maker, chest, typed, held):
    saved = maker.post(chest, **filled(maker.get(chest), chest, typed))

    assert "Saved." in saved.text
    kind = {"kind": typed["drawers.running.kind"]}
    assert file_of(maker, chest)["drawers"]["running"] == kind | held
    assert maker.get(chest).form(chest).value("drawers.running.kind") == kind["kind"]


def test_what_belongs_to_another_way_of_running_does_not_count(maker, chest):
    typed = ON_SLIDES | {"drawers.running.batten": "no size"}

    assert "Saved." in maker.post(chest, **filled(maker.get(chest), chest, typed)).text
    assert file_of(maker, chest)["drawers"]["running"] == {"kind": "slides"}


def test_drawers_on_slides_have_checks_hardware_and_hours_of_their_own(maker, chest):
    maker.post(chest, **filled(maker.get(chest), chest, ON_SLIDES))

    assert "side-mount, full travel" in maker.get(f"{chest}/lumber").text
    assert "Slides mounted" in maker.get(f"{chest}/hours").text
    assert "the slide takes" in maker.get(f"{chest}/checks").text


def test_a_slide_of_the_shops_own_table_is_used_by_its_name(shop, maker, chest):
    change_figures(
        shop,
        slides=[
            {
                "name": "heavy slide",
                "kind": "side-mount",
                "space_least": "19 mm",
                "space_most": "19.4 mm",
                "lengths": ["18"],
                "behind": "1/8",
                "travel": 1.0,
                "load_lb": 200,
                "headroom": "1",
                "under": "1/2",
                "tall": "2",
                "weight_lb": 3,
                "item": "slides",
            }
        ],
    )

    typed = ON_SLIDES | {"drawers.running.slide": "heavy slide"}
    assert "Saved." in maker.post(chest, **filled(maker.get(chest), chest, typed)).text
    assert "heavy slide" in maker.get(f"{chest}/lumber").text


def test_the_slides_of_the_shops_table_are_chosen_from_a_list(maker, chest):
    field = maker.get(chest).html.partition('<select id="drawers-running-slide"')[2].partition("</select>")[0]

    assert '<option value="" selected>the first of the shop' in field
    assert '<option value="side-mount, full travel">' in field


def test_a_name_that_left_the_table_stays_in_the_list_until_another_is_chosen(maker, chest):
    typed = ON_SLIDES | {"drawers.running.slide": "best slide"}
    page = maker.post(chest, status=422, **filled(maker.get(chest), chest, typed))

    assert '<option value="best slide" selected>best slide</option>' in page.html


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("drawers.running.slide", "best slide", "There is no slide “best slide” in the table of slides"),
        ("drawers.running.length", "15", "is not sold 15 in long; the nearest is 14 in"),
        ("drawers.running.length", "long", "“long” is not a size"),
        ("drawers.load_lb", "heavy", "number"),
        ("drawers.stops.travel", "far", "“far” is not a size"),
        ("pulls.screw", "0", "more than 0"),
        ("pulls.centres", "wide", "“wide” is not a size"),
    ],
)
def test_what_cannot_be_is_refused_beside_its_field_and_kept(maker, chest, name, typed, words):
    page = maker.post(
        chest, status=422, **filled(maker.get(chest), chest, ON_SLIDES | {"pulls.holes": "two", name: typed})
    )

    assert words in page.text
    assert page.form(chest).value(name) == typed


def test_runners_between_legs_are_refused_beside_their_choice(maker, chest):
    typed = {
        "construction.kind": "legs",
        "construction.apron_height": "18",
        "construction.leg": "1-3/4",
        "drawers.running.kind": "full-length runners",
    }

    page = maker.post(chest, status=422, **filled(maker.get(chest), chest, typed))

    assert "legs have none; choose runners" in page.text
