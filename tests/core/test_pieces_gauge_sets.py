"""The gauges of a whole unit: one setting for sides within 1/64, and what its checks make of the bench."""

import pytest

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.measure.lengths import show
from casewright.pieces.built.gauges_to_set import gauges_to_set
from casewright.pieces.built.measuring import measured_words
from casewright.pieces.drawers.front_sets import front_sets
from units import built, chest

ALTERNATE = {
    f"R{row}-1-{side}": {"thickness": "31/64" if (row + (side == "SL")) % 2 else "1/2"}
    for row in (1, 2, 3)
    for side in ("SL", "SR")
}
"""Six sides whose rabbets leave 27/64 and 7/16 by turns."""
ALIKE = {"rows": [{"height": "6"}] * 3, "body.opening_total": "18"}


def joint(made, code) -> HalfBlindJoint:
    return made.drawer(code).joints.front


def findings(made, code, rule):
    return [each for each in joint(made, code).findings if each.rule == rule]


def test_sides_a_64th_apart_take_one_setting_through_the_unit():
    made = built(chest({"measured.parts": ALTERNATE}))

    seconds = [each for each in gauges_to_set(made) if each.name == "Gauge 2"]

    assert [(show(each.setting), len(each.serves), each.unmeasured) for each in seconds] == [("27/64", 6, ())]
    assert [show(size) for size in seconds[0].wrong] == ["31/64", "1/2"]
    # 1/2 - 27/64 = 5/64
    assert "would be 5/64 in too deep" in str(seconds[0].wrong_text)
    assert [show(joint(made, drawer.code).gauge_2) for drawer in made.drawers] == ["27/64"] * 3


def test_total_spread_decides_and_not_the_step_from_side_to_side():
    sizes = {"R1-1-SL": "27/64", "R1-1-SR": "7/16", "R2-1-SL": "29/64"}
    made = built(chest({"measured.parts": {code: {"in_rabbet": size} for code, size in sizes.items()}}))

    seconds = [each for each in gauges_to_set(made) if each.name == "Gauge 2" and not each.unmeasured]

    assert [(show(each.setting), each.serves) for each in seconds] == [
        ("27/64", ("A-R1-1-SL", "A-R1-1-SR")),
        ("29/64", ("A-R2-1-SL",)),
    ]


def test_alike_drawers_are_one_set_though_their_sides_were_planed_apart():
    sets = front_sets(built(chest({**ALIKE, "measured.parts": ALTERNATE})).drawers)

    assert [each.codes for each in sets] == [("A-R1-1", "A-R2-1", "A-R3-1")]


def test_a_set_is_divided_only_where_the_setting_differs():
    thin = {"R2-1-SR": {"in_rabbet": "25/64"}}

    sets = front_sets(built(chest({**ALIKE, "measured.parts": ALTERNATE | thin})).drawers)

    first, second = sets
    assert (show(first.joint.gauge_2), first.sides) == ("25/64", ("A-R2-1-SR",))
    assert len(second.sides) == 5


def test_a_thicker_front_keeps_its_place_in_the_set_and_its_own_lap():
    front = {"R2-1-F": {"thickness": "51/64"}}

    [only] = front_sets(built(chest({**ALIKE, "measured.parts": front})).drawers)

    assert [(show(each.lap), each.drawers) for each in only.laps] == [
        ("3/16", ("A-R1-1", "A-R3-1")),
        ("15/64", ("A-R2-1",)),
    ]


def test_where_laps_differ_the_set_says_whose_is_drawn_and_in_the_order_of_work():
    thin = {"R2-1-F": {"thickness": "23/32"}}

    [only] = front_sets(built(chest({**ALIKE, "measured.parts": thin})).drawers)

    # 3/4 less 23/32 leaves a lap thinner by 1/32: 3/16 less 1/32.
    assert (only.drawn, show(only.joint.lap)) == (("A-R2-1",), "5/32")
    assert str(only.advice[0]).startswith("Drawn is A-R2-1, with the lap of 5/32 in;")


def test_a_check_that_fails_at_one_drawer_is_in_the_set_and_says_whose_it_is():
    wet = {"R2-1-F": {"moisture": 12}, "R2-1-SL": {"moisture": 8}}

    [only] = front_sets(built(chest({**ALIKE, "measured.parts": wet})).drawers)

    [hold] = [each for each in only.findings if each.rule == "JC14"]
    assert str(hold.message).startswith("A-R2-1: The two boards are 4.0 % of moisture apart")


def test_what_was_not_measured_is_set_as_drawn_and_listed_so():
    made = built(chest({"measured.parts": {"R1-1-SL": {"in_rabbet": "27/64"}}}))

    drawn = next(each for each in gauges_to_set(made) if each.unmeasured)

    assert show(drawn.setting) == "7/16"
    assert drawn.unmeasured == drawn.serves
    assert {"A-R1-1-SR", "A-R1-1-SL"} & set(drawn.serves) == {"A-R1-1-SR"}


def test_the_gauges_of_backs_and_of_the_case_are_in_the_list():
    gauges = gauges_to_set(built(chest({"case.divider_end": "sliding dovetail"})))

    corner = next(each for each in gauges if each.name == "Corners of the case, gauge 1")
    assert (corner.setting, corner.wrong) == (0.5, (0.75,))  # side 3/4 less a lap of 1/4, by hand
    assert {"A-C-RF", "A-C-B", "A-C-SL"} <= set(corner.serves)
    assert [each.name for each in gauges] == [
        "Gauge 1",
        "Gauge 2",
        "Back joint, gauge for the sides",
        "Back joint, gauge for the back",
        "Corners of the case, gauge 1",
        "Corners of the case, gauge 2",
        "Dividers, socket depth",
        "Dividers, shoulder",
        "Frames, mortise gauge, first pin",
    ]


def test_one_gauge_serves_the_backs_of_sides_a_64th_apart():
    thick = {f"R{row}-1-{side}": {"thickness": "31/64"} for row in (1, 2) for side in ("SL", "SR")}
    made = built(chest({"measured.parts": thick | {"R3-1-SL": {"thickness": "1/2"}}}))

    assert {show(drawer.joints.back.gauge_back) for drawer in made.drawers} == {"31/64"}


def test_each_end_of_a_back_has_the_gauge_of_its_own_side():
    unlike = {"R1-1-SL": {"thickness": "17/32"}, "R1-1-SR": {"thickness": "1/2"}}
    made = built(chest({"measured.parts": unlike}))

    backs = [each for each in gauges_to_set(made) if each.name == "Back joint, gauge for the back"]
    settings = [each for each in made.drawer("A-R1-1").joints.back.settings if "back" in each.name]

    # 1/32 between the sides is more than a 64th: the right end at 17/32 would leave its pins 1/32 proud.
    assert [(show(each.setting), each.serves) for each in backs] == [
        ("1/2", ("A-R1-1-B right", "A-R2-1-B", "A-R3-1-B")),
        ("17/32", ("A-R1-1-B left",)),
    ]
    assert [(str(each.label), show(each.value)) for each in settings] == [
        ("Gauge on the back, left end", "17/32"),
        ("Gauge on the back, right end", "1/2"),
    ]


@pytest.mark.parametrize(("fronts", "verdict"), [("poplar", "caution"), ("cherry", "pass")])
def test_a_front_much_softer_than_its_sides_is_said_by_the_woods_of_the_unit(fronts, verdict):
    # hard maple 0.63, poplar 0.42, cherry 0.50: 0.63 - 0.15 = 0.48
    made = built(chest({"woods.drawers": "hard maple", "woods.fronts": fronts}))

    [found] = findings(made, "A-R1-1", "JC17")

    assert found.verdict.value == verdict


@pytest.mark.parametrize(("side", "verdict"), [(10.5, "stop"), (9.5, "pass")])
def test_a_front_and_a_side_of_different_moisture_are_held(side, verdict):
    parts = {"R1-1-F": {"moisture": 8}, "R1-1-SL": {"moisture": side}}

    [found] = findings(built(chest({"measured.parts": parts})), "A-R1-1", "JC14")

    assert found.verdict.value == verdict


def test_tails_longer_than_their_sockets_are_deep_are_relieved_before_assembly():
    parts = {"R1-1-F": {"socket_depth": "9/16"}, "R1-1-SL": {"tail_length": "37/64"}}

    [found] = findings(built(chest({"measured.parts": parts})), "A-R1-1", "JC16")

    assert found.verdict.value == "stop"
    assert str(found.remedy) == "Before assembly, pare 1/64 in off the tails or out of the sockets' floor."


def test_what_was_measured_since_is_said_in_words():
    now = {"SL.thickness": 23 / 64, "F.moisture": 8.0, "opening.height": 2.5, "SR.thickness": 0.375}

    words = measured_words("A-R1-1", now, {"SR.thickness": 0.375})

    assert [str(each) for each in words] == [
        "side A-R1-1-SL measured 23/64",
        "height of opening A-R1-1 measured 2-1/2",
    ]
