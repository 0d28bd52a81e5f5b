"""The arithmetic of boxes on metal slides: width, length, height and load, by the maker's sheet."""

from casewright.measure.rounding import floor64, near64
from casewright.measure.units import CubicFeet, Inches, Pounds, PoundsPerCubicFoot


def slide_box_width(opening: Inches, space: Inches, most: Inches) -> Inches:
    """The width of a box between side-mount slides.

    Rule: opening - 2 × space, rounded down to 1/64; to the nearest where that would leave more than most

    Args:
        opening: width of the opening [in]
        space: side space to build for [in]
        most: the most side space that the maker of the slide allows [in]

    Returns:
        The width of the box over its sides [in]

    Source: the maker's sheet of the slide; a box too wide binds first.
    """
    exact = opening - 2 * space
    low = floor64(exact)
    return low if (opening - low) / 2 <= most + 1e-9 else near64(exact)


def under_mount_box_width(
    opening: Inches, deduction: Inches, left_side: Inches, right_side: Inches
) -> Inches:
    """The width of a box over under-mount slides, which hold it by its inside width.

    Rule: opening - deduction + left_side + right_side, rounded down to 1/64

    Args:
        opening: width of the opening [in]
        deduction: the opening less the inside width, by the maker's sheet [in]
        left_side: thickness of the left side [in]
        right_side: thickness of the right side [in]

    Returns:
        The width of the box over its sides [in]

    Source: the maker's sheet of the slide.
    """
    return floor64(opening - deduction + left_side + right_side)


def side_space(opening: Inches, box: Inches) -> Inches:
    """What is left at each side of a box.

    Rule: (opening - box) / 2

    Args:
        opening: width of the opening [in]
        box: width of the box [in]

    Returns:
        The side space [in]

    Source: geometry.
    """
    return (opening - box) / 2


def slide_room(depth: Inches, front: Inches, behind: Inches, shrinkage: Inches) -> Inches:
    """The longest slide that an opening takes.

    Rule: depth - front - behind - shrinkage

    Args:
        depth: depth of the opening [in]
        front: what of that depth an applied front takes up; 0 where the front is part of the box [in]
        behind: what the maker of the slide wants behind it [in]
        shrinkage: how much shallower the case gets when driest [in]

    Returns:
        The most that a slide may be long [in]

    Source: the maker's sheet of the slide; from memory 1/8 in behind a side-mount, 1/2 in an under-mount.
    """
    return depth - front - behind - shrinkage


def on_slides(slide: Inches, front: Inches) -> Inches:
    """The length of a drawer whose box is as long as its slides.

    Rule: slide + front

    Args:
        slide: length of the slides, and of the box [in]
        front: a show front before the box, within the opening; 0 without one [in]

    Returns:
        The length of the drawer [in]

    Source: the maker's sheet of the slide.
    """
    return slide + front


def slide_box_height(opening: Inches, headroom: Inches) -> Inches:
    """The most that a box on slides may be high.

    Rule: opening - headroom, rounded down to 1/64

    Args:
        opening: height of the opening [in]
        headroom: what the box must be lower, by the maker's sheet [in]

    Returns:
        The height of the box [in]

    Source: the maker's sheet of the slide.
    """
    return floor64(opening - headroom)


def carried_load(volume: CubicFeet, density: PoundsPerCubicFoot, drawer: Pounds) -> Pounds:
    """What a pair of slides carries when the drawer is full.

    Rule: volume × density + drawer

    Args:
        volume: room in the drawer [cu ft]
        density: of what fills it [lb per cu ft]
        drawer: weight of the drawer [lb]

    Returns:
        The load [lb]

    Source: 8.5 lb per cubic foot of clothing, as ASTM F2057-23 loads a drawer.
    """
    return volume * density + drawer


def typed_load(load: Pounds, drawer: Pounds) -> Pounds:
    """What a pair of slides carries with the load that was typed.

    Rule: load + drawer

    Args:
        load: what a full drawer holds [lb]
        drawer: weight of the drawer [lb]

    Returns:
        The load [lb]

    Source: arithmetic.
    """
    return load + drawer
