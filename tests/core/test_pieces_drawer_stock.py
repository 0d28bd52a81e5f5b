"""Stock is prepared for drawers and for cases, and each of them earns its own part of that work."""

import pytest

from casewright.labour.bench import CaseProgress, DrawerProgress
from casewright.labour.earned import earned_minutes, finished_shares
from casewright.labour.stages import case_stages, drawer_stages
from casewright.pieces.asked.reading import read_unit
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.drawer_stock import drawer_stock
from casewright.pieces.costs.job_estimate import estimate_job
from casewright.shop.hours import progress_at
from units import TODAY, dresser_text

EXACT = 1e-9  # sums of whole numbers, divided once


@pytest.fixture(scope="module")
def dresser_job():
    return estimate_job((read_unit(dresser_text()),), example_shop(), TODAY)


def test_stock_is_divided_by_what_each_operation_counts(dresser_job):
    shares = drawer_stock(dresser_job)

    # worked dresser A, of 77 parts: 6 fronts, 12 sides, 6 backs, 4 muntins, 10 bottoms
    assert shares["P05"] == pytest.approx(38 / 77, rel=EXACT)
    # of 108 boards: the same, and each bottom is of three
    assert shares["P04"] == pytest.approx(58 / 108, rel=EXACT)
    # of 14 panels: the bottoms; the rest are the top, two sides and the case bottom
    assert shares["P06b"] == pytest.approx(10 / 14, rel=EXACT)
    # of 110 bd ft to the nearest foot, by the printed rows of fronts, sides, backs, muntins and bottoms
    printed = 9.70 + 11.26 + 8.68 + 1.20 + 25.55
    assert shares["P02"] == pytest.approx(printed / 110, abs=0.005)  # half a foot in 110


def test_one_glued_drawer_of_six_does_not_earn_the_stock_of_the_others(dresser_job):
    one = progress_at("glued", drawer_stages(), DrawerProgress)
    drawers = [one, *[DrawerProgress()] * 5]
    cases = [progress_at("glued", case_stages(), CaseProgress)]
    stock = drawer_stock(dresser_job)

    finished = finished_shares(drawers, cases, stock)
    thicknessing = [line for line in dresser_job.labour if line.code == "P04"]

    # 108 boards at 6 min: the 50 of the case, and a sixth of the 58 of the drawers
    assert earned_minutes(thicknessing, finished) == pytest.approx(6 * (50 + 58 / 6), rel=EXACT)


def test_all_stock_is_earned_when_every_drawer_is_milled_and_the_case_has_its_panels(dresser_job):
    drawers = [progress_at("milled", drawer_stages(), DrawerProgress)] * 6
    cases = [progress_at("panels", case_stages(), CaseProgress)]

    finished = finished_shares(drawers, cases, drawer_stock(dresser_job))
    earned = earned_minutes(dresser_job.labour, finished)

    # the printed minutes of preparing stock: 90, 132, 270, 648, 308, 186, 140, 176
    assert earned == pytest.approx(1950, rel=EXACT)
