"""A database that is damaged: every command says so, and what to do, instead of blaming itself."""

import sqlite3
from collections.abc import Callable
from contextlib import closing
from itertools import product
from pathlib import Path

import pytest
from filling import fill
from sqlalchemy.exc import DatabaseError, IntegrityError

from casewright.cli import main
from casewright.upkeep.place import Place, answering
from databases import migrated

COMMANDS = (
    "backup {0}/x.zip",
    "export {0}/x.zip --shop 1",
    "list-users",
    "end-sessions ada@shop.example",
    "serve --port 0",
)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """A data folder whose database holds something."""
    data = tmp_path / "shop"
    data.mkdir(mode=0o700)
    with migrated("sqlite", data) as engine:
        fill(engine)
    return data


def overwrite(data: Path, first: int, count: int) -> None:
    """Overwrites pages of the database, the first being 1, as a failing disk does."""
    live = data / "casewright.db"
    with closing(sqlite3.connect(live)) as connection:
        connection.execute("PRAGMA journal_mode=DELETE")  # all of it is in the file itself now
        size = connection.execute("PRAGMA page_size").fetchone()[0]
    with live.open("r+b") as file:
        file.seek(size * (first - 1))
        file.write(b"\xff" * size * count)


def lose_the_people(data: Path) -> None:
    """Overwrites the pages of people and shops alone: the database opens, and looks well at first."""
    pages = "SELECT rootpage FROM sqlite_master WHERE tbl_name IN ('person', 'shop', 'house')"
    with closing(sqlite3.connect(data / "casewright.db")) as connection:
        roots = [row[0] for row in connection.execute(pages) if row[0]]
    for root in roots:
        overwrite(data, root, 1)


def lose_all_but_the_first_page(data: Path) -> None:
    overwrite(data, 2, 20)


def lose_all(data: Path) -> None:
    (data / "casewright.db").write_bytes(b"a letter to the yard, not a database" * 200)


CASES = [
    *product((lose_all, lose_all_but_the_first_page, lose_the_people), COMMANDS),
    (lose_all, "migrate"),  # which looks at the form alone
    (lose_all_but_the_first_page, "migrate"),
]


@pytest.mark.parametrize(("spoil", "command"), CASES)
def test_a_damaged_database_is_called_damaged_and_what_to_do_is_said(
    shop: Path,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    spoil: Callable[[Path], None],
    command: str,
):
    spoil(shop)

    status = main([*command.format(tmp_path).split(), "--data", str(shop)])

    said = capsys.readouterr()
    assert status == 2
    assert "damaged" in said.err
    assert "`./run doctor`" in said.err
    assert "`./run restore FILE --force`" in said.err
    assert "fault of the program" not in said.err


def test_a_fault_of_the_program_is_not_called_damage(place: Place):
    with pytest.raises(IntegrityError), answering(place.engine), place.engine.begin() as connection:
        connection.exec_driver_sql("INSERT INTO customer (id) VALUES ('x')")


@pytest.mark.parametrize(("state", "refusal"), [("XX001", "is damaged"), ("XX002", "is damaged")])
def test_what_postgresql_says_of_damage_is_understood(place: Place, state: str, refusal: str):
    told = type("DataCorrupted", (Exception,), {"sqlstate": state})("invalid page in block 3 of relation")

    with pytest.raises(Exception, match=refusal), answering(place.engine):
        raise DatabaseError("SELECT 1", {}, told)
