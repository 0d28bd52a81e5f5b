"""The half-blind joint: measured beats nominal, and the card says what to set in the order of work."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.gauges import second_gauge
from casewright.joinery.groove import Groove
from casewright.measure.findings import Verdict, worst
from casewright.measure.ledger import Ledger

DRESSER = HalfBlind(
    height=8.40625,
    front=0.8125,
    lap=0.1875,
    side=0.5,
    rabbet=0.0625,
    half_pin=0.125,
    pin=0.125,
    tails=5,
)
"""The front of worked joint J1, without its groove."""


def settings(joint: HalfBlind) -> dict[str, float]:
    """What the card prints, by name."""
    return {setting.name: setting.value for setting in half_blind(joint).settings}


def test_a_measured_size_equal_to_the_designed_one_changes_nothing():
    designed = half_blind(DRESSER)

    measured = half_blind(
        replace(DRESSER, locked_gauge_1=0.625, measured_sides=(("1L", 0.4375), ("1R", 0.4375)))
    )

    assert (measured.gauge_1, measured.gauge_2, measured.lap) == (0.625, 0.4375, 0.1875)
    assert measured.layout == designed.layout
    assert measured.lap_index == designed.lap_index


@given(st.floats(0.7, 1.2))
def test_a_locked_gauge_leaves_what_it_leaves_of_a_measured_front(front: float) -> None:
    joint = half_blind(replace(DRESSER, front=front, locked_gauge_1=0.625))

    # 5/8 and the front are close in size, so their difference is exact
    assert joint.lap == front - 0.625
    assert joint.side_shortening == joint.lap
    assert joint.gauge_1 == 0.625


def test_a_locked_gauge_that_leaves_too_little_lap_is_found_out():
    joint = half_blind(replace(DRESSER, front=0.703125, locked_gauge_1=0.625))

    # 45/64 - 40/64 = 5/64
    assert joint.findings[0].found == 0.078125
    assert worst(joint.findings) is Verdict.STOP


def test_measured_sides_take_the_place_of_the_nominal_one():
    joint = half_blind(replace(DRESSER, measured_sides=(("1L", 0.453125), ("1R", 0.4609375))))

    # 29/64 and 59/128 agree within 1/64; the thinner sets the gauge
    assert joint.gauge_2 == 0.453125


def test_the_gauge_for_most_of_the_sides_is_the_joints_own():
    sides = (("1L", 0.40625), ("1R", 0.4375), ("2L", 0.4375))

    joint = half_blind(replace(DRESSER, measured_sides=sides))

    assert joint.gauge_2 == 0.4375
    assert settings(replace(DRESSER, measured_sides=sides))["gauge_2_2"] == 0.4375


def test_a_side_that_stands_proud_has_the_shallower_sockets():
    assert half_blind(replace(DRESSER, proud=1 / 64)).gauge_2 == 27 / 64


def test_without_a_rabbet_the_side_itself_sets_the_gauge():
    joint = half_blind(replace(DRESSER, rabbet=0.0))

    assert (joint.gauge_2, joint.wrong_gauge_2, joint.wrong_gauge_text) == (0.5, None, "")
    assert joint.rabbet_width == 0.0


def test_the_card_lists_the_work_in_its_order():
    assert list(settings(DRESSER)) == [
        "gauge_1",
        "rabbet_width",
        "rabbet_depth",
        "half_pin",
        "dividers",
        "steps",
        "overshoot",
        "correction",
        "slope",
        "bevel",
        "gauge_2",
        "tail_chisel",
        "socket_chisel",
        "lap",
        "side_shortening",
    ]


def test_the_card_strikes_the_wrong_gauge_out():
    gauge = next(setting for setting in half_blind(DRESSER).settings if setting.name == "gauge_2")

    assert (gauge.value, gauge.wrong) == (0.4375, 0.5)
    assert gauge.note.startswith("left after the rabbet")


def test_a_higher_front_has_its_upper_half_pin_on_the_card():
    assert settings(replace(DRESSER, front_excess=1 / 16))["top_half_pin"] == 3 / 16


def test_the_card_names_the_sides_that_each_gauge_serves():
    sides = (("1L", 0.4375), ("1R", 0.46875))

    notes = [str(setting.note) for setting in half_blind(replace(DRESSER, measured_sides=sides)).settings]

    assert [note.rsplit(" of ", 1)[1] for note in notes if " of 1" in note] == ["1L", "1R"]


def test_a_chisel_that_the_rack_lacks_is_not_on_the_card():
    bare = replace(DRESSER, rack=replace(DRESSER.rack, chisels=()))

    assert not {"tail_chisel", "socket_chisel"} & set(settings(bare))


def test_a_safe_lap_still_has_its_precautions():
    advice = half_blind(DRESSER).advice

    assert not any("spare" in str(line) for line in advice)
    assert [str(line) for line in advice if "lap" in str(line)][-1].startswith("Notch the clamping cauls")


def test_every_gauge_is_in_the_ledger_with_its_rule():
    ledger = Ledger()

    half_blind(replace(DRESSER, groove=Groove(height=0.375, width=0.25, depth=0.25)), ledger.under("A-R5"))

    gauge = ledger["A-R5.gauge_2"]
    assert gauge.rule is second_gauge
    assert gauge.inputs == {"side": 0.5, "rabbet": 0.0625, "proud": 0.0}
    assert {"A-R5.gauge_1", "A-R5.lap_index", "A-R5.divider_setting", "A-R5.groove_move"} <= {
        working.figure for working in ledger
    }


def test_keeping_the_working_changes_no_figure():
    kept = half_blind(DRESSER, Ledger())

    assert kept == half_blind(DRESSER)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"height": 0.0}, "The height cannot be 0 in; give a size above 0."),
        ({"front": float("nan")}, "The front cannot be nan in; give a size above 0."),
        ({"side": -0.5}, "The side cannot be -0.5 in; give a size above 0."),
        ({"rabbet": -0.1}, "The rabbet cannot be -0.1 in; give 0 when there is none."),
        ({"front_excess": -0.1}, "The excess of the front cannot be -0.1 in"),
        ({"lap": 0.8125}, "The lap of 13/16 in leaves nothing of the front; make it 3/16."),
        ({"front": 0.125, "lap": 0.25}, "The lap of 1/4 in leaves nothing of the front; make it 1/32."),
        ({"rabbet": 0.5}, "The rabbet of 1/2 in leaves nothing of the side; make it 1/16."),
        ({"locked_gauge_1": 0.8125}, "leaves no lap in a front of 13/16; set it to 5/8."),
        ({"locked_gauge_1": -0.1}, "Gauge 1 is locked at -0.1 in"),
        ({"locked_gauge_1": 0.875}, "Gauge 1 is locked at 7/8 in"),
        ({"locked_gauge_1": 0.0}, "Gauge 1 is locked at 0 in"),
        ({"rabbet": 0.3, "proud": 0.25}, "leaves nothing of the side"),
        ({"measured_sides": (("1L", 0.0),)}, "The thickness of side 1L cannot be 0 in"),
    ],
)
def test_a_joint_that_cannot_be_meant_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(ValueError, match=sentence):
        replace(DRESSER, **changes)


def test_without_a_rabbet_the_card_says_nothing_of_one():
    notes = [str(setting.note) for setting in half_blind(replace(DRESSER, rabbet=0.0)).settings]

    assert [note for note in notes if "rabbet" in note] == []
