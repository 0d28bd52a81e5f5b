"""Which chisels of the rack clear a joint."""

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.checks import chisels_at_hand
from casewright.joinery.chisels import RACK, chisels_for, widest_chisel
from casewright.joinery.layout import lay_out
from casewright.joinery.saws import Saw, SawUse
from casewright.measure.findings import Verdict


@given(st.floats(0.01, 3))
def test_the_chisel_is_the_widest_that_goes_in(room: float) -> None:
    chosen = widest_chisel(room, RACK.chisels)

    fitting = [chisel for chisel in RACK.chisels if chisel <= room]
    assert chosen == max(fitting, default=None)


def test_a_chisel_as_wide_as_the_gap_goes_in():
    assert widest_chisel(0.25, RACK.chisels) == 0.25


@pytest.mark.parametrize(
    ("pin", "expected"),
    [
        # tails 5/8 long at 1:8 flare by 5/64: between them pins gain 5/32 at the baseline
        (1 / 16, (3 / 16, None, False, True)),
        (3 / 32, (1 / 4, None, False, True)),
        (1 / 8, (1 / 4, 1 / 8, False, False)),
        (1 / 4, (3 / 8, 1 / 4, False, False)),
    ],
)
def test_narrow_pins_are_pared_at_the_baseline_and_sawn_when_very_narrow(pin, expected):
    found = chisels_for(lay_out(8.0, 0.125, pin, 4, 0.625, 8), RACK)

    assert (found.between_tails, found.from_the_end, found.enters_from_end, found.fret_saw) == expected


def test_a_chisel_that_fits_at_the_end_enters_from_there():
    rack = replace(RACK, chisels=(0.25,))

    found = chisels_for(lay_out(8.0, 0.125, 0.25, 4, 0.625, 8), rack)

    assert found.enters_from_end


def test_a_gap_in_the_rack_is_listed_with_what_would_fill_it():
    rack = replace(RACK, chisels=(0.5, 1.0))
    layout = lay_out(8.0, 0.125, 0.125, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is Verdict.CAUTION
    assert str(found.message) == (
        "The narrowest in the rack is 1/2 in; it lacks one of 9/32 in or narrower for between the tails."
    )
    assert str(found.remedy) == (
        "Add a chisel of 9/32 in or narrower for between the tails, or make the pins 11/32 in wide for "
        "between the tails."
    )


def test_sockets_too_narrow_for_the_rack_ask_for_fewer_tails_not_for_wider_pins():
    rack = replace(RACK, chisels=(1 / 8, 1 / 4))
    layout = lay_out(3.0, 0.125, 3 / 32, 9, 9 / 16, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert str(found.remedy).endswith("for the sockets, or use 7 tails at most.")
    sockets = [chisels_for(lay_out(3.0, 0.125, 3 / 32, n, 9 / 16, 8), rack).sockets for n in (7, 8)]
    assert sockets == [1 / 8, None]


def test_narrower_pins_make_room_in_the_sockets():
    rack = replace(RACK, chisels=(0.35,))
    layout = lay_out(3.0, 0.125, 0.25, 5, 0.5, 8)

    remedy = str(chisels_at_hand(layout, chisels_for(layout, rack), rack).remedy)

    pins = re.search(r"make the pins (\d+/\d+) in wide or narrower for the sockets", remedy)
    assert pins, remedy
    narrower = lay_out(3.0, 0.125, float(Fraction(pins[1])), 5, 0.5, 8)
    assert chisels_for(narrower, rack).sockets == 0.35


def test_an_empty_rack_lacks_both_chisels():
    rack = replace(RACK, chisels=())
    layout = lay_out(8.0, 0.125, 0.125, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is Verdict.CAUTION
    assert "for the sockets and 9/32 in or narrower for between the tails" in str(found.message)


def test_without_a_fret_saw_thin_pins_are_cautioned():
    rack = replace(RACK, saws=(Saw(name="dovetail saw", use=SawUse.DOVETAIL, kerf=0.02),))
    layout = lay_out(8.0, 0.125, 1 / 16, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is Verdict.CAUTION
    assert "sawn out, and the rack has no fret saw" in str(found.message)
    assert str(found.remedy) == "Add a fret saw, or make the pins wider than 3/32 in."


@pytest.mark.parametrize(("kerf", "verdict"), [(3 / 64, Verdict.PASS), (1 / 16, Verdict.CAUTION)])
def test_the_blade_passes_into_the_gap_with_a_64th_to_spare(kerf, verdict):
    rack = replace(RACK, saws=(*RACK.saws[:1], Saw(name="coping saw", use=SawUse.FRET, kerf=kerf)))
    layout = lay_out(8.0, 0.125, 1 / 16, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is verdict
    assert ("The coping saw cuts 0.062 in wide and does not pass" in str(found.message)) == (
        verdict is Verdict.CAUTION
    )


def test_of_two_saws_the_thinner_counts():
    thick = Saw(name="big one", use=SawUse.DOVETAIL, kerf=0.05)

    assert replace(RACK, saws=(thick, *RACK.saws)).kerf == RACK.kerf


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"chisels": (0.5, 0.25)}, "List the chisels from the narrowest to the widest."),
        ({"chisels": (0.0, 0.25)}, "A chisel of 0 in has no edge; leave it out of the rack."),
        ({"cutters": (0.5, 0.25)}, "List the cutters from the narrowest to the widest."),
        ({"saws": RACK.saws[1:]}, "A rack needs a saw for dovetails; list it with its kerf"),
        ({"gauges": 0}, "cannot be marked without a gauge and a pair of dividers"),
    ],
)
def test_a_rack_that_cannot_be_meant_is_refused(changes, sentence):
    with pytest.raises(ValueError, match=sentence):
        replace(RACK, **changes)


@pytest.mark.parametrize(
    ("name", "kerf", "sentence"),
    [
        (" ", 0.03, "A saw needs a name, such as dovetail saw."),
        ("saw", 0.0, "A saw kerf of 0 in is not a dovetail saw's; 1/32 is usual."),
        ("saw", 2.0, "A saw kerf of 2 in is not a dovetail saw's; 1/32 is usual."),
    ],
)
def test_a_saw_that_cannot_be_meant_is_refused(name, kerf, sentence):
    with pytest.raises(ValueError, match=sentence):
        Saw(name=name, use=SawUse.DOVETAIL, kerf=kerf)
