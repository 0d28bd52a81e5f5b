"""How many feet are enough before anybody has seen the boards: boards of a grade, drawn by chance."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from random import Random

from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import BoardFeet, Count, Feet, Inches, Number
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.grades import Cutting, GradeName, cuttings_allowed, grades
from casewright.wood.strips import Blank, longest_first, parts_out_of
from casewright.wood.tables import document
from casewright.wood.tally import billed_thickness, exact_surface, is_half_foot, surface_measure

LOADS = 100
"""How many loads are drawn: the feet of the 90th of a hundred then change by a few percent with the seed."""
SURE = 0.9
MOST_BOARDS = 400
"""A load of so many boards that still lacks a part will never hold it."""


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
class EnoughFeet:
    """How many feet give all parts, over loads that were drawn by chance.

    Attributes:
        feet: whole feet that were enough in the share of loads that was asked for; None where too few loads
            held every part at all [bd ft]
        usual: feet that were enough in half of the loads; None likewise [bd ft]
        sure: the share of loads that was asked for [dimensionless]
        loads: how many loads were drawn [dimensionless]
        never: parts that some load of any size did not hold, by their marks
        boards: how many boards stood behind the feet, in the middle of the loads [dimensionless]
        evidence: on what ground the boards stand
    """

    feet: Count | None
    usual: Count | None
    sure: Number
    loads: Count
    never: tuple[str, ...]
    boards: Count
    evidence: Evidence


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


def enough_feet(
    blanks: Sequence[Blank],
    name: GradeName,
    thickness: Inches,
    *,
    seed: Count,
    kerf: Inches = 0.125,
    end_trim: Inches = 1.0,
    edge_trim: Inches = 0.25,
    average: Inches | None = None,
    sure: Number = SURE,
    loads: Count = LOADS,
) -> EnoughFeet:
    """How many feet of a grade give all parts with a certain chance, before the boards are known.

    Loads are drawn board by board until every part has come out; the feet of each load are counted as a yard
    counts them. A board's width and length lie between the least of its grade and the greatest that is usual;
    its clear part lies between what the grade asks and what would make it a better one, in no more pieces
    than the grade allows. Parts come out by `parts_out_of`, a plain rule that wastes more than a careful
    layout of known boards, so the feet err on the side of enough. A board that holds no part that is still
    wanted is left at the yard, for an order names its wide and long boards.

    Args:
        blanks: the parts, on rough size
        name: the grade
        thickness: nominal thickness of the class [in]
        seed: the same seed draws the same loads [dimensionless]
        kerf: what each cut takes [in]
        end_trim: taken off each end of a board [in]
        edge_trim: taken off to straighten an edge [in]
        average: usable width of the wood's average board; None for what is usual in the grade [in]
        sure: the share of loads in which the feet are to be enough [dimensionless]
        loads: how many loads to draw [dimensionless]

    Returns:
        The feet, and what no load held.

    Raises:
        ValueError: the share is no part of one, or no load is drawn.

    Source: NHLA Rules Book (facts only) for sizes, clear parts and tally; the spread of boards over the sizes
    is common practice of dealers; drawing loads is computed.
    """
    if not 0 < sure < 1 or loads < 1:
        raise ValueError("Ask for a share between 0 and 1, such as 0.9, of one load or more.")
    chance, habit = Random(seed), board_habit(name)  # noqa: S311 - loads of lumber, no secret
    parts = longest_first([each for each in blanks if each.count])
    found: list[tuple[float, int]] = []
    never: dict[str, None] = {}
    trims = (kerf, end_trim, edge_trim)
    for _ in range(loads):
        surface, boards, left = _load(parts, habit, average, trims, chance)
        if lacking := [each.mark for each, want in zip(parts, left, strict=True) if want > TOLERANCE]:
            never |= dict.fromkeys(lacking)
            found.append((math.inf, boards))
        else:
            found.append((surface * billed_thickness(thickness), boards))
    found.sort()
    return EnoughFeet(
        feet=_whole(found[math.ceil(sure * loads) - 1][0]),
        usual=_whole(found[math.ceil(loads / 2) - 1][0]),
        sure=sure,
        loads=loads,
        never=tuple(never),
        boards=found[math.ceil(loads / 2) - 1][1],
        evidence=habit.evidence,
    )


def _whole(feet: BoardFeet) -> int | None:
    return None if math.isinf(feet) else math.ceil(feet - 1e-9)


def _load(
    parts: tuple[Blank, ...],
    habit: BoardHabit,
    average: float | None,
    trims: tuple[float, float, float],
    chance: Random,
) -> tuple[int, int, list[float]]:
    """One load: its surface measure, its boards, and what never came out of it."""
    wanted, surface, boards, half_up = [each.wanted for each in parts], 0, 0, True
    idle = 0
    kerf, end_trim, edge_trim = trims
    while any(want > TOLERANCE for want in wanted) and boards < MOST_BOARDS and idle < MOST_BOARDS // 8:
        width, length = _board(habit, average, edge_trim, chance)
        counted = surface_measure(width, length, half_up)
        half_up = half_up != is_half_foot(exact_surface(width, length / 12))
        came = 0.0
        for clear in _clear_lengths(length - 2 * end_trim, counted, habit, chance):
            out = parts_out_of(width - edge_trim, clear, parts, wanted, kerf)
            came += sum(out)
            wanted = [want - got for want, got in zip(wanted, out, strict=True)]
        idle = 0 if came else idle + 1
        if came:  # a board that gives nothing is left at the yard
            surface, boards = surface + counted, boards + 1
    return surface, boards, wanted


def _board(habit: BoardHabit, average: float | None, edge_trim: float, chance: Random) -> tuple[float, float]:
    """One board as it lies in the yard: width to the quarter inch, length in whole feet."""
    least, usual, greatest = habit.widths
    if average is not None:  # the usual width that makes the average what the shop says of it
        usual = min(max(3 * (average + edge_trim) - least - greatest, least), greatest)
    width = round(chance.triangular(least, greatest, usual) * 4) / 4
    return width, 12.0 * round(chance.triangular(habit.lengths[0], habit.lengths[2], habit.lengths[1]))


def _clear_lengths(length: float, counted: int, habit: BoardHabit, chance: Random) -> Iterator[float]:
    """The clear pieces of a board, end to end, each as wide as the board."""
    clear = length * chance.uniform(*habit.clear)
    allowed = cuttings_allowed(max(counted, 1), habit.grade) or 4
    shortest = min((each.length for each in habit.cuttings), default=12.0)
    pieces = max(1, min(chance.randint(1, allowed), int(clear // shortest)))
    spare = max(clear - pieces * shortest, 0.0)
    marks = sorted(chance.uniform(0, spare) for _ in range(pieces - 1))
    for before, after in zip((0.0, *marks), (*marks, spare), strict=True):
        yield min(clear, shortest + after - before)
