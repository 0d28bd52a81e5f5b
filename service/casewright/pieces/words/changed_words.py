"""What a change after approval changes, in plain words with sizes: what a customer signs."""

from collections.abc import Iterator, Sequence

from casewright.measure.lengths import LengthUnit
from casewright.measure.units import Count
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.rework import Rework
from casewright.pieces.built.rework_fates import Fate
from casewright.pieces.built.rework_stages import CASE, Made
from casewright.pieces.words.case_words import case_words
from casewright.pieces.words.door_words import door_words
from casewright.pieces.words.face_words import heights_in_words, rows_in_words
from casewright.pieces.words.grain_words import grain_words
from casewright.pieces.words.otherwise import how_many, made_otherwise
from casewright.pieces.words.shell_words import closing_words, top_words
from casewright.pieces.words.wording import joined, number_word, plain_size, several, sized

ROWS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
MOST_ROWS = 3
"""So many rows are told one by one before their heights are told in a list."""
UNSEEN = "Nothing changes that is seen or touched: parts inside are made another way."


def changed_words(before: Construction, after: Construction, shown: LengthUnit) -> tuple[str, ...]:
    """What changes between two designs of a unit, for a customer.

    Args:
        before: the unit as it was agreed
        after: the unit as it is to be
        shown: the unit of its sizes

    Returns:
        A sentence for each thing: number, sizes over all, drawers, woods, making, pulls, finish, and what
        closes it; at least one.

    Source: common practice: a change is signed in the words of the quote, with what was and what becomes.
    """
    told = (
        *how_many(before.spec, after.spec),
        *_sizes(before, after, shown),
        *_face(before, after, shown),
        *made_otherwise(before, after, shown),
    )
    return (*told, *_closed(before, after, shown, told)) or (UNSEEN,)


def _became(what: str, was: float, becomes: float, shown: LengthUnit) -> Iterator[str]:
    if plain_size(was, shown) != plain_size(becomes, shown):
        yield f"{what}: {sized(was, shown)} becomes {sized(becomes, shown)}."


def _sizes(before: Construction, after: Construction, shown: LengthUnit) -> Iterator[str]:
    old, new = before.spec, after.spec
    yield from _became("Width over all", old.overall_width, new.overall_width, shown)
    yield from _became("Depth over all", old.overall_depth, new.overall_depth, shown)
    yield from _became("Height over all", before.face.overall_height, after.face.overall_height, shown)


def _shape(unit: Construction) -> list[tuple[str, bool]]:
    """How the front is parted: every opening and space, and whether it holds a drawer."""
    return [
        (cell.opening.code if cell.opening else "", cell.is_drawer)
        for row in unit.face.all_rows
        for cell in row.cells
    ]


def _face(before: Construction, after: Construction, shown: LengthUnit) -> Iterator[str]:
    if _shape(before) == _shape(after):
        yield from _heights(before, after, shown)
        yield from _columns(before, after, shown)
        return
    old, new = len(before.drawers), len(after.drawers)
    if old != new:
        yield f"Drawers: {number_word(old)} {'becomes' if old == 1 else 'become'} {number_word(new)}."
    else:
        yield "The front is parted another way."
    yield rows_in_words(after)
    yield from heights_in_words(after, shown)


def _heights(before: Construction, after: Construction, shown: LengthUnit) -> Iterator[str]:
    """The rows of drawers that become higher or lower: one by one where they are few, else in a list."""
    rows = [
        (place, old.height, new.height)
        for place, (old, new) in enumerate(zip(before.face.all_rows, after.face.all_rows, strict=True))
        if old.openings
    ]
    changed = [row for row in rows if plain_size(row[1], shown) != plain_size(row[2], shown)]
    if len(changed) <= MOST_ROWS and not before.face.is_nested:
        for place, was, becomes in changed:
            yield from _became(_row_name(place, len(before.face.rows)), was, becomes, shown)
    elif changed:
        old, new = (_listed([row[side] for row in rows], shown) for side in (1, 2))
        yield f"Heights of the drawer openings from the top: {old} become {new}."


def _listed(sizes: Sequence[float], shown: LengthUnit) -> str:
    return f"{joined([plain_size(size, shown) for size in sizes])} {shown.value}"


def _row_name(place: Count, rows: Count) -> str:
    if rows == 1:
        return "Height of the drawer openings"
    if place == rows - 1:
        return "Lowest row, height of the drawer openings"
    named = ROWS[place].capitalize() if place < len(ROWS) else f"{place + 1}th"
    return f"{named} row from the top, height of the drawer openings"


def _columns(before: Construction, after: Construction, shown: LengthUnit) -> Iterator[str]:
    """The widths of a row's openings, where the piece itself stays as wide as it was."""
    if plain_size(before.spec.overall_width, shown) != plain_size(after.spec.overall_width, shown):
        return
    told: dict[str, list[Count]] = {}
    for place, (old, new) in enumerate(zip(before.face.rows, after.face.rows, strict=True)):
        was, becomes = (_listed([each.width for each in row.openings], shown) for row in (old, new))
        if old.openings and was != becomes:
            verb = "becomes" if len(old.openings) == 1 else "become"
            told.setdefault(f"{was} {verb} {becomes}", []).append(place)
    for words, places in told.items():
        rows = [ROWS[place] if place < len(ROWS) else f"{place + 1}th" for place in places]
        where = f"{joined(rows)} {'row' if len(rows) == 1 else 'rows'} from the top, widths"
        start = "Widths" if len(rows) == len(before.face.rows) else f"{where[:1].upper()}{where[1:]}"
        yield f"{start} of the drawer openings: {words}."


def _closed(
    before: Construction, after: Construction, shown: LengthUnit, told: Sequence[str]
) -> Iterator[str]:
    """Sentences of the quote about case, doors and figure that are not as they were."""
    old, new = tuple(_standing(before, shown)), tuple(_standing(after, shown))
    tells_case = any("case" in each or "sides" in each for each in told)
    for each in new:
        if each not in old and not (tells_case and each in tuple(case_words(after, shown))):
            yield each
    if before.doors and not after.doors:
        yield "It has no door any more."


def _standing(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    spec = unit.spec
    if spec.legs:
        yield top_words(spec, shown)
    else:
        if not spec.crate:
            yield from case_words(unit, shown)
        yield from closing_words(spec, unit.face, shown)
    yield from door_words(unit, shown)
    yield from grain_words(spec)


def work_words(before: Construction, found: Sequence[Rework]) -> tuple[str, ...]:
    """What a change does to the work that is done, for a customer: no part is called by its mark.

    Args:
        before: the unit as it was agreed
        found: what the change does to each piece

    Returns:
        A sentence or two.

    Source: common practice: a change is signed with what it costs of the work that is done.
    """
    parts = [each for one in found for each in one.parts if each.made is not Made.NOTHING]
    if not parts:
        return ("Nothing of it is made yet, so no work is lost.",)
    drawers = {drawer.code for drawer in before.drawers}
    lost = {
        (place, owner if owner in drawers else CASE)
        for place, one in enumerate(found)
        for each in one.of(Fate.SCRAPPED)
        for owner in (each.code.rpartition("-")[0],)
    }
    if not lost:
        if any(each.fate is Fate.MODIFIED for each in parts):
            return ("What is made already is worked to the new sizes; none of it is lost.",)
        return ("What is made already stays as it is.",)
    cases = sum(owner == CASE for _, owner in lost)
    kinds = [(cases, "the case" if len(found) == 1 else several(cases, "case")), (len(lost) - cases, "")]
    named = [
        words or ("one drawer" if count == 1 else several(count, "drawer")) for count, words in kinds if count
    ]
    are = "is" if len(lost) == 1 else "are"
    return (
        f"Of what is made or begun, {joined(named)} {are} made again, in whole or in part; the price holds "
        "the wood and the work of it.",
    )
