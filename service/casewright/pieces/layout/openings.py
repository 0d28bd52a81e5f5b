"""The face of the case as it comes out: stacks of rows, their columns, and every opening."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from casewright.measure.making import quickly_made
from casewright.pieces.asked.layout_spec import Holds


class Wall(StrEnum):
    """What stands beside a stack of rows: the side of the case (a leg is one too), or a partition."""

    SIDE = "side"
    PARTITION = "partition"


Walls = tuple[Wall, Wall]


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """The hole that one drawer goes into.

    Attributes:
        code: row and position, such as `R5-1`; in a stack within a column `R2-1-3-1`
        row: from the top of its stack, starting with 1
        column: from the left of its row, starting with 1
        left: left edge, from the outside of the left case side [in]
        bottom: lower edge, from the underside of the case bottom [in]
        width: clear width; measured where it was [in]
        height: clear height; measured where it was [in]
        depth: front edge of the case to the back; measured where it was [in]
        designed_width: as it was drawn [in]
        designed_height: as it was drawn [in]
        designed_depth: as it was drawn [in]
        measured: the names of the sizes that were measured
        is_first: is it the first drawer of its row, by which the tails of the row are chosen?
    """

    code: str
    row: int
    column: int
    left: float
    bottom: float
    width: float
    height: float
    depth: float
    designed_width: float
    designed_height: float
    designed_depth: float
    measured: tuple[str, ...] = ()
    is_first: bool = True

    @property
    def row_code(self) -> str:
        """The code of its row, such as `R5` or `R2-1-3`."""
        return self.code.rpartition("-")[0]

    @property
    def row_mark(self) -> str:
        """Its row as it is spoken of: `5`, or `2-1-3` for the third row in the first column of row 2."""
        return self.row_code[1:]


@dataclass(frozen=True, slots=True, kw_only=True)
class Space(Opening):
    """An opening that holds doors, or nothing.

    Attributes:
        holds: doors, or open
        shelves: shelves in it, evenly spaced
        leaves: doors side by side; none where it is open
        hinged: the side at which a single door is hinged
        knee: is it a knee space, open down to the floor?
    """

    holds: Holds
    shelves: int
    leaves: int
    hinged: Literal["left", "right"]
    knee: bool


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One column of a row: it holds an opening, or a stack of rows of its own.

    Attributes:
        code: such as `R2-1`
        left: left edge, from the outside of the left case side [in]
        width: designed clear width [in]
        opening: the opening of a drawer, or the space; None for a stack
        stack: the rows of its own; None for an opening
    """

    code: str
    left: float
    width: float
    opening: Opening | None
    stack: "Stack | None"

    @property
    def is_drawer(self) -> bool:
        """Does a drawer stand in it, by itself?"""
        return self.opening is not None and not isinstance(self.opening, Space)

    @property
    def is_knee(self) -> bool:
        """Is it a knee space?"""
        return isinstance(self.opening, Space) and self.opening.knee


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class FaceRow:
    """One row: its designed height, its columns, and what stands between them.

    Attributes:
        code: such as `R2`; in a stack within a column `R2-1-3`
        number: from the top of its stack, starting with 1
        bottom: lower edge of the openings, from the underside of the case bottom [in]
        height: designed height of the openings [in]
        is_top: does it lie right under the rails of the top?
        is_lowest: does it stand on the case bottom?
        cells: its columns, from left to right
        openings: the drawers' openings among them
        uprights: left edge of each upright, from the outside of the left case side [in]
        partitions: left edge of each full-depth partition, from there too [in]
    """

    code: str
    number: int
    bottom: float
    height: float
    is_top: bool
    is_lowest: bool
    cells: tuple[Cell, ...]
    openings: tuple[Opening, ...]
    uprights: tuple[float, ...]
    partitions: tuple[float, ...] = ()

    @property
    def mark(self) -> str:
        """The row as it is spoken of: `2`, or `2-1-3`."""
        return self.code[1:]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """Rows one above the other, between two walls.

    Attributes:
        code: that of its column, such as `R2-1`; empty for the whole face
        left: inner face of its left wall, from the outside of the left case side [in]
        width: clear width between its walls [in]
        bottom: lower edge of its lowest row, from the underside of the case bottom [in]
        height: from there to the upper edge of its top row [in]
        rows: from the top down
        walls: what stands at its left and at its right
    """

    code: str
    left: float
    width: float
    bottom: float
    height: float
    rows: tuple[FaceRow, ...]
    walls: Walls


@dataclass(frozen=True, slots=True, kw_only=True)
class Pedestal:
    """What stands on the floor between two knee spaces, or the whole case where there is none.

    Attributes:
        left: outer face of its left wall, from the outside of the left case side [in]
        right: outer face of its right wall, from there too [in]
        walls: what stands at its left and at its right
    """

    left: float
    right: float
    walls: Walls


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """The heights and widths that everything else hangs on.

    Attributes:
        body_height: height of the case body [in]
        base_height: height of the base [in]
        overall_height: floor to the upper face of the top [in]
        opening_total: all opening heights of a column added up [in]
        clear_width: width between the case sides [in]
        opening_depth: designed depth of every opening [in]
        stacks: every stack of rows: the whole face, then those within its columns
        openings: the drawers' openings, row by row from the top, each row from the left
        spaces: the openings that hold doors, or nothing, in the same order
        pedestals: what stands on the floor, from the left
    """

    body_height: float
    base_height: float
    overall_height: float
    opening_total: float
    clear_width: float
    opening_depth: float
    stacks: tuple[Stack, ...]
    openings: tuple[Opening, ...]
    spaces: tuple[Space, ...]
    pedestals: tuple[Pedestal, ...]

    @property
    def rows(self) -> tuple[FaceRow, ...]:
        """The rows of the whole face, from the top down; a column among them may have rows of its own."""
        return self.stacks[0].rows

    @property
    def all_rows(self) -> Iterator[FaceRow]:
        """The rows of every stack."""
        return (row for stack in self.stacks for row in stack.rows)

    @property
    def is_nested(self) -> bool:
        """Has a column rows of its own?"""
        return len(self.stacks) > 1

    def divider_tops(self, divider: float) -> tuple[float, ...]:
        """The upper edge of each divider of the whole face, from the underside of the case bottom,
        lowest first [in]."""
        return tuple(row.bottom for row in reversed(self.rows[:-1]) if divider)
