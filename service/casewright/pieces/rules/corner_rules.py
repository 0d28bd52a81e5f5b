"""The arithmetic of corners and dividers of a case: lengths by the joint, and room for the seasons."""

from math import ceil

from casewright.joinery.lap import lap_needed
from casewright.measure.rounding import TOLERANCE, down_to, floor64, up_to
from casewright.measure.units import Count, Inches, Percent, PerPercent


def let_in_length(width: Inches, side: Inches, reach: Inches) -> Inches:
    """The length of a rail, top or bottom that is let into both sides: housed, tenoned, or not at all.

    Rule: width - 2 × side + 2 × reach

    Args:
        width: outside width of the case [in]
        side: thickness of a side [in]
        reach: how far it reaches into each side; 0 where it butts against them [in]

    Returns:
        The length over both ends [in]

    Source: geometry of the case.
    """
    return width - 2 * side + 2 * reach


def free_depth(depth: Inches, growth: Inches) -> Inches:
    """The depth of a solid board between sides that do not move with it: it keeps room to grow at the rear.

    Rule: depth - growth rounded up to 1/16

    Args:
        depth: depth of the opening [in]
        growth: how much the board grows from front to back when wettest [in]

    Returns:
        The depth now [in]

    Source: common practice.
    """
    return depth - up_to(growth, 1 / 16)


def dust_depth(
    clear: Inches,
    groove: Inches,
    least: Inches,
    closing: Inches,
) -> Inches:
    """A dust panel from front to back: the rails come nearer when solid sides shrink.

    Rule: clear + 2 × groove - 2 × least - closing, down to 1/64

    Args:
        clear: between front and rear rail [in]
        groove: depth of the groove in each [in]
        least: play that is left at each edge when driest [in]
        closing: how much nearer the rails come when driest [in]

    Returns:
        The size now [in]

    Source: common practice; the movement by the Wood Handbook, FPL-GTR-282 (2021), chapter 13.
    """
    return floor64(clear + 2 * groove - 2 * least - closing)


def dust_held(groove: Inches, play: Inches, opening: Inches) -> Inches:
    """How far a dust panel still reaches into front and rear groove when the rails stand furthest apart.

    Rule: groove - play - opening / 2

    Args:
        groove: depth of the groove [in]
        play: play at each edge now [in]
        opening: how much further apart the rails stand when wettest [in]

    Returns:
        The reach [in]

    Source: geometry of the frame.
    """
    return groove - play - opening / 2


def moves_apart(
    board: Inches, board_moves: PerPercent, side: Inches, side_moves: PerPercent, change: Percent
) -> Inches:
    """How far a board and the sides that hold it move apart from front to back.

    Rule: |board × board_moves - side × side_moves| × change

    Args:
        board: size of the board across its grain [in]
        board_moves: its movement coefficient; 0 for plywood [1 per % moisture]
        side: what of the side's depth lies across the grain: all of a solid one, the stiles of a frame [in]
        side_moves: movement coefficient of the side [1 per % moisture]
        change: how far the moisture goes from now [%]

    Returns:
        The difference, either way [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return abs(board * board_moves - side * side_moves) * change


def fastenings(width: Inches, edge: Inches, spacing: Inches) -> Count:
    """How many screws, dowels or tenons stand along a joint.

    Rule: (width - 2 × edge) / spacing, rounded up, and one; never fewer than two

    Args:
        width: length of the joint [in]
        edge: from each edge to the first [in]
        spacing: the greatest distance between two [in]

    Returns:
        How many

    Source: common practice.
    """
    return max(2, ceil((width - 2 * edge) / spacing - TOLERANCE) + 1)


def thinner_housing(side: Inches) -> Inches:
    """The depth of a divider's housing in a thin side, where nothing else is said.

    Rule: side / 3, down to 1/16

    Args:
        side: thickness of the side [in]

    Returns:
        The depth [in]

    Source: common practice: no deeper than a third of the wood.
    """
    return down_to(side / 3, 1 / 16) or side / 3


def lap_for_board(board: Inches, side: Inches) -> Inches:
    """The lap that a case side keeps before the tails of so thick a board.

    Rule: lap_needed for the board, but no more than half of the side

    Args:
        board: thickness of the board with the tails [in]
        side: thickness of the case side [in]

    Returns:
        The lap [in]

    Source: the lap index, with limits from shop experience.
    """
    return min(lap_needed(board), side / 2)
