"""The heights of a piece: of its body, of what it stands on, and of all its openings together."""

from dataclasses import dataclass

from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.case_spec import LegsAndAprons
from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.least_rows import refuse_too_many_rows
from casewright.pieces.rules import case_rules as rules
from casewright.pieces.rules import leg_rules


@dataclass(frozen=True, slots=True, kw_only=True)
class Heights:
    """The heights that a face hangs on.

    Attributes:
        body: height of the body: the case sides, or the aprons [in]
        base: what lies under it: the base, or the legs below the aprons [in]
        overall: floor to the upper face of the top [in]
        opening_total: all opening heights of a column added up [in]
    """

    body: float
    base: float
    overall: float
    opening_total: float


def plan_heights(spec: UnitSpec, ledger: Ledger) -> Heights:
    """The heights of a unit, from whichever one was given.

    Args:
        spec: what the maker chose
        ledger: keeps the working

    Returns:
        The heights.

    Raises:
        CannotGraduate: they leave no height for drawers, or none below the aprons

    Source: geometry of the case.
    """
    if spec.legs:
        return _on_legs(spec, spec.legs, ledger)
    body_spec, top = spec.body, spec.top.over
    base = spec.base.height if spec.base else 0.0
    between = {
        "rail": spec.frame.upper,
        "bottom": spec.frame.lower,
        "divider": spec.frame.divider,
        "rows": len(spec.rows),
    }
    if body_spec.opening_total is not None:
        total = ledger.given("opening_total", body_spec.opening_total, "the unit file")
        body = ledger.take("body_height", rules.body_height_by_openings, openings=total, **between)
    else:
        if body_spec.overall_height is not None:
            overall = ledger.given("overall_height", body_spec.overall_height, "the unit file")
            body = ledger.take("body_height", rules.body_height, overall=overall, top=top, base=base)
        else:
            body = ledger.given("body_height", body_spec.body_height or 0.0, "the unit file")
        total = ledger.take("opening_total", rules.opening_total, body=body, **between)
    _refuse_rows(spec, total, overall=body + top + base, body=body)
    if total <= 0:
        raise CannotGraduate(
            say(
                "the rails and dividers of {:d} rows leave no height for drawers; "
                "make the case at least {:up} taller",
                len(spec.rows),
                len(spec.rows) * 2.0 - total,
            )
        )
    if body_spec.overall_height is not None:
        return Heights(body=body, base=base, overall=overall, opening_total=total)
    overall = ledger.take("overall_height", rules.overall_height, body=body, top=top, base=base)
    return Heights(body=body, base=base, overall=overall, opening_total=total)


def _refuse_rows(spec: UnitSpec, total: float, overall: float, body: float) -> None:
    """Refuses rows that do not fit in the height that was given."""
    given: dict[str, tuple[float | None, float]] = {
        "body.opening_total": (spec.body.opening_total, total),
        "body.overall_height": (spec.body.overall_height, overall),
        "body.body_height": (spec.body.body_height, body),
    }
    field, height = next((name, size) for name, (typed, size) in given.items() if typed is not None)
    refuse_too_many_rows(spec.rows, spec.drawers, total, field, height)


def _on_legs(spec: UnitSpec, legs: LegsAndAprons, ledger: Ledger) -> Heights:
    """The body lies between the edges of the aprons; below it is what shows of the legs."""
    body, top = spec.body, spec.top.thickness
    if body.opening_total is not None:
        raise CannotGraduate(
            "body.opening_total: on legs the height of the aprons sets the openings; give the overall height"
        )
    if body.overall_height is not None:
        overall = ledger.given("overall_height", body.overall_height, "the unit file")
        leg = ledger.take("leg_length", leg_rules.leg_length, overall=overall, top=top)
    else:
        leg = ledger.given("leg_length", body.body_height or 0.0, "the unit file")
        overall = ledger.take("overall_height", rules.overall_height, body=leg, top=top, base=0.0)
    apron = ledger.given("body_height", legs.apron_height, "the height of the aprons")
    if leg <= apron:
        raise CannotGraduate(
            say(
                "construction.apron_height: aprons {} high leave nothing of legs of {}; make the piece "
                "higher, or the aprons {:down} high or less",
                apron,
                max(0.0, leg),
                max(0.0, leg) * 2 / 3,
            )
        )
    rows = len(spec.rows)
    total = ledger.take(
        "opening_total",
        leg_rules.between_rails,
        apron=apron,
        rail=legs.rail,
        rows=rows,
    )
    refuse_too_many_rows(spec.rows, spec.drawers, total, "construction.apron_height", apron)
    if total <= 0:
        raise CannotGraduate(
            say(
                "construction.apron_height: the rails of {:d} rows take {} and leave no height for drawers; "
                "make the aprons {:up} high or more",
                rows,
                (rows + 1) * legs.rail,
                (rows + 1) * legs.rail + 2.0 * rows,
            )
        )
    base = ledger.take("base_height", rules.between, whole=leg, one_end=apron, other_end=0.0)
    return Heights(body=apron, base=base, overall=overall, opening_total=total)
