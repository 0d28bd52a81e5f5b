"""The groove for a drawer's bottom: sides, slips, muntin, movement; and that it goes together."""

from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.joinery.families.bottom_groove.asked import BOTTOMS, BottomGroove
from casewright.joinery.families.bottom_groove.chosen import usual_groove_depth
from casewright.joinery.families.bottom_groove.joint import bottom_groove
from casewright.joinery.families.bottom_groove.sizes import muntin_place
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Axis
from casewright.measure.findings import Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from closing import faults

PLAIN = BottomGroove(
    width=18.5625,
    length=18.75,
    side=0.5,
    front=0.8125,
    back=0.5,
    groove_height=0.375,
    groove_width=0.25,
    groove_depth=0.25,
    front_depth=0.25,
    bottom=0.375,
    movement=0.00289,
)
SLIPS = replace(PLAIN, side=0.3125, slip=0.375, slip_height=0.75, groove_depth=0.1875)
MUNTIN = replace(PLAIN, width=37.9375, muntin=2.0, muntin_thickness=0.625)
MUNTIN_IN_SLIPS = replace(SLIPS, width=37.9375, muntin=2.0, muntin_thickness=0.625)


def finding(asked, rule):
    return next(each for each in bottom_groove(asked).findings if each.rule == rule)


@st.composite
def grooves(draw):
    """Any groove that can be cut, in sides and in slips, with and without a muntin."""
    marks = st.integers(2, 24).map(lambda number: number / 32)
    slip = draw(st.just(0.0) | st.floats(0.2, 0.6))
    height, wide = draw(marks) + 0.05, draw(marks) / 2 + 0.05
    muntin = draw(st.just(0.0) | st.floats(1.0, 4.0))
    asked = {
        "side": draw(st.floats(0.25, 1.0)),
        "front": draw(st.floats(0.5, 1.25)),
        "groove_height": height,
        "groove_width": wide,
        "groove_depth": draw(marks) / 2,
        "front_depth": draw(marks) / 2,
        "bottom": draw(st.floats(0.1, 0.9)),
        "play": draw(st.sampled_from([0.0, 1 / 64, 1 / 32])),
        "slip": slip,
        "slip_height": height + wide + draw(marks) if slip else 0.0,
        "muntin": muntin,
        "muntin_thickness": wide + draw(marks) if muntin else 0.0,
        "width": draw(st.floats(8, 48)),
    }
    try:
        return replace(PLAIN, **asked)
    except CannotBeLaidOut:
        assume(False)


@given(grooves())
def test_every_bottom_goes_into_its_grooves(asked):
    assert faults(bottom_groove(asked).shape) == []


@pytest.mark.parametrize("asked", [PLAIN, SLIPS, MUNTIN, MUNTIN_IN_SLIPS])
def test_what_meets_in_the_groove_is_filled(asked):
    shape = bottom_groove(asked).shape

    assert faults(shape) == []
    (left, right), (low, high), _ = shape.filled
    assert right - left == pytest.approx(asked.groove_depth - asked.play)
    assert low == 0.0
    assert high > asked.top


@given(grooves())
def test_bottom_play_grooves_and_muntin_add_up_to_the_width(asked):
    found = bottom_groove(asked)

    grooves_across = 2 * found.pieces * (asked.groove_depth - asked.play)
    across = found.pieces * found.bottom_width - grooves_across + asked.muntin
    assert across + 2 * (asked.side + asked.slip) == pytest.approx(asked.width)


@given(grooves())
def test_the_muntin_stands_in_the_middle(asked):
    place = muntin_place(asked.inside, asked.muntin)

    assert 2 * place + asked.muntin == pytest.approx(asked.inside)


@given(grooves())
def test_the_groove_is_drawn_as_deep_as_it_is_set(asked):
    shape = bottom_groove(asked).shape
    carrier = next(board for board in shape.boards if board.name == ("slip" if asked.slip else "side"))
    middle = asked.groove_height + asked.groove_width / 2

    cut = carrier.section(Axis.Y, middle)

    reached = max(x for outline in cut for x, _ in outline)
    assert asked.side + asked.slip - reached == pytest.approx(asked.groove_depth)


@pytest.mark.parametrize(
    ("asked", "rule", "passes", "fails", "verdict", "remedy"),
    [
        (
            PLAIN,
            "side behind groove",
            {"groove_depth": 17 / 64},
            {"groove_depth": 18 / 64},
            Verdict.STOP,
            "Make the groove 1/4 in deep, or the side 9/16 in thick. Or glue slips of 3/8 in to the sides.",
        ),
        (
            SLIPS,
            "slip behind groove",
            {"groove_depth": 13 / 64},
            {"groove_depth": 14 / 64},
            Verdict.STOP,
            "Make the groove 3/16 in deep, or the slip 7/16 in thick.",
        ),
        (
            PLAIN,
            "front behind groove",
            {"front_depth": 27 / 64},
            {"front_depth": 28 / 64},
            Verdict.STOP,
            "Make the groove 13/32 in deep, or the front 7/8 in thick.",
        ),
        (
            PLAIN,
            "bottom held",
            {"groove_depth": 0.1875},
            {"groove_depth": 0.171875},
            Verdict.STOP,
            "Make the groove 3/16 in deep, in slips of 3/8 in where the sides are thin.",
        ),
        (
            PLAIN,
            "bottom fits groove",
            {"bottom": 0.21875},
            {"bottom": 0.203125},
            Verdict.CAUTION,
            "Cut the groove 0.203 in wide, from the sheet itself.",
        ),
        (
            PLAIN,
            "room over runner",
            {"bottom": 0.5},
            {"bottom": 0.515625},
            Verdict.STOP,
            "Raise the groove 1/64 in.",
        ),
        (
            PLAIN,
            "room behind",
            {"back_gap": 0.203125},
            {"back_gap": 0.1875},
            Verdict.STOP,
            "Leave 13/64 in behind the drawer, or make the bottom shorter or of plywood.",
        ),
        (
            PLAIN,
            "under the back",
            {"back": 0.125},
            {"back": 0.1},
            Verdict.STOP,
            "Let it reach 3/32 in past the back, or make it of plywood.",
        ),
        (
            replace(PLAIN, grooves=4),
            "room to grow",
            {"movement": 0.0},
            {"movement": 0.002},
            Verdict.STOP,
            "Let it slide in under the back, with 3 grooves, or make it of plywood.",
        ),
        (
            SLIPS,
            "slip above groove",
            {"slip_height": 0.75},
            {"slip_height": 0.734375},
            Verdict.CAUTION,
            "Make the slips 3/4 in high.",
        ),
        (
            PLAIN,
            "clear width",
            {"width": 25.0},
            {"width": 25.0625},
            Verdict.CAUTION,
            "Part it with a muntin 2 in wide.",
        ),
        (
            MUNTIN,
            "clear width",
            {"width": 51.0},
            {"width": 51.125},
            Verdict.CAUTION,
            "Make the drawer 51 in wide or less, or the bottom of plywood and try its sag.",
        ),
        (
            MUNTIN,
            "muntin cheeks",
            {"muntin_thickness": 0.5},
            {"muntin_thickness": 0.484375},
            Verdict.STOP,
            "Make it 1/2 in thick.",
        ),
        (
            MUNTIN,
            "muntin between grooves",
            {"muntin": 1.0},
            {"muntin": 0.984375},
            Verdict.CAUTION,
            "Make it 1 in wide.",
        ),
        (
            MUNTIN,
            "muntin over edge",
            {"muntin_thickness": 1.0},
            {"muntin_thickness": 1.03125},
            Verdict.STOP,
            "Raise the groove to 25/64 in, or make the muntin thinner.",
        ),
    ],
)
def test_each_limit_has_two_sides_and_the_far_one_says_what_would_pass(
    asked, rule, passes, fails, verdict, remedy
):
    good, bad = finding(replace(asked, **passes), rule), finding(replace(asked, **fails), rule)

    assert (good.verdict, str(good.remedy)) == (Verdict.PASS, "")
    assert (bad.verdict, str(bad.remedy)) == (verdict, remedy)


def test_a_bottom_let_past_the_back_as_told_stays_under_it():
    assert finding(replace(PLAIN, back=0.1, over=3 / 32), "under the back").verdict is Verdict.PASS


@pytest.mark.parametrize(
    ("asked", "changes", "sentence"),
    [
        (PLAIN, {"groove_depth": 0.5}, r"A groove 1/2 in deep cuts the side in two; 1/4 in is half of it"),
        (SLIPS, {"groove_depth": 0.375}, r"cuts the slip in two; 3/16 in is half of it"),
        (PLAIN, {"front_depth": 1.0}, r"cuts the front in two; 13/32 in is half of it"),
        (PLAIN, {"play": 0.25}, r"A play of 1/4 in takes the bottom out of grooves 1/4 in deep; 1/32 in"),
        (PLAIN, {"grooves": 2}, r"2 boards cannot be grooved for a bottom; give 3"),
        (SLIPS, {"slip_height": 0.625}, r"has nothing above a groove that ends at 5/8 in; make it 3/4 in"),
        (MUNTIN, {"muntin_thickness": 0.25}, r"no thicker than its groove is wide; 5/8 in is usual"),
        (MUNTIN, {"muntin": 0.5}, r"has nothing between two grooves 1/4 in deep; 2 in is usual"),
        (PLAIN, {"width": 1.0}, r"take 1 in of a drawer 1 in wide; make it more than 1 wide"),
        (PLAIN, {"length": 1.0}, r"take 1-5/16 in of a drawer 1 in long; make it more than 1-5/16 long"),
    ],
)
def test_what_cannot_be_cut_is_refused_with_what_would_work(asked, changes, sentence):
    with pytest.raises(CannotBeLaidOut, match=sentence):
        replace(asked, **changes)


def test_thin_sides_are_given_slips_and_wide_drawers_a_muntin():
    found = solve("bottom-groove", {"width": 37.0, "length": 18.0, "side": 0.3125, "front": 0.75})

    chosen = {each.name: each.value for each in found.chosen}
    assert {name: chosen[name] for name in ("slip", "slip_height", "muntin", "groove_depth")} == {
        "slip": 0.375,
        "slip_height": 0.75,
        "muntin": 2.0,
        "groove_depth": 0.1875,
    }
    assert found.joint.given.carried_by == "slip"
    assert {each.verdict for each in found.joint.findings} == {Verdict.PASS}


def test_plywood_is_as_thick_as_its_groove_and_does_not_move():
    found = solve(
        "bottom-groove", {"width": 15.0, "length": 18.0, "side": 0.5, "front": 0.75, "movement": 0.0}
    ).joint

    assert (found.given.bottom, found.grows, found.shrinks) == (0.25, 0.0, 0.0)
    assert "raised_by" not in {each.name for each in found.settings}


def test_the_muntin_of_a_bottom_held_all_around_has_two_tongues():
    found = bottom_groove(replace(MUNTIN, grooves=4, movement=0.0, bottom=0.25))

    assert found.muntin_length == pytest.approx(18.75 - 0.8125 - 0.5 + 0.5)
    assert found.bottom_depth == pytest.approx(found.muntin_length - 1 / 16)
    assert "muntin_notch" not in {each.name for each in found.settings}


def test_the_size_without_play_and_the_height_of_the_other_groove_are_printed_as_wrong():
    wrong = {each.name: each.wrong for each in bottom_groove(MUNTIN).settings if each.wrong is not None}

    assert wrong == {"bottom_width": pytest.approx(17 + 31 / 32), "muntin_groove": 0.375}


def test_a_groove_is_as_deep_as_the_board_allows():
    assert [usual_groove_depth(board, 0.5) for board in (0.75, 0.5, 0.375, 0.25, 0.1)] == [
        0.25,
        0.25,
        0.1875,
        0.125,
        0.03125,
    ]


def test_a_metric_shop_reads_millimetres():
    words = in_unit(finding(SLIPS, "slip above groove").message, LengthUnit.MILLIMETRE)

    assert words == "A slip has 3.2 mm above its groove; it needs 3.2."


def test_the_limits_say_where_they_come_from():
    assert BOTTOMS.held_least.basis == "from memory"
    assert BOTTOMS.left_part.basis == "common practice"
