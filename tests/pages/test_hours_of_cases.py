"""Which cases count when hours are laid beside the work that is done."""

from benchwork import job_in_hand
from casewright.records.hours import case_stages_of_job
from casewright.records.job_page import cases_of
from casewright.records.sessions import reading
from pages.commissions import Commission


def test_a_case_that_is_no_longer_made_counts_no_more(shop):
    job = Commission(shop, job_in_hand(shop, changes={"count": 2}))

    job.revise(job.unit_ids()[0], count=1)

    with reading(shop.engine, shop.shop_id) as db:
        assert len(cases_of(db, job.job_id)) == 1
        assert len(case_stages_of_job(db, job.job_id)) == 1
