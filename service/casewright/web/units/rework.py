"""What a revision does to what is made already: part by part, with its reason, hours and wood."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import in_unit
from casewright.papers.writing import Writing
from casewright.pieces.built.rework import Rework, by_fate, rework
from casewright.pieces.built.rework_fates import Fate, PartFate
from casewright.pieces.built.rework_stages import MADE_WORDS, Reached
from casewright.pieces.words.rework_words import change_words
from casewright.shop.refusals import Refused
from casewright.shop.rework import reached_by_unit, with_standard
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office
from casewright.web.units.worked import Met, Seen, UnitHead, see_unit

router = APIRouter()
MARKS = {
    Fate.SCRAPPED: "stop",
    Fate.NEW: "begun",
    Fate.MODIFIED: "caution",
    Fate.DROPPED: "pass",
    Fate.UNTOUCHED: "pass",
}
"""The colour of each fate."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FateShown:
    """One part."""

    code: str
    name: str
    made: str
    before: str
    after: str
    reason: str
    hours: str
    offcut: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FatesShown:
    """All parts of one fate."""

    fate: str
    mark: str
    parts: tuple[FateShown, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceShown:
    """One piece of the unit.

    Attributes:
        name: which of several; empty where it is the only one
        words: the text for a change order
        groups: its parts by what becomes of them
        untouched: how many stay as they are
    """

    name: str
    words: tuple[str, ...]
    groups: tuple[FatesShown, ...]
    untouched: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ReworkPage(Page):
    """What a revision does to what is made."""

    template: ClassVar[str] = "units/rework.html"
    head: UnitHead
    number: int
    against: int
    pieces: tuple[PieceShown, ...]
    refusal: str


@router.get("/units/{unit_id}/revisions/{number}/rework")
def show_rework(visit: Office, unit_id: str, number: int, against: int | None = None) -> Response:
    """What a revision does to the parts that are made, against the approved one or the one before."""
    seen = see_unit(visit, unit_id, number)
    other = against or before_it(seen, number)
    if other == number:
        raise Refused("A revision is held against another one, not against itself.", 404)
    old = see_unit(visit, unit_id, other)
    page = ReworkPage(
        title=f"What revision {number} does to parts that are made · {seen.loaded.spec.name}",
        head=seen.head,
        number=number,
        against=other,
        pieces=tuple(_pieces(old, seen, reached_by_unit(visit.db, old.loaded.revision))),
        refusal=old.worked.refusal or seen.worked.refusal,
    )
    return show(visit, page)


def before_it(seen: Met, number: int) -> int:
    """The revision that another is held against: the approved one where that is earlier, else the one before.

    Raises:
        Refused: it is the first
    """
    approved = seen.head.unit.approved
    if approved and approved < number:
        return approved
    if number < 2:
        raise Refused("This is the first revision: nothing was made before it.", 404)
    return number - 1


def _pieces(old: Seen, seen: Seen, reached: Mapping[int, Reached]) -> Iterator[PieceShown]:
    before, after = old.worked.unit, seen.worked.unit
    if before is None or after is None:
        return
    standing = dict(reached) or {1: Reached()}
    for piece, each in standing.items():
        if piece <= before.spec.count:
            found = rework(before, after, with_standard(each, old.worked.held))
            name = f"Piece {piece}" if before.spec.count > 1 else ""
            yield _piece(name, found, seen.writing)


def _piece(name: str, found: Rework, writing: Writing) -> PieceShown:
    return PieceShown(
        name=name,
        words=tuple(in_unit(words, writing.unit) for words in change_words(found)),
        groups=tuple(
            FatesShown(
                fate=fate.value,
                mark=MARKS[fate],
                parts=tuple(_part(each, writing) for each in parts),
            )
            for fate, parts in by_fate(found)
            if fate is not Fate.UNTOUCHED
        ),
        untouched=len(found.of(Fate.UNTOUCHED)),
    )


def _part(each: PartFate, writing: Writing) -> FateShown:
    return FateShown(
        code=each.code if each.becomes in ("", each.code) else f"{each.code} → {each.becomes}",
        name=each.name,
        made=MADE_WORDS[each.made],
        before=" × ".join(writing.size(size) for size in each.before),
        after=" × ".join(writing.size(size) for size in each.after),
        reason=in_unit(each.reason, writing.unit),
        hours=f"{each.hours:.1f}" if each.hours else "",
        offcut=f"{each.offcut:.2f}" if each.offcut >= 0.005 else "",
    )
