"""The carcase dovetail: its edge tails, the walk between them, the rabbet for the back; that it closes."""

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from shapely import Polygon

from casewright.joinery.dividers import one_move_correction
from casewright.joinery.families.carcase.asked import BackRabbet, Carcase, usual_lap_of_a_case
from casewright.joinery.families.carcase.joint import carcase, rabbet_stop
from casewright.joinery.families.carcase.layout import (
    fewest_in_a_carcase,
    middle_tail,
    most_in_a_carcase,
    narrowest_board,
)
from casewright.joinery.families.carcase.shape import clipped
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from closing import faults
from joints import finding

SIXTEENTHS = st.integers(4, 20).map(lambda marks: marks / 16)
SMALL = st.integers(2, 16).map(lambda marks: marks / 16)


def joint(**changes):
    usual = {
        "width": 12.0,
        "tail_board": 0.75,
        "pin_board": 0.75,
        "lap": 0.25,
        "half_pin": 0.25,
        "back_half_pin": 0.25,
        "pin": 0.25,
        "tails": 6,
    }
    return carcase(Carcase(**{**usual, **changes}))


@st.composite
def joints(draw, fewest=1, most=12):
    """Any joint that can be laid out with so many tails, with and without a lap and a rabbet."""
    pin_board, tail_board = draw(SIXTEENTHS), draw(SIXTEENTHS)
    lap = draw(st.sampled_from([0.0, pin_board / 4, pin_board / 3]))
    depth = draw(st.floats(0.05, 0.95)) * min(tail_board, pin_board - lap)
    rabbet = draw(st.none() | st.floats(0.1, 2.0).map(lambda width: BackRabbet(width=width, depth=depth)))
    changes = {
        "width": draw(st.integers(6 * 16, 24 * 16)) / 16,
        "tail_board": tail_board,
        "pin_board": pin_board,
        "lap": lap,
        "half_pin": draw(SMALL),
        "back_half_pin": draw(SMALL),
        "pin": draw(SMALL) / 2,
        "tails": draw(st.integers(fewest, most)),
        "share": draw(st.sampled_from([0.5, 2 / 3, 0.8, 1.0])),
        "slope": draw(st.sampled_from([5, 6, 8])),
        "rabbet": rabbet,
    }
    try:
        return joint(**changes)
    except CannotBeLaidOut:
        assume(False)


@given(joints())
@example(joint(rabbet=BackRabbet(width=0.25, depth=0.375)))
@example(joint(rabbet=BackRabbet(width=0.5, depth=0.375)))
@example(joint(lap=0.0, rabbet=BackRabbet(width=2.5, depth=0.375)))
def test_every_carcase_dovetail_closes(found):
    assert faults(found.shape) == []


@given(joints())
def test_tails_and_pins_fill_the_width_without_drift(found):
    asked, layout = found.given, found.layout

    assert len(layout.tails) == asked.tails
    assert layout.tails[0].lower_end == pytest.approx(asked.half_pin)
    assert asked.width - layout.tails[-1].upper_end == pytest.approx(asked.back_half_pin)
    gaps = [high.lower_end - low.upper_end for low, high in zip(layout.tails, layout.tails[1:], strict=False)]
    assert gaps == pytest.approx([asked.pin] * (asked.tails - 1))
    widths = [tail.upper_end - tail.lower_end for tail in layout.tails]
    assert widths[1:-1] == pytest.approx([layout.middle.tail_width] * (asked.tails - 2))
    assert widths[0] == pytest.approx(layout.share * layout.middle.tail_width)
    assert layout.share == (asked.share if asked.tails > 2 else 1.0)
    assert widths[-1] == pytest.approx(widths[0])


@given(joints(most=2))
def test_the_walk_of_an_even_row_begins_at_its_half_pin_and_overshoots_by_the_pin(found):
    assert found.layout.is_even
    tails, stepping = found.layout.tails, found.stepping

    landed = found.given.half_pin + stepping.steps * stepping.setting

    assert landed - tails[-1].upper_end == pytest.approx(stepping.overshoot) == pytest.approx(found.given.pin)


@given(joints(fewest=3))
def test_the_walk_between_the_edge_tails_lands_on_the_edge_of_the_other(found):
    assert not found.layout.is_even
    tails, stepping = found.layout.tails, found.stepping
    first_mark = tails[0].upper_end + found.given.pin
    other_mark = tails[-1].lower_end - found.given.pin

    landed = first_mark + stepping.steps * stepping.setting

    assert landed == pytest.approx(tails[-1].lower_end)
    assert landed - other_mark == pytest.approx(stepping.overshoot)
    assert [first_mark + step * stepping.setting for step in range(stepping.steps)] == pytest.approx(
        [tail.lower_end for tail in tails[1:-1]]
    )


@given(joints(), st.floats(-0.01, 0.01))
def test_one_move_sets_the_dividers_right_as_in_an_even_row(found, error):
    stepping = found.stepping
    landed = stepping.overshoot + stepping.steps * error

    assert one_move_correction(landed, stepping.overshoot, stepping.steps) == pytest.approx(-error)


@given(joints())
def test_tails_all_alike_are_an_even_row(found):
    asked = found.given
    alike = middle_tail(asked.width - asked.half_pin - asked.back_half_pin, asked.pin, asked.tails, 1.0)

    assert asked.tails * alike + (asked.tails - 1) * asked.pin == pytest.approx(
        asked.width - asked.half_pin - asked.back_half_pin
    )


@given(st.floats(4, 30), st.floats(0.05, 1.0), st.floats(0.02, 0.3), st.floats(0.4, 1.0), st.floats(0.2, 1.5))
def test_the_most_tails_are_the_last_whose_edge_tails_hold(room, pin, narrowing, share, least):
    most = most_in_a_carcase(room, pin, narrowing, share, least)
    assume(most >= 3)

    def edge_neck(count):
        return share * middle_tail(room, pin, count, share) - 2 * narrowing

    assert edge_neck(most) >= least - 1e-6
    assert edge_neck(most + 1) < least + 1e-6


@given(st.floats(4, 30), st.floats(0.05, 1.0), st.floats(0.4, 1.0), st.floats(0.5, 3.0))
def test_the_fewest_tails_are_the_first_that_are_narrow_enough(room, pin, share, widest):
    fewest = fewest_in_a_carcase(room, pin, share, widest)

    assert middle_tail(room, pin, fewest, share) <= widest + 1e-6
    assert fewest == 3 or middle_tail(room, pin, fewest - 1, share) > widest - 1e-6


@given(st.floats(0.2, 2.0), st.floats(0.05, 1.0), st.floats(0.02, 0.3), st.floats(0.4, 1.0))
def test_the_narrowest_board_takes_three_tails_and_no_narrower_one_does(half_pins, pin, narrowing, share):
    board = narrowest_board(half_pins, pin, narrowing, share, 0.5)

    assert most_in_a_carcase(board - half_pins, pin, narrowing, share, 0.5) == 3
    assert most_in_a_carcase(board - half_pins - 0.01, pin, narrowing, share, 0.5) == 2


@pytest.mark.parametrize(
    ("rule", "passes", "fails", "verdict", "remedy"),
    [
        ("JC5", {"tails": 8}, {"tails": 9}, Verdict.STOP, "Use 8 tails at most."),
        ("JC9", {"tails": 6}, {"tails": 5}, Verdict.CAUTION, "Use 6 tails or more."),
        ("JC6", {"pin": 0.0625}, {"pin": 0.046875}, Verdict.STOP, "Make the pins 1/16 in or wider."),
        (
            "JC7",
            {"half_pin": 0.125},
            {"half_pin": 0.109375},
            Verdict.CAUTION,
            "Make the half pins 1/8 in or wider.",
        ),
        (
            "edges held",
            {"back_half_pin": 0.75},
            {"back_half_pin": 0.8125},
            Verdict.CAUTION,
            "Make the half pin 3/4 in or less, and stop the rabbet if it is wider.",
        ),
        (
            "edge tails",
            {"share": 0.85},
            {"share": 0.9},
            Verdict.CAUTION,
            "Give a share of 0.67, for edge tails of 1-9/32 in.",
        ),
        (
            "JC1",
            {"lap": 0.125},
            {"lap": 0.109375},
            Verdict.CAUTION,
            "Make the lap 1/4 in or more: the pin board thicker, or the tails shorter.",
        ),
        (
            "JC2",
            {"lap": 0.25},
            {"lap": 0.21875},
            Verdict.CAUTION,
            "Make the lap 1/4 in or more: the pin board thicker, or the tails shorter. "
            "Or chop against a backing block.",
        ),
        (
            "rabbet depth",
            {"rabbet": BackRabbet(width=0.25, depth=0.375)},
            {"rabbet": BackRabbet(width=0.25, depth=0.4375)},
            Verdict.CAUTION,
            "Make it 3/8 in deep.",
        ),
        (
            "rabbet in a pin",
            {"rabbet": BackRabbet(width=0.25, depth=0.25)},
            {"rabbet": BackRabbet(width=0.5, depth=0.25)},
            Verdict.CAUTION,
            "Make that half pin 1/2 in, or stop the rabbet 1/4 in from the end of the tail board and 1/2 in "
            "from that of the pin board.",
        ),
    ],
)
def test_each_limit_has_two_sides_and_the_far_one_says_what_would_pass(rule, passes, fails, verdict, remedy):
    good, bad = finding(joint(**passes), rule), finding(joint(**fails), rule)

    assert (good.verdict, str(good.remedy)) == (Verdict.PASS, "")
    assert (bad.verdict, str(bad.remedy)) == (verdict, remedy)


def test_what_a_remedy_names_passes():
    assert finding(joint(lap=1 / 4), "JC2").verdict is Verdict.PASS
    assert finding(joint(lap=3 / 64), "JC1").verdict is Verdict.STOP


def test_through_tails_have_no_lap_to_be_checked_and_no_trap_in_the_gauge():
    found = joint(lap=0.0)

    assert not {"JC1", "JC2"} & {each.rule for each in found.findings}
    gauge = next(each for each in found.settings if each.name == "gauge_1")
    assert (gauge.value, gauge.wrong) == (0.75, None)
    assert next(each for each in joint().settings if each.name == "gauge_1").wrong == 0.75


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"tails": 0}, r"0 tails hold nothing; give 1 to 25"),
        (
            {"tails": 2, "width": 1.0},
            r"no width for 2 tails between half pins of 1/2 together; make it 1-1/32",
        ),
        ({"tails": 40}, r"no width left at the baseline for the edge tails of 40; at most 25 tails"),
        ({"width": 1.4}, r"it needs 1-1/2 in\. Make the half pins"),
        ({"lap": 0.75}, r"A lap of 3/4 in leaves nothing of a pin board 3/4 thick; 1/4 in is usual"),
        ({"share": 1.5}, r"A share of 1\.5 makes no narrower edge tails; 0\.67 is usual"),
        ({"rabbet": BackRabbet(width=0.5, depth=0.5)}, r"cuts through the tails; it is to be less than 1/2"),
        ({"rabbet": BackRabbet(width=12, depth=0.25)}, r"takes all of a board of 12 in"),
        ({"outside": 1.5}, r"Two pin boards alone are 1-1/2 in long over both"),
    ],
)
def test_what_cannot_be_laid_out_is_refused_with_what_would_work(changes, sentence):
    with pytest.raises(CannotBeLaidOut, match=sentence):
        joint(**changes)


@pytest.mark.parametrize("tails", [1, 2])
def test_the_rail_of_a_case_has_an_even_row_of_one_tail_or_two(tails):
    """Worked by hand: 3 in less half pins of 3/8 leaves 2-1/4, less a pin of 1/4 between two tails."""
    found = joint(width=3.0, tails=tails, half_pin=0.375, back_half_pin=0.375)

    wide = (2.25 - (tails - 1) * 0.25) / tails
    assert [tail.upper_end - tail.lower_end for tail in found.layout.tails] == pytest.approx([wide] * tails)
    assert found.layout.tails[0].lower_end == pytest.approx(0.375)
    assert found.layout.tails[-1].upper_end == pytest.approx(2.625)
    assert found.stepping.setting == pytest.approx(wide + 0.25)
    assert "edge_tail" not in {each.name for each in found.settings}
    assert "edge tails" not in {each.rule for each in found.findings}


def test_a_narrow_rail_gets_what_tails_it_holds():
    rail = solve("carcase", {"width": 2.5, "tail_board": 0.75})

    assert [each.value for each in rail.chosen if each.name == "tails"] == [2]
    with pytest.raises(CannotBeLaidOut, match="no room for a tail between its half pins; it needs 1-3/8 in"):
        solve("carcase", {"width": 1.2, "tail_board": 0.75})


def test_the_board_that_a_refusal_names_is_wide_enough():
    assert joint(width=1.5, tails=3).layout.edge_neck > 0


def test_the_number_of_tails_that_a_refusal_names_is_laid_out():
    assert joint(tails=25).layout.edge_neck > 1 / 64
    with pytest.raises(CannotBeLaidOut, match="at most 25"):
        joint(tails=28)


def test_a_rabbet_needs_both_its_sizes():
    with pytest.raises(ValueError, match="needs both its width"):
        solve("carcase", {"width": 12.0, "tail_board": 0.75, "rabbet_width": 0.5})


def test_a_board_wide_enough_for_narrower_edge_tails_has_three():
    assert len(solve("carcase", {"width": 4.0, "tail_board": 0.75}).joint.layout.tails) == 2
    assert len(solve("carcase", {"width": 4.0625, "tail_board": 0.75}).joint.layout.tails) == 3
    assert finding(solve("carcase", {"width": 4.0625, "tail_board": 0.75}).joint, "JC5").verdict == "pass"


def test_the_half_pin_at_the_back_is_chosen_as_wide_as_the_rabbet_that_lies_in_it():
    values = {"width": 19.75, "tail_board": 0.75, "rabbet_width": 0.5, "rabbet_depth": 0.375}

    found = solve("carcase", values)

    assert {each.name: each.value for each in found.chosen} == {
        "pin_board": 0.75,
        "lap": 0.25,
        "half_pin": 0.25,
        "back_half_pin": 0.5,
        "pin": 0.25,
        "share": pytest.approx(2 / 3),
        "slope": 8,
        "tails": 10,
    }
    assert finding(found.joint, "rabbet in a pin").verdict is Verdict.PASS
    assert found.joint.rabbet_stop_pins == 0.375
    assert found.joint.rabbet_stop_tails is None


def test_a_rabbet_wider_than_the_half_pin_is_stopped_in_both_boards():
    found = joint(rabbet=BackRabbet(width=0.5, depth=0.25))

    stops = {each.name: each.value for each in found.settings if each.name.startswith("rabbet_stop")}
    assert stops == {"rabbet_stop_tails": 0.25, "rabbet_stop_pins": 0.5}
    assert rabbet_stop(0.75, 0.25) == 0.5


def test_the_length_of_the_tail_board_is_given_or_what_is_taken_off():
    first = joint(outside=39.5).settings[0]
    other = joint().settings[0]

    assert (first.label, first.value) == ("Tail board length", 39.0)
    assert (other.label, other.value) == ("Taken off for the tail board", 0.5)


def test_a_third_of_the_board_is_left_for_the_lap():
    assert [usual_lap_of_a_case(board) for board in (0.75, 0.875, 1.0, 0.125)] == [
        0.25,
        0.25,
        0.3125,
        0.0625,
    ]


def test_a_metric_shop_reads_millimetres():
    words = in_unit(finding(joint(), "JC5").message, LengthUnit.MILLIMETRE)

    assert "1/" not in words
    assert " mm " in words


def test_a_corner_is_cut_off_a_square_and_nothing_is_left_beyond_it():
    square = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))

    assert clipped(square, 0, 0.25, below=True) == ((0.0, 0.0), (0.25, 0.0), (0.25, 1.0), (0.0, 1.0))
    assert clipped(square, 1, 0.25, below=False) == ((1.0, 0.25), (1.0, 1.0), (0.0, 1.0), (0.0, 0.25))
    assert clipped(square, 0, 2.0, below=False) == ()
    assert clipped(square, 0, 1.0, below=False) == ()


@given(joints())
def test_the_template_cuts_away_what_lies_between_the_tails(found):
    tails, pins = found.shape.strips

    depth, width = found.gauge_1, found.given.width
    area = sum(Polygon(outline).area for outline in tails.waste)
    kept = sum(
        (tail.upper_end - tail.lower_end + tail.upper_base - tail.lower_base) / 2 * depth
        for tail in found.layout.tails
    )
    assert area + kept == pytest.approx(depth * width)
    assert (tails.length, pins.length) == (depth, found.gauge_2)
