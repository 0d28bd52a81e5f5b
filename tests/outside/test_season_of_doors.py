"""Doors, panels, tops and frames through the year against coefficients copied from the Wood Handbook."""

import json

import pytest

from casewright.pieces.built.construct import Construction
from casewright.pieces.built.season import unit_year
from casewright.pieces.layout.year import Through
from units import BEDSIDE_FILE, built, chest

# Wood Handbook, FPL-GTR-190 (2010), Table 13-5: radial, tangential
CHERRY, WHITE_OAK, HARD_MAPLE = (0.00126, 0.00248), (0.00180, 0.00365), (0.00165, 0.00353)
# The year that the worked pieces take: 8.5 % now, 6.2 to 11.0 % at home
TO_WET, TO_DRY = 2.5, -2.3
EXACT = 1e-6


def sideboard(wood: str, cut: str, **doors: object) -> Construction:
    data = chest()
    data["body"] = {"width": "48", "depth": "18", "overall_height": "34"}
    data["rows"] = [{"columns": 2, "height": "6"}, {"columns": 2, "holds": "doors"}]
    data["doors"] = {"wood": {"wood": wood, "cut": cut}, **doors}
    return built(data)


def through(unit: Construction, what: str) -> Through:
    return next(each.through for each in unit_year(unit).parts if each.what == what)


@pytest.mark.parametrize(
    ("wood", "cut", "printed"),
    [
        ("cherry", "flat", CHERRY[1]),
        ("cherry", "quarter", CHERRY[0]),
        ("cherry", "rift", sum(CHERRY) / 2),
        ("white oak", "flat", WHITE_OAK[1]),
        ("white oak", "quarter", WHITE_OAK[0]),
        ("hard maple", "rift", sum(HARD_MAPLE) / 2),
    ],
)
def test_a_panel_moves_in_its_grooves_by_the_printed_figure_of_its_cut(wood, cut, printed):
    unit = sideboard(wood, cut)
    frame = unit.doors[0].plan.frame

    held = through(unit, "how far the panel reaches into each groove")

    # equation 13-2, half at each side
    assert held.driest - held.now == pytest.approx(frame.panel_width * printed * TO_DRY / 2, abs=EXACT)
    assert held.wettest - held.now == pytest.approx(frame.panel_width * printed * TO_WET / 2, abs=EXACT)


@pytest.mark.parametrize(("cut", "printed"), [("flat", CHERRY[1]), ("quarter", CHERRY[0])])
def test_a_frame_closes_its_gap_by_its_stiles_and_a_slab_by_all_of_it(cut, printed):
    framed = sideboard("cherry", cut)
    slab = sideboard("cherry", cut, make={"kind": "slab"})

    by_stiles, by_all = through(framed, "gap at its free edge"), through(slab, "gap at its free edge")

    assert by_stiles.now - by_stiles.wettest == pytest.approx(2 * 2.25 * printed * TO_WET, abs=EXACT)
    width = slab.doors[0].plan.width
    assert by_all.now - by_all.wettest == pytest.approx(width * printed * TO_WET, abs=EXACT)


def test_the_sides_of_drawers_move_in_thickness_by_the_other_figure():
    # a flat-sawn side moves in its thickness by the radial figure, a quartersawn one by the tangential
    flat, quarter = (
        through(built(chest({"woods.drawers": {"wood": "hard maple", "cut": cut}})), "clearance beside them")
        for cut in ("flat", "quarter")
    )

    assert flat.now - flat.wettest == pytest.approx(0.5 * HARD_MAPLE[0] * TO_WET, abs=EXACT)
    assert quarter.now - quarter.wettest == pytest.approx(0.5 * HARD_MAPLE[1] * TO_WET, abs=EXACT)


def test_the_top_of_the_worked_bedside_moves_over_aprons_as_printed():
    # printed for worked bedside B: 16 in of walnut by 0.00274 grow 0.110 when wettest; here over its frame
    unit = built(json.loads(BEDSIDE_FILE.read_text(encoding="utf-8")))
    top = through(unit, "moves over the case")

    assert top.wettest == pytest.approx(14.5 * 0.00274 * TO_WET, abs=EXACT)
    assert top.wettest * 16 / 14.5 == pytest.approx(0.110, abs=0.0005)  # printed to three places


def test_nothing_of_a_case_with_sides_is_told_of_a_piece_on_legs():
    unit = built(json.loads(BEDSIDE_FILE.read_text(encoding="utf-8")))

    told = {each.part for each in unit_year(unit).parts}
    behind = through(unit, "room behind it")

    assert not told & {"Runners", "Back boards", "Case bottom", "Case bottom panel", "Plinth returns"}
    # the aprons' long grain sets the depth: only the plywood bottom moves, by 0.2 % of shrinkage at most
    assert abs(behind.wettest - behind.driest) < 0.02
