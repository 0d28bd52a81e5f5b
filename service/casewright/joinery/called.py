"""A joint whose boards go by other names in the piece than in the family that works it out.

A drawer's side that slides into its front is cut as a divider that slides into a case side; a back that is
joined as the front is cut as one. Cards, templates and checks call each board what it is.
"""

import re
from dataclasses import dataclass, replace
from typing import Any

from casewright.joinery.joint import Joint, Setting
from casewright.joinery.solid import Cut, Shape
from casewright.measure.findings import Finding
from casewright.measure.saying import Said, Words

Names = tuple[tuple[str, str], ...]
"""Words of the family, each with what stands for it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Called:
    """A joint with its boards called by other names.

    Attributes:
        of: the joint, worked out
        names: words of its family, each with what stands for it
        about: the code by which its findings go
        without: names of settings that say nothing here
        unasked: checks that say nothing here, by their rules
        first: settings that come before its own
    """

    of: Joint
    names: Names
    about: str = ""
    without: tuple[str, ...] = ()
    unasked: tuple[str, ...] = ()
    first: tuple[Setting, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Every check that was carried out, passes too."""
        return tuple(
            replace(
                each,
                message=renamed(each.message, self.names),
                remedy=renamed(each.remedy, self.names),
                about=self.about or each.about,
            )
            for each in self.of.findings
            if each.rule not in self.unasked
        )

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work."""
        own = (
            replace(each, label=renamed(each.label, self.names), note=renamed(each.note, self.names))
            for each in self.of.settings
            if each.name not in self.without
        )
        return (*self.first, *own)

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        shape, names = self.of.shape, self.names
        return replace(
            shape,
            boards=tuple(replace(each, name=_plain(each.name, names)) for each in shape.boards),
            cuts=tuple(_cut(each, names) for each in shape.cuts),
            strips=tuple(
                replace(
                    each,
                    board=_plain(each.board, names),
                    face=_plain(each.face, names),
                    foot=_plain(each.foot, names),
                )
                for each in shape.strips
            ),
            notes=tuple(renamed(each, names) for each in shape.notes),
        )

    def __getattr__(self, name: str) -> Any:
        """Whatever else the joint has: its tails, the places of its pins, its advice."""
        found = getattr(self.of, name)
        if name == "advice":
            return tuple(renamed(each, self.names) for each in found)
        if name == "spans":
            return tuple((_plain(title, self.names), places) for title, places in found)
        return renamed(found, self.names) if isinstance(found, str | Said) else found


def renamed(words: Words, names: Names) -> Words:
    """Words with other names for the boards.

    Args:
        words: what a joint says
        names: words of its family, each with what stands for it

    Returns:
        The words; lengths in them stay as they are.

    Source: common practice.
    """
    if isinstance(words, str):
        return _plain(words, names)
    values = tuple(renamed(each, names) if isinstance(each, str | Said) else each for each in words.values)
    return Said(_plain(words.template, names), values)


def _plain(text: str, names: Names) -> str:
    """Text with every name replaced at once, so that two boards can change theirs with each other."""
    others = dict(names)
    pattern = "|".join(re.escape(name) for name in sorted(others, key=len, reverse=True))

    def other(found: re.Match[str]) -> str:
        name = others[found[1].lower()]
        return (name[0].upper() + name[1:] if found[1][0].isupper() else name) + found[2]

    return re.sub(rf"(?<![\w{{])({pattern})(s?)(?!\w)", other, text, flags=re.IGNORECASE) if names else text


def _cut(cut: Cut, names: Names) -> Cut:
    return replace(
        cut,
        boards=tuple(_plain(each, names) for each in cut.boards),
        dimensions=tuple(replace(each, name=_plain(each.name, names)) for each in cut.dimensions),
    )
