"""The year at home: what moisture wood comes to month by month, and a few usual climates to begin from."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from math import cos, radians

from casewright.measure.units import Count, Percent
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.moisture import interiors
from casewright.wood.tables import document


class Month(StrEnum):
    """A month, by its name."""

    JANUARY = "January"
    FEBRUARY = "February"
    MARCH = "March"
    APRIL = "April"
    MAY = "May"
    JUNE = "June"
    JULY = "July"
    AUGUST = "August"
    SEPTEMBER = "September"
    OCTOBER = "October"
    NOVEMBER = "November"
    DECEMBER = "December"

    @property
    def place(self) -> Count:
        """How many months of the year have gone before it."""
        return MONTHS.index(self)


MONTHS = tuple(Month)
DRIEST_MONTH = Month.JANUARY
"""When a heated house is driest, north of the equator, where nothing else is said (common practice)."""


def moisture_in_month(driest: Percent, wettest: Percent, month: Month) -> Percent:
    """What wood comes to in a month, where only the driest and the wettest of the year are known.

    A smooth year: driest in January, wettest in July, half-way in April and October.

    Rule: driest + (wettest - driest) × (1 - cos(30° × months after January)) / 2

    Args:
        driest: moisture content in the driest month [%]
        wettest: moisture content in the wettest month [%]
        month: the month that is asked for

    Returns:
        Moisture content in that month [%]

    Source: common practice: heated rooms north of the equator; your own twelve months beat it.
    """
    turned = radians(30 * (month.place - DRIEST_MONTH.place))
    return driest + (wettest - driest) * (1 - cos(turned)) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class HomeClimate:
    """What wood indoors does over the year in one kind of place.

    Attributes:
        name: what it is called
        average: moisture content over the year [%]
        swing: how far the driest and the wettest month lie from the average [%]
        average_from: where the average comes from
        swing_from: where the swing comes from
    """

    name: str
    average: Percent
    swing: Percent
    average_from: Evidence
    swing_from: Evidence

    @property
    def driest(self) -> Percent:
        """Moisture content in the driest month [%]."""
        return self.average - self.swing

    @property
    def wettest(self) -> Percent:
        """Moisture content in the wettest month [%]."""
        return self.average + self.swing


@cache
def home_climates() -> tuple[HomeClimate, ...]:
    """The climates that a unit file can name.

    Returns:
        The climates, the usual one first.

    Source: averages by the Wood Handbook, FPL-GTR-190 (2010), Table 13-2; swings are common practice.
    """
    by_region = {each.region: each for each in interiors()}
    found = []
    for row in document("climates")["climates"]:
        swing = row["swing"]
        known = by_region.get(row["name"])
        average = known.moisture if known else row["average"]["moisture_pct"]
        found.append(
            HomeClimate(
                name=row["name"],
                average=average,
                swing=swing["moisture_pct"],
                average_from=known.evidence if known else evidence_of(row["average"]),
                swing_from=evidence_of(swing),
            )
        )
    return tuple(found)


def home_climate(name: str) -> HomeClimate:
    """One climate by its name.

    Args:
        name: as the table has it

    Returns:
        The climate.

    Raises:
        LookupError: the table has no climate of that name

    Source: the table of climates.
    """
    found = next((each for each in home_climates() if each.name == name), None)
    if found is None:
        raise LookupError(name)
    return found
