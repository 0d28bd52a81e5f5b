"""The plan of a drawer that is notched around pipes: its sizes by a pencil, its boards by the model."""

import pytest
from test_drawing_reader import Read

from byhand import drawer, estimate_of
from casewright.drawing.notch_plan import notch_plan
from casewright.measure.lengths import LengthUnit
from notched import kitchen
from units import built, dresser

WIDE = 29.546875
"""The box of the bank under a washbasin, worked by hand in `tests/outside/test_sink_bank_by_hand.py`."""
LEFT = (WIDE - 9) / 2 + 2


@pytest.mark.parametrize(
    "size",
    [
        LEFT,  # a notch of 9 × 7-1/2, its middle 2 to the right of the drawer's
        9,
        WIDE - 9 - LEFT,
        LEFT - 1 / 2 + 7 / 32 - (1 / 2 - 7 / 32),  # from the left end of the bottom, 7/32 in its groove
        10 - 7 / 16,  # the notch with its inner sides, less 7/32 in each
        20,
        12.5,  # 7-1/2 before the end of the sides
        12,  # and the inner back before that
        WIDE,
    ],
)
def test_the_sizes_are_those_of_the_pencil(size):
    read = Read(notch_plan(estimate_of("sink_bank").unit, drawer("sink_bank", "R1-1")).svg())

    assert any(abs(inches - size) < 1e-4 for _, inches in read.sizes)
    assert read.clashes == []


def test_what_is_left_open_between_the_inner_sides_is_the_notch():
    unit = built(kitchen())
    notched = next(each for each in unit.drawers if each.sizes.notch)
    read = Read(notch_plan(unit, notched).svg())

    left, right, head = (read.outlines[f"{notched.code}-{mark}"] for mark in ("IL", "IR", "IB"))
    assert min(x for x, _ in right) - max(x for x, _ in left) == pytest.approx(8, abs=1e-4)
    rear = max(y for _, y in read.outlines[f"{notched.code}-SL"])
    assert rear - max(y for _, y in head) == pytest.approx(9, abs=1e-4)


def test_the_cut_out_of_the_bottom_is_dashed_where_the_model_has_it():
    unit = built(kitchen())
    notched = next(each for each in unit.drawers if each.sizes.notch)
    read = Read(notch_plan(unit, notched).svg())

    cut, bottom = notched.bottom.cut_out, notched.bottom
    dashed = next(each for each in read.all("g") if each.get("class") == "hidden")
    [line] = [each.get("points") for each in dashed]
    across = sorted({round(float(pair.split(",")[0]), 4) for pair in line.split()})
    assert [one - across[0] for one in across] == pytest.approx(
        [0, cut.along, cut.along + cut.length, bottom.across], abs=1e-3
    )


def test_it_is_lettered_in_the_unit_of_who_reads_it_and_not_drawn_without_a_notch():
    unit = built(kitchen())
    notched = next(each for each in unit.drawers if each.sizes.notch)

    assert "203.2" in Read(notch_plan(unit, notched, LengthUnit.MILLIMETRE).svg()).words
    plain = built(dresser())
    with pytest.raises(ValueError, match="has no notch"):
        notch_plan(plain, plain.drawers[0])
