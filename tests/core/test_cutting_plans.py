"""What the wood asks of a layout: sets, faces, sapwood, thickness, strips, places chosen by hand."""

import json
from dataclasses import replace

import pytest

from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.plans.plan import plan_cuts
from casewright.papers.cutting_data import cutting_data
from cutchecker import complaints
from cutfiles import answered, laid_of, only_lot, random_file, steps, without_waste

BOARD = {"wood": "cherry", "class": "4/4"}
STRAIGHT = {"end_trim": "0", "edge": "0", "kerf": "1/8"}


def part(code, length, width, count=1, **more):
    return {"code": code, **BOARD, "length": length, "width": width, "count": count, **more}


def board(code, length, width, **more):
    return {"code": code, **BOARD, "length": length, "width": width, **more}


def cut(parts, boards, **more):
    return {"cut_file": 1, "saw": STRAIGHT, "parts": parts, "boards": boards, **more}


@pytest.mark.parametrize("seed", range(24))
def test_a_layout_of_anything_stands_up_to_the_checker(seed):
    file = random_file(seed)

    assert complaints(file, json.loads(json.dumps(answered(file)))) == []


def test_the_same_seed_gives_the_same_layout():
    file = random_file(11)
    first, second = ({**answered(file), "seconds": 0} for _ in range(2))

    assert first == second


def test_parts_that_fit_to_the_last_kerf_leave_nothing():
    lot = only_lot(cut([part("A", "23-7/8", "4", 4)], [board("B", "95-7/8", "4")]))

    assert lot["unplaced"] == []
    assert lot["proven_best"]


def test_a_part_a_hair_too_long_is_told_why_it_has_no_place():
    lot = only_lot(cut([part("A", "96-1/64", "4")], [board("B", "96", "6")]))

    assert lot["unplaced"] == [
        {
            "code": "A",
            "count": 1,
            "reason": "it is 96-1/64 in long, and the longest board gives 96 in once its ends are cut off",
        }
    ]
    assert lot["layouts"] == []


@pytest.mark.parametrize(
    ("parts", "boards", "reason"),
    [
        ([part("A", "20", "9")], [board("B", "96", "8")], "it is 9 in wide, and the widest board gives 8 in"),
        ([part("A", "20", "4")], [board("B", "96", "8", **{"class": "5/4"})], "no board of cherry 4/4 is in"),
        ([part("A", "40", "4", 3)], [board("B", "96", "4")], "the boards of cherry 4/4 are used up"),
    ],
)
def test_what_has_no_place_says_why(parts, boards, reason):
    lot = only_lot(cut(parts, boards))

    assert [each["reason"].startswith(reason) for each in lot["unplaced"]] == [True]


def test_ends_and_edges_are_cut_off_before_anything_is_cut():
    """1 in off each end, 1/4 off each edge: common practice."""
    data = {**cut([part("A", "94", "5-1/2")], [board("B", "96", "6")]), "saw": {}}

    ((_, one),) = laid_of(only_lot(data))

    assert (one["from_end_in"], one["from_edge_in"]) == (1, 0.25)


def test_a_finished_part_is_cut_with_its_allowances():
    """1 in over length and 1/4 over width: common practice."""
    ((_, one),) = laid_of(only_lot(cut([part("A", "20", "4", sizes="finished")], [board("B", "96", "6")])))

    assert (one["length_in"], one["width_in"]) == (21, 4.25)


def test_a_defect_is_cut_around():
    knot = {"from_end": "40", "from_edge": "0", "length": "2", "width": "6"}
    lot = only_lot(cut([part("A", "44", "5")], [board("B", "96", "6", defects=[knot])]))

    ((_, one),) = laid_of(lot)
    assert one["from_end_in"] >= 42
    assert only_lot(cut([part("A", "56", "5")], [board("B", "96", "6", defects=[knot])]))["unplaced"]


def test_a_part_with_one_clear_face_may_have_a_defect_on_its_back():
    knot = {"from_end": "40", "from_edge": "0", "length": "2", "width": "6", "face": "back"}
    boards = [board("B", "96", "6", defects=[knot])]

    assert only_lot(cut([part("A", "90", "5", clear="one face")], boards))["unplaced"] == []
    assert only_lot(cut([part("A", "90", "5")], boards))["unplaced"]


def test_only_what_is_not_seen_has_sapwood():
    boards = [board("B", "96", "6", sap_near="1-1/2")]

    assert only_lot(cut([part("A", "90", "5", face="D")], boards))["unplaced"] == []
    assert only_lot(cut([part("A", "90", "5", face="A")], boards))["unplaced"]


def test_what_is_hidden_fills_the_sapwood_beside_what_is_seen():
    boards = [board("B", "96", "6", sap_near="1-3/4")]
    lot = only_lot(cut([part("A", "90", "4", face="A"), part("D", "90", "1-1/2", face="D")], boards))

    assert lot["unplaced"] == []
    assert {one["code"]: one["from_edge_in"] < 1.75 for _, one in laid_of(lot)} == {"A": False, "D": True}


def test_a_tapered_board_gives_wide_parts_at_its_wide_end():
    boards = [board("B", "96", "9", width_end="5")]
    lot = only_lot(cut([part("W", "30", "7"), part("N", "40", "5")], boards, first_cut="crosscut first"))

    assert lot["unplaced"] == []


def test_parts_along_follow_each_other_in_one_board():
    rows = {"name": "fronts", "way": "along", "rows": [["L", "R"]]}
    parts = [part("L", "18", "6"), part("R", "20", "6"), part("X", "50", "6", 2)]
    lot = only_lot(
        cut(parts, [board("B1", "60", "7"), board("B2", "60", "7"), board("B3", "60", "7")], sets=[rows])
    )

    places = {one["code"]: (stock, one["from_end_in"]) for stock, one in laid_of(lot)}
    assert lot["sets_broken"] == []
    assert places["R"] == (places["L"][0], places["L"][1] + 18.125)


def test_the_full_width_fronts_of_the_six_drawer_dresser_come_from_one_panel():
    """6-11/64 + 6-29/32 + 7-21/32 + 8-13/32 and three kerfs are 29-33/64 wide; common practice."""
    heights = ["6-11/64", "6-29/32", "7-21/32", "8-13/32"]
    parts = [part(f"F{number}", "39", height) for number, height in enumerate(heights)]
    rows = {
        "name": "fronts",
        "way": "across",
        "rows": [["F0", "F1", "F2", "F3"]],
        "glue_up": {"narrowest": "3", "widest": "8"},
    }
    lot = only_lot(cut(parts, [board(f"B{number}", "82", "8") for number in range(3)], sets=[rows]))

    strips = [one for _, one in laid_of(lot)]
    assert lot["sets_broken"] == []
    assert {one["code"] for one in strips} == {"fronts"}
    assert sum(one["width_in"] - 0.125 for one in strips) >= 29 + 33 / 64


def test_a_set_for_which_no_board_is_large_enough_is_named_and_its_parts_are_cut():
    rows = {"name": "fronts", "way": "across", "rows": [["L", "R"]]}
    lot = only_lot(cut([part("L", "18", "6"), part("R", "18", "6")], [board("B", "60", "7")], sets=[rows]))

    assert [(each["name"], each["way"]) for each in lot["sets_broken"]] == [("fronts", "across")]
    assert lot["unplaced"] == []


def test_two_come_from_one_thickness_where_the_board_is_thick_enough():
    """2 × (3/8 + 1/8) + 1/8 = 1-1/8: 5/4 does, 4/4 does not; common practice."""
    thin = [part("D", "20", "5", 4, resaw=True, thickness="3/8")]
    thick = [{**thin[0], "class": "5/4"}]

    four = only_lot(cut(thin, [board("B", "96", "6")]))
    five = only_lot(cut(thick, [board("B", "96", "6", **{"class": "5/4"})]))

    assert [bool(one["second"]) for _, one in laid_of(four)] == [False] * 4
    assert [bool(one["second"]) for _, one in laid_of(five)] == [True] * 2


def test_book_matched_parts_come_from_one_thickness_or_are_named():
    rows = {"name": "doors", "way": "book", "rows": [["L", "R"]]}
    parts = [part(code, "20", "5", thickness="3/8") for code in "LR"]

    thick = only_lot(cut(parts, [board("B", "96", "6", thickness="1-1/8")], sets=[rows]))
    thin = only_lot(cut(parts, [board("B", "96", "6")], sets=[rows]))

    assert thick["sets_broken"] == []
    assert [each["reason"] for each in thin["sets_broken"]] == [
        "no board is thick enough for it in one piece"
    ]


def test_parts_of_one_tree_come_from_the_log_that_has_enough():
    rows = {"name": "case", "way": "one tree", "rows": [["A", "B"]]}
    boards = [board("X", "60", "7", log="1"), board("Y", "60", "7", log="2"), board("Z", "60", "7", log="2")]
    lot = only_lot(cut([part("A", "50", "6"), part("B", "50", "6")], boards, sets=[rows]))

    assert lot["sets_broken"] == []
    assert {stock for stock, _ in laid_of(lot)} == {"Y", "Z"}


def test_a_part_put_by_hand_stays_and_the_rest_is_laid_around_it():
    hand = [{"on": "B", "from_end": "30", "from_edge": "1"}]
    lot = only_lot(
        cut(
            [part("H", "20", "4", placed=hand), part("A", "28", "5"), part("Z", "40", "5")],
            [board("B", "96", "6")],
        )
    )

    places = {one["code"]: one for _, one in laid_of(lot)}
    assert lot["unplaced"] == []
    assert (places["H"]["from_end_in"], places["H"]["from_edge_in"], places["H"]["by_hand"]) == (30, 1, True)


@pytest.mark.parametrize(
    ("places", "reason"),
    [
        ([("80", "1")], "put by hand at 80 in from the end and 1 in from the edge it reaches beyond B"),
        ([("0", "0"), ("20", "0")], "put by hand on B it leaves no 1/8 in of kerf to H"),
    ],
)
def test_a_part_that_cannot_lie_where_it_was_put_is_told_why(places, reason):
    hand = [{"on": "B", "from_end": end, "from_edge": edge} for end, edge in places]
    lot = only_lot(cut([part("H", "20", "4", len(places), placed=hand)], [board("B", "96", "6")]))

    assert [each["reason"].startswith(reason) for each in lot["not_where_put"]] == [True]


def test_parts_put_so_that_no_straight_cut_gets_between_them_are_refused():
    pinwheel = [("A", "40", "3", "0", "0"), ("B", "19", "6", "41", "0"), ("C", "40", "3", "20", "7")]
    parts = [
        part(code, length, width, placed=[{"on": "W", "from_end": end, "from_edge": edge}])
        for code, length, width, end, edge in pinwheel
    ]
    parts.append(part("D", "19", "6", placed=[{"on": "W", "from_end": "0", "from_edge": "4"}]))
    lot = only_lot(cut(parts, [board("W", "60", "10")]))

    assert [each["code"] for each in lot["not_where_put"]] == ["D"]


def test_a_panel_is_made_of_strips_within_their_limits():
    glue = {"narrowest": "2-1/2", "widest": "6"}
    lot = only_lot(
        cut([part("T", "30", "17", 2, glue_up=glue)], [board(f"B{n}", "70", "6-1/2") for n in range(6)])
    )

    widths = [one["width_in"] for _, one in laid_of(lot)]
    assert lot["unplaced"] == []
    assert all(2.5 <= width <= 6 for width in widths)


def test_glue_lines_keep_off_joints_where_any_order_of_the_strips_lets_them():
    glue = {"narrowest": "2", "widest": "6", "keep_off": [{"start": "5-1/2", "end": "6"}]}
    boards = [board("B0", "30", "6"), board("B1", "30", "4-1/8"), board("B2", "30", "5")]
    lot = only_lot(cut([part("T", "30", "14-5/8", glue_up=glue)], boards))

    (panel,) = lot["panels"]
    assert panel["clear_of_joints"]
    assert len(panel["glue_lines_in"]) == 2


def test_a_panel_that_lacks_a_strip_is_not_begun():
    glue = {"narrowest": "2-1/2", "widest": "6"}
    lot = only_lot(
        cut([part("T", "30", "17", glue_up=glue), part("A", "20", "2")], [board("B", "70", "6-1/2")])
    )

    assert [(each["code"], each["count"]) for each in lot["unplaced"]] == [("T", 1)]
    assert {one["code"] for _, one in laid_of(lot)} == {"A"}


def test_rip_first_and_crosscut_first_are_both_shown_and_the_better_is_marked():
    lot = only_lot(cut([part("A", "30", "4", 6)], [board("B", "96", "9"), board("C", "96", "9")]))

    assert [each["first_cut"] for each in lot["tried"]] == ["rip first", "crosscut first", "board by board"]
    assert sum(each["taken"] for each in lot["tried"]) == 1


@pytest.mark.parametrize(("wish", "stock"), [("first", {"O"}), ("last", {"B"})])
def test_offcuts_are_used_first_or_last_as_the_shop_has_it(wish, stock):
    boards = [board("B", "60", "6", cost="5.00"), board("O", "60", "6", cost="9.00", offcut=True)]
    lot = only_lot(cut([part("A", "50", "5")], boards, offcuts=wish))

    assert {name for name, _ in laid_of(lot)} == stock


def test_a_cheaper_board_is_taken_before_a_smaller_one():
    boards = [board("S", "52", "5-1/2", cost="30.00"), board("L", "96", "8", cost="20.00")]
    lot = only_lot(cut([part("A", "50", "5")], boards))

    assert (lot["cost"], lot["cost_in"]) == (2000, "money")


def test_lengths_are_cut_one_behind_the_other():
    data = {
        "cut_file": 1,
        "saw": STRAIGHT,
        "parts": [{"code": "E", "wood": "edging", "length": "31-7/8", "count": 6}],
        "lengths": [{"code": "L", "wood": "edging", "length": "96"}],
    }
    lot = only_lot(data)

    assert [len(bar["parts"]) for bar in lot["lengths"]] == [3, 3]


@pytest.mark.parametrize("number", [20, 50])
def test_of_boards_cut_up_at_random_nearly_all_parts_come_out_again(number):
    """A layout without any waste exists; how near to it a longer look comes is for the benchmark to tell."""
    data = without_waste(3, number)
    lot = only_lot(data, 3)

    assert len(lot["unplaced"]) <= number // 5


def test_a_stop_on_demand_still_gives_a_whole_layout():
    data = without_waste(5, 30)
    budget = steps(10_000)
    stopped = plan_cuts(cut_file_of(data), type(budget)(now=lambda: 0.0, stop=lambda: True))

    assert complaints(data, json.loads(json.dumps(cutting_data(stopped)))) == []


def test_progress_is_told_and_never_gets_worse():
    told = []
    budget = replace(steps(20), tell=told.append)

    plan = plan_cuts(cut_file_of(without_waste(7, 25)), budget)

    assert [each.cost for each in told] == sorted((each.cost for each in told), reverse=True)
    assert all(each.bound <= each.cost for each in told)
    assert told[-1].cost >= plan.lots[0].counted


def test_a_pair_along_takes_its_lengths_a_kerf_and_both_trims():
    """2 × 18-9/16 + 1/8 + 2 = 39-1/4: common practice."""
    rows = {"name": "row 1", "way": "along", "rows": [["F", "F"]]}
    parts = [part("F", "18-9/16", "6", 2)]

    kept = only_lot({**cut(parts, [board("B", "39-1/4", "7")], sets=[rows]), "saw": {}})
    short = only_lot({**cut(parts, [board("B", "39-15/64", "7")], sets=[rows]), "saw": {}})

    assert (kept["sets_broken"], kept["unplaced"]) == ([], [])
    assert [each["name"] for each in short["sets_broken"]] == ["row 1"]


def test_fronts_across_take_their_heights_the_kerfs_and_both_edges():
    """6-11/64 + 6-29/32 + 7-21/32 + 8-13/32 + 3 × 1/8 + 1/2 = 30-1/64: common practice."""
    heights = ["6-11/64", "6-29/32", "7-21/32", "8-13/32"]
    parts = [part(f"F{number}", "37", height) for number, height in enumerate(heights)]
    rows = {"name": "fronts", "way": "across", "rows": [["F0", "F1", "F2", "F3"]]}

    kept = only_lot({**cut(parts, [board("B", "39", "30-1/64")], sets=[rows]), "saw": {}})
    narrow = only_lot({**cut(parts, [board("B", "39", "30")], sets=[rows]), "saw": {}})

    assert (kept["sets_broken"], kept["unplaced"]) == ([], [])
    assert [each["name"] for each in narrow["sets_broken"]] == ["fronts"]
