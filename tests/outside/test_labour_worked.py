"""The hours and dates of worked dresser A, operation by operation, and the printed sums on batches."""

import pytest

from casewright.labour.batch import batch_factor, batch_minutes, steady_saving_minutes
from casewright.labour.drivers import Driver
from casewright.labour.figures import house_figures
from casewright.labour.operations import Group
from casewright.labour.standards import direct_minutes, house_standards, labour_lines, with_allowance
from casewright.labour.waits import bench_hours, promise_weeks, usual_job_waits, waiting_weeks, waits

DRESSER_A = {
    Driver.UNIT: 1,
    Driver.ROUGH_FEET: 110,
    Driver.BOARDS: 108,
    Driver.PARTS: 77,
    Driver.GLUE_LINES: 31,
    Driver.PANELS: 14,
    Driver.PANEL_SQFT: 44,
    Driver.CASE_CORNERS: 6,
    Driver.CASE_TAILS: 26,
    Driver.HOUSED_ENDS: 18,
    Driver.FRAME_TENONS: 24,
    Driver.CASES: 1,
    Driver.BACK_BOARDS: 7,
    Driver.PLINTH_CORNERS: 4,
    Driver.TOPS: 1,
    Driver.RUNNERS: 12,
    Driver.DRAWERS: 6,
    Driver.FITTED_DRAWERS: 6,
    Driver.STOPPED_DRAWERS: 6,
    Driver.SIDES: 12,
    Driver.GROOVED_PIECES: 18,
    Driver.RABBETED_ENDS: 12,
    Driver.DOVETAIL_JOINTS: 24,
    Driver.DRAWER_TAILS: 92,
    Driver.SOCKET_TAILS: 48,
    Driver.THROUGH_TAILS: 44,
    Driver.BOTTOMS: 10,
    Driver.MUNTINS: 4,
    Driver.PULLS: 10,
    Driver.SHOW_SQFT: 30,
    Driver.INSIDE_SQFT: 40,
    Driver.SHOW_COAT_SQFT: 120,
    Driver.INSIDE_COAT_SQFT: 40,
    Driver.RUB_SQFT: 90,
    Driver.COATS: 5,
    Driver.JOBS: 1,
}

# worked dresser A, hand dovetails and machine milling: operation and the minutes printed beside it
PRINTED = [
    ("P01", 90),
    ("P02", 132),
    ("P03", 270),
    ("P04", 648),
    ("P05", 308),
    ("P06", 186),
    ("P06b", 140),
    ("P07", 176),
    ("C01", 120),
    ("C02", 364),
    ("C03", 270),
    ("C04", 192),
    ("C05", 60),
    ("C06", 90),
    ("C07", 56),
    ("C08", 120),
    ("C09", 45),
    ("C10", 96),
    ("D01", 96),
    ("D02", 72),
    ("D03", 54),
    ("D04", 24),
    ("D05", 96),
    ("D06", 230),
    ("D07", 72),
    ("D08", 288),
    ("D09", 132),
    ("D10", 36),
    ("D11", 60),
    ("D12", 84),
    ("D13", 150),
    ("D14", 200),
    ("D15", 100),
    ("D16", 36),
    ("D17", 80),
    ("Z01", 120),
    ("Z02", 80),
    ("Z03", 120),
    ("Z04", 40),
    ("Z05", 45),
    ("Z06", 100),
    ("Y01", 240),
    ("Y02", 45),
]


@pytest.fixture(scope="module")
def lines():
    return labour_lines(DRESSER_A)


@pytest.mark.parametrize(("code", "minutes"), PRINTED)
def test_each_operation_of_the_dresser_takes_what_is_printed(lines, code, minutes):
    taken = {line.code: line.minutes for line in lines}

    assert taken[code] == pytest.approx(minutes, abs=1e-9)


def test_the_dresser_has_no_operation_beyond_those_printed(lines):
    assert [line.code for line in lines] == [code for code, _ in PRINTED]


def test_the_dresser_takes_5963_minutes_and_111_31_hours(lines):
    minutes = direct_minutes(lines)

    assert minutes == pytest.approx(5963, abs=1e-6)  # worked dresser A
    assert with_allowance(minutes, house_standards().allowance) == 111.31


def test_a_drawer_of_the_dresser_takes_five_hours_before_finish(lines):
    minutes = direct_minutes(lines, Group.DRAWERS)

    assert minutes == 1810
    assert with_allowance(minutes, 0.12) / 6 == pytest.approx(5.6, abs=0.05)  # printed to one decimal


@pytest.mark.parametrize(
    ("count", "factor", "source"),
    [
        (6, 0.923, "printed average factors at a learning rate of 95 %"),
        (12, 0.885, "printed average factors at a learning rate of 95 %"),
        (24, 0.846, "printed average factors at a learning rate of 95 %"),
    ],
)
def test_batch_factors_agree_with_print(count, factor, source):
    assert batch_factor(count, 0.95) == pytest.approx(factor, abs=0.0005), source


def test_twenty_four_joints_at_thirty_minutes_for_the_first_take_609():
    assert batch_minutes(30, 24, 0.95) == pytest.approx(609, abs=0.5)  # printed to the minute


def test_six_at_two_hours_take_630_minutes_by_the_flat_rule():
    figures = house_figures()

    # R. Jones, How to Price the Job (2009): 5 per cent less for each repeat, 30 at most
    assert steady_saving_minutes(120, 6, figures.steady_saving, figures.greatest_saving) == 630


@pytest.mark.parametrize(
    ("factor", "weeks", "source"),
    [
        (1.0965, 14.9, "worked dresser A, median of the shop's own ratios"),
        (1.2091, 15.4, "worked dresser A, the date that is promised"),
    ],
)
def test_the_dressers_date_counts_the_waits_and_the_queue(factor, weeks, source):
    figures = house_figures()
    bench = bench_hours(figures.paid_week, figures.bench_share)

    result = promise_weeks(111.31, factor, bench, waiting_weeks(usual_job_waits()), 6)

    assert result == pytest.approx(weeks, abs=0.05), source  # printed to one decimal


@pytest.mark.parametrize(
    ("key", "least", "most", "source"),
    [
        ("pva_open", 10, 20, "leevalley.com: open time 10 to 20 minutes"),
        ("pva_clamped", 30, 90, "leevalley.com: in clamps 30 to 90 minutes"),
        ("pva_strength", 1440, 1440, "leevalley.com: full strength in 24 hours"),
        ("milled_rest", 3 * 1440, 7 * 1440, "common practice: 3 to 7 days"),
        ("acclimatise", 7 * 1440, 21 * 1440, "common practice: 1 to 3 weeks"),
        ("varnish_cure", 7 * 1440, 14 * 1440, "common practice: 7 to 14 days"),
    ],
)
def test_waits_are_as_long_as_printed(key, least, most, source):
    held = {wait.key: (wait.least, wait.most) for wait in waits()}

    assert held[key] == (least, most), source
