"""Migrations lead up, down and up again, give what the models say, and stand several who start at once."""

import multiprocessing
from pathlib import Path

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from filling import fill
from sqlalchemy import Engine, inspect, text

from casewright.records.engine import (
    NewerDatabase,
    alembic_config,
    migrate,
    newest_revision,
    open_engine,
    present_revision,
)
from casewright.records.tables import METADATA
from databases import migrated
from pgtemp import database, server


def differences(engine: Engine) -> list[object]:
    """Where the database is not what the models say."""
    with engine.connect() as connection:
        return list(compare_metadata(MigrationContext.configure(connection), METADATA))


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

    with fresh_books.connect() as connection:
        counts = {
            name: connection.execute(text(f'SELECT count(*) FROM "{name}"')).scalar()  # noqa: S608 - our own names
            for name in METADATA.tables
        }
    assert set(counts.values()) == {2}


def test_a_newer_database_is_refused_with_a_sentence_and_left_alone(fresh_books: Engine):
    with fresh_books.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))

    with pytest.raises(NewerDatabase, match="newer casewright"):
        migrate(fresh_books)

    assert present_revision(fresh_books) == "9999"


def migrate_elsewhere(url: str) -> str | None:
    """What one of several processes does at its start."""
    engine = open_engine(url)
    migrate(engine)
    engine.dispose()
    return present_revision(engine)


def start_together(url: str) -> list[str | None]:
    """Five processes that migrate the same empty database."""
    with multiprocessing.get_context("spawn").Pool(5) as pool:
        return pool.map(migrate_elsewhere, [url] * 5, chunksize=1)


def test_several_processes_may_migrate_sqlite_at_once(tmp_path: Path):
    url = f"sqlite:///{tmp_path / 'shop' / 'casewright.db'}"

    assert start_together(url) == [newest_revision()] * 5


def test_several_processes_may_migrate_postgresql_at_once():
    with server() as url:
        assert start_together(database(url, "together")) == [newest_revision()] * 5


def test_sqlite_is_set_to_lose_nothing(tmp_path: Path):
    with migrated("sqlite", tmp_path) as engine, engine.connect() as connection:
        held = [
            connection.execute(text(f"PRAGMA {name}")).scalar()
            for name in ("journal_mode", "synchronous", "foreign_keys")
        ]

    assert held == ["wal", 2, 1]
