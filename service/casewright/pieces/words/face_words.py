"""How the drawers, doors and spaces of a unit stand, in words that a customer reads."""

from collections.abc import Iterator
from itertools import groupby

from casewright.measure.lengths import LengthUnit
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.openings import Cell, Face, FaceRow, Space
from casewright.pieces.words.wording import joined, number_word, several, sized


def rows_in_words(unit: Construction) -> str:
    """How many drawers there are and how they stand, with what else the front has.

    Args:
        unit: the unit, worked out

    Returns:
        A sentence.

    Source: common practice of quotes.
    """
    if unit.face.is_nested or unit.face.spaces:
        return _mixed(unit.face)
    columns = [len(row.openings) for row in unit.face.rows]
    drawers = sum(columns)
    if drawers == 1:
        return "It has one drawer."
    start = f"It has {several(drawers, 'drawer')}"
    if len(columns) == 1:
        return f"{start} side by side."
    if set(columns) == {1}:
        return f"{start}, one above the other."
    if len(set(columns)) == 1:
        return f"{start}: {several(len(columns), 'row')} of {number_word(columns[0])}."
    runs = [(count, len(list(members))) for count, members in groupby(columns)]
    parts = [_run(count, rows, first=place == 0) for place, (count, rows) in enumerate(runs)]
    return f"{start}: {', '.join(parts)}."


def _run(columns: int, rows: int, *, first: bool) -> str:
    """Rows one below the other that have as many drawers each."""
    lead = "" if first else "then "
    if columns == 1:
        tail = " at the top" if first else ""
        return f"{lead}{number_word(rows)} across the full width{tail}"
    if rows == 1:
        return f"{lead}{number_word(columns)} side by side{' at the top' if first else ''}"
    return f"{lead}{several(rows, 'row')} of {number_word(columns)}{' at the top' if first else ''}"


def _mixed(face: Face) -> str:
    """A front with doors, open spaces, or columns that have rows of their own: row by row from the top."""
    doors = sum(space.leaves for space in face.spaces)
    counted = [several(len(face.openings), "drawer"), *([several(doors, "door")] if doors else [])]
    rows = [_row(row) for row in face.rows]
    start = f"It has {joined(counted)}: "
    if len(rows) == 1:
        return f"{start}{rows[0]}."
    comma = "," if rows[0].startswith("from") else ""
    return f"{start}at the top{comma} {'; below, '.join(rows)}."


def _row(row: FaceRow) -> str:
    held = list(_held(row.cells))
    if len(held) == 1:
        beside = " side by side" if len(row.cells) > 1 and row.openings else ""
        across = " across the full width" if len(row.cells) == 1 and row.openings else ""
        return f"{held[0]}{beside}{across}"
    return f"from the left, {joined(held)}"


def _held(cells: tuple[Cell, ...]) -> Iterator[str]:
    """What stands in some columns, plain drawers that are neighbours together."""
    for is_drawer, members in groupby(cells, key=lambda cell: cell.is_drawer):
        if is_drawer:
            yield several(len(list(members)), "drawer")
        else:
            for _, alike in groupby(members, key=_cell):
                yield _alike(tuple(alike))


def _alike(cells: tuple[Cell, ...]) -> str:
    """Columns side by side that hold the same."""
    words, many = _cell(cells[0]), number_word(len(cells))
    space = cells[0].opening
    if len(cells) == 1:
        return words
    if isinstance(space, Space) and space.leaves == 1:
        behind = f", with {several(space.shelves, 'shelf')} behind each" if space.shelves else ""
        return f"{several(len(cells), 'door')}{behind}"
    return f"{many} times {words}"


def _cell(cell: Cell) -> str:
    if cell.stack is not None:
        rows = cell.stack.rows
        if all(len(row.cells) == 1 and row.cells[0].is_drawer for row in rows):
            return f"a bank of {several(len(rows), 'drawer')}" if len(rows) > 1 else "one drawer"
        return f"a column with, from its top, {joined([_row(row) for row in rows])}"
    space = cell.opening
    if not isinstance(space, Space):
        return "one drawer"
    if space.knee:
        return "a knee space"
    shelves = f" with {several(space.shelves, 'shelf')}" if space.shelves else ""
    if space.holds == "open":
        return f"an open space{shelves}"
    inside = f" and {several(space.shelves, 'shelf')} behind" if space.shelves else ""
    return f"{'a door' if space.leaves == 1 else 'two doors'}{inside}"


def heights_in_words(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """How high the drawers' openings are.

    Args:
        unit: the unit, worked out
        shown: the unit of sizes

    Yields:
        A sentence; none for a single row.

    Source: common practice of quotes.
    """
    heights = [row.height for row in unit.face.all_rows if row.openings]
    if len(heights) == 1:
        return
    shortest, tallest = (sized(size, shown) for size in (min(heights), max(heights)))
    if shortest == tallest:
        yield f"All drawer openings are {shortest} high."
    elif heights == sorted(heights) and not unit.face.is_nested:
        yield f"They grow taller towards the floor: openings from {shortest} to {tallest} high."
    else:
        yield f"Their openings are from {shortest} to {tallest} high."
