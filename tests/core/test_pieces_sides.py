"""Sides, corners and dividers of a case: every choice has the lengths of its joint, and its wood has room."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some

from carcases import CUTS, WOODS
from casewright.labour.drivers import Driver
from casewright.measure.findings import Verdict
from casewright.pieces.asked.case_spec import CORNERS
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.built.season import unit_year
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.takeoff.drivers import count_drivers
from casewright.pieces.takeoff.rough import take_off
from casewright.pieces.words.describe import describe
from casewright.pieces.words.otherwise import otherwise
from casewright.wood.sheets import sheet
from units import built, chest

DIVIDERS = ("web-frame", "rail", "dust-frame", "solid", "none")
PLY = sheet("hardwood plywood", "3/4")


def made(**changes):
    """A chest 24 wide and 16 deep, of three rows, with some of its case changed."""
    return built(chest({name.replace("__", "."): value for name, value in changes.items()}))


def drivers(unit):
    """What the hours count."""
    return count_drivers(unit, take_off(unit, example_shop()))


def line(unit, mark):
    return [part for part in unit.parts if part.line == mark]


def said(unit, rule):
    return [found for found in unit.findings if found.rule == rule]


def joint(unit, key):
    return next(placed for placed in unit.case_joints if placed.key == key)


@pytest.mark.parametrize(
    ("corner", "length"),
    [
        # Geometry of the case, W = 24 and Tc = 3/4: W - 2 lap, W, W - 2 Tc + 2 hd, with tenons, W - 2 Tc.
        ("half-blind", 24 - 2 / 4),
        ("through", 24),
        ("housing", 24 - 2 * 3 / 4 + 2 / 4),
        ("tenon", 24 - 2 * 3 / 4 + 2 * 7 / 16),
        ("dowels", 24 - 2 * 3 / 4),
        ("loose-tenons", 24 - 2 * 3 / 4),
    ],
)
def test_a_rail_is_as_long_as_its_corner_asks(corner, length):
    unit = made(case__corner=corner)
    for rail in (*line(unit, "C2"), *line(unit, "C7")):
        assert rail.length == length
        assert rail.box.x == (24 - length) / 2
    assert not [found for found in unit.findings if found.rule == "joint of the case"]
    assert joint(unit, "rails").joint.findings


def test_a_framed_side_by_hand():
    """Geometry, and equation 13-2 of the Wood Handbook: 16 deep, stiles 3, cherry from 8.5 to 6.2 %."""
    unit = made(case__sides="framed", case__panelling={"tenon": "1-1/4"})
    assert [part.length for part in line(unit, "V1")] == [unit.face.body_height] * 4
    assert {part.length for part in line(unit, "V2")} == {16 - 6 + 2.5}
    # (10 + 3/4 - 1/16) / (1 + 0.00248 x 2.5) = 10.6216, down to 1/64
    assert {part.width for part in line(unit, "V4")} == {10 + 39 / 64}
    assert {part.length for part in line(unit, "V4")} == {unit.face.body_height - 6 + 3 / 4 - 2 / 32}
    # Only the stiles move in depth.
    assert unit.case.side_shrinkage == pytest.approx(2 * 3 * 0.00248 * 2.3)
    assert unit.case.slack == 1 / 8
    assert said(unit, "panel play")[0].verdict is Verdict.PASS


def test_a_drawer_in_framed_sides_is_deeper_than_in_solid_ones():
    """Down to 1/4 of (16-27/32 - 1/2 - 1/4 - what the side shrinks): 0.096 if solid, 0.034 of stiles."""
    body = {"width": "24", "depth": "16-27/32", "opening_total": "18"}
    solid, framed = made(body=body), made(body=body, case__sides="framed")
    assert solid.case.side_shrinkage == pytest.approx((16 + 27 / 32) * 0.00248 * 2.3)
    assert {drawer.sizes.length for drawer in solid.drawers} == {15.75}
    assert {drawer.sizes.length for drawer in framed.drawers} == {16}


def test_guides_pack_a_recessed_panel_out_to_the_stiles():
    unit = made(case__sides="framed")
    guides = line(unit, "V5")
    assert {part.thickness for part in guides} == {1 / 4}  # (3/4 - 1/4) / 2
    assert {part.length for part in guides} == {16 - 2 * 3}
    left = min(guides, key=lambda part: part.box.x)
    assert left.box.x + left.thickness == 3 / 4
    # Along the bottom row the side's own rail does it.
    assert len(guides) == 2 * 2


def test_a_case_of_plywood_takes_the_thickness_that_its_sheet_measures():
    """Geometry of a plywood case: top and bottom W - 2 t long, t as the sheet table has it."""
    unit = made(case__sides="plywood")
    t = PLY.thickness
    assert t != 3 / 4
    for mark in ("C1", "C6", "C11"):
        assert {part.thickness for part in line(unit, mark)} == {t}
        assert all(part.sheet and part.wood == str(PLY) for part in line(unit, mark))
    assert {part.length for mark in ("C6", "C11") for part in line(unit, mark)} == {24 - 2 * t}
    assert unit.face.clear_width == 24 - 2 * t
    lipping, side = line(unit, "E1"), line(unit, "C1")
    assert {part.width for part in lipping} == {1 / 4}
    assert {part.width for part in side} == {16 - 1 / 4}
    assert {part.box.y for part in lipping} == {0}
    assert not line(unit, "C2")
    assert unit.case.side_shrinkage == 0
    assert said(unit, "composite-wood label")[0].verdict is Verdict.CAUTION


def test_partitions_of_a_plywood_case_are_of_its_sheet_too():
    slides = {"kind": "slides"}
    unit = made(case__sides="plywood", rows=[{"columns": 2}, {}, {}], drawers__running=slides)
    partition, edge = line(unit, "C8")[0], line(unit, "C10")[0]
    assert partition.sheet
    assert partition.thickness == edge.thickness == PLY.thickness
    assert edge.width == 1 / 4
    widths = [opening.width for opening in unit.face.openings[:2]]
    assert sum(widths) + 3 * PLY.thickness == pytest.approx(24)


def test_uprights_and_shelves_of_a_plywood_case_are_of_its_sheet_with_a_lipped_edge():
    rows = [{"columns": 2}, {"across": [{}, {"holds": "open", "shelves": 2}], "height": "14"}]
    ply, solid = (made(case__sides=sides, rows=rows) for sides in ("plywood", "solid"))
    upright, shelves = line(ply, "C4")[0], line(ply, "C9")
    assert upright.sheet
    assert upright.thickness == PLY.thickness
    assert (upright.width, upright.box.y) == (3 - 1 / 4, 1 / 4)
    assert {part.width for part in line(ply, "C10") if part.name == "Upright edge"} == {1 / 4}
    assert all(shelf.sheet and shelf.thickness == PLY.thickness for shelf in shelves)
    # 15-1/2 of opening, 1/4 behind the front edge, lipped 1/4.
    assert {shelf.width for shelf in shelves} == {15.5 - 1 / 4 - 1 / 4}
    assert {part.width for part in line(ply, "C12")} == {1 / 4}
    assert not line(solid, "C4")[0].sheet
    assert not line(solid, "C9")[0].sheet
    # Sides, bottom, top, partition, upright and two shelves; each has a lipping.
    assert drivers(ply)[Driver.CASE_SHEETS] == drivers(ply)[Driver.LIPPED_EDGES] == 8


def test_a_shelf_that_is_asked_thicker_than_the_sheet_is_a_board():
    unit = made(
        case__sides="plywood",
        rows=[{}, {"across": [{}, {"holds": "open", "shelves": 1}], "height": "14"}],
        shelving={"thickness": "1"},
    )
    assert not line(unit, "C9")[0].sheet
    assert line(unit, "C9")[0].thickness == 1


def test_a_thickness_that_was_measured_on_the_sheet_beats_the_table():
    unit = made(case__sides="plywood", case__side="11/16", case__bottom="45/64")
    assert {part.thickness for part in line(unit, "C1")} == {11 / 16}
    assert {part.thickness for part in line(unit, "C6")} == {45 / 64}
    assert {part.length for part in line(unit, "C6")} == {24 - 2 * 11 / 16}
    # What was not typed is of the same sheet as the sides.
    assert {part.thickness for part in line(unit, "C11")} == {11 / 16}


@pytest.mark.parametrize("corner", ["half-blind", "through", "tenon"])
def test_plywood_takes_no_corner_that_breaks_out_of_its_plies(corner):
    with pytest.raises(CannotRead, match=r"case\.corner: plywood sides take no .* write \"dowels\""):
        made(case__sides="plywood", case__corner=corner)


def test_a_solid_bottom_fixed_fast_to_framed_sides_is_stopped_and_told_what_would_do():
    fast = said(made(case__sides="framed", case__corner="dowels"), "cross-grain fixing")
    stopped = next(found for found in fast if found.about == "A-C-B")
    assert stopped.verdict is Verdict.STOP
    assert stopped.needed == 6
    assert "tenons" in str(stopped.remedy)
    free = made(case__sides="framed")
    passed = next(found for found in said(free, "cross-grain fixing") if found.about == "A-C-B")
    assert passed.verdict is Verdict.PASS
    # Poplar, 15-1/2 less the lipping, from 8.5 to 11 %: the room left at the rear, by 16ths.
    grows = 14 * 0.00289 * 2.5
    bottom = line(free, "C6")[0]
    assert 15.5 - bottom.box.y - bottom.box.depth >= grows
    assert joint(free, "bottom").kind == "housing"


def test_dividers_wider_than_their_stiles_are_named():
    unit = made(case__sides="framed", case__panelling={"stile": "2"})
    found = said(unit, "rails in the stiles")
    assert [each.verdict for each in found] == [Verdict.CAUTION, Verdict.CAUTION]
    assert [(each.found, each.needed) for each in found] == [(2, 3), (1.5, 2.5)]


def test_a_front_rail_alone_has_nothing_behind_it_and_wants_hung_drawers():
    unit = made(case__divider_kind="rail")
    assert len(line(unit, "C3")) == 2
    assert not [part for part in unit.parts if part.line[0] == "W"]
    assert said(unit, "something to run on")[0].verdict is Verdict.STOP
    hung = made(case__divider_kind="rail", drawers__running={"kind": "side-hung"})
    assert not said(hung, "something to run on")


def test_a_solid_divider_reaches_to_the_back_and_needs_no_runners():
    unit = made(case__divider_kind="solid", case__lipping="0")
    boards = line(unit, "D2")
    assert [part.length for part in boards] == [22.5 + 2 / 4] * 2
    assert [part.width for part in boards] == [16 - 1 / 2] * 2
    assert not [part for part in unit.parts if part.line in ("W1", "W2", "C3")]
    assert joint(unit, "dividers").places == 4
    passed = [each for each in said(unit, "cross-grain fixing") if each.about == "A-D1"]
    assert passed[0].found == pytest.approx(0.5 * 0.00248 * 2.5)  # 15-1/2 of board beside 16 of side


def test_a_dust_panel_by_hand():
    """Geometry, and what solid sides shrink: 15-1/2 deep, rails 3 and 2-1/2, grooves 1/4."""
    unit = made(case__divider_kind="dust-frame")
    panels = line(unit, "D3")
    shrinks = 16 * 0.00248 * 2.3
    clear = 15.5 - 3 - 2.5
    deep = clear + 2 / 4 - 2 / 32 - shrinks
    assert {part.width for part in panels} == {int(deep * 64) / 64}
    assert {part.length for part in panels} == {22.5 - 2 * 2.5 + 2 / 4 - 2 / 32}
    assert said(unit, "dust panel held")[0].verdict is Verdict.PASS
    assert joint(unit, "runners").joint.given.groove is not None


def test_fields_that_leave_no_wood_are_refused_by_name():
    with pytest.raises(CannotBuild, match=r"case\.panelling\.stile"):
        made(case__sides="framed", case__panelling={"stile": "9"})
    with pytest.raises(CannotBuild, match=r"case\.corner_tenon"):
        made(case__corner="tenon", case__corner_tenon="3/4")
    with pytest.raises(CannotBuild, match=r"case\.dust\.nominal"):
        made(case__divider_kind="dust-frame", case__dust={"nominal": "3/4"})


def test_dowels_and_screws_are_bought_and_loose_tenons_cut_from_offcuts():
    doweled = made(case__corner="dowels")
    bought = {item.item: item.quantity for item in doweled.hardware}
    # Two in each end of both rails; in the bottom, 15-1/2 wide: (15-1/2 - 2) / 3, up, and one.
    assert bought["dowel"] == 4 * 2 + 2 * 6
    screwed = {item.item: item.quantity for item in made(case__corner="housing").hardware}
    # Two in each end of both rails; in the bottom (15-1/2 - 3) / 6, up, and one.
    assert screwed["case screw"] == 4 * 2 + 2 * 4
    loose = made(case__corner="loose-tenons")
    assert "dowel" not in {item.item for item in loose.hardware}
    tenons = {str(part.size): part.quantity for part in loose.small_parts if part.name == "Loose tenon"}
    # One in each end of a rail 3 wide, as wide as half of it; in the bottom (15-1/2 - 3) / 5, up, and one.
    assert tenons == {"1/4 × 1-1/2 × 1-1/2": 4 + 2 * 4}


def test_hours_count_what_is_made():
    """Six dovetailed corners of solid sides; none of framed ones, which are counted as such."""
    solid, framed, ply = (
        drivers(made(**asked)) for asked in ({}, {"case__sides": "framed"}, {"case__sides": "plywood"})
    )
    assert solid[Driver.CASE_CORNERS] == 6
    assert Driver.FRAMED_SIDES not in solid
    assert framed[Driver.CASE_CORNERS] == 0
    assert framed[Driver.FRAMED_SIDES] == 2
    assert framed[Driver.MORTISE_JOINTS] == 4 * 2  # twin tenons at both ends of two rails
    assert framed[Driver.HOUSED_ENDS] == solid[Driver.HOUSED_ENDS] + 2  # the bottom
    assert ply[Driver.CASE_SHEETS] == 4
    assert ply[Driver.LIPPED_EDGES] == 4
    assert ply[Driver.DOWELS] == 2 * 2 * 6
    dusted = drivers(made(case__divider_kind="dust-frame"))
    assert dusted[Driver.DUST_PANELS] == 2


def test_words_for_a_customer_say_what_the_case_is():
    assert "frames 3/4 in thick around panels that lie loose" in " ".join(
        describe(made(case__sides="framed"))
    )
    assert "plywood" in " ".join(describe(made(case__sides="plywood")))
    changed = otherwise(made(), made(case__sides="framed", case__divider_kind="rail"))
    assert "Its sides are frames with panels instead of solid boards." in changed
    assert "Between its rows lie front rails alone instead of frames." in changed


@some.composite
def cases(draw):
    """Any combination of sides, corners and dividers."""
    sides = draw(some.sampled_from(sorted(CORNERS)))
    sixteenths = draw(some.integers(20 * 16, 60 * 16)), draw(some.integers(13 * 16, 26 * 16))
    rows = draw(some.integers(1, 5))
    return chest(
        {
            "body": {
                "width": sixteenths[0] / 16,
                "depth": sixteenths[1] / 16,
                "opening_total": draw(some.integers(5 * 16, 8 * 16)) / 16 * rows,
            },
            "graduation": {"rule": "equal"},
            "rows": [{"columns": draw(some.integers(1, 2))} for _ in range(rows)],
            "woods": {
                part: {"wood": draw(some.sampled_from(sorted(WOODS))), "cut": draw(some.sampled_from(CUTS))}
                for part in ("case", "drawers", "inside")
            },
            "case.sides": sides,
            "case.corner": draw(some.sampled_from((None, *CORNERS[sides]))),
            "case.divider_kind": draw(some.sampled_from(DIVIDERS)),
            "case.divider_end": draw(some.sampled_from(["housing", "sliding dovetail"])),
            "case.lipping": draw(some.sampled_from([0, 1.5])),
            "case.panelling": {
                "stile": draw(some.integers(32, 60)) / 16,
                "muntins": draw(some.integers(0, 1)),
                "middle_rails": draw(some.integers(0, 1)),
                "ply": draw(some.sampled_from([None, {}])),
            },
        }
    )


@settings(max_examples=25, deadline=None)
@given(cases())
def test_any_case_closes_whatever_its_sides_corners_and_dividers(data):
    try:
        unit = built(data)
    except REFUSALS:
        assume(False)
    spec, face = unit.spec, unit.face
    assert all(min(part.thickness, part.width, part.length) > 0 for part in unit.parts)
    side = PLY.thickness if spec.case.is_ply else 3 / 4
    assert spec.case.side == side
    assert face.clear_width + 2 * side == pytest.approx(spec.body.width)
    found = {each.rule: each for each in unit.findings}
    assert found["stack closes"].verdict is found["columns close"].verdict is Verdict.PASS
    assert found["stack closes"].found == pytest.approx(0)
    if spec.case.is_framed:
        assert found["panel play"].verdict is Verdict.PASS
        assert found["panel held"].verdict is Verdict.PASS
    # Nothing of the body stands out of it, and whatever lies between the sides reaches into both alike.
    width, depth = spec.body.width, spec.body.depth
    for part in unit.case.parts:
        if part.line[0] in "CDEVW":
            assert part.box.x >= -1e-9
            assert part.box.x + part.box.width <= width + 1e-9
            assert part.box.y >= -1e-9
            assert part.box.y + part.box.depth <= depth + 1e-9
        if part.line in ("C2", "C3", "C7", "C11", "D2", "W1"):
            assert part.box.x == pytest.approx(width - part.box.x - part.box.width)
    # Every joint of the case is cut on parts that are there, as often as it is counted.
    known = {part.code for part in unit.parts}
    for placed in unit.case_joints:
        assert set(placed.parts) <= known
        assert placed.places > 0
    assert unit.masses.total == pytest.approx(
        unit.masses.case.weight + sum(mass.weight for mass in unit.masses.drawers.values())
    )
    moves = unit.case.side_shrinkage
    assert moves == 0 if spec.case.is_ply else moves >= 0
    assert not spec.case.has_webs or unit.case.slack >= moves


def test_the_year_names_what_the_sides_are_and_leaves_out_runners_that_are_not_there():
    plywood = unit_year(made(case__sides="plywood", case__divider_kind="solid"))
    parts = {part.part: part for part in plywood.parts}
    assert "Runners" not in parts
    assert parts["Case bottom"].made_of == f"{PLY}, in {PLY}"
    framed = {part.part: part for part in unit_year(made(case__sides="framed")).parts}
    assert framed["Runners"].made_of == "long grain, in sides of frames of cherry, flat-sawn"
    assert framed["Case sides"].passes


def test_no_two_kinds_of_part_share_a_mark_in_the_cut_list():
    unit = made(case__sides="framed", drawers__style={"kind": "cock-beaded"})
    marks = [each.line for each in unit.lines]
    assert len(marks) == len(set(marks))
    assert len({each.part.line.rstrip("#") for each in unit.lines if each.part.name == "Side stile"}) == 1


def test_a_plywood_case_with_doors_and_shelves_has_its_top_for_itself():
    nested = [
        {"columns": 2},
        {"across": [{"holds": "doors"}, {"rows": [{}, {}]}, {"holds": "open", "shelves": 1}], "height": "16"},
    ]
    body = {"width": "60", "depth": "18", "overall_height": "34"}
    unit = made(case__sides="plywood", rows=nested, body=body)
    assert [part.name for part in line(unit, "C11")] == ["Case top"]
    assert not [found for found in unit.findings if found.rule == "joint of the case"]
    assert joint(unit, "case_top").places == 2
