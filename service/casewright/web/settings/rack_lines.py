"""The usual numbers for dovetails on a page: what each is called, how it is typed, what the house has."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from casewright.joinery.choose import LOOKS
from casewright.joinery.defaults import USUAL
from casewright.joinery.sourced import Sourced
from casewright.measure.lengths import LengthUnit, write_length
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.web.settings.forms import in_percent, plain_number
from casewright.web.settings.lines import OWN, Ground, ground_of


class Typing(StrEnum):
    """How a number is typed."""

    LENGTH = "length"
    SLOPE = "slope"
    PERCENT = "per cent"
    NUMBER = "number"


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """One usual number of the shop's.

    Attributes:
        group: where it stands in a shop file, `usual` or `looks`
        key: its name there
        label: what it is called
        house: what the house has
        kind: how it is typed
        unit: what stands behind it
        hint: a line under the label
        least: the least that is taken, as typed; a length has its limits in the shop file
        most: the most
    """

    group: str
    key: str
    label: str
    house: Sourced
    kind: Typing
    unit: str = ""
    hint: str = ""
    least: float = 0
    most: float = 0

    @property
    def name(self) -> str:
        """The name of its field."""
        return f"{self.group}_{self.key}"

    def shown(self, value: float, unit: LengthUnit) -> str:
        """A value as it stands in the field."""
        if self.kind is Typing.LENGTH:
            return write_length(value, unit)
        if self.kind is Typing.SLOPE:
            return f"1:{plain_number(value)}"
        return in_percent(value) if self.kind is Typing.PERCENT else plain_number(value)

    def own(self, spec: ShopSpec) -> float | None:
        """What the shop has set; None where it keeps the house's."""
        held = getattr(spec, self.group)
        return None if held is None else getattr(held, self.key)

    def ground(self, spec: ShopSpec) -> Ground:
        """On what ground the number stands now."""
        return (
            Ground(word=OWN) if self.own(spec) is not None else ground_of(self.house.basis, self.house.source)
        )


def _usual(
    key: str, label: str, kind: Typing = Typing.LENGTH, hint: str = "", least: float = 0, most: float = 0
) -> Habit:
    house = getattr(USUAL, key)
    return Habit(
        group="usual", key=key, label=label, house=house, kind=kind, hint=hint, least=least, most=most
    )


def _looks(
    key: str,
    label: str,
    kind: Typing = Typing.NUMBER,
    unit: str = "points",
    hint: str = "",
    least: float = 0,
    most: float = 1000,
) -> Habit:
    return Habit(
        group="looks",
        key=key,
        label=label,
        house=getattr(LOOKS, key),
        kind=kind,
        unit=unit,
        hint=hint,
        least=least,
        most=most,
    )


USUAL_LINES = (
    _usual("half_pin_front", "Half pin at a drawer's front"),
    _usual("half_pin_back", "Half pin at a drawer's back"),
    _usual("pin", "Pin, at its narrow side"),
    _usual("pin_in_thin_sides", "Pin where the sides are thin"),
    _usual("thin_side", "Sides are thin up to"),
    _usual("slope_hardwood", "Slope in hardwood", Typing.SLOPE, "1:8, or 8."),
    _usual("slope_softwood", "Slope in softwood", Typing.SLOPE, "1:6, or 6."),
    _usual("lap_part", "Lap: the front divided by", Typing.NUMBER, least=2, most=12),
    _usual("rabbet_part", "Rabbet: the side divided by", Typing.NUMBER, least=4, most=32),
)
LOOKS_LINES = (
    _looks(
        "tail_sides",
        "A tail is best as wide as",
        unit="sides",
        hint="Thicknesses of the side.",
        least=0.5,
        most=10,
    ),
    _looks("width_weight", "Off when it is twice, or half, as wide"),
    _looks(
        "family_free",
        "Spacing free to differ",
        Typing.PERCENT,
        "%",
        "From the piece's other drawers.",
        0,
        100,
    ),
    _looks("family_weight", "Off at twice the spacing"),
    _looks("wide_tail", "A tail is very wide from", Typing.LENGTH, ""),
    _looks("wide_points", "Off for a very wide tail"),
    _looks("tail_pins", "A tail is slim under", unit="pins", least=1, most=20),
    _looks("slim_points", "Off for a slim tail"),
    _looks("single_tail_height", "One tail holds a board up to", Typing.LENGTH, ""),
)
HABITS = (*USUAL_LINES, *LOOKS_LINES)


def habit_grounds(habits: Iterable[Habit], spec: ShopSpec) -> dict[str, Ground]:
    """On what ground each number stands now, by the name of its field."""
    return {habit.name: habit.ground(spec) for habit in habits}
