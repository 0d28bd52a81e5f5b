"""What nobody should type, and somebody will."""

from collections.abc import Iterator
from urllib.parse import quote_plus, urlencode

from casewright.web.frame.typed import clean
from pages.crawl import WRITTEN, FoundForm

SUM = "1022117"
"""1009 times 1013: stands on a page only if somebody's text was worked out instead of shown."""
MARKUP = ("<script>alert(1009)", "<img src=x", 'href="javascript:', "<svg onload", "<iframe")

VALUES = (
    "",
    " ",
    "0",
    "-1",
    "-0",
    "1e309",
    "NaN",
    "Infinity",
    "1/0",
    "0/0",
    "7" * 5000,
    "-" + "9" * 40,
    "0." + "0" * 400 + "1",
    "2147483648",
    "9223372036854775808",
    "1,234,567,890.12",
    "١٢٣",
    "½⅓¼",
    "0x10",
    "1_000",
    "2027-02-30",
    "0000-00-00",
    "99999-12-31",
    "<script>alert(1009)</script>",
    '"><img src=x onerror=alert(1009)>',
    "' autofocus onfocus='alert(1009)",
    "</textarea><svg onload=alert(1009)>",
    "javascript:alert(1009)",
    "{{1009*1013}}{% for x in y %}",
    '#(1009*1013) #read("/etc/passwd") $ \\ *_`@',
    "' OR 1=1 --",
    "'; DROP TABLE person; --",
    "%s %(id)s %d {0} {x}",
    '=HYPERLINK("http://x.test","y")',
    "a\r\nSet-Cookie: casewright=stolen\r\n\r\nb",
    "\x00\x01\x1b[31m\x7f",
    "\u202eforged\u202c \u2066x\u2069 \ufeff\ufffe\uffff",
    "e\u0301" * 300,
    "\U0001f9f0" * 200,
    "../../etc/passwd",
    "http://shop.test.evil.example/",
    "//evil.example/\\x",
    "line one\nline two\n\n\n",
    "x" * 150_000,
)

Pairs = list[tuple[str, str]]


def bodies(found: FoundForm, turn: int, most: int) -> Iterator[tuple[bytes, Pairs]]:
    """Bodies to send to a form, and what a page that refuses one should still hold.

    Args:
        found: the form
        turn: which form this is: each begins at another value, so that all forms together get all
        most: how many bodies
    """
    made = [*_with_values(found, turn, most), *_odd_shapes(found, turn)]
    start = turn % len(made)
    yield from (made[start:] + made[:start])[:most]


def _with_values(found: FoundForm, turn: int, most: int) -> Iterator[tuple[bytes, Pairs]]:
    fields = found.form.fields
    for step in range(most):
        value = VALUES[(turn * 5 + step) % len(VALUES)]
        written: Pairs = [
            (name, value if each.kind in WRITTEN else each.value) for name, each in fields if each.checked
        ]
        yield urlencode(written).encode(), kept(found, written)
        everywhere: Pairs = [(name, value) for name, _ in fields]
        yield urlencode(everywhere).encode(), []
        one = (turn + step) % max(1, len(fields))
        single: Pairs = [
            (name, value if place == one else each.value) for place, (name, each) in enumerate(fields)
        ]
        yield urlencode(single).encode(), []


def _odd_shapes(found: FoundForm, turn: int) -> Iterator[tuple[bytes, Pairs]]:
    sent = found.form.sent()
    names = [name for name, _ in found.form.fields]
    yield b"", []
    yield urlencode(sent + sent).encode(), []
    yield urlencode([*sent, *((f"extra{number}", "1") for number in range(1000))]).encode(), []
    yield (
        urlencode([(f"{name}[]", "1") for name in names] + [(f"{name}[x]", "1") for name in names]).encode(),
        [],
    )
    yield "&".join(f"{quote_plus(name)}=%ED%A0%80%FF%00%C0%AF" for name in names).encode(), []
    yield b"&".join(name.encode() + b"=\xed\xa0\x80\xff\x00" for name in names), []
    yield urlencode([(name, "y" * 1_000_000) for name in names[:1]]).encode(), []


def kept(found: FoundForm, sent: Pairs) -> Pairs:
    """The written fields of what was sent, as a page that refuses it should show them again."""
    kinds = {name: each.kind for name, each in found.form.fields}
    return [
        (name, clean(value))
        for name, value in sent
        if kinds[name] in WRITTEN - {"password"} and 0 < len(value.strip()) < 10_000
    ]
