"""A visitor: gets pages, looks at every one of them, fills in forms, sends them, follows where they lead."""

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from ipaddress import ip_network
from typing import Any

from httpx2 import Client

from pages.line import Line
from pages.tags import tags_of

TELLING = {"a", "form", "h1", "h2", "h3", "input", "label", "option", "select", "textarea", "title"}
"""The tags that something is to be known of; a drawing has thousands of others."""
VOID = {"area", "base", "br", "col", "hr", "img", "input", "link", "meta", "wbr"}
ORIGIN = "http://shop.test"
ADDRESSES = ip_network("10.0.0.0/8").hosts()


@dataclass
class Field:
    """One field of a form, with what would be sent for it."""

    kind: str
    value: str
    checked: bool = True


@dataclass
class FormOnPage:
    """A form as it stands on a page."""

    action: str
    method: str
    fields: list[tuple[str, Field]] = field(default_factory=list)

    def sent(self) -> list[tuple[str, str]]:
        """What a browser would send if nothing was changed."""
        return [(name, each.value) for name, each in self.fields if each.checked]

    def value(self, name: str) -> str:
        """What stands in a field."""
        return next(each.value for key, each in self.fields if key == name and each.checked)


class Seen:
    """What is on a page."""

    def __init__(self, html: str) -> None:
        self.forms: list[FormOnPage] = []
        self.links: list[str] = []
        self.ids: list[str] = []
        self.labels: set[str] = set()
        self.named: list[tuple[str, Mapping[str, str]]] = []
        self.headings: list[str] = []
        self.title = ""
        self.open: list[str] = []
        self.faults: list[str] = []
        self._select: tuple[str, list[tuple[str, bool]]] | None = None
        self._area: str | None = None
        self._text: list[str] = []
        for kind, name, given in tags_of(html, TELLING):
            if kind == "words":
                self._text.append(name)
            elif kind == "start":
                self._begin(name, given)
            elif kind == "end":
                self._end(name)
            else:
                self.faults.append(f"cannot be read: {name[:200]!r}")
        if self.open:
            self.faults.append(f"left open: {self.open}")

    def _begin(self, tag: str, given: Mapping[str, str]) -> None:
        if tag not in VOID:
            self.open.append(tag)
        if "id" in given:
            self.ids.append(given["id"])
        if tag not in TELLING:
            return
        if tag == "a" and "href" in given:
            self.links.append(given["href"])
        if tag == "label":
            self.labels.add(given.get("for", ""))
        if tag == "form":
            self.forms.append(FormOnPage(given.get("action", ""), given.get("method", "get")))
        if tag in {"h1", "title", "textarea", "h2", "h3"}:
            self._text = []
        if tag in {"input", "select", "textarea"} and given.get("type") != "hidden" and "hidden" not in given:
            self.named.append((tag, given))
        self._read_field(tag, given)

    def _read_field(self, tag: str, given: Mapping[str, str]) -> None:
        name = given.get("name", "")
        if tag == "select":
            self._select = (name, [])
        elif tag == "option" and self._select:
            self._select[1].append((given.get("value", ""), "selected" in given))
        elif tag == "textarea":
            self._area = name
        elif tag == "input" and name and self.forms:
            kind = given.get("type", "text")
            checked = "checked" in given if kind in {"checkbox", "radio"} else True
            self.forms[-1].fields.append((name, Field(kind, given.get("value", ""), checked)))

    def _end(self, tag: str) -> None:
        if tag in VOID:
            return
        if not self.open or self.open[-1] != tag:
            self.faults.append(f"</{tag}> closes {self.open[-1:]}")
        else:
            self.open.pop()
        if tag == "h1":
            self.headings.append("".join(self._text).strip())
        elif tag == "title" and not self.title:
            self.title = "".join(self._text).strip()
        elif tag == "select" and self._select and self.forms:
            name, options = self._select
            chosen = next((value for value, on in options if on), options[0][0] if options else "")
            self.forms[-1].fields.append((name, Field("select", chosen)))
            self._select = None
        elif tag == "textarea" and self._area is not None and self.forms:
            self.forms[-1].fields.append(
                (self._area, Field("textarea", "".join(self._text).removeprefix("\n")))
            )
            self._area = None


def without_marks(html: str) -> str:
    """A page or a part of one without the marks that keep a size or a code on one line."""
    return re.sub(r'<bdi class="unbroken">([^<]*)</bdi>', r"\1", html)


@dataclass
class Shown:
    """A page as the visitor sees it; its `html` without the marks that keep a size or a code on one line."""

    status: int
    html: str
    address: str
    seen: Seen
    headers: Mapping[str, str]

    @property
    def text(self) -> str:
        """The words of the page, without the marks."""
        return " ".join(re.sub(r"<[^>]+>", " ", self.html).split())

    def form(self, action: str = "") -> FormOnPage:
        """The form that goes to an address; the first that posts where none is named."""
        return next(
            form
            for form in self.seen.forms
            if (action and form.action.startswith(action)) or (not action and form.method == "post")
            if form.action != "/sign-out"
        )


class Visitor:
    """Somebody with a browser, at an address of their own."""

    def __init__(self, app: Any, origin: str = ORIGIN) -> None:
        self.browser = Client(
            transport=Line(app, str(next(ADDRESSES))),
            base_url=origin,
            follow_redirects=True,
            headers={"origin": origin},
        )
        self.page: Shown | None = None

    def get(self, address: str, status: int = 200) -> Shown:
        """Gets a page and looks at it."""
        return self._look(self.browser.get(address), status)

    def post(self, path: str, /, status: int = 200, **fields: str) -> Shown:
        """Sends fields as they are."""
        return self._look(self.browser.post(path, data=fields), status)

    def send(self, action: str = "", /, status: int = 200, **typed: str) -> Shown:
        """Fills in the form of the present page and sends it.

        Args:
            action: which form, by the start of its address
            status: what the answer should be
            typed: what is typed into fields; dots in names are written as two underscores
        """
        assert self.page is not None
        form = self.page.form(action)
        changed = {name.replace("__", "."): value for name, value in typed.items()}
        known = {name for name, _ in form.fields}
        assert set(changed) <= known, f"no such fields: {set(changed) - known}"
        fields = [(name, value) for name, value in form.sent() if name not in changed]
        fields += list(changed.items())
        data: dict[str, list[str]] = {}
        for name, value in fields:
            data.setdefault(name, []).append(value)
        return self._look(self.browser.post(form.action or self.page.address, data=data), status)

    @staticmethod
    def seen_as(answer: Any) -> Shown:
        """An answer as a page, whatever it is: a paper has no words."""
        html = answer.text if "html" in answer.headers.get("content-type", "") else ""
        return Shown(
            answer.status_code,
            without_marks(html) or answer.text,
            answer.url.raw_path.decode(),
            Seen(html if "<html" in html else ""),
            answer.headers,
        )

    def _look(self, answer: Any, status: int) -> Shown:
        shown = self.seen_as(answer)
        html = shown.html
        assert shown.status == status, f"{shown.address}: {shown.status}, {shown.text[:600]}"
        if "<html" in html:
            self.page = shown
            look_at(shown)
        return shown


def look_at(shown: Shown) -> None:
    """What every page must be: well-formed, titled, with one heading, labelled fields, ids of their own."""
    seen, where = shown.seen, shown.address
    assert not seen.faults, f"{where}: {seen.faults[:3]}"
    assert len(seen.headings) == 1, f"{where}: headings {seen.headings}"
    plain_title = seen.title.removeprefix("Error: ")
    assert plain_title.startswith(seen.headings[0][:20]), f"{where}: {seen.title} / {seen.headings}"
    twice = {each for each, times in Counter(seen.ids).items() if times > 1}
    assert not twice, f"{where}: ids that stand twice: {twice}"
    bare = [
        given
        for _, given in seen.named
        if given.get("type") not in {"submit", "button"}
        and given.get("id") not in seen.labels
        and not given.get("aria-label")
        and not given.get("aria-labelledby")
    ]
    assert not bare, f"{where}: fields without a label: {bare[:2]}"
    assert "style=" not in shown.html, f"{where}: the page's policy lets no style attribute work"
    assert not re.search(r"<script(?![^>]*\bsrc=)", shown.html), f"{where}: a script in the page"
    policy = shown.headers.get("content-security-policy", "")
    assert "default-src 'none'" in policy, f"{where}: no policy"
