"""Rows with columns of their own, and columns with their own rows, stand in the form and change there."""

import json
import re

import pytest

from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.spec import UnitSpec
from casewright.shop.units import spec_text
from casewright.web.units.form import read_values, values_of
from casewright.web.units.form_acts import Pressed, acted
from casewright.web.units.measured_text import moved_lines
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import chest

pytestmark = pytest.mark.one_database

ACROSS = [
    {
        "width": "12",
        "rows": [{}, {"height": "5", "columns": 2}, {"holds": "open"}],
        "graduation": {"rule": "equal"},
    },
    {"holds": "open", "knee": True},
    {"holds": "doors", "shelves": 1, "leaves": 1, "hinged": "right"},
]
NESTED = {
    "body.width": "60",
    "body.opening_total": "30",
    "rows": [{"height": "8", "columns": 3}, {"across": ACROSS}],
}


@pytest.fixture
def unit(shop):
    """A chest with a stack of drawers, a door and a knee space under a row of drawers; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop), json.dumps(chest(NESTED)))}"


def nested():
    """The same, as its file holds it."""
    return read_as(UnitSpec, chest(NESTED))


def test_a_nested_unit_comes_back_from_its_form_as_it_was():
    read = read_values(values_of(spec_text(nested())), nested())

    assert read.faults == {}
    assert read.spec == nested()


def test_every_row_and_column_has_its_fields(maker, unit):
    form = maker.get(unit).form(unit)

    assert form.value("rows.2.across.1.width") == "12"
    assert form.value("rows.2.across.1.graduation.rule") == "equal"
    assert form.value("rows.2.across.1.rows.2.columns") == "2"
    assert form.value("rows.2.across.3.holds") == "doors"
    assert form.value("rows.2.across.3.hinged") == "right"
    assert form.value("rows.2.across.2.knee") == "1"


@pytest.mark.parametrize(
    ("name", "typed", "said", "there"),
    [
        (
            "rows.2.across.1.rows.2.height",
            "5 1/0",
            "nothing can be divided by 0",
            "rows.2.across.1.rows.2.height",
        ),
        ("rows.2.across.1.width", "wide", "is not a size", "rows.2.across.1.width"),
        ("rows.2.across.3.shelves", "two", "whole number", "rows.2.across.3.shelves"),
        ("rows.2.across.1.rows.2.height", "90", "leave the others nothing", "rows.2.across.1.rows.1.height"),
        ("rows.2.across.3.width", "90", "leaves", "rows.2.across.1.width"),
    ],
)
def test_what_is_wrong_in_a_nested_row_is_said_there_and_kept(maker, unit, name, typed, said, there):
    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {name: typed}), status=422)

    assert page.form(unit).value(name) == typed
    assert said in page.text
    assert f'<a href="#{there.replace(".", "-")}">' in page.html


@pytest.mark.parametrize(
    ("act", "at", "there"),
    [
        ("edit-above", "2-1-2-1", "rows.2.across.1.rows.4.height"),
        ("edit-across", "2-3", "rows.2.across.4.holds"),
        ("edit-rows", "1-1", "rows.1.across.1.rows.2.height"),
        ("row-spell-1", "", "rows.1.across.3.holds"),
    ],
)
def test_without_script_an_opening_is_changed_and_the_change_undone(maker, unit, act, at, there):
    page = maker.get(unit)
    before = page.form(unit).sent()

    done = maker.post(f"{unit}/working", **filled(page, unit, {"do": act, "at": at}))
    back = maker.post(f"{unit}/working", **filled(done, unit, {"do": "undo"}))

    assert there in dict(done.form(unit).sent())
    rows = {name: text for name, text in dict(before).items() if name.startswith("rows.")}
    assert {
        name: text for name, text in dict(back.form(unit).sent()).items() if name.startswith("rows.")
    } == rows


@pytest.mark.parametrize(
    ("act", "said"),
    [
        ("edit-join", "alone in its row"),
        ("edit-one", "nothing to make one"),
        ("edit-above", "Choose an opening"),
    ],
)
def test_what_cannot_be_done_is_said_and_changes_nothing(maker, shop, act, said):
    unit = f"/units/{new_unit(shop, new_job(shop), json.dumps(chest()))}"
    at = "" if act == "edit-above" else "1-1"

    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {"do": act, "at": at}))

    assert said in page.text
    assert json.loads(page.form(unit).value("past")) == []


def test_what_was_measured_goes_with_its_opening_and_is_named_where_it_goes():
    values = values_of(spec_text(nested())) | {
        "measured": "R1-2 height 4\nR2-1-2-1 width 5-1/2\nR2-1-2-1-SL thickness 31/64\nBK-1 width 6"
    }

    moved = acted(values, Pressed(act="edit-above", at="1-1"))
    gone = acted(values, Pressed(act="row-remove-1"))

    assert moved.values["measured"].splitlines() == [
        "R2-2 height 4",
        "R3-1-2-1 width 5-1/2",
        "R3-1-2-1-SL thickness 31/64",
        "BK-1 width 6",
    ]
    assert gone.values["measured"].startswith("R1-1-2-1 width")
    assert "R1-2 height 4. Undo brings it back." in gone.note


def test_a_line_that_names_no_opening_keeps_its_words():
    moved, gone = moved_lines("  what is this \n\nR9-1 height 4", {"R1-1": "R2-1"})

    assert (moved, gone) == ("what is this\nR9-1 height 4", ())


def test_each_of_several_sizes_in_one_line_goes_with_its_own_opening():
    moved, gone = moved_lines(
        "R1-1 height 4, width 5-1/2; R2-1 height 6, R3-1 depth 8",
        {"R1-1": "R2-1", "R2-1": None, "R3-1": "R1-1"},
    )

    assert moved == "R2-1 height 4\nR2-1 width 5-1/2\nR1-1 depth 8"
    assert gone == ("R2-1 height 6",)


def test_saving_a_split_unit_keeps_it(maker, unit):
    done = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {"do": "edit-rows", "at": "1-1"}))

    saved = maker.post(unit, **filled(done, unit, {"rows.1.height": "9"}))

    assert "Saved." in saved.text
    assert "rows.1.across.1.rows.2.height" in dict(saved.form(unit).sent())
    assert "parted into" in maker.get(f"{unit}/revisions").text


def test_a_form_with_names_beyond_all_bounds_is_answered(maker, unit):
    wild = {f"rows.40.across.12.rows.40.across.12.rows.{number}.height": "1" for number in range(1, 41)}

    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, wild), status=422)

    assert page.status == 422


def test_every_field_in_a_line_of_rows_stands_under_its_heading(maker, unit):
    page = maker.get(unit).html
    table = page[page.index('<table class="rows') : page.index("</table>", page.index('<table class="rows'))]
    head, _, body = table.partition("</thead>")
    first = body[: body.index("</tr>")]

    headings = [re.sub("<.*?>", "", each) for each in re.findall(r"<th scope=\"col\".*?</th>", head)]
    cells = re.findall(r'<td class="[^"]*" data-label="([^"]*)"', first)
    assert headings[1:-1] == ["Columns", "Each holds", "Opening height", "Widths, from the left", "Contents"]
    assert cells == ["Columns", "Each holds", "Height", "Widths", "Contents"]


def test_tails_and_pulls_are_folded_until_a_row_has_its_own(maker, unit):
    folded = maker.get(unit)
    assert 'id="more-1">' in folded.html

    saved = maker.post(unit, **filled(folded, unit, {"rows.1.front_tails": "4"}))

    assert 'id="more-1" open>' in saved.html
    assert 'id="more-2">' in saved.html
    assert saved.form(unit).value("rows.1.front_tails") == "4"


def test_the_joints_of_many_drawers_are_a_list_of_cards_that_open(maker, unit):
    page = maker.get(f"{unit}/joints").html

    cards = page.split('<details class="sheet joint"')[1:]
    assert len(cards) > 2
    for card in cards:
        place = re.search(r'<h2 id="([^"]+)-title">', card)[1]
        shut, _, content = card.partition("</summary>")
        assert not shut.startswith(" open")
        assert f'id="{place}"' in content  # a link to it opens it
