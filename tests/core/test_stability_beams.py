"""Shelves, rails and tops as beams: the closed form against the handbook's table and against integration."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.findings import Verdict
from casewright.measure.ledger import Ledger
from casewright.stability.beams import (
    PLY_ALONG,
    Board,
    Load,
    beam_sag,
    check_beam,
    even_sag,
    point_sag,
    second_moment,
    shelf_load,
    short_enough,
    thick_enough,
)

POINTS = 20_001
BOARD = Board(span=36, width=11.25, thickness=0.75, modulus=1.49e6, weight=5.0)


def integrated(span, stiffness, load_at):
    """The sag in the middle by integrating load, shear, moment, slope and place over a fine grid."""
    x = np.linspace(0, span, POINTS)
    step = x[1] - x[0]

    def total(values):
        return np.concatenate([[0.0], np.cumsum((values[1:] + values[:-1]) / 2 * step)])

    load = load_at(x, step)
    shear, moment = total(load), total(total(load))
    left = moment[-1] / span  # the support at the left takes what keeps the moment at the right at nought
    bending = left * x - moment
    place = total(total(-bending / stiffness))
    place = place - place[-1] * x / span
    assert shear[-1] >= 0
    return abs(np.interp(span / 2, x, place))


@given(st.floats(1, 500), st.floats(6, 80), st.floats(2, 24), st.floats(0.25, 2), st.floats(0.8e6, 2.2e6))
def test_an_even_load_hangs_as_integration_says(load, span, width, thickness, modulus):
    inertia = second_moment(width, thickness)

    found = even_sag(load, span, modulus, inertia)

    exact = integrated(span, modulus * inertia, lambda x, _: np.full_like(x, load / span))
    assert found == pytest.approx(exact, rel=1e-6)  # the grid's own error


@given(st.floats(1, 500), st.integers(1, 99), st.floats(6, 80), st.floats(1e4, 1e6))
def test_a_single_load_hangs_as_integration_says(load, hundredths, span, stiffness):
    near = span * hundredths / 100

    found = point_sag(load, near, span, stiffness, 1.0)

    def at_one_place(x, step):
        spread = np.zeros_like(x)
        spread[round(near / step)] = load / step
        return spread

    exact = integrated(span, stiffness, at_one_place)
    assert found == pytest.approx(exact, rel=1e-3)  # a load spread over one step of the grid


@pytest.mark.parametrize(
    ("found", "handbook", "source"),
    [
        (even_sag(1, 1, 1, 1), 5 / 384, "Wood Handbook, table 9-1: evenly loaded, both ends rest, k_b 5/384"),
        (point_sag(1, 0.5, 1, 1, 1), 1 / 48, "Wood Handbook, table 9-1: load in the middle, k_b 1/48"),
    ],
)
def test_the_coefficients_are_those_of_the_handbook(found, handbook, source):
    assert found == pytest.approx(handbook, rel=1e-12), source


def test_a_shelf_of_books_is_a_matter_of_a_pencil():
    # 20 lb a foot over 3 ft of cherry 3/4 x 11-1/4, and the 5 lb of the shelf:
    # 5 x 65 x 36^3 / (384 x 1.49e6 x 0.3955) = 0.067
    sag = beam_sag(BOARD, shelf_load(36, 20), (), Ledger())

    assert sag == pytest.approx(0.067, abs=0.0005)


def test_plywood_that_nobody_measured_is_as_stiff_as_the_handbook_says():
    """Wood Handbook, FPL-GTR-190, table 12-1, plywood: 1.01 to 1.24 million psi in static bending."""
    assert 1.01e6 <= PLY_ALONG <= 1.24e6


def test_single_loads_and_even_ones_add_up():
    apart = beam_sag(BOARD, 40, (), Ledger()) + point_sag(10, 9, 36, 1.49e6, second_moment(11.25, 0.75))

    assert beam_sag(BOARD, 40, [Load(weight=10, near=9)], Ledger()) == pytest.approx(apart, rel=1e-12)


def test_a_load_over_a_support_bends_nothing():
    assert point_sag(50, 0, 30, 1e6, 1) == point_sag(50, 30, 30, 1e6, 1) == 0


@given(st.floats(12, 72), st.floats(5, 60), st.floats(0.25, 1.5))
def test_what_is_advised_passes(span, per_foot, thickness):
    def sag_of(long, thick):
        return even_sag(shelf_load(long, per_foot), long, 1.5e6, second_moment(11, thick))

    sag, limit = sag_of(span, thickness), span / 384
    if sag > limit:
        assert sag_of(span, thick_enough(thickness, sag, limit)) <= limit + 1e-9
        shorter = short_enough(span, sag, limit)
        assert sag_of(shorter, thickness) <= shorter / 384 + 1e-9


def test_a_board_that_hangs_too_far_is_a_caution_with_the_thickness_that_would_pass():
    found = check_beam(
        "shelf sag", "A shelf", BOARD, 0.2, 0.1, limit_name="shelf_ratio", remedy=", or shorter"
    )

    assert found.verdict is Verdict.CAUTION
    assert str(found.remedy) == "Make it 1 in thick, or shorter."  # 3/4 x 2^(1/3) = 0.945, up to 1/16
    assert "years of load about double it" in str(found.message)


def test_a_board_without_a_span_is_refused():
    with pytest.raises(ValueError, match="give all of them"):
        Board(span=0, width=1, thickness=1, modulus=1)
