"""A door on butt hinges: where each one goes on the door and on the case, and the gains for its leaves.

A gain is the shallow recess for the leaf of a hinge. It is gauged from the edge at which the pin lies, and to
half of what the closed hinge is thick, less half of the gap: cut to half of the hinge alone it would leave no
gap. The places on the case are those on the door, raised by what the door stands above its opening's edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.families.hinge.asked import (
    LIMITS,
    Hinged,
    gain_depth,
    hinge_offset,
    hinge_place,
    hinges_by_height,
    lower_end,
    on_the_case,
    usual_leaf,
)
from casewright.joinery.families.hinge.shape import hinge_shape
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
from casewright.joinery.sourced import Sourced
from casewright.measure.comparing import at_least
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeJoint:
    """A door on butt hinges, worked out.

    Attributes:
        given: what was asked for
        on_door: the lower end of each hinge above the lower end of the door, the lowest first [in]
        on_case: the same above the lower edge of the opening [in]
        depth: of a gain [in]
        findings: every check that was carried out, passes too
    """

    given: Hinged
    on_door: tuple[Inches, ...]
    on_case: tuple[Inches, ...]
    depth: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: places, then gauges."""
        return (*_places(self), *_gains(self))

    @property
    def shape(self) -> Shape:
        """The joint in space, at the lowest hinge."""
        return hinge_shape(self.given, self.on_door, self.on_case, self.depth)


@remembered
def hinged(joint: Hinged, ledger: Ledger = UNKEPT) -> HingeJoint:
    """A door on butt hinges, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: common practice of hanging doors.
    """
    take = ledger.take
    on_door, on_case = [], []
    for number in range(1, joint.hinges + 1):
        place = take(
            f"hinge_{number}",
            hinge_place,
            number=number,
            hinges=joint.hinges,
            height=joint.height,
            offset=joint.offset,
            length=joint.length,
        )
        on_door.append(take(f"door_{number}", lower_end, place=place, length=joint.length))
        on_case.append(take(f"case_{number}", on_the_case, lower=on_door[-1], foot=joint.foot))
    depth = take("gauge_depth", gain_depth, closed=joint.closed, gap=joint.gap, boards=joint.boards)
    return HingeJoint(
        given=joint,
        on_door=tuple(on_door),
        on_case=tuple(on_case),
        depth=depth,
        findings=tuple(_findings(joint, depth)),
    )


def _findings(joint: Hinged, depth: Inches) -> Iterator[Finding]:
    limits = joint.limits
    left, least, narrowest = joint.under - joint.leaf, limits.left.value, limits.leaf_least.value
    lies_on = "what the door reaches over" if joint.over else "the door"
    wide = say("Reach {:up} or more over the edge, or be hung otherwise", least + narrowest)
    if not joint.over:
        wide = say("Make the door {:up} thick or thicker", least + narrowest)
    fits = joint.under - least >= narrowest
    yield at_least(
        "wood behind the hinge",
        left,
        least,
        say("Behind the leaf {} of {} is left.", left, lies_on),
        say("Take a hinge with leaves of {:down}.", joint.under - least) if fits else say("{}.", wide),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=limits.left.source,
    )
    yield at_least(
        "leaf of the hinge",
        joint.leaf,
        narrowest,
        say("The leaf of the hinge is {} wide; {:up bare} or more takes its screws.", joint.leaf, narrowest),
        say("Take a hinge with leaves of {:up} or wider.", narrowest) if fits else say("{}.", wide),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=limits.leaf_least.source,
    )
    shallow = limits.depth_least.value
    yield at_least(
        "gain depth",
        depth,
        shallow,
        say("The hinge is let in {}; {:up bare} or more holds its leaf.", depth, shallow),
        say("Leave a gap of {:down} or less.", max(0.0, joint.closed - joint.boards * shallow)),
        about=joint.mark,
        verdict=Verdict.CAUTION,
        source=limits.depth_least.source,
    )


def _places(joint: HingeJoint) -> Iterator[Setting]:
    given = joint.given
    for number, low in enumerate(joint.on_door, start=1):
        high = low + given.length
        yield Setting(
            name=f"door_{number}",
            label=f"Door, hinge {number}",
            value=low,
            note=say(
                "up to {}, from the lower end; its middle at {}; from the upper end {} to {}",
                high,
                low + given.length / 2,
                given.height - high,
                given.height - low,
            ),
        )
    for number, low in enumerate(joint.on_case, start=1):
        yield Setting(
            name=f"case_{number}",
            label=f"Case, hinge {number}",
            value=low,
            note=say("up to {}, from the lower edge of the opening", low + given.length),
            wrong=joint.on_door[number - 1] if given.foot else None,
        )


def _gains(joint: HingeJoint) -> Iterator[Setting]:
    given = joint.given
    if given.over:
        yield Setting(
            name="line",
            label="Line of the door’s edge",
            value=given.over,
            note=f"on the front edge of the {given.hung_on}, outside the edge of the opening",
        )
    yield Setting(
        name="gain_length",
        label="Gain, long",
        value=given.length,
        note="as long as the leaf: knife its ends from the hinge itself",
    )
    yield Setting(
        name="gauge_width",
        label="Gauge, width",
        value=given.leaf,
        note=_gauged_from(given),
        tool=Tool.GAUGE,
    )
    half = given.closed / given.boards
    yield Setting(
        name="gauge_depth",
        label="Gauge, depth",
        value=joint.depth,
        note=_gauged_deep(given),
        wrong=half if given.gap else None,
        tool=Tool.GAUGE,
    )


def _gauged_deep(given: Hinged) -> str:
    """Where the depth of a gain comes from; the gap comes off before it is halved, not after."""
    left = f"what the closed hinge is thick{', less the gap' if given.gap else ''}"
    if given.all_in_door:
        return f"in the door alone: {left}"
    return f"in door and case alike: {left}, and half of that in each"


def _gauged_from(given: Hinged) -> str:
    """From which edges the width of a gain is gauged; the pin lies there."""
    if given.over:
        on_case = "" if given.all_in_door else f"; on the {given.hung_on} inwards from the line of that edge"
        return f"on the back of the door from its hinged edge{on_case}"
    on_case = "" if given.all_in_door else f", and from the front edge of the {given.hung_on}"
    return f"from the face of the door{on_case}"


def _chosen(name: str, held: Sourced, why: Words) -> Chosen:
    return Chosen(name=name, value=held.value, measure=Measure.LENGTH, why=why, source=held.source)


def _chosen_gap(over: Inches) -> Chosen:
    return Chosen(
        name="gap",
        value=0.0 if over else LIMITS.gap.value,
        measure=Measure.LENGTH,
        why="An overlay door lies on the case." if over else "What is usual beside an inset door.",
        source=LIMITS.gap.source,
    )


def _chosen_foot(gap: Inches, over: Inches) -> Chosen:
    return Chosen(
        name="foot",
        value=-over if over else gap,
        measure=Measure.LENGTH,
        why="It reaches as far over the lower edge." if over else "The gap is the same all round.",
        source="common practice",
    )


def _chosen_leaf(under: Inches) -> Chosen:
    return Chosen(
        name="leaf",
        value=usual_leaf(under),
        measure=Measure.LENGTH,
        why=say("It lies on {} and leaves {} of it.", under, under - usual_leaf(under)),
        source=LIMITS.left.source,
    )


def _chosen_hinges(height: Inches) -> Chosen:
    return Chosen(
        name="hinges",
        value=hinges_by_height(height),
        measure=Measure.COUNT,
        why=say("What is usual for a door {} high.", height),
        source=LIMITS.two_up_to.source,
    )


def _chosen_offset(height: Inches, length: Inches) -> Chosen:
    return Chosen(
        name="offset",
        value=max(0.0, hinge_offset(height, length)),
        measure=Measure.LENGTH,
        why="As far from the end as the hinge is long, or less on a low door.",
        source="common practice",
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A door on butt hinges from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    height, thickness = take.number("height"), take.number("thickness")
    over = take.optional("over") or 0.0
    gap = take.or_choose("gap", _chosen_gap, over)
    length = take.or_choose(
        "length", _chosen, "length", LIMITS.length, "What is usual for doors of furniture."
    )
    joint = Hinged(
        height=height,
        thickness=thickness,
        over=over,
        gap=gap,
        foot=take.or_choose("foot", _chosen_foot, gap, over),
        length=length,
        leaf=take.or_choose("leaf", _chosen_leaf, over or thickness),
        closed=take.or_choose("closed", _chosen, "closed", LIMITS.closed, "Two usual leaves."),
        hinges=int(take.or_choose("hinges", _chosen_hinges, height)),
        offset=take.or_choose("offset", _chosen_offset, height, length),
        all_in_door=bool(take.optional("all_in_door")),
    )
    return Solved(joint=hinged(joint, ledger), chosen=take.chosen)


FIELDS = fields("hinge")

KIND = JointKind(
    name="hinge",
    title="Butt hinges of a door, let in",
    fields=FIELDS,
    solve=_solve,
)
