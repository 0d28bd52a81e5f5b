"""Migrations lead up, down and up again, give what the models say, and stand several who start at once."""

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from filling import fill
from sqlalchemy import Engine, func, inspect, select, text

from casewright import folders
from casewright.records.engine import (
    NewerDatabase,
    alembic_config,
    migrate,
    newest_revision,
    open_engine,
    present_revision,
)
from casewright.records.tables import METADATA
from casewright.upkeep.forms import bring_to
from databases import postgresql
from pgtemp import database
from serving import SERVICE


def differences(engine: Engine) -> list[object]:
    """Where the database is not what the models say."""
    with engine.connect() as connection:
        return list(compare_metadata(MigrationContext.configure(connection), METADATA))


def count_rows(engine: Engine) -> dict[str, int]:
    """How many rows each table has."""
    with engine.connect() as connection:
        return {
            table.name: connection.execute(select(func.count()).select_from(table)).scalar_one()
            for table in METADATA.sorted_tables
        }


def test_the_migrations_give_the_tables_of_the_models(fresh_books: Engine):
    assert differences(fresh_books) == []
    assert present_revision(fresh_books) == newest_revision()


def test_up_down_and_up_again(fresh_books: Engine):
    with fresh_books.connect() as connection:
        command.downgrade(alembic_config(connection), "base")
        connection.commit()
        left = set(inspect(connection).get_table_names())

    migrate(fresh_books)

    assert left <= {"alembic_version"}
    assert differences(fresh_books) == []


def test_nothing_is_lost_by_migrating_once_more(fresh_books: Engine):
    fill(fresh_books)

    migrate(fresh_books)

    assert set(count_rows(fresh_books).values()) == {2}


def test_a_newer_database_is_refused_with_a_sentence_and_left_alone(fresh_books: Engine):
    with fresh_books.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))

    with pytest.raises(NewerDatabase, match="newer casewright"):
        migrate(fresh_books)

    assert present_revision(fresh_books) == "9999"


TOGETHER = """
import os, sys
from casewright.records.engine import migrate, open_engine, present_revision
gate, opener = os.pipe()
for _ in range(6):
    if os.fork() == 0:
        os.close(opener)
        os.read(gate, 1)  # ends when the last who could write has gone
        engine = open_engine(sys.argv[1])
        migrate(engine)
        os._exit(present_revision(engine) != sys.argv[2])
os.close(opener)
raise SystemExit(sum(os.waitstatus_to_exitcode(os.wait()[1]) for _ in range(6)))
"""
"""Six processes that migrate the same empty database, all from one moment on."""


def start_together(url: str) -> int:
    """How many of several processes that start at once do not get the present form."""
    command = [sys.executable, "-c", TOGETHER, url, newest_revision()]
    return subprocess.run(command, env=os.environ | {"PYTHONPATH": str(SERVICE)}, check=False).returncode


def test_several_processes_may_migrate_sqlite_at_once(tmp_path: Path):
    url = f"sqlite:///{tmp_path / 'shop' / 'casewright.db'}"

    assert start_together(url) == 0


def test_several_processes_may_migrate_postgresql_at_once():
    assert start_together(database(postgresql(), "together")) == 0


READY = """
import os, sys
from casewright.records.engine import migrate, open_engine
for line in iter(sys.stdin.readline, ""):
    child = os.fork()
    if child == 0:
        migrate(open_engine("sqlite:///" + line.strip()))
        os._exit(0)
    print(child, flush=True)
    sys.stdin.readline()  # until then its number is given to nobody else
    os.waitpid(child, 0)
    print("ended", flush=True)
"""


@pytest.fixture
def migrator() -> Iterator["subprocess.Popen[str]"]:
    """Migrates the database whose path comes in, in a process that can be killed."""
    with subprocess.Popen(
        [sys.executable, "-c", READY],
        env=os.environ | {"PYTHONPATH": str(SERVICE)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        yield process
        process.communicate()


def migrate_elsewhere_and_kill(migrator: "subprocess.Popen[str]", path: Path, after: float | None) -> float:
    """Migrates in a process that is killed so many seconds later, or never; says how long it lived."""
    assert migrator.stdin is not None
    assert migrator.stdout is not None
    migrator.stdin.write(f"{path}\n")
    migrator.stdin.flush()
    child, started = int(migrator.stdout.readline()), time.monotonic()
    if after is not None:
        time.sleep(after)  # the moment is what is tried
        os.kill(child, signal.SIGKILL)
    migrator.stdin.write("\n")
    migrator.stdin.flush()
    assert migrator.stdout.readline() == "ended\n"
    return time.monotonic() - started


def test_a_migration_that_is_killed_leaves_a_whole_form(migrator: "subprocess.Popen[str]", tmp_path: Path):
    old = open_engine(f"sqlite:///{tmp_path / 'old.db'}")
    bring_to(old, "0001")
    fill(old)
    filled = set(inspect(old).get_table_names()) & set(METADATA.tables)
    old.dispose()
    whole = migrate_elsewhere_and_kill(migrator, copy_of(tmp_path / "old.db", "whole"), None)
    whole_forms = {path.name[:4] for path in (folders.migrations() / "versions").glob("0*.py")}

    for number in range(20):
        path = copy_of(tmp_path / "old.db", f"{number}")
        migrate_elsewhere_and_kill(migrator, path, whole * number / 20)
        engine = open_engine(f"sqlite:///{path}")

        assert present_revision(engine) in whole_forms
        migrate(engine)
        assert differences(engine) == []
        assert {table: count for table, count in count_rows(engine).items() if count} == dict.fromkeys(
            filled, 2
        )
        engine.dispose()


def copy_of(path: Path, name: str) -> Path:
    """Another database like it."""
    return Path(shutil.copy(path, path.with_name(f"{name}.db")))


def test_sqlite_is_set_to_lose_nothing(tmp_path: Path):
    engine = open_engine(f"sqlite:///{tmp_path / 'casewright.db'}")
    migrate(engine)

    with engine.connect() as connection:
        held = [
            connection.execute(text(f"PRAGMA {name}")).scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys")
        ]
    engine.dispose()

    assert held == ["wal", 2, 1]
