"""What a yard would be asked for where parts of a layout found no place."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from casewright.measure.lengths import LengthUnit, parse_length
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pricing.prices import NoPrice
from casewright.shop.cut_files import sort_called
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.tally import billed_thickness, board_feet
from casewright.wood.thickness import class_named
from casewright.wood.waste import NoWasteFigure, PartUse, order_feet

USES = {"A": PartUse.CASE, "B": PartUse.CASE, "C": PartUse.DRAWER, "D": PartUse.INSIDE}
"""What a part is for, by what is seen of it (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetToBuy:
    """What would be ordered.

    Attributes:
        feet: whole feet [bd ft]
        grade: in which grade the shop buys that wood
        cents: what they cost by the shop's price book; None where it has no price [cent]
    """

    feet: int
    grade: GradeName
    cents: int | None


def feet_to_buy(
    wood: str, size: str, short: Iterable[tuple[Mapping[str, Any], int]], figures: Figures
) -> FeetToBuy | None:
    """What would be ordered for parts without a place, reckoned as every order: their feet and the waste.

    Args:
        wood: as the parts call it
        size: the class of its boards
        short: each part as the cut file has it, and how many of it are short
        figures: the shop's figures: waste, grades, prices

    Returns:
        The feet; None where the shop's tables know no waste for such parts.
    """
    sort = sort_called(wood, size)
    cut = Cut(sort.cut)
    rough = billed_thickness(class_named(size).rough)
    feet: dict[PartUse, float] = {}
    for part, count in short:
        use = USES[part.get("face", "D")]
        length, width = (
            float(parse_length(str(part[name]), LengthUnit.INCH)) for name in ("length", "width")
        )
        feet[use] = feet.get(use, 0.0) + count * board_feet(rough, width, length)
    try:
        total = sum(order_feet(some, figures.waste_of(sort.material, use, cut)) for use, some in feet.items())
        grade = figures.grade_of(sort.material)
    except (NoWasteFigure, ValueError):
        return None
    whole = math.ceil(total - 1e-9)
    try:
        sawn = "" if cut is Cut.FLAT else f" {cut.sawn}"
        cents = round(whole * figures.prices.lumber(sort.material, f"{size}{sawn}").price)
    except NoPrice:
        cents = None
    return FeetToBuy(feet=whole, grade=grade, cents=cents)
