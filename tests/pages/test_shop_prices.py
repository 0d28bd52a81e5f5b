"""The price book: putting one's own prices in, finding them, and knowing how old they are."""

import pytest

from casewright.pricing.prices import example_prices

EVERY = len(example_prices().rows)
"""Prices of the example book."""
CHERRY = "price.lumber_cherry_4~2f~4"
CHERRY_DAY = "on.lumber_cherry_4~2f~4"
CHERRY_BACK = "back.lumber_cherry_4~2f~4"
ADDRESS = "/shop/prices"


def test_every_price_says_that_it_is_an_example_until_the_shop_has_its_own(owner):
    page = owner.get(ADDRESS)

    assert f"{EVERY} of {EVERY} prices are examples." in page.text
    assert page.form().value(CHERRY) == "9.50"


def test_a_changed_price_is_the_shops_own_from_that_day(owner):
    owner.get(ADDRESS)

    page = owner.send("", **{CHERRY: "10,75"})

    assert page.form().value(CHERRY) == "10.75"
    assert page.form().value(CHERRY_DAY) == "2027-03-01"
    assert "your own since 1 Mar 2027; example $9.50" in page.text
    assert f"{EVERY - 1} of {EVERY} prices are examples." in page.text


def test_an_example_is_confirmed_by_its_day(owner):
    owner.get(ADDRESS)

    page = owner.send("", **{CHERRY_DAY: "2027-02-15"})

    assert "your own since 15 Feb 2027" in page.text
    assert page.form().value(CHERRY) == "9.50"


def test_a_price_goes_back_to_the_example(owner):
    owner.get(ADDRESS)
    owner.send("", **{CHERRY: "10.75"})

    page = owner.send("", **{CHERRY_BACK: "1"})

    assert page.form().value(CHERRY) == "9.50"
    assert f"{EVERY} of {EVERY} prices are examples." in page.text


@pytest.mark.parametrize(("days", "marked"), [(90, False), (91, True)])
def test_a_price_older_than_ninety_days_is_marked(shop, owner, clock, days, marked):
    owner.get(ADDRESS)
    owner.send("", **{CHERRY: "10.75"})

    clock.pass_by(days=days)
    page = shop.visitor().get(f"{ADDRESS}?kind=lumber")

    assert (f"{days} days old" in page.text) is marked


def test_old_prices_are_found_together(shop, owner, clock):
    owner.get(ADDRESS)
    owner.send("", **{CHERRY: "10.75"})

    clock.pass_by(days=120)
    page = shop.visitor().get(f"{ADDRESS}?standing=old")

    assert f"1 of {EVERY} prices stand on this page" in page.text


def test_a_wood_is_added_under_the_name_by_which_estimates_ask_for_it(owner):
    owner.get(ADDRESS)

    page = owner.send(
        "", new__item="Black Cherry", new__size="12/4", new__price="14.25", new__on="2027-02-20"
    )

    assert page.form().value("price.lumber_cherry_12~2f~4") == "14.25"
    assert "your own since 20 Feb 2027" in page.text


def test_hardware_is_added_and_taken_out(owner):
    owner.get(ADDRESS)
    owner.send("", new__kind="hardware", new__item="brass knob, 1 in", new__price="18")
    mark = "hardware_brass-knob~2c~-1-in_"

    page = owner.send("", **{f"back.{mark}": "1"})

    assert "brass knob, 1 in" not in page.text.replace("Cherry, knob …", "")
    assert f"{EVERY} of {EVERY} prices" in page.text


def test_prices_are_found_by_kind_and_words_and_the_others_stay(owner):
    owner.get(ADDRESS)
    owner.send("", **{CHERRY: "10.75"})
    page = owner.get(f"{ADDRESS}?kind=hardware&q=knob")
    fields = [name for name, _ in page.form().sent() if name.startswith("price.")]

    owner.send("", **{"price.hardware_knob_": "11"})

    assert fields == ["price.hardware_knob_"]
    page = owner.get(ADDRESS)
    assert page.form().value(CHERRY) == "10.75"
    assert page.form().value("price.hardware_knob_") == "11.00"


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        (CHERRY, "cheap", "Write an amount such as 1,250.00"),
        (CHERRY_DAY, "last week", "“last week” is not a day. Write it as 2027-03-01."),
        (CHERRY_DAY, "2027-03-02", "2027-03-02 is still to come"),
    ],
)
def test_a_fault_stands_beside_its_price_and_the_rest_is_kept(owner, name, typed, words):
    owner.get(ADDRESS)

    page = owner.send("", status=422, **{name: typed, "price.hardware_knob_": "11"})

    assert words in page.text
    assert page.form().value(name) == typed
    assert page.form().value("price.hardware_knob_") == "11"
    assert f'id="{name.replace(".", "-")}-fault"' in page.html


@pytest.mark.one_database
@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ({"new.item": "chery", "new.size": "4/4", "new.price": "9"}, "is not a wood in the table"),
        ({"new.item": "beech", "new.size": "thick", "new.price": "9"}, "is not a thickness class"),
        (
            {"new.item": "cherry", "new.size": "4/4 figured", "new.price": "9"},
            "Write 4/4 alone for boards as they come, or 4/4 quartersawn or rift-sawn.",
        ),
        (
            {"new.item": "cherry", "new.size": "4/4", "new.price": "9"},
            "There is a price of cherry 4/4 already",
        ),
        ({"new.size": "4/4", "new.price": "9"}, "Say what it is a price of"),
        ({"new.item": "beech", "new.size": "4/4"}, "Write an amount"),
    ],
)
def test_what_cannot_be_added_says_why(owner, typed, words):
    owner.get(ADDRESS)

    page = owner.send("", status=422, **typed)

    assert words in page.text
    assert {name: page.form().value(name) for name in typed} == typed


def test_two_owners_who_price_different_woods_both_have_their_way(shop, owner):
    other = shop.visitor()
    owner.get(ADDRESS)
    other.get(ADDRESS)
    other.send("", **{"price.hardware_knob_": "11"})

    page = owner.send("", **{CHERRY: "10.75"})

    assert page.form().value("price.hardware_knob_") == "11.00"
    assert page.form().value(CHERRY) == "10.75"


def test_two_owners_who_price_the_same_wood_see_both_prices(shop, owner):
    other = shop.visitor()
    owner.get(ADDRESS)
    other.get(ADDRESS)
    other.send("", **{CHERRY: "10.25"})

    page = owner.send("", status=409, **{CHERRY: "10.75"})

    assert "Theirs: 10.25" in page.text
    assert page.form().value(CHERRY) == "10.75"
    assert owner.send().form().value(CHERRY) == "10.75"
