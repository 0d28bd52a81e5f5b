"""A layout for machines: plain values, each key with its unit in its name."""

from typing import Any

from casewright.cutting.plans.sawing import Sawn
from casewright.cutting.plans.spots import Spot
from casewright.cutting.plans.steps import set_ups, step_words, steps_of
from casewright.cutting.plans.values import (
    BoardLayout,
    CutPlan,
    Glued,
    Laid,
    LengthLayout,
    LotPlan,
    Mark,
    WayOut,
)
from casewright.measure.lengths import LengthUnit, from_ticks
from casewright.measure.saying import in_unit
from casewright.measure.units import Percent

FORM = 1
"""The version of this form; it changes when a key goes or changes its meaning."""


def cutting_data(plan: CutPlan) -> dict[str, Any]:
    """A layout.

    Args:
        plan: the layout

    Returns:
        Lengths in inches from a board's first end and near edge; costs in cents, or where nothing has a cost
        in hundredths of a square inch (of an inch for lengths).
    """
    unit = plan.file.unit
    return {
        "form": FORM,
        "name": plan.file.name,
        "unit": unit.value,
        "complete": plan.is_complete,
        "seconds": round(plan.seconds, 3),
        "lots": [_lot(lot, unit) for lot in plan.lots],
    }


def most_saved(above: Percent) -> str:
    """How much of the wood that a layout takes the best possible one could spare at most, in percent.

    Rule: what is above the bound as a share of what is taken: of 144 over a bound of 100, 44 are 30.6 %.

    Args:
        above: how far the layout is above the bound [%]

    Returns:
        The share to a tenth, without its sign.

    Source: arithmetic.
    """
    return f"{100 * above / (100 + above):.1f}"


def _lot(lot: LotPlan, unit: LengthUnit) -> dict[str, Any]:
    return {
        "wood": lot.wood,
        "class": lot.thickness_class or None,
        "cost_in": lot.measure,
        "cost": lot.cost,
        "cost_counted": lot.counted,
        "bound": lot.bound,
        "bound_is_for": "all parts" if lot.bounds_all else "parts with a place",
        "proven_best": lot.proven,
        "percent_above_best_possible": round(lot.above * 100, 2) if lot.bound else None,
        "percent_used": round(lot.share * 100, 2),
        "percent_waste": round((1 - lot.share) * 100, 2) if lot.boards or lot.lengths else None,
        "tried": [
            {
                "first_cut": each.name,
                "cost": each.cost,
                "percent_used": round(each.share * 100, 2),
                "unplaced": each.unplaced,
                "cuts": each.cuts,
                "set_ups": each.set_ups,
                "taken": each.is_taken,
            }
            for each in lot.tried
        ],
        "layouts": [_board(each, lot, unit) for each in lot.boards],
        "lengths": [_length(each) for each in lot.lengths],
        "panels": [_glued(each) for each in lot.glued],
        "unplaced": [
            {"code": each.code, "count": each.count, "reason": in_unit(each.reason, unit)}
            for each in lot.unplaced
        ],
        "ways_out": [_way_out(each, unit) for each in lot.ways_out],
        "not_where_put": [
            {"code": each.code, "reason": in_unit(each.reason, unit)} for each in lot.misplaced
        ],
        "sets_broken": [{"name": each.name, "way": each.way, "reason": each.reason} for each in lot.broken],
    }


def _way_out(way: WayOut, unit: LengthUnit) -> dict[str, Any]:
    return {
        "kind": way.kind,
        "words": in_unit(way.words, unit),
        "parts": list(way.codes),
        "still_without_place": way.lacking,
        "boards": list(way.boards),
        "cost": way.cost,
        "cost_in": way.measure,
        "feet": round(way.feet, 2),
        "change": dict(way.change),
    }


def _glued(glued: Glued) -> dict[str, Any]:
    place, lines = -glued.trimmed, []
    for net in glued.nets[:-1]:
        place += net
        lines.append(from_ticks(place))
    return {
        **_mark(glued.mark),
        "strips_in_order": list(glued.order),
        "net_widths_in": [from_ticks(net) for net in glued.nets],
        "off_first_edge_in": from_ticks(glued.trimmed),
        "glue_lines_in": lines,
        "clear_of_joints": glued.is_clear,
    }


def _spot(spot: Spot) -> dict[str, float]:
    return {
        "from_end_in": from_ticks(spot.x),
        "from_edge_in": from_ticks(spot.y),
        "length_in": from_ticks(spot.length),
        "width_in": from_ticks(spot.width),
    }


def _mark(mark: Mark) -> dict[str, Any]:
    return {"code": mark.code, "number": mark.number}


def _board(board: BoardLayout, lot: LotPlan, unit: LengthUnit) -> dict[str, Any]:
    steps = steps_of(board)
    return {
        "name": board.name,
        "stock": board.ground.stock.code,
        "number": board.number,
        "offcut": board.ground.stock.offcut,
        "place": board.ground.stock.place,
        "cost": board.cost,
        "length_in": from_ticks(board.ground.outer.length),
        "width_in": from_ticks(board.ground.outer.width),
        "percent_used": round(board.used * 100, 2),
        "parts": [_laid(each) for each in board.laid],
        "cuts": _sawn(board.sawn),
        "steps": [
            {
                "number": step.number,
                "kind": step.kind,
                "setting_in": step.setting,
                "count": step.count,
                "words": step_words(step, board).in_unit(unit),
            }
            for step in steps
        ],
        "set_ups": set_ups(steps),
        "stages": board.sawn.stages,
        "stages_kept": lot.keeps_stages(board),
        "left": [{**_spot(each.spot), "clear": each.is_clear} for each in board.left],
    }


def _laid(laid: Laid) -> dict[str, Any]:
    return {
        **_mark(laid.mark),
        **_spot(laid.spot),
        "second": _mark(laid.second) if laid.second else None,
        "turned": laid.turned,
        "strip": laid.strip or None,
        "strips": laid.strips or None,
        "set": laid.matched or None,
        "by_hand": laid.by_hand,
        "first_end_kept": laid.ends_kept,
    }


def _sawn(sawn: Sawn[Laid]) -> dict[str, Any]:
    tree: dict[str, Any] = _spot(sawn.spot)
    if sawn.held is not None:
        return {**tree, "part": _mark(sawn.held.mark)}
    if sawn.way is not None:
        return {**tree, "cut": sawn.way.value, "pieces": [_sawn(piece) for piece in sawn.pieces]}
    return {**tree, "left": True}


def _length(bar: LengthLayout) -> dict[str, Any]:
    return {
        "stock": bar.code,
        "number": bar.number,
        "place": bar.place,
        "cost": bar.cost,
        "length_in": from_ticks(bar.length),
        "parts": [
            {**_mark(each.mark), "from_end_in": from_ticks(each.start), "length_in": from_ticks(each.length)}
            for each in bar.laid
        ],
        "left_in": from_ticks(bar.left),
    }
