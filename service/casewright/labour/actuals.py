"""Hours as they were worked beside those that were estimated, operation by operation.

Direct minutes stand on one side and logged minutes on the other; the allowance for rest, sharpening and
fetching is put on the estimate where the log holds such time, and left off where the clock was stopped for
it. So both sides always hold the same kind of time.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from casewright.labour.standards import LabourLine
from casewright.measure.units import Minutes, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One operation, estimated and worked.

    Attributes:
        code: the operation's code; empty for time that was logged on none
        name: what it is called
        estimated: what the estimate gave it, on the basis of the log [min]
        actual: what was logged on it [min]
        ratio: actual over estimated; None where nothing was estimated or nothing logged yet [dimensionless]
    """

    code: str
    name: str
    estimated: Minutes
    actual: Minutes
    ratio: Number | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """A whole job, estimated and worked.

    Attributes:
        lines: operation by operation, in the order of the estimate; what was not estimated comes last
        estimated: all operations of the estimate, on the basis of the log [min]
        actual: all that was logged [min]
        ratio: actual over estimated, as the risk history keeps it; None before there is any [dimensionless]
        allowance: what was added to the estimate so that both sides hold the same [dimensionless]
    """

    lines: tuple[Compared, ...]
    estimated: Minutes
    actual: Minutes
    ratio: Number | None
    allowance: Number


def on_the_logs_basis(minutes: Minutes, allowance: Number) -> Minutes:
    """Estimated minutes as the log would hold them.

    Rule: minutes * (1 + allowance)

    Args:
        minutes: direct minutes of the estimate [min]
        allowance: for the rest, sharpening and fetching that the log holds; 0 where it holds none
            [dimensionless]

    Returns:
        Minutes to lay beside the log [min]

    Raises:
        ValueError: the allowance is below zero.

    Source: common practice: ratios are taken on the basis on which the estimate was made.
    """
    if allowance < 0:
        raise ValueError("An allowance adds to the minutes; it is 0 or more.")
    return minutes * (1 + allowance)


def actual_ratio(actual: Minutes, estimated: Minutes) -> Number:
    """How the work ran against its estimate.

    Rule: actual / estimated

    Args:
        actual: minutes that were logged [min]
        estimated: minutes of the estimate, on the same basis, above 0 [min]

    Returns:
        Above 1 where it took longer [dimensionless]

    Source: common practice.
    """
    return actual / estimated


def compare(
    lines: Iterable[LabourLine], entries: Iterable[tuple[str, Minutes]], allowance: Number
) -> Comparison:
    """The estimate beside the log.

    Args:
        lines: the labour lines of the estimate, direct minutes; lines of one code are added up
        entries: operation code and minutes of each entry of the log, in any order; an empty code for time on
            no operation [min]
        allowance: the shop's allowance where its log holds rest, sharpening and fetching; 0 where the clock
            was stopped for them [dimensionless]

    Returns:
        Each operation, and the job.

    Raises:
        ValueError: an entry or the allowance is below zero.

    Source: common practice.
    """
    names: dict[str, str] = {}
    estimated: dict[str, list[float]] = {}
    for line in lines:
        names.setdefault(line.code, line.name)
        estimated.setdefault(line.code, []).append(on_the_logs_basis(line.minutes, allowance))
    logged: dict[str, list[float]] = {}
    for code, minutes in entries:
        if minutes < 0:
            raise ValueError(f"{code or 'An entry'}: nobody works less than no time; give 0 minutes or more.")
        logged.setdefault(code, []).append(minutes)
    codes = dict.fromkeys((*estimated, *sorted(logged)))
    compared = tuple(
        _compared(code, names.get(code, ""), estimated.get(code, []), logged.get(code, [])) for code in codes
    )
    total = math.fsum(line.estimated for line in compared)
    worked = math.fsum(line.actual for line in compared)
    return Comparison(
        lines=compared,
        estimated=total,
        actual=worked,
        ratio=actual_ratio(worked, total) if total and logged else None,
        allowance=allowance,
    )


def _compared(code: str, name: str, estimated: list[float], logged: list[float]) -> Compared:
    planned, worked = math.fsum(estimated), math.fsum(logged)
    return Compared(
        code=code,
        name=name or ("not estimated" if code else "on no operation"),
        estimated=planned,
        actual=worked,
        ratio=actual_ratio(worked, planned) if planned and logged else None,
    )
