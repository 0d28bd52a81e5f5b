"""The papers of a job at the bench: the newest of those that it reads, one press away from every drawer."""

import re

import pytest

from benchwork import drawer_ids, job_in_hand
from counting import MOST, counted

pytestmark = pytest.mark.one_database


@pytest.fixture
def job(shop):
    """A job in hand."""
    return job_in_hand(shop)


@pytest.fixture
def drawer(shop, job):
    """The middle drawer of its chest."""
    return drawer_ids(shop, job)["R2-1"]


def test_the_newest_cards_and_cut_list_of_the_job_are_at_hand_and_without_money(bench, maker, job, drawer):
    for kind in ("joint cards", "cut list", "lumber order", "joint cards"):
        maker.post(f"/jobs/{job}/papers", kind=kind)

    page = bench.get(f"/bench/{drawer}")
    found = re.findall(r'<a class="button" href="(/papers/[^"]+)">([^<]+)</a>', page.html)
    papers = [bench.get(address) for address, _ in found]
    cuts = bench.browser.get(f"{found[1][0]}/cut-list.csv")

    assert [name for _, name in found] == ["Joint cards J-0001, revision 2", "Cut list C-0001"]
    assert [paper.seen.title.partition(" –")[0] for paper in papers] == [name for _, name in found]
    said = " ".join([*(paper.html for paper in papers), cuts.text])
    assert cuts.status_code == 200
    assert not re.search(r"\$|\b(price|cost|wage|margin|usd)\b", said, re.IGNORECASE)


def test_a_job_without_papers_has_none_on_its_drawers(bench, drawer):
    assert "/papers/" not in bench.get(f"/bench/{drawer}").html


def test_papers_that_were_issued_often_cost_a_drawers_page_no_more(shop, bench, maker, job, drawer):
    for _ in range(4):
        maker.post(f"/jobs/{job}/papers", kind="cut list")
    maker.post("/timer", job=job, operation="D06")

    with counted(shop.engine) as sent:
        page = maker.get(f"/bench/{drawer}")

    assert "Cut list C-0001, revision 4" in page.text
    assert len(sent) <= MOST
