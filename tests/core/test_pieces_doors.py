"""Doors: each leaf from its opening, its parts, how it hangs, and what the year does to it."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.joinery.families.hinge.asked import hinge_place
from casewright.measure.findings import Verdict
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.layout.parts import Grain
from casewright.pieces.rules import door_rules as rules
from casewright.pieces.words.describe import describe
from casewright.wood.species import wood
from units import built, chest, estimated

FRAMED = {"kind": "frame-and-panel"}
SLABS = [{"kind": "slab", "held": held} for held in ("battens", "breadboard", "plain", "ply")]


def sideboard(doors: dict[str, Any] | None = None, **more: Any) -> dict[str, Any]:
    """Three drawers over a door, three drawers, and another door; two leaves where `more` says so."""
    data = chest({"body.depth": "18"})
    data["body"] = {"width": "60", "depth": "18", "overall_height": "36"}
    data["rows"] = [
        {"columns": 3, "height": "6"},
        {"across": [{"holds": "doors", **more}, {"rows": [{}, {}, {}]}, {"holds": "doors", **more}]},
    ]
    return data | ({"doors": doors} if doors else {})


def of_rule(unit: Construction, rule: str) -> list[Any]:
    return [finding for finding in unit.findings if finding.rule == rule]


def test_an_inset_frame_leaves_its_gap_and_what_its_stiles_swell():
    unit = built(sideboard())
    door = unit.doors[0].plan

    # 19 in of opening; two gaps of 1/16; two stiles of 2-1/4 of flat-sawn cherry by 2.5 %: 0.0279
    assert (door.opening.width, door.opening.height) == (19, 22.875)
    assert door.width == pytest.approx(18 + 27 / 32)
    assert door.height == 22.75


def test_a_solid_slab_moves_over_its_whole_width_and_plywood_not_at_all():
    frame, slab, ply = (
        built(sideboard({"make": make})).doors[0].plan for make in (FRAMED, SLABS[0], SLABS[3])
    )

    assert slab.width == pytest.approx(18.75)  # 18.875 / (1 + 0.00248 × 2.5), down to a 64th
    assert slab.width < frame.width < ply.width == 18.875
    assert (slab.moving, ply.moving, frame.moving) == (slab.width, 0, 4.5)


def test_two_leaves_share_an_opening_with_a_gap_between_them():
    unit = built(sideboard(leaves=2))
    door = unit.doors[0].plan
    left, right = door.leaves

    assert (left.hinged, right.hinged) == ("left", "right")
    between = right.x - left.x - door.width
    assert between >= 1 / 16 + 2 * door.moving * door.moves * unit.climate.swelling - 1e-9
    assert left.x - door.opening.left == pytest.approx(1 / 16)


def test_a_full_overlay_leaf_covers_the_case_but_its_reveal():
    unit = built(sideboard({"style": "full overlay"}))
    door = unit.doors[0].plan

    assert (door.over.left, door.over.below) == (0.6875, 0.6875)  # 3/4 less 1/16
    assert door.over.above == 0.34375  # half of a divider, less half the gap
    assert door.over.right < 0.34375  # the free edge keeps back what it will grow
    assert door.leaves[0].x == pytest.approx(1 / 16)
    assert all(part.box.y == -0.75 for part in unit.parts if part.code.startswith("A-R2-1-D1-S"))


def test_a_half_overlay_leaf_is_its_opening_and_twice_the_overlay():
    door = built(sideboard({"style": "half overlay"})).doors[0].plan

    assert (door.width, door.height) == (19.75, 23.625)


@pytest.mark.parametrize(
    ("height", "weight", "hinges"),
    [(40, 10, 2), (40.01, 10, 3), (60, 10, 3), (60.5, 10, 4), (80, 10, 4), (81, 10, 5), (20, 30, 3)],
)
def test_hinges_are_counted_by_height_and_by_weight(height, weight, hinges):
    # Common practice: two up to 40 in, three up to 60; 25 lb on a pair.
    assert rules.hinges_for(height=height, weight=weight, carries=12.5) == hinges


def test_hinges_stand_as_far_from_the_ends_as_they_are_long_and_evenly_between():
    unit = built(sideboard({"hinge_length": "2"}))
    door = unit.doors[0]

    assert door.hinges == pytest.approx((3.0, door.plan.height - 3.0))
    assert hinge_place(number=2, hinges=3, height=48, offset=2, length=2) == 24


def test_the_top_hinge_is_pulled_by_the_moment_of_the_leaf():
    # Statics: 12 lb with its middle 10 in from hinges 20 in apart pull 6 lb at the top one.
    assert rules.hinge_pull(weight=12, width=20, apart=20) == 6


def test_a_framed_door_brings_its_parts_tenons_hardware_and_hours():
    unit = built(sideboard(leaves=2))
    lines = {line.line: line.quantity for line in unit.lines}
    bought = {item.item: item.quantity for item in unit.hardware}

    assert (lines["DS1"], lines["DR1"], lines["DR2"], lines["DP1"]) == (8, 4, 4, 4)
    assert (bought["butt hinge"], bought["knob"], bought["door catch"]) == (8, 4, 4)
    tenons = [joint for joint in unit.case_joints if joint.key.startswith("doors")]
    assert sum(joint.places for joint in tenons) == 16
    assert set(tenons[0].parts) <= {part.code for part in unit.parts}


@pytest.mark.parametrize(
    ("make", "code", "quantity"),
    [(SLABS[0], "E64", 8), (SLABS[1], "E63", 8), (SLABS[2], "", 0), (SLABS[3], "", 0)],
    ids=str,
)
def test_two_ends_or_battens_of_every_slab_have_hours_of_their_own(make, code, quantity):
    lines = {line.code: line for line in estimated(sideboard({"make": make}, leaves=2)).labour}

    assert {"E63", "E64"} & set(lines) == ({code} if code else set())
    assert lines["E32"].quantity == 4
    if code:
        assert lines[code].quantity == quantity
        assert lines[code].minutes > 0


@pytest.mark.parametrize(("style", "stops"), [("inset", 4), ("half overlay", 0), ("full overlay", 0)])
def test_only_a_leaf_within_its_opening_needs_stops(style, stops):
    """Two blocks for each opening; an overlay leaf closes against the case (common practice)."""
    unit = built(sideboard({"style": style}))

    assert sum(each.quantity for each in unit.small_parts if each.name == "Door stop") == stops


def test_a_unit_without_doors_takes_nothing_of_them():
    unit = built(chest({"doors": {"thickness": "7/8"}}))

    assert unit.doors == ()
    assert not [part for part in unit.parts if part.line.startswith("D")]
    assert "butt hinge" not in {item.item for item in unit.hardware}


def test_doors_add_to_what_is_weighed_and_finished():
    thin, thick = built(sideboard()), built(sideboard({"thickness": "7/8"}))
    bare = built(sideboard() | {"rows": [{"columns": 3}, {"columns": 3}]})

    heavier = sum(
        (after.weight - before.weight) * len(before.plan.leaves)
        for before, after in zip(thin.doors, thick.doors, strict=True)
    )
    assert heavier > 0
    assert thick.masses.total - thin.masses.total == pytest.approx(heavier)
    assert thin.surfaces.show > bare.surfaces.show


def test_an_overlay_leaf_hinged_at_a_neighbour_is_cautioned():
    far = built(sideboard({"style": "full overlay"}, hinged="right"))

    swings = of_rule(far, "door swing")
    assert [finding.about for finding in swings] == ["A-R2-1-D1"]
    assert swings[0].verdict is Verdict.CAUTION


def test_half_overlay_doors_on_one_divider_have_no_room():
    data = sideboard({"style": "half overlay"})
    data["rows"][1] = {"across": [{"holds": "doors"}, {"holds": "doors"}, {"rows": [{}, {}]}]}
    unit = built(data)

    assert of_rule(unit, "door beside door")[0].verdict is Verdict.STOP


def test_a_leaf_wider_than_high_and_a_wide_plain_slab_are_cautioned():
    unit = built(sideboard({"make": SLABS[2]}) | {"rows": [{"height": "20"}, {"holds": "doors"}]})

    wide, low = of_rule(unit, "door width")[0], unit.doors[0].plan
    assert low.width > low.height
    assert wide.verdict is Verdict.CAUTION
    assert of_rule(unit, "door slab flat")[0].verdict is Verdict.CAUTION


@pytest.mark.parametrize(
    ("doors", "field"),
    [
        ({"make": {"kind": "frame-and-panel", "stile": "12"}}, "doors.make.stile"),
        ({"hinge_length": "9"}, "doors.hinge_length"),
        ({"hinge_closed": "1/2"}, "doors.hinge_closed"),
        ({"hinge_leaf": "1"}, "doors.hinge_leaf"),
        ({"gap": "6"}, "doors.gap"),
        ({"style": "half overlay", "overlay": "1"}, "doors.overlay"),
        ({"make": SLABS[1] | {"tongue": "3"}}, "doors.make.tongue"),
        ({"make": SLABS[0] | {"batten": "9"}}, "doors.make.batten"),
    ],
)
def test_a_door_that_cannot_be_is_refused_with_its_field_and_what_would_do(doors, field):
    with pytest.raises(REFUSALS) as refused:
        built(sideboard(doors))

    assert str(refused.value).startswith(field)
    assert "or less" in str(refused.value)


def test_a_measured_opening_changes_its_doors():
    designed = built(sideboard())
    measured = built(sideboard() | {"measured": {"openings": {"R2-1": {"width": "18-15/16"}}}})

    assert designed.doors[0].plan.width - measured.doors[0].plan.width == pytest.approx(1 / 16)
    assert designed.doors[1].plan.width == measured.doors[1].plan.width


@given(
    width=st.floats(42, 72),
    height=st.floats(28, 48),
    leaves=st.sampled_from([1, 2]),
    make=st.sampled_from([FRAMED, *SLABS]),
    style=st.sampled_from(["inset", "full overlay"]),
    cut=st.sampled_from(["flat", "quarter", "rift"]),
    name=st.sampled_from(["cherry", "white oak", "hard maple", "white pine"]),
    now=st.floats(5, 13),
)
def test_every_door_fits_its_opening_at_the_wettest(width, height, leaves, make, style, cut, name, now):
    data = sideboard({"make": make, "style": style, "wood": {"wood": name, "cut": cut}}, leaves=leaves)
    data["body"] |= {"width": f"{width:.3f}", "overall_height": f"{height:.3f}"}
    data["season"] = {
        "shop": {"moisture": now},
        "driest": {"moisture": 5.0},
        "wettest": {"moisture": 13.0},
    }
    unit = built(data)

    species = wood(name)
    figure = {
        "flat": species.tangential,
        "quarter": species.radial,
        "rift": (species.radial + species.tangential) / 2,
    }[cut]
    for door in unit.doors:
        plan = door.plan
        # By itself: every upright-grained board of a leaf that lies side by side with others swells.
        boards = [part for part in unit.parts if part.code.startswith(plan.leaves[0].code)]
        moving = sum(
            part.width
            for part in boards
            if part.grain is Grain.UPRIGHT and not part.sheet and "panel" not in part.name
        )
        swollen = leaves * (plan.width + moving * figure * (13 - now))
        room = plan.opening.width + plan.over.left + plan.over.right
        assert swollen <= room + 1e-6 or (style == "full overlay" and leaves == 1)
        assert plan.height <= plan.opening.height + plan.over.above + plan.over.below
        assert door.weight > 0


@given(
    width=st.floats(30, 90),
    groove=st.sampled_from(["1/4", "3/8", "1/2"]),
    cut=st.sampled_from(["flat", "quarter"]),
    name=st.sampled_from(["cherry", "red oak", "hard maple"]),
    now=st.floats(5, 14),
)
def test_no_panel_bottoms_out_and_each_stays_held_or_a_finding_says_so(width, groove, cut, name, now):
    data = sideboard({"make": FRAMED | {"groove_depth": groove}, "wood": {"wood": name, "cut": cut}})
    data["body"]["width"] = f"{width:.3f}"
    data["season"] = {
        "shop": {"moisture": now},
        "driest": {"moisture": 5.0},
        "wettest": {"moisture": 14.0},
    }
    unit = built(data)

    species = wood(name)
    figure = species.tangential if cut == "flat" else species.radial
    for door in unit.doors:
        frame = door.plan.frame
        deep = frame.asked.how.groove_depth
        across = frame.clear_width + 2 * deep
        assert frame.panel_width * (1 + figure * (14 - now)) <= across + 1e-6
        driest = frame.panel_width * (1 - figure * (now - 5))
        held = deep - (across - driest) / 2
        said = [each for each in of_rule(unit, "panel held") if each.about == door.code]
        assert held >= 1 / 8 - 1e-6 or said[0].verdict is Verdict.STOP


def test_a_customer_reads_how_the_doors_are_made_and_hung():
    framed = describe(built(sideboard({"thickness": "7/8"})))
    slab = describe(built(sideboard({"make": SLABS[1], "style": "full overlay", "wood": "walnut"})))

    said = (
        "Every door is a frame 7/8 in thick around a panel that is free to swell and shrink, set within its "
        "opening on two hinges."
    )
    assert said in framed[1]
    assert "kept flat by a cross piece at each end, 3/4 in thick, covering the edges" in slab[1]
    assert "The doors are of solid walnut." in slab[1]
    assert not [words for words in describe(built(chest())) if "door" in words.casefold()]
