"""The drawings of a unit in its editor: one at a time, the one that is asked for, with what is typed."""

import re

import pytest

from pages.test_unit_editor import LIVE, job, unit
from pages.unit_jobs import filled

pytestmark = pytest.mark.one_database

__all__ = ["job", "unit"]


def drawings(page):
    """Which drawings stand on a page, and which tab says that it is looked at."""
    return (
        re.findall(r'<div class="drawing (\w+)"', page.html),
        re.findall(r'value="(\w+)" id="view-\w+" aria-pressed="true"', page.html),
    )


@pytest.mark.parametrize("view", ["front", "section", "plan", "opened"])
def test_a_tab_shows_its_drawing_and_keeps_what_is_typed(maker, unit, view):
    page = maker.get(unit)

    shown = maker.post(f"{unit}/working", **filled(page, unit, {"body.width": "44", "show": view}))

    assert drawings(shown) == ([view], [view])
    assert shown.form(unit).value("body.width") == "44"
    assert "Worked out, not saved." in shown.text


def test_the_drawing_that_is_looked_at_stays_while_one_types_and_when_it_is_saved(maker, unit):
    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {"show": "plan"}))
    typed = filled(page, unit, {"body.width": "43", "view": "plan"})

    block = maker.browser.post(f"{unit}/working", data=typed, headers=LIVE).text
    saved = maker.post(unit, **typed)

    assert re.findall(r'<div class="drawing (\w+)"', block) == ["plan"]
    assert drawings(saved) == (["plan"], ["plan"])


@pytest.mark.parametrize("asked", ["", "elevation", "../../etc", "<b>"])
def test_a_drawing_that_there_is_not_is_the_front(maker, unit, asked):
    assert drawings(maker.get(f"{unit}?view={asked}")) == (["front"], ["front"])


def test_a_script_gets_only_the_drawing(maker, unit):
    typed = filled(maker.get(unit), unit, {"show": "opened"})

    block = maker.browser.post(
        f"{unit}/working", data=typed, headers={"hx-request": "true", "x-block": "drawn"}
    ).text

    assert block.lstrip().startswith('<div id="drawn">')
    assert 'name="view" value="opened"' in block
    assert "Openings and drawers" not in block


def test_looking_at_another_drawing_is_no_step_to_undo(maker, unit):
    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {"show": "plan"}))

    assert 'name="past" value="[]"' in page.html
