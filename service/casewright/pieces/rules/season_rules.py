"""What is left of the room that a maker leaves for the wood, at any moisture content of the year."""

from casewright.measure.units import Inches, Percent, PerPercent


def room_behind(
    clearance: Inches,
    depth: Inches,
    side_moves: PerPercent,
    bottom: Inches,
    bottom_moves: PerPercent,
    over: Inches,
    change: Percent,
) -> Inches:
    """The room behind the bottom of a drawer, when side of the case and bottom stand at one moisture.

    Rule: clearance + depth × side_moves × change - over - bottom × bottom_moves × change

    Args:
        clearance: room behind the drawer now [in]
        depth: depth of the case side now, across its grain [in]
        side_moves: movement coefficient of the side in its width [1 per % moisture]
        bottom: size of the bottom front to back now [in]
        bottom_moves: movement coefficient of the bottom front to back [1 per % moisture]
        over: how far the bottom reaches past the back [in]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The room; below nothing the drawer stands out of the case [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the drawer.
    """
    return clearance + depth * side_moves * change - over - bottom * bottom_moves * change


def reach_under(back: Inches, over: Inches, bottom: Inches, moves: PerPercent, change: Percent) -> Inches:
    """How far a bottom reaches under the back, past the back's inner face.

    Rule: back + over + bottom × moves × change

    Args:
        back: thickness of the back [in]
        over: how far the bottom reaches past the back now [in]
        bottom: size of the bottom front to back now [in]
        moves: movement coefficient of the bottom front to back [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The reach; below nothing a slit opens inside the drawer [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the drawer.
    """
    return back + over + bottom * moves * change


def play_left(play: Inches, panel: Inches, moves: PerPercent, change: Percent) -> Inches:
    """The play of a panel at each of two grooves.

    Rule: play - panel × moves × change / 2

    Args:
        play: left free in each groove now [in]
        panel: size of the panel in that direction now [in]
        moves: movement coefficient of the panel in that direction [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The play; below nothing the panel pushes the grooves apart [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the groove.
    """
    return play - panel * moves * change / 2


def side_room(gap: Inches, side: Inches, moves: PerPercent, change: Percent) -> Inches:
    """The clearance beside a drawer, all of the side's movement in thickness taken as outward.

    Rule: gap - side × moves × change

    Args:
        gap: clearance at each side now [in]
        side: thickness of the side now [in]
        moves: movement coefficient of the side in its thickness [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The clearance; below nothing the drawer binds [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return gap - side * moves * change


def slack_behind(slack: Inches, depth: Inches, moves: PerPercent, change: Percent) -> Inches:
    """The gap behind a runner, whose length does not move while the side of the case does.

    Rule: slack + depth × moves × change

    Args:
        slack: gap at the rear of the runner now [in]
        depth: depth of the case side now, across its grain [in]
        moves: movement coefficient of the side in its width [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The gap; below nothing the runner pushes the rear rail out [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the frame.
    """
    return slack + depth * moves * change


def apart(size: Inches, one: PerPercent, other: PerPercent, change: Percent) -> Inches:
    """How far two boards that lie across each other's edge move apart.

    Rule: size × (one - other) × change

    Args:
        size: the size across the grain that both have [in]
        one: movement coefficient of the one; 0 for long grain [1 per % moisture]
        other: movement coefficient of the other; 0 for long grain [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        Above nothing the first grows past the second [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return size * (one - other) * change


def dust_play_then(
    play: Inches, depth: Inches, side_moves: PerPercent, panel: Inches, moves: PerPercent, change: Percent
) -> Inches:
    """The play of a dust panel in its front and in its rear groove, at any moisture.

    Rule: play + (depth × side_moves - panel × moves) × change / 2

    Args:
        play: play in each groove now [in]
        depth: depth of the case side now, across its grain [in]
        side_moves: movement coefficient of the side in its width [1 per % moisture]
        panel: size of the panel front to back now [in]
        moves: movement coefficient of the panel in that direction [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The play; below nothing the panel pushes the rails apart [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the frame.
    """
    return play + (depth * side_moves - panel * moves) * change / 2


def dust_held_then(
    groove: Inches,
    play: Inches,
    depth: Inches,
    side_moves: PerPercent,
    panel: Inches,
    moves: PerPercent,
    change: Percent,
) -> Inches:
    """How far a dust panel reaches into its front and its rear groove, at any moisture.

    Rule: groove - play - (depth × side_moves - panel × moves) × change / 2

    Args:
        groove: depth of each groove [in]
        play: play in each groove now [in]
        depth: depth of the case side now, across its grain [in]
        side_moves: movement coefficient of the side in its width [1 per % moisture]
        panel: size of the panel front to back now [in]
        moves: movement coefficient of the panel in that direction [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The reach; below nothing the panel drops out [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the frame.
    """
    return groove - play - (depth * side_moves - panel * moves) * change / 2


def front_gap_then(
    gap: Inches, front: Inches, other: Inches, coefficient: PerPercent, change: Percent
) -> Inches:
    """The gap between two fronts that stand before the case, at any moisture.

    Rule: gap - (front + other) / 2 × coefficient × change

    Args:
        gap: as it is set now [in]
        front: the one front, across its grain [in]
        other: the other front, likewise [in]
        coefficient: movement coefficient of the fronts in height [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The gap; each front, held in its middle, takes half of its growth of it [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return gap - (front + other) / 2 * coefficient * change
