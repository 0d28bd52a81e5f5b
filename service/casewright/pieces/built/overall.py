"""Width and depth over all: worked out when somebody asks where they come from."""

from dataclasses import replace

from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction

WIDTH, DEPTH = "overall_width", "overall_depth"


def overall_width(body: Inches, overhang: Inches) -> Inches:
    """The width over the top, which overhangs both sides alike.

    Rule: body + 2 × overhang

    Args:
        body: width of the case body [in]
        overhang: overhang of the top at each side [in]

    Returns:
        The width of the piece [in]

    Source: geometry of the case.
    """
    return body + 2 * overhang


def overall_depth(body: Inches, front: Inches, fronts: Inches, back: Inches) -> Inches:
    """The depth over the top, or over fronts that stand further forward than it; without pulls.

    Rule: body + the larger of front and fronts + back

    Args:
        body: depth of the case body [in]
        front: overhang of the top at the front [in]
        fronts: how far drawer fronts stand before the case [in]
        back: overhang of the top at the back [in]

    Returns:
        The depth of the piece [in]

    Source: geometry of the case.
    """
    return body + max(front, fronts) + back


def with_overall(unit: Construction, asked: str) -> Construction:
    """The unit whose ledger holds width and depth over all, if one of them is asked for.

    Args:
        unit: the unit, worked out
        asked: the name of a figure

    Returns:
        The unit itself, or one with both in its ledger.

    Source: common practice.
    """
    if asked.strip() not in {WIDTH, DEPTH}:
        return unit
    spec, ledger = unit.spec, unit.ledger.copied()
    ledger.take(WIDTH, overall_width, body=spec.body.width, overhang=spec.top.overhang_sides)
    ledger.take(
        DEPTH,
        overall_depth,
        body=spec.body.depth,
        front=spec.top.overhang_front,
        fronts=spec.drawers.stands_before,
        back=spec.top.overhang_back,
    )
    return replace(unit, ledger=ledger)
