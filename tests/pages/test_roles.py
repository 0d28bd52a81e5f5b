"""Every page says for whom it is, and keeps to it: each is tried by each role, and by nobody."""

import re
from typing import Any

import pytest

from casewright.records.base import new_id
from casewright.records.people import Role
from casewright.web.frame.plain import OPEN
from casewright.web.frame.rooms import roles_of
from casewright.web.routes import ROUTERS
from pages.matrix import MATRIX
from pages.visitor import Visitor
from people import Clock

ROUTES: dict[str, Any] = {
    f"{method} {route.path}": route
    for router in ROUTERS
    for route in router.routes
    for method in sorted(route.methods - {"HEAD"})
    if route.path not in OPEN
}
TRIED = sorted(ROUTES)
TRIES = [(name, role) for name in TRIED for role in Role]


@pytest.fixture(autouse=True)
def at_the_start(clock):
    clock.now = Clock().now


def place_of(name: str, furnished: Any) -> tuple[str, str]:
    """The method of a page and an address at which it is: a real one of the shop where there is one."""
    method, _, path = name.partition(" ")
    walk = furnished.walk
    known = {form.action for form in walk.forms.values()} if method == "POST" else walk.links
    fits = ROUTES[name].path_regex
    real = next((each for each in sorted(known) if fits.match(each.partition("?")[0])), None)
    return method, real or re.sub(r"\{[^}]*\}", lambda _: new_id(), path)


def allowed_at(name: str) -> set[str]:
    """The roles for which a page is: by the matrix, else by what it says itself."""
    return MATRIX.get(name, {role.value for role in roles_of(ROUTES[name]) or ()})


def ask(visitor: Visitor, name: str, furnished: Any) -> Any:
    method, address = place_of(name, furnished)
    return visitor.browser.request(method, address, follow_redirects=False)


@pytest.mark.parametrize("name", TRIED)
def test_no_page_is_hidden_by_one_that_is_asked_before_it(name):
    method, _, path = name.partition(" ")
    address = re.sub(r"\{[^}]*\}", lambda _: new_id(), path)

    first = next(
        one
        for one, route in ROUTES.items()
        if one.startswith(f"{method} ") and route.path_regex.match(address)
    )

    assert first == name


@pytest.mark.parametrize("name", TRIED)
def test_every_page_says_for_whom_it_is(name):
    assert roles_of(ROUTES[name]) is not None, (
        f"{name} takes no visit: say Owner, Office, Everybody or Stranger"
    )


@pytest.mark.parametrize("name", TRIED)
def test_every_page_has_its_line_in_the_matrix(name):
    declared = {role.value for role in roles_of(ROUTES[name]) or ()}

    assert MATRIX.get(name) == declared, f'the line would be: "{name}": {declared or "ANYBODY"}'


def test_the_matrix_holds_no_page_that_is_gone():
    assert sorted(set(MATRIX) - set(ROUTES)) == []


@pytest.mark.one_database
@pytest.mark.parametrize(("name", "role"), TRIES)
def test_a_page_lets_in_whom_it_is_for_and_nobody_else(name, role, furnished):
    allowed = allowed_at(name)

    answer = ask(furnished.shop.visitor(role), name, furnished)

    refused = answer.status_code == 403 and "This page is for" in answer.text
    assert answer.status_code < 500
    assert refused == bool(allowed and role.value not in allowed)


@pytest.mark.one_database
@pytest.mark.parametrize("name", [name for name in TRIED if allowed_at(name)])
def test_nobody_in_particular_is_led_to_the_door(name, furnished, stranger):
    method, address = place_of(name, furnished)

    answer = stranger.browser.request(method, address, follow_redirects=False)

    assert answer.status_code == (303 if method == "GET" else 401)
    assert "/sign-in" in answer.headers.get("location", "") or "<h1>Sign in</h1>" in answer.text
