"""The lock rabbet: a groove across the inside face of the side, and a tongue on the front that goes into it.

Without a lip the front lies between the ends of the sides, which show, and an applied front covers them.
With a lip the front covers them itself: the end of the side goes into a slot behind the lip.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.lock_rabbet.asked import LIMITS, LockRabbet, usual_reach, usual_tongue
from casewright.joinery.families.lock_rabbet.checks import (
    cutter_for_the_groove,
    end_against_the_side,
    groove_depth,
    lip_thickness,
    short_grain_at_the_end,
    tongue_thickness,
)
from casewright.joinery.families.lock_rabbet.shape import lock_rabbet_shape
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
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class LockRabbetJoint:
    """A lock rabbet, worked out.

    Attributes:
        given: what was asked for
        tongue_gauge: from the outside face of the front to the tongue [in]
        front_taken_off: by how much the front is shorter than the box is wide [in]
        side_taken_off: by how much the side is shorter than the drawer is deep, at this joint [in]
        findings: every check that was carried out, passes too
    """

    given: LockRabbet
    tongue_gauge: Inches
    front_taken_off: Inches
    side_taken_off: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: lengths, the side's groove, the tongue."""
        return (*_lengths(self), *_groove_settings(self.given), *_tongue_settings(self))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        return lock_rabbet_shape(
            given.height, given.front, given.side, given.lip, given.tongue, given.reach, given.from_end
        )


def tongue_gauge(lip: Inches, from_end: Inches) -> Inches:
    """From the outside face of the front to the tongue.

    Rule: lip + from_end

    Args:
        lip: what of the front covers the end of the side [in]
        from_end: from the end of the side to its groove [in]

    Returns:
        The setting of the gauge [in]

    Source: geometry of the joint.
    """
    return lip + from_end


def front_taken_off(side: Inches, reach: Inches, lip: Inches) -> Inches:
    """By how much the front is shorter than the box is wide, for both ends together.

    Rule: 2 * (side - reach) without a lip; 0 with one

    Args:
        side: thickness of the side [in]
        reach: how far the tongue goes into it [in]
        lip: what of the front covers the end of the side; 0 for none [in]

    Returns:
        What is taken off the box's width for the length of the front, tongues included [in]

    Source: geometry of the joint.
    """
    return 0.0 if lip > TOLERANCE else 2 * (side - reach)


def lock_rabbet(joint: LockRabbet, ledger: Ledger = UNKEPT) -> LockRabbetJoint:
    """A lock rabbet, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    return LockRabbetJoint(
        given=joint,
        tongue_gauge=ledger.take("tongue_gauge", tongue_gauge, lip=joint.lip, from_end=joint.from_end),
        front_taken_off=ledger.take(
            "front_taken_off", front_taken_off, side=joint.side, reach=joint.reach, lip=joint.lip
        ),
        side_taken_off=joint.lip,
        findings=tuple(_findings(joint)),
    )


def _findings(joint: LockRabbet) -> Iterator[Finding]:
    yield short_grain_at_the_end(joint)
    yield end_against_the_side(joint)
    yield groove_depth(joint)
    yield tongue_thickness(joint)
    yield cutter_for_the_groove(joint)
    if joint.has_lip:
        yield lip_thickness(joint)


def _lengths(joint: LockRabbetJoint) -> Iterator[Setting]:
    given = joint.given
    off, short = joint.front_taken_off, joint.side_taken_off
    if given.box_width is not None:
        yield Setting(
            name="front_length",
            label="Front length",
            value=given.box_width - off,
            note="as long as the box is wide" if given.has_lip else "from tip to tip of the tongues",
            wrong=None if given.has_lip else given.box_width - 2 * given.side,
        )
    else:
        yield Setting(
            name="front_taken_off",
            label="Taken off the front",
            value=off,
            note="the front is as long as the box is wide"
            if given.has_lip
            else "of the width of the box, for both ends; tongues included",
            wrong=None if given.has_lip else 2 * given.side,
        )
    if given.drawer_depth is not None:
        yield Setting(
            name="side_length",
            label="Side length",
            value=given.drawer_depth - short,
            note="to the lip; less what the joint at the rear takes"
            if given.has_lip
            else "to the face of the front; less what the joint at the rear takes",
            wrong=given.drawer_depth - given.front,
        )
    elif given.has_lip:
        yield Setting(
            name="side_taken_off",
            label="Taken off the side",
            value=short,
            note="of the depth of the drawer, for the lip",
            wrong=given.front,
        )


def _groove_settings(given: LockRabbet) -> Iterator[Setting]:
    far = given.from_end + given.tongue
    yield Setting(
        name="cutter",
        label="Cutter",
        value=given.tongue,
        note="as wide as the tongue is thick, for the groove",
    )
    yield Setting(
        name="fence",
        label="Fence to the groove",
        value=given.from_end,
        note="on the inside face of the side, from its end to the near wall",
        wrong=far,
    )
    yield Setting(
        name="groove_depth", label="Groove depth", value=given.reach, note="into the inside face of the side"
    )
    if not given.has_lip:
        yield Setting(
            name="groove_stop",
            label="Stop for the bottom's groove",
            value=far,
            note=say(
                "from the end of the side, or as far as {}: it ends in the tongue's groove and does not show",
                given.from_end,
            ),
        )


def _tongue_settings(joint: LockRabbetJoint) -> Iterator[Setting]:
    given = joint.given
    if given.has_lip:
        yield Setting(
            name="lip",
            label="Gauge for the lip",
            value=given.lip,
            note="on the ends and edges of the front, from its outside face",
            tool=Tool.GAUGE,
        )
    yield Setting(
        name="tongue_gauge",
        label="Gauge for the tongue",
        value=joint.tongue_gauge,
        note="on the ends and edges of the front, from its outside face",
        wrong=given.from_end if given.has_lip else None,
        tool=Tool.GAUGE,
    )
    if given.shoulder > TOLERANCE:
        yield Setting(
            name="shoulder",
            label="Gauge for the shoulder",
            value=given.shoulder,
            note="on the ends and edges of the front, from its inside face",
            tool=Tool.GAUGE,
        )
    if given.has_lip:
        yield Setting(
            name="slot_depth",
            label="Slot depth",
            value=given.side,
            note="into the end of the front, behind the lip: the thickness of the side",
        )
        yield Setting(
            name="tongue_cut",
            label="Cut off the tongue",
            value=given.side - given.reach,
            note="from the end of the front, on its inside face",
            wrong=given.reach,
        )
    else:
        yield Setting(
            name="rabbet_width",
            label="Gauge for the length of the tongue",
            value=given.reach,
            note="on the outside face of the front, from its end",
            wrong=given.side,
            tool=Tool.GAUGE,
        )
    yield Setting(
        name="tongue",
        label="Tongue",
        value=given.tongue,
        note="planed until it goes into its groove by hand",
    )


def _chosen_lip() -> Chosen:
    return Chosen(
        name="lip",
        value=0.0,
        measure=Measure.LENGTH,
        why="Without a lip one cut makes the tongue, and the front lies between the ends of the sides.",
        source="common practice",
    )


def _chosen_tongue(side: Inches, room: Inches, rack: Rack) -> Chosen:
    return Chosen(
        name="tongue",
        value=usual_tongue(side, room, rack.cutters),
        measure=Measure.LENGTH,
        why=say(
            "The widest cutter up to half of the {} side, and up to what leaves the end of the side long "
            "enough not to break.",
            side,
        ),
        source=LIMITS.end_least.source,
    )


def _chosen_reach(side: Inches) -> Chosen:
    return Chosen(
        name="reach",
        value=usual_reach(side),
        measure=Measure.LENGTH,
        why=say("Half of the {} side, rounded down to {:bare}.", side, LIMITS.size_step.value),
        source=LIMITS.reach_part.source,
    )


def _chosen_from_end(room: Inches, tongue: Inches) -> Chosen:
    return Chosen(
        name="from_end",
        value=room - tongue,
        measure=Measure.LENGTH,
        why="With the tongue at the inside face of the front, the end of the side is as long as it can be.",
        source="geometry of the joint",
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A lock rabbet from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    front, side = take.number("front"), take.number("side")
    lip = take.or_choose("lip", _chosen_lip)
    room = front - lip
    tongue = take.or_choose("tongue", _chosen_tongue, side, room, rack)
    joint = LockRabbet(
        height=take.number("height"),
        front=front,
        side=side,
        lip=lip,
        tongue=tongue,
        reach=take.or_choose("reach", _chosen_reach, side),
        from_end=take.or_choose("from_end", _chosen_from_end, room, tongue),
        box_width=take.optional("box_width"),
        drawer_depth=take.optional("drawer_depth"),
        rack=rack,
    )
    return Solved(joint=lock_rabbet(joint, ledger), chosen=take.chosen)


FIELDS = fields("lock_rabbet")

KIND = JointKind(
    name="lock-rabbet",
    title="Lock rabbet of a side and a front",
    fields=FIELDS,
    solve=_solve,
)
