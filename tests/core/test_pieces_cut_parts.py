"""From a unit to the parts of a cut file: every part once, as large as it is broken out, and its sets."""

import pytest

from casewright.measure.json_files import CannotRead
from casewright.pieces.asked.shop import example_shop
from casewright.pieces.takeoff.cut_parts import cut_file_for
from casewright.pieces.takeoff.rough import take_off
from units import built, chest, dresser

STOCK = {"boards": [{"code": "B", "wood": "cherry", "class": "4/4", "length": "96", "width": "8"}]}


def parts_of(unit, stock=STOCK):
    shop = example_shop()
    return cut_file_for(unit, take_off(unit, shop), shop, stock)


BOOK = chest({"grain": {"top": "book-matched"}})


@pytest.mark.parametrize("data", [dresser(), chest(), chest({"count": 3}), BOOK])
def test_every_part_of_a_unit_is_cut_once(data):
    unit = built(data)

    file = parts_of(unit)

    halves = {part.code.removesuffix(" left").removesuffix(" right") for part in file.parts}
    assert halves == {code for line in unit.lines for code in line.codes}
    assert {part.count for part in file.parts} == {unit.spec.count}


def test_a_part_is_as_large_as_it_is_broken_out():
    """Finish + 1 in long, + 1/4 in wide: common practice."""
    unit = built(dresser())
    line = next(line for line in unit.lines if "A-R2-1-F" in line.codes)

    part = next(part for part in parts_of(unit).parts if part.code == line.codes[0])

    assert (part.length, part.width) == pytest.approx(
        (line.part.length + 1, line.part.width + 0.25), abs=1e-4
    )


def test_the_fronts_of_the_dresser_match_along_the_top_row_and_down_the_others():
    found = {each.way: each for each in parts_of(built(dresser())).sets}

    assert [len(row) for row in found["along"].rows] == [2]
    assert [len(row) for row in found["across"].rows] == [4]
    assert found["across"].glue_up is not None


def test_every_unit_of_several_has_its_own_sets():
    sets = parts_of(built(chest({"count": 2}))).sets

    assert len({each.name for each in sets}) == len(sets)
    assert len(sets) % 2 == 0


def test_halves_of_a_book_matched_top_are_sawn_from_one_thickness():
    sets = parts_of(built(BOOK)).sets

    (top,) = [each for each in sets if each.way == "book"]
    assert top.rows == (("A-T left", "A-T right"),)


def test_the_saw_of_the_stock_goes_before_the_shops():
    file = parts_of(built(chest()), {**STOCK, "saw": {"kerf": "3/32"}})

    assert (file.saw.kerf, file.saw.end_trim) == (3 / 32, 1)


def test_what_is_wrong_with_the_stock_is_named_by_its_field():
    with pytest.raises(CannotRead, match=r"boards\[1\].width"):
        parts_of(built(chest()), {"boards": [{**STOCK["boards"][0], "width": "wide"}]})
