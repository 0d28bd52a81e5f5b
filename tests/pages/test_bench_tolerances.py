"""What is measured at the dry-fit and is too much, said beside its field."""

import pytest

from benchwork import case_reaches, drawer_ids, drawer_reaches, job_in_hand

pytestmark = pytest.mark.one_database


@pytest.fixture
def drawer(shop):
    """A drawer that is ready for its dry-fit."""
    job = job_in_hand(shop)
    case_reaches(shop, job, "glued")
    made = drawer_ids(shop, job)["R2-1"]
    drawer_reaches(shop, made, "dry")
    return made


@pytest.mark.parametrize(
    ("name", "typed", "said"),
    [
        ("dry__diagonals", "1/16", "1/16 is over 1/32: not done. Clamp lightly along the longer diagonal"),
        ("dry__winding", "3/64", "3/64 is over 1/64: not done. Take the drawer apart"),
    ],
)
def test_a_size_out_of_tolerance_is_said_beside_its_field(bench, drawer, name, typed, said):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/ticks", **{name: typed})

    assert said in page.text
    assert "Dry-fit: 0 of 11" in page.text


def test_a_size_within_tolerance_is_met_without_a_word(bench, drawer):
    bench.get(f"/bench/{drawer}")

    page = bench.send(f"/bench/{drawer}/ticks", dry__diagonals="1/32")

    assert "is over 1/32" not in page.text
    assert "Dry-fit: 1 of 11" in page.text


def test_a_size_far_out_is_said_again_until_it_is_measured_anew(bench, drawer):
    bench.get(f"/bench/{drawer}")
    bench.send(f"/bench/{drawer}/ticks", dry__diagonals="1/16")

    page = bench.send(f"/bench/{drawer}/ticks", dry__diagonals="1/64")

    assert "is over 1/32" not in page.text
