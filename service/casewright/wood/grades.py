"""Hardwood grades: what a board must yield, and the cheapest grade that holds a part."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Feet, Inches, Number
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


class GradeName(StrEnum):
    """The grades of the rule book, best first."""

    FAS = "FAS"
    ONE_FACE = "FAS 1-Face"
    SELECTS = "Selects"
    COMMON_1 = "No. 1 Common"
    COMMON_2A = "No. 2A Common"
    COMMON_3A = "No. 3A Common"
    COMMON_3B = "No. 3B Common"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """The least clear piece that counts towards a grade.

    Attributes:
        width: least width [in]
        length: least length [in]
    """

    width: Inches
    length: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Grade:
    """One grade of the rule book.

    Attributes:
        name: the grade
        min_width: narrowest board [in]
        min_length: shortest board [in]
        better_face: the grade whose cuttings the better face must yield
        poor_face: the grade whose cuttings the poorer face must yield
        cuttings: its own least cuttings; empty where the faces are graded by other grades, or by size alone
        yield_twelfths: clear part of the surface, in twelfths; None where the faces are graded by others
        price_rank: the higher, the dearer
        for_furniture: whether furniture makers buy it
        rule: what else the rule says
        evidence: where the figures come from
    """

    name: GradeName
    min_width: Inches
    min_length: Inches
    better_face: GradeName
    poor_face: GradeName
    cuttings: tuple[Cutting, ...]
    yield_twelfths: Count | None
    price_rank: Count
    for_furniture: bool
    rule: str
    evidence: Evidence

    def __str__(self) -> str:
        return str(self.name)


@cache
def grades() -> tuple[Grade, ...]:
    """Every grade, best first.

    Returns:
        The grades.

    Source: NHLA Rules Book (facts only), from a distributor's grade chart and an export council's guide.
    """
    return tuple(
        Grade(
            name=GradeName(row["name"]),
            min_width=row["min_width_in"],
            min_length=row["min_length_in"],
            better_face=GradeName(row["better_face"]),
            poor_face=GradeName(row["poor_face"]),
            cuttings=tuple(
                Cutting(width=cut["width_in"], length=cut["length_in"]) for cut in row["cuttings"]
            ),
            yield_twelfths=row["yield_twelfths"],
            price_rank=row["price_rank"],
            for_furniture=row["for_furniture"],
            rule=row["rule"],
            evidence=evidence_of(row),
        )
        for row in document("grades")["grades"]
    )


def grade(name: str) -> Grade:
    """The grade that goes by a name.

    Args:
        name: the rule book's name or a yard's short form, such as `FAS`, `F1F`, `select` or `1C`

    Returns:
        The grade.

    Raises:
        ValueError: no grade goes by that name.

    Source: NHLA Rules Book (facts only).
    """
    plain = " ".join(name.casefold().split())
    for each in grades():
        if plain == each.name.casefold() or plain in _row(each.name)["aliases"]:
            return each
    known = ", ".join(each.name for each in grades())
    raise ValueError(f"“{name}” is not a grade. The grades are {known}.")


@cache
def _row(name: GradeName) -> Mapping[str, Any]:
    found: Mapping[str, Any] = next(row for row in document("grades")["grades"] if row["name"] == name)
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class GradeChoice:
    """The cheapest grade for a part.

    Attributes:
        grade: the grade to buy; None when no grade's least cutting is long enough
        cutting: the least cutting that holds the part's length
        wide: true when the part is wider than that cutting, so that its boards must be picked
        message: the reason, in a maker's words
    """

    grade: Grade | None
    cutting: Cutting | None
    wide: bool
    message: Words


def cheapest_grade(length: Inches, width: Inches = 0.0, faces: Count = 1) -> GradeChoice:
    """The cheapest furniture grade whose least cutting holds a part: its length decides.

    Args:
        length: length of the part [in]
        width: width of the part, or of the boards that it is glued up from; 0 leaves it out [in]
        faces: how many faces must be clear, 1 or 2 [dimensionless]

    Returns:
        The grade, and whether the part is wider than the rule promises.

    Raises:
        ValueError: a part has one or two faces to show.

    Source: NHLA Rules Book (facts only); nothing under No. 1 Common for furniture is common practice.
    """
    if faces not in (1, 2):
        raise ValueError(f"A part shows one face or two, not {faces}.")
    for each in sorted(grades(), key=lambda grade: grade.price_rank):
        cutting = _widest(each, faces, length) if each.for_furniture else None
        if cutting:
            return _choice(each, cutting, length, width)
    longest = max(cutting.length for each in grades() for cutting in each.cuttings)
    return GradeChoice(
        grade=None,
        cutting=None,
        wide=False,
        message=say(
            "No grade promises a clear piece longer than {}; a part {} "
            "long needs boards picked by hand, or a joint in its length.",
            longest,
            length,
        ),
    )


def _widest(grade: Grade, faces: int, length: float) -> Cutting | None:
    """The widest least cutting of the face that counts, among those as long as the part."""
    face = grade.better_face if faces == 1 else grade.poor_face
    cuttings = next(each.cuttings for each in grades() if each.name == face)
    holding = [cutting for cutting in cuttings if cutting.length >= length - TOLERANCE]
    return max(holding, key=lambda cutting: cutting.width, default=None)


def _choice(grade: Grade, cutting: Cutting, length: float, width: float) -> GradeChoice:
    wide = width > cutting.width + TOLERANCE
    holds = say("{} promises clear pieces {:bare} by {}", grade.name, cutting.width, cutting.length)
    picked = say("; pick boards that are clear to {} wide", width) if wide else ""
    return GradeChoice(
        grade=grade,
        cutting=cutting,
        wide=wide,
        message=say("{}, for a part {} long{}.", holds, length, picked),
    )


def cutting_units(width: Inches, length: Feet) -> Number:
    """What one clear cutting counts towards its board's grade.

    Rule: width * length

    Args:
        width: clear width [in]
        length: clear length [ft]

    Returns:
        Cutting units, each an inch by a foot [dimensionless]

    Source: NHLA Rules Book (facts only).
    """
    return width * length


def cutting_units_needed(surface: Count, name: GradeName, *, extra_cut: bool = False) -> Count:
    """How many cutting units a board must yield for its grade.

    Rule: surface * yield in twelfths: 10 for FAS, 8 for No. 1 Common, 6 for No. 2A, 4 for No. 3A and
    3 for No. 3B; boards of 1 and 2 ft must yield more

    Args:
        surface: surface measure of the board [dimensionless]
        name: the grade; of FAS 1-Face and Selects the better face is meant
        extra_cut: true when one cutting more than usual was taken, which asks for a twelfth or two more

    Returns:
        Cutting units [dimensionless]

    Raises:
        ValueError: the board has no surface, or the rule allows it no extra cutting.

    Source: NHLA Rules Book (facts only).
    """
    row = _graded_by(name)
    _check_surface(surface)
    if extra_cut:
        return surface * _extra(row, surface)
    small = {each["sm"]: each["yield_twelfths"] for each in row["small_boards"]}
    return surface * int(small.get(surface, row["yield_twelfths"]))


def cuttings_allowed(surface: Count, name: GradeName, *, extra_cut: bool = False) -> Count | None:
    """In how many pieces a board may yield what its grade asks for.

    Rule: surface / 4 for FAS, at most 4; (surface + 1) / 3 for No. 1 Common, at most 5; surface / 2 for
    No. 2A, at most 7; rounded down, at least one; one more with an extra cutting

    Args:
        surface: surface measure of the board [dimensionless]
        name: the grade; of FAS 1-Face and Selects the better face is meant
        extra_cut: true to ask for the number with one cutting more

    Returns:
        Number of cuttings; None where any number will do [dimensionless]

    Raises:
        ValueError: the board has no surface, or the rule allows it no extra cutting.

    Source: NHLA Rules Book (facts only).
    """
    row = _graded_by(name)
    _check_surface(surface)
    if row["cuts_divisor"] is None:
        return None
    usual = min((surface + int(row["cuts_added"])) // int(row["cuts_divisor"]), int(row["most_cuts"]))
    if extra_cut:
        _extra(row, surface)
    return max(usual, 1) + (1 if extra_cut else 0)


def meets_grade(surface: Count, cuttings: tuple[Cutting, ...], name: GradeName) -> bool:
    """Whether the clear cuttings found on a face bring its board into a grade.

    Args:
        surface: surface measure of the board [dimensionless]
        cuttings: the clear pieces that can be cut from the face
        name: the grade; of FAS 1-Face and Selects the better face is meant

    Returns:
        True when pieces of the least size or more yield enough, in no more pieces than are allowed.

    Raises:
        ValueError: the board has no surface.

    Source: NHLA Rules Book (facts only).
    """
    _check_surface(surface)
    least = next(each.cuttings for each in grades() if each.name == _graded_by(name)["name"])
    counted = [cutting for cutting in cuttings if _counts(cutting, least)]
    units = sorted((cutting_units(cutting.width, cutting.length / 12) for cutting in counted), reverse=True)
    if _enough(units, surface, name, extra_cut=False):
        return True
    extra = _graded_by(name)["extra_cut"]
    may = extra is not None and extra["least_sm"] <= surface <= extra["most_sm"]
    return may and _enough(units, surface, name, extra_cut=True)


def _counts(cutting: Cutting, least: tuple[Cutting, ...]) -> bool:
    if not least:
        return cutting.width >= 1.5 - TOLERANCE and cutting.width * cutting.length >= 36 - TOLERANCE
    return any(
        cutting.width >= each.width - TOLERANCE and cutting.length >= each.length - TOLERANCE
        for each in least
    )


def _enough(units: list[float], surface: int, name: GradeName, *, extra_cut: bool) -> bool:
    allowed = cuttings_allowed(surface, name, extra_cut=extra_cut)
    needed = cutting_units_needed(surface, name, extra_cut=extra_cut)
    return math.fsum(units[:allowed]) >= needed - TOLERANCE


def _graded_by(name: GradeName) -> Mapping[str, Any]:
    """The row whose yield the better face of a grade must meet."""
    return _row(GradeName(_row(name)["better_face"]))


def _check_surface(surface: int) -> None:
    if surface < 1:
        raise ValueError(f"A board is graded on its surface measure, which is 1 ft or more, not {surface}.")


def _extra(row: Mapping[str, Any], surface: int) -> int:
    extra = row["extra_cut"]
    if extra is None or not extra["least_sm"] <= surface <= extra["most_sm"]:
        raise ValueError(f"{row['name']} allows no extra cutting on a board of {surface} ft.")
    return int(extra["yield_twelfths"])
