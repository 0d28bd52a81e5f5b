"""What happens at the bench: cases, drawers, taps, measured sizes and time."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import Index, String, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from casewright.records.base import ID_LENGTH, Base, Item, Lasting, Owned, owned_by


class Carcase(Item, Base):
    """One case that is built: a unit made three times has three. Its stage is the fold over its events."""

    __tablename__ = "carcase"
    __table_args__ = (
        owned_by("job", "job_id"),
        owned_by("unit", "unit_id"),
        UniqueConstraint("shop_id", "unit_id", "piece"),
        Index(None, "shop_id", "job_id"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    unit_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    piece: Mapped[int]
    stage: Mapped[str] = mapped_column(String(30), default="")
    stage_at: Mapped[datetime | None]
    stage_by: Mapped[str] = mapped_column(String(120), default="")
    again: Mapped[str] = mapped_column(String(60))
    """The change orders for which parts are made again and not done yet, such as CO-0002; the same fold."""


class Drawer(Item, Base):
    """One drawer that is built. Its stage is the fold over its events, kept here so that a board is quick."""

    __tablename__ = "drawer"
    __table_args__ = (
        owned_by("job", "job_id"),
        owned_by("unit", "unit_id"),
        owned_by("carcase", "carcase_id"),
        UniqueConstraint("shop_id", "carcase_id", "origin"),
        Index(None, "shop_id", "job_id"),
        Index(None, "shop_id", "unit_id"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    unit_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    carcase_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    origin: Mapped[str] = mapped_column(String(30))
    """The code that its opening had when it came, such as R4-1; R4-1@3 where it came with revision 3."""
    code: Mapped[str] = mapped_column(String(30))
    """Rows and columns in turn, such as R4-1, or R2-1-3-1 in a column with rows of its own: where its opening
    is now, or was last."""
    position: Mapped[int]
    """Its place in the case, from the top left."""
    gone: Mapped[bool] = mapped_column(default=False)
    """A later revision of the unit has no such opening; what was done to it is kept."""
    stage: Mapped[str] = mapped_column(String(30), default="")
    stage_at: Mapped[datetime | None]
    stage_by: Mapped[str] = mapped_column(String(120), default="")
    again: Mapped[str] = mapped_column(String(60))
    """The change orders for which parts are made again and not done yet, such as CO-0002; the same fold."""

    @property
    def first_code(self) -> str:
        """The code that was written on its parts when it came."""
        return self.origin.partition("@")[0]


class BenchEvent(Item, Lasting, Base):
    """A tap at the bench: a stage reached, taken back or put back, a tick, a measured size, a note."""

    __tablename__ = "bench_event"
    __table_args__ = (
        owned_by("job", "job_id"),
        owned_by("carcase", "carcase_id"),
        owned_by("drawer", "drawer_id"),
        Index(None, "shop_id", "carcase_id", "at"),
        Index(None, "shop_id", "drawer_id", "at"),
        UniqueConstraint("shop_id", "tap"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    carcase_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    drawer_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    """None where it is about the case."""
    kind: Mapped[str] = mapped_column(String(20))
    data: Mapped[dict[str, Any]]
    tap: Mapped[str] = mapped_column(String(64))
    """The mark of the tap: sent twice, it is kept once."""
    at: Mapped[datetime]
    who: Mapped[str] = mapped_column(String(120))
    person_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))


class TimeEntry(Item, Lasting, Base):
    """Time spent on an operation of a job, or one taken back by an entry that names it."""

    __tablename__ = "time_entry"
    __table_args__ = (
        owned_by("job", "job_id"),
        owned_by("person", "person_id"),
        Index(None, "shop_id", "job_id"),
    )
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    unit_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    drawer_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    operation: Mapped[str] = mapped_column(String(8))
    seconds: Mapped[int]
    on_day: Mapped[date]
    note: Mapped[str] = mapped_column(String(300), default="")
    corrects_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    at: Mapped[datetime]
    person_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    who: Mapped[str] = mapped_column(String(120))


class Timer(Owned, Base):
    """The timer that a person has running, or has paused; one a person."""

    __tablename__ = "timer"
    __table_args__ = (owned_by("person", "person_id"), owned_by("job", "job_id"))
    person_id: Mapped[str] = mapped_column(String(ID_LENGTH), primary_key=True)
    job_id: Mapped[str] = mapped_column(String(ID_LENGTH))
    drawer_id: Mapped[str | None] = mapped_column(String(ID_LENGTH))
    operation: Mapped[str] = mapped_column(String(8))
    started_at: Mapped[datetime]
    """Its day is the day of the entry that it ends in, past midnight, too."""
    kept_seconds: Mapped[int] = mapped_column(default=0)
    """What ran before the last pause."""
    running_since: Mapped[datetime | None]
    """None while it is paused."""
