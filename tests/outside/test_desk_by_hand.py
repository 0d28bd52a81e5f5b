"""A desk, three drawers over a knee space between two banks of three, worked by hand with a pencil.

Lengths are geometry of the case; clearances and what is rounded down are common practice; movement is size x
coefficient x change of moisture, with the coefficients of the Wood Handbook, table 13-5.
"""

import pytest

from byhand import cut_list, down64, drawer, estimate_of, findings, near, quarter_down, row_order
from casewright.measure.findings import Verdict

NAME = "desk"
WALNUT, SOFT_MAPLE = 0.00274, 0.00289
WETTER, DRIER = 2.5, 2.3
WIDE, DEEP, BANK, TOP_ROW, FILES = 60, 27, 15.5, 3.25, 11
BODY = 30 - 7 / 8 - 3
CLEAR = WIDE - 2 * 3 / 4
EACH = (CLEAR - 2 * 3 / 4) / 3
INTO = DEEP - 1 / 2
# Under the rail of the top row, down to the case bottom.
UNDER = BODY - 3 * 3 / 4 - TOP_ROW
# Two rows share what two dividers and the folders leave; the second is 3/4 higher.
FIRST = near((UNDER - 2 * 3 / 4 - FILES - 3 / 4) / 2, 16)
BANKS = (FIRST, UNDER - 2 * 3 / 4 - FILES - FIRST, FILES)
SHRINKS = DEEP * WALNUT * DRIER
LONG = quarter_down(INTO - 1 / 4 - SHRINKS)


def high(opening):
    """As high as the maple of the sides lets a drawer be when it is wettest."""
    return down64((opening - 1 / 32) / (1 + SOFT_MAPLE * WETTER))


def test_the_pencil_reads_off_the_rule():
    assert (UNDER, BANKS) == (20.625, (3.6875, 4.4375, 11))
    assert (EACH, LONG) == (19, 26)


def rows_of_the_case():
    # Slack of the rear tenons: what the sides shrink, 0.170, up to 1/16.
    runner, kicker = INTO - 3 - 2.5 + 1 - 3 / 16, INTO - 3 - 3 + 1 - 3 / 16
    board = (CLEAR + 2 * 3 / 8 + 10 * (3 / 8 - 1 / 16)) / 11
    # Half-blind into a side of 3/4 with a lap of 1/4, and housed 1/4 in the partition.
    bottom = BANK + 1 / 2 + 1 / 4
    return [
        ("Top", 1, "walnut", 7 / 8, DEEP + 3 / 4, WIDE + 1.5),
        ("Case side", 2, "walnut", 3 / 4, DEEP, BODY),
        ("Sub-top rail, front", 1, "walnut", 3 / 4, 3, WIDE - 2 / 4),
        ("Sub-top rail, back", 1, "poplar", 3 / 4, 3, WIDE - 2 / 4),
        ("Divider rail, front", 1, "walnut", 3 / 4, 3, CLEAR + 2 / 4),
        ("Divider rail, front", 4, "walnut", 3 / 4, 3, BANK + 2 / 4),
        ("Frame back rail", 1, "poplar", 3 / 4, 2.5, CLEAR + 2 / 4),
        ("Frame back rail", 4, "poplar", 3 / 4, 2.5, BANK + 2 / 4),
        ("Upright between drawers", 2, "walnut", 3 / 4, 3, TOP_ROW + 2 / 4),
        # Beside the knees a partition is seen, so all of it is walnut; it is housed above, and goes down past
        # the case bottom.
        ("Partition", 2, "walnut", 3 / 4, INTO, UNDER + 3 / 4 + 1 / 4),
        ("Case bottom lipping", 2, "walnut", 3 / 4, 1.5, bottom),
        ("Case bottom panel", 2, "poplar", 3 / 4, INTO - 1.5, bottom),
        ("Runner", 10, "poplar", 3 / 4, 2.5, runner),
        ("Centre runner", 2, "poplar", 3 / 4, 3.5, runner),
        ("Partition rail", 2, "poplar", 3 / 4, 3.5, runner),
        ("Kicker", 4, "poplar", 3 / 4, 2.5, kicker),
        ("Shiplap back board", 11, "poplar", 1 / 2, board, BODY),
        ("Plinth front", 2, "walnut", 3 / 4, 3, BANK + 2 * 3 / 4),
        ("Plinth return", 4, "walnut", 3 / 4, 3, DEEP),
        ("Plinth back rail", 2, "poplar", 3 / 4, 3, BANK),
    ]


def rows_of_the_drawers():
    deep = LONG - 3 / 4 + 1 / 4
    rows = [
        ("Drawer bottom", 3, "poplar", 3 / 8, deep, EACH - 1 / 16 - 1 + 1 / 2 - 1 / 16),
        ("Drawer bottom", 6, "poplar", 3 / 8, deep, BANK - 1 / 16 - 1 + 1 / 2 - 1 / 16),
    ]
    places = [("1", 3, TOP_ROW, EACH)]
    places += [(f"2-{c}-{r}", 1, opening, BANK) for c in (1, 3) for r, opening in enumerate(BANKS, start=1)]
    for row, count, opening, width in places:
        rows += [
            (f"Drawer front, row {row}", count, "walnut", 3 / 4, high(opening), width - 1 / 16),
            (f"Drawer side, row {row}", 2 * count, "soft maple", 1 / 2, high(opening), LONG - 3 / 16),
            (f"Drawer back, row {row}", count, "soft maple", 1 / 2, high(opening) - 3 / 4, width - 1 / 16),
        ]
    return rows


def test_the_cut_list_is_the_worked_one_line_for_line():
    assert cut_list(NAME) == row_order([*rows_of_the_case(), *rows_of_the_drawers()])


def test_every_stack_and_every_row_closes():
    for rule in ("stack closes", "columns close", "runner slack", "depth season"):
        assert {each.verdict for each in findings(NAME, rule)} == {Verdict.PASS}


def test_the_knees_have_what_the_banks_leave():
    (knees,) = [space for space in estimate_of(NAME).unit.face.spaces if space.knee]

    assert knees.width == CLEAR - 2 * BANK - 2 * 3 / 4 == 26


@pytest.mark.parametrize("code", ["R1-1", "R2-1-1-1", "R2-1-3-1", "R2-3-2-1"])
def test_each_drawer_clears_when_it_is_wettest(code):
    sizes = drawer(NAME, code).sizes
    opening = sizes.opening.height

    assert sizes.gaps.wettest_side == pytest.approx(opening - high(opening) * (1 + SOFT_MAPLE * WETTER))
    assert sizes.gaps.wettest_side >= 1 / 32
    assert sizes.gaps.driest_front == pytest.approx(opening - high(opening) * (1 - WALNUT * DRIER))
