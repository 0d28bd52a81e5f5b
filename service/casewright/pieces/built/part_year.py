"""One size of a part through the year, and what it is made of."""

from collections.abc import Callable
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import Words
from casewright.measure.units import Inches, PerPercent
from casewright.pieces.asked.fields import Timber
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.year import Through
from casewright.wood.movement import Direction, coefficient
from casewright.wood.species import wood


@dataclass(frozen=True, slots=True, kw_only=True)
class PartYear:
    """One size of a part that moves, through the year.

    Attributes:
        part: what it is, with the codes of drawers where it is one of theirs
        made_of: its wood and cut, or its sheet
        what: the size that is followed
        through: the size now, at both ends and month by month
        limit: what it must not fall below; None where it only tells how far something moves [in]
        note: what to do about it
    """

    part: str
    made_of: str
    what: str
    through: Through
    limit: Inches | None
    note: Words

    @property
    def passes(self) -> bool:
        """Whether it stays above its limit all year."""
        return self.limit is None or min(self.through.months) >= self.limit - TOLERANCE


def sawn(timber: Timber) -> str:
    """A wood with its cut, as the yard says it.

    Args:
        timber: the wood and how it was sawn

    Returns:
        Such as `cherry, flat-sawn`.

    Source: common practice.
    """
    return f"{timber.wood}, {timber.cut.sawn}"


def sides_of(spec: UnitSpec) -> str:
    """What the sides of a case are made of, as it is spoken of.

    Args:
        spec: what the maker chose

    Returns:
        Such as `cherry, flat-sawn`, or the name of a sheet.

    Source: the unit file.
    """
    case = spec.case
    if spec.legs is None and case.is_ply:
        return str(case.ply.bought)
    frames = "frames of " if spec.legs is None and case.is_framed else ""
    return f"{frames}{sawn(spec.woods.case)}"


def through_thickness(timber: Timber, ledger: Ledger) -> PerPercent:
    """The movement coefficient of a board in its thickness.

    Args:
        timber: the wood and how it was sawn
        ledger: keeps the working

    Returns:
        The change in thickness as a share of it, for each percent of moisture [1 per % moisture]

    Source: Wood Handbook, FPL-GTR-190 (2010), table 13-5, by the direction rule of its chapter 13.
    """
    species = wood(timber.wood)
    return ledger.take(
        f"moves.{species.name}.{timber.cut}.thickness",
        coefficient,
        radial=species.radial,
        tangential=species.tangential,
        cut=timber.cut,
        direction=Direction.THICKNESS,
    )


Named = Callable[[str, float], float]


def taken(under: Ledger, name: str, rule: Callable[..., float], **inputs: float) -> Named:
    """A size by its rule, to be followed through the year.

    Args:
        under: keeps the working
        name: of the figure, to which the month is added
        rule: the rule, which asks for a `change` of moisture
        inputs: what else it asks for

    Returns:
        What `Year.follow` asks for.

    Source: the rule names its own.
    """
    return lambda when, change: under.take(f"{name}_{when}", rule, **inputs, change=change)
