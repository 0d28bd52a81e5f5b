"""Ways out for parts that found no place: each is tried, and what it costs in wood is what that came to."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.parts_spec import CutPart, GlueUp
from casewright.cutting.budget import Budget, never, say_nothing
from casewright.cutting.plans.blanks import thickness_for_two
from casewright.cutting.plans.buying import gluable_of, one_more, too_wide
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.ground import Ground, class_thickness
from casewright.cutting.plans.lots import Lot, lot_of
from casewright.cutting.plans.trying import Found, Table, tried
from casewright.cutting.plans.values import Unplaced, WayOut
from casewright.cutting.plans.worths import volume, worths_of
from casewright.measure.lengths import to_ticks
from casewright.measure.saying import Words, say
from casewright.measure.units import Count

MOST_WAYS = 8
FEW = 6
"""So many marks are named; of more only how many they are."""
ORDER = (
    "other stock",
    "hidden face",
    "resaw",
    "glue up",
    "turn",
    "sapwood",
    "other class",
    "one more",
)
"""Of ways that cost the same, the one that changes less of the piece goes first (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidLot:
    """A lot with what lies on its boards.

    Attributes:
        lot: the lot
        desk: what lies
        unplaced: the parts for which there was no room
    """

    lot: Lot
    desk: Desk
    unplaced: tuple[Unplaced, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What could be asked of parts instead.

    Attributes:
        kind: which way out it is
        parts: all parts without a place, those that it is about asked for like that
        of: the marks of the parts that it is about
        change: the same as the JSON of a cut file has it
        words: what is done, with a place for the marks of the parts
    """

    kind: str
    parts: tuple[CutPart, ...]
    of: frozenset[str]
    change: Mapping[str, Any]
    words: str


def ways_out(file: CutFile, laid: LaidLot, others: Iterable[LaidLot], budget: Budget) -> tuple[WayOut, ...]:
    """How parts without a place could have one, the best first.

    Args:
        file: the cut file
        laid: the lot in which they have none
        others: all lots
        budget: of the layout; the ways out are tried after its time, and take less than a second as a rule

    Returns:
        The ways: those that find a place for all parts first, then by what they cost in wood.

    Source: common practice, each way tried.
    """
    short = Counter({each.code: each.count for each in laid.unplaced})
    parts = tuple(
        part.model_copy(update={"count": short[part.code], "placed": ()})
        for part in laid.lot.parts
        if short[part.code]
    )
    if not parts:
        return ()
    # Who stops the search for a better layout still wants to know what to do about the parts without a place.
    table = _table(file, laid.lot, laid.desk, replace(budget, tell=say_nothing, stop=never))
    found = [
        *_with_spares(table, parts),
        *_behind_what_lies(table, parts),
        *_with_wishes(table, parts),
        *_from_other_classes(table, parts, others),
        *_bought(table, parts),
    ]
    ranked = sorted(found, key=lambda one: (one.lacking, one.cost, ORDER.index(one.kind)))
    kept: list[WayOut] = []
    for way in ranked:
        if not any(_is_less(other.change, way.change) or other.change == way.change for other in kept):
            kept.append(way)
    return tuple(kept[:MOST_WAYS])


def _is_less(change: Mapping[str, Any], other: Mapping[str, Any]) -> bool:
    """Does one way out ask for a part of what another asks for, and come to as much or more?"""
    if "more" in change or "more" in other or not set(change.get("stock", ())) <= set(other.get("stock", ())):
        return False
    same = change.get("set") == other.get("set")
    return not change.get("parts") or (same and set(change["parts"]) <= set(other.get("parts", ())))


def _table(file: CutFile, lot: Lot, desk: Desk, budget: Budget) -> Table:
    return Table(
        file=file,
        lot=lot,
        desk=desk,
        stages=file.stages if lot.is_sheets else 3,
        worths=worths_of(file, lot.wood, lot.thickness_class),
        budget=budget,
    )


def _with_spares(table: Table, parts: tuple[CutPart, ...]) -> Iterator[WayOut]:
    if table.lot.spare:
        found = tried(table, parts, table.lot.spare)
        spares = _spares(table, found)
        if found.placed and spares:
            yield _way(table, "other stock", parts, found, {}, say("Take {} too", _listed(spares)))


def _with_wishes(table: Table, parts: tuple[CutPart, ...]) -> Iterator[WayOut]:
    """Each wish on what the layout leaves; where that is not enough, with spare stock, too."""
    for wish in _wishes(table, parts):
        for more in ((), table.lot.spare) if table.lot.spare else ((),):
            found = tried(table, wish.parts, more)
            spares = _spares(table, found)
            eased = [code for code in found.placed if code in wish.of]
            if eased and (spares or not more):
                words = say(wish.words, _listed(eased))
                if spares:
                    words = say("{}, and take {} too", words, _listed(spares))
                change = {"parts": sorted(set(eased)), "set": wish.change}
                yield _way(table, wish.kind, parts, found, change, words)
            if len(found.placed) == sum(part.count for part in parts):
                break


def _wishes(table: Table, parts: tuple[CutPart, ...]) -> Iterator[Wish]:
    """What could be asked of the parts instead, as far as the stock makes a difference."""
    grounds = (*table.lot.grounds, *table.lot.spare)
    gluable = gluable_of(table, parts)
    wide = too_wide(table, gluable)
    for kind, change, update, some, words in (
        ("glue up", {"glue_up": {}}, {"glue_up": GlueUp()}, wide, "Glue {} up from strips"),
        (
            "glue up",
            {"glue_up": {}},
            {"glue_up": GlueUp()},
            gluable if len(gluable) > len(wide) else [],
            "Glue {} up from strips",
        ),
        (
            "resaw",
            {"resaw": True},
            {"resaw": True},
            _resawn(table, parts),
            "Saw two of {} from one thickness",
        ),
        (
            "sapwood",
            {"face": "B"},
            {"face": "B"},
            [part for part in parts if part.face == "A" and any(ground.sap for ground in grounds)],
            "Allow sapwood on {}",
        ),
        (
            "hidden face",
            {"clear": "one face"},
            {"clear": "one face"},
            [part for part in parts if part.clear == "both faces" and any(ground.back for ground in grounds)],
            "Let the hidden face of {} have a defect",
        ),
        (
            "turn",
            {"grain": "any"},
            {"grain": "any"},
            [part for part in parts if table.lot.is_sheets and part.grain == "along" and part.ends == "any"],
            "Let the grain of {} run the other way",
        ),
    ):
        if some:
            of = frozenset(part.code for part in some)
            asked = tuple(part.model_copy(update=update) if part.code in of else part for part in parts)
            yield Wish(kind=kind, parts=asked, of=of, change=change, words=words)


def _behind_what_lies(table: Table, parts: tuple[CutPart, ...]) -> Iterator[WayOut]:
    """Parts that could be sawn from the thickness behind their fellows, which have a place already."""
    placed: list[str] = []
    for part in parts:
        if part.resaw or part.glue_up or table.lot.is_sheets or part.thickness is None:
            continue
        needed = to_ticks(thickness_for_two(part.thickness, table.file.saw))
        fellows = sum(
            each.blank.codes == (part.code,) and table.desk.ground(code).thickness >= needed
            for (code, _), lies in table.desk.begun.items()
            for each in lies
        )
        placed += [part.code] * min(fellows, part.count)
    if placed:
        words = say("Saw two of {} from one thickness", _listed(sorted(set(placed))))
        found = Found(placed=tuple(placed), begun=())
        change = {"parts": sorted(set(placed)), "set": {"resaw": True}}
        yield _way(table, "resaw", parts, found, change, words)


def _resawn(table: Table, parts: Iterable[CutPart]) -> list[CutPart]:
    """Parts of which two could come from one thickness."""
    thickest = max((ground.thickness for ground in (*table.lot.grounds, *table.lot.spare)), default=0)
    return [
        part
        for part in parts
        if not (part.resaw or part.glue_up or table.lot.is_sheets)
        and part.count > 1
        and part.thickness is not None
        and to_ticks(thickness_for_two(part.thickness, table.file.saw)) <= thickest
    ]


def _from_other_classes(
    table: Table, parts: tuple[CutPart, ...], others: Iterable[LaidLot]
) -> Iterator[WayOut]:
    """Thicker boards of the same wood, planed down; what matches stays with its fellows."""
    lot, file = table.lot, table.file
    if lot.is_sheets:
        return
    matched = {code for each in file.sets for row in each.rows for code in row}
    counts = {part.code: part.count for part in lot.parts}
    some = tuple(part for part in parts if part.code not in matched and counts[part.code] == part.count)
    own = class_thickness(lot.thickness_class)
    classes = {
        board.thickness_class
        for board in file.boards
        if board.wood.casefold() == lot.wood.casefold() and class_thickness(board.thickness_class) > own
    }
    laid = {(each.lot.wood.casefold(), each.lot.thickness_class): each for each in others}
    for name in sorted(classes, key=class_thickness) if some else ():
        there = laid.get((lot.wood.casefold(), name))
        held = there.lot if there else lot_of(file, lot.wood, name, ())
        desk = there.desk if there else Desk(held, table.desk.kerf, table.desk.offcuts)
        thicker = replace(_table(file, held, desk, table.budget), worths=table.worths)
        found = tried(thicker, some, held.spare)
        if found.placed:
            spares = _spares(thicker, found)
            words = say("Plane {} down from {}", _listed(found.placed), name)
            if spares:
                words = say("{}, and take {} for it", words, _listed(spares))
            change = {"parts": sorted(set(found.placed)), "set": {"class": name}}
            yield _way(thicker, "other class", parts, found, change, words)


def _bought(table: Table, parts: tuple[CutPart, ...]) -> Iterator[WayOut]:
    more = one_more(table, parts)
    if more is None:
        return
    kind = "sheet" if table.lot.is_sheets else "board"
    called = f"{table.lot.wood} {table.lot.thickness_class}".strip()
    if more.count == 1:
        words = say("Get one more {} of {}, {} × {} or larger", kind, called, more.length, more.width)
    else:
        words = say("Get {} more {}s of {}, {} × {}", str(more.count), kind, called, more.length, more.width)
    change: dict[str, Any] = {"more": {f"{kind}s": [more.data]}}
    if more.glued:
        words = say("{}, and glue {} up from strips", words, _listed(more.glued))
        change |= {"parts": list(more.glued), "set": {"glue_up": {}}}
    yield _way(table, "one more", parts, more.found, change, words)


def _spares(table: Table, found: Found) -> list[str]:
    return [ground.stock.code for _, ground in found.begun if ground in table.lot.spare]


def _way(
    table: Table,
    kind: str,
    parts: Sequence[CutPart],
    found: Found,
    change: Mapping[str, Any],
    words: Words,
) -> WayOut:
    spares = _spares(table, found)
    return WayOut(
        kind=kind,
        words=words,
        codes=found.placed,
        short=sum(part.count for part in parts),
        boards=tuple(name for name, _ in found.begun),
        cost=found.cost(table.worths),
        measure=table.worths.measure,
        feet=_feet([ground for _, ground in found.begun]),
        change={**change, **({"stock": spares} if spares else {})},
    )


def _feet(grounds: Iterable[Ground]) -> float:
    """Board feet, or square feet of sheets."""
    return sum(volume(ground.stock) for ground in grounds) / 144


def _listed(codes: Sequence[str]) -> str:
    """Marks of parts or boards, of many the first few."""
    counted: Mapping[str, Count] = Counter(codes)
    words = [code if number == 1 else f"{number} {code}" for code, number in counted.items()]
    more = len(words) - FEW
    return ", ".join(words[:FEW]) + (f" and {more} more" if more > 0 else "")
