"""What comes next for a drawer or a case: allowed, or held with its reason; and what can be taken back."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from casewright.labour.bench import CaseProgress, DrawerProgress, Progress
from casewright.labour.stages import (
    Gate,
    GateKind,
    Stage,
    Tick,
    before_marking,
    case_stages,
    cautions_at,
    drawer_stages,
    dry_fit,
    gates,
    undo_minutes,
)
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import Words, in_unit, say, strung


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """The next stage.

    Attributes:
        stage: the stage that comes next; None when there is none left
        held: why it cannot be reached yet, one reason each; empty when it can
        cautions: what to mind while doing it
    """

    stage: Stage | None
    held: tuple[Words, ...] = ()
    cautions: tuple[str, ...] = ()

    @property
    def allowed(self) -> bool:
        """Whether the stage can be reached now."""
        return self.stage is not None and not self.held

    @property
    def reason(self) -> str:
        """Why it is held, in words; empty when it is not. In inches, unless the step is read `in_unit`."""
        return str(strung("; ", self.held))

    def in_unit(self, unit: LengthUnit) -> "Step":
        """The same step as a shop reads it.

        Args:
            unit: the shop's unit

        Returns:
            The step with its reasons as text.

        Source: common practice.
        """
        return replace(self, held=tuple(in_unit(reason, unit) for reason in self.held))


def next_step(drawer: DrawerProgress, case: CaseProgress) -> Step:
    """What comes next for a drawer, and whether it may.

    Args:
        drawer: where the drawer stands
        case: where its case stands

    Returns:
        The next stage, with a reason for each thing that it still needs.

    Source: common practice; each gate names its own ground.
    """
    stages = drawer_stages()
    if len(drawer.reached) == len(stages):
        return Step(stage=None)
    stage = stages[len(drawer.reached)]
    held = tuple(
        reason for gate in gates() if gate.stage == stage.code for reason in _held(gate, drawer, case)
    )
    return Step(stage=stage, held=held, cautions=cautions_at(stage.code))


def next_case_step(case: CaseProgress) -> Step:
    """What comes next for a case.

    Args:
        case: where it stands

    Returns:
        The next stage.

    Source: common practice.
    """
    stages = case_stages()
    if len(case.reached) == len(stages):
        return Step(stage=None)
    stage = stages[len(case.reached)]
    return Step(stage=stage, cautions=cautions_at(stage.code))


def _held(gate: Gate, drawer: DrawerProgress, case: CaseProgress) -> Iterator[Words]:
    """The reasons why one gate is shut."""
    match gate.kind:
        case GateKind.CASE:
            if not all(case.has_reached(stage) for stage in gate.needs):
                yield gate.reason
        case GateKind.MEASURED:
            if not all(drawer.measured.get(size) for size in gate.needs):
                yield gate.reason
        case GateKind.MARKED:
            done = sum(line.code in drawer.ticked for line in before_marking())
            if done < len(before_marking()):
                yield f"{gate.reason}: {done} of {len(before_marking())} ticked"
        case GateKind.LIST:
            done = sum(is_done(line, drawer) for line in dry_fit())
            if done < len(dry_fit()):
                yield f"{gate.reason}: {done} of {len(dry_fit())} ticked"
            yield from _too_much(drawer)


def is_done(line: Tick, drawer: DrawerProgress) -> bool:
    """Whether a line of the dry-fit list is done: measured and small enough, or, not measured, ticked.

    Args:
        line: the line
        drawer: where the drawer stands

    Returns:
        True when it is done.

    Source: common practice.
    """
    found = drawer.measured.get(line.size) if line.size else None
    if found is not None and line.most_in is not None:
        return found <= line.most_in
    return line.code in drawer.ticked


def _too_much(drawer: DrawerProgress) -> Iterator[Words]:
    for line in dry_fit():
        found = drawer.measured.get(line.size)
        if found is not None and line.most_in is not None and found > line.most_in:
            name = line.size.rpartition(".")[2]
            yield say("{}: {} is more than the {:bare} that are allowed", name, found, line.most_in)


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeBack:
    """Whether the last stage can be taken back.

    Attributes:
        stage: the code of the stage; empty when there is none
        allowed: whether this person may, now
        reason: why not; empty when it is allowed
    """

    stage: str
    allowed: bool
    reason: str = ""


def can_take_back(progress: Progress, now: datetime, *, is_maker: bool = False) -> TakeBack:
    """Whether the last stage can be taken back: for ten minutes by anybody, later by owner and maker.

    Args:
        progress: where the drawer or the case stands
        now: the time, with its zone
        is_maker: whether the person is the owner or a maker

    Returns:
        The answer, with the reason when it is no.

    Source: common practice.
    """
    if not progress.reached:
        return TakeBack(stage="", allowed=False, reason="nothing has been reached yet")
    last = progress.reached[-1]
    if is_maker or now - last.at <= timedelta(minutes=undo_minutes()):
        return TakeBack(stage=last.name, allowed=True)
    reason = f"more than {undo_minutes():g} minutes have gone by: ask the owner or a maker to take it back"
    return TakeBack(stage=last.name, allowed=False, reason=reason)


def can_leave(progress: Progress, now: datetime, *, is_maker: bool = False) -> TakeBack:
    """Whether it can be said of what a change put back that it stands as it was: as for a stage taken back.

    Args:
        progress: where the drawer or the case stands
        now: the time, with its zone
        is_maker: whether the person is the owner or a maker

    Returns:
        The answer, with the number of the change order for a stage, and the reason when it is no.

    Source: common practice.
    """
    if not progress.again:
        return TakeBack(stage="", allowed=False, reason="nothing is made again")
    last = progress.again[-1]
    if len(progress.reached) != last.kept:
        return TakeBack(stage=last.change, allowed=False, reason="its work has gone on since")
    if is_maker or now - last.at <= timedelta(minutes=undo_minutes()):
        return TakeBack(stage=last.change, allowed=True)
    reason = f"more than {undo_minutes():g} minutes have gone by: ask the owner or a maker"
    return TakeBack(stage=last.change, allowed=False, reason=reason)
