"""The box joint: square fingers all alike, cut by machine against a key, glued on their long-grain faces.

The front begins with a finger at the reference edge, the side with a space. Heights run up from that edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.families.box.checks import (
    LIMITS,
    BoxLimits,
    cutter_for,
    enough_fingers,
    groove_in_a_finger,
    play_for_glue,
)
from casewright.joinery.families.box.shape import Fingers, box_shape
from casewright.joinery.families.box.sizes import finger_width, fingers_by_cutter, usual_finger, usual_fingers
from casewright.joinery.groove import Groove
from casewright.joinery.groove_left import refuse_groove_through, wood_behind_groove
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
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.sizes import refuse_below_zero, refuse_unless_above_zero
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box joint as it is asked for.

    Attributes:
        height: height of the boards at the joint [in]
        side: thickness of the side [in]
        front: thickness of the board across [in]
        fingers: fingers and spaces from edge to edge, counted together
        play: how much wider a space is than a finger [in]
        cutter: width of every finger but the top one, which has what is left; None where all are alike [in]
        groove: the groove for the bottom, in both boards; None for none
        rack: the shop's cutters
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    height: Inches
    side: Inches
    front: Inches
    fingers: Count
    play: Inches = LIMITS.play.value
    cutter: Inches | None = None
    groove: Groove | None = None
    rack: Rack = RACK
    limits: BoxLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(height=self.height, side=self.side, front=self.front)
        refuse_below_zero(play=self.play)
        refuse_groove_through(self.groove, side=self.side, front=self.front)
        if self.fingers < 2:
            raise CannotBeLaidOut(
                say(
                    "{:d} finger makes no joint; a height of {} takes {:d} of {}.",
                    self.fingers,
                    self.height,
                    usual_fingers(self.height, min(self.side, self.front)),
                    min(self.side, self.front),
                )
            )
        if self.play >= self.width:
            raise CannotBeLaidOut(
                say(
                    "A play of {:.3} leaves nothing of a finger of {}; {:.3} is usual.",
                    self.play,
                    self.width,
                    self.limits.play.value,
                )
            )

    @property
    def width(self) -> Inches:
        """Width of a finger [in]."""
        return self.cutter or self.height / self.fingers

    @property
    def top(self) -> Inches:
        """Width of the top finger [in]."""
        return self.height - (self.fingers - 1) * self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxJoint:
    """A box joint, worked out.

    Attributes:
        given: what was asked for
        finger: how wide each finger is, and each space but for the play [in]
        front_fingers: fingers of the front, the lowest first, from where to where [in]
        side_fingers: fingers of the side likewise [in]
        findings: every check that was carried out, passes too
    """

    given: Box
    finger: Inches
    front_fingers: Fingers
    side_fingers: Fingers
    findings: tuple[Finding, ...]

    @property
    def spans(self) -> tuple[tuple[str, Fingers], ...]:
        """Where the fingers of both boards stand, for their tables of positions."""
        return (
            ("Fingers of the front, from the bottom edge", self.front_fingers),
            ("Fingers of the side, from the bottom edge", self.side_fingers),
        )

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the cutter and its key, then each board."""
        given = self.given
        count = Measure.COUNT
        uneven = abs(given.top - self.finger) > TOLERANCE
        top = (
            Setting(
                name="top_finger",
                label="Top finger",
                value=given.top,
                note="what the others leave of the height; cut it last"
                + (", its space by a second pass" if given.top > self.finger else ""),
            ),
        )
        return (
            Setting(name="cutter", label="Cutter", value=self.finger, note="as wide as a finger, exactly"),
            Setting(
                name="key",
                label="Key of the jig",
                value=self.finger - given.play,
                measure=Measure.FINE,
                note=say(
                    "as thick as a finger: {:.3} less than the space that the cutter leaves", given.play
                ),
            ),
            Setting(
                name="key_distance",
                label="From the cutter to the key",
                value=self.finger,
                note="a piece of the key's stuff fits between them with the play to spare",
            ),
            Setting(
                name="side_depth",
                label="Cutter height for the sides",
                value=given.front,
                note="the thickness of the front",
            ),
            Setting(
                name="front_depth",
                label="Cutter height for the fronts",
                value=given.side,
                note="the thickness of the side",
            ),
            Setting(
                name="front_fingers", label="Fingers of a front", value=len(self.front_fingers), measure=count
            ),
            Setting(
                name="side_fingers",
                label="Fingers of a side",
                value=len(self.side_fingers),
                measure=count,
                note="the side begins with a space at the bottom edge",
            ),
            *(top if uneven else ()),
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        given = self.given
        return box_shape(given.height, given.side, given.front, self.side_fingers, self.front_fingers)


def box_joint(joint: Box, ledger: Ledger = UNKEPT) -> BoxJoint:
    """A box joint, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
    if joint.cutter:
        finger = joint.cutter
        edges = [*(joint.cutter * number for number in range(joint.fingers)), joint.height]
    else:
        finger = ledger.take("finger", finger_width, height=joint.height, fingers=joint.fingers)
        # Positions are computed from the reference edge: a rounded width added up would drift.
        edges = [joint.height * number / joint.fingers for number in range(joint.fingers + 1)]
    spans = tuple(pairwise(edges))
    front, side = spans[::2], spans[1::2]
    return BoxJoint(
        given=joint,
        finger=finger,
        front_fingers=front,
        side_fingers=side,
        findings=tuple(_findings(joint, finger, front, side)),
    )


def _findings(
    joint: Box,
    finger: Inches,
    front: Fingers,
    side: Fingers,
) -> Iterator[Finding]:
    limits, mark = joint.limits, joint.mark
    yield enough_fingers(joint.fingers, joint.height, limits, mark)
    yield cutter_for(finger, joint.fingers, joint.rack.cutters, mark)
    yield play_for_glue(joint.play, finger, limits, mark)
    if joint.groove:
        yield groove_in_a_finger(joint.groove, front, side, finger, mark)
        yield wood_behind_groove(joint.side, joint.groove.depth, "side", about=mark)
        yield wood_behind_groove(joint.front, joint.groove.depth, "front", about=mark)


def _chosen_front(side: Inches) -> Chosen:
    return Chosen(
        name="front",
        value=side,
        measure=Measure.LENGTH,
        why="Boards of a box are usually all as thick.",
        source="common practice",
    )


def _chosen_finger(height: Inches, thinner: Inches, cutters: tuple[Inches, ...]) -> Chosen:
    finger = usual_finger(height, thinner, cutters)
    why: Words = "A finger about square looks even and leaves the most glued face for the least cutting."
    if finger in cutters and abs(finger - thinner) > TOLERANCE:
        why = say("Of the cutters that divide {} evenly, {} is the nearest to square.", height, finger)
    return Chosen(
        name="finger",
        value=finger,
        measure=Measure.LENGTH,
        why=why,
        source="common practice",
    )


def _chosen_by_cutter(height: Inches, cutter: Inches) -> Chosen:
    return Chosen(
        name="fingers",
        value=fingers_by_cutter(height, cutter),
        measure=Measure.COUNT,
        why=say("Fingers of {} from the bottom edge up; the top one has what is left of {}.", cutter, height),
        source="common practice",
    )


def _chosen_fingers(height: Inches, finger: Inches) -> Chosen:
    why: Words = say("{} divided by {}, to the nearest whole number.", height, finger)
    return Chosen(
        name="fingers",
        value=usual_fingers(height, finger),
        measure=Measure.COUNT,
        why=why,
        source="geometry of the joint",
    )


def chosen_play() -> Chosen:
    """The play of a joint for which none is given.

    Returns:
        The choice.

    Source: common practice.
    """
    return Chosen(
        name="play",
        value=LIMITS.play.value,
        measure=Measure.FINE,
        why="Enough for the glue, and tight enough to hold.",
        source=LIMITS.play.source,
    )


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A box joint from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    height, side = take.number("height"), take.number("side")
    front = take.or_choose("front", _chosen_front, side)
    cutter, fingers = take.optional("cutter"), take.optional("fingers")
    if cutter is not None:
        fingers = take.or_choose("fingers", _chosen_by_cutter, height, cutter)
    if fingers is None:
        finger = take.or_choose("finger", _chosen_finger, height, min(side, front), rack.cutters)
        fingers = take.or_choose("fingers", _chosen_fingers, height, finger)
    joint = Box(
        height=height,
        side=side,
        front=front,
        fingers=int(fingers),
        play=take.or_choose("play", chosen_play),
        cutter=cutter,
        groove=take.groove(),
        rack=rack,
    )
    return Solved(joint=box_joint(joint, ledger), chosen=take.chosen)


FIELDS = fields("box")

KIND = JointKind(name="box", title="Box joint of a side and a front", fields=FIELDS, solve=_solve)
