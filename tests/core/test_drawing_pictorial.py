"""Pictorial views: which edges are seen, by solids whose edges one can count."""

import pytest

from casewright.drawing.pictorial import board_edges, drawn_apart, eye, visible_edges
from casewright.joinery.solid import Axis, Board, Prism, block

FRONT = eye()
CUBE = block((0, 2), (0, 2), (0, 2))


def board(*prisms, name="front", apart=(0.0, 0.0, 0.0)):
    return Board(name=name, prisms=prisms, apart=apart)


def length(stretches):
    return sum(((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5 for (x0, y0), (x1, y1) in stretches)


def test_of_a_cube_nine_of_twelve_edges_are_seen():
    assert len(list(board_edges(board(CUBE)))) == 12
    assert len(visible_edges([board(CUBE)], FRONT)) == 9


def test_a_board_of_two_blocks_shows_no_seam():
    whole = visible_edges([board(block((0, 2), (0, 2), (0, 4)))], FRONT)
    halves = visible_edges([board(CUBE, block((0, 2), (0, 2), (2, 4)))], FRONT)

    assert length(halves) == pytest.approx(length(whole))


def test_two_boards_show_the_line_where_they_meet():
    one = visible_edges([board(CUBE, block((0, 2), (0, 2), (2, 4)))], FRONT)
    two = visible_edges([board(CUBE), board(block((0, 2), (0, 2), (2, 4)), name="side")], FRONT)

    assert length(two) - length(one) == pytest.approx(length(seam()))


def seam():
    """The line around two cubes that meet, as far as it is seen: on top, and at the left."""
    ends = [((0, 2, 2), (2, 2, 2)), ((0, 0, 2), (0, 2, 2))]
    return [(FRONT.seen(one), FRONT.seen(two)) for one, two in ends]


def test_what_stands_behind_is_hidden_as_far_as_it_is_covered():
    behind = board(block((0.5, 1.5), (0.5, 1.5), (3, 4)), name="side")

    assert len(visible_edges([board(CUBE), behind], eye((0.0, 0.001, -1.0)))) == len(
        visible_edges([board(CUBE)], eye((0.0, 0.001, -1.0)))
    )


def test_what_stands_before_hides_nothing_of_itself():
    before = board(block((0.5, 1.5), (0.5, 1.5), (-2, -1)), name="side")
    alone = length(visible_edges([before], FRONT))

    both = visible_edges([board(CUBE), before], FRONT)

    assert length(both) <= alone + length(visible_edges([board(CUBE)], FRONT))
    assert length(both) > alone


def test_a_sloped_face_is_seen_with_its_slope():
    wedge = Prism(along=Axis.X, outline=((0, 0), (2, 0), (2, 1), (0, 2)), start=0, end=1)

    assert len(list(board_edges(board(wedge)))) == 12
    assert length(visible_edges([board(wedge)], FRONT)) > 0


def test_boards_drawn_apart_move_each_in_its_own_direction():
    moved = drawn_apart([board(CUBE, apart=(0, 0, -1)), board(CUBE, name="side", apart=(0, 0, 1))], 3.0)

    assert [min(z for face in each.prisms[0].faces for _, _, z in face) for each in moved] == [-3.0, 3.0]


def test_an_edge_that_two_boards_share_is_drawn_once():
    boards = [board(CUBE), board(block((0, 2), (0, 2), (2, 5)), name="side")]

    # Along the top at the left one line runs over both boards, and another at the right.
    assert len(visible_edges(boards, FRONT)) == 9 + len(seam())
