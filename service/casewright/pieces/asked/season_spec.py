"""The moisture of the wood when it is worked, and at home in the driest and the wettest season."""

from typing import Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from casewright.measure.units import Fahrenheit, Percent, convert
from casewright.pieces.asked.fields import Spec
from casewright.wood.moisture import equilibrium_moisture


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


class Season(Spec):
    """The three states between which every part moves."""

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

    @model_validator(mode="after")
    def dry_is_drier(self) -> Self:
        if self.driest.moisture_content > self.wettest.moisture_content:
            raise PydanticCustomError(
                "season",
                "the driest season ({dry} %) is wetter than the wettest ({wet} %); change them over",
                {"dry": f"{self.driest.moisture_content:.1f}", "wet": f"{self.wettest.moisture_content:.1f}"},
            )
        return self
