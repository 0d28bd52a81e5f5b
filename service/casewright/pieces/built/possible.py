"""What no case can be: choices that leave a part, a joint or an opening without wood."""

from collections.abc import Iterable

from casewright.measure.saying import say
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import SIZES, Part

LEAST_LEFT = 1 / 16
"""Wood that a joint must leave before it is a joint at all; the checks say when that is too little [in]."""


def refuse_impossible(spec: UnitSpec, face: Face) -> None:
    """Refuses a case whose joints go through its boards, or whose rails meet.

    Args:
        spec: what the maker chose
        face: the depth of the openings

    Raises:
        CannotBuild: with the field, the value and one that would do

    Source: geometry of the case.
    """
    case, back, depth, drawers = spec.case, spec.back, face.opening_depth, spec.drawers
    thin = min(drawers.side, drawers.front)
    narrow = min(opening.width for opening in face.openings)
    lowest = min(opening.height for opening in face.openings)
    limits = (
        ("case.lap", case.lap, case.side - LEAST_LEFT, "the tails need some of the side"),
        ("case.housing", case.housing, case.side - LEAST_LEFT, "the side must go on behind it"),
        ("back.rabbet", back.rabbet, case.side - LEAST_LEFT, "the side must go on outside it"),
        ("case.lipping", case.lipping, depth - LEAST_LEFT, "the case bottom is no deeper"),
        ("case.rail_width", case.rail_width, depth / 2 - LEAST_LEFT, "two rails must fit front to back"),
        ("back.lap", back.lap, back.widest / 2, "a board is no wider"),
        ("back.gap", back.gap, back.lap - LEAST_LEFT, "the laps must still cover it"),
        ("drawers.bottom_play", drawers.bottom_play, drawers.groove.depth / 2, "it must stay in its grooves"),
        ("frames.tenon", spec.frames.tenon, case.rail_width - LEAST_LEFT, "it ends in the rail"),
        ("frames.runner_width", spec.frames.runner_width, narrow, "it runs under one drawer"),
        ("frames.centre_runner_width", spec.frames.centre_runner_width, 2 * narrow, "it runs under two"),
        ("drawers.groove.depth", drawers.groove.depth, thin - LEAST_LEFT, "the board goes on behind it"),
        ("drawers.groove.height", drawers.groove.height, lowest / 2, "the drawer stands above it"),
        ("drawers.groove.width", drawers.groove.width, lowest / 2, "the drawer is no higher"),
        (
            "frames.back_rail_width",
            spec.frames.back_rail_width,
            depth - case.rail_width,
            "it meets the front rail",
        ),
    )
    for field, value, most, why in limits:
        if most <= 0:
            raise CannotBuild(f"{field}: nothing is left for it, as {why}; make the case larger")
        if value > most + 1e-9:
            raise CannotBuild(
                say(
                    "{}: {:fraction} is too much, as {}; make it {:down fraction} or less",
                    field,
                    value,
                    why,
                    most,
                )
            )


def refuse_sizeless(parts: Iterable[Part]) -> None:
    """Refuses a unit with a part that has come out at nothing or less.

    Args:
        parts: every part of the unit

    Raises:
        CannotBuild: with the part and the size that vanished

    Source: geometry.
    """
    for part in parts:
        for name in SIZES:
            size = getattr(part, name)
            if size <= 0:
                raise CannotBuild(
                    say(
                        "{} ({}) would be {} {}; make the case larger or the parts around it smaller",
                        part.name,
                        part.code,
                        size,
                        name,
                    )
                )
