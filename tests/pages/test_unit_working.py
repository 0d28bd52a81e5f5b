"""Every figure of a unit can say where it comes from; what makes up a price says it to the owner alone."""

import re

import pytest

from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures

pytestmark = pytest.mark.one_database

PRICED = ("price.materials", "price.labour", "price.contingency", "price.before_rounding", "price.cost")
RATED = (
    "price.lowest",
    "rate.hourly_rate",
    "rate.hourly_cost",
    "rate.yearly_costs",
    "risk.P80",
    "price.delivery",
)


@pytest.fixture
def unit(shop):
    """Worked dresser A in a shop with the figures that priced it; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


def test_a_figure_says_its_rule_its_inputs_and_its_source(maker, unit):
    page = maker.get(f"{unit}/working?figure=R5-1.height")

    assert "Drawer R5-1: height = 8-13/32 in R5-1.height" in page.text
    assert "(opening - bottom_gap - top_gap) / (1 + coefficient × swelling)" in page.text
    assert "0.00289 per % moisture" in page.text
    assert f'href="{unit}/working?figure=R5-1.opening_height"' in page.html
    assert "Wood Handbook, FPL-GTR-282 (2021)" in page.text


def test_a_typed_size_leads_back_into_the_form(maker, unit):
    page = maker.get(f"{unit}/working?figure=body.width")

    assert "Typed in the unit file." in page.text
    assert f'href="{unit}#body-width"' in page.html


def test_the_height_that_was_given_leads_to_the_one_field_for_heights(maker, unit):
    page = maker.get(f"{unit}/working?figure=body.opening_total")

    assert f'href="{unit}#body-height"' in page.html


def test_a_line_of_the_cut_list_is_asked_for_by_its_mark(maker, unit):
    page = maker.get(f"{unit}/working?figure=F5").text

    assert "F5: Drawer front, row 5, 1 of cherry, 13/16 × 8-13/32 × 37-15/16" in page
    assert "A-R5-1-F" in page
    assert "F5.rough_width" in page


def test_an_operation_says_from_which_standard_it_comes(maker, unit):
    page = maker.get(f"{unit}/working?figure=P04").text

    assert "The time standard of P04 = 6 min hours.standard.P04" in page
    assert "common practice" in page


def test_a_name_that_nothing_has_is_answered_with_the_list(maker, unit):
    page = maker.get(f"{unit}/working?figure=R9-9.heigth", status=404)

    assert "No figure of this unit is called “R9-9.heigth”" in page.text
    assert "Groups of figures" in page.html


@pytest.mark.parametrize("path", ["", "/cut-list", "/joints", "/lumber", "/hours", "/price"])
def test_every_figure_on_a_page_leads_to_its_working(owner, unit, path):
    page = owner.get(unit + path)
    links = {each for each in page.seen.links if each.startswith(f"{unit}/working?figure=")}

    dead = [each for each in sorted(links)[:40] if owner.browser.get(each).status_code != 200]
    assert len(links) > 5
    assert dead == []


@pytest.mark.parametrize("figure", [*PRICED, *RATED, "price", "rate", "materials"])
def test_a_maker_cannot_reach_what_a_price_is_made_of(maker, unit, figure):
    answer = maker.browser.get(f"{unit}/working?figure={figure}")

    assert answer.status_code in {403, 404} or "the owner" in answer.text
    assert "108.33" not in answer.text
    assert "$13," not in answer.text
    assert "$14," not in answer.text
    assert "$12," not in answer.text


@pytest.mark.parametrize("figure", ["price.asked", "price.tax", "price.total", "price.stage_1"])
def test_a_maker_sees_the_price_and_nothing_behind_it(maker, unit, figure):
    page = maker.get(f"{unit}/working?figure={figure}").text

    assert re.search(r"= \$[\d,]+\.\d\d", page)
    assert "for the owner of the shop" in page
    assert "16,144.98" not in page


def test_the_owner_follows_a_price_back_to_the_hour(owner, unit):
    asked = owner.get(f"{unit}/working?figure=price.asked")
    labour = owner.get(f"{unit}/working?figure=price.labour")

    assert "$16,144.98" in asked.text
    assert f'href="{unit}/working?figure=price.before_rounding"' in asked.html
    assert f'href="{unit}/working?figure=hours.total"' in labour.html
    assert "$108.33" in labour.text


def test_the_factor_of_past_jobs_behind_a_date_is_the_owner_s(maker, unit):
    page = maker.get(f"{unit}/working?figure=promise.promised_weeks").text

    assert "1.2091" not in page
    assert "the owner&#39;s" in page


def test_a_hostile_name_is_shown_as_text(maker, unit):
    page = maker.get(f"{unit}/working?figure=<script>alert(1)</script>", status=404)

    assert "<script>alert" not in page.html


def test_a_figure_is_called_what_a_shop_calls_it(owner, unit):
    page = owner.get(f"{unit}/working?figure=price.asked")

    assert page.seen.headings == ["Where the price asked comes from"]
    assert "The price asked = $16,150.00 price.asked" in page.text


def test_what_the_shop_laid_down_leads_to_its_figures(shop, owner, maker, unit):
    use_figures(shop, EXAMPLE_FIGURES | {"rounding": "50", "minimum": "250"})

    mine = owner.get(f"{unit}/working?figure=price.asked")

    assert mine.text.count("your shop's figures, revision 3") == 2  # the step and the minimum
    assert "example figures" not in mine.text
    assert "/shop/rate" in mine.seen.links
    assert "/shop/rate" not in maker.get(f"{unit}/working?figure=price.asked").seen.links


def test_what_the_shop_has_not_laid_down_is_called_an_example_s(owner, unit):
    asked, tax = (owner.get(f"{unit}/working?figure={name}").text for name in ("price.asked", "price.tax"))

    assert (asked.count("example figures"), asked.count("your shop's figures")) == (2, 0)
    assert "your shop's figures, revision 2" in tax  # the rate was typed at the beginning


def test_the_page_of_a_price_says_what_is_still_an_example_s(shop, owner, maker, unit):
    before = owner.get(f"{unit}/price")
    use_figures(shop, EXAMPLE_FIGURES | {"yearly_costs": {"rent": "12000"}})

    assert "This price still stands on example figures." in before.text
    assert "The hourly rate is worked out from an example" in before.text
    assert "/shop" in before.seen.links
    assert "The hourly rate is worked out from an example" not in maker.get(f"{unit}/price").text


def test_a_share_is_written_in_per_cent_and_money_by_thousands(owner, unit):
    page = owner.get(f"{unit}/working?figure=price.materials").text

    assert re.search(r"amount \$1,\d{3}\.\d\d", page)
    assert "markup 20 %" in page


def test_a_line_of_the_price_shows_its_mark_up_in_per_cent(owner, unit):
    page = owner.get(f"{unit}/price").text

    assert re.search(r"mark-up on materials [1-9],\d{3}\.\d\d × 20 %", page)
