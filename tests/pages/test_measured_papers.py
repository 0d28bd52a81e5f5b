"""A size measured at the bench shows on every page that lists a paper: which cards are wrong, which hold."""

import re

import pytest

from benchwork import case_reaches, drawer_ids, job_in_hand
from casewright.records.papers import Paper
from casewright.records.sessions import writing
from casewright.web.frame import paper_says
from counting import MOST, counted

pytestmark = pytest.mark.one_database


@pytest.fixture
def job(shop):
    """A job in hand whose case is glued up."""
    made = job_in_hand(shop)
    case_reaches(shop, made, "glued")
    return made


@pytest.fixture
def drawers(shop, job):
    """The drawers of its chest."""
    return drawer_ids(shop, job)


def states(page):
    """What the page of a job says of each paper."""
    return re.findall(
        r'href="/papers/[^"]+">([^<]*)</a></th><td><span class="state [a-z]+">([^<]*)<', page.html
    )


def thin_side(bench, drawer):
    """The left side of a drawer, planed too thin."""
    bench.get(f"/bench/{drawer}")
    return bench.send(f"/bench/{drawer}/sizes", SL__thickness="15/32")


def test_the_jobs_page_says_which_paper_is_out_of_date_and_which_superseded(job, drawers, maker, bench):
    for kind in ("cut list", "joint cards", "joint cards"):
        maker.post(f"/jobs/{job}/papers", kind=kind)
    before = states(maker.get(f"/jobs/{job}"))

    thin_side(bench, drawers["R1-1"])

    assert before == [
        ("Joint cards, revision 2", "issued"),
        ("Joint cards", "superseded"),
        ("Cut list", "issued"),
    ]
    assert [state for _, state in states(maker.get(f"/jobs/{job}"))] == [
        "out of date",
        "superseded",
        "out of date",
    ]


def test_a_size_as_drawn_makes_no_paper_out_of_date(job, drawers, maker, bench):
    address = maker.post(f"/jobs/{job}/papers", kind="joint cards").address
    bench.get(f"/bench/{drawers['R1-1']}")

    bench.send(f"/bench/{drawers['R1-1']}/sizes", SL__thickness="1/2", SR__thickness="1/2")

    assert states(maker.get(f"/jobs/{job}")) == [("Joint cards", "issued")]
    assert "Out of date" not in maker.get(address).text


def test_the_bench_says_it_at_the_drawer_that_was_measured_and_not_at_the_next(job, drawers, maker, bench):
    maker.post(f"/jobs/{job}/papers", kind="joint cards")

    thin_side(bench, drawers["R1-1"])

    assert "Joint cards J-0001 out of date for this drawer" in bench.get(f"/bench/{drawers['R1-1']}").text
    assert "out of date" not in bench.get(f"/bench/{drawers['R3-1']}").text


def test_the_set_says_which_of_its_cards_are_wrong_and_why_and_which_hold(job, drawers, maker, bench):
    address = maker.post(f"/jobs/{job}/papers", kind="joint cards").address

    thin_side(bench, drawers["R1-1"])
    page = bench.get(address)

    head, _, cards = page.text.partition("Still hold:")
    assert "Gauges to set out of date side A-R1-1-SL measured 15/32 A-R1-1-SL: gauge 2 is 13/32 now" in head
    assert "Half-blind dovetail, drawer front A-R1-1 out of date side A-R1-1-SL measured 15/32" in head
    assert "A-R1-1-SL: gauge 2 is 13/32 now, here 7/16" in head
    assert cards.startswith(" Half-blind dovetail, drawer front A-R2-1")
    # On the list of gauges, and on the cards of front, back and bottom, which follows the thinner side.
    assert cards.count("Out of date: side A-R1-1-SL measured 15/32") == 4


def test_a_size_measured_as_drawn_is_no_cause(job, drawers, maker, bench):
    address = maker.post(f"/jobs/{job}/papers", kind="joint cards").address
    bench.get(f"/bench/{drawers['R1-1']}")

    bench.send(f"/bench/{drawers['R1-1']}/sizes", SL__thickness="15/32", SR__thickness="1/2")

    text = bench.get(address).text
    assert "side A-R1-1-SL measured 15/32" in text
    assert "side A-R1-1-SR measured" not in text


def test_a_set_that_is_issued_again_holds(job, drawers, maker, bench):
    maker.post(f"/jobs/{job}/papers", kind="joint cards")
    thin_side(bench, drawers["R1-1"])

    page = maker.post(f"/jobs/{job}/papers", kind="joint cards")

    assert "Out of date" not in page.text
    assert "out of date" not in bench.get(f"/bench/{drawers['R1-1']}").text


@pytest.mark.parametrize("path", ["/jobs/{job}", "/bench/{drawer}"])
def test_papers_out_of_date_cost_a_page_no_more_statements_than_it_may_send(
    shop, job, drawers, maker, bench, path
):
    for kind in ("lumber order", "cut list", "joint cards"):
        maker.post(f"/jobs/{job}/papers", kind=kind)
    thin_side(bench, drawers["R1-1"])

    with counted(shop.engine) as sent:
        page = maker.get(path.format(job=job, drawer=drawers["R1-1"]))

    assert "out of date" in page.text
    assert len(sent) <= MOST


def test_a_paper_from_before_is_read_for_what_it_says(shop, job, drawers, maker, bench):
    maker.post(f"/jobs/{job}/papers", kind="joint cards")
    with writing(shop.engine, shop.shop_id) as db:
        old = db.query(Paper).one()
        kept = {name: getattr(old, name) for name in Paper.__table__.columns.keys()}  # noqa: SIM118
        db.add(Paper(**kept | {"id": "0" * 13, "revision": 2, "says": None}))
    thin_side(bench, drawers["R1-1"])

    assert states(maker.get(f"/jobs/{job}"))[0][1] in {"superseded", "out of date"}
    assert "out of date for this drawer" in bench.get(f"/bench/{drawers['R1-1']}").text
    assert "out of date" not in bench.get(f"/bench/{drawers['R3-1']}").text
    assert "0" * 13 in paper_says._of_before


def test_the_joints_page_begins_with_every_gauge_and_what_it_serves(job, drawers, maker, bench):
    thin_side(bench, drawers["R1-1"])
    unit = re.search(r'href="(/units/[^"/]+)"', maker.get(f"/jobs/{job}").html)[1]

    text = maker.get(f"{unit}/joints").text

    first = text[text.index("Gauges to set") : text.index("Front, half-blind dovetail")]
    # Below them stands in which order they are used again.
    assert first.partition("A: Set and keep")[0].count("Gauge 2") == 2
    assert "13/32 in not 15/32 Serves A-R1-1-SL" in first
    assert "Every socket for A-R1-1-SL would be 1/16 in too deep" in first
