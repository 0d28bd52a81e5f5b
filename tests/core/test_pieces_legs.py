"""Legs and aprons instead of a carcase: what may be asked, what follows, what is refused in plain words."""

import pytest
from test_drawing_reader import Read

from casewright.drawing.elevation import elevation
from casewright.drawing.legs import leg_outlines
from casewright.drawing.section import section
from casewright.measure.lengths import show
from casewright.pieces.asked.reading import CannotRead, read_unit, write_unit
from casewright.pieces.built.joints import other_joints
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from casewright.pieces.words.otherwise import otherwise
from units import bedside, bedside_estimate, built, changed, chest, unit


def line(made, mark):
    return next(each for each in made.lines if each.line == mark)


def verdicts(made, rule):
    return [str(finding.verdict) for finding in made.findings if finding.rule == rule]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"body": {"width": 18, "depth": 14.5, "opening_total": 4}}, "body.opening_total: on legs"),
        ({"construction.apron_height": "25-1/4"}, "construction.apron_height: aprons 25-1/4 in high leave"),
        ({"construction.apron_height": "1-1/2"}, "1 row does not fit in 1-1/2 in: .* make it 3-"),
        ({"construction.setback": "1"}, "construction.setback: 1 is too much, .* make it 3/4 or less"),
        ({"construction.apron": "2"}, "construction.apron: 2 is too much"),
        ({"construction.leg": "8"}, "construction.leg: 8 is too much, as two legs must fit"),
        ({"construction.rail_width": "2"}, "construction.rail_width: 2 is too much"),
        ({"construction.dovetail": "1-1/2"}, "construction.dovetail: 1-1/2 is too much"),
        (
            {"construction.runner_width": "5/8"},
            "construction.runner_width: 5/8 is too little, .* make it 1 or",
        ),
        ({"drawers.groove.slips.height": "1/2"}, "drawers.groove.slips.height: 1/2 is too little"),
        ({"drawers.groove.slips.depth": "3/8"}, "drawers.groove.slips.depth: 3/8 is too much"),
    ],
)
def test_what_cannot_be_built_is_refused_with_what_would_do(changes, sentence):
    with pytest.raises(REFUSALS, match=sentence):
        built(bedside(changes))


@pytest.mark.parametrize(
    ("construction", "field", "words"),
    [
        ({"kind": "barrel"}, "construction", "write 'carcase', 'legs'"),
        ({"leg": "2"}, "construction", 'as "kind": "legs"'),
        ({"kind": "legs", "appron": "1"}, "construction.appron", "did you mean apron?"),
        ({"kind": "carcase", "leg": "2"}, "construction.leg", "this key is not known"),
        ({"kind": "legs", "leg": "thick"}, "construction.leg", "is not a size"),
    ],
)
def test_a_construction_that_is_none_is_refused_at_its_field(construction, field, words):
    with pytest.raises(CannotRead) as refused:
        unit(chest({"construction": construction}))

    (problem,) = refused.value.problems
    assert problem.field == field
    assert words in problem.message


def test_a_file_on_legs_is_written_and_read_again_unchanged():
    spec = unit(bedside())

    assert read_unit(write_unit(spec)) == spec


def test_a_file_that_names_the_carcase_is_the_same_as_one_that_names_nothing():
    plain, named = built(chest()), built(chest({"construction": {"kind": "carcase"}}))

    assert named.parts == plain.parts
    assert named.findings == plain.findings
    assert named.masses == plain.masses


@pytest.mark.parametrize(
    ("leg", "rail_width", "runner", "tenon"),
    [
        ("1-1/2", "1-1/2", "1-3/8", "3/4"),
        ("2", "2", "1-7/8", "3/4"),
        # the aprons' mortise leaves 5/8 in of the leg inside it, and an eighth has to stay
        ("1-1/4", "1-1/4", "1-1/8", "1/2"),
    ],
)
def test_rails_and_runners_that_are_left_out_go_with_the_leg(leg, rail_width, runner, tenon):
    legs = {"kind": "legs", "leg": leg, "apron_height": "5-1/2"}

    made = built(changed(bedside(), {"construction": legs, "body.width": "20"}))

    assert show(line(made, "R2").part.width) == rail_width
    assert show(line(made, "W1").part.width) == runner
    assert show((line(made, "R2").part.length - made.face.clear_width) / 2) == tenon
    assert verdicts(made, "front rails clear the aprons") == ["pass", "pass"]


def test_rails_that_reach_into_the_aprons_mortises_are_stopped_with_what_would_pass():
    made = built(bedside({"construction.rail_tenon": "1"}))

    (stop,) = [each for each in made.findings if each.rule == "front rails clear the aprons" and each.remedy]
    assert str(stop.verdict) == "stop"
    assert "3/4 in long or shorter" in str(stop.remedy)
    passing = built(bedside({"construction.rail_tenon": "3/4"}))
    assert verdicts(passing, "front rails clear the aprons") == ["pass", "pass"]


def test_three_rows_share_one_apron_and_each_divider_carries_a_pair_of_runners():
    made = built(bedside({"rows": [{}, {}, {}], "construction.apron_height": "18", "drawers.side": "1/2"}))

    assert [row.height for row in made.face.rows] == sorted(row.height for row in made.face.rows)
    quantities = {mark: line(made, mark).quantity for mark in ("R1", "R2", "R3", "W1", "W2", "W3")}
    assert quantities == {"R1": 1, "R2": 1, "R3": 2, "W1": 6, "W2": 2, "W3": 6}
    joint = next(each for each in made.case_joints if each.key == "divider_rails")
    assert joint.places == 4


def test_every_drawer_runs_on_its_runners_between_its_guides():
    made = built(bedside({"rows": [{}, {}], "construction.apron_height": "11"}))

    boxes = {part.code: part.box for part in made.parts}
    for drawer, runner in zip(made.drawers, ("B-D1-R", "B-C-R"), strict=True):
        side = boxes[f"{drawer.code}-SL"]
        under = boxes[f"{runner}L"]
        guide = boxes[f"B-R{drawer.sizes.opening.row}-GL"]
        assert side.z == pytest.approx(under.z + under.height, abs=1e-9)
        assert under.x < side.x
        assert side.x + side.width <= under.x + under.width
        assert guide.x + guide.width == pytest.approx(drawer.sizes.opening.left, abs=1e-9)


def test_the_screws_of_a_top_in_slots_are_bought():
    """Two kickers, a screw within 3 in of each end and not over the spacing apart; none with buttons."""
    slots, buttons = (
        {item.item: item.quantity for item in built(bedside({"construction.fixing": how})).hardware}
        for how in ("slots", "buttons")
    )
    assert slots["top screw"] >= 4
    assert slots["top screw"] % 2 == 0
    assert "top screw" not in buttons


def test_a_tapered_leg_weighs_what_its_taper_leaves():
    """Geometry: a prism as high as the aprons on a frustum, h (a² + ab + b²) / 3."""
    made, square = (
        built(bedside({"construction.foot": "3/4"})),
        built(bedside({"construction.tapered": False})),
    )
    leg, whole = (next(part for part in unit.parts if part.line == "L1") for unit in (made, square))
    low, a, b = made.face.base_height, leg.thickness, 3 / 4
    assert leg.volume == pytest.approx((leg.length - low) * a * a + low * (a * a + a * b + b * b) / 3)
    assert whole.volume == pytest.approx(leg.length * a * a)
    assert made.masses.total < square.masses.total
    # Left out, 5/8 of the leg, as it is drawn.
    usual = next(part for part in built(bedside()).parts if part.line == "L1")
    b = 5 / 8 * a
    assert usual.volume == pytest.approx((leg.length - low) * a * a + low * (a * a + a * b + b * b) / 3)
    assert min(corner for outline in leg_outlines(made, 20.0) for corner in [outline[1][0]]) == 3 / 4


def test_a_foot_wider_than_its_leg_is_refused():
    with pytest.raises(CannotBuild, match=r"construction\.foot"):
        built(bedside({"construction.foot": "4"}))


@pytest.mark.parametrize(("fixing", "buttons"), [("buttons", 1), ("slots", 0)])
def test_the_top_is_held_by_buttons_or_through_slots(fixing, buttons):
    made = built(bedside({"construction.fixing": fixing}))

    assert len([part for part in made.small_parts if part.name == "Top button"]) == buttons
    (top,) = [finding for finding in made.findings if finding.rule == "top fixing"]
    assert fixing in str(top.message)


def test_square_legs_are_not_tapered_at_the_bench_or_in_words():
    made = built(bedside({"construction.tapered": False}))

    assert line(made, "L1").part.name == "Leg"
    assert "tapered" not in " ".join(describe(made))


def test_the_joints_of_the_legs_have_settings_drawings_and_the_parts_they_serve():
    made = bedside_estimate().unit

    joints = {each.key: each for each in other_joints(made)}
    assert list(joints) == ["back_legs", "front_legs", "upper_rail", "lower_rail", "bottom_R1-1"]
    known = {part.code for part in made.parts}
    assert {code for each in joints.values() for code in each.parts} <= known
    assert joints["back_legs"].cut_on("leg") == ("B-L-BL", "B-L-BR")
    assert joints["front_legs"].cut_on("leg") == ("B-L-FL", "B-L-FR")
    assert joints["back_legs"].joint.given.is_mitred
    lower = {setting.name: show(setting.value) for setting in joints["lower_rail"].joint.settings}
    # the rail's upper edge lies 4-3/4 below the top of the leg, and its tenon is as high as the rail
    assert (lower["mortise_start"], lower["mortise_length"], lower["across_length"]) == (
        "4-3/4",
        "3/4",
        "16-1/2",
    )
    assert joints["bottom_R1-1"].cut_on("slip") == ("B-R1-1-XL", "B-R1-1-XR")
    assert "B-R1-1-SL" not in joints["bottom_R1-1"].parts


def test_a_leg_that_is_measured_moves_the_walls_of_its_mortises():
    made = built(bedside({"measured": {"parts": {"L-BL": {"thickness": "1-7/16"}}}}))

    walls = {
        each.key: each.joint.inner for each in made.case_joints if each.key in ("back_legs", "front_legs")
    }
    assert walls == {"back_legs": pytest.approx(0.8125), "front_legs": pytest.approx(0.875)}


def test_slips_take_the_groove_from_thin_sides():
    deep = {"drawers.groove.slips": None, "drawers.groove.depth": "1/4"}
    grooved, slipped = built(bedside(deep)), bedside_estimate().unit

    assert verdicts(grooved, "side behind groove") == ["stop"]
    assert verdicts(slipped, "side behind groove") == []
    assert verdicts(slipped, "front behind groove") == ["pass"]


@pytest.mark.parametrize(("groove", "high"), [({"height": "1/4"}, "5/8"), ({}, "3/4")])
def test_slips_of_no_height_stand_an_eighth_above_their_groove(groove, high):
    made = built(chest({"drawers.groove": {**groove, "slips": {}}}))

    assert show(line(made, "X1").part.width) == high


def test_slips_serve_a_carcase_too():
    slips = {"thickness": "1/2", "height": "3/4", "depth": "1/4"}

    made = built(chest({"drawers.groove.slips": slips}))
    plain = built(chest())

    for slipped, grooved in zip(made.drawers, plain.drawers, strict=True):
        assert slipped.bottom.across == pytest.approx(grooved.bottom.across - 2 * 0.5, abs=1e-9)
        assert slipped.sizes.inside.between_slips == slipped.sizes.inside.width - 1
    assert line(made, "X1").quantity == 6


def test_the_elevation_draws_tapered_legs_and_names_their_heights():
    drawn = elevation(bedside_estimate().unit)

    lettered = [words for words, _ in Read(drawn.svg()).sizes]
    # legs below the aprons, the aprons, the opening
    assert [words for words in ("19-3/4", "5-1/2", "4", "15") if words not in lettered] == []
    assert drawn.svg().count("B-L-F") == 2


def test_the_section_measures_from_under_the_apron():
    drawn = section(bedside_estimate().unit).svg()

    assert "the apron" in drawn
    assert "B-AP-B" in drawn


def test_the_words_name_legs_and_aprons_and_no_back_or_plinth():
    words = " ".join(describe(bedside_estimate().unit))

    assert "four legs" in words
    assert "back of the case" not in words
    assert "plinth" not in words


def test_an_option_on_legs_says_that_it_stands_on_legs():
    case = {"construction": {"kind": "carcase"}, "case": {"side": "3/4"}}
    on_legs, closed = bedside_estimate().unit, built(bedside({**case, "drawers.bottom": {"kind": "solid"}}))

    assert "stands on legs" in otherwise(closed, on_legs)
    assert "closed case" in otherwise(on_legs, closed)
