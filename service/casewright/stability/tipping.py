"""Does it tip: the moments that hold a piece of furniture against those that tip it, one situation at a time.

Drawers that are open in a situation are one body together with what is in and on them: by its sum it tips or
holds. All else is taken weight by weight.
"""

import math
from dataclasses import dataclass
from enum import StrEnum

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import maker, quickly_made
from casewright.measure.units import Degrees, Inches, InchPounds, Number
from casewright.stability.masses import Mass


class Kind(StrEnum):
    """What is done to the piece."""

    ALL_OPEN = "all open"
    ONE_OPEN = "one open"
    CHILD_LEVEL = "child, level"
    CHILD_CARPET = "child, carpet"
    CHILD_DOOR = "child, door"
    PUSH = "push"


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Moving:
    """A weight that goes with an open drawer.

    Attributes:
        mass: where it is while the drawer is closed
        travel: how far the drawer is open [in]
    """

    mass: Mass
    travel: Inches


new_moving = maker(Moving)
"""Makes a moving weight as `Moving` does, and sooner."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """What stands, what has moved out, how the piece leans and what pushes.

    Attributes:
        kind: what is done to the piece
        about: the drawer that it is done to; empty for all of them
        standing: the case and the closed drawers
        moving: the open drawers, what is in them and what hangs on them
        tilt: how far the piece leans forward [degree]
        push: the moment of an outward push [in-lb]
    """

    kind: Kind
    about: str = ""
    standing: tuple[Mass, ...]
    moving: tuple[Moving, ...]
    tilt: Degrees = 0.0
    push: InchPounds = 0.0


new_situation = maker(Situation)
"""Makes a situation as `Situation` does, and sooner."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class TipCase:
    """A situation, worked out.

    Attributes:
        situation: what was done to the piece
        holding: the moments that hold it [in-lb]
        tipping: the moments that tip it [in-lb]
        factor: holding over tipping; endless where nothing tips it [dimensionless]
    """

    situation: Situation
    holding: InchPounds
    tipping: InchPounds
    factor: Number


new_case = maker(TipCase)
"""Makes a case as `TipCase` does, and sooner: each drawer has two."""


def tipping_factor(holding: InchPounds, tipping: InchPounds) -> Number:
    """How safely a piece stands: above 1 it stays, below 1 it tips.

    Rule: holding / tipping

    Args:
        holding: the moments that hold it [in-lb]
        tipping: the moments that tip it [in-lb]

    Returns:
        The factor; endless where nothing tips it [dimensionless]

    Source: statics; a design screen, not the test of ASTM F2057-23.
    """
    return holding / tipping if tipping > 0 else math.inf


def moved_out(moving: tuple[Moving, ...], tilt: Degrees = 0.0) -> InchPounds:
    """The moment of the open drawers, with what is in and on them.

    Rule: sum of weight * ((x - travel) * cos(tilt) - z * sin(tilt))

    Args:
        moving: the weights that went with the drawers
        tilt: how far the piece leans forward [degree]

    Returns:
        Above zero where they still hold, below where they tip [in-lb]

    Source: statics.
    """
    angle = math.radians(tilt)
    cos, sin = math.cos(angle), math.sin(angle)
    return math.fsum(
        [one.mass.weight * ((one.mass.x - one.travel) * cos - one.mass.z * sin) for one in moving]
    )


def tip_case(situation: Situation, ledger: Ledger = UNKEPT) -> TipCase:
    """A situation worked out: what holds, what tips, and the factor between them.

    Args:
        situation: what is done to the piece
        ledger: where the working is kept

    Returns:
        The moments and their factor.

    Source: statics; a design screen, not the test of ASTM F2057-23.
    """
    name = f"tip.{situation.kind}{'.' if situation.about else ''}{situation.about}"
    moments = parts(situation)
    holding = ledger.take(f"{name}.holding", holding_moment, moments=moments)
    tipping = ledger.take(f"{name}.tipping", tipping_moment, moments=moments, push=situation.push)
    factor = ledger.take(f"{name}.factor", tipping_factor, holding=holding, tipping=tipping)
    return new_case(situation=situation, holding=holding, tipping=tipping, factor=factor)


def holding_moment(moments: tuple[InchPounds, ...]) -> InchPounds:
    """What holds the piece: every standing weight behind the pivot, and the open drawers while they still do.

    Rule: sum of the moments above zero

    Args:
        moments: of each standing weight, and last of the open drawers together [in-lb]

    Returns:
        The moment [in-lb]

    Source: statics.
    """
    return math.fsum([each for each in moments if each > 0])


def tipping_moment(moments: tuple[InchPounds, ...], push: InchPounds) -> InchPounds:
    """What tips the piece: the open drawers, what is before the pivot, and a push.

    Rule: push - sum of the moments below zero

    Args:
        moments: of each standing weight, and last of the open drawers together [in-lb]
        push: the moment of an outward push [in-lb]

    Returns:
        The moment [in-lb]

    Source: statics.
    """
    return push - math.fsum([each for each in moments if each < 0])


def parts(situation: Situation) -> tuple[InchPounds, ...]:
    """The moment of each standing weight, and of the open drawers together.

    Args:
        situation: what is done to the piece

    Returns:
        Above zero for what holds, below for what tips [in-lb]

    Source: statics.
    """
    if not situation.tilt:  # the greater part of a piece's many situations, without the slope of the floor
        standing = [mass.weight * mass.x for mass in situation.standing]
        moving = [one.mass.weight * (one.mass.x - one.travel) for one in situation.moving]
        return (*standing, math.fsum(moving))
    angle = math.radians(situation.tilt)
    cos, sin = math.cos(angle), math.sin(angle)
    # As `moment` of each of them, the angle reckoned once.
    standing = [mass.weight * (mass.x * cos - mass.z * sin) for mass in situation.standing]
    return (*standing, moved_out(situation.moving, situation.tilt))
