"""What a unit takes, as the yard and the hours count it: boards, sequences, pieces and joints."""

import pytest

from casewright.labour.drivers import Driver
from casewright.measure.lengths import LengthUnit, show
from casewright.pieces.takeoff.sequences import sequence_words, yard_size
from units import built, chest, dresser, dresser_estimate, estimated, own_shop


def order_of(estimate, wood, bought="4/4"):
    (order,) = (order for order in estimate.order if (order.wood, order.bought.name) == (wood, bought))
    return order


def needs(order):
    return [(need.quantity, show(need.width), show(need.length), need.lines) for need in order.needs]


def test_wide_boards_are_counted_by_the_parts_that_need_them():
    # worked dresser A: rough widths of 8-21/32, 7-29/32 and 7-5/32, up to the next quarter, an inch to trim
    assert needs(order_of(dresser_estimate(), "soft maple")) == [
        (2, "8-3/4", "20-9/16", ("S5",)),
        (3, "8", "39-15/16", ("S4", "K5")),
        (3, "7-1/4", "39-15/16", ("S3", "K4")),
    ]


def test_two_units_need_twice_the_wide_boards():
    twice = needs(order_of(estimated(dresser({"count": 2})), "soft maple"))

    assert [quantity for quantity, *_ in twice] == [4, 6, 6]


def test_boards_are_wide_over_what_the_shop_says():
    order = order_of(estimated(dresser(), own_shop(wide_over="8")), "soft maple")

    assert [width for _, width, _, _ in needs(order)] == ["8-3/4"]


def test_a_sequence_is_asked_for_in_the_words_of_a_yard():
    along, across = order_of(dresser_estimate(), "cherry").sequences

    assert sequence_words(along) == (
        "fronts of row 1 (2): one board, at least 5-3/4 wide and 39-1/4 long; consecutive, ends marked"
    )
    assert sequence_words(across) == (
        "full-width fronts, top to bottom (4): one panel or wide board from one log, 30-1/4 × 39; "
        "consecutive, ends marked"
    )


def deep_rows(own=None):
    """Two drawers over two, the lower 10-9/64 high: over the 10 in of the usual widest clear board."""
    rows = [{"height": "6-3/4", "columns": 2}, {"height": "10-1/4", "columns": 2}]
    return estimated(chest({"body.width": "54", "body.opening_total": "17", "rows": rows}), own)


def test_fronts_wider_than_any_board_are_asked_for_as_boards_for_a_panel():
    upper, lower = order_of(deep_rows(), "cherry").sequences

    assert sequence_words(upper).startswith("fronts of row 1 (2): one board, at least 7 wide")
    # 10-9/64, half an inch and a quarter for each of two boards: 5-37/64 each
    assert sequence_words(lower) == (
        "fronts of row 2 (2): 2 boards from one log for a panel, each at least 5-3/4 wide and 53-3/4 long; "
        "consecutive, ends marked"
    )


@pytest.mark.parametrize("own", [None, own_shop(widest_board="12"), own_shop(widest_board="5")])
def test_the_order_and_the_cut_list_glue_up_the_same_fronts(own):
    estimate = deep_rows(own)

    cut = {code: line.boards for line in estimate.takeoff.lines for code in line.of.codes}
    sets = order_of(estimate, "cherry").sequences
    assert [(found.boards, len(found.parts)) for found in sets] == [
        (cut["A-R1-1-F"], 2),
        (cut["A-R2-1-F"], 2),
    ]


def test_a_shop_that_gets_wider_boards_asks_for_one_board():
    _, lower = order_of(deep_rows(own_shop(widest_board="12")), "cherry").sequences

    assert "(2): one board, at least 10-1/2 wide" in sequence_words(lower)


@pytest.mark.parametrize(
    ("needed", "asked"),
    [(7 + 25 / 32, 8.0), (45 + 3 / 64, 45.25), (8.75, 8.75), (20.0, 20.0), (20 + 1 / 64, 20.25)],
)
def test_a_yard_is_asked_for_the_next_quarter_of_an_inch(needed, asked):
    assert yard_size(needed) == asked


@pytest.mark.parametrize(("needed", "asked"), [(197.6, 200), (1144.2, 1145), (225, 225), (225.1, 230)])
def test_a_metric_yard_is_asked_for_the_next_five_millimetres(needed, asked):
    # both sides pass through inches, so that only the last binary places may differ
    assert yard_size(needed / 25.4, LengthUnit.MILLIMETRE) * 25.4 == pytest.approx(asked, abs=1e-9)


def test_a_front_by_itself_needs_no_sequence():
    order = order_of(estimated(chest({"rows": [{}]})), "cherry")

    assert order.sequences == ()


def test_the_note_on_grade_says_how_much_a_cheaper_one_would_do():
    # the two fronts of row 1 at 1.54, the two plinth returns at 1.22 and the upright at 0.16 are under 36 in
    assert order_of(dresser_estimate(), "cherry").grade_note.startswith(
        "No. 1 Common would do for 2.9 of 29.2 rough feet"
    )


def test_a_part_too_long_for_any_grade_is_picked_by_hand():
    order = order_of(estimated(chest({"body.width": "144"})), "cherry", "5/4")

    assert "no grade promises the length of T1: pick boards by hand" in order.grade_note


@pytest.mark.parametrize(
    ("line", "bought"),
    # worked dresser A: two parts of 1/2 in need 1-3/8 and come from 6/4
    [("S1", "6/4"), ("S5", "6/4"), ("K1", "6/4"), ("P1", "6/4"), ("K5", None), ("F1", None), ("N1", None)],
)
def test_thin_parts_are_resawn_where_that_saves_wood(line, bought):
    (found,) = (each for each in dresser_estimate().takeoff.lines if each.line == line)

    assert (found.resaw and found.resaw.bought.name) == bought


def test_short_parts_in_number_are_ganged_into_one_blank():
    lines = {line.line: line for line in estimated(chest({"body.depth": "14"})).takeoff.lines}

    # four runners of 8-7/8: half an inch each, where the one top gets a whole inch
    runner, top = lines["W2"], lines["T1"]
    assert (runner.quantity, show(runner.of.part.length), show(runner.length)) == (4, "8-7/8", "9-3/8")
    assert show(top.length) == "26-1/2"


@pytest.mark.parametrize(
    ("changes", "driver", "quantity"),
    [
        ({}, Driver.GROOVED_PIECES, 3 * 3),
        ({"drawers.bottom": {"kind": "ply"}}, Driver.GROOVED_PIECES, 4 * 3),
        ({"drawers.bottom": {"kind": "ply", "hold": "under the back"}}, Driver.GROOVED_PIECES, 3 * 3),
        ({}, Driver.RABBETED_ENDS, 6),
        ({"drawers.rabbet": 0}, Driver.RABBETED_ENDS, 0),
        ({}, Driver.PLINTH_CORNERS, 4),
        ({"base": None}, Driver.PLINTH_CORNERS, 0),
        ({}, Driver.HOUSED_ENDS, 2 * 2 * 2),  # front rail and rear rail of two dividers
        ({"rows.0.columns": 2}, Driver.HOUSED_ENDS, 2 * 2 * 2 + 2),  # and an upright
        ({}, Driver.FRAME_TENONS, 2 * (4 + 2)),  # four runners and two kickers
        ({"body.width": "40", "rows": [{}, {"columns": 2}]}, Driver.RUNNERS, 2 + 1 + 2),
        ({"rows.0.columns": 2}, Driver.DRAWERS, 4),
        ({"rows.0.columns": 2}, Driver.DOVETAIL_JOINTS, 16),
        ({"drawers.muntin.use": "always"}, Driver.MUNTINS, 3),
        ({"drawers.muntin.use": "always"}, Driver.BOTTOMS, 6),
        (
            {"rows.0.front_tails": 2, "rows.1.front_tails": 3, "rows.2.front_tails": 4},
            Driver.SOCKET_TAILS,
            18,
        ),
        ({"finish.show_coats": 1, "finish.inside_coats": 2}, Driver.COATS, 3),
        ({"finish.show_coats": 1}, Driver.RUB_SQFT, 0),
        ({"finish.show_coats": 0}, Driver.RUB_SQFT, 0),
    ],
)
def test_the_hours_count_what_is_there(changes, driver, quantity):
    assert estimated(chest(changes)).drivers[driver] == quantity


SLIDING = {"case.divider_end": "sliding dovetail"}


@pytest.mark.parametrize(
    ("changes", "code", "quantity", "gone"),
    [
        (SLIDING, "E58", 2 * 2 * 2, "C03"),  # front rail and rear rail of two dividers
        (SLIDING | {"rows.0.columns": 2}, "C03", 2, ""),  # an upright stays housed
        ({"pulls.holes": "two"}, "E60", 3, "D17"),
        ({"top.fixing": "slots"}, "E61", 1, "C09"),
        ({"top.fixing": "clips"}, "E62", 1, "C09"),
    ],
)
def test_what_is_made_another_way_has_hours_of_its_own(changes, code, quantity, gone):
    lines = {line.code: line for line in estimated(chest(changes)).labour}

    assert lines[code].quantity == quantity
    assert lines[code].minutes > 0
    assert gone not in lines


def test_tails_that_go_through_take_less_than_tails_in_sockets():
    half_blind = {line.code: line for line in estimated(chest()).labour}
    through = {line.code: line for line in estimated(chest({"case.corner": "through"})).labour}

    # in the proportion of worked dresser A's drawers: 2.5 and 3 minutes a tail beside 2.5 and 6
    assert through["E59"].quantity == half_blind["C02"].quantity
    assert through["E59"].each / half_blind["C02"].each == pytest.approx((2.5 + 3) / (2.5 + 6), abs=0.01)
    assert "C02" not in through


def test_a_bank_without_a_top_has_none_to_fit():
    lines = {line.code for line in estimated(chest({"top.fixing": "none"})).labour}

    assert not lines & {"C09", "E61", "E62"}


def test_a_shop_changes_the_minutes_of_its_sliding_dovetails():
    own = own_shop(minutes={"E58": {"machine": 25}})

    (line,) = (line for line in estimated(chest(SLIDING), own).labour if line.code == "E58")

    assert line.each == 25


def test_the_joints_of_a_part_are_named_at_its_ends():
    ends = {part.code: part.ends for part in built(chest()).parts}
    plain = {part.code: part.ends for part in built(chest({"drawers.rabbet": 0})).parts}

    assert tuple(map(str, ends["A-R1-1-SL"])) == (
        "half-blind dovetail, tails, rabbet 1/16",
        "through dovetail, tails",
    )
    assert tuple(map(str, plain["A-R1-1-SL"])) == ("half-blind dovetail, tails", "through dovetail, tails")
    assert tuple(map(str, ends["A-D1-RF"])) == ("housing, 1/4 deep",) * 2
    assert str(ends["A-D1-RL"][1]) == "frame tenon, 1/2 long, left dry with a gap of 1/8"
