"""The tools on the rack, and which of them clears a joint."""

from bisect import bisect_right
from dataclasses import dataclass

from casewright.joinery.layout import TailLayout
from casewright.joinery.limits import LIMITS, Limits
from casewright.joinery.saws import Saw, SawUse
from casewright.joinery.sourced import rows
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.making import quickly_made
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Rack:
    """The tools that a shop owns, so far as a joint depends on them.

    Attributes:
        chisels: widths of the chisels, narrowest first [in]
        saws: the saws for joints; one at least cuts dovetails
        cutters: widths of the straight cutters, narrowest first: bits, dado heads, plough irons [in]
        gauges: how many marking gauges can be kept set at once
        dividers: how many pairs of dividers can be kept set at once
    """

    chisels: tuple[Inches, ...]
    saws: tuple[Saw, ...]
    cutters: tuple[Inches, ...]
    gauges: Count
    dividers: Count

    def __post_init__(self) -> None:
        _refuse_unless_in_order("chisel", self.chisels)
        _refuse_unless_in_order("cutter", self.cutters)
        if all(saw.use is not SawUse.DOVETAIL for saw in self.saws):
            raise ValueError("A rack needs a saw for dovetails; list it with its kerf, 1/32 in as a rule.")
        if self.gauges < 1 or self.dividers < 1:
            raise ValueError(
                "Joints cannot be marked without a gauge and a pair of dividers; list one of each."
            )

    @property
    def kerf(self) -> Inches:
        """How wide the dovetail saw cuts; of several the thinnest [in]."""
        return min(saw.kerf for saw in self.saws if saw.use is SawUse.DOVETAIL)

    @property
    def fret_saw(self) -> Saw | None:
        """The fret or coping saw, of several the thinnest; None when there is none."""
        saws = (saw for saw in self.saws if saw.use is SawUse.FRET)
        return min(saws, key=lambda saw: saw.kerf, default=None)


def _refuse_unless_in_order(tool: str, widths: tuple[Inches, ...]) -> None:
    if list(widths) != sorted(widths):
        raise ValueError(f"List the {tool}s from the narrowest to the widest.")
    if widths and not widths[0] > 0:
        raise ValueError(say("A {} of {} has no edge; leave it out of the rack.", tool, widths[0]))


@quickly_made
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


SAW_ROWS = {name: row for name, row in rows("rack").items() if "use" in row}
"""The saws of a shop that has not listed its own, each with its ground."""

RACK = Rack(
    chisels=tuple(rows("rack")["chisels"]["value"]),
    saws=tuple(Saw(name=name, use=SawUse(row["use"]), kerf=row["value"]) for name, row in SAW_ROWS.items()),
    cutters=tuple(rows("rack")["cutters"]["value"]),
    gauges=rows("rack")["gauges"]["value"],
    dividers=rows("rack")["dividers"]["value"],
)
"""The rack of a shop that has not listed its own."""


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
