"""How a unit is to be built is chosen in its form: what is left out, its feet, its crate, its bottoms."""

import pytest

from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """Worked dresser A, in a shop with the figures that priced it; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


def test_an_empty_field_means_the_usual_and_is_not_written_down(maker, unit):
    page = maker.get(unit)

    saved = maker.post(unit, **filled(page, unit, {"back.thickness": "", "drawers.side": ""}))

    assert saved.form(unit).value("back.thickness") == ""
    assert 'placeholder="1/2"' in saved.html
    assert "$16,150.00" in saved.text
    assert "thickness" not in maker.browser.get(f"{unit}/unit-file.json").json().get("back", {})


def test_a_unit_without_a_plinth_stands_on_the_floor(maker, unit):
    page = maker.get(unit)

    saved = maker.post(unit, **filled(page, unit, {"base.kind": "none"}))

    assert maker.browser.get(f"{unit}/unit-file.json").json()["base"] is None
    assert "It stands on none: on its own sides" in saved.text


def test_feet_are_chosen_with_their_sizes_and_kept(maker, unit):
    page = maker.get(unit)

    saved = maker.post(unit, **filled(page, unit, {"base.kind": "turned", "base.diameter": "2-1/2"}))

    held = maker.browser.get(f"{unit}/unit-file.json").json()["base"]
    assert held == {"kind": "turned", "height": "4", "diameter": "2-1/2"}
    assert saved.form(unit).value("base.diameter") == "2-1/2"


def test_a_crate_is_chosen_with_its_strips_and_its_cleat(maker, unit):
    page = maker.get(unit)
    typed = {
        "construction.kind": "crate",
        "construction.strip": "3/8",
        "rows.1.columns": "3",
        "base.kind": "none",
        "cleat": "1",
        "cleat.studs": "24",
        "top.overhang_sides": "",
        "top.overhang_front": "",
    }
    rows = {f"rows.{number}.columns": "3" for number in range(1, 6)}

    saved = maker.post(unit, **filled(page, unit, typed | rows))

    held = maker.browser.get(f"{unit}/unit-file.json").json()
    assert held["construction"] == {"kind": "crate", "strip": "3/8"}
    assert (held["base"], held["cleat"], held["top"]["fixing"]) == (None, {"studs": "24"}, "dovetails")
    assert saved.form(unit).value("construction.strip") == "3/8"


def test_feet_too_thick_for_the_case_are_refused_beside_their_field(maker, unit):
    page = maker.get(unit)

    typed = {"base.kind": "turned", "base.diameter": "12"}
    saved = maker.post(unit, status=422, **filled(page, unit, typed))

    assert "two feet must fit side by side" in saved.text
    assert saved.form(unit).value("base.diameter") == "12"


def test_plywood_bottoms_are_chosen_with_their_sheet(maker, unit):
    page = maker.get(unit)
    typed = {"drawers.bottom.kind": "ply", "drawers.bottom.sheet": "birch plywood"}

    saved = maker.post(unit, **filled(page, unit, typed | {"drawers.bottom.nominal": "3/8"}))

    held = maker.browser.get(f"{unit}/unit-file.json").json()["drawers"]["bottom"]
    assert held == {"kind": "ply", "sheet": "birch plywood", "nominal": "3/8"}
    assert "Saved." in saved.text
