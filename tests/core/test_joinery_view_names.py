"""A view says from where it is seen, and a note names no edge that the board does not have."""

import pytest

from casewright.joinery.kinds import kinds
from casewright.pieces.built.joints import other_joints
from joints import example
from units import built, dresser


def placed(key, data=None):
    return next(each for each in other_joints(built(data or dresser())) if each.key == key)


def titles(joint):
    return [cut.title for cut in joint.shape.cuts]


def note(joint, name):
    return next(each.note for each in joint.settings if each.name == name)


@pytest.mark.parametrize("key", ["rails", "bottom"])
def test_a_board_that_lies_across_a_case_is_seen_from_the_front_through_a_tail(key):
    assert "seen from the front, through a tail" in titles(placed(key).joint)
    assert not any("from above" in title for title in titles(placed(key).joint))


def test_a_half_pin_is_marked_from_the_edge_that_carries_the_back_only_where_it_does():
    rabbeted = example("carcase", rabbet_width=0.5, rabbet_depth=0.375).joint
    assert rabbeted.given.rabbet
    assert note(rabbeted, "back_half_pin") == "a mark from the edge that carries the back"

    rails = placed("rails").joint
    assert not rails.given.rabbet
    assert note(rails, "back_half_pin") == "a mark from the back edge"


def test_an_upright_is_drawn_lying_and_its_view_says_how_to_turn_it():
    (front,) = [each for each in titles(placed("uprights_R1").joint) if each.startswith("from the front")]

    assert front == "from the front, cut open; a quarter turn clockwise, and the rail is below"


def test_a_divider_lies_as_it_is_drawn():
    assert "from the front, cut open" in titles(example("housing").joint)


@pytest.mark.parametrize("kind", sorted(kinds()))
def test_a_size_that_is_rounded_down_is_not_said_to_reach_down(kind):
    helps = [field.default for field in kinds()[kind].fields] + [
        str(each.why) for each in example(kind).chosen
    ]

    for said in helps:
        assert "down to" not in said.replace("rounded down to", ""), said


def test_a_housing_says_that_its_depth_is_rounded_down():
    (why,) = [str(each.why) for each in example("housing").chosen if each.name == "depth"]

    assert "rounded down to" in why
