"""Joints drawn to scale, against the joints that are worked out in print."""

from functools import cache

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from test_drawing_reader import Patch, Read

from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.joint import half_blind
from casewright.joinery.families.through.joint import Through, through
from casewright.joinery.groove import Groove
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.lengths import LengthUnit

J1 = HalfBlind(
    height=8 + 13 / 32,
    front=13 / 16,
    lap=3 / 16,
    side=1 / 2,
    rabbet=1 / 16,
    half_pin=1 / 8,
    pin=1 / 8,
    tails=5,
    groove=Groove(height=3 / 8, width=1 / 4, depth=1 / 4),
    mark="A-R5-1",
)
J3 = Through(
    height=7 + 21 / 32,
    side=1 / 2,
    back=1 / 2,
    half_pin=3 / 16,
    pin=1 / 8,
    tails=5,
    lower_edge_offset=5 / 8,
    mark="A-R5-1",
)


@cache
def front():
    """Worked joint J1, drawn."""
    return Read(half_blind_drawing(half_blind(J1)).svg())


@cache
def back():
    """Worked joint J3, drawn."""
    return Read(through_drawing(through(J3)).svg())


@pytest.mark.parametrize(
    "lettered",
    [
        "gauge 1: 5/8",
        "gauge 2: 7/16, not 1/2",
        "lap 3/16",
        "front 13/16",
        "side 1/2",
        "rabbet 1/16",
        "half pin 1/8",
        "pin 1/8",
        "tail 1-17/32",
        "dividers 1-21/32, 5 steps",
    ],
)
def test_the_front_joint_is_lettered_with_its_settings(lettered):
    assert lettered in front().words


# Worked joint J1: lower and upper edge of each tail at the end, then at the baseline.
@pytest.mark.parametrize(
    "position",
    [
        *("1/8", "1-21/32", "1-25/32", "3-5/16", "3-7/16", "4-31/32", "5-3/32", "6-5/8", "6-3/4", "8-9/32"),
        *("13/64", "1-37/64", "1-55/64", "3-15/64", "3-33/64"),
        *("4-57/64", "5-11/64", "6-35/64", "6-53/64", "8-13/64"),
    ],
)
def test_the_front_joint_gives_every_position_from_the_bottom_edge(position):
    assert position in [words for words, _ in front().sizes]


@pytest.mark.parametrize(
    ("number", "lower_end", "upper_end", "lower_base", "upper_base"),
    [  # Worked joint J1, unrounded: flare 5/64, tails of 1-17/32 every 1-21/32.
        (1, 0.125, 1.65625, 0.203125, 1.578125),
        (3, 3.4375, 4.96875, 3.515625, 4.890625),
        (5, 6.75, 8.28125, 6.828125, 8.203125),
    ],
)
def test_tails_are_drawn_where_they_are_laid_out(number, lower_end, upper_end, lower_base, upper_base):
    corners, edge = front().outlines[f"tail-{number}"], lower_edge(front())
    end = min(x for x, _ in corners)

    # From the end round by the neck; coordinates are written to a hundred-thousandth of an inch.
    assert [x - end for x, _ in corners] == pytest.approx([0, 0.625, 0.625, 0], abs=1e-5)
    heights = [lower_end, lower_base, upper_base, upper_end]
    assert [y - edge for _, y in corners] == pytest.approx(heights, abs=2e-5)


def lower_edge(found, stands=0.0):
    """Where the bottom edge of the side lies: the lowest pin stands so far above it."""
    return min(y for _, y in found.outlines["pin-1"]) - stands


def test_sockets_are_those_of_the_tails():
    pins = [front().outlines[f"pin-{number}"] for number in range(1, 7)]
    at_the_lap = [sorted(y - lower_edge(front()) for x, y in pin if x == min(pin)[0]) for pin in pins]

    # Each socket is as wide at the lap as its tail at the end, and the tails fill it down to the baseline.
    edges = [edge for pin in at_the_lap for edge in pin]
    assert edges[1:5] == pytest.approx([0.125, 1.65625, 1.78125, 3.3125], abs=2e-5)
    assert max(pins[0])[0] - min(pins[0])[0] == pytest.approx(0.625, abs=1e-5)


def test_the_second_gauge_is_not_the_thickness_of_the_side():
    found = dict(front().sizes)

    assert found["gauge 2: 7/16, not 1/2"] == 0.4375


def test_without_a_rabbet_there_is_no_wrong_setting_to_name():
    joint = half_blind(
        HalfBlind(height=4, front=0.75, lap=0.1875, side=0.375, rabbet=0, half_pin=0.125, pin=0.125, tails=3)
    )
    words = Read(half_blind_drawing(joint).svg()).words

    assert "gauge 2: 3/8" in words
    assert not [word for word in words if "rabbet" in word or "not" in word]


def test_a_front_higher_than_its_side_has_a_larger_pin_at_the_top():
    joint = half_blind(
        HalfBlind(
            height=4,
            front=0.75,
            lap=0.1875,
            side=0.375,
            rabbet=0.03125,
            half_pin=0.125,
            pin=0.125,
            tails=3,
            front_excess=0.25,
        )
    )
    found = Read(half_blind_drawing(joint).svg())

    assert {"half pin 1/8", "half pin 3/8"} <= set(found.words)
    top = max(y for _, y in found.outlines["pin-4"])
    assert top - lower_edge(found) == pytest.approx(4.25, abs=2e-5)


def test_a_side_that_stands_proud_is_drawn_proud():
    joint = half_blind(
        HalfBlind(
            height=4,
            front=0.75,
            lap=0.1875,
            side=0.375,
            rabbet=0.03125,
            half_pin=0.125,
            pin=0.125,
            tails=3,
            proud=0.015625,
        )
    )

    # What enters the socket: 3/8 less 1/32 less 1/64.
    assert "gauge 2: 21/64, not 3/8" in Read(half_blind_drawing(joint).svg()).words


@pytest.mark.parametrize(
    "lettered",
    [
        "gauge, side: 1/2",
        "gauge, back: 1/2",
        "offset 5/8",
        "half pin 3/16",
        "pin 1/8",
        "dividers ≈1-31/64, 5 steps",
        "back 1/2",
        "side 1/2",
    ],
)
def test_the_back_joint_is_lettered_with_its_settings(lettered):
    assert lettered in back().words


# Worked joint J3, the side-referenced column: edges at the end, 5/8 above those on the back.
@pytest.mark.parametrize(
    "position",
    ["13/16", "2-11/64", "2-19/64", "3-21/32", "3-25/32", "5-1/8", "5-1/4", "6-39/64", "6-47/64", "8-3/32"],
)
def test_the_back_joint_gives_every_position_from_the_edge_of_the_side(position):
    assert position in [words.removeprefix("≈") for words, _ in back().sizes]


@pytest.mark.parametrize(
    ("pin", "lower", "upper"),
    [  # Worked joint J3: half pins of 3/16 and pins of 1/8, from the side's edge, at the outside of the back.
        ("pin-1", 0.625, 0.8125),
        ("pin-2", 2.16875, 2.29375),
        ("pin-6", 8.09375, 8.28125),
    ],
)
def test_pins_are_drawn_between_the_tails(pin, lower, upper):
    corners = back().outlines[pin]
    outside = min(x for x, _ in corners)

    edge = lower_edge(back(), 0.625)
    assert sorted(y - edge for x, y in corners if x == outside) == pytest.approx([lower, upper], abs=2e-5)


def test_a_rabbet_at_the_back_has_its_own_wrong_setting():
    joint = through(
        Through(
            height=6, side=0.5, back=0.5, half_pin=0.1875, pin=0.125, tails=4, rabbet=0.0625, proud=0.015625
        )
    )
    words = Read(through_drawing(joint).svg()).words

    assert {"gauge, back: 7/16, not 1/2", "gauge, side: 33/64", "rabbet 1/16"} <= set(words)


def test_without_an_offset_side_and_back_stand_on_one_edge():
    joint = through(Through(height=6, side=0.5, back=0.5, half_pin=0.1875, pin=0.125, tails=4))
    found = Read(through_drawing(joint).svg())

    assert not [word for word in found.words if word.startswith("offset")]
    # The lowest tail begins a half pin above the edge that both stand on.
    tail, pin = found.outlines["tail-1"], found.outlines["pin-1"]
    assert min(y for _, y in tail) - min(y for _, y in pin) == pytest.approx(0.1875, abs=2e-5)


@pytest.mark.parametrize(
    ("serves", "expected"),
    [
        ([], "front of A-R5-1"),
        (["A-R1-1"], "front of A-R1-1"),
        (["A-R1-1", "A-R1-2"], "front of A-R1-1 and 2"),
        (["A-R1-1", "A-R1-2", "A-R1-3", "A-R2-1"], "front of A-R1-1 to 3, A-R2-1"),
    ],
)
def test_the_title_says_which_drawers_it_serves(serves, expected):
    assert expected in Read(half_blind_drawing(half_blind(J1), tuple(serves)).svg()).title


@pytest.mark.parametrize("words", ["put together", "drawn apart", "front, 8-13/32 high"])
def test_both_ends_and_the_corner_as_one_sees_it_are_in_one_drawing(words):
    assert words in front().words
    assert words in front().description


def test_the_plan_says_how_large_it_is():
    assert "full size" in " ".join(front().words)


def test_millimetres_are_lettered_for_a_metric_shop():
    # Worked joint J1 in millimetres.
    words = Read(half_blind_drawing(half_blind(J1), unit=LengthUnit.MILLIMETRE).svg()).words

    assert {"gauge 1: 15.9", "gauge 2: 11.1, not 12.7", "dividers 42.1, 5 steps", "208.4"} <= set(words)


def test_the_text_alternative_has_the_settings():
    told = front().description

    assert "gauge 2 7/16, not 1/2" in told
    assert "at the end: tail 1 from 1/8, to 1-21/32, tail 2 from 1-25/32" in told
    assert "put together; drawn apart" in told
    assert "the last of 5 lands 1/8 past the mark" in told


def sixteenths(least, most):
    """Sizes off the rule, by how many sixteenths they have."""
    return st.integers(least, most).map(lambda marks: marks / 16)


@given(
    height=sixteenths(8, 400),
    side=sixteenths(4, 16),
    tails=st.integers(1, 12),
    rabbet=st.sampled_from([0, 1 / 32, 1 / 16]),
    proud=st.sampled_from([0, 1 / 64]),
    excess=st.sampled_from([0, 1 / 16, 1 / 2]),
)
def test_any_front_joint_can_be_drawn(height, side, tails, rabbet, proud, excess):
    try:
        joint = half_blind(
            HalfBlind(
                height=height,
                front=side * 1.5,
                lap=side / 4,
                side=side,
                rabbet=rabbet,
                half_pin=0.125,
                pin=0.125,
                tails=tails,
                proud=proud,
                front_excess=excess,
            )
        )
    except CannotBeLaidOut:
        assume(False)
    check(Read(half_blind_drawing(joint).svg()))


@given(
    height=sixteenths(8, 400),
    side=sixteenths(4, 16),
    tails=st.integers(1, 12),
    offset=st.sampled_from([0, 5 / 8, 1]),
)
def test_any_back_joint_can_be_drawn(height, side, tails, offset):
    try:
        joint = through(
            Through(
                height=height,
                side=side,
                back=side,
                half_pin=0.1875,
                pin=0.125,
                tails=tails,
                lower_edge_offset=offset,
            )
        )
    except CannotBeLaidOut:
        assume(False)
    check(Read(through_drawing(joint).svg()))


def check(found):
    """Everything on the page, and no lettering in other lettering."""
    assert all(found.page.holds(Patch(*point, 0, 0)) for point in found.points)
    assert all(found.page.holds(patch) for _, patch in found.lettering)
    assert found.clashes == []
    assert [words for words, _ in found.sizes if figure_of(words) not in found.description] == []


def figure_of(words):
    """What a size says, as the text alternative has it: no colon, and alike ones once."""
    return words.rpartition("× ")[2].replace(":", "")
