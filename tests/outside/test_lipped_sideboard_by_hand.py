"""A sideboard, three lipped drawers over three doors, worked by hand with a pencil.

Lengths are geometry of case and doors; clearances and what is rounded down are common practice; movement is
size x coefficient x change of moisture, with the coefficients of the Wood Handbook, table 13-5.
"""

import pytest

from byhand import cut_list, down64, drawer, estimate_of, findings, quarter_down, rough_line, row_order
from casewright.measure.findings import Verdict

NAME = "lipped_sideboard"
CHERRY, SOFT_MAPLE = 0.00248, 0.00289
WETTER, DRIER = 2.5, 2.3
WIDE, DEEP = 60, 18
BODY = 36 - 7 / 8 - 5
DRAWERS = 5.5
DOORS = BODY - 3 * 3 / 4 - DRAWERS
CLEAR = WIDE - 2 * 3 / 4
EACH = (CLEAR - 2 * 3 / 4) / 3
INTO = DEEP - 1 / 2
BOX_HIGH = down64((DRAWERS - 1 / 32) / (1 + SOFT_MAPLE * WETTER))
BOX_WIDE = EACH - 2 / 32
LONG = quarter_down(INTO - 1 / 4 - DEEP * CHERRY * DRIER)
# The lips stand 3/8 before the case, so that the drawer over all is as much longer.
OVER_ALL = LONG + 3 / 8


def test_the_pencil_reads_off_the_rule():
    assert (DOORS, EACH, LONG) == (22.375, 19, 17)
    assert (BOX_HIGH, BOX_WIDE) == (5.421875, 18.9375)


def rows_of_the_case():
    runner = INTO - 3 - 2.5 + 1 / 2 + 1 / 2 - 1 / 8
    board = (CLEAR + 2 * 3 / 8 + 10 * (3 / 8 - 1 / 16)) / 11
    shelf = EACH - 2 / 16
    return [
        ("Top", 1, "cherry", 7 / 8, DEEP + 3 / 4, WIDE + 1.5),
        ("Case side", 2, "cherry", 3 / 4, DEEP, BODY),
        ("Sub-top rail, front", 1, "cherry", 3 / 4, 3, WIDE - 2 / 4),
        ("Sub-top rail, back", 1, "poplar", 3 / 4, 3, WIDE - 2 / 4),
        ("Divider rail, front", 1, "cherry", 3 / 4, 3, CLEAR + 2 / 4),
        ("Frame back rail", 1, "poplar", 3 / 4, 2.5, CLEAR + 2 / 4),
        ("Upright between drawers", 2, "cherry", 3 / 4, 3, DRAWERS + 2 / 4),
        # Between two spaces with doors stands a board over the full depth, behind an edge of the show wood.
        ("Partition edge", 2, "cherry", 3 / 4, 1.5, DOORS + 2 / 4),
        ("Partition", 2, "poplar", 3 / 4, INTO - 1.5, DOORS + 2 / 4),
        ("Case bottom lipping", 1, "cherry", 3 / 4, 1.5, WIDE - 2 / 4),
        ("Case bottom panel", 1, "poplar", 3 / 4, INTO - 1.5, WIDE - 2 / 4),
        ("Runner", 2, "poplar", 3 / 4, 2.5, runner),
        ("Centre runner", 2, "poplar", 3 / 4, 3.5, runner),
        ("Kicker", 4, "poplar", 3 / 4, 2.5, INTO - 3 - 3 + 1 - 1 / 8),
        ("Shelf edge", 3, "cherry", 3 / 4, 3 / 4, shelf),
        # Behind doors of 3/4 and 1/4 of room, and less its edge.
        ("Shelf", 3, "poplar", 3 / 4, INTO - 1 / 4 - 3 / 4 - 3 / 4, shelf),
        ("Shiplap back board", 11, "poplar", 1 / 2, board, BODY),
        # Feet of 3 are glued up of two layers; over 48 wide a fifth stands under the middle.
        ("Turned foot, square for the lathe, one layer", 10, "cherry", 1.5, 3, 5),
        ("Foot block", 5, "cherry", 1, 3, 3),
    ]


def leaf():
    """Width and height of a leaf: 1/16 stays at each edge when its two stiles are wettest."""
    return down64(EACH - 2 / 16 - 2 * 2.25 * CHERRY * WETTER), DOORS - 2 / 16


def rows_of_the_doors():
    width, height = leaf()
    field = width - 2 * 2.25
    panel = down64((field + 2 * 3 / 8 - 2 / 32) / (1 + CHERRY * WETTER))
    return [
        ("Door stile", 6, "cherry", 3 / 4, 2.25, height),
        ("Door top rail", 3, "cherry", 3 / 4, 2.25, field + 2 * 1),
        ("Door bottom rail", 3, "cherry", 3 / 4, 2.25, field + 2 * 1),
        ("Door panel", 3, "cherry", 1 / 2, panel, height - 2 * 2.25 + 2 * 3 / 8 - 2 / 32),
    ]


def rows_of_the_drawers():
    return [
        # Opening + 2 (lip - clearance) wide; the lip at the top alone, its lower edge that of the box.
        ("Drawer front, row 1", 3, "cherry", 13 / 16, DRAWERS + 3 / 8 - 1 / 32, EACH + 2 * (3 / 8 - 1 / 32)),
        ("Drawer side, row 1", 6, "soft maple", 1 / 2, BOX_HIGH, OVER_ALL - 3 / 16),
        ("Drawer back, row 1", 3, "soft maple", 1 / 2, BOX_HIGH - 3 / 4, BOX_WIDE),
        ("Drawer bottom", 3, "poplar", 3 / 8, OVER_ALL - 13 / 16 + 1 / 4, BOX_WIDE - 1 + 1 / 2 - 1 / 16),
    ]


def test_the_cut_list_is_the_worked_one_line_for_line():
    rows = [*rows_of_the_case(), *rows_of_the_doors(), *rows_of_the_drawers()]
    assert cut_list(NAME) == row_order(rows)


def test_the_joint_is_laid_out_on_the_box_inside_the_rabbet():
    front = drawer(NAME, "R1-1").joints.front

    assert (front.gauge_1, front.lap) == (13 / 16 - 3 / 16, 3 / 16)
    count, pin, half = front.layout.count, front.layout.pin, front.layout.half_pin
    assert front.layout.pitch == pytest.approx((BOX_HIGH - 2 * half + pin) / count)


def test_the_doors_are_hung_on_two_hinges_each():
    goods = {item.item: item.quantity for item in estimate_of(NAME).unit.hardware}

    assert (goods["butt hinge"], goods["knob"] + goods.get("pull", 0)) == (6, 6)


@pytest.mark.parametrize(
    ("part", "quantity", "bought", "boards", "width", "length"),
    [
        # k boards of 6 (poplar 7) + 1/2 + k x 1/4; a single board + 1/4; + 1 long, in one blank + 1/2.
        ("Door panel", 3, "4/4", 3, 14 + 15 / 16 + 1 / 2 + 3 / 4, 18 + 7 / 16 + 1),
        ("Door stile", 6, "4/4", 1, 2.5, 23.25),
        ("Partition", 2, "4/4", 3, 16 + 1 / 2 + 3 / 4, 22 + 7 / 8 + 1),
        ("Turned foot, square for the lathe, one layer", 10, "8/4", 1, 3.25, 5.5),
        ("Drawer front, row 1", 3, "4/4", 1, 5 + 27 / 32 + 1 / 4, 19 + 11 / 16 + 1),
    ],
)
def test_parts_are_broken_out_at_their_rough_sizes(part, quantity, bought, boards, width, length):
    line = rough_line(NAME, part, quantity)

    assert (line.bought.name, line.boards, line.width, line.length) == (bought, boards, width, length)
    assert line.rough == pytest.approx(quantity * line.bought.rough * width * length / 144)


def test_rows_and_columns_close():
    for rule in ("stack closes", "columns close", "depth season", "runner slack"):
        assert {each.verdict for each in findings(NAME, rule)} == {Verdict.PASS}
