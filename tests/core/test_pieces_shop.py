"""A shop's own figures: each changes what it should and nothing else, and a wrong one is refused."""

import pytest

from casewright.measure.lengths import show
from casewright.pieces.asked.reading import CannotRead
from casewright.wood.waste import PartUse
from units import dresser, dresser_estimate, estimated, own_shop

CUTTING = {
    *("P03", "P04", "P05", "P07"),
    *("C02", "C03", "C04", "C07", "C08", "C10"),
    *("D01", "D02", "D03", "D04", "D06", "D08", "D09", "D11", "D13", "D14", "D15"),
}
"""Sawing, chopping and planing: what a harder wood makes slower (common practice)."""
HISTORY = {"ratios": [1.02, 0.95, 1.10, 1.22, 0.98, 1.15, 1.30], "queue_weeks": 6, "miles": 60}
"""What the example shop knows of itself."""


def by_shop(**figures):
    """The estimate of the dresser by the example shop with some figures of its own."""
    return estimated(dresser(), own_shop(**(HISTORY | figures)))


def minutes(estimate):
    return {work.code: work.minutes for work in estimate.labour}


def changes(before, after):
    """The entries that differ, as they are afterwards."""
    return {key: value for key, value in after.items() if before.get(key) != value}


def orders(estimate):
    return {(group.wood, group.bought.name, str(group.use)): group.order for group in estimate.takeoff.groups}


def amounts(estimate):
    return {line.label: line.amount for line in estimate.materials}


def price_lines(estimate):
    return {line.label: line.amount for line in estimate.price.lines}


def test_a_shop_that_says_nothing_has_the_figures_of_the_rooms():
    plain = by_shop()

    assert plain.price == dresser_estimate().price
    assert plain.labour == dresser_estimate().labour
    assert plain.order == dresser_estimate().order


def test_a_shops_own_waste_goes_with_its_wood_and_use():
    own = by_shop(waste=[{"wood": "cherry", "use": "case", "waste": 0.36}])

    # 19.49 and 8.02 rough feet, of which 64 % are used; half a hundredth of a foot becomes 0.008
    assert changes(orders(dresser_estimate()), orders(own)) == pytest.approx(
        {("cherry", "4/4", "case"): 30.453, ("cherry", "5/4", "case"): 12.531}, abs=0.009
    )


def test_a_shops_own_waste_for_all_uses_covers_the_fronts_too():
    own = by_shop(waste=[{"wood": "cherry", "waste": 0.5}])

    # 9.69 rough feet of fronts, half of them wasted
    assert orders(own)["cherry", "4/4", str(PartUse.SEQUENCE)] == pytest.approx(19.38, abs=0.01)


def test_a_waste_for_another_grade_is_left_alone():
    own = by_shop(waste=[{"wood": "poplar", "grade": "No. 1 Common", "waste": 0.5}])

    assert orders(own) == orders(dresser_estimate())


def test_a_cheaper_grade_is_bought_at_more_waste():
    own = by_shop(grades={"poplar": "No. 1 Common"})

    # common practice: 25 % of No. 1 Common poplar; 51.47 rough feet
    assert changes(orders(dresser_estimate()), orders(own)) == pytest.approx(
        {("poplar", "4/4", "inside"): 68.63}, abs=0.01
    )


def test_a_shops_own_price_stands_in_place_of_the_example():
    cherry = {"kind": "lumber", "item": "cherry", "size": "4/4", "unit": "bd ft", "price": "10"}

    own = by_shop(prices=[cherry])

    assert changes(amounts(dresser_estimate()), amounts(own)) == {"cherry 4/4": 390_00}


def test_a_shops_own_minutes_are_taken_for_its_method():
    own = by_shop(minutes={"D06": {"hand": 3}, "D08": {"machine": 1}})

    # 92 tails at 3 min; sockets are still chopped by hand
    assert changes(minutes(dresser_estimate()), minutes(own)) == {"D06": 276.0}


def test_a_shop_works_by_hand_where_it_says_so():
    own = by_shop(methods={"P04": "hand"})

    assert changes(minutes(dresser_estimate()), minutes(own)) == {"P04": 108 * 30.0}


def test_a_wood_that_works_harder_takes_longer_to_cut():
    own = by_shop(wood_factors={"cherry": 1.5})

    ratios = {code: after / minutes(dresser_estimate())[code] for code, after in minutes(own).items()}
    # a quotient of floats
    assert {code for code, ratio in ratios.items() if ratio == pytest.approx(1.5)} == CUTTING
    assert {ratio for code, ratio in ratios.items() if code not in CUTTING} == {1.0}


def test_another_wood_of_the_case_brings_its_own_factor():
    estimate = estimated(dresser({"woods.case": "hard maple"}))

    # common practice: hard maple 1.2; 108 boards at 6 min
    assert estimate.wood_factor.factor == 1.2
    assert minutes(estimate)["P04"] == pytest.approx(108 * 6 * 1.2)  # a float product


def test_a_shops_own_allowance_goes_onto_the_hours():
    # 5,963 min and a fifth, in hours
    assert by_shop(allowance=0.2).hours == 119.26


def test_a_shops_own_year_makes_its_rate():
    rate = by_shop(yearly_costs={"pay": "70000", "rent": "26000"}, billable_share=0.5, profit=0.2).rate

    # 96,000 over 48 weeks of 20 h is 100.00; a fifth of the price is profit: 125.00
    assert (rate.cost, rate.rate) == (100_00, 125_00)


def test_terms_change_the_price_and_not_the_work():
    own = by_shop(markup=0.5, tax_rate=0.1, rounding="100")

    # 1,269.50 and half; 16,144.98 less 253.90 plus 634.75 is 16,525.83
    assert price_lines(own)["mark-up on materials"] == 634_75
    assert (own.price.before_rounding, own.price.asked) == (16_525_83, 16_600_00)
    assert (own.price.tax, own.price.total) == (1_660_00, 18_260_00)
    assert own.labour == dresser_estimate().labour


def test_no_job_is_taken_on_below_the_least_charge():
    assert by_shop(minimum="20000").price.asked == 20_000_00


def test_a_shops_own_stages_split_the_total_to_the_cent():
    third = {"trigger": "a third", "share": 1 / 3}

    stages = by_shop(stages=[third, third, third]).price.stages

    assert [stage.amount for stage in stages] == [570_633, 570_633, 570_634]


def test_outwork_and_extras_stand_in_the_price_as_lines():
    own = by_shop(
        outwork=[{"label": "turned feet", "amount": "120.00"}], extras=[{"label": "crate", "amount": 80}]
    )

    # common practice: 15 % on outwork
    assert changes(price_lines(dresser_estimate()), price_lines(own)) == {
        "turned feet": 120_00,
        "mark-up on outwork": 18_00,
        "crate": 80_00,
    }


@pytest.mark.parametrize(
    ("figures", "p50", "p80"),
    [
        ({"ratios": []}, 1.0, 1.15),  # what a shop starts with
        ({"ratios": [1.3, 1.2]}, 1.0, 1.15),  # two jobs are too few to learn from
        ({"ratios": [1.1, 1.1, 1.1]}, 1.1, 1.1),
    ],
)
def test_the_risk_is_learned_from_three_jobs_on(figures, p50, p80):
    risk = by_shop(**figures).risk

    assert (risk.p50, risk.p80) == (p50, p80)


@pytest.mark.parametrize(
    ("level", "before_rounding"),
    # 13,623.61 as planned; 111.31 h x 108.33 times 0.0965, 0.2091 and 0.2726
    [
        ("planned", 13_623_61),
        ("P50", 13_623_61 + 1_163_62),
        ("P80", 13_623_61 + 2_521_37),
        ("P90", 13_623_61 + 3_287_07),
    ],
)
def test_a_surer_price_is_a_higher_one(level, before_rounding):
    assert by_shop(risk=level).price.before_rounding == before_rounding


def test_a_queue_moves_the_date_and_not_the_price():
    own = by_shop(queue_weeks=0)

    assert own.promise.likely_weeks == pytest.approx(dresser_estimate().promise.likely_weeks - 6)
    assert own.price == dresser_estimate().price


def test_a_shop_that_does_not_drive_charges_no_delivery():
    own = by_shop(miles=0)

    assert "delivery" not in price_lines(own)
    assert own.price.before_rounding == dresser_estimate().price.before_rounding - 42_00


def test_wider_boards_and_narrower_ones_change_the_glue_lines():
    own = by_shop(widest_board="7", average_board={"cherry": "5"})

    boards = {line.line: line.boards for line in own.takeoff.lines}
    before = {line.line: line.boards for line in dresser_estimate().takeoff.lines}
    # 20-1/2 in boards of 5; parts over 7 in are now of two
    assert changes(before, boards) == {"T1": 5, "F4": 2, "S4": 2, "F5": 2, "S5": 2, "K5": 2}


def test_kerf_and_trim_are_in_the_sequence_sets():
    own = by_shop(kerf="1/4", end_trim="2", edge_trim="1/2")

    along, across = (found for order in own.order for found in order.sequences)
    # 2 x 18-9/16 + 1/4 + 4; 29-9/64 of fronts + 3/4 + 1
    assert show(along.length) == "41-3/8"
    assert show(across.width) == "30-57/64"


def test_a_thick_saw_asks_for_wider_pins():
    rules = {
        finding.rule for finding in by_shop(saw_kerf="1/8").unit.findings if str(finding.verdict) == "stop"
    }

    # a kerf of 1/8 and 1/64 do not go between tails 1/8 apart
    assert "JC6" in rules


def test_a_short_rack_is_found_out():
    findings = [finding for finding in by_shop(chisels=["2"]).unit.findings if finding.rule == "JC13"]

    assert {str(finding.verdict) for finding in findings} == {"caution"}


@pytest.mark.parametrize(
    ("figures", "field", "good"),
    [
        ({"waste": [{"wood": "chery", "waste": 0.2}]}, "waste[1].wood", "cherry"),
        ({"waste": [{"wood": "cherry", "waste": 1}]}, "waste[1].waste", "0.2"),
        ({"waste": [{"wood": "cherry", "waste": 0.2, "use": "cas"}]}, "waste[1].use", "'case'"),
        ({"methods": {"P04": "robot"}}, "methods.P04", "'machine'"),
        ({"minutes": {"D06": {"hand": -1}}}, "minutes.D06.hand", "25"),
        ({"prices": [{"kind": "lumbr", "item": "cherry", "price": 1}]}, "prices[1].kind", "'lumber'"),
        ({"prices": [{"kind": "lumber", "item": "cherry", "price": "1,5"}]}, "prices[1].price", "9.50"),
        ({"prices": [{"kind": "lumber", "item": "cherry", "price": -1}]}, "prices[1].price", "9.50"),
        ({"extras": [{"label": "crate", "amount": "nan"}]}, "extras[1].amount", "9.50"),
        ({"extras": [{"label": "crate", "amount": True}]}, "extras[1].amount", "9.50"),
        ({"extras": [{"label": "crate", "amount": None}]}, "extras[1].amount", "9.50"),
        ({"yearly_costs": {"rent": "much"}}, "yearly_costs.rent", "9.50"),
        ({"ratios": [1.1, 0]}, "ratios[2]", "1.02"),
        ({"risk": "P70"}, "risk", "'P80'"),
        ({"markup": -1}, "markup", "0.2"),
        ({"rounding": 0}, "rounding", "10"),
        ({"tax_rate": 1}, "tax_rate", "0.06"),
        ({"profit": 1}, "profit", "0.1"),
        ({"billable_share": 0}, "billable_share", "0.625"),
        ({"saw_kerf": 0}, "saw_kerf", "1/32"),
        ({"grade": "Best"}, "grade", "'FAS'"),
        ({"average_board": {"cherry": 0}}, "average_board.cherry", "6"),
        ({"markupp": 0.2}, "markupp", "did you mean markup?"),
        ({"symbol": "dollars"}, "symbol", "$"),
    ],
)
def test_a_wrong_figure_is_refused_by_its_field_with_one_that_would_do(figures, field, good):
    with pytest.raises(CannotRead) as refused:
        own_shop(**figures)

    (problem,) = refused.value.problems
    assert problem.field == field
    assert good in problem.message


@pytest.mark.parametrize(
    ("figures", "sentence"),
    [
        ({"minutes": {"D99": {"hand": 1}}}, "there is no operation D99; the hours table has the codes"),
        ({"stages": [{"trigger": "a", "share": 0.5}]}, "the stages add up to 0.5 of the price; make them 1"),
    ],
)
def test_figures_that_do_not_go_together_are_refused(figures, sentence):
    with pytest.raises(CannotRead, match=sentence):
        own_shop(**figures)
