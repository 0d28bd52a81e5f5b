"""Where things lie on a board or sheet: rectangles in whole ticks, from its first end and its near edge.

Ticks are exact for every size that a maker types, so that what touches does not overlap by a hair.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.units import Count, Ticks


@dataclass(frozen=True, slots=True)
class Spot:
    """A rectangle on a board or sheet.

    Attributes:
        x: from the first end [tick]
        y: from the near edge [tick]
        length: along the board [tick]
        width: across it [tick]
    """

    x: Ticks
    y: Ticks
    length: Ticks
    width: Ticks

    @property
    def right(self) -> Ticks:
        """Where it ends along the board [tick]."""
        return self.x + self.length

    @property
    def far(self) -> Ticks:
        """Where it ends across the board [tick]."""
        return self.y + self.width

    @property
    def area(self) -> Count:
        """Length times width, in square ticks [dimensionless]."""
        return self.length * self.width

    def moved(self, x: Ticks, y: Ticks) -> "Spot":
        """The same rectangle elsewhere.

        Args:
            x: farther along the board by this [tick]
            y: farther across it by this [tick]

        Returns:
            The rectangle.

        Source: geometry.
        """
        return Spot(self.x + x, self.y + y, self.length, self.width)

    def flipped(self) -> "Spot":
        """The rectangle with along and across exchanged.

        Returns:
            The rectangle.

        Source: geometry.
        """
        return Spot(self.y, self.x, self.width, self.length)

    def holds(self, other: "Spot") -> bool:
        """Does the other lie wholly in this one?

        Args:
            other: another rectangle of the same board

        Returns:
            Whether it does.

        Source: geometry.
        """
        return self.x <= other.x and other.right <= self.right and self.y <= other.y and other.far <= self.far

    def meets(self, other: "Spot", apart: Ticks = 0) -> bool:
        """Do the two overlap, or lie nearer to each other than they may?

        Args:
            other: another rectangle of the same board
            apart: how far they have to be from each other [tick]

        Returns:
            Whether they do.

        Source: geometry.
        """
        return (
            self.x < other.right + apart
            and other.x < self.right + apart
            and self.y < other.far + apart
            and other.y < self.far + apart
        )

    def within(self, other: "Spot") -> "Spot | None":
        """The part of it that lies in another rectangle.

        Args:
            other: another rectangle of the same board

        Returns:
            The common rectangle; None where there is none.

        Source: geometry.
        """
        x, y = max(self.x, other.x), max(self.y, other.y)
        length, width = min(self.right, other.right) - x, min(self.far, other.far) - y
        return Spot(x, y, length, width) if length > 0 and width > 0 else None


def within(spot: Spot, others: Iterable[Spot]) -> tuple[Spot, ...]:
    """What of some rectangles lies in one.

    Args:
        spot: the one
        others: the others, on the same board

    Returns:
        The common rectangles, without empty ones.

    Source: geometry.
    """
    return tuple(common for other in others if (common := other.within(spot)) is not None)
