"""Pulls, hardware, and the small parts that come from offcuts."""

import math
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face, Opening

FIXING_SPACING = 10.0
"""Top fixings along a rail, one about every ten inches (common practice) [in]."""
STOPS_PER_DRAWER = 2


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


def middle(left: Inches, width: Inches) -> Inches:
    """The centre line of an opening.

    Rule: left + width / 2

    Args:
        left: its left edge from the outside of the case [in]
        width: its width [in]

    Returns:
        The centre from the outside of the case [in]

    Source: geometry.
    """
    return left + width / 2


def spare_pulls(pulls: Count, per: Count) -> Count:
    """How many pulls to have in hand beyond those fitted.

    Rule: pulls / per, rounded down

    Args:
        pulls: how many are fitted
        per: one spare for each so many

    Returns:
        The spares

    Source: common practice: one for each eight.
    """
    return pulls // per


def pull_centres(spec: UnitSpec, face: Face, ledger: Ledger) -> dict[str, tuple[float, ...]]:
    """Where the pulls go: one in the middle of a narrow drawer, two on a wide one.

    The pulls of a wide drawer stand on the centre lines of the outer drawers of the nearest row with more
    than one, so that they line up down the case; where there is none, a quarter of the width from each edge.

    Args:
        spec: what the maker chose
        face: the openings
        ledger: keeps the working

    Returns:
        For each opening, the centres from the left outside of the case [in]

    Source: common practice.
    """
    centres: dict[str, tuple[float, ...]] = {}
    for opening in face.openings:
        lines: tuple[float, ...]
        if opening.width <= spec.pulls.one_up_to:
            lines = (ledger.take(f"{opening.code}.pull", middle, left=opening.left, width=opening.width),)
        else:
            lines = _outer_lines(face, opening) or (
                opening.left + opening.width / 4,
                opening.left + opening.width * 3 / 4,
            )
        centres[opening.code] = lines
    return centres


def _outer_lines(face: Face, opening: Opening) -> tuple[float, float] | None:
    """The centre lines of the outer drawers of the nearest parted row, where this opening spans them."""
    parted = [row for row in face.all_rows if len(row.openings) > 1]
    for row in sorted(parted, key=lambda row: abs(row.bottom - opening.bottom)):
        first, last = row.openings[0], row.openings[-1]
        lines = (first.left + first.designed_width / 2, last.left + last.designed_width / 2)
        if opening.left < lines[0] and lines[1] < opening.left + opening.width:
            return lines
    return None


def hardware(spec: UnitSpec, pulls: int) -> tuple[HardwareItem, ...]:
    """What has to be bought by the piece for one unit.

    Args:
        spec: what the maker chose
        pulls: how many pulls are fitted

    Returns:
        The items.

    Source: common practice; the wall restraint by 16 CFR 1261, and wanted on every free-standing piece.
    """
    return (
        HardwareItem(
            item=spec.pulls.item,
            quantity=pulls,
            spare=spare_pulls(pulls=pulls, per=spec.pulls.spare_per),
            note="drawer fronts",
        ),
        HardwareItem(
            item="wall restraint", quantity=1, note="always fitted, whatever the stability screen says"
        ),
        HardwareItem(item="screws and buttons", quantity=1, note="one lot: top, plinth, stops, muntins"),
    )


def small_parts(spec: UnitSpec, face: Face) -> tuple[SmallPart, ...]:
    """What is cut from offcuts: stops, plinth blocks, buttons, and guides between drawers.

    Args:
        spec: what the maker chose
        face: the openings

    Returns:
        The small parts of one unit.

    Source: common practice.
    """
    drawers = len(face.openings)
    parts = [
        SmallPart(
            name="Drawer stop",
            quantity=drawers * STOPS_PER_DRAWER,
            size=_size(1 / 4, 3 / 4, 1.5),
            note=say("stop line {:fraction} behind the face of the rail", spec.drawers.front),
        ),
    ]
    if spec.legs is None or spec.legs.fixing == "buttons":
        along = "the side and back aprons" if spec.legs else "both sub-top rails"
        parts.append(
            SmallPart(
                name="Top button",
                quantity=2 * (math.ceil(face.clear_width / FIXING_SPACING) + 1),
                size=_size(3 / 4, 1.0, 1.5),
                note=f"along {along}; tight at the front, with slack towards the back",
            )
        )
    if spec.plinth is not None:
        parts.append(
            SmallPart(
                name="Plinth corner block",
                quantity=4 * len(face.pedestals),
                size=_size(1.5, 1.5, max(1.0, spec.plinth.height - 1)),
                note="glued into the corners of the plinth",
            )
        )
    guides = sum(len(row.uprights) for row in face.all_rows)
    if guides:
        length = face.opening_depth - spec.case.rail_width - spec.frames.back_rail_width
        parts.append(
            SmallPart(
                name="Drawer guide",
                quantity=guides,
                size=_size(spec.frame.upright, 3 / 4, length),
                note="on the runner behind each upright, flush with its faces",
            )
        )
    return tuple(parts)


def _size(thickness: Inches, width: Inches, length: Inches) -> Words:
    return say("{:bare} × {:bare} × {:fraction}", thickness, width, length)
