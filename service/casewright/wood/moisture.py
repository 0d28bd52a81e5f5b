"""What moisture wood comes to in the air around it."""

from dataclasses import dataclass
from functools import cache

from casewright.measure.units import Fahrenheit, Percent
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document

COLDEST, HOTTEST = 30.0, 270.0
"""The range of Wood Handbook Table 4-2 [degF]."""


def equilibrium_moisture(temperature: Fahrenheit, humidity: Percent) -> Percent:
    """The moisture content that wood comes to, given time, in air of this temperature and humidity.

    Species differ a little, and wood that is drying stands a little above wood that is wetting; neither is
    in the equation, nor are panels.

    Rule: 1800 / w * (x / (1 - x) + (k1 * x + 2 * k1 * k2 * x^2) / (1 + k1 * x + k1 * k2 * x^2)), with
    x = k * humidity / 100, w = 330 + 0.452 T + 0.00415 T^2, k = 0.791 + 0.000463 T - 0.000000844 T^2,
    k1 = 6.34 + 0.000775 T - 0.0000935 T^2, k2 = 1.09 + 0.0284 T - 0.0000904 T^2, T = temperature

    Args:
        temperature: temperature of the air, from 30 to 270 [degF]
        humidity: relative humidity, from 0 to just under 100 [%]

    Returns:
        Equilibrium moisture content [%]

    Raises:
        ValueError: the temperature or the humidity is outside the range of the equation.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation of Table 4-2 (Simpson 1998, FPL-RN-0268).
    """
    if not COLDEST <= temperature <= HOTTEST:
        raise ValueError(
            f"{temperature:g} °F is outside the handbook's table, "
            f"which runs from {COLDEST:g} to {HOTTEST:g} °F."
        )
    if not 0 <= humidity < 100:
        raise ValueError(f"Relative humidity lies between 0 and 100 %; {humidity:g} % does not.")
    w = 330 + 0.452 * temperature + 0.00415 * temperature**2
    k = 0.791 + 0.000463 * temperature - 8.44e-7 * temperature**2
    k1 = 6.34 + 0.000775 * temperature - 9.35e-5 * temperature**2
    k2 = 1.09 + 0.0284 * temperature - 9.04e-5 * temperature**2
    x = k * humidity / 100
    held = x / (1 - x)
    bound = (k1 * x + 2 * k1 * k2 * x**2) / (1 + k1 * x + k1 * k2 * x**2)
    return 1800 / w * (held + bound)


DAMPEST = 99.0
"""Beyond this the equation climbs without meaning [%]."""


def humidity_for(temperature: Fahrenheit, moisture: Percent) -> Percent:
    """The relative humidity of air in which wood comes to a moisture content: the equation, read backwards.

    Args:
        temperature: temperature of the air, from 30 to 270 [degF]
        moisture: moisture content of the wood, not below nothing [%]

    Returns:
        Relative humidity, 99 at the most [%]

    Raises:
        ValueError: the temperature is outside the range of the equation.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation of Table 4-2, solved by halving.
    """
    low, high = 0.0, DAMPEST
    for _ in range(40):  # a hundred halved forty times is a ten-billionth of a percent
        middle = (low + high) / 2
        if equilibrium_moisture(temperature, middle) < moisture:
            low = middle
        else:
            high = middle
    return high


@dataclass(frozen=True, slots=True, kw_only=True)
class Interior:
    """What wood indoors averages over the year in one part of the country.

    Attributes:
        region: where
        moisture: average moisture content of wood indoors [%]
        evidence: where the figure comes from
    """

    region: str
    moisture: Percent
    evidence: Evidence


@cache
def interiors() -> tuple[Interior, ...]:
    """What wood indoors averages over the year, region by region.

    Returns:
        The regions, the usual one first.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, Figure 13-1 and Table 13-2.
    """
    return tuple(
        Interior(region=row["region"], moisture=row["moisture_pct"], evidence=evidence_of(row))
        for row in document("moisture")["interiors"]
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class MoistureRange:
    """A range of moisture content with its ground.

    Attributes:
        least: lower end [%]
        most: upper end [%]
        evidence: where it comes from
    """

    least: Percent
    most: Percent
    evidence: Evidence

    def __post_init__(self) -> None:
        if not 0 <= self.least <= self.most:
            raise ValueError(f"A range of moisture runs upwards; {self.least:g} to {self.most:g} % does not.")

    def holds(self, moisture: Percent) -> bool:
        """Whether a reading lies in the range.

        Args:
            moisture: a reading [%]

        Returns:
            True when it does, ends included.

        Source: common practice.
        """
        return self.least <= moisture <= self.most


@cache
def furniture_moisture() -> MoistureRange:
    """How dry lumber for furniture should be when it is worked.

    Returns:
        The range, 6 to 8 % in the handbook.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13.
    """
    row = document("moisture")["furniture_lumber"]
    return MoistureRange(least=row["least_pct"], most=row["most_pct"], evidence=evidence_of(row))
