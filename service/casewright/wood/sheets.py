"""Sheet goods: what a sheet really measures and weighs, and how many to buy by area."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import TOLERANCE, up_to
from casewright.measure.units import Count, Inches, Number, Pounds, PoundsPerCubicFoot, SquareInches
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document
from casewright.wood.waste import Footage, Waste


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One kind and thickness of sheet as it is sold.

    Attributes:
        kind: such as `hardwood plywood`, `birch plywood`, `mdf` or `particleboard`
        nominal: the thickness that it is called by, such as `1/4`
        thickness: what it usually measures; measure the sheet before a groove is cut for it [in]
        width: width of a whole sheet [in]
        length: length of a whole sheet [in]
        density: weight of the board [lb per cu ft]
        composite: whether the label rule for composite wood speaks of it
        plies: number of plies; None where it has none or it varies
        evidence: where the thickness comes from
        density_evidence: where the density comes from
    """

    kind: str
    nominal: str
    thickness: Inches
    width: Inches
    length: Inches
    density: PoundsPerCubicFoot
    composite: bool
    plies: Count | None
    evidence: Evidence
    density_evidence: Evidence

    def __post_init__(self) -> None:
        if min(self.thickness, self.width, self.length, self.density) <= 0:
            raise ValueError(
                f"A sheet of {self.nominal} in {self.kind} has a size and a weight above nothing."
            )

    def __str__(self) -> str:
        return f"{self.nominal} in {self.kind}"

    @property
    def area(self) -> SquareInches:
        """The face of a whole sheet [sq in].

        Source: arithmetic.
        """
        return self.width * self.length


@cache
def sheets() -> tuple[Sheet, ...]:
    """Every sheet in the table.

    Returns:
        The sheets, kind by kind, thin ones first.

    Source: trade pages and handbooks; each row names its own.
    """
    return tuple(
        Sheet(
            kind=row["kind"],
            nominal=row["nominal"],
            thickness=row["thickness_in"],
            width=row["width_in"],
            length=row["length_in"],
            density=row["density_lb_ft3"],
            composite=row["composite"],
            plies=row["plies"],
            evidence=evidence_of(row),
            density_evidence=evidence_of({"basis": row["density_basis"], "source": row["density_source"]}),
        )
        for row in document("panels")["sheets"]
    )


def sheet(kind: str, nominal: str) -> Sheet:
    """The sheet of a kind and a nominal thickness.

    Args:
        kind: such as `birch plywood`
        nominal: the thickness that it is called by, such as `1/4`

    Returns:
        The sheet.

    Raises:
        ValueError: the table has no such sheet; those of that kind are named.

    Source: trade pages and handbooks; each row names its own.
    """
    asked = (" ".join(kind.casefold().split()), nominal.strip())
    for each in sheets():
        if (each.kind, each.nominal) == asked:
            return each
    known = [str(each) for each in sheets() if each.kind == asked[0]]
    kinds = dict.fromkeys(each.kind for each in sheets())
    raise ValueError(f"There is no {nominal} in {kind}; there is {', '.join(known or kinds)}.")


def sheet_weight(width: Inches, length: Inches, thickness: Inches, density: PoundsPerCubicFoot) -> Pounds:
    """What a piece of sheet weighs.

    Rule: width * length * thickness / 1728 * density

    Args:
        width: width of the piece [in]
        length: length of the piece [in]
        thickness: its real thickness [in]
        density: weight of the board [lb per cu ft]

    Returns:
        Weight [lb]

    Source: arithmetic; a cubic foot is 1728 cubic inches.
    """
    return width * length * thickness / 1728 * density


def label_area() -> SquareInches:
    """The largest composite-wood face that a product may show without a label.

    Returns:
        The limit, 144 sq in [sq in]

    Source: 40 CFR part 770 (TSCA title VI), as the trade press reports it; confirm before use.
    """
    return float(document("panels")["label"]["largest_free_face_sq_in"])


def needs_label(sheet: Sheet, face: SquareInches) -> bool:
    """Whether a panel of this sheet makes the piece one that carries the composite-wood label.

    Args:
        sheet: what the panel is made of
        face: its largest face [sq in]

    Returns:
        True for a composite panel over 144 sq in.

    Source: 40 CFR part 770 (TSCA title VI), as the trade press reports it; confirm before use.
    """
    return sheet.composite and face > label_area() + TOLERANCE


@cache
def sheet_waste() -> Waste:
    """The usual waste of sheets, as a part of the area bought.

    Returns:
        15 % on net area.

    Source: common practice.
    """
    row = document("waste")["sheets"]
    return Waste(fraction=row["fraction"], footage=Footage.NET, row="sheets", evidence=evidence_of(row))


def sheets_by_area_exact(area: SquareInches, sheet_area: SquareInches, waste: Number) -> Number:
    """How many sheets the area of the parts comes to, before it is rounded up.

    Rule: area / (1 - waste) / sheet_area

    Args:
        area: net area of all the parts from this sheet [sq in]
        sheet_area: face of a whole sheet [sq in]
        waste: the part of the area bought that is wasted, such as 0.15 [dimensionless]

    Returns:
        Sheets and parts of a sheet [dimensionless]

    Source: common practice: waste is a part of what is bought, so it divides.
    """
    return area / (1 - waste) / sheet_area


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsByArea:
    """Sheets to buy, reckoned by area and not laid out: a part that is too long or too wide is not noticed.

    Attributes:
        sheet: what to buy
        area: net area of the parts [sq in]
        exact: sheets and parts of a sheet [dimensionless]
        count: whole sheets [dimensionless]
        note: how it was reckoned
    """

    sheet: Sheet
    area: SquareInches
    exact: Number
    count: Count
    note: str


def sheets_by_area(
    areas: Iterable[SquareInches], sheet: Sheet, waste: Waste | None = None, *, ledger: Ledger = UNKEPT
) -> SheetsByArea:
    """How many whole sheets to buy, by area alone.

    Args:
        areas: net area of each part [sq in]
        sheet: the sheet that they come from
        waste: the part of the area bought that is wasted; 15 % when none is given
        ledger: where the working is kept

    Returns:
        The count, marked as by area.

    Raises:
        ValueError: the waste is not one on net size.

    Source: common practice.
    """
    wasted = waste or sheet_waste()
    if wasted.footage is not Footage.NET:
        raise ValueError("Sheets are counted from the net area of their parts. Take a waste on net size.")
    area = math.fsum(areas)
    exact = ledger.take(
        "sheets_by_area", sheets_by_area_exact, area=area, sheet_area=sheet.area, waste=wasted.fraction
    )
    note = f"by area with {wasted.fraction * 100:g} % waste, not laid out"
    return SheetsByArea(sheet=sheet, area=area, exact=exact, count=int(up_to(exact, 1)), note=note)
