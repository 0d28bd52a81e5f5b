"""The editor of a unit: what is typed is kept, worked out and saved."""

import pytest

from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures


@pytest.fixture
def unit(shop):
    """Worked dresser A in a job of the shop that priced it; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


def test_the_editor_shows_the_saved_unit_with_its_price(maker, unit):
    page = maker.get(unit)

    assert page.form(unit).value("body.width") == "39-1/2"
    assert "$16,150.00" in page.text
    assert "$17,119.00" in page.text
