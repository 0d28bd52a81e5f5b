"""Layouts of a job's parts on its stock: what was asked, how far it is, what came of it, what is cut already."""

from collections.abc import Sequence
from datetime import datetime
from enum import StrEnum
from typing import Any, NamedTuple

from sqlalchemy import Index, String, UniqueConstraint, select
from sqlalchemy.orm import Mapped, deferred, mapped_column

from casewright.records.base import ID_LENGTH, Base, Document, Item, Lasting, choice, owned_by
from casewright.records.papers import LARGE
from casewright.records.sessions import Fenced


class LayoutState(StrEnum):
    """Where a layout stands."""

    WAITING = "waiting"
    WORKING = "working"
    DONE = "done"
    REFUSED = "refused"


UNDER_WAY = (LayoutState.WAITING, LayoutState.WORKING)


class CutLayout(Item, Base):
    """One layout of a job's parts. Asked for once; what came of it is never changed."""

    __tablename__ = "cut_layout"
    __table_args__ = (
        owned_by("job", "job_id"),
        UniqueConstraint("shop_id", "job_id", "number"),
        Index(None, "state", "created_at"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    number: Mapped[int]
    state: Mapped[LayoutState] = mapped_column(choice(LayoutState), default=LayoutState.WAITING)
    seconds: Mapped[float]
    """How long it may be worked on."""
    seed: Mapped[int] = mapped_column(default=0)
    stop_asked: Mapped[bool] = mapped_column(default=False)
    tries: Mapped[int] = mapped_column(default=0)
    progress: Mapped[dict[str, Any]] = mapped_column(Document, default=dict)
    """Cost, bound and seconds of the best so far."""
    beat_at: Mapped[datetime | None]
    """When whoever works on it last said so."""
    message: Mapped[str] = mapped_column(String(2000), default="")
    """Why there is none."""
    created_at: Mapped[datetime]
    ended_at: Mapped[datetime | None]
    who: Mapped[str] = mapped_column(String(120))
    demo: Mapped[bool] = mapped_column(default=False)
    asked: Mapped[dict[str, Any]] = deferred(mapped_column(Document, sort_order=LARGE))
    """The cut file."""
    answer: Mapped[dict[str, Any] | None] = deferred(mapped_column(Document, sort_order=LARGE + 1))
    """The layout with a drawing of each board."""


class CutTick(Item, Lasting, Base):
    """A cut that was made, or taken back, at the bench; the latest of a cut counts."""

    __tablename__ = "cut_tick"
    __table_args__ = (
        owned_by("cut_layout", "layout_id"),
        UniqueConstraint("shop_id", "tap"),
        Index(None, "shop_id", "layout_id", "at"),
    )
    layout_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    board: Mapped[str] = mapped_column(String(80))
    step: Mapped[int]
    is_done: Mapped[bool]
    tap: Mapped[str] = mapped_column(String(64))
    """The mark of the tap: sent twice, it counts once."""
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class LayoutRow(NamedTuple):
    """A layout in a list."""

    id: str
    number: int
    state: LayoutState
    message: str
    created_at: datetime
    who: str


def layouts_of(db: Fenced, job_id: str) -> Sequence[LayoutRow]:
    """The layouts of a job, the newest first; one query."""
    columns = [getattr(CutLayout, name) for name in LayoutRow._fields]
    rows = db.execute(
        select(*columns).where(CutLayout.job_id == job_id).order_by(CutLayout.number.desc())
    )
    return [LayoutRow(*row) for row in rows]


def ticked(db: Fenced, layout_id: str) -> frozenset[tuple[str, int]]:
    """The cuts of a layout that are made: board and number of the cut; one query."""
    rows = db.execute(
        select(CutTick.board, CutTick.step, CutTick.is_done)
        .where(CutTick.layout_id == layout_id)
        .order_by(CutTick.at, CutTick.id)
    )
    latest = {(board, step): is_done for board, step, is_done in rows}
    return frozenset(cut for cut, is_done in latest.items() if is_done)
