"""What would make a piece stand as it should: a shorter travel, weight at the back, feet further forward."""

import math

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import floor64
from casewright.measure.units import Degrees, Inches, InchPounds, Number, Pounds
from casewright.stability.masses import leaned, moment
from casewright.stability.tipping import Situation, TipCase, moved_out, tip_case

BEFORE_REAR = 1.0
"""An added weight has its centre so far before the rear edge of the base (common practice) [in]."""


def lacking_moment(holding: InchPounds, tipping: InchPounds, target: Number) -> InchPounds:
    """How much more would have to hold.

    Rule: target * tipping - holding

    Args:
        holding: the moments that hold [in-lb]
        tipping: the moments that tip [in-lb]
        target: the factor wanted [dimensionless]

    Returns:
        The moment; zero where enough holds already [in-lb]

    Source: statics.
    """
    return max(0.0, target * tipping - holding)


def ballast(case: TipCase, x: Inches, target: Number, z: Inches = 0.0) -> Pounds:
    """The weight that would have to be added to the case, low and at the back.

    Rule: lacking_moment / leaned(x, z, tilt)

    Args:
        case: the situation, worked out
        x: where the weight would sit, behind the pivot [in]
        target: the factor wanted [dimensionless]
        z: how high it would sit [in]

    Returns:
        The weight; zero where none is needed [lb]

    Raises:
        ValueError: the place is not behind the pivot, where no weight holds.

    Source: statics.
    """
    arm = leaned(x, z, case.situation.tilt)
    if arm <= 0:
        raise ValueError("Weight holds only behind the front feet; choose a place further back.")
    return lacking_moment(case.holding, case.tipping, target) / arm


def feet_forward(case: TipCase, target: Number) -> Inches:
    """How far the front feet would have to come forward.

    Rule: lacking_moment / (standing weight + target * moved weight) / cos(tilt); where the moved weights come
        to lie behind the feet by that, and hold, (lacking_moment - (target - 1) * what they tipped) /
        (standing weight + moved weight) / cos(tilt)

    Args:
        case: the situation, worked out
        target: the factor wanted [dimensionless]

    Returns:
        The distance; zero where they stand far enough [in]

    Raises:
        ValueError: nothing has any weight.

    Source: statics: every weight comes to lie that much further behind the pivot.
    """
    situation = case.situation
    standing = math.fsum(mass.weight for mass in situation.standing)
    moved = math.fsum(one.mass.weight for one in situation.moving)
    if standing + moved <= 0:
        raise ValueError("Nothing of this piece has any weight; give the masses first.")
    slope = math.cos(math.radians(situation.tilt))
    lacking = lacking_moment(case.holding, case.tipping, target)
    distance = lacking / ((standing + target * moved) * slope)
    out = max(0.0, -moved_out(situation.moving, situation.tilt))
    if moved * slope * distance <= out:
        return distance
    return max(0.0, lacking - (target - 1) * out) / ((standing + moved) * slope)


def deeper_body(case: TipCase, depth: Inches, target: Number) -> Inches:
    """How much deeper the body would have to be, with drawers that open no further than now.

    Rule: lacking_moment / (case weight * share) / cos(tilt); share = min(1/2, case centre / depth of support)

    Args:
        case: the situation, worked out; the case stands first in it
        depth: from the front feet to the rear ones [in]
        target: the factor wanted [dimensionless]

    Returns:
        The depth to add; zero where none is needed [in]

    Raises:
        ValueError: the case has no weight behind its front feet.

    Source: statics: the case's centre goes back by its share of what is added; the weight of the wood that
        is added is not counted, and neither is that the carpet tilts a deeper piece less.
    """
    body = case.situation.standing[0]
    share = body_share(body.x, depth)
    if body.weight <= 0 or share <= 0:
        raise ValueError("The case has no weight behind its front feet; give its masses first.")
    slope = math.cos(math.radians(case.situation.tilt))
    return lacking_moment(case.holding, case.tipping, target) / (body.weight * share * slope)


def body_share(centre: Inches, depth: Inches) -> Number:
    """By which share of an added depth the centre of a case goes back.

    Rule: min(1/2, centre / depth)

    Args:
        centre: of the case, behind the front feet [in]
        depth: from the front feet to the rear ones [in]

    Returns:
        The share, half at the most [dimensionless]

    Source: geometry: a body that is stretched from front to back.
    """
    return min(0.5, centre / depth)


def safe_travel(
    holding: InchPounds,
    closed: InchPounds,
    weight: Pounds,
    target: Number,
    *,
    push: InchPounds = 0.0,
    tilt: Degrees = 0.0,
) -> Inches:
    """The greatest travel at which the piece still stands as safely as it should.

    Rule: (closed + (holding - target * push) / target) / (weight * cos(tilt)), down to 1/64 in; where the
        push alone asks for more than holds, what is lacking is not divided by the target

    Args:
        holding: the moment of what stands: the case, and the drawers that stay shut [in-lb]
        closed: the moment of what moves, while it is still closed [in-lb]
        weight: of what moves [lb]
        target: the factor wanted [dimensionless]
        push: other moments that tip, such as that of an outward push [in-lb]
        tilt: how far the piece leans forward [degree]

    Returns:
        The travel of all that moves, rounded down because it is a limit of safety; 0 where none is safe [in]

    Raises:
        ValueError: nothing moves.

    Source: statics: the factor solved for the travel.
    """
    if weight <= 0:
        raise ValueError("Nothing moves out, so there is no travel to limit; give the drawers their weight.")
    spare = holding - target * push
    reach = closed + (spare / target if spare > 0 else spare)
    return max(0.0, floor64(reach / (weight * math.cos(math.radians(tilt)))))


def travel_in_reach(safe: Inches, longest: Inches) -> Inches:
    """The greatest safe travel, as far as any drawer can come out at all.

    Rule: safe, or longest where that is less

    Args:
        safe: the travel at which the piece still stands as safely as it should [in]
        longest: how far the longest drawer comes out without stops [in]

    Returns:
        The travel [in]

    Source: common practice.
    """
    return min(safe, longest)


def greatest_travel(situation: Situation, target: Number, ledger: Ledger = UNKEPT) -> Inches:
    """The greatest travel of the drawers that are open in a situation.

    Args:
        situation: what is done to the piece
        target: the factor wanted [dimensionless]
        ledger: where the working is kept

    Returns:
        The travel of all of them, rounded down; 0 where none is safe [in]

    Raises:
        ValueError: nothing moves.

    Source: statics.
    """
    stands = tip_case(
        Situation(
            kind=situation.kind,
            about=situation.about,
            standing=situation.standing,
            moving=(),
            tilt=situation.tilt,
            push=situation.push,
        )
    )
    of = f"{situation.kind}.{situation.about}" if situation.about else f"{situation.kind}"
    return ledger.take(
        f"tip.{of}.safe_travel",
        safe_travel,
        holding=stands.holding,
        closed=moment((one.mass for one in situation.moving), situation.tilt),
        weight=math.fsum(one.mass.weight for one in situation.moving),
        target=target,
        push=stands.tipping,
        tilt=situation.tilt,
    )
