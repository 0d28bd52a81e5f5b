"""A bank of two drawers under a washbasin, notched around its trap, worked by hand with a pencil.

The sizes are our own. The case is geometry; what a box leaves for its slides, the play of a bottom in its
grooves and the air around pipes are common practice; 12.9 to 13.2 mm of side space is a published figure of
slides 12.7 mm thick. Sheets measure what the table of sheets says.
"""

import pytest

from byhand import cut_list, down64, drawer, estimate_of, findings, row_order
from casewright.measure.findings import Verdict
from casewright.papers.notching import cut_out_strips
from casewright.pieces.built.joints import other_joints

NAME = "sink_bank"
MM = 1 / 25.4
WIDE, DEEP, HIGH = 32, 21, 29
PLY, BACK, BOTTOM = 0.70866, 0.20472, 0.47244  # 18, 5.2 and 12 mm
CLEAR = WIDE - 2 * PLY
# Face - 2 reveals of 1/16 - 1 gap of 1/8, shared by two.
FRONT = (HIGH - 1 / 4) / 2
OPENING = FRONT + 1 / 8 - PLY
BOX = down64(OPENING - 3 / 4)
BOX_WIDE = down64(CLEAR - 2 * 13.05 * MM)
SLIDE = 20
TALL = BOX - 1 / 8  # the backs stand 1/8 below the sides, and so does all around the notch
# Row 1: 9 x 7-1/2, its middle 2 to the right; row 2: 6 x 5 in the middle.
LEFT_1 = (BOX_WIDE - 9) / 2 + 2
RIGHT_1 = BOX_WIDE - LEFT_1 - 9
ARM_2 = (BOX_WIDE - 6) / 2
SWELLS_THICK = 0.00165 * 2.5  # hard maple, flat-sawn, is radial in thickness: Wood Handbook, table 13-5


def test_the_pencil_reads_off_the_rule():
    assert (FRONT, BOX, BOX_WIDE) == (14.375, 13.03125, 29.546875)
    assert (LEFT_1, RIGHT_1, ARM_2) == (12.2734375, 8.2734375, 11.7734375)


def test_the_cut_list_is_the_worked_one_line_for_line():
    birch, thin, bottom = "3/4 in birch plywood", "1/4 in hardwood plywood", "1/2 in birch plywood"
    toe = 0.71875
    across = BOX_WIDE - 1 + 1 / 2 - 1 / 16
    deep = SLIDE - 1 + 1 / 2 - 1 / 16
    rows = [
        # None of the case's own parts is other than without notches.
        ("Case side", 2, birch, PLY, DEEP - 1 / 4, HIGH),
        ("Case top", 1, birch, PLY, DEEP - 1 / 4, CLEAR),
        ("Case bottom", 1, birch, PLY, DEEP - 1 / 4, CLEAR),
        ("Lipping of a case side", 2, "white oak", PLY, 1 / 4, HIGH),
        ("Case top lipping", 1, "white oak", PLY, 1 / 4, CLEAR),
        ("Case bottom lipping", 1, "white oak", PLY, 1 / 4, CLEAR),
        ("Plywood back", 1, thin, BACK, CLEAR + 2 / 4, HIGH - 2 * PLY + 2 / 4),
        ("Toe base, front", 1, "3/4 in hardwood plywood", toe, 3.5, WIDE),
        ("Toe base, rear", 1, "3/4 in hardwood plywood", toe, 3.5, WIDE),
        ("Toe base, end or cross member", 3, "3/4 in hardwood plywood", toe, 3.5, DEEP - 3 - 1 / 4 - 2 * toe),
        ("Toe face, scribed to the floor", 1, "white oak", 1 / 4, 4, WIDE),
        # The blanks of the bottoms are whole, two lines, as their cut-outs differ.
        ("Drawer bottom, notched", 1, bottom, BOTTOM, deep, across),
        ("Drawer bottom, notched", 1, bottom, BOTTOM, deep, across),
    ]
    for row in (1, 2):
        rows += [
            (f"Drawer front, row {row}", 1, "white oak", 3 / 4, FRONT, WIDE - 1 / 8),
            (f"Drawer box front, row {row}", 1, "hard maple", 1 / 2, BOX, BOX_WIDE),
            (f"Drawer side, row {row}", 2, "hard maple", 1 / 2, BOX, SLIDE),
        ]
    # Through dovetails at all corners: every board reaches through both its ends. The inner sides go from the
    # rear face of the backs through the inner back: depth + 1/2. That spans notch + two inner sides.
    rows += [
        ("Drawer back beside the notch, row 1", 1, "hard maple", 1 / 2, TALL, LEFT_1),
        ("Drawer back beside the notch, row 1", 1, "hard maple", 1 / 2, TALL, RIGHT_1),
        ("Drawer inner side, row 1", 2, "hard maple", 1 / 2, TALL, 8),
        ("Drawer inner back, row 1", 1, "hard maple", 1 / 2, TALL, 10),
        ("Drawer back beside the notch, row 2", 2, "hard maple", 1 / 2, TALL, ARM_2),
        ("Drawer inner side, row 2", 2, "hard maple", 1 / 2, TALL, 5.5),
        ("Drawer inner back, row 2", 1, "hard maple", 1 / 2, TALL, 7),
    ]
    assert cut_list(NAME) == row_order(rows)


# The bottom lies 7/32 in each groove: 10 - 2 x 7/32 is open, 7 - 2 x 7/32 in row 2. As far as the backs stand
# before the inner back it is deep. Its left end lies 7/32 in the groove of the left side.
@pytest.mark.parametrize(
    ("row", "along", "length", "depth"),
    [
        (1, LEFT_1 - 1 / 2 + 7 / 32 - (1 / 2 - 7 / 32), 10 - 7 / 16, 7.5),
        (2, ARM_2 - 1 / 2 + 7 / 32 - (1 / 2 - 7 / 32), 7 - 7 / 16, 5),
    ],
)
def test_the_cut_out_of_a_bottom_reaches_into_the_grooves_around_it(row, along, length, depth):
    cut = drawer(NAME, f"R{row}-1").bottom.cut_out

    assert (cut.along, cut.length, cut.depth) == (along, length, depth)
    part = next(part for part in estimate_of(NAME).unit.parts if part.code == f"W-R{row}-1-N")
    assert "cut out at the rear" in str(part.ends[0])


def test_the_template_of_the_first_notch_has_the_pencils_figures():
    along, length, depth = LEFT_1 - 1 / 2 + 7 / 32 - (1 / 2 - 7 / 32), 10 - 7 / 16, 7.5

    strips = {codes: strip for strip, codes in cut_out_strips(estimate_of(NAME).unit)}
    ((x0, _), (x1, _), (_, deep), _) = strips[("W-R1-1-N",)].waste[0]
    assert (x0, x1 - x0, deep) == pytest.approx((along, length, depth))


def test_every_board_stands_where_the_pencil_has_it():
    boxes = {part.code: part.box for part in estimate_of(NAME).unit.parts}
    start = (WIDE - BOX_WIDE) / 2
    places = {code: boxes[f"W-R1-1-{code}"] for code in ("BL", "BR", "IL", "IR", "IB")}

    found = {code: (box.x - start, box.y, box.width, box.depth) for code, box in places.items()}
    worked = {
        "BL": (0, 19.5, LEFT_1, 0.5),
        "BR": (LEFT_1 + 9, 19.5, RIGHT_1, 0.5),
        "IL": (LEFT_1 - 0.5, 12, 0.5, 8),
        "IR": (LEFT_1 + 9, 12, 0.5, 8),
        "IB": (LEFT_1 - 0.5, 12, 10, 0.5),
    }
    assert {code: pytest.approx(place, abs=1e-9) for code, place in worked.items()} == found


def test_the_room_that_is_left_is_what_the_u_holds():
    # 28-35/64 x 19 less 10 x 7-1/2, by the height over the bottom less 1/8; clothes at 8-1/2 lb a cubic foot.
    floor = (BOX_WIDE - 1) * 19 - 10 * 7.5
    volume = floor * (OPENING - 3 / 8 - BOTTOM - 1 / 8) / 1728
    body = estimate_of(NAME).unit.stand.piece.drawers[0]

    assert body.volume == pytest.approx(volume, rel=1e-4)
    assert body.fill_weight == pytest.approx(volume * 8.5, rel=1e-4)
    moment = (BOX_WIDE - 1) * 19 * 9.5 - 10 * 7.5 * (19 - 3.75)
    # Behind the show front of 3/4 and the box's own of 1/2.
    assert body.fill_centre == pytest.approx(3 / 4 + 1 / 2 + moment / floor)


def test_the_bottom_weighs_what_is_left_of_it():
    weighed = {each.code: each for each in estimate_of(NAME).unit.parts}
    part = weighed["W-R2-1-N"]

    assert part.volume == pytest.approx(
        BOTTOM * ((BOX_WIDE - 9 / 16) * (19.5 - 1 / 16) - (7 - 7 / 16) * 5), rel=1e-4
    )


def test_pipes_have_the_air_that_was_worked_out():
    (beside, other), (before,) = findings(NAME, "air beside pipes"), findings(NAME, "air before pipes")

    # 1-1/2 is shared by both sides; slides leave no play; both inner sides swell into the notch.
    assert beside.found == pytest.approx((9 - 7.5 - 2 * 0.5 * SWELLS_THICK) / 2, abs=1e-6)
    assert (beside.needed, beside.verdict, other.verdict) == (1 / 2, Verdict.PASS, Verdict.PASS)
    # The back of the case lies 20.295 behind the front edge, a drawer ends at 20: 0.295 + 7.5 - 6.5.
    assert before.found == pytest.approx(DEEP - 1 / 2 - BACK - SLIDE + 7.5 - 6.5, abs=1e-4)
    assert before.verdict is Verdict.PASS


def test_the_corners_around_a_notch_are_dovetailed_as_the_back_is():
    unit = estimate_of(NAME).unit
    cards = [each for each in other_joints(unit) if each.key.startswith("notch")]

    # Both rows are alike in it: four corners each.
    assert [(each.kind, each.places) for each in cards] == [("through", 8)]
    served = tuple(f"W-R{row}-1-{mark}" for row in (1, 2) for mark in ("BL", "BR", "IB"))
    assert dict(cards[0].serves)["back"] == served
    back = unit.drawers[0].joints.through
    assert cards[0].joint.layout == back.layout


def test_hours_count_what_a_notch_adds():
    quantities = {line.code: line.quantity for line in estimate_of(NAME).labour}
    tails = estimate_of(NAME).unit.drawers[0].joints.front.layout.count
    back_tails = estimate_of(NAME).unit.drawers[0].joints.back.layout.count

    # Grooved: front, sides, two backs, two inner sides and the inner back, in two drawers.
    assert quantities["D03"] == 2 * 8
    # Tails: two corners in front, two at the back, four around the notch.
    assert quantities["D06"] == 2 * (2 * tails + 6 * back_tails)
    assert quantities["E65"] == 2
