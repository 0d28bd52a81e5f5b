"""Loads of lumber before anybody has seen the boards: drawn by chance, board by board."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from random import Random

from casewright.measure.units import Count, Feet, Inches, Number
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.grades import Cutting, GradeName, cuttings_allowed, grades
from casewright.wood.tables import document
from casewright.wood.tally import exact_surface, is_half_foot, surface_measure

TRIES = 400
"""So many boards are turned over for one that an order names; then the grade has none such."""
ANY_NUMBER = 4
"""Clear pieces of a board whose grade does not count them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardHabit:
    """The boards that are usual in one grade.

    Attributes:
        grade: the grade
        widths: least, usual and greatest width [in]
        lengths: least, usual and greatest length [ft]
        clear: the least and the greatest clear part of a board, as a share of it [dimensionless]
        cuttings: the least clear pieces that the grade counts
        evidence: where the figures come from
    """

    grade: GradeName
    widths: tuple[Inches, Inches, Inches]
    lengths: tuple[Feet, Feet, Feet]
    clear: tuple[Number, Number]
    cuttings: tuple[Cutting, ...]
    evidence: Evidence


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedBoards:
    """Boards that an order asks for by their size, since a part is wider than most boards or long.

    Attributes:
        width: least width of a board [in]
        length: length of each clear piece that is wanted of such boards [in]
        count: how many such pieces [dimensionless]
    """

    width: Inches
    length: Inches
    count: Count


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnBoard:
    """A board as it came.

    Attributes:
        width: its width [in]
        length: its length [in]
        surface: its surface measure, as a yard counts it [dimensionless]
        clear: lengths of its clear pieces, each as wide as the board [in]
    """

    width: Inches
    length: Inches
    surface: Count
    clear: tuple[Inches, ...]


@cache
def board_habit(name: GradeName) -> BoardHabit:
    """The boards that are usual in a grade.

    Args:
        name: the grade

    Returns:
        Their sizes and how clear they are.

    Source: NHLA Rules Book (facts only) for what is least; common practice of dealers for what is usual.
    """
    row = next(row for row in document("boards")["rows"] if row["grade"] == name)
    better = next(each.better_face for each in grades() if each.name == name)
    cuttings = next(each.cuttings for each in grades() if each.name == better)
    return BoardHabit(
        grade=name,
        widths=tuple(row["width_in"]),
        lengths=tuple(row["length_ft"]),
        clear=tuple(row["clear"]),
        cuttings=cuttings,
        evidence=evidence_of(row),
    )


def drawn_load(
    habit: BoardHabit,
    named: Sequence[NamedBoards],
    *,
    seed: Count,
    average: Inches | None = None,
    end_trim: Inches = 1.0,
    edge_trim: Inches = 0.25,
) -> Iterator[DrawnBoard]:
    """The boards of one load, one after the other and without end: first those that the order names.

    A board's width and length lie between the least of its grade and the greatest that is usual; its clear
    part lies between what the grade asks and what would make it a better one, in no more pieces than the
    grade allows. What is clear lies between two ends that are cut off.

    Args:
        habit: the boards that are usual in the grade
        named: what the order names, the widest first
        seed: the same seed draws the same load [dimensionless]
        average: usable width of the wood's average board; None for what is usual in the grade [in]
        end_trim: taken off each end of a board [in]
        edge_trim: taken off to straighten an edge [in]

    Returns:
        The boards.

    Source: NHLA Rules Book (facts only) for sizes, clear parts and tally; the spread of boards over the sizes
    is common practice of dealers.
    """
    chance, half_up = Random(seed), True  # noqa: S311 - loads of lumber, no secret
    usual = habit.widths[1]
    if average is not None:  # the usual width that makes the average what the shop says of it
        least, _, greatest = habit.widths
        usual = min(max(3 * (average + edge_trim) - least - greatest, least), greatest)
    wanted = [(each, each.count) for each in named]
    while True:
        asked, count = wanted[0] if wanted else (None, 0)
        board = _board(habit, usual, asked, end_trim, half_up, chance)
        if board is None:
            wanted.pop(0)  # the grade has no such boards: what it is for will not come out
            continue
        if asked is not None:
            count -= sum(int(clear // asked.length) for clear in board.clear)
            wanted[:1] = [(asked, count)] if count > 0 else []
        half_up = half_up != is_half_foot(exact_surface(board.width, board.length / 12))
        yield board


def _board(
    habit: BoardHabit,
    usual: Inches,
    asked: NamedBoards | None,
    end_trim: Inches,
    half_up: bool,
    chance: Random,
) -> DrawnBoard | None:
    """One board as it lies in the yard: width to the quarter inch, length in whole feet."""
    low, middle, high = habit.lengths
    for _ in range(TRIES):
        width = round(chance.triangular(habit.widths[0], habit.widths[2], usual) * 4) / 4
        length = 12.0 * round(chance.triangular(low, high, middle))
        if asked is None or (width >= asked.width and length >= asked.length + 2 * end_trim):
            surface = surface_measure(width, length, half_up)
            clear = tuple(_clear_lengths(length - 2 * end_trim, surface, habit, chance))
            if asked is None or max(clear) >= asked.length:
                return DrawnBoard(width=width, length=length, surface=surface, clear=clear)
    return None


def _clear_lengths(length: float, surface: int, habit: BoardHabit, chance: Random) -> Iterator[float]:
    """The clear pieces of a board, end to end, each as wide as the board."""
    clear = length * chance.uniform(*habit.clear)
    allowed = cuttings_allowed(max(surface, 1), habit.grade) or ANY_NUMBER
    shortest = min((each.length for each in habit.cuttings), default=12.0)
    pieces = max(1, min(chance.randint(1, allowed), int(clear // shortest)))
    spare = max(clear - pieces * shortest, 0.0)
    marks = sorted(chance.uniform(0, spare) for _ in range(pieces - 1))
    for before, after in zip((0.0, *marks), (*marks, spare), strict=True):
        yield min(clear, shortest + after - before)
