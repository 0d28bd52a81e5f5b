"""Wishes of the wood on the face in a unit's form: one a line, kept as typed, refused beside their field."""

import pytest

from pages.unit_jobs import filled, new_job, new_unit

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    return f"/units/{new_unit(shop, new_job(shop))}"


WISHES = "fronts no sap\nbase face A\nfronts of row 1 given up: one was remade"


def test_wishes_are_kept_and_stand_in_the_form_again(maker, unit):
    maker.post(unit, **filled(maker.get(unit), unit, {"grain.top": "book-matched", "grain.wishes": WISHES}))

    form = maker.get(unit).form(unit)

    assert form.value("grain.top") == "book-matched"
    assert form.value("grain.wishes").splitlines() == WISHES.splitlines()
    assert "The fronts of row 1 do not match: one was remade." in maker.get(f"{unit}/checks").text


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("fronts nicely grained", "cannot stand here"),
        ("fronts of row 9 given up: none", "Nothing called fronts of row 9 is matched"),
        ("base face Z", "cannot stand here"),
    ],
)
def test_a_wish_that_is_none_is_refused_beside_its_field_and_kept(maker, unit, typed, said):
    page = maker.post(unit, 422, **filled(maker.get(unit), unit, {"grain.wishes": typed}))

    assert said in page.text
    assert page.form(unit).value("grain.wishes") == typed
    assert 'href="#grain-wishes"' in page.html


def test_the_form_of_doors_counts_where_there_are_doors_and_changes_nothing_where_there_are_none(maker, unit):
    before = maker.get(f"{unit}/cut-list").text
    typed = {"doors.thickness": "7/8", "doors.make.kind": "slab", "note": "no doors here"}
    maker.post(unit, **filled(maker.get(unit), unit, typed))

    assert maker.get(unit).form(unit).value("doors.make.kind") == "slab"
    assert maker.get(f"{unit}/cut-list").text.count("cherry") == before.count("cherry")
