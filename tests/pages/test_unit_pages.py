"""The pages of a unit say what the core says, and a maker sees no cost on any of them."""

import csv
import io
import json
from datetime import date

import pytest

from casewright.measure.money import show_money
from casewright.pieces.asked.reading import read_as, read_unit
from casewright.pieces.asked.shop import shop as figures_of
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.costs.estimate import Estimate, estimate
from casewright.records.people import Role
from counting import MOST, counted
from pages.unit_jobs import EXAMPLE_FIGURES, new_job, new_unit, use_figures
from units import changed, chest, dresser, dresser_text

pytestmark = pytest.mark.one_database

PAGES = (
    "",
    "/cut-list",
    "/joints",
    "/joints/case",
    "/season",
    "/lumber",
    "/hours",
    "/price",
    "/checks",
    "/revisions",
    "/revisions/1",
)
FILES = ("/cut-list.csv", "/order.csv", "/unit-file.json")


@pytest.fixture
def unit(shop):
    """Worked dresser A in a shop with the figures that priced it; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


@pytest.fixture(scope="module")
def held() -> Estimate:
    """What the core says of worked dresser A with these figures, on the day of the tests' clock."""
    own = figures_of(read_as(ShopSpec, EXAMPLE_FIGURES))
    return estimate(read_unit(dresser_text()), own, date(2027, 3, 1))


def test_the_price_page_shows_the_owner_every_figure_of_the_core(owner, unit, held):
    page = owner.get(f"{unit}/price").text

    price = held.price
    amounts = [price.asked, price.tax, price.total, price.cost, price.lowest, price.before_rounding]
    amounts += [stage.amount for stage in price.stages] + [line.amount for line in price.lines]
    missing = [show_money(int(each)) for each in amounts if show_money(int(each)) not in page]
    assert missing == []
    assert show_money(int(price.asked - price.cost)) in page
    assert "111.31 h × 108.33" in page


def test_the_maker_sees_price_tax_total_stages_and_date(maker, unit):
    page = maker.get(f"{unit}/price").text

    assert "$16,150.00" in page
    assert "$969.00" in page
    assert "$17,119.00" in page
    assert "$1,711.90" in page
    assert "How it is made up" not in page


@pytest.mark.parametrize("path", [*PAGES, *FILES, "/working"])
def test_a_maker_sees_no_cost_rate_or_margin(maker, unit, held, path):
    text = maker.browser.get(unit + path).text

    price, rate = held.price, held.rate
    secret = [price.cost, price.lowest, price.before_rounding, price.asked - price.cost, rate.yearly]
    secret += [line.amount for line in held.materials if line.amount > 10_000]
    secret += [price.charges.labour, price.charges.contingency, price.charges.charged_materials]
    shown = [show_money(int(each)) for each in secret if show_money(int(each), "") in text]
    assert shown == []
    assert "108.33" not in text
    assert "97.50" not in text


def test_the_cut_list_names_every_line_with_its_size_in_both_units(maker, unit, held):
    page = maker.get(f"{unit}/cut-list")

    lines = [line.line for line in held.unit.lines]
    assert [line for line in lines if f'id="line-{line}"' not in page.html] == []
    assert "13/16 × 8-13/32 × 37-15/16" in page.text
    assert "20.6 × 213.5 × 963.6" in page.text
    assert "half-blind dovetail, sockets" in page.text


def test_measured_sizes_are_marked_in_the_cut_list(shop, maker):
    data = dresser({"measured": {"parts": {"R5-1-F": {"thickness": "51/64"}}}})
    unit = f"/units/{new_unit(shop, new_job(shop), json.dumps(data))}"

    page = maker.get(f"{unit}/cut-list")

    assert "measured: thickness" in page.text
    assert "51/64" in page.text


def test_the_cut_list_and_the_order_are_csv_files(maker, unit, held):
    cuts = maker.browser.get(f"{unit}/cut-list.csv")
    order = maker.browser.get(f"{unit}/order.csv")

    rows = list(csv.DictReader(io.StringIO(cuts.text)))
    feet = {
        row["wood"] + " " + row["class"]: row["feet_bd_ft"] for row in csv.DictReader(io.StringIO(order.text))
    }
    assert cuts.headers["content-disposition"] == 'attachment; filename="job-1-A-cut-list.csv"'
    assert sum(int(row["quantity"]) for row in rows) == len(held.unit.parts)
    assert feet == {"cherry 4/4": "39", "cherry 5/4": "11", "poplar 4/4": "61", "soft maple 4/4": "25"}


def test_a_joint_shows_both_gauges_with_the_wrong_one_struck_out(maker, unit):
    page = maker.get(f"{unit}/joints")

    first = page.html.partition('id="joint-R5-1-front"')[2].partition("</section>")[0]
    assert '7/16</a></strong> <del><span class="unseen">not </span>1/2</del>' in first
    assert "5/8</a>" in first
    assert "A-R5-1-SL" in first
    assert "<svg" in first
    assert "8-1/2" not in first


def test_the_joints_of_the_case_have_settings_drawing_and_the_working_behind_them(maker, unit):
    page = maker.get(f"{unit}/joints/case")

    frames = page.html.partition('id="joint-runners_1"')[2].partition("</section>")[0]
    assert "Gap at the shoulder" in frames
    assert "1/8</a></strong>" in frames
    assert "<svg" in frames
    assert "A-D1-RL" in frames
    bottom = page.html.partition('id="joint-bottom"')[2].partition("</section>")[0]
    assert "Tails, from the front edge" in bottom
    assert "working?figure=case.joints.bottom.gauge_1" in bottom
    assert "Story stick:" in page.text
    assert "Cut with hand saw, chisel, mortiser, grooving blade:" in frames
    assert "Cut with hand saw, chisel, plane:" in bottom
    assert "Mortisers: clamp the work" in page.html.partition('id="cautions"')[2]
    assert "Drills:" not in page.text, "no joint of this case is drilled"
    for joint in ("rails", "dividers", "uprights_R1", "kickers_1", "back", "bottom_R1-1"):
        assert f'id="joint-{joint}"' in page.html


def test_the_order_page_says_how_the_feet_came_about(maker, unit):
    page = maker.get(f"{unit}/lumber").text

    assert "39 bd ft" in page
    assert "38.20 exactly" in page
    assert "24.36" in page
    assert "In sequence: fronts of row 1" in page


def test_the_hours_page_multiplies_drivers_by_minutes(maker, unit, held):
    page = maker.get(f"{unit}/hours").text

    assert f"{held.hours:,.2f} h" in page
    assert "D06 Saw and chop the tails 92 drawer tails 2.5 hand 1 230" in page
    assert "common practice" in page


def test_checks_stand_with_stops_first_and_say_that_they_are_screens(shop, maker):
    data = dresser({"drawers.muntin": {"use": "never"}, "use.free_standing": True})
    unit = f"/units/{new_unit(shop, new_job(shop), json.dumps(data))}"

    page = maker.get(f"{unit}/checks").text

    assert page.index("Stop: do not cut") < page.index("Caution: look at this first") < page.index("Passes")
    assert "These are screens." in page
    assert "Tip-over kills children." in page
    assert "16 CFR 1261" in page
    assert "bottom sag" in page.lower() or "sag" in page


def test_in_a_job_of_several_units_the_share_stands_beside_the_unit_s_own_price(shop, maker):
    use_figures(shop, EXAMPLE_FIGURES)
    job = new_job(shop)
    unit = f"/units/{new_unit(shop, job)}"
    new_unit(shop, job, json.dumps(chest()))

    page = maker.get(f"{unit}/price").text

    assert "This is the unit by itself." in page
    assert "for all 2 units together" in page
    assert "$16,150.00" in page


def test_what_has_no_price_is_said_and_stops(shop, maker):
    data = changed(json.loads(dresser_text()), {"pulls": {"item": "a ring of brass"}})
    unit = f"/units/{new_unit(shop, new_job(shop), json.dumps(data))}"

    page = maker.get(f"{unit}/checks").text

    assert "price missing" in page
    assert "a ring of brass" in page


@pytest.mark.parametrize("path", [*PAGES, "/working?figure=F5"])
def test_a_page_asks_the_database_few_questions(shop, maker, unit, path):
    maker.get(unit + path)

    with counted(shop.engine) as sent:
        maker.get(unit + path)

    assert len(sent) <= MOST


def test_drawings_are_titled_described_and_drawn_in_the_colour_of_the_text(maker, unit):
    front, section = (maker.get(f"{unit}?view={view}").html for view in ("front", "section"))

    assert '<title id="A-elevation-title">' in front
    assert '<desc id="A-section-desc">' in section
    for page in (front, section):
        assert 'stroke="currentColor"' in page


@pytest.mark.parametrize("path", PAGES)
def test_the_bench_has_its_own_pages(shop, unit, path):
    shop.visitor(Role.BENCH).get(unit + path, status=403)


def test_a_check_of_a_joint_is_called_by_what_it_looks_at_and_names_a_drawer_once(maker, unit):
    page = maker.get(f"{unit}/checks").text

    assert "groove hidden (JC8)" in page
    assert "pins (JC6)" in page
    assert "R1-1, A-R1-1" not in page
    assert "unless the sentence says otherwise" not in page


def test_the_owner_reads_how_often_the_hours_are_enough(owner, unit):
    page = owner.get(f"{unit}/price").text

    assert "in case hours run over: enough in eight jobs of ten" in page
    assert "P80" not in page
