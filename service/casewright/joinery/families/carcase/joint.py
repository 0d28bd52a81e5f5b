"""The dovetail of wide case boards: narrower tails at the edges, with a lap or through.

Positions run from the front edge; the back edge carries the rabbet for the back. Without a lap the tails
show on the outside of the pin board.
"""

from dataclasses import dataclass, replace

from casewright.joinery.cards import chisel_settings, layout_settings
from casewright.joinery.checks import chisels_at_hand, half_pin_width, pin_width, slope_limit
from casewright.joinery.chisels import Chisels, Rack, chisels_for, widest_chisel
from casewright.joinery.defaults import chosen_slope
from casewright.joinery.dividers import Stepping, stepping_of
from casewright.joinery.families.carcase.asked import BackRabbet, Carcase
from casewright.joinery.families.carcase.checks import (
    back_rabbet_in_a_pin,
    edge_tails_hold,
    edge_tails_narrower,
    edges_held,
    lap_stands,
    middle_tails_stay_tight,
    rabbet_leaves_wood,
)
from casewright.joinery.families.carcase.chosen import (
    chosen_back_half_pin,
    chosen_half_pin,
    chosen_lap,
    chosen_pin,
    chosen_pin_board,
    chosen_share,
    chosen_tails,
)
from casewright.joinery.families.carcase.layout import (
    FEWEST,
    CarcaseLayout,
    dovetailed_length,
    lay_out_carcase,
)
from casewright.joinery.families.carcase.shape import Corner, corner_shape
from casewright.joinery.gauges import first_gauge
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
from casewright.joinery.solid import Shape
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.remembering import remembered
from casewright.measure.units import Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class CarcaseJoint:
    """A carcase dovetail, worked out.

    Attributes:
        given: what was asked for
        gauge_1: baseline of the tails, and depth of the sockets [in]
        gauge_2: line on the inside face of the pin board, from its end: the tail board's thickness [in]
        layout: the tails, from the front edge
        stepping: the work with the dividers, for the middle tails
        chisels: which chisels clear the middle tails
        edge_chisel: the widest that enters the socket of an edge tail; None when there is none [in]
        rabbet_stop_pins: where the rabbet stops in the pin board, from its end; None without one [in]
        rabbet_stop_tails: where it stops in the tail board, from its end; None where it is run through [in]
        findings: every check that was carried out, passes too
    """

    given: Carcase
    gauge_1: Inches
    gauge_2: Inches
    layout: CarcaseLayout
    stepping: Stepping
    chisels: Chisels
    edge_chisel: Inches | None
    rabbet_stop_pins: Inches | None
    rabbet_stop_tails: Inches | None
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints: the tail board first, its gauge and marks, then the pin board."""
        given, layout = self.given, self.layout
        lapped = given.lap > 0
        where = "baseline of the tails, on all four faces"
        ends = "; and on the ends of the pin board, from its inside face" if lapped else ""
        return (
            *self._lengths(),
            Setting(
                name="gauge_1",
                label="Gauge 1",
                value=self.gauge_1,
                note=f"{where}{ends}",
                wrong=given.pin_board if lapped else None,
                tool=Tool.GAUGE,
            ),
            Setting(
                name="half_pin",
                label="Half pin, front edge",
                value=layout.half_pin,
                note="a mark from the front edge",
            ),
            Setting(
                name="back_half_pin",
                label="Half pin, back edge",
                value=layout.back_half_pin,
                note=f"a mark from the {'edge that carries the back' if given.rabbet else 'back edge'}",
            ),
            *self._edge_tails(),
            *self._walk(),
            Setting(
                name="gauge_2",
                label="Gauge 2",
                value=self.gauge_2,
                note=f"on {'the inside face' if lapped else 'both faces'} of the pin board, from its end",
                tool=Tool.GAUGE,
            ),
            *chisel_settings(self.chisels),
            *self._edge_chisel(),
            *self._stops(),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given, rabbet = self.given, self.given.rabbet
        return corner_shape(
            Corner(
                layout=self.layout,
                tail_board=given.tail_board,
                pin_board=given.pin_board,
                lap=given.lap,
                rabbet_width=rabbet.width if rabbet else 0.0,
                rabbet_depth=rabbet.depth if rabbet else 0.0,
            )
        )

    def _lengths(self) -> tuple[Setting, ...]:
        given = self.given
        if given.outside is None:
            label, value = "Taken off for the tail board", 2 * given.lap
            note = "its length is that over both pin boards, less this"
        else:
            label, value = "Tail board length", dovetailed_length(given.outside, given.lap)
            note = "over the tails"
        return (Setting(name="tail_board_length", label=label, value=value, note=note),)

    def _edge_tails(self) -> tuple[Setting, ...]:
        given, layout = self.given, self.layout
        if layout.is_even:
            return ()
        return (
            Setting(
                name="edge_tail",
                label="Tail at each edge",
                value=layout.edge_tail,
                note="second dividers: one step in from each half pin",
                wrong=layout.middle.tail_width if given.share < 1 else None,
            ),
            Setting(
                name="pin",
                label="Pin",
                value=given.pin,
                note="from each edge tail on: the marks that the middle tails are stepped from",
            ),
        )

    def _walk(self) -> tuple[Setting, ...]:
        """The walk of an even row: it begins a pin inside one edge tail and ends on the edge of the other."""
        _, *walk = layout_settings(self.layout.middle, self.stepping)
        if self.layout.is_even:
            return tuple(walk)
        note = "one pin: on the edge of the other edge tail"
        return tuple(replace(each, note=note) if each.name == "overshoot" else each for each in walk)

    def _edge_chisel(self) -> tuple[Setting, ...]:
        if self.edge_chisel is None or self.edge_chisel == self.chisels.sockets:
            return ()
        return (
            Setting(
                name="edge_chisel",
                label="Chisel for the edge sockets",
                value=self.edge_chisel,
                note="the sockets of the two edge tails are narrower",
            ),
        )

    def _stops(self) -> tuple[Setting, ...]:
        stops = []
        if self.rabbet_stop_tails is not None:
            stops.append(("tails", "tail board", self.rabbet_stop_tails))
        if self.rabbet_stop_pins is not None:
            stops.append(("pins", "pin board", self.rabbet_stop_pins))
        return tuple(
            Setting(
                name=f"rabbet_stop_{name}",
                label=f"Rabbet stops, {board}",
                value=value,
                note=f"from the end of the {board}, at the back edge",
            )
            for name, board, value in stops
        )


def rabbet_stop(reach: Inches, depth: Inches) -> Inches:
    """Where the rabbet for the back stops, so that the back fills it to its end.

    Rule: reach - depth

    Args:
        reach: from the end of the board to the inside face of the other board [in]
        depth: how far the rabbet reaches in from the inside faces [in]

    Returns:
        The distance from the end of the board [in]

    Source: geometry of the joint: the back reaches into both boards by the depth of the rabbet.
    """
    return reach - depth


@remembered
def carcase(joint: Carcase, ledger: Ledger = UNKEPT) -> CarcaseJoint:
    """A carcase dovetail, worked out: gauges, marks, dividers, chisels, the rabbet's stops and checks.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the sizes leave the tails no width.

    Source: geometry of the joint.
    """
    rabbet = joint.rabbet
    gauge_1 = ledger.take("gauge_1", first_gauge, front=joint.pin_board, lap=joint.lap)
    layout = lay_out_carcase(
        joint.width,
        joint.half_pin,
        joint.back_half_pin,
        joint.pin,
        joint.tails,
        joint.share,
        gauge_1,
        joint.slope,
        ledger,
    )
    chisels = chisels_for(layout.middle, joint.rack, ledger, joint.limits)
    stop_pins = stop_tails = None
    if rabbet:
        stop_pins = ledger.take("rabbet_stop_pins", rabbet_stop, reach=joint.tail_board, depth=rabbet.depth)
        if rabbet.width > joint.back_half_pin:
            stop_tails = ledger.take("rabbet_stop_tails", rabbet_stop, reach=gauge_1, depth=rabbet.depth)
    return CarcaseJoint(
        given=joint,
        gauge_1=gauge_1,
        gauge_2=joint.tail_board,
        layout=layout,
        stepping=stepping_of(layout.middle, ledger),
        chisels=chisels,
        edge_chisel=ledger.take(
            "edge_chisel", widest_chisel, room=layout.edge_neck, chisels=joint.rack.chisels
        ),
        rabbet_stop_pins=stop_pins,
        rabbet_stop_tails=stop_tails,
        findings=_findings(joint, layout, chisels, (stop_pins, stop_tails)),
    )


def _findings(
    joint: Carcase,
    layout: CarcaseLayout,
    chisels: Chisels,
    stops: tuple[Inches | None, Inches | None],
) -> tuple[Finding, ...]:
    limits, habits, mark, board = joint.limits, joint.habits, joint.mark, joint.tail_board
    found = [
        edge_tails_hold(layout, board, limits, mark),
        *(() if layout.is_even else (edge_tails_narrower(layout, habits, mark),)),
        middle_tails_stay_tight(layout, board, limits, mark),
        pin_width(joint.pin, joint.rack.kerf, limits, mark),
        half_pin_width(min(joint.half_pin, joint.back_half_pin), limits, mark),
        edges_held(layout, board, habits, mark),
        slope_limit(joint.slope, limits, mark),
        chisels_at_hand(layout.middle, chisels, joint.rack, mark),
    ]
    if joint.lap > 0:
        found.extend(lap_stands(joint.lap, board, limits, mark))
    if joint.rabbet:
        found.append(back_rabbet_in_a_pin(joint.rabbet.width, layout, stops[0] or 0.0, stops[1], mark))
        found.append(rabbet_leaves_wood(joint.rabbet.depth, min(board, joint.pin_board), habits, mark))
    return tuple(found)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A carcase dovetail from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    width, board = take.number("width"), take.number("tail_board")
    pin_board = take.or_choose("pin_board", chosen_pin_board, board)
    rabbet = _rabbet(take)
    asked = Carcase(
        width=width,
        tail_board=board,
        pin_board=pin_board,
        lap=take.or_choose("lap", chosen_lap, pin_board),
        half_pin=(half_pin := take.or_choose("half_pin", chosen_half_pin)),
        back_half_pin=take.or_choose("back_half_pin", chosen_back_half_pin, half_pin, rabbet),
        pin=take.or_choose("pin", chosen_pin),
        tails=FEWEST,
        share=take.or_choose("share", chosen_share),
        slope=take.or_choose("slope", chosen_slope),
        rabbet=rabbet,
        outside=take.optional("outside"),
        rack=rack,
    )
    joint = replace(asked, tails=int(take.or_choose("tails", chosen_tails, asked)))
    return Solved(joint=carcase(joint, ledger), chosen=take.chosen)


def _rabbet(take: Choosing) -> BackRabbet | None:
    width, depth = take.optional("rabbet_width"), take.optional("rabbet_depth")
    if width is None and depth is None:
        return None
    if width is None or depth is None:
        raise ValueError(
            "A rabbet for the back needs both its width, which is the thickness of the back, and its depth."
        )
    return BackRabbet(width=width, depth=depth)


FIELDS = fields("carcase")

KIND = JointKind(
    name="carcase",
    title="Dovetail of wide case boards, half-blind or through",
    fields=FIELDS,
    solve=_solve,
)
