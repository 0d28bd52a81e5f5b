"""What has gone into each drawer and the case so far, by the standard minutes of finished stages."""

from collections.abc import Iterable

from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.measure.units import Count, Hours, Minutes
from casewright.pieces.built.rework_stages import CASE, Reached
from casewright.pieces.costs.estimate import Estimate


def hours_each(minutes: Minutes, pieces: Count) -> Hours:
    """The standard hours of one of several alike.

    Rule: minutes / 60 / pieces

    Args:
        minutes: of the finished operations, for all of them [min]
        pieces: how many there are

    Returns:
        The hours of one [h]

    Source: arithmetic.
    """
    return minutes / 60 / pieces if pieces else 0.0


def standard_hours(held: Estimate, reached: Reached) -> dict[str, Hours]:
    """The standard hours of the stages that drawers and case have reached.

    Args:
        held: the estimate of the unit as it is being made
        reached: how far each drawer and the case are

    Returns:
        By the opening of a drawer; `C` for the case [h]

    Source: common practice: the finished operations of the estimate, shared evenly.
    """
    minutes = {line.code: line.minutes for line in held.labour}
    count = held.unit.spec.count
    drawers = len(held.unit.drawers) * count
    found = {
        code: hours_each(
            minutes=sum(minutes.get(each, 0.0) for each in _finished(stage, drawer_stages())), pieces=drawers
        )
        for code, stage in reached.drawers.items()
    }
    done = _finished(reached.case, case_stages())
    found[CASE] = hours_each(minutes=sum(minutes.get(each, 0.0) for each in done), pieces=count)
    return found


def _finished(stage: str, stages: tuple[Stage, ...]) -> Iterable[str]:
    """The operations that are done once a stage is reached."""
    if not stage:
        return ()
    return [each for one in stages[: place_of(stage, stages) + 1] for each in one.operations]
