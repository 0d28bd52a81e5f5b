"""The quick reader of pages sees what Python's own sees."""

from html.parser import HTMLParser

import pytest

from pages.tags import tags_of

pytestmark = pytest.mark.one_database


class Slow(HTMLParser):
    """The same by html.parser."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, str, dict[str, str]]] = []
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append(("start", tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        self.found.append(("end", tag, {}))

    def handle_data(self, data: str) -> None:
        self.found.append(("words", data, {}))


def test_both_see_the_same_on_every_page_of_a_shop(furnished):
    pages = [page.html for page in furnished.walk.pages.values() if "<html" in page.html]

    assert len(pages) > 100
    assert [list(tags_of(page)) for page in pages] == [Slow(page).found for page in pages]


@pytest.mark.parametrize(
    "html",
    [
        '<p class="one two" hidden>Ash &amp; oak<br>5 &lt; 6 &#39;x&#39;</p>',
        '<svg viewBox="0 0 1 1"><path d="M0 0"/><!-- not <b>this</b> --></svg>',
        """<b hx-headers='{"X-Block": "rows"}' title="Cy's">next</b>""",
        '<!doctype html>\n<a href="/?a=1&amp;b=2"\n  id="x" >there</a >',
    ],
)
def test_both_see_the_same(html):
    assert list(tags_of(html)) == Slow(html).found


@pytest.mark.parametrize(
    "html", ["<p>5 < 6</p>", "<p class=one>", '<p class="one"id="x">', '<p class="one>', "words <b"]
)
def test_what_the_service_should_not_write_is_a_fault(html):
    assert "fault" in [kind for kind, _, _ in tags_of(html)]
