"""Nested faces between sides of every kind: each closes, and nothing reaches where it has no room."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from test_pieces_nested_properties import CLOSE, common, corners

from casewright.wood.sheets import sheet
from nested import RUNNING, SIDES, nested_units
from units import built, chest

PLY = sheet("hardwood plywood", "3/4")
SHELL = ("C1", "E1", "V1", "V2", "V3", "V4")
"""What a side is made of."""
LET_IN = ("C2", "C3", "C5", "C6", "C7", "C9", "C11", "C12", "D1", "D2", "W1", "P1", "E2")
"""What is joined to sides; and back boards, which lie in their rabbets."""


@given(nested_units(SIDES, RUNNING))
def test_a_nested_face_closes_and_keeps_out_of_its_sides(data):
    made = built(data)

    case, width, depth = made.spec.case, made.spec.body.width, made.spec.body.depth
    assert case.side == (PLY.thickness if case.is_ply else 3 / 4)
    for stack in made.face.stacks:
        heights = sum(row.height for row in stack.rows) + (len(stack.rows) - 1) * case.divider
        assert heights == pytest.approx(stack.height, abs=CLOSE)
        for row in stack.rows:
            widths = sum(cell.width for cell in row.cells) + (len(row.cells) - 1) * case.upright
            assert widths == pytest.approx(stack.width, abs=CLOSE)
    assert made.face.stacks[0].width + 2 * case.side == pytest.approx(width, abs=CLOSE)
    codes = [part.code for part in made.parts]
    assert len(set(codes)) == len(codes)
    assert [part.code for part in made.parts if min(part.thickness, part.width, part.length) <= 0] == []
    for part in made.case.parts:
        if part.line[0] in "CDEVWP":
            assert -CLOSE <= part.box.x <= part.box.x + part.box.width <= width + CLOSE, part.code
            assert -CLOSE <= part.box.y <= part.box.y + part.box.depth <= depth + CLOSE, part.code
    # A drawer and whatever is not joined to a side keeps out of it.
    walls = [(part, corners(part.box)) for part in made.parts if part.line in SHELL]
    for part in made.parts:
        if part.line in (*SHELL, *LET_IN) or part.line[0] in "BPT":
            continue
        for wall, box in walls:
            assert common(corners(part.box), box) <= CLOSE, (part.code, wall.code)
    known = set(codes)
    assert all(set(placed.parts) <= known and placed.places > 0 for placed in made.case_joints)


@settings(max_examples=15, deadline=None)
@given(nested_units(("plywood",), RUNNING))
def test_whatever_stands_or_lies_between_plywood_sides_is_of_their_sheet(data):
    made = built(data)

    for part in made.parts:
        if part.line in ("C1", "C4", "C6", "C8", "C11"):
            assert part.sheet, part.code
            assert part.wood == str(PLY)
            assert part.thickness == PLY.thickness
        if part.line == "C9":
            assert part.sheet, part.code
    for one, other in combinations([part for part in made.parts if part.line in ("C4", "C8", "C10")], 2):
        assert common(corners(one.box), corners(other.box)) <= CLOSE, (one.code, other.code)


def test_a_solid_partition_between_framed_sides_has_room_to_grow():
    """Wood Handbook equation 13-2: poplar 15-1/2 less the lipping deep, from 8.5 to 11 %, in sixteenths."""
    rows = [{}, {"across": [{}, {"holds": "doors"}], "height": "14"}]
    framed, solid = (
        next(part for part in built(chest({"case.sides": sides, "rows": rows})).parts if part.line == "C8")
        for sides in ("framed", "solid")
    )
    assert solid.box.y + solid.box.depth == 15.5
    assert 15.5 - (framed.box.y + framed.box.depth) >= 14 * 0.00289 * 2.5
