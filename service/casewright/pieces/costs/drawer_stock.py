"""How much of the stock that is prepared goes into the drawers, and how much into the cases."""

from collections import defaultdict
from collections.abc import Iterator

from casewright.labour.drivers import Driver
from casewright.labour.earned import part_of
from casewright.labour.figures import bundled
from casewright.measure.units import Number
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.pieces.layout.parts import PartLine


def drawer_stock(job: JobEstimate) -> dict[str, Number]:
    """For each operation that prepares stock, how much of it is done for drawers.

    An operation is divided by what it counts: feet by the feet of the drawers' parts, boards by their boards,
    panels by their panels. What goes with none of these, such as the set-up, is divided by the number of
    parts.

    Args:
        job: what the job takes

    Returns:
        A share from 0 to 1 by the code of the operation; the rest is done for cases [dimensionless]

    Source: common practice.
    """
    names = bundled("stages.json")["stock"]["operations"]
    of_all: defaultdict[Driver, float] = defaultdict(float)
    of_drawers: defaultdict[Driver, float] = defaultdict(float)
    for unit in job.units:
        for driver, is_drawers, number in _counted(unit):
            of_all[driver] += number
            of_drawers[driver] += number * is_drawers
    return {
        line.code: part_of(of_drawers[by], of_all[by])
        for line in job.labour
        if line.code in names
        for by in [line.driver if line.driver is not None and line.driver in of_all else Driver.PARTS]
    }


def _counted(held: Estimate) -> Iterator[tuple[Driver, bool, float]]:
    """What is counted of each line of the cut list, and whether the line is of drawers."""
    drawers = {drawer.code for drawer in held.unit.drawers}
    for each in held.unit.lines:
        yield Driver.PARTS, _is_of(drawers, each), each.quantity * held.takeoff.count
    for line in held.takeoff.lines:
        is_drawers, part = _is_of(drawers, line.of), line.of.part
        yield Driver.ROUGH_FEET, is_drawers, line.rough
        yield Driver.BOARDS, is_drawers, line.blanks * line.boards
        if line.is_matched:
            yield Driver.RESAW_SETUPS, is_drawers, line.resawn_boards
            yield Driver.RESAWN_BOARDS, is_drawers, line.resawn_boards
            yield Driver.RESAWN_SQFT, is_drawers, line.resawn_area
            yield Driver.LEAF_FACE_SQFT, is_drawers, line.resawn_area
        if line.is_panel:
            yield Driver.GLUE_LINES, is_drawers, line.glue_lines
            yield Driver.PANELS, is_drawers, line.quantity
            yield Driver.PANEL_SQFT, is_drawers, line.quantity * part.width * part.length


def _is_of(drawers: set[str], line: PartLine) -> bool:
    """Whether a line of the cut list holds parts of drawers: their code begins with the drawer's."""
    return any(code.rpartition("-")[0] in drawers for code in line.codes)
