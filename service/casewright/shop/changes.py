"""What was before and after an act, line by line, from what the history keeps of it."""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

MOST = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One thing that became another.

    Attributes:
        what: its name
        before: what it was; empty for nothing
        after: what it became; empty for nothing
    """

    what: str
    before: str
    after: str


def changes(
    before: Mapping[str, Any] | None, after: Mapping[str, Any] | None, hidden: Container[str] = ()
) -> tuple[Change, ...]:
    """What an act changed, by the names of its figures.

    Args:
        before: what was there
        after: what is there since
        hidden: names that the reader may not see

    Returns:
        One line for each thing that differs, at most 60; none where the act made something new.
    """
    was, becomes = (dict(_flat(held, hidden)) for held in (before or {}, after or {}))
    return tuple(
        Change(what=name, before=was.get(name, ""), after=becomes.get(name, ""))
        for name in dict.fromkeys((*was, *becomes))
        if was.get(name, "") != becomes.get(name, "")
    )[:MOST]


def _flat(held: Mapping[str, Any], hidden: Container[str]) -> Iterator[tuple[str, str]]:
    for name, value in held.items():
        if name not in hidden:
            yield from _lines(name.replace("_", " "), value)


def _lines(name: str, value: Any) -> Iterator[tuple[str, str]]:
    match value:
        case Mapping():
            for inner, each in value.items():
                yield from _lines(f"{name}, {str(inner).replace('_', ' ')}", each)
        case list() if any(isinstance(each, Mapping | list) for each in value):
            for number, each in enumerate(value, 1):
                yield from _lines(f"{name.removesuffix('s')} {number}", each)
        case list():
            yield name, "; ".join(_plain(each) or "rest" for each in value)
        case _:
            yield name, _plain(value)


def _plain(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:.10g}" if isinstance(value, float) else str(value)
