"""What the bench measures is worked into the unit's pages; the design stays as it was drawn."""

import re

import pytest
from sqlalchemy import select

from benchwork import drawer_ids, job_in_hand
from casewright.records.jobs import Unit
from casewright.records.sessions import reading
from pages.unit_jobs import filled, new_job, new_unit

pytestmark = pytest.mark.one_database


@pytest.fixture
def unit(shop):
    """A unit in hand: its address, and the address of one of its drawers at the bench."""
    job_id = job_in_hand(shop)
    with reading(shop.engine, shop.shop_id) as db:
        unit_id = db.scalars(select(Unit.id).where(Unit.job_id == job_id)).one()
    return f"/units/{unit_id}", f"/bench/{drawer_ids(shop, job_id)['R2-1']}"


def test_a_measured_side_moves_the_second_gauge_on_the_unit_s_own_page(unit, maker, bench):
    address, drawer = unit
    before = maker.get(f"{address}/joints").text
    bench.get(drawer)
    bench.send(f"{drawer}/sizes", SL__thickness="29/64", SR__thickness="29/64")

    after = maker.get(f"{address}/joints").text

    assert "2 measurements from the bench are worked in." in after
    assert "25/64 not 29/64" in after
    assert "not 29/64" not in before


def test_the_design_keeps_the_drawn_size(unit, maker, bench):
    address, drawer = unit
    bench.get(drawer)
    bench.send(f"{drawer}/sizes", SL__thickness="29/64", SR__thickness="29/64")

    page = maker.get(address)

    assert "from the bench" not in page.text
    assert page.form(address).value("drawers.side") in {"", "1/2"}


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (
            "junk",
            "“junk” is not followed by a size. Write an opening, such as R5-1 height",
        ),
        (
            "R1-1 colour 8",
            "“R1-1 colour”: no such size is measured. Write the opening, then height, width or",
        ),
        ("R1-1 height tall", "R1-1 height: “tall” is not a size. Write it as 7-13/32"),
    ],
)
def test_a_line_of_measured_sizes_that_cannot_be_read_is_refused_with_one_that_can(shop, maker, typed, said):
    address = f"/units/{new_unit(shop, new_job(shop))}"

    page = maker.post(address, 422, **filled(maker.get(address), address, {"measured": typed}))

    assert said in page.text
    assert "This key" not in page.text


def test_what_is_wrong_whatever_the_layout_is_said_once_above_the_layouts(unit, maker, bench):
    address, drawer = unit
    bench.get(drawer)
    bench.send(f"{drawer}/marking", F__moisture="8", SL__moisture="12")

    page = maker.get(f"{address}/layouts?row=2&end=front").text

    assert "Whichever layout is taken, these hold:" in page
    assert "as all" in page


def test_a_figure_of_the_design_leads_to_the_working_of_the_design(unit, maker, bench):
    """The editor shows what was drawn; what the bench has measured since must not answer for it."""
    address, drawer = unit
    bench.get(drawer)
    bench.send(f"{drawer}/sizes", opening__height="6-7/8")
    page = maker.get(address)
    link = next(each for each in page.seen.links if "working?figure=R2-1.height&" in each)

    drawn, measured = maker.get(link), maker.get(f"{address}/working?figure=R2-1.height")

    size = re.search(r"R2-1: height = (\S+) in", drawn.text)[1]
    assert f">{size}</a>" in page.html
    assert f"height = {size} in" not in measured.text
    assert (
        "As it was drawn, which is what the design shows; 1 size measured at the bench is left out"
        in drawn.text
    )
    assert f"{address}/working?figure=R2-1.opening_height&of=design" in drawn.seen.links


def test_every_figure_of_the_summary_leads_to_a_working_with_a_name_in_words(shop, maker):
    address = f"/units/{new_unit(shop, new_job(shop))}"
    page = maker.get(address)
    summed = re.search(r'<dl class="facts small">(.*?)</dl>', page.html, re.DOTALL)[1]

    links = [link.replace("&amp;", "&") for link in re.findall(r'href="([^"]+)"', summed)]

    assert len(links) == 5  # wide, deep, high, weight, hours
    for link in links:
        assert re.search(r"Where the [a-z ,]+ comes? from", maker.get(link).text), link
