"""Estimate against log: like beside like, and a warning while something can still be done."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.labour.actuals import compare
from casewright.labour.bench import BenchEvent, EventKind, case_progress, drawer_progress
from casewright.labour.drivers import Driver
from casewright.labour.earned import earned_minutes, finished_shares, hours_warning
from casewright.labour.stages import case_stages, drawer_stages
from casewright.labour.standards import labour_lines
from casewright.measure.findings import Verdict

# tails at 2.5 and sockets at 6 minutes each: 230 and 288; corners of the case at 20: 120
LINES = labour_lines({Driver.DRAWER_TAILS: 92, Driver.SOCKET_TAILS: 48, Driver.CASE_CORNERS: 6})
START = datetime(2026, 11, 25, 8, 0, tzinfo=UTC)


def reached(stages, code):
    """Taps for every stage up to this one."""
    codes = [stage.code for stage in stages]
    return [
        BenchEvent(
            id=name, kind=EventKind.REACHED, at=START + timedelta(minutes=minute), who="Ida", stage=name
        )
        for minute, name in enumerate(codes[: codes.index(code) + 1])
    ]


def drawer(code):
    return drawer_progress(reached(drawer_stages(), code))


def case(code):
    return case_progress(reached(case_stages(), code))


def test_each_operation_stands_beside_what_was_logged_on_it():
    held = compare(LINES, [("D06", 200), ("D06", 53), ("D08", 288)], allowance=0)

    assert [(line.code, line.estimated, line.actual, line.ratio) for line in held.lines] == [
        ("C01", 120, 0, None),
        ("D06", 230, 253, 1.1),
        ("D08", 288, 288, 1.0),
    ]
    assert (held.estimated, held.actual) == (638, 541)


def test_the_allowance_goes_on_the_estimate_where_the_log_holds_rest_too():
    held = compare(LINES, [("D06", 257.6), ("", 60)], allowance=0.12)

    (tails,) = (line for line in held.lines if line.code == "D06")
    # 230 x 1.12
    assert (tails.estimated, tails.ratio) == (pytest.approx(257.6), pytest.approx(1.0))
    assert held.estimated == pytest.approx(638 * 1.12)
    assert held.ratio == pytest.approx(317.6 / 714.56)


def test_time_on_no_operation_and_work_that_was_not_estimated_are_kept():
    held = compare(LINES, [("", 30), ("E15", 60)], allowance=0)

    assert [(line.code, line.name, line.actual, line.ratio) for line in held.lines[3:]] == [
        ("", "on no operation", 30, None),
        ("E15", "not estimated", 60, None),
    ]


def test_lines_of_one_operation_are_compared_together():
    other = labour_lines({Driver.DRAWER_TAILS: 10}, wood_factor=1.2)

    held = compare([*LINES, *other], [("D06", 260)], allowance=0)

    # 230 and 10 x 2.5 x 1.2
    assert [line.estimated for line in held.lines if line.code == "D06"] == [260]


def test_nothing_is_judged_before_anything_is_logged():
    held = compare(LINES, [], allowance=0)

    assert (held.actual, held.ratio) == (0, None)


@given(st.lists(st.tuples(st.sampled_from(["", "D06", "D08", "X"]), st.floats(0, 1000))), st.floats(0, 1))
def test_whatever_is_logged_is_in_the_sum(entries, allowance):
    held = compare(LINES, entries, allowance)

    assert held.actual == pytest.approx(sum(minutes for _, minutes in entries))  # float sum
    assert held.estimated == pytest.approx(638 * (1 + allowance))  # float sum


def test_less_than_no_time_is_refused():
    with pytest.raises(ValueError, match="nobody works less than no time"):
        compare(LINES, [("D06", -1)], allowance=0)
    with pytest.raises(ValueError, match="An allowance adds"):
        compare(LINES, [], allowance=-0.1)


def test_an_operation_is_earned_drawer_by_drawer_as_its_stage_is_reached():
    finished = finished_shares([drawer("joints"), drawer("fitted"), drawer("milled")], [case("joints")], {})

    assert (finished["D01"], finished["D06"], finished["D12"]) == (
        pytest.approx(2 / 3),
        pytest.approx(1 / 3),
        0,
    )
    assert (finished["C01"], finished["C06"]) == (1, 0)
    # tails 230 / 3, sockets 288 / 3, and the corners of the case
    assert earned_minutes(LINES, finished) == pytest.approx(230 / 3 + 96 + 120)


def test_stock_is_earned_for_the_drawers_that_are_milled_and_the_cases_that_are_paneled():
    five = [drawer("glued"), *[drawer_progress([])] * 4]
    stock = {"P04": 0.6, "P05": 0.75}

    finished = finished_shares(five, [case("glued")], stock)

    # one drawer of five: 0.6 / 5 and 0.4 of the case; 0.75 / 5 and 0.25 of it
    assert (finished["P04"], finished["P05"]) == (pytest.approx(0.52), pytest.approx(0.40))
    assert finished_shares([drawer("milled")], [case("panels")], stock)["P04"] == 1
    assert finished_shares(five, [case_progress([])], stock)["P04"] == pytest.approx(0.12)


def test_what_no_stage_finishes_earns_nothing():
    delivery = labour_lines({Driver.JOBS: 1})

    assert earned_minutes(delivery, finished_shares([drawer("in")], [case("inspected")], {})) == 0


@pytest.mark.parametrize(
    ("worked", "earned", "verdict"),
    [
        (66, 2981, Verdict.PASS),  # 59 % of the hours
        (67, 2981, Verdict.CAUTION),  # 60.2 % of the hours and 49.99 % of the work
        (67, 2982, Verdict.PASS),  # half of it done
        (140, 2000, Verdict.CAUTION),
    ],
)
def test_hours_that_run_ahead_of_the_work_are_warned_of(worked, earned, verdict):
    # worked dresser A: 111.31 h, 5,963 direct minutes
    finding = hours_warning(111.31, worked, direct=5963, earned=earned)

    assert finding.verdict is verdict
    assert (finding.remedy != "") is (verdict is Verdict.CAUTION)


def test_the_warning_names_both_shares():
    finding = hours_warning(100, 60, direct=5000, earned=2000)

    assert finding.message == "60% of the hours are gone (60:00 of 100:00 h) and 40% of the work is done."
    assert (finding.found, finding.needed) == (0.4, 0.5)


def test_a_job_without_an_estimate_is_not_warned_of():
    assert hours_warning(0, 3, direct=0, earned=0).verdict is Verdict.PASS
