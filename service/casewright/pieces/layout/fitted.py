"""What is fitted to a unit beside its parts: what is bought by the piece, and what is cut from offcuts."""

from dataclasses import dataclass

from casewright.measure.saying import Words


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareItem:
    """Something to buy by the piece.

    Attributes:
        item: its name, as the price list has it
        quantity: how many the unit takes
        spare: how many more to order for the drawer of spares
        note: where it goes
    """

    item: str
    quantity: int
    spare: int = 0
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SmallPart:
    """A part that is cut from what falls off, and not counted in the feet.

    Attributes:
        name: what it is
        quantity: how many
        size: thickness, width and length in words
        note: where it goes
    """

    name: str
    quantity: int
    size: Words
    note: Words
