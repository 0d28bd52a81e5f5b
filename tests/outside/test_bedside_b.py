"""Worked bedside B, a trade worked example of one drawer on legs and aprons, line by line.

Every expected figure is as it is printed there; where it is rounded in print, the tolerance is half its last
place. The plywood is printed by its nominal thickness; here it measures what the table of sheets says, so its
thickness is not compared.
"""

from typing import NamedTuple

import pytest

from casewright.labour.drivers import Driver
from casewright.measure.lengths import show, show_mm
from units import bedside_estimate

SOURCE = "worked bedside B, a trade worked example"


class Printed(NamedTuple):
    """One row of the printed cut list."""

    line: str
    name: str
    quantity: int
    wood: str
    finish: str
    millimetres: str
    bought: str
    rough: str
    boards: int
    feet: float


# Line, part, quantity, wood, finish T W L, the same in mm, class, rough W L, boards in each, rough feet.
TABLE = """
T1 | Top | 1 | walnut | 3/4 16 20 | 19.1 406.4 508.0 | 4/4 | 17-1/4 21 | 3 | 2.52
L1 | Leg, square | 4 | walnut | 1-1/2 1-1/2 25-1/4 | 38.1 38.1 641.4 | 8/4 | 1-3/4 26-1/4 | 1 | 2.55
A1 | Side apron | 2 | walnut | 3/4 5-1/2 13-1/2 | 19.1 139.7 342.9 | 4/4 | 5-3/4 14-1/2 | 1 | 1.16
A2 | Back apron | 1 | walnut | 3/4 5-1/2 17 | 19.1 139.7 431.8 | 4/4 | 5-3/4 18 | 1 | 0.72
R1 | Upper front rail | 1 | walnut | 3/4 1-1/2 16-1/4 | 19.1 38.1 412.8 | 4/4 | 1-3/4 17-1/4 | 1 | 0.21
R2 | Lower front rail | 1 | walnut | 3/4 1-1/2 16-1/2 | 19.1 38.1 419.1 | 4/4 | 1-3/4 17-1/2 | 1 | 0.21
F1 | Drawer front | 1 | walnut | 3/4 3-15/16 14-15/16 | 19.1 100.0 379.4 | 4/4 | 4-3/16 15-15/16 | 1 | 0.46
S1 | Drawer side | 2 | hard maple | 3/8 3-15/16 13-1/16 | 9.5 100.0 331.8 | 4/4 | 4-3/16 14-1/16 | 1 | 0.82
K1 | Drawer back | 1 | hard maple | 3/8 3-5/16 14-15/16 | 9.5 84.1 379.4 | 4/4 | 3-9/16 15-15/16 | 1 | 0.39
X1 | Slip | 2 | hard maple | 3/8 5/8 12-1/2 | 9.5 15.9 317.5 | 4/4 | 7/8 13-1/2 | 1 | 0.16
W1 | Runner | 2 | hard maple | 3/4 1-3/8 12-3/8 | 19.1 34.9 314.3 | 4/4 | 1-5/8 13-3/8 | 1 | 0.30
W2 | Kicker | 2 | hard maple | 3/4 1-3/8 12-3/8 | 19.1 34.9 314.3 | 4/4 | 1-5/8 13-3/8 | 1 | 0.30
W3 | Side guide | 2 | hard maple | 5/8 1 12-3/8 | 15.9 25.4 314.3 | 4/4 | 1-1/4 13-3/8 | 1 | 0.23
"""


def printed_row(text):
    line, name, quantity, wood, finish, millimetres, bought, rough, boards, feet = text.split(" | ")
    return Printed(
        line, name, int(quantity), wood, finish, millimetres, bought, rough, int(boards), float(feet)
    )


CUT_LIST = [printed_row(text) for text in TABLE.strip().splitlines()]
BY_LINE = pytest.mark.parametrize("printed", CUT_LIST, ids=lambda printed: printed.line)


def unit():
    return bedside_estimate().unit


def line(mark):
    (found,) = (line for line in bedside_estimate().takeoff.lines if line.line == mark)
    return found


def drawer():
    return unit().drawer("B-R1-1")


def on_the_rule(*sizes):
    return " ".join(map(show, sizes))


@BY_LINE
def test_each_part_has_its_printed_finish_size(printed):
    row = line(printed.line)
    part = row.of.part

    assert printed.name in part.name
    assert (row.quantity, part.wood) == (printed.quantity, printed.wood)
    assert on_the_rule(part.thickness, part.width, part.length) == printed.finish
    assert " ".join(map(show_mm, (part.thickness, part.width, part.length))) == printed.millimetres


@BY_LINE
def test_each_part_is_broken_out_at_its_printed_rough_size(printed):
    row = line(printed.line)

    assert row.bought.name == printed.bought
    assert on_the_rule(row.width, row.length) == printed.rough
    assert row.boards == printed.boards
    assert row.rough == pytest.approx(printed.feet, abs=0.005)


def test_the_cut_list_has_no_other_lines_but_the_plywood_bottom():
    lines = {row.line: row for row in unit().lines}

    assert set(lines) == {printed.line for printed in CUT_LIST} | {"N1"}
    assert on_the_rule(lines["N1"].part.width, lines["N1"].part.length) == "12-3/4 13-3/4"
    assert lines["N1"].part.sheet


@pytest.mark.parametrize(
    ("wood", "bought", "uses", "net", "rough", "order"),
    [
        ("hard maple", "4/4", {"drawer", "inside"}, 1.81, 2.21, 2.6),
        ("walnut", "4/4", {"case"}, 4.24, 4.81, 6.4),
        ("walnut", "4/4", {"sequence"}, 0.41, 0.46, 0.7),
        ("walnut", "8/4", {"leg"}, 2.10, 2.55, 3.4),
    ],
)
def test_the_feet_of_each_wood_and_class_are_the_printed_ones(wood, bought, uses, net, rough, order):
    found = [
        group
        for group in bedside_estimate().takeoff.groups
        if (group.wood, group.bought.name) == (wood, bought) and str(group.use) in uses
    ]

    # quartersawn sides are ordered apart from runners; print adds the two up
    assert sum(group.net for group in found) == pytest.approx(net, abs=0.005)
    assert sum(group.rough for group in found) == pytest.approx(rough, abs=0.0051)
    assert sum(group.order for group in found) == pytest.approx(order, abs=0.05)


def test_the_opening_lies_between_the_rails_as_printed():
    (opening,) = unit().face.openings

    assert on_the_rule(opening.width, opening.height, opening.depth) == "15 4 13-5/8"
    assert show(unit().face.overall_height) == "26"


def test_the_depth_is_set_by_long_grain():
    case = unit().case

    assert (case.side_shrinkage, case.side_swelling) == (0.0, 0.0)


def test_the_drawer_has_its_printed_sizes():
    sizes = drawer().sizes

    assert on_the_rule(sizes.width, sizes.height, sizes.length) == "14-15/16 3-15/16 13-1/4"
    assert on_the_rule(sizes.side_length, sizes.back_height) == "13-1/16 3-5/16"


def test_the_drawer_has_its_printed_gaps_through_the_year():
    gaps = drawer().sizes.gaps

    assert show(gaps.now) == "1/16"
    # printed to three decimals
    assert gaps.wettest == pytest.approx(0.036, abs=0.0005)
    assert gaps.driest == pytest.approx(0.087, abs=0.0005)


def test_the_front_is_set_out_with_the_printed_gauges_and_dividers():
    front = drawer().joints.front

    assert (show(front.gauge_1), show(front.gauge_2), show(front.wrong_gauge_2)) == ("9/16", "11/32", "3/8")
    assert front.layout.count == 3
    assert on_the_rule(front.layout.half_pin, front.layout.pin) == "1/8 3/32"
    assert front.layout.pitch == pytest.approx(1.26042, abs=0.000005)  # to five decimals
    assert front.lap_index == pytest.approx(12, abs=0.5)


def test_the_bottom_bridges_the_slips():
    bottom = drawer().bottom

    assert on_the_rule(bottom.across, bottom.deep) == "13-3/4 12-3/4"
    assert bottom.across * bottom.deep == pytest.approx(175.3, abs=0.05)
    assert show(drawer().slip) == "12-1/2"


def found(rule, about=""):
    return [finding for finding in unit().findings if finding.rule == rule and about in ("", finding.about)]


@pytest.mark.parametrize(
    ("rule", "verdict"),
    [
        ("stack closes", "pass"),
        ("columns close", "pass"),
        ("clears when wettest", "pass"),
        ("depth season", "pass"),
        ("JC1", "pass"),
        ("JC2", "pass"),
        ("JC8", "pass"),
        ("two mortises", "pass"),
        ("front rails clear the aprons", "pass"),
        ("top fixing", "pass"),
        ("composite-wood label", "caution"),
        ("tip scope", "pass"),
    ],
)
def test_the_checks_come_out_as_printed(rule, verdict):
    assert {str(finding.verdict) for finding in found(rule)} == {verdict}, SOURCE


@pytest.mark.parametrize(
    ("rule", "about", "number", "needed", "within"),
    # the tolerance is half the last place of what is printed
    [
        ("depth season", "B-R1-1", 0.375, 0.0625, 1e-9),
        ("top fixing", "B-T", 0.110, None, 0.0005),
        ("JC2", "B-R1-1", 12, 30, 0.5),
        ("composite-wood label", "N1", 175.3, 144, 0.05),
    ],
)
def test_the_checks_compare_the_printed_numbers(rule, about, number, needed, within):
    (finding,) = found(rule, about)

    assert finding.found == pytest.approx(number, abs=within), SOURCE
    assert finding.needed == pytest.approx(needed), SOURCE


def test_the_groove_is_hidden_by_the_printed_amount():
    assert drawer().joints.front.groove_fit.spare == pytest.approx(0.055, abs=0.0005)


def test_it_is_too_low_for_the_scope_of_the_clothing_standard():
    (scope,) = found("tip scope")

    assert "26 in is below 27" in str(scope.message)


def test_no_check_of_the_bedside_says_stop():
    assert [finding.rule for finding in bedside_estimate().findings if finding.verdict == "stop"] == []


def test_no_part_of_the_carcase_is_left():
    names = {part.name for part in unit().parts}

    assert not names & {"Case side", "Plinth front", "Shiplap back board", "Case bottom panel"}


def test_legs_and_their_joints_are_counted_for_the_hours():
    counted = bedside_estimate().drivers

    # two side aprons, a back apron and a lower rail have a tenon at each end; the upper rail is dovetailed
    assert (counted[Driver.MORTISE_JOINTS], counted[Driver.CASE_CORNERS]) == (8, 2)
    assert (counted[Driver.TAPERED_LEGS], counted[Driver.SLIPPED_DRAWERS]) == (4, 1)
