"""Which parts match in figure, and how they are cut from one blank."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from casewright.pieces.asked.grain_spec import Pairing
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face, Stack
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.roles import role_of
from casewright.pieces.layout.row_heights import row_words


class Way(StrEnum):
    """How matched parts are cut."""

    ALONG = "along"
    ACROSS = "across"
    GRID = "grid"
    BOOK = "book"
    SLIP = "slip"
    ONE_TREE = "one tree"


PAIRED = {"book-matched": Way.BOOK, "slip-matched": Way.SLIP}


@dataclass(frozen=True, slots=True, kw_only=True)
class GrainSet:
    """Parts that match.

    Attributes:
        name: which they are
        way: how they are cut
        rows: the parts row by row, in the order in which they are cut; one row but in a grid
        halves: are they the halves of one part?
    """

    name: str
    way: Way
    rows: tuple[tuple[Part, ...], ...]
    halves: bool = False

    @property
    def parts(self) -> tuple[Part, ...]:
        """All of them."""
        return tuple(part for row in self.rows for part in row)


def is_sawn_in_two(found: GrainSet) -> bool:
    """Are the parts of a set the leaves of a board that is sawn in two through its thickness?

    Args:
        found: the set

    Returns:
        Yes for a book match or a slip match.

    Source: common practice.
    """
    return found.way in (Way.BOOK, Way.SLIP)


def grain_sets(spec: UnitSpec, face: Face, parts: Sequence[Part]) -> tuple[GrainSet, ...]:
    """Every set of parts that were asked to match; those that are given up are none.

    Args:
        spec: what the maker chose
        face: rows and columns
        parts: every part of the unit

    Returns:
        The sets, the fronts first.

    Source: common practice.
    """
    given_up = {each.name.casefold() for each in spec.grain.given_up}
    return tuple(found for found in wished_sets(spec, face, parts) if found.name.casefold() not in given_up)


def wished_sets(spec: UnitSpec, face: Face, parts: Sequence[Part]) -> Iterator[GrainSet]:
    """Every set of parts that were asked to match, those given up too.

    Args:
        spec: what the maker chose
        face: rows and columns
        parts: every part of the unit

    Yields:
        The sets, the fronts first.

    Source: common practice.
    """
    wishes = spec.grain
    if spec.matched_fronts:
        yield from _fronts(spec, face, parts)
    elif wishes.fronts == "one tree":
        yield from _one_tree("fronts", (part for part in parts if role_of(part) == "fronts"))
    if wishes.doors != "no":
        yield from _doors(wishes.doors, [part for part in parts if part.line[:2] in ("DP", "DW")])
    if wishes.sides != "no":
        yield from _sides(wishes.sides, [part for part in parts if role_of(part) == "sides"])
    if wishes.top != "no":
        tops = (part for part in parts if role_of(part) == "top" and not part.sheet)
        yield from (GrainSet(name="top", way=PAIRED[wishes.top], rows=((top,),), halves=True) for top in tops)
    for role in dict.fromkeys(wishes.one_tree):
        yield from _one_tree(role, (part for part in parts if role_of(part) == role))


def _one_tree(name: str, parts: Iterable[Part]) -> Iterator[GrainSet]:
    found = tuple(part for part in parts if not part.sheet)
    if len(found) > 1:
        yield GrainSet(name=f"{name}, one tree", way=Way.ONE_TREE, rows=(found,))


def _fronts(spec: UnitSpec, face: Face, parts: Iterable[Part]) -> Iterator[GrainSet]:
    fronts = {part.code: part for part in parts if part.grain_set == "fronts"}
    wish = spec.grain.fronts
    stacks = [
        (
            stack,
            [
                (row.mark, tuple(fronts[f"{spec.code}-{opening.code}-F"] for opening in row.openings))
                for row in stack.rows
            ],
        )
        for stack in face.stacks
    ]
    if wish in (None, "along each row"):
        for _, rows in stacks:
            yield from (_along(mark, row) for mark, row in rows if len(row) > 1)
    if wish is None:
        yield from (found for stack, rows in stacks for found in _single(stack, rows))
    elif wish == "down the case":
        for stack, rows in stacks:
            yield from _columns(stack, rows)
    elif wish == "rows and columns":
        for stack, rows in stacks:
            yield from _grids(rows)
            yield from _single(stack, rows)


Rows = list[tuple[str, tuple[Part, ...]]]


def _along(mark: str, row: tuple[Part, ...]) -> GrainSet:
    return GrainSet(name=f"fronts of row {mark}", way=Way.ALONG, rows=(row,))


def _single(stack: Stack, rows: Rows) -> Iterator[GrainSet]:
    """The fronts that stand alone in their rows, top to bottom."""
    single = tuple(row[0] for _, row in rows if len(row) == 1)
    if len(single) > 1:
        where = f"fronts of {row_words(stack.code)}" if stack.code else "full-width fronts"
        yield GrainSet(name=f"{where}, top to bottom", way=Way.ACROSS, rows=(single,))


def _columns(stack: Stack, rows: Rows) -> Iterator[GrainSet]:
    """Column by column, as far as rows with as many drawers follow one another."""
    for count, run in groupby(rows, key=lambda each: len(each[1])):
        members = list(run)
        if len(members) < 2 or not count:
            continue
        marks = f"{members[0][0]} to {members[-1][0]}"
        for column in range(count):
            where = f"column {column + 1}, " if count > 1 else ""
            yield GrainSet(
                name=f"fronts of {where}rows {marks}",
                way=Way.ACROSS,
                rows=(tuple(row[column] for _, row in members),),
            )


def _grids(rows: Rows) -> Iterator[GrainSet]:
    """Rows with as many drawers that follow one another, from one panel; a row alone along one board."""
    for count, run in groupby(rows, key=lambda each: len(each[1])):
        members = list(run)
        if count > 1 and len(members) == 1:
            yield _along(*members[0])
        elif count > 1:
            yield GrainSet(
                name=f"fronts of rows {members[0][0]} to {members[-1][0]}",
                way=Way.GRID,
                rows=tuple(row for _, row in members),
            )


def _doors(wish: Pairing, faces: list[Part]) -> Iterator[GrainSet]:
    """The panels or slabs of doors: two and two of one size, or all of a row along one board."""
    if wish == "one tree":
        yield from _one_tree("doors", faces)
        return
    rows: dict[str, list[Part]] = {}
    for part in faces:
        opening = part.code.rsplit("-", 2)[0]
        row = opening.partition("-")[2].rpartition("-")[0]
        rows.setdefault(f"{row[1:]}|{part.code.rpartition('-')[2]}", []).append(part)
    for key, members in rows.items():
        mark, panel = key.split("|")
        which = f", panel {panel[1:]}" if panel not in ("P1", "W") else ""
        if wish == "in sequence":
            if len(members) > 1:
                name = f"doors of row {mark}{which}"
                yield GrainSet(name=name, way=Way.ALONG, rows=(tuple(members),))
            continue
        for number, (one, other) in enumerate(zip(members[::2], members[1::2], strict=False), start=1):
            if (one.width, one.length) == (other.width, other.length):
                pair = f", pair {number}" if len(members) > 3 else ""
                name = f"doors of row {mark}{pair}{which}"
                yield GrainSet(name=name, way=PAIRED[wish], rows=((one, other),))


def _sides(wish: Pairing, sides: list[Part]) -> Iterator[GrainSet]:
    """Left and right side, or their panels, opposite each other."""
    if wish == "one tree":
        yield from _one_tree("sides", sides)
        return
    panels = [part for part in sides if not part.sheet and part.line in ("C1", "V4")]
    right = {part.code.replace("C-SR", "C-SL"): part for part in panels if "C-SR" in part.code}
    pairs = [(part, right[part.code]) for part in panels if part.code in right]
    for number, pair in enumerate(pairs, start=1):
        name = "sides" if len(pairs) == 1 else f"sides, panel {number}"
        yield GrainSet(name=name, way=PAIRED.get(wish, Way.ALONG), rows=(pair,))
