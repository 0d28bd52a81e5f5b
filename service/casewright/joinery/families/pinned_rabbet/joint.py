"""The rabbet in a front, in which the side lies, held by wooden pins through the side.

The pins go into the end grain of the front, so that they are seen at the side only; the lip of the front
hides the end of the side. Heights run up from the bottom edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.pinned_rabbet.asked import (
    LIMITS,
    PinnedRabbet,
    least_pin,
    pin_count,
    pin_places,
    pin_spacing,
    usual_lip,
    usual_margin,
    usual_pin,
)
from casewright.joinery.families.pinned_rabbet.checks import (
    groove_in_the_rabbet,
    lip_hides_the_pins,
    pin_reach,
    pin_thickness,
    pins_and_groove,
    pins_apart,
    pins_from_the_edge,
    rabbet_depth,
)
from casewright.joinery.families.pinned_rabbet.shape import pinned_rabbet_shape
from casewright.joinery.groove import Groove
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
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
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class PinnedRabbetJoint:
    """A pinned rabbet, worked out.

    Attributes:
        given: what was asked for
        rabbet: how deep the rabbet is, from the inside face of the front [in]
        pin_line: from the end of the side to the middle of the pins [in]
        spacing: from one pin to the next [in]
        places: the middle of each pin above the bottom edge, the lowest first [in]
        findings: every check that was carried out, passes too
    """

    given: PinnedRabbet
    rabbet: Inches
    pin_line: Inches
    spacing: Inches
    places: tuple[Inches, ...]
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the side, the rabbet, then the pins."""
        return (_side(self.given), *_rabbet(self), *_pins(self))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        return pinned_rabbet_shape(
            given.height, given.front, given.side, given.lip, given.pin, given.pin_length, self.places
        )


def depth_of_rabbet(front: Inches, lip: Inches) -> Inches:
    """How deep the rabbet is, from the inside face of the front.

    Rule: front - lip

    Args:
        front: thickness of the front [in]
        lip: what of it is left before the end of the side [in]

    Returns:
        The depth [in]

    Source: geometry of the joint.
    """
    return front - lip


def line_of_pins(rabbet: Inches) -> Inches:
    """From the end of the side to the middle of the pins.

    Rule: rabbet / 2

    Args:
        rabbet: depth of the rabbet, which is how much of the side lies in it [in]

    Returns:
        The distance on the outside face of the side [in]

    Source: geometry: in the middle there is most wood on both sides of a pin, in the side and in the front.
    """
    return rabbet / 2


def pinned_rabbet(joint: PinnedRabbet, ledger: Ledger = UNKEPT) -> PinnedRabbetJoint:
    """A pinned rabbet, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    row = {"height": joint.height, "margin": joint.margin, "pins": joint.pins}
    rabbet = ledger.take("rabbet", depth_of_rabbet, front=joint.front, lip=joint.lip)
    return PinnedRabbetJoint(
        given=joint,
        rabbet=rabbet,
        pin_line=ledger.take("pin_line", line_of_pins, rabbet=rabbet),
        spacing=ledger.take("pin_spacing", pin_spacing, **row),
        places=ledger.take("pin_places", pin_places, **row),
        findings=tuple(_findings(joint)),
    )


def _findings(joint: PinnedRabbet) -> Iterator[Finding]:
    yield rabbet_depth(joint)
    yield lip_hides_the_pins(joint)
    yield pins_from_the_edge(joint)
    yield pins_apart(joint)
    yield pin_thickness(joint)
    yield pin_reach(joint)
    if joint.groove:
        yield pins_and_groove(joint, joint.groove)
        yield groove_in_the_rabbet(joint, joint.groove)


def _side(given: PinnedRabbet) -> Setting:
    if given.drawer_depth is None:
        return Setting(
            name="side_taken_off",
            label="Taken off the side",
            value=given.lip,
            note="of the depth of the drawer, for the lip",
            wrong=given.front,
        )
    return Setting(
        name="side_length",
        label="Side length",
        value=given.drawer_depth - given.lip,
        note="to the lip; less what the joint at the rear takes",
        wrong=given.drawer_depth - given.front,
    )


def _rabbet(joint: PinnedRabbetJoint) -> Iterator[Setting]:
    given = joint.given
    yield Setting(
        name="gauge_1",
        label="Gauge 1",
        value=joint.rabbet,
        note="on the ends and edges of the front, from its inside face",
        wrong=given.lip,
        tool=Tool.GAUGE,
    )
    yield Setting(
        name="gauge_2",
        label="Gauge 2",
        value=given.side,
        note="on the inside face of the front, from its end: the side as measured",
        tool=Tool.GAUGE,
    )
    yield Setting(name="lip", label="Lip", value=given.lip, note="left of the front, at its outside face")


def _pins(joint: PinnedRabbetJoint) -> Iterator[Setting]:
    given = joint.given
    yield Setting(
        name="pin_line",
        label="Pin line",
        value=joint.pin_line,
        note="on the outside face of the side, from its end; the lip does not count",
        wrong=joint.pin_line + given.lip,
    )
    yield Setting(
        name="margin", label="First pins", value=given.margin, note="the middle, from the edges of the side"
    )
    yield Setting(name="dividers", label="Dividers", value=joint.spacing, note="from pin to pin")
    yield Setting(name="pins", label="Pins", value=given.pins, measure=Measure.COUNT, note="at each corner")
    yield Setting(name="drill", label="Drill", value=given.pin, note="as thick as a pin; try it on scrap")
    yield Setting(
        name="drill_depth",
        label="Drill depth",
        value=given.pin_length,
        note="from the outside face of the side, when the glue is dry; pins longer, pared flush",
        wrong=given.pin_length - given.side,
    )


def _chosen_lip(front: Inches) -> Chosen:
    return Chosen(
        name="lip",
        value=usual_lip(front),
        measure=Measure.LENGTH,
        why=say("A third of the {} front or {:bare}, but no more than half.", front, LIMITS.lip_least.value),
        source=LIMITS.rabbet_most_part.source,
    )


def _chosen_pin(rabbet: Inches) -> Chosen:
    return Chosen(
        name="pin",
        value=usual_pin(rabbet),
        measure=Measure.LENGTH,
        why=say(
            "A third of the rabbet, {}, rounded down to {:bare}, and at least {:bare}.",
            rabbet,
            LIMITS.size_step.value,
            least_pin(rabbet),
        )
        + (
            " So thin a pin is of bamboo, in a bored hole."
            if usual_pin(rabbet) < LIMITS.pin_least.value
            else ""
        ),
        source=LIMITS.pin_part.source,
    )


def _chosen_pin_length(side: Inches) -> Chosen:
    return Chosen(
        name="pin_length",
        value=LIMITS.pin_sides.value * side,
        measure=Measure.LENGTH,
        why=say("Three times the {} side, which it holds.", side),
        source=LIMITS.pin_sides.source,
    )


def _chosen_spacing() -> Chosen:
    return Chosen(
        name="spacing",
        value=LIMITS.spacing_most.value,
        measure=Measure.LENGTH,
        why="The fewest pins that hold all of the height.",
        source=LIMITS.spacing_most.source,
    )


def _chosen_margin(
    height: Inches, pin: Inches, spacing: Inches, pins: Count | None, groove: Groove | None
) -> Chosen:
    value = usual_margin(height, pin, spacing, pins, groove)
    why: Words = say("{} is usual.", value)
    if value > LIMITS.margin.value:
        why = say("{} is usual, and {} clears the groove.", LIMITS.margin.value, value)
    elif value < LIMITS.margin.value:
        why = say("Boards {} high have no room for more.", height)
    return Chosen(name="margin", value=value, measure=Measure.LENGTH, why=why, source=LIMITS.margin.source)


def _chosen_pins(height: Inches, margin: Inches, spacing: Inches) -> Chosen:
    return Chosen(
        name="pins",
        value=pin_count(height, margin, spacing),
        measure=Measure.COUNT,
        why=say("As many as stand no more than {} apart.", spacing),
        source=LIMITS.spacing_most.source,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A pinned rabbet from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    height, front, side = take.number("height"), take.number("front"), take.number("side")
    lip = take.or_choose("lip", _chosen_lip, front)
    pin = take.or_choose("pin", _chosen_pin, front - lip)
    pin_length = take.or_choose("pin_length", _chosen_pin_length, side)
    groove = take.groove()
    given = take.optional("pins")
    pins = None if given is None else int(given)
    # The number of pins settles their spacing, so that one is chosen only where the other is not given.
    spacing = LIMITS.spacing_most.value if pins else take.or_choose("spacing", _chosen_spacing)
    margin = take.or_choose("margin", _chosen_margin, height, pin, spacing, pins, groove)
    if pins is None:
        pins = int(take.or_choose("pins", _chosen_pins, height, margin, spacing))
    joint = PinnedRabbet(
        height=height,
        front=front,
        side=side,
        lip=lip,
        pin=pin,
        pin_length=pin_length,
        margin=margin,
        pins=pins,
        groove=groove,
        drawer_depth=take.optional("drawer_depth"),
    )
    return Solved(joint=pinned_rabbet(joint, ledger), chosen=take.chosen)


FIELDS = fields("pinned_rabbet")

KIND = JointKind(
    name="pinned-rabbet",
    title="Rabbet in a front, pinned through the side",
    fields=FIELDS,
    solve=_solve,
)
