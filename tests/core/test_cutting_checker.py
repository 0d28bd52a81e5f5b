"""The checker finds what is wrong: a right answer is spoiled in one way after the other."""

import copy
import json
from typing import Any

import pytest

from cutchecker import complaints
from cutfiles import answered
from straightcuts import comes_apart, takes_stages

FILE: dict[str, Any] = {
    "cut_file": 1,
    "stages": 2,
    "parts": [
        {
            "code": "A",
            "wood": "cherry",
            "class": "4/4",
            "length": "20",
            "width": "4",
            "count": 3,
            "face": "A",
        },
        {
            "code": "T",
            "wood": "cherry",
            "class": "4/4",
            "length": "24",
            "width": "9",
            "glue_up": {"narrowest": "2-1/2", "widest": "6"},
        },
        {"code": "P", "wood": "ply", "length": "30", "width": "20", "count": 3},
        {"code": "E", "wood": "edging", "length": "30", "count": 3},
    ],
    "sets": [{"name": "pair", "way": "along", "rows": [["A", "A"]]}],
    "boards": [
        {
            "code": f"B{number}",
            "wood": "cherry",
            "class": "4/4",
            "length": "72",
            "width": "7",
            "sap_far": "1",
            "defects": [{"from_end": "1", "from_edge": "0", "length": "2", "width": "2"}],
        }
        for number in range(3)
    ],
    "sheets": [{"code": "S", "wood": "ply", "length": "96", "width": "48", "cost": "40.00"}],
    "lengths": [{"code": "L", "wood": "edging", "length": "96"}],
}


@pytest.fixture(scope="module")
def right() -> dict[str, Any]:
    found: dict[str, Any] = json.loads(json.dumps(answered(FILE)))
    assert complaints(FILE, found) == []
    return found


def board_of(answer, code):
    """The first board with a part, and the part."""
    return next(
        (board, one)
        for lot in answer["lots"]
        for board in lot["layouts"]
        for one in board["parts"]
        if one["code"] == code
    )


def moved(answer):
    board_of(answer, "A")[1]["from_end_in"] += 1 / 64


def over_another(answer):
    board, one = board_of(answer, "P")
    other = next(each for each in board["parts"] if each is not one)
    other["from_end_in"], other["from_edge_in"] = one["from_end_in"] + 1, one["from_edge_in"] + 1


def without_kerf(answer):
    board, one = board_of(answer, "P")
    for other in board["parts"]:
        if other["from_end_in"] > one["from_end_in"] + 1:
            other["from_end_in"] -= 1 / 16


def beyond_the_end(answer):
    board_of(answer, "A")[1]["from_end_in"] = 71.5


def into_the_sapwood(answer):
    board_of(answer, "A")[1]["from_edge_in"] = 2.5


def onto_the_defect(answer):
    one = board_of(answer, "A")[1]
    one["from_end_in"], one["from_edge_in"] = 1.0, 0.25


def smaller(answer):
    board_of(answer, "P")[1]["width_in"] -= 1


def turned(answer):
    board_of(answer, "A")[1]["turned"] = True


def one_lost(answer):
    board, one = board_of(answer, "P")
    board["parts"].remove(one)


def counted_twice(answer):
    board_of(answer, "P")[1]["number"] = 2


def a_strip_lost(answer):
    board, one = board_of(answer, "T")
    board["parts"].remove(one)


def strips_too_narrow(answer):
    board_of(answer, "T")[1]["width_in"] -= 1


def glue_lines_elsewhere(answer):
    panels = next(lot["panels"] for lot in answer["lots"] if lot["panels"])
    panels[0]["glue_lines_in"][0] += 0.5


def another_board(answer):
    board_of(answer, "A")[0]["number"] = 2


def another_wood(answer):
    board_of(answer, "P")[1]["code"] = "A"


def a_bound_too_high(answer):
    answer["lots"][0]["bound"] = answer["lots"][0]["cost_counted"] + 1


def a_cost_too_low(answer):
    answer["lots"][1]["layouts"][0]["cost"] -= 100


def a_length_too_long(answer):
    answer["lots"][2]["lengths"][0]["parts"][-1]["from_end_in"] += 10


def called_complete(answer):
    answer["complete"] = False


def a_cut_left_out(answer):
    board = board_of(answer, "P")[0]
    strip = board["cuts"]["pieces"][0]
    strip["pieces"] = strip["pieces"][:1]


def a_left_piece_where_a_part_lies(answer):
    board, one = board_of(answer, "P")
    board["left"].append({**{key: one[key] for key in one if key.endswith("_in")}, "clear": True})


def a_share_too_high(answer):
    board_of(answer, "P")[0]["percent_used"] += 1


@pytest.mark.parametrize(
    "spoil",
    [
        moved,
        over_another,
        without_kerf,
        beyond_the_end,
        into_the_sapwood,
        onto_the_defect,
        smaller,
        turned,
        one_lost,
        counted_twice,
        a_strip_lost,
        strips_too_narrow,
        glue_lines_elsewhere,
        another_board,
        another_wood,
        a_bound_too_high,
        a_cost_too_low,
        a_length_too_long,
        called_complete,
        a_cut_left_out,
        a_left_piece_where_a_part_lies,
        a_share_too_high,
    ],
    ids=lambda spoil: spoil.__name__,
)
def test_a_spoiled_answer_is_complained_of(right, spoil):
    answer = copy.deepcopy(right)
    spoil(answer)

    assert complaints(FILE, answer) != []


PINWHEEL = [(0, 0, 4, 2), (4, 0, 2, 4), (2, 4, 4, 2), (0, 2, 2, 4)]


def test_a_pinwheel_does_not_come_apart_by_straight_cuts():
    assert not comes_apart(PINWHEEL, 0)
    assert comes_apart(PINWHEEL[:3], 0)


@pytest.mark.parametrize(("stages", "does"), [(1, False), (2, True)])
def test_strips_cut_into_parts_are_two_stages(stages, does):
    two_strips = [(0, 0, 3, 2), (3, 0, 5, 2), (0, 2, 4, 1), (4, 2, 4, 1)]

    assert takes_stages(two_strips, 1, stages, 0) == does


def test_a_stack_in_a_strip_is_a_third_stage():
    stack = [(0, 0, 3, 2), (0, 2, 3, 2), (3, 0, 2, 4), (0, 4, 5, 1)]

    assert not takes_stages(stack, 1, 2, 0)
    assert takes_stages(stack, 1, 3, 0)


def test_parts_nearer_than_a_kerf_do_not_come_apart():
    assert comes_apart([(0, 0, 2, 2), (2.125, 0, 2, 2)], 0.125)
    assert not comes_apart([(0, 0, 2, 2), (2.0625, 0, 2, 2)], 0.125)


def test_stages_that_are_not_kept_and_not_named_are_found() -> None:
    """Beside a tall part two small ones lie under one as long as both: three stages, and two were asked."""
    sizes = {"A": (10, 10, 1, 1), "B": (10, 10, 12, 1), "C": (21, 10, 1, 12), "D": (20, 30, 40, 1)}
    file = {
        **FILE,
        "parts": [
            {
                "code": code,
                "wood": "ply",
                "length": str(length),
                "width": str(width),
                "placed": [{"on": "S", "from_end": str(end), "from_edge": str(edge)}],
            }
            for code, (length, width, end, edge) in sizes.items()
        ],
        "sets": [],
    }
    answer = json.loads(json.dumps(answered(file)))
    [board] = answer["lots"][0]["layouts"]
    assert complaints(file, answer) == []
    assert not board["stages_kept"]

    board["stages_kept"] = True

    assert any("does not say so" in wrong for wrong in complaints(file, answer))


def test_a_spare_board_that_is_cut_is_found(right: dict[str, Any]) -> None:
    file = {**FILE, "boards": [{**board, "spare": True} for board in FILE["boards"]]}

    assert any("is spare" in wrong for wrong in complaints(file, right))


@pytest.mark.parametrize(
    ("spoiled", "said"),
    [
        ({"parts": ["A", "A"]}, "places parts that have a place"),
        ({"still_without_place": 3}, "does not count"),
        ({"cost": 0}, "costs something and takes nothing"),
    ],
)
def test_a_way_out_that_does_not_add_up_is_found(spoiled: dict[str, Any], said: str) -> None:
    file = {**FILE, "parts": [{**FILE["parts"][1], "length": "80"}], "sets": []}
    answer = json.loads(json.dumps(answered(file)))
    assert complaints(file, answer) == []

    answer["lots"][0]["ways_out"][0] |= spoiled

    assert any(said in wrong for wrong in complaints(file, answer))
