"""Whatever carcase in whatever year: gaps follow the moisture, and no month lies beyond the ends."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from carcases import air, carcases, moisture
from casewright.pieces.built.season import unit_year
from casewright.wood.year import MONTHS, home_climates
from units import built, changed

CLOSE = 1e-9
"""Sums of a few floats below 100 in [in]."""


def years():
    """A home month by month, a climate, or its two ends."""
    metered = st.lists(st.floats(5, 16).map(moisture), min_size=12, max_size=12)
    aired = st.lists(st.floats(25, 80).map(air), min_size=12, max_size=12)
    months = st.one_of(metered, aired).map(lambda found: {"months": found})
    known = st.sampled_from([each.name for each in home_climates()]).map(lambda name: {"climate": name})
    fitted = st.sampled_from([None, *MONTHS])
    shop = st.one_of(st.none(), st.floats(5, 16).map(moisture))
    return st.builds(
        lambda home, month, reading: (
            home | ({"fitted": str(month)} if month else {}) | ({"shop": reading} if reading else {})
        ),
        st.one_of(months, known),
        fitted,
        shop,
    )


@given(carcases(), years())
def test_a_drawer_clears_in_every_month_and_its_gap_falls_as_the_wood_gets_wetter(data, year):
    held = unit_year(built(changed(data, {"season": year})))

    months = held.year.months
    by_moisture = sorted(range(12), key=lambda at: months[at])
    for each in held.drawers:
        assert each.least[1] >= each.limit - CLOSE
        for through in (each.front, each.side):
            gaps = [through.months[at] for at in by_moisture]
            assert gaps == sorted(gaps, reverse=True)


@given(carcases(), years())
def test_every_month_lies_between_driest_and_wettest(data, year):
    held = unit_year(built(changed(data, {"season": year})))

    climate = held.unit.climate
    assert min(held.year.months) == pytest.approx(climate.driest, abs=CLOSE)
    assert max(held.year.months) == pytest.approx(climate.wettest, abs=CLOSE)
    sizes = [through for each in held.drawers for through in (each.front, each.side)]
    for through in [*sizes, *(each.through for each in held.parts)]:
        low, high = sorted((through.driest, through.wettest))
        assert all(low - CLOSE <= size <= high + CLOSE for size in through.months)


@given(carcases())
def test_the_wetter_the_wood_is_when_fitted_the_less_is_left(data):
    held = unit_year(built(data))

    for each in held.drawers:
        fits = sorted(each.fits, key=lambda fit: fit.moisture)
        heights = [fit.height for fit in fits]
        assert heights == sorted(heights)
        assert min(fit.leave for fit in fits) >= each.limit - CLOSE
