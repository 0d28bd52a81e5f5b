"""Codes in the elevation: one size for all, never too small to be read, else a number that is told below."""

import pytest
from test_drawing_reader import Read

from casewright.drawing.canvas import LETTERS
from casewright.drawing.codes import SIZES, Codes
from casewright.drawing.elevation import elevation
from casewright.pieces.asked.presets import presets
from units import built, chest

LEAST = 8 / 72
"""Eight point on paper [in]."""


def wide_bank():
    """A bank of 180 in with rows of its own in every other column, drawn very small."""
    data = chest()
    data["body"] = {"width": "180", "depth": "24", "overall_height": "40"}
    stack = {"rows": [{"columns": 2}, {"columns": 2}, {}]}
    data["rows"] = [
        {"columns": 6, "height": "6"},
        {"across": [stack, {"holds": "doors", "leaves": 2}, stack, {"holds": "doors"}, stack, {}]},
    ]
    return data


CASES = {each.key: each.spec_json for each in presets()} | {"wide bank": wide_bank()}


def sizes_on_paper(drawing):
    """The height of all that is lettered [in]."""
    read = Read(drawing.svg())
    usual = LETTERS * drawing.scale
    return [float(text.get("font-size") or usual) / drawing.scale for text in read.all("text")]


@pytest.mark.parametrize("key", sorted(CASES))
def test_nothing_in_an_elevation_is_lettered_smaller_than_is_legible_or_larger_than_its_sizes(key):
    drawn = sizes_on_paper(elevation(built(CASES[key])))

    assert min(drawn) >= LEAST - 1e-6
    assert max(drawn) <= LETTERS + 1e-6


@pytest.mark.parametrize("key", [each.key for each in presets()])
def test_every_opening_is_named_in_it_or_by_a_number_that_is_told(key):
    unit = built(CASES[key])
    words = Read(elevation(unit).svg()).words

    told = " ".join(words).replace(",", "").split()
    assert {each.code for each in (*unit.face.openings, *unit.face.spaces)} <= set(told)


def test_rows_without_room_for_a_number_are_named_beside_their_height():
    words = Read(elevation(built(CASES["wide bank"])).svg()).words

    assert {"R1: 6", "R2-1-1: 7-11/16", "R2-1, R2-3, R2-5"} <= set(words)


@pytest.mark.parametrize("key", sorted(CASES))
def test_no_code_stands_in_another_word(key):
    assert Read(elevation(built(CASES[key])).svg()).clashes == []


def test_the_nested_drawers_of_the_desk_have_numbers():
    words = Read(elevation(built(CASES["desk-pedestals"])).svg()).words

    assert {"1", "2"} <= set(words)
    assert any(each.startswith("Numbers: 1 R2-1-1-1, 2 R2-3-1-1") for each in words)


class _Sheet:
    """Remembers what is lettered."""

    letters, said = 1.0, ()

    def __init__(self):
        self.lettered = []

    def letter(self, at, words, anchor="middle", *, size=1.0):
        self.lettered.append((words, size))


def test_codes_are_lettered_alike_as_the_tightest_of_those_that_fit():
    sheet = _Sheet()
    codes = Codes(sheet)
    codes.put("R1", "R1", lambda words, size: ((0, 0), "start"))
    codes.put("R2", "R2", lambda words, size: ((0, 0), "start") if size <= 0.85 else None)
    codes.put("R3", "R3", lambda words, size: ((0, 0), "start") if len(words) == 1 else None)
    codes.put("R4", "R4", lambda words, size: None)

    left_out = codes.letter(["R1", "R2", "R3", "R4"])

    assert sheet.lettered == [("R1", 0.85), ("R2", 0.85), ("1", 0.85)]
    assert codes.numbered == ["1 R3"]
    assert left_out == {"R4"}
    assert SIZES[-1] * LETTERS >= LEAST
