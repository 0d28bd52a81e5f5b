"""Where each part sits: of worked dresser A by hand, from the left outside, the front and the floor."""

import pytest

from casewright.measure.lengths import show
from units import built, chest, dresser_estimate

# part: left, front and lower corner, and its size to the right, to the back and up
PLACES = [
    ("A-T", "-3/4 -3/4 43-1/2", "41 20-1/2 7/8"),
    ("A-C-SL", "0 0 4", "3/4 19-3/4 39-1/2"),
    ("A-C-SR", "38-3/4 0 4", "3/4 19-3/4 39-1/2"),
    ("A-C-RF", "1/4 0 42-3/4", "39 3 3/4"),
    ("A-C-RB", "1/4 16-1/4 42-3/4", "39 3 3/4"),
    ("A-D4-RF", "1/2 0 13-1/4", "38-1/2 3 3/4"),
    ("A-D1-RF", "1/2 0 36-1/2", "38-1/2 3 3/4"),
    ("A-D1-RB", "1/2 16-3/4 36-1/2", "38-1/2 2-1/2 3/4"),
    ("A-R1-U1", "19-3/8 0 37", "3/4 3 6"),
    ("A-C-BL", "1/4 0 4", "39 1-1/2 3/4"),
    ("A-C-B", "1/4 1-1/2 4", "39 17-3/4 3/4"),
    ("A-B-F", "0 0 0", "39-1/2 3/4 4"),
    ("A-B-L", "0 0 0", "3/4 19-3/4 4"),
    ("A-B-R", "38-3/4 0 0", "3/4 19-3/4 4"),
    ("A-B-B", "3/4 18-1/2 0", "38 3/4 4"),
    ("A-D1-RL", "3/4 2-1/2 36-1/2", "2-1/2 14-5/8 3/4"),
    ("A-D1-RR", "36-1/4 2-1/2 36-1/2", "2-1/2 14-5/8 3/4"),
    ("A-D1-RC1", "18 2-1/2 36-1/2", "3-1/2 14-5/8 3/4"),
    ("A-C-KL", "3/4 2-1/2 42-3/4", "2-1/2 14-1/8 3/4"),
    ("A-C-KC1", "18-1/2 2-1/2 42-3/4", "2-1/2 14-1/8 3/4"),
    ("A-K-1", "3/8 19-1/4 4", "≈5-51/64 1/2 39-1/2"),
    ("A-K-7", "≈33-21/64 19-1/4 4", "≈5-51/64 1/2 39-1/2"),
    ("A-R5-1-F", "25/32 0 4-3/4", "37-15/16 13/16 8-13/32"),
    ("A-R5-1-SL", "25/32 3/16 4-3/4", "1/2 18-9/16 8-13/32"),
    ("A-R5-1-SR", "38-7/32 3/16 4-3/4", "1/2 18-9/16 8-13/32"),
    ("A-R5-1-B", "25/32 18-1/4 5-3/8", "37-15/16 1/2 7-21/32"),
    ("A-R5-1-M", "18-3/4 9/16 4-15/16", "2 18-3/16 5/8"),
    ("A-R5-1-N1", "1-1/16 9/16 5", "17-29/32 18-3/16 3/8"),
    ("A-R5-1-N2", "20-17/32 9/16 5", "17-29/32 18-3/16 3/8"),
    ("A-R1-2-F", "20-5/32 0 37-1/4", "18-9/16 13/16 5-27/64"),
]


def box_of(made, code):
    (box,) = (part.box for part in made.parts if part.code == code)
    return " ".join(map(show, (box.x, box.y, box.z))), " ".join(map(show, (box.width, box.depth, box.height)))


@pytest.mark.parametrize(("code", "corner", "size"), PLACES)
def test_each_part_of_the_dresser_sits_where_it_belongs(code, corner, size):
    assert box_of(dresser_estimate().unit, code) == (corner, size)


def test_a_kicker_hangs_over_the_upright_of_the_row_below():
    made = built(chest({"body.width": "40", "rows": [{}, {"columns": 2}]}))

    # the upright stands from 19-5/8; a kicker of 2-1/2 has its middle on that of the upright, at 20
    assert box_of(made, "A-D1-KC1")[0].startswith("18-3/4 ")


def test_a_drawer_stands_off_its_runner_by_its_bottom_clearance():
    made = built(chest({"drawers.clearances.bottom": "1/16"}))

    # plinth 4 and case bottom 3/4
    assert box_of(made, "A-R3-1-F")[0] == "25/32 0 4-13/16"


def test_a_part_lies_in_its_box_by_its_own_three_sizes():
    sizes = [
        (
            sorted((part.thickness, part.width, part.length)),
            sorted((part.box.width, part.box.depth, part.box.height)),
        )
        for part in dresser_estimate().unit.parts
    ]

    assert [size for size, box in sizes if size != pytest.approx(box)] == []
