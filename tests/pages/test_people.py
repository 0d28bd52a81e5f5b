"""The people of a shop: inviting, roles, new passwords, leaving; and everybody's own account."""

import re
from concurrent.futures import ThreadPoolExecutor

import pytest
from sqlalchemy import update

from casewright.records.people import KeyLink, Role
from casewright.records.sessions import across_shops, writing
from casewright.shop.entering import keep_signed_in
from casewright.shop.links import invite, offer_new_password
from pages.visitor import Shown, Visitor
from people import PASSWORD, ShopInTest

NEW = "shavings under the bench"


def link_on(page: Shown) -> str:
    """The path of the link that a page shows."""
    return re.search(r'value="https?://[^/"]+(/[^"]+)"', page.html).group(1)


def come_in(visitor: Visitor, link: str, name: str, email: str) -> Shown:
    """Uses an invitation, and looks at the account that comes of it."""
    visitor.get(link)
    fields = {"name": name, "email": email, "password": NEW}
    answer = visitor.browser.post(link, data=fields, follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (303, "/")
    return visitor.get("/account")


def page_of(shop: ShopInTest, role: Role) -> str:
    return f"/shop/people/{shop.people[role].id}"


def test_the_owner_sees_who_works_here(owner):
    page = owner.get("/shop/people")

    assert "Ada Marsh Owner" in page.text
    assert "Cy Roper Bench" in page.text


def test_an_invitation_lets_one_person_in_with_its_role(owner, stranger):
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations", role="bench"))

    account = come_in(stranger, link, "Dot Hale", "dot@shop.test")

    assert "Dot Hale, bench" in account.text
    assert "Dot Hale Bench" in owner.get("/shop/people").text
    assert "None. A link that you make" in owner.page.text


def test_an_invitation_is_shown_once(owner):
    form = owner.get("/shop/people").form("/shop/people/invitations")
    fields = dict(form.sent())
    owner.post("/shop/people/invitations", **fields)

    again = owner.post("/shop/people/invitations", **fields)

    assert "/invitation/" not in again.html.replace("/people/invitations", "")
    assert again.html.count('/end"') == 1


def test_an_invitation_that_was_ended_opens_nothing(owner, stranger):
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations"))
    owner.get("/shop/people")
    owner.send(re.search(r"/shop/people/invitations/\w+/end", owner.page.html).group())

    page = stranger.get(link, status=404)

    assert "This link has been used, or it has run out." in page.text


def test_an_invitation_runs_out_after_a_week(owner, stranger, clock):
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations"))
    clock.pass_by(days=7, seconds=1)

    stranger.get(link, status=404)


def test_an_address_that_is_taken_is_refused_and_the_invitation_stays_good(owner, stranger, shop):
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations"))
    stranger.get(link)

    page = stranger.send(status=422, name="Dot Hale", email=shop.people[Role.MAKER].email, password=NEW)

    assert "Somebody in this shop has this e-mail address already." in page.text
    assert page.form().value("name") == "Dot Hale"
    assert "Dot Hale, maker" in come_in(stranger, link, "Dot Hale", "dot@shop.test").text


def test_a_link_to_a_new_password_works_once_and_ends_every_sign_in(owner, maker, shop, stranger):
    owner.get(page_of(shop, Role.MAKER))
    link = link_on(owner.send(f"{page_of(shop, Role.MAKER)}/password"))

    stranger.get(link)
    done = stranger.send(password=NEW)

    assert "The new password is set. Sign in with it." in done.text
    assert maker.get("/account").address.startswith("/sign-in")
    stranger.get(link, status=404)


def test_a_second_link_ends_the_first(owner, shop, stranger):
    address = f"{page_of(shop, Role.MAKER)}/password"
    owner.get(page_of(shop, Role.MAKER))
    first = link_on(owner.send(address))
    owner.get(page_of(shop, Role.MAKER))
    second = link_on(owner.send(address))

    stranger.get(first, status=404)
    stranger.get(second)


def good_links(shop: ShopInTest) -> dict[str, str]:
    """A good link of each kind, by where it leads."""
    with writing(shop.engine, shop.shop_id) as db:
        invited = invite(db, shop.people[Role.OWNER], Role.BENCH, shop.clock.now)
        reset = offer_new_password(db, shop.people[Role.MAKER], shop.people[Role.OWNER], shop.clock.now)
    return {"invitation": f"/invitation/{invited}", "password": f"/password/{reset}"}


def wrong(link: str) -> str:
    """A link that differs from a good one in its last sign."""
    return link[:-1] + ("-" if link.endswith("_") else "_")


def try_links(visitor: Visitor, link: str, methods: list[str]) -> list[int]:
    """The answers to wrong links, each tried once."""
    tried = enumerate(methods)
    return [
        visitor.browser.request(method, f"{link[:-4]}{number:04d}").status_code for number, method in tried
    ]


@pytest.mark.one_database
@pytest.mark.parametrize("kind", ["invitation", "password"])
@pytest.mark.parametrize("methods", [["GET"], ["POST"], ["GET", "POST"]], ids=" and ".join)
def test_who_tries_links_is_made_to_wait_and_good_links_are_not(shop, stranger, clock, kind, methods):
    link = good_links(shop)[kind]

    statuses = try_links(stranger, link, (methods * 40)[:40])

    assert statuses == [404] * 30 + [429] * 10
    stranger.get(link)
    stranger.post(link, name="Dot Hale", email="dot@shop.test", password=NEW)
    clock.pass_by(minutes=15, seconds=1)
    assert try_links(stranger, link, methods) == [404] * len(methods)


@pytest.mark.one_database
@pytest.mark.parametrize("method", ["get", "post"])
def test_over_the_limit_wrong_links_get_the_page_that_wrong_quote_links_get(shop, stranger, method):
    link = good_links(shop)["password"]
    try_links(stranger, link, ["GET"] * 30)
    for number in range(30):
        stranger.browser.get(f"/quote/{shop.shop_id}.{'a' * 39}{number:04d}")

    page = getattr(stranger, method)(wrong(link), status=429)
    of_quotes = stranger.get(f"/quote/{shop.shop_id}.{'b' * 43}", status=429)

    assert page.headers["retry-after"] == "900"
    assert page.seen.headings == of_quotes.seen.headings == ["Too many tries"]
    assert "Too many tries. Wait 15 minutes, then try again." in page.text
    assert "Wait 15 minutes" in of_quotes.text


def test_wrong_links_from_one_address_keep_nobody_else_waiting(shop, stranger):
    link = good_links(shop)["invitation"]
    try_links(stranger, link, ["POST"] * 31)

    Visitor(shop.app).get(wrong(link), status=404)


@pytest.mark.parametrize("method", ["GET", "POST"])
def test_many_wrong_links_at_once_do_not_slip_under_the_limit(shop, stranger, method):
    link = good_links(shop)["invitation"]

    with ThreadPoolExecutor(20) as pool:
        statuses = list(pool.map(lambda _: try_links(stranger, link, [method])[0], range(40)))

    assert sorted(statuses) == [404] * 30 + [429] * 10


def test_a_new_role_holds_from_the_next_sign_in(owner, bench, shop):
    owner.get(page_of(shop, Role.BENCH))

    owner.send(f"{page_of(shop, Role.BENCH)}/role", role="maker")

    assert bench.get("/account").address.startswith("/sign-in")
    assert "Cy Roper Maker" in owner.get("/shop/people").text


def test_of_two_who_change_a_role_at_once_the_second_is_told(owner, shop):
    address = page_of(shop, Role.BENCH)
    stale = dict(owner.get(address).form(f"{address}/role").sent())
    owner.send(f"{address}/role", role="maker")

    page = owner.post(f"{address}/role", status=409, **stale)

    assert "Somebody else saved this" in page.text


@pytest.mark.parametrize(
    ("act", "fields"), [("role", {"role": "maker"}), ("end", {"password_now": PASSWORD})]
)
def test_the_only_owner_stays_owner(owner, shop, act, fields):
    address = page_of(shop, Role.OWNER)
    owner.get(address)

    page = owner.send(f"{address}/{act}", status=409, **fields)

    assert "Ada Marsh is the only owner of the shop" in page.text
    assert "Ada Marsh Owner" in owner.get("/shop/people").text


def test_a_membership_ends_at_once(owner, maker, shop):
    address = page_of(shop, Role.MAKER)
    owner.get(address)

    owner.send(f"{address}/end", password_now=PASSWORD)

    assert maker.get("/account").address.startswith("/sign-in")
    assert "1 person has left" in owner.get("/shop/people").text
    assert "has left the shop and cannot sign in" in owner.get(address).text


ENDINGS = [("role", {"role": "bench"}), ("end", {"password_now": PASSWORD})]
"""What takes an owner's rights away, and what is typed for it."""


def second_owner(owner: Visitor, shop: ShopInTest) -> Visitor:
    """Ben Tull, owner as well, signed in."""
    owner.get(page_of(shop, Role.MAKER))
    owner.send(f"{page_of(shop, Role.MAKER)}/role", role="owner")
    return shop.visitor(Role.MAKER)


def links_by(visitor: Visitor, shop: ShopInTest) -> list[str]:
    """An invitation as owner and new passwords for others, which somebody makes."""
    visitor.get("/shop/people")
    made = [link_on(visitor.send("/shop/people/invitations", role="owner"))]
    for role in (Role.OWNER, Role.BENCH):
        visitor.get(page_of(shop, role))
        made.append(link_on(visitor.send(f"{page_of(shop, role)}/password")))
    return made


@pytest.mark.parametrize(("act", "typed"), ENDINGS)
def test_links_that_an_owner_kept_back_end_with_the_ownership(owner, shop, stranger, act, typed):
    ben = second_owner(owner, shop)
    kept_back = links_by(ben, shop)
    ben.get("/account")
    ben.send("/account", name="Benjamin Tull")

    owner.get(page_of(shop, Role.MAKER))
    owner.send(f"{page_of(shop, Role.MAKER)}/{act}", **typed)

    for link in kept_back:
        stranger.get(link, status=404)
    assert "None. A link that you make" in owner.get("/shop/people").text


@pytest.mark.parametrize(("act", "typed"), ENDINGS)
def test_links_that_others_made_stay_good(owner, shop, stranger, act, typed):
    second_owner(owner, shop)
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations", role="bench"))

    owner.get(page_of(shop, Role.MAKER))
    owner.send(f"{page_of(shop, Role.MAKER)}/{act}", **typed)

    stranger.get(link)


def test_a_link_of_which_nobody_knows_who_made_it_ends_as_well(owner, shop, stranger):
    ben = second_owner(owner, shop)
    links = links_by(ben, shop)
    with writing(shop.engine, shop.shop_id) as db:
        db.execute(update(KeyLink).values(made_by_id=None))

    owner.get(page_of(shop, Role.MAKER))
    owner.send(f"{page_of(shop, Role.MAKER)}/role", role="maker")

    for link in links:
        stranger.get(link, status=404)


def test_a_membership_does_not_end_without_the_owners_password(owner, maker, shop):
    address = page_of(shop, Role.MAKER)
    owner.get(address)

    page = owner.send(f"{address}/end", status=422, password_now=NEW)

    assert "This is not your password." in page.text
    assert maker.get("/account").status == 200


def test_somebody_who_left_cannot_sign_in_and_comes_back_by_invitation(owner, shop, stranger):
    held = shop.people[Role.MAKER]
    owner.get(page_of(shop, Role.MAKER))
    owner.send(f"{page_of(shop, Role.MAKER)}/end", password_now=PASSWORD)
    stranger.get("/sign-in")
    stranger.send("/sign-in", status=422, email=held.email, password=PASSWORD)
    owner.get("/shop/people")
    link = link_on(owner.send("/shop/people/invitations", role="bench"))

    come_in(stranger, link, "Ben Tull", held.email)

    assert "Role Bench" in owner.get(page_of(shop, Role.MAKER)).text


def test_the_owner_ends_a_sign_in_of_somebody(owner, bench, shop):
    address = page_of(shop, Role.BENCH)
    owner.get(address)

    owner.send(f"{address}/sign-ins/")

    assert bench.get("/account").address.startswith("/sign-in")


def test_a_person_changes_their_name_without_a_password(bench):
    bench.get("/account")

    page = bench.send("/account", name="Cyril Roper")

    assert "Cyril Roper, bench" in page.text


def test_another_address_asks_for_the_password(bench):
    bench.get("/account")

    page = bench.send("/account", status=422, email="cy@elsewhere.test")

    assert "Another e-mail address asks for it." in page.text
    assert page.form("/account").value("email") == "cy@elsewhere.test"
    assert "Saved." in bench.send("/account", email="cy@elsewhere.test", password_now=PASSWORD).text


def test_a_new_password_asks_the_present_one_and_ends_the_other_sign_ins(maker, shop):
    other = shop.visitor(Role.MAKER)
    before = maker.browser.cookies["casewright"]
    maker.get("/account/password")
    maker.send("/account/password", status=422, password_now=NEW, password=NEW)

    page = maker.send("/account/password", password_now=PASSWORD, password=NEW)

    assert "Saved." in page.text
    assert maker.browser.cookies["casewright"] != before
    assert other.get("/account").address.startswith("/sign-in")


def test_present_passwords_cannot_be_guessed(maker):
    maker.get("/account/password")
    for _ in range(8):
        maker.send("/account/password", status=422, password_now=NEW, password=NEW)

    page = maker.send("/account/password", status=429, password_now=PASSWORD, password=NEW)

    assert "Too many tries" in page.text
    assert PASSWORD not in page.html


def test_own_sign_ins_are_named_in_plain_words(shop):
    visitor = Visitor(shop.app)
    agent = "Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0"
    with across_shops(shop.engine, write=True) as db:
        person = db.merge(shop.people[Role.BENCH], load=False)
        secret = keep_signed_in(db, person, shop.clock.now, device=agent, address="testclient")
    visitor.browser.cookies.set("casewright", secret, domain="shop.test")

    page = visitor.get("/account")

    assert "Firefox on Linux this one" in page.text


def test_all_other_sign_ins_end_with_one_press(maker, shop):
    other = shop.visitor(Role.MAKER)
    maker.get("/account")

    maker.send("/account/sign-ins/end")

    assert other.get("/account").address.startswith("/sign-in")
    assert maker.get("/account").status == 200


def test_signing_out_everywhere_ends_this_one_too(maker, shop):
    other = shop.visitor(Role.MAKER)
    maker.get("/account")

    maker.post("/sign-out", everywhere="1")

    assert maker.get("/account").address.startswith("/sign-in")
    assert other.get("/account").address.startswith("/sign-in")
