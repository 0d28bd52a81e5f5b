"""What the bench makes again after a change that was agreed: drawer by drawer, from which stage on."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import Rework
from casewright.pieces.built.rework_fates import Fate, PartFate, differences_named
from casewright.pieces.built.rework_stages import CASE, LOOSE, Made, Reached, assembly_of, comes_last
from casewright.pieces.layout.parts import Part

_BOARDS = {Made.CUT: "milled", Made.JOINTED: "dry", Made.GLUED: "run"}
"""The stage that a drawer has to reach again once a board of it is cut down that was so far."""
_BODY = {Made.CUT: "panels", Made.JOINTED: "joints", Made.GLUED: "closed"}
"""Likewise of a case."""
EVERY_SIZE = ""
"""What every measured size begins with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Remake:
    """What of a drawer, or of the case, is made again.

    Attributes:
        assembly: the opening of the drawer in the new design, such as `R5-1`; `C` for the case
        first: the first stage that has to be reached again
        until: the stage by which all is made again
        fresh: parts to be made new
        cut: parts to be cut down, or to be used in another place
        stay: parts that are made and stay
        taken_from: the opening for which the whole drawer was made; empty where it is its own
        forgets: how the names of measured sizes begin that hold no more, such as `SL.` or `F.width`
    """

    assembly: str
    first: str
    until: str
    fresh: tuple[PartFate, ...]
    cut: tuple[PartFate, ...]
    stay: tuple[PartFate, ...]
    taken_from: str
    forgets: tuple[str, ...]

    def forgets_size(self, name: str) -> bool:
        """Whether a size that was measured on the drawer holds no more.

        Args:
            name: of the size, such as `SL.thickness`

        Returns:
            True where what it was measured on is made again.

        Source: common practice: a new board is measured anew.
        """
        return any(name.startswith(each) for each in self.forgets)


def remakes(
    found: Rework,
    before: Construction,
    after: Construction,
    made: Reached,
    now: Reached,
    follows: Mapping[str, str] | None = None,
) -> tuple[Remake, ...]:
    """What the bench makes again, the case first, then drawer by drawer.

    Args:
        found: what the change does to each part
        before: the unit as it was being made
        after: the unit as it is to be
        made: how far each drawer is, by its opening before the change
        now: the same by its opening in the new design, and how far the case is
        follows: where rows were moved, the opening that each drawer has now by the one that it had

    Returns:
        One for each that has begun and is made again in part; none where nothing that is made changes.

    Source: common practice; the order of work at the bench.
    """
    parts = {part.code: part for part in after.parts}
    owners = {part.code: assembly_of(after, part) for part in after.parts}
    homes = {part.code: assembly_of(before, part) for part in before.parts}
    own = {CASE: CASE} | {
        new: old
        for old, new in (follows or {each.sizes.code: each.sizes.code for each in before.drawers}).items()
    }
    by_owner: dict[str, list[PartFate]] = {CASE: []}
    by_owner.update((each.sizes.code, []) for each in after.drawers)
    for each in found.parts:
        if each.becomes:
            by_owner[owners[each.becomes]].append(each)
    return tuple(
        one
        for assembly, fates in by_owner.items()
        for one in _remake(assembly, own.get(assembly, ""), fates, parts, homes, made, now)
    )


def _remake(
    assembly: str,
    own: str,
    fates: list[PartFate],
    parts: Mapping[str, Part],
    homes: Mapping[str, str],
    made: Reached,
    now: Reached,
) -> Iterator[Remake]:
    """What is made again of one drawer or the case; nothing where it has not begun, or nothing changes."""
    stages = case_stages() if assembly == CASE else drawer_stages()
    stage = now.case if assembly == CASE else now.drawers.get(assembly, "")
    source = _whole_from(assembly, own, fates, homes)
    fresh = [each for each in fates if each.fate is Fate.NEW and stage]
    cut = [
        each
        for each in fates
        if each.made is not Made.NOTHING
        and (each.fate is Fate.MODIFIED or (homes.get(each.code, own) != own and not source))
    ]
    firsts = [_first(each, parts[each.becomes], assembly, stage) for each in (*fresh, *cut)]
    if source:
        firsts.append(_for_whole(made.drawers.get(source, ""), stages))
    if not firsts:
        return
    places = [place_of(each, stages) for each in firsts]
    reached = place_of(stage, stages) if stage else 0
    held = {each.code for each in (*fresh, *cut)}
    yield Remake(
        assembly=assembly,
        first=stages[min(places)].code,
        until=stages[max(reached, *places)].code,
        fresh=tuple(fresh),
        cut=tuple(cut),
        stay=tuple(each for each in fates if each.code not in held and each.made is not Made.NOTHING),
        taken_from=source,
        forgets=(EVERY_SIZE,) if source else tuple(_forgotten(fresh, cut)),
    )


def _whole_from(assembly: str, own: str, fates: Iterable[PartFate], homes: Mapping[str, str]) -> str:
    """The opening from which a whole drawer comes; empty where it is its own, or of several."""
    sources = {homes.get(each.code, "") if each.fate is not Fate.NEW else "" for each in fates}
    source = sources.pop() if len(sources) == 1 else ""
    return "" if assembly == CASE or source in (own, CASE) else source


def _for_whole(stage: str, stages: tuple[Stage, ...]) -> str:
    """The first stage of a drawer that goes to another opening: its next, or its fit in the case."""
    following = place_of(stage, stages) + 1 if stage else 0
    return stages[min(following, place_of("run", stages))].code


def _first(each: PartFate, part: Part, assembly: str, stage: str) -> str:
    """The first stage to be reached again for the sake of one part."""
    if assembly == CASE:
        if comes_last(part):
            return "closed"
        return "panels" if each.fate is Fate.NEW else _BODY[each.made]
    if part.code.rsplit("-", 1)[-1].startswith(LOOSE):
        stages = drawer_stages()
        is_glued = bool(stage) and place_of(stage, stages) >= place_of("glued", stages)
        return "run" if is_glued else "dry"
    return "milled" if each.fate is Fate.NEW else _BOARDS[each.made]


def _forgotten(fresh: Iterable[PartFate], cut: Iterable[PartFate]) -> Iterator[str]:
    """The sizes that no longer hold: all of a new part, of one that is cut down those that change."""
    for each in fresh:
        yield f"{each.becomes.rsplit('-', 1)[-1]}."
    for each in cut:
        mark = each.becomes.rsplit("-", 1)[-1]
        names = differences_named(each)
        yield from (f"{mark}.{name}" for name in names)
        if "thickness" in names:
            yield f"{mark}.in_rabbet"
