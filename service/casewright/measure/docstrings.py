"""The docstring of a rule, taken apart, so that an explanation is always the one beside the sum."""

import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache

SECTION = re.compile(r"(Rule|Args|Attributes|Returns|Raises|Source):[ ]*(.*)")
ENTRY = re.compile(r"(\*{0,2}\w+(?:\.\w+)*):[ ]+(.*)")
BRACKETED = re.compile(r"\[([^\[\]]+)\]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Docstring:
    """What a docstring says, section by section; empty where it says nothing.

    Attributes:
        summary: the first line: what it gives
        rule: the formula, in the names of the arguments
        args: what each argument, or each attribute of a class, means, in the order described
        returns: what comes back
        raises: when each error is raised
        source: where the rule comes from
    """

    summary: str = ""
    rule: str = ""
    args: dict[str, str] = field(default_factory=dict)
    returns: str = ""
    raises: dict[str, str] = field(default_factory=dict)
    source: str = ""


@cache
def read_docstring(documented: Callable[..., object]) -> Docstring:
    """The docstring of a function or class, section by section.

    Args:
        documented: a function, a method or a class

    Returns:
        Its sections; all empty when it has no docstring of its own.

    Source: common practice.
    """
    text = inspect.cleandoc(getattr(documented, "__doc__", None) or "")
    sections = _sections(text)
    return Docstring(
        summary=text.partition("\n")[0].strip(),
        rule=_joined(sections.get("Rule", [])),
        args=_entries(sections.get("Args") or sections.get("Attributes", [])),
        returns=_joined(sections.get("Returns", [])),
        raises=_entries(sections.get("Raises", [])),
        source=_joined(sections.get("Source", [])),
    )


def units_in(described: str) -> tuple[str, ...]:
    """The units that a description names in square brackets.

    Args:
        described: the description of an argument or of what comes back

    Returns:
        What stands between each pair of brackets.

    Source: common practice.
    """
    return tuple(BRACKETED.findall(described))


def without_unit(described: str) -> str:
    """A description without the unit at its end, for where the unit stands beside the number.

    Args:
        described: the description of an argument or of what comes back

    Returns:
        The description up to its last bracket.

    Source: common practice.
    """
    return re.sub(r"\s*\[[^\[\]]+\]\.?$", "", described)


def _sections(text: str) -> dict[str, list[str]]:
    """The lines of each section; a heading starts one, and unindented prose after a gap ends it."""
    sections: dict[str, list[str]] = {}
    lines: list[str] = []
    after_gap = False
    for line in text.splitlines():
        if heading := SECTION.fullmatch(line):
            lines = sections.setdefault(heading[1], [])
            lines.extend(filter(None, [heading[2]]))
        elif after_gap and line and not line.startswith(" "):
            lines = []
        else:
            lines.append(line)
        after_gap = not line
    return sections


def _joined(lines: list[str]) -> str:
    """The lines of a section as one line of text."""
    return " ".join(" ".join(lines).split())


def _entries(lines: list[str]) -> dict[str, str]:
    """The entries of a section, name and meaning; a line indented further continues its entry."""
    entries: dict[str, str] = {}
    name = ""
    indent = min((len(line) - len(line.lstrip()) for line in lines if line.strip()), default=0)
    for line in lines:
        entry = ENTRY.fullmatch(line[indent:].rstrip())
        if entry:
            name = entry[1].lstrip("*")
            entries[name] = entry[2]
        elif name and line.strip():
            entries[name] = f"{entries[name]} {line.strip()}"
    return entries
