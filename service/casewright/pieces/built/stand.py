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
from casewright.stability.volume import clear_volume, fill_weight

LOAD_BELOW_TOP = 1 / 8
"""A weight hung over a front takes hold at its upper edge, a little below the rail (common practice) [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """How a unit stands. A design screen: only the test of the standard decides.

    Attributes:
        volume: room in all drawers [cu ft]
        fill: weight of the clothes that fill them [lb]
        cases: every situation of the screen
        safe_travel: how far all drawers, filled, may come out at once [in]
        findings: scope, situations and the wall restraint
    """

    volume: float
    fill: float
    cases: tuple[TipCase, ...]
    safe_travel: float
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
    bodies_of = tuple(_body(face, drawer, weights, under) for drawer in drawers)
    volume = sum(_volume(drawer, under) for drawer in drawers)
    piece = bodies.Piece(
        case=bodies.Mass(label="case", weight=weights.case.weight, x=weights.case.y, z=weights.case.z),
        drawers=bodies_of,
        height=face.overall_height,
        support_depth=spec.body.depth,
    )
    use = Use(free_standing=spec.use.free_standing, clothing=spec.use.clothing, volume=volume, restraint=True)
    cases = tip_cases(piece, limits, under)
    return Stand(
        volume=volume,
        fill=sum(body.fill_weight for body in bodies_of),
        cases=cases,
        safe_travel=greatest_travel(all_open_filled(piece), limits.target_factor, under),
        findings=tip_findings(piece, use, limits, under, cases),
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


def _body(face: Face, drawer: Drawer, weights: Masses, under: Ledger) -> bodies.Drawer:
    sizes, weight = drawer.sizes, weights.drawers[drawer.code]
    filled = under.take(
        f"{sizes.code}.fill",
        fill_weight,
        volume=_volume(drawer, under),
        density=house_limits().fill_density,
    )
    bottom = face.base_height + sizes.opening.bottom
    return bodies.Drawer(
        label=drawer.code,
        weight=weight.weight,
        centre=weight.y,
        height=weight.z,
        travel=drawer.travel,
        load_height=bottom + sizes.height - LOAD_BELOW_TOP,
        fill_weight=filled,
        fill_centre=sizes.front + sizes.inside.depth / 2,
    )
