"""The checks of a unit's construction: always on, each with the number that would pass."""

from collections.abc import Iterator

from casewright.measure.findings import Finding
from casewright.measure.ledger import Ledger
from casewright.pieces.asked.shop import Shop
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.built.grain_checks import grain_checks
from casewright.pieces.built.notch_checks import notch_checks
from casewright.pieces.built.stock_checks import stock_checks
from casewright.pieces.case.carcase import Carcase
from casewright.pieces.case.checks import case_checks
from casewright.pieces.drawers.checks import drawer_checks
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.file_checks import file_checks
from casewright.pieces.drawers.front_checks import front_checks
from casewright.pieces.drawers.height_checks import height_checks
from casewright.pieces.drawers.tool_checks import tool_checks
from casewright.pieces.layout.openings import Face
from casewright.pieces.layout.parts import Part, PartLine
from casewright.pieces.layout.season import Climate


def unit_checks(
    spec: UnitSpec,
    face: Face,
    climate: Climate,
    case: Carcase,
    drawers: tuple[Drawer, ...],
    parts: tuple[Part, ...],
    lines: tuple[PartLine, ...],
    shop: Shop,
    ledger: Ledger,
) -> Iterator[Finding]:
    """Every check of the construction, but those of single joints and of standing.

    Args:
        spec: what the maker chose
        face: heights, rows and openings
        climate: the moisture contents between which the wood moves
        case: the carcase
        drawers: the drawers
        parts: every part of the unit
        lines: the cut list of the unit
        shop: the rack, and the boards that the shop can get
        ledger: keeps the working

    Returns:
        The findings, passes too.

    Source: common practice, each finding with its own source.
    """
    yield from case_checks(spec, face, climate, case, ledger)
    yield from drawer_checks(spec, climate, case, drawers, ledger)
    yield from front_checks(spec, face, climate, drawers, ledger)
    yield from height_checks(spec, drawers)
    yield from file_checks(spec, drawers)
    yield from notch_checks(spec, climate, drawers, parts, case.side_shrinkage, ledger)
    yield from tool_checks(spec, drawers, shop.rack)
    yield from stock_checks(spec, lines, shop)
    yield from grain_checks(spec, face, parts, shop)
