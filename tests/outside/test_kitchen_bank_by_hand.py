"""A kitchen bank of four drawers on slides in a plywood case, worked by hand with a pencil.

The case is geometry; how rows grow, how fronts share the face and what a box leaves for its slides are common
practice; 12.9 to 13.2 mm of side space is a published figure of slides 12.7 mm thick. Sheets measure what
the table of sheets says.
"""

import json
from itertools import pairwise

import pytest

from byhand import FILES, cut_list, down64, drawer, estimate_of, findings, near, rough_line, row_order
from casewright.measure.findings import Verdict
from units import built, changed

NAME = "kitchen_bank"
MM = 1 / 25.4
WIDE, DEEP, HIGH = 30, 24, 30.5
PLY, BACK, BOTTOM = 0.70866, 0.20472, 0.47244  # 18, 5.2 and 12 mm
CLEAR = WIDE - 2 * PLY
# Face - 2 reveals of 1/16 - 3 gaps of 1/8 is 30, and a geometric series of ratio 1.2 shares it:
# first = A (q - 1) / (q^4 - 1), each to 1/16, what is left to the lowest.
FIRST = 30 * 0.2 / (1.2**4 - 1)
UPPER = [near(FIRST * 1.2**place, 16) for place in range(3)]
FRONTS = [*UPPER, 30 - sum(UPPER)]
# Nothing lies between the rows: an opening goes from the middle of one gap to that of the next.
# The reveal and half a gap are 1/8 as well, but top and bottom take their thickness.
OPENINGS = [front + 1 / 8 for front in FRONTS]
OPENINGS[0] -= PLY
OPENINGS[3] -= PLY
BOX_WIDE = down64(CLEAR - 2 * 13.05 * MM)
SLIDE = 22
BOXES = [down64(opening - 3 / 4) for opening in OPENINGS]
SWELLS = 0.00365 * 2.5  # white oak, flat-sawn, 8.5 to 11 %: Wood Handbook, table 13-5


def test_the_pencil_reads_off_the_rule():
    assert FRONTS == [5.5625, 6.6875, 8.0625, 9.6875]
    assert (BOX_WIDE, BOXES) == (27.546875, [4.21875, 6.0625, 7.4375, 8.34375])


def test_the_openings_lie_one_right_above_the_other():
    face = estimate_of(NAME).unit.face

    assert [opening.height for opening in face.openings] == pytest.approx(OPENINGS, abs=1e-4)
    assert {round(opening.width, 4) for opening in face.openings} == {round(CLEAR, 4)}
    # D less what lies behind the back and the back.
    assert face.opening_depth == pytest.approx(DEEP - 1 / 2 - BACK, abs=1e-4)
    assert face.divider_tops(estimate_of(NAME).unit.spec.frame.divider) == ()


def test_the_cut_list_is_the_worked_one_line_for_line():
    birch, thin, bottom = "3/4 in birch plywood", "1/4 in hardwood plywood", "1/2 in birch plywood"
    toe = 0.71875  # 3/4 in hardwood plywood
    rows = [
        ("Case side", 2, birch, PLY, DEEP - 1 / 4, HIGH),
        ("Case top", 1, birch, PLY, DEEP - 1 / 4, CLEAR),
        ("Case bottom", 1, birch, PLY, DEEP - 1 / 4, CLEAR),
        ("Lipping of a case side", 2, "white oak", PLY, 1 / 4, HIGH),
        ("Case top lipping", 1, "white oak", PLY, 1 / 4, CLEAR),
        ("Case bottom lipping", 1, "white oak", PLY, 1 / 4, CLEAR),
        ("Plywood back", 1, thin, BACK, CLEAR + 2 / 4, HIGH - 2 * PLY + 2 / 4),
        # A base 3-1/2 high is levelled by 1/2; its face of 1/4 stands 3 back from the front. Over 24 wide it
        # has a cross member between its ends.
        ("Toe base, front", 1, "3/4 in hardwood plywood", toe, 3.5, WIDE),
        ("Toe base, rear", 1, "3/4 in hardwood plywood", toe, 3.5, WIDE),
        ("Toe base, end or cross member", 3, "3/4 in hardwood plywood", toe, 3.5, DEEP - 3 - 1 / 4 - 2 * toe),
        ("Toe face, scribed to the floor", 1, "white oak", 1 / 4, 4, WIDE),
        # Grooved into all four sides: inside + 2 grooves of 1/4 - 1/16, either way.
        ("Drawer bottom", 4, bottom, BOTTOM, SLIDE - 1 + 1 / 2 - 1 / 16, BOX_WIDE - 1 + 1 / 2 - 1 / 16),
    ]
    for row, (front, box) in enumerate(zip(FRONTS, BOXES, strict=True), start=1):
        rows += [
            (f"Drawer front, row {row}", 1, "white oak", 3 / 4, front, WIDE - 1 / 8),
            (f"Drawer box front, row {row}", 1, "hard maple", 1 / 2, box, BOX_WIDE),
            # Through dovetails at both ends: a side is as long as its slide.
            (f"Drawer side, row {row}", 2, "hard maple", 1 / 2, box, SLIDE),
            (f"Drawer back, row {row}", 1, "hard maple", 1 / 2, box - 1 / 8, BOX_WIDE),
        ]
    assert cut_list(NAME) == row_order(rows)


def test_the_sides_are_bored_for_the_top_and_the_bottom():
    (side,) = [line.part for line in estimate_of(NAME).unit.lines if line.part.name == "Case side"]

    assert [str(end) for end in side.ends] == ["holes for the case bottom", "holes for the case top"]


def test_the_longest_slide_that_goes_in_is_taken():
    (length, *_) = findings(NAME, "slide length")

    assert (length.found, length.verdict) == (SLIDE, Verdict.PASS)
    assert length.needed == pytest.approx(DEEP - 1 / 2 - BACK - 1 / 8, abs=1e-4)


@pytest.mark.parametrize(("upper", "lower"), [(1, 2), (2, 3), (3, 4)])
def test_two_fronts_keep_their_gap_when_they_are_wettest(upper, lower):
    grown = (FRONTS[upper - 1] + FRONTS[lower - 1]) / 2 * SWELLS
    (gap,) = [each for each in findings(NAME, "gap between fronts") if each.about == f"D-R{lower}-1"]

    assert gap.found == pytest.approx(1 / 8 - grown, abs=1e-6)
    assert (gap.needed, gap.verdict) == (1 / 32, Verdict.PASS)


def test_every_front_covers_its_box_where_no_divider_does():
    assert {each.verdict for each in findings(NAME, "front covers its opening")} == {Verdict.PASS}


@pytest.mark.parametrize("row", [1, 2, 3, 4])
def test_fronts_are_broken_out_of_four_quarters(row):
    line = rough_line(NAME, f"Drawer front, row {row}", 1)

    # Width + 1/4, length + 1; a board foot is 144 cubic inches of the class.
    assert (line.bought.name, line.boards) == ("4/4", 1)
    assert (line.width, line.length) == (FRONTS[row - 1] + 1 / 4, WIDE - 1 / 8 + 1)
    assert line.rough == pytest.approx((FRONTS[row - 1] + 1 / 4) * (WIDE + 7 / 8) / 144)


def test_boards_of_boxes_come_two_from_six_quarters():
    # Two of 1/2: 2 (1/2 + 1/8) + 1/8 = 1-3/8, no more than 1-1/2.
    assert rough_line(NAME, "Drawer side, row 1", 2).resaw.bought.name == "6/4"


def test_the_sheets_that_show_are_labelled():
    (label,) = findings(NAME, "composite-wood label")

    assert label.verdict is Verdict.CAUTION
    # The largest face of all, that of the back.
    assert label.found == pytest.approx((CLEAR + 1 / 2) * (HIGH - 2 * PLY + 1 / 2), rel=1e-4)


def test_the_drawers_ask_for_no_runners():
    assert drawer(NAME, "R1-1").run.stop is None
    names = {line.part.name for line in estimate_of(NAME).unit.lines}
    assert not names & {"Runner", "Kicker", "Divider rail, front", "Frame back rail"}


def other(**changes):
    """The same bank with some fields changed."""
    data = json.loads((FILES / f"{NAME}.json").read_text(encoding="utf-8"))
    return built(changed(data, {name.replace("__", "."): value for name, value in changes.items()}))


def test_on_slides_under_the_box_its_inside_width_counts():
    under = {"kind": "slides", "slide": "under-mount, full travel"}
    unit = other(drawers__running=under, drawers__side="5/8", drawers__box_front="5/8")

    # From memory: the inside is 42 mm narrower than the opening, sides up to 5/8 thick; 1/2 stays behind.
    assert {each.sizes.width for each in unit.drawers} == {down64(CLEAR - 42 * MM + 2 * 5 / 8)}
    assert {each.sizes.length for each in unit.drawers} == {21}
    recess = [each for each in unit.findings if each.rule == "bottom recess"]
    assert {(each.found, each.needed, each.verdict) for each in recess} == {(3 / 8, 1 / 2, Verdict.STOP)}


def test_half_overlay_fronts_reach_over_both_edges_of_their_openings():
    unit = other(case__divider_kind="rail", drawers__style={"kind": "half overlay", "overlay": "5/16"})

    for each in unit.drawers:
        face, opening = each.sizes.face, each.sizes.opening
        assert (face.width, face.height) == (opening.width + 5 / 8, opening.height + 5 / 8)
    gaps = {round(each.found, 4) for each in unit.findings if each.rule == "gap between fronts"}
    heights = [each.sizes.face.height for each in unit.drawers]
    # A rail of 3/4 leaves 1/8 between two fronts.
    grown = {round(1 / 8 - (one + two) / 2 * SWELLS, 4) for one, two in pairwise(heights)}
    assert grown <= gaps


def test_a_row_more_takes_a_gap_and_no_divider():
    four, five = (
        sum(each.sizes.face.height for each in unit.drawers) for unit in (other(), other(rows=[{}] * 5))
    )

    assert four - five == 1 / 8
    railed = [other(case__divider_kind="rail", rows=[{}] * rows).face.opening_total for rows in (4, 5)]
    assert railed[0] - railed[1] == pytest.approx(3 / 4)
