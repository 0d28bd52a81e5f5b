"""The pinned rabbet: its pins from edge to edge, its limits on both sides, the groove; and that it closes."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casewright.joinery.families.pinned_rabbet.asked import (
    PinnedRabbet,
    clear_of,
    pin_count,
    pin_places,
    usual_lip,
    usual_margin,
    usual_pin,
)
from casewright.joinery.families.pinned_rabbet.joint import KIND, pinned_rabbet
from casewright.joinery.groove import Groove
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict
from closing import faults

SIZES = st.integers(8, 64).map(lambda marks: marks / 64)
HEIGHTS = st.integers(96, 960).map(lambda marks: marks / 64)
GROOVE = Groove(height=0.375, width=0.25, depth=0.25)


def joint(**given):
    usual = {
        "height": 4.0,
        "front": 0.75,
        "side": 0.5,
        "lip": 0.25,
        "pin": 0.125,
        "pin_length": 1.5,
        "margin": 0.5,
        "pins": 3,
    }
    return pinned_rabbet(PinnedRabbet(**{**usual, **given}))


def verdicts(found):
    return {finding.rule: finding.verdict for finding in found.findings}


def remedy(found, rule):
    return str(next(finding.remedy for finding in found.findings if finding.rule == rule))


def by_name(found):
    return {setting.name: setting for setting in found.settings}


@settings(max_examples=20, deadline=None)  # cut open at up to two hundred places each, by an outside reader
@given(HEIGHTS, SIZES, SIZES, SIZES, st.floats(0.1, 0.9), st.integers(2, 5), st.floats(0.1, 0.45))
def test_every_pinned_rabbet_closes(height, side, lip, rabbet, part, pins, margin):
    # as thick as leaves room between the pins, and in the rabbet
    apart = height * (1 - 2 * margin) / (pins - 1)
    pin = part * min(rabbet, apart / 2, 2 * margin * height)
    found = joint(
        height=height,
        front=lip + rabbet,
        side=side,
        lip=lip,
        pin=pin,
        pin_length=3 * side,
        margin=margin * height,
        pins=pins,
    )

    assert faults(found.shape) == []


@given(HEIGHTS, st.integers(24, 96).map(lambda marks: marks / 64))
def test_the_fewest_pins_that_the_spacing_allows_stand_evenly_from_edge_to_edge(height, spacing):
    pins = pin_count(height, 0.5, spacing)
    places = pin_places(height, 0.5, pins)

    gaps = [high - low for low, high in pairwise(places)]
    assert places[0] == 0.5
    assert places[-1] == pytest.approx(height - 0.5, abs=1e-9)  # sums of a few floats
    assert max(gaps) == pytest.approx(min(gaps), abs=1e-9)
    assert max(gaps) <= spacing + 1e-9
    assert pins == 2 or (height - 1.0) / (pins - 2) > spacing


def test_one_pin_more_is_taken_as_soon_as_the_spacing_is_passed():
    assert [pin_count(height, 0.5, 1.5) for height in (2.5, 2.515625, 4.0, 4.015625)] == [2, 3, 3, 4]


def test_the_pins_stand_in_the_middle_of_the_rabbet_from_the_end_of_the_side():
    found = by_name(joint(front=0.8125, lip=0.25))

    assert found["pin_line"].value == 0.28125
    assert found["pin_line"].wrong == 0.53125


def test_gauges_and_lengths_are_given_with_what_is_taken_for_them():
    found = by_name(joint(drawer_depth=18.0))

    assert (found["gauge_1"].value, found["gauge_1"].wrong) == (0.5, 0.25)
    assert (found["gauge_2"].value, found["lip"].value) == (0.5, 0.25)
    assert (found["side_length"].value, found["side_length"].wrong) == (17.75, 17.25)
    assert (found["drill_depth"].value, found["drill_depth"].wrong) == (1.5, 1.0)
    assert (found["margin"].value, found["dividers"].value, found["pins"].value) == (0.5, 1.5, 3)


def test_where_the_drawer_is_not_known_what_is_taken_off_is_given():
    found = by_name(joint())

    assert (found["side_taken_off"].value, found["side_taken_off"].wrong) == (0.25, 0.75)
    assert "side_length" not in found


@pytest.mark.parametrize(
    ("asked", "rule", "verdict"),
    [
        ({"lip": 0.375}, "rabbet depth", Verdict.PASS),
        ({"lip": 0.390625}, "rabbet depth", Verdict.CAUTION),
        ({"lip": 0.25}, "rabbet depth", Verdict.PASS),
        ({"lip": 0.234375}, "rabbet depth", Verdict.CAUTION),
        ({"lip": 0.25}, "lip before the pins", Verdict.PASS),
        ({"lip": 0.234375}, "lip before the pins", Verdict.CAUTION),
        ({"margin": 0.375}, "pins from the edge", Verdict.PASS),
        ({"margin": 0.359375}, "pins from the edge", Verdict.STOP),
        ({"height": 4.0}, "pins apart", Verdict.PASS),
        ({"height": 4.03125}, "pins apart", Verdict.CAUTION),
        ({"pin": 0.125}, "pin", Verdict.PASS),
        ({"pin": 0.109375}, "pin", Verdict.CAUTION),
        ({"front": 0.8125, "pin": 0.1875}, "pin", Verdict.PASS),
        ({"front": 0.8125, "pin": 0.203125}, "pin", Verdict.CAUTION),
        ({"pin_length": 1.0}, "pin length", Verdict.PASS),
        ({"pin_length": 0.984375}, "pin length", Verdict.CAUTION),
        ({"groove": GROOVE, "margin": 0.6875}, "pins and groove", Verdict.PASS),
        ({"groove": GROOVE, "margin": 0.671875}, "pins and groove", Verdict.STOP),
        ({"groove": Groove(height=0.5, width=0.25, depth=0.5)}, "groove and lip", Verdict.PASS),
        ({"groove": Groove(height=0.5, width=0.25, depth=0.515625)}, "groove and lip", Verdict.STOP),
    ],
)
def test_each_limit_holds_on_both_sides(asked, rule, verdict):
    assert verdicts(joint(**asked))[rule] is verdict


def test_a_pin_below_the_groove_is_clear_of_it_too():
    below = {"groove": Groove(height=0.5625, width=0.25, depth=0.25)}
    meets = {"groove": Groove(height=0.546875, width=0.25, depth=0.25)}

    assert verdicts(joint(**below))["pins and groove"] is Verdict.PASS
    assert verdicts(joint(**meets))["pins and groove"] is Verdict.STOP


def test_without_a_groove_none_is_checked():
    assert {"pins and groove", "groove and lip"}.isdisjoint(verdicts(joint()))


def test_a_finding_says_what_would_pass():
    thin = joint(front=0.5, lip=0.25, pin=0.125)

    assert remedy(joint(lip=0.125), "rabbet depth") == "Make the lip 1/4 to 3/8 in."
    assert remedy(joint(lip=0.125), "lip before the pins") == (
        "Make the lip 1/4 in, or the front 1/8 in thicker."
    )
    assert remedy(joint(margin=0.25), "pins from the edge") == "Put them 3/8 in from the edges."
    assert remedy(joint(height=6.0), "pins apart") == "Take 5 pins."
    assert remedy(joint(front=0.8125, pin=0.25), "pin") == "Take pins of 1/8 to 3/16 in."
    assert remedy(thin, "pin") == "Take pins of 1/16 to 5/64 in."
    assert remedy(joint(pin_length=0.75), "pin length") == "Make the pins 1 in long or longer."
    assert remedy(joint(groove=GROOVE), "pins and groove") == (
        "Put the first and the last pin 3/4 in from the edges."
    )
    deep = Groove(height=1.0, width=0.25, depth=0.625)
    assert remedy(joint(groove=deep), "groove and lip") == (
        "Make the groove 1/2 in deep, or stop it in the front."
    )


def test_where_no_margin_clears_the_groove_the_groove_has_to_move():
    wide = Groove(height=0.125, width=3.75, depth=0.25)

    # between two pins of 1/8, 1-1/2 apart and 1/2 from the edges, 1-3/8 is free from 9/16 up
    assert remedy(joint(groove=wide), "pins and groove") == (
        "Make the groove 1-3/8 in wide or narrower, its lower edge at 9/16 in."
    )
    moved = Groove(height=9 / 16, width=1.375, depth=0.25)
    assert remedy(joint(groove=moved), "pins and groove") == ""


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"lip": 0.75}, "leaves no rabbet in a front of 3/4 in; make it 1/4 in"),
        ({"pin": 0.5}, "no room in a rabbet 1/2 in deep; 5/32 in would"),
        ({"pin_length": 0.5}, "ends within the side of 1/2 in; make it 1-1/2 in"),
        ({"margin": 0.0625}, "breaks out of it; put it 3/8 in from the edge"),
        ({"height": 1.0, "pins": 2}, "have no room in a height of 1 in; put them 3/8 in from the edges"),
        ({"height": 0.75, "pins": 2}, "have no room in a height of 3/4 in; a height of 1 in takes two"),
        ({"pins": 1}, "A row of 1 is none for pins of 1/8 in in a height of 4 in; take 3"),
        ({"pins": 14}, "A row of 14 is none .* take 3"),
        ({"height": 1.25, "pins": 3}, "A row of 3 is none .* take 2"),
        ({"drawer_depth": 0.75}, "ends within its front of 3/4 in; make it deeper"),
    ],
)
def test_what_has_no_room_is_refused_with_what_would(asked, said):
    with pytest.raises(CannotBeLaidOut, match=said):
        joint(**asked)


def test_as_many_pins_as_leave_their_thickness_between_them_are_taken():
    assert len(joint(pins=13).places) == 13


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve("pinned-rabbet", {"height": 6.0, "front": 0.75, "side": 0.5})

    assert {each.name: each.value for each in found.chosen} == {
        "lip": 0.25,
        "pin": 0.125,
        "pin_length": 1.5,
        "spacing": 1.5,
        "margin": 0.5,
        "pins": 5,
    }
    assert all(str(each.why) and each.source for each in found.chosen)


def test_a_number_of_pins_settles_their_spacing():
    found = solve("pinned-rabbet", {"height": 6.0, "front": 0.75, "side": 0.5, "pins": 6})

    assert "spacing" not in {each.name for each in found.chosen}
    assert found.joint.spacing == 1.0


def test_the_first_pin_is_chosen_above_the_groove_and_says_so():
    asked = {"height": 6.0, "front": 0.75, "side": 0.5, "groove_height": 0.375, "groove_width": 0.25}
    found = solve("pinned-rabbet", asked)

    chosen = next(each for each in found.chosen if each.name == "margin")
    assert (chosen.value, str(chosen.why)) == (0.75, "1/2 in is usual, and 3/4 in clears the groove.")
    assert verdicts(found.joint)["pins and groove"] is Verdict.PASS


@given(
    HEIGHTS,
    st.integers(8, 64).map(lambda marks: marks / 64),
    st.integers(8, 24).map(lambda marks: marks / 64),
)
def test_a_chosen_margin_clears_the_groove_or_is_the_usual_one(height, low, wide):
    groove = Groove(height=low, width=wide, depth=0.25)
    margin = usual_margin(height, 0.125, 1.5, None, groove)

    places = pin_places(height, margin, pin_count(height, margin, 1.5))
    assert clear_of(groove, places, 0.125) or margin == 0.5


@given(
    st.integers(40, 72).map(lambda marks: marks / 64),
    st.integers(20, 48).map(lambda marks: marks / 64),
    HEIGHTS,
)
def test_what_is_chosen_for_usual_fronts_passes_every_check(front, side, height):
    found = solve("pinned-rabbet", {"height": height, "front": front, "side": side}).joint

    assert set(verdicts(found).values()) == {Verdict.PASS}


def test_lip_and_pin_go_with_the_front():
    assert [usual_lip(front) for front in (0.4, 0.5, 0.75, 0.8125, 1.0)] == [0.2, 0.25, 0.25, 0.3125, 0.375]
    assert [usual_pin(rabbet) for rabbet in (0.25, 0.5, 0.5625, 0.75)] == [0.0625, 0.125, 0.1875, 0.25]


def test_low_boards_have_their_pins_nearer_to_the_edges():
    assert (usual_margin(1.25, 0.125, 1.5), usual_margin(1.234375, 0.125, 1.5)) == (0.5, 0.375)


def test_the_strips_mark_every_pin_and_the_rabbet():
    side, front = joint().shape.strips

    assert [line.start for line in side.lines] == [
        (0.25, 0.0),
        (0.1875, 0.5),
        (0.1875, 2.0),
        (0.1875, 3.5),
    ]
    assert front.waste == (((0.0, 0.0), (0.5, 0.0), (0.5, 4.0), (0.0, 4.0)),)


def test_its_name_and_title_are_the_trades():
    assert (KIND.name, KIND.title) == ("pinned-rabbet", "Rabbet in a front, pinned through the side")


@given(
    st.integers(24, 72).map(lambda marks: marks / 64),
    st.integers(20, 48).map(lambda marks: marks / 64),
    HEIGHTS,
)
def test_what_is_chosen_for_thin_boards_too_warns_of_nothing_but_a_lip_that_lets_the_side_tell(
    front, side, height
):
    found = solve("pinned-rabbet", {"height": height, "front": front, "side": side}).joint
    warned = {rule for rule, verdict in verdicts(found).items() if verdict is not Verdict.PASS}

    # in a front under 1/2 in half of it is a lip of less than 1/4 in
    assert warned <= ({"lip before the pins"} if front < 0.5 else set())


def test_a_pin_in_a_thin_rabbet_is_of_bamboo():
    found = solve("pinned-rabbet", {"height": 4, "front": 0.5, "side": 0.5})
    [pin] = [each for each in found.chosen if each.name == "pin"]

    assert pin.value == 1 / 16  # a third of 1/4 is 5/64
    assert "bamboo" in str(pin.why)
