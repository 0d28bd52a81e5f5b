"""Legs worked by hand: a bedside table with aprons, two mortises in one leg, and what the trade goes by."""

import pytest

from casewright.joinery.families.leg_tenon.rules import clear_length, guide_thickness
from casewright.joinery.kinds import solve
from casewright.joinery.tenons import length_over_tenons
from casewright.measure.findings import Verdict, worst


def worked(**values):
    return solve("leg-tenon", values).joint


def setting(joint, name):
    return next(each.value for each in joint.settings if each.name == name)


def bedside(**given):
    """Worked by hand: legs 1-1/2, aprons 3/4 × 5-1/2 set back 1/8, 18 by 14-1/2 over the legs."""
    usual = {"leg": 1.5, "apron": 0.75, "height": 5.5, "setback": 0.125, "width": 18.0, "depth": 14.5}
    return worked(**{**usual, **given})


def test_the_bedsides_tenons_are_an_inch_long_and_its_aprons_as_its_maker_cut_them():
    joint = bedside()

    assert joint.given.length == 1.0
    assert joint.apron_lengths == (17.0, 13.5)
    assert worst(joint.findings) is Verdict.PASS


def test_the_bedsides_side_guide_is_flush_with_the_leg():
    assert setting(bedside(), "guide") == 0.625
    assert guide_thickness(leg=1.5, setback=0.125, apron=0.75) == 0.625


def test_the_bedsides_lower_front_rail_has_shorter_tenons():
    """Worked by hand: tenons of 3/4 on the same legs make a rail of 16-1/2."""
    assert length_over_tenons(overall=18.0, post=1.5, other=1.5, length=0.75) == 16.5


@pytest.mark.parametrize(
    ("leg", "most", "source"),
    [
        (1.5, 1.25, "common practice: a mortise goes no deeper than the leg less 1/4 in"),
        (2.0, 1.75, "common practice: a mortise goes no deeper than the leg less 1/4 in"),
    ],
)
def test_a_mortise_leaves_a_quarter_inch_of_the_leg(leg, most, source):
    # the tenon ends 1/16 above the floor of its mortise
    fits, too_long = (
        worked(leg=leg, apron=0.75, height=4.0, aprons=1, length=length)
        for length in (most - 1 / 16, most - 1 / 16 + 1 / 64)
    )

    assert worst(fits.findings) is Verdict.PASS, source
    assert worst(too_long.findings) is Verdict.STOP, source


@pytest.mark.parametrize(
    ("leg", "length", "source"),
    [
        (1.5, 11 / 16, "drawn by hand: mortise 7/8 in from the inside face, less 1/8 and 1/16"),
        (2.0, 19 / 16, "drawn by hand: mortise 1-3/8 in from the inside face, less 1/8 and 1/16"),
    ],
)
def test_two_mortises_stay_an_eighth_apart(leg, length, source):
    joint = worked(leg=leg, apron=0.75, height=4.0, setback=0.125, length=length)

    assert clear_length(joint.inner) == length, source
    assert not joint.given.is_mitred
    assert worst(joint.findings) is Verdict.PASS


def test_the_longest_mitred_tenons_of_an_inch_and_a_half_leg():
    """Drawn by hand: outer cheeks 1-1/8 from the inside face, 1/32 off for the gap; 1/4 less inside."""
    joint = worked(leg=1.5, apron=0.75, height=4.0, setback=0.125, length=1.09375)

    assert joint.inner_length == 1.09375 - 0.25
    assert setting(joint, "mitre") == 45.0
    assert worst(joint.findings) is Verdict.PASS
