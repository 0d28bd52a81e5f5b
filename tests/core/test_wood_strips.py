"""Parts out of one clear piece: plain rules that any honest answer keeps."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.wood.strips import Blank, longest_first, parts_out_of

sizes = st.integers(8, 400).map(lambda quarters: quarters / 4)
parts = st.lists(
    st.builds(
        Blank,
        width=sizes,
        length=sizes,
        count=st.integers(0, 5),
        mark=st.just("x"),
        is_glued=st.booleans(),
    ),
    max_size=6,
)


@given(width=sizes, length=sizes, blanks=parts)
def test_what_comes_out_of_a_board_fits_it_and_was_wanted(width, length, blanks):
    order = longest_first(blanks)
    wanted = [each.wanted for each in order]

    out = parts_out_of(width, length, order, wanted, 0.125)

    got = [(amount, each) for amount, each in zip(out, order, strict=True) if amount]
    assert all(0 <= amount <= want + 1e-9 for amount, want in zip(out, wanted, strict=True))
    assert sum(
        amount * (1 if each.is_glued else each.width) * each.length for amount, each in got
    ) <= width * length * (1 + 1e-9)
    assert all(each.length <= length and (each.is_glued or each.width <= width) for _, each in got)


def test_a_panel_takes_strips_of_the_widths_that_boards_have():
    """Worked by hand: 13 in of clear width are two strips, none over 7 in, and one kerf."""
    panel = (Blank(width=20, length=40, count=1, is_glued=True),)

    (got,) = parts_out_of(13, 41, panel, (20.0,), 0.125)

    assert 12.5 < got <= 13 - 0.125


def test_a_board_is_ripped_into_strips_and_each_is_crosscut():
    """Worked by hand: two strips of 3 in from 6-1/8 in, three parts of 10 in from 30-1/4 in of each."""
    part = (Blank(width=3, length=10, count=9),)

    assert parts_out_of(6.125, 30.25, part, (9,), 0.125) == (6,)
    assert parts_out_of(6.0, 30.25, part, (9,), 0.125) == (3,)
    assert parts_out_of(6.125, 30.0, part, (9,), 0.125) == (4,)


def test_a_part_without_size_is_refused():
    with pytest.raises(ValueError, match="cannot be cut"):
        Blank(width=0, length=10, count=1)
