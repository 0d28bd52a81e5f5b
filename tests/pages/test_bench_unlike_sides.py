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


def test_the_drawings_say_which_side_they_show(drawer, bench):
    text = bench.get(f"/bench/{drawer}").text

    # Of two settings with a side each the lower is drawn at the front; the thicker side at the back.
    assert "Front joint, right side, drawn" in text
    assert "Back joint, left side, drawn" in text


def test_drawings_of_sides_that_are_alike_name_none(shop, bench):
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")

    text = bench.get(f"/bench/{drawer_ids(shop, job)['R1-1']}").text

    assert "Front joint, drawn" in text
    assert "Back joint, drawn" in text
