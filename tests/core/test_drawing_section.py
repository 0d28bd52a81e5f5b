"""The section from front to back: how the drawers run, and the story stick."""

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from test_drawing_reader import Patch, Read, cases

from casewright.drawing.section import section, section_plane
from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.presets import presets
from units import built, changed, chest, dresser


@cache
def dresser_unit():
    """Worked dresser A."""
    return built(dresser())


def read(unit):
    """Its section, read back."""
    return Read(section(unit).svg())


@cache
def dresser_section():
    """The section of worked dresser A."""
    return read(dresser_unit())


def extent(corners):
    """The least rectangle around an outline."""
    across, up = zip(*corners, strict=True)
    return Patch(min(across), min(up), max(across) - min(across), max(up) - min(up))


@pytest.mark.parametrize(
    "lettered",
    [
        "drawer 18-3/4",
        "opening 19-1/4",
        "body 19-3/4",
        "top 20-1/2",
        "3/4",  # overhang at the front
        "1/2",  # what is left behind a drawer: 19-1/4 less 18-3/4
        "3/8",  # groove above the bottom edge
        "1/4",  # groove width
        "groove 1/4",
        "front 13/16",
    ],
)
def test_the_worked_dresser_is_lettered_with_its_depths(lettered):
    assert lettered in dresser_section().words


# Worked joint J5: the upper edges of the dividers from the underside of the case, and the sum that closes it.
@pytest.mark.parametrize("mark", ["0", "3/4", "10", "18-1/2", "26-1/4", "33-1/4", "39-1/2"])
def test_the_story_stick_is_marked_from_under_the_case(mark):
    assert mark in [words for words, _ in dresser_section().sizes]


@pytest.mark.parametrize(
    ("code", "expected"),
    [  # From the front edge of the case and from the floor.
        ("A-T", Patch(-0.75, 43.5, 20.5, 0.875)),
        ("A-C-RF", Patch(0, 42.75, 3, 0.75)),
        ("A-C-RB", Patch(16.25, 42.75, 3, 0.75)),
        ("A-D4-RF", Patch(0, 13.25, 3, 0.75)),
        ("A-D4-RB", Patch(16.75, 13.25, 2.5, 0.75)),
        ("A-C-BL", Patch(0, 4, 1.5, 0.75)),
        ("A-C-B", Patch(1.5, 4, 17.75, 0.75)),
        ("A-B-F", Patch(0, 0, 0.75, 4)),
        ("A-R5-1-F", Patch(0, 4.75, 0.8125, 8.40625)),
        ("A-R5-1-B", Patch(18.25, 5.375, 0.5, 7.65625)),
        ("A-R5-1-N", Patch(0.5625, 5, 18.1875, 0.375)),
    ],
)
def test_what_is_cut_is_drawn_where_it_sits(code, expected):
    found = extent(dresser_section().outlines[code])

    # Coordinates are written to a hundred-thousandth of an inch.
    assert (found.x, found.y) == pytest.approx((expected.x, expected.y), abs=1e-5)
    assert (found.width, found.height) == pytest.approx((expected.width, expected.height), abs=1e-5)


def test_the_front_is_drawn_with_its_groove():
    # Groove 3/8 up, 1/4 wide, 1/4 deep, in a front 13/16 thick that stands 4-3/4 above the floor.
    groove = {(0.5625, 5.125), (0.5625, 5.375), (0.8125, 5.125), (0.8125, 5.375)}

    assert groove <= set(dresser_section().outlines["A-R5-1-F"])


def test_a_raised_bottom_fills_its_groove():
    corners = set(dresser_section().outlines["A-R5-1-N"])

    assert {(0.5625, 5.125), (0.8125, 5.125), (0.5625, 5.375)} <= corners


def test_a_plywood_bottom_all_round_is_let_into_the_back():
    unit = built(dresser({"drawers.bottom": {"kind": "ply"}}))
    found = read(unit).outlines

    # The back stands as low as the sides, from 18-1/4 on, with a groove 1/4 deep.
    assert {(18.25, 4.75), (18.5, 5.125), (18.5, 5.375)} <= set(found["A-R5-1-B"])
    assert extent(found["A-R5-1-B"]).holds(Patch(18.25, 4.75, 0.5, 8))


def test_a_bottom_thinner_than_its_groove_lies_in_it():
    unit = built(dresser({"drawers.bottom": {"kind": "solid", "thickness": "1/8"}}))
    found = extent(read(unit).outlines["A-R5-1-N"])

    assert (found.y, found.height) == pytest.approx((5.25, 0.125))


@pytest.mark.parametrize(
    ("rows", "expected", "why"),
    [
        ([{"columns": 2}, {}], 0.75 + 10.875 / 2, "the middle of the first column, (22-1/2 - 3/4) / 2 wide"),
        ([{}, {}], 0.75 + 22.5 / 2, "the middle of the case"),
        ([{"columns": 3}, {}], 0.75 + 7 / 2, "the middle of the first column, (22-1/2 - 1-1/2) / 3 wide"),
    ],
)
def test_the_case_is_cut_through_the_middle_of_a_column(rows, expected, why):
    unit = built(chest({"rows": rows}))

    assert section_plane(unit) == pytest.approx(expected), why


def test_the_case_is_cut_beside_a_muntin():
    unit = built(chest({"rows": [{}, {}], "drawers.muntin": {"use": "always"}}))

    # A quarter of the opening of 22-1/2 from the side, where the bottom is.
    assert section_plane(unit) == pytest.approx(0.75 + 22.5 / 4)
    assert "A-R1-1-N" in read(unit).outlines


def test_only_one_of_two_lapped_back_boards_is_drawn():
    # Two boards lap in the middle of the case, which is where a case of one column is cut.
    unit = built(chest({"rows": [{}], "body.opening_total": "6", "back.boards": 2}))

    backs = [code for code in read(unit).outlines if code.startswith("A-K-")]

    assert backs == ["A-K-1"]


def test_the_detail_says_how_large_it_is():
    assert "R5-1, full size" in dresser_section().words


def test_the_text_alternative_has_the_figures_of_the_drawing():
    told = dresser_section().description

    assert "length of drawer R5-1 18-3/4; clearance behind it 1/2; opening depth 19-1/4" in told
    assert "groove above the bottom edge 3/8" in told
    assert "below row 4 10, below row 3 18-1/2" in told


def test_a_top_that_overhangs_at_the_back_says_so():
    found = read(built(dresser({"top": {"overhang_back": "1"}})))

    assert ("1", 1.0) in found.sizes
    assert "overhang of the top at the back 1" in found.description


def test_a_top_without_overhangs_has_none_lettered():
    found = read(built(dresser({"top": {"overhang_front": 0, "overhang_sides": 0}})))

    assert "overhang" not in found.description
    assert "top 19-3/4" in found.words


@given(cases(), st.sampled_from([0, 0.75, 1.53125, 4]))
def test_any_case_can_be_cut(data, overhang):
    unit = built(changed(data, {"top.overhang_front": overhang, "top.overhang_back": overhang / 2}))
    found = read(unit)

    assert all(found.page.holds(Patch(*point, 0, 0)) for point in found.points)
    assert all(found.page.holds(patch) for _, patch in found.lettering)
    assert found.clashes == []


@given(cases())
def test_no_drawer_is_drawn_into_the_case(data):
    unit = built(data)
    found = {code: extent(corners) for code, corners in read(unit).outlines.items()}
    case = [patch for code, patch in found.items() if "-R" not in code[1:3] and code != "sockets"]
    drawers = [patch for code, patch in found.items() if code.startswith("A-R")]

    # Coordinates are written to a hundred-thousandth of an inch, so that a drawer may seem to touch.
    smaller = [Patch(at.x + 1e-4, at.y + 1e-4, at.width - 2e-4, at.height - 2e-4) for at in drawers]
    assert not [patch for patch in smaller for part in case if patch.meets(part)]


def test_a_metric_shop_reads_millimetres_on_a_piece_that_was_drawn_in_inches():
    found = Read(section(built(dresser()), LengthUnit.MILLIMETRE).svg())

    assert "millimetres" in found.description
    assert not any("/" in word for word in found.words if word[:1].isdigit())


@pytest.mark.parametrize(
    ("hold", "end"), [("four grooves", 12.6875), ("under the back", 13), ("screwed under", 13)]
)
def test_a_section_through_a_notch_cuts_its_inner_back_and_shows_the_arm_beyond(hold, end):
    bottom = {"kind": "ply", "nominal": "1/4", "hold": hold}
    notch = {"rows.1": {"notch": {"width": "8", "depth": "9"}}, "drawers.bottom": bottom}
    kitchen = next(each.spec_json for each in presets() if each.key == "kitchen-bank")

    drawn = read(built(changed(kitchen, notch)))

    head, floor = extent(drawn.outlines["A-R2-1-IB"]), extent(drawn.outlines["A-R2-1-N"])
    # 22 long, its notch 9 deep: the inner back stands before 13, the bottom ends there or within it.
    assert (head.x, head.width) == pytest.approx((12.5, 0.5))
    assert floor.x + floor.width == pytest.approx(end, abs=1e-4)
    assert "A-R2-1-B" not in drawn.outlines
    assert "A-R1-1-B" in drawn.outlines


@pytest.mark.parametrize(
    ("off", "share", "mark"),
    [
        ("3-3/4", 1 / 2, "BR"),  # the right inner side ends 1/4 before the middle, which lies in the arm
        ("3-1/4", 1 / 4, "IB"),  # the middle lies along it, and a section does not
    ],
)
def test_a_section_runs_beside_the_inner_sides_of_a_notch(off, share, mark):
    notch = {"width": "6", "depth": "5", "off": off}
    made = built(chest({"drawers.bottom": {"kind": "ply"}, "rows": [{"notch": notch}] * 3}))

    drawn = read(made)

    assert section_plane(made) == pytest.approx(3 / 4 + 22.5 * share)
    assert {code.rpartition("-")[2] for code in drawn.outlines if code[:6] == "A-R1-1"} == {"F", "N", mark}
