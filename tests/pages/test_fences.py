"""One shop's things, asked for by another shop's owner: as if they were not there."""

import re
import time

import pytest
from sqlalchemy import func, select

from casewright.records.base import Base, new_id
from casewright.records.layouts import UNDER_WAY, CutLayout
from casewright.records.people import Role
from pages.conftest import Furnished
from pages.crawl import ID, filled, furnish, ids_in, kind_of
from people import Clock, ShopInTest, new_shop

pytestmark = pytest.mark.one_database

WORD, OTHER = "Quillfeather", "Brindlewood"
OF_A_KIND = 6
PATIENCE = 400  # seconds; the first layout on a machine waits for the compiler
MOVING = {"seen_at", "version"}  # columns that change when a shop is only looked at


@pytest.fixture(scope="module")
def other(app, books, clock) -> Furnished:
    """Another shop, filled as well, with its owner."""
    clock.now = Clock().now
    held = new_shop(app, books, clock, name="Hollow Lane Joinery")
    return Furnished(held, furnish(held.visitor(Role.OWNER), OTHER, without=("/shop/demo",)))


@pytest.fixture(autouse=True)
def at_the_start(clock):
    clock.now = Clock().now


def rows_of(shop: ShopInTest) -> list[str]:
    """Every row of a shop, as text, once no layout is being worked on."""
    wait_for_layouts(shop)
    found = []
    with shop.engine.connect() as connection:
        for table in Base.metadata.sorted_tables:
            if "shop_id" in table.c:
                kept = [column for column in table.c if column.name not in MOVING]
                asked = select(*kept).where(table.c.shop_id == shop.shop_id)
                found += sorted(f"{table.name} {row!r}" for row in connection.execute(asked))
    return found


def wait_for_layouts(shop: ShopInTest) -> None:
    """A layout that the walk asked for is worked on beside the pages, and writes down how far it is."""
    asked = (
        select(func.count()).where(CutLayout.shop_id == shop.shop_id).where(CutLayout.state.in_(UNDER_WAY))
    )
    ends = time.monotonic() + PATIENCE
    while True:
        with shop.engine.connect() as connection:
            if not connection.scalar(asked):
                return
        assert time.monotonic() < ends, "a layout is still being worked on"
        time.sleep(0.1)


def unknown(text: str) -> str:
    """The same text with ids that nobody has."""
    return ID.sub(lambda _: new_id(), text)


def plain(html: str) -> str:
    """A page without what differs on every page: ids, marks of forms, references."""
    text = ID.sub("#", html)
    text = re.sub(r'name="once" value="[^"]*"', 'name="once"', text)
    text = re.sub(r"<code>[0-9a-f]{8}</code>", "<code>…</code>", text)
    return re.sub(rf"{WORD}|{WORD.lower()}|Nobodysword", "…", text)


def addresses_of(furnished: Furnished) -> list[str]:
    """The addresses of a shop that name one of its things or its words: some of each kind."""
    walk = furnished.walk
    found = walk.links | set(walk.pages) | {form.action for form in walk.forms.values()}
    by_kind: dict[str, list[str]] = {}
    for address in sorted(found):
        if ID.search(address) or WORD in address:
            by_kind.setdefault(kind_of(address), []).append(address)
    return [address for alike in by_kind.values() for address in alike[:OF_A_KIND]]


def test_there_is_something_behind_the_fence(furnished):
    assert len(addresses_of(furnished)) >= 8
    assert any(WORD in row for row in rows_of(furnished.shop))


def test_a_foreign_address_answers_like_one_that_nobody_has(furnished, other):
    browser = other.shop.visitor(Role.OWNER).browser
    told = []

    for address in addresses_of(furnished):
        theirs = browser.get(address)
        nobodys = browser.get(unknown(address).replace(WORD, "Nobodysword"))
        in_path = ID.search(address.partition("?")[0])
        alike = (theirs.status_code, plain(theirs.text)) == (nobodys.status_code, plain(nobodys.text))
        if not alike or (in_path and theirs.status_code not in {403, 404, 405}):
            told.append((address, theirs.status_code, nobodys.status_code))

    assert told == []


def test_a_foreign_form_answers_like_one_that_nobody_has_and_changes_nothing(furnished, other):
    browser = other.shop.visitor(Role.OWNER).browser
    before = rows_of(furnished.shop)
    told = []

    for form in furnished.walk.forms.values():
        if not ID.search(form.action):
            continue
        fields = dict(filled(form.form, WORD)) | {"once": ""}
        theirs = browser.post(form.action, data=fields)
        nobodys = browser.post(
            unknown(form.action), data={key: unknown(text) for key, text in fields.items()}
        )
        alike = (theirs.status_code, plain(theirs.text)) == (nobodys.status_code, plain(nobodys.text))
        if not alike or theirs.status_code not in {403, 404}:
            told.append((form.action, theirs.status_code, nobodys.status_code))

    assert told == []
    assert rows_of(furnished.shop) == before


def test_foreign_ids_in_own_forms_bring_nothing_over_the_fence(furnished, other):
    browser = other.shop.visitor(Role.OWNER).browser
    before = rows_of(furnished.shop)
    foreign = {name: text for form in furnished.walk.forms.values() for name, text in form.form.sent()}
    slipped_in = {"shop_id": furnished.shop.shop_id, "id": furnished.shop.people[Role.OWNER].id}
    told = []

    for form in other.walk.forms.values():
        own = dict(filled(form.form, OTHER))
        swapped = {name: foreign.get(name, text) for name, text in own.items() if ID.fullmatch(text)}
        answer = browser.post(form.action, data=own | slipped_in | swapped | {"once": ""})
        if answer.status_code >= 500 or WORD in answer.text or not _is_refused(answer, swapped):
            told.append((form.action, answer.status_code, swapped))
        browser.cookies.update(other.shop.visitor(Role.OWNER).browser.cookies)

    assert told == []
    assert rows_of(furnished.shop) == before
    assert not foreign_ids(furnished) & set(ids_in("\n".join(rows_of(other.shop))))


def _is_refused(answer, swapped) -> bool:
    """Whether nothing was taken, if a foreign id was in it."""
    return not swapped or answer.status_code in {400, 403, 404, 409, 410, 422}


def foreign_ids(furnished: Furnished) -> set[str]:
    return set(ids_in("\n".join(rows_of(furnished.shop))))


@pytest.mark.parametrize("role", list(Role))
def test_no_word_of_one_shop_stands_on_a_page_of_another(other, role):
    browser = other.shop.visitor(role).browser

    told = [address for address in sorted(other.walk.pages) if WORD in browser.get(address).text]

    assert told == []


def test_looking_at_pages_changes_nothing(furnished):
    browser = furnished.shop.visitor(Role.OWNER).browser
    before = rows_of(furnished.shop)

    for address in furnished.walk.pages:
        browser.get(address)

    assert rows_of(furnished.shop) == before
