"""How far each part of a unit is, by the stages of its drawer or its case."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import IntEnum

from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.measure.units import Hours
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import Part
from casewright.pieces.layout.roles import role_of


class Made(IntEnum):
    """What has been done to a part; each takes the ones before it for granted."""

    NOTHING = 0
    CUT = 1
    JOINTED = 2
    GLUED = 3


MADE_WORDS = {
    Made.NOTHING: "not cut yet",
    Made.CUT: "cut to size",
    Made.JOINTED: "joints cut",
    Made.GLUED: "glued in",
}
_DRAWER = {"milled": Made.CUT, "joints": Made.JOINTED, "glued": Made.GLUED}
"""From which stage of a drawer on its parts are so far."""
_BOTTOM = {"milled": Made.CUT, "run": Made.GLUED}
_BODY = {"panels": Made.CUT, "joints": Made.JOINTED, "glued": Made.GLUED}
_FRAMES = {"panels": Made.CUT, "joints": Made.JOINTED, "frames": Made.GLUED}
_CLOSING = {"panels": Made.CUT, "closed": Made.GLUED}
"""Top, base, back and doors come last, and have no joint in the body before."""
CLOSING = "TBP"
"""The first letters of the lines of top, base and back, which are screwed to the body of a case."""
LOOSE = ("N", "M", "X", "C")
"""Bottom, bar, slips and beads of a drawer go on once it is glued up."""
CASE = "C"
"""The assembly of every part that is no drawer's."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reached:
    """Where a unit stands at the bench.

    Attributes:
        case: the stage that its case has reached; empty for none
        drawers: the stage of each drawer, by its opening, such as `R5-1`
        hours: what has gone into each drawer, and into the case by `C`, as far as it is known [h]
    """

    case: str = ""
    drawers: Mapping[str, str] = field(default_factory=dict)
    hours: Mapping[str, Hours] = field(default_factory=dict)


def assembly_of(unit: Construction, part: Part) -> str:
    """What a part belongs to: the opening of its drawer, or the case.

    Args:
        unit: the unit
        part: one of its parts

    Returns:
        Such as `R5-1`; `C` for the case.

    Source: the code of the part.
    """
    owner = part.code.rsplit("-", 1)[0].removeprefix(f"{unit.spec.code}-")
    return owner if any(owner == drawer.sizes.code for drawer in unit.drawers) else CASE


def comes_last(part: Part) -> bool:
    """Whether a part is screwed or hung to the body of a case: top, base, back, or a door.

    Args:
        part: a part of the case

    Returns:
        True where it comes off again.

    Source: the cut list.
    """
    return part.line[:1] in CLOSING or role_of(part) == "doors"


def made_so_far(unit: Construction, part: Part, assembly: str, reached: Reached) -> Made:
    """What has been done to a part.

    Args:
        unit: the unit
        part: one of its parts
        assembly: what it belongs to
        reached: where the unit stands

    Returns:
        The last that has been done.

    Source: common practice; the order of work at the bench.
    """
    if assembly != CASE:
        ladder = _BOTTOM if part.code.rsplit("-", 1)[-1].startswith(LOOSE) else _DRAWER
        return _so_far(reached.drawers.get(assembly, ""), ladder, drawer_stages())
    ladder = _CLOSING if comes_last(part) else _FRAMES if part.line[:1] in "WD" else _BODY
    return _so_far(reached.case, ladder, case_stages())


def _so_far(stage: str, ladder: Mapping[str, Made], stages: tuple[Stage, ...]) -> Made:
    if not stage:
        return Made.NOTHING
    place = place_of(stage, stages)
    return max(
        (made for name, made in ladder.items() if place_of(name, stages) <= place), default=Made.NOTHING
    )
