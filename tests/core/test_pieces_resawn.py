"""Parts that match from one thickness: what the saw and the plane take, and what must be said of the saw."""

from typing import Any

import pytest

from casewright.labour.drivers import Driver
from casewright.labour.operations import Group, operations
from casewright.labour.waits import waits
from casewright.papers.cautions import caution_lines
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.costs.drawer_stock import drawer_stock
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.job_estimate import estimate_job
from units import TODAY, built, chest, estimated, unit

RESAWING = ("P08", "P09", "P10", "P11")


def with_doors(wish: str) -> dict[str, Any]:
    data = chest({"grain": {"doors": wish}})
    data["body"] = {"width": "48", "depth": "18", "overall_height": "34"}
    across = [{"holds": "doors", "leaves": 2}] * 2
    data["rows"] = [{"columns": 2, "height": "6"}, {"across": across}]
    return data


def minutes(held: Estimate) -> dict[str, float]:
    return {line.code: line.minutes for line in held.labour}


@pytest.mark.parametrize("wish", ["book-matched", "slip-matched"])
def test_doors_sawn_from_one_thickness_take_longer_and_cost_more_than_plain_ones(wish):
    plain, matched = estimated(with_doors("no")), estimated(with_doors(wish))

    assert matched.hours > plain.hours
    assert matched.price.asked > plain.price.asked


@pytest.mark.parametrize("wish", ["book-matched", "slip-matched"])
def test_matched_sides_take_longer_and_cost_more_than_plain_ones(wish):
    plain, matched = estimated(chest()), estimated(chest({"grain": {"sides": wish}}))

    assert matched.unpriced == ()
    assert matched.hours > plain.hours
    assert matched.price.asked > plain.price.asked


def test_the_minutes_of_a_resawn_board_go_by_its_size():
    """Two pairs of panels: the saw set up once, two boards lined and parted, each leaf planed on both faces.

    Cherry has the factor 1. The cut is the blank's rough width by its rough length, for each blank.
    """
    held = estimated(with_doors("book-matched"))
    [line] = [each for each in held.takeoff.lines if each.is_matched]
    cut = 2 * line.width * line.length / 144

    assert (line.blanks, line.boards) == (2, 1)
    assert {code: minutes(held)[code] for code in RESAWING} == {
        "P08": 20,
        "P09": 2 * 6,
        "P10": pytest.approx(3 * round(cut)),
        "P11": pytest.approx(1.5 * round(4 * cut)),
    }


def test_a_little_cut_takes_the_time_of_a_foot():
    """Doors this small leave panels of less than half a square foot to saw; nobody saws them in no time."""
    data = with_doors("book-matched")
    data["body"] = {"width": "13", "depth": "12", "overall_height": "26"}
    data["rows"] = [{"height": "8"}, {"across": [{"holds": "doors", "leaves": 2}]}]
    held = estimated(data)
    [line] = [each for each in held.takeoff.lines if each.is_matched]

    assert line.resawn_area / 144 < 0.5
    assert held.drivers[Driver.RESAWN_SQFT] == 1


def test_what_does_not_match_is_not_resawn():
    assert not set(minutes(estimated(with_doors("in sequence")))) & set(RESAWING)


def test_resawing_prepares_stock_and_its_leaves_rest_before_they_are_planed():
    of = {one.code: one for one in operations()}

    assert {of[code].group for code in RESAWING} == {Group.PREPARE}
    assert {of[code].basis for code in RESAWING} == {"from memory"}
    [rest] = [each for each in waits() if each.key == of["P10"].wait_after]
    assert rest.overlapped
    assert rest.usual == 3 * 24 * 60


def test_doors_and_sides_are_resawn_for_the_case_alone():
    job = estimate_job([unit(with_doors("book-matched"))], example_shop(), TODAY)

    shares = drawer_stock(job)
    assert {code: shares[code] for code in RESAWING} == dict.fromkeys(RESAWING, 0.0)


def test_the_caution_of_the_resaw_is_said_where_boards_are_resawn():
    def said(wish: str) -> bool:
        return any("Resawing at the band saw" in line for line in caution_lines(built(with_doors(wish))))

    assert said("book-matched")
    assert said("slip-matched")
    assert not said("in sequence")


def test_a_top_of_two_matched_halves_has_its_price_and_costs_more_than_a_plain_one():
    """7/8 takes 2 (7/8 + 1/8) + 1/8 = 2-1/8, so 10/4: the example's price book has it."""
    plain, matched = estimated(chest()), estimated(chest({"grain": {"top": "book-matched"}}))

    assert [line.bought.name for line in matched.takeoff.lines if line.line == "T1"] == ["10/4"]
    assert matched.unpriced == ()
    assert matched.price.asked > plain.price.asked
