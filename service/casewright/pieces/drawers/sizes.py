"""What is known of a drawer's sizes, and what all drawers of a unit share."""

from dataclasses import dataclass

from casewright.joinery.joint import Chosen
from casewright.pieces.asked.drawer_spec import Drawers
from casewright.pieces.asked.measured import MeasuredPart
from casewright.pieces.asked.slide_spec import OwnSlide
from casewright.pieces.layout.openings import Opening

PLY_PLAY = 1 / 32
NOTHING = MeasuredPart()


class CannotBuild(ValueError):
    """The choices leave a part no size; the message says which, and what would work."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """The gap above a drawer, now and at the ends of the year [in]."""

    now: float
    wettest_front: float
    wettest_side: float
    driest_front: float
    driest_side: float

    @property
    def wettest(self) -> float:
        """The lesser of front and side when wettest: where it would bind first."""
        return min(self.wettest_front, self.wettest_side)

    @property
    def driest(self) -> float:
        """The greater of front and side when driest: what is seen in winter."""
        return max(self.driest_front, self.driest_side)


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """What a drawer holds: clear width between the sides, depth and height; and between the slips [in]."""

    width: float
    depth: float
    height: float
    between_slips: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerSizes:
    """One drawer, before its joints are set out.

    Attributes:
        opening: the hole it goes into
        height: height of front and sides as they are planed now [in]
        drawn_height: the same for the opening as it was drawn; decides the family of the tails [in]
        width: over the sides, which is the length of front and back [in]
        length: front to back [in]
        front: thickness of the front [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]
        back: thickness of the back [in]
        gauge_1: depth of the sockets, locked for the batch [in]
        lap: wood left in front of the tails [in]
        rabbet: depth of the registration rabbet [in]
        side_length: length of the sides [in]
        back_height: height of the back [in]
        back_foot: lower edge of the back above that of the sides [in]
        inside: what it holds
        gaps: the gap above it through the year
    """

    opening: Opening
    height: float
    drawn_height: float
    width: float
    length: float
    front: float
    left_side: float
    right_side: float
    back: float
    gauge_1: float
    lap: float
    rabbet: float
    side_length: float
    back_height: float
    back_foot: float
    inside: Inside
    gaps: Gaps

    @property
    def code(self) -> str:
        """Row and position, such as `R5-1`."""
        return self.opening.code


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerMake:
    """What every drawer of the unit shares: chosen where the maker left it out.

    Attributes:
        drawers: what the maker chose
        back: thickness of a back [in]
        lap: designed lap [in]
        rabbet: designed registration rabbet [in]
        gauge_1: depth of the sockets [in]
        front_moves: movement coefficient of a front in height [1 per % moisture]
        side_moves: movement coefficient of a side in height [1 per % moisture]
        chosen: what was left out, with the reason for each choice
        slide: the metal slide that they run on; None for wood
    """

    drawers: Drawers
    back: float
    lap: float
    rabbet: float
    gauge_1: float
    front_moves: float
    side_moves: float
    chosen: tuple[Chosen, ...]
    slide: OwnSlide | None = None
