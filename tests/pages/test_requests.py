"""Requests that no form of ours makes, and what stands on every answer."""

import asyncio
import json
import logging
import re

import pytest

from casewright.logs import JsonLines
from casewright.records.people import Role
from casewright.web.frame.guards import ALWAYS
from pages.visitor import ORIGIN, Visitor, look_at
from people import PASSWORD

FORM = {"content-type": "application/x-www-form-urlencoded"}
PART = b'--x\r\nContent-Disposition: form-data; name="name"\r\n\r\n\\ud800\xff\r\n--x--\r\n'
ADDRESSES = [
    "/customers/%00",
    "/customers/%ED%A0%80",
    "/customers/%0d%0aSet-Cookie:%20a=b",
    "/customers?q=%00",
    "/customers?q=%ED%A0%80%ff%C0%AF",
    "/customers?page=" + "9" * 5000,
    "/customers?page=-99999999999999999999",
    "/customers?page=nan",
    "/customers?page=1&page=2&q=a&q=b&q=c",
    "/customers?q[]=a&q[x]=b",
    "/customers?" + "&".join(f"a{number}=1" for number in range(1500)),
    "/customers/" + "z" * 5000,
    "/customers/..%2f..%2fetc%2fpasswd",
    "/invitation/%00.%00",
    "/invitation/" + "a" * 5000,
    "/password/a.b",
    "/static/%2e%2e/%2e%2e/pyproject.toml",
    "/static/../secret",
    "/.git/config",
    "/docs",
    "/openapi.json",
]
WRONG = "not the one\r\nat all"
COOKIES = [
    b"casewright=\x00.\x00",
    b"casewright=a",
    b"casewright=.x",
    b'casewright="\\355\\240\\200".x',
    b"casewright=\xff\xfe",
    b"casewright=" + b"z" * 4000,
    b"casewright-known=a.b; casewright=1234567890123.%00",
    b"casewright-known=\xff.\xff",
    b";;;=;=a",
]
BODIES = [
    (b"", FORM),
    (b"name=x", {}),
    (b"name=x", {"content-type": "text/plain"}),
    (b'{"name":' + b"[" * 100_000, {"content-type": "application/json"}),
    (b"&".join(b"a%d=1" % number for number in range(5000)), FORM),
    (b"name=" + b"x" * 1_000_000, FORM),
    (b"=&==&&&%%%&name=%zz", FORM),
    (b"name=\xed\xa0\x80\xff\x00", FORM),
    (b"--x\r\nfoo", {"content-type": "multipart/form-data; boundary=x"}),
    (b"--x\r\nfoo", {"content-type": "multipart/form-data"}),
    (b"--x\r\nfoo", {"content-type": "multipart/form-data; boundary=" + "y" * 5000}),
    *(
        (PART, {"content-type": f"multipart/form-data; boundary=x; charset={charset}"})
        for charset in ("undefined", "idna", "utf-16", "hex", "unicode_escape", "punycode", "nope")
    ),
]


@pytest.mark.parametrize("address", ADDRESSES, ids=lambda address: address[:40])
def test_an_odd_address_is_answered_with_a_page(owner, address):
    answer = owner.browser.get(address)

    assert answer.status_code in {200, 404}
    assert "set-cookie" not in answer.headers
    look_at(owner.seen_as(answer))


@pytest.mark.one_database
@pytest.mark.parametrize(("body", "headers"), BODIES, ids=range(len(BODIES)))
def test_an_odd_body_is_answered_with_a_page(owner, body, headers):
    answer = owner.browser.post("/customers", content=body, headers=headers)

    assert answer.status_code in {200, 400, 422}
    look_at(owner.seen_as(answer))


@pytest.mark.parametrize("cookie", COOKIES, ids=range(len(COOKIES)))
def test_an_odd_cookie_is_nobodys(stranger, cookie):
    got = stranger.browser.get("/account", headers={"cookie": cookie}, follow_redirects=False)
    sent = stranger.browser.post(
        "/sign-in", data={"email": f"{len(cookie)}@b.test"}, headers={"cookie": cookie}
    )

    assert (got.status_code, sent.status_code) == (303, 422)


def test_a_body_that_is_too_large_is_refused_with_a_page(owner):
    answer = owner.browser.post("/customers", content=b"name=" + b"x" * 3_000_000, headers=FORM)

    assert answer.status_code == 413
    assert "at most 2 MB" in owner.seen_as(answer).text
    look_at(owner.seen_as(answer))


def test_a_body_that_does_not_say_how_large_it_is_is_refused_as_well(owner):
    pieces = (b"x" * 100_000 for _ in range(40))

    answer = owner.browser.post("/customers", content=pieces, headers=FORM)

    assert answer.status_code == 413
    look_at(owner.seen_as(answer))


def test_a_form_whose_sender_hangs_up_is_no_fault(app, caplog):
    gone = [{"type": "http.request", "body": b"name=", "more_body": True}, {"type": "http.disconnect"}]
    sent = []

    async def receive():
        return gone.pop(0)

    async def send(message):
        sent.append(message.get("status"))

    headers = [
        (b"host", b"shop.test"),
        (b"origin", ORIGIN.encode()),
        *((name.encode(), value.encode()) for name, value in FORM.items()),
    ]
    scope = {
        "type": "http",
        "method": "POST",
        "scheme": "http",
        "path": "/customers",
        "query_string": b"",
        "headers": headers,
    }
    asyncio.run(app(scope, receive, send))

    assert sent[0] == 400
    assert [record for record in caplog.records if record.levelname == "ERROR"] == []


@pytest.mark.parametrize("method", ["PUT", "DELETE", "PATCH", "TRACE", "OPTIONS", "BREW"])
def test_an_unknown_method_is_told_the_known_ones(owner, method):
    answer = owner.browser.request(method, "/customers")

    assert answer.status_code == 405
    assert answer.headers["allow"] == "GET, HEAD, POST"


def test_the_head_of_a_page_can_be_asked_for(owner):
    answer = owner.browser.head("/customers")

    assert (answer.status_code, answer.content) == (200, b"")


@pytest.mark.parametrize("host", ["[", "[::1", "[]:80", "[shop.test]"])
def test_a_host_that_is_none_is_answered_with_a_page(owner, host):
    got = owner.browser.get("/customers", headers={"host": host})
    sent = owner.browser.post("/customers", data={"name": "Ada Marsh"}, headers={"host": host})

    assert (got.status_code, sent.status_code) == (400, 400)
    look_at(owner.seen_as(got))


def test_an_address_with_a_stroke_too_many_leads_to_the_page_whatever_host_is_named(owner):
    headers = {"host": "evil.example"}

    answer = owner.browser.get("/customers/?q=ash", headers=headers, follow_redirects=False)
    nowhere = owner.browser.get("/nowhere/", headers=headers, follow_redirects=False)

    assert (answer.status_code, answer.headers["location"]) == (307, "/customers?q=ash")
    assert nowhere.status_code == 404


@pytest.mark.one_database
@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://evil.example"},
        {"origin": "http://["},
        {"origin": "null"},
        {"origin": "http://shop.test.evil.example"},
        {"origin": "http://shop.test:8080"},
        {"origin": ""},
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"sec-fetch-site": "cross-site", "origin": ORIGIN},
    ],
)
@pytest.mark.parametrize("address", ["/customers", "/sign-in", "/sign-out", "/set-up", "/invitation/x"])
def test_a_form_of_another_site_is_refused(owner, address, headers):
    answer = owner.browser.post(address, data={"name": "Ada Marsh"}, headers=headers)

    assert answer.status_code == 403
    assert "sent from a page that is not part of this service" in answer.text


ANSWERS = [
    ("GET", "/account", 200, {}),
    ("GET", "/sign-in", 200, {}),
    ("GET", "/nowhere", 404, {}),
    ("GET", "/customers/none", 404, {}),
    ("PUT", "/customers", 405, {}),
    ("POST", "/customers", 422, {}),
    ("POST", "/customers", 403, {"origin": "http://evil.example"}),
    ("POST", "/account", 401, {"cookie": "casewright=none"}),
    ("GET", "/account", 303, {"cookie": "casewright=none"}),
    ("GET", "/healthz", 200, {}),
    ("GET", "/readyz", 200, {}),
    ("GET", "/robots.txt", 200, {}),
    ("GET", "/invitation/none", 404, {}),
]


@pytest.mark.parametrize(("method", "address", "status", "headers"), ANSWERS)
def test_every_answer_carries_its_guards(shop, method, address, status, headers):
    browser = Visitor(shop.app).browser if "cookie" in headers else shop.visitor(Role.OWNER).browser

    answer = browser.request(method, address, headers=headers, follow_redirects=False)

    assert answer.status_code == status
    assert {name: answer.headers.get(name) for name in ALWAYS} == ALWAYS
    assert answer.headers["cache-control"] == "no-store"
    assert "strict-transport-security" not in answer.headers
    assert "server" not in answer.headers
    assert "charset=utf-8" in answer.headers.get("content-type", "charset=utf-8, for there is no body") or (
        answer.headers["content-type"] == "application/json"
    )


def test_a_secret_link_is_kept_from_search_and_from_other_sites(stranger):
    answer = stranger.browser.get("/invitation/none")

    assert answer.headers["x-robots-tag"] == "noindex, nofollow"
    assert answer.headers["referrer-policy"] == "same-origin"


def cookies_of(shop, origin: str) -> dict[str, str]:
    """The cookies that a sign-in sets, as they are sent."""
    data = {"email": shop.people[Role.OWNER].email, "password": PASSWORD}
    answer = Visitor(shop.app, origin).browser.post("/sign-in", data=data, follow_redirects=False)
    return dict(line.split("=", 1) for line in answer.headers.get_list("set-cookie"))


def test_over_plain_http_the_cookie_is_kept_from_scripts_and_from_other_sites(shop):
    cookies = cookies_of(shop, ORIGIN)

    assert set(cookies) == {"casewright", "casewright-known"}
    for sent in cookies.values():
        assert re.search(r"; HttpOnly; Max-Age=\d+; Path=/; SameSite=lax$", sent)


def test_over_tls_the_cookie_is_held_to_this_host(shop):
    cookies = cookies_of(shop, "https://shop.test")

    assert set(cookies) == {"__Host-casewright", "__Host-casewright-known"}
    for sent in cookies.values():
        assert re.search(r"; HttpOnly; Max-Age=\d+; Path=/; SameSite=lax; Secure$", sent)


def test_over_tls_browsers_are_told_to_stay_there(shop):
    answer = Visitor(shop.app, "https://shop.test").browser.get("/sign-in")

    assert answer.headers["strict-transport-security"] == "max-age=31536000"


def test_signing_out_over_tls_takes_the_cookie_away(shop):
    visitor = Visitor(shop.app, "https://shop.test")
    data = {"email": shop.people[Role.OWNER].email, "password": PASSWORD}
    visitor.browser.post("/sign-in", data=data, follow_redirects=False)

    answer = visitor.browser.post("/sign-out", follow_redirects=False)

    assert "__Host-casewright=" in answer.headers["set-cookie"]
    assert "Secure" in answer.headers["set-cookie"]


def test_the_log_tells_of_the_door_and_of_no_secret(owner, stranger, shop, caplog):
    caplog.set_level(logging.INFO, "casewright")
    email = shop.people[Role.MAKER].email
    owner.get("/shop/people")
    link = re.search(r"/invitation/[^\"]+", owner.send("/shop/people/invitations").html).group()
    stranger.get(link)
    stranger.browser.get("/set-up?code=aaaa-bbbb")
    stranger.browser.get("/nowhere%0d%0a{%22event%22:%22forged%22}")
    stranger.post("/sign-in", status=422, email=email, password=WRONG)
    stranger.browser.post("/sign-in", data={"email": email, "password": PASSWORD}, follow_redirects=False)

    lines = [JsonLines().format(record) for record in caplog.records if record.name.startswith("casewright")]
    whole = "\n".join(lines)
    secrets = [link.split(".")[1], PASSWORD, "not the one", "aaaa-bbbb", email]
    secrets += [cookie.value for cookie in stranger.browser.cookies.jar]
    told = {(said["act"], said["result"]) for said in map(json.loads, lines) if "act" in said}
    assert told >= {("invitation", "made"), ("sign-in", "failed"), ("sign-in", "ok")}
    assert [secret for secret in secrets if secret in whole] == []
    assert all("\n" not in line and "\r" not in line for line in lines)
    assert '"event": "forged"' not in whole
