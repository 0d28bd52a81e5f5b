"""How a unit stands, in full: what its checks say in short, for its page, its report and its paper."""

from dataclasses import dataclass, replace

from casewright.measure.units import Inches, Number
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.masses import Weighed
from casewright.pieces.built.wall_load import Wall, wall_load
from casewright.pieces.built.weighing import Carry, carries, weighed_parts
from casewright.stability.limits import Limits, house_limits, rows
from casewright.stability.masses import total_weight
from casewright.stability.mending import Remedies, remedies
from casewright.stability.scope import is_in_scope
from casewright.stability.tipping import TipCase
from casewright.stability.travels import Further, alone_travel, child_with_others_open, further_travels

OF_STANDING = ("stand", "weights", "lifting", "wall")
"""How the names of its figures begin."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One of the three limits of the rule, and how the piece lies against it.

    Attributes:
        name: height, weight or enclosed room
        found: of the piece, in the limit's unit
        least: from where on the rule covers a piece
        unit: in, lb or cu ft
        source: where the limit comes from
        basis: how sure that is: published, from memory, common practice
    """

    name: str
    found: Number
    least: Number
    unit: str
    source: str
    basis: str

    @property
    def is_reached(self) -> bool:
        """Whether the piece is as large as that."""
        return self.found >= self.least


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How a unit stands, in full. A design screen: only the test of the standard decides.

    Attributes:
        unit: the unit, with the working of all of this in its ledger
        covered: whether the tip-over rule covers it
        limits: its height, weight and room against those of the rule
        parts: every part with its weight and where that sits
        further: all drawers open, as stopped and beyond
        others_open: a child's weight on one drawer with all others open too; None where there are no others
        alone: how far each drawer may come out by itself with a child's weight on it [in]
        remedies: what makes every situation pass
        carries: what has to be carried
        wall: the load of wall fixings; None for a piece that stands free
    """

    unit: Construction
    covered: bool
    limits: tuple[Limit, ...]
    parts: tuple[Weighed, ...]
    further: tuple[Further, ...]
    others_open: TipCase | None
    alone: dict[str, Inches]
    remedies: Remedies
    carries: tuple[Carry, ...]
    wall: Wall | None

    @property
    def cases(self) -> tuple[TipCase, ...]:
        """Every situation of the screen, worked out."""
        return self.unit.stand.cases


def unit_standing(unit: Construction) -> Standing:
    """How a unit stands, in full.

    Args:
        unit: the unit, worked out

    Returns:
        The screen, with its working in the ledger of a copy of the unit.

    Source: 16 CFR 1261 and ASTM F2057-23; a design screen.
    """
    ledger = unit.ledger.copied()
    held, piece, use = house_limits(), unit.stand.piece, unit.stand.use
    under = ledger.under("stand")
    weight = total_weight(piece)
    return Standing(
        unit=replace(unit, ledger=ledger),
        covered=is_in_scope(unit.face.overall_height, weight, use, held),
        limits=_limits(unit, weight, held),
        parts=weighed_parts(unit, ledger),
        further=further_travels(piece),
        others_open=child_with_others_open(piece, held),
        alone=alone_travel(unit.stand.cases, held.target_factor, under),
        remedies=remedies(piece, unit.stand.cases, held, under.under("remedies")),
        carries=carries(unit, ledger),
        wall=None if use.free_standing else wall_load(unit.spec, unit.face, unit.parts, unit.stand, ledger),
    )


def with_standing(unit: Construction, asked: str) -> Construction:
    """The unit whose ledger holds the figure that is asked for, if the full screen holds it.

    Args:
        unit: the unit, worked out
        asked: the name of a figure

    Returns:
        The unit itself, or one with the full screen in its ledger.

    Source: common practice.
    """
    name = asked.strip()
    is_of_standing = name.partition(".")[0] in OF_STANDING
    return unit_standing(unit).unit if is_of_standing and name not in unit.ledger else unit


def basis_of(name: str) -> str:
    """How sure a limit is.

    Args:
        name: the limit's name

    Returns:
        Published, from memory, or common practice.

    Source: common practice.
    """
    return str(rows()[name]["basis"])


def _limits(unit: Construction, weight: float, held: Limits) -> tuple[Limit, ...]:
    found = (
        ("height", "scope_height", unit.face.overall_height, held.scope_height),
        ("weight, empty", "scope_weight", weight, held.scope_weight),
        ("enclosed room", "scope_volume", unit.stand.volume, held.scope_volume),
    )
    return tuple(
        Limit(
            name=name,
            found=value,
            least=least,
            unit=str(rows()[key]["unit"]),
            source=str(rows()[key]["source"]),
            basis=basis_of(key),
        )
        for name, key, value, least in found
    )
