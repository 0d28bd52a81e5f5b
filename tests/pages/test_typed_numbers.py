"""Numbers and amounts as people type them: thousands set apart, a comma for the point."""

import pytest

from casewright.web.frame.typed import Reader, Typed, read_money


def reader(typed):
    """Reads a form of one field."""
    return Reader(Typed((("miles", typed),)))


@pytest.mark.parametrize(
    ("typed", "number"),
    [
        ("1,200", 1200),
        ("1,200.5", 1200.5),
        ("1,234,567", 1_234_567),
        ("1 200", 1200),
        ("1\u00a0200.25", 1200.25),
        ("1,5", 1.5),
        ("12,25", 12.25),
        ("0,125", 0.125),
        (",5", 0.5),
        ("-1,5", -1.5),
        ("1200", 1200),
    ],
)
def test_a_number_is_read_as_people_write_it(typed, number):
    read = reader(typed)

    assert read.number("miles", least=-10, most=10_000_000, example="60") == number
    assert read.faults == {}


@pytest.mark.parametrize("typed", ["1.200,5", "1,20,0", "1,2345,678", "1 5", "one", "1,200,5", ","])
def test_what_could_be_no_number_is_refused_and_named_as_it_was_typed(typed):
    read = reader(typed)

    read.number("miles", least=0, most=10_000_000, example="60")

    assert read.faults == {"miles": f"“{typed}” cannot be used here. Write a number such as 60."}


@pytest.mark.parametrize("typed", ["1,200", "1 200", "1200"])
def test_a_whole_number_may_have_its_thousands_set_apart(typed):
    read = reader(typed)

    assert read.whole("miles", least=1, most=10_000) == 1200
    assert read.faults == {}


def test_a_whole_number_has_no_decimals():
    read = reader("1,5")

    read.whole("miles", least=1, most=10)

    assert "“1,5” cannot be used here. Write a whole number" in read.faults["miles"]


@pytest.mark.parametrize(
    ("typed", "cents"),
    [
        ("1,200", 120_000),
        ("1,250.50", 125_050),
        ("$1,250", 125_000),
        ("1 250,50", 125_050),
        ("1,5", 150),
        ("0,50", 50),
        ("1.200,50", None),
        ("0,125", None),
    ],
)
def test_an_amount_is_read_by_the_same_rule(typed, cents):
    assert read_money(typed) == cents


def test_twelve_hundred_miles_are_not_read_as_one_and_a_bit(owner):
    owner.get("/shop/rate")

    page = owner.send("/shop/rate", miles="1,200")

    assert page.form("/shop/rate").value("miles") == "1200"
