"""A shop keeps its own starting units, offers them where a unit is added, renames them, takes them away."""

import pytest

from casewright.records.people import Role
from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures
from people import new_shop


@pytest.fixture
def job(shop):
    """A job of a shop with the figures that priced worked dresser A."""
    use_figures(shop, EXAMPLE_FIGURES)
    return new_job(shop)


@pytest.fixture
def kept(maker, shop, job):
    """Worked dresser A, kept as a starting unit; the page of all of them."""
    unit = f"/units/{new_unit(shop, job)}"
    maker.get(unit)
    return maker.post(f"{unit}/starting-units", name="The house dresser", words="Two over four, in cherry.")


def key_of(page):
    """The id of the only starting unit on a page."""
    return page.html.partition('action="/starting-units/')[2].partition('"')[0]


def test_a_unit_that_was_kept_is_offered_and_a_new_one_starts_from_it(maker, job, kept):
    page = maker.get(f"/jobs/{job}/units/new")
    assert "The house dresser" in page.text
    assert "Two over four, in cherry." in page.text

    made = maker.post(f"/jobs/{job}/units", start=f"own-{key_of(kept)}")

    address = made.address.partition("?")[0]
    assert made.form(address).value("body.width") == "39-1/2"
    assert made.form(address).value("name") == "The house dresser"


def test_it_is_renamed_and_taken_away(maker, job, kept):
    key = key_of(kept)

    renamed = maker.post(f"/starting-units/{key}", name="Dresser, cherry", words="", version="1")
    assert "Dresser, cherry" in renamed.text
    gone = maker.post(f"/starting-units/{key}/removal")

    assert "None yet." in gone.text
    assert "Dresser, cherry" not in maker.get(f"/jobs/{job}/units/new").text


def test_a_name_is_needed_and_what_was_typed_is_kept(maker, kept):
    page = maker.post(f"/starting-units/{key_of(kept)}", status=422, name=" ", words="In oak", version="1")

    assert "Give it a name" in page.text
    assert 'value="In oak"' in page.html


def test_a_sentence_that_is_too_long_is_refused_beside_its_field(maker, kept):
    page = maker.post(
        f"/starting-units/{key_of(kept)}", status=422, name="Dresser", words="oak " * 80, version="1"
    )

    assert "It has 319 characters; 300 are the most." in page.text
    assert f'aria-describedby="words-fault-{key_of(kept)}"' in page.html


def test_a_second_of_the_same_name_is_refused(maker, shop, job, kept):
    unit = f"/units/{new_unit(shop, job)}"

    page = maker.post(f"{unit}/starting-units", status=422, name="the house DRESSER", words="In oak")

    assert "give this one another name" in page.text
    assert page.form(f"{unit}/starting-units").value("words") == "In oak"


def test_renaming_to_a_name_that_is_taken_is_refused_beside_its_field_and_kept(maker, shop, job, kept):
    key = key_of(kept)
    maker.post(f"/units/{new_unit(shop, job)}/starting-units", name="Bedside", words="")

    page = maker.post(f"/starting-units/{key}", status=422, name="BEDSIDE", words="In oak", version="1")

    assert "There is a starting unit called “BEDSIDE” already" in page.text
    assert f'aria-describedby="fault-{key}"' in page.html
    assert 'value="BEDSIDE"' in page.html
    assert 'value="In oak"' in page.html


def test_its_own_name_may_be_written_in_other_letters(maker, kept):
    page = maker.post(f"/starting-units/{key_of(kept)}", name="the house DRESSER", words="", version="1")

    assert "the house DRESSER" in page.text


def test_its_name_and_words_are_asked_for_when_it_is_kept(maker, shop, job):
    unit = f"/units/{new_unit(shop, job)}"
    assert f'href="{unit}/starting-units"' in maker.get(unit).html

    maker.get(f"{unit}/starting-units")
    kept = maker.send(f"{unit}/starting-units", name="Dresser in walnut", words="Two over four.")

    assert "Dresser in walnut" in kept.text
    assert 'value="Two over four."' in kept.html


def test_one_without_a_name_is_not_kept(maker, shop, job):
    unit = f"/units/{new_unit(shop, job)}"

    page = maker.post(f"{unit}/starting-units", status=422, name=" ", words="In oak")

    assert "Give it a name" in page.text
    assert "None yet." in maker.get("/starting-units").text


def test_another_shop_sees_none_of_it(shop, kept):
    maker = new_shop(shop.app, shop.engine, shop.clock).visitor(Role.MAKER)

    assert "None yet." in maker.get("/starting-units").text
    maker.post(f"/starting-units/{key_of(kept)}/removal", status=404)


def test_the_bench_keeps_out(bench, kept):
    bench.get("/starting-units", status=403)
