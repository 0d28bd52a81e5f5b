"""One unit for each kind of quantity, named in the type.

Inside the core a quantity is a bare float in the unit of its alias; the alias costs nothing at run time and
lets a test read, for every public function, which unit goes in and which comes out. pint knows each name
and does the conversions at the doors.
"""

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Annotated

if TYPE_CHECKING:
    from pint import UnitRegistry


@dataclass(frozen=True, slots=True)
class Unit:
    """The unit of an annotated quantity, by the name that pint knows it by."""

    name: str


Inches = Annotated[float, Unit("inch")]
SquareInches = Annotated[float, Unit("inch**2")]
CubicInches = Annotated[float, Unit("inch**3")]
SquareFeet = Annotated[float, Unit("foot**2")]
CubicFeet = Annotated[float, Unit("foot**3")]
Feet = Annotated[float, Unit("foot")]
Millimetres = Annotated[float, Unit("millimetre")]
Ticks = Annotated[int, Unit("tick")]
"""A stored length, in whole 1/640 mm [tick]."""
BoardFeet = Annotated[float, Unit("board_foot")]
Pounds = Annotated[float, Unit("pound")]
PoundsPerFoot = Annotated[float, Unit("pound/foot")]
PoundsPerCubicFoot = Annotated[float, Unit("pound/foot**3")]
PoundsPerSquareInch = Annotated[float, Unit("psi")]
PoundsForce = Annotated[float, Unit("force_pound")]
InchPounds = Annotated[float, Unit("inch*force_pound")]
Percent = Annotated[float, Unit("percent")]
PerPercent = Annotated[float, Unit("1/percent")]
Fahrenheit = Annotated[float, Unit("degF")]
Degrees = Annotated[float, Unit("degree")]
Seconds = Annotated[float, Unit("second")]
Minutes = Annotated[float, Unit("minute")]
Hours = Annotated[float, Unit("hour")]
Weeks = Annotated[float, Unit("week")]
Quarts = Annotated[float, Unit("quart")]
SquareFeetPerQuart = Annotated[float, Unit("foot**2/quart")]
Number = Annotated[float, Unit("dimensionless")]
Count = Annotated[int, Unit("dimensionless")]
Cents = Annotated[int, Unit("cent")]
"""Money in the smallest unit of the shop's one currency, whatever its name [cent]."""

MILLIMETRES_PER_INCH = 25.4
"""Exact by definition: 1 in = 25.4 mm (international inch, 1959)."""

NEWTON_METRES_PER_INCH_POUND = 0.112985
"""Rounded: 1 lbf = 4.4482216152605 N exactly, by 0.0254 m."""

TICKS_PER_INCH = 16_256
TICKS_PER_MILLIMETRE = 640
"""A stored length is whole ticks of 1/640 mm: 1/128 in is 127 ticks and 0.1 mm is 64, both exact."""


@cache
def registry() -> "UnitRegistry[float]":
    """The one pint registry of a process, with money and ticks added.

    It takes about a tenth of a second to build, so only a door that converts asks for it.

    Source: the definitions that come with pint; ticks are ours.
    """
    import pint  # noqa: PLC0415 - kept out of the start of every command that converts nothing

    units: pint.UnitRegistry[float] = pint.UnitRegistry()
    units.define("cent = [money]")
    units.define("tick = millimetre / 640")
    return units


def convert(value: Number, source: str, target: str) -> Number:
    """The same quantity in another unit.

    Args:
        value: the quantity in the source unit [in its own unit]
        source: a unit that pint knows, such as `degC`
        target: the unit wanted, such as `degF`

    Returns:
        The quantity in the target unit [in its own unit]

    Raises:
        pint.DimensionalityError: the two units do not measure the same kind of thing.

    Source: the definitions that come with pint.
    """
    units = registry()
    return float(units.Quantity(value, source).to(target).magnitude)
