"""A breadboard end on a slab, or a batten behind it: tight in the middle, in slots on both sides of it.

A slab moves across its grain and an end along its own does not. Both are held, so that the slab stays flat,
and only the middle is fast, so that it moves to both sides alike.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import cutter_at_hand, how_it_is_cut, nearest_cutter
from casewright.joinery.families.batten.asked import (
    LIMITS,
    Batten,
    peg_count,
    slot_length,
    usual_tongue,
    way,
)
from casewright.joinery.families.batten.shape import batten_shape
from casewright.joinery.joint import (
    Choosing,
    Chosen,
    JointKind,
    Measure,
    Measured,
    Setting,
    Solved,
    Values,
    fields,
)
from casewright.joinery.solid import Shape
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.saying import say
from casewright.measure.units import Inches

SCREW_IN_SLAB = 2 / 3
"""How much of the slab a screw goes into (common practice) [of its thickness]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """The slots at one distance on both sides of the middle.

    Attributes:
        distance: of their middles from the middle one [in]
        length: from end to end, along the end or batten [in]
        outward: how far the peg travels in it towards the edge [in]
        inward: how far towards the middle [in]
    """

    distance: Inches
    length: Inches
    outward: Inches
    inward: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenJoint:
    """A breadboard end or a batten, worked out.

    Attributes:
        given: what was asked for
        groove: width of the groove, and thickness of the tongue; 0 for a batten [in]
        slots: from the middle outwards
        findings: every check that was carried out, passes too
    """

    given: Batten
    groove: Inches
    slots: tuple[Slot, ...]
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: tongue and groove, then pegs and slots."""
        return (*_tongue(self), *_pegs(self))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return batten_shape(self.given, self.groove, [(each.distance, each.length) for each in self.slots])


def tongue_thickness(thickness: Inches, rack: Rack) -> Inches:
    """How thick the tongue of a breadboard end is.

    Rule: the cutter nearest to thickness / 3; a third where there is none

    Args:
        thickness: of the slab [in]
        rack: the shop's cutters

    Returns:
        The thickness [in]

    Source: common practice.
    """
    return nearest_cutter(thickness / 3, rack.cutters) or thickness / 3


@remembered
def batten_joint(joint: Batten, ledger: Ledger = UNKEPT) -> BattenJoint:
    """A breadboard end or a batten, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    groove = tongue_thickness(joint.thickness, joint.rack) if joint.is_breadboard else 0.0
    beside = joint.pegs // 2
    step = (joint.length / 2 - joint.limits.margin.value) / beside
    slots = tuple(_slot(joint, number, number * step, ledger) for number in range(1, beside + 1))
    return BattenJoint(
        given=joint, groove=groove, slots=slots, findings=tuple(_findings(joint, groove, slots))
    )


def _slot(joint: Batten, number: int, distance: Inches, ledger: Ledger) -> Slot:
    def moves(name: str, change: Inches) -> Inches:
        return ledger.take(f"{name}_{number}", way, change=change, distance=distance, width=joint.width)

    outward, inward = moves("outward", joint.shrinks), moves("inward", joint.grows)
    length = ledger.take(
        f"slot_{number}",
        slot_length,
        hole=joint.hole,
        outward=outward,
        inward=inward,
        room=joint.limits.room.value,
    )
    return Slot(distance=distance, length=length, outward=outward, inward=inward)


def _findings(joint: Batten, groove: Inches, slots: tuple[Slot, ...]) -> Iterator[Finding]:
    last = slots[-1]
    yield Finding(
        rule="slots of the end",
        verdict=Verdict.PASS,
        message=say(
            "The slab grows {:.3} and shrinks {:.3}; past the outer {} it moves {:.3} and {:.3}.",
            joint.grows,
            joint.shrinks,
            joint.fixing,
            last.inward,
            last.outward,
        ),
        about=joint.mark,
        found=last.length,
        source="geometry: the slab moves to both sides of its middle",
    )
    if not joint.is_breadboard:
        return
    cheek, least = (joint.thickness - groove) / 2, joint.limits.shoulder_least
    yield at_least(
        "cheek beside the groove",
        cheek,
        least.value,
        say("Beside the groove the end is {} thick.", cheek),
        say("Make the tongue {:down} thick or thinner.", joint.thickness - 2 * least.value),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=least.source,
    )
    yield cutter_at_hand("groove", groove, joint.rack.cutters, joint.mark)


def _tongue(joint: BattenJoint) -> Iterator[Setting]:
    given, room = joint.given, joint.given.limits.room.value
    if not given.is_breadboard:
        yield Setting(
            name="screw",
            label="Screw",
            value=given.batten + SCREW_IN_SLAB * given.thickness,
            note="no longer: two thirds of it in the slab; a washer under its head",
            wrong=given.batten + given.thickness,
        )
        return
    yield Setting(
        name="tongue_thickness",
        label="Tongue",
        value=joint.groove,
        note="in the middle of the slab's thickness; cut it to the groove",
    )
    yield Setting(
        name="shoulder",
        label="Shoulders",
        value=(given.thickness - joint.groove) / 2,
        note="off each face of the slab",
    )
    yield Setting(name="tongue_length", label="Tongue, long", value=given.tongue, note="from the shoulders")
    yield Setting(
        name="groove_width",
        label="Groove in the end",
        value=joint.groove,
        note=how_it_is_cut(joint.groove, given.rack.cutters),
    )
    yield Setting(
        name="groove_depth",
        label="Its depth",
        value=given.tongue + room,
        note="a hair deeper than the tongue is long, so that the shoulders close",
        wrong=given.tongue,
    )


def _pegs(joint: BattenJoint) -> Iterator[Setting]:
    given = joint.given
    yield Setting(
        name="middle",
        label=f"Middle {given.fixing}",
        value=given.length / 2,
        note="from either end; this one is tight"
        + (", and glue goes beside it only" if given.is_breadboard else "; no glue anywhere"),
    )
    where = "in the tongue" if given.is_breadboard else "in the batten"
    for number, slot in enumerate(joint.slots, start=1):
        yield Setting(
            name=f"from_middle_{number}",
            label=f"{given.fixing.capitalize()} {number} beside it",
            value=slot.distance,
            note="from the middle one, to both sides",
        )
        yield Setting(
            name=f"slot_{number}",
            label=f"Its slot {where}",
            value=slot.length,
            note=say(
                "{} wide; of its way {:.3} towards the edge and {:.3} towards the middle",
                given.hole,
                slot.outward if given.is_breadboard else slot.inward,
                slot.inward if given.is_breadboard else slot.outward,
            ),
            wrong=given.hole,
        )


def _chosen_tongue(thickness: Inches) -> Chosen:
    return Chosen(
        name="tongue",
        value=usual_tongue(thickness),
        measure=Measure.LENGTH,
        why=say("Half of the slab's {}.", thickness),
        source="common practice",
    )


def _chosen_batten(thickness: Inches) -> Chosen:
    return Chosen(
        name="batten",
        value=thickness,
        measure=Measure.LENGTH,
        why="A batten as thick as its slab.",
        source="common practice",
    )


def _chosen_change(name: str, width: Inches) -> Chosen:
    return Chosen(
        name=name,
        value=width / 100,
        measure=Measure.FINE,
        why="A flatsawn slab in a heated house, roughly; type what your wood and rooms give.",
        source="common practice",
    )


def _chosen_pegs(length: Inches) -> Chosen:
    return Chosen(
        name="pegs",
        value=peg_count(length, LIMITS.margin.value, LIMITS.spacing.value),
        measure=Measure.COUNT,
        why=say("No more than {} apart, with one in the middle.", LIMITS.spacing.value),
        source=LIMITS.spacing.source,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """An end or a batten from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    width, thickness = take.number("width"), take.number("thickness")
    short = take.optional("short") or 0.0
    joint = Batten(
        width=width,
        thickness=thickness,
        end=take.number("end"),
        tongue=take.or_choose("tongue", _chosen_tongue, thickness),
        batten=take.or_choose("batten", _chosen_batten, thickness),
        short=short,
        grows=take.or_choose("grows", _chosen_change, "grows", width),
        shrinks=take.or_choose("shrinks", _chosen_change, "shrinks", width),
        pegs=int(take.or_choose("pegs", _chosen_pegs, width - 2 * short)),
        rack=rack,
    )
    return Solved(joint=batten_joint(joint, ledger), chosen=take.chosen)


FIELDS = fields("batten")

KIND = JointKind(
    name="batten",
    title="Breadboard end or batten across a slab",
    fields=FIELDS,
    solve=_solve,
)
