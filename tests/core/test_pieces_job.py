"""A job of several units: added up, rounded once, priced once, and divided again to the cent."""

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from carcases import carcases
from casewright.labour.drivers import Driver
from casewright.measure.findings import Verdict
from casewright.measure.working import explain
from casewright.pieces.asked.shop import Shop, example_shop
from casewright.pieces.costs.job_estimate import JobEstimate, estimate_job, price_difference
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.wood.waste import NoWasteFigure
from units import TODAY, changed, chest, dresser, dresser_estimate, estimated, own_shop, unit


def job(*files, own: Shop | None = None) -> JobEstimate:
    """The estimate of a job of these units."""
    return estimate_job(tuple(unit(data) for data in files), own or example_shop(), TODAY)


def two_dressers(**terms) -> JobEstimate:
    """Worked dresser A twice, as units A and B, by the example shop or one that differs from it."""
    own = own_shop(**{"ratios": [1.02, 0.95, 1.10, 1.22, 0.98, 1.15, 1.30], "miles": 60, **terms})
    return job(dresser(), dresser({"code": "B"}), own=own)


def test_a_job_of_the_worked_dresser_alone_costs_what_is_printed():
    price = job(dresser()).price

    assert (price.asked, price.tax, price.total) == (16_150_00, 969_00, 17_119_00)
    assert price == dresser_estimate().price


@settings(max_examples=15)
@given(carcases(), st.integers(1, 3))
def test_a_job_of_one_design_is_its_estimate(data, count):
    file = changed(data, {"count": count})

    alone, together = estimated(file), job(file)

    assert together.price == alone.price
    assert (together.hours, together.minutes) == (alone.hours, alone.minutes)
    assert together.promise == alone.promise
    assert together.materials == alone.materials
    assert together.labour == alone.labour
    assert together.order == alone.order
    assert together.findings == alone.findings
    assert together.unit_prices_cents == (alone.price.asked,)


# Worked dresser A twice. Feet exact 38.20, 10.03, 60.56, 24.88 in print: doubled, then to whole feet.
def test_feet_of_two_units_are_added_before_they_are_rounded():
    order = {(line.wood, line.bought.name): line.feet for line in two_dressers().order}

    # rounded unit by unit it would be 78 and 22 and 122 and 50
    assert order == {
        ("cherry", "4/4"): 77,
        ("cherry", "5/4"): 21,
        ("poplar", "4/4"): 122,
        ("soft maple", "4/4"): 50,
    }


def test_what_is_done_once_a_job_is_counted_once():
    quantities = {line.code: line.quantity for line in two_dressers().labour}

    # delivery, papers, and the set-up of each coat; but a story stick for each design
    assert (quantities["Y01"], quantities["Y02"], quantities["Z06"], quantities["P01"]) == (1, 1, 5, 2)
    assert (quantities["D06"], quantities["C05"], quantities["Z01"]) == (184, 2, 60)


def test_the_hours_of_two_units_are_added_and_the_allowance_taken_once():
    held = two_dressers()

    # 2 x 5,963 printed, less 240 + 45 of the second delivery and papers, less 5 coats at 20
    assert held.minutes == pytest.approx(11_541, abs=1e-6)  # float sum
    assert held.hours == 215.43  # x 1.12 / 60


def test_two_units_are_priced_once():
    price = two_dressers().price

    # lumber 1,750.75; pulls 440, restraint 36, screws 50, three quarts 96, glue 24, abrasives 90
    assert price.charges.direct == 2_486_75
    assert price.charges.charged_materials == 2_984_10
    # 215.43 h x 1.2091 x 108.33
    assert price.charges.labour + price.charges.contingency == 28_217_41
    assert price.charges.delivery == 42_00
    assert price.asked == 31_250_00


def test_units_that_are_alike_share_the_price_equally():
    assert two_dressers().unit_prices_cents == (15_625_00, 15_625_00)


def test_the_least_charge_and_the_extras_are_taken_once():
    held = two_dressers(minimum="90000", extras=[{"label": "crane", "amount": "300"}])

    assert held.price.asked == 90_000_00
    assert held.price.charges.extras == 300_00


def test_one_quart_is_bought_for_two_halves():
    small = {"body": {"width": "14", "depth": "12", "opening_total": "8"}, "rows": [{}]}

    held = job(chest(small), chest({**small, "code": "B"}))

    assert [need.buy for need in held.finishes] == [1]
    assert {line.label: line.quantity for line in held.materials}["wiping varnish"] == 1


def test_coats_of_two_finishes_are_set_up_for_each():
    held = job(chest(), chest({"code": "B", "finish": {"product": "shellac"}}))

    assert {line.code: line.quantity for line in held.labour}["Z06"] == 10
    assert [need.product for need in held.finishes] == ["wiping varnish", "shellac"]


def test_sheets_of_two_units_are_added_before_they_are_rounded():
    ply = {"drawers.bottom": {"kind": "ply", "sheet": "birch plywood"}}

    held = job(chest(ply), chest({**ply, "code": "B"}))

    # six bottoms of 21-7/8 x 14-3/16 are 12.9 sq ft, 15.2 with 15 % wasted: half a sheet
    assert [each.count for each in held.sheets] == [1]


def test_each_wood_keeps_its_own_factor_in_the_hours():
    held = job(chest(), chest({"code": "B", "woods.case": "hard maple"}))

    assert [line.factor for line in held.labour if line.code == "D06"] == [1.0, 1.2]
    assert held.minutes == pytest.approx(sum(line.minutes for line in held.labour))  # float sum


def test_the_hours_of_a_job_stand_in_the_order_of_the_work():
    codes = [line.code for line in job(chest({"base": None}), dresser({"code": "B"})).labour]

    order = [work.code for work in example_shop().standards.operations]
    assert codes == sorted(codes, key=order.index)


def test_lines_of_the_order_say_whose_part_they_are_for():
    held = two_dressers()

    lines = {line.line for order in held.order for group in order.groups for line in group.lines}
    assert {"A-F5", "B-F5"} <= lines
    assert {found.name for order in held.order for found in order.sequences} == {
        "A, fronts of row 1",
        "A, full-width fronts, top to bottom",
        "B, fronts of row 1",
        "B, full-width fronts, top to bottom",
    }


def test_checks_of_several_units_say_which_unit_they_are_about():
    held = job(dresser(), chest({"code": "B", "pulls": {"item": "ebony drop"}}))

    own = [finding for finding in held.findings if finding.rule != "price missing"]
    assert {finding.about.partition("-")[0] for finding in own} == {"A", "B"}
    (missing,) = (finding for finding in held.findings if finding.rule == "price missing")
    assert missing.verdict is Verdict.STOP


def test_two_units_of_one_mark_are_refused_with_a_mark_that_is_free():
    with pytest.raises(CannotBuild, match="two units of this job go by the mark A; call one of them B"):
        job(dresser(), chest())


def test_a_job_without_a_unit_is_refused():
    with pytest.raises(CannotBuild, match="no unit yet"):
        job()


def test_a_job_is_refused_like_any_of_its_units():
    with pytest.raises(NoWasteFigure, match="buy FAS or Selects"):
        job(chest(), dresser({"code": "B"}), own=own_shop(grade="No. 1 Common"))


@settings(max_examples=15)
@given(st.lists(carcases(), min_size=2, max_size=3))
def test_unit_prices_add_up_to_the_asked_price(files):
    held = job(*(changed(data, {"code": f"U{place}"}) for place, data in enumerate(files)))

    assert sum(held.unit_prices_cents) == held.price.asked
    assert min(held.unit_prices_cents) > 0


@settings(max_examples=15)
@given(st.lists(carcases(), min_size=2, max_size=3))
def test_a_job_never_takes_more_than_its_units_apart(files):
    held = job(*(changed(data, {"code": f"U{place}"}) for place, data in enumerate(files)))

    assert held.hours < sum(each.hours for each in held.units)
    assert sum(line.feet for line in held.order) <= sum(
        line.feet for each in held.units for line in each.order
    )
    assert held.price.before_rounding <= sum(each.price.before_rounding for each in held.units)


def test_an_option_is_the_difference_of_two_asked_prices():
    base, other = job(dresser()), job(dresser({"woods.case": "walnut"}))

    assert price_difference(base, other) == other.price.asked - 16_150_00
    assert price_difference(other, base) == -price_difference(base, other)
    assert price_difference(base, other) > 0


@pytest.mark.parametrize("figure", [working.figure for working in two_dressers().ledger])
def test_every_figure_of_a_job_says_where_it_comes_from(figure):
    why = explain(two_dressers().ledger, figure)

    assert why.what.endswith(".")
    assert (why.source or why.basis) != ""


def test_a_unit_of_the_job_is_found_by_its_mark():
    held = two_dressers()

    assert held.unit("B").unit.spec.code == "B"
    assert held.unit("B").drivers[Driver.DRAWERS] == 6


def test_the_date_of_a_job_counts_the_hours_of_all_its_units():
    promise = two_dressers(queue_weeks=6).promise

    # 6 + 215.43 x 1.2091 / 25 + 4 weeks from 25 November 2026 is 142.9 days: Saturday 17 April 2027
    assert promise.promised_weeks == pytest.approx(20.419, abs=0.001)
    assert promise.promised == date(2027, 4, 19)
