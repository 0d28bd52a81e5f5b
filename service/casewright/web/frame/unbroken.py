"""Sizes and codes that no end of a line breaks: 11-3/4 read as 11, with 3/4 on the next line, spoils a part.

A browser may break behind a hyphen. Each size or code that a template prints among words is laid in an
element that has no ends of lines (a `bdi`, for style sheets say much of spans); what is copied or searched
for is the text as it was. This is done as escaping is, wherever a value is printed between tags, so that no
template has to think of it. Links and buttons are left out: often laid out as boxes in a row, they would set
it apart.
"""

import re
from collections.abc import Iterator
from typing import Any

from jinja2.ext import Extension
from jinja2.lexer import Token, TokenStream
from markupsafe import Markup, escape

BROKEN = re.compile(
    r"(?<![\w-])(?=[\w≈/-]{3,18}(?![\w/-]))≈?[A-Z0-9]+(?:-[A-Z0-9]+)+(?:/\d+)?"
    r"(?: \(\d{1,3}\)| \d{1,2}/\d{1,2}(?! in| ×))?"
)
"""A size such as ≈13-27/64, a code such as 14-A-R4-1, 14-A (2), the second of several, or A-T 1/3, its first
strip, a number such as L-0003, a day such as 2027-03-01."""
CODE = re.compile(r"[A-Z]{1,2}-[A-Z]+(?:-[A-Z]+)*(?: .*)?")
"""A code without any digit, such as A-C-SR or A-T: a unit's letter goes before it, as before few words."""
TEXT_ALONE = {"title", "textarea", "option", "script", "style"}
"""What may have no tags within."""
BOXES = {"a", "button", "summary"}
"""What the style sheet may lay out as a row of boxes, in which each element stands apart."""
TAG = re.compile(r"</?([a-zA-Z][\w-]*)")


def unbroken(value: Any) -> Any:
    """A printed value with its sizes and codes in one piece each; what has none, or has tags, as it is."""
    if not isinstance(value, str) or isinstance(value, Markup) or "-" not in value:
        return value
    parts: list[Markup] = []
    end = 0
    for found in BROKEN.finditer(value):
        if any(sign.isdigit() for sign in found[0]) or CODE.fullmatch(found[0]):
            parts += (
                escape(value[end : found.start()]),
                Markup('<bdi class="unbroken">{}</bdi>').format(found[0]),
            )
            end = found.end()
    return Markup().join((*parts, escape(value[end:]))) if parts else value


class Place:
    """Where in a page a template has come to: between tags, or within one."""

    def __init__(self) -> None:
        self.tag = ""
        self.quote = ""
        self.holds_text_alone = ""
        self.box = ""
        self.ends_in_value = False

    @property
    def is_between_tags(self) -> bool:
        """Whether what is printed here may have tags of its own."""
        return not (self.tag or self.holds_text_alone or self.box or self.ends_in_value)

    def read(self, data: str) -> None:
        """Goes on through a piece of a template that is printed as it stands."""
        # A macro may be about a part of a tag, of which it does not see the beginning.
        self.ends_in_value = data.endswith(('="', "='"))
        at = 0
        while at < len(data):
            at = self._within(data, at) if self.tag else self._between(data, at)

    def _between(self, data: str, at: int) -> int:
        found = TAG.search(data, at)
        if not found:
            return len(data)
        name, is_end = found[1].lower(), found[0].startswith("</")
        if self.holds_text_alone and not (is_end and name == self.holds_text_alone):
            return found.end()
        if name in BOXES:
            self.box = "" if is_end else name
        self.tag, self.holds_text_alone = name, "" if is_end or name not in TEXT_ALONE else name
        return found.end()

    def _within(self, data: str, at: int) -> int:
        ends = self.quote or "\"'>"
        while at < len(data) and data[at] not in ends:
            at += 1
        if at == len(data):
            return at
        if self.quote:
            self.quote = ""
        elif data[at] == ">":
            self.tag = ""
        else:
            self.quote = data[at]
        return at + 1


class Unbroken(Extension):
    """Puts `unbroken` behind every value that a template prints between tags."""

    def filter_stream(self, stream: TokenStream) -> Iterator[Token]:
        """The template with the filter in its places."""
        place, filtered = Place(), False
        for token in stream:
            if token.type == "data":
                place.read(token.value)
            elif token.type == "variable_end" and filtered:
                yield Token(token.lineno, "rparen", ")")
                yield Token(token.lineno, "pipe", "|")
                yield Token(token.lineno, "name", "unbroken")
            yield token
            if token.type == "variable_begin":
                filtered = place.is_between_tags
                if filtered:
                    yield Token(token.lineno, "lparen", "(")
