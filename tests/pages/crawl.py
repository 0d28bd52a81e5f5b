"""A visitor who goes everywhere: follows every link, finds every form, and fills a shop by sending them."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from urllib.parse import urldefrag, urlencode, urljoin, urlsplit

from pages.visitor import ORIGIN, Field, FormOnPage, Shown, Visitor
from people import PASSWORD

ID = re.compile(r"(?<![0-9A-Za-z_-])1[0-9a-hjkmnp-tv-z]{12}(?![0-9A-Za-z_-])")
"""The id of a row, wherever it stands; those of this century and the next begin with a one."""
ALIKE = 2  # addresses of one kind that are looked at: the second job shows what the first one does
MOST = 400  # pages, so that a page that makes ever new links does not hold a test for ever
TRIES = 2  # a quote cannot be sent before its units are there; perhaps the next time
ROUNDS = 8  # a job needs a customer, a unit a job, a quote a unit
ENDS = re.compile(r"/sign-out|/end\b|/ending|/remov|/delet|/lost|/declin|/account/password|/undo|/taken-out")
"""Forms that end something; a shop that is to be filled leaves them alone."""
FIRST_PAGES = ("/", "/account", "/help", "/shop", "/shop/people", "/board", "/jobs", "/customers")
WRITTEN = {"text", "textarea", "email", "tel", "search", "number", "date", "password", "url", "time"}


def kind_of(address: str) -> str:
    """An address without its ids and numbers: two jobs' pages are of one kind."""
    path = urlsplit(address).path
    return re.sub(r"/\d+(?=/|$)", "/#", ID.sub("#", path)) + (
        "?" + "&".join(sorted({part.partition("=")[0] for part in urlsplit(address).query.split("&")}))
        if urlsplit(address).query
        else ""
    )


@dataclass(frozen=True)
class FoundForm:
    """A form with the page on which it stands."""

    page: str
    action: str
    form: FormOnPage

    @property
    def kind(self) -> tuple[str, tuple[str, ...]]:
        """Forms that go to the same kind of place with the same fields are of one kind."""
        names = {re.sub(r"\d+", "#", name) for name, _ in self.form.fields}
        return kind_of(self.action), tuple(sorted(names))


@dataclass
class Walk:
    """What a visitor has found.

    Attributes:
        visitor: who walks
        word: what is typed into a search
        pages: every page that was looked at
        forms: every form that posts, one of each kind
        links: every address that was seen, looked at or not
    """

    visitor: Visitor
    word: str = "ash"
    pages: dict[str, Shown] = field(default_factory=dict)
    forms: dict[tuple[str, tuple[str, ...]], FoundForm] = field(default_factory=dict)
    links: set[str] = field(default_factory=set)
    _kinds: Counter[str] = field(default_factory=Counter)

    def go(self, *first: str) -> None:
        """Looks at these pages and at all that they lead to."""
        waiting = [*first, *(address for address in sorted(self.links) if address not in self.pages)]
        while waiting and len(self.pages) < MOST:
            address = waiting.pop(0)
            kind = kind_of(address)
            if address in self.pages or self._kinds[kind] >= (1 if "?" in kind else ALIKE):
                continue
            self._kinds[kind] += 1
            waiting += self.look(address)

    def look(self, address: str) -> list[str]:
        """Looks at a page, again if need be; gives the links that are new."""
        answer = self.visitor.browser.get(address)
        assert answer.status_code < 500, f"{address}: {answer.status_code}"
        self.pages[address] = self.visitor.seen_as(answer)
        return self.take_in(self.pages[address])

    def take_in(self, shown: Shown) -> list[str]:
        """Notes the links and the forms of a page; gives the links that are new."""
        here = urljoin(ORIGIN, shown.address)
        fresh = []
        for form in shown.seen.forms:
            action = _local(here, form.action or shown.address)
            if action and form.method == "post":
                found = FoundForm(shown.address, action, form)
                self.forms.setdefault(found.kind, found)
            elif action:
                asked = urlencode(filled(form, self.word))
                shown.seen.links.append(f"{action.partition('?')[0]}?{asked}" if asked else action)
        for link in shown.seen.links:
            address = _local(here, link)
            if address and address not in self.links:
                self.links.add(address)
                fresh.append(address)
        return fresh


def _local(here: str, link: str) -> str:
    """The path of a link of this site; empty for one that leads elsewhere."""
    whole = urldefrag(urljoin(here, link)).url
    return whole.removeprefix(ORIGIN) if whole.startswith(ORIGIN + "/") else ""


def walk(visitor: Visitor, word: str = "ash") -> Walk:
    """Everything that a visitor can reach."""
    walked = Walk(visitor, word)
    walked.go(*FIRST_PAGES)
    return walked


def furnish(visitor: Visitor, word: str, without: tuple[str, ...] = ()) -> Walk:
    """Fills a shop as a person would, by sending every form that makes something, and walks through it.

    Args:
        visitor: its owner
        word: stands in every name and note that is typed
        without: forms that are left alone
    """
    walked = walk(visitor, word)
    tries: Counter[tuple[str, tuple[str, ...]]] = Counter()
    for _ in range(ROUNDS):
        fresh = [found for kind, found in walked.forms.items() if tries[kind] < TRIES]
        fresh = [found for found in fresh if not ENDS.search(found.action) and found.action not in without]
        if not fresh:
            break
        for found in fresh:
            answer = visitor.browser.post(found.action, data=_as_sent(filled(found.form, word)))
            tries[found.kind] += TRIES if answer.status_code < 400 else 1
            assert answer.status_code < 500, f"{found.action}: {answer.status_code}"
            walked.take_in(visitor.seen_as(answer))
            walked.links.add(answer.url.raw_path.decode())
        for address in {*FIRST_PAGES, *(found.page for found in fresh)}:
            walked.look(address)
        walked.go()
    return walked


def filled(form: FormOnPage, word: str) -> list[tuple[str, str]]:
    """The fields of a form with something in each: what stands in it, else what a person might type."""
    pairs: list[tuple[str, str]] = []
    chosen = {name for name, each in form.fields if each.kind == "radio" and each.checked}
    for name, each in form.fields:
        if each.kind == "radio" and not each.checked and name not in chosen:
            chosen.add(name)
            pairs.append((name, each.value))
        elif each.checked:
            pairs.append((name, each.value or _typed(name, each, word)))
    return pairs


def _typed(name: str, each: Field, word: str) -> str:
    if each.kind == "hidden" or each.kind not in WRITTEN:
        return ""
    if "password" in name:
        return PASSWORD
    if each.kind == "email" or "email" in name:
        return f"{word.lower()}@shop.test"
    if each.kind == "date" or re.search(r"(^|[._])(on|date|day|until)$|_on\b|_by$", name):
        return "2027-06-01"
    if re.search(
        r"name|note|words|address|label|why|reason|supplier|what|title|source|text|terms|message", name
    ):
        return f"{word} of ash"
    return "3"


def _as_sent(pairs: list[tuple[str, str]]) -> dict[str, list[str]]:
    data: dict[str, list[str]] = {}
    for name, value in pairs:
        data.setdefault(name, []).append(value)
    return data


def ids_in(text: str) -> Iterator[str]:
    """The ids that stand in a text."""
    return (match.group() for match in ID.finditer(text))
