"""The estimate: money to the cent, what has no price, and why each figure is what it is."""

from datetime import date
from decimal import ROUND_HALF_UP, Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import carcases
from casewright.labour.drivers import Driver
from casewright.measure.findings import Verdict
from casewright.measure.working import explain
from casewright.pricing.risk import factor_at
from casewright.wood.waste import NoWasteFigure
from units import changed, chest, dresser, dresser_estimate, estimated, own_shop


def hundredths(least, most):
    return st.integers(least, most).map(lambda whole: whole / 100)


def charges(label):
    """Some amounts of one kind, as a shop file has them."""
    amount = st.integers(0, 10**6).map(lambda whole: str(Decimal(whole) / 100))
    return st.lists(amount.map(lambda text: {"label": label, "amount": text}), max_size=2)


TERMS = st.fixed_dictionaries(
    {
        "markup": hundredths(0, 150),
        "outwork_markup": hundredths(0, 60),
        "tax_rate": st.integers(0, 2500).map(lambda whole: whole / 10_000),
        "rounding": st.sampled_from(["0.01", "1", "5", "10", "100"]),
        "minimum": st.integers(0, 3_000_000).map(lambda amount: str(Decimal(amount) / 100)),
        "miles": hundredths(0, 100_000),
        "risk": st.sampled_from(["planned", "P50", "P80", "P90"]),
        "ratios": st.lists(hundredths(50, 200), max_size=6),
        "outwork": charges("glass"),
        "extras": charges("crate"),
        "stages": st.lists(st.integers(1, 9), min_size=1, max_size=4).map(
            lambda parts: [{"trigger": "then", "share": part / sum(parts)} for part in parts]
        ),
    }
)


def cents(value):
    """Whole cents, half a cent up, from an exact decimal."""
    return int(value.quantize(Decimal(1), rounding=ROUND_HALF_UP))


def exact(number):
    """The decimal that was written."""
    return Decimal(repr(float(number)))


@settings(max_examples=25)
@given(TERMS)
def test_the_price_is_the_exact_sum_of_its_parts(terms):
    estimate = estimated(chest(), own_shop(**terms))

    hours, rate = exact(estimate.hours), estimate.rate.rate
    factor = exact(factor_at(estimate.risk, terms["risk"]))
    direct = sum(line.amount for line in estimate.materials)
    outwork = sum(cents(Decimal(each["amount"]) * 100) for each in terms["outwork"])
    before = (
        cents(direct * (1 + exact(terms["markup"])))
        + cents(hours * rate * factor)
        + cents(outwork * (1 + exact(terms["outwork_markup"])))
        + cents(exact(terms["miles"]) * 70)
        + sum(cents(Decimal(each["amount"]) * 100) for each in terms["extras"])
    )
    step = cents(Decimal(terms["rounding"]) * 100)
    wanted = max(before, cents(Decimal(terms["minimum"]) * 100))
    asked = -(-wanted // step) * step
    tax = cents(asked * exact(terms["tax_rate"]))
    price = estimate.price
    assert price.before_rounding == before
    assert (price.asked, price.tax, price.total) == (asked, tax, asked + tax)


@settings(max_examples=15)
@given(TERMS)
def test_lines_and_stages_add_up_to_what_they_are_of(terms):
    price = estimated(chest(), own_shop(**terms)).price

    assert sum(line.amount for line in price.lines) == price.before_rounding
    assert sum(stage.amount for stage in price.stages) == price.total


@settings(max_examples=25)
@given(carcases())
def test_every_material_is_charged_for_what_is_ordered(data):
    estimate = estimated(data)

    lines = [(line.quantity, line.unit_price, line.amount) for line in estimate.materials]
    assert [amount for _, _, amount in lines] == [
        cents(exact(quantity) * unit_price) for quantity, unit_price, _ in lines
    ]
    assert sum(amount for _, _, amount in lines) == estimate.price.charges.direct
    lumber = [line.quantity for line in estimate.materials if line.kind == "lumber"]
    assert lumber == [order.feet for order in estimate.order]


@settings(max_examples=25)
@given(carcases())
def test_no_more_is_ordered_than_to_the_next_whole_foot(data):
    estimate = estimated(data)

    left_over = [order.feet - sum(group.order for group in order.groups) for order in estimate.order]
    assert [over for over in left_over if not -1e-6 <= over < 1 + 1e-6] == []


@settings(max_examples=25)
@given(carcases())
def test_the_minutes_of_every_operation_add_up(data):
    estimate = estimated(data)

    assert sum(work.minutes for work in estimate.labour) == pytest.approx(estimate.minutes)  # float sum
    # rounded to a hundredth of an hour
    assert estimate.hours == pytest.approx(estimate.minutes * 1.12 / 60, abs=0.005 + 1e-9)


@given(carcases(), st.integers(2, 5))
def test_more_units_of_a_design_are_counted_together(data, count):
    one, several = (estimated(changed(data, {"count": units})).drivers for units in (1, count))

    once = {Driver.UNIT, Driver.JOBS, Driver.COATS}
    # Feet and areas are rounded to the whole before they are counted; a coat counts four times.
    rounded = {driver for driver in one if driver is Driver.ROUGH_FEET or driver.name.endswith("SQFT")}
    counted = set(one) - once - rounded
    assert {driver: several[driver] for driver in once} == {driver: one[driver] for driver in once}
    assert {driver: several[driver] for driver in counted} == {
        driver: count * one[driver] for driver in counted
    }
    assert {driver: several[driver] for driver in rounded} == pytest.approx(
        {driver: count * one[driver] for driver in rounded}, abs=4 * (count + 1) / 2
    )


def test_what_has_no_price_is_a_stop_and_is_left_out():
    estimate = estimated(dresser({"pulls.item": "ebony drop"}))

    (finding,) = (finding for finding in estimate.findings if finding.rule == "price missing")
    assert finding.verdict is Verdict.STOP
    assert 'item "ebony drop"' in finding.message
    assert "shop file" in finding.remedy
    # ten pulls at 22.00 less
    assert estimate.price.charges.direct == dresser_estimate().price.charges.direct - 220_00


def test_every_price_that_is_missing_is_named():
    estimate = estimated(dresser({"woods.inside": "butternut", "pulls.item": "ebony drop"}))

    assert [message.partition(" (")[0] for message in estimate.unpriced] == [
        "There is no price for butternut 4/4",
        "There is no price for ebony drop",
    ]


def test_a_price_put_into_the_shop_file_is_missed_no_longer():
    shop = own_shop(prices=[{"kind": "hardware", "item": "ebony drop", "price": "31.50"}])

    estimate = estimated(dresser({"pulls.item": "ebony drop"}), shop)

    assert estimate.unpriced == ()
    assert {line.label: line.amount for line in estimate.materials}["ebony drop"] == 315_00


def test_a_grade_that_is_not_bought_for_show_parts_is_refused_with_one_that_is():
    with pytest.raises(NoWasteFigure, match="buy FAS or Selects"):
        estimated(dresser(), own_shop(grade="No. 1 Common"))


def test_sheets_are_bought_whole_and_priced():
    estimate = estimated(chest({"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}, "count": 6}))

    # eighteen bottoms of 21-7/8 x 14-3/16 are 38.8 sq ft, 45.6 with 15 % wasted: two sheets of 32
    assert {line.label: (line.quantity, line.amount) for line in estimate.materials}["birch plywood 1/4"] == (
        2,
        96_00,
    )


def test_ply_bottoms_take_no_wood_for_bottoms():
    estimate = estimated(chest({"drawers.bottom": {"kind": "ply"}}))

    assert [line.line for line in estimate.takeoff.lines if line.line.startswith("N")] == []


def test_no_finish_is_bought_for_a_piece_left_bare():
    estimate = estimated(chest({"finish": {"show_coats": 0, "inside_coats": 0}}))

    assert estimate.finish.buy == 0
    assert [work.code for work in estimate.labour if work.code in ("Z03", "Z04", "Z05", "Z06")] == []
    assert "wiping varnish" not in {line.label for line in estimate.materials}


def test_fronts_that_need_not_match_are_bought_with_the_case():
    estimate = estimated(dresser({"sequence_fronts": False}))

    assert {str(group.use) for group in estimate.takeoff.groups} == {"case", "drawer", "inside"}
    assert [order.sequences for order in estimate.order if order.sequences] == []


def test_quartersawn_sides_are_ordered_as_such():
    estimate = estimated(dresser({"woods.drawers": {"wood": "soft maple", "cut": "quarter"}}))

    assert [(order.wood, str(order.cut)) for order in estimate.order] == [
        ("cherry", "flat"),
        ("cherry", "flat"),
        ("poplar", "flat"),
        ("soft maple", "quarter"),
    ]


def test_the_days_are_counted_from_the_start_and_fall_on_a_weekday():
    promise = dresser_estimate().promise

    # 14.88 and 15.38 weeks from 25 November 2026; 13 March 2027 is a Saturday
    assert (promise.likely, promise.promised) == (date(2027, 3, 10), date(2027, 3, 15))


def test_an_estimate_does_not_depend_on_the_one_before():
    first = estimated(dresser())
    estimated(chest({"woods.case": "walnut"}), own_shop(markup=0.9))

    again = estimated(dresser())

    assert (again.price, again.order, again.labour) == (first.price, first.order, first.labour)


@pytest.mark.parametrize("figure", [working.figure for working in dresser_estimate().ledger])
def test_every_figure_of_the_dresser_says_where_it_comes_from(figure):
    why = explain(dresser_estimate().ledger, figure)

    assert why.value != ""
    assert why.what.endswith(".")
    assert (why.source or why.basis) != ""


def test_no_two_figures_go_by_one_name():
    names = [working.figure for working in dresser_estimate().ledger]

    assert len(set(names)) == len(names)


@pytest.mark.parametrize(
    ("figure", "value", "rule"),
    [
        ("R5-1.height", "8-13/32 in", "(opening - bottom_gap - top_gap) / (1 + coefficient × swelling)"),
        ("drawers.gauge_1", "5/8 in", "front - lap"),
        ("case.side_shrinkage", "≈7/64 in (0.1127)", "size * coefficient * change"),
        ("hours.total", "111.31 h", "minutes * (1 + allowance) / 60"),
        ("price.asked", "$16,150.00", ""),
        ("order.cherry.4/4.feet", "39", "exact, rounded up to a whole foot"),
    ],
)
def test_the_figures_that_are_asked_about_most_show_their_rule(figure, value, rule):
    why = explain(dresser_estimate().ledger, figure)

    assert why.value == value
    assert rule in why.rule


def test_a_typed_size_can_be_followed_from_the_height_of_a_drawer_to_the_file():
    ledger = dresser_estimate().ledger
    origins = {put_in.name: put_in.origin for put_in in explain(ledger, "R5-1.height").inputs}

    assert origins["opening"] == "R5-1.opening_height"
    assert origins["top_gap"] == "drawers.clearances.top"
    assert explain(ledger, "drawers.clearances.top").basis.startswith("default (common practice)")
    assert explain(ledger, "drawers.front").basis == "typed in the unit file"


@pytest.mark.parametrize(("cut", "sawn"), [("quarter", "quartersawn"), ("rift", "rift-sawn")])
def test_lumber_by_its_cut_takes_the_price_of_that_cut(cut, sawn):
    spec = chest({"woods.drawers": {"wood": "soft maple", "cut": cut}})
    price = {"kind": "lumber", "item": "soft maple", "size": f"4/4 {sawn}", "unit": "bd ft", "price": "8.25"}

    before, after = estimated(spec), estimated(spec, own_shop(prices=[price]))

    line = next(each for each in after.materials if each.label == f"soft maple 4/4 {sawn}")
    stood_in = next(each for each in before.materials if each.label == line.label)
    assert (stood_in.unit_price, line.unit_price) == (550, 825)
    assert line.quantity == stood_in.quantity > 0
    assert [each.rule for each in after.findings if "price" in each.rule] == []
    caution = next(each for each in before.findings if each.rule == "price of another cut")
    assert caution.verdict is Verdict.CAUTION
    assert caution.message == (
        f"There is no price for soft maple 4/4 {sawn}; that of flat-sawn boards stands for it."
    )
    assert f"“4/4 {sawn}”" in caution.remedy
