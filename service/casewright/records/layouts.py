"""Layouts of a job's parts on its stock: what was asked, how far it is, what came of it, what is cut."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from enum import StrEnum
from typing import Any, NamedTuple

from sqlalchemy import Index, String, UniqueConstraint, and_, false, or_, select
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Document, Item, Lasting, choice, owned_by
from casewright.records.papers import LARGE
from casewright.records.sessions import Fenced
from casewright.records.stock import PieceKind, PieceState, StockPiece


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
    asked: Mapped[dict[str, Any]] = mapped_column(Document, sort_order=LARGE, deferred=True)
    """The cut file."""
    answer: Mapped[dict[str, Any] | None] = mapped_column(Document, sort_order=LARGE + 1, deferred=True)
    """The layout with a drawing of each board."""


class CutTick(Item, Lasting, Base):
    """A cut that was made, or taken back, at the bench; the latest of a cut counts."""

    __tablename__ = "cut_tick"
    __table_args__ = (
        owned_by("cut_layout", "layout_id"),
        owned_by("job", "job_id"),
        UniqueConstraint("shop_id", "tap"),
        Index(None, "shop_id", "layout_id", "at"),
    )
    layout_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    board: Mapped[str] = mapped_column(String(80))
    step: Mapped[int]
    is_done: Mapped[bool]
    tap: Mapped[str] = mapped_column(String(64))
    """The mark of the tap: sent twice, it counts once."""
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))


class CutBoard(Item, Lasting, Base):
    """A board or sheet of a layout that is cut up, once what was left of it has been put away."""

    __tablename__ = "cut_board"
    __table_args__ = (
        owned_by("cut_layout", "layout_id"),
        owned_by("job", "job_id"),
        UniqueConstraint("shop_id", "layout_id", "board"),
    )
    layout_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    board: Mapped[str] = mapped_column(String(80))
    """Its name in the layout."""
    offcuts: Mapped[list[str]] = mapped_column(Document, default=list)
    """The pieces that came of it; no references, for what is the demo's goes from the rack first."""
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
    rows = db.execute(select(*columns).where(CutLayout.job_id == job_id).order_by(CutLayout.number.desc()))
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


def cut_boards(db: Fenced, layout_id: str) -> Sequence[CutBoard]:
    """The boards of a layout that were put away, in the order in which they were; one query."""
    return db.scalars(
        select(CutBoard).where(CutBoard.layout_id == layout_id).order_by(CutBoard.at, CutBoard.id)
    ).all()


def pieces_numbered(db: Fenced, numbers: Mapping[PieceKind, Iterable[int]]) -> Sequence[StockPiece]:
    """Pieces of the rack by the numbers on their labels; one query."""
    wanted = [and_(StockPiece.kind == kind, StockPiece.number.in_(some)) for kind, some in numbers.items()]
    return db.scalars(select(StockPiece).where(or_(false(), *wanted))).all()


def pieces_to_cut(db: Fenced, job_id: str, materials: Iterable[str]) -> Sequence[StockPiece]:
    """What the rack has of some woods and sheets, free or kept for a job; one query."""
    kept = and_(StockPiece.state == PieceState.KEPT, StockPiece.for_job == job_id)
    return db.scalars(
        select(StockPiece)
        .where(StockPiece.material.in_(set(materials)), or_(StockPiece.state == PieceState.STOCK, kept))
        .order_by(StockPiece.kind, StockPiece.number)
    ).all()
