"""Boards at the door, offcuts at the saw, the shop's own yields, and what lumber really costs."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.pricing.usable import claim, cost_of_each, cost_per_usable_foot
from casewright.wood.arrival import (
    exact_feet,
    faults_on_arrival,
    is_worth_keeping,
    tally_difference,
    usable_width,
)
from casewright.wood.basis import Basis, Evidence
from casewright.wood.thickness import class_named
from casewright.wood.waste import Footage, Waste
from casewright.wood.yields import JobYield, own_ratio, own_waste

TABLE = Waste(
    fraction=0.2,
    footage=Footage.ROUGH,
    row="cherry",
    evidence=Evidence(basis=Basis.COMMON_PRACTICE, source="common practice"),
)


def jobs(*pairs):
    return tuple(JobYield(job=number, reckoned=a, cut=b) for number, (a, b) in enumerate(pairs, 1))


@pytest.mark.parametrize(
    ("thickness", "moisture", "said"),
    [
        (None, None, ()),
        (1.0, 8.0, ()),
        (29 / 32, 10.0, ()),  # 4/4 may be 1/16 in scant kiln-dried (NHLA Rules 2023), and 1/32 in beside
        (7 / 8, None, ("thin",)),
        (1.0, 11.5, ("wet",)),
        (0.8, 12.0, ("thin", "wet")),
    ],
)
def test_a_board_that_is_thin_or_wet_is_told_at_the_door(thickness, moisture, said):
    found = [
        in_unit(each, LengthUnit.INCH) for each in faults_on_arrival(class_named("4/4"), thickness, moisture)
    ]

    assert tuple(each.partition(":")[0] for each in found) == said


@pytest.mark.parametrize(
    ("width", "length", "kept"),
    [(3, 12, True), (2.5, 15, True), (2.5, 14, False), (2.25, 40, False), (3, 11.75, False)],
)
def test_offcuts_of_a_useful_size_are_kept(width, length, kept):
    """Common practice: 3 by 12 in for what shows, 2-1/2 by 15 in for what does not."""
    assert is_worth_keeping(width, length) is kept


def test_a_tapered_board_has_the_feet_of_its_mean_width_and_the_strip_of_its_narrow_end():
    assert exact_feet(1.0, 7, 8, 6, 144) == pytest.approx(7.0)
    assert exact_feet(1.25, 6, None, None, 72) == pytest.approx(3.75)  # 540/144, a dealer's guide
    assert usable_width(7, 8, 6) == 6
    assert usable_width(7, None, None) == 7


def test_a_short_tally_is_a_share_of_the_bill():
    assert tally_difference(40, 38) == pytest.approx(0.05)
    assert tally_difference(40, 42) == pytest.approx(-0.05)
    assert tally_difference(0, 3) == 0


def test_two_jobs_teach_nothing_yet():
    assert own_waste(TABLE, jobs((40, 50), (40, 50))) is TABLE


def test_three_jobs_change_the_waste_of_the_table():
    """By hand: ratios 0.8, 0.8, 0.8; (4 + 2.4) / 7 = 0.9143; waste 1 - 0.8 * 0.9143 = 0.2686."""
    found = own_waste(TABLE, jobs((40, 50), (40, 50), (8, 10)))

    assert found.fraction == pytest.approx(0.2686, abs=5e-5)
    assert found.evidence.basis is Basis.LEARNED
    assert found.evidence.source == "jobs 1, 2 and 3"


@given(st.lists(st.floats(0.3, 2), min_size=3, max_size=12))
def test_what_is_learned_lies_between_the_table_and_the_jobs(ratios):
    found = own_ratio(tuple(JobYield(job=1, reckoned=each, cut=1.0) for each in ratios))

    assert min([1, *ratios]) - 1e-9 <= found <= max([1, *ratios]) + 1e-9


def test_a_job_that_took_nothing_is_no_yield():
    with pytest.raises(ValueError, match="took no lumber"):
        JobYield(job=4, reckoned=3, cut=0)


def test_the_cost_of_a_usable_foot_is_the_bill_over_the_parts():
    assert cost_per_usable_foot(37050, 25.5) == 1453  # 370.50 / 25.5 = 14.529
    assert cost_per_usable_foot(37050, 0) is None


def test_what_was_billed_and_did_not_come_is_asked_back():
    assert claim(950, 40, 38) == 1900
    assert claim(950, 38, 40) == 0


@given(st.integers(0, 10**7), st.lists(st.floats(0.1, 40), min_size=1, max_size=20))
def test_the_cost_of_all_boards_is_the_bill(bill, feet):
    assert sum(cost_of_each(bill, tuple(feet))) == bill


def test_nothing_that_came_costs_nothing():
    assert cost_of_each(100, ()) == ()
