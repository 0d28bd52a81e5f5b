"""Hours of a job of which parts are made twice: what is lost counts not against the new ones, nor teaches."""

import re

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand, unit_address
from casewright.records.jobs import Job, JobState
from casewright.records.sessions import writing
from casewright.shop.jobs import move_job
from pages.unit_jobs import EXAMPLE_FIGURES, filled, use_figures

LOG = "/shop/hours/log"


@pytest.fixture
def job(shop, owner):
    """A chest in hand with a glued drawer, twenty hours written down for its tails."""
    use_figures(shop, EXAMPLE_FIGURES)
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    drawer_reaches(shop, drawer_ids(shop, job)["R3-1"], "glued")
    owner.get(f"/jobs/{job}/hours")
    owner.send(f"/jobs/{job}/hours", operation="D06", time="20 h")
    return job


def changed(shop, owner, job, **typed):
    """The unit changed after its approval, as the customer signs; hours that are lost by it."""
    unit = unit_address(shop, job)
    owner.get(unit)
    owner.send(f"{unit}/approval")
    owner.post(unit, **filled(owner.get(unit), unit, {"note": "Asked for.", **typed}))
    address = f"{unit}/revisions/2/change-order"
    review = owner.get(address)
    lost = re.search(r"work in parts that are no longer usable</th><td[^>]*>([0-9.]+) h", review.html)
    page = owner.post(address, **filled(review, address, {"act": "make it"}))
    owner.send(f"{page.address.partition('?')[0]}/agreement", name="Ines Cole", way="signed")
    return float(lost[1]) if lost else 0.0


def gone(page):
    """The hours that are gone, by the warning of a job's hours."""
    found = re.search(r"\(([0-9]+):([0-9]+) of [0-9]+:[0-9]+ h\)", page.text)
    return int(found[1]) + int(found[2]) / 60


def delivered(shop, job):
    with writing(shop.engine, shop.shop_id) as db:
        for state in (JobState.READY, JobState.DELIVERED):
            move_job(db, db.get_one(Job, (shop.shop_id, job)), state, "Ada Marsh", shop.clock.now)


def test_work_that_went_into_scrapped_parts_is_left_out_of_the_hours_of_the_new_ones(shop, owner, job):
    assert gone(owner.get(f"/jobs/{job}/hours")) == 20

    lost = changed(shop, owner, job, **{"woods.fronts.wood": "walnut"})

    page = owner.get(f"/jobs/{job}/hours")
    assert lost > 0
    assert gone(page) == pytest.approx(20 - lost, abs=0.01)  # to the minute
    assert "went into parts that change orders scrap" in page.text


def test_a_job_of_which_parts_were_made_twice_teaches_nothing(shop, owner, job):
    changed(shop, owner, job, **{"woods.fronts.wood": "walnut"})

    delivered(shop, job)

    assert "Saw and chop the tails" not in owner.get(LOG).text


@pytest.mark.one_database
def test_a_change_by_which_nothing_is_lost_teaches_as_any_job(shop, owner, job):
    lost = changed(shop, owner, job, **{"finish.show_coats": "1"})

    delivered(shop, job)

    assert lost == 0
    assert "Saw and chop the tails" in owner.get(LOG).text
