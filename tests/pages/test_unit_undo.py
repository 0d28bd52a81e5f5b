"""What was changed in a unit's form is undone and made again, step by step, and nothing of it is lost."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.web.units.history import MOST_STEPS, begun, read_history, redone, stepped, undone
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures

pytestmark = pytest.mark.one_database

NAMES = ("body.width", "rows.1.height", "rows.2.height", "finish.product", "name")
FORMS = st.dictionaries(st.sampled_from(NAMES), st.sampled_from(["", "6", "40", "cherry"]))


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


def after(forms, of=""):
    """The history of a form that looked like each of these in turn."""
    history = begun({})
    for each in forms:
        history = stepped(history, each, of)
    return history


@given(st.lists(FORMS, max_size=8))
def test_all_undone_is_as_it_was_opened_and_all_made_again_is_as_it_was_left(forms):
    left = after(forms)

    back = left
    for _ in left.past:
        back = undone(back)
    again = back
    for _ in left.past:
        again = redone(again)

    assert back.was == {}
    assert again == left


@given(st.lists(FORMS, max_size=8))
def test_a_history_comes_back_from_the_form_that_carries_it(forms):
    left = undone(after(forms))

    sent = {"was": left.was_text, "past": left.past_text, "ahead": left.ahead_text}

    assert read_history(sent, {"name": "otherwise"}) == left


def test_what_one_goes_on_typing_into_a_field_is_one_step_and_another_field_another():
    history = begun({"body.width": "39-1/2"})

    for of, values in [
        ("body.width 0", {"body.width": "4"}),
        ("body.width 0", {"body.width": "40"}),
        ("body.depth 1", {"body.width": "40", "body.depth": "20"}),
        ("body.depth 2", {"body.width": "40", "body.depth": "21"}),
    ]:
        history = stepped(history, values, of)

    assert [dict(each.fields) for each in history.past] == [
        {"body.width": "39-1/2"},
        {"body.depth": None},
        {"body.depth": "20"},
    ]


def test_a_change_after_an_undo_leaves_nothing_to_make_again():
    history = undone(after([{"name": "6"}, {"name": "40"}]))

    assert history.ahead
    assert not stepped(history, {"name": "cherry"}).ahead


def test_an_empty_row_is_a_step():
    history = stepped(begun({"rows.1.height": ""}), {"rows.1.height": "", "rows.2.height": ""})

    assert undone(history).was == {"rows.1.height": ""}
    assert redone(undone(history)).was == {"rows.1.height": "", "rows.2.height": ""}


def test_the_oldest_steps_are_forgotten_first():
    history = after([{"name": str(number)} for number in range(MOST_STEPS + 50)])

    assert len(history.past) == MOST_STEPS
    assert undone(history).was == {"name": str(MOST_STEPS + 48)}


@pytest.mark.parametrize("was", ["", "{", "[]", '{"name": 3}', '"x"', "[" * 50_000], ids=range(6))
def test_a_history_that_cannot_be_read_begins_anew(was):
    assert read_history({"was": was, "past": "[[1]]"}, {"name": "Dresser"}) == begun({"name": "Dresser"})


@pytest.mark.parametrize("past", ["{", '[["", {"name": 3}]]', '[["x"]]', "[1, 2]", '[["", null]]'])
def test_steps_that_cannot_be_read_are_left_out(past):
    assert read_history({"was": "{}", "past": past}, {}).past == ()


def test_without_script_a_change_and_a_row_are_undone_and_made_again(maker, unit):
    page = maker.get(unit)
    page = maker.post(f"{unit}/working", **filled(page, unit, {"body.width": "40", "do": "row-add"}))
    assert page.form(unit).value("rows.6.height") == ""

    once = maker.post(f"{unit}/working", **filled(page, unit, {"do": "undo"}))
    twice = maker.post(f"{unit}/working", **filled(once, unit, {"do": "undo"}))
    again = maker.post(f"{unit}/working", **filled(twice, unit, {"do": "redo"}))

    assert "rows.6.height" not in once.form(unit).sent()
    assert once.form(unit).value("body.width") == "40"
    assert twice.form(unit).value("body.width") == "39-1/2"
    assert "$16,150.00" in twice.text
    assert again.form(unit).value("body.width") == "40"


def test_opening_the_form_and_working_it_out_is_no_step(maker, unit):
    page = maker.post(f"{unit}/working", **filled(maker.get(unit), unit, {}))

    assert json.loads(page.form(unit).value("past")) == []


def test_a_change_that_cannot_be_worked_out_is_undone_too(maker, unit):
    page = maker.get(unit)
    bad = maker.post(f"{unit}/working", **filled(page, unit, {"body.width": "39 1/0"}), status=422)

    page = maker.post(f"{unit}/working", **filled(bad, unit, {"do": "undo"}))

    assert page.status == 200
    assert page.form(unit).value("body.width") == "39-1/2"


def test_steps_are_not_saved_and_not_read_as_choices(maker, unit):
    page = maker.get(unit)
    page = maker.post(f"{unit}/working", **filled(page, unit, {"body.width": "40"}))

    saved = maker.post(unit, **filled(page, unit, {}))

    assert "Saved." in saved.text
    assert json.loads(saved.form(unit).value("past")) == []
