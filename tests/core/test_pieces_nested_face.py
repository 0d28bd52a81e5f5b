"""Rows with columns of their own, and columns with rows of their own: heights, widths, codes and refusals."""

import pytest

from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.layout_spec import row_of
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.layout.openings import Wall
from casewright.wood.sheets import sheet
from units import built, chest

NESTED = {"body.width": "40", "body.opening_total": "20"}
TWO_STACKS = [
    {"height": "4", "columns": 2},
    {"across": [{"width": "12", "rows": [{}, {"height": "6"}]}, {"holds": "doors", "shelves": 1}]},
]


def face_of(changes):
    return built(chest(changes)).face


def refused(changes):
    with pytest.raises((CannotGraduate, CannotRead)) as error:
        built(chest(changes))
    return str(error.value)


def test_a_column_with_rows_of_its_own_fills_the_height_of_its_row():
    face = face_of({**NESTED, "rows": TWO_STACKS})

    inner = face.stacks[1]
    # 16 in is left below the first row; a divider of 3/4 and a locked row of 6 leave 9-1/4
    assert [(row.code, row.height) for row in inner.rows] == [("R2-1-1", 9.25), ("R2-1-2", 6)]
    assert (inner.left, inner.width, inner.height) == (0.75, 12, 16)
    assert inner.walls == (Wall.SIDE, Wall.PARTITION)


def test_codes_are_the_path_of_the_opening():
    face = face_of({**NESTED, "rows": TWO_STACKS})

    assert [each.code for each in face.openings] == ["R1-1", "R1-2", "R2-1-1-1", "R2-1-2-1"]
    assert [each.code for each in face.spaces] == ["R2-2"]


def test_a_column_shares_the_width_that_the_typed_ones_leave():
    door = face_of({**NESTED, "rows": TWO_STACKS}).spaces[0]

    # 40 - 2 × 3/4 inside, less the stack of 12 and its partition of 3/4
    assert (door.left, door.width, door.shelves) == (13.5, 25.75, 1)


@pytest.mark.parametrize(("width", "leaves"), [("24", 1), ("24-1/16", 2)])
def test_an_opening_wider_than_two_feet_has_two_doors(width, leaves):
    rows = [{"across": [{"holds": "doors", "width": width}, {}]}]

    assert face_of({**NESTED, "rows": rows}).spaces[0].leaves == leaves


def test_between_plain_drawers_stands_an_upright_and_beside_all_else_a_partition():
    across = [{}, {}, {"holds": "open"}, {"rows": [{}]}]
    row = face_of({**NESTED, "rows": [{"across": across}]}).rows[0]

    assert (len(row.uprights), len(row.partitions)) == (1, 2)
    assert row.uprights[0] < row.partitions[0] < row.partitions[1]


def test_a_stack_grows_by_its_own_graduation():
    across = [{"rows": [{}, {}, {}], "graduation": {"rule": "equal"}}, {"rows": [{}, {}, {}]}]
    face = face_of({**NESTED, "rows": [{"across": across}]})

    own, units = ([row.height for row in stack.rows] for stack in face.stacks[1:])
    # 20 less two dividers of 3/4 is 18-1/2: thirds to a sixteenth, the rest below; else steps of a divider
    assert own == [6.1875, 6.1875, 6.125]
    assert units == [5.4375, 6.1875, 6.875]


def test_a_stack_is_graduated_by_what_goes_into_it():
    across = [{"rows": [{"contents": "2"}, {"contents": "8"}], "graduation": {"rule": "contents"}}, {}]
    heights = [row.height for row in face_of({**NESTED, "rows": [{"across": across}]}).stacks[1].rows]

    # groove 3/8 + 1/4 below the contents and 1/2 above: needs of 3-1/8 and 9-1/8, of 19-1/4 each 3-1/2 more
    assert heights == [6.625, 12.625]


def test_a_measured_opening_of_a_stack_takes_the_place_of_the_designed_one():
    measured = {"openings": {"R2-1-2-1": {"height": "5-31/32"}, "R2-2": {"width": "25-11/16"}}}
    made = built(chest({**NESTED, "rows": TWO_STACKS, "measured": measured}))

    assert made.face.openings[-1].height == 5.96875
    assert (made.face.spaces[0].width, made.face.spaces[0].measured) == (25.6875, ("width",))


def test_tails_are_those_of_the_row_within_its_stack():
    rows = [{"across": [{"rows": [{}, {"front_tails": 5}]}, {}]}]
    made = built(chest({**NESTED, "rows": rows}))

    assert made.drawer("A-R1-1-2-1").joints.front.layout.count == 5
    assert row_of(made.spec.rows, "1-1-2").front_tails == 5


def test_a_knee_space_reaches_the_floor_and_leaves_a_pedestal_at_each_side():
    rows = [{}, {"across": [{"width": "8"}, {"knee": True}, {"width": "8"}]}]
    face = face_of({**NESTED, "rows": rows})

    knee = face.spaces[0]
    assert knee.bottom == -face.base_height
    assert knee.bottom + knee.height == face.rows[1].bottom + face.rows[1].height
    assert [(each.left, each.right) for each in face.pedestals] == [(0, 9.5), (30.5, 40)]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([{"across": [{"rows": [{}], "holds": "open"}]}], "leave out holds"),
        ([{"across": [{"graduation": {"rule": "equal"}}]}], "only a column with rows of its own"),
        ([{"across": [{"shelves": 1}]}], "a drawer has no shelves"),
        ([{"across": [{"holds": "open", "leaves": 2}, {}]}], "only doors have leaves"),
        ([{"across": [{}], "columns": 2}], "leave out columns and widths"),
        ([{"across": [{"knee": True, "shelves": 1}, {}]}], "a knee space is open down to the floor"),
        ([{"across": [{"widht": 1}]}], "did you mean width?"),
        ([{"holds": "open"}], "there is no drawer in any row"),
        ([{"across": []}], "rows[1].across: this is empty"),
        ([{"across": [{"rows": [{}, {"height": "90"}]}]}], "row 1, column 1: the locked rows take 90"),
        (
            [{"across": [{"rows": [{}, {"across": [{"width": "1"}, {"width": "2"}]}]}]}],
            "row 1, column 1, row 2",
        ),
        ([{"across": [{"rows": [{}] * 30}]}], "row 1, column 1: 30 rows with their dividers"),
        ([{"across": [{"knee": True}, {}]}, {}], "put it into the lowest row"),
        ([{"across": [{"knee": True}, {}]}], "leave the base out"),
        ([{}, {"across": [{}, {"knee": True}, {"knee": True}, {}]}], "two knee spaces meet"),
        ([{}, {"across": [{"knee": True}]}], "nothing to stand on"),
    ],
)
def test_what_cannot_be_is_refused_by_its_place_with_what_would_be_right(rows, said):
    message = refused({"rows": rows})

    assert said in message
    assert message.count("this is empty") == (rows == [{"across": []}])


def test_stacks_within_stacks_end_at_the_fourth():
    rows = [{}]
    for _ in range(3):
        rows = [{"across": [{"rows": rows}, {}]}]
    assert len(face_of({"body.width": "90", "rows": rows}).stacks) == 4

    assert "stacks go 4 deep at most" in refused({"rows": [{"across": [{"rows": rows}, {}]}]})


def findings_of(changes, rule):
    return [found for found in built(chest(changes)).findings if found.rule == rule]


@pytest.mark.parametrize(("width", "verdict"), [("24", "pass"), ("23-15/16", "caution")])
def test_a_knee_space_is_two_feet_wide_at_the_least(width, verdict):
    # common practice of desks: 24 in between the pedestals
    rows = [{"height": "3"}, {"across": [{}, {"knee": True, "width": width}, {}]}]
    size = {"width": "60", "depth": "24", "overall_height": "32"}

    wide, high = findings_of({"body": size, "rows": rows}, "knee space")
    assert (wide.verdict.value, high.verdict.value) == (verdict, "pass")


@pytest.mark.parametrize(
    ("files", "width", "height", "verdicts"),
    [
        # common practice: rails 12-1/4 and 15-1/4 in apart, 10 in of height. Of the width of the case its
        # sides take 1-1/2, those of the drawer 1, clearances 1/16; of the height the bottom and what is left
        # above take 3/4.
        ("letter", "14-13/16", "10-3/4", ["pass", "pass"]),
        ("letter", "14-3/4", "10-11/16", ["stop", "stop"]),
        ("legal", "17-13/16", "11", ["pass", "pass"]),
        ("legal", "17-3/4", "11", ["stop", "pass"]),
    ],
)
def test_hanging_folders_go_into_a_drawer_that_is_to_hold_them(files, width, height, verdicts):
    body = {"width": width, "depth": "10", "opening_total": "16"}

    found = findings_of({"body": body, "rows": [{}, {"height": height, "files": files}]}, "file drawer")
    assert [each.verdict.value for each in found] == verdicts


@pytest.mark.parametrize(
    ("kind", "verdict"),
    [("web-frame", "pass"), ("rail", "caution"), ("dust-frame", "pass"), ("solid", "pass")],
)
def test_an_open_space_over_a_row_of_drawers_needs_a_floor(kind, verdict):
    rows = [{"holds": "open"}, {}]

    (floor,) = findings_of({"rows": rows, "case.divider_kind": kind}, "floor of a space")
    assert (floor.about, floor.verdict.value) == ("R1-1", verdict)


def test_a_floor_lies_on_the_frame_under_what_is_open_and_under_its_shelves():
    """Geometry: 22-1/2 of opening less 1/32 at each end; 15-1/2 deep less strip and slack."""
    rows = [{"across": [{"holds": "open", "shelves": 1}], "height": "12"}, {}]
    made = built(chest({"rows": rows}))
    thick = sheet("hardwood plywood", "1/4").thickness
    floor, edge = (next(part for part in made.parts if part.line == line) for line in ("C13", "C14"))
    rail = next(part for part in made.parts if part.line == "C3")

    assert floor.sheet
    assert floor.thickness == edge.thickness == thick
    assert floor.length == edge.length == 22.5 - 2 / 32
    assert floor.width == 15.5 - 3 / 4 - made.case.slack
    assert floor.box.z == rail.box.z + rail.box.height
    shelf = next(part for part in made.parts if part.line == "C9")
    assert shelf.box.z == pytest.approx(floor.box.z + thick + (12 - thick - shelf.thickness) / 2)
    bare = built(chest({"rows": rows, "shelving.floor": "none"}))
    assert not [part for part in bare.parts if part.line in ("C13", "C14")]
    assert made.masses.total > bare.masses.total


def test_a_floor_begins_behind_inset_doors():
    made = built(chest({"rows": [{"holds": "doors", "height": "12"}, {}]}))
    edge = next(part for part in made.parts if part.line == "C14")

    assert edge.box.y == made.spec.doors.thickness


def test_an_open_space_on_the_case_bottom_has_its_floor():
    assert findings_of({"rows": [{}, {"holds": "open"}]}, "floor of a space") == []


DESK_ON_LEGS = {
    "body": {"width": "54", "depth": "26", "overall_height": "30"},
    "construction": {"kind": "legs", "leg": "2", "apron_height": "5-1/2"},
    "rows": [{"columns": 3}],
}


def test_on_legs_uprights_stand_between_drawers_side_by_side():
    made = built(chest(DESK_ON_LEGS))

    # 54 - 2 × 2 inside, less two uprights as thick as the rails, shared by three
    assert [opening.width for opening in made.face.openings] == pytest.approx([(50 - 1.5) / 3] * 3)
    uprights = [part for part in made.parts if part.line == "R4"]
    # the opening of 5-1/2 less two rails of 3/4, and a third of a rail at each end
    assert [part.length for part in uprights] == [4.5, 4.5]
    joint = next(each for each in made.case_joints if each.key == "uprights_R1")
    assert (joint.kind, joint.places) == ("housing", 4)


def test_on_legs_each_upright_has_a_runner_under_it_a_kicker_over_it_and_a_guide_behind_it():
    made = built(chest(DESK_ON_LEGS))

    for line, place in (("W4", 0.75), ("W5", 5.5)):
        bars = [part.box for part in made.parts if part.line == line]
        middles = [left + 0.375 for left in made.face.rows[0].uprights]
        assert [bar.x + bar.width / 2 for bar in bars] == pytest.approx(middles)
        tops = {bar.z + bar.height - made.face.base_height for bar in bars}
        assert tops == {place}
        # from the back apron to a tongue of 1/4 in the rail
        assert {bar.y + bar.depth for bar in bars} == {made.face.opening_depth}
        assert {bar.y for bar in bars} == {2 - 0.25}
    guide = next(part for part in made.small_parts if part.name == "Drawer guide")
    assert guide.quantity == 2


def test_on_legs_one_wider_runner_does_where_an_upright_stands_beside_another():
    rows = [{"columns": 2}, {"widths": ["25", None]}]
    legs = {**DESK_ON_LEGS["construction"], "apron_height": "10"}
    made = built(chest({**DESK_ON_LEGS, "construction": legs, "rows": rows}))

    between = [part for part in made.parts if part.code.startswith(("A-D1-RC", "A-D1-KC"))]
    # uprights 3/8 apart: the runner of the upper row covers the lower
    assert [(part.code, part.width) for part in between] == [("A-D1-RC1", 2.25)]
