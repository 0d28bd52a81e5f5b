"""Rows and columns are added, split, moved and joined again, and every opening is followed where it goes."""

import json

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from casewright.pieces.asked.edit_change import CannotEdit, path_of
from casewright.pieces.asked.edits import (
    add_row,
    codes_of,
    hold,
    merge_across,
    merge_rows,
    move_row,
    remove_row,
    set_size,
    spell_out,
    split_across,
    split_down,
)
from casewright.pieces.asked.reading import write_unit
from units import built, chest, unit

COLUMNS = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"holds": st.sampled_from(["open", "doors"])}, optional={"shelves": st.just(1)}),
    st.fixed_dictionaries({"width": st.just("7")}),
)
PLAIN_ROWS = st.one_of(
    st.just({}),
    st.fixed_dictionaries({"columns": st.integers(2, 3)}, optional={"height": st.just("5")}),
    st.fixed_dictionaries({"widths": st.just(["7", None])}, optional={"front_tails": st.just(4)}),
    st.fixed_dictionaries({"holds": st.sampled_from(["open", "doors"])}),
)
STACKS = st.lists(PLAIN_ROWS, min_size=1, max_size=3)
NESTED = st.builds(lambda rows: {"rows": rows}, STACKS)
ROWS = st.lists(
    PLAIN_ROWS
    | st.builds(lambda across: {"across": across}, st.lists(COLUMNS | NESTED, min_size=1, max_size=3)),
    min_size=1,
    max_size=4,
)


def spec(rows):
    """The rows as a unit file has them, read and written again; a row of one drawer goes with them."""
    return json.loads(write_unit(unit(chest({"rows": [*rows, {}]}))))["rows"]


def plainly(rows):
    """The rows with columns spelled out only where there is something to say of one of them."""
    found = []
    for row in rows:
        across = [
            {**cell, "rows": plainly(cell["rows"])} if "rows" in cell else cell
            for cell in row.get("across", [])
        ]
        if any(set(cell) - {"width"} for cell in across):
            found.append({**row, "across": across})
        elif any("width" in cell for cell in across):
            found.append({"widths": [cell.get("width") for cell in across]})
        else:
            found.append({"columns": len(across)} if len(across) > 1 else row if not across else {})
    return found


@st.composite
def with_opening(draw):
    """Rows, and the code of one of their openings."""
    rows = draw(ROWS)
    return rows, path_of(draw(st.sampled_from(codes_of(rows))))


@given(with_opening(), st.booleans())
def test_a_row_added_and_removed_again_leaves_the_same_unit(found, below):
    rows, path = found
    own = path[:-1]

    more = add_row(rows, path, below=below)
    less = remove_row(more.rows, (*own[:-1], own[-1] + below))

    assert spec(less.rows) == spec(rows)
    assert len(codes_of(more.rows)) == len(codes_of(rows)) + 1
    assert all(more.moved.values())


@given(with_opening(), st.integers(2, 3))
def test_an_opening_split_across_and_joined_again_is_as_before_but_for_its_width(found, into):
    rows, path = found
    rows = set_size(rows, path, "width", "").rows
    assume(len(codes_of(rows)) < 12)

    made = split_across(rows, path, into).rows
    for _ in range(into - 1):
        made = merge_across(made, path).rows

    assert spec(made) == spec(rows)


@given(with_opening(), st.integers(2, 3))
def test_an_opening_split_down_and_made_one_again_is_as_before(found, into):
    rows, path = found
    rows = plainly(rows)

    made = split_down(rows, path, into)
    back = merge_rows(made.rows, (*path, 1, 1))

    assert spec(back.rows) == spec(rows)
    assert made.moved[f"R{'-'.join(map(str, path))}"] == f"R{'-'.join(map(str, path))}-1-1"


@st.composite
def with_a_row_below(draw):
    """Rows, the code of an opening in one that is not the last, and of the first in the row below it."""
    rows = [*draw(ROWS), {}]
    codes = codes_of(rows)
    pairs = [(path, (*path[:-2], path[-2] + 1, 1)) for path in map(path_of, codes)]
    found = [pair for pair in pairs if f"R{'-'.join(map(str, pair[1]))}" in codes]
    assume(found)  # where every column has rows of its own, none may have one below it
    return rows, *draw(st.sampled_from(found))


@given(with_a_row_below())
def test_a_row_moved_down_and_up_again_is_where_it_was(found):
    rows, path, below = found

    assert spec(move_row(move_row(rows, path, 1).rows, below, -1).rows) == spec(rows)


@given(with_opening(), st.sampled_from(["drawer", "open", "doors"]))
def test_what_an_opening_is_made_to_hold_it_holds_and_no_other_changes(found, holds):
    rows, path = found
    code = f"R{'-'.join(map(str, path))}"

    before = {each: what for each, what in held(rows).items() if each != code}
    after = held(hold(rows, path, holds).rows)

    assert after.pop(code) == holds
    assert after == before


def held(rows, code="R"):
    """What every opening holds, by its code."""
    found = {}
    for number, row in enumerate(rows, 1):
        across = row.get("across") or [{}] * len(row.get("widths") or [None] * row.get("columns", 1))
        for column, cell in enumerate(across, 1):
            own = f"{code}{number}-{column}"
            inner = cell.get("rows")
            found |= (
                held(inner, f"{own}-") if inner else {own: cell.get("holds") or row.get("holds", "drawer")}
            )
    return found


@given(with_opening())
def test_every_opening_that_is_still_there_is_found_under_its_new_code(found):
    rows, path = found
    for change in (
        lambda: add_row(rows, path, below=False),
        lambda: move_row(rows, path, -1),
        lambda: split_down(rows, path),
        lambda: spell_out(rows, path),
    ):
        edited = change()

        assert set(edited.moved) == set(codes_of(rows))
        assert len(set(edited.moved.values())) == len(edited.moved)
        assert set(edited.moved.values()) <= set(codes_of(edited.rows))


def test_a_row_taken_out_takes_its_openings_and_moves_those_below_up():
    assert remove_row([{"columns": 2}, {}, {}], (1, 2)).moved == {
        "R1-1": None,
        "R1-2": None,
        "R2-1": "R1-1",
        "R3-1": "R2-1",
    }


def test_the_last_row_of_a_column_taken_out_makes_the_column_one_opening():
    rows = [{"across": [{"width": "12", "rows": [{"height": "4"}]}, {"holds": "open"}]}]

    edited = remove_row(rows, (1, 1, 1, 1))

    assert edited.rows == ({"across": [{"width": "12"}, {"holds": "open"}]},)
    assert edited.moved == {"R1-1-1-1": "R1-1", "R1-2": "R1-2"}


def test_plain_columns_stay_counted_and_others_are_spelled_out():
    rows = [{"columns": 2, "front_tails": 5}]

    assert hold(rows, (1, 2), "open").rows == ({"front_tails": 5, "across": [{}, {"holds": "open"}]},)
    assert set_size(rows, (1, 2), "width", "12").rows == (
        {"front_tails": 5, "widths": [None, "12"], "columns": 2},
    )
    assert split_across(rows, (1, 1)).rows == ({"front_tails": 5, "columns": 3},)


def test_a_row_alone_says_itself_what_it_holds():
    assert hold([{}], (1, 1), "doors").rows == ({"holds": "doors"},)
    assert hold([{"holds": "doors"}], (1, 1), "drawer").rows == ({},)


def test_what_is_typed_is_handed_through_unread():
    rows = [{"columns": "two", "height": "5 1/0"}]

    assert add_row(rows, (1, 1), below=True).rows[0]["height"] == "5 1/0"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (lambda: remove_row([{}], (1, 1)), "the only row"),
        (lambda: merge_across([{}], (1, 1)), "alone in its row"),
        (lambda: merge_rows([{}], (1, 1)), "nothing to make one"),
        (lambda: split_across([{"columns": 12}], (1, 1)), "12 columns at most"),
        (lambda: add_row([{}] * 40, (1, 1), below=True), "40 rows already"),
        (lambda: split_down([{}], (9, 1)), "no such row"),
        (lambda: hold([{}], (1, 9), "open"), "no such opening"),
        (lambda: hold([{}], (1, 1, 1, 1), "open"), "no such opening"),
        (lambda: split_down([{}], (1, 1, 1, 1, 1, 1, 1, 1)), "4 deep at most"),
        (lambda: path_of("top"), "Choose an opening"),
    ],
)
def test_what_a_layout_does_not_allow_is_refused_in_words(change, said):
    with pytest.raises(CannotEdit, match=said):
        change()


def test_a_split_unit_can_be_built():
    rows = split_down(chest()["rows"], (1, 1)).rows
    rows = split_across(rows, (1, 1, 2, 1)).rows
    rows = hold(rows, (3, 1), "doors").rows

    face = built(chest({"rows": list(rows), "body.opening_total": "24"})).face

    assert [each.code for each in face.openings] == ["R1-1-1-1", "R1-1-2-1", "R1-1-2-2", "R2-1"]
    assert [each.code for each in face.spaces] == ["R3-1"]


NOTCHED = {"notch": {"width": "8", "depth": "6"}}


def test_a_notch_goes_with_its_row_when_that_is_split_and_joined_again():
    rows = [{}, NOTCHED]

    parted = split_down(rows, path_of("R2-1")).rows

    assert list(parted) == [{}, {"across": [{"rows": [NOTCHED, NOTCHED]}]}]
    assert spec(merge_rows(parted, path_of("R2-1-1-1")).rows) == spec(rows)


def test_a_notch_stays_where_a_drawer_of_its_row_stays():
    parted = split_down([{"columns": 2, **NOTCHED}], path_of("R1-1")).rows

    assert list(parted) == [{**NOTCHED, "across": [{"rows": [NOTCHED, NOTCHED]}, {}]}]


@pytest.mark.parametrize("holds", ["open", "doors"])
def test_a_row_that_holds_no_drawer_any_more_has_no_notch(holds):
    assert list(hold([{}, NOTCHED], path_of("R2-1"), holds).rows) == [{}, {"holds": holds}]
