"""One joint as text, and as data."""

from typing import Any

from casewright.joinery.joint import Measure, Solved
from casewright.joinery.layout import Tail, TailLayout
from casewright.measure.findings import worst
from casewright.papers.checks_report import checks_section
from casewright.papers.data import finding_data
from casewright.papers.joint_settings import chosen_text, positions_table, settings_table, spans_table
from casewright.papers.writing import Writing, section, wrapped


def joint_report(title: str, solved: Solved, writing: Writing, *, checks: bool) -> str:
    """A joint's settings, positions, order of work and checks, and what was chosen for it.

    Args:
        title: what kind of joint it is
        solved: the joint
        writing: how sizes are written
        checks: also list the checks that pass

    Returns:
        The report.
    """
    joint = solved.joint
    chosen = "\n".join(
        f"{choice.name.replace('_', ' ')}: {chosen_text(choice, writing)} ({writing.said(choice.why)})"
        for choice in solved.chosen
    )
    blocks = [f"{title}\n{writing.legend}", section("Settings", settings_table(joint, writing))]
    blocks += [section(name, positions_table("Tail", tails, writing)) for name, tails in _tails(joint)]
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
    return "\n\n".join(blocks)


def joint_data(kind: str, solved: Solved) -> dict[str, Any]:
    """A joint for machines.

    Args:
        kind: the joint's name
        solved: the joint

    Returns:
        Settings, positions, order of work, checks and choices; lengths in inches.
    """
    joint = solved.joint
    return {
        "kind": kind,
        "verdict": worst(solved.findings).value,
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
        "positions": {name: [_tail_data(tail) for tail in tails] for name, tails in _tails(joint)}
        | {name: [_span_data(*span) for span in spans] for name, spans in _spans(joint)},
        "advice": [str(line) for line in getattr(joint, "advice", ())],
        "chosen": [
            {"name": each.name, "value": float(each.value), "unit": _unit(each.measure), "why": str(each.why)}
            for each in solved.chosen
        ],
        "checks": [finding_data(finding) for finding in solved.findings],
    }


def _unit(measure: Measure) -> str:
    return "in" if measure.is_length else str(measure)


def _tails(joint: object) -> list[tuple[str, tuple[Tail, ...]]]:
    """The tables of positions that a joint has: none, its own edge's, and the side's where that differs."""
    layout = getattr(joint, "layout", None)
    tables: list[tuple[str, tuple[Tail, ...]]] = []
    if isinstance(layout, TailLayout):
        tables.append(("Positions from the bottom edge", layout.tails))
    side = getattr(joint, "side_tails", ())
    if side and getattr(joint, "lower_edge_offset", 0.0):
        tables.append(("Positions from the bottom edge of the side", side))
    return tables


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
