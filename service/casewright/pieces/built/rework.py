"""What a change of a unit does to the parts that are made already: untouched, modified, scrapped or new."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from casewright.measure.saying import say
from casewright.measure.units import BoardFeet, Hours
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework_fates import (
    Fate,
    MadePart,
    PartFate,
    fate_of,
    gone,
    kept_as,
    noun_of,
    to_be_made,
)
from casewright.pieces.built.rework_marks import marks_of
from casewright.pieces.built.rework_stages import (
    CASE,
    LOOSE,
    Made,
    Reached,
    assembly_of,
    comes_last,
    made_so_far,
)
from casewright.pieces.layout.parts import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class Rework:
    """What a change of a unit does to what is made.

    Attributes:
        parts: every part, the old ones in their order, then the new
        hours: what has gone into scrapped parts [h]
        offcut: what goes to the offcut bin [bd ft]
    """

    parts: tuple[PartFate, ...]
    hours: Hours
    offcut: BoardFeet

    def of(self, fate: Fate) -> tuple[PartFate, ...]:
        """The parts of one fate."""
        return tuple(each for each in self.parts if each.fate is fate)


def share_of_hours(hours: Hours, parts: int) -> Hours:
    """What of an assembly's hours has gone into one of its parts.

    Rule: hours / parts

    Args:
        hours: what has gone into the drawer, or into the case [h]
        parts: how many parts it has

    Returns:
        The share of one part [h]

    Source: common practice: nobody clocks single parts, so each takes an even share.
    """
    return hours / parts if parts else 0.0


def rework(
    before: Construction,
    after: Construction,
    reached: Reached,
    follows: Mapping[str, str] | None = None,
) -> Rework:
    """What becomes of every part of a unit when its design is changed.

    A part is looked for under its own code first, as its drawer is called now; then as another part of the
    same kind, exactly or cut down, the one with the least waste. A glued drawer moves to another opening only
    as a whole.

    Args:
        before: the unit as it is being made
        after: the unit as it is to be
        reached: how far each drawer and the case are
        follows: where rows were moved, the opening that each drawer has now by the one that it had; a
            drawer that is taken out is not among them. None where every drawer stays at its opening

    Returns:
        The fate of every part.

    Source: common practice.
    """
    old = _olds(before, reached)
    own = own_codes(before, follows)
    new = {part.code: part for part in after.parts}
    marks = marks_of(after)
    fates: dict[str, PartFate] = {}
    served: set[str] = set()
    _whole_drawers(after, old, own, fates, served, marks)
    for code, found in old.items():
        mine = own[code]
        fate = kept_as(found, new[mine], marks[mine]) if mine in new else None
        if fate is not None and code not in fates and mine not in served:
            fates[code] = fate
            served.add(mine)
    _cut_down(old, new, fates, served, marks)
    _glued_to_scrap(old, fates, served)
    for code, found in old.items():
        if code not in fates:
            fates[code] = gone(found, new.get(own[code]))
    fresh = tuple(to_be_made(part) for code, part in new.items() if code not in served)
    parts = (*(fates[code] for code in old), *fresh)
    return Rework(
        parts=parts,
        hours=sum(each.hours for each in parts),
        offcut=sum(each.offcut for each in parts),
    )


def _olds(unit: Construction, reached: Reached) -> dict[str, MadePart]:
    owners = {part.code: assembly_of(unit, part) for part in unit.parts}
    counts: dict[str, int] = {}
    for owner in owners.values():
        counts[owner] = counts.get(owner, 0) + 1
    marks = marks_of(unit)
    return {
        part.code: MadePart(
            part=part,
            assembly=owners[part.code],
            made=made_so_far(unit, part, owners[part.code], reached),
            marks=marks[part.code],
            hours=share_of_hours(
                hours=reached.hours.get(owners[part.code], 0.0), parts=counts[owners[part.code]]
            ),
        )
        for part in unit.parts
    }


def own_codes(before: Construction, follows: Mapping[str, str] | None = None) -> Mapping[str, str]:
    """What each part is called in the new design, if it stays what it is.

    Args:
        before: the unit as it is being made
        follows: where rows were moved, the opening that each drawer has now by the one that it had

    Returns:
        Its code by the one that it has; empty where its drawer is taken out.

    Source: the codes of the parts.
    """
    if follows is None:
        return {part.code: part.code for part in before.parts}
    found = {}
    for part in before.parts:
        owner = assembly_of(before, part)
        there = owner if owner == CASE else follows.get(owner, "")
        mark = part.code.rsplit("-", 1)[-1]
        found[part.code] = part.code if owner == CASE else there and f"{before.spec.code}-{there}-{mark}"
    return found


def _whole_drawers(
    after: Construction,
    old: Mapping[str, MadePart],
    own: Mapping[str, str],
    fates: dict[str, PartFate],
    served: set[str],
    marks: Mapping[str, object],
) -> None:
    """Drawers with their joints cut that stay as they are: in their own opening first, then in another."""
    new: dict[str, dict[str, Part]] = {drawer.code: {} for drawer in after.drawers}
    for part in after.parts:
        owner, _, mark = part.code.rpartition("-")
        if owner in new:
            new[owner][mark] = part
    made: dict[str, dict[str, MadePart]] = {}
    homes: dict[str, str] = {}
    for found in old.values():
        owner, _, mark = found.part.code.rpartition("-")
        if found.assembly != CASE:
            made.setdefault(owner, {})[mark] = found
            homes[owner] = own[found.part.code].rpartition("-")[0]
    left = {
        code: parts for code, parts in made.items() if max(each.made for each in parts.values()) > Made.CUT
    }
    for is_home in (True, False):
        for code in [*left]:
            for other in [homes[code]] if is_home else [*new]:
                moved = _all_as_they_are(left[code], new.get(other, {}), marks)
                if moved:
                    why = f"The drawer is as the new {other} has to be: use it there."
                    fates.update(
                        (each.code, each if is_home else replace(each, reason=why)) for each in moved
                    )
                    served.update(each.becomes for each in moved)
                    del left[code], new[other]
                    break


def _all_as_they_are(
    mine: Mapping[str, MadePart], theirs: Mapping[str, Part], marks: Mapping[str, object]
) -> list[PartFate]:
    """Every part of a drawer as one of another; none where a single one would have to change."""
    if mine.keys() != theirs.keys():
        return []
    moved = [kept_as(found, theirs[mark], marks[theirs[mark].code]) for mark, found in mine.items()]
    kept = [each for each in moved if each is not None and each.fate is Fate.UNTOUCHED]
    return kept if len(kept) == len(moved) else []


def _cut_down(
    old: Mapping[str, MadePart],
    new: Mapping[str, Part],
    fates: dict[str, PartFate],
    served: set[str],
    marks: Mapping[str, object],
) -> None:
    """Loose parts that are left over, for new ones of their kind: the largest first, with the least waste."""
    left: dict[tuple[object, ...], list[MadePart]] = {}
    for code, found in old.items():
        if code not in fates and found.made is Made.CUT:
            left.setdefault(_kind(found.part), []).append(found)
    wanted = sorted((part for code, part in new.items() if code not in served), key=lambda part: -part.volume)
    for part in wanted:
        best: tuple[float, PartFate, MadePart] | None = None
        for found in left.get(_kind(part), ()):
            fate = kept_as(found, part, marks[part.code])
            if fate is not None and (best is None or fate.offcut < best[0]):
                best = (fate.offcut, fate, found)
        if best is not None:
            _, fate, found = best
            left[_kind(part)].remove(found)
            fates[fate.code] = replace(fate, reason=say("Use it as {}. {}", part.code, fate.reason))
            served.add(part.code)


def _glued_to_scrap(old: Mapping[str, MadePart], fates: dict[str, PartFate], served: set[str]) -> None:
    """What is glued to a part that is scrapped goes with it."""
    lost: dict[str, str] = {}
    for code, found in old.items():
        if code not in fates and found.made is Made.GLUED and not _is_loose(found):
            lost.setdefault(found.assembly, noun_of(found.part.name))
    for code, found in old.items():
        if code in fates and found.made is Made.GLUED and found.assembly in lost and not _is_loose(found):
            served.discard(fates[code].becomes)
            why = f"It is glued to the {lost[found.assembly]}, which cannot stay."
            fates[code] = fate_of(found, Fate.SCRAPPED, None, why, hours=found.hours)


def _is_loose(found: MadePart) -> bool:
    """Whether a part comes out again: a bottom in its groove, or what is screwed to the body of a case."""
    if found.assembly == CASE:
        return comes_last(found.part)
    return found.part.code.rsplit("-", 1)[-1].startswith(LOOSE)


def _kind(part: Part) -> tuple[object, ...]:
    """What two parts have in common of which one can be cut from the other."""
    return (noun_of(part.name), part.wood, part.cut, part.sheet)


def by_fate(found: Rework) -> Iterator[tuple[Fate, tuple[PartFate, ...]]]:
    """The parts by what becomes of them, those first that cost the most.

    Args:
        found: what a change does

    Returns:
        Each fate that any part has, with its parts.

    Source: common practice.
    """
    order = (Fate.SCRAPPED, Fate.NEW, Fate.MODIFIED, Fate.DROPPED, Fate.UNTOUCHED)
    return ((fate, found.of(fate)) for fate in order if found.of(fate))
