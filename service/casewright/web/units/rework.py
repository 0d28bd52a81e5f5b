"""What a revision does to what is made already: part by part, with its reason, hours and wood."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import in_unit
from casewright.papers.head import day
from casewright.papers.writing import Writing
from casewright.pieces.built.rework import Rework, by_fate, own_codes, rework
from casewright.pieces.built.rework_alike import Alike, alike
from casewright.pieces.built.rework_fates import Fate, PartFate
from casewright.pieces.built.rework_stages import MADE_WORDS, Reached
from casewright.pieces.words.changed_words import changed_words
from casewright.pieces.words.rework_words import change_words
from casewright.pieces.words.wording import joined, plural_of_part
from casewright.records.change_orders import ChangeRow, open_change
from casewright.shop.refusals import Refused
from casewright.shop.remaking import PutBackWords, planned, words_of
from casewright.shop.rework import reached_by_unit, with_standard
from casewright.shop.units import followed
from casewright.shop.waiting import change_number
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.change_shown import said_delivered
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
MEANINGS = {
    Fate.SCRAPPED: "made already, and no longer usable for this piece",
    Fate.NEW: "to be made from new wood",
    Fate.MODIFIED: "kept, with other sizes",
    Fate.DROPPED: "no longer needed, and never cut",
    Fate.UNTOUCHED: "as they were",
}
"""What each fate means to whoever stands at the bench."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FateShown:
    """Parts to which the change does the same.

    Attributes:
        what: what they are, with their number where there are several
        codes: their marks; with what each becomes where that is another
        made: what has been done to them
        before: the size that they have; empty for new ones
        after: the size that they are to have, or that is made in their place; empty for none
        reason: why, and what to do
        hours: what has gone into them together; empty for none
        offcut: what of them goes to the offcut bin; empty for none
    """

    what: str
    codes: str
    made: str
    before: str
    after: str
    reason: str
    hours: str
    offcut: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FatesShown:
    """All parts of one fate.

    Attributes:
        fate: what becomes of them
        mark: its colour
        meaning: what that means at the bench
        count: how many parts there are
        parts: those that are alike together
        in_place: of new ones, how many are made in the place of scrapped ones, and told with those
    """

    fate: str
    mark: str
    meaning: str
    count: int
    parts: tuple[FateShown, ...]
    in_place: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceShown:
    """One piece of the unit.

    Attributes:
        name: which of several, those that have one story together; empty where it is the only one
        words: what the change does, in sentences
        groups: its parts by what becomes of them, those that stay last
        again: its drawers and case, as they go back at the bench once it is agreed
    """

    name: str
    words: tuple[str, ...]
    groups: tuple[FatesShown, ...]
    again: tuple[PutBackWords, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReworkPage(Page):
    """What a revision does to what is made.

    Attributes:
        number: the revision
        against: the one that it is held against
        is_agreed: whether that is the one that the customer has agreed to
        says: what the revision changes, in plain words
        waiting: a change order for it that waits for an answer; None for none
    """

    template: ClassVar[str] = "units/rework.html"
    head: UnitHead
    number: int
    against: int
    is_agreed: bool
    says: tuple[str, ...]
    pieces: tuple[PieceShown, ...]
    refusal: str
    delivered: str
    waiting: ChangeRow | None
    waiting_name: str


@router.get("/units/{unit_id}/revisions/{number}/rework")
def show_rework(visit: Office, unit_id: str, number: int, against: int | None = None) -> Response:
    """What a revision does to the parts that are made, against the approved one or the one before."""
    seen = see_unit(visit, unit_id, number)
    other = against or before_it(seen, number)
    if other == number:
        raise Refused("A revision is held against another one, not against itself.", 404)
    old, job = see_unit(visit, unit_id, other), seen.loaded.job
    was, becomes = old.worked.unit, seen.worked.unit
    waiting = open_change(visit.db, seen.loaded.unit.id, number)
    page = ReworkPage(
        title=f"What revision {number} does to parts that are made · {seen.loaded.spec.name}",
        head=seen.head,
        number=number,
        against=other,
        is_agreed=other == seen.head.unit.approved,
        says=changed_words(was, becomes, seen.writing.unit) if was and becomes else (),
        pieces=tuple(_pieces(visit, old, seen)),
        refusal=old.worked.refusal or seen.worked.refusal,
        delivered=said_delivered(job, day(visit.day_of(job.moved_at))),
        waiting=waiting,
        waiting_name=change_number(waiting.number) if waiting else "",
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


def _pieces(visit: Visit, old: Seen, seen: Seen) -> Iterator[PieceShown]:
    before, after = old.worked.unit, seen.worked.unit
    if before is None or after is None:
        return
    standing = dict(reached_by_unit(visit.db, old.loaded.revision)) or {1: Reached()}
    follows = followed(old.loaded.revision, seen.loaded.revision)
    plans = {plan.piece: plan for plan in planned(visit.db, old.loaded, seen.loaded, before, after)}
    told: dict[PieceShown, list[str]] = {}
    for piece, each in standing.items():
        if piece <= before.spec.count:
            found = rework(before, after, with_standard(each, old.worked.held), follows)
            again = words_of((plans[piece],)) if piece in plans else ()
            shown = _piece(found, _replaced(found, own_codes(before, follows)), again, seen.writing)
            told.setdefault(shown, []).append(str(piece))
    for shown, pieces in told.items():
        yield replace(shown, name=_named(pieces) if before.spec.count > 1 else "")


def _named(pieces: list[str]) -> str:
    """What pieces are called that have one story."""
    return f"Piece {pieces[0]}" if len(pieces) == 1 else f"Pieces {joined(pieces)}, each"


def _replaced(found: Rework, own: Mapping[str, str]) -> Mapping[str, PartFate]:
    """What is made in the place of each scrapped part, by the code of that."""
    fresh = {each.code: each for each in found.of(Fate.NEW)}
    return {each.code: fresh[own[each.code]] for each in found.of(Fate.SCRAPPED) if own[each.code] in fresh}


def _piece(
    found: Rework,
    replaced: Mapping[str, PartFate],
    again: tuple[PutBackWords, ...],
    writing: Writing,
) -> PieceShown:
    return PieceShown(
        name="",
        words=tuple(in_unit(words, writing.unit) for words in change_words(found)),
        groups=tuple(_group(fate, parts, replaced, writing) for fate, parts in by_fate(found)),
        again=again,
    )


def _group(
    fate: Fate, parts: tuple[PartFate, ...], replaced: Mapping[str, PartFate], writing: Writing
) -> FatesShown:
    """The parts of one fate; a new one that takes the place of a scrapped one is told with that."""
    told_there = {each.code for each in replaced.values()} if fate is Fate.NEW else set()
    told = [each for each in parts if each.code not in told_there]
    return FatesShown(
        fate=fate.value,
        mark=MARKS[fate],
        meaning=MEANINGS[fate],
        count=len(parts),
        parts=tuple(_alike(each, replaced if fate is Fate.SCRAPPED else {}, writing) for each in alike(told)),
        in_place=len(parts) - len(told),
    )


def _alike(same: Alike, replaced: Mapping[str, PartFate], writing: Writing) -> FateShown:
    one, count = same.one, len(same.parts)
    noun = f"{count} {plural_of_part(same.noun)}" if count > 1 else f"{one.name[:1].lower()}{one.name[1:]}"
    hours, offcut = (sum(getattr(each, name) for each in same.parts) for name in ("hours", "offcut"))
    becomes = dict.fromkeys(replaced[each.code].after for each in same.parts if each.code in replaced)
    after = [one.after] if one.after != one.before else []
    reason = in_unit(one.reason, writing.unit)
    return FateShown(
        what=f"{noun[:1].upper()}{noun[1:]}",
        codes=", ".join(_code(each) for each in same.parts),
        made=MADE_WORDS[one.made],
        before=_size(one.before, writing),
        after="; ".join(_size(each, writing) for each in (becomes or after)),
        reason=f"{reason[:1].upper()}{reason[1:]}",
        hours=f"{hours:.1f} h" if hours >= 0.05 else "",
        offcut=f"{offcut:.2f} bd ft" if offcut >= 0.005 else "",
    )


def _size(sizes: tuple[float, ...], writing: Writing) -> str:
    return " × ".join(writing.size(size) for size in sizes)


def _code(each: PartFate) -> str:
    return each.code if each.becomes in ("", each.code) else f"{each.code} → {each.becomes}"
