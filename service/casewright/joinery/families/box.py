"""The box joint: square fingers all alike, cut by machine against a key, glued on their long-grain faces.

The front begins with a finger at the reference edge, the side with a space. Heights run up from that edge.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from casewright.joinery.chisels import Rack
from casewright.joinery.groove import Groove
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
from casewright.joinery.solid import (
    Axis,
    Board,
    Cut,
    Dimension,
    Marked,
    Shape,
    Strip,
    Stroke,
    block,
    box,
)
from casewright.joinery.sourced import Sourced, sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import near_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxLimits:
    """What a box joint is held to, and its habits. Lengths are in inches.

    Attributes:
        fingers_least: fewer fingers and spaces stop the joint
        play_least: less play is cautioned
        play_most: more play is cautioned
        play: what a space is wider than a finger, where nothing else is said
        cutter_step: cutters come in multiples of this
    """

    fingers_least: Sourced
    play_least: Sourced
    play_most: Sourced
    play: Sourced
    cutter_step: Sourced


LIMITS = BoxLimits(**sourced("box_limits"))
"""The limits of a shop that has set none of its own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box joint as it is asked for.

    Attributes:
        height: height of the boards at the joint [in]
        side: thickness of the side [in]
        front: thickness of the board across [in]
        fingers: fingers and spaces from edge to edge, counted together
        play: how much wider a space is than a finger [in]
        groove: the groove for the bottom, in both boards; None for none
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    height: Inches
    side: Inches
    front: Inches
    fingers: Count
    play: Inches = LIMITS.play.value
    groove: Groove | None = None
    limits: BoxLimits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(height=self.height, side=self.side, front=self.front)
        refuse_below_zero(play=self.play)
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
        if self.play >= self.height / self.fingers:
            raise CannotBeLaidOut(
                say(
                    "A play of {:.3} leaves nothing of a finger of {}; {:.3} is usual.",
                    self.play,
                    self.height / self.fingers,
                    self.limits.play.value,
                )
            )


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
    front_fingers: tuple[tuple[Inches, Inches], ...]
    side_fingers: tuple[tuple[Inches, Inches], ...]
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the cutter and its key, then each board."""
        given = self.given
        count = Measure.COUNT
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
        )

    @property
    def shape(self) -> Shape:
        """The joint in space."""
        return _shape(self)


def usual_fingers(height: Inches, finger: Inches) -> Count:
    """How many fingers and spaces go into a height.

    Rule: height / finger, to the nearest whole number, and at least 2

    Args:
        height: height of the boards at the joint [in]
        finger: width that is aimed at [in]

    Returns:
        Fingers and spaces, counted together [dimensionless]

    Source: geometry of the joint.
    """
    return max(2, int(near_to(height / finger, 1.0)))


def finger_width(height: Inches, fingers: Count) -> Inches:
    """How wide a finger comes out.

    Rule: height / fingers

    Args:
        height: height of the boards at the joint [in]
        fingers: fingers and spaces, counted together [dimensionless]

    Returns:
        The width of each [in]

    Source: geometry of the joint.
    """
    return height / fingers


def box_joint(joint: Box, ledger: Ledger = UNKEPT) -> BoxJoint:
    """A box joint, worked out.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Source: geometry of the joint.
    """
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
    front: tuple[tuple[Inches, Inches], ...],
    side: tuple[tuple[Inches, Inches], ...],
) -> Iterator[Finding]:
    yield enough_fingers(joint)
    yield cutter_for(finger, joint)
    yield play_for_glue(joint)
    if joint.groove:
        yield groove_in_a_finger(joint.groove, front, side, joint)


def enough_fingers(joint: Box) -> Finding:
    """Whether there are fingers enough to hold.

    Args:
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice.
    """
    least = int(joint.limits.fingers_least.value)
    few = joint.fingers < least
    return Finding(
        rule="number of fingers",
        verdict=Verdict.STOP if few else Verdict.PASS,
        message=say("The joint has {:d} fingers and spaces; it needs {:d}.", joint.fingers, least),
        remedy=say("Make the fingers {:down} wide or narrower.", joint.height / least) if few else "",
        about=joint.mark,
        found=joint.fingers,
        needed=least,
        source=joint.limits.fingers_least.source,
    )


def cutter_for(finger: Inches, joint: Box) -> Finding:
    """Whether a cutter is as wide as the finger.

    Args:
        finger: width of a finger [in]
        joint: the joint

    Returns:
        A pass or a stop.

    Source: common practice: what the cutter leaves is the space, so it has to be the finger's width exactly.
    """
    step = joint.limits.cutter_step.value
    near = max(step, near_to(finger, step))
    fits = abs(finger - near) <= TOLERANCE
    return Finding(
        rule="cutter",
        verdict=Verdict.PASS if fits else Verdict.STOP,
        message=say("A finger is {} wide; the nearest cutter is {:bare}.", finger, near),
        remedy=""
        if fits
        else say(
            "Make the boards {} high at the joint, or stack a cutter to {:.4}.",
            near * joint.fingers,
            finger,
        ),
        about=joint.mark,
        found=finger,
        needed=near,
        source=joint.limits.cutter_step.source,
    )


def play_for_glue(joint: Box) -> Finding:
    """Whether the spaces leave room for glue, and no more.

    Args:
        joint: the joint

    Returns:
        A pass or a caution.

    Source: common practice.
    """
    least, most = joint.limits.play_least, joint.limits.play_most
    off = not least.value - TOLERANCE <= joint.play <= most.value + TOLERANCE
    return Finding(
        rule="play for the glue",
        verdict=Verdict.CAUTION if off else Verdict.PASS,
        message=say(
            "A space is {:.4} wider than its finger; {:.3 bare} to {:.3} is usual.",
            joint.play,
            least.value,
            most.value,
        ),
        remedy="Shim or sand the key of the jig until a dry joint goes home by hand." if off else "",
        about=joint.mark,
        found=joint.play,
        needed=min(max(joint.play, least.value), most.value),
        source=least.source if joint.play < least.value else most.source,
    )


def groove_in_a_finger(
    groove: Groove,
    front: tuple[tuple[Inches, Inches], ...],
    side: tuple[tuple[Inches, Inches], ...],
    joint: Box,
) -> Finding:
    """Whether the groove stays within one finger, so that it needs to be stopped in one board only.

    Args:
        groove: the groove
        front: fingers of the front, from where to where [in]
        side: fingers of the side likewise [in]
        joint: the joint

    Returns:
        A pass that says where the groove is stopped, or a stop.

    Source: geometry of the joint: where a board has a finger, its end shows.
    """
    held = {"front": front, "side": side}
    for board, fingers in held.items():
        for low, high in fingers:
            if low - TOLERANCE <= groove.height and groove.top <= high + TOLERANCE:
                return Finding(
                    rule="groove and fingers",
                    verdict=Verdict.PASS,
                    message=say(
                        "The groove lies in a finger of the {}, from {:bare} to {}; stop it short of that "
                        "board's end, and run it through in the other.",
                        board,
                        low,
                        high,
                    ),
                    about=joint.mark,
                    source="geometry of the joint",
                )
    finger = joint.height / joint.fingers
    place = max(0.0, near_to(groove.height / finger, 1.0) * finger)
    moves = groove.width <= finger + TOLERANCE
    return Finding(
        rule="groove and fingers",
        verdict=Verdict.STOP,
        message=say(
            "The groove from {:bare} to {} runs over two fingers and shows in both boards' ends.",
            groove.height,
            groove.top,
        ),
        remedy=say("Put its lower edge at {}, or stop it in both boards.", place)
        if moves
        else say("Make the fingers {:up} wide or wider, or stop it in both boards.", groove.width),
        about=joint.mark,
        source="geometry of the joint",
    )


BEYOND = 2.5
"""How far past the joint a board is drawn, in thicknesses of the thicker one."""


def _shape(joint: BoxJoint) -> Shape:
    given = joint.given
    side, front, height = given.side, given.front, given.height
    beyond = BEYOND * max(side, front)
    ends_x, ends_z = (0.0, side), (0.0, front)
    boards = (
        Board(
            name="front",
            prisms=(
                block((side, side + beyond), (0.0, height), ends_z),
                *(block(ends_x, span, ends_z) for span in joint.front_fingers),
            ),
            apart=(0.0, 0.0, -1.0),
        ),
        Board(
            name="side",
            prisms=(
                block(ends_x, (0.0, height), (front, front + beyond)),
                *(block(ends_x, span, ends_z) for span in joint.side_fingers),
            ),
            apart=(0.0, 0.0, 1.0),
        ),
    )
    first = joint.side_fingers[0]
    cuts = (
        Cut(
            axis=Axis.Y,
            at=(first[0] + first[1]) / 2,
            title="plan, through a finger of the side",
            dimensions=(
                Dimension(name="side", start=0.0, end=side, level=True),
                Dimension(name="front", start=0.0, end=front, level=False, after=False),
            ),
        ),
        Cut(
            axis=Axis.X,
            at=side / 2,
            title="side, cut along its middle",
            dimensions=(
                *(
                    Dimension(name="finger", start=low, end=high, level=False, after=False)
                    for low, high in sorted((*joint.front_fingers, *joint.side_fingers))
                ),
                Dimension(name="height", start=0.0, end=height, level=False),
            ),
        ),
    )
    return Shape(
        boards=boards,
        cuts=cuts,
        engaged=max(side, front),
        filled=(ends_x, (0.0, height), ends_z),
        strips=tuple(_strips(joint)),
    )


def _strips(joint: BoxJoint) -> Iterator[Strip]:
    given = joint.given
    for board, depth, fingers, spaces in (
        ("side", given.front, joint.side_fingers, joint.front_fingers),
        ("front", given.side, joint.front_fingers, joint.side_fingers),
    ):
        baseline = Marked(
            stroke=Stroke.GAUGE, start=(depth, 0.0), end=(depth, given.height), label="baseline"
        )
        edges = sorted({edge for span in fingers for edge in span} - {0.0, given.height})
        yield Strip(
            board=board,
            face="outside face",
            length=depth,
            height=given.height,
            lines=(
                baseline,
                *(Marked(stroke=Stroke.SAW, start=(0.0, edge), end=(depth, edge)) for edge in edges),
            ),
            waste=tuple(box((0.0, depth), span) for span in spaces),
        )


def _chosen_front(side: Inches) -> Chosen:
    return Chosen(
        name="front",
        value=side,
        measure=Measure.LENGTH,
        why="Boards of a box are usually all as thick.",
        source="common practice",
    )


def _chosen_finger(side: Inches, front: Inches) -> Chosen:
    return Chosen(
        name="finger",
        value=min(side, front),
        measure=Measure.LENGTH,
        why="A finger about square looks even and leaves the most glued face for the least cutting.",
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


def _chosen_play() -> Chosen:
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
    fingers = take.optional("fingers")
    if fingers is None:
        finger = take.or_choose("finger", _chosen_finger, side, front)
        fingers = take.or_choose("fingers", _chosen_fingers, height, finger)
    joint = Box(
        height=height,
        side=side,
        front=front,
        fingers=int(fingers),
        play=take.or_choose("play", _chosen_play),
        groove=take.groove(),
    )
    return Solved(joint=box_joint(joint, ledger), chosen=take.chosen)


FIELDS = fields("box")

KIND = JointKind(name="box", title="Box joint of a side and a front", fields=FIELDS, solve=_solve)
