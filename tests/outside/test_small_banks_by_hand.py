"""A wall-hung bank of crossing strips, and a lined jewelry chest on battens, worked by hand with a pencil.

Lengths are geometry; clearances and what is rounded down are common practice; movement is size x coefficient
x change of moisture, with the coefficients of the Wood Handbook, table 13-5.
"""

import pytest

from byhand import cut_list, down64, drawer, estimate_of, findings, near, quarter_down, row_order
from casewright.measure.findings import Verdict

WALNUT, HARD_MAPLE, SOFT_MAPLE = 0.00274, 0.00353, 0.00289
WETTER, DRIER = 2.5, 2.3
PLY, THIN = 0.20472, 0.11811  # 5.2 and 3 mm


def sixteenth(size):
    return near(size, 16)


class Wall:
    """36 wide, 9 deep, 17 high of 3/4; its top 7/8, three rows of four between strips of 1/2."""

    total = 17 - 7 / 8 - 3 / 4 - 2 / 2
    rows = (near(total / 3, 16), near(total / 3, 16), total - 2 * near(total / 3, 16))
    each = (36 - 2 * 3 / 4 - 3 / 2) / 4
    # A cleat of 3/4 within, and a back of 5.2 mm.
    into = 9 - 3 / 4 - PLY
    heights = tuple(down64((row - 1 / 32) / (1 + HARD_MAPLE * WETTER)) for row in rows)
    box = each - 2 / 64
    long = quarter_down(into - 1 / 8 - 9 * WALNUT * DRIER)


def test_the_cut_list_of_the_wall_bank_is_the_worked_one_line_for_line():
    ply = "1/4 in hardwood plywood"
    clear = 17 - 7 / 8 - 3 / 4
    rows = [
        ("Case side", 2, "walnut", 3 / 4, 9, 17),
        ("Case top", 1, "walnut", 7 / 8, 9, 36),
        ("Case bottom", 1, "walnut", 3 / 4, Wall.into, 36),
        # Full-length strips, housed 1/4 at both ends.
        ("Level strip of the crate", 2, "walnut", 1 / 2, Wall.into, 36 - 1.5 + 2 / 4),
        ("Upright strip of the crate", 3, "walnut", 1 / 2, Wall.into, clear + 2 / 4),
        # In rabbets of 3/8 at sides and top, and over the whole edge of the bottom.
        ("Plywood back", 1, ply, PLY, 36 - 1.5 + 2 * 3 / 8, clear + 3 / 8 + 3 / 4),
        ("Cleat on the case, lower edge at 45°", 1, "poplar", 3 / 4, 2.5, 36 - 1.5),
        ("Cleat on the wall, upper edge at 45°", 1, "poplar", 3 / 4, 2.5, 36 - 1.5 - 1),
        (
            "Drawer bottom",
            12,
            ply,
            PLY,
            Wall.long - 18 / 16 + 3 / 8 - 1 / 16,
            Wall.box - 7 / 8 + 3 / 8 - 1 / 16,
        ),
    ]
    for row, height in enumerate(Wall.heights, start=1):
        rows += [
            (f"Drawer front, row {row}", 4, "walnut", 11 / 16, height, Wall.box),
            (f"Drawer side, row {row}", 8, "hard maple", 7 / 16, height, Wall.long - 3 / 16),
            (f"Drawer back, row {row}", 4, "hard maple", 7 / 16, height - 1 / 8, Wall.box),
        ]
    assert cut_list("wall_bank") == row_order(rows)


def test_the_rows_of_the_wall_bank_are_alike_but_for_what_rounding_left():
    assert Wall.rows == (4.8125, 4.8125, 4.75)
    heights = [row.height for row in estimate_of("wall_bank").unit.face.rows]

    assert heights == list(Wall.rows)
    # A sixteenth less is rounding, and no row that shrinks towards the floor.
    assert {each.verdict for each in findings("wall_bank", "graduation")} == {Verdict.PASS}


def test_the_strips_cross_at_half_their_depth():
    (laps,) = [each for each in estimate_of("wall_bank").unit.case_joints if each.key == "laps"]
    sizes = {figure.name: figure.value for figure in laps.joint.settings}

    # Three uprights through two levels; the one notch is half the depth, down to 1/64, the other the rest.
    assert laps.places == 6
    assert sizes["level_notch"] == down64(Wall.into / 2)
    assert sizes["level_notch"] + sizes["upright_notch"] == pytest.approx(Wall.into, abs=1e-4)
    assert (sizes["level_width"], sizes["upright_width"]) == (1 / 2, 1 / 2)
    # From the end of a strip that is housed 1/4: opening, and then strip and opening each time.
    marks = [sizes[f"level_{number}"] for number in (1, 2, 3)]
    assert marks == [1 / 4 + Wall.each, 1 / 4 + 2 * Wall.each + 1 / 2, 1 / 4 + 3 * Wall.each + 2 / 2]


class Chest:
    """14 wide, 10 deep, 14 high of 1/2; rails of 3/8 and five rows that grow by 1/4."""

    body = 14 - 1 / 2 - 1
    total = body - 3 / 8 - 1 / 2 - 4 * 3 / 8
    first = (total - 1 / 4 * 5 * 4 / 2) / 5
    upper = tuple(map(sixteenth, (first, first + 1 / 4, first + 2 / 4, first + 3 / 4)))
    rows = (*upper, total - sum(upper))
    into = 10 - 3 / 8
    # Hung on battens, a drawer hangs 1/16 clear of the rail below it.
    heights = tuple(down64((row - 1 / 16 - 1 / 32) / (1 + SOFT_MAPLE * WETTER)) for row in rows)
    long = quarter_down(into - 1 / 4 - 10 * WALNUT * DRIER)


def test_the_openings_of_the_chest_grow_by_a_quarter():
    assert Chest.rows == (1.5, 1.75, 2, 2.25, 2.625)
    assert [row.height for row in estimate_of("jewelry_chest").unit.face.rows] == list(Chest.rows)


def test_the_cut_list_of_the_jewelry_chest_is_the_worked_one_line_for_line():
    board = (13 + 2 / 4 + 3 * (1 / 4 - 1 / 16)) / 4
    deep = Chest.long - 1 / 2 - 3 / 8 + 2 / 8 - 1 / 16
    rows = [
        ("Top", 1, "walnut", 1 / 2, 10 + 3 / 8, 14 + 3 / 4),
        ("Case side", 2, "walnut", 1 / 2, 10, Chest.body),
        # Half-blind with a lap of 3/16: W - 2 laps.
        ("Sub-top rail, front", 1, "walnut", 3 / 8, 1.25, 14 - 6 / 16),
        ("Sub-top rail, back", 1, "poplar", 3 / 8, 1.25, 14 - 6 / 16),
        ("Divider rail, front", 4, "walnut", 3 / 8, 1.25, 13 + 2 / 8),
        ("Case bottom", 1, "walnut", 1 / 2, Chest.into, 14 - 6 / 16),
        ("Plinth front", 1, "walnut", 1 / 2, 1, 14),
        ("Plinth return", 2, "walnut", 1 / 2, 1, 10),
        ("Plinth back rail", 1, "poplar", 1 / 2, 1, 13),
        ("Shiplap back board", 4, "poplar", 3 / 8, board, Chest.body),
        # A batten is as long as the opening is deep; it stands 1/8 into the drawer's side.
        ("Batten", 10, "soft maple", 1 / 8, 1 / 4, Chest.into),
        ("Drawer bottom", 5, "1/8 in birch plywood", THIN, deep, 13 - 1 / 16 - 3 / 4 + 1 / 4 - 1 / 16),
    ]
    for row, height in enumerate(Chest.heights, start=1):
        rows += [
            (f"Drawer front, row {row}", 1, "walnut", 1 / 2, height, 13 - 1 / 16),
            (f"Drawer side, row {row}", 2, "soft maple", 3 / 8, height, Chest.long - 1 / 8),
            (f"Drawer back, row {row}", 1, "soft maple", 3 / 8, height - 1 / 8, 13 - 1 / 16),
        ]
    assert cut_list("jewelry_chest") == row_order(rows)


@pytest.mark.parametrize("row", [1, 2, 3, 4, 5])
def test_a_side_is_grooved_for_its_batten(row):
    groove = drawer("jewelry_chest", f"R{row}-1").run.groove

    # Batten + 1/32 wide; projection + 1/32 - side clearance of 1/32 deep; 3/16 of the side must stay.
    assert (groove.width, groove.depth) == (1 / 4 + 1 / 32, 1 / 8 + 1 / 32 - 1 / 32)
    (left,) = [
        each
        for each in findings("jewelry_chest", "side left at batten groove")
        if each.about == f"J-R{row}-1"
    ]
    assert (left.found, left.needed, left.verdict) == (3 / 8 - 1 / 8, 3 / 16, Verdict.PASS)


@pytest.mark.parametrize("row", [1, 2, 3, 4, 5])
def test_the_lining_takes_its_thickness_off_what_a_drawer_holds(row):
    made = drawer("jewelry_chest", f"R{row}-1")

    assert made.run.lined.width == made.sizes.inside.width - 2 / 16
    assert made.sizes.inside.width == 13 - 1 / 16 - 2 * 3 / 8
