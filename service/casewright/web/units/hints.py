"""The hint below a field's label: what the schema says of it, without what the label has said already."""

import re

_STOP = """
a an and are as at be by do does each far for from has how in inside into is it its kind of on or that the
their to what with
"""
STOP = frozenset(_STOP.split())
"""Words that say nothing by themselves."""
ALIKE = {"thick": "thickness", "wide": "width", "high": "height", "deep": "depth", "long": "length"}
"""A label says `Cleat, wide` where the schema says `Width of the cleat`."""
SIZE = re.compile(r"((?:Thickness|Width|Height|Length|Depth|Diameter)) of (.+)")
CLAUSE = re.compile(r"[;:,]? (?=\()|[;:,] |\. |[.?]$")
"""The end of the first clause of a hint."""
JOINED = re.compile(r"(?:and|or)\b")
"""How a clause begins that cannot stand without the one before it."""
LEFT_OUT = re.compile(r"(^|\. |; )[Ll]eft out[:,] ")
SAID = (
    (" (common practice)", ""),  # the working of the figure says so
    ("; null for as many as keep each panel within 14 in", ""),
    ("under `use`", "under Use and safety"),
    ("as the table has it", "as the table of sheets has it"),
    ("a muntin is used", "there is a bar"),
    ("of the muntin", "of the bar"),
    ("Left out with no first", "Left empty with no first"),
    ("they are ranked", "the best of the layouts"),
)
"""Words for whoever writes a file, and what the form says instead."""


def brief_hint(label: str, hint: str) -> str:
    """A hint without what its label says, in the words of the form.

    Args:
        label: such as `Lip thickness`
        hint: such as `Thickness of the lip: so far the front stands before the case.`

    Returns:
        Such as `So far the front stands before the case.`; empty where the label says it all.
    """
    for written, said in SAID:
        hint = hint.replace(written, said)
    known = set(_words(label))
    while (end := CLAUSE.search(hint)) and not JOINED.match(hint, end.end()):
        first = hint[: end.start()]
        size = SIZE.fullmatch(first)
        if set(_words(first)) <= known or (size and size[1].casefold() == label.casefold()):
            hint = hint[end.end() :]  # of what it is the height, the title of its group says
            continue
        if size and set(_words(size[2])) <= known:
            hint = f"{size[1]}{hint[end.start() :]}"
        break
    hint = LEFT_OUT.sub(lambda found: f"{'. ' if found[1] == '; ' else found[1]}Left empty: ", hint)
    return f"{hint[:1].upper()}{hint[1:]}"


def _words(text: str) -> list[str]:
    plain = re.findall(r"[a-z]+", re.sub(r"['’]s?\b", "", text.lower()))
    return [ALIKE.get(word, word.rstrip("s")) for word in plain if word not in STOP]
