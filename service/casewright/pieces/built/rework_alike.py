"""Parts to which a change does the same, told in one line."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.pieces.built.rework_fates import PartFate, noun_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """Parts of one kind and size that share their fate.

    Attributes:
        noun: what each is, such as `drawer front`
        parts: the parts, at least one
    """

    noun: str
    parts: tuple[PartFate, ...]

    @property
    def one(self) -> PartFate:
        """Any of them: they differ in their codes alone."""
        return self.parts[0]


def alike(parts: Iterable[PartFate]) -> tuple[Alike, ...]:
    """Parts of one kind, size and fate together, in the order in which the first of each comes.

    Args:
        parts: what becomes of some parts

    Returns:
        Each part in one of them.

    Source: common practice: a cut list counts what is alike.
    """
    found: dict[tuple[object, ...], list[PartFate]] = {}
    for each in parts:
        sizes = (each.before, each.after, round(each.hours, 6))
        key = (noun_of(each.name), each.fate, each.made, each.wood, str(each.reason), *sizes)
        found.setdefault(key, []).append(each)
    return tuple(Alike(noun=noun_of(same[0].name), parts=tuple(same)) for same in found.values())
