"""One address and one password in several shops: the door asks which is meant."""

import re

import pytest

from casewright.records.people import Person, Role
from casewright.records.sessions import writing
from casewright.shop.passwords import hash_password
from pages.visitor import Shown, Visitor
from people import PASSWORD, ShopInTest, new_shop

OTHER_PASSWORD = "shavings under the bench"  # noqa: S105 - of people who do not exist


@pytest.fixture
def both(shop: ShopInTest) -> dict[str, ShopInTest]:
    """Two shops: the owner of one is a maker in the other, with the same address and password."""
    other = new_shop(shop.app, shop.engine, shop.clock, name="alder Lane Joinery")
    change(other, Role.MAKER, email=shop.people[Role.OWNER].email)
    return {"Marrow Street Furniture": shop, "alder Lane Joinery": other}


def change(shop: ShopInTest, role: Role, **facts: object) -> None:
    """Changes a person's row."""
    with writing(shop.engine, shop.shop_id) as db:
        person = db.get_one(Person, (shop.shop_id, shop.people[role].id))
        for name, value in facts.items():
            setattr(person, name, value)


def email_of(both: dict[str, ShopInTest]) -> str:
    return both["Marrow Street Furniture"].people[Role.OWNER].email


def knock(visitor: Visitor, both: dict[str, ShopInTest], password: str = PASSWORD) -> Shown:
    """Signs in at the door, on the way to the account."""
    visitor.get("/account")
    return visitor.send("/sign-in", email=email_of(both), password=password)


def offers(page: Shown) -> dict[str, str]:
    """What the page offers, in its order: the mark by the words of the button."""
    found = re.findall(r'<button name="shop" value="([^"]+)" aria-label="Go in: ([^"]+)"', page.html)
    return {words: mark for mark, words in found}


def go_in(visitor: Visitor, page: Shown, words: str, status: int = 200) -> Shown:
    """Presses the button of a shop, as a browser without script does."""
    fields = dict(page.form("/sign-in/shop").sent())
    return visitor.post("/sign-in/shop", status, **fields, shop=offers(page)[words])


def test_the_door_asks_which_shop_in_the_order_of_their_names(both, stranger):
    page = knock(stranger, both)

    assert page.seen.headings == ["Which shop?"]
    assert list(offers(page)) == ["alder Lane Joinery, as maker", "Marrow Street Furniture, as owner"]
    assert page.address == "/sign-in"
    assert "casewright" not in stranger.browser.cookies


@pytest.mark.parametrize(
    ("words", "name", "told"),
    [
        ("alder Lane Joinery, as maker", "alder Lane Joinery", "Ben Tull, maker"),
        ("Marrow Street Furniture, as owner", "Marrow Street Furniture", "Ada Marsh, owner"),
    ],
)
def test_the_chosen_shop_opens_and_leads_on(both, stranger, words, name, told):
    page = go_in(stranger, knock(stranger, both), words)

    assert page.address == "/account"
    assert told in page.text
    assert name in page.seen.title


def test_what_was_typed_outlives_the_choice(both, stranger):
    stranger.post("/customers", status=401, name="Tom & Ada", note="Likes ash.\n  Two stairs up.")
    page = stranger.send("/sign-in", email=email_of(both), password=PASSWORD)

    kept = go_in(stranger, page, "alder Lane Joinery, as maker")

    assert "You are signed in" in kept.text
    assert kept.form("/customers").value("note") == "Likes ash.\n  Two stairs up."


def test_a_password_of_one_shop_opens_that_one_unasked(both, stranger):
    change(both["alder Lane Joinery"], Role.MAKER, password_hash=hash_password(OTHER_PASSWORD))

    assert "Ben Tull, maker" in knock(stranger, both, OTHER_PASSWORD).text
    assert "Ada Marsh, owner" in knock(Visitor(both["alder Lane Joinery"].app), both).text


def test_a_shop_that_somebody_has_left_is_not_offered(both, stranger, clock):
    change(both["alder Lane Joinery"], Role.MAKER, ended_at=clock.now)

    assert "Ada Marsh, owner" in knock(stranger, both).text


def forged(both: dict[str, ShopInTest], mark: str) -> list[str]:
    """Marks that this service never made: of another person or a later end, cut short, or no marks at all."""
    shop_id, person_id, until, proof = mark.split(".")
    boss = both["alder Lane Joinery"].people[Role.OWNER]
    stranger = both["Marrow Street Furniture"].people[Role.BENCH]
    return [
        f"{boss.shop_id}.{boss.id}.{until}.{proof}",
        f"{stranger.shop_id}.{stranger.id}.{until}.{proof}",
        f"{shop_id}.{person_id}.{int(until) + 1}.{proof}",
        f"{shop_id}.{person_id}.{until}.{proof[:-1]}",
        f"{shop_id}.{person_id}.{until}.",
        f"{shop_id}.{person_id}.x.é",
        f"{shop_id}.{person_id}",
        shop_id,
        "",
    ]


def test_a_forged_choice_opens_nothing(both, stranger):
    marks = offers(knock(stranger, both))

    for mark in forged(both, marks["alder Lane Joinery, as maker"]):
        page = stranger.post("/sign-in/shop", 422, shop=mark)
        assert "The choice of a shop has run out. Sign in once more." in page.text
    assert stranger.get("/account").address.startswith("/sign-in")


def test_a_choice_holds_for_ten_minutes(both, stranger, clock):
    page = knock(stranger, both)
    clock.pass_by(minutes=10)

    door = go_in(stranger, page, "alder Lane Joinery, as maker", 422)

    assert "The choice of a shop has run out." in door.text
    assert door.form("/sign-in").value("next") == "/account"


@pytest.mark.parametrize("what", ["password", "end"])
def test_a_choice_ends_with_the_password_and_the_membership(both, stranger, clock, what):
    page = knock(stranger, both)
    facts = {"password": {"password_hash": hash_password(OTHER_PASSWORD)}, "end": {"ended_at": clock.now}}
    change(both["alder Lane Joinery"], Role.MAKER, **facts[what])

    go_in(stranger, page, "alder Lane Joinery, as maker", 422)
    assert "Ada Marsh, owner" in go_in(stranger, page, "Marrow Street Furniture, as owner").text


def test_the_choice_leads_to_no_other_site(both, stranger):
    page = knock(stranger, both)
    fields = {"shop": offers(page)["alder Lane Joinery, as maker"], "next": "//evil.example"}

    answer = stranger.browser.post("/sign-in/shop", data=fields, follow_redirects=False)

    assert (answer.status_code, answer.headers["location"]) == (303, "/")
