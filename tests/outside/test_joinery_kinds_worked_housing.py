"""Housings against what is printed and what is common practice."""

import pytest

from casewright.joinery.kinds import solve
from casewright.measure.findings import Verdict

WOODWORKER = "“Cutting housing joints”, The Woodworker"
GAUGE = (
    "Common Woodworking, Laying out the side housing dados: the gauge at 1/4 in; 3/4 in is common practice"
)
COMMON = "common practice"


def values(found):
    return {setting.name: setting.value for setting in found.settings}


def verdict(found, rule):
    return next(finding.verdict for finding in found.findings if finding.rule == rule)


def test_a_side_of_three_quarters_has_a_housing_a_quarter_deep():
    assert values(solve("housing", {"divider": 0.75, "case_side": 0.75}).joint)["depth"] == 0.25, GAUGE


@pytest.mark.parametrize("case_side", [0.5, 0.625, 0.75, 0.8125, 0.875, 1.0])
def test_no_housing_is_chosen_deeper_than_a_third(case_side):
    depth = values(solve("housing", {"divider": 0.75, "case_side": case_side}).joint)["depth"]

    # rounding down to a 16th takes less than a 16th away
    assert case_side / 3 - 1 / 16 < depth <= case_side / 3 + 1e-9, WOODWORKER


@pytest.mark.parametrize("millimetres", [8, 10, 12])
def test_the_printed_stops_pass(millimetres):
    found = solve("housing", {"divider": 0.75, "case_side": 0.75, "stop": millimetres / 25.4}).joint

    assert verdict(found, "stop at the front") is Verdict.PASS, WOODWORKER


def test_the_usual_stop_is_the_longest_printed_one_in_inches():
    found = values(solve("housing", {"divider": 0.75, "case_side": 0.75}).joint)

    # 8 to 12 mm are printed; half an inch is what a rule in inches has for 12 mm, 0.7 mm more
    assert 8 <= found["stop"] * 25.4 <= 12.7, COMMON


@pytest.mark.parametrize(
    ("measured", "width", "inside", "length"),
    [(0.75, 0.754, 30.0, 30.5), (0.738, 0.742, 23.5, 24.0), (0.703125, 0.707125, 36.25, 36.75)],
)
def test_width_and_length_are_as_by_pencil(measured, width, inside, length):
    # width = measured + 0.004 in; length = inside + 2 * 1/4
    found = values(solve("housing", {"divider": measured, "case_side": 0.75, "inside_width": inside}).joint)

    assert found["width"] == pytest.approx(width, abs=1e-12), COMMON  # one addition of floats
    assert found["divider_length"] == length, COMMON


def test_a_shelf_of_18_mm_gets_a_tenth_more():
    found = values(solve("housing", {"divider": 18 / 25.4, "case_side": 18 / 25.4}).joint)

    # 0.004 in is 0.1016 mm
    assert found["width"] * 25.4 == pytest.approx(18.1016, abs=1e-9), COMMON
