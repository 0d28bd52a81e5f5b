"""The tools on the rack, and which of them clears a joint."""

from bisect import bisect_right
from dataclasses import dataclass

from casewright.joinery.layout import TailLayout
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.sourced import rows
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Rack:
    """The chisels that a shop owns, and its dovetail saw.

    Attributes:
        chisels: widths of the chisels, narrowest first [in]
        kerf: how wide the dovetail saw cuts [in]
    """

    chisels: tuple[Inches, ...]
    kerf: Inches

    def __post_init__(self) -> None:
        if list(self.chisels) != sorted(self.chisels):
            raise ValueError("List the chisels from the narrowest to the widest.")
        if self.chisels and not self.chisels[0] > 0:
            raise ValueError(say("A chisel of {} has no edge; leave it out of the rack.", self.chisels[0]))
        if not 0 < self.kerf < 1:
            raise ValueError(
                say(
                    "A saw kerf of {:exact} is not a dovetail saw's; {:fraction} is usual.", self.kerf, 1 / 32
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Chisels:
    """Which chisels clear one joint.

    Attributes:
        sockets: the widest that enters a socket; None when the rack has none so narrow [in]
        between_tails: the widest that pares between two tails at the baseline; None when there is none [in]
        from_the_end: the widest that goes between two tails from the end; None when there is none [in]
        fret_saw: whether the waste between the tails has to be sawn out, because the pins are so narrow
    """

    sockets: Inches | None
    between_tails: Inches | None
    from_the_end: Inches | None
    fret_saw: bool

    @property
    def enters_from_end(self) -> bool:
        """Whether the chisel for the baseline also goes between the tails from the end."""
        return self.between_tails is not None and self.between_tails == self.from_the_end


RACK = Rack(chisels=tuple(rows("rack")["chisels"]["value"]), kerf=rows("rack")["kerf"]["value"])
"""The rack of a shop that has not listed its own: a bench set of chisels and a dovetail saw."""


def widest_chisel(room: Inches, chisels: tuple[Inches, ...]) -> Inches | None:
    """The widest chisel that goes into a gap.

    Rule: the widest of the chisels that is not above room

    Args:
        room: width of the gap [in]
        chisels: widths in the rack, narrowest first [in]

    Returns:
        The chisel's width, or None when every chisel is wider than the gap [in]

    Source: common practice.
    """
    fitting = bisect_right(chisels, room + TOLERANCE)
    return chisels[fitting - 1] if fitting else None


def chisels_for(layout: TailLayout, rack: Rack, ledger: Ledger = UNKEPT, limits: Limits = LIMITS) -> Chisels:
    """Which chisels of the rack clear the joint.

    Args:
        layout: the row of tails
        rack: the shop's chisels and saw
        ledger: where the working is kept
        limits: what a joint is held to

    Returns:
        The chisel for the sockets and that for between the tails.

    Source: common practice.
    """
    owned = rack.chisels
    return Chisels(
        sockets=ledger.take("socket_chisel", widest_chisel, room=layout.neck, chisels=owned),
        between_tails=ledger.take("tail_chisel", widest_chisel, room=layout.pin_inside, chisels=owned),
        from_the_end=ledger.take("end_chisel", widest_chisel, room=layout.pin, chisels=owned),
        fret_saw=layout.pin <= limits.fret_saw_pin.value + TOLERANCE,
    )
