"""A leg with its aprons: walls, two mortises clear or mitred, haunches, lengths; and that it closes."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.chisels import RACK
from casewright.joinery.families.leg_tenon.asked import LegTenon
from casewright.joinery.families.leg_tenon.joint import leg_tenon
from casewright.joinery.kinds import solve
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.solid import Axis
from casewright.measure.findings import Verdict
from closing import faults
from joints import finding, leg_joint, sizes


@st.composite
def legs(draw, aprons=(1, 2)):
    """Any leg that can be laid out: tenons clear of each other, nearly meeting, and mitred by any amount."""
    apron = draw(sizes(0.5, 2))
    leg = draw(sizes(max(0.75, apron), 4))
    setback = draw(sizes(0, leg - apron))
    tenon = draw(sizes(0.125, apron - 0.25))
    face = draw(sizes(0.0625, apron - tenon - 0.0625))
    height, count = draw(sizes(1, 8)), draw(st.sampled_from(aprons))
    haunch = draw(sizes(0, height - 0.25))
    most = leg - setback - face - 1 / 32 if count == 2 else leg
    return LegTenon(
        leg=leg,
        apron=apron,
        height=height,
        setback=setback,
        tenon=tenon,
        face=face,
        length=min(most, draw(sizes(0.125, leg - 5 / 64))),
        haunch=haunch,
        lower_shoulder=draw(sizes(0, height - haunch - 1 / 64)),
        aprons=count,
    )


@given(legs())
def test_every_leg_closes(given):
    assert faults(leg_tenon(given).shape) == []


@given(legs())
def test_walls_and_mortise_fill_the_leg_and_the_shoulders_the_apron(given):
    found = leg_tenon(given)

    assert found.outer + given.tenon + found.inner == pytest.approx(given.leg)
    assert given.face + given.tenon + found.back == pytest.approx(given.apron)
    assert given.lower_shoulder + found.width + given.haunch == pytest.approx(given.height)
    assert given.setback + given.apron + found.guide == pytest.approx(given.leg)


@given(legs(aprons=(2,)))
def test_mitred_tenons_stay_apart_by_the_gap_all_along(given):
    height = given.lower_shoulder + given.tenon_width / 2
    one, _, other = leg_tenon(given).shape.boards

    reach = max(x - z for x, z in one.section(Axis.Y, height)[1])
    begins = min(x - z for x, z in other.section(Axis.Y, height)[1])
    assert reach <= -given.limits.mitre_gap.value / 2 + 1e-9
    assert begins >= given.limits.mitre_gap.value / 2 - 1e-9


@given(legs())
def test_every_mark_lies_on_its_strip(given):
    strips = leg_tenon(given).shape.strips

    points = [
        (strip, point) for strip in strips for line in strip.lines for point in (line.start, line.end)
    ] + [(strip, point) for strip in strips for outline in strip.waste for point in outline]
    assert all(
        -1e-9 <= x <= strip.length + 1e-9 and -1e-9 <= y <= strip.height + 1e-9 for strip, (x, y) in points
    )


@given(sizes(1, 4), sizes(0.5, 1.25), sizes(1.5, 8), st.integers(1, 2))
def test_what_is_chosen_for_any_furniture_leg_can_be_cut(leg, apron, height, aprons):
    values = {"leg": max(leg, apron), "apron": apron, "height": height, "aprons": aprons}

    assert faults(solve("leg-tenon", values).joint.shape) == []


@pytest.mark.parametrize("leg", [1.25, 1.375, 1.5, 1.625, 1.75, 2.0, 2.25, 2.5, 3.0])
@pytest.mark.parametrize("aprons", [1, 2])
def test_what_is_chosen_for_a_usual_leg_passes_every_check(leg, aprons):
    found = solve("leg-tenon", {"leg": leg, "apron": 0.75, "height": 4.0, "aprons": aprons}).joint

    assert [each.rule for each in found.findings if each.verdict is not Verdict.PASS] == []


def test_one_apron_makes_one_board_beside_the_leg():
    assert [board.name for board in leg_joint(aprons=1).shape.boards] == ["apron", "leg"]
    assert [board.name for board in leg_joint().shape.boards] == ["apron", "leg", "other apron"]


def test_a_tenon_as_long_as_the_mitre_allows_is_mitred_from_cheek_to_cheek():
    found = leg_joint(length=1.09375)

    corners = found.shape.boards[0].section(Axis.Y, 2.0)[1]
    assert sorted(corners) == [(0.0, 0.875), (0.0, 1.125), (0.84375, 0.875), (1.09375, 1.125)]


def test_a_shorter_one_is_mitred_as_far_as_the_other_is_in_its_way():
    corners = leg_joint(length=1.0).shape.boards[0].section(Axis.Y, 2.0)[1]

    assert sorted(corners) == [(0.0, 0.875), (0.0, 1.125), (0.84375, 0.875), (1.0, 1.03125), (1.0, 1.125)]


def test_the_mitre_is_marked_on_the_upper_edge_at_45_degrees():
    edge = leg_joint().shape.strips[-1]

    mitre = next(line for line in edge.lines if line.label == "mitre")
    assert mitre.start == (0.0, 0.34375)
    assert mitre.end == (0.15625, 0.5)


def test_an_apron_is_set_back_from_the_outside_face():
    apron, leg, _ = leg_joint().shape.boards

    beyond = max(z for piece in leg.section(Axis.Y, -0.1) for _, z in piece)
    outside = max(z for piece in apron.section(Axis.X, -0.1) for z, _ in piece)
    assert beyond - outside == 0.125


@pytest.mark.parametrize(
    ("given", "rule", "verdict", "remedy"),
    [
        ({"setback": 0.0}, "wall outside the mortise", Verdict.PASS, ""),
        (
            {"setback": 0.0, "face": 0.234375},
            "wall outside the mortise",
            Verdict.STOP,
            "Cut 1/4 in off the apron before the tenon.",
        ),
        (
            {"setback": 0.0, "tenon": 0.5, "face": 0.125, "leg": 2.0},
            "wall outside the mortise",
            Verdict.STOP,
            "Set the apron back 1/8 in.",
        ),
        (
            {"setback": 0.0, "tenon": 0.25, "face": 0.125, "leg": 0.75, "length": 0.3125, "aprons": 1},
            "wall outside the mortise",
            Verdict.STOP,
            "Cut 1/4 in off the apron before the tenon.",
        ),
        (
            {"setback": 0.0, "tenon": 0.5, "face": 0.125, "leg": 0.75, "length": 0.25, "aprons": 1},
            "wall outside the mortise",
            Verdict.STOP,
            "Make the leg 1 in thick.",
        ),
        ({"leg": 0.875, "length": 0.5625, "aprons": 1}, "wall inside the mortise", Verdict.PASS, ""),
        (
            {"leg": 0.875, "length": 0.5625, "aprons": 1, "face": 0.265625},
            "wall inside the mortise",
            Verdict.STOP,
            "Cut 1/4 in off the apron before the tenon, and no more.",
        ),
        (
            {"leg": 0.875, "length": 0.5, "aprons": 1, "tenon": 0.4375, "face": 0.1875},
            "wall inside the mortise",
            Verdict.STOP,
            "Make the leg 1 in thick.",
        ),
        ({"length": 1.1875, "aprons": 1}, "wall behind the mortise", Verdict.PASS, ""),
        (
            {"length": 1.203125, "aprons": 1},
            "wall behind the mortise",
            Verdict.STOP,
            "Make the tenon 1-3/16 in long or shorter, or the leg 1-33/64 in thick.",
        ),
        (
            {"leg": 0.875, "length": 0.578125, "aprons": 1},
            "wall behind the mortise",
            Verdict.STOP,
            "Make the leg 57/64 in thick.",
        ),
        ({"length": 0.6875}, "two mortises", Verdict.PASS, ""),
        (
            {"length": 0.703125},
            "two mortises",
            Verdict.STOP,
            "Make the tenons 11/16 in long or shorter, or 1-3/32 in long and mitre them.",
        ),
        (
            {"length": 0.84375},
            "two mortises",
            Verdict.STOP,
            "Make the tenons 11/16 in long or shorter, or 1-3/32 in long and mitre them.",
        ),
        ({"length": 0.859375}, "two mortises", Verdict.PASS, ""),
        (
            {"leg": 1.25, "length": 0.5625},
            "two mortises",
            Verdict.STOP,
            "Make the tenons 27/32 in long and mitre them.",
        ),
        ({"tenon": 0.25}, "tenon thickness", Verdict.PASS, ""),
        (
            {"tenon": 0.234375},
            "tenon thickness",
            Verdict.CAUTION,
            "Make it from 1/4 in to 1/2 in thick.",
        ),
        ({"tenon": 0.5, "face": 0.125}, "tenon thickness", Verdict.PASS, ""),
        (
            {"tenon": 0.515625, "face": 0.125},
            "tenon thickness",
            Verdict.CAUTION,
            "Make it from 1/4 in to 1/2 in thick.",
        ),
        ({"face": 0.125}, "shoulders", Verdict.PASS, ""),
        ({"face": 0.375, "length": 0.9375}, "shoulders", Verdict.PASS, ""),
        (
            {"face": 0.109375},
            "shoulders",
            Verdict.CAUTION,
            "Put the tenon from 1/8 in to 3/8 in from the apron's outside face.",
        ),
        (
            {"face": 0.390625, "length": 0.9375},
            "shoulders",
            Verdict.CAUTION,
            "Put the tenon from 1/8 in to 3/8 in from the apron's outside face.",
        ),
        (
            {"tenon": 0.53125, "face": 0.109375},
            "shoulders",
            Verdict.CAUTION,
            "Make the tenon 1/2 in thick or thinner.",
        ),
        (
            {"apron": 0.25, "tenon": 0.125, "face": 0.0625},
            "shoulders",
            Verdict.CAUTION,
            "Make the apron 3/8 in thick.",
        ),
        ({"length": 0.625}, "length of the tenon", Verdict.PASS, ""),
        ({"length": 0.609375}, "length of the tenon", Verdict.CAUTION, "Make it 5/8 in long or longer."),
        (
            {"leg": 0.875, "length": 0.5, "aprons": 1},
            "length of the tenon",
            Verdict.CAUTION,
            "Make the leg 15/16 in thick, for a tenon of 5/8 in.",
        ),
        ({"haunch": 5.0}, "tenon width", Verdict.PASS, ""),
        ({"haunch": 5.015625}, "tenon width", Verdict.STOP, "Make the haunch 5 in wide or less."),
        ({"haunch": 0.375}, "mortise near the end", Verdict.PASS, ""),
        (
            {"haunch": 0.25},
            "mortise near the end",
            Verdict.CAUTION,
            "Make the haunch 1/8 in wider, so that the mortise starts lower.",
        ),
        ({}, "mortise chisel", Verdict.PASS, ""),
        (
            {"rack": replace(RACK, chisels=(0.375,), cutters=(0.1875,))},
            "mortise chisel",
            Verdict.CAUTION,
            "Make the tenon 3/8 in thick, or cut the mortise with the 3/16 in cutter, in 2 passes.",
        ),
        (
            {"rack": replace(RACK, chisels=(0.375,), cutters=())},
            "mortise chisel",
            Verdict.CAUTION,
            "Make the tenon 3/8 in thick, or cut the mortise with a cutter of 1/4.",
        ),
        ({"height": 7.0}, "tenon across the grain", Verdict.PASS, ""),
        (
            {"height": 7.015625},
            "tenon across the grain",
            Verdict.CAUTION,
            "Divide it into two tenons, each 6 in wide or less.",
        ),
    ],
)
def test_each_limit_passes_up_to_its_value_and_not_beyond(given, rule, verdict, remedy):
    found = finding(leg_joint(**given), rule)

    assert found.verdict is verdict
    assert str(found.remedy) == remedy


def test_a_single_apron_is_not_asked_about_a_second_mortise():
    assert "two mortises" not in {each.rule for each in leg_joint(aprons=1, length=0.75).findings}


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"aprons": 3}, "give 2 at a corner, or 1"),
        ({"setback": 0.8125}, "set it back 3/4 in or less"),
        ({"apron": 1.75}, "make the leg 1-7/8 in thick or more"),
        ({"tenon": 0.5}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"face": 0.0}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"face": 0.5}, "a tenon of 1/4 in at 1/4 in from the face would"),
        ({"haunch": 5.25}, "make both together 5-1/4 in or less"),
        ({"length": 1.125}, "make them 1-3/32 in long or shorter"),
        ({"length": 1.4375, "aprons": 1}, "make the tenon 1-3/16 in long"),
        ({"width": 3.0}, "make it more than 3"),
        ({"depth": 2.0}, "make it more than 3"),
    ],
)
def test_what_cannot_be_cut_is_refused_with_what_can(given, said):
    with pytest.raises(CannotBeLaidOut) as refused:
        leg_joint(**given)

    assert said in str(refused.value.args[0])


@pytest.mark.parametrize(
    "works",
    [
        {"setback": 0.75, "aprons": 1},
        {"apron": 1.75, "leg": 1.875},
        {"haunch": 5.0, "lower_shoulder": 0.25},
        {"length": 1.09375},
        {"length": 1.1875, "aprons": 1},
        {"width": 3.015625},
    ],
)
def test_the_value_that_a_refusal_names_can_be_cut(works):
    assert faults(leg_joint(**works).shape) == []


@pytest.mark.parametrize("name", ["leg", "apron", "height", "tenon", "length"])
def test_a_size_of_nothing_is_refused(name):
    with pytest.raises(ValueError, match="give a size above 0"):
        leg_joint(**{name: 0.0})
