"""A new unit: from a starting unit, from a unit file, or as a copy."""

import json

import pytest

from casewright.pieces.asked.presets import presets
from casewright.records.people import Role
from pages.unit_jobs import new_job, new_unit
from people import new_shop
from units import chest, dresser_text


@pytest.fixture
def job(shop):
    """A job of the shop."""
    return new_job(shop)


@pytest.mark.one_database
@pytest.mark.parametrize("key", [each.key for each in presets()])
def test_a_unit_starts_from_every_starting_unit(maker, job, key):
    page = maker.get(f"/jobs/{job}/units/new")

    made = maker.post(f"/jobs/{job}/units", start=key, once=page.form(f"/jobs/{job}/units").value("once"))

    assert "Added." in made.text
    assert made.address.startswith("/units/")
    assert "Price before tax" in made.text
    assert made.seen.headings[0].startswith("Unit A · ")


def test_starting_units_are_shown_with_drawing_size_and_words(maker, job):
    page = maker.get(f"/jobs/{job}/units/new")

    assert page.html.count('class="sheet start"') == len(presets())
    assert page.html.count("<svg") == len(presets()) + 1  # and the mark of the house
    assert "40-1/2 × 20-3/4 × 44 in wide, deep, high · 6 drawers" in page.text


def test_a_shop_in_millimetres_starts_in_millimetres(shop, app, books, clock, job):
    from_metric = new_shop(app, books, clock, unit="mm")
    maker, job = from_metric.visitor(Role.MAKER), new_job(from_metric)

    maker.get(f"/jobs/{job}/units/new")
    made = maker.post(f"/jobs/{job}/units", start="dresser")

    assert made.form("/units/").value("unit") == "mm"
    assert made.form("/units/").value("body.width") == "990.6"


def test_a_unit_starts_from_a_unit_file(maker, job):
    maker.get(f"/jobs/{job}/units/new")

    made = maker.post(f"/jobs/{job}/units", file=dresser_text())

    assert made.form("/units/").value("body.width") == "39-1/2"


def test_a_unit_file_with_more_drawers_than_a_unit_may_have_is_refused_and_kept(maker, job):
    text = json.dumps(json.loads(dresser_text()) | {"rows": [{"columns": 12}] * 30})
    maker.get(f"/jobs/{job}/units/new")

    page = maker.post(f"/jobs/{job}/units", status=422, file=text)

    assert "360 drawers; one unit has at most 150. Make two units of it" in page.text
    kept = next(form for form in page.seen.forms if any(name == "file" for name, _ in form.fields))
    assert kept.value("file") == text


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "Choose a start above, or paste a unit file here."),
        ("{", "This is not JSON"),
        (json.dumps(chest({"body.width": "24 1/0"})), "body.width: “24 1/0” is not a size"),
        (json.dumps(chest({"colour": "red"})), "colour: This key is not known"),
        (json.dumps(chest({"rows": [{"height": "50"}]})), "leave one height out"),
    ],
)
def test_a_unit_file_that_cannot_be_used_is_refused_with_its_place_and_kept(maker, job, text, words):
    maker.get(f"/jobs/{job}/units/new")

    page = maker.post(f"/jobs/{job}/units", status=422, file=text)

    assert words in page.text
    assert (
        next(form for form in page.seen.forms if any(n == "file" for n, _ in form.fields)).value("file")
        == text
    )
    assert page.seen.title.startswith("Error: ")


def test_an_earlier_unit_is_found_by_its_name_and_copied(shop, maker, job):
    earlier = new_unit(shop, new_job(shop, "Hall"), json.dumps(chest({"name": "Chest for 100% oak_lovers"})))
    found = maker.get(f"/jobs/{job}/units/new?q=100%25 oak_")
    none = maker.get(f"/jobs/{job}/units/new?q=walnut")

    made = maker.post(f"/jobs/{job}/units", unit=earlier)

    assert "Chest for 100% oak_lovers" in found.text
    assert "No unit with “walnut”." in none.text
    assert made.form("/units/").value("body.width") == "24"
    assert made.address.partition("?")[0] != f"/units/{earlier}"


def test_a_start_sent_twice_makes_one_unit(maker, job):
    page = maker.get(f"/jobs/{job}/units/new")
    mark = page.form(f"/jobs/{job}/units").value("once")

    first = maker.post(f"/jobs/{job}/units", start="bedside", once=mark)
    second = maker.post(f"/jobs/{job}/units", start="bedside", once=mark)

    assert first.address == second.address


def test_units_of_a_job_go_by_letters(maker, job):
    maker.post(f"/jobs/{job}/units", start="bedside")

    second = maker.post(f"/jobs/{job}/units", start="dresser")

    assert second.seen.headings[0].startswith("Unit B · ")


def test_an_unknown_job_or_start_is_refused(maker, job):
    maker.get("/jobs/nosuchjob/units/new", status=404)
    maker.get(f"/jobs/{job}/units/new")

    page = maker.post(f"/jobs/{job}/units", status=422, start="nothing")

    assert "Choose one of the list." in page.text
