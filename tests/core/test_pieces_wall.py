"""What ties a piece to the building: cleats and their screws, what they take of the depth, scribe strips."""

import pytest

from casewright.measure.findings import Verdict
from casewright.pieces.drawers.sizes import CannotBuild
from units import bedside, built, chest, estimated

HUNG = {"base": None, "use": {"free_standing": False}}


def hung(cleat, **changes):
    """The small chest, 24 x 16, hung on a cleat."""
    return built(chest({"cleat": cleat, **HUNG, **changes}))


def found(made, rule):
    return [finding for finding in made.findings if finding.rule == rule]


def cleats(made):
    """Line, quantity, thickness, width and length of cleats, spacers and strips."""
    return [
        (line.line, line.quantity, line.part.thickness, line.part.width, line.part.length)
        for line in made.lines
        if line.line[0] == "Q"
    ]


def test_a_cleat_within_the_sides_takes_its_thickness_of_the_depth():
    made = hung({})

    # 16 less a back of 1/2 and a cleat of 3/4
    assert made.face.opening_depth == 14.75
    # between the sides, 22-1/2; the one on the wall has 1/2 of room at each end
    assert cleats(made) == [("Q1", 1, 0.75, 3, 22.5), ("Q2", 1, 0.75, 3, 21.5)]
    assert max(part.box.y + part.box.depth for part in made.parts) == 16.0


def test_a_cleat_behind_the_case_leaves_the_depth_and_holds_it_off_the_wall():
    made = hung({"room": "behind"})

    assert made.face.opening_depth == 15.5
    # an inch inside each side, and a spacer as thick below
    assert cleats(made) == [("Q1", 1, 0.75, 3, 22), ("Q2", 1, 0.75, 3, 21), ("Q3", 1, 0.75, 3, 22)]
    assert max(part.box.y + part.box.depth for part in made.parts) == 16.75


def test_the_bevels_hook_over_each_other_by_their_thickness():
    boxes = {part.line: part.box for part in hung({}).parts if part.line[0] == "Q"}

    # at 45 degrees the bevel rises as far as the cleat is thick
    assert boxes["Q2"].z + boxes["Q2"].height - boxes["Q1"].z == 0.75


@pytest.mark.parametrize(
    ("width", "apart", "screws", "verdict"),
    # the cleat on the wall is 2-1/2 shorter than the case: 33 meets two studs 16 apart for sure, 31-1/2 one
    [("35-1/2", 16, 4, Verdict.PASS), ("34", 16, 2, Verdict.CAUTION), ("52", 24, 4, Verdict.PASS)],
)
def test_screws_go_into_the_studs_that_a_cleat_is_sure_to_meet(width, apart, screws, verdict):
    made = hung({"studs": apart}, **{"body.width": width})

    assert next(each.quantity for each in made.hardware if each.item == "stud screw") == screws
    assert found(made, "cleat in the studs")[0].verdict == verdict
    assert "wall restraint" not in {each.item for each in made.hardware}


def test_a_piece_that_stands_has_its_wall_restraint():
    assert "wall restraint" in {each.item for each in built(chest()).hardware}


def test_a_cleat_on_a_piece_that_stands_free_is_asked_about():
    (finding,) = found(built(chest({"cleat": {}})), "hung on the wall")

    assert finding.verdict == Verdict.CAUTION


@pytest.mark.parametrize(
    ("site", "rule", "verdict"),
    [
        ({"scribe": "1", "out_of_plumb": "3/4"}, "scribe", Verdict.PASS),
        ({"scribe": "1", "out_of_plumb": "7/8"}, "scribe", Verdict.CAUTION),
        # 24 wide with overhangs of 3/4
        ({"recess": "25-1/2", "scribe": "1"}, "between the walls", Verdict.PASS),
        ({"recess": "25-1/4", "scribe": "1"}, "between the walls", Verdict.STOP),
        # 24 and two strips of 1-1/2 are 27
        (
            {"recess": "26-1/2", "scribe": "1-1/2", "out_of_plumb": "1/2"},
            "strips reach the walls",
            Verdict.PASS,
        ),
        (
            {"recess": "26-3/4", "scribe": "1-1/2", "out_of_plumb": "1/2"},
            "strips reach the walls",
            Verdict.CAUTION,
        ),
    ],
)
def test_strips_and_walls_out_of_plumb_are_held_against_each_other(site, rule, verdict):
    assert found(built(chest({"site": site})), rule)[0].verdict == verdict


def test_a_strip_stands_at_each_side_as_high_as_the_case():
    made = built(chest({"site": {"scribe": "1-1/2"}}))

    assert cleats(made) == [("Q4", 2, 0.75, 1.5, made.face.body_height)]
    assert sorted(part.box.x for part in made.parts if part.line == "Q4") == [-1.5, 24.0]


def test_a_hung_and_a_built_in_piece_are_priced():
    held = estimated(chest({"cleat": {"room": "behind"}, "site": {"scribe": "1"}, **HUNG}))

    assert held.unpriced == ()


@pytest.mark.parametrize(
    ("cleat", "field"), [({"height": "12"}, "cleat.height"), ({"thickness": "3"}, "cleat.thickness")]
)
def test_a_cleat_larger_than_the_case_takes_is_refused(cleat, field):
    with pytest.raises(CannotBuild, match=rf"{field}: .* or less"):
        hung(cleat)


def test_a_piece_on_legs_is_not_hung():
    with pytest.raises(CannotBuild, match="stands on the floor"):
        built(bedside({"cleat": {}}))
