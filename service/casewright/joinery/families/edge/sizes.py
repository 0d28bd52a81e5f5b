"""The sizes of boards that are lapped, or tongued and grooved, over a width, and the year at each joint.

All boards are as wide, tongue or lap included; on the outer edge of the last it is plain wood, and shows.
"""

from casewright.joinery.spacing import TOLERANCE
from casewright.measure.rounding import near_to, up_to
from casewright.measure.units import Count, Inches, Number, Percent, PerPercent


def boards_over(width: Inches, widest: Inches, overlap: Inches, gap: Inches) -> Count:
    """How many boards are needed over a width so that none is wider than wished.

    Rule: (width - (overlap - gap)) / (widest - (overlap - gap)), rounded up

    Args:
        width: width that the boards cover [in]
        widest: the widest board wished for, tongue or lap included; wider than that [in]
        overlap: length of the tongue, or width of the lap [in]
        gap: gap left at each joint [in]

    Returns:
        The number of boards

    Source: geometry of the joint.
    """
    hidden = overlap - gap
    return max(1, round(up_to((width - hidden) / (widest - hidden), 1)))


def board_width(width: Inches, boards: Count, overlap: Inches, gap: Inches) -> Inches:
    """The width of each board, tongue or lap included.

    Rule: (width + (boards - 1) × (overlap - gap)) / boards

    Args:
        width: width that the boards cover [in]
        boards: how many there are
        overlap: length of the tongue, or width of the lap [in]
        gap: gap left at each joint [in]

    Returns:
        The width of one board [in]

    Source: geometry of the joint.
    """
    return (width + (boards - 1) * (overlap - gap)) / boards


def covered_by_one(board: Inches, overlap: Inches, gap: Inches) -> Inches:
    """What one board covers as it goes up: from its edge to the edge of the next.

    Rule: board - overlap + gap

    Args:
        board: width of a board, tongue or lap included [in]
        overlap: length of the tongue, or width of the lap [in]
        gap: gap left at each joint [in]

    Returns:
        From board to board [in]

    Source: geometry of the joint.
    """
    return board - overlap + gap


def gap_then(board: Inches, gap: Inches, movement: PerPercent, change: Percent) -> Inches:
    """The gap at a joint at another moisture content, each board held at its middle.

    Rule: gap - board × movement × change

    Args:
        board: width of a board, tongue or lap included: a little more than what shows, to be safe [in]
        gap: gap left at each joint [in]
        movement: movement coefficient of the boards [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The gap; below nothing the boards push each other [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the joint.
    """
    return gap - board * movement * change


def covered_then(overlap: Inches, gap: Inches, movement: PerPercent, change: Percent) -> Inches:
    """What a tongue or lap still covers at another moisture content.

    Rule: overlap × (1 + movement × change) - gap

    Args:
        overlap: length of the tongue, or width of the lap, now [in]
        gap: gap at the joint then [in]
        movement: movement coefficient of the boards [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The length that lies in the groove, or under the lap; below nothing one sees through [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the joint.
    """
    return overlap * (1 + movement * change) - gap


def overlap_that_covers(
    board: Inches, gap: Inches, movement: PerPercent, shrinking: Percent, least: Inches
) -> Inches:
    """The tongue or lap that still covers so much when the boards are driest.

    Rule: (least + gap + board × movement × shrinking) / (1 - movement × shrinking)

    Args:
        board: width of a board, tongue or lap included [in]
        gap: gap left at each joint [in]
        movement: movement coefficient of the boards [1 per % moisture]
        shrinking: how much drier the wood gets [%]
        least: what is to be covered still [in]

    Returns:
        The length of the tongue, or width of the lap [in]

    Source: the covered length at the driest, solved for the tongue.
    """
    moved = movement * shrinking
    return (least + gap + board * moved) / (1 - moved)


def usual_tongue(thickness: Inches, part: Number, step: Inches) -> Inches:
    """The thickness of a tongue.

    Rule: thickness / part, to the nearest step, and at least one step

    Args:
        thickness: thickness of the boards [in]
        part: the tongue is the board divided by this [dimensionless]
        step: and a multiple of this [in]

    Returns:
        The thickness of the tongue [in]

    Source: common practice.
    """
    return max(step, near_to(thickness / part, step))


def cheek(thickness: Inches, tongue: Inches) -> Inches:
    """What is left on either side of a groove; of a shiplap, half of the board.

    Rule: (thickness - tongue) / 2

    Args:
        thickness: thickness of the boards [in]
        tongue: thickness of the tongue; 0 for a shiplap [in]

    Returns:
        The thickness of a cheek, or of a lap [in]

    Source: geometry of the joint: the tongue lies in the middle.
    """
    return (thickness - tongue) / 2


def room_to_swell(board: Inches, movement: PerPercent, swelling: Percent, step: Inches) -> Inches:
    """The gap that takes what a board swells.

    Rule: board × movement × swelling, up to a multiple of step

    Args:
        board: width of a board, tongue or lap included [in]
        movement: movement coefficient of the boards [1 per % moisture]
        swelling: how much wetter the wood gets [%]
        step: what the spacer is a multiple of [in]

    Returns:
        The gap [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; the rounding is common practice.
    """
    swells = board * movement * swelling
    return up_to(swells, step) if swells > TOLERANCE else 0.0
