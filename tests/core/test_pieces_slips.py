"""Slips that once came through: each was found by trial, and each is held here."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.asked.reading import CannotRead, read_unit, write_unit
from casewright.pieces.built.refusals import REFUSALS
from units import built, changed, chest, dresser, estimated, own_shop, unit


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


def test_a_file_in_millimetres_is_written_and_read_again_unchanged():
    body = {"width": 914.4, "depth": 406.4, "opening_total": "18 in"}
    spec = unit(chest({"unit": "mm", "body": body}))

    assert read_unit(write_unit(spec)) == spec


def test_a_bottom_that_reaches_past_the_back_needs_room_behind():
    # 1/2 in behind the drawer; 0.068 + 0.128 of movement, 1/16 and the 3/8 that it reaches out are more
    bottom = {"kind": "solid", "over": "3/8"}

    try:
        verdicts = {
            finding.verdict for finding in found(built(chest({"drawers.bottom": bottom})), "depth season")
        }
    except REFUSALS:
        verdicts = {Verdict.STOP}

    assert verdicts == {Verdict.STOP}


def test_a_bottom_that_reaches_past_the_back_may_shrink_as_much_more():
    dry = {"season": {"shop": {"moisture": 16}, "driest": {"moisture": 5}, "wettest": {"moisture": 16}}}
    deep = {"body.depth": "20", "drawers.clearances.back": "1-1/2", **dry}

    short = found(built(chest(deep)), "bottom stays under the back")
    long = found(
        built(chest({**deep, "drawers.bottom": {"kind": "solid", "over": "1/4"}})),
        "bottom stays under the back",
    )

    assert short[0].verdict is Verdict.STOP
    assert long[0].verdict is Verdict.PASS


def test_a_bottom_with_more_play_than_its_grooves_are_deep_is_not_passed():
    try:
        verdicts = {
            str(finding.verdict)
            for finding in built(chest({"drawers.bottom_play": "1/2"})).findings
            if "bottom" in finding.rule or "groove" in finding.rule
        }
    except REFUSALS:
        verdicts = {"stop"}

    assert "stop" in verdicts


def test_a_measured_opening_leaves_the_tails_of_all_other_drawers_alone():
    plain = chest({"rows": [{"columns": 2}] * 6, "body.width": "36", "body.opening_total": "42-5/8"})
    measured = changed(plain, {"measured.openings": {"R3-1": {"height": "6-11/16"}}})

    before, after = (
        {
            drawer.code: (drawer.joints.front.layout.count, drawer.joints.back.layout.count)
            for drawer in built(data).drawers
            if drawer.code != "A-R3-1"
        }
        for data in (plain, measured)
    )

    assert before == after


@pytest.mark.parametrize(
    "figures",
    [
        {"wood_factors": {"cherry": -1}},
        {"wood_factors": {"cherry": 0}},
        {"wood_factors": {"cherry": 1e9}},
        {"billable_share": 1e-9},
        {"hours_per_week": 1e-9},
        {"saw_kerf": "2"},
    ],
)
def test_a_figure_that_no_shop_has_is_refused(figures):
    with pytest.raises(REFUSALS):
        estimated(dresser(), own_shop(**figures))


def test_a_shops_own_waste_of_sheets_is_taken():
    data = chest({"drawers.bottom": {"kind": "ply"}, "count": 6})

    # 38.8 sq ft in sheets of 32: half of it wasted takes three
    assert estimated(data, own_shop(sheet_waste=0.5)).takeoff.sheets[0].count == 3


@pytest.mark.parametrize(
    ("changes", "good"),
    [
        ({"drawers.bottom": {}}, '"solid"'),
        ({"graduation": {"step": 1}}, '"step"'),
    ],
)
def test_a_choice_that_is_not_named_is_refused_with_one_to_name(changes, good):
    with pytest.raises(CannotRead, match=good):
        unit(chest(changes))


@pytest.mark.parametrize("changes", [{"rows": []}, {"name": ""}])
def test_no_refusal_speaks_of_the_programs_own_parts(changes):
    with pytest.raises(CannotRead) as refused:
        unit(chest(changes))

    assert not {"tuple", "string", "dictionary", "validation", "pattern"} & set(str(refused.value).split())


@pytest.mark.parametrize("changes", [{"count": True}, {"casewright": True}])
def test_true_is_no_number(changes):
    with pytest.raises(CannotRead):
        unit(chest(changes))


def test_openings_that_shrink_towards_the_floor_are_a_caution():
    (finding,) = found(built(chest({"graduation": {"rule": "step", "first": "7"}})), "graduation")

    assert finding.verdict is Verdict.CAUTION


def test_a_sag_is_remedied_with_the_thickness_that_would_do():
    made = built(chest({"drawers.muntin.use": "never", "body.width": "48"}))

    assert [
        finding
        for finding in found(made, "bottom sag")
        if not any(sign.isdigit() for sign in str(finding.remedy))
    ] == []


def test_back_boards_are_no_wider_than_six_inches_with_their_laps():
    # 23-1/4 in four boards would be 6.047 each with the laps
    made = built(chest())

    assert max(part.width for part in made.parts if part.line == "P1") <= 6


@pytest.mark.parametrize("size", ["height", "width", "depth"])
def test_an_opening_measured_far_from_the_drawing_is_refused(size):
    with pytest.raises(REFUSALS, match="measure again"):
        built(chest({"measured.openings": {"R1-1": {size: "300"}}}))


def test_a_front_thinner_than_the_gauge_is_refused_by_its_name():
    with pytest.raises(REFUSALS, match=r"measured\.parts\.R1-1-F"):
        built(chest({"measured.parts": {"R1-1-F": {"thickness": "9/16"}}}))


def test_two_prices_for_one_thing_are_refused():
    prices = [
        {"kind": "lumber", "item": item, "size": "4/4", "unit": "bd ft", "price": price}
        for item, price in (("cherry", 1), ("Cherry", 2))
    ]

    with pytest.raises(CannotRead):
        own_shop(prices=prices)
