"""The room in a drawer as the tip-over rule counts it, and the weight of the clothes in it."""

from casewright.measure.units import CubicFeet, Inches, Pounds, PoundsPerCubicFoot

CUBIC_INCHES_PER_CUBIC_FOOT = 1728


def clear_volume(width: Inches, depth: Inches, height: Inches, allowance: Inches) -> CubicFeet:
    """The room in a drawer, as the rule counts it.

    Rule: width * depth * (height - allowance) / 1728

    Args:
        width: clear inside, side to side [in]
        depth: clear inside, front to back; the mean of the shortest and longest where it is uneven [in]
        height: from the bottom's surface to the lowest obstruction above it [in]
        allowance: taken off the height, 1/8 in [in]

    Returns:
        The volume, never below zero [cu ft]

    Source: CPSC business guidance, Clothing Storage Units.
    """
    return max(0.0, width * depth * (height - allowance)) / CUBIC_INCHES_PER_CUBIC_FOOT


def all_volumes(volumes: tuple[CubicFeet, ...]) -> CubicFeet:
    """The room in all drawers, as the rule counts it.

    Rule: sum of volumes

    Args:
        volumes: of each drawer [cu ft]

    Returns:
        The volume [cu ft]

    Source: CPSC business guidance, Clothing Storage Units.
    """
    return sum(volumes)


def closed_volume(width: Inches, depth: Inches, height: Inches) -> CubicFeet:
    """The room behind doors as the rule counts it: half of it.

    Rule: 1/2 * height * width * depth / 1728

    Args:
        width: clear inside, side to side [in]
        depth: clear inside, front to back [in]
        height: clear inside [in]

    Returns:
        The volume, never below zero [cu ft]

    Source: CPSC business guidance, Clothing Storage Units: room that does not extend.
    """
    return max(0.0, height * width * depth) / 2 / CUBIC_INCHES_PER_CUBIC_FOOT


def enclosed_volume(drawers: CubicFeet, behind_doors: CubicFeet) -> CubicFeet:
    """The enclosed room of a piece.

    Rule: drawers + behind_doors

    Args:
        drawers: in all drawers [cu ft]
        behind_doors: half of the room behind doors [cu ft]

    Returns:
        The volume [cu ft]

    Source: CPSC business guidance, Clothing Storage Units.
    """
    return drawers + behind_doors


def fill_weight(volume: CubicFeet, density: PoundsPerCubicFoot) -> Pounds:
    """The weight of the clothes in a drawer.

    Rule: volume * density

    Args:
        volume: of the drawer [cu ft]
        density: of clothes as the test packs them, 8.5 lb per cu ft [lb per cu ft]

    Returns:
        The weight [lb]

    Source: 87 FR 72598 (2022 rule's text); its use in ASTM F2057-23 from memory.
    """
    return volume * density


def heavier_fill(clothes: Pounds, typed: Pounds) -> Pounds:
    """What a drawer is tried with where the maker says what goes into it: never less than clothes.

    Rule: max(clothes, typed)

    Args:
        clothes: the weight of the clothes that fill it [lb]
        typed: the load that was typed [lb]

    Returns:
        The weight [lb]

    Source: common practice: a chest of tools is heavier than the test's clothes.
    """
    return max(clothes, typed)
