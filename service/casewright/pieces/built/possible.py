"""What no case can be: choices that leave a part, a joint or an opening without wood."""

from collections.abc import Iterable, Iterator

from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.possible_shell import (
    back_limits,
    base_limits,
    refuse_crate,
    refuse_top,
    refuse_undivided,
    wall_limits,
)
from casewright.pieces.case.leg_sizes import REACH
from casewright.pieces.case.side_limits import side_limits
from casewright.pieces.doors.limits import door_limits
from casewright.pieces.drawers.sizes import CannotBuild
from casewright.pieces.layout.least_rows import least_for
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import SIZES, Part

LEAST_LEFT = 1 / 16
"""Wood that a joint must leave before it is a joint at all; the checks say when that is too little [in]."""


Limit = tuple[str, Inches, Inches, Words]
"""A field, its value, the most it may be, and why."""


def refuse_impossible(spec: UnitSpec, face: Face) -> None:
    """Refuses a piece whose joints go through its boards, or whose rails meet.

    Args:
        spec: what the maker chose
        face: the depth of the openings

    Raises:
        CannotBuild: with the field, the value and one that would do

    Source: geometry of the case.
    """
    _refuse_low_openings(spec, face)
    refuse_crate(spec, face)
    refuse_top(spec)
    refuse_undivided(spec, face)
    _refuse_shelves(spec, face)
    around = _of_carcase(spec, face) if spec.legs is None else _on_legs(spec, spec.legs, face)
    shell = (*around, *base_limits(spec, face))
    for field, value, most, why in (*shell, *_of_drawers(spec, face), *door_limits(spec, face)):
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
    _refuse_too_little(spec)


def _refuse_low_openings(spec: UnitSpec, face: Face) -> None:
    """An opening too low for any drawer is told by its height, where nobody asked for such a groove."""
    if "height" in spec.drawers.groove.model_fields_set:
        return
    least, low = least_for(spec.drawers), min(face.openings, key=lambda each: each.height)
    if low.height < least - 1e-9:
        raise CannotBuild(
            say(
                "opening {} is {} high, too low for a drawer with its groove and back; make it at least "
                "{:up}, or lower the groove",
                low.code,
                low.height,
                least,
            )
        )


def _refuse_shelves(spec: UnitSpec, face: Face) -> None:
    """Between legs a shelf is loose on pins in them: there is no board at its ends to be housed in."""
    if spec.legs and spec.shelving.fixing != "pins" and any(space.shelves for space in face.spaces):
        raise CannotBuild(
            "shelving.fixing: between legs there is no board to house a shelf in; choose pins, which go into "
            "the legs, or a carcase"
        )


def _of_carcase(spec: UnitSpec, face: Face) -> Iterator[Limit]:
    case, frames, depth = spec.case, spec.frames, face.opening_depth
    narrow = min(opening.width for opening in face.openings)
    yield "case.lap", case.lap, case.side - LEAST_LEFT, "the tails need some of the side"
    yield "case.housing", case.housing, case.side - LEAST_LEFT, "the side must go on behind it"
    yield from side_limits(spec, face)
    yield "case.lipping", case.lipping, depth - LEAST_LEFT, "the case bottom is no deeper"
    yield from back_limits(spec, face.body_height)
    yield from wall_limits(spec, face.body_height)
    if spec.crate and not case.is_framed:
        return
    yield "case.rail_width", case.rail_width, depth / 2 - LEAST_LEFT, "two rails must fit front to back"
    if spec.crate:
        return
    yield "frames.tenon", frames.tenon, case.rail_width - LEAST_LEFT, "it ends in the rail"
    yield "frames.runner_width", frames.runner_width, narrow, "it runs under one drawer"
    yield "frames.centre_runner_width", frames.centre_runner_width, 2 * narrow, "it runs under two"
    yield "frames.back_rail_width", frames.back_rail_width, depth - case.rail_width, "it meets the front rail"


def _on_legs(spec: UnitSpec, legs: LegsAndAprons, face: Face) -> Iterator[Limit]:
    narrow = min(opening.width for opening in face.openings)
    low = min(opening.height for opening in face.openings)
    guide = legs.leg - legs.setback - legs.apron
    between = min(spec.body.width, spec.body.depth) / 2 - LEAST_LEFT
    yield "construction.leg", legs.leg, between, "two legs must fit side by side"
    yield "construction.foot", legs.foot or 0.0, legs.leg, "a taper takes wood away"
    yield "construction.apron", legs.apron, legs.leg, "it is let into the leg"
    yield "construction.setback", legs.setback, legs.leg - legs.apron, "the apron would reach past the leg"
    yield "construction.rail_width", legs.rail_width or 0.0, legs.leg, "the rail is let into the leg"
    yield "construction.dovetail", legs.dovetail or 0.0, legs.leg - LEAST_LEFT, "the leg must go on beyond it"
    yield (
        "construction.rail_tenon",
        legs.rail_tenon or 0.0,
        legs.leg - LEAST_LEFT,
        "the leg must go on beyond it",
    )
    yield "construction.tenon", legs.tenon or 0.0, legs.leg - LEAST_LEFT, "the leg must go on beyond it"
    yield (
        "construction.tongue",
        legs.tongue,
        (legs.rail_width or legs.leg) - LEAST_LEFT,
        "it ends in the rail",
    )
    yield (
        "construction.runner_width",
        legs.runner_width or guide + REACH,
        guide + narrow / 2,
        "two run under one drawer",
    )
    yield "construction.guide_height", legs.guide_height, low, "the opening is no higher"


def _of_drawers(spec: UnitSpec, face: Face) -> Iterator[Limit]:
    drawers, groove = spec.drawers, spec.drawers.groove
    lowest = min(opening.height for opening in face.openings)
    thin = drawers.front if groove.slips else min(drawers.side, drawers.front)
    yield "drawers.bottom_play", drawers.bottom_play, groove.side_depth / 2, "it must stay in its grooves"
    yield "drawers.groove.depth", groove.depth, thin - LEAST_LEFT, "the board goes on behind it"
    yield "drawers.groove.height", groove.height, lowest / 2, "the drawer stands above it"
    yield "drawers.groove.width", groove.width, lowest / 2, "the drawer is no higher"
    if groove.slips:
        slips = groove.slips
        narrow = min(opening.width for opening in face.openings)
        yield (
            "drawers.groove.slips.depth",
            slips.depth,
            slips.thickness - LEAST_LEFT,
            "the slip goes on behind it",
        )
        yield "drawers.groove.slips.thickness", slips.thickness, narrow / 4, "there is a bottom between them"
        yield "drawers.groove.slips.height", groove.slip_height, lowest / 2, "the drawer is no higher"


def _refuse_too_little(spec: UnitSpec) -> None:
    """Refuses what would not reach where it has to."""
    groove, legs = spec.drawers.groove, spec.legs
    least = []
    if groove.slips:
        top = groove.height + groove.width + LEAST_LEFT
        least.append(("drawers.groove.slips.height", groove.slip_height, top, "its groove ends below that"))
    if legs:
        guide = legs.leg - legs.setback - legs.apron
        under = guide + spec.drawers.side
        least.append(
            (
                "construction.runner_width",
                legs.runner_width or guide + REACH,
                under,
                "the side of a drawer runs on it",
            )
        )
    for field, value, fewest, why in least:
        if value < fewest - 1e-9:
            raise CannotBuild(
                say(
                    "{}: {:fraction} is too little, as {}; make it {:up fraction} or more",
                    field,
                    value,
                    why,
                    fewest,
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
