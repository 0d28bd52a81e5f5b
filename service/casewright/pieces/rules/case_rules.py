"""The arithmetic of the carcase: each size from the sizes it hangs on."""

from casewright.measure.rounding import down_to, up_to
from casewright.measure.units import Count, Inches, Percent, PerPercent


def body_height(overall: Inches, top: Inches, base: Inches) -> Inches:
    """The height of the case body, which is the length of a case side.

    Rule: overall - top - base

    Args:
        overall: floor to the upper face of the top [in]
        top: thickness of the top [in]
        base: height of the base [in]

    Returns:
        The height of the body [in]

    Source: geometry of the case.
    """
    return overall - top - base


def body_height_by_openings(
    openings: Inches, rail: Inches, bottom: Inches, divider: Inches, rows: Count
) -> Inches:
    """The height of the case body that the openings and what lies between them add up to.

    Rule: openings + rail + bottom + (rows - 1) × divider

    Args:
        openings: all opening heights of a column added up [in]
        rail: thickness of the sub-top rail [in]
        bottom: thickness of the case bottom [in]
        divider: thickness of a divider [in]
        rows: how many rows of drawers

    Returns:
        The height of the body [in]

    Source: geometry of the case.
    """
    return openings + rail + bottom + (rows - 1) * divider


def overall_height(body: Inches, top: Inches, base: Inches) -> Inches:
    """Floor to the upper face of the top.

    Rule: body + top + base

    Args:
        body: height of the case body [in]
        top: thickness of the top [in]
        base: height of the base [in]

    Returns:
        The height of the piece [in]

    Source: geometry of the case.
    """
    return body + top + base


def opening_total(body: Inches, rail: Inches, bottom: Inches, divider: Inches, rows: Count) -> Inches:
    """What is left for openings in the height of the body.

    Rule: body - rail - bottom - (rows - 1) × divider

    Args:
        body: height of the case body [in]
        rail: thickness of the sub-top rail [in]
        bottom: thickness of the case bottom [in]
        divider: thickness of a divider [in]
        rows: how many rows of drawers

    Returns:
        All opening heights of a column added up [in]

    Source: geometry of the case.
    """
    return body - rail - bottom - (rows - 1) * divider


def stack_total(height: Inches, divider: Inches, rows: Count) -> Inches:
    """All opening heights of a stack within a column added up.

    Rule: height - (rows - 1) × divider

    Args:
        height: height of the row in which its column stands [in]
        divider: thickness of the frame between two rows [in]
        rows: how many rows the stack has

    Returns:
        The opening heights together [in]

    Source: geometry of the case.
    """
    return height - (rows - 1) * divider


def clear_width(width: Inches, side: Inches) -> Inches:
    """The width between the case sides.

    Rule: width - 2 × side

    Args:
        width: outside width of the body [in]
        side: thickness of a case side [in]

    Returns:
        The width of an opening that spans the case [in]

    Source: geometry of the case.
    """
    return width - 2 * side


def column_width(clear: Inches, upright: Inches, columns: Count, fixed: Inches, shared: Count) -> Inches:
    """The width of one of the openings that share a row.

    Rule: (clear - (columns - 1) × upright - fixed) / shared

    Args:
        clear: width between the case sides [in]
        upright: thickness of an upright [in]
        columns: openings in the row
        fixed: widths of the row that were typed, added up [in]
        shared: openings that share what is left

    Returns:
        The width of each of them [in]

    Source: geometry of the case.
    """
    return (clear - (columns - 1) * upright - fixed) / shared


def opening_depth(depth: Inches, back: Inches) -> Inches:
    """The depth from the front edge of the case to the back.

    Rule: depth - back

    Args:
        depth: depth of the case body [in]
        back: what the back takes: its thickness, with the wood behind a groove [in]

    Returns:
        The depth of every opening [in]

    Source: geometry of the case.
    """
    return depth - back


def housed_length(opening: Inches, housing: Inches) -> Inches:
    """The length of a part housed at both ends.

    Rule: opening + 2 × housing

    Args:
        opening: clear distance between the two parts that it is housed in [in]
        housing: depth of each housing [in]

    Returns:
        The length over both ends [in]

    Source: geometry of the joint.
    """
    return opening + 2 * housing


def housed_between(opening: Inches, left: Inches, right: Inches) -> Inches:
    """The length of a part housed in two parts that are not alike.

    Rule: opening + left + right

    Args:
        opening: clear distance between the two parts [in]
        left: how deep it goes into the one at its left [in]
        right: how deep it goes into the one at its right [in]

    Returns:
        The length over both ends [in]

    Source: geometry of the joint.
    """
    return opening + left + right


def standing_length(opening: Inches, housing: Inches, bottom: Inches) -> Inches:
    """The length of a partition beside a knee space: housed above, and down past the case bottom.

    Rule: opening + housing + bottom

    Args:
        opening: clear height of its row [in]
        housing: depth of the housing above it [in]
        bottom: thickness of the case bottom that is housed in it [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return opening + housing + bottom


def across_both(left: Inches, right: Inches) -> Inches:
    """The width of one runner where two would overlap.

    Rule: right - left

    Args:
        left: the outer edge of the one at the left [in]
        right: the outer edge of the one at the right [in]

    Returns:
        The width of the one that does for both [in]

    Source: common practice.
    """
    return right - left


def shelf_gap(height: Inches, thickness: Inches, shelves: Count) -> Inches:
    """The clear height between shelves that are evenly spaced.

    Rule: (height - shelves × thickness) / (shelves + 1)

    Args:
        height: clear height of the opening [in]
        thickness: thickness of a shelf [in]
        shelves: how many there are

    Returns:
        The height below, between and above them [in]

    Source: geometry.
    """
    return (height - shelves * thickness) / (shelves + 1)


def back_under_top(body: Inches, top: Inches, rabbet: Inches) -> Inches:
    """The height of a back that ends in a rabbet of the top between the sides.

    Rule: body - top + rabbet

    Args:
        body: height of the case body [in]
        top: thickness of the top, dovetailed to the sides [in]
        rabbet: how far the back reaches up behind it [in]

    Returns:
        The height of the back [in]

    Source: geometry of the case.
    """
    return body - top + rabbet


def top_slack(depth: Inches, moves: PerPercent, other: PerPercent, change: Percent) -> Inches:
    """How far a top moves over what it is fixed to, held at its front edge.

    Rule: depth × |moves - other| × change

    Args:
        depth: depth of the top, front to back [in]
        moves: movement coefficient of the top in its depth [1 per % moisture]
        other: that of the sides under it; 0 where they do not move in depth [1 per % moisture]
        change: how much wetter the wood gets [%]

    Returns:
        The slack that its fixings need at the rear; none where both move together [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return depth * abs(moves - other) * change


def fixings(length: Inches, spacing: Inches) -> Count:
    """How many fixings hold a top along one line.

    Rule: length / spacing, rounded up, and one more

    Args:
        length: length of the rail that they sit in [in]
        spacing: they are no further apart [in]

    Returns:
        The fixings

    Source: common practice.
    """
    return round(up_to(length / spacing, 1)) + 1


def upright_housing(housing: Inches, rail: Inches) -> Inches:
    """The depth to which an upright is housed in the rails, where nothing else is said.

    Rule: the lesser of housing and rail / 3, down to 1/32

    Args:
        housing: depth of a divider's housing in the case side [in]
        rail: thickness of the thinner rail [in]

    Returns:
        The depth [in]

    Source: common practice: a third of the board; uprights that meet at a rail leave a third between them.
    """
    return min(housing, down_to(rail / 3, 1 / 32) or rail / 3)


def runner_length(
    depth: Inches, front_rail: Inches, back_rail: Inches, tenon: Inches, slack: Inches
) -> Inches:
    """The length of a runner or kicker, tenoned into the rails, with a gap at the rear.

    Rule: depth - front_rail - back_rail + 2 × tenon - slack

    Args:
        depth: depth of the opening [in]
        front_rail: width of the front rail [in]
        back_rail: width of the rear rail [in]
        tenon: length of the tenon at each end [in]
        slack: gap left dry at the rear shoulder [in]

    Returns:
        The length over the tenons [in]

    Source: geometry of the frame; the dry rear joint is common practice.
    """
    return depth - front_rail - back_rail + 2 * tenon - slack


def runner_slack(shrinkage: Inches, least: Inches) -> Inches:
    """The gap at the rear of a runner that lets a solid side shrink past it.

    Rule: the greater of least, and shrinkage rounded up to 1/16

    Args:
        shrinkage: how much shallower the case side gets when driest [in]
        least: never less than this [in]

    Returns:
        The gap [in]

    Source: common practice.
    """
    return max(least, up_to(shrinkage, 1 / 16))


def between(whole: Inches, one_end: Inches, other_end: Inches) -> Inches:
    """What lies between two parts.

    Rule: whole - one_end - other_end

    Args:
        whole: the size over all [in]
        one_end: the part at one end [in]
        other_end: the part at the other end [in]

    Returns:
        The size between them [in]

    Source: geometry of the case.
    """
    return whole - one_end - other_end


def over_all(inner: Inches, one_end: Inches, other_end: Inches) -> Inches:
    """A size with what stands out at either end.

    Rule: inner + one_end + other_end

    Args:
        inner: the size between [in]
        one_end: what stands out at one end [in]
        other_end: what stands out at the other [in]

    Returns:
        The size over all [in]

    Source: geometry of the case.
    """
    return inner + one_end + other_end
