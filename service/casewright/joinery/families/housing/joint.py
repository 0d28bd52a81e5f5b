"""The housing of a divider or shelf in a case side, which is a dado: through, or stopped at the front.

The divider goes into the side with its full thickness, so the housing follows what was measured, not what
the board is called. Where it is stopped, the divider's front corner is notched around the wood that is left.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.chisels import Rack
from casewright.joinery.cutters import cutter_at_hand, how_it_is_cut
from casewright.joinery.families.housing.asked import LIMITS, Housing, usual_depth
from casewright.joinery.families.housing.checks import (
    depth_in_the_side,
    depth_that_carries,
    play_for_glue,
    stop_at_the_front,
)
from casewright.joinery.families.housing.shape import housing_shape
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
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.remembering import remembered
from casewright.measure.saying import say
from casewright.measure.units import Inches


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class HousingJoint:
    """A housing, worked out.

    Attributes:
        given: what was asked for
        width: how wide the housing is [in]
        added: by how much the divider is longer than the case is wide inside, for both ends [in]
        wood_left: what is left of the case side behind the housing [in]
        findings: every check that was carried out, passes too
    """

    given: Housing
    width: Inches
    added: Inches
    wood_left: Inches
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the length, the housing, then the notch."""
        return (*_length(self), *_walls(self), *_cutting(self), *_notch(self.given))

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        return housing_shape(
            given.divider,
            given.case_side,
            given.depth,
            given.play,
            given.stop,
            given.length,
            into=given.into,
            housed=given.housed,
        )


def housing_width(divider: Inches, play: Inches) -> Inches:
    """How wide a housing is.

    Rule: divider + play

    Args:
        divider: thickness of the divider as it was measured [in]
        play: room for the glue [in]

    Returns:
        The width between the walls [in]

    Source: common practice.
    """
    return divider + play


def added_to_the_length(depth: Inches) -> Inches:
    """By how much a divider is longer than the case is wide inside.

    Rule: 2 * depth

    Args:
        depth: how deep the housing is in each side [in]

    Returns:
        What is added for both ends together [in]

    Source: geometry of the joint.
    """
    return 2 * depth


def left_behind(case_side: Inches, depth: Inches) -> Inches:
    """What is left of the case side behind the housing.

    Rule: case_side - depth

    Args:
        case_side: thickness of the case side [in]
        depth: how deep the housing is [in]

    Returns:
        The wood that is left [in]

    Source: geometry of the joint.
    """
    return case_side - depth


@remembered
def housing(joint: Housing, ledger: Ledger = UNKEPT) -> HousingJoint:
    """A housing, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    width = ledger.take("width", housing_width, divider=joint.divider, play=joint.play)
    return HousingJoint(
        given=joint,
        width=width,
        added=ledger.take("added", added_to_the_length, depth=joint.depth),
        wood_left=ledger.take("wood_left", left_behind, case_side=joint.case_side, depth=joint.depth),
        findings=(
            depth_in_the_side(joint),
            depth_that_carries(joint),
            stop_at_the_front(joint),
            play_for_glue(joint),
            cutter_at_hand("housing", width, joint.rack.cutters, joint.mark),
        ),
    )


def _length(joint: HousingJoint) -> Iterator[Setting]:
    inside = joint.given.inside_width
    if inside is not None:
        yield Setting(
            name="divider_length",
            label=f"{joint.given.housed.capitalize()} length",
            value=inside + joint.added,
            note="from the floor of one housing to that of the other",
            wrong=inside,
        )
    else:
        yield Setting(
            name="added",
            label="Added to the length",
            value=joint.added,
            note=f"to the width between the {joint.given.into}s, for both ends",
            wrong=joint.given.depth,
        )


def _walls(joint: HousingJoint) -> Iterator[Setting]:
    given = joint.given
    if given.top_edge is None:
        return
    bottom = given.top_edge - given.divider
    yield Setting(
        name="lower_wall",
        label="Lower wall",
        value=bottom,
        note=f"from the lower end of the {given.into}; it carries the divider",
    )
    yield Setting(
        name="upper_wall",
        label="Upper wall",
        value=bottom + joint.width,
        note=say("from the same end: the story stick's mark, and {:.3}", given.play),
    )


def _cutting(joint: HousingJoint) -> Iterator[Setting]:
    given = joint.given
    yield Setting(
        name="width",
        label="Housing width",
        value=joint.width,
        measure=Measure.FINE,
        note=say(
            "the {} as it measures, and {:.3}; {}",
            given.housed,
            given.play,
            how_it_is_cut(joint.width, given.rack.cutters),
        ),
        wrong=given.divider if given.play else None,
    )
    yield Setting(
        name="depth",
        label="Housing depth",
        value=given.depth,
        note=f"into the inside face of the {given.into}",
    )
    if given.is_stopped:
        yield Setting(
            name="stop",
            label="Housing stops",
            value=given.stop,
            note=f"back of the front edge of the {given.into}; square a round end with a chisel",
        )
    if given.length is not None:
        yield Setting(
            name="housing_length",
            label="Housing length",
            value=given.length - given.stop,
            note=f"from the stop to the rear end of the {given.housed}"
            if given.is_stopped
            else "from edge to edge",
            wrong=given.length if given.is_stopped else None,
        )
    yield Setting(
        name="wood_left",
        label=f"Left of the {joint.given.into}",
        value=joint.wood_left,
        note="behind the housing",
    )


def _notch(given: Housing) -> Iterator[Setting]:
    if not given.is_stopped:
        return
    yield Setting(
        name="notch_in",
        label="Notch from the end",
        value=given.depth,
        note=f"at the {given.housed}'s front corner",
    )
    yield Setting(
        name="notch_back",
        label="Notch from the front edge",
        value=given.stop,
        note="so that both are flush in front",
    )


def _chosen_depth(case_side: Inches) -> Chosen:
    return Chosen(
        name="depth",
        value=usual_depth(case_side),
        measure=Measure.LENGTH,
        why=say("A third of the {} case side, rounded down to {:bare}.", case_side, LIMITS.depth_step.value),
        source=LIMITS.depth_part.source,
    )


def _chosen_play() -> Chosen:
    return Chosen(
        name="play",
        value=LIMITS.play.value,
        measure=Measure.FINE,
        why="Room for the glue, and no gap to be seen.",
        source=LIMITS.play.source,
    )


def _chosen_stop() -> Chosen:
    return Chosen(
        name="stop",
        value=LIMITS.stop.value,
        measure=Measure.LENGTH,
        why=say("Stopped {} back, the housing does not show in front.", LIMITS.stop.value),
        source=LIMITS.stop.source,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A housing from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    case_side = take.number("case_side")
    joint = Housing(
        divider=take.number("divider"),
        case_side=case_side,
        depth=take.or_choose("depth", _chosen_depth, case_side),
        play=take.or_choose("play", _chosen_play),
        stop=take.or_choose("stop", _chosen_stop),
        length=take.optional("length"),
        inside_width=take.optional("inside_width"),
        top_edge=take.optional("top_edge"),
        rack=rack,
    )
    return Solved(joint=housing(joint, ledger), chosen=take.chosen)


FIELDS = fields("housing")

KIND = JointKind(
    name="housing",
    title="Housing of a divider in a case side",
    fields=FIELDS,
    solve=_solve,
)
