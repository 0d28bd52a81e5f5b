"""The saws of the rack: the one that cuts the tails, and the one that turns in the gap between them."""

from dataclasses import dataclass
from enum import StrEnum

from casewright.measure.saying import say
from casewright.measure.units import Inches

WIDEST = 0.25
"""No saw for joints cuts wider [in]."""


class SawUse(StrEnum):
    """What a saw of the rack is for."""

    DOVETAIL = "dovetail"
    FRET = "fret"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """One saw.

    Attributes:
        name: what the shop calls it
        use: what it is for; a coping saw is a fret saw here
        kerf: how wide it cuts [in]
    """

    name: str
    use: SawUse
    kerf: Inches

    def __post_init__(self) -> None:
        if not self.name.strip():
            raise ValueError("A saw needs a name, such as dovetail saw.")
        if not 0 < self.kerf <= WIDEST:
            raise ValueError(
                say(
                    "A saw kerf of {:exact} is not a dovetail saw's; {:fraction} is usual.", self.kerf, 1 / 32
                )
            )
