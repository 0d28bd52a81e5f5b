"""Which chisels of the rack clear a joint."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.checks import chisels_at_hand
from casewright.joinery.chisels import RACK, Rack, chisels_for, widest_chisel
from casewright.joinery.layout import lay_out
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
    rack = Rack(chisels=(0.25,), kerf=1 / 32)

    found = chisels_for(lay_out(8.0, 0.125, 0.25, 4, 0.625, 8), rack)

    assert found.enters_from_end


def test_a_gap_in_the_rack_is_listed_with_what_would_fill_it():
    rack = Rack(chisels=(0.5, 1.0), kerf=1 / 32)
    layout = lay_out(8.0, 0.125, 0.125, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is Verdict.CAUTION
    assert str(found.message) == (
        "The narrowest in the rack is 1/2 in; it lacks one of 9/32 in or narrower for between the tails."
    )
    assert (
        str(found.remedy) == "Add a chisel of 9/32 in or narrower for between the tails, or widen the pins."
    )


def test_an_empty_rack_lacks_both_chisels():
    rack = Rack(chisels=(), kerf=1 / 32)
    layout = lay_out(8.0, 0.125, 0.125, 4, 0.625, 8)

    found = chisels_at_hand(layout, chisels_for(layout, rack), rack)

    assert found.verdict is Verdict.CAUTION
    assert "for the sockets and 9/32 in or narrower for between the tails" in str(found.message)


@pytest.mark.parametrize(
    ("chisels", "kerf", "sentence"),
    [
        ((0.5, 0.25), 0.03, "List the chisels from the narrowest to the widest."),
        ((0.0, 0.25), 0.03, "A chisel of 0 in has no edge; leave it out of the rack."),
        ((0.25,), 0.0, "A saw kerf of 0 in is not a dovetail saw's; 1/32 is usual."),
        ((0.25,), 2.0, "A saw kerf of 2 in is not a dovetail saw's; 1/32 is usual."),
    ],
)
def test_a_rack_that_cannot_be_meant_is_refused(chisels, kerf, sentence):
    with pytest.raises(ValueError, match=sentence):
        Rack(chisels=chisels, kerf=kerf)
