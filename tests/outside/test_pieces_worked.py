"""Worked checks on openings, drawers and cases that can be done with a pencil, and the bedside's drawer."""

import pytest

from casewright.joinery.families.bottom_groove.sizes import bottom_length, half_bottom_width
from casewright.joinery.families.carcase.layout import dovetailed_length
from casewright.joinery.families.edge.sizes import board_width
from casewright.measure.lengths import show
from casewright.pieces.asked.graduation import first_by_step
from casewright.pieces.rules import case_rules, drawer_rules
from casewright.wood.movement import movement


@pytest.mark.parametrize(
    ("found", "expected", "source"),
    [
        (case_rules.clear_width(39.5, 0.75), "38", "check K1: 39.5 - 2 x 0.75"),
        (first_by_step(35, 5, 0.75), "5-1/2", "check K3: (35 - 0.75 x 10) / 5"),
        (
            case_rules.body_height_by_openings(35, 0.75, 0.75, 0.75, 5),
            "39-1/2",
            "check K4: 35 + 4 x 0.75 + 2 x 0.75",
        ),
        (case_rules.overall_height(39.5, 0.875, 4), "44-3/8", "check K4: 39.5 + 0.875 + 4"),
        (
            drawer_rules.drawer_height(8.5, 0, 1 / 32, 0.00289, 2.5),
            "8-13/32",
            "check K7: 8.46875 / 1.007225 = 8.4080, down to 8.40625",
        ),
        (drawer_rules.side_length(18.75, 0.1875), "18-9/16", "check K11: 18.75 - 0.1875"),
        (
            drawer_rules.back_height(8.40625, 0.375, 0.25, 0.125),
            "7-21/32",
            "check K20: 8.40625 - 0.75",
        ),
        (
            case_rules.runner_length(19.25, 3, 2.5, 0.5, 0.125),
            "14-5/8",
            "worked dresser A: 19-1/4 - 3 - 2-1/2 + 1 - 1/8",
        ),
        (case_rules.housed_length(38, 0.25), "38-1/2", "worked dresser A, divider rail"),
        (dovetailed_length(39.5, 0.25), "39", "worked dresser A, sub-top rail"),
        (
            half_bottom_width(36.9375, 2, 0.25, 1 / 32),
            "17-29/32",
            "worked dresser A: (36-15/16 - 2) / 2 + 1/2 - 1/16",
        ),
        (
            bottom_length(18.75, 0.8125, 0.25, 0),
            "18-3/16",
            "worked dresser A: 18-3/4 - 13/16 + 1/4",
        ),
        # a bedside with aprons: opening 15 x 4 x 13-5/8, walnut front, quartersawn hard maple sides
        (
            drawer_rules.drawer_height(4, 0, 1 / 32, 0.00274, 2.5),
            "3-15/16",
            "worked bedside B: 3.96875 / 1.00685, down to a 64th",
        ),
        (drawer_rules.drawer_width(15, 1 / 32), "14-15/16", "worked bedside B: 15 - 1/16"),
        (
            drawer_rules.drawer_length(13.625, 0.25, 0),
            "13-1/4",
            "worked bedside B: aprons set the depth; 13.375 down to a quarter",
        ),
        (drawer_rules.side_length(13.25, 0.1875), "13-1/16", "worked bedside B"),
        (
            drawer_rules.back_height(3.9375, 0.25, 0.25, 0.125),
            "3-5/16",
            "worked bedside B: 3-15/16 - 1/2 - 1/8",
        ),
    ],
)
def test_a_size_comes_out_as_printed(found, expected, source):
    assert show(found) == expected, source


@pytest.mark.parametrize(
    ("change", "expected", "source"),
    # printed to three decimals; walnut front 0.00274, gap now 1/16
    [
        (0.0, 0.0625, "worked bedside B, now"),
        (2.5, 0.036, "worked bedside B, wettest"),
        (-2.3, 0.087, "worked bedside B, driest"),
    ],
)
def test_the_gap_of_the_bedside_drawer_goes_through_the_year_as_printed(change, expected, source):
    gap = drawer_rules.gap_above(4, 0, 3.9375, 0.00274, change)

    assert gap == pytest.approx(expected, abs=0.0005), source


def test_a_side_that_shrinks_as_printed_passes_a_slack_of_an_eighth():
    # check K33: 19.75 x 0.00248 x 2.3
    shrinks = movement(19.75, 0.00248, 2.3)

    assert shrinks == pytest.approx(0.113, abs=0.0005)  # printed to three decimals
    assert case_rules.runner_slack(shrinks, 1 / 8) == 0.125


def test_the_back_of_the_dresser_is_of_seven_boards_as_printed():
    width = board_width(38.75, 7, 0.375, 0.0625)

    # worked dresser A: 5-51/64, to the nearest 64th
    assert round(width * 64) == 5 * 64 + 51
