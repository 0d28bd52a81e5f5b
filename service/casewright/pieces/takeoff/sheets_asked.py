"""Sheets of one kind for several jobs: which parts have to come out of how many of them."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.units import Count, Inches, SquareInches
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import Grain

TRIM = 0.25
"""Taken off each edge of a whole sheet (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPart:
    """Parts of one size that are cut from a sheet.

    Attributes:
        job: which job they are for
        width: across the grain [in]
        length: along it [in]
        count: how many [dimensionless]
        may_turn: may they lie across the grain?
    """

    job: str
    width: Inches
    length: Inches
    count: Count
    may_turn: bool

    @property
    def area(self) -> SquareInches:
        """Of all of them [sq in].

        Source: arithmetic.
        """
        return self.width * self.length * self.count


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetOnHand:
    """A sheet or an offcut of one on the rack.

    Attributes:
        id: which piece it is
        width: across the grain [in]
        length: along it [in]
        is_offcut: are its edges sawn already, so that nothing is trimmed?
    """

    id: str
    width: Inches
    length: Inches
    is_offcut: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsAsked:
    """How many new sheets do some parts take, beside what is on the rack?

    Attributes:
        parts: the parts
        on_hand: what is on the rack
        width: of a new sheet [in]
        length: of a new sheet, along the grain [in]
        kerf: what each cut takes [in]
        trim: taken off each edge of a whole sheet [in]
    """

    parts: tuple[SheetPart, ...]
    on_hand: tuple[SheetOnHand, ...]
    width: Inches
    length: Inches
    kerf: Inches = 0.125
    trim: Inches = TRIM


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsLaid:
    """What a layout of all parts takes.

    Attributes:
        sheets: new sheets [dimensionless]
        fewest: no layout takes fewer, as far as is known [dimensionless]
        taken: pieces of the rack that are used, each with the jobs whose parts lie on it, most area first
        too_large: how many parts no sheet holds [dimensionless]
    """

    sheets: Count
    fewest: Count
    taken: tuple[tuple[str, tuple[str, ...]], ...]
    too_large: Count


def sheet_parts(unit: Construction, count: Count, job: str) -> Iterator[tuple[str, SheetPart]]:
    """The parts of a unit that are cut from sheets.

    Args:
        unit: one unit, worked out
        count: how many units are made alike [dimensionless]
        job: which job they are for

    Returns:
        Each with the sheet that it is cut from, such as `1/4 in birch plywood`.

    Source: the unit's own parts; sheets are cut to finished size (common practice).
    """
    for line in unit.lines:
        part = line.part
        if part.sheet:
            yield (
                part.wood,
                SheetPart(
                    job=job,
                    width=part.width,
                    length=part.length,
                    count=line.quantity * count,
                    may_turn=part.grain is Grain.ANY,
                ),
            )
