"""The humidity of a room, read back from the moisture that wood takes in it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.moisture import equilibrium_moisture, humidity_for


@pytest.mark.parametrize(
    ("moisture", "humidity"),
    # Wood Handbook, FPL-GTR-282 (2021), Table 4-2, at 70 °F
    [(4.5, 20), (6.2, 30), (7.7, 40), (9.2, 50), (11.0, 60), (13.1, 70), (16.0, 80)],
)
def test_the_handbooks_table_is_read_backwards(moisture, humidity):
    # the table prints tenths of a percent of moisture, which are up to seven tenths of humidity
    assert humidity_for(70, moisture) == pytest.approx(humidity, abs=0.7)


@given(st.floats(40, 110), st.floats(1, 95))
def test_there_and_back_is_where_it_started(temperature, humidity):
    moisture = equilibrium_moisture(temperature, humidity)

    # halved forty times
    assert humidity_for(temperature, moisture) == pytest.approx(humidity, abs=1e-6)


def test_wood_wetter_than_any_air_makes_it_reads_as_the_dampest():
    assert humidity_for(70, 60) == pytest.approx(99)
