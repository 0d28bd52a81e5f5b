"""What was measured at the bench beats what was drawn, and whatever hangs on it follows."""

import pytest

from casewright.measure.lengths import show
from casewright.pieces.drawers.sizes import CannotBuild
from units import built, chest, dresser


def test_a_thicker_front_leaves_a_thicker_lap_and_a_shorter_side():
    designed = built(chest())
    measured = built(chest({"measured.parts": {"R2-1-F": {"thickness": "13/16"}}}))

    # gauge 1 stays at 3/4 - 3/16 = 9/16 for the batch; 13/16 - 9/16 = 1/4
    before, after = designed.drawer("A-R2-1"), measured.drawer("A-R2-1")
    assert (show(before.sizes.lap), show(before.sizes.side_length)) == ("3/16", "14-13/16")
    assert (show(after.sizes.lap), show(after.sizes.side_length)) == ("1/4", "14-3/4")
    assert show(after.joints.front.gauge_1) == "9/16"
    assert show(after.joints.front.lap) == "1/4"


def test_the_other_drawers_do_not_feel_a_thicker_front():
    measured = built(chest({"measured.parts": {"R2-1-F": {"thickness": "13/16"}}}))

    assert show(measured.drawer("A-R1-1").sizes.lap) == "3/16"
    assert show(measured.drawer("A-R3-1").sizes.side_length) == "14-13/16"


@pytest.mark.parametrize(
    ("found", "gauge_2"),
    [
        ({"in_rabbet": "27/64"}, "27/64"),
        ({"thickness": "31/64"}, "27/64"),  # less the rabbet of 1/16
        ({"thickness": "31/64", "in_rabbet": "13/32"}, "13/32"),
    ],
)
def test_a_measured_side_sets_the_second_gauge(found, gauge_2):
    joint = built(chest({"measured.parts": {"R2-1-SL": found}})).drawer("A-R2-1").joints.front

    assert show(joint.gauge_2) == gauge_2


def test_sides_that_differ_by_more_than_a_64th_get_a_gauge_each():
    sides = {"R2-1-SL": {"in_rabbet": "27/64"}, "R2-1-SR": {"in_rabbet": "29/64"}}

    groups = built(chest({"measured.parts": sides})).drawer("A-R2-1").joints.front.gauge_groups

    assert [(show(group.setting), group.marks) for group in groups] == [
        ("27/64", ("A-R2-1-SL",)),
        ("29/64", ("A-R2-1-SR",)),
    ]


def test_a_measured_side_changes_the_bottom_between_the_sides():
    measured = built(chest({"measured.parts": {"R2-1-SL": {"thickness": "7/16"}}}))

    # a side thinner by 1/16 leaves 1/16 more
    assert show(measured.drawer("A-R2-1").bottom.across) == "21-15/16"
    assert show(measured.drawer("A-R1-1").bottom.across) == "21-7/8"


def test_a_measured_part_has_a_line_of_its_own():
    made = built(chest({"measured.parts": {"R2-1-SL": {"thickness": "7/16"}}}))

    lines = {line.line: (line.codes, line.part.measured) for line in made.lines if line.line.startswith("S2")}
    assert lines == {"S2": (("A-R2-1-SL",), ("thickness",)), "S2b": (("A-R2-1-SR",), ())}


def test_a_measured_opening_makes_its_drawer_lower():
    made = built(dresser({"measured.openings": {"R5-1": {"height": "8-15/32"}}}))

    # check K7 with an opening 1/32 lower: 8.4375 / 1.007225 = 8.3770, down to 8-3/8
    assert show(made.drawer("A-R5-1").sizes.height) == "8-3/8"
    assert made.drawer("A-R5-1").sizes.opening.measured == ("height",)


@pytest.mark.parametrize(
    ("measured", "sentence"),
    [
        ({"openings": {"R9-1": {"height": "5"}}}, "measured.openings.R9-1: .* did you mean R3-1"),
        ({"openings": {"top": {"height": "5"}}}, "there is no such opening; there are R1-1, R2-1, R3-1"),
        ({"parts": {"R1-1-SM": {"thickness": "1/2"}}}, "there is no such part; did you mean R1-1-S"),
        ({"parts": {"quux": {"thickness": "1/2"}}}, "there is no such part; codes look like"),
    ],
)
def test_a_measured_code_that_nothing_has_is_refused_with_the_nearest(measured, sentence):
    with pytest.raises(CannotBuild, match=sentence):
        built(chest({"measured": measured}))
