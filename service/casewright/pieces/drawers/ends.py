"""What the corners of all drawers share: how the sides end at the front and at the back."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

from casewright.joinery.chisels import Rack
from casewright.joinery.families.housing.asked import usual_depth
from casewright.joinery.joint import Chosen, Values
from casewright.joinery.kinds import solve
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_joints import (
    AsFrontBack,
    BackJoint,
    BoxJoint,
    FrontJoint,
    HalfBlindDovetail,
    HousedBack,
    LockRabbet,
    PinnedRabbet,
    SlidingDovetail,
    ThroughDovetail,
)
from casewright.pieces.drawers.sizes import CannotBuild

NOMINAL = 4.0
"""A height at which a joint's other sizes are worked out; they do not hang on it [in]."""
HALF_BLIND, THROUGH, SLIDING, LOCK_RABBET, BOX, PINNED, HOUSING = (
    *("half-blind", "through", "sliding"),
    *("lock-rabbet", "box", "pinned-rabbet", "housing"),
)
"""The families of the joinery by their names."""
DOVETAILS = (HALF_BLIND, THROUGH)
CHOSEN = "chosen by the joinery's own rule; type your own in the unit file"
Made = TypeVar("Made")


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """How the sides of all drawers end at the front, or at the back.

    Attributes:
        kind: what the unit file calls the joint
        family: the joint's name in the joinery, such as `lock-rabbet`
        lip: what of the front covers the end of the side; 0 for none [in]
        reach: how far a tongue or a housed board goes into the side, or a tail into the front [in]
        set_in: how far the back stands in from the ends of the sides [in]
        finger: width of a finger that is aimed at; None where it is chosen, or there is none [in]
        whole_fingers: whether the box is lowered to a whole number of fingers
        values: the numbers of the joint that all drawers share; None for one that each chooses
        chosen: what was left out and has been chosen
    """

    kind: str
    family: str
    lip: Inches = 0.0
    reach: Inches = 0.0
    set_in: Inches = 0.0
    finger: Inches | None = None
    whole_fingers: bool = False
    values: Values
    chosen: tuple[Chosen, ...] = ()

    @property
    def is_dovetailed(self) -> bool:
        """Whether a row of tails is cut there."""
        return self.family in DOVETAILS

    @property
    def is_between(self) -> bool:
        """Whether the board lies between the sides and reaches into them."""
        return self.family == HOUSING or (self.family == LOCK_RABBET and self.lip == 0)

    @property
    def shows(self) -> bool:
        """Whether the ends of the sides show at the face, unless another board covers them."""
        return self.family in (THROUGH, BOX) or (self.family == LOCK_RABBET and self.lip == 0)


def front_end(joint: FrontJoint, front: Inches, side: Inches, rack: Rack, ledger: Ledger) -> End:
    """How the sides are joined to the board in front of them.

    Args:
        joint: what the maker chose
        front: thickness of that board [in]
        side: thickness of the sides [in]
        rack: the shop's cutters
        ledger: keeps the working

    Returns:
        What all drawers share.

    Raises:
        CannotBuild: the joint has no room in these boards

    Source: the rules of choice of each joint, with their own sources.
    """
    return _refusing("front_joint", lambda: _end(joint, front, side, rack, ledger))


def back_end(
    joint: BackJoint, before: FrontJoint, back: Inches, side: Inches, rack: Rack, ledger: Ledger
) -> End:
    """How the sides are joined to the back.

    Args:
        joint: what the maker chose
        before: how they are joined to the front
        back: thickness of the back [in]
        side: thickness of the sides [in]
        rack: the shop's cutters
        ledger: keeps the working

    Returns:
        What all drawers share.

    Raises:
        CannotBuild: the joint has no room in these boards

    Source: the rules of choice of each joint, with their own sources.
    """
    if isinstance(joint, HousedBack):
        depth = joint.depth or ledger.given("depth", usual_depth(side), CHOSEN, Inches)
        if depth >= side:
            why = "drawers.back_joint.depth: a housing of {} goes through a side of {:bare}; make it {:bare}"
            raise CannotBuild(say(why, depth, side, usual_depth(side)))
        return End(kind=joint.kind, family=HOUSING, reach=depth, set_in=joint.set_in, values={})
    if isinstance(joint, AsFrontBack):
        if isinstance(before, HalfBlindDovetail | SlidingDovetail):
            # A back needs no lap, and is no wider than its box: it is dovetailed through, which a check says.
            return End(kind=ThroughDovetail().kind, family=THROUGH, values={})
        return _refusing("back_joint", lambda: _end(before, back, side, rack, ledger))
    return End(kind=joint.kind, family=THROUGH, values={})


def notch_end(outer: End, back: Inches, side: Inches, rack: Rack, ledger: Ledger) -> End:
    """How the inner sides of a notched drawer are joined to their inner back and to the short backs.

    Args:
        outer: how the drawer's sides are joined to its backs
        back: thickness of the backs and the inner back [in]
        side: thickness of the inner sides [in]
        rack: the shop's cutters
        ledger: keeps the working

    Returns:
        The same joint; rabbets and pins where the backs are housed, as no side runs on beyond these corners.

    Raises:
        CannotBuild: the rabbets have no room in these boards

    Source: common practice.
    """
    if outer.family != HOUSING:
        return outer
    pinned = PinnedRabbet(kind="rabbet and pins")
    return _refusing("back_joint", lambda: _end(pinned, back, side, rack, ledger))


def _refusing(name: str, made: Callable[[], Made]) -> Made:
    try:
        return made()
    except ValueError as error:  # CannotBeLaidOut is one
        raise CannotBuild(say("drawers.{}: {}", name, error.args[0])) from None


def _end(joint: FrontJoint, front: Inches, side: Inches, rack: Rack, ledger: Ledger) -> End:
    match joint:
        case HalfBlindDovetail():
            return End(kind=joint.kind, family=HALF_BLIND, values={})
        case ThroughDovetail():
            return End(kind=joint.kind, family=THROUGH, values={})
        case SlidingDovetail():
            asked = {"depth": joint.depth, "shoulder": joint.shoulder, "slope": joint.slope}
            boards = {"divider": side, "case_side": front}
            made = _chosen(SLIDING, boards, asked, rack, ledger)
            values = {**made.values, "stop": joint.stop}
            return replace(made, kind=joint.kind, reach=made.values["depth"] or 0.0, values=values)
        case LockRabbet():
            return _lock_rabbet(joint, front, side, rack, ledger)
        case BoxJoint():
            return End(
                kind=joint.kind,
                family=BOX,
                finger=joint.finger,
                whole_fingers=joint.height == "whole fingers",
                values={"play": joint.play},
            )
        case PinnedRabbet():
            asked = {"lip": joint.lip, "pin": joint.thick, "pin_length": joint.long}
            boards = {"height": NOMINAL, "front": front, "side": side}
            made = _chosen(PINNED, boards, asked, rack, ledger)
            values = {**made.values, "margin": joint.edge, "spacing": joint.spacing}
            return replace(made, kind=joint.kind, lip=made.values["lip"] or 0.0, values=values)


def _lock_rabbet(joint: LockRabbet, front: Inches, side: Inches, rack: Rack, ledger: Ledger) -> End:
    asked = {"lip": joint.lip, "tongue": joint.tongue, "reach": joint.reach, "from_end": joint.from_end}
    boards = {"height": NOMINAL, "front": front, "side": side}
    made = _chosen(LOCK_RABBET, boards, asked, rack, ledger)
    return replace(made, kind=joint.kind, lip=made.values["lip"] or 0.0, reach=made.values["reach"] or 0.0)


def _chosen(
    family: str,
    boards: Mapping[str, Inches],
    asked: Mapping[str, float | None],
    rack: Rack,
    ledger: Ledger,
) -> End:
    """A joint's numbers that hang on the thickness of its boards alone, chosen where they were left out."""
    solved = solve(family, {**boards, **asked}, rack=rack, ledger=ledger)
    chosen = tuple(each for each in solved.chosen if each.name in asked)
    values = {**asked, **{each.name: each.value for each in chosen}}
    return End(kind=family, family=family, values=values, chosen=chosen)
