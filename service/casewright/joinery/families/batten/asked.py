"""A breadboard end or a batten as it is asked for, its limits, and the rules of its pegs and slots."""

from dataclasses import dataclass
from math import ceil

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to, up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenLimits:
    """What a breadboard end or a batten is held to, and the habits. Lengths are in inches.

    Attributes:
        margin: from the ends to the outer pegs
        spacing: pegs stand no further apart
        shoulder_least: a cheek beside the groove is no thinner
        room: a groove is so much deeper than its tongue, a slot so much longer than its way
        peg: a peg of a breadboard end is as thick as this
        screw: and the hole of a screw in a batten as wide as this
    """

    margin: Sourced
    spacing: Sourced
    shoulder_least: Sourced
    room: Sourced
    peg: Sourced
    screw: Sourced


LIMITS = BattenLimits(**sourced("batten_limits"))
"""The limits of a shop that has set none of its own."""


def usual_tongue(thickness: Inches) -> Inches:
    """How long the tongue in a breadboard end is.

    Rule: thickness / 2, down to 1/16, and at least 1/4

    Args:
        thickness: of the slab [in]

    Returns:
        The length [in]

    Source: common practice.
    """
    return max(1 / 4, down_to(thickness / 2, 1 / 16))


def peg_count(length: Inches, margin: Inches, spacing: Inches) -> Count:
    """How many pegs or screws hold an end, so that one stands in the middle.

    Rule: 2 * ((length / 2 - margin) / spacing, rounded up) + 1, and at least 3

    Args:
        length: of the end or batten [in]
        margin: from its ends to the outer pegs [in]
        spacing: the most from one to the next [in]

    Returns:
        An odd number [dimensionless]

    Source: common practice: the middle one is tight, and the slab moves to both sides of it.
    """
    return 2 * max(1, ceil((length / 2 - margin) / spacing - TOLERANCE)) + 1


def way(change: Inches, distance: Inches, width: Inches) -> Inches:
    """How far the slab moves past a peg.

    Rule: change * distance / width

    Args:
        change: by how much the whole slab grows, or shrinks [in]
        distance: of the peg from the middle one, which is tight [in]
        width: of the slab [in]

    Returns:
        How far [in]

    Source: geometry: what lies twice as far from the middle moves twice as far.
    """
    return change * distance / width


def slot_length(hole: Inches, outward: Inches, inward: Inches, room: Inches) -> Inches:
    """How long the slot for a peg or a screw is.

    Rule: hole + outward + inward + 2 * room, up to 1/32

    Args:
        hole: thickness of the peg, or the hole that a screw needs [in]
        outward: how far it travels towards the edge, as the slab shrinks [in]
        inward: how far towards the middle, as it grows [in]
        room: added at both ends [in]

    Returns:
        From end to end, along the end or batten [in]

    Source: common practice.
    """
    return up_to(hole + outward + inward + 2 * room, 1 / 32)


@dataclass(frozen=True, slots=True, kw_only=True)
class Batten:
    """A breadboard end or a batten as it is asked for.

    Attributes:
        width: width of the slab, across its grain [in]
        thickness: of the slab [in]
        end: width of the end, or of the batten [in]
        tongue: length of the slab's tongue in the end; 0 for a batten [in]
        batten: thickness of a batten [in]
        short: how far a batten ends before each edge of the slab [in]
        grows: how much wider the slab gets to its wettest [in]
        shrinks: how much narrower to its driest [in]
        pegs: pegs or screws along it, an odd number
        rack: the shop's cutters
        limits: what it is held to
        mark: code of the joint, for its findings
    """

    width: Inches
    thickness: Inches
    end: Inches
    tongue: Inches
    batten: Inches
    short: Inches = 0.0
    grows: Inches
    shrinks: Inches
    pegs: Count
    rack: Rack = RACK
    limits: BattenLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(width=self.width, thickness=self.thickness, end=self.end, batten=self.batten)
        refuse_below_zero(tongue=self.tongue, short=self.short, grows=self.grows, shrinks=self.shrinks)
        if self.tongue and self.tongue + self.limits.room.value >= self.end:
            raise CannotBeLaidOut(
                say(
                    "A tongue of {} goes through an end of {:bare}; make it {:down}.",
                    self.tongue,
                    self.end,
                    self.end / 3,
                )
            )
        if self.pegs < 3 or self.pegs % 2 == 0:
            raise CannotBeLaidOut(
                say("{:d} pegs leave none in the middle; take an odd number from 3.", self.pegs)
            )
        if self.length / 2 <= self.limits.margin.value:
            raise CannotBeLaidOut(
                say(
                    "{} is too short to be pegged beside its middle; it needs more than {}.",
                    self.length,
                    2 * self.limits.margin.value,
                )
            )

    @property
    def is_breadboard(self) -> bool:
        """Whether it is on the end of the slab, and not behind it."""
        return self.tongue > 0

    @property
    def name(self) -> str:
        """What it is called."""
        return "end" if self.is_breadboard else "batten"

    @property
    def fixing(self) -> str:
        """What holds it."""
        return "peg" if self.is_breadboard else "screw"

    @property
    def hole(self) -> Inches:
        """Thickness of a peg, or the hole that a screw needs [in]."""
        return self.limits.peg.value if self.is_breadboard else self.limits.screw.value

    @property
    def length(self) -> Inches:
        """Of the end or batten [in]."""
        return self.width - 2 * self.short
