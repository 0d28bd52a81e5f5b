"""The arithmetic of a notched drawer: a U around pipes, its arms beside them, its inner back before them."""

from casewright.measure.units import CubicFeet, Inches, Percent, PerPercent, SquareInches

CUBIC_INCHES_PER_CUBIC_FOOT = 1728


def from_the_left(width: Inches, notch: Inches, aside: Inches) -> Inches:
    """From the outside of the left side of a drawer to the left edge of its notch.

    Rule: (width - notch) / 2 + aside

    Args:
        width: width of the drawer over its sides [in]
        notch: clear width of the notch [in]
        aside: its middle to the right of the middle of the drawer; below nothing to the left [in]

    Returns:
        The distance [in]

    Source: geometry of the drawer.
    """
    return (width - notch) / 2 + aside


def arm_clear(outside: Inches, side: Inches, inner: Inches) -> Inches:
    """The clear width of an arm beside the notch.

    Rule: outside - side - inner

    Args:
        outside: from the outside of the drawer to the edge of the notch [in]
        side: thickness of the drawer's side [in]
        inner: thickness of the inner side [in]

    Returns:
        The clear width [in]

    Source: geometry of the drawer.
    """
    return outside - side - inner


def room_before(box: Inches, front: Inches, depth: Inches, head: Inches) -> Inches:
    """The clear depth of a drawer before the inner back of its notch.

    Rule: box - front - depth - head

    Args:
        box: length of the box, to the rear end of the drawer [in]
        front: thickness of the board that the sides are joined to [in]
        depth: depth of the notch, from the rear end of the drawer [in]
        head: thickness of the inner back [in]

    Returns:
        The clear depth [in]

    Source: geometry of the drawer.
    """
    return box - front - depth - head


def inner_side_length(depth: Inches, set_in: Inches, head: Inches, lip: Inches) -> Inches:
    """The length of an inner side, from the inner back to the back beside the notch.

    Rule: depth - set_in + head - 2 × lip

    Args:
        depth: depth of the notch, from the rear end of the drawer [in]
        set_in: from there to the rear face of the backs [in]
        head: thickness of the inner back [in]
        lip: what covers an end of the inner side at each joint; 0 where it goes through [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return depth - set_in + head - 2 * lip


def across_the_notch(notch: Inches, left: Inches, right: Inches) -> Inches:
    """The width of the notch with its inner sides.

    Rule: notch + left + right

    Args:
        notch: clear width of the notch [in]
        left: thickness of the left inner side [in]
        right: thickness of the right inner side [in]

    Returns:
        The width [in]

    Source: geometry of the drawer.
    """
    return notch + left + right


def head_between(notch: Inches, reach: Inches) -> Inches:
    """The length of an inner back that lies between the inner sides and reaches into them.

    Rule: notch + 2 × reach

    Args:
        notch: clear width of the notch [in]
        reach: how far it goes into each inner side [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return notch + 2 * reach


def short_back(outside: Inches, side: Inches, reach_out: Inches, inner: Inches, reach_in: Inches) -> Inches:
    """The length of the back of an arm, from what it takes of the side to what it takes of the inner side.

    Rule: outside - side - inner + reach_out + reach_in

    Args:
        outside: from the outside of the drawer to the edge of the notch [in]
        side: thickness of the drawer's side [in]
        reach_out: how far the back goes into that side: all of it where it goes through [in]
        inner: thickness of the inner side [in]
        reach_in: likewise into the inner side [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return outside - side - inner + reach_out + reach_in


def cut_out_grooved(around: Inches, groove_depth: Inches, play: Inches) -> Inches:
    """The width of the cut-out of a bottom that lies in grooves of the inner sides.

    Rule: around - 2 × (groove_depth - play)

    Args:
        around: width of the notch with its inner sides [in]
        groove_depth: depth of each groove [in]
        play: left free in each groove [in]

    Returns:
        The width [in]

    Source: geometry of the drawer; the play is common practice.
    """
    return around - 2 * (groove_depth - play)


def cut_out_deep(depth: Inches, set_in: Inches, over: Inches) -> Inches:
    """The depth of the cut-out from the rear edge of a bottom on which the backs stand.

    Rule: depth - set_in + over

    Args:
        depth: depth of the notch, from the rear end of the drawer [in]
        set_in: from there to the rear face of the backs; 0 for a bottom that reaches to the ends [in]
        over: how far the bottom reaches past that [in]

    Returns:
        The depth [in]

    Source: geometry of the drawer.
    """
    return depth - set_in + over


def cut_out_deep_grooved(depth: Inches, set_in: Inches, back: Inches, head: Inches) -> Inches:
    """The depth of the cut-out from the rear edge of a bottom that lies in grooves all round.

    Rule: depth - set_in - back + head

    Args:
        depth: depth of the notch, from the rear end of the drawer [in]
        set_in: from there to the rear face of the backs [in]
        back: thickness of the backs [in]
        head: thickness of the inner back [in]

    Returns:
        The depth; both backs take the same of the bottom in their grooves [in]

    Source: geometry of the drawer.
    """
    return depth - set_in - back + head


def cut_out_along(edge: Inches, inside: Inches, bottom: Inches, room: Inches) -> Inches:
    """From the left end of a bottom to its cut-out.

    Rule: edge - inside + (bottom - room) / 2

    Args:
        edge: from the outside of the drawer to the left edge of the cut-out [in]
        inside: from there to the inside of the left side [in]
        bottom: size of the bottom from side to side [in]
        room: clear width between the sides [in]

    Returns:
        The distance [in]

    Source: geometry of the drawer.
    """
    return edge - inside + (bottom - room) / 2


def taken_deep(inside: Inches, room: Inches) -> Inches:
    """How much of the clear depth of a drawer the notch takes with its inner back.

    Rule: inside - room

    Args:
        inside: clear depth of the drawer, front to back [in]
        room: clear depth before the inner back [in]

    Returns:
        The depth [in]

    Source: geometry of the drawer.
    """
    return inside - room


def floor_area(width: Inches, depth: Inches, taken_wide: Inches, taken_deep: Inches) -> SquareInches:
    """The floor of a notched drawer.

    Rule: width × depth - taken_wide × taken_deep

    Args:
        width: clear width of the drawer [in]
        depth: clear depth of the drawer [in]
        taken_wide: width of the notch with its inner sides [in]
        taken_deep: what the notch takes of the clear depth [in]

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return width * depth - taken_wide * taken_deep


def notched_volume(floor: SquareInches, height: Inches) -> CubicFeet:
    """The room in a notched drawer.

    Rule: floor × height / 1728

    Args:
        floor: area of its floor [sq in]
        height: from the bottom's surface to the lowest obstruction above it, less 1/8 in [in]

    Returns:
        The volume, never below zero [cu ft]

    Source: CPSC business guidance, Clothing Storage Units, of what is left of the drawer.
    """
    return max(0.0, floor * height) / CUBIC_INCHES_PER_CUBIC_FOOT


def middle_of_the_floor(width: Inches, depth: Inches, taken_wide: Inches, taken_deep: Inches) -> Inches:
    """How far behind the inside of the front the load of a notched drawer has its centre.

    Rule: (width × depth² / 2 - taken_wide × taken_deep × (depth - taken_deep / 2)) / floor

    Args:
        width: clear width of the drawer [in]
        depth: clear depth of the drawer [in]
        taken_wide: width of the notch with its inner sides [in]
        taken_deep: what the notch takes of the clear depth [in]

    Returns:
        The distance [in]

    Source: centre of an area with a rectangle cut out.
    """
    floor = floor_area(width, depth, taken_wide, taken_deep)
    cut = taken_wide * taken_deep * (depth - taken_deep / 2)
    return (width * depth**2 / 2 - cut) / floor


def more_inside(taken_wide: Inches, taken_deep: Inches, back: Inches) -> SquareInches:
    """What a notch adds to the faces inside a drawer, less what it takes of its bottom.

    Rule: 2 × taken_deep × back - taken_wide × taken_deep

    Args:
        taken_wide: width of the notch with its inner sides [in]
        taken_deep: what the notch takes of the clear depth [in]
        back: height of the backs and the inner sides [in]

    Returns:
        The area; the inner back stands for what is missing of the back [sq in]

    Source: geometry.
    """
    return 2 * taken_deep * back - taken_wide * taken_deep


def clear_then(notch: Inches, left: Inches, right: Inches, moves: PerPercent, change: Percent) -> Inches:
    """The clear width of a notch at some moisture content, its inner sides taken to move into it alone.

    Rule: notch - (left + right) × moves × change

    Args:
        notch: its clear width now [in]
        left: thickness of the left inner side [in]
        right: thickness of the right inner side [in]
        moves: their movement coefficient in thickness [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The clear width; the boards across it are long grain and keep it [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return notch - (left + right) * moves * change


def air_beside(clear: Inches, pipes: Inches, play: Inches) -> Inches:
    """The air at each side of what stands in the middle of a notch, the drawer at one side of its opening.

    Rule: (clear - pipes) / 2 - play

    Args:
        clear: clear width of the notch [in]
        pipes: width over all that stands in it [in]
        play: how far the drawer may stand to one side [in]

    Returns:
        The air; below nothing they touch [in]

    Source: geometry of the drawer.
    """
    return (clear - pipes) / 2 - play


def air_before(opening: Inches, shut: Inches, depth: Inches, reach: Inches, shrinks: Inches) -> Inches:
    """The air between the inner back of a shut drawer and what stands in the notch, at the worst.

    Rule: opening - (shut - depth) - reach - shrinks

    Args:
        opening: clear depth of the opening, to the back of the case [in]
        shut: rear end of the drawer behind the front edge of the case, shut [in]
        depth: depth of the notch [in]
        reach: how far the pipes stand before the back of the case [in]
        shrinks: how much shallower the case gets when driest [in]

    Returns:
        The air; below nothing they touch [in]

    Source: geometry of the drawer.
    """
    return opening - (shut - depth) - reach - shrinks
