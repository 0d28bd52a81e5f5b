"""What is known of a drawer's sizes, and what all drawers of a unit share."""

from dataclasses import dataclass

from casewright.measure.making import quickly_made
from casewright.measure.units import Inches
from casewright.pieces.asked.measured import MeasuredPart
from casewright.pieces.asked.notch_spec import Notch
from casewright.pieces.layout.openings import Opening

PLY_PLAY = 1 / 32
NOTHING = MeasuredPart()
SHORT_BACKS, INNER_SIDES, INNER_BACK = ("BL", "BR"), ("IL", "IR"), "IB"
"""The marks of the boards around a notch: in place of one back, and beside and before the pipes."""


class CannotBuild(ValueError):
    """The choices leave a part no size; the message says which, and what would work."""


@quickly_made
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


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """What a drawer holds: clear width between the sides, depth and height; and between the slips [in]."""

    width: float
    depth: float
    height: float
    between_slips: float


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class FrontFace:
    """The board that is seen when a drawer is closed: the front, or the show front of a box.

    Attributes:
        thickness: its thickness [in]
        width: along its grain [in]
        height: across it [in]
        left: its left end from the outside of the left case side [in]
        bottom: its lower edge above the underside of the case bottom [in]
    """

    thickness: float
    width: float
    height: float
    left: float
    bottom: float

    @property
    def right(self) -> float:
        """Its right end from the outside of the left case side [in]."""
        return self.left + self.width

    @property
    def top(self) -> float:
        """Its upper edge above the underside of the case bottom [in]."""
        return self.bottom + self.height


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class NotchSizes:
    """The notch of one drawer.

    Attributes:
        asked: what the maker asked for
        left: from the outside of the left side to the left edge of the notch [in]
        left_inner: thickness of the left inner side [in]
        right_inner: thickness of the right inner side [in]
        head: thickness of the inner back [in]
        backs: thickness of the back of the left arm, and of the right [in]
        start: front face of the inner back behind the face of the board that the sides are joined to [in]
        left_arm: clear width of the left arm [in]
        right_arm: clear width of the right arm [in]
        room: clear depth before the inner back [in]
        around: width of the notch with its inner sides [in]
        side_length: length of the inner sides [in]
        side_start: front end of the inner sides behind the front face of the inner back [in]
        head_length: length of the inner back [in]
        left_back: length of the back of the left arm [in]
        right_back: length of the back of the right arm [in]
        left_start: from the outside of the left side to the left end of the back of the left arm [in]
        right_start: likewise of the right arm [in]
        taken: what of the clear depth the notch takes with its inner back [in]
    """

    asked: Notch
    left: Inches
    left_inner: Inches
    right_inner: Inches
    head: Inches
    backs: tuple[Inches, Inches]
    start: Inches
    left_arm: Inches
    right_arm: Inches
    room: Inches
    around: Inches
    side_length: Inches
    side_start: Inches
    head_length: Inches
    left_back: Inches
    right_back: Inches
    left_start: Inches
    right_start: Inches
    taken: Inches

    @property
    def width(self) -> Inches:
        """Its clear width [in]."""
        return self.asked.width

    @property
    def depth(self) -> Inches:
        """Its depth from the rear end of the drawer [in]."""
        return self.asked.depth

    @property
    def around_left(self) -> Inches:
        """From the outside of the drawer to the face of the left inner side within the arm [in]."""
        return self.left - self.left_inner


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerSizes:
    """One drawer, before its joints are set out.

    Attributes:
        opening: the hole it goes into
        height: height of the drawer as it is planed now: of front and sides, unless others are named [in]
        drawn_height: the same for the opening as it was drawn; decides the family of the tails [in]
        width: over the sides [in]
        length: front to back, behind the front edge of the case [in]
        stand: how far the front stands before that edge [in]
        face: what is seen of it when it is closed
        box_start: face of the board that the sides are joined to, behind the front edge of the case [in]
        box_length: from there to the ends of the sides [in]
        front: thickness of that board [in]
        front_length: its length [in]
        front_height: its height [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]
        back: thickness of the back [in]
        back_length: length of the back [in]
        gauge_1: depth of the sockets of half-blind dovetails, locked for the batch; else the front [in]
        lap: wood left in front of their tails; 0 for another joint [in]
        rabbet: depth of their registration rabbet [in]
        side_start: what the front joint takes off the sides: a lap, a lip, or what a socket leaves [in]
        side_length: length of the sides [in]
        side_height: height of the sides [in]
        foot: lower edge of the sides above the underside of the drawer [in]
        joint_height: height at which the front joint is laid out [in]
        back_height: height of the back [in]
        back_foot: lower edge of the back above that of the sides [in]
        set_in: from the ends of the sides to the back [in]
        inside: what it holds
        gaps: the gap above it through the year
        notch: the recess around pipes; None without one
        joined: the mark of the board in front that the sides are joined to: `BF` behind a show front
    """

    opening: Opening
    height: float
    drawn_height: float
    width: float
    length: float
    stand: float
    face: FrontFace
    box_start: float
    box_length: float
    front: float
    front_length: float
    front_height: float
    left_side: float
    right_side: float
    back: float
    back_length: float
    gauge_1: float
    lap: float
    rabbet: float
    side_start: float
    side_length: float
    side_height: float
    foot: float
    joint_height: float
    back_height: float
    back_foot: float
    set_in: float
    inside: Inside
    gaps: Gaps
    notch: NotchSizes | None = None
    joined: str = "F"

    @property
    def code(self) -> str:
        """Row and position, such as `R5-1`."""
        return self.opening.code

    @property
    def backs(self) -> tuple[str, ...]:
        """The marks of its back, or of those beside a notch."""
        return SHORT_BACKS if self.notch else ("B",)

    @property
    def to_the_back(self) -> float:
        """From the face of the board that the sides are joined to, to the rear face of the back [in]."""
        return self.box_length - self.set_in

    @property
    def inner(self) -> float:
        """The inside face of the board that the sides are joined to, behind the case's front edge [in]."""
        return self.box_start + self.front
