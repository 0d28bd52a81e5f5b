"""Moments, situations, and what would make a piece stand."""

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.measure.ledger import Ledger
from casewright.stability.limits import house_limits, rows
from casewright.stability.masses import Drawer, Mass, Piece, at_travel, leaned, moment, tilt_of, total_weight
from casewright.stability.remedies import ballast, feet_forward, greatest_travel, safe_travel
from casewright.stability.situations import (
    all_open_filled,
    child_on_drawer,
    push_at_top,
    push_moment,
    situations,
)
from casewright.stability.tipping import Kind, tip_case, tipping_factor
from casewright.stability.volume import clear_volume, fill_weight

SIXTY_FOURTH = 1 / 64


def chest(travel=12.0, case=100.0, drawer=10.0, fill=15.0):
    return Piece(
        case=Mass(label="case", weight=case, x=10.0, z=20.0),
        drawers=tuple(
            Drawer(
                label=label,
                weight=drawer,
                centre=8.0,
                height=height,
                travel=travel,
                load_height=height + 4,
                fill_weight=fill,
                fill_centre=9.0,
            )
            for label, height in (("R1", 30.0), ("R2", 20.0), ("R3", 10.0))
        ),
        height=40.0,
        support_depth=18.0,
    )


CHESTS = st.builds(
    chest,
    travel=st.floats(0, 20),
    case=st.floats(20, 300),
    drawer=st.floats(1, 30),
    fill=st.floats(0, 40),
)


def test_one_open_drawer_is_a_matter_of_a_pencil():
    case = tip_case(all_open_filled(chest(travel=12.0)))

    # case 100 x 10; drawers 3 x 10 x (12 - 8) and contents 3 x 15 x (12 - 9)
    assert case.holding == 1000
    assert case.tipping == 120 + 135
    assert case.factor == pytest.approx(1000 / 255, rel=1e-12)


def test_open_drawers_that_still_lie_behind_the_feet_help_to_hold():
    case = tip_case(all_open_filled(chest(travel=4.0)))

    # drawers 3 x 10 x 4 and contents 3 x 15 x 5 behind the pivot
    assert (case.holding, case.tipping, case.factor) == (1000 + 345, 0, math.inf)


def test_a_child_on_one_drawer_is_held_by_the_case_and_the_closed_drawers():
    case = tip_case(child_on_drawer(chest(), "R2", 60))

    assert case.holding == 1000 + 2 * 80
    assert case.tipping == 60 * 12 + 10 * 4


def test_other_drawers_left_open_make_a_child_more_dangerous():
    shut = tip_case(child_on_drawer(chest(), "R2", 60))
    open_too = tip_case(child_on_drawer(chest(), "R2", 60, others_open=True))

    assert open_too.holding == 1000
    assert open_too.tipping == 60 * 12 + 3 * 10 * 4
    assert open_too.factor < shut.factor


def test_a_push_acts_no_higher_than_the_standard_says():
    assert push_moment(10, 70, 56) == 560
    assert push_moment(10, 40, 56) == 400


def test_an_unknown_drawer_is_refused_with_those_that_there_are():
    with pytest.raises(ValueError, match="no drawer R9; there are: R1, R2, R3"):
        child_on_drawer(chest(), "R9", 60)


def test_a_case_whose_centre_is_before_its_feet_tips_itself():
    piece = replace(chest(travel=0), case=Mass(label="case", weight=100, x=-1.0))

    case = tip_case(all_open_filled(piece))

    assert case.tipping == 100
    assert case.holding == 3 * (80 + 135)


def test_every_situation_is_tried_on_every_drawer():
    kinds = [situation.kind for situation in situations(chest())]

    assert kinds == [Kind.ALL_OPEN, *[Kind.CHILD_LEVEL] * 3, *[Kind.CHILD_CARPET] * 3, Kind.PUSH]


@given(CHESTS, st.floats(0.1, 5))
def test_opening_the_drawers_further_never_makes_a_piece_safer(piece, further):
    near = [tip_case(situation).factor for situation in situations(piece)]
    far = [
        tip_case(situation).factor
        for situation in situations(at_travel(piece, piece.drawers[0].travel + further))
    ]

    assert all(b <= a * (1 + 1e-9) for a, b in zip(near, far, strict=True))


@given(CHESTS)
def test_a_carpet_never_makes_a_piece_safer(piece):
    level = tip_case(child_on_drawer(piece, "R1", 60))
    carpet = tip_case(child_on_drawer(piece, "R1", 60, block=0.43))

    assert carpet.factor <= level.factor * (1 + 1e-9)


@given(CHESTS)
def test_a_factor_above_one_is_a_piece_that_stands(piece):
    case = tip_case(push_at_top(piece, 10, 56))
    stays = (
        piece.case.weight * piece.case.x
        + sum(drawer.weight * (drawer.centre - drawer.travel) for drawer in piece.drawers)
        - 10 * piece.height
    )
    assume(abs(stays) > 1e-6)  # the very edge is beyond a float

    assert (case.factor > 1) is (stays > 0)


@given(st.floats(-50, 50), st.floats(0, 80), st.floats(0, 30))
def test_leaning_turns_a_point_about_the_pivot_and_keeps_its_distance(x, z, tilt):
    rise = leaned(z, -x, tilt)  # the same turn, seen a quarter circle on

    assert math.hypot(leaned(x, z, tilt), rise) == pytest.approx(math.hypot(x, z), abs=1e-9)


def test_a_level_floor_leans_nothing():
    assert tilt_of(0, 18) == 0
    assert leaned(7.5, 40, 0) == 7.5


def every_situation():
    labels = ("R1", "R2", "R3")
    return st.sampled_from(
        [
            all_open_filled,
            lambda piece: push_at_top(piece, 10, 56),
            *(lambda piece, label=label: child_on_drawer(piece, label, 60) for label in labels),
            *(lambda piece, label=label: child_on_drawer(piece, label, 60, 0.43) for label in labels),
        ]
    )


@given(CHESTS, every_situation(), st.sampled_from([1.0, 1.25, 1.5]))
def test_the_greatest_travel_is_safe_and_a_64th_more_is_not(piece, done, target):
    travel = greatest_travel(done(piece), target)
    assume(travel > 0)

    at_limit = tip_case(done(at_travel(piece, travel)))
    beyond = tip_case(done(at_travel(piece, travel + SIXTY_FOURTH)))

    # a hair for a travel that falls on the 64th itself
    assert at_limit.factor >= target * (1 - 1e-6)
    assert beyond.factor <= target * (1 + 1e-6)


def test_no_travel_is_safe_when_the_push_alone_tips_the_piece():
    assert safe_travel(300, 0, 30, 1.25, push=400) == 0


def test_a_push_that_asks_for_the_drawers_own_hold_leaves_some_travel():
    # 400 hold, 400 push: the drawers must keep 1.25 x 400 - 400 = 100 of their 240, so 140 / 30 may go
    assert safe_travel(400, 240, 30, 1.25, push=400) == math.floor(140 / 30 * 64) / 64


def test_nothing_that_moves_has_no_travel_to_limit():
    with pytest.raises(ValueError, match="no travel to limit"):
        safe_travel(948, 0, 0, 1.25)


@given(CHESTS, st.sampled_from([1.25, 1.5, 2.0]))
def test_the_weight_asked_for_at_the_back_makes_the_piece_stand(piece, target):
    case = tip_case(all_open_filled(piece))
    added = Mass(label="ballast", weight=ballast(case, 18.0, target), x=18.0)
    weighted = replace(case.situation, standing=(*case.situation.standing, added))

    assert tip_case(weighted).factor == pytest.approx(max(case.factor, target), rel=1e-9)


@given(CHESTS, st.sampled_from([1.25, 1.5, 2.0]))
def test_feet_as_far_forward_as_asked_for_make_the_piece_stand(piece, target):
    case = tip_case(all_open_filled(piece))
    forward = feet_forward(case, target)
    assume(forward == 0 or case.tipping - forward * 75 > 0)  # else the drawers come to lie behind the feet
    moved = replace(
        piece,
        case=replace(piece.case, x=piece.case.x + forward),
        drawers=tuple(replace(drawer, front=drawer.front + forward) for drawer in piece.drawers),
    )

    assert tip_case(all_open_filled(moved)).factor >= target * (1 - 1e-9)


def test_a_piece_that_stands_asks_for_nothing():
    case = tip_case(all_open_filled(chest(travel=4.0)))

    assert ballast(case, 18.0, 1.25) == 0
    assert feet_forward(case, 1.25) == 0


def test_weight_before_the_feet_holds_nothing():
    case = tip_case(all_open_filled(chest()))

    with pytest.raises(ValueError, match="only behind the front feet"):
        ballast(case, 0, 1.25)


def test_weightless_furniture_is_refused():
    case = tip_case(all_open_filled(chest(case=0, drawer=0, fill=0)))

    with pytest.raises(ValueError, match="give the masses first"):
        feet_forward(case, 1.25)


def test_nothing_that_tips_is_no_danger():
    assert tipping_factor(948, 0) == math.inf


def test_the_working_of_a_situation_is_kept():
    ledger = Ledger()

    case = tip_case(child_on_drawer(chest(), "R2", 60), ledger)

    assert ledger["tip.child, level.R2.factor"].inputs == {"holding": 1160, "tipping": 760}
    assert case.factor == ledger["tip.child, level.R2.factor"].value


def test_clothes_weigh_what_their_room_says():
    assert fill_weight(2.0, 8.5) == 17


def test_a_drawer_too_shallow_to_count_has_no_room():
    assert clear_volume(20, 20, 0.1, 0.125) == 0


def test_the_piece_weighs_its_case_and_its_empty_drawers():
    assert total_weight(chest()) == 130


def test_moments_add_up():
    masses = (Mass(label="a", weight=2, x=3), Mass(label="b", weight=4, x=-1))

    assert moment(masses) == 2


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: Mass(label="case", weight=-1, x=0), "case weighs less than nothing"),
        (lambda: replace(chest().drawers[0], weight=-1), "R1 weighs less than nothing"),
        (lambda: replace(chest().drawers[0], travel=-1), "travel is 0 or more"),
        (lambda: replace(chest(), support_depth=0), "depth of its feet"),
    ],
)
def test_a_piece_that_cannot_be_is_refused_with_a_sentence(make, message):
    with pytest.raises(ValueError, match=message):
        make()


def test_every_limit_says_where_it_comes_from():
    assert all(row["source"] and row["basis"] for row in rows().values())
    assert house_limits().target_factor == 1.25


def test_weight_on_a_slope_holds_by_its_shorter_arm():
    case = tip_case(child_on_drawer(chest(travel=20), "R1", 60, block=0.43))

    lacking = 2.0 * case.tipping - case.holding

    # by hand: an arm of 18 in, leaned by atan(0.43 / 18), is 17.995 in
    assert ballast(case, 18.0, 2.0) == pytest.approx(lacking / 17.995, rel=1e-4)


def test_feet_are_brought_forward_by_what_is_lacking_over_all_the_weight():
    case = tip_case(all_open_filled(chest(travel=20)))

    # 1000 hold, 3 x (10 x 12 + 15 x 11) = 855 tip; (1.25 x 855 - 1000) / (100 + 1.25 x 75)
    assert feet_forward(case, 1.25) == pytest.approx(68.75 / 193.75, rel=1e-12)
