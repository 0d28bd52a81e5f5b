"""A unit and its estimate for machines: plain values, each key with its unit in its name."""

from typing import Any

from casewright.measure.findings import worst
from casewright.measure.ledger import Ledger
from casewright.measure.working import explain
from casewright.papers.doors import doors_data
from casewright.papers.drawer_data import drawer_data
from casewright.papers.finding_data import finding_data
from casewright.papers.joint_report import placed_data
from casewright.papers.stand_report import case_data, stand_data
from casewright.papers.year_report import year_data
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.joints import other_joints
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.layout.parts import PartLine
from casewright.pieces.takeoff.lumber import OrderLine

FORM = 1
"""The version of this form; it changes when a key goes or changes its meaning."""


def unit_data(unit: Construction) -> dict[str, Any]:
    """A unit without its price.

    Args:
        unit: the unit

    Returns:
        Lengths in inches, weights in pounds; the year month by month; `checks` with their verdicts and the
        gravest of them.
    """
    face = unit.face
    return {
        "form": FORM,
        "unit": {
            "code": unit.spec.code,
            "name": unit.spec.name,
            "count": unit.spec.count,
            "width_in": float(unit.spec.body.width),
            "depth_in": float(unit.spec.body.depth),
            "body_height_in": float(face.body_height),
            "overall_height_in": float(face.overall_height),
            "opening_total_in": float(face.opening_total),
            "weight_lb": float(unit.masses.total),
            "case_weight_lb": float(unit.masses.case.weight),
            "moisture_percent": {
                "now": float(unit.climate.now),
                "driest": float(unit.climate.driest),
                "wettest": float(unit.climate.wettest),
            },
            "show_sq_ft": float(unit.surfaces.show),
            "inside_sq_ft": float(unit.surfaces.inside),
            "drawer_volume_cu_ft": float(unit.stand.volume),
            "safe_travel_in": float(unit.stand.safe_travel),
        },
        "openings": [
            {
                "code": opening.code,
                "row": opening.row,
                "column": opening.column,
                "height_in": float(opening.height),
                "width_in": float(opening.width),
                "depth_in": float(opening.depth),
                "left_in": float(opening.left),
                "above_case_bottom_in": float(opening.bottom),
                "measured": list(opening.measured),
            }
            for opening in face.openings
        ],
        "spaces": [
            {
                "code": space.code,
                "holds": "knee space" if space.knee else space.holds,
                "doors": space.leaves,
                "shelves": space.shelves,
                "height_in": float(space.height),
                "width_in": float(space.width),
                "depth_in": float(space.depth),
                "left_in": float(space.left),
                "above_case_bottom_in": float(space.bottom),
                "measured": list(space.measured),
            }
            for space in face.spaces
        ],
        "divider_tops_in": [float(top) for top in face.divider_tops(unit.spec.frame.divider)],
        "drawers": [drawer_data(unit, drawer) for drawer in unit.drawers],
        "doors": doors_data(unit),
        "cut_list": [_line(line) for line in unit.lines],
        "hardware": [
            {
                "item": item.item,
                "quantity": item.quantity * unit.spec.count,
                "spare": item.spare * unit.spec.count,
            }
            for item in unit.hardware
        ],
        "small_parts": [
            {
                "name": part.name,
                "quantity": part.quantity * unit.spec.count,
                "size": str(part.size),
                "note": str(part.note),
            }
            for part in unit.small_parts
        ],
        "tipping": [case_data(case) for case in unit.stand.cases],
        "stability": stand_data(unit),
        "chosen": [
            {"name": each.name, "value": float(each.value), "why": str(each.why)} for each in unit.chosen
        ],
        "other_joints": [placed_data(each) for each in other_joints(unit)],
        "season": year_data(unit),
        "verdict": worst(unit.findings).value,
        "checks": [finding_data(finding) for finding in unit.findings],
    }


def estimate_data(held: Estimate) -> dict[str, Any]:
    """A unit with what it takes and costs.

    Args:
        held: the estimate

    Returns:
        As `unit_data`, with rough sizes, orders, hours, price and dates; money in cents.
    """
    price, risk, promise = held.price, held.risk, held.promise
    return {
        **unit_data(held.unit),
        "verdict": worst(held.findings).value,
        "checks": [finding_data(finding) for finding in held.findings],
        "rough": [
            {
                "line": line.line,
                "quantity": line.quantity,
                "class": line.bought.name,
                "width_in": float(line.width),
                "length_in": float(line.length),
                "boards": line.boards,
                "net_bd_ft": float(line.net),
                "rough_bd_ft": float(line.rough),
                "grade": str(line.grade.grade.name) if line.grade.grade else None,
                "resaw_from": line.resaw.bought.name if line.resaw else None,
            }
            for line in held.takeoff.lines
        ],
        "feet": [
            {
                "wood": group.wood,
                "class": group.bought.name,
                "use": str(group.use),
                "net_bd_ft": float(group.net),
                "rough_bd_ft": float(group.rough),
                "waste": float(group.waste.fraction),
                "waste_basis": str(group.waste.evidence),
                "order_bd_ft": float(group.order),
            }
            for group in held.takeoff.groups
        ],
        "lumber_order": [_order(line) for line in held.order],
        "sheets": [
            {"sheet": str(each.sheet), "sheets": each.count, "exact": float(each.exact), "note": each.note}
            for each in held.takeoff.sheets
        ],
        "finish": {
            "product": held.finish.product,
            "quarts": float(held.finish.quarts),
            "buy": held.finish.buy,
        },
        "drivers": {str(driver): float(number) for driver, number in held.drivers.items()},
        "hours": {
            "lines": [
                {
                    "code": line.code,
                    "name": line.name,
                    "quantity": float(line.quantity),
                    "minutes_each": float(line.each),
                    "method": str(line.method),
                    "factor": float(line.factor),
                    "minutes": float(line.minutes),
                }
                for line in held.labour
            ],
            "minutes": float(held.minutes),
            "hours": float(held.hours),
        },
        "price": {
            "materials": [
                {
                    "item": line.label,
                    "quantity": float(line.quantity),
                    "unit": line.unit,
                    "unit_price_cents": int(line.unit_price),
                    "amount_cents": int(line.amount),
                }
                for line in held.materials
            ],
            "lines": [
                {"line": line.label, "working": line.working, "amount_cents": int(line.amount)}
                for line in price.lines
            ],
            "rate_cents": int(held.rate.rate),
            "cost_rate_cents": int(held.rate.cost),
            "risk": {
                "p50": float(risk.p50),
                "p80": float(risk.p80),
                "p90": float(risk.p90),
                "basis": risk.basis,
            },
            "base_cents": int(price.base),
            "before_rounding_cents": int(price.before_rounding),
            "asked_cents": int(price.asked),
            "tax_cents": int(price.tax),
            "total_cents": int(price.total),
            "cost_cents": int(price.cost),
            "lowest_cents": int(price.lowest),
            "stages": [{"due": stage.trigger, "amount_cents": int(stage.amount)} for stage in price.stages],
        },
        "promise": {
            "likely_weeks": float(promise.likely_weeks),
            "likely_on": promise.likely.isoformat(),
            "promised_weeks": float(promise.promised_weeks),
            "promised_on": promise.promised.isoformat(),
        },
    }


def working_data(ledger: Ledger, names: tuple[str, ...]) -> list[dict[str, Any]]:
    """The working of figures, for machines.

    Args:
        ledger: the working
        names: the figures

    Returns:
        One entry for each figure: what it is, the rule, what went in, and the source or basis.
    """
    found = [explain(ledger, name) for name in names]
    return [
        {
            "figure": each.figure,
            "value": each.value,
            "what": each.what,
            "rule": each.rule,
            "inputs": [
                {"name": given.name, "value": given.value, "meaning": given.meaning, "from": given.origin}
                for given in each.inputs
            ],
            "source": each.source or each.basis,
        }
        for each in found
    ]


def _line(line: PartLine) -> dict[str, Any]:
    part = line.part
    return {
        "line": line.line,
        "name": part.name,
        "codes": list(line.codes),
        "quantity": line.quantity,
        "wood": part.wood,
        "cut": str(part.cut),
        "sheet": part.sheet,
        "thickness_in": float(part.thickness),
        "width_in": float(part.width),
        "length_in": float(part.length),
        "measured": list(part.measured),
        "grain": str(part.grain),
        "face": str(part.face),
        "ends": [str(end) for end in part.ends],
    }


def _order(line: OrderLine) -> dict[str, Any]:
    return {
        "wood": line.wood,
        "cut": str(line.cut),
        "class": line.bought.name,
        "grade": str(line.grade),
        "feet": line.feet,
        "exact_bd_ft": float(line.exact),
        "longest_in": float(line.longest),
        "boards": [
            {
                "quantity": need.quantity,
                "width_in": float(need.width),
                "length_in": float(need.length),
                "lines": list(need.lines),
                "of_a_sequence": need.matched,
            }
            for need in line.needs
        ],
        "sequences": [
            {
                "name": found.name,
                "way": found.way,
                "parts": list(found.parts),
                "width_in": float(found.width),
                "length_in": float(found.length),
                "boards": found.boards,
                "thickness_in": float(found.thickness),
            }
            for found in line.sequences
        ],
        "note": line.grade_note,
    }
