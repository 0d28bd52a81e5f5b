"""The editor of notches around pipes: asked for in a row, kept, refused beside their fields, shown."""

import json

import pytest

from benchwork import drawer_ids, job_in_hand
from casewright.pieces.asked.presets import presets
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import changed

pytestmark = pytest.mark.one_database

KITCHEN = next(each.spec_json for each in presets() if each.key == "kitchen-bank")
WIDE, DEEP = "rows.2.notch.width", "rows.2.notch.depth"
NOTCHED = changed(KITCHEN, {"rows.1": {"notch": {"width": "8", "depth": "9"}}})


def address(shop, data):
    """A unit with these choices."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop), json.dumps(data))}"


@pytest.fixture
def kitchen(shop):
    """The starting kitchen bank."""
    return address(shop, KITCHEN)


@pytest.fixture
def notched(shop):
    """The same with its second row notched."""
    return address(shop, NOTCHED)


def rows_of(maker, unit):
    """The rows of the unit's file."""
    return json.loads(maker.get(f"{unit}/unit-file.json").html)["rows"]


def test_a_row_is_notched_and_kept(maker, kitchen):
    typed = {WIDE: "8", DEEP: "229 mm", "rows.2.notch.off": "1", "rows.2.notch.toward": "right"}

    saved = maker.post(kitchen, **filled(maker.get(kitchen), kitchen, typed))

    assert rows_of(maker, kitchen)[1] == {
        "notch": {"width": "8", "depth": "229 mm", "off": "1", "toward": "right"}
    }
    assert saved.form(kitchen).value("rows.2.notch.toward") == "right"
    assert 'id="more-2" open>' in saved.html


def test_a_notch_whose_width_is_emptied_is_gone(maker, notched):
    maker.post(notched, **filled(maker.get(notched), notched, {WIDE: ""}))

    assert rows_of(maker, notched)[1] == {}


def test_rows_without_a_notch_have_none_and_stay_folded(maker, kitchen):
    page = maker.get(kitchen)
    assert 'id="more-2">' in page.html

    maker.post(kitchen, **filled(page, kitchen, {"name": "Bank"}))

    assert all("notch" not in row for row in rows_of(maker, kitchen))


@pytest.mark.parametrize(
    ("typed", "field", "words"),
    [
        ({WIDE: "8"}, DEEP, "This is missing"),
        ({WIDE: "16", DEEP: "9"}, WIDE, "a hand needs 3 in"),
        ({WIDE: "8", DEEP: "9", "rows.2.notch.off": "4"}, "rows.2.notch.off", "a hand needs 3 in"),
        ({WIDE: "8", DEEP: "19"}, DEEP, "before the notch"),
        ({WIDE: "eight", DEEP: "9"}, WIDE, "eight"),
        ({WIDE: "8", DEEP: "9", "rows.2.files": "letter"}, WIDE, "Hanging folders need the whole"),
        ({WIDE: "8", DEEP: "9", "drawers.bottom.kind": "solid"}, "drawers.bottom.kind", "Row 2 has a notch"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field_and_kept(maker, kitchen, typed, field, words):
    page = maker.post(kitchen, status=422, **filled(maker.get(kitchen), kitchen, typed))

    said = page.html.partition(f'id="{field.replace(".", "-")}-said"')[2].partition("</p>")[0]
    assert words in said
    for name, text in typed.items():
        assert page.form(kitchen).value(name) == text


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("", "Pipes stand in A-R2-1"),
        ("/cut-list", "cut out at the rear 8-9/16 wide"),
        ("/joints/case", "Drawer around the notch, through dovetail"),
        ("/checks", "pipes up to 6-63/64"),
        ("/season", "clear width for pipes"),
        ("/hours", "Drawer notched around pipes"),
    ],
)
def test_every_page_of_a_unit_tells_of_its_notch(maker, notched, path, words):
    assert words in maker.get(f"{notched}{path}").text


def test_the_plan_beside_the_form_shows_the_u(maker, notched):
    form = filled(maker.get(notched), notched, {"show": "plan"})

    page = maker.post(f"{notched}/working", **form)

    drawn = page.html.partition('<div id="drawn">')[2]
    assert 'data-code="A-R2-1-IB"' in drawn


def test_a_drawer_around_pipes_has_its_plan_at_the_bench_and_no_other_has(shop, bench):
    rows = [{}, {"notch": {"width": "6", "depth": "5"}}, {}]
    ply = {"kind": "ply", "nominal": "1/4"}
    ids = drawer_ids(shop, job_in_hand(shop, changes={"rows": rows, "drawers.bottom": ply}))

    page = bench.get(f"/bench/{ids['R2-1']}")
    assert "Notch around pipes, drawn" in page.html
    assert "notch 6" in page.html
    assert "Notch around pipes, drawn" not in bench.get(f"/bench/{ids['R1-1']}").html
