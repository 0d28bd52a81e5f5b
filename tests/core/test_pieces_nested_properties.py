"""Whatever a face is parted into: it closes, its parts lie inside the piece, and none stands in another."""

from itertools import combinations

import pytest
from hypothesis import given

from nested import nested_units
from units import built

CLOSE = 1e-9
WALLS = ("C1", "C8", "C10")
LET_INTO_WALLS = ("C2", "C3", "C5", "C6", "C7", "C9", "C12", "D1", "D2", "W1", "P1")
RAILS = ("C2", "C3", "C5", "C6", "C7", "D1", "D2", "W1")
BEARERS = ("W2", "W3", "W4", "W5", "W8", "W9")
DUST_PANEL = "D3"
STANDING = ("C4", "C8", "C10")
DOORS = ("DS", "DR", "DM", "DP", "DW")
DEEPEST = 0.5
"""The longest tenon and the longest tail of the units here [in]."""


def corners(box):
    return (
        (box.x, box.x + box.width),
        (box.y, box.y + box.depth),
        (box.z, box.z + box.height),
    )


def common(one, other):
    """The least of the three sizes of what two boxes share; nothing where they share nothing."""
    return max(0.0, min(min(a[1], b[1]) - max(a[0], b[0]) for a, b in zip(one, other, strict=True)))


def are_joined(one, other):
    """May one of two parts of a case reach into the other?"""
    pair = ((one, other), (other, one))
    return any(
        (a in WALLS and b in LET_INTO_WALLS)
        or (a in RAILS and b in (*BEARERS, *STANDING))
        or (a in BEARERS and b in STANDING)
        or (a in (*RAILS, *BEARERS) and b == DUST_PANEL)
        or a == b == "P1"
        or (a[0] == b[0] == "B")
        for a, b in pair
    )


def group_of(part, made):
    """The drawer or the door that a part is of: its parts are joined to one another."""
    code = part.code.rpartition("-")[0]
    return code if code in {drawer.code for drawer in made.drawers} or part.line.startswith(DOORS) else ""


@given(nested_units())
def test_every_stack_and_every_row_closes(data):
    made = built(data)

    case = made.spec.case
    for stack in made.face.stacks:
        heights = sum(row.height for row in stack.rows) + (len(stack.rows) - 1) * case.divider
        assert heights == pytest.approx(stack.height, abs=CLOSE)
        for row in stack.rows:
            widths = sum(cell.width for cell in row.cells) + (len(row.cells) - 1) * case.upright
            assert widths == pytest.approx(stack.width, abs=CLOSE)
            assert len(row.uprights) + len(row.partitions) == len(row.cells) - 1
    whole = made.face.stacks[0]
    assert whole.width + 2 * case.side == pytest.approx(made.spec.body.width, abs=CLOSE)
    stops = [found.message for found in made.findings if found.rule in ("stack closes", "columns close")]
    assert len(stops) == len(made.face.stacks) + sum(1 for _ in made.face.all_rows)


@given(nested_units())
def test_every_part_has_a_size_and_a_mark_of_its_own(data):
    made = built(data)

    assert [part.code for part in made.parts if min(part.thickness, part.width, part.length) <= 0] == []
    codes = [part.code for part in made.parts]
    assert len(set(codes)) == len(codes)
    openings = [opening.code for opening in (*made.face.openings, *made.face.spaces)]
    assert len(set(openings)) == len(openings)
    assert len(openings) == sum(row.openings for row in made.spec.rows)


@given(nested_units())
def test_every_part_lies_inside_the_piece(data):
    made = built(data)

    top = made.spec.top
    inside = (
        (-top.overhang_sides, made.spec.body.width + top.overhang_sides),
        (-top.overhang_front, made.spec.body.depth + top.overhang_back),
        (0.0, made.face.overall_height),
    )
    assert [
        part.code
        for part in made.parts
        for (low, high), (least, most) in zip(corners(part.box), inside, strict=True)
        if low < least - CLOSE or high > most + CLOSE
    ] == []


@given(nested_units())
def test_no_part_stands_in_another_but_where_they_are_joined(data):
    made = built(data)

    placed = [(part, corners(part.box), group_of(part, made)) for part in made.parts]
    wrong = []
    for (one, box, group), (other, box_2, group_2) in combinations(placed, 2):
        shared = common(box, box_2)
        if shared <= CLOSE or (group and group == group_2):
            continue
        if not are_joined(one.line.rstrip("#"), other.line.rstrip("#")) or (
            shared > DEEPEST + CLOSE and one.line[0] != "B"
        ):
            wrong.append((one.code, other.code, shared))
    assert wrong == []


@given(nested_units())
def test_what_stands_on_a_frame_stands_on_wood_over_its_whole_depth(data):
    made = built(data)

    frames = [part.box for part in made.case.parts if part.line in (*RAILS, *BEARERS)]
    floor = made.face.base_height
    for part in made.case.parts:
        if part.line != "C8" or abs(part.box.z - floor) < CLOSE:
            continue  # beside a knee space it stands on the base
        foot = part.box
        under = [
            box
            for box in frames
            if box.z < foot.z + CLOSE < box.z + box.height
            and box.x <= foot.x + CLOSE
            and box.x + box.width >= foot.x + foot.width - CLOSE
        ]
        reach = sorted((max(box.y, foot.y), min(box.y + box.depth, foot.y + foot.depth)) for box in under)
        end = foot.y
        for start, stop in reach:
            assert start <= end + 3 / 16 + CLOSE  # but for the gap in which the rear tenon is left dry
            end = max(end, stop)
        assert end == pytest.approx(foot.y + foot.depth, abs=CLOSE)


@given(nested_units())
def test_every_joint_of_the_case_is_counted_where_its_parts_end(data):
    made = built(data)

    lines = [part.line for part in made.case.parts]
    places = {}
    for joint in made.case_joints:
        places[joint.kind] = places.get(joint.kind, 0) + joint.places
    housed = 2 * sum(lines.count(mark) for mark in ("C3", "W1", "D2", "C4", "C8"))
    pedestals = made.face.pedestals
    walls = [wall.value for each in pedestals for wall in each.walls]
    # Beside a knee space a partition ends below without a housing: the case bottom is housed in it instead.
    shelves = 2 * lines.count("C9") if made.spec.shelving.fixing == "housings" else 0
    assert places.get("housing", 0) + places.get("sliding", 0) == housed + shelves
    assert made.corners[1].corners == walls.count("side")
    assert places.get("frame-tenon", 0) >= 2 * sum(lines.count(mark) for mark in BEARERS)
