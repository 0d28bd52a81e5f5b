"""What is chosen for a drawer's bottom and its groove where the maker leaves it out, with the reason."""

from casewright.joinery.families.bottom_groove.asked import BOTTOMS, UNDER_THE_BACK, BottomLimits
from casewright.joinery.joint import Chosen, Measure
from casewright.joinery.sourced import Sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import down_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches, Number, PerPercent


def usual_groove_depth(board: Inches, part: Number, habits: BottomLimits = BOTTOMS) -> Inches:
    """How deep a groove goes into a board.

    Rule: groove_depth, or board × part down to a multiple of depth_step where that is less, and at least half
    a step in the thinnest boards

    Args:
        board: thickness of the board [in]
        part: the greatest part of the board that the groove may take [dimensionless]
        habits: the shop's habits

    Returns:
        The depth [in]

    Source: common practice.
    """
    step = habits.depth_step.value
    return max(min(habits.groove_depth.value, down_to(board * part, step)), min(step, board) / 2)


def chosen_back(side: Inches) -> Chosen:
    """The thickness of the back, with the reason.

    Args:
        side: thickness of the sides [in]

    Returns:
        The choice.

    Source: common practice.
    """
    return _chosen("back", side, "A back is as thick as the sides.", "common practice")


def chosen_slip(side: Inches, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The thickness of the slips, 0 for none, with the reason.

    Args:
        side: thickness of the sides [in]
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    habit = habits.slip_for
    if side < habit.value - TOLERANCE:
        why = say("Sides of {} are too thin for a groove that holds; slips carry it.", side)
        return _chosen("slip", habits.slip.value, why, habit.source)
    return _chosen("slip", 0.0, say("Sides of {} carry the groove themselves.", side), habit.source)


def chosen_slip_height(top: Inches, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The height of the slips, with the reason.

    Args:
        top: upper edge of the groove [in]
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    habit = habits.slip_above
    why = say("{} above the groove, which ends at {}.", habit.value, top)
    return _chosen("slip_height", top + habit.value, why, habit.source)


def chosen_groove_height(habits: BottomLimits = BOTTOMS) -> Chosen:
    """The height of the groove, with the reason.

    Args:
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return _usual("groove_height", habits.groove_height)


def chosen_groove_width(habits: BottomLimits = BOTTOMS) -> Chosen:
    """The width of the groove, with the reason.

    Args:
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return _usual("groove_width", habits.groove_width)


def chosen_groove_depth(board: Inches, name: str, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The depth of the groove in the sides or slips, with the reason.

    Args:
        board: thickness of what carries the groove [in]
        name: what that is called
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    depth = usual_groove_depth(board, habits.left_part.value, habits)
    why = say("{}, and no more than half of the {} {}.", habits.groove_depth.value, board, name)
    return _chosen("groove_depth", depth, why, habits.left_part.source)


def chosen_front_depth(front: Inches, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The depth of the groove in the front, with the reason.

    Args:
        front: thickness of the front [in]
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    depth = usual_groove_depth(front, 1 / habits.front_part.value, habits)
    why = say("{}, and no more than a third of the {} front.", habits.groove_depth.value, front)
    return _chosen("front_depth", depth, why, habits.front_part.source)


def chosen_bottom(movement: PerPercent, groove_width: Inches, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The thickness of the bottom, with the reason.

    Args:
        movement: how much the bottom moves across its grain; 0 for plywood [1 per % moisture]
        groove_width: width of the groove [in]
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    if movement == 0.0:
        return _chosen(
            "bottom", groove_width, "Plywood is as thick as its groove is wide.", habits.sheet_off.source
        )
    return _usual("bottom", habits.bottom)


def chosen_play(habits: BottomLimits = BOTTOMS) -> Chosen:
    """The play of the bottom at each side, with the reason.

    Args:
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return _usual("play", habits.play)


def chosen_grooves() -> Chosen:
    """How many boards are grooved, with the reason.

    Returns:
        The choice.

    Source: common practice.
    """
    return Chosen(
        name="grooves",
        value=UNDER_THE_BACK,
        measure=Measure.COUNT,
        why="Slid in under the back, a solid bottom can move, and any bottom can be taken out.",
        source="common practice",
    )


def chosen_over() -> Chosen:
    """How far the bottom reaches past the back, with the reason.

    Returns:
        The choice.

    Source: common practice.
    """
    return _chosen("over", 0.0, "It ends flush with the back.", "common practice")


def chosen_back_gap(habits: BottomLimits = BOTTOMS) -> Chosen:
    """What is free behind the drawer, with the reason.

    Args:
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return _usual("back_gap", habits.back_gap)


def chosen_muntin(inside: Inches, habits: BottomLimits = BOTTOMS) -> Chosen:
    """The width of the muntin, 0 for none, with the reason.

    Args:
        inside: clear width between the sides or slips [in]
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    limit = habits.muntin_over
    if inside > limit.value + TOLERANCE:
        why = say("A bottom {} wide between the sides is over {}.", inside, limit.value)
        return _chosen("muntin", habits.muntin.value, why, limit.source)
    why = say("A bottom {} wide between the sides needs none, up to {}.", inside, limit.value)
    return _chosen("muntin", 0.0, why, limit.source)


def chosen_muntin_thickness(habits: BottomLimits = BOTTOMS) -> Chosen:
    """The thickness of the muntin, with the reason.

    Args:
        habits: the shop's habits

    Returns:
        The choice.

    Source: common practice.
    """
    return _usual("muntin_thickness", habits.muntin_thickness)


def _usual(name: str, habit: Sourced) -> Chosen:
    return _chosen(name, habit.value, say("{} is usual.", habit.value), habit.source)


def _chosen(name: str, value: Inches, why: Words, source: str) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)
