"""What becomes of one part when its design is changed, by what has been done to it."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import BoardFeet, CubicInches, Hours, Inches
from casewright.pieces.built.rework_stages import Made
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.parts import SIZES, Part

PLANED_AFTER = 1 / 16
"""What a jointed drawer may still lose in height by planing its upper edges (common practice) [in]."""

PLANED_LOWER = frozenset(("F", "BF", "SL", "SR", "B", *SHORT_BACKS, *INNER_SIDES, INNER_BACK))
"""The marks of the boards of a drawer that stand on edge."""

Difference = tuple[str, Inches, Inches]
"""A size by its name, what it was and what it becomes [in]."""


_SO_FAR = {Made.CUT: "cut to size", Made.JOINTED: "jointed", Made.GLUED: "glued in"}
"""What has been done to a part, in the middle of a sentence."""


class Fate(StrEnum):
    """What becomes of a part."""

    UNTOUCHED = "untouched"
    MODIFIED = "modified"
    SCRAPPED = "scrapped"
    NEW = "new"
    DROPPED = "not needed"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartFate:
    """One part, and what a change does to it.

    Attributes:
        code: its code before the change; of a new part, after it
        name: what it is
        fate: what becomes of it
        made: what has been done to it
        becomes: its code after the change; empty where it serves no more
        before: thickness, width and length before; empty for a new part [in]
        after: likewise after; empty for one that serves no more [in]
        reason: why, and what to do
        hours: what has gone into it, where it is scrapped [h]
        offcut: what of it goes to the offcut bin [bd ft]
        wood: its wood
    """

    code: str
    name: str
    fate: Fate
    made: Made
    becomes: str = ""
    before: tuple[Inches, ...] = ()
    after: tuple[Inches, ...] = ()
    reason: Words
    hours: Hours = 0.0
    offcut: BoardFeet = 0.0
    wood: str


def noun_of(name: str) -> str:
    """What kind of part one is, by its name, without the row or the place that it has there.

    Args:
        name: such as `Drawer front, row 2`

    Returns:
        Such as `drawer front`.

    Source: the cut list.
    """
    noun = name.partition(",")[0]
    return f"{noun[:1].lower()}{noun[1:]}"


def finished_feet(volume: CubicInches) -> BoardFeet:
    """Finished wood in board feet, as it lies in the offcut bin.

    Rule: volume / 144

    Args:
        volume: finished volume [cu in]

    Returns:
        The feet [bd ft]

    Source: a board foot is 144 cubic inches.
    """
    return volume / 144


@dataclass(frozen=True, slots=True, kw_only=True)
class MadePart:
    """A part as it is made: how far, how it is marked out, and its share of the hours."""

    part: Part
    assembly: str
    made: Made
    marks: object
    hours: Hours


def _sizes(part: Part) -> tuple[Inches, ...]:
    return tuple(float(getattr(part, name)) for name in SIZES)


def differences(part: Part, then: Part) -> list[Difference]:
    """The sizes in which two parts differ.

    Args:
        part: the one
        then: the other

    Returns:
        Each with what it was and what it becomes [in]

    Source: geometry.
    """
    return [
        (name, was, becomes)
        for name, was, becomes in zip(SIZES, _sizes(part), _sizes(then), strict=True)
        if abs(was - becomes) > TOLERANCE
    ]


def differences_named(fate: PartFate) -> tuple[str, ...]:
    """The names of the sizes that a change gives a part otherwise.

    Args:
        fate: what becomes of the part

    Returns:
        Such as `width`; none for a part that is new, or serves no more.

    Source: geometry.
    """
    both = zip(SIZES, fate.before, fate.after, strict=False)
    return tuple(name for name, was, becomes in both if abs(was - becomes) > TOLERANCE)


def _is_of_wood(part: Part, then: Part) -> bool:
    return (part.wood, part.cut, part.sheet) == (then.wood, then.cut, then.sheet)


def kept_as(found: MadePart, then: Part, marks: object) -> PartFate | None:
    """The part as one of the new design.

    Args:
        found: the part, and what has been done to it
        then: the part of the new design
        marks: how that is marked out

    Returns:
        It is untouched or modified; None where it cannot serve.

    Source: common practice.
    """
    part, differs = found.part, differences(found.part, then)
    if found.made is Made.NOTHING:
        return _redrawn(found, then, differs)
    if not _is_of_wood(part, then) or any(becomes > was + TOLERANCE for _, was, becomes in differs):
        return None
    if not differs:
        return _same_size(found, then, found.marks == marks)
    if found.made is Made.CUT or _can_be_planed(found, differs):
        return fate_of(found, Fate.MODIFIED, then, strung("; ", map(_how, differs)) + ".")
    return None


def _redrawn(found: MadePart, then: Part, differs: list[Difference]) -> PartFate:
    """A part that nobody has cut yet."""
    told = [
        say("{} {:fraction} in place of {:fraction}", name, becomes, was) for name, was, becomes in differs
    ]
    if not _is_of_wood(found.part, then):
        told.append(say("{} in place of {}", then.wood, found.part.wood))
    if not told:
        return fate_of(found, Fate.UNTOUCHED, then, "As it was; nothing is cut yet.")
    reason = say("Not cut yet, so nothing is lost: {}.", strung("; ", told))
    return fate_of(found, Fate.MODIFIED, then, reason)


def _same_size(found: MadePart, then: Part, marked_alike: bool) -> PartFate | None:
    if marked_alike:
        return fate_of(found, Fate.UNTOUCHED, then, "As it was.")
    if found.made is Made.CUT:
        reason = "Its size stays; its joints are not cut yet: use the new card."
        return fate_of(found, Fate.UNTOUCHED, then, reason)
    return None


def _can_be_planed(found: MadePart, differs: list[Difference]) -> bool:
    """Whether all that a jointed part of a drawer loses is a little height, planed off its upper edge."""
    mark = found.part.code.rsplit("-", 1)[-1]
    return mark in PLANED_LOWER and all(
        name == "width" and was - becomes <= PLANED_AFTER + TOLERANCE for name, was, becomes in differs
    )


def _how(change: Difference) -> Words:
    name, was, becomes = change
    verb = {"thickness": "plane it from {} to {}", "width": "rip it from {} to {}"}.get(
        name, "cut it from {} to {} long"
    )
    return say(verb, was, becomes)


def fate_of(
    found: MadePart,
    fate: Fate,
    then: Part | None,
    reason: Words,
    *,
    hours: Hours = 0.0,
) -> PartFate:
    """The fate of a part, with what of it goes to the offcut bin.

    Args:
        found: the part, and what has been done to it
        fate: what becomes of it
        then: the part of the new design; None where it serves no more
        reason: why, and what to do
        hours: what has gone into it, where it is lost [h]

    Returns:
        Its fate.

    Source: common practice.
    """
    part = found.part
    left = (part.volume - then.volume if then else part.volume) if found.made is not Made.NOTHING else 0.0
    return PartFate(
        code=part.code,
        name=part.name,
        fate=fate,
        made=found.made,
        becomes=then.code if then else "",
        before=_sizes(part),
        after=_sizes(then) if then else (),
        reason=reason,
        hours=hours,
        offcut=finished_feet(volume=max(0.0, left)),
        wood=part.wood,
    )


def gone(found: MadePart, then: Part | None) -> PartFate:
    """A part that serves no more.

    Args:
        found: the part, and what has been done to it
        then: the part that has its code in the new design; None where there is none

    Returns:
        It is scrapped, or was never cut; with the reason.

    Source: common practice.
    """
    if found.made is Made.NOTHING:
        return fate_of(found, Fate.DROPPED, None, "The new design has no such part; nothing was cut.")
    word = _SO_FAR[found.made]
    if then is None:
        reason: Words = f"The new design has no such part, and it is {word}."
    elif not _is_of_wood(found.part, then):
        reason = f"It is {found.part.wood}, and {word}; the new design has {then.wood}."
    elif not (differs := differences(found.part, then)):
        reason = f"It is {word}, and the new design has its joints elsewhere."
    elif larger := [each for each in differs if each[2] > each[1] + TOLERANCE]:
        name, was, becomes = larger[0]
        reason = say("It is {} at {}; the new {} is {}.", word, was, name, becomes)
    else:
        reason = say("It is {}; cut down to {} {}, it would lose its joints.", word, *_first(differs))
    return fate_of(found, Fate.SCRAPPED, None, reason, hours=found.hours)


def _first(differs: Iterable[Difference]) -> tuple[Inches, str]:
    name, _, becomes = next(iter(differs))
    return becomes, name


def to_be_made(part: Part) -> PartFate:
    """A part of the new design that nothing serves for.

    Args:
        part: the part

    Returns:
        It is new.

    Source: common practice.
    """
    return PartFate(
        code=part.code,
        name=part.name,
        fate=Fate.NEW,
        made=Made.NOTHING,
        becomes=part.code,
        after=_sizes(part),
        reason="To be made.",
        wood=part.wood,
    )
