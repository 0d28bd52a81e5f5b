"""Going back to the version before an upgrade: its backup can be restored over what the newer one left."""

from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from sqlite3 import connect

import pytest
from filling import fill
from sqlalchemy import Engine, func, make_url, select, text

from casewright.cli import main
from casewright.records.engine import newest_revision, open_engine, present_revision
from casewright.records.jobs import Customer
from casewright.records.sessions import across_shops
from casewright.shop.refusals import Refused
from casewright.upkeep.archive import BadArchive
from casewright.upkeep.backup import take_backup
from casewright.upkeep.doctor import look_at_database
from casewright.upkeep.place import Place
from casewright.upkeep.restore import restore
from databases import migrated
from people import START

KEY = "0123456789abcdef" * 4


@pytest.fixture(params=["sqlite", "postgresql"])
def upgraded(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Place]:
    """A place that a newer program brought to a form of its own, with a row and a table of its own."""
    folder = tmp_path / "shop"
    folder.mkdir(mode=0o700)
    (folder / "secret").write_text(KEY)
    with migrated(request.param, folder) as engine:
        fill(engine)
        take_backup(engine, tmp_path / "before-upgrade.zip", KEY.encode())
        with engine.begin() as connection:
            connection.execute(text("UPDATE alembic_version SET version_num = '0099'"))
            connection.execute(text("UPDATE customer SET name = 'Since then'"))
            connection.execute(text("CREATE TABLE of_the_newer (id INTEGER PRIMARY KEY)"))
        engine.dispose()
        yield Place(engine=engine, data=folder)


def customers(engine: Engine) -> set[str]:
    with across_shops(engine) as db:
        return {name[:6] for name in db.scalars(select(Customer.name))}


def test_a_newer_database_is_replaced_by_a_backup_of_this_version(upgraded: Place, tmp_path: Path):
    restore(tmp_path / "before-upgrade.zip", upgraded, force=True)

    assert present_revision(upgraded.engine) == newest_revision()
    assert customers(upgraded.engine) == {"1 name", "2 name"}
    assert not [each for each in look_at_database(upgraded, START) if each.at == "tables" and each.todo]


def test_it_is_replaced_only_when_told_to(upgraded: Place, tmp_path: Path):
    with pytest.raises(Refused, match="--force"):
        restore(tmp_path / "before-upgrade.zip", upgraded)

    assert present_revision(upgraded.engine) == "0099"


def test_what_the_newer_program_kept_is_still_there(upgraded: Place, tmp_path: Path):
    upgraded.secret_file.write_text("f" * 64)

    done = restore(tmp_path / "before-upgrade.zip", upgraded, force=True)

    asked = "SELECT DISTINCT name, (SELECT count(*) FROM {0}of_the_newer) FROM {0}customer"
    if upgraded.engine.dialect.name == "sqlite":
        assert done.kept is not None
        with closing(connect(done.kept)) as connection:
            assert connection.execute(asked.format("")).fetchall() == [("Since then", 0)]
            assert connection.execute("SELECT version_num FROM alembic_version").fetchall() == [("0099",)]
    else:
        assert done.kept_schema is not None
        with upgraded.engine.connect() as connection:
            held = connection.execute(text(asked.format(f"{done.kept_schema}."))).all()
        assert held == [("Since then", 0)]
    (key,) = (upgraded.data / "backups").glob("*.secret")
    assert key.read_text() == "f" * 64
    assert upgraded.secret() == KEY.encode()


def test_going_back_can_be_done_a_second_time(upgraded: Place, tmp_path: Path):
    for _ in range(2):
        restore(tmp_path / "before-upgrade.zip", upgraded, force=True)
        with upgraded.engine.begin() as connection:
            connection.execute(text("UPDATE alembic_version SET version_num = '0099'"))
        upgraded.engine.dispose()

    assert present_revision(upgraded.engine) == "0099"
    assert customers(upgraded.engine) == {"1 name", "2 name"}


def test_a_postgresql_that_does_not_take_the_backup_stays_the_newer_one(place: Place, tmp_path: Path):
    fill(place.engine)
    with place.engine.begin() as connection:
        connection.execute(text("UPDATE customer SET name = 'a' || char(0) || 'b'"))
    backup = take_backup(place.engine, tmp_path / "bad.zip", None).path
    with migrated("postgresql", tmp_path) as engine:
        fill(engine)
        with engine.begin() as connection:
            connection.execute(text("UPDATE alembic_version SET version_num = '0099'"))
        engine.dispose()

        with pytest.raises(BadArchive, match="PostgreSQL does not take"):
            restore(backup, Place(engine=engine, data=tmp_path / "data"), force=True)

        assert present_revision(engine) == "0099"
        assert customers(engine) == {"1 name", "2 name"}
        with engine.connect() as connection:
            like = "SELECT count(*) FROM pg_namespace WHERE nspname LIKE 'before%'"
            assert connection.execute(text(like)).scalar_one() == 0


def test_somebody_who_may_not_set_the_newer_one_aside_is_told_how_it_is_done(place: Place, tmp_path: Path):
    fill(place.engine)
    backup = take_backup(place.engine, tmp_path / "good.zip", None).path
    with migrated("postgresql", tmp_path) as engine:
        with engine.begin() as connection:
            for statement in (
                "UPDATE alembic_version SET version_num = '0099'",
                "DROP ROLE IF EXISTS casewright_guest",
                "CREATE ROLE casewright_guest LOGIN",
                "GRANT ALL ON ALL TABLES IN SCHEMA public TO casewright_guest",
            ):
                connection.execute(text(statement))
        engine.dispose()
        guest = open_engine(
            make_url(engine.url).set(username="casewright_guest").render_as_string(hide_password=False)
        )

        with pytest.raises(Refused, match=r"As its owner: ALTER SCHEMA public RENAME TO before_restore_"):
            restore(backup, Place(engine=guest, data=tmp_path / "data"), force=True)

        guest.dispose()
        assert present_revision(engine) == "0099"
        with engine.begin() as connection:
            connection.execute(text("DROP OWNED BY casewright_guest"))
            connection.execute(text("DROP ROLE casewright_guest"))


def test_the_command_says_where_the_newer_one_is_kept(
    upgraded: Place, tmp_path: Path, capsys: pytest.CaptureFixture[str]
):
    url = upgraded.engine.url.render_as_string(hide_password=False)
    where = ("--data", str(upgraded.data), "--database-url", url)

    status = main(["restore", str(tmp_path / "before-upgrade.zip"), "--force", *where])

    said = capsys.readouterr()
    kept = {"sqlite": "before-restore-", "postgresql": "DROP SCHEMA before_restore_"}
    assert (status, said.err) == (0, "")
    assert kept[upgraded.engine.dialect.name] in said.out
    with across_shops(upgraded.engine) as db:
        assert db.scalar(select(func.count(Customer.id))) == 2
