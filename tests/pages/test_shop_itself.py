"""The shop itself: what stands on a quote, and what is still made up."""

import json
from datetime import timedelta

import pytest

from casewright.app import create_app, guarded
from casewright.records.people import Shop
from casewright.records.sessions import writing
from casewright.shop.last_backup import NOTE
from people import START, new_shop


def test_what_the_shop_says_of_itself_is_kept(owner):
    owner.get("/shop")

    page = owner.send(
        "/shop", address="3 Marrow Street\nHudson", phone="518 555 0147", currency="EUR", tax="7,5", unit="mm"
    )

    form = page.form("/shop")
    assert form.value("address") == "3 Marrow Street\nHudson"
    assert form.value("tax") == "7.5"
    assert form.value("unit") == "mm"


@pytest.mark.parametrize(
    ("name", "typed", "sentence"),
    [
        ("email", "ada at home", "“ada at home” is not an e-mail address"),
        ("quote_days", "soon", "Write a whole number"),
        ("tax", "a lot", "Write a number such as 6.25"),
        ("name", "", "as it should stand on a quote"),
    ],
)
def test_a_fault_stands_beside_its_field_and_the_text_is_kept(owner, name, typed, sentence):
    owner.get("/shop")

    page = owner.send("/shop", status=422, **{name: typed, "address": "3 Marrow Street"})

    assert sentence in page.text
    assert page.form("/shop").value(name) == typed
    assert page.form("/shop").value("address") == "3 Marrow Street"
    assert page.seen.title.startswith("Error: ")


def test_a_shop_keeps_a_currency_that_no_new_shop_is_offered(shop, owner):
    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Shop, shop.shop_id)
        held.currency, held.symbol = "JPY", "¥"

    page = owner.get("/shop")
    assert page.form("/shop").value("currency") == "JPY"
    page = owner.send("/shop", phone="518 555 0147")

    with writing(shop.engine, shop.shop_id) as db:
        held = db.get_one(Shop, shop.shop_id)
        assert (held.currency, held.symbol, held.phone) == ("JPY", "¥", "518 555 0147")
    owner.send("/shop", currency="EUR")
    assert "JPY" not in owner.get("/shop").html


def test_of_two_who_save_at_once_the_second_sees_both(shop, owner):
    other = shop.visitor()
    owner.get("/shop")
    other.get("/shop")
    other.send("/shop", phone="518 555 0147", address="3 Marrow Street")

    page = owner.send("/shop", status=409, phone="518 555 0199")

    assert "Theirs: 518 555 0147" in page.text
    assert page.form("/shop").value("phone") == "518 555 0199"
    assert page.form("/shop").value("address") == "3 Marrow Street"
    assert owner.send("/shop").form("/shop").value("phone") == "518 555 0199"


def test_two_who_change_different_things_both_have_their_way(shop, owner):
    other = shop.visitor()
    owner.get("/shop")
    other.get("/shop")
    other.send("/shop", phone="518 555 0147")

    page = owner.send("/shop", quote_days="45")

    assert page.form("/shop").value("phone") == "518 555 0147"
    assert page.form("/shop").value("quote_days") == "45"


def test_the_page_says_what_is_still_made_up(owner):
    page = owner.get("/shop")

    assert "9 of 9 yearly costs are made up" in page.text
    assert "prices are examples" in page.text
    assert "Until then a price is not yours." in page.text


def test_the_usual_terms_may_be_taken_as_a_start(owner):
    page = owner.get("/shop?terms=usual")

    kept = page.form("/shop").value("terms")
    owner.send("/shop", terms=kept.replace("14 days", "30 days"))

    assert "kept without charge for 30 days" in owner.get("/shop").form("/shop").value("terms")


def test_only_the_owner_comes_in(maker):
    page = maker.get("/shop", status=403)

    assert "This page is for the owner of the shop." in page.text


@pytest.fixture
def backed_up(books, clock, tmp_path):
    """Gives the owner's page of a service whose note of the last backup says this."""
    app = guarded(
        create_app(books, secret=b"a key for tests, and for nothing else", data=tmp_path, clock=clock)
    )
    clock.now = START
    owner = new_shop(app, books, clock).visitor()

    def page(**said):
        said |= {name: each.isoformat() for name, each in said.items() if name.endswith("at")}
        (tmp_path / NOTE).write_text(json.dumps({"file": "/backups/of-a-place.zip", **said}))
        shown = owner.get("/shop")
        assert "of-a-place" not in shown.html
        return shown

    return page


def test_the_last_backup_is_shown_quietly_with_how_it_was_checked(backed_up):
    at = START - timedelta(hours=13)

    untried = backed_up(at=at)
    tried = backed_up(at=at, tried_at=at + timedelta(minutes=5), is_good=True)

    assert "Last backup: 28 Feb 2027, 21:00 (not tried yet: casewright verify-backup FILE )" in untried.text
    assert "Last backup: 28 Feb 2027, 21:00 (restored aside and found whole 28 Feb 2027, 21:05)" in tried.text
    assert "note caution" not in untried.html + tried.html


@pytest.mark.parametrize(
    ("said", "caution"),
    [
        ({"at": START - timedelta(hours=49)}, "more than 48 hours old. It shows 27 Feb 2027, 09:00."),
        (
            {"at": START - timedelta(hours=9), "tried_at": START - timedelta(hours=8), "is_good": False},
            "The last backup, of 1 Mar 2027, 01:00, cannot be restored. That was found 1 Mar 2027, 02:00.",
        ),
        ({}, "No backup of the books is known."),
    ],
)
def test_a_backup_that_cannot_be_relied_on_is_a_caution_with_what_to_do(backed_up, said, caution):
    page = backed_up(**said)

    assert caution in page.text.replace(" .", ".")
    assert "./run backup FILE" in page.text
    assert "note caution" in page.html
    assert "Last backup:" not in page.text
