"""The parts of a unit: what each is, how large when finished, of which wood, and where it sits."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum
from string import ascii_lowercase
from typing import Any

from casewright.measure.making import maker, quickly_made
from casewright.measure.saying import Words
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.measured import MeasuredPart
from casewright.wood.movement import Cut
from casewright.wood.waste import PartUse


class FaceClass(StrEnum):
    """What the eye sees of a part; it decides which board the part comes from."""

    SHOW = "A"
    EDGE = "B"
    DRAWER = "C"
    INSIDE = "D"


class Grain(StrEnum):
    """Which way the grain of a part runs in the piece."""

    ACROSS = "side to side"
    UPRIGHT = "up and down"
    BACK = "front to back"
    ANY = "any"


@quickly_made
@dataclass(frozen=True, slots=True)
class Box:
    """Where a part sits: its left, front and lower corner, and its size from there [in].

    x runs from the outside of the left case side to the right, y from the front edge of the case to the back,
    z from the floor up.
    """

    x: float
    y: float
    z: float
    width: float
    depth: float
    height: float


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class CutOut:
    """What is sawn out of the rear edge of a part once it has its size.

    Attributes:
        along: from the left end of the part to where it begins [in]
        length: along the length of the part [in]
        depth: from the rear edge into its width [in]
    """

    along: float
    length: float
    depth: float

    @property
    def area(self) -> float:
        """What is missing of the face of the part [sq in]."""
        return self.length * self.depth


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One physical part.

    Attributes:
        code: its mark for life: unit, row or place, position, part; such as `A-R5-1-SL`
        line: its line in the cut list, such as `S5`; parts alike in everything share one
        name: what it is
        wood: shop name of its wood, or the name of its sheet
        cut: how the wood was sawn
        thickness: finished, measured where it was [in]
        width: finished, across the grain [in]
        length: finished, along the grain [in]
        face: what is seen of it
        grain: which way its grain runs in the piece
        use: which waste it is bought with
        ends: the joint at each end of its length
        sheet: is it cut from sheet goods?
        grain_set: parts that are cut in sequence share one
        box: where it sits when all drawers are closed
        solid: the share of its finished sizes that is wood, where it is turned
        measured: the names of the sizes that were measured
        cut_out: what is sawn out of it once it has its size; None for nothing
    """

    code: str
    line: str
    name: str
    wood: str
    cut: Cut
    thickness: float
    width: float
    length: float
    face: FaceClass
    grain: Grain
    use: PartUse
    ends: tuple[Words, Words] = ("", "")
    sheet: bool = False
    grain_set: str = ""
    box: Box
    solid: float = 1.0
    measured: tuple[str, ...] = ()
    cut_out: CutOut | None = None

    @property
    def volume(self) -> float:
        """Finished volume [cu in]."""
        if self.cut_out:
            return self.thickness * (self.width * self.length - self.cut_out.area)
        return self.thickness * self.width * self.length * self.solid

    @property
    def alike(self) -> tuple[object, ...]:
        """What parts on one line of the cut list have in common."""
        return (
            self.line,
            self.name,
            self.wood,
            self.cut,
            round(self.thickness, 6),
            round(self.width, 6),
            round(self.length, 6),
            self.use,
            self.cut_out,
        )


new_part = maker(Part)
"""Makes a part as `Part` does, and sooner: a piece has hundreds."""


def timber(choice: Timber) -> dict[str, Any]:
    """The wood and cut of a part, ready to be handed to it."""
    return {"wood": choice.wood, "cut": choice.cut}


SIZES = ("thickness", "width", "length")


def with_measured(part: Part, found: MeasuredPart | None) -> Part:
    """The part with what was measured of it in place of what was drawn."""
    if found is None:
        return part
    sizes = {name: getattr(found, name) for name in SIZES if getattr(found, name) is not None}
    return replace(part, **sizes, measured=tuple(sizes)) if sizes else part


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class PartLine:
    """One line of the cut list: parts alike in everything but their code.

    Attributes:
        line: the mark of the line, such as `S5`
        part: the first of them
        codes: the codes of all of them
    """

    line: str
    part: Part
    codes: tuple[str, ...]

    @property
    def quantity(self) -> int:
        """How many of them there are in one unit."""
        return len(self.codes)


new_line = maker(PartLine)
"""Makes a line as `PartLine` does, and sooner."""


def part_lines(parts: Iterable[Part]) -> tuple[PartLine, ...]:
    """The cut list: alike parts on one line, in the order in which they were made.

    A mark that ends with # is numbered by size (N1, N2); parts that share a mark but differ in size, because
    one of them was measured or a row has columns of several widths, get a letter behind it (S5, S5b).

    Args:
        parts: the parts of one unit

    Returns:
        The lines of the cut list, each with the codes it serves.

    Source: common practice.
    """
    groups: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        groups.setdefault(part.alike, []).append(part)
    used: dict[str, int] = {}
    lines = []
    for group in groups.values():
        first = group[0]
        used[first.line] = used.get(first.line, 0) + 1
        lines.append(
            new_line(
                line=_mark(first.line, used[first.line]), part=first, codes=tuple(part.code for part in group)
            )
        )
    return tuple(lines)


def _mark(base: str, number: int) -> str:
    """S5, S5b, S5c …, or N1, N2 … for a base that is numbered by size."""
    if base.endswith("#"):
        return f"{base[:-1]}{number}"
    return base if number == 1 else f"{base}{_letters(number)}"


def _letters(number: int) -> str:
    """b for the second, c for the third … z, and then aa, ab …"""
    before, last = divmod(number - 1, len(ascii_lowercase))
    return (_letters(before) if before else "") + ascii_lowercase[last]
