"""The doctor finds what is wrong, says what to do, and changes nothing."""

import os
import shutil
import time
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest
from filling import fill
from in_order import FIRST, NOW, in_order, work
from sqlalchemy import Engine, text

from casewright.settings import Settings
from casewright.upkeep.doctor import look_at_database, look_over
from casewright.upkeep.looks import Health, Look
from casewright.upkeep.place import Place
from databases import migrated


@pytest.fixture(scope="module", params=["sqlite", "postgresql"])
def engine(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Engine]:
    """A database with the work of a shop; a test that spoils something puts it right again."""
    with migrated(request.param, tmp_path_factory.mktemp("doctor")) as engine:
        work(engine)
        yield engine


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """A place in good order, on SQLite."""
    return in_order(tmp_path)


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
