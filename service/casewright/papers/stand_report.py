"""How a unit stands as text, and for machines."""

import math
from collections.abc import Iterable, Iterator
from typing import Any

from casewright.measure.rounding import up_to
from casewright.measure.saying import Words
from casewright.papers.stand_words import (
    FIXED,
    ONLY_THE_TEST,
    OTHERS_OPEN,
    SIDEWAYS,
    UNFIXED,
    alone_line,
    case_name,
    limit_words,
    mending,
    others_open_words,
    scope_words,
    shown_verdict,
    together_line,
    wall_lines,
)
from casewright.papers.writing import Writing, section, several, table, wrapped
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.masses import Mass, Weighed
from casewright.pieces.built.standing import Standing, basis_of, unit_standing
from casewright.stability.tip_checks import SOURCES, factor_shown
from casewright.stability.tipping import TipCase


def stand_section(unit: Construction, writing: Writing) -> str:
    """How a unit stands: weights, scope, every situation, safe travel, remedies, what is carried.

    Args:
        unit: the unit
        writing: how sizes are written

    Returns:
        Tables and sentences.
    """
    held = unit_standing(unit)
    travels = tuple(line for line in (together_line(held), alone_line(held)) if line)
    tables = (_cases(held, writing), _travels(held, writing))
    if not unit.stand.use.free_standing:
        return section(
            "Stability and weight",
            _limits(held, writing),
            _said((scope_words(held), FIXED, *_at_the_wall(held), _carried(held)), writing),
            f"{UNFIXED}, for information",
            *tables,
            _said((*travels, ONLY_THE_TEST), writing),
            _weights(held, writing),
        )
    return section(
        "Stability and weight",
        _limits(held, writing),
        *tables,
        _said((*travels, scope_words(held), *_mended(held, writing)), writing),
        _said((_carried(held), *_at_the_wall(held), SIDEWAYS, ONLY_THE_TEST), writing),
        _weights(held, writing),
    )


def _said(lines: Iterable[Words], writing: Writing) -> str:
    return "\n".join(wrapped(writing.said(each), 2) for each in lines)


def _at_the_wall(held: Standing) -> Iterable[Words]:
    return wall_lines(held.wall) if held.wall else ()


def _mended(held: Standing, writing: Writing) -> Iterator[str]:
    """What would mend it, and apart from that what helps without being enough."""
    found, others = mending(held), others_open_words(held)
    if others:
        yield f"- {writing.said(others)}"
    yield "What would mend it, each by itself, but the last, which is always done:"
    yield from (f"- {writing.said(line)}" for line in found.enough)
    if found.not_enough:
        yield "Not enough alone:"
        yield from (f"- {writing.said(line)}" for line in found.not_enough)


def _limits(held: Standing, writing: Writing) -> str:
    return table(
        ("Limit of the rule", "Here", "From", "Reached", "Source"),
        (
            (
                each.name,
                writing.said(limit_words(each, each.found)),
                writing.said(limit_words(each, each.least)),
                "yes" if each.is_reached else "no",
                f"{each.source} ({each.basis})",
            )
            for each in held.limits
        ),
        right=(1, 2),
    )


def _cases(held: Standing, writing: Writing) -> str:
    is_free = held.unit.stand.use.free_standing
    others = [held.others_open] if held.others_open and is_free else []
    rows = [_case(case, case_name(case), shown_verdict(case, held), writing) for case in held.cases]
    rows += [
        _case(case, f"{OTHERS_OPEN}: {case.situation.about}", "tips" if case.factor < 1 else "", writing)
        for case in others
    ]
    holds, tips = (f"{word}, {writing.moments}" for word in ("Holds", "Tips"))
    return table(
        ("Situation", holds, tips, "Factor", "Verdict" if is_free else "So it", "Figures"),
        rows,
        right=(1, 2, 3),
    )


def _case(case: TipCase, name: str, verdict: str, writing: Writing) -> tuple[str, ...]:
    return (
        name,
        writing.moment(case.holding),
        writing.moment(case.tipping),
        factor_shown(case.factor),
        verdict,
        basis_of(SOURCES[case.situation.kind]),
    )


def _travels(held: Standing, writing: Writing) -> str:
    """How it would stand with everything that can be open further out."""
    if not held.further:
        return ""
    return table(
        ("All that can be open, full", "Travel", "Factor"),
        ((each.why, writing.size(each.travel), factor_shown(each.case.factor)) for each in held.further),
        right=(1, 2),
    )


def _carried(held: Standing) -> str:
    said = (
        f"{each.what} {up_to(each.weight, 1):.0f} lb, {several(each.people, 'person', 'people')}"
        for each in held.carries
    )
    return f"To carry, at {held.unit.spec.use.lift_lb:g} lb a person: {'; '.join(said)}."


def _weights(held: Standing, writing: Writing) -> str:
    """Part by part, alike ones on one line with the centre of all of them."""
    groups: dict[str, list[Weighed]] = {}
    lines = {code: line.line for line in held.unit.lines for code in line.codes}
    for part in held.parts:
        groups.setdefault(lines.get(part.code, part.name), []).append(part)
    rows = [_weight_row(name, group, writing) for name, group in groups.items()]
    masses = held.unit.masses
    rows.append(_mass_row("", "case", masses.case, writing))
    rows.append(_mass_row("", "whole piece, empty", masses.whole, writing))
    return table(
        ("Line", "Part", "Qty", "lb", "From the left", "Behind the front", "Above the floor"),
        rows,
        right=(2, 3, 4, 5, 6),
    )


def _weight_row(name: str, group: list[Weighed], writing: Writing) -> tuple[object, ...]:
    weight = sum(each.weight for each in group)

    def centre(axis: str) -> str:
        return writing.fine(sum(each.weight * getattr(each, axis) for each in group) / weight, 2)

    places = tuple(map(centre, "xyz")) if weight else ("", "", "")
    return (name, group[0].name, len(group), f"{weight:.2f}", *places)


def _mass_row(name: str, what: str, mass: Mass, writing: Writing) -> tuple[object, ...]:
    return (
        name,
        what,
        "",
        f"{mass.weight:.2f}",
        *(writing.fine(each, 2) for each in (mass.x, mass.y, mass.z)),
    )


def stand_data(unit: Construction) -> dict[str, Any]:
    """How a unit stands, for machines.

    Args:
        unit: the unit

    Returns:
        Weights in pounds with their centres in inches (x from the left outside of the case, y behind its
        front edge, z above the floor); scope, situations, travels, remedies, what is carried, wall load.
    """
    held = unit_standing(unit)
    remedies, wall = held.remedies, held.wall
    return {
        "is_a_screen": ONLY_THE_TEST,
        "covered_by_16_cfr_1261": held.covered,
        "limits": [
            {
                "limit": each.name,
                "found": float(each.found),
                "least": float(each.least),
                "unit": each.unit,
                "reached": each.is_reached,
                "source": each.source,
                "basis": each.basis,
            }
            for each in held.limits
        ],
        "parts": [
            {
                "code": each.code,
                "name": each.name,
                "wood": each.wood,
                "weight_lb": float(each.weight),
                "centre_in": [float(each.x), float(each.y), float(each.z)],
            }
            for each in held.parts
        ],
        "case": _mass_data(unit.masses.case),
        "whole": _mass_data(unit.masses.whole),
        "fill_lb": float(unit.stand.fill),
        "situations": [case_data(case) for case in held.cases],
        "child_with_others_open": case_data(held.others_open) if held.others_open else None,
        "safe_travel_in": {
            "all_open": float(unit.stand.safe_travel),
            "alone": {code: float(travel) for code, travel in held.alone.items()},
        },
        "further_out": [
            {"travel_in": float(each.travel), "why": each.why, **case_data(each.case)}
            for each in held.further
        ],
        "remedies": {
            "outstops_at_in": float(remedies.travel),
            "least_factor_with_interlock": _finite(remedies.interlock),
            "body_deeper_by_in": float(remedies.deeper),
            "weight_low_at_the_back_lb": float(remedies.added),
            "front_feet_forward_by_in": float(remedies.forward),
            "wall_restraint": "always, to ASTM F3096",
        },
        "carried": [
            {"what": each.what, "weight_lb": float(each.weight), "people": int(each.people)}
            for each in held.carries
        ],
        "wall": None
        if wall is None
        else {
            "hangs": wall.hangs,
            "weight_lb": float(wall.weight),
            "pull_lb": float(wall.pull),
            "lever_in": float(wall.lever),
            "fixings": int(wall.fixings),
            "each_lb": float(wall.each),
            "holds_lb": float(wall.holds),
            "factor": float(wall.factor),
        },
    }


def case_data(case: TipCase) -> dict[str, Any]:
    """One situation, for machines; no factor where nothing tips.

    Args:
        case: the situation, worked out

    Returns:
        Plain values.
    """
    return {
        "case": str(case.situation.kind),
        "drawer": case.situation.about,
        "tilt_degrees": float(case.situation.tilt),
        "holding_in_lb": float(case.holding),
        "tipping_in_lb": float(case.tipping),
        "factor": _finite(case.factor),
        "basis": basis_of(SOURCES[case.situation.kind]),
    }


def _finite(number: float | None) -> float | None:
    return None if number is None or math.isinf(number) else float(number)


def _mass_data(mass: Mass) -> dict[str, Any]:
    return {"weight_lb": float(mass.weight), "centre_in": [float(mass.x), float(mass.y), float(mass.z)]}
