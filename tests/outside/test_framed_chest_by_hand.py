"""A chest of drawers with framed sides, dust frames and cock-beaded fronts, worked by hand with a pencil.

Lengths are geometry of the case; play, clearances and what is rounded down are common practice; movement is
size x coefficient x change of moisture, with the coefficients of the Wood Handbook, table 13-5.
"""

import pytest

from byhand import cut_list, down64, drawer, estimate_of, findings, near, quarter_down, rough_line, row_order
from casewright.measure.findings import Verdict

NAME = "framed_chest"
OAK, QUARTERED_MAPLE = 0.00365, 0.00137
WETTER, DRIER = 2.5, 2.3
WIDE, DEEP, TOTAL = 36, 19.5, 35
BODY = TOTAL + 4 * 3 / 4 + 2 * 3 / 4
CLEAR = WIDE - 2 * 3 / 4
HALF = (CLEAR - 3 / 4) / 2
INTO = DEEP - 1 / 2
# Geometric series of ratio 1.12: first = A (q - 1) / (q^5 - 1), each to 1/16, the rest to the lowest.
FIRST = TOTAL * 0.12 / (1.12**5 - 1)
UPPER = [near(FIRST * 1.12**place, 16) for place in range(4)]
OPENINGS = [*UPPER, TOTAL - sum(UPPER)]
HEIGHTS = [down64((opening - 1 / 32) / (1 + OAK * WETTER)) for opening in OPENINGS]
# Of a framed side its two stiles of 3 move, its rails do not.
SHRINKS = 2 * 3 * OAK * DRIER
LONG = quarter_down(INTO - 1 / 4 - SHRINKS)
NARROW, BROAD = HALF - 1 / 16, CLEAR - 1 / 16
SIDE, BACKS = LONG - 3 / 16, [height - 3 / 8 - 1 / 4 - 1 / 8 for height in HEIGHTS]


def test_the_pencil_reads_off_the_rule():
    assert OPENINGS == [5.5, 6.1875, 6.9375, 7.75, 8.625]
    assert HEIGHTS == [5.40625, 6.09375, 6.84375, 7.640625, 8.515625]
    assert (LONG, NARROW, BROAD) == (18.5, 16.8125, 34.4375)


def case_rows():
    field = DEEP - 2 * 3
    panel = down64((field + 2 * 3 / 8 - 2 / 32) / (1 + OAK * WETTER))
    runner = INTO - 3 - 2.5 + 1 / 2 + 1 / 2 - 1 / 8
    kicker = INTO - 3 - 3 + 1 / 2 + 1 / 2 - 1 / 8
    # The panel lies in the grooves of frames and runners, with 1/32 at each side and the runners' slack.
    dust = INTO - 3 - 2.5 + 2 / 4 - 1 / 8
    board = (CLEAR + 2 * 3 / 8 + 6 * (3 / 8 - 1 / 16)) / 7
    # A solid bottom is free in its housings: behind it is left what it grows, and 1/32, up to 1/16.
    grows = (INTO - 1.5) * 0.00289 * WETTER
    tenon = 7 / 16
    return [
        ("Top", 1, "white oak", 7 / 8, DEEP + 3 / 4, WIDE + 1.5),
        ("Side stile", 4, "white oak", 3 / 4, 3, BODY),
        ("Side top rail", 2, "white oak", 3 / 4, 3, field + 2 * 1.25),
        ("Side bottom rail", 2, "white oak", 3 / 4, 3, field + 2 * 1.25),
        ("Side panel", 2, "white oak", 1 / 2, panel, BODY - 6 + 2 * 3 / 8 - 2 / 32),
        # Panels of 1/4 groove in stiles of 3/4 lie 1/4 back; the lowest drawer runs along the bottom rail.
        ("Side guide", 8, "poplar", 1 / 4, 1, field),
        ("Sub-top rail, front", 1, "white oak", 3 / 4, 3, CLEAR + 2 * tenon),
        ("Sub-top rail, back", 1, "poplar", 3 / 4, 3, CLEAR + 2 * tenon),
        ("Divider rail, front", 4, "white oak", 3 / 4, 3, CLEAR + 2 / 4),
        ("Frame back rail", 4, "poplar", 3 / 4, 2.5, CLEAR + 2 / 4),
        ("Upright between drawers", 1, "white oak", 3 / 4, 3, OPENINGS[0] + 2 / 4),
        ("Case bottom lipping", 1, "white oak", 3 / 4, 1.5, CLEAR + 2 / 4),
        ("Case bottom panel", 1, "poplar", 3 / 4, INTO - 1.5 - sixteenth_up(grows + 1 / 32), CLEAR + 2 / 4),
        ("Runner", 8, "poplar", 3 / 4, 2.5, runner),
        ("Centre runner", 1, "poplar", 3 / 4, 3.5, runner),
        ("Kicker", 3, "poplar", 3 / 4, 2.5, kicker),
        ("Dust panel", 3, "1/4 in hardwood plywood", 0.20472, dust, CLEAR - 2 * 2.5 + 2 / 4 - 1 / 16),
        ("Dust panel", 2, "1/4 in hardwood plywood", 0.20472, dust, (CLEAR - 5 - 3.5) / 2 + 2 / 4 - 1 / 16),
        ("Shiplap back board", 7, "poplar", 1 / 2, board, BODY),
        ("Plinth front", 1, "white oak", 3 / 4, 4, WIDE),
        ("Plinth return", 2, "white oak", 3 / 4, 4, DEEP),
        ("Plinth back rail", 1, "poplar", 3 / 4, 4, CLEAR),
    ]


def sixteenth_up(size):
    return -(-size * 16 // 1) / 16


def drawer_rows():
    deep = LONG - 13 / 16 + 1 / 4
    # Between slips of 3/8 whose grooves are 3/16 deep; a muntin of 2 is grooved as deep.
    inside = NARROW - 1 - 2 * 3 / 8
    half = (BROAD - 1 - 2 * 3 / 8 - 2) / 2
    rows = [
        ("Slip", 12, "soft maple", 3 / 8, 3 / 4, LONG - 13 / 16),
        ("Drawer muntin", 4, "soft maple", 5 / 8, 2, deep),
        ("Drawer bottom", 2, "poplar", 3 / 8, deep, inside + 2 * 3 / 16 - 1 / 16),
        ("Drawer bottom, half", 8, "poplar", 3 / 8, deep, half + 2 * 3 / 16 - 1 / 16),
        # The bead above covers the whole thickness and its own 1/16; below and at the ends it goes in as far
        # as the lap of 3/16.
        ("Cock bead, top", 2, "white oak", 1 / 8, 13 / 16 + 1 / 16, NARROW),
        ("Cock bead, bottom", 2, "white oak", 1 / 8, 3 / 16 + 1 / 16, NARROW),
        ("Cock bead, top", 4, "white oak", 1 / 8, 13 / 16 + 1 / 16, BROAD),
        ("Cock bead, bottom", 4, "white oak", 1 / 8, 3 / 16 + 1 / 16, BROAD),
    ]
    for row, (height, back) in enumerate(zip(HEIGHTS, BACKS, strict=True), start=1):
        count, width = (2, NARROW) if row == 1 else (1, BROAD)
        rows += [
            (f"Drawer front, row {row}", count, "white oak", 13 / 16, height - 1 / 8, width),
            (f"Drawer side, row {row}", 2 * count, "soft maple", 1 / 2, height, SIDE),
            (f"Drawer back, row {row}", count, "soft maple", 1 / 2, back, width),
            ("Cock bead, end", 2 * count, "white oak", 1 / 8, 3 / 16 + 1 / 16, height),
        ]
    return rows


def test_the_cut_list_is_the_worked_one_line_for_line():
    assert cut_list(NAME) == row_order([*case_rows(), *drawer_rows()])


def test_the_framed_sides_move_by_their_stiles_alone():
    assert estimate_of(NAME).unit.case.side_shrinkage == pytest.approx(SHRINKS)
    assert {each.verdict for each in findings(NAME, "runner slack")} == {Verdict.PASS}


@pytest.mark.parametrize("row", [1, 2, 3, 4, 5])
def test_each_drawer_has_its_gaps_through_the_year(row):
    gaps, opening, height = drawer(NAME, f"R{row}-1").sizes.gaps, OPENINGS[row - 1], HEIGHTS[row - 1]

    assert gaps.now == opening - height
    assert gaps.wettest_front == pytest.approx(opening - height * (1 + OAK * WETTER))
    assert gaps.wettest_side == pytest.approx(opening - height * (1 + QUARTERED_MAPLE * WETTER))
    assert gaps.driest_front == pytest.approx(opening - height * (1 - OAK * DRIER))
    assert gaps.wettest_front >= 1 / 32


def test_the_panels_keep_their_play_and_stay_in_their_grooves():
    panel = 14 + 3 / 64
    (play,), (held,) = findings(NAME, "panel play"), findings(NAME, "panel held")

    # Needed at each edge: panel x C x 2.5 / 2 + 1/32; held at the driest: groove - play - shrinkage / 2.
    now = (13.5 + 3 / 4 - panel) / 2
    assert play.found == pytest.approx(now)
    assert play.needed == pytest.approx(panel * OAK * WETTER / 2 + 1 / 32)
    assert held.found == pytest.approx(3 / 8 - now - panel * OAK * DRIER / 2)
    assert held.needed == 1 / 8
    assert (play.verdict, held.verdict) == (Verdict.PASS, Verdict.PASS)


def test_the_joint_of_a_beaded_front_is_laid_out_below_the_bead():
    front = drawer(NAME, "R3-1").joints.front

    # 13/16 less a lap of 3/16, and a side of 1/2 less a rabbet of 1/16.
    assert (front.gauge_1, front.gauge_2) == (5 / 8, 7 / 16)
    count, pin = front.layout.count, front.layout.pin
    height = HEIGHTS[2] - 1 / 8
    assert front.layout.pitch == pytest.approx((height - 2 * front.layout.half_pin + pin) / count)


def test_the_bottoms_sag_less_than_they_may():
    # A beam of poplar, 1.58 million psi, under 8.5 lb a cubic foot of clothes: 5 q w^4 / (384 E t^3 / 12).
    filled = OPENINGS[0] - 3 / 8 - 1 / 4 - 1 / 8
    span = NARROW - 1 - 3 / 4
    sag = 5 * 8.5 / 1728 * filled * span**4 / (384 * 1.58e6 * (3 / 8) ** 3 / 12)
    (found,) = [each for each in findings(NAME, "bottom sag") if each.about == "C-R1-1"]

    assert found.found == pytest.approx(sag, rel=1e-6)
    assert (found.needed, found.verdict) == (pytest.approx(span / 300), Verdict.PASS)


@pytest.mark.parametrize(
    ("part", "quantity", "boards", "width", "length"),
    [
        # A single board + 1/4 wide and + 1 long; k boards of 6 (poplar 7) + 1/2 + k x 1/4.
        ("Side stile", 4, 1, 3 + 1 / 4, BODY + 1),
        ("Side panel", 2, 3, 14 + 3 / 64 + 1 / 2 + 3 / 4, BODY - 6 + 11 / 16 + 1),
        ("Top", 1, 4, DEEP + 3 / 4 + 1 / 2 + 1, WIDE + 1.5 + 1),
        ("Drawer bottom", 2, 3, 17 + 15 / 16 + 1 / 2 + 3 / 4, 15 + 3 / 8 + 1),
        # Two ends under 12 go through the planer in one blank.
        ("Cock bead, end", 4, 1, 1 / 2, HEIGHTS[0] + 1 / 2),
    ],
)
def test_parts_are_broken_out_at_their_rough_sizes(part, quantity, boards, width, length):
    line = rough_line(NAME, part, quantity)

    assert (line.boards, line.width, line.length) == (boards, width, length)
    assert line.rough == pytest.approx(quantity * line.bought.rough * width * length / 144)


def test_no_check_says_stop():
    assert [each.rule for each in estimate_of(NAME).findings if each.verdict is Verdict.STOP] == []
