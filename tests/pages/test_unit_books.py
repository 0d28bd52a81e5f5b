"""The books of a unit: revisions, approval, copies, taking out and bringing back."""

import pytest

from casewright.web.units.form_acts import Pressed, acted
from pages.unit_jobs import filled, new_job, new_unit


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    return f"/units/{new_unit(shop, new_job(shop))}"


@pytest.fixture
def revised(maker, unit):
    """The same, made wider in a second revision."""
    typed = {"body.width": "42", "rows.2.height": "6", "note": "The alcove is wider."}
    maker.post(unit, **filled(maker.get(unit), unit, typed))
    return unit


@pytest.mark.one_database
def test_a_revision_says_who_why_and_what_changed_field_by_field(maker, revised):
    page = maker.get(f"{revised}/revisions").text

    assert "Revision 2 holds now Ben Tull, 1 Mar 2027, 10:00" in page
    assert "The alcove is wider." in page
    assert "Width of the case 39-1/2 42" in page
    assert "Row 2: height as usual 6" in page
    assert "The unit as it was added." in page


@pytest.mark.one_database
def test_a_row_that_was_taken_out_or_added_is_one_line(maker, unit):
    page = maker.get(unit)
    maker.post(unit, **filled(page, unit, {"rows.2.height": "6", "rows.2.columns": "2"}))
    fewer = acted(dict(maker.get(unit).form(unit).sent()), Pressed(act="row-remove-2")).values
    maker.post(unit, **fewer)
    more = acted(dict(maker.get(unit).form(unit).sent()), Pressed(act="row-add")).values
    maker.post(unit, **more)

    page = maker.get(f"{unit}/revisions").text

    assert "Row 2 taken out (2 drawers, 6 in high)" in page
    assert "Row 5 added (1 drawer, height as usual)" in page
    assert "no such row" not in page
    assert "Row 3: " not in page  # those below it moved up and are what they were


@pytest.mark.one_database
def test_an_old_revision_is_looked_at_and_changes_nothing(maker, revised):
    page = maker.get(f"{revised}/revisions/1")

    assert "39-1/2" in page.text
    assert "Bring this revision back" in page.text
    assert maker.get(revised).form(revised).value("body.width") == "42"


def test_an_old_revision_comes_back_as_a_new_one(maker, revised):
    maker.get(f"{revised}/revisions/1")

    page = maker.send(f"{revised}/revisions", note="The alcove was measured again.")

    assert "Revision 3" in page.text
    assert page.form(revised).value("body.width") == "39-1/2"
    assert "as revision 1: The alcove was measured again." in maker.get(f"{revised}/revisions").text


@pytest.mark.one_database
def test_an_approved_unit_does_not_go_back_without_a_reason(maker, revised):
    maker.post(f"{revised}/approval", number="2")
    maker.get(f"{revised}/revisions/1")

    page = maker.send(f"{revised}/revisions", status=422)

    assert "Say why this one differs" in page.text


def test_bringing_back_over_somebody_else_s_save_is_refused(shop, maker, owner, revised):
    maker.get(f"{revised}/revisions/1")
    owner.post(revised, **filled(owner.get(revised), revised, {"body.width": "43"}))

    page = maker.send(f"{revised}/revisions", status=409)

    assert "Somebody else saved revision 3 meanwhile." in page.text


def test_a_double_press_brings_a_revision_back_once(maker, revised):
    page = maker.get(f"{revised}/revisions/1")
    typed = dict(page.form(f"{revised}/revisions").sent())

    maker.post(f"{revised}/revisions", **typed)
    second = maker.post(f"{revised}/revisions", **typed)

    assert "Revision 3" in second.text


def test_a_revision_that_is_not_there_is_not_found(maker, unit):
    maker.get(f"{unit}/revisions/9", status=404)
    maker.get(f"{unit}/revisions/0", status=404)


def test_approval_locks_the_revision_that_holds(maker, unit):
    maker.get(unit)

    page = maker.send(f"{unit}/approval")

    assert "Revision 1 · approved" in page.text
    assert "Approve revision" not in page.text


def test_a_revision_that_was_saved_since_is_not_approved_unseen(shop, maker, owner, revised):
    maker.get(revised)
    owner.post(revised, **filled(owner.get(revised), revised, {"body.width": "43"}))

    page = maker.send(f"{revised}/approval", status=409)

    assert "has saved revision 3 since you looked at revision 2" in page.text
    assert "Approve revision 3" in maker.get(revised).text


@pytest.mark.one_database
@pytest.mark.parametrize("number", ["", "the last", "-1"])
def test_nothing_is_approved_without_the_number_of_a_revision(maker, unit, number):
    page = maker.post(f"{unit}/approval", status=422, number=number)

    assert "approve the revision that you see" in page.text
    assert "Approve revision 1" in maker.get(unit).text


def test_a_unit_is_taken_out_after_a_question_and_brought_back(maker, unit):
    asked = maker.get(f"{unit}/removal")
    out = maker.send(f"{unit}/removal")
    refused = maker.post(unit, status=409, **filled(out, f"{unit}", {}) | {"name": "Another"})
    back = maker.post(f"{unit}/return")

    assert "Take out unit A" in asked.text
    assert "Taken out." in out.text
    assert "This unit was taken out of its job." in out.text
    assert "Bring it back first" in refused.text
    assert "Taken back." in back.text
    assert "taken out" not in maker.get(unit).text


def test_a_copy_stands_in_the_same_job_under_the_next_letter(maker, revised):
    maker.get(revised)

    copy = maker.send(f"{revised}/copies")

    assert copy.seen.headings[0].startswith("Unit B · ")
    assert copy.form("/units/").value("body.width") == "42"
    assert "Revision 1" in copy.text


@pytest.mark.one_database
def test_a_unit_file_of_any_revision_is_handed_out(maker, revised):
    now = maker.browser.get(f"{revised}/unit-file.json").json()
    then = maker.browser.get(f"{revised}/unit-file.json?revision=1").json()

    assert now["body"]["width"] == "42"
    assert then["body"]["width"] == "39-1/2"
