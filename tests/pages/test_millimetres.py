"""A shop that works in millimetres walks through its unit, its bench and its papers, and reads no inches."""

import json
import re

import pytest

from benchwork import case_reaches, drawer_ids, job_in_hand
from casewright.records.people import Role
from inches import inches_beside_words, inches_in
from pages.unit_jobs import EXAMPLE_FIGURES, filled, new_job, new_unit, use_figures
from people import new_shop
from printed import text_of
from units import chest, dresser_text

pytestmark = pytest.mark.one_database

BESIDE = re.compile(r'<td class="(?:number|figure) soft[^"]*"[^>]*>.*?</td>|<span class="echo">.*?</span>')
"""Where inches stand beside millimetres: a column of its own, and the echo of a typed size."""
NAMES = re.compile(r"<kbd>.*?</kbd>|<option.*?</option>|<button.*?</button>")
"""Notations that are read, names of stock, such as ply of 3/4, and the way to the other unit."""
TAGS = re.compile(r"<script.*?</script>|<style.*?</style>|<[^>]+>", re.DOTALL)


@pytest.fixture
def metric(app, books, clock):
    """A shop that works in millimetres."""
    held = new_shop(app, books, clock, unit="mm")
    use_figures(held, EXAMPLE_FIGURES)
    return held


@pytest.fixture
def maker(metric):
    """Its maker."""
    return metric.visitor(Role.MAKER)


@pytest.fixture
def unit(metric):
    """Worked dresser A, from a file that was written in inches before the shop went metric; its address."""
    return f"/units/{new_unit(metric, new_job(metric))}"


def read(page):
    """The words of a page, and nothing that gives inches beside millimetres."""
    return " ".join(TAGS.sub(" ", NAMES.sub(" ", BESIDE.sub(" ", page.html))).split())


@pytest.mark.parametrize("tab", ["/cut-list", "/joints", "/lumber", "/hours", "/price", "/checks"])
def test_the_pages_of_a_unit_are_in_millimetres(maker, unit, tab):
    assert inches_in(read(maker.get(f"{unit}{tab}"))) == []


@pytest.mark.parametrize("figure", ["R5-1", "drawers.gauge_1", "S5", "R5-1.height", "R5-1.front_joint"])
def test_the_working_of_a_figure_is_in_millimetres(maker, unit, figure):
    assert inches_in(read(maker.get(f"{unit}/working?figure={figure}"))) == []


def test_the_form_of_a_unit_that_was_started_here_is_in_millimetres(maker, metric):
    job = new_job(metric)
    maker.get(f"/jobs/{job}/units/new")
    page = maker.post(f"/jobs/{job}/units", start="dresser")

    assert "mm" in page.text
    assert inches_in(read(page)) == []


@pytest.mark.parametrize(
    ("typed", "about"),
    [
        ({"drawers.lap": "25"}, "leaves nothing of a front"),
        ({"drawers.clearances.top": "999"}, "is too large: at most 304.8"),
        ({"body.height": ""}, "write a height, such as 1127.1"),
        ({"measured": "R5-1 hight 214"}, "such as R5-1 height 215.1"),
        ({"drawers.front_joint.half_pin": "100"}, "holds no tail between half pins of"),
    ],
)
def test_what_cannot_be_built_is_refused_in_millimetres(maker, metric, typed, about):
    job = new_job(metric)
    maker.get(f"/jobs/{job}/units/new")
    page = maker.post(f"/jobs/{job}/units", start="dresser")
    address = page.address.partition("?")[0]
    form = filled(page, address, typed)

    refused = maker.post(address, 422, **form)

    assert about in refused.text
    assert inches_in(read(refused)) == []


def test_a_drawer_at_the_bench_is_in_millimetres(metric):
    made = job_in_hand(metric, changes={"drawers.lap": "1/16", "drawers.groove.height": "3/16"})
    case_reaches(metric, made, "glued")
    bench = metric.visitor(Role.BENCH)

    page = bench.get(f"/bench/{drawer_ids(metric, made)['R2-1']}")

    assert "The lap is 1.6 mm; it needs 2.4, better 3.2." in page.text
    assert "Dividers for each 0.4 mm out" in page.text
    assert inches_in(read(page)) == []


def test_what_was_typed_in_inches_is_not_read_as_millimetres(metric):
    """A shop that goes metric in the middle of a job: 0.5 was half an inch, and stays so."""
    made = job_in_hand(metric)
    case_reaches(metric, made, "glued")
    drawer = drawer_ids(metric, made)["R2-1"]
    bench = metric.visitor(Role.BENCH)
    bench.get(f"/bench/{drawer}")

    typed = bench.send(f"/bench/{drawer}/sizes", SL__thickness="12.5")
    again = bench.send(f"/bench/{drawer}/sizes", SR__thickness="12.6")

    assert typed.form(f"/bench/{drawer}/sizes").value("SL.thickness") == "12.5"
    assert again.form(f"/bench/{drawer}/sizes").value("SL.thickness") == "12.5"


@pytest.mark.parametrize(("kind", "slug"), [("cut list", "cut-list"), ("joint cards", "joint-cards")])
def test_the_papers_of_a_job_say_millimetres(maker, metric, kind, slug):
    job = new_job(metric)
    new_unit(metric, job, json.dumps(chest({"drawers.lap": "1/16"})))
    new_unit(metric, job, dresser_text())

    page = maker.post(f"/jobs/{job}/papers", kind=kind)
    printed = maker.browser.get(f"{page.address}/{slug}.pdf").content

    assert inches_beside_words(read(page)) == []
    assert inches_beside_words(text_of(printed)) == []


def test_a_size_that_cannot_be_is_refused_at_the_bench_in_millimetres(metric):
    made = job_in_hand(metric)
    case_reaches(metric, made, "glued")
    drawer = drawer_ids(metric, made)["R2-1"]
    bench = metric.visitor(Role.BENCH)
    bench.get(f"/bench/{drawer}")

    refused = bench.send(f"/bench/{drawer}/sizes", status=422, opening__height="900")

    assert "900.0 mm is far from the 152.4 that was drawn" in refused.text
    assert inches_in(read(refused)) == []


def test_a_quote_says_in_millimetres_what_stops_it(metric, maker):
    job = new_job(metric)
    new_unit(metric, job, json.dumps(chest({"drawers.lap": "1/16"})))

    page = maker.post(f"/jobs/{job}/quotes")

    assert "The lap is 1.6 mm; it needs 2.4, better 3.2." in page.text
