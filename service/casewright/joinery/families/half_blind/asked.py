"""The half-blind dovetail as it is asked for, and what cannot be meant by it."""

from dataclasses import dataclass, field

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.defaults import USUAL, usual_lap, usual_rabbet
from casewright.joinery.groove import Groove
from casewright.joinery.groove_left import refuse_groove_through
from casewright.joinery.joint import Measured
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches, Number, Percent

NO_LAP_LEFT = "Gauge 1 is locked at {:exact}, which leaves no lap in a front of {:bare}; set it to {:bare}."
NO_FRONT_LEFT = "The lap of {} leaves nothing of the front; make it {:bare}."
NO_FRONT_FOR_GAUGE = (
    "Gauge 1 is locked at {:exact}, which leaves no lap in a front of {:bare}; make the front {:bare} thick."
)
NO_SIDE_LEFT = "The rabbet of {} leaves nothing of the side; make it {:bare}."
NO_SIDE_BEHIND = (
    "Standing {} proud, with a rabbet of {}, leaves nothing of the side; let it stand {} proud, {:bare} at "
    "the most."
)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class HalfBlind:
    """A half-blind joint as it is asked for; a size that was measured takes the place of the nominal one.

    Attributes:
        height: height of the side, which carries the tails [in]
        front: thickness of the front [in]
        lap: what is to be left of the front before the tails; the gauge, once locked, overrides it [in]
        side: thickness of the side [in]
        rabbet: depth of the registration rabbet in the side; 0 for none [in]
        half_pin: half pin at each edge, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        tails: number of tails
        slope: how far along for one across, 8 for 1:8
        proud: how far the side is to stand proud of the front's ends for planing [in]
        front_excess: how much higher the front is than the side, all of it at the top [in]
        groove: the groove for the bottom; None when there is none
        rack: the shop's chisels and saw
        locked_gauge_1: the first gauge of a batch that is already set; None when it follows the lap [in]
        entered_second_gauge: what the maker set the second gauge to [in]
        measured_tail_length: from the end of the side to the shoulder, as cut [in]
        measured_socket_depth: as cut [in]
        measured_sides: mark of each side, and its thickness measured in the rabbet [in]
        full_sides: mark of each side, and its full thickness; one that is left out is as thick as `side` [in]
        shared_settings: mark of each measured side, and the second gauge as it is set for the batch that the
            joint is a part of; empty where it stands alone [in]
        front_moisture: moisture content of the front [%]
        side_moisture: moisture content of the side [%]
        front_gravity: specific gravity of the front's wood
        side_gravity: specific gravity of the side's wood
        can_be_replaced: whether another front of the same look could be had
        limits: what the joint is held to
        mark: code of the drawer or joint, for its findings; joints that differ in it alone are equal
    """

    height: Inches
    front: Inches
    lap: Inches
    side: Inches
    rabbet: Inches
    half_pin: Inches
    pin: Inches
    tails: Count
    slope: Number = USUAL.slope_hardwood.value
    proud: Inches = 0.0
    front_excess: Inches = 0.0
    groove: Groove | None = None
    rack: Rack = RACK
    locked_gauge_1: Inches | None = None
    entered_second_gauge: Inches | None = None
    measured_tail_length: Inches | None = None
    measured_socket_depth: Inches | None = None
    measured_sides: Measured = ()
    full_sides: Measured = ()
    shared_settings: Measured = ()
    front_moisture: Percent | None = None
    side_moisture: Percent | None = None
    front_gravity: Number | None = None
    side_gravity: Number | None = None
    can_be_replaced: bool = True
    limits: Limits = LIMITS
    mark: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        refuse_unless_above_zero(height=self.height, front=self.front, side=self.side)
        refuse_below_zero(rabbet=self.rabbet, amount_to_stand_proud=self.proud)
        refuse_below_zero(excess_of_the_front=self.front_excess)
        if self.locked_gauge_1 is None:
            self._refuse_a_lap_that_leaves_nothing()
        elif not 0 < self.locked_gauge_1 < self.front:
            self._refuse_a_gauge_that_leaves_no_lap(self.locked_gauge_1)
        if self.rabbet >= self.side:
            usual = usual_rabbet(self.side)
            raise ValueError(say(NO_SIDE_LEFT, self.rabbet, usual if usual < self.side else 0.0))
        if self.rabbet + self.proud >= self.side:
            most = self.limits.proud_most.value
            raise ValueError(say(NO_SIDE_BEHIND, self.proud, self.rabbet, most / 2, most))
        if self.groove is not None and self.groove.in_side:
            refuse_groove_through(self.groove, side=self.side)
        refuse_groove_through(self.groove, front=self.front)
        for mark, thickness in self.measured_sides:
            refuse_unless_above_zero(**{f"thickness_of_side_{mark}": thickness - self.proud})

    def _refuse_a_gauge_that_leaves_no_lap(self, gauge: Inches) -> None:
        usual = self.front - usual_lap(self.front, self.side)
        if usual > 0:
            raise ValueError(say(NO_LAP_LEFT, gauge, self.front, usual))
        thick = gauge + USUAL.lap_least.value
        raise ValueError(say(NO_FRONT_FOR_GAUGE, gauge, self.front, thick))

    @property
    def sides_in_rabbet(self) -> Measured:
        """The measured sides but those that were measured beside their rabbet, which set no gauge [in]."""
        beside = self.sides_beside_rabbet
        return tuple(side for side in self.measured_sides if side[0] not in beside)

    @property
    def sides_beside_rabbet(self) -> tuple[str, ...]:
        """Marks of the sides that were measured at their full thickness although they have a rabbet."""
        if self.rabbet <= 0:
            return ()
        close, full = self.limits.gauge_tolerance.value, dict(self.full_sides)
        return tuple(mark for mark, size in self.measured_sides if size >= full.get(mark, self.side) - close)

    def _refuse_a_lap_that_leaves_nothing(self) -> None:
        refuse_unless_above_zero(lap=self.lap)
        if self.lap >= self.front:
            usual = usual_lap(self.front, self.side) if self.front > USUAL.lap_least.value else self.front / 4
            raise ValueError(say(NO_FRONT_LEFT, self.lap, usual))
