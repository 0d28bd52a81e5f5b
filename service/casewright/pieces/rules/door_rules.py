"""The arithmetic of a door: each leaf from the opening that it closes, its hinges, and how it swings."""

from casewright.joinery.families.hinge.asked import hinges_by_height
from casewright.measure.rounding import floor64, up_to
from casewright.measure.units import Count, Inches, Percent, PerPercent, Pounds, PoundsForce, SquareInches


def leaf_height(opening: Inches, gap: Inches) -> Inches:
    """The height of an inset leaf: its grain runs up and down, so that the season does not change it.

    Rule: opening - 2 × gap, rounded down to 1/64

    Args:
        opening: height of the opening [in]
        gap: left above it, and below it [in]

    Returns:
        The height of each leaf [in]

    Source: geometry; long grain keeps its length.
    """
    return floor64(opening - 2 * gap)


def slab_leaf_width(
    opening: Inches,
    leaves: Count,
    gap: Inches,
    meeting: Inches,
    coefficient: PerPercent,
    swelling: Percent,
) -> Inches:
    """The width of an inset slab now: it moves over its whole width.

    Rule: (opening - 2 × gap - (leaves - 1) × meeting) / leaves / (1 + coefficient × swelling), rounded down
    to 1/64

    Args:
        opening: width of the opening [in]
        leaves: doors side by side in it
        gap: left at each side when wettest [in]
        meeting: left between two leaves when wettest [in]
        coefficient: movement coefficient of the slab in its width; 0 for plywood [1 per % moisture]
        swelling: moisture content at the wettest less that of the wood now, never below nothing [%]

    Returns:
        The width of each leaf [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2, solved for the size now.
    """
    room = (opening - 2 * gap - (leaves - 1) * meeting) / leaves
    return floor64(room / (1 + coefficient * swelling))


def framed_leaf_width(
    opening: Inches,
    leaves: Count,
    gap: Inches,
    meeting: Inches,
    stile: Inches,
    coefficient: PerPercent,
    swelling: Percent,
) -> Inches:
    """The width of an inset leaf that is a frame now: only its two stiles move.

    Rule: (opening - 2 × gap - (leaves - 1) × meeting) / leaves - 2 × stile × coefficient × swelling, rounded
    down to 1/64

    Args:
        opening: width of the opening [in]
        leaves: doors side by side in it
        gap: left at each side when wettest [in]
        meeting: left between two leaves when wettest [in]
        stile: width of a stile [in]
        coefficient: movement coefficient of the stiles in their width [1 per % moisture]
        swelling: moisture content at the wettest less that of the wood now, never below nothing [%]

    Returns:
        The width of each leaf [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; long grain keeps its length.
    """
    room = (opening - 2 * gap - (leaves - 1) * meeting) / leaves
    return floor64(room - 2 * stile * coefficient * swelling)


def overlay_size(opening: Inches, first: Inches, last: Inches, leaves: Count, meeting: Inches) -> Inches:
    """The height, or the width of each leaf, of doors that lie over the edges of their opening.

    Rule: (opening + first + last - (leaves - 1) × meeting) / leaves, rounded down to 1/64

    Args:
        opening: height or width of the opening [in]
        first: how far the doors reach over its one edge [in]
        last: how far over the other [in]
        leaves: doors side by side; 1 for a height
        meeting: gap between two leaves now [in]

    Returns:
        The size [in]

    Source: geometry.
    """
    return floor64((opening + first + last - (leaves - 1) * meeting) / leaves)


def full_overlay(edge: Inches, reveal: Inches) -> Inches:
    """How far a leaf reaches over an edge of the case that no other door shares.

    Rule: edge - reveal, never below nothing

    Args:
        edge: thickness of the side, rail or bottom [in]
        reveal: what is left of it to be seen [in]

    Returns:
        The overlay [in]

    Source: geometry.
    """
    return max(0.0, edge - reveal)


def shared_overlay(edge: Inches, reveal: Inches) -> Inches:
    """How far a leaf reaches over a divider that it shares with its neighbour: half, less half the gap.

    Rule: (edge - reveal) / 2, never below nothing

    Args:
        edge: thickness of the divider, upright or partition [in]
        reveal: the gap between the two that meet on it [in]

    Returns:
        The overlay [in]

    Source: geometry.
    """
    return max(0.0, (edge - reveal) / 2)


def meeting_now(meeting: Inches, moving: Inches, coefficient: PerPercent, swelling: Percent) -> Inches:
    """The gap between two leaves now, of which enough is left when both are wettest.

    Rule: meeting + 2 × moving × coefficient × swelling

    Args:
        meeting: gap that is left when wettest [in]
        moving: how much of the width of each leaf lies across the grain [in]
        coefficient: movement coefficient of its wood in its width [1 per % moisture]
        swelling: moisture content at the wettest less that of the wood now, never below nothing [%]

    Returns:
        The gap now [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return meeting + 2 * moving * coefficient * swelling


def leaf_grows(moving: Inches, coefficient: PerPercent, change: Percent) -> Inches:
    """How much wider a leaf gets.

    Rule: moving × coefficient × change

    Args:
        moving: how much of its width lies across the grain: both stiles, or a whole slab [in]
        coefficient: movement coefficient of its wood in its width [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The growth; below nothing it shrinks [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return moving * coefficient * change


def half_of_gap(
    edge: Inches, over: Inches, moving: Inches, coefficient: PerPercent, change: Percent
) -> Inches:
    """What an overlay leaf leaves of its half of a divider that it shares with another.

    Rule: edge / 2 - over - moving × coefficient × change

    Args:
        edge: thickness of the divider [in]
        over: how far the leaf reaches over it now [in]
        moving: how much of its width moves towards the divider; 0 at its hinges [in]
        coefficient: movement coefficient of its wood in its width [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        Half of the gap between the two; below nothing they meet [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2; geometry of the doors.
    """
    return edge / 2 - over - moving * coefficient * change


def free_gap(
    room: Inches,
    hinge_gaps: Inches,
    leaves: Count,
    width: Inches,
    moving: Inches,
    coefficient: PerPercent,
    change: Percent,
) -> Inches:
    """The gap at the free edge of a leaf, or between two: what hinges and leaves do not take.

    Rule: room - hinge_gaps - leaves × (width + moving × coefficient × change)

    Args:
        room: the opening, with what the leaves reach over its edges [in]
        hinge_gaps: gaps at the hinges, which stay [in]
        leaves: doors side by side in it
        width: width of a leaf now [in]
        moving: how much of that lies across the grain [in]
        coefficient: movement coefficient of its wood in its width [1 per % moisture]
        change: moisture content then, less that of the wood now [%]

    Returns:
        The gap; below nothing the doors bind [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return room - hinge_gaps - leaves * (width + moving * coefficient * change)


def capped_length(height: Inches, cap: Inches, tongue: Inches) -> Inches:
    """The length of a slab between breadboard ends, over its tongues.

    Rule: height - 2 × cap + 2 × tongue

    Args:
        height: height of the leaf [in]
        cap: width of a breadboard end [in]
        tongue: length of the tongue in each [in]

    Returns:
        The length [in]

    Source: geometry of the joint.
    """
    return height - 2 * cap + 2 * tongue


def batten_length(width: Inches, short: Inches) -> Inches:
    """The length of a batten behind a slab.

    Rule: width - 2 × short

    Args:
        width: width of the slab [in]
        short: how far it ends before each edge [in]

    Returns:
        The length [in]

    Source: common practice.
    """
    return width - 2 * short


def hinges_for(height: Inches, weight: Pounds, carries: Pounds) -> Count:
    """How many hinges a leaf hangs on.

    Rule: 2 up to 40 in high, 3 up to 60, one more for each 20 beyond; and at least weight / carries, rounded
    up

    Args:
        height: height of the leaf [in]
        weight: weight of the leaf [lb]
        carries: what one hinge is trusted with [lb]

    Returns:
        The hinges

    Source: common practice.
    """
    return round(max(hinges_by_height(height), up_to(weight / carries, 1)))


def hinge_pull(weight: Pounds, width: Inches, apart: Inches) -> PoundsForce:
    """What pulls at the top hinge of a leaf, and pushes at the lowest.

    Rule: weight × width / 2 / apart

    Args:
        weight: weight of the leaf [lb]
        width: width of the leaf [in]
        apart: from the middle of the lowest hinge to that of the top one [in]

    Returns:
        The pull [lbf]

    Source: statics: moments about the lowest hinge.
    """
    return weight * width / 2 / apart


def leaf_area(width: Inches, height: Inches, thickness: Inches) -> SquareInches:
    """The inner face of a leaf and its four edges; its outer face counts with the front of the case.

    Rule: width × height + 2 × thickness × (width + height)

    Args:
        width: width of the leaf [in]
        height: height of the leaf [in]
        thickness: thickness of the leaf [in]

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return width * height + 2 * thickness * (width + height)
