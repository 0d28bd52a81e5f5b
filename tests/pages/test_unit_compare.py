"""A unit beside its revisions, options, units of its job or starting units, each difference marked."""

import json
import re
from math import inf

import pytest

from casewright.web.units.compare import FEWER, OTHERWISE, Figure
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from units import dresser

pytestmark = pytest.mark.one_database


@pytest.fixture
def job(shop):
    """A job of a shop with the figures that priced worked dresser A."""
    use_figures(shop, EXAMPLE_FIGURES)
    return new_job(shop)


@pytest.fixture
def unit(shop, job):
    """Worked dresser A; its address."""
    return f"/units/{new_unit(shop, job)}"


@pytest.fixture
def revised(maker, unit):
    """The same, made wider in a second revision."""
    maker.post(unit, **filled(maker.get(unit), unit, {"body.width": "42", "note": "The alcove is wider."}))
    return unit


def test_by_itself_it_offers_what_can_stand_beside_it(maker, unit):
    page = maker.get(f"{unit}/compare")

    assert "nothing yet: choose up to three" in page.text
    assert "Start: " in page.text
    assert "$16,150.00" in page.text


def test_an_earlier_revision_stands_beside_it_with_what_differs(maker, revised):
    page = maker.get(f"{revised}/compare?with=revision-1").text

    # 42 - 39-1/2 = 2-1/2; it stands beside 43-1/2 overall, of which nothing is said.
    assert "43-1/2 × 20-1/2 × 44-3/8 in 41 × 20-1/2 × 44-3/8 in 2-1/2 in narrower" in page
    assert re.search(r"\$16,150\.00 \$[0-9,.]+ less", page)
    assert "Drawers in each 6 6" in page


def test_options_and_units_of_the_job_are_offered(maker, shop, job, unit):
    page = maker.get(unit)
    maker.post(
        f"{unit}/options", **filled(page, unit, {"woods.case.wood": "black walnut", "note": "In walnut"})
    )
    new_unit(shop, job)

    page = maker.get(f"{unit}/compare").text

    assert "Option: In walnut" in page
    assert "Unit B: " in page


def test_the_shops_own_starting_units_are_offered_and_compared(maker, shop, job, unit):
    wide = f"/units/{new_unit(shop, new_job(shop), json.dumps(dresser({'body.width': '48'})))}"
    maker.post(f"{wide}/starting-units", name="The wide one", words="")

    page = maker.get(f"{unit}/compare")
    assert "Shop’s own start: The wide one" in page.text
    key = re.search(r'value="(own-[^"]+)"', page.html)[1]

    assert "49-1/2 × 20-1/2 × 44-3/8 in 8-1/2 in wider" in maker.get(f"{unit}/compare?with={key}").text


def test_no_more_than_four_stand_side_by_side(maker, unit):
    starts = "&".join(f"with=start-{key}" for key in ("dresser", "bedside", "tall-chest", "low-chest"))

    page = maker.get(f"{unit}/compare?{starts}").text

    assert "At most 4 stand side by side" in page


@pytest.mark.parametrize(
    ("first", "mine", "said"),
    [
        (
            Figure(text="6", numbers=(6,), words=(FEWER,)),
            Figure(text="5", numbers=(5,), words=(FEWER,)),
            "1 fewer",
        ),
        (
            Figure(text="104.5 h", numbers=(104.5,), written="{:.1f} h".format),
            Figure(text="111.8 h", numbers=(111.8,), written="{:.1f} h".format),
            "7.3 h more",
        ),
        (Figure(text="no limit", numbers=(inf,)), Figure(text="1.10", numbers=(1.1,)), OTHERWISE),
        (Figure(text="1.10", numbers=(1.1,)), Figure(text="1.10", numbers=(1.1,)), ""),
        (None, Figure(text="1", numbers=(1,)), "only here"),
    ],
)
def test_a_difference_is_said_in_words(first, mine, said):
    assert mine.beside(first) == said


@pytest.mark.parametrize("key", ["revision-9", "option-x", "unit-x", "start-x", "", "'"])
def test_what_there_is_not_is_left_out(maker, unit, key):
    assert "nothing yet" in maker.get(f"{unit}/compare?with={key}").text


def test_the_bench_sees_no_prices_here(bench, unit):
    bench.get(f"{unit}/compare", status=403)
