"""Boards joined along their edges as they are asked for, and what of it is refused."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.families.edge.sizes import boards_over, usual_tongue
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.season import SEASON
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches, Percent, PerPercent

FEWEST = 2
"""One board has no joint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeLimits:
    """What lapped and tongued boards are held to, and the habits. Lengths are in inches.

    Attributes:
        widest: the widest board wished for, where nothing else is said; a wider one is cautioned
        tongue_part: a tongue is the board divided by this
        tongue_step: and a multiple of this
        tongue_from: thinner boards are lapped
        tongue_least: a thinner tongue stops the joint
        cheek_least: thinner cheeks, or laps, stop it
        overlap: a tongue is so long, and a lap so wide, where more is not needed
        slender: a tongue of more thicknesses is cautioned
        cover_least: what has to cover at the driest; less is cautioned
        cover_stop: and less than this stops the joint
        gap_most: a wider gap at the driest is cautioned
        relief: a groove is so much deeper than its tongue is long
    """

    widest: Sourced
    tongue_part: Sourced
    tongue_step: Sourced
    tongue_from: Sourced
    tongue_least: Sourced
    cheek_least: Sourced
    overlap: Sourced
    slender: Sourced
    cover_least: Sourced
    cover_stop: Sourced
    gap_most: Sourced
    relief: Sourced


EDGES = EdgeLimits(**sourced("edge_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """Boards joined along their edges as they are asked for.

    Attributes:
        width: width that the boards go over, from end to end [in]
        thickness: thickness of the boards [in]
        boards: how many there are
        tongue: thickness of the tongue; 0 for a shiplap [in]
        overlap: length of the tongue, or width of the lap [in]
        gap: left open at each joint as the boards go up [in]
        end_gap: left free beyond the first board and the last [in]
        movement: how much the boards move across their grain [1 per % moisture]
        swelling: how much wetter the wood gets [%]
        shrinking: how much drier the wood gets [%]
        rack: the shop's cutters
        limits: what the joint is held to
        mark: code of the back or panel, for its findings
    """

    width: Inches
    thickness: Inches
    boards: Count
    tongue: Inches
    overlap: Inches
    gap: Inches
    end_gap: Inches = 0.0
    movement: PerPercent = SEASON.movement.value
    swelling: Percent = SEASON.swelling.value
    shrinking: Percent = SEASON.shrinking.value
    rack: Rack = RACK
    limits: EdgeLimits = EDGES
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(width=self.width, thickness=self.thickness, overlap=self.overlap)
        refuse_below_zero(tongue=self.tongue, gap=self.gap, gap_at_the_ends=self.end_gap)
        refuse_below_zero(movement=self.movement, swelling=self.swelling, shrinking=self.shrinking)
        if self.boards < FEWEST:
            raise CannotBeLaidOut(f"{self.boards} board has no edge to join; give 2 or more.")
        if self.tongue >= self.thickness:
            raise CannotBeLaidOut(
                say(
                    "A tongue of {} leaves no shoulder on boards of {:bare}; {} is usual, 0 for a shiplap.",
                    self.tongue,
                    self.thickness,
                    usual_tongue(
                        self.thickness, self.limits.tongue_part.value, self.limits.tongue_step.value
                    ),
                )
            )
        if self.gap >= self.overlap:
            raise CannotBeLaidOut(
                say(
                    "A gap of {} is open past a tongue or lap of {:bare}; make that {:up} or more.",
                    self.gap,
                    self.overlap,
                    self.gap + self.limits.cover_least.value,
                )
            )
        covered = self.width - 2 * self.end_gap
        if covered <= self.boards * self.overlap:
            raise CannotBeLaidOut(
                say(
                    "Over {} each of {:d} boards would be hardly more than its tongue or lap; {}.",
                    self.width,
                    self.boards,
                    self._fewer_boards(covered),
                )
            )

    def _fewer_boards(self, covered: Inches) -> Words:
        usual = max(2, boards_over(covered, self.limits.widest.value, self.overlap, self.gap))
        if covered > usual * self.overlap:
            return say("give {:d}", usual)
        return say("make the width more than {:up}", 2 * (self.overlap + self.end_gap))

    @property
    def is_shiplap(self) -> bool:
        """Whether the boards are lapped, half and half."""
        return self.tongue == 0.0

    @property
    def covered(self) -> Inches:
        """What the boards cover as they go up: the width, less what is free at both ends [in]."""
        return self.width - 2 * self.end_gap

    @property
    def groove_depth(self) -> Inches:
        """How deep the groove is, or how wide the rabbet that takes the lap [in]."""
        return self.overlap if self.is_shiplap else self.overlap + self.limits.relief.value
