"""How far the wood of a unit swells and shrinks between the bench and the seasons at home."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.units import Percent, PerPercent
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.season_spec import Air, Season
from casewright.wood.moisture import equilibrium_moisture
from casewright.wood.movement import Direction, coefficient
from casewright.wood.species import wood


@dataclass(frozen=True, slots=True, kw_only=True)
class Climate:
    """The moisture of the wood as it is worked, and how far it goes either way at home.

    Attributes:
        now: moisture content as it is worked [%]
        driest: in the driest season [%]
        wettest: in the wettest season [%]
        swelling: wettest less now, never below nothing [%]
        drying: now less driest, never below nothing [%]
    """

    now: Percent
    driest: Percent
    wettest: Percent
    swelling: Percent
    drying: Percent


def moisture_rise(first: Percent, last: Percent) -> Percent:
    """How much moisture the wood takes up between two states; nothing when it dries.

    Rule: last - first, or 0 where that is below nothing

    Args:
        first: moisture content before [%]
        last: moisture content after [%]

    Returns:
        The rise [%]

    Source: arithmetic.
    """
    return max(0.0, last - first)


def climate(season: Season, ledger: Ledger) -> Climate:
    """The moisture contents between which every part of the unit moves.

    Args:
        season: what the maker knows of shop and home
        ledger: keeps the working

    Returns:
        The climate.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, equation 4-5, where air is given.
    """
    under = ledger.under("moisture")
    now, driest, wettest = (
        _moisture(air, name, under)
        for air, name in ((season.shop, "now"), (season.driest, "driest"), (season.wettest, "wettest"))
    )
    return Climate(
        now=now,
        driest=driest,
        wettest=wettest,
        swelling=under.take("swelling", moisture_rise, first=now, last=wettest),
        drying=under.take("drying", moisture_rise, first=driest, last=now),
    )


def _moisture(air: Air, name: str, under: Ledger) -> float:
    temperature = air.fahrenheit
    if temperature is None or air.humidity is None:
        return under.given(name, air.moisture or 0.0, "the unit file, or its default")
    return under.take(name, equilibrium_moisture, temperature=temperature, humidity=air.humidity)


def across(timber: Timber, ledger: Ledger) -> PerPercent:
    """The movement coefficient of a board in its width.

    Args:
        timber: the wood and how it was sawn
        ledger: keeps the working

    Returns:
        The change in width as a share of it, for each percent of moisture [1 per % moisture]

    Source: Wood Handbook, FPL-GTR-190 (2010), table 13-5, by the direction rule of its chapter 13.
    """
    species = wood(timber.wood)
    return ledger.take(
        f"moves.{species.name}.{timber.cut}",
        coefficient,
        radial=species.radial,
        tangential=species.tangential,
        cut=timber.cut,
        direction=Direction.WIDTH,
    )
