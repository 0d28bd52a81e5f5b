"""Sheets: their grain, and the stages in which they come apart."""

import pytest

from cutfiles import laid_of, only_lot


def sheets(parts, **more):
    stock = {"code": "S", "wood": "ply", "length": "96", "width": "48", "trim": "0", **more}
    return {"cut_file": 1, "parts": [{"wood": "ply", **each} for each in parts], "sheets": [stock]}


def test_grain_on_a_sheet_runs_as_the_sheet_has_it():
    parts = [{"code": "P", "length": "47", "width": "20"}]

    along = only_lot(sheets(parts))
    across = only_lot(sheets(parts, grain="width"))

    assert (laid_of(along)[0][1]["length_in"], laid_of(across)[0][1]["length_in"]) == (47, 20)


def test_a_long_part_turns_only_where_its_grain_may():
    part = {"code": "P", "length": "20", "width": "90"}

    assert only_lot(sheets([part]))["unplaced"]
    assert only_lot(sheets([{**part, "grain": "any"}]))["unplaced"] == []
    assert only_lot(sheets([part], grain="none"))["unplaced"] == []


@pytest.mark.parametrize("stages", [2, 3])
def test_a_sheet_comes_apart_in_its_stages(stages):
    parts = [
        {"code": f"P{number}", "length": str(20 + 3 * number), "width": str(9 + number), "count": 3}
        for number in range(4)
    ]

    assert only_lot({**sheets(parts), "stages": stages})["unplaced"] == []
