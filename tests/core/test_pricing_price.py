"""The price: to the cent against an exact sum, and what a discount eats."""

from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.measure.ledger import Ledger
from casewright.pricing.charges import PlainLine, PriceInputs
from casewright.pricing.discount import Reach, discount_of, discounted
from casewright.pricing.materials import material_line
from casewright.pricing.price import price
from casewright.pricing.prices import PriceKind, PriceRow
from casewright.pricing.rises import labour_rise, material_rises, rise_amount
from casewright.pricing.risk import RiskFactors, RiskLevel
from casewright.pricing.terms import house_terms

FACTORS = RiskFactors(p50=1.05, p80=1.2, p90=1.3, basis="example")


def lumber(price_cents, quantity, item="cherry"):
    row = PriceRow(kind=PriceKind.LUMBER, item=item, size="4/4", unit="bd ft", price=price_cents)
    return material_line(row, quantity)


def small_job(**changes):
    plain = {
        "materials": (lumber(1000, 10),),
        "hours": 10.0,
        "rate": 10_000,
        "cost_rate": 9000,
        "markup": 0.2,
        "factors": FACTORS,
    }
    return PriceInputs(**(plain | changes))


def cents(value):
    return int(value.quantize(Decimal(1), rounding=ROUND_HALF_UP))


def hundredths(least, most):
    return st.integers(least, most).map(lambda whole: whole / 100)


JOBS = st.fixed_dictionaries(
    {
        "materials": st.lists(
            st.tuples(st.integers(0, 5000), hundredths(0, 20_000)).map(lambda line: lumber(*line)), max_size=5
        ).map(tuple),
        "hours": hundredths(0, 100_000),
        "rate": st.integers(1000, 30_000),
        "cost_rate": st.integers(500, 30_000),
        "markup": hundredths(0, 100),
        "outwork": st.lists(
            st.integers(0, 10**6).map(lambda amount: PlainLine(label="glass", amount=amount)), max_size=2
        ).map(tuple),
        "outwork_markup": hundredths(0, 100),
        "distance": st.integers(0, 500),
        "per_distance": st.integers(0, 200),
        "level": st.sampled_from(RiskLevel),
        "step": st.sampled_from([1, 100, 500, 1000, 10_000]),
        "minimum": st.integers(0, 10**6),
        "tax_rate": hundredths(0, 25),
    }
)


@given(JOBS)
def test_the_price_is_the_exact_sum_to_the_cent(job):
    given_ = small_job(**job)
    d = {name: Decimal(str(job[name])) for name in ("hours", "markup", "outwork_markup", "tax_rate")}
    factor = {"planned": "1", "P50": "1.05", "P80": "1.2", "P90": "1.3"}[job["level"]]
    direct = sum(
        (cents(Decimal(line.unit_price) * Decimal(str(line.quantity))) for line in job["materials"]), 0
    )
    outwork = sum(line.amount for line in job["outwork"])
    expected = (
        cents(direct * (1 + d["markup"]))
        + cents(d["hours"] * Decimal(factor) * job["rate"])
        + cents(outwork * (1 + d["outwork_markup"]))
        + job["distance"] * job["per_distance"]
    )

    result = price(given_)

    assert result.before_rounding == expected
    assert 0 <= result.asked - max(expected, job["minimum"]) < job["step"]
    assert result.asked % job["step"] == 0
    assert result.tax == cents(result.asked * d["tax_rate"])


@given(JOBS)
def test_lines_add_up_to_the_price_and_stages_to_the_total(job):
    result = price(small_job(**job))

    assert sum(line.amount for line in result.lines) == result.before_rounding
    assert sum(stage.amount for stage in result.stages) == result.total == result.asked + result.tax
    assert result.base + result.charges.contingency == result.before_rounding


@given(JOBS, st.integers(1, 5000))
def test_a_higher_rate_never_lowers_the_price(job, more):
    before = price(small_job(**job))
    after = price(small_job(**(job | {"rate": job["rate"] + more})))

    assert after.asked >= before.asked


@given(JOBS)
def test_the_least_acceptable_price_is_never_below_the_expected_cost(job):
    result = price(small_job(**job))

    assert result.lowest >= result.cost


def test_the_three_numbers_are_kept_apart():
    result = price(small_job())

    # direct 100.00; hours 10 at 90.00 x 1.05 and x 1.2; asked 120.00 + 10 x 100.00 x 1.2, up to 10.00
    assert (result.cost, result.lowest, result.asked) == (104_500, 118_000, 132_000)


def test_extras_and_outwork_are_costs_as_well():
    result = price(
        small_job(
            outwork=(PlainLine(label="turning", amount=20_000),),
            outwork_markup=0.15,
            extras=(PlainLine(label="parking permit", amount=5000),),
        )
    )

    assert result.before_rounding == 132_000 + 23_000 + 5000
    assert result.cost == 104_500 + 25_000


def test_a_small_job_is_charged_at_least_the_minimum():
    result = price(small_job(materials=(), hours=0.5, minimum=25_000))

    assert result.asked == 25_000


def test_tax_falls_on_the_taxable_part_only():
    assert price(small_job(tax_rate=0.06, taxable_share=0.5)).tax == 3960  # 6 % of 660.00


def test_a_resale_bears_no_tax():
    assert price(small_job(tax_rate=0.06, taxable_share=0)).tax == 0


def test_every_line_shows_its_working():
    result = price(small_job(distance=60, per_distance=70))

    assert {line.label: line.working for line in result.lines} == {
        "cherry 4/4": "10 bd ft × 10.00",
        "mark-up on materials": "100.00 × 0.2",
        "labour": "10 h × 100.00",
        "contingency, P80": "10 h × 100.00 × (1.2 - 1)",
        "delivery": "60 × 0.70",
    }


def test_the_working_of_the_price_is_kept():
    ledger = Ledger()

    result = price(small_job(), ledger)

    assert ledger["price.lowest"].value == result.lowest
    assert ledger["price.contingency"].inputs["factor"] == 1.2


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"hours": -1.0}, "Hours are 0 or more"),
        ({"markup": -0.1}, "mark-up is added"),
        ({"distance": -1}, "distance is 0 or more"),
        ({"step": 0}, "at least one cent"),
        ({"tax_rate": -0.1}, "tax rate 0 or more"),
        ({"taxable_share": 1.1}, "between 0 and 1"),
    ],
)
def test_what_cannot_be_priced_is_refused_with_a_sentence(changes, message):
    with pytest.raises(ValueError, match=message):
        price(small_job(**changes))


@pytest.mark.parametrize("line", [{"label": " ", "amount": 1}, {"label": "credit", "amount": -1}])
def test_an_unnamed_or_negative_extra_is_refused(line):
    with pytest.raises(ValueError, match=r"Name the line|below zero"):
        PlainLine(**line)


@pytest.mark.parametrize(
    ("off", "reach", "words"),
    # asked 1,320.00; lowest 1,180.00; cost 1,045.00
    [
        (0, Reach.ASKED, "as asked"),
        (1, Reach.PROFIT, "profit and mark-up only"),
        (14_000, Reach.PROFIT, "$1,180.00 gives away"),
        (14_001, Reach.RISK, "below the lowest acceptable price of $1,180.00"),
        (27_500, Reach.RISK, "bad run"),
        (27_501, Reach.LOSS, "$0.01 below the expected cost of $1,045.00"),
    ],
)
def test_a_discount_shows_which_number_it_eats(off, reach, words):
    result = discounted(price(small_job()), off)

    assert result.reach is reach
    assert words in result.message
    assert result.over_cost == 132_000 - off - 104_500
    assert result.over_lowest == 132_000 - off - 118_000


def test_a_price_asked_below_its_cost_is_told_so_without_any_discount():
    result = discounted(price(small_job(rate=5000)), 0)

    assert result.reach is Reach.LOSS


@pytest.mark.parametrize("off", [-1, 132_001])
def test_a_discount_beyond_the_price_is_refused(off):
    with pytest.raises(ValueError, match=r"between 0 and the asked price of \$1,320.00"):
        discounted(price(small_job()), off)


def test_a_discount_may_be_given_as_a_share():
    assert discount_of(132_000, 0.10) == 13_200


def test_only_lines_that_changed_are_listed_as_risen():
    old = (lumber(1000, 10), lumber(500, 4, "poplar"), lumber(700, 2, "ash"))
    new = (lumber(1100, 10), lumber(500, 4, "poplar"), lumber(900, 1, "walnut"))

    rises = material_rises(old, new, 0.2)

    assert [(rise.label, rise.difference) for rise in rises] == [
        ("cherry 4/4", 1200),
        ("ash 4/4", -1680),
        ("walnut 4/4", 1080),
    ]


def test_a_rise_of_the_rate_is_handled_like_any_other():
    assert labour_rise(10, 1.2, 10_000, 10_500).difference == 6000


def test_a_rise_of_nothing_adds_nothing():
    assert rise_amount(48_875, 0, 0.2) == 0


def test_the_terms_of_a_new_shop_can_be_read():
    terms = house_terms()

    assert (terms.markup, terms.step, terms.valid_days) == (0.2, 1000, 30)
