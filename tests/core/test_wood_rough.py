"""Rough sizes: larger than finished by what the work takes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.basis import Basis, Evidence
from casewright.wood.rough import (
    Allowances,
    boards_in_panel,
    is_ganged,
    rough_length,
    rough_width,
    usual_allowances,
)

GENEROUS = Allowances(
    end=2,
    ganged_end=0.75,
    edge=0.5,
    panel_edge=1,
    board=0.375,
    shortest=14,
    evidence=Evidence(basis=Basis.LEARNED, source="this shop's boards"),
)


@pytest.mark.parametrize(("ganged", "expected"), [(False, 19.5625), (True, 19.0625)])
def test_a_part_is_cut_over_length(ganged: bool, expected: float) -> None:
    assert rough_length(18.5625, ganged) == expected


@pytest.mark.parametrize(
    ("width", "boards", "expected"),
    [(3, 1, 3.25), (20.5, 4, 22), (19.75, 4, 21.25), (17.75, 3, 19), (16, 3, 17.25)],
)
def test_a_panel_is_glued_up_over_width_for_each_of_its_boards(
    width: float, boards: int, expected: float
) -> None:
    assert rough_width(width, boards) == expected


@pytest.mark.parametrize(
    ("width", "average", "boards"),
    [(19.75, 6, 4), (20.5, 6, 4), (18.1875, 7, 3), (6, 6, 1), (12, 6, 2), (12.01, 6, 3), (0.6 * 3, 0.6, 3)],
)
def test_boards_of_a_panel_are_counted_up(width: float, average: float, boards: int) -> None:
    assert boards_in_panel(width, average) == boards


@pytest.mark.parametrize(
    ("length", "pieces", "together"), [(6, 8, True), (11.99, 2, True), (12, 8, False), (6, 1, False)]
)
def test_short_parts_go_through_the_planer_together(length: float, pieces: int, together: bool) -> None:
    assert is_ganged(length, pieces) is together


def test_a_shop_sets_its_own_allowances() -> None:
    assert rough_length(10, allowances=GENEROUS) == 12
    assert rough_length(10, ganged=True, allowances=GENEROUS) == 10.75
    assert rough_width(10, allowances=GENEROUS) == 10.5
    assert rough_width(10, 2, allowances=GENEROUS) == 11.75
    assert is_ganged(13, 2, GENEROUS)


@given(st.floats(0.5, 60), st.integers(1, 12))
def test_rough_is_never_under_finished(size: float, boards: int) -> None:
    assert rough_length(size) > size
    assert rough_width(size, boards) > size


def test_the_usual_allowances_are_a_habit_and_say_so() -> None:
    assert usual_allowances().evidence.basis is Basis.COMMON_PRACTICE


def test_a_part_of_no_board_is_refused() -> None:
    with pytest.raises(ValueError, match="one board or more"):
        rough_width(6, 0)


@pytest.mark.parametrize(("width", "average"), [(0, 6), (6, 0), (-1, 6)])
def test_a_panel_without_width_is_refused(width: float, average: float) -> None:
    with pytest.raises(ValueError, match="cannot be made of boards"):
        boards_in_panel(width, average)


def test_an_allowance_that_would_make_a_part_smaller_is_refused() -> None:
    with pytest.raises(ValueError, match="would make it smaller"):
        Allowances(
            end=-1,
            ganged_end=0.5,
            edge=0.25,
            panel_edge=0.5,
            board=0.25,
            shortest=12,
            evidence=GENEROUS.evidence,
        )
