"""A shop for the doctor: one of each of what is kept, in a place in good order, with a backup beside it."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from sqlalchemy import Engine

from casewright.labour.stages import drawer_stages
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.jobs import Customer, Job, JobState, Unit, UnitRevision
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Counter
from casewright.records.sessions import writing
from casewright.settings import Settings
from casewright.upkeep.backup import take_backup
from casewright.upkeep.last_backup import note_backup
from databases import migrated
from people import Clock, new_shop

NOW = datetime(2027, 3, 1, 16, 0, tzinfo=UTC)
FIRST = drawer_stages()[0].code


def in_order(folder: Path) -> Settings:
    """A place in good order, on SQLite."""
    data = folder / "shop"
    data.mkdir(mode=0o700)
    with migrated("sqlite", data) as engine:
        work(engine)
    (data / "secret").write_text("0123456789abcdef" * 4)
    (data / "secret").chmod(0o600)
    held = Settings(data=data, database_url=f"sqlite:///{data / 'casewright.db'}")
    back_up(held, folder / "shop.zip")
    return held


def back_up(settings: Settings, target: Path, at: datetime = NOW) -> None:
    """Takes a backup and notes it, as the command does, at a moment."""
    with migrated("sqlite", settings.data) as engine:
        taken = take_backup(engine, target, None)
    note_backup(settings.data, replace(taken, manifest=replace(taken.manifest, at=at.isoformat())))


def work(engine: Engine) -> None:
    """A shop with a job in hand, a drawer on its way, and a quote that was sent."""
    shop = new_shop(None, engine, Clock())
    job, unit, carcase, drawer = new_id(), new_id(), new_id(), new_id()
    customer = new_id()
    rows = [
        Customer(id=customer, name="Ida Lund", created_at=NOW),
        Job(
            id=job,
            number=1,
            name="A chest",
            customer_id=customer,
            state=JobState.IN_HAND,
            created_at=NOW,
            moved_at=NOW,
        ),
        Unit(id=unit, job_id=job, code="A", name="Chest", count=1, revision=1, created_at=NOW),
        UnitRevision(unit_id=unit, number=1, spec={}, at=NOW, who="Ada Marsh"),
        Carcase(id=carcase, job_id=job, unit_id=unit, piece=1, again=""),
        Drawer(
            id=drawer,
            job_id=job,
            unit_id=unit,
            carcase_id=carcase,
            origin="R1-1",
            code="R1-1",
            position=0,
            again="",
            stage=FIRST,
            stage_at=NOW,
        ),
        BenchEvent(
            id=new_id(),
            job_id=job,
            carcase_id=carcase,
            drawer_id=drawer,
            kind="reached",
            data={"stage": FIRST},
            tap="tap",
            at=NOW,
            who="Cy Roper",
        ),
        Quote(
            id=new_id(),
            job_id=job,
            number=1,
            revision=1,
            state=QuoteState.SENT,
            offer={"total_cents": 120_000},
            basis={},
            total_cents=120_000,
            created_at=NOW,
        ),
        Counter(name="job", value=1),
        Counter(name="quote", value=1),
        Paper(
            id=new_id(),
            job_id=job,
            kind=PaperKind.CUT_LIST,
            number=1,
            revision=1,
            content={},
            basis_hash="0",
            issued_at=NOW,
            who="Ada Marsh",
        ),
        Counter(name="cut list", value=1),
    ]
    with writing(engine, shop.shop_id) as db:
        for row in rows:
            db.add(row)
            db.flush()
