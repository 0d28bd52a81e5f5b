"""The moisture of the wood when it is worked, and at home: driest and wettest, or month by month."""

import re
from typing import Annotated, Any, Self

from pydantic import AfterValidator, BeforeValidator, Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.typed import quoted
from casewright.measure.units import Fahrenheit, Percent, convert
from casewright.pieces.asked.fields import Spec
from casewright.wood.moisture import equilibrium_moisture
from casewright.wood.year import MONTHS, Month, home_climate, home_climates


class Air(Spec):
    """Moisture content itself, or the temperature and humidity that lead to it."""

    moisture: Percent | None = Field(
        None, ge=2, le=25, description="Moisture content of the wood, in percent.", examples=[8.5]
    )
    temperature_f: float | None = Field(
        None, ge=30, le=130, description="Air temperature in °F.", examples=[70]
    )
    temperature_c: float | None = Field(
        None, ge=-1, le=54, description="Air temperature in °C.", examples=[21]
    )
    humidity: Percent | None = Field(
        None, ge=5, le=95, description="Relative humidity of the air, in percent.", examples=[45]
    )

    @model_validator(mode="after")
    def moisture_or_air(self) -> Self:
        temperatures = [self.temperature_f, self.temperature_c].count(None)
        by_air = temperatures == 1 and self.humidity is not None and self.moisture is None
        by_reading = temperatures == 2 and self.humidity is None and self.moisture is not None
        if not (by_air or by_reading):
            raise PydanticCustomError(
                "air",
                "give moisture alone (such as 8.5), or humidity with one of temperature_f and temperature_c",
                {},
            )
        return self

    @property
    def fahrenheit(self) -> Fahrenheit | None:
        """The air temperature, whichever way it was given."""
        if self.temperature_c is not None:
            return convert(self.temperature_c, "degC", "degF")
        return self.temperature_f

    @property
    def moisture_content(self) -> Percent:
        """What the wood comes to in that air."""
        temperature = self.fahrenheit
        if self.moisture is not None or temperature is None or self.humidity is None:
            return self.moisture or 0.0
        return equilibrium_moisture(temperature=temperature, humidity=self.humidity)


LINE = re.compile(
    r"(?P<month>[A-Za-z]+)\.?[ ,:]+(?:(?P<moisture>[\d.,]+)\s*%?"
    r"|(?P<temperature>-?[\d.,]+)\s*°?\s*(?P<scale>[FCfc])[ ,;]+(?P<humidity>[\d.,]+)\s*%?)"
)
"""A month in one line: its name with the moisture of the wood, or with temperature and humidity."""
LINE_EXAMPLES = "“July 10.5” for the moisture of the wood, or “July 72 °F 58 %” for the air"
SHORTEST = 3
"""Letters that tell every month from the others."""


def month_called(text: Any) -> Month:
    """The month of a name that may be cut short, such as `jul`."""
    typed = str(text).strip().casefold()
    found = [each for each in MONTHS if len(typed) >= SHORTEST and each.casefold().startswith(typed)]
    if len(found) != 1:
        raise PydanticCustomError(
            "choice", "{typed} is not a month; write its name, such as July", {"typed": quoted(str(text))}
        )
    return found[0]


def twelve_months(value: Any) -> Any:
    """Twelve months as the file holds them, January first; lines of text may come in any order."""
    if not isinstance(value, list | tuple):
        return value
    if not all(isinstance(each, str) for each in value):
        return _counted(value)
    held: dict[Month, dict[str, float]] = {}
    for line in value:
        found = LINE.fullmatch(line.strip())
        if not found:
            raise PydanticCustomError(
                "season",
                "{line} is not a month with its air; write {examples}",
                {"line": quoted(line), "examples": LINE_EXAMPLES},
            )
        month = month_called(found["month"])
        if month in held:
            raise PydanticCustomError("season", "{month} stands there twice", {"month": month.value})
        held[month] = _air_of(found)
    missing = [month.value for month in MONTHS if month not in held]
    if missing and len(missing) < len(MONTHS):
        raise PydanticCustomError(
            "season", "a year has twelve months; there is no line for {names}", {"names": ", ".join(missing)}
        )
    return [held[month] for month in MONTHS if month in held] or _counted(value)


def _counted(value: Any) -> Any:
    if len(value) != len(MONTHS):
        raise PydanticCustomError(
            "season",
            "a year has twelve months, January first; {count} are given",
            {"count": len(value)},
        )
    return value


def _air_of(found: re.Match[str]) -> dict[str, float]:
    def number(name: str) -> float:
        try:
            return float(found[name].replace(",", "."))
        except ValueError:
            raise PydanticCustomError(
                "season", "{typed} is not a number; write one such as 10.5", {"typed": quoted(found[name])}
            ) from None

    if found["moisture"]:
        return {"moisture": number("moisture")}
    scale = f"temperature_{found['scale'].lower()}"
    return {scale: number("temperature"), "humidity": number("humidity")}


def known_climate(name: str) -> str:
    """The name of a climate that the table has."""
    try:
        return home_climate(name).name
    except LookupError:
        names = ", ".join(f"“{each.name}”" for each in home_climates())
        raise PydanticCustomError(
            "choice",
            "{typed} is not a climate here; write one of {names}",
            {"typed": quoted(name), "names": names},
        ) from None


class Season(Spec):
    """The wood as it is worked, and the year at home through which every part moves."""

    shop: Air = Field(
        default_factory=lambda: Air(moisture=8.5),
        description="The wood as it is worked. Default 8.5 %: a shop at 70 °F and 45 % humidity.",
    )
    driest: Air = Field(
        default_factory=lambda: Air(moisture=6.2),
        description="At home in the driest season. Default 6.2 %: 70 °F and 30 % humidity.",
    )
    wettest: Air = Field(
        default_factory=lambda: Air(moisture=11.0),
        description="At home in the wettest season. Default 11.0 %: 70 °F and 60 % humidity.",
    )

    months: Annotated[
        tuple[Air, ...] | None, BeforeValidator(twelve_months, json_schema_input_type=list[Air | str] | None)
    ] = Field(
        None,
        description="The home month by month, January first, or lines that name their month; the driest and "
        "the wettest follow from them. In place of driest and wettest.",
        examples=[[f"{month} {6.2 + 0.8 * min(at, 12 - at):.1f}" for at, month in enumerate(MONTHS)]],
    )
    climate: Annotated[str, Field(max_length=60), AfterValidator(known_climate)] | None = Field(
        None,
        description="A usual year at home, by its name, in place of driest and wettest.",
        examples=["most of the United States"],
    )
    fitted: Annotated[Month, BeforeValidator(month_called, json_schema_input_type=str)] | None = Field(
        None,
        description="The month in which the drawers are fitted. Where shop is left out, the wood is taken to "
        "stand as the home does in that month.",
        examples=["July"],
    )

    @property
    def has_year(self) -> bool:
        """Whether the year is given month by month, or by a climate."""
        return self.months is not None or self.climate is not None

    @property
    def has_reading(self) -> bool:
        """Whether somebody has said how the wood stands as it is worked."""
        return "shop" in self.model_fields_set

    @property
    def ends(self) -> tuple[Air, Air]:
        """The air at home when it is driest and when it is wettest."""
        if self.months is not None:
            ordered = sorted(self.months, key=lambda air: air.moisture_content)
            return ordered[0], ordered[-1]
        if self.climate is not None:
            known = home_climate(self.climate)
            return Air(moisture=known.driest), Air(moisture=known.wettest)
        return self.driest, self.wettest

    @model_validator(mode="after")
    def year_is_given_once(self) -> Self:
        ways = [name for name in ("months", "climate") if getattr(self, name) is not None]
        ends = [name for name in ("driest", "wettest") if name in self.model_fields_set]
        if len(ways) + bool(ends) > 1:
            raise PydanticCustomError(
                "season",
                "the year at home is given more than once ({names}); keep one of the twelve months, "
                "the climate, or driest and wettest",
                {"names": ", ".join((*ways, *ends))},
            )
        return self

    @model_validator(mode="after")
    def dry_is_drier(self) -> Self:
        if self.driest.moisture_content > self.wettest.moisture_content:
            raise PydanticCustomError(
                "season",
                "the driest season ({dry} %) is wetter than the wettest ({wet} %); change them over",
                {"dry": f"{self.driest.moisture_content:.1f}", "wet": f"{self.wettest.moisture_content:.1f}"},
            )
        return self
