"""A unit through the year: what a file may say of the home, and what follows for every part."""

import json

import pytest

from casewright.measure.saying import in_unit
from casewright.pieces.asked.reading import CannotRead, write_unit
from casewright.pieces.built.season import unit_year, with_year
from casewright.pieces.words.clauses import room_humidity
from casewright.wood.moisture import equilibrium_moisture
from casewright.wood.year import MONTHS, Month
from units import built, chest, dresser, unit

LINES = [
    "July 72 °F 58 %",
    "Jan. 68 F 30",
    "feb 21 °C 32 %",
    "Mar: 8",
    "April 8,5 %",
    "May 9.0",
    "Jun 10",
    "August 11.0",
    "Sept 10",
    "October 9",
    "Nov 8",
    "Dec 7",
]


def season(made):
    """Moisture content now, driest and wettest."""
    return [float(each) for each in (made.climate.now, made.climate.driest, made.climate.wettest)]


def year_of(changes):
    """The year of the small chest with a few fields changed."""
    return unit_year(built(chest(changes)))


def refused(changes):
    """The sentences with which the small chest is refused."""
    with pytest.raises(CannotRead) as caught:
        unit(chest(changes))
    return [str(each) for each in caught.value.problems]


def test_twelve_lines_are_read_in_any_order_and_give_the_ends():
    made = built(chest({"season.months": LINES}))

    assert season(made) == [
        8.5,
        pytest.approx(equilibrium_moisture(68, 30), abs=1e-9),
        11.0,
    ]
    year = unit_year(made).year
    assert (year.driest, year.wettest) == (Month.JANUARY, Month.AUGUST)
    assert year.at(Month.JULY) == pytest.approx(equilibrium_moisture(72, 58), abs=1e-9)
    assert year.at(Month.APRIL) == 8.5
    # 21 °C is 69.8 °F
    assert year.at(Month.FEBRUARY) == pytest.approx(equilibrium_moisture(69.8, 32), abs=1e-9)
    assert year.ground == "your own twelve months"


def test_twelve_months_written_as_air_read_back_as_they_were():
    spec = unit(
        chest({"season": {"months": [{"moisture": 7 + at / 4} for at in range(12)], "fitted": "may"}})
    )

    again = unit(json.loads(write_unit(spec)))

    assert again.season == spec.season
    assert again.season.fitted is Month.MAY


def test_a_climate_gives_both_ends():
    assert season(built(chest({"season.climate": "humid south and coast"}))) == [8.5, 9.5, 12.5]


def test_the_month_of_fitting_stands_for_a_reading_that_nobody_took():
    july, january = (built(chest({"season.fitted": month})) for month in ("July", "jan"))

    assert season(july) == [pytest.approx(11.0, abs=1e-9), 6.2, 11.0]
    assert season(january)[0] == 6.2
    # wood that is wet already is planed higher, for it will only shrink
    assert july.drawers[0].sizes.height > january.drawers[0].sizes.height
    findings = [each for each in july.findings if each.rule == "moisture when fitted"]
    assert [str(each.verdict) for each in findings] == ["caution"]
    assert "July, with wood at 11.0 %" in str(findings[0].message)


def test_a_reading_beats_the_month_of_fitting():
    made = built(chest({"season.fitted": "July", "season.shop": {"moisture": 9}}))

    assert season(made)[0] == 9
    [finding] = [each for each in made.findings if each.rule == "moisture when fitted"]
    assert str(finding.verdict) == "pass"
    assert "2.0 % drier than the home in that month (11.0 %)" in str(unit_year(made).when)


def test_a_file_without_a_year_has_no_new_finding_and_no_new_figure():
    made = built(dresser())

    assert [each for each in made.findings if each.rule == "moisture when fitted"] == []
    moistures = [each.figure for each in made.ledger if each.figure.startswith("moisture.")]
    assert moistures == [f"moisture.{name}" for name in ("now", "driest", "wettest", "swelling", "drying")]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        (
            {"season.months": LINES[:-1]},
            "season.months: a year has twelve months; there is no line for December",
        ),
        ({"season.months": [*LINES, "Dec 7"]}, "season.months: December stands there twice"),
        (
            {"season.months": ["Jan damp", *LINES[1:]]},
            "“Jan damp” is not a month with its air; write “July 10.5”",
        ),
        ({"season.months": ["Ju 7", *LINES[1:]]}, "“Ju” is not a month; write its name, such as July"),
        ({"season.months": ["July 1.2.3", *LINES[1:]]}, "“1.2.3” is not a number; write one such as 10.5"),
        ({"season.months": [{"moisture": 8}] * 11}, "a year has twelve months, January first; 11 are given"),
        ({"season.months": []}, "a year has twelve months, January first; 0 are given"),
        (
            {"season.months": ["July 72 F 99", *LINES[1:]]},
            "season.months[7].humidity: 99 is too large: at most 95",
        ),
        (
            {"season.months": [*LINES[:-1], "Dec 40"]},
            "season.months[12].moisture: 40 is too large: at most 25",
        ),
        ({"season.months": "July 8"}, "is not a list"),
        (
            {"season.climate": "desert"},
            "“desert” is not a climate here; write one of “heated house, cold winters”",
        ),
        ({"season.fitted": "Julember"}, "season.fitted: “Julember” is not a month"),
        ({"season.fitted": 7}, "season.fitted: “7” is not a month"),
        (
            {"season": {"climate": "dry southwest", "wettest": {"moisture": 9}}},
            "given more than once (climate, wettest); keep one of the twelve months, the climate",
        ),
        ({"season": {"climate": "dry southwest", "months": LINES}}, "given more than once (months, climate)"),
    ],
)
def test_a_year_that_cannot_be_used_is_refused_in_a_sentence(changes, sentence):
    [said] = refused(changes)

    assert sentence in said


def test_the_room_that_suits_it_follows_from_the_months():
    # 68 °F and 30 % is the driest month; 11.0 % moisture, the wettest, is 60 % humidity at 70 °F
    assert room_humidity([built(chest({"season.months": LINES}))]) == (30, 60)


def test_the_year_adds_nothing_to_the_ledger_of_the_unit():
    made = built(dresser())
    before = len(made.ledger)

    held = unit_year(made)

    assert len(made.ledger) == before
    assert "year.R5-1.front_july" in held.unit.ledger
    assert "year.R5-1.front_july" in with_year(made, "year.R5-1.front_july").ledger
    assert "moisture.july" in with_year(made, "moisture.july").ledger
    assert with_year(made, "R5-1.height") is made


def test_now_driest_and_wettest_are_those_of_the_drawers_themselves():
    made = built(dresser())

    for each in unit_year(made).drawers:
        gaps = made.drawer(each.codes[0]).sizes.gaps
        assert (each.front.now, each.front.wettest, each.front.driest) == (
            gaps.now,
            gaps.wettest_front,
            gaps.driest_front,
        )
        assert (each.side.wettest, each.side.driest) == (gaps.wettest_side, gaps.driest_side)


def test_drawers_alike_in_height_are_told_once():
    codes = [each.codes for each in unit_year(built(dresser())).drawers]

    assert codes[0] == ("A-R1-1", "A-R1-2")
    assert len(codes) == 5


def test_a_drawer_fitted_in_the_month_is_planed_as_a_unit_with_that_reading():
    held = year_of({})

    for month in (Month.JANUARY, Month.APRIL, Month.JULY):
        moisture = held.year.at(month)
        own = built(chest({"season.shop": {"moisture": float(moisture)}}))
        fit = held.drawers[0].fit(month)
        assert fit.height == own.drawers[0].sizes.height
        assert fit.leave == pytest.approx(own.drawers[0].sizes.gaps.now, abs=1e-12)


def test_what_moves_is_told_with_its_limit():
    found = {(each.part, each.what): each for each in unit_year(built(dresser())).parts}

    reach = found["Bottom of every drawer", "reach under the back"]
    # 18-3/16 of poplar, 0.00289: 0.1209 in at 2.3 % and 0.1314 in at 2.5 %, about a back of 1/2 in
    assert [reach.through.driest, reach.through.now, reach.through.wettest] == pytest.approx(
        [0.3791, 0.5, 0.6314], abs=5e-5
    )
    assert reach.passes
    # the side of 19-3/4 in shrinks 0.113 into a slack of 1/8
    assert found["Runners", "gap at the rear"].through.driest == pytest.approx(0.0123, abs=5e-5)
    top = found["Top", "moves over the case"]
    assert (top.limit, top.through.wettest) == (None, pytest.approx(0.1225, abs=5e-5))
    # sides of soft maple 1/2 in thick move by the radial figure in thickness: 0.5 x 0.00137 x 2.5
    beside = found["Sides of every drawer", "clearance beside them"]
    assert beside.through.wettest == pytest.approx(1 / 32 - 0.5 * 0.00137 * 2.5, abs=1e-9)


def test_quartersawn_sides_move_by_the_tangential_figure_in_thickness():
    made = built(dresser({"woods.drawers": {"wood": "soft maple", "cut": "quarter"}}))

    [beside] = [each for each in unit_year(made).parts if each.what == "clearance beside them"]

    assert beside.through.wettest == pytest.approx(1 / 32 - 0.5 * 0.00289 * 2.5, abs=1e-9)
    assert beside.made_of == "soft maple, quartersawn"


def test_a_board_is_compared_flat_rift_and_quartersawn():
    fronts, sides = unit_year(built(dresser())).boards

    assert (fronts.wood, sides.wood) == ("cherry", "soft maple")
    # Wood Handbook, FPL-GTR-190 (2010), Table 13-5, by the direction rule; rift is the mean
    assert [(each.width, each.thickness) for each in fronts.cuts] == [
        (0.00248, 0.00126),
        (pytest.approx(0.00187), pytest.approx(0.00187)),
        (0.00126, 0.00248),
    ]
    assert [each.is_used for each in fronts.cuts] == [True, False, False]
    # the tallest is 8-13/32 in, from 6.2 to 11.0 %
    assert fronts.cuts[0].year == pytest.approx((8 + 13 / 32) * 0.00248 * 4.8, abs=1e-9)


def test_boards_nailed_too_close_are_found_by_month():
    found = {each.what: each for each in year_of({"back.gap": "1/64"}).parts if each.part == "Back boards"}

    assert not found["gap at each lap"].passes
    assert found["gap at each lap"].through.least[0] is Month.JULY


def test_a_plywood_bottom_keeps_its_play():
    parts = year_of({"drawers.bottom": {"kind": "ply", "hold": "four grooves"}}).parts

    [play] = [each for each in parts if each.what == "play in each groove"]
    assert play.through.wettest < play.through.now < play.through.driest
    assert play.passes
    assert [each for each in parts if each.what == "reach under the back"] == []


def test_the_advice_names_the_month_the_gap_and_the_other_season():
    held = unit_year(built(dresser({"season": {"fitted": "July"}})))
    words = [in_unit(each, held.unit.spec.unit) for each in (held.when, *held.fit)]

    assert words[0].startswith("Fitted in July at 11.0 %, what the home comes to in that month.")
    assert words[1].startswith(
        "R1-1, R1-2: plane to 5-15/32 in, which leaves 1/32 in above; in January the gap is"
    )
    assert "If you fit in January instead, with wood at 6.2 %, leave more" in words[-1]
    assert not any("fit in July instead" in each for each in words)


def test_the_room_of_a_top_is_what_it_moves_apart_from_the_sides():
    more = map(str, unit_year(built(dresser({"woods.top": "walnut"}))).more)

    (top,) = (words for words in more if words.startswith("Top:"))
    # 19-3/4 of flat walnut on flat cherry, 0.00274 and 0.00248: 19.75 x 0.00026 x 2.5 and x 2.3
    assert "goes 0.013 in one way and 0.012 in the other over what it is fixed to" in top


def test_what_else_is_set_by_the_season_is_said_with_its_room():
    bottoms, runners, back, top, lag = map(str, unit_year(built(dresser())).more)

    # worked dresser A: bottoms of poplar 18-3/16 deep, sides 19-3/4 deep of cherry, a slack of 1/8
    assert "goes back 0.131 in and forth 0.121 in" in bottoms
    assert "at 8.5 % leave 1/8 in or more at their rear ends; 1/8 in is drawn" in runners
    # 19.75 x 0.00248 x 4.8 = 0.235, up to a 64th
    assert "would need 1/4 in" in runners
    assert "1/16 in is drawn" in back
    assert "moves as its sides do" in top
    assert "wide panels by weeks" in lag
    assert len(unit_year(built(dresser({"drawers.bottom": {"kind": "ply"}}))).more) == 4


def test_every_month_is_followed_to_what_was_given():
    ledger = unit_year(built(dresser())).unit.ledger

    working = ledger["year.R5-1.front_july"]
    assert working.inputs["change"].name == "year.change.july"
    assert ledger["year.change.july"].inputs["last"].name == "moisture.july"
    assert len(MONTHS) == sum(1 for each in ledger if each.figure.startswith("year.R5-1.leave_in_"))
