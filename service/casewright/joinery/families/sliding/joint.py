"""The sliding dovetail of a divider into a case side.

The divider's end is one tail as long as the joint, and the side has its socket. A long joint narrows towards
the front, so that it slides freely until it is nearly home.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.joinery.checks import slope_limit
from casewright.joinery.chisels import Rack
from casewright.joinery.defaults import USUAL
from casewright.joinery.families.sliding.checks import (
    depth_that_holds,
    neck_strength,
    shoulder_bears,
    socket_depth,
    wider_neck,
    wood_behind_socket,
)
from casewright.joinery.families.sliding.limits import SLIDING
from casewright.joinery.families.sliding.rules import (
    divider_over_tails,
    mouth_walls,
    tail_neck,
    tail_tip,
    taper,
    usual_shoulder,
    usual_socket_depth,
    wood_left,
)
from casewright.joinery.families.sliding.shape import sliding_shape
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
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sizes import refuse_below_zero, refuse_no_dovetail, refuse_unless_above_zero
from casewright.joinery.solid import Shape
from casewright.joinery.spacing import TOLERANCE, bevel_degrees
from casewright.joinery.stopped import stop_before_the_front
from casewright.measure.findings import Finding
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.remembering import remembered
from casewright.measure.saying import Words, say
from casewright.measure.units import Degrees, Inches, Number

RUNS_THROUGH = "The socket runs through, and shows at the front edge."


@dataclass(frozen=True, slots=True, kw_only=True)
class Sliding:
    """A sliding dovetail as it is asked for.

    Attributes:
        divider: thickness of the divider [in]
        case_side: thickness of the case side [in]
        depth: how deep the socket is, which is how far the tail reaches into the side [in]
        shoulder: what is cut off each face of the divider at the tail's tip [in]
        slope: how far along for one across, 6 for 1:6
        length: depth of the divider from front to back; 0 when it is not known [in]
        stop: how far back of the front edge the socket stops; 0 where it runs through [in]
        inside_width: between the case sides; None when it is not known [in]
        top_edge: upper face of the divider above the lower end of the case side; None for no place [in]
        limits: what the joint is held to
        mark: code of the joint, for its findings
    """

    divider: Inches
    case_side: Inches
    depth: Inches
    shoulder: Inches = USUAL.sliding_shoulder.value
    slope: Number = USUAL.sliding_slope.value
    length: Inches = 0.0
    stop: Inches = 0.0
    inside_width: Inches | None = None
    top_edge: Inches | None = None
    limits: Limits = LIMITS
    mark: str = ""

    def __post_init__(self) -> None:
        refuse_unless_above_zero(divider=self.divider, case_side=self.case_side, depth=self.depth)
        refuse_below_zero(shoulder=self.shoulder, length=self.length, stop=self.stop)
        given = {"inside_width": self.inside_width, "top_edge": self.top_edge}
        refuse_unless_above_zero(**{name: size for name, size in given.items() if size is not None})
        refuse_no_dovetail(self.slope, "1:6 is usual for a sliding dovetail")
        if self.depth >= self.case_side:
            raise ValueError(
                say(
                    "A socket {} deep goes through the case side of {:bare}; make it {:bare}.",
                    self.depth,
                    self.case_side,
                    usual_socket_depth(self.case_side),
                )
            )
        if self.length and self.stop >= self.length:
            raise CannotBeLaidOut(
                say(
                    "A socket that stops {} back has nothing left of a divider {} from front to back; "
                    "stop it {:bare} back, or run it through.",
                    self.stop,
                    self.length,
                    min(SLIDING.stop.value, self.length / 2),
                )
            )
        if self.top_edge is not None and self.top_edge < self.divider:
            raise CannotBeLaidOut(
                say(
                    "A divider of {} with its upper face at {} runs off the end of the case side; "
                    "put its upper face at {:up} or higher.",
                    self.divider,
                    self.top_edge,
                    self.divider,
                )
            )

    @property
    def is_stopped(self) -> bool:
        """Whether the socket ends before the front edge."""
        return self.stop > TOLERANCE


@dataclass(frozen=True, slots=True, kw_only=True)
class SlidingJoint:
    """A sliding dovetail, worked out.

    Attributes:
        given: what was asked for
        tip: the tail at its widest, at the end of the divider [in]
        neck: the tail at its shoulders [in]
        socket_mouth: the socket at the face of the case side, which is the neck [in]
        socket_floor: the socket at its floor, which is the tip [in]
        wood_left: what is left of the case side behind the socket [in]
        over_tails: length of the divider over both tails; None where the inside width is not known [in]
        walls: lower and upper wall of the socket at its mouth, above the lower end of the case side; None for
            no place [in]
        taper: how much narrower the joint is at the end that goes in last; 0 for a short one [in]
        bevel_degrees: angle of the tail's cheeks from square to the end [degree]
        findings: every check that was carried out, passes too
    """

    given: Sliding
    tip: Inches
    neck: Inches
    socket_mouth: Inches
    socket_floor: Inches
    wood_left: Inches
    over_tails: Inches | None
    walls: tuple[Inches, Inches] | None
    taper: Inches
    bevel_degrees: Degrees
    findings: tuple[Finding, ...]

    @property
    def settings(self) -> tuple[Setting, ...]:
        """The numbers that a card prints, in the order of work: the length, the socket, then the tail."""
        return (*_length(self), *_walls(self), *_socket(self), *_tail(self), *_notch(self.given))

    @property
    def shape(self) -> Shape:
        """The joint in space; its taper, a 64th or two, is left out."""
        given = self.given
        return sliding_shape(
            given.divider, given.case_side, given.depth, self.tip, self.neck, given.length, given.stop
        )


@remembered
def sliding(joint: Sliding, ledger: Ledger = UNKEPT) -> SlidingJoint:
    """A sliding dovetail, worked out: tail, socket, taper and checks.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the shoulders and the slope leave the tail no neck.

    Source: geometry of the joint.
    """
    tip = ledger.take("tip", tail_tip, divider=joint.divider, shoulder=joint.shoulder)
    neck = ledger.take("neck", tail_neck, tip=tip, depth=joint.depth, slope=joint.slope)
    if neck <= TOLERANCE:
        raise CannotBeLaidOut(_what_would_work(joint, tip))
    left = ledger.take("wood_left", wood_left, case_side=joint.case_side, depth=joint.depth)
    limits, mark = joint.limits, joint.mark
    return SlidingJoint(
        given=joint,
        tip=tip,
        neck=neck,
        socket_mouth=neck,
        socket_floor=tip,
        wood_left=left,
        over_tails=None
        if joint.inside_width is None
        else ledger.take("over_tails", divider_over_tails, inside=joint.inside_width, depth=joint.depth),
        walls=None
        if joint.top_edge is None
        else ledger.take("walls", mouth_walls, top_edge=joint.top_edge, divider=joint.divider, neck=neck),
        taper=ledger.take("taper", taper, length=max(0.0, joint.length - joint.stop)),
        bevel_degrees=ledger.take("bevel", bevel_degrees, slope=joint.slope),
        findings=(
            socket_depth(joint.depth, joint.case_side, limits, mark),
            wood_behind_socket(left, joint.depth, joint.case_side, limits, mark),
            depth_that_holds(joint.depth, joint.case_side, limits, mark),
            shoulder_bears(joint.shoulder, mark),
            neck_strength(neck, joint.divider, joint.shoulder, joint.depth, joint.slope, mark),
            slope_limit(joint.slope, limits, mark),
            stop_before_the_front(
                "socket", joint.stop, SLIDING.stop_least, SLIDING.stop.value, RUNS_THROUGH, mark
            ),
        ),
    )


def _what_would_work(joint: Sliding, tip: Inches) -> Words:
    left = "tail" if tip <= TOLERANCE else f"neck, at 1:{joint.slope:g},"
    said = say("With shoulders of {} a divider of {} has no {} left.", joint.shoulder, joint.divider, left)
    return say("{} {}", said, wider_neck(joint.divider, joint.shoulder, joint.depth, joint.slope))


def _length(joint: SlidingJoint) -> Iterator[Setting]:
    if joint.over_tails is not None:
        yield Setting(
            name="divider_length",
            label="Divider length",
            value=joint.over_tails,
            note="over both tails, from the floor of one socket to that of the other",
            wrong=joint.given.inside_width,
        )
    else:
        yield Setting(
            name="added",
            label="Added to the length",
            value=2 * joint.given.depth,
            note="to the width between the case sides, for both tails",
            wrong=joint.given.depth,
        )


def _walls(joint: SlidingJoint) -> Iterator[Setting]:
    top = joint.given.top_edge
    if joint.walls is None or top is None:
        return
    lower, upper = joint.walls
    yield Setting(
        name="lower_wall",
        label="Lower wall",
        value=lower,
        note="at the mouth, from the lower end of the case side; not the divider's lower face",
        wrong=top - joint.given.divider,
    )
    yield Setting(
        name="upper_wall",
        label="Upper wall",
        value=upper,
        note="at the mouth, from the same end; not the story stick's mark",
        wrong=top,
    )


def _socket(joint: SlidingJoint) -> Iterator[Setting]:
    given = joint.given
    yield Setting(name="socket_depth", label="Socket depth", value=given.depth, note="into the case side")
    yield Setting(
        name="socket_mouth", label="Socket mouth", value=joint.socket_mouth, note="at the face of the side"
    )
    yield Setting(name="socket_floor", label="Socket floor", value=joint.socket_floor, note="at the bottom")
    if given.is_stopped:
        yield Setting(
            name="stop",
            label="Socket stops",
            value=given.stop,
            note="back of the front edge of the case side; the divider goes in from the back",
        )
        if given.length:
            yield Setting(
                name="socket_length",
                label="Socket length",
                value=given.length - given.stop,
                note="from the stop to the rear end of the divider",
                wrong=given.length,
            )
    yield Setting(name="slope", label="Slope", value=given.slope, measure=Measure.SLOPE)
    yield Setting(name="bevel", label="Bevel", value=joint.bevel_degrees, measure=Measure.DEGREES)


def _tail(joint: SlidingJoint) -> Iterator[Setting]:
    shoulder = joint.given.shoulder
    yield Setting(name="shoulder", label="Shoulder", value=shoulder, note="off each face of the divider")
    yield Setting(name="tip", label="Tail at its tip", value=joint.tip, note="at the divider's end")
    yield Setting(name="neck", label="Tail at its neck", value=joint.neck, note="at the shoulders")
    yield Setting(name="wood_left", label="Left of the side", value=joint.wood_left, note="behind the socket")
    if joint.taper:
        yield Setting(name="taper", label="Taper", value=joint.taper, note="narrower towards the front")


def _notch(given: Sliding) -> Iterator[Setting]:
    if not given.is_stopped:
        return
    yield Setting(
        name="notch_in",
        label="Notch from the end",
        value=given.depth,
        note="the tail is cut away at the divider's front corner",
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
        value=usual_socket_depth(case_side),
        measure=Measure.LENGTH,
        why=say(
            "A third of the {} case side, rounded down to {:bare}.", case_side, USUAL.sliding_depth_step.value
        ),
        source=LIMITS.sliding_depth_part.source,
    )


def _chosen_shoulder(divider: Inches, depth: Inches, slope: Number) -> Chosen:
    habit = USUAL.sliding_shoulder
    value = usual_shoulder(divider, depth, slope)
    why = say("{} off each face is usual.", habit.value)
    if value < habit.value:
        why = say("{} off each face leaves a tail of {} its neck.", value, divider)
    return Chosen(name="shoulder", value=value, measure=Measure.LENGTH, why=why, source=habit.source)


def _chosen_slope() -> Chosen:
    habit = USUAL.sliding_slope
    why = f"1:{habit.value:g} is usual for a sliding dovetail."
    return Chosen(name="slope", value=habit.value, measure=Measure.SLOPE, why=why, source=habit.source)


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A sliding dovetail from plain numbers; whatever was left out is chosen."""
    take = Choosing(values, ledger, FIELDS)
    case_side, divider = take.number("case_side"), take.number("divider")
    depth = take.or_choose("depth", _chosen_depth, case_side)
    slope = take.or_choose("slope", _chosen_slope)
    joint = Sliding(
        divider=divider,
        case_side=case_side,
        depth=depth,
        shoulder=take.or_choose("shoulder", _chosen_shoulder, divider, depth, slope),
        slope=slope,
        length=take.optional("length") or 0.0,
        stop=take.optional("stop") or 0.0,
        inside_width=take.optional("inside_width"),
        top_edge=take.optional("top_edge"),
    )
    return Solved(joint=sliding(joint, ledger), chosen=take.chosen)


FIELDS = fields("sliding")

KIND = JointKind(
    name="sliding",
    title="Sliding dovetail of a divider into a case side",
    fields=FIELDS,
    solve=_solve,
)
