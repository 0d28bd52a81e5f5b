"""The half-blind dovetail of a drawer's front, with a registration rabbet in the side.

Tails are cut on the side; sockets on the front, which keeps a lap before them. A shallow rabbet on the inside
of the tails closes against the inside face of the front, so the second gauge is not the side's thickness.
"""

from dataclasses import dataclass, replace

from casewright.joinery.cards import chisel_settings, dividers_setting, layout_settings, new_setting
from casewright.joinery.chisels import Chisels, Rack, chisels_for
from casewright.joinery.chopping import order_at_the_lap
from casewright.joinery.defaults import (
    chosen_half_pin,
    chosen_lap,
    chosen_pin,
    chosen_rabbet,
    chosen_slope,
    chosen_tails,
)
from casewright.joinery.dividers import Stepping, stepping_of
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.checks import findings_of
from casewright.joinery.families.half_blind.gauging import chosen_setting, groups_of, seen_at
from casewright.joinery.gauges import GaugeGroup, first_gauge, second_gauge
from casewright.joinery.groove import GrooveFit, groove_fit
from casewright.joinery.joint import (
    Choosing,
    JointKind,
    Measured,
    Setting,
    Solved,
    Tool,
    Values,
    fields,
)
from casewright.joinery.lap import lap_index, lap_left
from casewright.joinery.layout import TailLayout, lay_out
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import top_half_pin
from casewright.joinery.tail_shape import TailCorner, tail_shape
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import changer, quickly_made
from casewright.measure.remembering import remembered
from casewright.measure.saying import Words
from casewright.measure.units import Inches, Number


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class HalfBlindJoint:
    """A half-blind joint, worked out.

    Attributes:
        given: what was asked for
        gauge_1: depth of the sockets, lap line from the inside face, baseline of the tails [in]
        gauge_2: line on the inside face of the front, from its end; with measured sides, that of the group
            with the most sides [in]
        wrong_gauge_2: the full thickness of the side, so easily set instead; None without a rabbet [in]
        wrong_gauge_text: what the wrong setting would do, and to which measured side; empty without a rabbet
        side_seen: full thickness of the side that is drawn and struck out: the drawn one, or with measured
            sides the one that the wrong setting harms most [in]
        rabbet_seen: what the rabbet takes of that side [in]
        proud_seen: how far that side stands proud of the front's end at this setting [in]
        rabbet_width: width of the registration rabbet, which is the first gauge; 0 when there is none [in]
        lap: what is left of the front before the tails, from its measured thickness [in]
        lap_index: how hard the lap is bent
        side_shortening: how much shorter than the drawer its side is [in]
        top_half_pin_on_front: the upper half pin as laid out on the front [in]
        layout: the row of tails
        stepping: the work with the dividers
        chisels: which chisels clear it
        groove_fit: how the groove lies against the lowest tail; None without a groove
        gauge_groups: the settings of the second gauge for measured sides, and the sides that each serves
        findings: every check that was carried out, passes too
    """

    given: HalfBlind
    gauge_1: Inches
    gauge_2: Inches
    wrong_gauge_2: Inches | None
    wrong_gauge_text: Words
    side_seen: Inches
    rabbet_seen: Inches
    proud_seen: Inches
    rabbet_width: Inches
    lap: Inches
    lap_index: Number
    side_shortening: Inches
    top_half_pin_on_front: Inches
    layout: TailLayout
    stepping: Stepping
    chisels: Chisels
    groove_fit: GrooveFit | None
    gauge_groups: tuple[GaugeGroup, ...]
    findings: tuple[Finding, ...]

    @property
    def advice(self) -> tuple[Words, ...]:
        """The order of work at the sockets, and what keeps the lap whole, one sentence for each step."""
        given = self.given
        return order_at_the_lap(
            self.layout, self.chisels, self.gauge_1, self.lap_index, given.limits, given.can_be_replaced
        )

    def second_gauge_for(self, mark: str) -> tuple[Inches, bool]:
        """The second gauge for one side.

        Args:
            mark: the mark of the side

        Returns:
            The setting, and whether the side was measured; one that was not, or not in its rabbet, has the
            setting of the side as drawn [in]

        Source: geometry of the joint; a measured size beats a nominal one.
        """
        for group in self.gauge_groups:
            if mark in group.marks:
                return group.setting, True
        if not self.gauge_groups:
            return self.gauge_2, False
        given = self.given
        full = dict(given.full_sides).get(mark, given.side)
        return second_gauge(full, given.rabbet, given.proud), False

    def at(self, group: GaugeGroup) -> "HalfBlindJoint":
        """The joint as one group of its sides has it: its setting, what is struck out, the side drawn.

        Args:
            group: the gauge group; its sides may be those of other joints that are laid out alike

        Returns:
            The joint, with that group as its only one.

        Source: geometry of the joint.
        """
        return replace(self, gauge_groups=(group,), **seen_at(self.given, (group,), group.setting))

    def of(self, given: HalfBlind) -> "HalfBlindJoint":
        """The same joint as another drawer asks for it, of which it bears the mark.

        Args:
            given: what is asked for, the same but for the mark

        Returns:
            The joint, its findings about that drawer.

        Source: common practice: joints that are alike are worked out once.
        """
        if given.mark == self.given.mark:
            return self
        return _changed(self, given=given, findings=tuple([each.of(given.mark) for each in self.findings]))

    @property
    def kept(self) -> tuple[Setting, ...]:
        """Those of the settings that a tool keeps until the last piece is marked, in the order of work."""
        return (_first_gauge(self), dividers_setting(self.stepping), *_second_gauges(self))

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the side first, then the front."""
        return (*_settings_of_the_side(self), *_settings_of_the_front(self))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        return tail_shape(
            TailCorner(
                across="front",
                thickness=self.gauge_1 + self.lap,
                lap=self.lap,
                high=given.height + given.front_excess,
                side_high=given.height,
                side_thickness=self.side_seen,
                socket=self.gauge_2,
                proud=self.proud_seen,
                layout=self.layout,
                groove=given.groove,
                wrong_socket=self.wrong_gauge_2,
            )
        )


_changed = changer(HalfBlindJoint)


def half_blind(joint: HalfBlind, ledger: Ledger = UNKEPT) -> HalfBlindJoint:
    """A half-blind joint, worked out: gauges, dividers, every tail, chisels and checks.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the sizes leave the tails no width.

    Source: geometry of the joint; Fine Woodworking, 2007 special issue, p. 84, for its reference face.
    """
    return _worked_out(joint, ledger).of(joint)


@remembered
def _worked_out(joint: HalfBlind, ledger: Ledger) -> HalfBlindJoint:
    """The joint of the first drawer that asks for it; others that ask alike have the same."""
    gauge_1, lap = _first_gauge_and_lap(joint, ledger)
    groups = groups_of(joint, ledger)
    layout = lay_out(joint.height, joint.half_pin, joint.pin, joint.tails, gauge_1, joint.slope, ledger)
    chisels = chisels_for(layout, joint.rack, ledger, joint.limits)
    fit = groove_fit(layout, joint.groove, ledger) if joint.groove else None
    index = ledger.take("lap_index", lap_index, side=joint.side, lap=lap)
    seen = seen_at(joint, groups, chosen_setting(joint, groups, ledger))
    rabbeted = joint.rabbet > 0
    return HalfBlindJoint(
        given=joint,
        gauge_1=gauge_1,
        rabbet_width=gauge_1 if rabbeted else 0.0,
        lap=lap,
        lap_index=index,
        side_shortening=lap,
        top_half_pin_on_front=ledger.take(
            "top_half_pin", top_half_pin, half_pin=joint.half_pin, front_excess=joint.front_excess
        ),
        layout=layout,
        stepping=stepping_of(layout, ledger),
        chisels=chisels,
        groove_fit=fit,
        gauge_groups=groups,
        findings=tuple(findings_of(joint, gauge_1, seen, (lap, index), groups, layout, chisels, fit)),
        **seen,
    )


def _first_gauge_and_lap(joint: HalfBlind, ledger: Ledger) -> tuple[Inches, Inches]:
    if joint.locked_gauge_1 is None:
        return ledger.take("gauge_1", first_gauge, front=joint.front, lap=joint.lap), joint.lap
    locked = ledger.given("gauge_1", joint.locked_gauge_1, "locked for the batch", Inches)
    return locked, ledger.take("lap", lap_left, front=joint.front, gauge_1=locked)


def _first_gauge(joint: HalfBlindJoint) -> Setting:
    return new_setting(
        name="gauge_1",
        label="Gauge 1",
        value=joint.gauge_1,
        note="baseline on the sides; lap line on the ends of the front, from its inside face",
        tool=Tool.GAUGE,
    )


def _settings_of_the_side(joint: HalfBlindJoint) -> list[Setting]:
    given = joint.given
    settings = [_first_gauge(joint)]
    if given.rabbet > 0:
        note = "inside face of the side, from its end; the same gauge"
        settings += (
            new_setting(name="rabbet_width", label="Rabbet width", value=joint.rabbet_width, note=note),
            new_setting(name="rabbet_depth", label="Rabbet depth", value=given.rabbet, note="off that face"),
        )
    settings += layout_settings(joint.layout, joint.stepping)
    return settings


def _settings_of_the_front(joint: HalfBlindJoint) -> list[Setting]:
    given = joint.given
    settings = []
    if given.front_excess > 0:
        label, note = "Top half pin on the front", "higher than the side; lay out from the bottom edge"
        settings.append(
            new_setting(name="top_half_pin", label=label, value=joint.top_half_pin_on_front, note=note)
        )
    return [
        *settings,
        *_second_gauges(joint),
        *chisel_settings(joint.chisels),
        new_setting(name="lap", label="Lap", value=joint.lap, note="left of the front before the tails"),
        new_setting(
            name="side_shortening",
            label="Side shorter than the drawer",
            value=joint.side_shortening,
            note="by the lap",
        ),
    ]


def _second_gauges(joint: HalfBlindJoint) -> list[Setting]:
    after = "left after the rabbet; " if joint.given.rabbet > 0 else ""
    gauges: list[tuple[Inches, str, Inches | None]] = [
        (group.setting, f" of {', '.join(group.marks)}", group.wrong[-1] if group.wrong else None)
        for group in joint.gauge_groups
    ]
    drawn = (joint.gauge_2, "", joint.wrong_gauge_2)
    return [
        new_setting(
            name="gauge_2" if number == 1 else f"gauge_2_{number}",
            label="Gauge 2",
            value=setting,
            note=f"{after}on the inside face of the front, from its end, for the side{sides}",
            wrong=wrong,
            tool=Tool.GAUGE,
        )
        for number, (setting, sides, wrong) in enumerate(gauges or [drawn], start=1)
    ]


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A half-blind joint from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    height, front, side = take.number("height"), take.number("front"), take.number("side")
    locked = take.optional("locked_gauge_1")
    # A locked gauge settles the lap, so none is chosen that the joint would not have.
    lap = take.or_choose("lap", chosen_lap, front, side) if locked is None else front - locked
    groove = take.groove()
    half_pin = take.or_choose("half_pin", chosen_half_pin, True)
    pin = take.or_choose("pin", chosen_pin, side)
    slope = take.or_choose("slope", chosen_slope)
    sizes = (height, side, front - lap, half_pin, pin, slope, rack.kerf)
    tail_length, socket_depth = take.pair("measured_tail_length", "measured_socket_depth")
    moistures = take.pair("front_moisture", "side_moisture")
    gravities = take.pair("front_gravity", "side_gravity")
    replaced = take.optional("can_be_replaced")
    joint = HalfBlind(
        height=height,
        front=front,
        lap=lap,
        side=side,
        rabbet=take.or_choose("rabbet", chosen_rabbet, side),
        half_pin=half_pin,
        pin=pin,
        tails=int(take.or_choose("tails", chosen_tails, *sizes, groove)),
        slope=slope,
        proud=take.optional("proud") or 0.0,
        front_excess=take.optional("front_excess") or 0.0,
        groove=groove,
        rack=rack,
        locked_gauge_1=locked,
        entered_second_gauge=take.optional("entered_second_gauge"),
        measured_tail_length=tail_length,
        measured_socket_depth=socket_depth,
        measured_sides=measured,
        front_moisture=moistures[0],
        side_moisture=moistures[1],
        front_gravity=gravities[0],
        side_gravity=gravities[1],
        can_be_replaced=replaced is None or replaced > 0,
    )
    return Solved(joint=half_blind(joint, ledger), chosen=take.chosen)


FIELDS = fields("half_blind")

KIND = JointKind(
    name="half-blind",
    title="Half-blind dovetail of a drawer's front, with a registration rabbet in the side",
    fields=FIELDS,
    solve=_solve,
    takes_measured_sides=True,
)
