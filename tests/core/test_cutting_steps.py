"""The cuts of a board in the order in which they are made."""

import json

from casewright.cutting.plans.sawing import Way, saw_up
from casewright.cutting.plans.spots import Spot
from casewright.cutting.plans.steps import set_ups, step_words, steps_of
from casewright.measure.lengths import LengthUnit
from casewright.shop.demo.cutting import kept_layout
from cutfiles import only_lot, planned


def spoken(data, unit=LengthUnit.INCH):
    board = planned(data).lots[0].boards[0]
    return [step_words(step, board).in_unit(unit) for step in steps_of(board)]


def drawer_sides(**more):
    return {
        "cut_file": 1,
        "first_cut": "rip first",
        "parts": [{"code": "D", "wood": "poplar", "class": "4/4", "length": "15", "width": "6", "count": 3}],
        "boards": [{"code": "Q", "wood": "poplar", "class": "4/4", "length": "60", "width": "7"}],
        **more,
    }


def test_the_edge_is_straightened_and_the_end_squared_before_anything_is_measured_from_them():
    assert spoken(drawer_sides()) == [
        "Straighten the near edge of the board: 1/4 in comes off.",
        "Square the first end: 1 in comes off.",
        "Rip the board at 6 in: piece 1 (3 D).",
        "Crosscut piece 1 at 15 in, 3 times: 3 D.",
    ]


def test_a_metric_shop_reads_its_steps_in_millimetres():
    assert spoken(drawer_sides(), LengthUnit.MILLIMETRE)[2] == "Rip the board at 152.4 mm: piece 1 (3 D)."


def test_equal_cuts_of_several_pieces_are_one_setting():
    words = spoken(drawer_sides(first_cut="crosscut first"))

    assert words[2:] == [
        "Crosscut the board at 15 in, 3 times: pieces 1, 2, 3 (3 D).",
        "Rip pieces 1, 2, 3 at 6 in: 3 D.",
    ]


def test_a_setting_serves_every_piece_before_the_fence_is_moved():
    # Three pieces, each ripped at 2 and 2-1/2 in, 3 in are left; edges and ends are not cut: one setting for
    # the crosscuts, one for each of the two rips, whichever comes first.
    widths = {"A": "2", "B": "2-1/2", "C": "3"}
    parts = [
        {"code": code, "wood": "poplar", "class": "4/4", "length": "20", "width": width, "count": 3}
        for code, width in widths.items()
    ]
    board = {"code": "Q", "wood": "poplar", "class": "4/4", "length": "60-1/4", "width": "7-3/4"}
    saw = {"edge": "0", "end_trim": "0"}
    data = drawer_sides(first_cut="crosscut first", parts=parts, boards=[board], saw=saw)

    steps = steps_of(planned(data).lots[0].boards[0])

    assert set_ups(steps) == 3
    assert [step.of for step in steps] == [(), ("1", "2", "3"), ("1", "2", "3")]


def test_settings_are_counted_once_while_they_stay():
    board = planned(drawer_sides()).lots[0].boards[0]

    assert set_ups(steps_of(board)) == 4


def test_a_sheet_is_ripped_from_end_to_end_before_it_is_crosscut():
    """One person steadies a long rip along the fence while the sheet is still whole: common practice."""
    data = {
        "cut_file": 1,
        "parts": [{"code": "P", "wood": "ply", "length": "30", "width": "15", "count": 6}],
        "sheets": [{"code": "S", "wood": "ply", "length": "96", "width": "48"}],
    }
    board = planned(data).lots[0].boards[0]

    kinds = [step.kind for step in steps_of(board) if step.kind in ("rip", "crosscut")]
    assert kinds == sorted(kinds, key=["rip", "crosscut"].index)


def test_every_cut_runs_from_edge_to_edge_of_its_piece():
    board = planned(drawer_sides()).lots[0].boards[0]

    assert all(line.length == 0 or line.width == 0 for step in steps_of(board) for line in step.lines)
    assert sum(len(step.lines) for step in steps_of(board)) == sum(step.count for step in steps_of(board))


def test_the_way_that_turns_less_often_is_taken_where_none_is_asked_for():
    """Two parts side by side of one length: ripping alone parts them."""
    spots = [(Spot(0, 0, 10, 3), "a"), (Spot(0, 4, 10, 3), "b")]

    sawn = saw_up(Spot(0, 0, 10, 7), spots, 1)

    assert (sawn.way, sawn.turns, sawn.cuts) == (Way.RIP, 1, 1)


def test_what_is_left_over_is_in_one_piece_behind_the_last_part():
    sawn = saw_up(Spot(0, 0, 100, 10), [(Spot(0, 0, 40, 10), "a")], 2, Way.CROSSCUT)

    assert list(sawn.left()) == [Spot(42, 0, 58, 10)]


def test_of_layouts_equal_in_wood_and_in_what_is_left_the_fewest_cuts_and_settings_are_taken():
    """The drawer stock of the demo's hall case: every way takes the one board and leaves nothing to keep."""
    asked = json.loads(kept_layout("in"))["asked"]
    parts, boards = (
        [each for each in asked[kind] if each["wood"] == "soft maple"] for kind in ("parts", "boards")
    )
    file = {"cut_file": 1, "saw": asked["saw"], "parts": parts, "boards": boards[1:2]}
    ways = ("rip first", "crosscut first", "board by board")
    alone = {way: only_lot({**file, "first_cut": way}) for way in ways}
    counts = {way: lot["tried"][0]["cuts"] + lot["tried"][0]["set_ups"] for way, lot in alone.items()}

    [taken] = [each for each in only_lot(file)["tried"] if each["taken"]]

    assert len({lot["cost"] for lot in alone.values()}) == 1
    assert [lot["layouts"][0]["left"] for lot in alone.values()] == [[], [], []]
    assert len(set(counts.values())) > 1
    assert taken["cuts"] + taken["set_ups"] == min(counts.values())
