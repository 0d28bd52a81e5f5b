"""How far the wood of a unit swells and shrinks between the bench and the seasons at home."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.units import Percent, PerPercent
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.season_spec import Air, Season
from casewright.wood.moisture import equilibrium_moisture
from casewright.wood.movement import Direction, coefficient
from casewright.wood.species import wood
from casewright.wood.year import MONTHS, HomeClimate, home_climate, moisture_in_month


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


def driest_of(months: tuple[Percent, ...]) -> Percent:
    """The moisture content of the driest month.

    Rule: the least of the twelve months

    Args:
        months: moisture content month by month, January first [%]

    Returns:
        The least of them [%]

    Source: arithmetic.
    """
    return min(months)


def wettest_of(months: tuple[Percent, ...]) -> Percent:
    """The moisture content of the wettest month.

    Rule: the greatest of the twelve months

    Args:
        months: moisture content month by month, January first [%]

    Returns:
        The greatest of them [%]

    Source: arithmetic.
    """
    return max(months)


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
    if season.has_year or (season.fitted and not season.has_reading):
        now, driest, wettest = _through_the_year(season, under)
    else:
        now, driest, wettest = (
            _moisture(air, name, under)
            for air, name in (
                (season.shop, "now"),
                (season.driest, "driest"),
                (season.wettest, "wettest"),
            )
        )
    return Climate(
        now=now,
        driest=driest,
        wettest=wettest,
        swelling=under.take("swelling", moisture_rise, first=now, last=wettest),
        drying=under.take("drying", moisture_rise, first=driest, last=now),
    )


def _through_the_year(season: Season, under: Ledger) -> tuple[Percent, Percent, Percent]:
    """Now, driest and wettest, where the year is given or the month of fitting stands for a reading."""
    if season.has_year:
        months = _given_months(season, under)
        driest = under.take("driest", driest_of, months=months)
        wettest = under.take("wettest", wettest_of, months=months)
    else:
        driest, wettest = (_moisture(getattr(season, end), end, under) for end in ("driest", "wettest"))
        months = _between(driest, wettest, under) if season.fitted else ()
    if season.has_reading or season.fitted is None:
        return _moisture(season.shop, "now", under), driest, wettest
    basis = (
        f"the home's own in {season.fitted.value}, moisture.{season.fitted.value.lower()}: "
        "no reading of the wood in the shop is given"
    )
    return under.given("now", months[season.fitted.place], basis, Percent), driest, wettest


def home_months(season: Season, climate: Climate, ledger: Ledger) -> tuple[Percent, ...]:
    """What the wood comes to at home month by month.

    Args:
        season: what the maker knows of the home
        climate: its ends, from which the months follow where they are not given
        ledger: keeps the working

    Returns:
        Twelve moisture contents, January first [%]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, where air is given; the smooth year between two ends
        is common practice.
    """
    under = ledger.under("moisture")
    if season.has_year:
        return _given_months(season, under)
    return _between(climate.driest, climate.wettest, under)


def _given_months(season: Season, under: Ledger) -> tuple[Percent, ...]:
    if season.months is not None:
        return tuple(
            _moisture(air, month.lower(), under) for month, air in zip(MONTHS, season.months, strict=True)
        )
    known = home_climate(season.climate or "")
    least, most = (
        under.given(f"climate_{name}", value, _ground(known, sign), Percent)
        for name, value, sign in (("driest", known.driest, "less"), ("wettest", known.wettest, "and"))
    )
    return _between(least, most, under)


def _ground(known: HomeClimate, sign: str) -> str:
    average, swing = f"{known.average:g} % on average ({known.average_from})", f"{known.swing:g} %"
    return f"“{known.name}”: {average}, {sign} {swing} ({known.swing_from})"


def _between(driest: Percent, wettest: Percent, under: Ledger) -> tuple[Percent, ...]:
    return tuple(
        under.take(month.lower(), moisture_in_month, driest=driest, wettest=wettest, month=month)
        for month in MONTHS
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
