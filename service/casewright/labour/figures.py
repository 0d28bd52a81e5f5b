"""The shop's figures that belong to no single operation: allowance, repeats, learning, the working week."""

import json
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.measure.units import Count, Hours, Number, Weeks


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """Defaults that a shop may overwrite.

    Attributes:
        allowance: rest, sharpening and fetching, as a share of the direct minutes [dimensionless]
        steady_saving: by the flat rule, what each repeat saves of the first piece's time [dimensionless]
        greatest_saving: by the flat rule, the saving beyond which no repeat goes [dimensionless]
        reset: a pause longer than this starts the learning curve again [week]
        trust: how many jobs an old standard counts for when new times come in [dimensionless]
        outlier: a time further than this from the others, in their deviations, needs a reason [dimensionless]
        least_jobs: below this many times nothing is judged, and the wider standard holds [dimensionless]
        paid_week: hours paid in a week [hour]
        bench_share: of those, the share that reaches the bench [dimensionless]
    """

    allowance: Number
    steady_saving: Number
    greatest_saving: Number
    reset: Weeks
    trust: Number
    outlier: Number
    least_jobs: Count
    paid_week: Hours
    bench_share: Number


def bundled(name: str) -> dict[str, Any]:
    """A data file of this room, read.

    Args:
        name: the file's name

    Returns:
        What it holds; every row names its own source and basis.

    Source: common practice.
    """
    held: dict[str, Any] = json.loads(
        (files("casewright.labour") / "data" / name).read_text(encoding="utf-8")
    )
    return held


@cache
def house_figures() -> Figures:
    """The figures that a shop starts with.

    Returns:
        Allowance 12 %, a trust of 4 jobs, 25 bench hours of a paid week of 40, and so on.

    Source: common practice, except the flat rule for repeats: R. Jones, How to Price the Job,
        Furniture & Cabinetmaking (2009).
    """
    held = bundled("standards.json")
    repeats, learning, week = held["repeats"], held["learning"], held["week"]
    return Figures(
        allowance=held["allowance"]["share"],
        steady_saving=repeats["steady_saving"],
        greatest_saving=repeats["greatest_saving"],
        reset=repeats["reset_weeks"],
        trust=learning["trust"],
        outlier=learning["outlier_deviations"],
        least_jobs=learning["least_jobs"],
        paid_week=week["paid_hours"],
        bench_share=week["bench_share"],
    )
