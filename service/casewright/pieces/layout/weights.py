"""What a part weighs, from its volume and the density of its wood."""

from functools import cache

from casewright.measure.units import CubicInches, Percent, Pounds, PoundsPerCubicFoot
from casewright.wood.movement import density
from casewright.wood.sheets import sheets
from casewright.wood.species import wood

CUBIC_INCHES = 1728


def part_weight(volume: CubicInches, density: PoundsPerCubicFoot) -> Pounds:
    """What a part weighs.

    Rule: volume / 1728 × density

    Args:
        volume: finished volume [cu in]
        density: weight of its wood at the moisture it has [lb per cu ft]

    Returns:
        The weight [lb]

    Source: arithmetic; a cubic foot is 1728 cubic inches.
    """
    return volume / CUBIC_INCHES * density


@cache
def density_of(material: str, moisture: Percent) -> PoundsPerCubicFoot:
    """The density of a wood or sheet by its name.

    Args:
        material: shop name of a wood, or the name of a sheet
        moisture: moisture content of the wood [%]

    Returns:
        The density [lb per cu ft]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, from the gravity of its table 5-3b.
    """
    for bought in sheets():
        if str(bought) == material:
            return bought.density
    return density(gravity=wood(material).gravity or wood(material).gravity_green, moisture=moisture)
