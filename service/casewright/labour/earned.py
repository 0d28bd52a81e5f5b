"""What the stages that are done have earned of the estimate, and a warning when the hours run ahead of it."""

import math
from collections.abc import Iterable, Mapping, Sequence

from casewright.labour.bench import CaseProgress, DrawerProgress, Progress
from casewright.labour.figures import bundled
from casewright.labour.stages import Stage, case_stages, drawer_stages
from casewright.labour.standards import LabourLine
from casewright.measure.findings import Finding, Verdict
from casewright.measure.units import Hours, Minutes, Number

HOURS_GONE = 0.6
EARNED_BY_THEN = 0.5
"""At six tenths of the hours, half of the work should be done (common practice)."""


def share_reached(progress: Sequence[Progress], stage: str) -> Number:
    """How many of some drawers, or of some cases, have reached a stage.

    Rule: those that have reached it / all of them

    Args:
        progress: where each of them stands
        stage: the code of the stage

    Returns:
        From 0 to 1; 0 where there are none [dimensionless]

    Source: common practice.
    """
    if not progress:
        return 0.0
    return sum(1 for each in progress if each.has_reached(stage)) / len(progress)


def stock_prepared(for_drawers: Number, milled: Number, paneled: Number) -> Number:
    """How much of the stock is prepared, where some drawers are milled and some cases have their panels.

    Rule: for_drawers * milled + (1 - for_drawers) * paneled

    Args:
        for_drawers: how much of the stock goes into drawers [dimensionless]
        milled: how many of the drawers are milled [dimensionless]
        paneled: how many of the cases have their panels [dimensionless]

    Returns:
        A share from 0 to 1 [dimensionless]

    Source: common practice.
    """
    return for_drawers * milled + (1 - for_drawers) * paneled


def finished_shares(
    drawers: Sequence[DrawerProgress], cases: Sequence[CaseProgress], stock: Mapping[str, Number]
) -> dict[str, Number]:
    """How much of each operation is finished, by the stages that were reached.

    An operation is finished for a drawer or a case when its stage is reached, not before: work that is under
    way earns nothing yet. Preparing stock is earned by each milled drawer and each paneled case for its part.

    Args:
        drawers: where every drawer of the job stands
        cases: where every case stands
        stock: for each operation that prepares stock, how much of it is for drawers [dimensionless]

    Returns:
        A share from 0 to 1 for each operation that a stage finishes [dimensionless]

    Source: common practice.
    """
    ends = bundled("stages.json")["stock"]
    milled, paneled = share_reached(drawers, ends["drawer"]), share_reached(cases, ends["case"])
    return {
        **_shares(drawers, drawer_stages()),
        **_shares(cases, case_stages()),
        **{code: stock_prepared(part, milled, paneled) for code, part in stock.items()},
    }


def _shares(progress: Sequence[Progress], stages: Iterable[Stage]) -> dict[str, float]:
    return {code: share_reached(progress, stage.code) for stage in stages for code in stage.operations}


def earned_minutes(lines: Iterable[LabourLine], finished: Mapping[str, Number]) -> Minutes:
    """The earned value: what the finished operations stand for in the estimate.

    Rule: sum of minutes * finished share, over the operations

    Args:
        lines: the labour lines of the estimate
        finished: the share of each operation that is finished, by code; what is not named is not begun
            [dimensionless]

    Returns:
        Standard minutes of the work that is done, without the allowance [min]

    Source: earned value as builders reckon it: standard time of the finished work.
    """
    return math.fsum(line.minutes * finished.get(line.code, 0.0) for line in lines)


def part_of(part: Number, whole: Number) -> Number:
    """A part of a whole.

    Rule: part / whole, or 0 where there is no whole

    Args:
        part: the part, in the unit of the whole [dimensionless]
        whole: the whole [dimensionless]

    Returns:
        The share [dimensionless]

    Source: arithmetic.
    """
    return part / whole if whole else 0.0


def _clock(hours: Hours) -> str:
    """Hours as every page writes them: 1:05."""
    whole = round(hours * 60)
    return f"{whole // 60:,}:{whole % 60:02d}"


def hours_warning(estimated: Hours, worked: Hours, *, direct: Minutes, earned: Minutes) -> Finding:
    """Whether the hours run ahead of the work.

    Hours are compared with hours, both with the allowance; earned minutes with direct minutes, both without.

    Args:
        estimated: hours of the estimate, allowance included [hour]
        worked: hours that were logged, rest and sharpening included [hour]
        direct: direct minutes of the estimate [min]
        earned: what the finished operations stand for in it [min]

    Returns:
        A caution from 60 % of the hours on, while less than 50 % is earned; else a pass.

    Source: common practice.
    """
    gone, done = part_of(worked, estimated), part_of(earned, direct)
    ahead = gone >= HOURS_GONE - 1e-9 and done < EARNED_BY_THEN - 1e-9
    return Finding(
        rule="hours ahead of the work",
        verdict=Verdict.CAUTION if ahead else Verdict.PASS,
        message=(
            f"{gone:.0%} of the hours are gone ({_clock(worked)} of {_clock(estimated)} h) and {done:.0%} of "
            "the work is done."
        ),
        remedy=(
            "See which operations run over, look at what is left before more is promised, and tell the "
            "customer if the date will move."
            if ahead
            else ""
        ),
        found=done,
        needed=EARNED_BY_THEN,
        source="earned value; the limits of 60 % and 50 % are common practice",
    )
