"""A unit through the year as text, and for machines."""

from typing import Any

from casewright.papers.writing import Writing, section, table, wrapped
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.season import UnitYear, unit_year
from casewright.pieces.layout.year import Through
from casewright.wood.year import MONTHS


def year_section(unit: Construction, writing: Writing) -> str:
    """The season in short: the gap above each drawer, what else runs out of room, and how to fit it.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        Two tables and a few sentences.
    """
    found = unit_year(unit)
    year = found.year
    gaps = table(
        ("Drawers", "Plane to", "Gap now", "Least", "in", "Greatest", "in", *_other_fits(found)),
        (
            (
                ", ".join(each.codes),
                writing.size(each.height),
                writing.size(each.front.now),
                writing.fine(each.least[1]),
                each.least[0].value,
                writing.fine(each.greatest[1]),
                each.greatest[0].value,
                *(writing.size(fit.leave) for fit in (each.fit(year.driest), each.fit(year.wettest))),
            )
            for each in found.drawers
        ),
        right=(1, 2, 3, 5, 7, 8),
    )
    parts = table(
        ("Part", "What", "Now", "Driest", "Wettest", "Not below", "Verdict"),
        (
            (
                each.part,
                each.what,
                *(
                    writing.fine(size)
                    for size in (each.through.now, each.through.driest, each.through.wettest)
                ),
                "" if each.limit is None else writing.fine(each.limit),
                "" if each.limit is None else "pass" if each.passes else "stop",
            )
            for each in found.parts
        ),
        right=(2, 3, 4, 5),
    )
    moisture = ", ".join(
        f"{month.value[:3]} {percent:.1f}" for month, percent in zip(MONTHS, year.months, strict=True)
    )
    words = [
        f"The home, % moisture: {moisture} ({year.ground}).",
        *map(writing.said, (found.when, *found.more)),
    ]
    return section("Season", gaps, parts, "\n".join(wrapped(each, 2) for each in words))


def _other_fits(found: UnitYear) -> tuple[str, str]:
    return f"Leave in {found.year.driest.value[:3]}", f"Leave in {found.year.wettest.value[:3]}"


def year_data(unit: Construction) -> dict[str, Any]:
    """A unit through the year, for machines.

    Args:
        unit: the unit

    Returns:
        Moisture by month in percent and every gap by month in inches, January first.
    """
    found = unit_year(unit)
    year = found.year
    return {
        "now_percent": float(year.now),
        "months_percent": [float(each) for each in year.months],
        "from": year.ground,
        "fitted": None if year.fitted is None else year.fitted.value,
        "driest_month": year.driest.value,
        "wettest_month": year.wettest.value,
        "drawers": [
            {
                "drawers": list(each.codes),
                "opening_in": float(each.opening),
                "height_in": float(each.height),
                "wanted_when_wettest_in": float(each.limit),
                "gap_above_front": _through(each.front),
                "gap_above_sides": _through(each.side),
                "least": {"month": each.least[0].value, "gap_in": float(each.least[1])},
                "greatest": {"month": each.greatest[0].value, "gap_in": float(each.greatest[1])},
                "fitted_in": [
                    {
                        "month": fit.month.value,
                        "moisture_percent": float(fit.moisture),
                        "height_in": float(fit.height),
                        "leave_in": float(fit.leave),
                    }
                    for fit in each.fits
                ],
            }
            for each in found.drawers
        ],
        "parts": [
            {
                "part": each.part,
                "of": each.made_of,
                "what": each.what,
                **_through(each.through),
                "not_below_in": None if each.limit is None else float(each.limit),
                "passes": each.passes,
            }
            for each in found.parts
        ],
        "cuts": [
            {
                "part": board.part,
                "wood": board.wood,
                "cut": cut.cut.value,
                "is_used": cut.is_used,
                "in_width_per_percent": float(cut.width),
                "in_thickness_per_percent": float(cut.thickness),
                "tallest_grows_in": float(cut.year),
            }
            for board in found.boards
            for cut in board.cuts
        ],
        "advice": [str(each) for each in (found.when, *found.fit, *found.more)],
    }


def _through(size: Through) -> dict[str, Any]:
    return {
        "now_in": float(size.now),
        "driest_in": float(size.driest),
        "wettest_in": float(size.wettest),
        "months_in": [float(each) for each in size.months],
    }
