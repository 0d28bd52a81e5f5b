"""The stages of a drawer and of a case at the bench, and what each of them needs first."""

from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any

from casewright.labour.figures import bundled
from casewright.measure.units import Count, Inches, Minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """One stage, in the order of the work.

    Attributes:
        code: its short name in events and data
        word: what it is called at the bench
        meaning: what is done when it is reached, in one line
        steps: the single steps of work that it sums up
        operations: operations of the hours that it finishes
        source: where it comes from
        basis: common practice, or the shop's own
    """

    code: str
    word: str
    meaning: str
    steps: tuple[str, ...]
    operations: tuple[str, ...]
    source: str
    basis: str


class GateKind(StrEnum):
    """What a gate looks at: the case, measured sizes, the list before marking out, or that of the dry-fit."""

    CASE = "case"
    MEASURED = "measured"
    MARKED = "marked"
    LIST = "list"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gate:
    """What a drawer needs before it can reach a stage.

    Attributes:
        stage: the code of the stage of the drawer
        kind: what is looked at
        needs: a stage of the case, or the names of measured sizes; empty for a list
        reason: what is said while it is held
        source: why it is there
        basis: common practice, or the shop's own
    """

    stage: str
    kind: GateKind
    needs: tuple[str, ...]
    reason: str
    source: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """One line of a list: ticked, or for some lines measured.

    Attributes:
        code: its short name in events
        word: what is looked at
        size: the name of the size that may be measured in place of a tick; empty where there is none
        measured: what that size is, in words; empty where there is none
        most_in: the most that the size may be; None where there is none [in]
        source: where it comes from
        basis: common practice, or the shop's own
        mend: what to do where more than that was measured; empty where nothing is
    """

    code: str
    word: str
    size: str
    measured: str
    most_in: Inches | None
    source: str
    basis: str
    mend: str = ""


@cache
def drawer_stages() -> tuple[Stage, ...]:
    """The stages of a drawer, from parts to its place in the case.

    Source: common practice.
    """
    return _stages("drawer")


@cache
def case_stages() -> tuple[Stage, ...]:
    """The stages of a case, from panels to inspection.

    Source: common practice.
    """
    return _stages("case")


@cache
def gates() -> tuple[Gate, ...]:
    """What a drawer needs first, stage by stage.

    Source: common practice.
    """
    rows: list[dict[str, Any]] = bundled("stages.json")["gates"]
    return tuple(Gate(**{**row, "kind": GateKind(row["kind"]), "needs": tuple(row["needs"])}) for row in rows)


@cache
def dry_fit() -> tuple[Tick, ...]:
    """The list of the dry-fit: each line is ticked, or given a number where it has one.

    Source: common practice.
    """
    return tuple(Tick(**row) for row in bundled("stages.json")["dry_fit"])


@cache
def before_marking() -> tuple[Tick, ...]:
    """What is looked at on the parts before anything is marked out on them.

    Source: common practice.
    """
    return tuple(Tick(**row) for row in bundled("stages.json")["before_marking"])


@cache
def every_tick() -> tuple[Tick, ...]:
    """The lines of both lists: before marking out, and of the dry-fit.

    Source: common practice.
    """
    return (*before_marking(), *dry_fit())


@cache
def undo_minutes() -> Minutes:
    """How long anybody may take back a stage.

    Returns:
        The time since it was reached [min]

    Source: common practice.
    """
    return float(bundled("stages.json")["undo_minutes"]["minutes"])


def cautions_at(stage: str) -> tuple[str, ...]:
    """The cautions that belong to a stage.

    Args:
        stage: its code

    Returns:
        Each with its source.

    Source: each caution names its own.
    """
    rows = bundled("stages.json")["cautions"]
    return tuple(f"{row['text']} ({row['source']})" for row in rows if row["stage"] == stage)


def place_of(code: str, stages: tuple[Stage, ...]) -> Count:
    """Where a stage stands in the order of the work.

    Args:
        code: its code
        stages: the stages of a drawer or of a case

    Returns:
        Its place, from 0 [dimensionless]

    Raises:
        ValueError: there is no such stage, with those that there are.

    Source: common practice.
    """
    for place, stage in enumerate(stages):
        if stage.code == code:
            return place
    known = ", ".join(stage.code for stage in stages)
    raise ValueError(f"There is no stage “{code[:40]}”; there are {known}.")


def _stages(name: str) -> tuple[Stage, ...]:
    rows: list[dict[str, Any]] = bundled("stages.json")[name]
    return tuple(
        Stage(**{**row, "steps": tuple(row["steps"]), "operations": tuple(row["operations"])}) for row in rows
    )
