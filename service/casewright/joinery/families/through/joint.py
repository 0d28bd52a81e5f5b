"""The through dovetail of a drawer's back, and of boxes.

Tails are cut on the side, sockets on the back. The back stands above the bottom's groove, so its joint is
laid out on its own height; the same positions are given from the side's bottom edge, where they are marked.
"""

from dataclasses import dataclass, field

from casewright.joinery.cards import chisel_settings, dividers_setting, layout_settings, new_setting
from casewright.joinery.checks import (
    chisels_at_hand,
    half_pin_width,
    neck_width,
    pin_width,
    rabbet_depth,
    slope_limit,
    tail_width_limit,
    wood_below_groove,
)
from casewright.joinery.chisels import RACK, Chisels, Rack, chisels_for
from casewright.joinery.chopping import order_through
from casewright.joinery.defaults import USUAL, chosen_half_pin, chosen_pin, chosen_slope, chosen_tails
from casewright.joinery.dividers import Stepping, stepping_of
from casewright.joinery.gauges import Thicknesses, second_gauge, what_a_wrong_gauge_does
from casewright.joinery.groove import Groove
from casewright.joinery.groove_left import refuse_groove_through, wood_behind_groove
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
from casewright.joinery.layout import Tail, TailLayout, lay_out
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.proud import proud_for_planing
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.solid import Shape
from casewright.joinery.tail_shape import TailCorner, tail_shape
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import changer, quickly_made
from casewright.measure.remembering import remembered
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches, Number


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Through:
    """A through joint as it is asked for.

    Attributes:
        height: height of the back [in]
        side: thickness of the side, which carries the tails [in]
        back: thickness of the back [in]
        half_pin: half pin at each edge of the back, at the end of the tails [in]
        pin: pin between two tails, at the end of the tails [in]
        tails: number of tails
        rabbet: depth of a registration rabbet in the side at the back; 0 for none [in]
        slope: how far along for one across, 8 for 1:8
        proud: how far the tails are to stand proud of the back, for planing [in]
        lower_edge_offset: how far the back's lower edge stands above the side's; None to take it from the
            groove, and 0 without one [in]
        groove: the groove for the bottom, which passes under the back; None when there is none
        ends: where the two sides take a gauge setting each on the back: `left` or `right`, and the setting of
            that end; none where one serves both [in]
        rack: the shop's chisels and saw
        limits: what the joint is held to
        mark: code of the drawer or joint, for its findings; joints that differ in it alone are equal
    """

    height: Inches
    side: Inches
    back: Inches
    half_pin: Inches
    pin: Inches
    tails: Count
    rabbet: Inches = 0.0
    slope: Number = USUAL.slope_hardwood.value
    proud: Inches = 0.0
    lower_edge_offset: Inches | None = None
    groove: Groove | None = None
    ends: Thicknesses = ()
    rack: Rack = RACK
    limits: Limits = LIMITS
    mark: str = field(default="", compare=False)

    def __post_init__(self) -> None:
        refuse_unless_above_zero(height=self.height, side=self.side, back=self.back)
        refuse_below_zero(rabbet=self.rabbet, amount_to_stand_proud=self.proud, offset=self.offset)
        if self.rabbet >= self.side:
            raise ValueError(
                say(
                    "The rabbet of {} leaves nothing of the side; make it 0 or {:fraction}.",
                    self.rabbet,
                    1 / 16,
                )
            )

        refuse_groove_through(self.groove, side=self.side)

    @property
    def offset(self) -> Inches:
        """How far the back's lower edge stands above the side's [in]."""
        if self.lower_edge_offset is not None:
            return self.lower_edge_offset
        return self.groove.top if self.groove else 0.0


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class ThroughJoint:
    """A through joint, worked out.

    Attributes:
        given: what was asked for
        gauge_side: baseline on the sides: the thickness of the back, and what is to stand proud [in]
        gauge_back: line on both faces of the back, from its end: what is left of the side; where the two
            sides take a setting each, that of the thicker, which is drawn [in]
        wrong_gauge_back: the full thickness of the side, so easily set instead; None without a rabbet [in]
        wrong_gauge_text: what the wrong setting would do; empty without a rabbet
        lower_edge_offset: how far the back's lower edge stands above the side's [in]
        layout: the row of tails, from the back's lower edge
        side_tails: the same tails, from the side's bottom edge
        stepping: the work with the dividers
        chisels: which chisels clear it
        findings: every check that was carried out, passes too
    """

    given: Through
    gauge_side: Inches
    gauge_back: Inches
    wrong_gauge_back: Inches | None
    wrong_gauge_text: Words
    lower_edge_offset: Inches
    layout: TailLayout
    side_tails: tuple[Tail, ...]
    stepping: Stepping
    chisels: Chisels
    findings: tuple[Finding, ...]

    @property
    def back_ends(self) -> Thicknesses:
        """The settings of the gauge on the back, each with its end; one without a name serves both [in]."""
        return self.given.ends or (("", self.gauge_back),)

    @property
    def advice(self) -> tuple[Words, ...]:
        """The order of work at the waste, one sentence for each step."""
        return order_through(self.layout, self.chisels, self.given.back, self.given.side)

    def of(self, given: Through) -> "ThroughJoint":
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
        return (_gauge_on_the_side(self), dividers_setting(self.stepping), *_gauges_on_the_back(self))

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the side first, then the back."""
        return (
            _gauge_on_the_side(self),
            new_setting(
                name="lower_edge_offset",
                label="Back above the side's edge",
                value=self.lower_edge_offset,
                note="from the side's bottom edge to the back's lower edge",
            ),
            *layout_settings(self.layout, self.stepping),
            *_gauges_on_the_back(self),
            *chisel_settings(self.chisels),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space; where the side goes on below the back it is drawn going on above it, too."""
        given = self.given
        top = self.lower_edge_offset + given.height
        return tail_shape(
            TailCorner(
                across="back",
                thickness=given.back,
                low=self.lower_edge_offset,
                high=top,
                side_high=top,
                side_thickness=given.side,
                socket=self.gauge_back,
                tails_proud=given.proud,
                layout=self.layout,
                goes_on=self.layout.pitch / 4 if self.lower_edge_offset > 0 else 0.0,
                gauge_length="gauge, side",
                gauge_socket="gauge, back",
                wrong_socket=self.wrong_gauge_back,
            )
        )


_changed = changer(ThroughJoint)


def _gauge_on_the_side(joint: ThroughJoint) -> Setting:
    return new_setting(
        name="gauge_side",
        label="Gauge on the side",
        value=joint.gauge_side,
        note="baseline of the tails",
        tool=Tool.GAUGE,
    )


def _gauges_on_the_back(joint: ThroughJoint) -> list[Setting]:
    after = "left after the rabbet; " if joint.given.rabbet > 0 else ""
    return [
        new_setting(
            name=f"gauge_back_{end}" if end else "gauge_back",
            label=f"Gauge on the back, {end} end" if end else "Gauge on the back",
            value=setting,
            note=f"{after}on both faces, from {f'the {end}' if end else 'the'} end",
            wrong=joint.wrong_gauge_back,
            tool=Tool.GAUGE,
        )
        for end, setting in joint.back_ends
    ]


def gauge_on_the_side(back: Inches, proud: Inches = 0.0) -> Inches:
    """The baseline of through tails: the thickness of the back, and what is to stand proud of it.

    Rule: back + proud

    Args:
        back: thickness of the back [in]
        proud: how far the tails are to stand proud of it, 0 or 1/64 [in]

    Returns:
        The gauge setting from the end of the side [in]

    Source: geometry of the joint.
    """
    return back + proud


def through(joint: Through, ledger: Ledger = UNKEPT) -> ThroughJoint:
    """A through joint, worked out: gauges, dividers, every tail, chisels and checks.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the sizes leave the tails no width.

    Source: geometry of the joint.
    """
    return _worked_out(joint, ledger).of(joint)


@remembered
def _worked_out(joint: Through, ledger: Ledger) -> ThroughJoint:
    """The joint of the first drawer that asks for it; others that ask alike have the same."""
    layout = lay_out(joint.height, joint.half_pin, joint.pin, joint.tails, joint.back, joint.slope, ledger)
    chisels = chisels_for(layout, joint.rack, ledger, joint.limits)
    offset = joint.offset
    return ThroughJoint(
        given=joint,
        gauge_side=ledger.take("gauge_side", gauge_on_the_side, back=joint.back, proud=joint.proud),
        gauge_back=ledger.take("gauge_back", second_gauge, side=joint.side, rabbet=joint.rabbet),
        wrong_gauge_back=joint.side if joint.rabbet > 0 else None,
        wrong_gauge_text=what_a_wrong_gauge_does(joint.rabbet, "back"),
        lower_edge_offset=offset,
        layout=layout,
        side_tails=tuple(tail.raised(offset) for tail in layout.tails),
        stepping=stepping_of(layout, ledger),
        chisels=chisels,
        findings=_findings(joint, layout, chisels),
    )


def _findings(joint: Through, layout: TailLayout, chisels: Chisels) -> tuple[Finding, ...]:
    side, limits, mark = joint.side, joint.limits, joint.mark
    found = [
        rabbet_depth(side, joint.rabbet, limits, mark),
        neck_width(layout, side, limits, mark),
        pin_width(joint.pin, joint.rack.kerf, limits, mark),
        half_pin_width(joint.half_pin, limits, mark),
        tail_width_limit(layout, side, limits, mark),
        slope_limit(joint.slope, limits, mark),
        chisels_at_hand(layout, chisels, joint.rack, mark),
    ]
    if joint.groove:
        found.append(wood_below_groove(joint.groove.height, limits, mark))
        found.append(wood_behind_groove(side, joint.groove.depth, "side", about=mark))
    if joint.proud > 0:
        found.append(proud_for_planing(joint.proud, "The tails", limits, mark))
    return tuple(found)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A through joint from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    height, side, back = take.number("height"), take.number("side"), take.number("back")
    half_pin = take.or_choose("half_pin", chosen_half_pin, at_front=False)
    pin = take.or_choose("pin", chosen_pin, side)
    slope = take.or_choose("slope", chosen_slope)
    sizes = (height, side, back, half_pin, pin, slope, rack.kerf)
    joint = Through(
        height=height,
        side=side,
        back=back,
        half_pin=half_pin,
        pin=pin,
        tails=int(take.or_choose("tails", chosen_tails, *sizes)),
        rabbet=take.optional("rabbet") or 0.0,
        slope=slope,
        proud=take.optional("proud") or 0.0,
        lower_edge_offset=take.optional("lower_edge_offset"),
        groove=take.groove(),
        rack=rack,
    )
    return Solved(joint=through(joint, ledger), chosen=take.chosen)


FIELDS = fields("through")

KIND = JointKind(
    name="through",
    title="Through dovetail of a drawer's back, or of a box",
    fields=FIELDS,
    solve=_solve,
)
