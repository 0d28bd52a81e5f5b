"""A door on butt hinges as it is asked for, its limits, and the rules of where they go and how deep."""

from dataclasses import dataclass

from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeLimits:
    """What hinges are held to, and the habits. Lengths are in inches.

    Attributes:
        length: of a hinge where nothing else is said
        closed: thickness of a closed hinge where nothing else is said
        gap: beside an inset door where nothing else is said
        left: the leaf leaves so much of the wood that it lies on
        leaf_step: what is chosen for a leaf is a multiple of this
        leaf_least: a narrower leaf is cautioned
        depth_least: a shallower gain is cautioned
        two_up_to: two hinges hang a door up to so high
        three_up_to: three hang one up to so high
        each_further: one more for each so much beyond
    """

    length: Sourced
    closed: Sourced
    gap: Sourced
    left: Sourced
    leaf_step: Sourced
    leaf_least: Sourced
    depth_least: Sourced
    two_up_to: Sourced
    three_up_to: Sourced
    each_further: Sourced


LIMITS = HingeLimits(**sourced("hinge_limits"))
"""The limits of a shop that has set none of its own."""


def hinges_by_height(height: Inches) -> Count:
    """How many hinges a door of a height hangs on, whatever it weighs.

    Rule: 2 up to 40 in high, 3 up to 60, one more for each 20 beyond

    Args:
        height: height of the door [in]

    Returns:
        The hinges

    Source: common practice.
    """
    if height <= LIMITS.two_up_to.value:
        return 2
    further = LIMITS.each_further.value
    return round(3 + max(0.0, up_to(height - LIMITS.three_up_to.value, further) / further))


def hinge_offset(height: Inches, length: Inches) -> Inches:
    """How far a hinge stays from the end of its leaf.

    Rule: the lesser of length and (height - 2 × length) / 3

    Args:
        height: height of the leaf [in]
        length: length of a hinge [in]

    Returns:
        From the end of the leaf to the nearer end of the hinge [in]

    Source: common practice: as long as the hinge; on a low door what parts the rest in three.
    """
    return min(length, (height - 2 * length) / 3)


def hinge_place(number: Count, hinges: Count, height: Inches, offset: Inches, length: Inches) -> Inches:
    """The middle of a hinge above the lower end of its leaf: the outer two by their offset, the rest between.

    Rule: offset + length / 2 + (number - 1) × (height - 2 × offset - length) / (hinges - 1)

    Args:
        number: which hinge, from the lower end, starting with 1
        hinges: how many there are, two or more
        height: height of the leaf [in]
        offset: from the end of the leaf to the nearer end of its hinge [in]
        length: length of a hinge [in]

    Returns:
        The middle of the hinge [in]

    Source: common practice: as far from the end as the hinge is long.
    """
    return offset + length / 2 + (number - 1) * (height - 2 * offset - length) / (hinges - 1)


def lower_end(place: Inches, length: Inches) -> Inches:
    """Where a hinge begins above the lower end of its door.

    Rule: place - length / 2

    Args:
        place: its middle above the lower end of the door [in]
        length: length of a hinge [in]

    Returns:
        Its lower end [in]

    Source: geometry.
    """
    return place - length / 2


def on_the_case(lower: Inches, foot: Inches) -> Inches:
    """Where a hinge begins on the case: as far up as on the door, and by what the door stands above the edge.

    Rule: lower + foot

    Args:
        lower: its lower end above the lower end of the door [in]
        foot: the lower end of the door above the lower edge of its opening, below zero for one over it [in]

    Returns:
        Its lower end above the lower edge of the opening [in]

    Source: geometry of the closed door.
    """
    return lower + foot


def gain_depth(closed: Inches, gap: Inches, boards: Count) -> Inches:
    """How deep the leaf of a hinge is let in, so that the gap is left when the door is closed.

    Rule: (closed - gap) / boards

    Args:
        closed: thickness of the closed hinge, over both leaves [in]
        gap: between door and case at the hinges [in]
        boards: 2 where half goes into door and case, 1 where all goes into the door

    Returns:
        The depth of each gain [in]

    Source: common practice; geometry of a closed hinge.
    """
    return (closed - gap) / boards


def usual_leaf(under: Inches) -> Inches:
    """How wide a leaf is where nothing else is said.

    Rule: under - 1/8, down to 1/16; half of what is under it where that is more

    Args:
        under: width of the wood that it lies on [in]

    Returns:
        From its outer edge to the middle of the pin [in]

    Source: common practice.
    """
    return max(down_to(under - LIMITS.left.value, LIMITS.leaf_step.value), under / 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hinged:
    """A door on butt hinges as it is asked for.

    Attributes:
        height: of the door [in]
        thickness: of the door [in]
        over: how far an overlay door reaches over the edge of the case; 0 for an inset one [in]
        gap: between door and case at the hinges [in]
        foot: the lower end of the door above the lower edge of its opening [in]
        length: of a hinge [in]
        leaf: of a hinge, from its outer edge to the middle of its pin [in]
        closed: thickness of the closed hinge, over both leaves [in]
        hinges: how many there are
        offset: from the end of the door to the nearer end of its hinge [in]
        all_in_door: whether nothing is let into the case
        limits: what it is held to
        mark: code of the joint, for its findings
        hung_on: what the board is called on which the door hangs
    """

    height: Inches
    thickness: Inches
    over: Inches = 0.0
    gap: Inches = LIMITS.gap.value
    foot: Inches = LIMITS.gap.value
    length: Inches = LIMITS.length.value
    leaf: Inches
    closed: Inches = LIMITS.closed.value
    hinges: Count
    offset: Inches
    all_in_door: bool = False
    limits: HingeLimits = LIMITS
    mark: str = ""
    hung_on: str = "case side"

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            height=self.height,
            thickness=self.thickness,
            length=self.length,
            leaf=self.leaf,
            closed=self.closed,
        )
        refuse_below_zero(over=self.over, gap=self.gap, offset=self.offset)
        self._refuse_too_many()
        if self.leaf >= self.under:
            raise CannotBeLaidOut(
                say(
                    "A leaf of {} does not lie on the {} that {}; take one of {:down}.",
                    self.leaf,
                    self.under,
                    "the door reaches over the edge" if self.over else "the door is thick",
                    self.under / 2,
                )
            )
        if self.closed <= self.gap + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "Closed, the hinge is {} thick and the gap is {}, so nothing is let in; "
                    "leave a gap of {:down}.",
                    self.closed,
                    self.gap,
                    self.closed / 3,
                )
            )
        if self.offset + self.foot < 0:
            raise CannotBeLaidOut(
                say(
                    "The lowest hinge begins {} below the opening; set it {:up} from the end of the door.",
                    -self.offset - self.foot,
                    -self.foot,
                )
            )

    def _refuse_too_many(self) -> None:
        if self.hinges < 2:
            raise CannotBeLaidOut("One hinge lets a door sag; hang it on 2.")
        between = self.height - 2 * self.offset - self.hinges * self.length
        if between < -TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "{:d} hinges of {} do not fit on a door of {}, {} from its ends; take 2 of {:down}.",
                    self.hinges,
                    self.length,
                    self.height,
                    self.offset,
                    self.height / 5,
                )
            )

    @property
    def under(self) -> Inches:
        """Width of the wood that a leaf lies on: the door's edge, or what it reaches over the case [in]."""
        return self.over or self.thickness

    @property
    def boards(self) -> Count:
        """Into how many boards a hinge is let in."""
        return 1 if self.all_in_door else 2
