"""The tags of a page one by one, as html.parser gives them, but far sooner: tests read thousands of pages.

Only what the service writes is known: every value that is given stands in quotes.
"""

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from html import unescape
from types import MappingProxyType

TAG = re.compile(
    r"<(/?)([a-zA-Z][\w-]*)((?:\s+[^\s=<>\"'/]+(?:=(?:\"[^\"]*\"|'[^']*'))?)*)\s*(/?)>"
    r"|<!--.*?-->|<!doctype\s[^>]*>",
    re.DOTALL | re.IGNORECASE,
)
GIVEN = re.compile(r"([^\s=\"']+)(?:=(?:\"([^\"]*)\"|'([^']*)'))?")
NOTHING: Mapping[str, str] = MappingProxyType({})


def tags_of(html: str) -> Iterator[tuple[str, str, Mapping[str, str]]]:
    """What stands on a page, in order.

    Gives:
        its kind (start, end, words or fault), its name or its words, and what is given with it
    """
    parts = iter(TAG.split(html))
    for words in parts:
        if words:
            kind = "fault" if "<" in words else "words"
            yield kind, unescape(words) if "&" in words else words, NOTHING
        slash, name = next(parts, None), next(parts, None)
        given, empty = next(parts, None), next(parts, None)
        if name and slash:
            yield ("fault" if given or empty else "end"), name.lower(), NOTHING
        elif name:
            yield "start", name.lower(), _read(given) if given else NOTHING
            if empty:
                yield "end", name.lower(), NOTHING


@lru_cache(maxsize=10_000)
def _read(given: str) -> Mapping[str, str]:
    """What is given in a tag, by name; many tags are alike."""
    found = ((name.lower(), double or single) for name, double, single in GIVEN.findall(given))
    return MappingProxyType({name: unescape(value) if "&" in value else value for name, value in found})
