"""The board: every drawer in hand with what it has reached, what comes next, and what holds it up."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from casewright.labour.bench import CaseProgress, DrawerProgress, Progress, case_progress, drawer_progress
from casewright.labour.next_step import Step, can_leave, can_take_back, next_case_step, next_step
from casewright.labour.stages import drawer_stages, place_of
from casewright.records.bench import Carcase
from casewright.records.board import BoardRow, Tapped
from casewright.records.jobs import Job, Unit
from casewright.shop.bench import taps_of
from casewright.shop.units import said_not_agreed


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A drawer, or a case, on the board.

    Attributes:
        id: of the drawer or the case
        code: what it is called, such as R4-1
        progress: where it stands
        step: what comes next
        can_undo: whether its last stage was reached so lately that anybody may take it back
        can_leave: whether a change put it back so lately that anybody may say that it stands as it was
    """

    id: str
    code: str
    progress: Progress
    step: Step
    can_undo: bool
    can_leave: bool

    @property
    def is_put_back(self) -> bool:
        """Whether the last that happened is that a change put it back behind stages that it had reached."""
        last = self.progress.again[-1] if self.progress.again else None
        return last is not None and len(self.progress.reached) == last.kept < len(last.before)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """A case with those of its drawers that are asked for.

    Attributes:
        job: its job
        unit: its unit
        carcase: the case
        case: the case as a line
        drawers: its drawers
    """

    job: Job
    unit: Unit
    carcase: Carcase
    case: Line
    drawers: tuple[Line, ...]

    @property
    def is_changed(self) -> bool:
        """Whether the unit was changed after its approval, and the change is not agreed."""
        return bool(said_not_agreed(self.unit))

    @property
    def mark(self) -> str:
        """Job and unit, such as 27-A; the number of the case where there are several."""
        piece = f" ({self.carcase.piece})" if self.unit.count > 1 else ""
        return f"{self.job.number}-{self.unit.code}{piece}"


def groups_of(rows: Iterable[BoardRow], taps: Sequence[Tapped], now: datetime) -> tuple[Group, ...]:
    """Drawers by case, in the order in which they come."""
    by_case: dict[str, list[Tapped]] = {}
    for tap in taps:
        by_case.setdefault(tap.carcase_id, []).append(tap)
    return tuple(
        _group(list(members), by_case.get(case_id, []), now)
        for case_id, members in groupby(rows, key=lambda row: row.carcase.id)
    )


def _group(rows: list[BoardRow], taps: list[Tapped], now: datetime) -> Group:
    first, case = rows[0], case_progress(taps_of(taps, None))
    by_drawer: dict[str | None, list[Tapped]] = {}
    for tap in taps:
        by_drawer.setdefault(tap.drawer_id, []).append(tap)
    return Group(
        job=first.job,
        unit=first.unit,
        carcase=first.carcase,
        case=case_line(first.carcase, case, now),
        drawers=tuple(drawer_line(row, by_drawer.get(row.drawer.id, []), case, now) for row in rows),
    )


def drawer_line(row: BoardRow, taps: Iterable[Tapped], case: CaseProgress, now: datetime) -> Line:
    """A drawer as a line of the board."""
    progress: DrawerProgress = drawer_progress(taps_of(taps, row.drawer.id))
    return Line(
        id=row.drawer.id,
        code=row.drawer.code,
        progress=progress,
        step=next_step(progress, case),
        can_undo=can_take_back(progress, now).allowed,
        can_leave=can_leave(progress, now).allowed,
    )


def case_line(carcase: Carcase, case: CaseProgress, now: datetime) -> Line:
    """A case as a line of the board."""
    return Line(
        id=carcase.id,
        code="Case",
        progress=case,
        step=next_case_step(case),
        can_undo=can_take_back(case, now).allowed,
        can_leave=can_leave(case, now).allowed,
    )


def at_or_after(stage: str) -> tuple[str, ...]:
    """The stages that a drawer may stand at which has reached a stage: that one and all later ones."""
    stages = drawer_stages()
    return tuple(each.code for each in stages[place_of(stage, stages) :])


def just_before(stage: str) -> tuple[str, ...]:
    """Where a drawer stands for which a stage is the next: at the one before it, or at the beginning."""
    stages = drawer_stages()
    place = place_of(stage, stages)
    return (stages[place - 1].code if place else "",)
