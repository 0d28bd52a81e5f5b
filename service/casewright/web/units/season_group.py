"""The group of the form that asks for the season: the shop, the home, and when the drawers are fitted."""

from collections.abc import Iterator

from casewright.web.units.fields import Asked, Group, Kind, ask
from casewright.wood.year import MONTHS, home_climates


def _air(state: str, label: str) -> Iterator[Asked]:
    yield ask(f"season.{state}.moisture", f"{label}: moisture %", hint="", lead=True)
    yield ask(f"season.{state}.temperature_f", f"{label}: air °F", hint="")
    yield ask(f"season.{state}.temperature_c", f"{label}: or °C", hint="")
    yield ask(f"season.{state}.humidity", f"{label}: humidity %", hint="")


SEASON_GROUP = Group(
    key="season",
    title="Season and humidity",
    note="For each state either the wood's moisture alone, or the air: one temperature and the humidity. "
    "Of the home give driest and wettest, or a usual year, or its twelve months.",
    fields=(
        *_air("shop", "Shop now"),
        *_air("driest", "Home, driest"),
        *_air("wettest", "Home, wettest"),
        ask(
            "season.climate",
            "Or a usual year at home",
            (("", "driest and wettest as above"), *((each.name, each.name) for each in home_climates())),
            hint="",
            is_wide=True,
        ),
        ask(
            "season.fitted",
            "Drawers are fitted in",
            (("", "not said"), *((month.value, month.value) for month in MONTHS)),
            hint="Shop now left empty: the wood stands as the home does then.",
            is_wide=True,
        ),
        Asked(
            name="season.months",
            label="Or the home month by month, one a line",
            kind=Kind.LINES,
            hint="The month, then the moisture of the wood or the air: July 10.5, or July 72 °F 58 %.",
            example="January 70 °F 30 %",
        ),
    ),
)
