"""How a unit stands: its weights handed to the tip screen."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches, Number
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.masses import Masses
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.notch_floor import load_centre, notched_room
from casewright.pieces.layout.openings import Face
from casewright.stability import masses as bodies
from casewright.stability.limits import house_limits
from casewright.stability.remedies import greatest_travel, travel_in_reach
from casewright.stability.scope import Use
from casewright.stability.situations import all_open_filled
from casewright.stability.tip_checks import tip_cases, tip_findings
from casewright.stability.tipping import TipCase
from casewright.stability.volume import (
    all_volumes,
    clear_volume,
    closed_volume,
    enclosed_volume,
    fill_weight,
    heavier_fill,
)

LOAD_BELOW_TOP = 1 / 8
"""A weight hung over a front takes hold at its upper edge, a little below the rail (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """How a unit stands. A design screen: only the test of the standard decides.

    Attributes:
        volume: enclosed room: in all drawers, and half of that behind doors [cu ft]
        behind_doors: half of the room behind doors [cu ft]
        fill: weight of the clothes that fill the drawers [lb]
        cases: every situation of the screen
        safe_travel: how far all drawers, filled, may come out at once [in]
        piece: the weights that the screen tries
        use: how it stands and what it is for
        findings: scope, situations and the wall restraint
    """

    volume: float
    behind_doors: float
    fill: float
    cases: tuple[TipCase, ...]
    safe_travel: float
    piece: bodies.Piece
    use: Use
    findings: tuple[Finding, ...]


def stand(
    spec: UnitSpec,
    face: Face,
    drawers: tuple[Drawer, ...],
    doors: tuple[Door, ...],
    weights: Masses,
    ledger: Ledger,
) -> Stand:
    """Screens a unit against tipping over.

    Args:
        spec: what the maker chose
        face: where the openings are
        drawers: the drawers, with their travel
        doors: the doors, with their leaves
        weights: what case, drawers and leaves weigh
        ledger: keeps the working

    Returns:
        The screen.

    Source: 16 CFR 1261 and ASTM F2057-23; a design screen.
    """
    limits, under = house_limits(), ledger.under("stand")
    volumes = {drawer.code: _volume(drawer, under) for drawer in drawers}
    in_drawers = under.take("volume.drawers", all_volumes, volumes=tuple(volumes.values()))
    behind = _behind_doors(face, under)
    volume = in_drawers
    if behind:
        volume = under.take("volume", enclosed_volume, drawers=in_drawers, behind_doors=behind)
    use = Use(free_standing=spec.use.free_standing, clothing=spec.use.clothing, volume=volume, restraint=True)
    front, rear = support(spec)
    piece = bodies.Piece(
        case=bodies.Mass(
            label="case", weight=weights.case.weight, x=weights.case.y - front, z=weights.case.z
        ),
        drawers=tuple(
            _body(spec, face, drawer, weights, volumes[drawer.code], -front, under) for drawer in drawers
        ),
        height=face.overall_height,
        support_depth=rear - front,
        leaves=tuple(leaf for door in doors for leaf in _leaves(door, weights, front)),
        one_at_a_time=spec.use.locks_one_at_a_time,
    )
    cases = tip_cases(piece, limits, under)
    return Stand(
        volume=volume,
        behind_doors=behind,
        fill=sum((body.fill_weight for body in piece.drawers), 0.0),
        cases=cases,
        safe_travel=_safe_travel(piece, limits.target_factor, under) if drawers else 0.0,
        piece=piece,
        use=use,
        findings=tip_findings(piece, use, limits, under, cases),
    )


def support(spec: UnitSpec) -> tuple[float, float]:
    """The lines on which a piece stands: its front and its rear feet.

    Args:
        spec: what the maker chose

    Returns:
        How far each is behind the front edge of the case [in]

    Source: geometry; the pivot is the front edge of the feet.
    """
    return spec.support_front, spec.support_rear


def _leaves(door: Door, weights: Masses, front: float) -> Iterator[bodies.Leaf]:
    """The leaves of one opening; an inset one lies in the face, an overlaid one before it."""
    plan = door.plan
    face = 0.0 if plan.is_inset else -plan.thickness
    for leaf in plan.leaves:
        mass = weights.leaves[leaf.code]
        yield bodies.Leaf(
            label=leaf.code,
            weight=mass.weight,
            width=plan.width,
            height=mass.z,
            load_height=plan.z + plan.height,
            front=face - front,
            centre=mass.y - face,
        )


def _behind_doors(face: Face, under: Ledger) -> float:
    """Half of the room behind doors."""
    found = [
        under.take(
            f"{space.code}.volume",
            closed_volume,
            width=space.width,
            depth=space.depth,
            height=space.height,
        )
        for space in face.spaces
        if space.holds == "doors"
    ]
    return under.take("volume.behind_doors", all_volumes, volumes=tuple(found)) if found else 0.0


def _volume(drawer: Drawer, under: Ledger) -> float:
    inside = drawer.sizes.inside
    notched = notched_room(drawer.sizes, under)
    if notched is not None:
        return notched
    return under.take(
        f"{drawer.sizes.code}.volume",
        clear_volume,
        width=inside.width,
        depth=inside.depth,
        height=inside.height,
        allowance=0.0,
    )


def _body(
    spec: UnitSpec,
    face: Face,
    drawer: Drawer,
    weights: Masses,
    volume: float,
    front: float,
    under: Ledger,
) -> bodies.Drawer:
    sizes, weight = drawer.sizes, weights.drawers[drawer.code]
    filled = under.take(f"{sizes.code}.fill", fill_weight, volume=volume, density=house_limits().fill_density)
    if spec.drawers.load_lb is not None:
        filled = under.take(f"{sizes.code}.load", heavier_fill, clothes=filled, typed=spec.drawers.load_lb)
    bottom = face.base_height + sizes.opening.bottom
    return bodies.Drawer(
        label=drawer.code,
        weight=weight.weight,
        centre=weight.y + sizes.stand,
        height=weight.z,
        travel=drawer.travel,
        load_height=bottom + sizes.height - LOAD_BELOW_TOP,
        fill_weight=filled,
        fill_centre=sizes.stand + sizes.inner + load_centre(sizes),
        front=front - sizes.stand,
        volume=volume,
        full=sizes.length,
    )


def _safe_travel(piece: bodies.Piece, target: Number, under: Ledger) -> Inches:
    """How far all drawers may come out together, filled; no further than there is drawer."""
    return under.take(
        "safe_travel",
        travel_in_reach,
        safe=greatest_travel(all_open_filled(piece), target, under),
        longest=max(each.full or each.travel for each in piece.drawers),
    )
