"""Every form on every page gets what nobody should type: no fault, nothing lost, nothing worked out."""

from collections.abc import Iterator
from typing import Any

import pytest

from casewright.records.people import Role
from pages.crawl import FoundForm, kind_of, walk
from pages.hostile import MARKUP, SUM, Pairs, bodies
from pages.visitor import Shown, Visitor, look_at
from people import Clock

EACH = 8  # bodies for a form; the forms of one database begin where those of the other do not
BY_FORM = {"content-type": "application/x-www-form-urlencoded"}


@pytest.fixture(scope="module")
def answers(furnished, books) -> list[tuple[str, Pairs, Shown]]:
    """What every form said to every body."""
    held, walked = furnished.shop, furnished.walk
    held.clock.now = Clock().now
    turned = 0 if books.dialect.name == "sqlite" else 23
    return [
        each
        for turn, found in enumerate(walked.forms.values())
        for each in _told(held.visitor(Role.OWNER), found, turn * 3 + turned)
    ]


def _told(visitor: Visitor, found: FoundForm, turn: int) -> Iterator[tuple[str, Pairs, Shown]]:
    cookie = visitor.browser.cookies["casewright"]
    for body, kept in bodies(found, turn, EACH):
        answer = visitor.browser.post(found.action, content=body, headers=BY_FORM, follow_redirects=False)
        yield found.action, kept, visitor.seen_as(answer)
        visitor.browser.cookies.set("casewright", cookie, domain="shop.test")


def test_every_form_was_found(answers, furnished):
    assert len(answers) >= EACH * 10
    assert {kind_of(action) for action, _, _ in answers} == {kind for kind, _ in furnished.walk.forms}


def test_nothing_breaks(answers):
    broken = [(action, shown.status) for action, _, shown in answers if shown.status >= 500]

    assert broken == []


def test_no_answer_shows_the_inside_of_the_program(answers):
    told = [action for action, _, shown in answers if "Traceback" in shown.html or "sqlalchemy" in shown.html]

    assert told == []


def test_nothing_that_was_typed_becomes_markup_or_a_sum(answers):
    told = [(action, mark) for action, _, shown in answers for mark in (*MARKUP, SUM) if mark in shown.html]

    assert told == []


def test_no_header_can_be_typed(answers):
    told = [action for action, _, shown in answers if "stolen" in shown.headers.get("set-cookie", "")]

    assert told == []


def test_every_answer_is_a_whole_page(answers):
    for _, _, shown in answers:
        if "<html" in shown.html:
            look_at(shown)


def test_a_refused_form_holds_what_was_typed(answers):
    refused = [(action, kept, shown) for action, kept, shown in answers if shown.status == 422 and kept]

    lost = [
        (action, name, value[:60])
        for action, kept, shown in refused
        for name, value in kept
        if value not in _values(shown, name)
    ]

    assert refused
    assert lost == []


def _values(shown: Shown, name: str) -> list[Any]:
    return [each.value for form in shown.seen.forms for key, each in form.fields if key == name]


@pytest.mark.parametrize("role", list(Role))
def test_what_was_taken_can_be_looked_at_by_everybody(furnished, answers, role):
    walked = walk(furnished.shop.visitor(role))

    told = [
        (address, mark)
        for address, shown in walked.pages.items()
        for mark in (*MARKUP, SUM, "Traceback")
        if mark in shown.html
    ]
    assert told == []
    assert len(walked.pages) >= 3
