"""The tags of a page one by one, as html.parser gives them, but far sooner: tests read thousands of pages.

Only what the service writes is known: every value that is given stands in quotes.
"""

import re
from collections.abc import Container, Iterator, Mapping
from functools import lru_cache
from html import unescape
from itertools import zip_longest
from types import MappingProxyType

TAG = re.compile(
    r"<(/?)([a-zA-Z][\w-]*)((?:\s+[^\s=<>\"'/]+(?:=(?:\"[^\"]*\"|'[^']*'))?)*)\s*(/?)>"
    r"|<!--.*?-->|<!doctype\s[^>]*>",
    re.DOTALL | re.IGNORECASE,
)
GIVEN = re.compile(r"([^\s=\"']+)(?:=(?:\"([^\"]*)\"|'([^']*)'))?")
NOTHING: Mapping[str, str] = MappingProxyType({})


def tags_of(html: str, telling: Container[str] | None = None) -> Iterator[tuple[str, str, Mapping[str, str]]]:
    """What stands on a page, in order.

    Args:
        html: the page
        telling: the tags of which it is read what is given with them, as it is of any with an id; all where
            none are named

    Gives:
        its kind (start, end, words or fault), its name or its words, and what is given with it
    """
    parts = TAG.split(html)
    columns = (parts[place::5] for place in range(5))
    for words, slash, name, given, empty in zip_longest(*columns):
        if words:
            kind = "fault" if "<" in words else "words"
            yield kind, unescape(words) if "&" in words else words, NOTHING
        if not name:
            continue
        tag = name.lower()
        if slash:
            yield ("fault" if given or empty else "end"), tag, NOTHING
            continue
        is_read = given and (telling is None or tag in telling or "id=" in given)
        yield "start", tag, _read(given) if is_read else NOTHING
        if empty:
            yield "end", tag, NOTHING


@lru_cache(maxsize=10_000)
def _read(given: str) -> Mapping[str, str]:
    """What is given in a tag, by name; many tags are alike."""
    found = ((name.lower(), double or single) for name, double, single in GIVEN.findall(given))
    return MappingProxyType({name: unescape(value) if "&" in value else value for name, value in found})
