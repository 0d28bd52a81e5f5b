"""What stands and runs between two drawers of one row on legs: uprights, centre runners and kickers."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.measure.units import Inches
from casewright.pieces.case.leg_plan import LegPlan, runner_length
from casewright.pieces.case.leg_sizes import REACH
from casewright.pieces.case.web_frames import Bearer, Standing, apart, hanging_from, standing_on
from casewright.pieces.layout.openings import FaceRow
from casewright.pieces.layout.parts import Box, FaceClass, Grain, Part, new_part
from casewright.pieces.rules import case_rules
from casewright.wood.waste import PartUse

RUNNER, KICKER = "W4", "W5"


def upright_depth(plan: LegPlan) -> Inches:
    """How deep an upright is housed in the rails over and under it.

    Args:
        plan: what the parts share

    Returns:
        The depth [in]

    Source: common practice: a third of the rail.
    """
    rail = plan.legs.rail
    return plan.case.ledger.take("upright_housing", case_rules.upright_housing, housing=rail, rail=rail)


def column_parts(plan: LegPlan) -> Iterator[Part]:
    """Uprights of every row, and what runs behind them and over and under partitions.

    Args:
        plan: what the parts share

    Yields:
        The uprights, then runners and kickers from the bottom up; none where each row is one opening.

    Source: common practice of leg-and-apron work.
    """
    rows = plan.case.face.rows
    if not any(row.uprights or row.partitions for row in rows):
        return
    for row in rows:
        yield from _uprights(plan, row)
    above: FaceRow | None = None
    for row in rows:
        yield from _between(plan, above, row)
        above = row
    yield from _between(plan, above, None)


def _uprights(plan: LegPlan, row: FaceRow) -> Iterator[Part]:
    case, legs, deep = plan.case, plan.legs, upright_depth(plan)
    if not row.uprights:
        return
    length = case.ledger.take(
        f"{row.code}.upright_length", case_rules.housed_length, opening=row.height, housing=deep
    )
    for number, x in enumerate(row.uprights, start=1):
        yield new_part(
            code=case.code(f"{row.code}-U{number}"),
            line="R4",
            name="Upright between drawers",
            wood=case.spec.woods.case.wood,
            cut=case.spec.woods.case.cut,
            thickness=legs.rail,
            width=plan.sizes.rail_width,
            length=length,
            face=FaceClass.EDGE,
            grain=Grain.UPRIGHT,
            use=PartUse.CASE,
            ends=(say("housing, {:fraction} deep", deep),) * 2,
            box=Box(x, 0.0, plan.floor + row.bottom - deep, legs.rail, plan.sizes.rail_width, length),
        )


def _between(plan: LegPlan, above: FaceRow | None, below: FaceRow | None) -> Iterator[Part]:
    """The centre runners of the row above a rail, and kickers of the row below where none of them does."""
    rail, wide = plan.legs.rail, plan.legs.rail + 2 * REACH
    # Where drawers hang on slides nothing runs behind an upright; a partition needs its bearing all the same.
    wanted = [True] if not plan.case.spec.drawers.on_frames else [True, False]
    over = [each for each in standing_on(above) if each.is_partition in wanted] if above else []
    hung = [each for each in hanging_from(below) if each.is_partition in wanted] if below else []
    under = [each for each in hung if not _covered(each, over)]
    found = [
        *_centred(over, ("RC", RUNNER, "Centre runner"), rail, wide),
        *_centred(under, ("KC", KICKER, "Centre kicker"), rail, wide),
    ]
    if above is None:
        place, z = "C", plan.floor + plan.legs.apron_height - rail
    else:
        place, z = f"D{above.mark}" if below else "C", plan.floor + above.bottom - rail
    for bearer in apart(plan.case, place, found):
        yield _member(plan, place, bearer, z)


def _covered(upright: Standing, over: list[Standing]) -> bool:
    return any(abs(upright.left - each.left) < REACH for each in over)


def _centred(
    uprights: list[Standing], kind: tuple[str, str, str], thick: Inches, wide: Inches
) -> Iterator[Bearer]:
    mark, line, name = kind
    for number, each in enumerate(uprights, start=1):
        left = each.left + (thick - wide) / 2
        yield Bearer(mark=f"{mark}{number}", line=line, name=name, left=left, width=wide)


def _member(plan: LegPlan, place: str, bearer: Bearer, z: Inches) -> Part:
    length, tongue = runner_length(plan), plan.legs.tongue
    return new_part(
        code=plan.case.code(f"{place}-{bearer.mark}"),
        line=bearer.line,
        name=bearer.name,
        wood=plan.case.spec.woods.inside.wood,
        cut=plan.case.spec.woods.inside.cut,
        thickness=plan.legs.rail,
        width=bearer.width,
        length=length,
        face=FaceClass.INSIDE,
        grain=Grain.BACK,
        use=PartUse.INSIDE,
        ends=(say("tongue, {:fraction} long, in the rail", tongue), "butt, screwed to the back apron"),
        box=Box(bearer.left, plan.sizes.rail_width - tongue, z, bearer.width, length, plan.legs.rail),
    )
