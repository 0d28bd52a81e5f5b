"""Dressed sizes of softwood boards and dimension lumber, by the name they are sold under."""

import re
from dataclasses import dataclass

from casewright.measure.lengths import LengthError, parse_length
from casewright.measure.units import Inches
from casewright.wood.basis import Basis, Evidence
from casewright.wood.tables import document


@dataclass(frozen=True, slots=True, kw_only=True)
class DressedSize:
    """What a softwood board measures.

    Attributes:
        name: the name as it was asked for
        nominal_thickness: thickness in the name; board feet are billed on it [in]
        nominal_width: width in the name [in]
        thickness: least dressed thickness, dry [in]
        width: least dressed width, dry [in]
        green_thickness: least dressed thickness, green [in]
        green_width: least dressed width, green [in]
        evidence: where the sizes come from
    """

    name: str
    nominal_thickness: Inches
    nominal_width: Inches
    thickness: Inches
    width: Inches
    green_thickness: Inches
    green_width: Inches
    evidence: Evidence


def dressed_size(name: str) -> DressedSize:
    """What a softwood board of this name measures when it is dressed.

    Args:
        name: thickness by width as sold, such as `1x12`, `5/4x6` or `2 x 4`

    Returns:
        Dry and green sizes.

    Raises:
        ValueError: the name is not of that form, or the standard has no such size.

    Source: American Softwood Lumber Standard, PS 20, nominal and minimum dressed sizes.
    """
    thickness, width = _nominal(name)
    data = document("softwood")
    for kind in ("boards", "dimension"):
        thick, wide = _row(data[kind]["thickness"], thickness), _row(data[kind]["width"], width)
        if thick and wide:
            return DressedSize(
                name=name,
                nominal_thickness=thickness,
                nominal_width=width,
                thickness=thick["dry_in"],
                width=wide["dry_in"],
                green_thickness=thick["green_in"],
                green_width=wide["green_in"],
                evidence=Evidence(basis=Basis(data["basis"]), source=data["source"]),
            )
    raise ValueError(
        f"The softwood standard has no board called “{name}”; 1x12, 5/4x6 and 2x4 are such names."
    )


def _nominal(name: str) -> tuple[float, float]:
    """Thickness and width as they are written in the name."""
    parts = re.split(r"[x×]", name.strip().lower())
    if len(parts) == 2:
        try:
            return float(parse_length(parts[0].strip())), float(parse_length(parts[1].strip()))
        except LengthError:
            pass
    raise ValueError(f"“{name}” is not the name of a board. Write thickness by width, such as 1x12 or 5/4x6.")


def _row(table: list[dict[str, float]], nominal: float) -> dict[str, float] | None:
    return next((row for row in table if row["nominal_in"] == nominal), None)
