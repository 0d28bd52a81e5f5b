"""The year as a unit goes through it: twelve moisture contents, and any size followed from month to month."""

from collections.abc import Callable
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches, Percent
from casewright.pieces.asked.season_spec import Season
from casewright.pieces.layout.season import Climate, home_months
from casewright.wood.year import MONTHS, Month


@dataclass(frozen=True, slots=True, kw_only=True)
class Year:
    """The year at home.

    Attributes:
        now: moisture content of the wood as it is worked [%]
        months: at home month by month, January first [%]
        changes: what each month is above now, likewise [%]
        to_driest: what the driest is above now [%]
        to_wettest: what the wettest is above now [%]
        fitted: the month in which the drawers are fitted; None where nobody has said
        has_reading: whether the shop's moisture was typed
        ground: where the months come from, in a few words
    """

    now: Percent
    months: tuple[Percent, ...]
    changes: tuple[Percent, ...]
    to_driest: Percent
    to_wettest: Percent
    fitted: Month | None
    has_reading: bool
    ground: str

    @property
    def driest(self) -> Month:
        """The month in which the home is driest; the first of several."""
        return MONTHS[self.months.index(min(self.months))]

    @property
    def wettest(self) -> Month:
        """The month in which the home is wettest; the first of several."""
        return MONTHS[self.months.index(max(self.months))]

    def at(self, month: Month) -> Percent:
        """Moisture content in a month [%]."""
        return self.months[month.place]

    def follow(self, size: Callable[[str, Percent], Inches]) -> "Through":
        """A size now, at both ends of the year and month by month.

        `size` is asked with a name and with the moisture content then less that of now.
        """
        return Through(
            now=size("now", 0.0),
            driest=size("driest", self.to_driest),
            wettest=size("wettest", self.to_wettest),
            months=tuple(
                size(month.lower(), change) for month, change in zip(MONTHS, self.changes, strict=True)
            ),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Through:
    """One size through the year.

    Attributes:
        now: as it is worked [in]
        driest: in the driest month [in]
        wettest: in the wettest month [in]
        months: month by month, January first [in]
    """

    now: Inches
    driest: Inches
    wettest: Inches
    months: tuple[Inches, ...]

    @property
    def least(self) -> tuple[Month, Inches]:
        """The month in which it is least, and how much it is then [in]."""
        size = min(self.months)
        return MONTHS[self.months.index(size)], size

    @property
    def greatest(self) -> tuple[Month, Inches]:
        """The month in which it is greatest, and how much it is then [in]."""
        size = max(self.months)
        return MONTHS[self.months.index(size)], size


def moisture_change(first: Percent, last: Percent) -> Percent:
    """How much the moisture of the wood changes between two states.

    Rule: last - first

    Args:
        first: moisture content before [%]
        last: moisture content after [%]

    Returns:
        Above nothing it takes up moisture, below it dries [%]

    Source: arithmetic.
    """
    return last - first


def year_at_home(season: Season, climate: Climate, ledger: Ledger) -> Year:
    """The year at home, as far from the wood now as it goes.

    Args:
        season: what the maker knows of shop and home
        climate: the moisture contents between which the wood moves
        ledger: keeps the working

    Returns:
        The year.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 4, where air is given.
    """
    months = home_months(season, climate, ledger)
    under = ledger.under("year.change")

    def change(name: str, moisture: Percent) -> Percent:
        return under.take(name, moisture_change, first=climate.now, last=moisture)

    return Year(
        now=climate.now,
        months=months,
        changes=tuple(
            change(month.lower(), moisture) for month, moisture in zip(MONTHS, months, strict=True)
        ),
        to_driest=change("driest", climate.driest),
        to_wettest=change("wettest", climate.wettest),
        fitted=season.fitted,
        has_reading=season.has_reading,
        ground=ground_of(season),
    )


def ground_of(season: Season) -> str:
    """Where the months of a year come from.

    Args:
        season: what the maker knows of the home

    Returns:
        A few words.

    Source: the unit file.
    """
    if season.months is not None:
        return "your own twelve months"
    if season.climate is not None:
        return f"the climate “{season.climate}”, a smooth year"
    return "a smooth year between driest and wettest, January and July (common practice)"
