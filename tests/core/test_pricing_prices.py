"""The price book, material lines, and consumables in one way only."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.pricing.materials import direct_amount, line_amount, material_line, with_consumables
from casewright.pricing.prices import (
    NoPrice,
    PriceBook,
    PriceKind,
    PriceRow,
    example_prices,
    price_book,
    price_row,
)

CHERRY = {"kind": "lumber", "item": "cherry", "size": "4/4", "unit": "bd ft", "price": "9.50"}


@pytest.mark.parametrize("row", example_prices().rows, ids=lambda row: f"{row.item} {row.size}")
def test_every_example_price_says_that_it_is_one(row):
    assert row.source == "example"
    assert "your own" in row.basis
    assert row.on is not None


@pytest.mark.parametrize("thickness", ["4/4", "5/4", "6/4", "8/4"])
@pytest.mark.parametrize(
    "wood",
    [
        "cherry",
        "walnut",
        "poplar",
        "soft maple",
        "hard maple",
        "white oak",
        "red oak",
        "white ash",
        "white pine",
    ],
)
def test_every_usual_wood_has_an_example_price_in_every_class(wood, thickness):
    row = example_prices().lumber(wood, thickness)

    assert row.price > 0
    assert row.unit == "bd ft"


def test_a_name_is_found_however_it_is_written():
    book = example_prices()

    assert book.lumber("Soft_Maple", " 4/4") is book.lumber("soft maple", "4/4")


def test_a_missing_price_names_what_is_missing_and_where_to_put_it():
    with pytest.raises(NoPrice) as refused:
        example_prices().lumber("ebony", "4/4")

    assert refused.value.message == (
        "There is no price for ebony 4/4 (lumber). Add a row to the price file with "
        'kind "lumber", item "ebony" and size "4/4", its unit, price and day.'
    )


def test_the_shops_own_price_takes_the_place_of_the_example():
    own = price_row(CHERRY | {"price": "10.25", "on": "2026-02-01", "source": "the yard"})

    book = example_prices().changed(own)

    assert book.lumber("cherry", "4/4").price == 1025
    assert len(book.rows) == len(example_prices().rows)


def test_a_thing_priced_twice_is_refused():
    with pytest.raises(ValueError, match="Priced twice: lumber cherry 4/4"):
        price_book({"prices": [CHERRY, CHERRY | {"item": "Cherry"}]})


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"price": "nine"}, "“nine” is not a number for the price of cherry"),
        ({"price": "NaN"}, "not a number"),
        ({"price": "-1"}, "below zero"),
        ({"kind": "wood"}, "“wood” is no kind of price"),
        ({"unit": ""}, "lacks its unit"),
        ({"on": "1/5/26"}, "“1/5/26” is not a day"),
    ],
)
def test_a_price_row_that_cannot_be_read_is_refused_with_a_sentence(change, message):
    with pytest.raises(ValueError, match=message):
        price_row(CHERRY | change)


def test_a_price_file_without_prices_is_refused():
    with pytest.raises(ValueError, match="holds no prices"):
        price_book({})


def test_a_price_without_a_unit_is_refused():
    with pytest.raises(ValueError, match="names what it is for and the unit"):
        PriceRow(kind=PriceKind.LUMBER, item="cherry", unit=" ", price=950)


def test_a_material_line_keeps_who_quoted_its_price_and_when():
    row = replace(price_row(CHERRY), source="the yard", on=date(2026, 2, 1))

    line = material_line(row, 39)

    assert (line.label, line.amount, line.source) == ("cherry 4/4", 37_050, "the yard, 2026-02-01")


@given(st.integers(0, 10**6), st.integers(0, 10**6))
def test_a_whole_number_of_things_costs_just_so_many_prices(price, quantity):
    assert line_amount(price, quantity) == price * quantity


def test_half_a_cent_goes_up():
    assert line_amount(5, 0.1) == 1


def test_less_than_nothing_cannot_be_bought():
    with pytest.raises(ValueError, match="less than nothing"):
        line_amount(100, -1)


def consumable_and_lumber():
    book = example_prices()
    return (
        material_line(book.lumber("cherry", "4/4"), 10),
        material_line(book.find(PriceKind.CONSUMABLE, "glue"), 1),
    )


def test_consumables_both_itemised_and_as_a_share_are_refused():
    with pytest.raises(ValueError, match=r"Consumables are itemised \(glue\) and also charged as 5%"):
        with_consumables(consumable_and_lumber(), 0.05)


def test_itemised_consumables_stay_as_they_are():
    lines = consumable_and_lumber()

    assert with_consumables(lines, 0) == lines


def test_consumables_as_a_share_become_a_line():
    lines = consumable_and_lumber()[:1]

    charged = with_consumables(lines, 0.05)

    assert direct_amount(charged) == 9500 + 475


def test_a_share_below_zero_is_refused():
    with pytest.raises(ValueError, match="0 or more"):
        with_consumables((), -0.05)


def test_an_empty_book_has_no_price_for_anything():
    with pytest.raises(NoPrice, match="no price for pull"):
        PriceBook(rows=()).find(PriceKind.HARDWARE, "pull")


def test_quartersawn_boards_have_a_price_of_their_own_where_the_yard_was_asked():
    own = price_row(CHERRY | {"size": "4/4 Quartersawn", "price": "12.40"})

    book = example_prices().changed(own)

    assert book.lumber("cherry", "4/4 quartersawn").price == 1240
    assert book.lumber("cherry", "4/4").price == 950
    assert book.lumber("cherry", "4/4 rift-sawn").price == 950


def test_a_cut_of_a_wood_without_a_price_names_the_class_to_put_in():
    with pytest.raises(NoPrice, match='size "4/4"'):
        example_prices().lumber("ebony", "4/4 quartersawn")
