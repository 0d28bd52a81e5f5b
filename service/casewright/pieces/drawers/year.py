"""The gap above each drawer month by month, and how high it is planed in whichever month it is fitted."""

from collections.abc import Sequence
from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.units import Inches, Percent
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.season import across, moisture_rise
from casewright.pieces.layout.year import Through, Year
from casewright.pieces.rules import drawer_rules as rules
from casewright.wood.year import MONTHS, Month


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How a drawer is fitted in one month, by wood that has come to what the home is then.

    Attributes:
        month: the month
        moisture: moisture content of the wood then [%]
        height: what front and sides are planed to [in]
        leave: the gap above it that is left so [in]
    """

    month: Month
    moisture: Percent
    height: Inches
    leave: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerYear:
    """Drawers alike in height and opening, through the year.

    Attributes:
        codes: the drawers
        opening: height of the opening [in]
        height: what front and sides are planed to now [in]
        limit: the gap that is wanted when wettest [in]
        front: the gap above the front
        side: the gap above the sides
        fits: how it would be fitted in each month, January first
    """

    codes: tuple[str, ...]
    opening: Inches
    height: Inches
    limit: Inches
    front: Through
    side: Through
    fits: tuple[Fit, ...]

    @property
    def least(self) -> tuple[Month, Inches]:
        """The month in which the gap is least, of front or side, and the gap [in]."""
        return min(self.front.least, self.side.least, key=lambda found: found[1])

    @property
    def greatest(self) -> tuple[Month, Inches]:
        """The month in which the gap is greatest, of front or side, and the gap [in]."""
        return max(self.front.greatest, self.side.greatest, key=lambda found: found[1])

    @property
    def keeps(self) -> bool:
        """Whether the gap that is wanted is left in every month."""
        return self.least[1] >= self.limit - TOLERANCE

    @property
    def is_one(self) -> bool:
        """Whether front and side move alike."""
        return self.front.months == self.side.months

    def fit(self, month: Month) -> Fit:
        """How it would be fitted in a month."""
        return self.fits[month.place]


def height_and_opening(drawer: Drawer) -> tuple[Inches, Inches]:
    """What the gap above a drawer follows from: drawers alike in it have the same gap all year.

    Args:
        drawer: the drawer

    Returns:
        Its height, and that of its opening [in]

    Source: geometry of the drawer.
    """
    return float(drawer.sizes.height), float(drawer.sizes.opening.height)


def drawer_year(spec: UnitSpec, group: Sequence[Drawer], year: Year, ledger: Ledger) -> DrawerYear:
    """Drawers alike, through the year.

    Args:
        spec: what the maker chose
        group: the drawers, alike in height and opening
        year: the year at home
        ledger: keeps the working

    Returns:
        The gaps, and the fit in each month.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    sizes, clearances = group[0].sizes, spec.drawers.clearances
    side = across(spec.woods.drawers, ledger)
    front = side if spec.drawers.fronts_outside else across(spec.woods.of("fronts"), ledger)
    under = ledger.under(f"year.{sizes.code}")

    def gaps(board: str, coefficient: float) -> Through:
        return year.follow(
            lambda when, change: under.take(
                f"{board}_{when}",
                rules.gap_above,
                opening=sizes.opening.height,
                bottom_gap=clearances.bottom,
                height=sizes.height,
                coefficient=coefficient,
                change=change,
            )
        )

    return DrawerYear(
        codes=tuple(each.code for each in group),
        opening=sizes.opening.height,
        height=sizes.height,
        limit=clearances.top,
        front=gaps("front", front),
        side=gaps("side", side),
        fits=tuple(
            _fit(month, (year.at(month), year.at(year.wettest)), (spec, group[0]), max(front, side), under)
            for month in MONTHS
        ),
    )


def _fit(
    month: Month, air: tuple[Percent, Percent], what: tuple[UnitSpec, Drawer], moves: float, under: Ledger
) -> Fit:
    (spec, drawer), (moisture, wettest) = what, air
    clearances, opening = spec.drawers.clearances, drawer.sizes.opening.height
    height = under.take(
        f"height_in_{month.lower()}",
        rules.drawer_height,
        opening=opening,
        bottom_gap=clearances.bottom,
        top_gap=clearances.top,
        coefficient=moves,
        swelling=moisture_rise(moisture, wettest),
    )
    leave = under.take(
        f"leave_in_{month.lower()}",
        rules.gap_above,
        opening=opening,
        bottom_gap=clearances.bottom,
        height=height,
        coefficient=moves,
        change=0.0,
    )
    return Fit(month=month, moisture=moisture, height=height, leave=leave)
