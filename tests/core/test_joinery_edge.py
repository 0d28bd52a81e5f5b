"""Shiplap, and tongue and groove: boards over a width, the year's gaps, what breaks; and that it closes."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.joinery.families.edge.asked import EDGES, Edge
from casewright.joinery.families.edge.joint import edge_joint
from casewright.joinery.families.edge.sizes import (
    board_width,
    boards_over,
    covered_then,
    gap_then,
    overlap_that_covers,
    room_to_swell,
    usual_tongue,
)
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Axis
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from closing import faults

TONGUED = Edge(
    width=38.75,
    thickness=0.75,
    boards=7,
    tongue=0.25,
    overlap=0.375,
    gap=0.0625,
    end_gap=0.03125,
    movement=0.003,
)
LAPPED = replace(TONGUED, thickness=0.5, tongue=0.0)


def finding(asked, rule):
    return next(each for each in edge_joint(asked).findings if each.rule == rule)


@st.composite
def edges(draw):
    """Any boards that can be joined, lapped or tongued."""
    thickness = draw(st.integers(8, 64)) / 32
    overlap = draw(st.floats(0.1, 1.5))
    asked = {
        "width": draw(st.floats(6, 72)),
        "thickness": thickness,
        "boards": draw(st.integers(2, 20)),
        "tongue": draw(st.just(0.0) | st.floats(0.1, 0.9).map(lambda part: part * thickness)),
        "overlap": overlap,
        "gap": draw(st.floats(0.0, 0.9)) * overlap,
        "end_gap": draw(st.sampled_from([0.0, 1 / 32])),
        "movement": draw(st.floats(0, 0.004)),
    }
    try:
        return replace(TONGUED, **asked)
    except CannotBeLaidOut:
        assume(False)


@given(edges())
def test_every_edge_joint_closes(asked):
    assert faults(edge_joint(asked).shape) == []


@given(edges())
def test_boards_gaps_and_laps_add_up_to_the_width(asked):
    found = edge_joint(asked)

    assert (asked.boards - 1) * found.coverage + found.board + 2 * asked.end_gap == pytest.approx(asked.width)
    assert found.coverage == pytest.approx(found.board - asked.overlap + asked.gap)


@given(edges())
def test_what_the_year_does_is_what_the_solids_have_with_their_sizes_of_then(asked):
    """The boards shrunk and put at their old centres: the gap and the cover, measured off."""
    found = edge_joint(asked)
    dry = 1 - asked.movement * asked.shrinking

    gap = asked.gap + found.board * (1 - dry)

    assert found.driest == pytest.approx(gap)
    assert found.covers == pytest.approx(asked.overlap * dry - gap)


@given(edges())
def test_the_gap_and_the_tongue_are_drawn_as_they_are_set(asked):
    shape = edge_joint(asked).shape
    one, other = (
        [point for outline in board.section(Axis.Y, 0.1) for point in outline] for board in shape.boards
    )
    face = [max(x for x, z in one if z == 0.0), min(x for x, z in other if z == 0.0)]

    assert face[1] - face[0] == pytest.approx(asked.gap)
    assert max(x for x, _ in one) - face[0] == pytest.approx(asked.overlap)


@given(st.floats(10, 90), st.floats(2, 9), st.floats(0.2, 0.6), st.floats(0, 0.15))
def test_no_fewer_boards_would_do(width, widest, overlap, gap):
    boards = boards_over(width, widest, overlap, gap)

    assert board_width(width, boards, overlap, gap) <= widest + 1e-6
    assert boards == 1 or board_width(width, boards - 1, overlap, gap) > widest - 1e-6


@given(st.floats(2, 9), st.floats(0, 0.15), st.floats(0, 0.004), st.floats(0, 4), st.floats(0.05, 0.3))
def test_a_tongue_as_long_as_asked_for_covers_just_so_much(board, gap, movement, shrinking, least):
    overlap = overlap_that_covers(board, gap, movement, shrinking, least)

    driest = gap_then(board, gap, movement, -shrinking)
    assert covered_then(overlap, driest, movement, -shrinking) == pytest.approx(least)


@given(st.floats(2, 9), st.floats(0, 0.004), st.floats(0, 4))
def test_the_room_that_is_chosen_is_enough_and_no_64th_too_much(board, movement, swelling):
    room = room_to_swell(board, movement, swelling, 1 / 64)

    assert -1e-9 <= gap_then(board, room, movement, swelling) < 1 / 64 + 1e-9


@pytest.mark.parametrize(
    ("asked", "rule", "passes", "fails", "verdict", "remedy"),
    [
        (
            TONGUED,
            "room when wettest",
            {"gap": 0.046875},
            {"gap": 0.03125},
            Verdict.STOP,
            "Make the gap 3/64 in, or use more and narrower boards.",
        ),
        (
            TONGUED,
            "covered when driest",
            {"overlap": 0.234375},
            {"overlap": 0.21875},
            Verdict.CAUTION,
            "Make the tongue 15/64 in or more, or use more and narrower boards.",
        ),
        (
            TONGUED,
            "covered when driest",
            {"overlap": 0.234375},
            {"overlap": 0.15625},
            Verdict.STOP,
            "Make the tongue 15/64 in or more, or use more and narrower boards.",
        ),
        (
            LAPPED,
            "covered when driest",
            {"overlap": 0.234375},
            {"overlap": 0.21875},
            Verdict.CAUTION,
            "Make the lap 15/64 in or more, or use more and narrower boards.",
        ),
        (
            LAPPED,
            "covered when driest",
            {"overlap": 0.234375},
            {"overlap": 0.15625},
            Verdict.STOP,
            "Make the lap 15/64 in or more, or use more and narrower boards.",
        ),
        (
            TONGUED,
            "gap when driest",
            {"gap": 0.078125},
            {"gap": 0.09375},
            Verdict.CAUTION,
            "Use 10 boards or more, or quartersawn ones.",
        ),
        (
            TONGUED,
            "room at the ends",
            {"end_gap": 0.03125},
            {"end_gap": 0.015625},
            Verdict.CAUTION,
            "Leave 1/32 in free at both ends.",
        ),
        (
            TONGUED,
            "board width",
            {"boards": 7},
            {"boards": 6},
            Verdict.CAUTION,
            "Use 7 boards or more.",
        ),
        (
            TONGUED,
            "cheeks",
            {"tongue": 0.5},
            {"tongue": 0.53125},
            Verdict.STOP,
            "Make the tongue 1/2 in thick, or lap the boards.",
        ),
        (
            replace(TONGUED, thickness=0.375, tongue=0.125),
            "cheeks",
            {},
            {"thickness": 0.359375},
            Verdict.STOP,
            "Lap the boards: give a tongue of 0.",
        ),
        (
            LAPPED,
            "cheeks",
            {"thickness": 0.25},
            {"thickness": 0.234375},
            Verdict.STOP,
            "Use boards 1/4 in thick.",
        ),
        (
            TONGUED,
            "tongue",
            {"tongue": 0.125},
            {"tongue": 0.109375},
            Verdict.STOP,
            "Make it 1/8 in thick, or lap the boards.",
        ),
        (
            TONGUED,
            "tongue length",
            {"overlap": 0.5},
            {"overlap": 0.515625},
            Verdict.CAUTION,
            "Make it 1/2 in or less, with more and narrower boards if it is to cover.",
        ),
        (
            LAPPED,
            "lap length",
            {"overlap": 0.5},
            {"overlap": 0.515625},
            Verdict.CAUTION,
            "Make it 1/2 in or less, with more and narrower boards if it is to cover.",
        ),
    ],
)
def test_each_limit_has_two_sides_and_the_far_one_says_what_would_pass(
    asked, rule, passes, fails, verdict, remedy
):
    good, bad = finding(replace(asked, **passes), rule), finding(replace(asked, **fails), rule)

    assert (good.verdict, str(good.remedy)) == (Verdict.PASS, "")
    assert (bad.verdict, str(bad.remedy)) == (verdict, remedy)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"boards": 1}, r"1 board has no edge to join; give 2 or more"),
        ({"tongue": 0.75}, r"leaves no shoulder on boards of 3/4; 1/4 in is usual, 0 for a shiplap"),
        ({"gap": 0.375}, r"is open past a tongue or lap of 3/8; make that 1/2 in or more"),
        ({"boards": 200}, r"each of 200 boards would be hardly more than its tongue or lap; give 7"),
    ],
)
def test_what_cannot_be_joined_is_refused_with_what_would_work(changes, sentence):
    with pytest.raises(CannotBeLaidOut, match=sentence):
        replace(TONGUED, **changes)


def test_a_widest_board_that_is_all_tongue_is_refused_with_the_usual_one():
    with pytest.raises(CannotBeLaidOut, match="give a widest board of 6 in"):
        solve("edge-joint", {"width": 30.0, "thickness": 0.75, "widest": 0.25})


@pytest.mark.parametrize("thickness", [0.375, 0.5, 0.625, 0.75, 1.0])
@pytest.mark.parametrize("width", [9.0, 24.0, 38.75, 60.0])
def test_what_is_chosen_passes_every_check(width, thickness):
    found = solve("edge-joint", {"width": width, "thickness": thickness})

    assert {each.verdict for each in found.joint.findings} == {Verdict.PASS}
    assert found.joint.board <= EDGES.widest.value


def test_wide_boards_are_given_a_longer_tongue():
    found = solve("edge-joint", {"width": 36.0, "thickness": 0.75, "boards": 2})

    chosen = {each.name: each for each in found.chosen}
    assert chosen["overlap"].value > EDGES.overlap.value
    assert "still covers when the boards are driest" in str(chosen["overlap"].why)
    rules = {each.rule: each.verdict for each in found.joint.findings}
    assert (rules["covered when driest"], rules["room when wettest"]) == (Verdict.PASS, Verdict.PASS)


def test_boards_that_do_not_move_go_up_tight():
    found = solve("edge-joint", {"width": 36.0, "thickness": 0.75, "movement": 0.0}).joint

    assert (found.given.gap, found.given.end_gap, found.wettest, found.driest) == (0.0, 0.0, 0.0, 0.0)
    assert faults(found.shape) == []


def test_a_tongue_is_a_third_of_the_board():
    assert [usual_tongue(board, 3, 1 / 16) for board in (0.75, 0.625, 0.875, 0.1)] == [
        0.25,
        0.1875,
        0.3125,
        0.0625,
    ]


def test_the_depth_that_lets_the_tongue_bottom_and_the_whole_width_are_printed_as_wrong():
    wrong = {each.name: each.wrong for each in edge_joint(TONGUED).settings if each.wrong is not None}

    assert wrong == {"groove_depth": 0.375, "coverage": edge_joint(TONGUED).board}


def test_a_shiplap_is_half_and_half():
    settings = {each.name: each.value for each in edge_joint(LAPPED).settings}

    assert (settings["lap_depth"], settings["overlap"]) == (0.25, 0.375)
    assert "groove_depth" not in settings


def test_a_metric_shop_reads_millimetres():
    words = in_unit(finding(LAPPED, "cheeks").message, LengthUnit.MILLIMETRE)

    assert words == "A lap is 6.4 mm thick; it needs 3.2."


@pytest.mark.parametrize("asked", [TONGUED, LAPPED])
def test_what_the_template_leaves_of_one_edge_goes_into_what_it_cuts_from_the_other(asked):
    tongued, grooved, face = edge_joint(asked).shape.strips

    left = asked.thickness - sum(max(x for x, _ in span) - min(x for x, _ in span) for span in tongued.waste)
    cut = [(min(x for x, _ in span), max(x for x, _ in span)) for span in grooved.waste]
    assert sum(high - low for low, high in cut) == pytest.approx(left)
    assert face.lines[0].start == (asked.overlap, 0.0)
