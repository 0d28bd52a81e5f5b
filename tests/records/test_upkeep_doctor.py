"""The doctor finds what is wrong, says what to do, and changes nothing."""

import os
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from filling import fill
from sqlalchemy import Engine, text

from casewright.labour.stages import drawer_stages
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.jobs import Customer, Job, JobState, Unit, UnitRevision
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Counter
from casewright.records.sessions import writing
from casewright.settings import Settings
from casewright.upkeep.backup import take_backup
from casewright.upkeep.doctor import look_at_database, look_over
from casewright.upkeep.last_backup import note_backup
from casewright.upkeep.looks import Health, Look
from casewright.upkeep.place import Place
from databases import migrated
from people import Clock, new_shop

NOW = datetime(2027, 3, 1, 16, 0, tzinfo=UTC)
FIRST = drawer_stages()[0].code


@pytest.fixture(scope="module", params=["sqlite", "postgresql"])
def engine(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """A database with the work of a shop; a test that spoils something puts it right again."""
    with migrated(request.param, tmp_path_factory.mktemp("doctor")) as engine:
        work(engine)
        yield engine


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """A place in good order, on SQLite."""
    data = tmp_path / "shop"
    data.mkdir(mode=0o700)
    with migrated("sqlite", data) as engine:
        work(engine)
    (data / "secret").write_text("0123456789abcdef" * 4)
    (data / "secret").chmod(0o600)
    held = Settings(data=data, database_url=f"sqlite:///{data / 'casewright.db'}")
    back_up(held, tmp_path / "shop.zip")
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
        Carcase(id=carcase, job_id=job, unit_id=unit, piece=1),
        Drawer(
            id=drawer,
            job_id=job,
            unit_id=unit,
            carcase_id=carcase,
            code="R1-1",
            position=0,
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


def faults(looks: list[Look]) -> list[str]:
    return [each.at for each in looks if each.health is Health.WRONG]


def look_at(engine: Engine) -> list[Look]:
    return list(look_at_database(Place(engine=engine, data=Path("/nowhere")), NOW))


def test_a_shop_in_order_is_well(settings: Settings):
    looks = look_over(settings, NOW)

    assert {each.health for each in looks} == {Health.FINE}
    assert {"durability", "database file", "references", "stages", "quotes", "clock"} <= {
        each.at for each in looks
    }


def test_a_database_in_order_is_well_but_for_what_tests_leave_out(engine: Engine):
    hasty = {"sqlite": [], "postgresql": ["durability"]}  # a server of tests may lose all in a power cut

    assert faults(look_at(engine)) == hasty[engine.dialect.name]


def test_only_what_the_file_itself_keeps_is_said_of_sqlite_s_settings(settings: Settings):
    (found,) = (each for each in look_over(settings, NOW) if each.at == "durability")

    assert found.found == "sqlite: journal_mode wal."


def test_a_journal_that_was_set_otherwise_is_found_and_mended_by_a_start(settings: Settings):
    with place(settings) as engine, engine.connect() as connection:
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA journal_mode=DELETE")

    (found,) = (each for each in look_over(settings, NOW) if each.health is Health.WRONG)

    assert found.found == "journal_mode is delete."
    with place(settings):  # as a start does
        pass
    assert faults(look_over(settings, NOW)) == []


SPOILT = [
    (
        "UPDATE drawer SET stage = 'hung'",
        "UPDATE drawer SET stage = 'first'".replace("first", FIRST),
        "stages",
    ),
    ("UPDATE quote SET total_cents = 1", "UPDATE quote SET total_cents = 120000", "quotes"),
    ("UPDATE quote SET offer = NULL", "UPDATE quote SET offer = '{\"total_cents\": 120000}'", "quotes"),
    (
        "UPDATE counter SET value = 0 WHERE name = 'job'",
        "UPDATE counter SET value = 1 WHERE name = 'job'",
        "numbers",
    ),
    (
        "UPDATE counter SET value = 0 WHERE name = 'cut list'",
        "UPDATE counter SET value = 1 WHERE name = 'cut list'",
        "numbers",
    ),
    ("UPDATE unit SET revision = 9", "UPDATE unit SET revision = 1", "units"),
    ("UPDATE shop SET figures = 9", "UPDATE shop SET figures = 1", "shops"),
    ("UPDATE shop SET time_zone = 'Mars/Olympus'", "UPDATE shop SET time_zone = 'UTC'", "shops"),
    ("UPDATE person SET role = 'maker' WHERE role = 'owner'", "UPDATE person SET role = 'owner'", "shops"),
    ("ALTER TABLE customer ADD COLUMN extra INTEGER", "ALTER TABLE customer DROP COLUMN extra", "tables"),
    (
        "UPDATE shop SET created_at = '2027-03-02 12:00:00.000000'",
        "UPDATE shop SET created_at = '2027-03-01 12:00:00.000000'",
        "clock",
    ),
]


@pytest.mark.parametrize(("spoil", "mend", "at"), SPOILT)
def test_what_was_spoilt_is_found_and_said_what_to_do(engine: Engine, spoil: str, mend: str, at: str):
    run(engine, spoil)
    try:
        looks = look_at(engine)
    finally:
        run(engine, mend)

    found = [each for each in looks if each.health is Health.WRONG and each.at == at]
    assert len(found) == 1
    assert found[0].todo


def run(engine: Engine, statement: str) -> None:
    with engine.begin() as connection:
        connection.execute(text(statement))


def test_a_guard_that_is_gone_is_found(settings: Settings):
    with place(settings) as engine:
        run(engine, "DROP TRIGGER payment_is_not_changed")
        run(engine, "DROP TRIGGER payment_is_kept")

    assert faults(look_over(settings, NOW)) == ["tables"]


def test_a_reference_that_leads_nowhere_is_found(settings: Settings):
    with place(settings) as engine, engine.connect() as connection:
        connection.exec_driver_sql("COMMIT")
        connection.exec_driver_sql("PRAGMA foreign_keys=OFF")
        connection.exec_driver_sql("DELETE FROM customer")

    found = [each for each in look_over(settings, NOW) if each.health is Health.WRONG]
    assert [each.at for each in found] == ["references"]
    assert "1 of job to customer" in found[0].found


def place(settings: Settings) -> AbstractContextManager[Engine]:
    return migrated("sqlite", settings.data)


def damage(settings: Settings) -> None:
    """Overwrites the middle of the database."""
    live = settings.data / "casewright.db"
    with live.open("r+b") as file:
        file.seek(live.stat().st_size // 2)
        file.write(b"\xff" * 20_000)


def widen(settings: Settings) -> None:
    settings.data.chmod(0o755)


def show_key(settings: Settings) -> None:
    (settings.data / "secret").chmod(0o644)


def shorten_key(settings: Settings) -> None:
    (settings.data / "secret").write_text("short")


def lose_all(settings: Settings) -> None:
    shutil.rmtree(settings.data)


def no_database(settings: Settings) -> None:
    (settings.data / "casewright.db").write_bytes(b"a letter to the yard, not a database" * 100)


@pytest.mark.parametrize(
    ("spoil", "at"),
    [
        (damage, "database"),
        (widen, "data folder"),
        (show_key, "key of the links"),
        (shorten_key, "key of the links"),
        (lose_all, "database"),
        (no_database, "database"),
    ],
)
def test_a_place_that_is_spoilt_is_found(settings: Settings, spoil: Callable[[Settings], None], at: str):
    spoil(settings)

    looks = look_over(settings, NOW)

    found = [each for each in looks if each.health is Health.WRONG]
    assert any(each.at.startswith(at) for each in found)
    assert all(each.todo for each in found)


def test_an_older_or_newer_form_is_found(settings: Settings):
    with place(settings) as engine:
        run(engine, "UPDATE alembic_version SET version_num = '9999'")

    assert faults(look_over(settings, NOW)) == ["database"]


def test_taps_that_cannot_be_read_are_found(tmp_path: Path):
    with migrated("sqlite", tmp_path) as engine:
        fill(engine)

        found = [each.found for each in look_at(engine) if each.at == "stages"]

    assert "2 taps cannot be read." in found


def test_a_clock_that_was_set_back_is_found(settings: Settings):
    assert faults(look_over(settings, NOW - timedelta(days=30))) == ["clock"]


def test_the_doctor_tells_where_the_last_backup_is(settings: Settings, tmp_path: Path):
    (found,) = backups_seen(settings)

    assert found.health is Health.FINE
    assert str(tmp_path / "shop.zip") in found.found


def forget(settings: Settings) -> None:
    (settings.data / "last-backup.json").unlink()


def spoil_note(settings: Settings) -> None:
    (settings.data / "last-backup.json").write_text("{}")


def grow_old(settings: Settings) -> None:
    back_up(settings, settings.data.parent / "older.zip", NOW - timedelta(days=9))


def grow_older_than_two_nights(settings: Settings) -> None:
    back_up(settings, settings.data.parent / "older.zip", NOW - timedelta(hours=49))


def damage_backup(settings: Settings) -> None:
    path = settings.data.parent / "shop.zip"
    path.write_bytes(path.read_bytes()[:-1] + b"x")


@pytest.mark.parametrize(
    ("spoil", "health", "said"),
    [
        (forget, Health.LOOK, "None is known of."),
        (spoil_note, Health.LOOK, "None is known of."),
        (grow_old, Health.LOOK, "9 days ago, and 48 hours are the most"),
        (grow_older_than_two_nights, Health.LOOK, "49 hours ago, and 48 hours are the most"),
        (damage_backup, Health.WRONG, "its seal does not fit"),
    ],
)
def test_no_backup_that_could_be_relied_on_is_said(
    settings: Settings, spoil: Callable[[Settings], None], health: Health, said: str
):
    spoil(settings)

    (found,) = backups_seen(settings)

    assert found.health is health
    assert said in found.found
    assert "casewright backup" in found.todo


def test_a_backup_of_two_nights_ago_is_new_enough(settings: Settings, tmp_path: Path):
    back_up(settings, tmp_path / "older.zip", NOW - timedelta(hours=47))

    (found,) = backups_seen(settings)

    assert found.health is Health.FINE


def test_a_backup_that_was_carried_elsewhere_is_as_it_should_be(settings: Settings, tmp_path: Path):
    (tmp_path / "shop.zip").unlink()

    (found,) = backups_seen(settings)

    assert found.health is Health.FINE
    assert "where it is no more" in found.found


def backups_seen(settings: Settings) -> list[Look]:
    return [each for each in look_over(settings, NOW) if each.at == "last backup"]


def test_something_half_made_is_named(settings: Settings):
    left = settings.data / ".restore-abc"
    left.mkdir()
    long_ago = time.time() - 7200
    os.utime(left, (long_ago, long_ago))

    looks = [each for each in look_over(settings, NOW) if each.health is Health.LOOK]

    assert [each.at for each in looks] == ["leftovers"]
    assert str(left) in looks[0].todo


def test_something_half_made_beside_the_database_on_another_disk_is_named(settings: Settings, tmp_path: Path):
    elsewhere = tmp_path / "elsewhere"
    shutil.copytree(settings.data, elsewhere)
    left = elsewhere / ".restore-abc"
    left.mkdir()
    long_ago = time.time() - 7200
    os.utime(left, (long_ago, long_ago))

    looks = look_over(replace(settings, database_url=f"sqlite:///{elsewhere / 'casewright.db'}"), NOW)

    assert [each.at for each in looks if str(left) in each.found] == ["leftovers"]


def test_the_doctor_changes_nothing(settings: Settings):
    before = sorted((path.name, path.stat().st_size) for path in settings.data.iterdir())

    look_over(settings, NOW)

    assert sorted((path.name, path.stat().st_size) for path in settings.data.iterdir()) == before
