"""The order of chopping: it follows from the lap, from the pins and from the chisels on the rack."""

from dataclasses import replace

import pytest

from casewright.joinery.chisels import RACK
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.families.through.joint import Through, through

FRONT = HalfBlind(
    height=8.40625, front=0.8125, lap=0.1875, side=0.5, rabbet=0.0625, half_pin=0.125, pin=0.125, tails=5
)
"""The front of worked joint J1: sockets 5/8 deep, 1-3/8 wide at the mouth and 1-17/32 behind."""
BACK = Through(height=7.65625, side=0.5, back=0.5, half_pin=0.1875, pin=0.125, tails=5)
"""The back of worked joint J3."""


def said(joint) -> list[str]:
    """The advice of a joint, in inches."""
    return [str(line) for line in joint.advice]


def place(lines: list[str], words: str) -> int:
    """Which line has some words, counted from 0."""
    return next(number for number, line in enumerate(lines) if words in line)


def test_the_pins_are_sawn_before_the_waste_is_chopped_and_the_line_is_cut_last():
    lines = said(half_blind(FRONT))

    order = [
        "Saw the pins",
        "sacrificial block",
        "half the depth",
        "Then the other half",
        "Make the last cut",
    ]
    places = [place(lines, words) for words in order]
    assert places == sorted(places)
    assert place(lines, "Never lever") > places[-1]


def test_half_the_depth_is_half_the_first_gauge_and_the_chisel_is_the_racks():
    lines = said(half_blind(FRONT))

    assert lines[place(lines, "half the depth")] == (
        "First to half the depth, 5/16 in: chop across the grain with the 1-1/4 in chisel, 1/16 in from the "
        "gauge line, bevel to the waste, and split the slice off from the end grain."
    )


@pytest.mark.parametrize(
    ("lap", "slice_", "spare"),
    [
        (0.1875, "in slices of 1/16 in;", False),  # index 21
        (0.140625, "in slices of 1/32 in;", True),  # index 38
    ],
)
def test_before_a_weak_lap_the_slices_are_thinner_and_a_spare_blank_is_milled(lap, slice_, spare):
    lines = said(half_blind(replace(FRONT, lap=lap)))

    assert slice_ in lines[place(lines, "Then the other half")]
    assert lines[0].startswith("Mill one spare front blank") is spare


def test_a_front_that_cannot_be_replaced_has_a_spare_blank_first_of_all():
    lines = said(half_blind(replace(FRONT, can_be_replaced=False)))

    assert lines[0] == (
        "Mill one spare front blank in sequence with the others: this front cannot be replaced."
    )


@pytest.mark.parametrize(
    ("pin", "words"),
    [
        (
            3 / 32,
            "with a fret saw, for the pins are only 3/32 in wide; pare to the baseline with the 1/4 in",
        ),
        (1 / 8, "the 1/4 in chisel works at the baseline only; from the end the gap of 1/8 in is too narrow"),
    ],
)
def test_between_the_tails_the_tool_follows_from_the_pin(pin, words):
    lines = said(half_blind(replace(FRONT, pin=pin)))

    assert any(words in line for line in lines)


def test_a_chisel_that_enters_from_the_end_needs_no_word():
    # pins of 1/4 are 13/32 at the baseline: on this rack 1/4 serves both
    lines = said(half_blind(replace(FRONT, pin=1 / 4, rack=replace(RACK, chisels=(1 / 4,)))))

    assert not any("Between the tails" in line for line in lines)


def test_a_chisel_that_the_rack_lacks_is_named_by_its_width():
    lines = said(half_blind(replace(FRONT, rack=replace(RACK, chisels=(2.0,)))))

    assert "with a chisel of 1-3/8 in" in lines[place(lines, "half the depth")]
    assert not any("Clear the corners" in line for line in lines)


def test_a_through_joint_is_chopped_half_from_each_face_and_its_baseline_last():
    lines = said(through(BACK))

    half = lines[place(lines, "half from each face")]
    assert half.startswith(
        "Chop half from each face: the pins to 1/4 in with the 1 in chisel, the tails to 1/4 in with the "
    )
    assert place(lines, "Saw the pins") < place(lines, "half from each face")
    assert lines[-1].startswith("Make the last cut on the baseline")
