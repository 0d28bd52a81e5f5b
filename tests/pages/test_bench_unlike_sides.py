"""Sides of unlike thickness at the bench: each end of front and back has a gauge of its own."""

import pytest

from benchwork import case_reaches, drawer_ids, job_in_hand


@pytest.fixture
def drawer(shop, bench):
    """A drawer whose left side was measured 17/32 and whose right 1/2."""
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    made = drawer_ids(shop, job)["R1-1"]
    bench.get(f"/bench/{made}")
    bench.send(f"/bench/{made}/sizes", SL__thickness="17/32", SR__thickness="1/2")
    return made


def test_each_end_of_the_back_has_its_gauge(drawer, bench):
    text = " ".join(bench.get(f"/bench/{drawer}").text.split())

    assert "Back: gauge for the back, left 17/32" in text
    assert "Back: gauge for the back, right 1/2" in text
