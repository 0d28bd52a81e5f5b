"""The cheapest grade for a part, and what a grade asks of a board."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.grades import (
    Cutting,
    GradeName,
    cheapest_grade,
    cutting_units_needed,
    cuttings_allowed,
    grade,
    grades,
    meets_grade,
)


@pytest.mark.parametrize(
    ("length", "faces", "expected"),
    [
        (18.5625, 1, "No. 1 Common"),
        (36, 1, "No. 1 Common"),
        (36.01, 1, "Selects"),
        (39.5, 1, "Selects"),
        (39.5, 2, "FAS"),
        (84, 1, "Selects"),
        (30, 2, "No. 1 Common"),
    ],
)
def test_the_length_of_a_part_decides_the_cheapest_grade(length: float, faces: int, expected: str) -> None:
    choice = cheapest_grade(length, faces=faces)

    assert choice.grade is not None
    assert choice.grade.name == expected
    assert choice.cutting is not None
    assert choice.cutting.length >= length


def test_a_part_longer_than_every_cutting_needs_boards_picked_by_hand() -> None:
    choice = cheapest_grade(84.5)

    assert choice.grade is None
    assert "longer than 84 in" in str(choice.message)


@pytest.mark.parametrize(
    ("length", "width", "wide"),
    [
        (18.5625, 4, False),
        (18.5625, 5.67, True),
        (30, 3, False),
        (30, 3.5, True),
        (66, 3.5, True),
        (66, 3, False),
    ],
)
def test_a_part_wider_than_the_cutting_is_marked_for_picking(length: float, width: float, wide: bool) -> None:
    choice = cheapest_grade(length, width)

    assert choice.wide is wide
    assert ("pick boards" in str(choice.message)) is wide


@given(st.floats(1, 83), st.floats(0, 1))
def test_a_longer_part_never_takes_a_cheaper_grade(length: float, more: float) -> None:
    shorter, longer = cheapest_grade(length).grade, cheapest_grade(length + more).grade

    assert shorter is not None
    assert longer is not None
    assert longer.price_rank >= shorter.price_rank


@pytest.mark.parametrize("faces", [0, 3])
def test_a_part_shows_one_face_or_two(faces: int) -> None:
    with pytest.raises(ValueError, match="one face or two"):
        cheapest_grade(20, faces=faces)


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("FAS", GradeName.FAS),
        ("f1f", GradeName.ONE_FACE),
        ("Select", GradeName.SELECTS),
        ("1C", GradeName.COMMON_1),
        ("no. 1 common", GradeName.COMMON_1),
        ("#2 Common", GradeName.COMMON_2A),
    ],
)
def test_a_grade_is_found_by_the_yards_short_forms(asked: str, name: GradeName) -> None:
    assert grade(asked).name is name


def test_a_grade_that_is_not_one_is_refused_with_those_that_are() -> None:
    with pytest.raises(ValueError, match="The grades are FAS, FAS 1-Face, Selects"):
        grade("prime")


def test_every_grade_has_its_own_row_and_nothing_under_common_is_for_furniture() -> None:
    assert {each.name for each in grades()} == set(GradeName)
    assert [each.name for each in grades() if not each.for_furniture] == [
        GradeName.COMMON_2A,
        GradeName.COMMON_3A,
        GradeName.COMMON_3B,
    ]


@given(st.integers(1, 40))
def test_a_better_grade_asks_for_more_clear_wood(surface: int) -> None:
    needed = [
        cutting_units_needed(surface, name)
        for name in (GradeName.COMMON_3B, GradeName.COMMON_3A, GradeName.COMMON_2A)
    ]

    assert needed == sorted(needed)
    assert needed[-1] <= 12 * surface


def test_any_number_of_cuttings_will_do_in_the_lowest_grades() -> None:
    assert cuttings_allowed(10, GradeName.COMMON_3A) is None
    assert meets_grade(10, (Cutting(width=3, length=24),) * 7, GradeName.COMMON_3A)
    assert not meets_grade(10, (Cutting(width=3, length=24),) * 6, GradeName.COMMON_3A)


def test_selects_are_graded_on_the_better_face_as_fas() -> None:
    assert cutting_units_needed(8, GradeName.SELECTS) == cutting_units_needed(8, GradeName.FAS)


def test_an_extra_cutting_is_allowed_only_where_the_rule_has_one() -> None:
    with pytest.raises(ValueError, match="no extra cutting on a board of 5 ft"):
        cuttings_allowed(5, GradeName.FAS, extra_cut=True)


def test_a_board_without_surface_cannot_be_graded() -> None:
    with pytest.raises(ValueError, match="surface measure"):
        cutting_units_needed(0, GradeName.FAS)


def test_pieces_under_the_least_size_count_for_nothing() -> None:
    clear_but_narrow = (Cutting(width=2.75, length=96),) * 2

    assert not meets_grade(4, clear_but_narrow, GradeName.FAS)


def test_sound_cuttings_of_the_lowest_grade_count_by_their_area() -> None:
    assert meets_grade(4, (Cutting(width=1.5, length=96),), GradeName.COMMON_3B)
    assert not meets_grade(4, (Cutting(width=1.25, length=144),), GradeName.COMMON_3B)
