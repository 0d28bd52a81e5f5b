"""What every part of a case is worked out from."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches, PerPercent
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.openings import Face, FaceRow, Wall
from casewright.pieces.layout.season import Climate
from casewright.pieces.panels.frame import PanelFrame
from casewright.pieces.rules.case_rules import back_under_top, upright_housing


@dataclass(frozen=True, slots=True, kw_only=True)
class SideMoves:
    """What of a case side moves in depth, and by how much.

    Attributes:
        across: what of the depth lies across the grain: all of a solid side, the stiles of a frame [in]
        moves: movement coefficient of that; 0 where nothing moves [1 per % moisture]
        shrinkage: how much shallower the side gets between now and the driest [in]
        swelling: how much deeper between now and the wettest [in]
    """

    across: Inches
    moves: PerPercent
    shrinkage: Inches
    swelling: Inches


STILL = SideMoves(across=0.0, moves=0.0, shrinkage=0.0, swelling=0.0)
"""Plywood, and the long grain of aprons."""


def board_depth(spec: UnitSpec, face: Face) -> Inches:
    """The depth of the case bottom, and of plywood or rails that close the case above.

    Args:
        spec: what the maker chose
        face: the depth of the openings

    Returns:
        To the back; past the grooves that the boards have for a plywood one [in]

    Source: geometry of the case.
    """
    return spec.body.depth if spec.back.kind == "grooved-ply" else face.opening_depth


@dataclass(frozen=True, slots=True, kw_only=True)
class CasePlan:
    """What every part of a case is worked out from.

    Attributes:
        spec: what the maker chose
        face: heights and widths
        climate: the moisture contents between which the wood moves
        slack: gap at the rear of each runner [in]
        ledger: keeps the working
        moves: how much the sides move in depth
        frame: a side that is a frame with panels; None for any other
    """

    spec: UnitSpec
    face: Face
    climate: Climate
    slack: float
    ledger: Ledger
    moves: SideMoves = STILL
    frame: PanelFrame | None = None

    def code(self, mark: str) -> str:
        """The code of a part, from its mark within the unit."""
        return f"{self.spec.code}-{mark}"

    @property
    def board_depth(self) -> Inches:
        """Depth of the case bottom: to the back, or past the grooves that it has for a plywood one [in]."""
        return board_depth(self.spec, self.face)

    @property
    def back_height(self) -> Inches:
        """Height of a back in rabbets: as the case, or up into the rabbet of a top between its sides [in]."""
        spec, height = self.spec, self.face.body_height
        if not spec.top.is_dovetailed:
            return height
        return self.ledger.take(
            "back_height",
            back_under_top,
            body=height,
            top=spec.top.thickness,
            rabbet=min(spec.back.rabbet, spec.top.thickness / 2),
        )

    def housing_in(self, wall: Wall) -> Inches:
        """How deep a divider is housed in what stands beside it: the side, or a partition [in]."""
        thick = self.spec.case
        if wall is Wall.SIDE:
            return thick.housing
        return self.ledger.take(
            "partition_housing", upright_housing, housing=thick.housing, rail=thick.upright
        )

    def upright_housing(self, row: FaceRow) -> Inches:
        """How deep the uprights of a row are housed in the thinner of the rails above and below it [in]."""
        thick = self.spec.case
        if thick.upright_housing is not None:
            return thick.upright_housing
        return self.ledger.take(
            f"{row.code}.upright_housing",
            upright_housing,
            housing=thick.housing,
            rail=self.rail_by(row),
        )

    def rail_by(self, row: FaceRow) -> Inches:
        """Thickness of the thinner rail above or below a row [in]."""
        thick = self.spec.case
        above = self.spec.frame.upper if row.is_top else thick.divider
        below = thick.bottom if row.is_lowest else thick.divider
        return min(above, below)
