"""Tenons of aprons in a leg: their settings, their marks, and what is chosen for them."""

import pytest

from casewright.joinery.families.leg_tenon.joint import leg_tenon
from casewright.joinery.families.leg_tenon.rules import usual_face, usual_leg_tenon
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.measure.findings import Verdict, worst
from casewright.measure.ledger import Ledger
from joints import bedside_leg, leg_joint, setting


def test_the_gauge_of_the_aprons_is_wrong_for_a_leg_with_a_setback():
    found = leg_joint()

    assert (setting(found, "gauge_leg_1").value, setting(found, "gauge_leg_1").wrong) == (0.375, 0.25)
    assert (setting(found, "gauge_leg_2").value, setting(found, "gauge_leg_2").wrong) == (0.625, 0.5)
    assert setting(leg_joint(setback=0.0), "gauge_leg_1").wrong is None


def test_tenons_that_stay_clear_are_cut_square():
    names = {each.name for each in leg_joint(length=0.6875).settings}

    assert not names & {"mitre", "inner_length"}


def test_a_guide_is_as_thick_as_what_is_left_inside_the_apron():
    assert setting(leg_joint(), "guide").value == 0.625
    assert "guide" not in {each.name for each in leg_joint(setback=0.75, aprons=1).settings}


def test_without_the_pieces_size_it_is_said_what_the_tenons_add():
    assert setting(leg_joint(), "added").value == 2.0
    assert [each.name for each in leg_joint(width=18.0).settings if each.name.endswith("_length")][-1] == (
        "across_length"
    )


def test_the_marks_on_the_leg_run_from_its_top():
    found = leg_joint()

    leg = found.shape.strips[0]
    assert leg.waste[0] == ((0.75, 0.375), (5.25, 0.375), (5.25, 0.625), (0.75, 0.625))
    assert setting(found, "mortise_start").value == 0.75
    assert setting(found, "mortise_length").value == 4.5


def test_the_haunch_is_no_longer_than_a_mitred_tenon_is_inside():
    found = leg_joint(leg=1.25, setback=0.0, apron=1.25, tenon=0.75, face=0.25, length=0.75)

    assert found.haunch_length == found.inner_length == 0.21875


@pytest.mark.parametrize(
    ("apron", "tenon"), [(0.75, 0.25), (0.8125, 0.3125), (1.0, 0.375), (1.75, 0.5), (0.25, 0.25 / 3)]
)
def test_the_tenon_is_the_narrowest_chisel_from_a_third(apron, tenon):
    assert usual_leg_tenon(apron) == tenon


@pytest.mark.parametrize(
    ("setback", "tenon", "face"), [(0.125, 0.25, 0.25), (0.0, 0.375, 0.25), (0.0, 0.5, 0.125)]
)
def test_the_tenon_moves_in_when_the_wall_outside_would_be_thin(setback, tenon, face):
    assert usual_face(0.75, setback, tenon) == face


def test_what_is_left_out_is_chosen_with_its_reason():
    found = solve("leg-tenon", {"leg": 1.5, "apron": 0.75, "height": 5.5})

    assert {each.name: each.value for each in found.chosen} == {
        "aprons": 2,
        "setback": 0.125,
        "tenon": 0.25,
        "face": 0.25,
        "lower_shoulder": 0.25,
        "length": 1.0,
        "haunch": 0.75,
    }
    assert all(str(each.why) and each.source for each in found.chosen)
    assert worst(found.joint.findings) is Verdict.PASS


def test_the_working_of_each_figure_is_kept():
    ledger = Ledger()

    leg_tenon(bedside_leg(width=18.0), ledger)

    assert {"outer_wall", "inner_wall", "mortise_depth", "inner_length", "across_length", "guide"} <= {
        each.figure for each in ledger
    }


def test_a_tenon_as_thick_as_its_board_is_refused_with_one_that_is_not():
    with pytest.raises(CannotBeLaidOut, match="no two shoulders"):
        solve("leg-tenon", {"leg": 1.5, "apron": 0.75, "height": 4.0, "tenon": 0.75})


def test_an_apron_thicker_than_its_leg_is_refused_for_that_and_not_for_a_length_that_was_chosen():
    with pytest.raises(CannotBeLaidOut, match="make the leg 1-7/8 in thick or more"):
        solve("leg-tenon", {"leg": 1.5, "apron": 1.875, "height": 4.0})
