"""The parts beside the fronts and sides of drawers through the year: bottoms, back, top, frames, base."""

from collections.abc import Iterator
from functools import partial

from casewright.joinery.families.bottom_groove.asked import BOTTOMS
from casewright.joinery.families.edge.asked import EDGES
from casewright.joinery.families.edge.sizes import covered_then, gap_then
from casewright.measure.ledger import Ledger
from casewright.measure.rounding import TOLERANCE
from casewright.measure.saying import say
from casewright.measure.units import PerPercent
from casewright.pieces.asked.drawer_spec import PlyBottom
from casewright.pieces.asked.fields import Timber
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.part_year import PartYear, sawn, sides_of, taken, through_thickness
from casewright.pieces.built.year_doors import doors_through, frame_through, fronts_through
from casewright.pieces.case.dust import LEAST_HELD, dust_depth
from casewright.pieces.drawers.alike import drawers_alike
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import PLY_PLAY
from casewright.pieces.layout.parts import Grain
from casewright.pieces.layout.roles import role_of
from casewright.pieces.layout.season import across
from casewright.pieces.layout.year import Year
from casewright.pieces.rules import season_rules as rules
from casewright.pieces.rules.notch_rules import clear_then
from casewright.wood.movement import plywood_coefficient

SAME_MOVEMENT = 1e-7
"""Coefficients this close are one [1 per % moisture]."""
LEFT_DRY = ("W2", "W3", "W4", "W5")
"""Lines of runners and kickers in the cut list."""
WIDE = 6.0
"""Narrower boards are let be: what they move apart is less than a joint gives (common practice) [in]."""


def parts_through(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """Every part that moves and has room to, but the fronts and sides in height.

    Args:
        unit: the unit
        year: the year at home
        ledger: keeps the working

    Returns:
        The parts.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2.
    """
    groups = drawers_alike(unit.drawers, _deep)
    for group in groups:
        codes = ", ".join(each.sizes.code for each in group)
        whose = codes if len(groups) > 1 else "every drawer"
        yield from _drawer_parts(unit, group[0], whose, (year, ledger))
    if unit.spec.legs is None:
        if has_runners(unit):
            yield from _frames(unit, year, ledger)
        yield from _back(unit, year, ledger)
    yield from _top(unit, year, ledger)
    yield from _within(unit, year, ledger)
    yield from doors_through(unit.doors, year, ledger)
    yield from fronts_through(unit, year, ledger)
    if unit.case.plan.frame is not None:
        yield from frame_through("Case sides", unit.case.plan.frame, year, ledger, "year.sides")
    if unit.case.back_frame is not None:
        yield from frame_through("Back", unit.case.back_frame, year, ledger, "year.back")
    yield from _dust(unit, year, ledger)


def has_runners(unit: Construction) -> bool:
    """Whether runners or kickers of a case are left dry at the rear, past which its sides move.

    Args:
        unit: the unit

    Returns:
        Whether there are any.

    Source: common practice.
    """
    return unit.spec.legs is None and any(part.line in LEFT_DRY for part in unit.parts)


def side_swells(unit: Construction, ledger: Ledger) -> PerPercent:
    """How much a side of the case moves in depth: as its wood does, or less where it is no board.

    Args:
        unit: the unit
        ledger: keeps the working

    Returns:
        The coefficient over the depth of the body; 0 where long grain or plywood sets the depth
        [1 per % moisture]

    Source: Wood Handbook, FPL-GTR-282 (2021), chapter 13, equation 13-2, solved for the coefficient.
    """
    case, climate = unit.case, unit.climate
    moved, change = case.side_shrinkage + case.side_swelling, climate.drying + climate.swelling
    if not change:
        return 0.0 if unit.spec.legs else across(unit.spec.woods.case, ledger)
    swells, board = moved / unit.spec.body.depth / change, across(unit.spec.woods.case, ledger)
    if abs(swells - board) <= SAME_MOVEMENT:
        return board
    basis = "what the sides move in depth between driest and wettest, over their depth and the moisture"
    return ledger.given("year.side_moves", swells, basis, PerPercent)


def _deep(drawer: Drawer) -> tuple[float, ...]:
    """What decides how the bottom of a drawer and its sides move."""
    sizes, bottom = drawer.sizes, drawer.bottom
    clear = sizes.opening.width - sizes.width, sizes.opening.depth - sizes.length
    # Only plywood moves from side to side: solid bottoms have their long grain that way.
    wide = bottom.across if bottom.sag is None else 0.0
    thick = sizes.back, sizes.left_side, sizes.right_side
    notch = (sizes.notch.width, sizes.notch.left_inner, sizes.notch.right_inner) if sizes.notch else ()
    return tuple(float(each) for each in (*clear, bottom.deep, wide, *thick, *notch))


def _drawer_parts(
    unit: Construction, first: Drawer, whose: str, kept: tuple[Year, Ledger]
) -> Iterator[PartYear]:
    spec = unit.spec
    (year, ledger), bottom = kept, spec.drawers.bottom
    sizes, deep = first.sizes, first.bottom.deep
    under = ledger.under(f"year.{sizes.code}")
    is_ply = isinstance(bottom, PlyBottom)
    moves = plywood_coefficient()[0] if is_ply else across(spec.woods.of("bottoms"), ledger)
    made_of = first.bottom.material if is_ply else sawn(spec.woods.of("bottoms"))
    over = bottom.over if sizes.back_foot else 0.0
    part = partial(PartYear, part=f"Bottom of {whose}", made_of=made_of)
    yield part(
        what="room behind it",
        through=year.follow(
            taken(
                under,
                "behind",
                rules.room_behind,
                clearance=sizes.opening.depth - sizes.length,
                depth=spec.body.depth,
                side_moves=side_swells(unit, ledger),
                bottom=deep,
                bottom_moves=moves if sizes.back_foot else 0.0,
                over=over,
            )
        ),
        limit=BOTTOMS.behind_least.value,
        note="Side and bottom at one moisture; the checks take the shortest side with the longest bottom.",
    )
    if sizes.back_foot:
        reach = taken(under, "reach", rules.reach_under, back=sizes.back, over=over, bottom=deep, moves=moves)
        yield part(
            what="reach under the back",
            through=year.follow(reach),
            limit=0.0,
            note="Hold it in the front groove only; slot the screw under the back.",
        )
    if is_ply:
        play = taken(under, "play", rules.play_left, play=PLY_PLAY, panel=first.bottom.across, moves=moves)
        yield part(what="play in each groove", through=year.follow(play), limit=0.0, note="Cut as given.")
    if notch := sizes.notch:
        yield PartYear(
            part=f"Notch of {whose}",
            made_of=sawn(spec.woods.drawers),
            what="clear width for pipes",
            through=year.follow(
                taken(
                    under,
                    "notch",
                    clear_then,
                    notch=notch.width,
                    left=notch.left_inner,
                    right=notch.right_inner,
                    moves=through_thickness(spec.woods.drawers, ledger),
                )
            ),
            limit=notch.asked.pipes,
            note="Its inner sides move in thickness; the boards across are long grain and keep its width.",
        )
    side = max(sizes.left_side, sizes.right_side)
    yield PartYear(
        part=f"Sides of {whose}",
        made_of=sawn(spec.woods.drawers),
        what="clearance beside them",
        through=year.follow(
            taken(
                under,
                "beside",
                rules.side_room,
                gap=(sizes.opening.width - sizes.width) / 2,
                side=side,
                moves=through_thickness(spec.woods.drawers, ledger),
            )
        ),
        limit=0.0,
        note="They move in thickness; the width of the opening is long grain and stays.",
    )


def _frames(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    spec, under = unit.spec, ledger.under("year.case")
    slack = taken(
        under,
        "slack",
        rules.slack_behind,
        slack=unit.case.slack,
        depth=spec.body.depth,
        moves=side_swells(unit, ledger),
    )
    yield PartYear(
        part="Runners",
        made_of=f"long grain, in sides of {sides_of(spec)}",
        what="gap at the rear",
        through=year.follow(slack),
        limit=0.0,
        note="Leave the rear joint dry.",
    )


def _back(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    if not unit.case.back_board:
        return
    spec, board, under = unit.spec, unit.case.back_board, ledger.under("year.back")
    moves = across(spec.woods.of("back"), ledger)
    part = partial(PartYear, part="Back boards", made_of=sawn(spec.woods.of("back")))
    gaps = year.follow(taken(under, "gap", gap_then, board=board, gap=spec.back.gap, movement=moves))
    yield part(
        what="gap at each lap",
        through=gaps,
        limit=0.0,
        note="Fix each at the middle of its width only.",
    )

    def covers(when: str, change: float) -> float:
        gap = gap_then(board=board, gap=spec.back.gap, movement=moves, change=change)
        return under.take(
            f"covers_{when}", covered_then, overlap=spec.back.lap, gap=gap, movement=moves, change=change
        )

    yield part(
        what="what the laps cover",
        through=year.follow(covers),
        limit=EDGES.cover_stop.value,
        note="Less than the limit lets light through.",
    )


def _top(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    spec = unit.spec
    under, depth = ledger.under("year.top"), spec.body.depth
    top, side = across(spec.woods.of("top"), ledger), side_swells(unit, ledger)
    if not spec.top.over or any(part.line == "T1" and part.sheet for part in unit.parts):
        return
    on = "aprons, which do not move" if spec.legs else sides_of(spec)
    made_of = f"{sawn(spec.woods.of('top'))}, on {on}"
    grows = year.follow(taken(under, "grows", rules.apart, size=depth, one=top, other=0.0))
    note = say("Fixed at the front, over a depth of {}: so far it moves at the rear.", depth)
    yield PartYear(
        part="Top", made_of=made_of, what="moves over the case", through=grows, limit=None, note=note
    )
    if not spec.legs and abs(top - side) > SAME_MOVEMENT:
        yield PartYear(
            part="Top",
            made_of=made_of,
            what="moves apart from the sides",
            through=year.follow(taken(under, "apart", rules.apart, size=depth, one=top, other=side)),
            limit=None,
            note="Its fixings need this much slack, with a little to spare.",
        )


def _dust(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """Dust panels, front to back: the rails around them stand on sides that move."""
    panel = next((part for part in unit.parts if part.line == "D3"), None)
    if panel is None:
        return
    under, side = ledger.under("year.dust"), side_swells(unit, ledger)
    deep = dust_depth(unit.case.plan)
    moves = plywood_coefficient()[0]
    shared = {"depth": unit.spec.body.depth, "side_moves": side, "panel": panel.width, "moves": moves}
    for what, rule, size, limit in (
        ("play in front and rear groove", rules.dust_play_then, {"play": deep.play}, 0.0),
        (
            "how far it reaches into each groove",
            rules.dust_held_then,
            {"play": deep.play, "groove": unit.spec.case.dust.groove},
            LEAST_HELD,
        ),
    ):
        name = rule.__name__
        yield PartYear(
            part="Dust panels",
            made_of=panel.wood,
            what=what,
            through=year.follow(taken(under, name, rule, **size, **shared)),
            limit=limit,
            note="Loose all around: the rails come closer when the sides shrink.",
        )


def _within(unit: Construction, year: Year, ledger: Ledger) -> Iterator[PartYear]:
    """Boards of the case whose width lies front to back, beside sides that move otherwise; and the plinth."""
    spec, under = unit.spec, ledger.under("year.within")
    side = side_swells(unit, ledger)
    told: set[str] = set()
    for part in unit.parts:
        is_deep = part.grain is not Grain.BACK and abs(part.box.depth - part.width) < TOLERANCE
        if part.line[:1] not in "CDW" or part.line in ("C1", *told) or not is_deep or part.width <= WIDE:
            continue
        if part.line == "D3" or role_of(part) == "doors":
            continue
        told.add(part.line)
        timber = Timber(wood=part.wood, cut=part.cut) if not part.sheet else None
        moves = across(timber, ledger) if timber else plywood_coefficient()[0]
        if abs(moves - side) <= SAME_MOVEMENT:
            continue
        yield PartYear(
            part=part.name,
            made_of=f"{sawn(timber) if timber else part.wood}, in {sides_of(spec)}",
            what="moves apart from the sides",
            through=year.follow(taken(under, part.line, rules.apart, size=part.width, one=moves, other=side)),
            limit=None,
            note="Fast at the front only: the less the woods differ, the less the joint has to hold.",
        )
    if spec.plinth is not None and side:
        returns = year.follow(taken(under, "plinth", rules.apart, size=spec.body.depth, one=side, other=0.0))
        yield PartYear(
            part="Plinth returns",
            made_of=f"long grain, under sides of {sides_of(spec)}",
            what="the side moves over them",
            through=returns,
            limit=None,
            note="Fix them at the front, slot the rear screws.",
        )
