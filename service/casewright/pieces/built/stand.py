"""How a unit stands: its weights handed to the tip screen."""

from dataclasses import dataclass

from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.masses import Masses
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Face
from casewright.stability import masses as bodies
from casewright.stability.limits import house_limits
from casewright.stability.remedies import greatest_travel
from casewright.stability.scope import Use
from casewright.stability.situations import all_open_filled
from casewright.stability.tip_checks import tip_cases, tip_findings
from casewright.stability.tipping import TipCase
from casewright.stability.volume import all_volumes, clear_volume, fill_weight

ONE_AT_A_TIME = "one at a time"
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


def stand(spec: UnitSpec, face: Face, drawers: tuple[Drawer, ...], weights: Masses, ledger: Ledger) -> Stand:
    """Screens a unit against tipping over.

    Args:
        spec: what the maker chose
        face: where the openings are
        drawers: the drawers, with their travel
        weights: what case and drawers weigh
        ledger: keeps the working

    Returns:
        The screen.

    Source: 16 CFR 1261 and ASTM F2057-23; a design screen.
    """
    limits, under = house_limits(), ledger.under("stand")
    front, rear = support(spec)
    volumes = {drawer.code: _volume(drawer, under) for drawer in drawers}
    in_drawers = under.take("volume.drawers", all_volumes, volumes=tuple(volumes.values()))
    volume = in_drawers
    use = Use(free_standing=spec.use.free_standing, clothing=spec.use.clothing, volume=volume, restraint=True)
    piece = _piece(spec, face, drawers, weights, volumes, (front, rear), under)
    cases = tip_cases(piece, limits, under)
    return Stand(
        volume=volume,
        behind_doors=0.0,
        fill=sum((body.fill_weight for body in piece.drawers), 0.0),
        cases=cases,
        safe_travel=greatest_travel(all_open_filled(piece), limits.target_factor, under) if drawers else 0.0,
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


def _piece(
    spec: UnitSpec,
    face: Face,
    drawers: tuple[Drawer, ...],
    weights: Masses,
    volumes: dict[str, float],
    feet: tuple[float, float],
    under: Ledger,
) -> bodies.Piece:
    """What the screen tries: every weight counted from the front feet."""
    front, rear = feet
    return bodies.Piece(
        case=bodies.Mass(
            label="case", weight=weights.case.weight, x=weights.case.y - front, z=weights.case.z
        ),
        drawers=tuple(
            _body(face, drawer, weights, volumes[drawer.code], -front, under) for drawer in drawers
        ),
        height=face.overall_height,
        support_depth=rear - front,
        one_at_a_time=spec.use.interlock == ONE_AT_A_TIME,
    )


def _volume(drawer: Drawer, under: Ledger) -> float:
    inside = drawer.sizes.inside
    return under.take(
        f"{drawer.sizes.code}.volume",
        clear_volume,
        width=inside.width,
        depth=inside.depth,
        height=inside.height,
        allowance=0.0,
    )


def _body(
    face: Face, drawer: Drawer, weights: Masses, volume: float, front: float, under: Ledger
) -> bodies.Drawer:
    sizes, weight = drawer.sizes, weights.drawers[drawer.code]
    filled = under.take(f"{sizes.code}.fill", fill_weight, volume=volume, density=house_limits().fill_density)
    bottom = face.base_height + sizes.opening.bottom
    return bodies.Drawer(
        label=drawer.code,
        weight=weight.weight,
        centre=weight.y + sizes.stand,
        height=weight.z,
        travel=drawer.travel,
        load_height=bottom + sizes.height - LOAD_BELOW_TOP,
        fill_weight=filled,
        fill_centre=sizes.stand + sizes.inner + sizes.inside.depth / 2,
        front=front - sizes.stand,
        volume=volume,
        full=sizes.length,
    )
