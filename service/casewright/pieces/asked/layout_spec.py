"""How the face of a piece is parted: rows, columns side by side, and columns with rows of their own."""

from collections.abc import Iterator, Mapping
from typing import Literal, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.pieces.asked.fields import Clearance, Size, Spec
from casewright.pieces.asked.graduation import Graduation
from casewright.pieces.asked.notch_spec import Notch
from casewright.pieces.asked.panel_spec import SheetChoice

MOST_LEVELS = 4
"""Stacks of rows within one another: the whole face is the first of them."""
Holds = Literal["drawer", "open", "doors"]
"""What an opening holds: a drawer, nothing, or doors with what stands behind them."""


class Column(Spec):
    """One column of a row: an opening, or a stack of rows of its own."""

    width: Size | None = Field(
        None, description="Clear width; left out, it shares what is left equally.", examples=["16"]
    )
    holds: Holds | None = Field(
        None, description="What stands in it; left out, what its row holds.", examples=["open"]
    )
    rows: "tuple[Row, ...] | None" = Field(
        None,
        min_length=1,
        max_length=40,
        description="Rows of its own, from the top: the column is a stack of them.",
        examples=[[{}, {}, {}]],
    )
    graduation: Graduation | None = Field(
        None, description="How its rows grow towards the floor; left out, as the unit's."
    )
    shelves: int = Field(
        0, ge=0, le=20, description="Shelves in an open space or behind doors.", examples=[1]
    )
    leaves: Literal[1, 2] | None = Field(
        None,
        description="Doors side by side; left out, two where the opening is wider than 24 in.",
        examples=[2],
    )
    hinged: Literal["left", "right"] = Field(
        "left", description="The side at which a single door is hinged.", examples=["right"]
    )
    knee: bool = Field(
        False,
        description="Is it a knee space, open down to the floor, with no case bottom and no base under it?",
        examples=[True],
    )

    @model_validator(mode="after")
    def fits_together(self) -> Self:
        own = [name for name in ("holds", "shelves", "leaves", "hinged", "knee") if self._says(name)]
        if self.rows is not None and own:
            raise _layout(f"a column with rows of its own holds what they hold; leave out {own[0]}")
        if self.rows is None and self.graduation is not None:
            raise _layout("only a column with rows of its own has a graduation; leave it out, or add rows")
        if self.knee and (self.holds not in (None, "open") or self.shelves):
            raise _layout("a knee space is open down to the floor; leave out what else it should hold")
        return self

    def _says(self, name: str) -> bool:
        return bool(getattr(self, name) != type(self).model_fields[name].default)

    def holding(self, row: Holds) -> Holds:
        """What it holds in a row that says what its columns hold."""
        return "open" if self.knee else self.holds or row


class Row(Spec):
    """One row of openings; rows are listed from the top down."""

    columns: int = Field(1, ge=1, le=12, description="Drawers side by side in the row.", examples=[2])
    widths: tuple[Size | None, ...] | None = Field(
        None,
        description="Opening widths from the left, one for each column; null shares what is left equally.",
        examples=[["12", None, "12"]],
    )
    height: Size | None = Field(
        None,
        description=(
            "Opening height, locked: the rule shares the rest among the other rows. Where nothing lies "
            "between the rows and fronts cover the case, the height of the front."
        ),
        examples=["6"],
    )
    contents: Size | None = Field(
        None, description="Height of what goes in, for graduation by contents.", examples=["4-1/2"]
    )
    holds: Holds = Field(
        "drawer", description="What each column of the row holds that does not say so.", examples=["doors"]
    )
    across: tuple[Column, ...] | None = Field(
        None,
        min_length=1,
        max_length=12,
        description="The columns spelled out, from the left, in place of columns and widths.",
        examples=[[{"rows": [{}, {}]}, {"holds": "open"}]],
    )
    files: Literal["letter", "legal"] | None = Field(
        None, description="Hanging folders that its drawers are to hold.", examples=["letter"]
    )
    pulls: int | None = Field(
        None,
        ge=1,
        le=2,
        description="Pulls on each drawer, one or two; left out, as the unit's.",
        examples=[2],
    )
    front_tails: int | None = Field(
        None, ge=1, le=60, description="Tails at the front joint; left out, they are ranked.", examples=[5]
    )
    back_tails: int | None = Field(
        None, ge=1, le=60, description="Tails at the back joint; left out, they are ranked.", examples=[5]
    )
    notch: Notch | None = Field(
        None,
        description=(
            "A recess from the back of each of its drawers, around pipes behind a kitchen or a washbasin; "
            "null for none."
        ),
        examples=[{"width": "10", "depth": "8"}],
    )

    @model_validator(mode="after")
    def widths_match_columns(self) -> Self:
        if self.widths is None:
            return self
        if "columns" in self.model_fields_set and self.columns != len(self.widths):
            raise PydanticCustomError(
                "widths",
                "there are {columns} drawers but widths for {widths}; give one for each, or none",
                {"columns": self.columns, "widths": len(self.widths)},
            )
        if not self.widths:
            raise PydanticCustomError(
                "widths", "write one width for each column, such as {example}", {"example": '["12", null]'}
            )
        return self

    @model_validator(mode="after")
    def columns_fit_together(self) -> Self:
        if self.across is None:
            return self
        if self.widths is not None or "columns" in self.model_fields_set:
            raise _layout("across spells out the columns, each with its width; leave out columns and widths")
        if levels_of((self,)) > MOST_LEVELS:
            raise _layout(f"stacks go {MOST_LEVELS} deep at most; give the rows of this column fewer columns")
        for number, column in enumerate(self.across, start=1):
            holds = column.holding(self.holds)
            if column.shelves and holds == "drawer":
                raise _layout(f'column {number}: a drawer has no shelves; write "holds": "open"')
            if holds != "doors" and column.leaves is not None:
                raise _layout(f'column {number}: only doors have leaves; write "holds": "doors"')
        return self

    @property
    def column_widths(self) -> tuple[float | None, ...]:
        """One width for each column, None where it is shared."""
        if self.across is not None:
            return tuple(column.width for column in self.across)
        return self.widths if self.widths is not None else (None,) * self.columns

    @property
    def openings(self) -> int:
        """How many openings there are in the row and in the stacks of its columns."""
        return len(tuple(self._held()))

    @property
    def drawers(self) -> int:
        """How many of them hold a drawer."""
        return sum(1 for holds in self._held() if holds == "drawer")

    def _held(self) -> Iterator[Holds]:
        """What each opening holds, from the left, through the stacks of the columns."""
        if self.across is None:
            yield from (self.holds,) * len(self.column_widths)
        for column in self.across or ():
            if column.rows is None:
                yield column.holding(self.holds)
            else:
                for row in column.rows:
                    yield from row._held()


Column.model_rebuild()


class Shelving(Spec):
    """Shelves in open spaces and behind doors: loose on pins, or housed in what stands beside them."""

    thickness: Size = Field(0.75, description="Thickness of a shelf.", examples=["3/4"])
    edge: Clearance = Field(
        0.75,
        description=(
            "Width of the show-wood edge along its front; 0 for a shelf all of the case's wood, as one in an "
            "open space is."
        ),
        examples=["3/4"],
    )
    fixing: Literal["pins", "housings"] = Field(
        "pins", description="Is a shelf loose on pins, or housed at both ends?", examples=["housings"]
    )
    play: Clearance = Field(
        0.0625, description="Room at each end of a shelf that lies loose on pins.", examples=["1/16"]
    )
    setback: Clearance = Field(
        0.25, description="How far a shelf stays behind the front edge, or behind doors.", examples=["1/4"]
    )
    floor: Literal["plywood", "none"] = Field(
        "plywood",
        description=(
            "The floor of what is open, or has doors, over a web frame: thin plywood laid on the frame "
            "behind a strip of show wood, or none."
        ),
        examples=["none"],
    )
    floor_sheet: SheetChoice = Field(
        default_factory=SheetChoice, description="The sheet of such a floor; counts for no others."
    )
    floor_edge: Size = Field(
        0.75, description="Width of the strip of show wood in front of such a floor.", examples=["3/4"]
    )


def levels_of(rows: tuple[Row, ...]) -> int:
    """How many stacks of rows lie within one another: 1 where no column has rows of its own."""
    inner = (levels_of(column.rows) for row in rows for column in row.across or () if column.rows is not None)
    return 1 + max(inner, default=0)


def row_of(rows: tuple[Row, ...], mark: str) -> Row:
    """The row of a mark: `5` is the fifth; `2-1-3` the third in the first column of the second.

    Args:
        rows: the rows of a unit, from the top
        mark: numbers from one, of rows and columns in turn

    Returns:
        The row.

    Raises:
        LookupError: there is no such row

    Source: geometry of the face.
    """
    number, _, rest = mark.partition("-")
    row = rows[_from_nought(number)]
    if not rest:
        return row
    column, _, below = rest.partition("-")
    inner = (row.across or ())[_from_nought(column)].rows
    if inner is None:
        raise IndexError(mark)
    return row_of(inner, below)


def with_row(rows: tuple[Row, ...], mark: str, changes: Mapping[str, object]) -> tuple[Row, ...]:
    """The rows with one of them changed.

    Args:
        rows: the rows of a unit, from the top
        mark: of the row to be changed, as `row_of` takes it
        changes: the fields that change

    Returns:
        The rows; nothing is validated anew.

    Raises:
        LookupError: there is no such row

    Source: geometry of the face.
    """
    number, _, rest = mark.partition("-")
    place = _from_nought(number)
    row = rows[place]
    if not rest:
        changed = row.model_copy(update=dict(changes))
    else:
        column, _, below = rest.partition("-")
        across = list(row.across or ())
        at = _from_nought(column)
        inner = with_row(across[at].rows or (), below, changes)
        across[at] = across[at].model_copy(update={"rows": inner})
        changed = row.model_copy(update={"across": tuple(across)})
    return (*rows[:place], changed, *rows[place + 1 :])


def _from_nought(number: str) -> int:
    if not number.isdecimal() or number == "0":
        raise IndexError(number)
    return int(number) - 1


def _layout(message: str) -> PydanticCustomError:
    return PydanticCustomError("layout", "{message}", {"message": message})
