"""What a joint needs to know of the year: how far wood moves across the grain, where nobody has said."""

from dataclasses import dataclass

from casewright.joinery.joint import Chosen, Measure
from casewright.joinery.sourced import Sourced, sourced
from casewright.measure.units import Inches, Percent, PerPercent


@dataclass(frozen=True, slots=True, kw_only=True)
class Season:
    """The year that a joint is made for, where nothing else is said.

    Attributes:
        movement: movement coefficient of the wood across the grain [1 per % moisture]
        swelling: moisture content at the wettest, over that of the wood now [%]
        shrinking: moisture content of the wood now, over that at the driest [%]
    """

    movement: Sourced
    swelling: Sourced
    shrinking: Sourced


SEASON = Season(**sourced("season_limits"))
"""The year of a heated house in a climate with a real winter."""


def change_across(size: Inches, movement: PerPercent, change: Percent) -> Inches:
    """How much a board grows or shrinks across the grain when its moisture changes.

    Rule: size × movement × change

    Args:
        size: the size across the grain now [in]
        movement: movement coefficient of the wood; meant for 6 to 14 % moisture [1 per % moisture]
        change: how much the moisture content changes, either way [%]

    Returns:
        How much the size changes [in]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    return size * movement * change


def chosen_movement() -> Chosen:
    """The movement coefficient, with the reason.

    Returns:
        The choice.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, Table 13-5.
    """
    why = "Flat-sawn red oak: of the usual cabinet woods none moves more; give 0 for plywood."
    return Chosen(
        name="movement",
        value=SEASON.movement.value,
        measure=Measure.NUMBER,
        why=why,
        source=SEASON.movement.source,
    )


def chosen_swelling() -> Chosen:
    """How much wetter the wood gets, with the reason.

    Returns:
        The choice.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4.
    """
    return _chosen("swelling", SEASON.swelling, "From a shop at 8.5 % to a damp summer at 11 %.")


def chosen_shrinking() -> Chosen:
    """How much drier the wood gets, with the reason.

    Returns:
        The choice.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4.
    """
    return _chosen("shrinking", SEASON.shrinking, "From a shop at 8.5 % to a heated winter at 6.2 %.")


def _chosen(name: str, habit: Sourced, why: str) -> Chosen:
    return Chosen(name=name, value=habit.value, measure=Measure.PERCENT, why=why, source=habit.source)
