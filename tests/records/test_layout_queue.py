"""The queue of layouts: who works on which, what is begun anew, what ends without an answer."""

import sys
import time
from datetime import timedelta

import pytest
from sqlalchemy import select

from casewright.records.layouts import UNDER_WAY, CutLayout, LayoutState
from casewright.records.sessions import across_shops, reading, writing
from casewright.shop.layouts import (
    LOST_AFTER,
    MOST_WAITING,
    ask_layout,
    claim_next,
    end_layout,
    note_progress,
    stop_layout,
)
from casewright.shop.refusals import NotFound, Refused
from casewright.solving.crew import Crew
from jobs import take_on
from people import Clock, new_shop

ASKED = {"parts": [{"code": "P", "count": 2}], "boards": [{"code": "B"}]}
SAYS = """
import json, sys
for line in sys.stdin:
    job = json.loads(line)
    if "stop" in job:
        continue
    {}
"""
"""A worker for tests; what it does with a job stands in the middle."""
DONE = 'print(json.dumps({"id": job["id"], "done": {"lots": [], "seconds": job["seconds"]}}), flush=True)'
DIES = "sys.exit(1)"
TO_END = 180  # seconds


@pytest.fixture
def job(books):
    """The shop and the job of layouts; nothing else of any shop is in the queue."""
    with across_shops(books, write=True) as db:
        for layout in db.scalars(select(CutLayout).where(CutLayout.state.in_(UNDER_WAY))):
            layout.state = LayoutState.REFUSED
    shop = new_shop(None, books, Clock())
    with writing(books, shop.shop_id) as db:
        return shop.shop_id, take_on(db, shop, 1).id


def ask(books, job, **changes):
    """A layout in the queue; gives its id."""
    shop_id, job_id = job
    with writing(books, shop_id) as db:
        facts = {"seconds": 2.0, "seed": 0, "who": "Ada", "now": Clock().now} | changes
        return ask_layout(db, job_id, facts.pop("asked", ASKED), **facts).id


def held(books, job, layout_id):
    """A layout as it stands."""
    with reading(books, job[0]) as db:
        return db.get(CutLayout, (job[0], layout_id))


def claim(books, now):
    with across_shops(books, write=True) as db:
        found = claim_next(db, now)
        return found and found.id


def test_the_oldest_is_taken_first_and_only_once(books, job):
    first, second = ask(books, job), ask(books, job, now=Clock().now + timedelta(seconds=1))

    assert [claim(books, Clock().now) for _ in range(3)] == [first, second, None]
    assert held(books, job, first).state is LayoutState.WORKING


def test_what_nobody_works_on_any_more_is_begun_anew_once_and_then_given_up(books, job):
    layout, now = ask(books, job), Clock().now

    assert claim(books, now) == layout
    assert claim(books, now + LOST_AFTER) is None, "it may still be worked on"
    assert claim(books, now + 2 * LOST_AFTER) == layout
    assert claim(books, now + 4 * LOST_AFTER) is None
    found = held(books, job, layout)
    assert (found.state, "twice" in found.message) == (LayoutState.REFUSED, True)


def test_a_stop_is_told_to_whoever_works_on_it(books, job):
    layout, now = ask(books, job), Clock().now
    claim(books, now)
    with writing(books, job[0]) as db:
        assert note_progress(db, layout, {"cost": 7}, now) is False
        stop_layout(db, layout)
    with writing(books, job[0]) as db:
        assert note_progress(db, layout, {"cost": 6}, now) is True

    assert held(books, job, layout).progress == {"cost": 6}


def test_one_that_waits_is_stopped_at_once(books, job):
    layout = ask(books, job)
    with writing(books, job[0]) as db:
        stop_layout(db, layout)

    assert claim(books, Clock().now) is None
    assert held(books, job, layout).state is LayoutState.REFUSED


def test_an_answer_ends_it(books, job):
    layout = ask(books, job)
    claim(books, Clock().now)
    with writing(books, job[0]) as db:
        end_layout(db, layout, Clock().now, answer={"lots": []})

    assert held(books, job, layout).state is LayoutState.DONE


def test_only_so_many_of_a_shop_may_wait(books, job):
    for _ in range(MOST_WAITING):
        ask(books, job)

    with pytest.raises(Refused, match="under way already"):
        ask(books, job)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"seconds": 61.0}, "up to 60 seconds"),
        ({"seconds": 0.0}, "up to 60 seconds"),
        ({"asked": {"parts": [{"code": "P", "count": 2001}]}}, "2,001 parts"),
        ({"asked": {"parts": [], "boards": [{}] * 1001}}, "1,001 pieces"),
    ],
)
def test_what_is_beyond_the_limits_is_refused(books, job, changes, words):
    with pytest.raises(Refused, match=words):
        ask(books, job, **changes)


def test_a_job_that_is_not_there_has_no_layouts(books, job):
    with pytest.raises(NotFound):
        ask(books, (job[0], "0000000000000"))


@pytest.mark.parametrize(
    ("does", "state", "words"),
    [(DONE, LayoutState.DONE, ""), (DIES, LayoutState.REFUSED, "its process ended by itself")],
    ids=["it answers", "it dies"],
)
def test_the_crew_brings_a_layout_to_its_end(books, job, does, state, words):
    layout = ask(books, job)
    crew = Crew(books, lambda: Clock().now, command=(sys.executable, "-c", SAYS.format(does)))
    try:
        crew.wake()
        ends = time.monotonic() + TO_END
        while held(books, job, layout).state is not state and time.monotonic() < ends:
            time.sleep(0.05)
    finally:
        crew.end()

    found = held(books, job, layout)
    assert (found.state, words in found.message) == (state, True)
