"""How a top is held: by what, how many, with how much slack; or dovetailed between the sides."""

import pytest

from casewright.drawing.elevation import elevation
from casewright.drawing.section import section
from casewright.measure.findings import Verdict
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.words.describe import describe
from units import bedside, built, chest, estimated, unit

AIR = {"season": {"shop": {"moisture": 8.5}, "driest": {"moisture": 6.2}, "wettest": {"moisture": 11.0}}}
"""Worked season: 2.5 % wetter, 2.3 % drier than the wood now."""


def topped(top, **changes):
    """The small chest, 24 x 16 with openings of 18 in all, with a top."""
    return built(chest({"top": top, **AIR, **changes}))


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


@pytest.mark.parametrize(
    ("fixing", "bought"), [("buttons", []), ("slots", [("top screw", 8)]), ("clips", [("top clip", 8)])]
)
def test_a_top_is_held_along_both_rails_no_further_apart_than_wished(fixing, bought):
    # 22-1/2 between the sides, 10 apart: four along each rail
    made = topped({"fixing": fixing})

    assert [(each.item, each.quantity) for each in made.hardware if each.item.startswith("top ")] == bought
    buttons = [part.quantity for part in made.small_parts if part.name == "Top button"]
    assert buttons == ([8] if fixing == "buttons" else [])


def test_fixings_stand_closer_where_that_is_wished():
    made = topped({"fixing": "slots", "spacing": "5"})

    assert next(each.quantity for each in made.hardware if each.item == "top screw") == 12


def test_a_top_of_the_wood_of_the_sides_needs_no_slack():
    (finding,) = found(topped({"fixing": "slots", "slack": "0"}), "top fixing")

    assert (finding.verdict, finding.needed) == (Verdict.PASS, 0.0)


@pytest.mark.parametrize(("slack", "verdict"), [("1/8", Verdict.PASS), ("1/16", Verdict.STOP)])
def test_slots_give_what_the_top_moves_over_sides_that_do_not(slack, verdict):
    """Wood Handbook, FPL-GTR-190 (2010), table 13-5: black cherry, tangential 0.00248."""
    made = topped({"fixing": "slots", "slack": slack}, **{"case.sides": "plywood", "frames": {}})

    (finding,) = found(made, "top fixing")
    # 16 deep and 3/4 over the front: 16.75 x 0.00248 x 2.5
    assert finding.needed == pytest.approx(0.104, abs=0.0005)
    assert finding.verdict == verdict


def test_a_top_dovetailed_in_lies_between_the_sides_and_belongs_to_the_body():
    made = topped({"fixing": "dovetails"})

    face, lines = made.face, {line.line: line.part for line in made.lines}
    # openings 18, two dividers and the bottom of 3/4, the top of 7/8
    assert face.body_height == 18 + 3 * 0.75 + 0.875
    assert face.overall_height == face.body_height + 4
    assert {"T1", "C2", "C7", "W4"}.isdisjoint(lines)
    top = lines["C11"]
    # half-blind into sides of 3/4 over the whole depth; a board of 7/8 asks for a lap of 7/8 × √0.1 = 0.2767,
    # up to 9/32, or its index would be 3 × (7/8 ÷ 1/4)² = 36.75, over 30
    assert (top.thickness, top.width, top.length) == (0.875, 16, 24 - 2 * 9 / 32)
    assert top.box.z + top.box.height == face.overall_height
    assert {joint.key for joint in made.case_joints} >= {"case_top", "bottom"}
    assert next(corner.corners for corner in made.corners if corner.name == "top into sides") == 2


def test_a_top_dovetailed_through_shows_its_tails_outside():
    made = topped({"fixing": "dovetails"}, **{"case.corner": "through"})

    assert next(part.length for part in made.parts if part.line == "C11") == 24


def test_the_back_ends_in_a_rabbet_of_the_top_between_the_sides():
    made = topped({"fixing": "dovetails"})

    (back,) = {part.length for part in made.parts if part.line == "P1"}
    assert back == made.face.body_height - 0.875 + 0.375


def test_a_given_height_counts_the_top_once():
    heights = {"body": {"width": "24", "depth": "16", "overall_height": "30"}}
    over, within, without = (
        built(chest({"top": {"fixing": fixing}, **heights})) for fixing in ("buttons", "dovetails", "none")
    )

    # 30 - 4 of plinth; a top of its own takes 7/8 of that, and a case without one none
    assert [made.face.body_height for made in (over, within, without)] == [30 - 4.875, 26, 26]
    # rails of 3/4, or the top of 7/8
    assert [made.face.opening_total for made in (over, within, without)] == [
        25.125 - 4 * 0.75,
        26 - 3 * 0.75 - 0.875,
        26 - 4 * 0.75,
    ]


def test_a_top_of_another_wood_is_not_dovetailed_to_the_sides():
    (finding,) = found(
        topped(
            {"fixing": "dovetails"},
            **{"woods.case": "white oak", "woods.top": "white pine", "body.depth": "22"},
        ),
        "top fixing",
    )

    assert finding.verdict == Verdict.STOP


@pytest.mark.parametrize("fixing", ["dovetails", "none"])
def test_a_case_without_a_top_of_its_own_has_no_overhang(fixing):
    spec = unit(chest({"top": {"fixing": fixing}}))

    assert (spec.overall_width, spec.overall_depth) == (24, 16)
    with pytest.raises(CannotRead, match="has no overhang"):
        unit(chest({"top": {"fixing": fixing, "overhang_front": "1/2"}}))


@pytest.mark.parametrize("fixing", ["buttons", "slots", "clips", "dovetails", "none"])
def test_every_top_is_drawn_described_and_priced(fixing):
    held = estimated(chest({"top": {"fixing": fixing}}))

    assert "top" in " ".join(describe(held.unit))
    assert "top thickness" not in elevation(held.unit).body or fixing in ("buttons", "slots", "clips")
    assert section(held.unit).body
    assert held.unpriced == ()
    assert (held.unit.surfaces.show < estimated(chest()).unit.surfaces.show) is (
        fixing in ("dovetails", "none")
    )


def test_without_a_top_nothing_is_cut_for_one():
    made = topped({"fixing": "none"})

    assert {part.line for part in made.parts}.isdisjoint({"T1", "C11"})
    assert made.face.overall_height == made.face.base_height + made.face.body_height


@pytest.mark.parametrize(
    "changes",
    [{"case.corner": "housing"}, {"case.sides": "plywood"}],
)
def test_corners_that_hold_no_top_are_refused_with_those_that_do(changes):
    with pytest.raises(CannotBuild, match="choose half-blind or through corners"):
        topped({"fixing": "dovetails"}, **changes)


def test_on_legs_no_top_is_dovetailed_in():
    with pytest.raises(CannotBuild, match="the top lies on the aprons"):
        built(bedside({"top": {"fixing": "dovetails"}}))
