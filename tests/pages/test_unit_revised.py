"""The rules of revising a unit hold for whoever calls the verb, not only for the form."""

import pytest

from benchwork import job_in_hand
from casewright.records.people import Shop
from casewright.records.sessions import writing
from casewright.shop.figures import figures
from casewright.shop.jobs import load_job
from casewright.shop.refusals import Refused
from casewright.shop.units import approve_unit, revise_unit, take_out_unit, units_of
from units import chest, unit

WIDER = unit(chest({"body": {"width": 30, "depth": 16, "opening_total": 18}}))


def revise(shop, job_id, before, note=""):
    """Does something to the only unit of a job, then revises it in the same breath."""
    with writing(shop.engine, shop.shop_id) as db:
        job = load_job(db, job_id)
        loaded = units_of(db, job)[0]
        before(db, loaded, "Ada Marsh", shop.clock.now)
        db.flush()
        own = figures(db, db.get_one(Shop, shop.shop_id), job)
        revise_unit(db, loaded, WIDER, own, loaded.unit.version, "Ada Marsh", shop.clock.now, note)
        return loaded.unit.revision


def approve_first(db, loaded, who, now):
    """Approves the unit's first revision."""
    approve_unit(db, loaded, 1, who, now)


def test_a_unit_that_was_taken_out_is_not_revised(shop):
    job = job_in_hand(shop)

    with pytest.raises(Refused, match="This unit was taken out of its job"):
        revise(shop, job, take_out_unit)


@pytest.mark.parametrize("note", ["", "  "])
def test_an_approved_unit_is_not_revised_without_a_reason(shop, note):
    job = job_in_hand(shop)

    with pytest.raises(Refused, match="Say why this one differs"):
        revise(shop, job, approve_first, note)


def test_an_approved_unit_is_revised_with_a_reason(shop):
    job = job_in_hand(shop)

    assert revise(shop, job, approve_first, "The hall is wider.") == 2
