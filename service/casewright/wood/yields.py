"""What the shop's own jobs took of a wood, and how that changes what it orders."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from casewright.measure.units import BoardFeet, Count, Number
from casewright.wood.basis import Basis, Evidence
from casewright.wood.waste import Waste

LEAST_JOBS = 3
"""From so many jobs on the shop's own figures take the place of the table's."""
TRUST = 4
"""How many jobs the table counts for beside them, so that one job cannot swing it."""
MOST_WASTE = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class JobYield:
    """What one job took of one wood and grade.

    Attributes:
        job: its number [dimensionless]
        reckoned: what the table of waste would have bought for its parts [bd ft]
        cut: what was cut up for them, offcuts that were kept left out [bd ft]
    """

    job: Count
    reckoned: BoardFeet
    cut: BoardFeet

    def __post_init__(self) -> None:
        if not (self.reckoned > 0 and self.cut > 0):
            raise ValueError(f"Job {self.job} took no lumber; leave it out.")

    @property
    def ratio(self) -> Number:
        """Feet that the table would have bought for each foot that was cut up [dimensionless]."""
        return self.reckoned / self.cut


def own_ratio(jobs: Sequence[JobYield]) -> Number:
    """Feet that the table would have bought for each foot that the shop takes.

    Rule: (4 + sum of each job's ratio) / (4 + number of jobs)

    Args:
        jobs: what the shop's jobs took of one wood and grade

    Returns:
        Above one where the shop wastes less than the table says [dimensionless]

    Source: common practice: a weighted mean of the old figure, which counts for four jobs, and the new ones.
    """
    return (TRUST + math.fsum(each.ratio for each in jobs)) / (TRUST + len(jobs))


def own_waste(table: Waste, jobs: Sequence[JobYield]) -> Waste:
    """The waste to order by: the table's, until there are three jobs; from then on the shop's own.

    A job cuts parts of several uses from the same boards, so that what it took is set against what the table
    would have bought for that mix. All uses of the wood are then changed in proportion.

    Rule: 1 - (1 - table.fraction) * own_ratio(jobs), from three jobs on

    Args:
        table: the table's waste of a use
        jobs: what the shop's jobs took of this wood and grade

    Returns:
        The waste, with its ground.

    Source: the shop's own jobs; common practice for how they are weighed.
    """
    if len(jobs) < LEAST_JOBS:
        return table
    fraction = 1 - (1 - table.fraction) * own_ratio(jobs)
    return replace(
        table,
        fraction=round(min(max(fraction, 0.0), MOST_WASTE), 4),
        row="the shop's own",
        evidence=Evidence(basis=Basis.LEARNED, source=learned_from(jobs)),
    )


def learned_from(jobs: Sequence[JobYield]) -> str:
    """Which jobs a waste was learned from.

    Args:
        jobs: the jobs

    Returns:
        Such as `jobs 3, 5 and 8`.

    Source: the shop's own jobs.
    """
    *most, last = sorted(each.job for each in jobs)
    return f"jobs {', '.join(map(str, most))} and {last}" if most else f"job {last}"
