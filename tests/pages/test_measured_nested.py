"""Openings in columns of columns, measured at the bench: drawers follow, and printed cards go out of date."""

import pytest

from benchwork import case_reaches, drawer_ids, job_in_hand, unit_address
from units import built, chest

pytestmark = pytest.mark.one_database

ROWS = [
    {"columns": 2, "height": "4"},
    {"across": [{"rows": [{}, {"across": [{}, {"rows": [{}, {}]}]}]}, {}]},
]
BODY = {"width": "60", "depth": "18", "opening_total": "30"}
CODES = ["R1-1", "R1-2", "R2-1-1-1", "R2-1-2-1", "R2-1-2-2-1-1", "R2-1-2-2-2-1", "R2-2"]


@pytest.fixture
def job(shop):
    """A job in hand with one piece whose columns have rows of their own, its case glued up."""
    made = job_in_hand(shop, changes={"rows": ROWS, "body": BODY})
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def unit(shop, job):
    """The address of its unit."""
    return unit_address(shop, job)


@pytest.fixture
def drawers(shop, job):
    """Its drawers."""
    return drawer_ids(shop, job)


def test_every_drawer_of_a_nested_face_stands_at_the_bench_under_its_path(drawers):
    assert sorted(drawers) == CODES


@pytest.mark.parametrize("code", CODES)
def test_a_lower_opening_lowers_its_drawer_and_no_other(drawers, unit, maker, bench, code):
    designed = built(chest({"rows": ROWS, "body": BODY}))
    low = {drawer.sizes.code: drawer.sizes.opening.height - 1 / 4 for drawer in designed.drawers}
    measured = {code: {"height": low[code]}}
    expected = built(chest({"rows": ROWS, "body": BODY, "measured": {"openings": measured}}))

    bench.get(f"/bench/{drawers[code]}")
    bench.send(f"/bench/{drawers[code]}/sizes", opening__height=f"{low[code]:.6f}")
    page = maker.get(f"{unit}/season").text

    now = {drawer.sizes.code: drawer.sizes.height for drawer in expected.drawers}
    before = {drawer.sizes.code: drawer.sizes.height for drawer in designed.drawers}
    assert [each for each in CODES if now[each] != before[each]] == [code]
    assert "1 measurement from the bench is worked in." in page


def test_cards_that_were_printed_before_are_out_of_date_for_that_drawer(job, drawers, maker, bench):
    code = "R2-1-2-2-1-1"
    address = maker.post(f"/jobs/{job}/papers", kind="joint cards").address
    bench.get(f"/bench/{drawers[code]}")

    bench.send(f"/bench/{drawers[code]}/sizes", opening__height="4")

    assert "out of date for this drawer" in bench.get(f"/bench/{drawers[code]}").text
    assert "out of date" not in bench.get(f"/bench/{drawers['R2-2']}").text
    assert "Out of date" in bench.get(address).text
