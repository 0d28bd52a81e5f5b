"""The door: signing in and out, who may not, how often one may try, and text that outlives a sign-in."""

from concurrent.futures import ThreadPoolExecutor
from time import process_time
from urllib.parse import urljoin, urlsplit

import pytest
from sqlalchemy import update

from casewright.records.people import Person, Role
from casewright.records.sessions import writing
from casewright.shop.passwords import hash_password
from pages.visitor import ORIGIN, Shown, Visitor
from people import PASSWORD, ShopInTest

WRONG = "not the one at all"
AWAY = [
    "//evil.example",
    "///evil.example",
    "////evil.example//",
    "/\\evil.example",
    "\\\\evil.example",
    "\\/evil.example",
    "/\t/evil.example",
    "/\n/evil.example",
    "\t//evil.example",
    " //evil.example",
    "http://evil.example",
    "https:evil.example",
    "https:/evil.example",
    "HTTP://evil.example",
    "http:\\\\evil.example",
    "javascript:alert(1)",
    "data:text/html,x",
    "evil.example",
    "@evil.example",
    "http://shop.test@evil.example/",
    "http://shop.test.evil.example/",
    "/%5cevil.example",
    "/%09/evil.example",
    "/\u2028/evil.example",
]


def email_of(shop: ShopInTest, role: Role = Role.OWNER) -> str:
    return shop.people[role].email


def try_at(visitor: Visitor, email: str, password: str) -> Shown:
    """One try at the door, whatever comes of it."""
    data = {"email": email, "password": password, "next": "/account"}
    return visitor.seen_as(visitor.browser.post("/sign-in", data=data))


def fail(visitor: Visitor, email: str, times: int) -> list[int]:
    return [try_at(visitor, email, WRONG).status for _ in range(times)]


def test_somebody_signs_in_and_comes_to_where_they_wanted_to_go(shop, stranger):
    stranger.get("/account")

    page = stranger.send("/sign-in", email=email_of(shop).upper(), password=PASSWORD)

    assert page.address == "/account"
    assert "Ada Marsh, owner" in page.text


@pytest.mark.one_database
def test_a_wrong_password_is_refused_and_the_address_kept(shop, stranger):
    stranger.get("/sign-in")

    page = stranger.send("/sign-in", status=422, email=email_of(shop), password=WRONG)

    assert "The e-mail address or the password is not right." in page.text
    assert page.form("/sign-in").value("email") == email_of(shop)
    assert WRONG not in page.html


@pytest.mark.one_database
def test_unknown_addresses_are_answered_alike_and_as_slowly(shop, stranger):
    known, unknown = email_of(shop), "nobody@shop.test"
    with writing(shop.engine, shop.shop_id) as db:
        db.execute(update(Person).values(password_hash=hash_password(PASSWORD)))  # as a shop's people have it

    times = {known: [], unknown: []}
    pages = {}
    for _ in range(6):
        for email in (known, unknown):
            begun = process_time()  # of the processor: a busy machine is no fault
            pages[email] = try_at(stranger, email, WRONG).html.replace(email, "…")
            times[email].append(process_time() - begun)

    assert pages[known] == pages[unknown]
    assert min(times[known]) < 1.5 * min(times[unknown]) < 2.25 * min(times[known])


def test_after_eight_failures_the_door_stays_shut_for_a_while(shop, stranger, clock):
    assert fail(stranger, email_of(shop), 8) == [422] * 8

    page = try_at(stranger, email_of(shop), PASSWORD)
    elsewhere = try_at(Visitor(shop.app), email_of(shop), PASSWORD)
    clock.pass_by(minutes=15, seconds=1)
    later = try_at(stranger, email_of(shop), PASSWORD)

    assert (page.status, elsewhere.status, later.status) == (429, 429, 200)
    assert page.headers["retry-after"] == "900"
    assert "Too many tries. Wait 15 minutes" in page.text
    assert page.form("/sign-in").value("email") == email_of(shop)


def test_many_tries_at_once_do_not_slip_under_the_limit(shop):
    visitors = [Visitor(shop.app) for _ in range(20)]

    with ThreadPoolExecutor(20) as pool:
        statuses = list(pool.map(lambda each: try_at(each, email_of(shop), WRONG).status, visitors))

    assert sorted(statuses) == [422] * 8 + [429] * 12


@pytest.mark.one_database
def test_one_address_cannot_try_account_after_account(shop, stranger):
    statuses = [try_at(stranger, f"person{number}@shop.test", WRONG).status for number in range(31)]

    assert statuses == [422] * 30 + [429]


def test_strangers_who_guess_do_not_lock_a_person_out_of_their_own_device(shop, stranger):
    own = Visitor(shop.app)
    try_at(own, email_of(shop), PASSWORD)
    own.post("/sign-out")
    fail(stranger, email_of(shop), 8)

    assert try_at(stranger, email_of(shop), PASSWORD).status == 429
    assert try_at(own, email_of(shop), PASSWORD).status == 200


def test_a_known_device_cannot_guess_without_end_and_is_known_for_its_own_account_alone(shop):
    own = Visitor(shop.app)
    try_at(own, email_of(shop), PASSWORD)

    assert fail(own, email_of(shop), 9) == [422] * 8 + [429]
    assert fail(own, email_of(shop, Role.MAKER), 9) == [422] * 8 + [429]
    assert try_at(Visitor(shop.app), email_of(shop, Role.MAKER), PASSWORD).status == 429


def test_signing_out_ends_the_sign_in_on_the_server_too(maker):
    secret = maker.browser.cookies["casewright"]

    page = maker.post("/sign-out")

    assert "You are signed out." in page.text
    maker.browser.cookies.set("casewright", secret, domain="shop.test")
    assert maker.get("/account").address.startswith("/sign-in")


@pytest.mark.one_database
def test_the_browser_is_asked_to_forget_what_it_kept(maker):
    answer = maker.browser.post("/sign-out", follow_redirects=False)

    assert answer.headers["clear-site-data"] == '"cache", "storage"'


def test_a_sign_in_ends_after_a_week_without_use(maker, clock):
    clock.pass_by(days=6)
    assert maker.get("/account").address == "/account"
    clock.pass_by(days=6)
    assert maker.get("/account").address == "/account"

    clock.pass_by(days=7, seconds=1)

    assert maker.get("/account").address.startswith("/sign-in")


def test_a_sign_in_ends_after_a_month_in_any_case(maker, clock):
    for _ in range(5):
        clock.pass_by(days=6)
        maker.get("/account")

    assert maker.page.address.startswith("/sign-in")


def test_a_planted_secret_is_never_taken_over(shop, stranger):
    planted = f"{shop.shop_id}.{'A' * 43}"
    stranger.browser.cookies.set("casewright", planted, domain="shop.test")

    try_at(stranger, email_of(shop), PASSWORD)

    assert planted not in {cookie.value for cookie in stranger.browser.cookies.jar}
    assert stranger.get("/account").address == "/account"


def test_signing_in_again_ends_what_this_browser_had_before(shop):
    visitor = shop.visitor(Role.OWNER)
    before = visitor.browser.cookies["casewright"]

    visitor.browser.cookies.set("casewright", before, domain="shop.test", path="/")
    try_at(visitor, email_of(shop), PASSWORD)

    old = Visitor(shop.app)
    old.browser.cookies.set("casewright", before, domain="shop.test")
    assert old.get("/account").address.startswith("/sign-in")


@pytest.mark.one_database
@pytest.mark.parametrize("following", AWAY)
def test_signing_in_never_leads_to_another_site(shop, stranger, following):
    data = {"email": email_of(shop), "password": PASSWORD, "next": following}

    answer = stranger.browser.post("/sign-in", data=data, follow_redirects=False)

    assert answer.status_code == 303
    assert urlsplit(urljoin(ORIGIN, answer.headers["location"])).netloc == "shop.test"


@pytest.mark.one_database
@pytest.mark.parametrize("following", AWAY)
def test_the_door_itself_names_no_other_site(stranger, following):
    page = stranger.seen_as(stranger.browser.get("/sign-in", params={"next": following}))

    named = page.form("/sign-in").value("next")
    assert named == "" or urlsplit(urljoin(ORIGIN, named)).netloc == "shop.test"


@pytest.mark.one_database
def test_what_was_typed_outlives_the_sign_in_and_can_be_sent(shop, maker):
    note = "\nTwo stairs up.\n  Narrow turn – measure it."
    maker.get("/customers/new")
    fields = dict(maker.page.form("/customers").sent()) | {"name": "Ada & Tom", "note": note}
    maker.post("/sign-out")

    door = maker.post("/customers", status=401, **fields)
    signed_in = maker.send("/sign-in", email=email_of(shop, Role.MAKER), password=PASSWORD)
    made = maker.send("/customers")

    assert "What you typed is kept" in door.text
    assert "You are signed in" in signed_in.text
    assert signed_in.form("/customers").value("note") == note
    assert "Ada &amp; Tom" in made.html
    assert "1 customer" in maker.get("/customers").text


@pytest.mark.one_database
def test_what_was_typed_outlives_a_slip_at_the_door_as_well(shop, maker):
    maker.post("/sign-out")
    maker.post("/customers", status=401, name="Ada Marsh", note="Likes ash.")

    maker.send("/sign-in", status=422, email=email_of(shop, Role.MAKER), password=WRONG)
    kept = maker.send("/sign-in", email=email_of(shop, Role.MAKER), password=PASSWORD)

    assert kept.form("/customers").value("note") == "Likes ash."


def test_a_typed_password_is_not_kept_on_the_way(maker):
    maker.post("/sign-out")

    page = maker.post("/account/password", status=401, password_now=PASSWORD, password=WRONG)

    assert PASSWORD not in page.html
    assert WRONG not in page.html
