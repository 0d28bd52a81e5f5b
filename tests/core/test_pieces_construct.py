"""A unit worked out, choice by choice: case, frames, drawers, bottoms and pulls."""

import pytest

from casewright.measure.lengths import show
from units import built, chest, dresser


def parts_of(made, line):
    return [part for part in made.parts if part.line == line]


def size(part):
    return " ".join(show(each) for each in (part.thickness, part.width, part.length))


@pytest.mark.parametrize(
    ("heights", "overall", "body", "openings"),
    # dresser A by each of its three heights: 35 + 4 x 3/4 + 2 x 3/4 = 39-1/2, and 7/8 and 4 more
    [
        ({"overall_height": "44-3/8"}, "44-3/8", "39-1/2", "35"),
        ({"body_height": "39-1/2"}, "44-3/8", "39-1/2", "35"),
        ({"opening_total": "35"}, "44-3/8", "39-1/2", "35"),
    ],
)
def test_whichever_height_is_given_the_others_follow(heights, overall, body, openings):
    face = built(dresser({"body": {"width": "39-1/2", "depth": "19-3/4", **heights}})).face

    assert [show(each) for each in (face.overall_height, face.body_height, face.opening_total)] == [
        overall,
        body,
        openings,
    ]


def test_a_case_without_a_base_stands_on_the_floor():
    made = built(chest({"base": None}))

    # openings 18, two dividers, rail and bottom at 3/4, top 7/8
    assert show(made.face.overall_height) == "21-7/8"
    assert [part.name for part in made.parts if part.line.startswith("B")] == []
    assert min(part.box.z for part in made.parts) == 0.0


def test_a_case_bottom_without_lipping_is_of_show_wood():
    (bottom,) = parts_of(built(chest({"case.lipping": 0, "woods.inside": "poplar"})), "C6")

    assert (bottom.wood, size(bottom)) == ("cherry", "3/4 15-1/2 23-1/2")


def test_a_lipped_case_bottom_is_of_both_woods():
    made = built(chest())

    assert [(part.wood, size(part)) for part in (*parts_of(made, "C5"), *parts_of(made, "C6"))] == [
        ("cherry", "3/4 1-1/2 23-1/2"),
        ("poplar", "3/4 14 23-1/2"),
    ]


def test_widths_that_are_typed_stay_and_the_rest_is_shared():
    openings = built(chest({"body.width": "40", "rows.0.widths": ["8", None, None]})).face.rows[0].openings

    # 38-1/2 less 8 and two uprights of 3/4 leaves 29, shared by two
    assert [show(opening.width) for opening in openings] == ["8", "14-1/2", "14-1/2"]
    assert [show(opening.left) for opening in openings] == ["3/4", "9-1/2", "24-3/4"]


def test_an_upright_stands_in_its_housings():
    (upright,) = parts_of(built(chest({"rows": [{"columns": 2, "height": "5"}, {}]})), "C4")

    # 5 in of opening and a quarter in each housing
    assert size(upright) == "3/4 3 5-1/2"


@pytest.mark.parametrize(
    ("above", "below", "marks"),
    [
        (1, 1, []),
        (2, 1, ["W3"]),
        (1, 2, ["W5"]),
        (2, 2, ["W3"]),  # the centre runner is kicker to the drawers below as well
        (3, 2, ["W3", "W3", "W5"]),
    ],
)
def test_a_frame_carries_and_holds_down_at_every_upright(above, below, marks):
    made = built(chest({"body.width": "40", "rows": [{"columns": above}, {"columns": below}]}))

    assert [part.line for part in made.case.parts if part.line in ("W3", "W5")] == marks


def test_the_lowest_row_runs_on_the_case_bottom():
    made = built(chest())

    assert len(parts_of(made, "W2")) == 2 * 2
    assert len(parts_of(made, "W1")) == 2


def dividers_of(made):
    """The joints of the dividers, housed or slid in."""
    return [each for each in made.case_joints if each.key.startswith("dividers")]


def test_a_single_row_has_no_divider():
    made = built(chest({"rows": [{}], "body.opening_total": "6", "case.divider_end": "sliding dovetail"}))

    assert [part.line for part in made.parts if part.line in ("C3", "W1", "W2")] == []
    assert dividers_of(made) == []


@pytest.mark.parametrize(("end", "slides"), [("housing", False), ("sliding dovetail", True)])
def test_a_divider_is_housed_or_slid_in(end, slides):
    made = built(chest({"case.divider_end": end}))

    assert [each.kind == "sliding" for each in dividers_of(made)] == [slides]
    assert {str(part.ends[0]) for part in parts_of(made, "C3")} == {f"{end}, 1/4 deep"}


def test_the_dividers_of_the_dresser_are_slid_in_as_printed():
    [placed] = dividers_of(built(dresser({"case.divider_end": "sliding dovetail"})))
    joint = placed.joint

    # worked joint J5: a divider of 3/4 with shoulders of 1/16 leaves a tip of 5/8, and 1/2 of the side
    assert (show(joint.tip), show(joint.wood_left)) == ("5/8", "1/2")


@pytest.mark.parametrize(
    ("slack", "depth", "wood", "expected"),
    [
        (None, "16", "cherry", "1/8"),  # shrinks 0.091
        (None, "30", "hard maple", "1/4"),  # 30 x 0.00353 x 2.3 = 0.244, up to the next sixteenth
        ("3/8", "16", "cherry", "3/8"),
    ],
)
def test_the_gap_behind_the_runners_lets_the_side_shrink(slack, depth, wood, expected):
    made = built(chest({"frames.slack": slack, "body.depth": depth, "woods.case": wood}))

    assert show(made.case.slack) == expected


def test_back_boards_lap_over_the_whole_back():
    made = built(chest({"back.boards": 5}))

    boards = parts_of(made, "P1")
    # 22-1/2 between the sides and 3/8 in each rabbet; four laps of 3/8 less gaps of 1/16
    assert len(boards) == 5
    assert boards[0].width == pytest.approx((23.25 + 4 * (0.375 - 0.0625)) / 5, abs=1e-9)
    assert boards[-1].box.x + boards[-1].width == pytest.approx(23.25 + 0.375, abs=1e-9)  # float sums


@pytest.mark.parametrize(
    ("changes", "across", "deep", "thick", "back"),
    # opening 22-1/2 wide and 15-1/2 deep: drawer 22-7/16 x 15, clear inside 21-7/16 x 13-3/4
    [
        ({}, "21-7/8", "14-1/2", "3/8", "3/4"),
        ({"drawers.bottom": {"kind": "solid", "over": "1/4"}}, "21-7/8", "14-3/4", "3/8", "3/4"),
        ({"drawers.bottom": {"kind": "ply", "hold": "under the back"}}, "21-7/8", "14-1/2", None, "≈45/64"),
        ({"drawers.bottom": {"kind": "ply"}}, "21-7/8", "14-3/16", None, "1/8"),
    ],
)
def test_a_bottom_goes_into_its_grooves(changes, across, deep, thick, back):
    drawer = built(chest({"drawers.muntin.use": "never", **changes})).drawers[0]

    assert (show(drawer.bottom.across), show(drawer.bottom.deep)) == (across, deep)
    assert thick is None or show(drawer.bottom.thickness) == thick
    assert show(drawer.sizes.height - drawer.sizes.back_height) == back


@pytest.mark.parametrize(
    ("changes", "pieces"),
    [
        ({}, 1),
        ({"body.width": "30"}, 2),  # 27-7/16 clear is over 24
        ({"body.width": "30", "drawers.muntin.over": "30"}, 1),
        ({"drawers.muntin.use": "always"}, 2),
        ({"body.width": "30", "drawers.muntin.use": "never"}, 1),
        # 11/64 of poplar sags 0.091 over 21-7/16, and 0.071 is allowed; 3/16 sags 0.070
        ({"drawers.bottom": {"kind": "solid", "thickness": "11/64"}}, 2),
        ({"drawers.bottom": {"kind": "solid", "thickness": "3/16"}}, 1),
    ],
)
def test_a_muntin_parts_a_bottom_that_is_wide_or_would_sag(changes, pieces):
    bottom = built(chest(changes)).drawers[0].bottom

    assert bottom.pieces == pieces
    assert (bottom.muntin is not None) is (pieces == 2)


def test_a_small_opening_gets_the_clearances_of_small_work():
    sizes = built(chest({"body.width": "13-1/2", "body.depth": "12"})).drawers[0].sizes

    # opening 12 x 11-1/2; 1/64 at each side, 1/8 behind; the side shrinks 0.068
    assert show(sizes.width) == "11-31/32"
    assert show(sizes.length) == "11-1/4"


def test_clearances_that_are_typed_are_taken():
    clearances = {"side": "1/16", "top": "1/8", "bottom": "1/32", "back": "1"}

    sizes = built(chest({"drawers.clearances": clearances, "graduation": {"rule": "equal"}})).drawers[0].sizes

    # opening 22-1/2 x 6 x 15-1/2: 15-1/2 - 1 - 0.091 is down to 14-1/4; (6 - 5/32)/1.007225 is 5.8019
    assert (show(sizes.width), show(sizes.length), show(sizes.height)) == ("22-3/8", "14-1/4", "5-51/64")


def test_lap_and_rabbet_that_are_left_out_are_chosen_with_a_reason():
    made = built(chest())

    chosen = {choice.name: show(choice.value) for choice in made.chosen}
    assert chosen == {"lap": "3/16", "rabbet": "1/16"}
    assert [choice.why for choice in made.chosen if not str(choice.why).endswith(".")] == []


@pytest.mark.parametrize(
    ("rows", "pulls"),
    [
        ([{}], [("12",)]),
        ([{"columns": 2}], [("6-3/16",), ("17-13/16",)]),
    ],
)
def test_a_narrow_drawer_has_one_pull_in_its_middle(rows, pulls):
    made = built(chest({"rows": rows}))

    assert [tuple(map(show, drawer.pulls)) for drawer in made.drawers] == pulls


def test_the_pulls_of_a_wide_drawer_alone_stand_a_quarter_from_its_edges():
    (drawer,) = built(chest({"body.width": "41-1/2", "rows": [{}]})).drawers

    # opening of 40 from 3/4: a quarter is 10
    assert tuple(map(show, drawer.pulls)) == ("10-3/4", "30-3/4")


def test_a_spare_pull_is_ordered_for_each_eight():
    eight_wide = {"body.width": "41-1/2", "rows": [{}] * 8, "body.opening_total": "40"}

    pulls, *_others = built(chest(eight_wide)).hardware

    assert (pulls.quantity, pulls.spare) == (16, 2)


def test_a_wall_restraint_is_always_on_the_list():
    items = {item.item: item.quantity for item in built(chest({"use.free_standing": False})).hardware}

    assert items["wall restraint"] == 1


def test_small_parts_come_from_offcuts():
    small = {part.name: part for part in built(chest({"rows": [{"columns": 2}, {}]})).small_parts}

    # two stops a drawer; buttons about every ten inches of 22-1/2, and one more, on both rails
    assert {name: part.quantity for name, part in small.items()} == {
        "Drawer stop": 6,
        "Top button": 8,
        "Plinth corner block": 4,
        "Drawer guide": 1,
    }
    # between a front rail of 3 and a rear one of 2-1/2 in an opening 15-1/2 deep
    assert str(small["Drawer guide"].size) == "3/4 × 3/4 × 10"
    assert str(small["Plinth corner block"].size) == "1-1/2 × 1-1/2 × 3"


def test_the_corners_of_a_case_are_counted_for_the_hours():
    rails, bottom = built(dresser()).corners

    # worked dresser A: six corners with 26 tails in all
    assert (show(rails.width), rails.tails, rails.corners) == ("3", 2, 4)
    assert (show(bottom.width), bottom.tails, bottom.corners) == ("19-1/4", 9, 2)


def test_the_pulls_of_a_wide_drawer_follow_the_nearest_row_that_is_parted():
    rows = [{"columns": 2}, {}, {}, {"columns": 3}]
    made = built(chest({"body.width": "61-1/2", "rows": rows, "body.opening_total": "24"}))

    # 60 clear: halves of 29-5/8 have their middles at 15-9/16 and 45-15/16, thirds of 19-1/2 at 10-1/2 and 51
    pulls = {drawer.code: tuple(map(show, drawer.pulls)) for drawer in made.drawers}
    assert pulls["A-R2-1"] == ("15-9/16", "45-15/16")
    assert pulls["A-R3-1"] == ("10-1/2", "51")


@pytest.mark.parametrize(("width", "pulls"), [("25-1/2", 1), ("25-33/64", 2)])
def test_an_opening_of_just_24_inches_still_has_one_pull(width, pulls):
    assert len(built(chest({"body.width": width, "rows": [{}]})).drawers[0].pulls) == pulls


def test_kickers_are_as_thick_as_the_rails_that_they_join():
    made = built(chest({"case.sub_top_rail": "1", "case.divider": "5/8"}))

    assert {show(part.thickness) for part in parts_of(made, "W4")} == {"1"}
    assert {show(part.thickness) for part in parts_of(made, "W2")} == {"5/8"}


def test_the_show_surfaces_of_the_dresser_are_its_top_sides_front_and_plinth():
    # 41 x 20-1/2 and its edges 912.25; 39-1/2 x (39-1/2 + 2 x 19-3/4) 3,120.5; plinth 316: 4,348.75 sq in
    assert built(dresser()).surfaces.show == pytest.approx(4348.75 / 144)


def test_a_pull_weighs_where_it_hangs():
    light, heavy = (built(chest({"pulls.weight_lb": weight})) for weight in (0, 10))

    bare, hung = light.masses.drawers["A-R3-1"], heavy.masses.drawers["A-R3-1"]
    # plinth 4, case bottom 3/4, and half the height of the drawer
    middle = 4.75 + heavy.drawer("A-R3-1").sizes.height / 2
    assert hung.weight == pytest.approx(bare.weight + 10)
    assert hung.z == pytest.approx((bare.weight * bare.z + 10 * middle) / hung.weight)
    assert hung.y < bare.y


@pytest.mark.parametrize(("in_sequence", "spare"), [(True, True), (False, False)])
def test_fronts_cut_in_sequence_cannot_be_replaced_so_a_spare_blank_is_advised(in_sequence, spare):
    joint = built(dresser({"sequence_fronts": in_sequence})).drawers[0].joints.front

    assert str(joint.advice[0]).startswith("Mill one spare front blank") is spare
