"""Ways out for parts without a place: each does what it says, and the least wood comes first."""

import json
import time

import pytest

from casewright.cutting.asked.changing import changed
from casewright.cutting.asked.cut_file import cut_file_of
from casewright.cutting.budget import Budget
from casewright.cutting.plans.plan import plan_cuts
from casewright.papers.cutting_data import cutting_data
from cutchecker import complaints
from cutfiles import answered, only_lot, random_file

BOARD = {"wood": "cherry", "class": "4/4"}
STRAIGHT = {"end_trim": "0", "edge": "0", "kerf": "1/8", "jointing": "0"}
PLY = {"wood": "1/2 in birch plywood"}


def part(code, length, width, count=1, **more):
    return {"code": code, **BOARD, "length": length, "width": width, "count": count, **more}


def board(code, length, width, **more):
    return {"code": code, **BOARD, "length": length, "width": width, **more}


def cut(parts, boards=(), **more):
    return {"cut_file": 1, "saw": STRAIGHT, "parts": parts, "boards": boards, **more}


def ways(file):
    """The ways out of the only lot, by what they are."""
    return {way["kind"]: way for way in only_lot(file)["ways_out"]}


def placed_after(file, way):
    """How many parts have no place once the cut file is changed as a way out says."""
    again = changed(file, way["change"])
    found = json.loads(json.dumps(answered(again, 3)))
    assert complaints(again, found) == []
    return sum(each["count"] for lot in found["lots"] for each in lot["unplaced"])


def test_a_layout_with_a_place_for_all_has_no_ways_out():
    assert only_lot(cut([part("A", "20", "4")], [board("B", "40", "6")]))["ways_out"] == []


WIDE = cut([part("T", "30", "11")], [board("B1", "96", "6")])
"""A part of 11 in; two strips of 5-1/2 in come from one board of 6 in, 96 in long, at no more wood."""
KNOT = {"from_end": "20", "from_edge": "2", "length": "2", "width": "2", "face": "back"}
EXAMPLES = {
    "glue up": WIDE,
    "hidden face": cut([part("A", "40", "6")], [board("B1", "48", "6", defects=[KNOT])]),
    "sapwood": cut([part("A", "40", "6", face="A")], [board("B1", "48", "6", sap_near="1")]),
    "resaw": cut([part("A", "40", "6", 2, thickness="3/8")], [board("B1", "48", "6", thickness="1-1/8")]),
    "other stock": cut([part("A", "40", "6")], [board("B1", "39", "6"), board("B2", "60", "6", spare=True)]),
    "other class": cut(
        [part("A", "40", "6")], [board("B1", "39", "6"), board("B2", "60", "6") | {"class": "5/4"}]
    ),
    "turn": cut(
        [{"code": "A", **PLY, "length": "40", "width": "20"}],
        sheets=[{"code": "S1", **PLY, "length": "30", "width": "48", "count": 1, "trim": "0"}],
    ),
    "one more": cut([part("A", "40", "6")], [board("B1", "39", "6")]),
}


@pytest.mark.parametrize("kind", EXAMPLES)
def test_each_way_out_gives_the_part_the_place_that_it_promises(kind):
    file = EXAMPLES[kind]
    way = ways(file)[kind]

    assert way["still_without_place"] == 0
    assert placed_after(file, way) == 0


@pytest.mark.parametrize("kind", ["glue up", "hidden face", "sapwood", "turn"])
def test_a_way_out_on_what_is_free_takes_no_more_wood_than_is_there(kind):
    # Each example has one board or sheet, which is untouched: what it is worth is what the way out takes.
    assert len(ways(EXAMPLES[kind])[kind]["boards"]) == 1


def test_what_is_left_of_a_board_that_is_cut_anyway_costs_nothing():
    # 96 in of board less 40 in and a kerf leave 55-7/8 in: two strips of 27 in by 5-1/2 in and their kerf.
    file = cut([part("A", "40", "6"), part("T", "27", "11")], [board("B1", "96", "6")])

    way = ways(file)["glue up"]

    assert (way["cost"], way["boards"], way["parts"]) == (0, [], ["T"])
    assert way["words"] == "Glue T up from strips"


def test_the_cheapest_way_that_places_all_comes_first():
    # A spare board at $12 or one of 5/4 at $30.
    file = cut(
        [part("A", "40", "6")],
        [
            board("B1", "39", "6", cost="9"),
            board("B2", "60", "6", spare=True, cost="12"),
            board("B3", "60", "6", cost="30") | {"class": "5/4"},
        ],
    )

    found = only_lot(file)["ways_out"]

    assert [way["kind"] for way in found][:1] == ["other stock"]
    assert [(way["cost"], way["cost_in"]) for way in found if way["kind"] != "one more"] == [
        (1200, "money"),
        (3000, "money"),
    ]


def test_the_one_board_that_is_bought_is_no_longer_than_it_has_to_be():
    # A part 40 in long and 6 in wide, nothing cut off: 4 ft are the shortest that is sold (NHLA rules); a
    # second part of the same size needs 80-1/8 in, so 7 ft.
    one = ways(cut([part("A", "40", "6")], [board("B1", "39", "6")]))["one more"]
    two = ways(cut([part("A", "40", "6", 2)], [board("B1", "39", "6")]))["one more"]

    assert one["words"] == "Get one more board of cherry 4/4, 48 in × 6 in or larger"
    assert two["words"] == "Get one more board of cherry 4/4, 84 in × 6 in or larger"
    assert two["feet"] == pytest.approx(84 * 6 / 144)


def test_where_no_board_is_sold_so_wide_the_part_is_glued_up_from_the_one_that_is_bought():
    way = ways(cut([part("T", "30", "16")], [board("B1", "20", "6")]))["one more"]

    assert way["words"].endswith(", and glue T up from strips")
    assert way["change"]["parts"] == ["T"]


def test_a_spare_board_is_left_alone():
    file = cut([part("A", "40", "6")], [board("B1", "48", "6"), board("B2", "41", "6", spare=True)])

    assert [each["stock"] for each in only_lot(file)["layouts"]] == ["B1"]


def test_a_spare_board_on_which_something_is_put_by_hand_is_spare_no_more():
    hand = [{"on": "B2", "from_end": "0", "from_edge": "0"}]
    file = cut(
        [part("A", "40", "6", placed=hand)], [board("B1", "48", "6"), board("B2", "41", "6", spare=True)]
    )

    assert [each["stock"] for each in only_lot(file)["layouts"]] == ["B2"]


def test_lengths_that_are_short_tell_how_many_more_it_takes():
    edging = {"wood": "walnut edging"}
    file = cut(
        [{"code": "E", **edging, "length": "50", "count": 3}],
        lengths=[
            {"code": "L1", **edging, "length": "96", "count": 1},
            {"code": "L2", **edging, "length": "60", "count": 1, "spare": True},
        ],
    )

    found = ways(file)

    assert found["one more"]["words"] == "Get 2 more lengths of walnut edging, 96 in"
    assert (found["other stock"]["words"], found["other stock"]["still_without_place"]) == ("Take L2 too", 1)
    assert placed_after(file, found["one more"]) == 0
    assert placed_after(file, found["other stock"]) == 1


@pytest.mark.parametrize("seed", [0, 1, 2, 3, 4, 6, 8, 10])
def test_ways_out_of_anything_stand_up_to_the_checker(seed):
    file = random_file(seed)
    file["boards"] = [{**each, "spare": True} for each in file["boards"]]

    found = json.loads(json.dumps(answered(file)))

    assert complaints(file, found) == []
    assert any(lot["ways_out"] for lot in found["lots"])


def test_a_change_leaves_everything_else_as_it_was():
    file = cut([part("A", "40", "6"), part("C", "10", "2")], [board("B1", "39", "6")])

    again = changed(file, {"parts": ["A"], "set": {"face": "B"}, "more": {"boards": [board("M", "48", "6")]}})

    assert again["parts"] == [part("A", "40", "6", face="B"), part("C", "10", "2")]
    assert again["boards"] == [board("B1", "39", "6"), board("M", "48", "6")]
    assert again["saw"] == STRAIGHT


def test_a_search_that_was_stopped_still_finds_what_has_to_be_bought():
    # Four parts of 40 in x 6 in; a stop at once. A board of 16 ft (192 in) takes 4: 4 x 40 in and 3 kerfs
    # are 160-3/8 in, so the shortest that is sold in whole feet is 14 ft. Of lengths, 8 ft take 2 of 40 in.
    length = {"code": "L", "wood": "edging", "length": "40", "count": 2}
    file = cut([part("A", "40", "6", 4), length], [board("B1", "39", "6")])
    file["lengths"] = [{"code": "L1", "wood": "edging", "length": "39", "count": 1, "trim": "0"}]

    stopped = plan_cuts(cut_file_of(file), Budget(now=time.perf_counter, seconds=30, stop=lambda: True))

    boards, lengths = (lot["ways_out"] for lot in cutting_data(stopped)["lots"])
    assert "Get one more board of cherry 4/4, 168 in × 6 in or larger" in [way["words"] for way in boards]
    assert [way["still_without_place"] for way in lengths] == [0]
