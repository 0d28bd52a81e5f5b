"""A unit through the year against print: worked gaps, the handbook's moistures, and what makers report."""

import pytest

from casewright.measure.lengths import show
from casewright.pieces.built.season import unit_year
from casewright.wood.year import MONTHS, Month, home_climate
from units import built, chest, dresser_estimate

# worked dresser A, a trade worked example: opening, gap now, wettest of front and side, driest of the front
DRESSER = [
    ("5-1/2", "5/64", 0.045, 0.039, 0.109),
    ("6-1/4", "5/64", 0.040, 0.034, 0.113),
    ("7", "3/32", 0.051, 0.044, 0.133),
    ("7-3/4", "3/32", 0.046, 0.038, 0.137),
    ("8-1/2", "3/32", 0.042, 0.033, 0.142),
]


@pytest.mark.parametrize("row", range(5))
def test_the_year_of_the_worked_dresser_runs_between_its_printed_gaps(row):
    held = unit_year(dresser_estimate().unit)
    opening, now, front, side, driest = DRESSER[row]

    each = held.drawers[row]

    assert (show(each.opening), show(each.front.now)) == (opening, now)
    # printed to three decimals; its home is 6.2 % when driest and 11.0 % when wettest
    assert each.front.months[Month.JULY.place] == pytest.approx(front, abs=0.0005)
    assert each.side.months[Month.JULY.place] == pytest.approx(side, abs=0.0005)
    assert each.front.months[Month.JANUARY.place] == pytest.approx(driest, abs=0.0005)
    assert each.least == (Month.JULY, each.side.months[Month.JULY.place])


def test_the_worked_dressers_side_bottom_and_slack_move_as_printed():
    found = {(each.part, each.what): each.through for each in unit_year(dresser_estimate().unit).parts}

    # worked dresser A: 19.75 x 0.00248 x 2.3 = 0.113 and x 2.5 = 0.122, slack 1/8, bottom grown by 0.131
    top = found["Top", "moves over the case"]
    assert (top.driest, top.wettest) == (pytest.approx(-0.113, abs=0.0005), pytest.approx(0.122, abs=0.0006))
    assert found["Runners", "gap at the rear"].driest == pytest.approx(0.125 - 0.113, abs=0.0006)
    reach = found["Bottom of every drawer", "reach under the back"]
    assert reach.wettest - reach.now == pytest.approx(0.131, abs=0.0005)


def test_the_bedsides_drawer_runs_between_its_printed_gaps():
    # worked bedside B, a trade worked example: an opening 4 in high, a front of flat-sawn walnut, sides of
    # quartersawn hard maple, worked at 8.5 % for a home between 6.2 and 11.0 %
    held = unit_year(
        built(
            chest(
                {
                    "body": {"width": "16-1/2", "depth": "14-1/2", "opening_total": "4"},
                    "rows": [{}],
                    "woods.fronts": "walnut",
                    "woods.drawers": {"wood": "hard maple", "cut": "quarter"},
                    "drawers.front": "3/4",
                    "drawers.side": "3/8",
                }
            )
        )
    )

    [each] = held.drawers
    assert (show(each.height), show(each.front.now)) == ("3-15/16", "1/16")
    # printed to three decimals: 0.036 when wettest, 0.087 when driest; the front moves more than the sides
    assert each.front.wettest == pytest.approx(0.036, abs=0.0005)
    assert each.front.driest == pytest.approx(0.087, abs=0.0005)
    assert each.least == (Month.JULY, each.front.months[Month.JULY.place])
    assert each.greatest == (Month.JANUARY, each.front.months[Month.JANUARY.place])
    assert (held.boards[1].cuts[2].is_used, held.boards[1].cuts[2].width) == (True, 0.00165)


# Wood Handbook, FPL-GTR-282 (2021), Table 4-2: temperature, humidity and the moisture that wood comes to; the
# table prints tenths, and a few of its cells differ by one from the equation
TABLE_4_2 = [
    (70, 30, 6.2),
    (70, 35, 6.9),
    (70, 40, 7.7),
    (70, 45, 8.5),
    (70, 50, 9.2),
    (70, 55, 10.1),
    (70, 60, 11.0),
    (80, 60, 10.8),
    (80, 55, 9.9),
    (60, 50, 9.4),
    (60, 40, 7.8),
    (50, 30, 6.3),
]


def test_twelve_months_of_air_come_to_the_handbooks_moistures():
    months = [{"temperature_f": degrees, "humidity": humidity} for degrees, humidity, _ in TABLE_4_2]

    year = unit_year(built(chest({"season.months": months}))).year

    assert list(year.months) == pytest.approx([printed for _, _, printed in TABLE_4_2], abs=0.1)


@pytest.mark.parametrize(
    ("name", "average"),
    # Wood Handbook, FPL-GTR-190 (2010), Figure 13-1 and Table 13-2: what wood indoors averages
    [("most of the United States", 8), ("dry southwest", 6), ("humid south and coast", 11)],
)
def test_a_climate_averages_what_the_handbook_says(name, average):
    year = unit_year(built(chest({"season.climate": name}))).year

    assert sum(year.months) / len(MONTHS) == pytest.approx(average, abs=1e-9)
    assert year.ground == f"the climate “{home_climate(name).name}”, a smooth year"


@pytest.mark.parametrize(
    ("wood", "expected", "tolerance"),
    # rpwoodwork.com, 12 August 2012: a front of 4 in, flat-sawn, from 35 to 80 % humidity at 70 °F; "about"
    [("hard maple", 1 / 8, 0.005), ("cherry", 3 / 32, 0.006), ("walnut", 3 / 32, 0.007)],
)
def test_a_front_of_four_inches_closes_its_gap_as_a_maker_reports(wood, expected, tolerance):
    made = built(
        chest(
            {
                "body.opening_total": "12-1/2",
                "graduation": {"rule": "equal"},
                "woods.fronts": wood,
                "season": {
                    "shop": {"temperature_f": 70, "humidity": 35},
                    "driest": {"temperature_f": 70, "humidity": 35},
                    "wettest": {"temperature_f": 70, "humidity": 80},
                },
            }
        )
    )

    each = unit_year(made).drawers[0]
    assert each.height == pytest.approx(4, abs=0.1)
    closes = (each.front.driest - each.front.wettest) * 4 / each.height
    assert closes == pytest.approx(expected, abs=tolerance)


def test_a_quartersawn_side_gets_thicker_as_a_maker_reports():
    # rpwoodwork.com, 5 August 2012: hard maple, quartersawn, 3/8 in thick, from 35 to 80 % humidity at 70 °F
    made = built(
        chest(
            {
                "woods.drawers": {"wood": "hard maple", "cut": "quarter"},
                "drawers.side": "3/8",
                "season": {
                    "shop": {"temperature_f": 70, "humidity": 35},
                    "driest": {"temperature_f": 70, "humidity": 35},
                    "wettest": {"temperature_f": 70, "humidity": 80},
                },
            }
        )
    )

    [beside] = [each for each in unit_year(made).parts if each.what == "clearance beside them"]
    # reported as 0.012
    assert beside.through.now - beside.through.wettest == pytest.approx(0.012, abs=0.0005)
