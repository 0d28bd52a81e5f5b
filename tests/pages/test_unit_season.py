"""The season page says what the core says of the year, and its form takes twelve months."""

import json
import re

import pytest

from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.construct import construct
from casewright.pieces.built.season import unit_year
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import chest, dresser_text

pytestmark = pytest.mark.one_database

MONTHS = "\n".join(
    f"{name} {moisture}"
    for name, moisture in zip(
        ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"],
        (6.0, 6.2, 7, 8, 9, 10, 11.2, 11.4, 10, 9, 8, 7),
        strict=True,
    )
)


@pytest.fixture
def unit(shop):
    """Worked dresser A; its address."""
    use_figures(shop, EXAMPLE_FIGURES)
    return f"/units/{new_unit(shop, new_job(shop))}"


@pytest.fixture(scope="module")
def held():
    """What the core says of the year of worked dresser A."""
    return unit_year(construct(read_unit(dresser_text()), example_shop()))


def test_the_page_has_every_gap_of_the_year(maker, unit, held):
    page = maker.get(f"{unit}/season")

    for each in held.drawers:
        for month in each.front.months + each.side.months:
            assert f"{month:.3f}" in page.text
    assert page.html.count('class="drawing"') >= len(held.drawers)
    assert page.text.count("month by month") >= len(held.drawers)
    for part in held.parts:
        assert part.what in page.text
    assert "No month of fitting is given" in page.text
    assert "Wood follows the air with a lag" in page.text


def test_every_figure_of_the_page_leads_to_its_working(maker, unit):
    page = maker.get(f"{unit}/season")

    links = sorted({link for link in page.seen.links if "/working?figure=" in link})
    # now, both ends, the twelve months of front and sides, heights and gaps to leave; parts; months
    assert len(links) > 200
    for link in links[::9]:
        working = maker.get(link)
        assert "Source" in working.text or "Given" in working.text, link
    assert "Wood Handbook" in maker.get(f"{unit}/working?figure=year.R5-1.front_july").text
    assert "drawer R5-1: front july" in maker.get(f"{unit}/working?figure=year.R5-1.front_july").text
    assert "cos(30°" in maker.get(f"{unit}/working?figure=moisture.march").text


def test_a_drawing_says_in_words_what_it_draws(maker, unit, held):
    html = maker.get(f"{unit}/season").html

    description = re.search(r'<desc id="A-R5-1-year-desc">([^<]*)</desc>', html)
    assert description
    july = held.drawers[4].front.months[6]
    assert f"July: front {july:.3f}, sides 0.033" in description[1]


def test_the_page_is_among_the_tabs_of_the_unit(maker, unit):
    page = maker.get(f"{unit}/checks")

    assert f"{unit}/season" in page.seen.links


def test_twelve_months_and_the_month_of_fitting_are_saved_and_used(maker, unit):
    page = maker.get(unit)
    typed = {
        "season.months": MONTHS,
        "season.fitted": "August",
        **{f"season.{state}.moisture": "" for state in ("shop", "driest", "wettest")},
    }

    maker.post(unit, **filled(page, unit, typed))

    assert maker.get(unit).form(unit).value("season.months").splitlines()[7] == "August 11.4 %"
    season = maker.get(f"{unit}/season")
    assert "Fitted in August at 11.4 %, what the home comes to in that month." in season.text
    assert "your own twelve months" in season.text
    assert "If you fit in January instead, with wood at 6.0 %" in season.text
    assert "fitted, 1/32" in season.text
    assert "moisture when fitted" in maker.get(f"{unit}/checks").text
    changes = maker.get(f"{unit}/revisions").text
    assert "Drawers are fitted in" in changes


def test_the_line_of_the_group_says_what_holds(maker, unit):
    page = maker.get(unit)
    typed = {
        "season.climate": "dry southwest",
        "season.fitted": "May",
        **{f"season.{state}.moisture": "" for state in ("shop", "driest", "wettest")},
    }

    shown = maker.post(unit, **filled(page, unit, typed))

    assert "Or a usual year at home dry southwest; drawers are fitted in May" in " ".join(
        maker.get(unit).text.split()
    )
    assert shown.status == 200


@pytest.mark.parametrize(
    ("typed", "field", "sentence"),
    [
        (
            {"season.months": "Jan 6"},
            "season-months",
            "A year has twelve months; there is no line for February,",
        ),
        ({"season.months": "warm"}, "season-months", "“warm” is not a month with its air; write “July 10.5”"),
        (
            {"season.months": MONTHS.replace("Jul 11.2", "Jul 44")},
            "season-months",
            "July: 44 is too large: at most 25",
        ),
        (
            {"season.fitted": "Smarch"},
            "season-fitted",
            "“Smarch” is not a month; write its name, such as July.",
        ),
        ({"season.climate": "Mars"}, "season-climate", "“Mars” is not a climate here; write one of"),
    ],
)
def test_a_year_that_cannot_be_used_is_refused_beside_its_field(maker, unit, typed, field, sentence):
    page = maker.get(unit)
    empty = {f"season.{state}.moisture": "" for state in ("shop", "driest", "wettest")}

    refused = maker.post(unit, status=422, **filled(page, unit, empty | typed))

    assert sentence in refused.text
    assert f'href="#{field}"' in refused.html


def test_a_year_given_twice_is_refused(maker, unit):
    page = maker.get(unit)

    refused = maker.post(unit, status=422, **filled(page, unit, {"season.climate": "dry southwest"}))

    assert "keep one of the twelve months, the climate, or driest and wettest" in refused.text


def test_a_metric_unit_reads_millimetres(maker, shop):
    text = json.dumps(chest({"unit": "mm", "body": {"width": 600, "depth": 400, "opening_total": 450}}))
    unit = f"/units/{new_unit(shop, new_job(shop), text)}"

    page = maker.get(f"{unit}/season")

    assert "Gaps in millimetres" in page.text
    assert not re.search(r"\d in\b", page.text.partition("The home, month by month")[0])


def test_a_gap_that_closes_says_by_how_much_it_binds(maker, unit):
    """Laid in January, boards of worked dresser A swell by the summer past the gap that each lap has.

    The core works it out: the gap is 0.018 in below nothing, which nobody reads off a minus.
    """
    year = {"season.climate": "heated house, cold winters", "season.fitted": "January"}
    ends = {f"season.{end}.moisture": "" for end in ("shop", "driest", "wettest")}
    maker.post(unit, **filled(maker.get(unit), unit, {**year, **ends, "note": "Laid in winter."}))

    page = maker.get(f"{unit}/season").text

    assert "binds by 0.018" in page
    assert "-0.018" not in page
