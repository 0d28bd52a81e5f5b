"""Waste: what part of the lumber bought does not become parts, and never on two bases at once.

Waste is a fraction of what is **bought**: 100 ft at 30 % waste is 100 / 0.70 = 142.86 ft, not 130. It belongs
to one of two bases. On rough size the trimming and joint allowances are in the feet already and the waste is
small: that is for orders. On net, finished size it is large: that is for a first budget.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from casewright.measure.units import BoardFeet, Number
from casewright.wood.basis import Basis, Evidence, evidence_of
from casewright.wood.grades import GradeName
from casewright.wood.movement import Cut
from casewright.wood.species import Wood
from casewright.wood.tables import document


class Footage(StrEnum):
    """What sizes the feet were counted on."""

    NET = "net"
    ROUGH = "rough"


class PartUse(StrEnum):
    """What a part is for, as far as it decides how much wood is wasted on it."""

    CASE = "case"
    DRAWER = "drawer"
    INSIDE = "inside"
    SEQUENCE = "sequence"
    LEG = "leg"


@dataclass(frozen=True, slots=True, kw_only=True)
class Waste:
    """The part of the lumber bought that does not become parts.

    Attributes:
        fraction: waste as a part of what is bought, such as 0.20 [dimensionless]
        footage: whether it is meant for feet on net or on rough size
        row: the row of the table that it comes from
        evidence: its ground
    """

    fraction: Number
    footage: Footage
    row: str
    evidence: Evidence

    def __post_init__(self) -> None:
        if not 0 <= self.fraction < 1:
            raise ValueError(
                f"Waste is a part of what is bought, such as 0.20 for 20 %; {self.fraction:g} is not."
            )


class NoWasteFigure(ValueError):
    """A grade that is not bought for such parts, so that there is no figure to order by."""


SELECT_GRADES = (GradeName.FAS, GradeName.ONE_FACE, GradeName.SELECTS)


def waste_for(wood: Wood, grade: GradeName, use: PartUse, cut: Cut = Cut.FLAT) -> Waste:
    """The usual waste on rough size, by wood, grade, use and cut.

    The first row of the table that fits is taken; the last ones are for woods that it does not name. Of FAS
    1-Face and Selects as much is wasted as of FAS, on parts that show one face.

    Args:
        wood: the wood, known to the table by its shop name
        grade: the grade that is bought
        use: what the parts are for
        cut: flat, quarter or rift

    Returns:
        The waste, for `order_feet`.

    Raises:
        NoWasteFigure: that grade is not bought for such parts.

    Source: common practice; each row names its own.
    """
    row = next(row for row in document("waste")["rough"] if _fits(row, wood.name, use, cut))
    fraction = row["select"] if grade in SELECT_GRADES else row["common"]
    if fraction is None or grade not in (*SELECT_GRADES, GradeName.COMMON_1):
        raise NoWasteFigure(f"{grade} is not bought for {row['row']}: buy FAS or Selects for them.")
    return Waste(fraction=fraction, footage=Footage.ROUGH, row=row["row"], evidence=evidence_of(row))


def _fits(row: Mapping[str, Any], wood: str, use: PartUse, cut: Cut) -> bool:
    """Whether a row speaks of this; a column that is left empty fits everything."""
    return all(
        row[column] is None or value in row[column]
        for column, value in (("woods", wood), ("uses", use), ("cuts", cut))
    )


def order_feet(rough: BoardFeet, waste: Waste) -> BoardFeet:
    """What to order, of parts counted on their rough sizes.

    Rule: rough / (1 - waste.fraction)

    Args:
        rough: feet on rough sizes at class thickness [bd ft]
        waste: waste on rough size

    Returns:
        Feet to order, unrounded [bd ft]

    Raises:
        ValueError: the waste is meant for net feet.

    Source: common practice: waste is a part of what is bought, so it divides; it is not added on.
    """
    _check_footage(waste, Footage.ROUGH)
    return rough / (1 - waste.fraction)


def order_feet_from_net(net: BoardFeet, waste: Waste) -> BoardFeet:
    """What to reckon with in a first budget, of parts counted on their finished sizes.

    Rule: net / (1 - waste.fraction)

    Args:
        net: feet on finished width and length at class thickness [bd ft]
        waste: waste on net size

    Returns:
        Feet to buy, unrounded [bd ft]

    Raises:
        ValueError: the waste is meant for rough feet.

    Source: common practice: waste is a part of what is bought, so it divides; it is not added on.
    """
    _check_footage(waste, Footage.NET)
    return net / (1 - waste.fraction)


def _check_footage(waste: Waste, footage: Footage) -> None:
    if waste.footage is not footage:
        raise ValueError(
            f"A waste of {waste.fraction * 100:g} % on {waste.footage} size does not go with feet on "
            f"{footage} size. Take a waste on {footage} size."
        )


def waste_found(used: BoardFeet, bought: BoardFeet) -> Number:
    """The waste that a job came to, for the shop's own table.

    Rule: 1 - used / bought

    Args:
        used: feet of the parts, on the size that the waste is to be for [bd ft]
        bought: feet that were cut up for them [bd ft]

    Returns:
        Waste as a part of what was bought [dimensionless]

    Raises:
        ValueError: more was used than was bought.

    Source: common practice.
    """
    if not 0 < used <= bought:
        raise ValueError(f"{used:g} bd ft of parts cannot come out of {bought:g} bd ft of lumber.")
    return 1 - used / bought


def learned_waste(used: BoardFeet, bought: BoardFeet, footage: Footage, learned_from: str) -> Waste:
    """A waste from the shop's own jobs, to be used in place of the table's.

    Args:
        used: feet of the parts, on that size [bd ft]
        bought: feet that were cut up for them [bd ft]
        footage: whether the parts were counted on net or on rough size
        learned_from: which jobs it was

    Returns:
        The waste.

    Raises:
        ValueError: more was used than was bought.

    Source: the shop's own jobs.
    """
    evidence = Evidence(basis=Basis.LEARNED, source=learned_from)
    return Waste(fraction=waste_found(used, bought), footage=footage, row="the shop's own", evidence=evidence)


@cache
def mill_waste(grade: GradeName) -> Waste:
    """What a production mill wastes on net size, to set a shop's figures against or for a first budget.

    Args:
        grade: FAS, No. 1, No. 2A or No. 3A Common

    Returns:
        The waste on net size: 30 % of FAS, 41 % of No. 1 Common.

    Raises:
        NoWasteFigure: none is published for that grade.

    Source: Gene Wengert, FDMC magazine, April 2018: clear two-face strips.
    """
    for row in document("waste")["mill_yields"]:
        if row["grade"] == grade:
            fraction = round(1 - float(row["yield"]), 9)
            return Waste(
                fraction=fraction,
                footage=Footage.NET,
                row=f"mill yield of {grade}",
                evidence=evidence_of(row),
            )
    raise NoWasteFigure(f"No mill yield is published for {grade}.")
