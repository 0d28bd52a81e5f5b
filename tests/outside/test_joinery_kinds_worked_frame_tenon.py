"""Frames worked by hand: a web frame with a dry rear joint, a panelled side, and what the trade goes by."""

import pytest

from casewright.joinery.kinds import solve
from casewright.measure.findings import Verdict, worst


def worked(**values):
    return solve("frame-tenon", values).joint


def setting(joint, name):
    return next(each.value for each in joint.settings if each.name == name)


def test_a_dressers_runner_is_as_long_as_its_maker_cut_it():
    """Worked by hand: opening 19-1/4 deep, rails 3 and 2-1/2, tenons 1/2, sides that lose 0.113 in depth."""
    joint = worked(
        thickness=0.75,
        rail=2.5,
        stile=2.5,
        other_stile=3.0,
        length=0.5,
        beyond=0.25,
        overall=19.25,
        shrinkage=0.113,
    )

    assert joint.given.slack == 0.125
    assert setting(joint, "rail_length") == 14.625
    assert joint.reach == 0.375
    assert worst(joint.findings) is Verdict.PASS


def test_the_kicker_over_it_lies_between_two_rails_as_wide():
    """Worked by hand: the same case, both rails 3 wide."""
    joint = worked(
        thickness=0.75, rail=2.5, stile=3.0, length=0.5, overall=19.25, slack=0.125, shrinkage=0.113
    )

    assert setting(joint, "rail_length") == 14.125


def test_a_rail_of_a_panelled_side_is_the_depth_without_stiles_and_with_both_tenons():
    """Common practice, worked by hand: 18 over stiles of 2-1/2, tenons of 1-1/2: 18 - 5 + 3."""
    joint = worked(thickness=0.75, rail=3.0, stile=2.5, groove_width=0.25, length=1.5, overall=18.0)

    assert setting(joint, "rail_length") == 16.0
    assert joint.haunch_length == 0.375
    assert joint.given.groove_span == (0.25, 0.5)


@pytest.mark.parametrize(
    ("thickness", "tenon", "source"),
    [
        (0.75, 0.25, "common practice: 3/4 in stuff has a 1/4 in mortise"),
        (1.5, 0.5, "common practice: a third of the thickness"),
        (1.125, 0.375, "common practice: a third of the thickness"),
    ],
)
def test_a_tenon_is_a_third_of_the_thickness(thickness, tenon, source):
    assert worked(thickness=thickness, rail=3.0).given.tenon == tenon, source


def test_three_sixteenths_of_shoulder_ask_for_wood_of_five_eighths_about_a_quarter_inch_groove():
    """Common practice: 1/4 + 2 × 3/16 = 5/8."""
    just, thin = (worked(thickness=thickness, rail=2.0, groove_width=0.25) for thickness in (0.625, 0.609375))

    assert worst(just.findings) is Verdict.PASS
    stopped = [str(each.remedy) for each in thin.findings if each.verdict is Verdict.STOP]
    assert len(stopped) == 1
    assert "5/8 in thick" in stopped[0]
