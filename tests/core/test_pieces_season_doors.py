"""Doors and panels through the year: limits, verdicts and what the maker is told to do."""

import pytest

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import in_unit
from casewright.pieces.built.season import UnitYear, unit_year
from units import built, chest


def year(doors: dict[str, object], leaves: int = 1, **season: float) -> UnitYear:
    data = chest()
    data["body"] = {"width": "48", "depth": "18", "overall_height": "34"}
    columns = [{"holds": "doors", "leaves": leaves}] * 2
    data["rows"] = [{"columns": 2, "height": "6"}, {"across": columns}]
    data["doors"] = doors
    if season:
        data["season"] = {name: {"moisture": value} for name, value in season.items()}
    return unit_year(built(data))


def told(found: UnitYear) -> dict[str, object]:
    return {each.what: each for each in found.parts if each.part.startswith("Door")}


def advice(found: UnitYear) -> str:
    return " ".join(in_unit(each, LengthUnit.INCH) for each in found.more)


def test_doors_alike_are_told_once_with_their_openings():
    found = [each for each in year({}).parts if each.part.startswith("Door")]

    assert {each.part for each in found} == {"Door of R2-1, R2-2"}
    assert len(found) == 3
    assert all(each.passes for each in found)


def test_two_leaves_are_followed_at_the_gap_between_them():
    assert "gap between its leaves" in told(year({}, leaves=2))


def test_a_panel_with_little_play_fails_when_wettest_and_one_in_a_shallow_groove_when_driest():
    tight = told(year({"make": {"kind": "frame-and-panel", "play": "1/64"}}))
    shallow = told(
        year({"make": {"kind": "frame-and-panel", "groove_depth": "3/16"}}, shop=11, driest=5, wettest=11.5)
    )

    assert not tight["play of the panel in each groove"].passes
    assert not shallow["how far the panel reaches into each groove"].passes


def test_a_plywood_panel_and_a_plywood_slab_hardly_move():
    ply = {"sheet": "hardwood plywood", "nominal": "1/4"}
    panel = told(year({"make": {"kind": "frame-and-panel", "ply": ply}}))
    slab = told(year({"make": {"kind": "slab", "held": "ply"}}))

    play = panel["play of the panel in each groove"].through
    gap = slab["gap at its free edge"].through
    assert play.driest == play.wettest
    assert gap.driest == gap.wettest


def test_the_maker_is_told_how_wide_to_make_leaves_and_panels_in_other_months():
    said = advice(year({}))

    assert "Doors of R2-1: at 8.5 % make each leaf" in said
    assert "made in January it would be" in said
    assert "Their panels: at 8.5 % cut them" in said


def test_what_is_made_when_driest_is_narrower_and_when_wettest_wider():
    found = year({})
    ledger = found.unit.ledger
    plan = found.unit.doors[0].plan

    for name in ("width", "panel"):
        dry = ledger[f"year.R2-1.door.made.{name}_in_january"].value
        wet = ledger[f"year.R2-1.door.made.{name}_in_july"].value
        now = plan.width if name == "width" else plan.frame.panel_width
        assert dry < now < wet


@pytest.mark.parametrize("wood", ["cherry", "white oak"])
def test_a_partition_of_another_wood_is_told_apart_from_the_sides(wood):
    data = chest({"woods.inside": wood})
    data["rows"] = [{"across": [{"holds": "doors"}, {"rows": [{}, {}]}]}]
    found = [each for each in unit_year(built(data)).parts if each.what == "moves apart from the sides"]

    assert bool(found) is (wood != "cherry")


def named(data: dict[str, object], start: str) -> dict[str, object]:
    return {each.what: each for each in unit_year(built(data)).parts if each.part.startswith(start)}


def test_overlay_fronts_close_their_gaps_by_half_of_what_both_grow():
    data = chest({"drawers.style": {"kind": "full overlay"}})
    unit = built(data)
    gap = named(data, "Front of")["gap to the front above"].through

    grows = 0.00248 * 2.5  # flat-sawn cherry from 8.5 to 11 %, Wood Handbook table 13-5
    heights = {drawer.sizes.face.height for drawer in unit.drawers}
    assert gap.now - gap.wettest <= max(heights) * grows + 1e-6
    assert gap.now - gap.wettest >= min(heights) * grows - 1e-6


def test_inset_fronts_have_no_gap_to_each_other():
    assert named(chest(), "Front of") == {}


def test_panelled_sides_and_backs_and_dust_panels_are_followed_in_their_grooves():
    sides = named(chest({"case.sides": "framed"}), "Case sides")
    back = named(chest({"back.kind": "panelled"}), "Back")
    dust = named(chest({"case.divider_kind": "dust-frame"}), "Dust panels")

    for found in (sides, back):
        assert found["how far the panel reaches into each groove"].passes
    play = dust["play in front and rear groove"].through
    assert play.driest < play.now < play.wettest  # the rails come closer as the sides shrink


def test_sides_that_are_frames_move_by_their_stiles_only():
    framed = named(chest({"case.sides": "framed"}), "Runners")["gap at the rear"].through
    solid = named(chest(), "Runners")["gap at the rear"].through
    ply = named(chest({"case.sides": "plywood"}), "Runners")["gap at the rear"].through

    assert ply.driest == ply.now
    assert framed.now - framed.driest == pytest.approx(2 * 3 * 0.00248 * 2.3, abs=1e-6)
    assert framed.now - framed.driest < solid.now - solid.driest
