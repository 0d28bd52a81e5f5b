"""A layout drawn: parts where they lie, cuts by their numbers, and all of it in words."""

import re
from xml.etree import ElementTree

import pytest

from casewright.drawing.board_layout import board_drawing, layout_drawings
from casewright.measure.lengths import LengthUnit, from_ticks
from cutfiles import planned, random_file

FILE = {
    "cut_file": 1,
    "parts": [
        {"code": "A", "wood": "cherry", "class": "4/4", "length": "30", "width": "4", "count": 3},
        {"code": "B", "wood": "cherry", "class": "4/4", "length": "20", "width": "2"},
    ],
    "boards": [
        {
            "code": "Long one",
            "wood": "cherry",
            "class": "4/4",
            "length": "120",
            "width": "8",
            "width_end": "7",
            "sap_far": "1",
            "defects": [{"from_end": "100", "from_edge": "2", "length": "3", "width": "2"}],
        }
    ],
}


def drawn(unit=LengthUnit.INCH):
    board = planned(FILE).lots[0].boards[0]
    return board, board_drawing(board, unit)


def elements(drawing):
    text = drawing.svg(standalone=True).encode()
    return ElementTree.fromstring(text).iter()  # noqa: S314 - our own text, parsed to see that it parses


def test_every_part_is_drawn_where_it_lies_and_as_large():
    board, drawing = drawn()

    rects = [
        tuple(float(each.get(name)) for name in ("x", "y", "width", "height"))
        for each in elements(drawing)
        if each.tag.endswith("rect") and each.get("data-code")
    ]
    expected = [
        (
            from_ticks(each.spot.x),
            -from_ticks(each.spot.far),
            from_ticks(each.spot.length),
            from_ticks(each.spot.width),
        )
        for each in board.laid
    ]
    assert len(rects) == 4
    for rect, place in zip(sorted(rects), sorted(expected), strict=True):
        assert rect == pytest.approx(place, abs=1e-4)


def test_the_drawing_says_in_words_what_it_shows():
    _, drawing = drawn()

    assert "A: 30 along × 4 across" in drawing.description
    assert "cut 1: Straighten the near edge of the board: 1/4 in comes off" in drawing.description


def test_sizes_are_lettered_in_the_unit_of_the_shop():
    _, drawing = drawn(LengthUnit.MILLIMETRE)

    assert drawing.title == "Long one: cherry, 3048 × 203.2"
    assert "A: 762 along × 101.6 across" in drawing.description


def test_the_mark_of_a_narrow_strip_is_broken_where_it_has_no_room_in_one_line():
    part = {"code": "A-C-SL", "wood": "cherry", "class": "4/4", "length": "7", "width": "13"}
    board = {"code": "B1", "wood": "cherry", "class": "4/4", "length": "120", "width": "9"}
    file = {"cut_file": 1, "parts": [{**part, "glue_up": {"strips": 3}}], "boards": [board]}
    drawing = board_drawing(planned(file).lots[0].boards[0], LengthUnit.INCH)

    said = [each.text for each in elements(drawing) if each.tag.endswith("text")]

    # 7 in and its allowance of 8 in at 1:20 are 0.4 in, in which "A-C-SL 1/3" has no room.
    assert (said.count("A-C-"), said.count("SL")) == (3, 3)
    assert {"1/3", "2/3", "3/3"} <= set(said)


def test_a_long_mark_is_lettered_small_before_it_is_left_out():
    # One word cannot be broken; 10 in at 1:20 are half an inch, too short for it at half the usual size.
    part = {"code": "FRONTOFU", "wood": "cherry", "class": "4/4", "length": "9", "width": "2"}
    board = {"code": "B1", "wood": "cherry", "class": "4/4", "length": "120", "width": "3"}
    file = {"cut_file": 1, "parts": [part], "boards": [board]}
    drawing = board_drawing(planned(file).lots[0].boards[0], LengthUnit.INCH)

    assert "FRONTOFU" in [each.text for each in elements(drawing)]


def test_a_mark_never_leaves_its_folder():
    board = planned({**FILE, "boards": [{**FILE["boards"][0], "code": "../../etc/passwd"}]})

    names = [name for name, _ in layout_drawings(board, LengthUnit.INCH)]
    assert all(re.fullmatch(r"[\w-][\w.-]*\.svg", name) for name in names)


@pytest.mark.parametrize("seed", range(4))
def test_any_layout_is_drawn_as_well_formed_svg(seed):
    plan = planned(random_file(seed))

    for _, drawing in layout_drawings(plan, plan.file.unit):
        assert any(each.get("data-code") for each in elements(drawing))


EDGING = {
    "cut_file": 1,
    "saw": {"kerf": "1/8"},
    "parts": [{"code": "E", "wood": "walnut edging", "length": "30", "count": 7}],
    "lengths": [{"code": "L", "wood": "walnut edging", "length": "96", "trim": "1/2"}],
}
"""Three parts of 30 in and two kerfs from 95 in: two bars alike, and one with a single part."""


def test_lengths_that_are_cut_alike_are_drawn_once_and_to_scale_along_their_length():
    drawings = dict(layout_drawings(planned(EDGING), LengthUnit.INCH))

    assert set(drawings) == {"L-1.svg", "L-3.svg"}
    rects = [
        (float(each.get("x")), float(each.get("width")))
        for each in elements(drawings["L-1.svg"])
        if each.tag.endswith("rect") and each.get("data-code")
    ]
    assert rects == [(0.5, 30.0), (30.625, 30.0), (60.75, 30.0)]


def test_a_drawn_length_is_told_in_words():
    drawing = dict(layout_drawings(planned(EDGING), LengthUnit.INCH))["L-1.svg"]

    assert drawing.title == "L no. 1, 2: walnut edging, 96 long, 2 times"
    assert "E: 30 long, 60-3/4 from the first end" in drawing.description
    assert "left over 4-5/8" in drawing.description
