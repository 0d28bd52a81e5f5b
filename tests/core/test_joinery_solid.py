"""Joints in space: prisms, what a cut shows of them, and what is refused."""

import pytest

from casewright.joinery.solid import Axis, Board, Prism, block, box

WEDGE = Prism(along=Axis.X, outline=((0.0, 0.0), (2.0, 0.5), (2.0, 1.5), (0.0, 2.0)), start=0.0, end=3.0)
"""Two inches deep; two high at its near end, one at its far end; three wide."""


def test_a_cut_along_a_prism_shows_its_outline():
    assert WEDGE.section(Axis.X, 1.0) == WEDGE.outline
    assert WEDGE.section(Axis.X, 3.5) == ()


def test_a_cut_across_a_prism_shows_how_far_it_reaches_there():
    assert WEDGE.section(Axis.Z, 1.0) == ((0.0, 0.25), (3.0, 0.25), (3.0, 1.75), (0.0, 1.75))
    assert WEDGE.section(Axis.Y, 0.25) == ((0.0, 0.0), (3.0, 0.0), (3.0, 1.0), (0.0, 1.0))
    assert WEDGE.section(Axis.Y, 2.5) == ()


def test_a_prism_has_a_face_for_each_side_and_two_ends():
    assert len(WEDGE.faces) == 6
    assert {corner for face in WEDGE.faces for corner in face} == {
        (x, y, z) for x in (0.0, 3.0) for z, y in WEDGE.outline
    }


@pytest.mark.parametrize("axis", list(Axis))
def test_a_block_shows_the_same_rectangle_wherever_it_is_cut(axis):
    spans = {Axis.X: (0.0, 1.0), Axis.Y: (2.0, 4.0), Axis.Z: (5.0, 8.0)}
    made = block(spans[Axis.X], spans[Axis.Y], spans[Axis.Z])

    found = made.section(axis, sum(spans[axis]) / 2)

    assert set(found) == set(box(*(spans[each] for each in axis.plane)))


def test_a_board_shows_each_of_its_pieces():
    board = Board(name="side", prisms=(block((0, 1), (0, 1), (0, 1)), block((0, 1), (2, 3), (0, 1))))

    assert len(board.section(Axis.X, 0.5)) == 2
    assert len(board.section(Axis.Y, 0.5)) == 1


def test_what_is_hollow_is_no_prism():
    with pytest.raises(ValueError, match="convex"):
        Prism(along=Axis.X, outline=((0, 0), (2, 0), (1, 0.5), (2, 2)), start=0.0, end=1.0)


def test_what_has_no_length_is_no_prism():
    with pytest.raises(ValueError, match="ends beyond its start"):
        block((0, 1), (1, 1), (0, 1))
