"""The year at home: a smooth year between its ends, and the climates that a unit file can name."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.basis import Basis
from casewright.wood.moisture import equilibrium_moisture, interiors
from casewright.wood.year import MONTHS, Month, home_climate, home_climates, moisture_in_month


def test_the_year_begins_driest_and_is_wettest_half_a_year_later():
    months = [moisture_in_month(6.2, 11.0, month) for month in MONTHS]

    assert months[0] == 6.2
    assert months[6] == pytest.approx(11.0, abs=1e-12)
    # half-way in April and October, by the cosine of a quarter turn
    assert [months[3], months[9]] == pytest.approx([8.6, 8.6], abs=1e-12)
    # a twelfth of a turn: 4.8 x (1 - 0.8660) / 2 above the driest
    assert [months[1], months[11]] == pytest.approx([6.5215, 6.5215], abs=1e-4)


@given(st.floats(2, 25), st.floats(2, 25))
def test_no_month_lies_beyond_the_ends(one, other):
    driest, wettest = sorted((one, other))

    months = [moisture_in_month(driest, wettest, month) for month in MONTHS]

    # a sum of three floats below 25
    assert all(driest - 1e-12 <= each <= wettest + 1e-12 for each in months)
    assert months[:7] == sorted(months[:7])
    assert months[6:] == sorted(months[6:], reverse=True)


def test_the_climates_keep_the_handbooks_averages():
    by_name = {each.name: each for each in home_climates()}

    for region in interiors():
        known = by_name[region.region]
        assert known.average == region.moisture
        assert known.average_from.basis is Basis.PUBLISHED
        assert known.swing_from.basis is Basis.COMMON_PRACTICE


def test_the_usual_climate_is_a_heated_room_at_thirty_and_sixty_per_cent():
    usual = home_climates()[0]

    # Wood Handbook, Table 4-2, prints tenths
    assert usual.driest == pytest.approx(equilibrium_moisture(70, 30), abs=0.05)
    assert usual.wettest == pytest.approx(equilibrium_moisture(70, 60), abs=0.05)


def test_the_mean_of_a_climates_months_is_its_average():
    for each in home_climates():
        months = [moisture_in_month(each.driest, each.wettest, month) for month in MONTHS]
        assert sum(months) / 12 == pytest.approx(each.average, abs=1e-12), each.name


def test_a_climate_that_nobody_knows_is_no_climate():
    with pytest.raises(LookupError):
        home_climate("the moon")


def test_months_count_from_january():
    assert [Month.JANUARY.place, Month.DECEMBER.place] == [0, 11]
