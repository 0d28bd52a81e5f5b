"""What the time standards count of how drawers run: by hand fitted, hung, guided, on slides, stopped."""

from casewright.labour.drivers import Driver
from casewright.pieces.built.construct import Construction


def run_drivers(unit: Construction) -> dict[Driver, float]:
    """Of one unit: drawers planed until they run, those on slides, and what stops, lines or locks them.

    Args:
        unit: one unit, worked out

    Returns:
        The quantities; those that drawers on runners do not have only where there are any.

    Source: common practice; a box on slides is cleaned up and adjusted, not planed to its opening.
    """
    runs = [drawer.run for drawer in unit.drawers]
    slid = sum(1 for run in runs if run.slides is not None)
    counted = {
        Driver.SLIDE_PAIRS: slid,
        Driver.SLID_DRAWERS: slid,
        Driver.HUNG_DRAWERS: sum(1 for run in runs if run.groove is not None),
        Driver.GUIDED_DRAWERS: sum(1 for run in runs if run.guide is not None),
        Driver.OUTSTOPS: sum(1 for run in runs if run.outstop is not None),
        Driver.LINED_DRAWERS: sum(1 for run in runs if run.lined is not None),
        Driver.INTERLOCKED_DRAWERS: len(runs) if unit.spec.use.locks_one_at_a_time else 0,
    }
    return {
        Driver.FITTED_DRAWERS: len(runs) - slid,
        Driver.STOPPED_DRAWERS: sum(1 for run in runs if run.stop is not None),
        **{driver: number for driver, number in counted.items() if number},
    }
