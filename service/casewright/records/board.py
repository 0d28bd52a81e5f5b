"""Questions about the work in hand: drawers and cases with their stages, and what was tapped about them."""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any, NamedTuple

from sqlalchemy import func, select

from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.jobs import Job, JobState, Unit
from casewright.records.sessions import Fenced

IN_HAND = (JobState.ACCEPTED, JobState.IN_HAND, JobState.READY)
"""The states of a job in which the bench works on it."""
A_PAGE = 32
"""Drawers on one page of the board: more cannot be read across a room."""
MOST_JOBS = 200


class JobInHand(NamedTuple):
    """A job that the bench works on."""

    id: str
    number: int
    name: str
    drawers: int
    demo: bool


class BoardRow(NamedTuple):
    """A drawer in hand with its case, unit and job."""

    drawer: Drawer
    carcase: Carcase
    unit: Unit
    job: Job

    @property
    def code(self) -> str:
        """Job, unit, row and column, such as 27-A-R4-1; the number of the case where there are several."""
        piece = f" ({self.carcase.piece})" if self.unit.count > 1 else ""
        return f"{self.job.number}-{self.unit.code}-{self.drawer.code}{piece}"


class Tapped(NamedTuple):
    """What one tap said."""

    carcase_id: str
    drawer_id: str | None
    id: str
    kind: str
    data: dict[str, Any]
    at: datetime
    who: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardFilter:
    """Which drawers are asked for.

    Attributes:
        job_id: only those of a job; empty for all
        stages: only those whose last stage is one of these, "" for none yet; None for all
    """

    job_id: str = ""
    stages: tuple[str, ...] | None = None


def jobs_in_hand(db: Fenced) -> Sequence[JobInHand]:
    """The jobs that the bench works on, each with the number of its drawers; one query."""
    found = db.execute(
        _in_hand(select(Job.id, Job.number, Job.name, func.count(Drawer.id), Job.demo))
        .group_by(Job.id, Job.number, Job.name, Job.demo)
        .order_by(Job.number)
        .limit(MOST_JOBS)
    )
    return [JobInHand(*row) for row in found]


def stage_counts(db: Fenced, job_id: str = "") -> dict[str, int]:
    """How many drawers in hand have reached which stage last; one query."""
    asked = _in_hand(select(Drawer.stage, func.count(Drawer.id))).group_by(Drawer.stage)
    found = db.execute(_narrowed(asked, BoardFilter(job_id=job_id)))
    return {stage: count for stage, count in found}  # noqa: C416 - rows are not pairs to the checker


def board_rows(db: Fenced, wanted: BoardFilter, page: int = 1, size: int = A_PAGE) -> Sequence[BoardRow]:
    """A page of drawers in hand, job by job, case by case, from the top left; one query."""
    asked = _narrowed(_in_hand(select(Drawer, Carcase, Unit, Job)), wanted)
    return [BoardRow(*row) for row in db.execute(_ordered(asked).limit(size).offset((page - 1) * size))]


def tapped(db: Fenced, carcase_ids: Collection[str], kinds: Collection[str] = ()) -> Sequence[Tapped]:
    """What was tapped about some cases and their drawers, in the order of time; one query."""
    asked = (
        select(
            BenchEvent.carcase_id,
            BenchEvent.drawer_id,
            BenchEvent.id,
            BenchEvent.kind,
            BenchEvent.data,
            BenchEvent.at,
            BenchEvent.who,
        )
        .where(BenchEvent.carcase_id.in_(list(carcase_ids)))
        .order_by(BenchEvent.at, BenchEvent.id)
    )
    if kinds:
        asked = asked.where(BenchEvent.kind.in_(list(kinds)))
    return [Tapped(*row) for row in db.execute(asked)]


def drawer_row(db: Fenced, drawer_id: str) -> BoardRow | None:
    """One drawer with its case, unit and job, whatever the job's state; one query."""
    asked = _joined(select(Drawer, Carcase, Unit, Job)).where(Drawer.id == drawer_id)
    found = db.execute(asked).first()
    return BoardRow(*found) if found else None


def drawers_of_case(db: Fenced, carcase_id: str) -> Sequence[Drawer]:
    """The drawers of one case from the top left, those without an opening now left out; one query."""
    return db.scalars(
        select(Drawer)
        .where(Drawer.carcase_id == carcase_id, Drawer.gone.is_(False))
        .order_by(Drawer.position, Drawer.code)
    ).all()


def _joined(asked: Any) -> Any:
    return (
        asked.select_from(Drawer)
        .join(Carcase, (Carcase.shop_id == Drawer.shop_id) & (Carcase.id == Drawer.carcase_id))
        .join(Unit, (Unit.shop_id == Drawer.shop_id) & (Unit.id == Drawer.unit_id))
        .join(Job, (Job.shop_id == Drawer.shop_id) & (Job.id == Drawer.job_id))
    )


def _in_hand(asked: Any) -> Any:
    """The drawers of the jobs in hand; asked so that a database starts from those few jobs."""
    jobs = select(Job.id).where(Job.state.in_(IN_HAND))
    return _joined(asked).where(Drawer.job_id.in_(jobs), Drawer.gone.is_(False), Unit.ended_at.is_(None))


def _narrowed(asked: Any, wanted: BoardFilter) -> Any:
    if wanted.job_id:
        asked = asked.where(Job.id == wanted.job_id)
    if wanted.stages is not None:
        asked = asked.where(Drawer.stage.in_(wanted.stages))
    return asked


def _ordered(asked: Any) -> Any:
    return asked.order_by(Job.number, Unit.code, Carcase.piece, Drawer.position, Drawer.code, Drawer.id)
