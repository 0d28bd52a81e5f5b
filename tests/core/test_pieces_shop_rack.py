"""The rack and the usual numbers of a shop file: what is read, what drawers get, what is refused."""

import pytest

from casewright.joinery.chisels import RACK
from casewright.joinery.choose import LOOKS
from casewright.joinery.defaults import USUAL
from casewright.joinery.saws import SawUse
from casewright.measure.findings import Verdict
from casewright.pieces.asked.reading import CannotRead, read_as
from casewright.pieces.asked.shop import shop
from casewright.pieces.asked.shop_spec import ShopSpec
from units import built as built_by
from units import chest

SAWS = [{"name": "small saw", "kerf": "0.6 mm"}, {"name": "coping saw", "use": "fret", "kerf": "1/32"}]


def shop_of(**figures):
    return shop(read_as(ShopSpec, figures))


def built(**figures):
    return built_by(chest(), shop_of(**figures))


def found(unit, rule):
    return next(each for each in unit.findings if each.rule == rule)


def test_a_shop_that_says_nothing_has_the_usual_rack_and_numbers():
    plain = shop_of()

    assert (plain.rack, plain.usual, plain.looks) == (RACK, USUAL, LOOKS)


def test_an_old_file_with_chisels_and_a_kerf_is_read_as_before():
    rack = shop_of(chisels=["1/2", "1/4", 0.125], saw_kerf="1/64").rack

    assert rack.chisels == (0.125, 0.25, 0.5)
    assert rack.kerf == 1 / 64
    assert rack.fret_saw == RACK.fret_saw
    assert rack.cutters == RACK.cutters


def test_tools_are_read_in_any_order_and_notation():
    rack = shop_of(saws=SAWS, cutters=["1/2", "6 mm", 0.5], gauges=1, dividers=3).rack

    assert rack.kerf == pytest.approx(0.6 / 25.4)
    assert rack.fret_saw is not None
    assert (rack.fret_saw.name, rack.fret_saw.use) == ("coping saw", SawUse.FRET)
    assert rack.cutters == pytest.approx((6 / 25.4, 0.5))
    assert (rack.gauges, rack.dividers) == (1, 3)


def test_a_shop_file_is_written_and_read_back_alike():
    spec = read_as(ShopSpec, {"saws": SAWS, "usual": {"pin": "3/16"}, "looks": {"tail_sides": 2.5}})

    again = read_as(ShopSpec, spec.model_dump(mode="json", exclude_unset=True))

    assert shop(again) == shop(spec)


@pytest.mark.parametrize(
    ("figures", "sentence"),
    [
        ({"saws": SAWS[1:]}, "no saw is for dovetails"),
        ({"saws": SAWS, "saw_kerf": "1/32"}, "stands twice; leave saw_kerf out beside saws"),
        ({"saws": [{"name": "rip saw", "kerf": "1/2"}]}, "is too large: at most 1/4"),
        ({"cutters": []}, "cutters"),
        ({"gauges": 0}, "gauges"),
        ({"usual": {"slope_hardwood": 1}}, "usual.slope_hardwood"),
        ({"usual": {"pins": "1/8"}}, "usual.pins"),
        ({"looks": {"width_weight": -1}}, "looks.width_weight"),
    ],
)
def test_a_rack_that_cannot_be_meant_is_refused_by_its_field(figures, sentence):
    with pytest.raises(CannotRead) as refused:
        read_as(ShopSpec, figures)

    said = " ".join(f"{each.field}: {each.message}" for each in refused.value.problems)
    assert sentence in said


def test_drawers_get_the_shops_own_pins_and_slope():
    own = {"half_pin_front": "3/16", "half_pin_back": "1/4", "pin": "5/32", "slope_hardwood": 7}

    unit = built(usual=own)

    for drawer in unit.drawers:
        front, back = drawer.joints.front.given, drawer.joints.back.given
        assert (front.half_pin, front.pin, front.slope) == (3 / 16, 5 / 32, 7)
        assert (back.half_pin, back.pin, back.slope) == (1 / 4, 5 / 32, 7)


def test_the_working_says_that_a_number_is_the_shops_own():
    own, house = built(usual={"pin": "5/32"}), built()

    assert str(own.ledger["drawers.front_joint.pin"].basis).startswith("usual in this shop")
    assert str(house.ledger["drawers.front_joint.pin"].basis).startswith("usual, by the joinery")


def test_a_part_of_the_shops_own_makes_lap_and_rabbet_and_says_so():
    unit = built(usual={"lap_part": 3, "rabbet_part": 16})

    reasons = [str(each.why) for each in unit.chosen]
    assert "1/3 of the 3/4 in front, to the nearest 1/16, and no less than 1/8." in reasons
    assert "1/16 of the 1/2 in side, rounded down to 1/32." in reasons
    assert {drawer.sizes.lap for drawer in unit.drawers} == {0.25}
    assert {drawer.sizes.rabbet for drawer in unit.drawers} == {1 / 32}


def test_a_taste_for_wider_tails_takes_fewer():
    def tails(unit):
        return [len(drawer.joints.front.layout.tails) for drawer in unit.drawers]

    wider, usual = built(looks={"tail_sides": 4, "wide_tail": "4"}), built()

    assert sum(tails(wider)) < sum(tails(usual))


@pytest.mark.parametrize(
    ("figures", "rule", "verdict", "said"),
    [
        ({}, "gauges at hand", Verdict.PASS, "Set and keep Gauge 1 (9/16 in), Gauge 2 (7/16 in)"),
        ({"gauges": 2}, "gauges at hand", Verdict.CAUTION, "that takes 3, and the shop has 2 gauges."),
        ({"dividers": 1}, "dividers at hand", Verdict.CAUTION, "and the shop has 1 pair of dividers."),
        ({"cutters": ["3/16"]}, "cutter at hand", Verdict.PASS, "the 3/16 in cutter, in 2 passes."),
        ({"cutters": ["1/2"]}, "cutter at hand", Verdict.CAUTION, "the narrowest cutter is 1/2 in."),
    ],
)
def test_a_unit_says_whether_the_rack_serves_its_drawers(figures, rule, verdict, said):
    finding = found(built(**figures), rule)

    assert finding.verdict is verdict
    assert said in str(finding.message)
    assert bool(finding.remedy) == (verdict is Verdict.CAUTION)
