"""What is chosen for a carcase dovetail where nothing is said, with the reason."""

import math

from casewright.joinery.families.carcase.asked import BackRabbet, Carcase, usual_lap_of_a_case
from casewright.joinery.families.carcase.checks import CARCASE, widest_tail
from casewright.joinery.families.carcase.layout import FEWEST, fewest_in_a_carcase, most_in_a_carcase
from casewright.joinery.joint import Chosen, Measure
from casewright.joinery.layout import CannotBeLaidOut
from casewright.joinery.spacing import TOLERANCE, flare
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


def chosen_pin_board(tail_board: Inches) -> Chosen:
    """The thickness of the board with the pins: as that with the tails.

    Args:
        tail_board: thickness of the board with the tails [in]

    Returns:
        The number, with the reason [in]

    Source: common practice.
    """
    return _chosen("pin_board", tail_board, "The boards of a case are usually all as thick.")


def chosen_lap(pin_board: Inches) -> Chosen:
    """The lap of a case.

    Args:
        pin_board: thickness of the board with the pins [in]

    Returns:
        The number, with the reason [in]

    Source: common practice.
    """
    habits = CARCASE
    why = say("A third of the {} pin board, rounded down to {:bare}.", pin_board, habits.lap_step.value)
    return _chosen("lap", usual_lap_of_a_case(pin_board), why, habits.lap_part.source)


def chosen_half_pin() -> Chosen:
    """The half pin at the front edge.

    Returns:
        The number, with the reason [in]

    Source: common practice.
    """
    habit = CARCASE.half_pin
    return _chosen("half_pin", habit.value, say("{} is usual on a case.", habit.value), habit.source)


def chosen_back_half_pin(half_pin: Inches, rabbet: BackRabbet | None) -> Chosen:
    """The half pin at the back edge, which takes the rabbet for the back.

    Args:
        half_pin: half pin at the front edge [in]
        rabbet: the rabbet for the back; None for none

    Returns:
        The number, with the reason [in]

    Source: common practice.
    """
    if rabbet is None or rabbet.width <= half_pin:
        return _chosen("back_half_pin", half_pin, "As at the front edge.")
    why = say("As wide as the rabbet of {}, so that the rabbet lies within it.", rabbet.width)
    return _chosen("back_half_pin", rabbet.width, why, "geometry of the joint")


def chosen_pin() -> Chosen:
    """The pin between two tails.

    Returns:
        The number, with the reason [in]

    Source: common practice.
    """
    habit = CARCASE.pin
    return _chosen("pin", habit.value, say("{} is usual on a case.", habit.value), habit.source)


def chosen_share() -> Chosen:
    """The width of an edge tail as a part of the others.

    Returns:
        The number, with the reason [dimensionless]

    Source: common practice.
    """
    habit = CARCASE.share
    why = "Tails two thirds as wide at the edges hold the board flat where it cups first."
    return Chosen(name="share", value=habit.value, measure=Measure.NUMBER, why=why, source=habit.source)


def chosen_tails(joint: Carcase) -> Chosen:
    """The fewest tails that stay tight in a dry room, as long as those at the edges hold.

    Args:
        joint: what was asked for, but for the number of tails

    Returns:
        The number, with the reason; one or two where the board is too narrow for narrower edge tails.

    Raises:
        CannotBeLaidOut: the board has no room for a tail.

    Source: common practice.
    """
    limits, half_pins = joint.limits, joint.half_pin + joint.back_half_pin
    room, narrowing = joint.width - half_pins, flare(joint.pin_board - joint.lap, joint.slope)
    widest = widest_tail(joint.tail_board, limits)
    least = max(joint.tail_board, limits.neck_least.value)
    most = most_in_a_carcase(room, joint.pin, narrowing, joint.share, least)
    if most < FEWEST:
        return _chosen_even_row(joint, room, least + 2 * narrowing)
    count = min(fewest_in_a_carcase(room, joint.pin, joint.share, widest), most)
    why = say("The fewest whose middle tails are {} wide at most, of {:d} that hold.", widest, most)
    return Chosen(name="tails", value=count, measure=Measure.COUNT, why=why, source=limits.tail_widest.source)


def _chosen_even_row(joint: Carcase, room: Inches, wide: Inches) -> Chosen:
    """One tail or two, where a board is too narrow for any between those at its edges."""
    count = min(math.floor((room + joint.pin) / (wide + joint.pin) + TOLERANCE), FEWEST - 1)
    if count < 1:
        raise CannotBeLaidOut(
            say(
                "A board {} wide has no room for a tail between its half pins; it needs {:up}, or narrower "
                "half pins.",
                joint.width,
                joint.half_pin + joint.back_half_pin + wide,
            )
        )
    why = "The board is too narrow for narrower tails at its edges and one between them."
    return Chosen(name="tails", value=count, measure=Measure.COUNT, why=why, source="geometry of the joint")


def _chosen(name: str, value: Inches, why: Words, source: str = "common practice") -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)
