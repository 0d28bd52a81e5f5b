"""A plan of cutting: what a layout says of each board, and of all of them together."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.plans.blanks import Broken
from casewright.cutting.plans.by_hand import NotThere
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.lots import Measure
from casewright.cutting.plans.sawing import Sawn
from casewright.cutting.plans.spots import Spot
from casewright.measure.saying import Words
from casewright.measure.units import Count, Number, Seconds, Ticks


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One part among those that are alike.

    Attributes:
        code: its mark
        number: which of those that are alike, from 1 [dimensionless]
    """

    code: str
    number: Count

    def __str__(self) -> str:
        return self.code


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A part, a strip of one, or two that are sawn from one thickness, where it lies.

    Attributes:
        mark: the part, or the set that is glued up as one
        spot: where it lies on its board
        second: the part behind it, where two are sawn from one thickness
        turned: does its length lie across the grain?
        strip: which strip of a glued part it is; 0 for none [dimensionless]
        strips: of how many [dimensionless]
        matched: the set for whose sake it lies there
        by_hand: was it put there by hand?
        ends_kept: does its first end lie toward the first end of the board, as it must?
    """

    mark: Mark
    spot: Spot
    second: Mark | None = None
    turned: bool = False
    strip: Count = 0
    strips: Count = 0
    matched: str = ""
    by_hand: bool = False
    ends_kept: bool = False

    @property
    def label(self) -> str:
        """What stands on it in a drawing."""
        words = self.mark.code + (f" + {self.second.code}" if self.second else "")
        return f"{words} {self.strip}/{self.strips}" if self.strips > 1 else words


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """A piece that is left over and worth keeping.

    Attributes:
        spot: where it lies on its board
        is_clear: is it free of defects and sapwood?
        grain_across: does its grain run across the board?
    """

    spot: Spot
    is_clear: bool
    grain_across: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardLayout:
    """One board or sheet with all that is cut from it.

    Attributes:
        ground: the board or sheet
        number: which of those that are alike, from 1 [dimensionless]
        laid: what is cut from it
        sawn: its cuts
        left: what is worth keeping
        cost: what it counts, in its lot's measure [dimensionless]
    """

    ground: Ground
    number: Count
    laid: tuple[Laid, ...]
    sawn: Sawn[Laid]
    left: tuple[Left, ...]
    cost: Count

    @property
    def name(self) -> str:
        """The board's mark, with its number where there are several."""
        code = self.ground.stock.code
        return code if self.ground.limit == 1 else f"{code} no. {self.number}"

    @property
    def used(self) -> Number:
        """The part of it that becomes parts [dimensionless]."""
        return sum(each.spot.area for each in self.laid) / self.ground.outer.area


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthLaid:
    """A part on stock that is only cut to length.

    Attributes:
        mark: the part
        start: where it begins [tick]
        length: how long it is cut [tick]
    """

    mark: Mark
    start: Ticks
    length: Ticks


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthLayout:
    """One length with all that is cut from it.

    Attributes:
        code: its mark
        number: which of those that are alike, from 1 [dimensionless]
        length: from end to end [tick]
        laid: what is cut from it, from its first end on
        left: length of what is left at its other end, without its trim [tick]
        cost: what it counts, in its lot's measure [dimensionless]
        place: where it lies
    """

    code: str
    number: Count
    length: Ticks
    laid: tuple[LengthLaid, ...]
    left: Ticks
    cost: Count
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """What one way of breaking boards down came to.

    Attributes:
        name: `rip first`, `crosscut first` or `board by board`
        cost: of all boards, in the lot's measure [dimensionless]
        share: the part of the boards that becomes parts [dimensionless]
        unplaced: how many blanks found no room [dimensionless]
        cuts: how many cuts it takes [dimensionless]
        set_ups: how often the saw is set for them [dimensionless]
        is_taken: is the layout made this way?
    """

    name: str
    cost: Count
    share: Number
    unplaced: Count
    cuts: Count
    set_ups: Count
    is_taken: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Unplaced:
    """A part for which there was no room.

    Attributes:
        code: its mark
        count: how many of them [dimensionless]
        reason: why
    """

    code: str
    count: Count
    reason: Words


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """A way to find a place for parts that have none, as it was tried on what the layout leaves.

    Attributes:
        kind: what is done: `glue up`, `resaw`, `sapwood`, `hidden face`, `turn`, `other class`, `other stock`
            or `one more`
        words: the same in words
        codes: the parts that find a place so, each as often as it does
        short: how many parts have no place [dimensionless]
        boards: what is cut for it beyond the layout
        cost: what that counts [dimensionless]
        measure: what the cost is in: cents, or hundredths of a square inch or of an inch
        feet: how much it is: board feet, square feet of sheets or feet of lengths [dimensionless]
        change: what it changes in the cut file, for whoever wants it so
    """

    kind: str
    words: Words
    codes: tuple[str, ...]
    short: Count
    boards: tuple[str, ...]
    cost: Count
    measure: Measure | str
    feet: Number
    change: Mapping[str, Any]

    @property
    def lacking(self) -> Count:
        """How many parts are still without a place [dimensionless]."""
        return self.short - len(self.codes)


@dataclass(frozen=True, slots=True, kw_only=True)
class Glued:
    """How the strips of a panel are put together.

    Attributes:
        mark: the part, or the set that is glued up as one
        order: the numbers of its strips, from the first edge on [dimensionless]
        nets: how wide each is once it is jointed, in that order [tick]
        trimmed: what of the surplus comes off the first edge [tick]
        is_clear: do all glue lines keep off where none may lie?
    """

    mark: Mark
    order: tuple[Count, ...]
    nets: tuple[Ticks, ...]
    trimmed: Ticks
    is_clear: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LotPlan:
    """The layout of one wood and class, one kind of sheet, or one kind of length.

    Attributes:
        wood: the wood or kind of sheet
        thickness_class: of boards; empty for others
        boards: each board or sheet that is cut
        lengths: each length that is cut
        glued: each panel, and how its strips are put together
        unplaced: parts for which there was no room
        ways_out: how they could have one, the best first
        broken: sets that are not kept
        misplaced: parts that cannot lie where they were put by hand
        tried: the ways that were tried
        measure: what the costs are in: cents, or hundredths of a square inch
        cost: of all that is cut [dimensionless]
        counted: the same, offcuts as they are weighed when one is chosen [dimensionless]
        bound: no layout counts less [dimensionless]
        bounds_all: does that hold for all that was asked? Else for what has a place, as it is laid out: sets
            that are given up cut apart
        proven: is it proven to be the best?
        stages: how often the direction of cuts may change on its sheets; 0 for what is no sheet
            [dimensionless]
        share: the part of what is cut that becomes parts [dimensionless]
    """

    wood: str
    thickness_class: str
    boards: tuple[BoardLayout, ...] = ()
    lengths: tuple[LengthLayout, ...] = ()
    glued: tuple[Glued, ...] = ()
    unplaced: tuple[Unplaced, ...] = ()
    ways_out: tuple[WayOut, ...] = ()
    broken: tuple[Broken, ...] = ()
    misplaced: tuple[NotThere, ...] = ()
    tried: tuple[Tried, ...] = ()
    measure: Measure | str = "area"
    cost: Count = 0
    counted: Count = 0
    bound: Count = 0
    bounds_all: bool = True
    proven: bool = False
    stages: Count = 0
    share: Number = 0.0

    def keeps_stages(self, board: BoardLayout) -> bool:
        """Does a sheet come apart in the stages that were asked for?

        What was put by hand, matched or found a place late may turn more often.

        Args:
            board: one of its boards or sheets

        Returns:
            Whether it does; a board always does.

        Source: counted from its cuts.
        """
        return not self.stages or board.sawn.stages <= self.stages

    @property
    def above(self) -> Number:
        """By how much it may cost more than the best possible, as a part of that [dimensionless]."""
        return max(0.0, self.counted / self.bound - 1) if self.bound else 0.0

    @property
    def name(self) -> str:
        """The wood with its class."""
        return f"{self.wood} {self.thickness_class}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPlan:
    """The layout of a whole cut file.

    Attributes:
        file: what was asked
        lots: one layout for each wood and class
        seconds: how long it took, by the clock that was handed in [s]
    """

    file: CutFile
    lots: tuple[LotPlan, ...]
    seconds: Seconds

    @property
    def is_complete(self) -> bool:
        """Has every part a place?"""
        return not any(lot.unplaced or lot.misplaced for lot in self.lots)
