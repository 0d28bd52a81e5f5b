"""Board feet: exact, and as the yard counts them.

Two conventions stand side by side. The exact footage is thickness times width times length on rough sizes.
A wholesale yard rounds the surface measure of each board to a whole foot, and multiplies the sum by the
thickness. A paper must say which of the two it used.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.rounding import TOLERANCE, near_to
from casewright.measure.units import BoardFeet, Count, Feet, Inches, Number, SquareFeet
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


def board_feet(thickness: Inches, width: Inches, length: Inches) -> BoardFeet:
    """The exact footage of a piece of rough lumber.

    Rule: thickness * width * length / 144

    Args:
        thickness: nominal thickness of the class, such as 1.25 for 5/4 [in]
        width: rough width [in]
        length: rough length [in]

    Returns:
        Board feet, unrounded [bd ft]

    Source: NHLA Rules Book; a board foot is 144 cubic inches.
    """
    return thickness * width * length / 144


def billed_thickness(thickness: Inches) -> Inches:
    """The thickness that is paid for: stock under 1 in counts as 1 in.

    Rule: thickness, or 1 when it is less

    Args:
        thickness: nominal thickness [in]

    Returns:
        Thickness to count board feet with when buying [in]

    Source: NHLA Rules Book, as two lumber dealers state it.
    """
    return max(thickness, 1.0)


def whole_feet(length: Inches) -> Feet:
    """The length that a yard counts: whole feet, what is over is dropped.

    Rule: length / 12, rounded down

    Args:
        length: measured length of the board [in]

    Returns:
        Whole feet [ft]

    Source: NHLA Rules Book.
    """
    return float(math.floor(length / 12 + TOLERANCE))


def exact_surface(width: Inches, length: Feet) -> SquareFeet:
    """The surface of a board before it is rounded.

    Rule: width * length / 12

    Args:
        width: measured width, with its fractions [in]
        length: length in whole feet [ft]

    Returns:
        Surface of one face [sq ft]

    Source: NHLA Rules Book 2015, page 7, paragraph 16.
    """
    return width * length / 12


def is_half_foot(surface: SquareFeet) -> bool:
    """Whether a surface stands exactly between two whole feet.

    Args:
        surface: surface of one face [sq ft]

    Returns:
        True for an exact half.

    Source: arithmetic.
    """
    return abs(surface - math.floor(surface) - 0.5) < TOLERANCE


def surface_measure(width: Inches, length: Inches, half_up: bool = True) -> Count:
    """The surface measure of one board, in whole feet.

    Rule: width * whole_feet(length) / 12, to the nearest whole foot; an exact half as `half_up` says

    Args:
        width: measured width, with its fractions [in]
        length: measured length; it drops to whole feet [in]
        half_up: whether an exact half goes up; a tally sends halves up and down by turns

    Returns:
        Surface measure [dimensionless]

    Source: NHLA Rules Book 2015, page 7, paragraphs 16 and 18.
    """
    surface = exact_surface(width, whole_feet(length))
    if is_half_foot(surface):
        return math.floor(surface) + (1 if half_up else 0)
    return math.floor(surface + 0.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class YardBoard:
    """A board as it lies in the yard.

    Attributes:
        width: measured width [in]
        length: measured length [in]
        mark: its number, if it has one
    """

    width: Inches
    length: Inches
    mark: str = ""

    def __post_init__(self) -> None:
        if not (self.width > 0 and self.length > 0):
            raise ValueError(
                f"A board has a width and a length; {self.width:g} by {self.length:g} in has not."
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyLine:
    """One board of a tally.

    Attributes:
        board: the board
        surface: its surface in whole feet of length, not rounded [sq ft]
        counted: its surface measure [dimensionless]
    """

    board: YardBoard
    surface: SquareFeet
    counted: Count


@dataclass(frozen=True, slots=True, kw_only=True)
class Tally:
    """A bundle of boards of one thickness, counted as a yard counts them.

    Attributes:
        thickness: nominal thickness of the class [in]
        lines: one for each board, in the order in which they were counted
    """

    thickness: Inches
    lines: tuple[TallyLine, ...]

    @property
    def surface(self) -> SquareFeet:
        """The surfaces added up, none of them rounded [sq ft].

        Source: arithmetic.
        """
        return math.fsum(line.surface for line in self.lines)

    @property
    def counted(self) -> Count:
        """The surface measures added up: the footage of 4/4 stock.

        Source: NHLA Rules Book 2015, page 7, paragraph 18.
        """
        return sum(line.counted for line in self.lines)

    @property
    def feet(self) -> Count:
        """The footage of the bundle as it is billed, in whole board feet.

        Source: NHLA Rules Book 2015, page 7, paragraph 18.
        """
        return tallied_feet(self.counted, self.thickness)

    @property
    def exact_feet(self) -> BoardFeet:
        """The footage of the bundle on full lengths, not rounded [bd ft].

        Source: NHLA Rules Book; a board foot is 144 cubic inches.
        """
        thickness = billed_thickness(self.thickness)
        boards = (line.board for line in self.lines)
        return math.fsum(board_feet(thickness, board.width, board.length) for board in boards)


def tallied_feet(counted: Count, thickness: Inches) -> Count:
    """The billed footage of a bundle of one thickness.

    Rule: counted * billed_thickness(thickness), to the nearest whole foot

    Args:
        counted: the surface measures of the boards, added up [dimensionless]
        thickness: nominal thickness of the class [in]

    Returns:
        Whole board feet [dimensionless]

    Source: NHLA Rules Book 2015, page 7, paragraph 18.
    """
    return int(near_to(counted * billed_thickness(thickness), 1))


def tally(thickness: Inches, boards: Iterable[YardBoard]) -> Tally:
    """Counts a bundle as the yard does: board by board, exact halves up and down by turns, the first one up.

    Args:
        thickness: nominal thickness of the class [in]
        boards: the boards, in the order in which they lie

    Returns:
        The tally, with the exact figures beside the counted ones.

    Source: NHLA Rules Book 2015, page 7, paragraph 18; halves by turns is common practice.
    """
    lines, half_up = [], True
    for board in boards:
        surface = exact_surface(board.width, whole_feet(board.length))
        counted = surface_measure(board.width, board.length, half_up)
        lines.append(TallyLine(board=board, surface=surface, counted=counted))
        half_up = half_up != is_half_foot(surface)
    return Tally(thickness=thickness, lines=tuple(lines))


def usual_green_loss() -> tuple[Number, Evidence]:
    """The part of a green tally that goes in the kiln, with the ground for the figure.

    Returns:
        A fraction of the green footage [dimensionless], and where it comes from.

    Source: common practice.
    """
    row = document("allowances")["tally"]
    return float(row["green_loss"]), evidence_of(row)


def net_feet(green: BoardFeet, loss: Number) -> BoardFeet:
    """What is there after drying, of lumber that was tallied green.

    Rule: green * (1 - loss)

    Args:
        green: footage tallied green, called gross [bd ft]
        loss: the part of it that goes in the kiln; see `usual_green_loss` [dimensionless]

    Returns:
        Footage tallied dry, called net [bd ft]

    Raises:
        ValueError: the loss is not a part of the footage.

    Source: common practice.
    """
    _check_loss(loss)
    return green * (1 - loss)


def green_feet(net: BoardFeet, loss: Number) -> BoardFeet:
    """What a green tally must show so that the dry footage is there.

    Rule: net / (1 - loss)

    Args:
        net: footage tallied dry [bd ft]
        loss: the part of the green footage that goes in the kiln; see `usual_green_loss` [dimensionless]

    Returns:
        Footage tallied green [bd ft]

    Raises:
        ValueError: the loss is not a part of the footage.

    Source: common practice.
    """
    _check_loss(loss)
    return net / (1 - loss)


def _check_loss(loss: float) -> None:
    if not 0 <= loss < 1:
        raise ValueError(f"The loss in the kiln is a part of the footage, such as 0.07, not {loss:g}.")
