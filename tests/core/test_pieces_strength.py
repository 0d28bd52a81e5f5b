"""Shelves, rails, a desk's top, backs, runners and wall fixings, checked for whatever a unit has of them."""

import pytest

from casewright.pieces.built.standing import unit_standing
from units import built, chest, dresser

BOOKS = {
    "body": {"width": "60", "depth": "14", "overall_height": "40"},
    "rows": [{"columns": 2, "height": "5"}, {"across": [{"holds": "open", "shelves": 2}]}],
}
HUNG = {
    "body": {"width": "36", "depth": "9", "overall_height": "18"},
    "rows": [{"columns": 3}, {"columns": 3}],
    "base": None,
    "cleat": {},
    "use": {"free_standing": False, "clothing": False},
}


def found(made, rule):
    """The findings of one check."""
    return [each for each in made.findings if each.rule == rule]


def test_a_long_shelf_is_a_caution_with_what_would_pass():
    (shelf,) = found(built(chest(BOOKS)), "shelf sag")

    assert str(shelf.verdict) == "caution"
    assert shelf.found > shelf.needed
    assert "thick, or let it span" in str(shelf.remedy)
    assert "Wood Handbook" in shelf.source


def test_a_shelf_as_thick_as_is_asked_passes():
    (shelf,) = found(built(chest({**BOOKS, "shelving": {"thickness": "1-1/2"}})), "shelf sag")

    assert str(shelf.verdict) == "pass"


def test_a_shelf_bears_what_is_typed():
    light, heavy = (
        found(built(chest({**BOOKS, "use": {"shelf_load_lb": load}})), "shelf sag")[0].found
        for load in (10, 40)
    )

    assert heavy > 2 * light


def test_the_rail_under_two_half_drawers_hangs_most():
    rails = {each.about: each.found for each in found(built(dresser()), "rail sag")}

    # worked dresser A: two inner sides of 7.05 lb each bear near the middle of 38 in of cherry 3/4 x 3
    assert set(rails) == {"A-D1-RF", "A-D2-RF", "A-D3-RF", "A-D4-RF"}
    assert max(rails, key=rails.get) == "A-D1-RF"
    assert 0.08 < rails["A-D1-RF"] < 38 / 300


def test_a_rail_over_uprights_that_stand_on_one_another_spans_between_them():
    half_drawers = {
        "body": {"width": "58", "depth": "18", "opening_total": "21"},
        "rows": [{"columns": 2}] * 3,
    }
    borne, free = (
        found(built(chest({**half_drawers, "rows": rows})), "rail sag")[0]
        for rows in ([{"columns": 2}] * 3, [{"columns": 2}, {"columns": 2}, {}])
    )

    # the upper rail stands on uprights down to the case bottom, or on one that stands on a rail alone
    assert "over 28-" in str(borne.message)
    assert "over 56-1/2 in" in str(free.message)
    assert borne.found < free.found / 4


def test_drawers_on_slides_do_not_load_the_rails():
    slides = {"drawers": {"running": {"kind": "slides"}}}

    assert found(built(chest(slides)), "rail sag") == []
    assert found(built(chest(slides)), "runner wear") == []


def test_a_wide_open_space_before_a_back_of_boards_is_told_of_racking():
    space = {
        "body": {"width": "48", "depth": "16", "overall_height": "36"},
        "rows": [{"height": "6"}, {"across": [{"holds": "open"}]}],
    }
    loose = built(chest(space))
    stiff = built(chest({**space, "back": {"kind": "panelled"}}))

    assert [str(each.verdict) for each in found(loose, "racking")] == ["caution"]
    assert [str(each.verdict) for each in found(stiff, "racking")] == ["pass"]


def test_a_chest_with_web_frames_is_not_held_up_for_its_boards():
    assert [str(each.verdict) for each in found(built(dresser()), "racking")] == ["pass"]


def test_a_typed_load_counts_for_the_bottom_and_for_tipping():
    usual, heavy = built(chest()), built(chest({"drawers": {"load_lb": 60}}))

    # so heavy that the bottom asks for a muntin, which was not there before
    assert (usual.drawers[0].bottom.pieces, heavy.drawers[0].bottom.pieces) == (1, 2)
    assert heavy.drawers[0].bottom.sag_without_muntin > usual.drawers[0].bottom.sag
    assert heavy.stand.piece.drawers[0].fill_weight == 60


def test_a_hung_bank_says_what_its_screws_carry():
    made = built(chest(HUNG))

    (fixings,) = found(made, "wall fixings")
    wall = unit_standing(made).wall

    piece = made.stand.piece
    full = made.masses.total + sum(each.fill_weight for each in piece.drawers)
    opened = sum(each.weight + each.fill_weight for each in piece.drawers)
    travel = max(each.travel for each in piece.drawers)
    cleat = next(part for part in made.parts if part.code == "A-Q-C").box
    assert wall.weight == pytest.approx(full, rel=1e-9)
    # its weight at half its depth, and the full drawers by their travel, over the height of the cleat
    assert wall.pull == pytest.approx(
        (full * 9 / 2 + opened * travel) / (cleat.z + cleat.height / 2), rel=1e-9
    )
    assert fixings.needed == wall.fixings
    assert f"{wall.fixings} of them" in str(fixings.message)


def test_stronger_fixings_are_fewer():
    weak, strong = (
        unit_standing(built(chest({**HUNG, "use": {**HUNG["use"], "fixing_lb": holds}}))).wall.fixings
        for holds in (40, 400)
    )

    assert weak > strong >= 2


def test_a_built_in_that_stands_is_carried_by_the_floor():
    made = built(chest({"use": {"free_standing": False}}))

    wall = unit_standing(made).wall

    assert (wall.hangs, wall.weight) == (False, 0)
    worst = max(1.25 * case.tipping - case.holding for case in made.stand.cases)
    assert wall.pull == pytest.approx(worst / wall.lever, rel=1e-9)


def test_what_is_carried_names_its_people():
    held = {each.what: each for each in unit_standing(built(dresser())).carries}

    # worked dresser A: 160.8 lb with its drawers, 87.0 without, at 50 lb a person
    assert held["the piece with its drawers"].people == 4
    assert held["the case, drawers out"].people == 2
    assert held["the heaviest drawer, A-R5-1"].people == 1
