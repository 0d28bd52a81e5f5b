"""The state of a lot while it is laid out: which boards were begun, what lies on them, what is still free."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field

from casewright.cutting.plans.filling import Bed, Filled, Lies
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.lots import Lot, weighed
from casewright.cutting.plans.sawing import CannotBeSawn, Sawn, Way, saw_up
from casewright.cutting.plans.spots import Spot, within
from casewright.measure.units import Count, Ticks

Key = tuple[str, int]
"""A board by its mark and its number among those that are alike."""


@dataclass(slots=True)
class Desk:
    """One lot as far as it is laid out.

    Attributes:
        lot: the lot
        kerf: what a cut takes [tick]
        offcuts: when offcuts are used
        way: which way the first cuts run; None for board by board
        begun: what lies on each board that was begun
    """

    lot: Lot
    kerf: Ticks
    offcuts: str
    way: Way | None = None
    begun: dict[Key, list[Lies]] = field(default_factory=dict)

    def copy(self, way: Way | None) -> "Desk":
        """The same state, to be laid out further another way.

        Args:
            way: which way the first cuts run from here on

        Returns:
            A desk of its own.

        Source: common practice.
        """
        begun = {key: list(lies) for key, lies in self.begun.items()}
        return Desk(self.lot, self.kerf, self.offcuts, way, begun)

    def ground(self, code: str) -> Ground:
        """The board or sheet with a mark.

        Args:
            code: the mark

        Returns:
            The ground.

        Source: common practice.
        """
        return next(ground for ground in self.lot.grounds if ground.stock.code == code)

    def cost(self) -> Count:
        """What all boards that were begun count [dimensionless].

        Returns:
            The sum, offcuts as they are weighed [dimensionless]

        Source: arithmetic.
        """
        return sum(weighed(self.lot, self.ground(code), self.offcuts) for code, _ in self.begun)

    def beds(
        self, may: Callable[[Ground], bool], shut: Callable[[Ground], tuple[Spot, ...]], least: Ticks
    ) -> Iterator[Bed]:
        """What can still be filled: free parts of begun boards, and untouched ones.

        Args:
            may: whether a board may be used
            shut: what may not be used of it
            least: anything narrower than this is of no use [tick]

        Yields:
            Beds; what is free of a begun board counts next to nothing.

        Source: common practice: what is left of a board that was begun anyway is free.
        """
        taken: dict[str, int] = {}
        for (code, number), lies in self.begun.items():
            taken[code] = taken.get(code, 0) + 1
            ground = self.ground(code)
            if may(ground):
                for spot in self._free(ground, lies):
                    if min(spot.length, spot.width) >= least:
                        yield Bed(
                            ground=ground,
                            number=number,
                            spot=spot,
                            shut=within(spot, shut(ground)),
                            cost=1,
                            limit=1,
                        )
        for ground in self.lot.grounds:
            left = None if ground.limit is None else ground.limit - taken.get(ground.stock.code, 0)
            if may(ground) and left != 0:
                yield Bed(
                    ground=ground,
                    number=0,
                    spot=ground.usable,
                    shut=within(ground.usable, shut(ground)),
                    cost=weighed(self.lot, ground, self.offcuts),
                    limit=left,
                )

    def _free(self, ground: Ground, lies: list[Lies]) -> tuple[Spot, ...]:
        try:
            # What was put by hand may reach into an edge that is else cut off; what else is there may not.
            return within(ground.usable, self.sawn(ground, lies).left())
        except CannotBeSawn:
            return ()

    def sawn(self, ground: Ground, lies: Iterable[Lies]) -> "Sawn[Lies]":
        """How a board comes apart into its blanks.

        Args:
            ground: the board
            lies: what lies on it

        Returns:
            The board with its cuts.

        Raises:
            CannotBeSawn: no straight cut gets between two pieces

        Source: common practice.
        """
        lying = [(each.spot, each) for each in lies]
        spot = ground.usable
        for each, _ in lying:  # by hand a part may reach into an edge that would else be cut off
            x, y = min(spot.x, each.x), min(spot.y, each.y)
            spot = Spot(x, y, max(spot.right, each.right) - x, max(spot.far, each.far) - y)
        way = self.way if not ground.grain_across or self.way is None else self.way.other
        if any(each.by_hand for _, each in lying):
            tried = []
            for first in Way:
                sawn = saw_up(spot, lying, self.kerf, first)
                tried.append((max((left.area for left in sawn.left()), default=0), sawn))
            return max(tried, key=lambda one: one[0])[1]
        return saw_up(spot, lying, self.kerf, way)

    def keep(self, filled: Filled) -> None:
        """Takes a layout over.

        Args:
            filled: what came of filling some of the beds
        """
        for bed, lies in filled.beds:
            number = bed.number or self._next_number(bed.ground)
            self.begun.setdefault((bed.ground.stock.code, number), []).extend(lies)

    def _next_number(self, ground: Ground) -> int:
        number = 1
        while (ground.stock.code, number) in self.begun:
            number += 1
        return number
