"""Open spaces and doors on legs: what their floors lie on, and the partitions beside them."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.case.leg_plan import LegPlan
from casewright.pieces.case.leg_sizes import REACH
from casewright.pieces.layout.openings import Cell, FaceRow, Space
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.layout.season import across
from casewright.pieces.rules import case_rules
from casewright.pieces.rules.corner_rules import free_depth
from casewright.wood.movement import movement
from casewright.wood.waste import PartUse

PARTITION, BEARER = "C8", "W6"


def space_parts(plan: LegPlan, housing: Inches) -> Iterator[Part]:
    """The partitions of every row, and a bearer on the back apron under every floor.

    Args:
        plan: what the parts share
        housing: how deep a partition is housed in what lies over and under it [in]

    Yields:
        The parts, row by row from the top.

    Source: common practice of leg-and-apron work.
    """
    for row in plan.case.face.rows:
        for number, x in enumerate(row.partitions, start=1):
            yield _partition(plan, row, f"{row.code}-P{number}", x, housing)
        for cell in row.cells:
            if isinstance(cell.opening, Space):
                yield _bearer(plan, row, cell)


def _partition(plan: LegPlan, row: FaceRow, mark: str, x: Inches, housing: Inches) -> Part:
    """A board from the front rails to the back apron; it has room behind it to grow, as the aprons do not."""
    case, wood = plan.case, plan.case.spec.woods.case
    length = case.ledger.take(
        f"{row.code}.partition_length", case_rules.housed_length, opening=row.height, housing=housing
    )
    grows = case.ledger.take(
        f"{mark}.growth",
        movement,
        size=case.face.opening_depth,
        coefficient=across(wood, case.ledger.root),
        change=case.climate.swelling,
    )
    depth = case.ledger.take(f"{mark}.width", free_depth, depth=case.face.opening_depth, growth=grows)
    words = say("housing, {:fraction} deep", housing)
    return new_part(
        code=case.code(mark),
        line=PARTITION,
        name="Partition",
        wood=wood.wood,
        cut=wood.cut,
        thickness=plan.legs.rail,
        width=depth,
        length=length,
        face=FaceClass.SHOW,
        grain=Grain.UPRIGHT,
        use=PartUse.CASE,
        ends=(words, words),
        box=Box(x, 0.0, plan.floor + row.bottom - housing, plan.legs.rail, depth, length),
    )


def _bearer(plan: LegPlan, row: FaceRow, cell: Cell) -> Part:
    """A strip screwed to the back apron between the runners: the rear edge of a floor lies on it."""
    case, legs, face = plan.case, plan.legs, plan.case.face
    by_the_leg = plan.inside + plan.sizes.runner_width - legs.leg
    left = by_the_leg if cell is row.cells[0] else REACH
    right = by_the_leg if cell is row.cells[-1] else REACH
    length = case.ledger.take(
        f"{cell.code}.bearer_length", case_rules.between, whole=cell.width, one_end=left, other_end=right
    )
    z = plan.floor + row.bottom - legs.rail
    return new_part(
        code=case.code(f"{cell.code}-FB"),
        line=BEARER,
        name="Floor bearer, at the back",
        wood=case.spec.woods.inside.wood,
        cut=case.spec.woods.inside.cut,
        thickness=legs.rail,
        width=REACH,
        length=length,
        face=FaceClass.INSIDE,
        grain=Grain.ACROSS,
        use=PartUse.INSIDE,
        ends=("butt; notched where a kicker meets it; screwed to the back apron",) * 2,
        box=Box(cell.left + left, face.opening_depth - REACH, z, length, REACH, legs.rail),
    )
