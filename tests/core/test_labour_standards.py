"""From quantities to labour lines."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.labour.drivers import Driver
from casewright.labour.figures import house_figures
from casewright.labour.operations import Group, Method, Timing, method_taken, operations
from casewright.labour.standards import (
    direct_minutes,
    factor_for,
    house_standards,
    labour_lines,
    with_allowance,
)
from casewright.labour.unknowns import added_minutes, added_share
from casewright.labour.waits import waits
from casewright.measure.ledger import Ledger

BY_CODE = {one.code: one for one in operations()}


def test_every_driver_is_counted_by_some_operation():
    counted = {one.driver for one in operations()}

    assert counted == set(Driver)


def test_every_wait_that_an_operation_names_is_known():
    known = {wait.key for wait in waits()} | {""}

    assert {one.wait_after for one in operations()} <= known


def test_the_wait_after_an_operation_runs_overnight_only_when_there_is_one():
    overnight = [one for one in operations() if one.overnight]

    assert all(one.wait_after for one in overnight)


@pytest.mark.parametrize("one", operations(), ids=lambda one: one.code)
def test_machine_help_never_takes_longer_except_to_set_up_a_spray_gun_or_a_saw(one):
    both = one.hand is not None and one.machine is not None

    assert not both or one.machine <= one.hand or one.code in ("Z06", "P08")


@pytest.mark.parametrize("code", ["P06", "C05", "C06", "D05", "D10", "D12", "Z03", "Z06", "Y01"])
def test_glue_marking_finish_and_delivery_take_no_longer_in_a_harder_wood(code):
    assert not BY_CODE[code].cutting


@pytest.mark.parametrize("code", ["P03", "P04", "C02", "D06", "D08", "D13"])
def test_sawing_chopping_and_planing_depend_on_the_wood(code):
    assert BY_CODE[code].cutting


def test_a_harder_wood_adds_to_cutting_lines_only():
    quantities = {Driver.DRAWER_TAILS: 10, Driver.DRAWERS: 2}

    lines = {line.code: line.minutes for line in labour_lines(quantities, wood_factor=1.2)}

    # 10 tails x 2.5 min x 1.2; glue-up 2 x 14 min as in any wood
    assert lines["D06"] == pytest.approx(30.0, abs=1e-9)
    assert lines["D12"] == 28.0


@pytest.mark.parametrize(
    ("wood", "factor"),
    [
        ("pine", 0.85),
        ("white pine", 0.85),
        ("Poplar", 0.9),
        ("cherry", 1.0),
        ("walnut", 1.0),
        ("soft_maple", 1.05),
        ("hard maple", 1.2),
        ("white oak", 1.15),
    ],
)
def test_each_wood_works_as_the_shop_knows_it(wood, factor):
    assert factor_for(wood).factor == factor


def test_a_wood_without_a_figure_works_like_cherry_and_says_so():
    row = factor_for("sapele")

    assert row.factor == 1.0
    assert "no factor is known" in row.source


def test_a_quantity_of_none_gives_no_line():
    assert labour_lines({Driver.MUNTINS: 0}) == ()


def test_a_method_that_the_job_asks_for_is_taken():
    lines = labour_lines({Driver.PARTS: 10}, {"P05": Method.HAND})

    assert [(line.method, line.minutes) for line in lines] == [(Method.HAND, 80.0)]


def test_an_operation_known_by_one_method_only_is_done_that_way():
    assert method_taken(BY_CODE["E02"], Method.HAND) is Method.MACHINE


def test_a_method_for_an_operation_that_does_not_exist_is_refused():
    with pytest.raises(ValueError, match="no operation D99"):
        labour_lines({Driver.PARTS: 1}, {"D99": Method.HAND})


def test_a_quantity_below_zero_is_refused():
    with pytest.raises(ValueError, match="fewer than none of: pulls"):
        labour_lines({Driver.PULLS: -1})


def test_box_joints_pay_their_set_up_once_and_then_each_corner():
    lines = labour_lines({Driver.BOX_JOINT_BATCHES: 1, Driver.BOX_JOINT_CORNERS: 24})

    assert direct_minutes(lines) == 15 + 24 * 4


def test_slides_are_mounted_and_adjusted_pair_by_pair():
    lines = labour_lines({Driver.SLIDE_PAIRS: 6})

    assert direct_minutes(lines) == 6 * (12 + 6)


def test_an_average_takes_no_learning_curve_and_a_first_piece_time_does():
    first = replace(BY_CODE["D07"], hand=30.0, timing=Timing.FIRST, learning=0.95)
    standards = house_standards().changed(first)

    lines = {line.code: line for line in labour_lines({Driver.DOVETAIL_JOINTS: 24}, standards=standards)}

    # the printed sum for 24 joints at 30 min for the first is 609 min
    assert lines["D07"].minutes == pytest.approx(609, abs=0.5)
    assert lines["D05"].minutes == 24 * 4


def test_the_shops_own_figure_takes_the_place_of_the_old_one():
    own = replace(BY_CODE["D17"], hand=5.0, basis="learned")

    standards = house_standards().changed(own)

    assert direct_minutes(labour_lines({Driver.PULLS: 10}, standards=standards)) == 50
    assert len(standards.operations) == len(operations())


def test_two_operations_of_one_code_are_refused():
    with pytest.raises(ValueError, match="D17 is in the standards twice"):
        replace(house_standards(), operations=(BY_CODE["D17"], BY_CODE["D17"]))


def test_an_operation_without_minutes_is_refused():
    with pytest.raises(ValueError, match="has no minutes"):
        replace(BY_CODE["D17"], hand=None, machine=None)


def test_every_line_can_say_how_it_was_made():
    ledger = Ledger()

    labour_lines({Driver.PULLS: 10}, ledger=ledger)

    assert ledger["minutes.D17"].inputs == {
        "quantity": 10,
        "each": 8,
        "wood_factor": 1.0,
        "batch_factor": 1.0,
    }


def test_curly_grain_is_a_line_of_its_own():
    lines = labour_lines({Driver.BOARDS: 10})

    curly = added_share("Curly grain", lines, {"P04"}, 0.15)

    # 15 % of 10 boards at 6 min
    assert curly.minutes == pytest.approx(9.0, abs=1e-9)
    assert curly.group is Group.PREPARE


def test_a_walk_up_is_a_line_of_its_own():
    line = added_minutes("Third-floor walk-up", 180)

    assert (line.minutes, line.group) == (180, Group.DELIVER)


def test_an_addition_to_work_that_is_not_done_is_refused():
    with pytest.raises(ValueError, match="does not have"):
        added_share("Curly grain", labour_lines({Driver.PULLS: 4}), {"P04"}, 0.15)


def test_an_unnamed_addition_is_refused():
    with pytest.raises(ValueError, match="Name the line"):
        added_minutes(" ", 60)


@given(st.dictionaries(st.sampled_from(Driver), st.integers(0, 200), max_size=12))
def test_minutes_of_the_parts_of_the_work_add_up_to_the_whole(quantities):
    lines = labour_lines(quantities)

    parts = sum(direct_minutes(lines, group) for group in Group)

    assert parts == pytest.approx(direct_minutes(lines), rel=1e-12)  # float sums in another order


@given(st.dictionaries(st.sampled_from(Driver), st.integers(0, 200), max_size=12))
def test_twice_the_work_takes_twice_the_minutes(quantities):
    doubled = {driver: 2 * quantity for driver, quantity in quantities.items()}

    assert direct_minutes(labour_lines(doubled)) == pytest.approx(
        2 * direct_minutes(labour_lines(quantities)), rel=1e-12
    )


@given(st.integers(0, 100_000), st.floats(0, 0.5))
def test_hours_are_the_minutes_with_the_allowance_to_the_nearest_hundredth(minutes, allowance):
    hours = with_allowance(minutes, allowance)

    assert abs(hours - minutes * (1 + allowance) / 60) <= 0.005 + 1e-9
    assert hours == round(hours, 2)


def test_the_allowance_of_the_standards_is_the_shops():
    assert house_standards().allowance == house_figures().allowance == 0.12


def test_an_allowance_below_zero_is_refused():
    with pytest.raises(ValueError, match="cannot be below 0"):
        replace(house_standards(), allowance=-0.1)


def test_a_line_shows_the_wood_and_the_batch_in_one_factor():
    first = replace(BY_CODE["D06"], timing=Timing.FIRST, learning=0.9)
    standards = house_standards().changed(first)

    lines = labour_lines({Driver.DRAWER_TAILS: 2}, wood_factor=1.2, standards=standards)

    # two tails at 90 % average 0.95 of the first
    assert lines[0].factor == pytest.approx(1.2 * 0.95, rel=1e-12)
    assert lines[0].minutes == pytest.approx(2 * 2.5 * 1.2 * 0.95, rel=1e-12)


def test_a_shop_may_do_without_an_allowance():
    assert replace(house_standards(), allowance=0).allowance == 0


def test_an_operation_may_take_no_time_at_all():
    assert replace(BY_CODE["D17"], hand=0).hand == 0


@pytest.mark.parametrize("learning", [0.49, 1.01])
def test_a_learning_rate_out_of_reason_is_refused(learning):
    with pytest.raises(ValueError, match="learning rate is between"):
        replace(BY_CODE["D17"], learning=learning)


def test_the_fastest_learning_rate_is_taken():
    assert replace(BY_CODE["D17"], learning=0.5).learning == 0.5
