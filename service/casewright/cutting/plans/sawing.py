"""How a board comes apart: straight cuts from edge to edge, one direction and then the other.

What a layout gives is where the blanks lie; the cuts follow from that. At every turn all cuts of one
direction are made that meet no blank, so that the direction changes as seldom as it can.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Generic, TypeVar

from casewright.cutting.plans.spots import Spot
from casewright.measure.units import Count, Ticks

Held = TypeVar("Held")


class Way(StrEnum):
    """Which way a cut runs."""

    RIP = "rip"
    CROSSCUT = "crosscut"

    @property
    def other(self) -> "Way":
        """The way that follows it."""
        return Way.CROSSCUT if self is Way.RIP else Way.RIP


class CannotBeSawn(ValueError):
    """No straight cut from edge to edge gets between the pieces."""


@dataclass(frozen=True, slots=True)
class Sawn(Generic[Held]):
    """A piece of the board, and what becomes of it.

    Attributes:
        spot: where it lies
        way: how it is cut up; None where it is not
        pieces: what the cuts make of it, from the first end or the near edge on
        held: what it is, once it is cut free; None where it is cut up or left over
    """

    spot: Spot
    way: Way | None = None
    pieces: tuple["Sawn[Held]", ...] = ()
    held: Held | None = None

    def left(self) -> Iterator[Spot]:
        """What is left over of it, piece by piece."""
        if not self.pieces and self.held is None:
            yield self.spot
        for piece in self.pieces:
            yield from piece.left()

    @property
    def turns(self) -> Count:
        """How many directions of cuts follow on each other, at most [dimensionless]."""
        return 1 + max((piece.turns for piece in self.pieces), default=0) if self.pieces else 0

    @property
    def stages(self) -> Count:
        """As `turns`, but without a last cut that only trims one piece to its size [dimensionless]."""
        if not self.pieces:
            return 0
        inner = [piece for piece in self.pieces if piece.pieces or piece.held is not None]
        if len(inner) == 1 and inner[0].held is not None:
            return 0
        return 1 + max((piece.stages for piece in self.pieces), default=0)

    @property
    def cuts(self) -> Count:
        """How many cuts there are in all [dimensionless]."""
        return sum(piece.cuts for piece in self.pieces) + self._own_cuts()

    def _own_cuts(self) -> int:
        if not self.pieces:
            return 0
        first, last = self.pieces[0].spot, self.pieces[-1].spot
        if self.way is Way.RIP:
            trimmed = (first.y > self.spot.y) + (last.far < self.spot.far)
        else:
            trimmed = (first.x > self.spot.x) + (last.right < self.spot.right)
        return len(self.pieces) - 1 + trimmed


Lying = tuple[Spot, Held]


def saw_up(
    spot: Spot, lying: Sequence[tuple[Spot, Held]], kerf: Ticks, first: Way | None = None
) -> Sawn[Held]:
    """The cuts by which a rectangle comes apart into what lies on it.

    Args:
        spot: the rectangle
        lying: what lies on it, and where
        kerf: what a cut takes [tick]
        first: which way the first cuts run; left out, the way that turns less often, ripping where both do

    Returns:
        The rectangle with its cuts.

    Raises:
        CannotBeSawn: no straight cut gets between two pieces

    Source: common practice: a panel saw and a table saw cut from edge to edge.
    """
    if first is not None:
        return _sawn(spot, list(lying), kerf, first)
    tried = [_sawn(spot, list(lying), kerf, way) for way in Way]
    return min(tried, key=lambda sawn: (sawn.stages, sawn.cuts))


def _sawn(spot: Spot, lying: list[tuple[Spot, Held]], kerf: Ticks, way: Way) -> Sawn[Held]:
    if not lying:
        return Sawn(spot)
    if len(lying) == 1 and lying[0][0] == spot:
        return Sawn(spot, held=lying[0][1])
    for tried in (way, way.other):
        bands = _bands(lying, kerf, tried)
        if len(bands) > 1 or _trims(bands[0], spot, tried):
            return Sawn(spot, tried, tuple(_pieces(spot, bands, kerf, tried)))
    raise CannotBeSawn(lying[0][1], lying[1][1])


Band = tuple[int, int, list[tuple[Spot, Held]]]


def _bands(lying: list[tuple[Spot, Held]], kerf: Ticks, way: Way) -> list[Band[Held]]:
    """What lies together, because no cut of this way gets between it."""
    ends = _ends_across if way is Way.RIP else _ends_along
    bands: list[Band[Held]] = []
    for each in sorted(lying, key=lambda one: ends(one[0])):
        start, end = ends(each[0])
        if bands and start < bands[-1][1] + kerf:
            low, high, held = bands[-1]
            bands[-1] = (low, max(high, end), [*held, each])
        else:
            bands.append((start, end, [each]))
    return bands


def _ends_across(spot: Spot) -> tuple[int, int]:
    return spot.y, spot.far


def _ends_along(spot: Spot) -> tuple[int, int]:
    return spot.x, spot.right


def _trims(band: Band[Held], spot: Spot, way: Way) -> bool:
    return (band[0], band[1]) != (_ends_across(spot) if way is Way.RIP else _ends_along(spot))


def _pieces(spot: Spot, bands: list[Band[Held]], kerf: Ticks, way: Way) -> Iterator[Sawn[Held]]:
    """The bands cut free, and what is left before, between and behind them."""
    place, end = _ends_across(spot) if way is Way.RIP else _ends_along(spot)
    for start, stop, held in bands:
        if start - kerf > place:
            yield Sawn(_band(spot, place, start - kerf, way))
        yield _sawn(_band(spot, start, stop, way), held, kerf, way.other)
        place = stop + kerf
    if place < end:
        yield Sawn(_band(spot, place, end, way))


def _band(spot: Spot, start: int, stop: int, way: Way) -> Spot:
    if way is Way.RIP:
        return Spot(spot.x, start, spot.length, stop - start)
    return Spot(start, spot.y, stop - start, spot.width)
