"""The groove for a drawer's bottom as it is asked for, and what of it is refused."""

from dataclasses import dataclass

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.season import SEASON
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Percent, PerPercent

UNDER_THE_BACK, ALL_AROUND = 3, 4
"""How many boards are grooved: sides and front, or the back too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomLimits:
    """What a drawer's bottom and its groove are held to, and the habits. Lengths are in inches.

    Attributes:
        groove_height: lower edge of the groove above the bottom edge, where nothing else is said
        groove_width: width of the groove likewise
        groove_depth: depth of the groove likewise, where the board is thick enough
        depth_step: in a thinner board the depth is a multiple of this
        front_part: the groove takes at most the front divided by this
        bottom: thickness of a solid bottom
        play: what is left free at each side of a bottom
        slip: thickness of a slip
        slip_for: sides thinner than this are given slips
        slip_above: what a slip has above its groove, at least too
        muntin_over: a bottom with a greater clear width is parted by a muntin
        muntin: width of the muntin
        muntin_thickness: its thickness
        muntin_cheek: wood above and below its groove, at least
        muntin_web: wood between its grooves, at least
        left_least: what a groove leaves of the board behind it, at least
        left_part: and at least this part of the board
        planed: a board so much thinner still passes
        held_least: what stays in a groove when the bottom has slid over to the other, at least
        runner_room: room between the bottom and the runner, at least
        sheet_off: a bottom thinner than its groove by more is cautioned
        back_gap: what is free behind a drawer
        behind_least: what is left of that when everything has moved, at least
        edge_room: the thinned edge of a bottom is so much wider than what stands in the groove
    """

    groove_height: Sourced
    groove_width: Sourced
    groove_depth: Sourced
    depth_step: Sourced
    front_part: Sourced
    bottom: Sourced
    play: Sourced
    slip: Sourced
    slip_for: Sourced
    slip_above: Sourced
    muntin_over: Sourced
    muntin: Sourced
    muntin_thickness: Sourced
    muntin_cheek: Sourced
    muntin_web: Sourced
    left_least: Sourced
    left_part: Sourced
    planed: Sourced
    held_least: Sourced
    runner_room: Sourced
    sheet_off: Sourced
    back_gap: Sourced
    behind_least: Sourced
    edge_room: Sourced


BOTTOMS = BottomLimits(**sourced("bottom_groove_limits"), **sourced("groove_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BottomGroove:
    """The groove for a drawer's bottom as it is asked for.

    Attributes:
        width: width of the drawer over its sides [in]
        length: length of the drawer [in]
        side: thickness of the sides [in]
        front: thickness of the front [in]
        back: thickness of the back [in]
        groove_height: lower edge of the groove above the bottom edge [in]
        groove_width: width of the groove [in]
        groove_depth: depth of the groove in the sides, or in the slips [in]
        front_depth: depth of the groove in the front [in]
        bottom: thickness of the bottom [in]
        play: left free at each side of the bottom [in]
        grooves: 3 for a bottom slid in under the back, 4 for one held all around
        over: how far the bottom reaches past the back [in]
        back_gap: what is free behind the drawer [in]
        slip: thickness of the slips; 0 for a groove in the sides [in]
        slip_height: height of the slips; 0 without any [in]
        muntin: width of the muntin; 0 for none [in]
        muntin_thickness: its thickness; 0 without one [in]
        movement: how much the bottom moves across its grain; 0 for plywood [1 per % moisture]
        swelling: how much wetter the wood gets [%]
        shrinking: how much drier the wood gets [%]
        rack: the shop's cutters
        limits: what the groove is held to
        mark: code of the drawer, for its findings
    """

    width: Inches
    length: Inches
    side: Inches
    front: Inches
    back: Inches
    groove_height: Inches
    groove_width: Inches
    groove_depth: Inches
    front_depth: Inches
    bottom: Inches
    play: Inches = BOTTOMS.play.value
    grooves: Count = UNDER_THE_BACK
    over: Inches = 0.0
    back_gap: Inches = BOTTOMS.back_gap.value
    slip: Inches = 0.0
    slip_height: Inches = 0.0
    muntin: Inches = 0.0
    muntin_thickness: Inches = 0.0
    movement: PerPercent = SEASON.movement.value
    swelling: Percent = SEASON.swelling.value
    shrinking: Percent = SEASON.shrinking.value
    rack: Rack = RACK
    limits: BottomLimits = BOTTOMS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(
            width=self.width,
            length=self.length,
            side=self.side,
            front=self.front,
            back=self.back,
            height_of_the_groove=self.groove_height,
            width_of_the_groove=self.groove_width,
            depth_of_the_groove=self.groove_depth,
            depth_in_the_front=self.front_depth,
            bottom=self.bottom,
        )
        refuse_below_zero(
            play=self.play, reach_past_the_back=self.over, gap_behind=self.back_gap, slip=self.slip
        )
        refuse_below_zero(
            muntin=self.muntin, movement=self.movement, swelling=self.swelling, shrinking=self.shrinking
        )
        if self.grooves not in (UNDER_THE_BACK, ALL_AROUND):
            raise CannotBeLaidOut(
                f"{self.grooves} boards cannot be grooved for a bottom; give 3 for one slid in under the "
                "back, 4 for one held all around."
            )
        self._refuse_a_groove_that_cuts_through()
        self._refuse_slips_and_muntin_without_size()
        self._refuse_a_drawer_without_an_inside()

    @property
    def carrier(self) -> Inches:
        """Thickness of the board that carries the groove at each side: the slip, or the side [in]."""
        return self.slip or self.side

    @property
    def carried_by(self) -> str:
        """What that board is called."""
        return "slip" if self.slip else "side"

    @property
    def inside(self) -> Inches:
        """Clear width between the sides, or between the slips [in]."""
        return self.width - 2 * (self.side + self.slip)

    @property
    def depth(self) -> Inches:
        """Clear depth between front and back [in]."""
        return self.length - self.front - self.back

    @property
    def top(self) -> Inches:
        """Upper edge of the groove above the bottom edge [in]."""
        return self.groove_height + self.groove_width

    def _refuse_a_groove_that_cuts_through(self) -> None:
        for name, board, depth in (
            (self.carried_by, self.carrier, self.groove_depth),
            ("front", self.front, self.front_depth),
        ):
            if depth >= board:
                raise CannotBeLaidOut(
                    say("A groove {} deep cuts the {} in two; {:down} is half of it.", depth, name, board / 2)
                )
        if self.play >= self.groove_depth:
            raise CannotBeLaidOut(
                say(
                    "A play of {} takes the bottom out of grooves {} deep; {} is usual.",
                    self.play,
                    self.groove_depth,
                    self.limits.play.value,
                )
            )

    def _refuse_slips_and_muntin_without_size(self) -> None:
        if self.slip and self.slip_height <= self.top + TOLERANCE:
            raise CannotBeLaidOut(
                say(
                    "A slip {} high has nothing above a groove that ends at {}; make it {:up}.",
                    self.slip_height,
                    self.top,
                    self.top + self.limits.slip_above.value,
                )
            )
        if self.muntin and self.muntin_thickness <= self.groove_width:
            raise CannotBeLaidOut(
                say(
                    "A muntin {} thick is no thicker than its groove is wide; {} is usual.",
                    self.muntin_thickness,
                    self.limits.muntin_thickness.value,
                )
            )
        if self.muntin and self.muntin <= 2 * self.groove_depth:
            raise CannotBeLaidOut(
                say(
                    "A muntin {} wide has nothing between two grooves {} deep; {} is usual.",
                    self.muntin,
                    self.groove_depth,
                    self.limits.muntin.value,
                )
            )

    def _refuse_a_drawer_without_an_inside(self) -> None:
        taken = 2 * (self.side + self.slip) + self.muntin
        if self.width <= taken:
            raise CannotBeLaidOut(
                say(
                    "Sides, slips and muntin take {} of a drawer {} wide; make it more than {:bare} wide.",
                    taken,
                    self.width,
                    taken,
                )
            )
        if self.depth <= 0:
            raise CannotBeLaidOut(
                say(
                    "Front and back take {} of a drawer {} long; make it more than {:bare} long.",
                    self.front + self.back,
                    self.length,
                    self.front + self.back,
                )
            )
