"""How one report writes its sizes and sets out its tables."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from textwrap import fill

from tabulate import tabulate

from casewright.measure.lengths import LengthUnit, show, show_mm
from casewright.measure.money import show_money
from casewright.measure.saying import Words, in_unit, say
from casewright.measure.units import MILLIMETRES_PER_INCH

WIDTH = 110
"""Signs in a line of running text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Writing:
    """How a report writes.

    Attributes:
        unit: the unit of its sizes
        denominator: the finest fraction of an inch: 16, 32 or 64
        symbol: the sign of its currency
    """

    unit: LengthUnit = LengthUnit.INCH
    denominator: int = 64
    symbol: str = "$"

    def size(self, inches: float) -> str:
        """A size in the report's unit, without the unit's name; marked where it was rounded."""
        return show_mm(inches) if self.unit is LengthUnit.MILLIMETRE else show(inches, self.denominator)

    def fine(self, inches: float, digits: int = 3) -> str:
        """A size finer than a rule shows, in decimals of the report's unit."""
        if self.unit is LengthUnit.MILLIMETRE:
            return f"{inches * MILLIMETRES_PER_INCH:.{digits - 1}f}"
        return f"{inches:.{digits}f}"

    def gap(self, inches: float, *, is_fine: bool = False) -> str:
        """A gap in the report's unit, in decimals where a 64th is too coarse; less than none binds [in]."""
        written = self.fine if is_fine else self.size
        return f"binds by {written(-inches)}" if inches < 0 else written(inches)

    def other(self, inches: float) -> str:
        """The same size in the unit that the report does not use."""
        return show(inches, self.denominator) if self.unit is LengthUnit.MILLIMETRE else show_mm(inches)

    def sizes(self, *inches: float) -> str:
        """Sizes joined by a times sign."""
        return " × ".join(self.size(each) for each in inches)

    def moment(self, inch_pounds: float) -> str:
        """A moment to the whole unit: in-lb, or N·m beside millimetres."""
        return self.said(say("{:moment bare}", inch_pounds))

    @property
    def moments(self) -> str:
        """The unit of its moments."""
        return "N·m" if self.unit is LengthUnit.MILLIMETRE else "in-lb"

    def said(self, words: Words) -> str:
        """What the core says, in the report's unit."""
        return in_unit(words, self.unit)

    def money(self, cents: int) -> str:
        """An amount of money."""
        return show_money(cents, self.symbol)

    @property
    def legend(self) -> str:
        """One line that says how to read the sizes."""
        if self.unit is LengthUnit.MILLIMETRE:
            return "Sizes in millimetres."
        return f"Sizes in inches; ≈ marks one that is rounded to 1/{self.denominator}."


def table(headings: Sequence[str], rows: Iterable[Sequence[object]], right: Iterable[int] = ()) -> str:
    """A plain table, two spaces between its columns.

    Args:
        headings: one for each column
        rows: the cells, already written
        right: columns, counted from nothing, that stand to the right

    Returns:
        The table, without a line end.
    """
    sided = set(right)
    aligned = tuple("right" if column in sided else "left" for column in range(len(headings)))
    cells = [[str(cell) for cell in row] for row in rows]
    return tabulate(cells, headers=headings, tablefmt="simple", disable_numparse=True, colalign=aligned)


def wrapped(text: str, indent: int = 0) -> str:
    """Text broken into lines that a terminal and a page hold, each line break of its own kept.

    Args:
        text: one or more lines
        indent: how far the second and later lines of each are set in

    Returns:
        The text.
    """
    return "\n".join(
        fill(line, WIDTH, subsequent_indent=" " * indent, break_long_words=False, break_on_hyphens=False)
        for line in text.splitlines()
    )


def aside(sentence: str) -> str:
    """A sentence as it stands in brackets within another one: without its full stop, begun small.

    Args:
        sentence: such as `A quarter of the 3/4 in front.`

    Returns:
        Such as `a quarter of the 3/4 in front`; a word of more capitals than its first keeps them.
    """
    words = sentence.removesuffix(".")
    return words if words[1:2].isupper() else words[:1].lower() + words[1:]


def section(title: str, *blocks: str) -> str:
    """A titled part of a report; blocks without text are left out.

    Args:
        title: its heading
        blocks: tables and paragraphs

    Returns:
        The part, its blocks an empty line apart.
    """
    return "\n\n".join((title.upper(), *(block for block in blocks if block)))


def several(count: int, one: str, many: str = "") -> str:
    """A count with its noun.

    Args:
        count: how many
        one: the noun of one
        many: the noun of several; an s is added when left out

    Returns:
        Such as `1 drawer` or `6 drawers`.
    """
    return f"{count} {one if count == 1 else many or one + 's'}"
