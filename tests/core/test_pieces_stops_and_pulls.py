"""Where drawers stop, in and out, and where their fronts are bored for the pulls."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.construct import construct
from casewright.pieces.words.describe import describe
from units import chest, estimated


def unit(key="tall-chest", stops=None, pulls=None, running=None):
    """A preset with its own stops and pulls."""
    asked = preset(key).spec_json
    drawers = asked.setdefault("drawers", {})
    drawers["stops"] = stops or {}
    if running:
        drawers["running"] = {"kind": running}
    asked["pulls"] = asked.get("pulls", {}) | (pulls or {})
    return construct(read_as(UnitSpec, asked), example_shop())


def small(built, name):
    """A small part by its name; None without it."""
    return next((part for part in built.small_parts if part.name == name), None)


def test_the_stop_line_lies_behind_the_front_and_its_inset():
    built = unit(stops={"inset": "1/16"})

    drawer = built.drawers[0]
    assert drawer.run.stop == drawer.sizes.front + 1 / 16
    assert "13/16" in str(small(built, "Drawer stop").note)
    front = next(part for part in built.parts if part.code == f"{drawer.code}-F")
    assert front.box.y == 1 / 16


def test_no_stops_are_cut_for_slides_or_where_none_are_wanted():
    assert small(unit(running="slides"), "Drawer stop") is None
    assert small(unit(stops={"blocks": False}), "Drawer stop") is None
    assert small(unit(), "Drawer stop").quantity == 2 * len(unit().drawers)


def test_an_outstop_is_caught_where_the_travel_ends():
    built = unit(stops={"outstop": "turn-button", "travel": "11"})
    drawer = built.drawers[0]

    assert drawer.travel == 11
    # The button stands 1/2 thick on the inside of the back: pulled out by the travel it meets its catch.
    assert drawer.run.outstop + 11 + 1 / 2 + drawer.sizes.back == pytest.approx(drawer.sizes.length)
    assert small(built, "Turn-button").quantity == len(built.drawers)


def test_a_pin_is_caught_by_the_back_itself():
    drawer = unit(stops={"outstop": "pin", "travel": "11"}).drawers[0]

    assert drawer.run.outstop + 11 + drawer.sizes.back == pytest.approx(drawer.sizes.length)


def test_an_outstop_that_would_have_to_stand_in_the_rail_is_stopped():
    built = unit(stops={"outstop": "turn-button", "travel": "16"})

    found = [each for each in built.findings if each.rule == "travel" and "rail" in str(each.message)]
    assert {each.verdict for each in found} == {Verdict.STOP}


def test_a_drawer_without_an_outstop_is_cautioned_against():
    built = unit(stops={"outstop": "none"})

    found = [each for each in built.findings if each.rule == "outstop"]
    assert {each.verdict for each in found} == {Verdict.CAUTION}
    assert "falling on a foot" in str(found[0].message)


def test_the_travel_that_is_typed_is_the_one_of_the_tip_screen():
    short, far = unit(stops={"travel": "6"}), unit(stops={"travel": "12"})

    factor = [next(each.factor for each in built.stand.cases) for built in (short, far)]
    assert factor[0] > factor[1]


@pytest.mark.parametrize(("count", "each"), [("one", {1}), ("two", {2})])
def test_one_or_two_pulls_are_chosen_for_the_unit(count, each):
    assert {len(drawer.pulls) for drawer in unit(pulls={"count": count}).drawers} == each


def test_a_knob_is_bored_once_and_a_pull_with_two_screws_twice():
    knob, pull = unit().drawers[0].boring, unit(pulls={"holes": "two", "centres": "96 mm"}).drawers[0].boring

    assert len(knob.holes) == len(knob.lines)
    assert len(pull.holes) == 2 * len(pull.lines)
    assert pull.holes[1][0] - pull.holes[0][0] == pytest.approx(96 / 25.4)
    assert sum(hole[0] for hole in pull.holes[:2]) / 2 == pytest.approx(pull.lines[0])


@pytest.mark.parametrize(("height", "up"), [("middle", 1 / 2), ("upper third", 2 / 3)])
def test_pulls_stand_in_the_middle_or_a_third_down(height, up):
    drawer = unit(pulls={"height": height}).drawers[0]

    assert drawer.boring.up == pytest.approx(drawer.sizes.height * up)


def test_pulls_stand_a_fixed_way_down():
    drawer = unit(pulls={"height": "from the top", "down": "1-3/4"}).drawers[0]

    assert drawer.boring.up == pytest.approx(drawer.sizes.height - 1.75)


def test_holes_are_measured_from_the_left_end_of_the_front_and_stand_in_line_down_the_case():
    built = unit("dresser", pulls={"holes": "two"})
    left = {part.code: part.box.x for part in built.parts if part.code.endswith("-F")}

    lines = {
        round(left[f"{drawer.code}-F"] + line, 6) for drawer in built.drawers for line in drawer.boring.lines
    }
    # A row of two over rows of one: two lines for all of them.
    assert len(lines) == 2


def test_a_lining_takes_its_thickness_off_what_a_drawer_holds():
    built = unit("jewelry-chest")
    drawer = built.drawers[0]
    lined, inside = drawer.run.lined, drawer.sizes.inside

    assert (lined.width, lined.depth, lined.height) == (
        inside.width - 2 / 16,
        inside.depth - 2 / 16,
        inside.height - 1 / 16,
    )
    assert built.spec.drawers.lining == 1 / 16


def test_a_lining_that_leaves_no_room_is_cautioned_against():
    asked = preset("jewelry-chest").spec_json
    asked["drawers"]["lining"] = "5/8"
    built = construct(read_as(UnitSpec, asked), example_shop())

    found = [each for each in built.findings if each.rule == "room within lining"]
    assert found[0].verdict is Verdict.CAUTION
    assert found[0].needed == 1 / 2


def test_a_row_may_have_its_own_number_of_pulls():
    asked = preset("tall-chest").spec_json
    asked["rows"][1]["pulls"] = 1
    asked["rows"][2] = {"across": [{"rows": [{"pulls": 2}]}, {}]}
    built = construct(read_as(UnitSpec, asked), example_shop())

    pulls = {drawer.sizes.code: len(drawer.pulls) for drawer in built.drawers}
    assert (pulls["R1-1"], pulls["R2-1"], pulls["R3-1-1-1"], pulls["R3-2"]) == (2, 1, 2, 1)


def test_a_lining_is_bought_by_the_square_foot_paid_by_the_drawer_and_told():
    plain, lined = estimated(chest()), estimated(chest({"drawers.lining": "1/16"}))

    [felt] = [item for item in lined.unit.hardware if item.item == "drawer lining"]
    held = [drawer.run.lined for drawer in lined.unit.drawers]
    square = sum(each.width * each.depth + 2 * each.height * (each.width + each.depth) for each in held)
    assert felt.quantity - 1 < square / 144 <= felt.quantity
    assert lined.minutes == pytest.approx(plain.minutes + 3 * 20)
    assert lined.unpriced == ()
    assert "The drawers are lined" in " ".join(describe(lined.unit))


def test_an_interlock_is_bought_paid_and_told():
    plain, locked = estimated(chest()), estimated(chest({"use.interlock": "one at a time"}))

    assert [(item.quantity) for item in locked.unit.hardware if item.item == "drawer interlock"] == [3]
    assert locked.minutes == pytest.approx(plain.minutes + 3 * 15)
    assert locked.unpriced == ()
    assert "lets one drawer open at a time" in " ".join(describe(locked.unit))
