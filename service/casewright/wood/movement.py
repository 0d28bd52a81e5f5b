"""How wood swells and shrinks across the grain, and what it weighs."""

from enum import StrEnum

from casewright.measure.units import Inches, Number, Percent, PerPercent, PoundsPerCubicFoot
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


class Cut(StrEnum):
    """How the board was sawn from the log, as the rings show on its end."""

    FLAT = "flat"
    QUARTER = "quarter"
    RIFT = "rift"

    @property
    def sawn(self) -> str:
        """The yard's word for boards of this cut."""
        return {Cut.FLAT: "flat-sawn", Cut.QUARTER: "quartersawn", Cut.RIFT: "rift-sawn"}[self]


class Direction(StrEnum):
    """Along which size of the board the change is asked for."""

    WIDTH = "width"
    THICKNESS = "thickness"
    LENGTH = "length"


LOWEST_LINEAR, HIGHEST_LINEAR = 6.0, 14.0
"""The moisture range in which one coefficient serves: Wood Handbook, chapter 13, under equation 13-2."""

USUAL_SATURATION = 30.0
"""Shrinkage starts at about 30 % moisture, at 22 % in a few woods: Wood Handbook, chapter 13."""


def coefficient(
    radial: PerPercent, tangential: PerPercent, cut: Cut, direction: Direction = Direction.WIDTH
) -> PerPercent:
    """How much a board moves for each percent of moisture, by its cut and by the size that is asked for.

    The rings of a flat-sawn board run across its width, so its width moves by the tangential figure and its
    thickness by the radial one; in a quartersawn board it is the other way round: its thickness moves most.

    Rule: tangential for flat width and quarter thickness; radial for quarter width and flat thickness;
    (radial + tangential) / 2 for rift; 0 along the grain

    Args:
        radial: coefficient of the species across the rings [1 per % moisture]
        tangential: coefficient of the species along the rings [1 per % moisture]
        cut: flat, quarter or rift
        direction: width, thickness or length

    Returns:
        The coefficient for `movement` [1 per % moisture]

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, Table 13-5; rift as the mean is common practice.
    """
    if direction is Direction.LENGTH:
        return 0.0
    if cut is Cut.RIFT:
        return (radial + tangential) / 2
    return tangential if (cut is Cut.FLAT) == (direction is Direction.WIDTH) else radial


def movement(size: Inches, coefficient: PerPercent, change: Percent) -> Inches:
    """How much a board grows or shrinks across the grain when its moisture changes.

    Rule: size * coefficient * change

    Args:
        size: the size across the grain at the first moisture content [in]
        coefficient: coefficient of species, cut and direction; meant for 6 to 14 % [1 per % moisture]
        change: moisture content after minus before [%]

    Returns:
        Growth if positive, shrinkage if negative [in]

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2.
    """
    return size * coefficient * change


def is_extrapolated(first: Percent, last: Percent) -> bool:
    """Whether a movement by coefficient goes beyond the moisture range that the coefficients are meant for.

    Args:
        first: moisture content before [%]
        last: moisture content after [%]

    Returns:
        True when either is below 6 % or above 14 %: label the figure, or use `movement_by_shrinkage`.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, under equation 13-2.
    """
    return min(first, last) < LOWEST_LINEAR or max(first, last) > HIGHEST_LINEAR


def movement_by_shrinkage(
    size: Inches,
    shrinkage: Percent,
    first: Percent,
    last: Percent,
    saturation: Percent = USUAL_SATURATION,
) -> Inches:
    """How much a board grows or shrinks, from its whole shrinkage: for any moisture below saturation.

    Rule: size * (last - first) / (saturation * 100 / shrinkage - saturation + first)

    Args:
        size: the size across the grain at the first moisture content [in]
        shrinkage: shrinkage from green to ovendry, radial or tangential as the cut asks [%]
        first: moisture content before, from 0 to the saturation point [%]
        last: moisture content after, from 0 to the saturation point [%]
        saturation: the moisture at which shrinkage starts [%]

    Returns:
        Growth if positive, shrinkage if negative [in]

    Raises:
        ValueError: the shrinkage is not between 0 and 100 %, or a moisture lies outside the range.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-3.
    """
    _check_shrinkage(shrinkage)
    if not (min(first, last) >= 0 and max(first, last) <= saturation):
        raise ValueError(
            f"Wood moves between 0 and {saturation:g} % moisture; {first:g} to {last:g} % goes beyond that."
        )
    return size * (last - first) / (saturation * 100 / shrinkage - saturation + first)


def coefficient_from_shrinkage(shrinkage: Percent, saturation: Percent = USUAL_SATURATION) -> PerPercent:
    """The coefficient of a wood of which only the whole shrinkage is printed.

    It is equation 13-3 for one percent of moisture, starting from 10 %.

    Rule: shrinkage / (100 * saturation - (saturation - 10) * shrinkage)

    Args:
        shrinkage: shrinkage from green to ovendry, radial or tangential [%]
        saturation: the moisture at which shrinkage starts [%]

    Returns:
        The coefficient [1 per % moisture]

    Raises:
        ValueError: the shrinkage is not between 0 and 100 %.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-3 with the first moisture at 10 %.
    """
    _check_shrinkage(shrinkage)
    return shrinkage / (100 * saturation - (saturation - 10) * shrinkage)


def _check_shrinkage(shrinkage: float) -> None:
    if not 0 < shrinkage < 100:
        raise ValueError(f"Wood shrinks by some percent between green and dry, not by {shrinkage:g} %.")


def plywood_coefficient() -> tuple[PerPercent, Evidence]:
    """How much plywood moves in its length and width, with the ground for the figure.

    Returns:
        The coefficient for `movement` [1 per % moisture], and where it comes from.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 12.
    """
    row = document("panels")["movement"]
    return float(row["plywood_per_percent"]), evidence_of(row)


def density(gravity: Number, moisture: Percent) -> PoundsPerCubicFoot:
    """What a cubic foot of wood weighs at a moisture content.

    Rule: 62.4 * gravity * (1 + moisture / 100)

    Args:
        gravity: specific gravity on ovendry weight and on the volume at that moisture; the figure for 12 %
            serves for all furniture [dimensionless]
        moisture: moisture content [%]

    Returns:
        Weight of the wood with the water in it [lb per cu ft]

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 4; water weighs 62.4 lb per cubic foot.
    """
    return 62.4 * gravity * (1 + moisture / 100)


def gravity_at(gravity_green: Number, moisture: Percent) -> Number:
    """Specific gravity at a moisture content, from the one on green volume: the wood has shrunk since.

    Rule: gravity_green / (1 - 0.265 * gravity_green * (30 - moisture) / 30)

    Args:
        gravity_green: specific gravity on ovendry weight and green volume [dimensionless]
        moisture: moisture content, from 0 to 30 [%]

    Returns:
        Specific gravity on ovendry weight and the volume at that moisture [dimensionless]

    Source: Simpson 1993, FPL-GTR-76, for woods in general; within 0.03 of the printed pairs of Table 5-3b.
    """
    return gravity_green / (1 - 0.265 * gravity_green * (30 - moisture) / 30)
