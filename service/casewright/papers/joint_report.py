"""One joint as text, and as data."""

from typing import Any

from casewright.joinery.joint import Joint, JointKind, Measure, Solved
from casewright.joinery.layout import Tail
from casewright.measure.findings import worst
from casewright.papers.cautions import joint_cautions_text
from casewright.papers.checks_report import checks_section
from casewright.papers.finding_data import finding_data
from casewright.papers.joint_settings import chosen_text, positions_table, settings_table, spans_table
from casewright.papers.positions import tail_tables
from casewright.papers.writing import Writing, aside, section, several, wrapped
from casewright.pieces.layout.joints import PlacedJoint


def joint_report(kind: JointKind, solved: Solved, writing: Writing, *, checks: bool) -> str:
    """A joint's settings, positions, order of work and checks, what was chosen, cautions for its tools.

    Args:
        kind: its family
        solved: the joint
        writing: how sizes are written
        checks: also list the checks that pass

    Returns:
        The report.
    """
    joint = solved.joint
    chosen = "\n".join(
        f"{choice.name.replace('_', ' ')}: {chosen_text(choice, writing)} ({aside(writing.said(choice.why))})"
        for choice in solved.chosen
    )
    blocks = [f"{kind.title}\n{writing.legend}", section("Settings", settings_table(joint, writing))]
    blocks += [section(name, positions_table("Tail", tails, writing)) for name, tails in tail_tables(joint)]
    blocks += [section(name, spans_table("Finger", spans, writing)) for name, spans in _spans(joint)]
    advice = [writing.said(line) for line in getattr(joint, "advice", ())]
    if advice:
        steps = (wrapped(f"{number}. {line}", 4) for number, line in enumerate(advice, start=1))
        blocks.append(section("Order of work", "\n".join(steps)))
    wrong = getattr(joint, "wrong_gauge_text", "")
    if wrong:
        blocks.append(wrapped(f"If the second gauge were set to the wrong value. {writing.said(wrong)}"))
    if chosen:
        blocks.append(section("Left out, so chosen", chosen))
    blocks.append(checks_section(solved.findings, writing, everything=checks))
    blocks.append(joint_cautions_text(kind.name))
    return "\n\n".join(blocks)


def joint_data(kind: str, solved: Solved) -> dict[str, Any]:
    """A joint for machines.

    Args:
        kind: the joint's name
        solved: the joint

    Returns:
        Settings, positions, order of work, checks and choices; lengths in inches.
    """
    return {
        "kind": kind,
        "verdict": worst(solved.findings).value,
        **_worked_out(solved.joint),
        "chosen": [
            {"name": each.name, "value": float(each.value), "unit": _unit(each.measure), "why": str(each.why)}
            for each in solved.chosen
        ],
        "checks": [finding_data(finding) for finding in solved.findings],
    }


def placed_data(placed: PlacedJoint) -> dict[str, Any]:
    """A joint of a unit for machines.

    Args:
        placed: the joint, with what it serves

    Returns:
        What it joins, settings, positions and checks; lengths in inches.
    """
    joint = placed.joint
    return {
        "key": placed.key,
        "kind": placed.kind,
        "title": placed.title,
        "places": placed.places,
        "parts": {board: list(codes) for board, codes in placed.serves},
        "verdict": worst(joint.findings).value,
        **_worked_out(joint),
        "advice": [str(line) for line in (*placed.advice, *getattr(joint, "advice", ()))],
        "checks": [finding_data(finding) for finding in joint.findings],
    }


def placed_report(placed: PlacedJoint, writing: Writing) -> str:
    """A joint of a unit: what it joins, settings and positions.

    Args:
        placed: the joint, with what it serves
        writing: how sizes are written

    Returns:
        The lines of the report.
    """
    where = ", ".join(placed.drawers) or several(placed.places, "place", "places")
    blocks = [f"{placed.title}: {where}", settings_table(placed.joint, writing)]
    blocks += [positions_table(title, tails, writing) for title, tails in tail_tables(placed.joint)]
    blocks += [wrapped(writing.said(line)) for line in placed.advice]
    return "\n".join(blocks)


def _worked_out(joint: Joint) -> dict[str, Any]:
    return {
        "settings": {
            setting.name: {
                "label": str(setting.label),
                "value": float(setting.value),
                "unit": _unit(setting.measure),
                "wrong": None if setting.wrong is None else float(setting.wrong),
                "note": str(setting.note),
            }
            for setting in joint.settings
        },
        "positions": {name: [_tail_data(tail) for tail in tails] for name, tails in tail_tables(joint)}
        | {name: [_span_data(*span) for span in spans] for name, spans in _spans(joint)},
        "advice": [str(line) for line in getattr(joint, "advice", ())],
    }


def _unit(measure: Measure) -> str:
    return "in" if measure.is_length else str(measure)


def _spans(joint: object) -> tuple[tuple[str, tuple[tuple[float, float], ...]], ...]:
    """The tables of fingers that a joint has, board by board."""
    spans: tuple[tuple[str, tuple[tuple[float, float], ...]], ...] = getattr(joint, "spans", ())
    return spans


def _span_data(low: float, high: float) -> dict[str, float]:
    return {"lower_in": float(low), "upper_in": float(high)}


def _tail_data(tail: Tail) -> dict[str, float]:
    return {
        "lower_end_in": float(tail.lower_end),
        "upper_end_in": float(tail.upper_end),
        "lower_baseline_in": float(tail.lower_base),
        "upper_baseline_in": float(tail.upper_base),
    }
