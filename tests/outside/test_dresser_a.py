"""Worked dresser A, a trade worked example of six drawers, two over four: its case, drawers and joints.

Every expected figure is as it is printed there; where it is rounded in print, the tolerance is half its last
place.
"""

from typing import NamedTuple

import pytest

from casewright.measure.lengths import show, show_mm
from casewright.pieces.built.standing import unit_standing
from casewright.stability.masses import at_travel
from casewright.stability.situations import all_open_filled
from casewright.stability.tipping import tip_case
from units import dresser_estimate

SOURCE = "worked dresser A, a trade worked example"


class Row(NamedTuple):
    """One row of the printed table: sizes off the rule, millimetres, gaps in thousandths, tails."""

    row: int
    opening: str
    height: str
    height_mm: str
    gap_now: str
    wettest_front: float
    wettest_side: float
    driest_front: float
    front_tails: int
    dividers: float
    back_height: str
    back_height_mm: str
    back_tails: int


ROWS = [
    Row(1, "5-1/2", "5-27/64", "137.7", "5/64", 0.045, 0.039, 0.109, 3, 1.7656, "4-43/64", "118.7", 3),
    Row(2, "6-1/4", "6-11/64", "156.8", "5/64", 0.040, 0.034, 0.113, 4, 1.5117, "5-27/64", "137.7", 3),
    Row(3, "7", "6-29/32", "175.4", "3/32", 0.051, 0.044, 0.133, 4, 1.6953, "6-5/32", "156.4", 4),
    Row(4, "7-3/4", "7-21/32", "194.5", "3/32", 0.046, 0.038, 0.137, 5, 1.5063, "6-29/32", "175.4", 4),
    Row(5, "8-1/2", "8-13/32", "213.5", "3/32", 0.042, 0.033, 0.142, 5, 1.6562, "7-21/32", "194.5", 5),
]
BY_ROW = pytest.mark.parametrize("printed", ROWS, ids=lambda printed: f"row {printed.row}")


def unit():
    return dresser_estimate().unit


def drawer(row, column=1):
    return unit().drawer(f"A-R{row}-{column}")


def test_the_case_closes_at_the_printed_heights_and_widths():
    face = unit().face

    assert show(face.opening_total) == "35"
    assert show(face.body_height) == "39-1/2"
    assert show(face.overall_height) == "44-3/8"
    assert show(face.clear_width) == "38"
    assert show(face.opening_depth) == "19-1/4"


def test_the_two_over_the_top_row_share_its_width():
    widths = [show(opening.width) for opening in unit().face.rows[0].openings]

    assert widths == ["18-5/8", "18-5/8"]


def test_the_sides_shrink_and_swell_by_the_printed_amounts():
    case = unit().case

    # printed to three decimals: 19.75 x 0.00248 x 2.3 and x 2.5
    assert case.side_shrinkage == pytest.approx(0.113, abs=0.0005)
    assert case.side_swelling == pytest.approx(0.122, abs=0.0005)
    assert show(case.slack) == "1/8"


@pytest.mark.parametrize(
    ("code", "width"), [("A-R1-1", "18-9/16"), ("A-R1-2", "18-9/16"), ("A-R2-1", "37-15/16")]
)
def test_the_drawers_have_the_printed_widths_and_lengths(code, width):
    sizes = unit().drawer(code).sizes

    assert (show(sizes.width), show(sizes.length), show(sizes.side_length)) == (width, "18-3/4", "18-9/16")


@BY_ROW
def test_each_row_of_drawers_has_the_printed_heights(printed):
    sizes = drawer(printed.row).sizes

    assert show(sizes.opening.height) == printed.opening
    assert (show(sizes.height), show_mm(sizes.height)) == (printed.height, printed.height_mm)
    assert show(sizes.gaps.now) == printed.gap_now
    assert (show(sizes.back_height), show_mm(sizes.back_height)) == (
        printed.back_height,
        printed.back_height_mm,
    )


@BY_ROW
def test_each_row_of_drawers_has_the_printed_gaps_through_the_year(printed):
    gaps = drawer(printed.row).sizes.gaps

    # printed to three decimals
    assert gaps.wettest_front == pytest.approx(printed.wettest_front, abs=0.0005)
    assert gaps.wettest_side == pytest.approx(printed.wettest_side, abs=0.0005)
    assert gaps.driest_front == pytest.approx(printed.driest_front, abs=0.0005)


@BY_ROW
def test_each_row_of_drawers_has_the_printed_tails(printed):
    joints = drawer(printed.row).joints

    assert joints.front.layout.count == printed.front_tails
    assert joints.back.layout.count == printed.back_tails
    assert joints.front.layout.pitch == pytest.approx(printed.dividers, abs=0.00006)  # to four decimals


@pytest.mark.parametrize("row", [1, 2, 3, 4, 5])
def test_every_front_is_set_out_with_the_same_two_gauges(row):
    front = drawer(row).joints.front

    assert (show(front.gauge_1), show(front.gauge_2), show(front.wrong_gauge_2)) == ("5/8", "7/16", "1/2")
    assert (show(front.layout.half_pin), show(front.layout.pin), front.layout.slope) == ("1/8", "1/8", 8)


def test_the_tails_of_row_five_stand_where_the_worked_joint_has_them():
    # worked joint J1: edges at the end of the side, from its bottom edge up, to the nearest 1/64
    edges = [
        (show(round(tail.lower_end * 64) / 64), show(round(tail.upper_end * 64) / 64))
        for tail in drawer(5).joints.front.layout.tails
    ]

    assert edges == [
        ("1/8", "1-21/32"),
        ("1-25/32", "3-5/16"),
        ("3-7/16", "4-31/32"),
        ("5-3/32", "6-5/8"),
        ("6-3/4", "8-9/32"),
    ]


def test_the_back_of_row_five_is_set_out_as_the_worked_joint():
    # worked joint J3: dividers 1.48125, lower edge of the back 5/8 above that of the side
    back = drawer(5).joints.back

    assert back.layout.pitch == pytest.approx(1.48125, abs=1e-9)  # exact in print
    assert show(back.layout.half_pin) == "3/16"
    assert show(drawer(5).sizes.back_foot) == "5/8"


@pytest.mark.parametrize(
    ("code", "pieces", "across", "deep", "muntin"),
    [
        ("A-R1-1", 1, "18", "18-3/16", None),
        ("A-R2-1", 2, "17-29/32", "18-3/16", "18-3/16"),
        ("A-R5-1", 2, "17-29/32", "18-3/16", "18-3/16"),
    ],
)
def test_the_bottoms_have_the_printed_sizes(code, pieces, across, deep, muntin):
    bottom = unit().drawer(code).bottom

    assert (bottom.pieces, show(bottom.across), show(bottom.deep)) == (pieces, across, deep)
    assert (bottom.muntin and show(bottom.muntin)) == muntin


def test_the_bottom_of_row_five_needs_its_muntin():
    bottom = drawer(5).bottom

    # printed to three decimals
    assert bottom.sag_without_muntin == pytest.approx(0.133, abs=0.0005)
    assert drawer(5).sizes.inside.width / 300 == pytest.approx(0.123, abs=0.0005)
    assert bottom.sag == pytest.approx(0.007, abs=0.0005)


def test_the_dividers_stand_on_the_story_stick_where_they_are_printed():
    # worked joint J5: top edges from the underside of the case bottom
    assert [show(top) for top in unit().face.divider_tops(0.75)] == ["10", "18-1/2", "26-1/4", "33-1/4"]


def test_the_pulls_of_the_wide_drawers_stand_under_those_of_the_half_drawers():
    centres = {each.pulls for each in unit().drawers if len(each.pulls) == 2}

    # 9-5/16 from each edge of the opening, and the case side beyond it
    assert [tuple(map(show, pair)) for pair in centres] == [("10-1/16", "29-7/16")]
    assert sum(len(each.pulls) for each in unit().drawers) == 10


@pytest.mark.parametrize(
    ("code", "weight", "centre"),
    [
        ("A-R1-1", 6.97, 8.20),
        ("A-R1-2", 6.97, 8.20),
        ("A-R2-1", 13.43, 8.03),
        ("A-R3-1", 14.45, 8.04),
        ("A-R4-1", 15.50, 8.05),
        ("A-R5-1", 16.55, 8.06),
    ],
)
def test_each_drawer_weighs_what_is_printed(code, weight, centre):
    mass = unit().masses.drawers[code]

    assert mass.weight == pytest.approx(weight, abs=0.005)
    # where the weight of a pull hangs is not printed: a quarter of an inch moves the centre by a hundredth
    assert mass.y == pytest.approx(centre, abs=0.02)


def test_the_case_and_the_whole_dresser_weigh_what_is_printed():
    masses = unit().masses

    assert masses.case.weight == pytest.approx(87.0, abs=0.05)
    assert masses.case.y == pytest.approx(10.90, abs=0.005)
    assert masses.total == pytest.approx(160.8, abs=0.05)


def test_the_drawers_hold_the_printed_volume_of_clothes():
    stand = unit().stand

    assert stand.volume == pytest.approx(11.56, abs=0.005)
    assert stand.fill == pytest.approx(98.3, abs=0.05)


@pytest.mark.parametrize(
    ("kind", "about", "holding", "tipping", "factor"),
    [
        ("all open", "", 948, 619, 1.53),
        ("child, level", "A-R5-1", 1411, 824, 1.71),
        ("child, carpet", "A-R5-1", 1328, 844, 1.57),
        ("push", "", 948, 771, 1.23),
    ],
)
def test_the_dresser_holds_and_tips_with_the_printed_moments(kind, about, holding, tipping, factor):
    (case,) = (
        case for case in unit().stand.cases if (case.situation.kind, case.situation.about) == (kind, about)
    )

    # the printed heights of the drawers are those of their openings' middles, to a tenth: on the carpet an
    # inch of height moves a drawer's moment by 0.4 in-lb, and there are five more of them
    assert case.holding == pytest.approx(holding, abs=2.5)
    assert case.tipping == pytest.approx(tipping, abs=1.5)
    assert case.factor == pytest.approx(factor, abs=0.006)


def test_the_greatest_safe_travel_is_the_printed_one():
    assert show(unit().stand.safe_travel) == "13-19/64"


@pytest.mark.parametrize(
    ("travel", "holding", "tipping", "factor"), [(14, 948, 877, 1.08), (15.75, 948, 1179, 0.80)]
)
def test_further_out_the_dresser_stands_as_printed_and_at_last_tips(travel, holding, tipping, factor):
    further = tip_case(all_open_filled(at_travel(unit().stand.piece, travel)))

    # the printed sums are of weights and centres to a hundredth
    assert further.holding == pytest.approx(holding, abs=1)
    assert further.tipping == pytest.approx(tipping, abs=1)
    assert further.factor == pytest.approx(factor, abs=0.006)


def test_the_screen_shows_how_it_stands_beyond_its_stops():
    shown = {show(each.travel): each.case.factor for each in unit_standing(unit()).further}

    assert list(shown) == ["12-1/2", "14", "18-3/4"]
    assert shown["14"] == pytest.approx(1.08, abs=0.006)


def test_the_dresser_is_covered_by_all_three_limits():
    held = unit_standing(unit())

    assert held.covered
    assert [float(each.found) for each in held.limits] == pytest.approx([44.375, 160.8, 11.56], abs=0.05)
    assert [each.least for each in held.limits] == [27, 30, 3.2]


def test_every_drawer_stops_at_two_thirds_with_six_and_a_quarter_still_engaged():
    travels = {show(each.travel) for each in unit().drawers}
    engaged = {show(each.sizes.length - each.travel) for each in unit().drawers}

    assert (travels, engaged) == ({"12-1/2"}, {"6-1/4"})


def found(rule, about=""):
    return [finding for finding in unit().findings if finding.rule == rule and about in ("", finding.about)]


@pytest.mark.parametrize(
    ("rule", "verdict"),
    [
        ("stack closes", "pass"),
        ("columns close", "pass"),
        ("depth season", "pass"),
        ("runner slack", "pass"),
        ("cross-grain fixing", "pass"),
        ("jam", "pass"),
        ("bottom sag", "pass"),
        ("JC1", "pass"),
        ("JC2", "pass"),
        ("JC8", "pass"),
        ("wide boards", "caution"),
        ("class", "caution"),
        ("tip scope", "pass"),
        ("tip all open", "pass"),
        ("tip push", "caution"),
    ],
)
def test_the_checks_come_out_as_printed(rule, verdict):
    assert {str(finding.verdict) for finding in found(rule)} == {verdict}, SOURCE


@pytest.mark.parametrize(
    ("rule", "about", "number", "needed", "within"),
    # the tolerance is half the last place of what is printed
    [
        ("depth season", "A-R1-1", 0.5, 0.113 + 0.131 + 0.063, 0.0015),
        ("runner slack", "", 0.125, 0.113, 0.0005),
        ("drawer shape", "A-R5-1", 18.75, 18.97, 0.005),
        ("jam", "A-R2-1", 6.25, 5.8, 0.05),
        ("bottom sag", "A-R5-1", 0.007, 17.469 / 300, 0.0005),
        ("JC2", "A-R5-1", 21.3, 30, 0.05),
        ("tip all open", "", 1.53, 1.25, 0.005),
        ("tip push", "", 1.23, 1.25, 0.005),
    ],
)
def test_the_checks_compare_the_printed_numbers(rule, about, number, needed, within):
    (finding,) = found(rule, about)

    assert finding.found == pytest.approx(number, abs=within), SOURCE
    assert finding.needed == pytest.approx(needed, abs=within), SOURCE


def test_only_the_wide_drawers_are_a_caution_for_their_shape():
    verdicts = [str(finding.verdict) for finding in found("drawer shape")]

    assert verdicts == ["pass", "pass", *["caution"] * 4]


def test_no_check_of_the_dresser_says_stop():
    assert [finding.rule for finding in dresser_estimate().findings if finding.verdict == "stop"] == []


def test_the_cautions_are_the_printed_ones_and_no_others():
    cautions = [finding.rule for finding in dresser_estimate().findings if finding.verdict == "caution"]

    assert sorted(cautions) == ["class", *["drawer shape"] * 4, "tip push", "wide boards"]


def test_the_wide_parts_are_named_with_their_rough_widths():
    (wide,) = found("wide boards")

    assert [part in str(wide.message) for part in ("F3 7-5/32", "F4 7-29/32", "F5 8-21/32")] == [True] * 3
