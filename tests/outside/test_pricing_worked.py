"""The rate and the price of worked dresser A, to the cent, and the printed sums on rate and margin."""

import pytest

from casewright.pricing.charges import PriceInputs
from casewright.pricing.margins import margin_of, markup_from_margin, markup_of, price_from_margin
from casewright.pricing.materials import direct_amount, material_line
from casewright.pricing.price import price
from casewright.pricing.prices import PriceKind, example_prices
from casewright.pricing.rate import example_year, hourly_cost, hourly_rate, shop_rate
from casewright.pricing.rises import rise_amount
from casewright.pricing.risk import (
    RiskHistory,
    RiskLevel,
    log_deviation,
    log_mean,
    risk_factors,
)

RATIOS = (1.02, 0.95, 1.10, 1.22, 0.98, 1.15, 1.30)


def dresser_materials():
    book = example_prices()
    lumber = [
        ("cherry", "4/4", 39),
        ("cherry", "5/4", 11),
        ("poplar", "4/4", 61),
        ("soft maple", "4/4", 25),
    ]
    others = [
        (PriceKind.HARDWARE, "pull", 10),
        (PriceKind.HARDWARE, "wall restraint", 1),
        (PriceKind.HARDWARE, "screws and buttons", 1),
        (PriceKind.FINISH, "wiping varnish", 2),
        (PriceKind.CONSUMABLE, "glue", 1),
        (PriceKind.CONSUMABLE, "abrasives", 30),
    ]
    return (
        *(material_line(book.lumber(wood, size), feet) for wood, size, feet in lumber),
        *(material_line(book.find(kind, item), quantity) for kind, item, quantity in others),
    )


def dresser(level=RiskLevel.P80):
    rate = shop_rate(example_year())
    return PriceInputs(
        materials=dresser_materials(),
        hours=111.31,
        rate=rate.rate,
        cost_rate=rate.cost,
        markup=0.20,
        factors=risk_factors(RiskHistory(ratios=RATIOS)),
        level=level,
        distance=60,
        per_distance=70,
        tax_rate=0.06,
    )


def test_the_year_of_the_example_shop_gives_its_rate():
    rate = shop_rate(example_year())

    # 117,000 over 1,200 h; 97.50 and, for a tenth of the price, 108.33
    assert (rate.yearly, rate.billable, rate.cost, rate.rate) == (11_700_000, 1200, 9750, 10_833)


def test_a_second_shop_has_its_printed_rate():
    billable = 2080 * 0.60

    # pay 52,000 + burden 10,400 + overhead 24,000; 69.23 and 81.45 an hour with a margin of 15 %
    assert hourly_cost(8_640_000, billable) == 6923
    assert hourly_rate(8_640_000, billable, 0.15) == 8145


def test_the_direct_materials_of_the_dresser_come_out_line_by_line():
    lines = dresser_materials()

    assert [line.amount for line in lines] == [
        *(37_050, 11_825, 25_925, 13_750),
        *(22_000, 1800, 2500, 6400, 1200, 4500),
    ]
    assert direct_amount(lines) == 126_950


def test_the_ratios_of_past_jobs_give_the_printed_factors():
    factors = risk_factors(RiskHistory(ratios=RATIOS))

    # printed to four decimals
    assert log_mean(RATIOS) == pytest.approx(0.0921, abs=0.00005)
    assert log_deviation(RATIOS) == pytest.approx(0.1162, abs=0.00005)
    assert (factors.p50, factors.p80, factors.p90) == (1.0965, 1.2091, 1.2726)


def test_the_dresser_costs_its_base_without_risk():
    result = price(dresser(RiskLevel.PLANNED))

    # worked dresser A
    assert result.charges.charged_materials == 152_340
    assert result.charges.labour == 1_205_821
    assert result.charges.delivery == 4200
    assert result.base == result.before_rounding == 1_362_361


def test_the_dresser_is_asked_at_the_price_that_holds_in_eight_of_ten():
    result = price(dresser())

    # worked dresser A
    assert result.charges.labour + result.charges.contingency == 1_457_958
    assert result.base == 1_362_361
    assert result.before_rounding == 1_614_498
    assert result.asked == 1_615_000
    assert result.tax == 96_900
    assert result.total == 1_711_900


def test_the_dresser_is_paid_in_its_four_stages():
    result = price(dresser())

    assert [stage.amount for stage in result.stages] == [171_190, 684_760, 427_975, 427_975]


def test_cost_and_least_acceptable_price_of_the_dresser_stand_apart_from_what_is_asked():
    result = price(dresser())

    # by hand: 1,269.50 + 42.00 + 111.31 x 97.50 x 1.0965 = 11,900.01, and x 1.2091 = 13,122.03
    assert result.cost == 131_150 + 1_190_001
    assert result.lowest == 131_150 + 1_312_203


def test_cherry_up_twelve_per_cent_adds_what_is_printed():
    assert rise_amount(37_050 + 11_825, 0.12, 0.20) == 7038  # 488.75 x 0.12 x 1.20


@pytest.mark.parametrize(
    ("word", "value", "expected"),
    # common price arithmetic: 100 sold at 150; a margin of a third; 40 % margin on 600
    [
        ("mark-up", markup_of(15_000, 10_000), 0.5),
        ("margin", margin_of(15_000, 10_000), 1 / 3),
        ("mark-up from margin", markup_from_margin(1 / 3), 0.5),
        ("price from margin", price_from_margin(60_000, 0.40), 100_000),
    ],
)
def test_price_words_mean_what_is_printed(word, value, expected):
    assert value == pytest.approx(expected, rel=1e-12), word
