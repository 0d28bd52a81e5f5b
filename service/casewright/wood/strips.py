"""Parts out of one clear piece of wood by a plain rule: rip a strip, crosscut it, rip the next.

It answers how many parts a board holds before anybody lays it out: the fullest strip first, no looking ahead.
What is cut in the end is laid out with more care and wastes less.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number

NARROWEST_STRIP = 2.5
WIDEST_STRIP = 7.0
"""Boards of a panel are no narrower and no wider than this (common practice) [in]."""
MUCH_NARROWER = 0.6
"""A part that is narrower than this share of a strip is not cut from it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """Parts of one rough size that are still to come out of some board.

    Attributes:
        width: rough width; of parts that are glued up, of each part whole [in]
        length: rough length, along the grain [in]
        count: how many [dimensionless]
        mark: which line of the cut list it is
        is_glued: may each be made up of strips of any width that panels are made of?
    """

    width: Inches
    length: Inches
    count: Count
    mark: str = ""
    is_glued: bool = False

    def __post_init__(self) -> None:
        if not (self.width > 0 and self.length > 0):
            raise ValueError(
                say("A part {:exact} by {:exact} cannot be cut from a board.", self.width, self.length)
            )
        if self.count < 0:
            raise ValueError(f"There are no {self.count} parts of a size; give 0 or more.")

    @property
    def wanted(self) -> Number:
        """How many there are; of parts that are glued up, the inches of width that they take together."""
        return self.count * self.width if self.is_glued else float(self.count)


def longest_first(blanks: Sequence[Blank]) -> tuple[Blank, ...]:
    """Parts in the order in which a board is cut up: long before short, wide before narrow.

    Args:
        blanks: parts of any sizes

    Returns:
        The same parts.

    Source: common practice.
    """
    return tuple(sorted(blanks, key=lambda each: (-each.length, -each.width, each.mark)))


def parts_out_of(
    width: Inches, length: Inches, blanks: Sequence[Blank], wanted: Sequence[Number], kerf: Inches
) -> tuple[Number, ...]:
    """How much of each part comes out of one clear piece.

    Strips are ripped one after the other, each as wide as one of the parts, or as a panel takes it; of all
    that could be ripped next that one is, of which most becomes parts. Each is crosscut longest part first.

    Args:
        width: clear width, edges straight [in]
        length: clear length, ends trimmed [in]
        blanks: the parts, as `longest_first` gives them
        wanted: how much of each is still wanted, in the same order, as `Blank.wanted` counts [dimensionless]
        kerf: what each cut takes [in]

    Returns:
        How much of each comes out, never more than is wanted [dimensionless]

    Source: common practice: rip first, the longest part before all others.
    """
    still, left = list(wanted), width
    while True:
        best: tuple[float, float, list[float]] | None = None
        for strip in _strips(left, length, blanks, still):
            share, out = _crosscut(strip, length, blanks, still, kerf)
            if best is None or share > best[0] + TOLERANCE:
                best = (share, strip, out)
        if best is None or not best[0]:
            return tuple(before - now for before, now in zip(wanted, still, strict=True))
        still = [want - got for want, got in zip(still, best[2], strict=True)]
        left -= best[1] + kerf


def _strips(left: float, length: float, blanks: Sequence[Blank], still: Sequence[float]) -> Iterator[float]:
    """The widths that a strip could have, each once; a piece is not ripped so that a sliver is left."""
    seen: set[float] = set()
    for each, want in zip(blanks, still, strict=True):
        if want <= TOLERANCE or each.length > length + TOLERANCE:
            continue
        width = each.width
        if each.is_glued:
            pieces = 1 if left <= WIDEST_STRIP else 2 if left <= 2 * WIDEST_STRIP else 3
            width = max(min(left / pieces, WIDEST_STRIP, want), NARROWEST_STRIP)
        if width <= left + TOLERANCE and width not in seen:
            seen.add(width)
            yield width


def _crosscut(
    strip: float, length: float, blanks: Sequence[Blank], still: Sequence[float], kerf: float
) -> tuple[float, list[float]]:
    """What one strip gives, and the share of it that becomes parts."""
    out, run, used = [0.0] * len(blanks), length, 0.0
    for place, each in enumerate(blanks):
        if each.is_glued:
            if not NARROWEST_STRIP - TOLERANCE <= strip <= WIDEST_STRIP + TOLERANCE:
                continue
        elif not MUCH_NARROWER * strip - TOLERANCE <= each.width <= strip + TOLERANCE:
            continue
        while still[place] - out[place] > TOLERANCE and each.length <= run + TOLERANCE:
            got = min(strip, still[place] - out[place]) if each.is_glued else 1.0
            out[place] += got
            run -= each.length + kerf
            used += (got if each.is_glued else each.width) * each.length
    return used / (strip * length), out
