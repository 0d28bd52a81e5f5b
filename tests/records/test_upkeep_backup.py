"""A backup holds one moment of everything, and comes back the same, into either database."""

import json
import stat
import threading
import zipfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from filling import fill
from sqlalchemy import Engine, func, select, text

from casewright.records.engine import NewerDatabase, migrate, newest_revision, open_engine, present_revision
from casewright.records.jobs import Customer, History
from casewright.records.people import KeyLink, SignIn
from casewright.records.sessions import across_shops, writing
from casewright.records.tables import METADATA
from casewright.shop.customers import CustomerFacts, add_customer
from casewright.upkeep.archive import FileIsThere, Manifest, open_archive
from casewright.upkeep.backup import NothingThere, take_backup
from casewright.upkeep.forms import bring_to
from casewright.upkeep.place import Place
from casewright.upkeep.rehearsal import tried
from casewright.upkeep.restore import restore
from databases import migrated
from people import Clock, new_shop

SECRET = b"0123456789abcdef" * 4
SIGNED_OUT = {"tables/sign_in.jsonl", "tables/key_link.jsonl"}
"""What a restore changes: sign-ins end, and links that were open are closed."""


def manifest_of(path: Path) -> Manifest:
    with open_archive(path) as archive:
        return archive.manifest


def parts_but(names: set[str], manifest: Manifest) -> dict[str, str]:
    return {part.name: part.sha256 for part in manifest.parts if part.name not in names}


@contextmanager
def empty_place(kind: str, folder: Path) -> Iterator[Place]:
    folder.mkdir()
    with migrated(kind, folder) as engine:
        yield Place(engine=engine, data=folder)


def test_a_backup_holds_every_row_of_every_table_and_the_key(fresh_books: Engine, tmp_path: Path):
    fill(fresh_books)

    taken = take_backup(fresh_books, tmp_path / "all.zip", SECRET)

    assert taken.manifest.rows() == {table.name: 2 for table in METADATA.sorted_tables}
    with open_archive(taken.path) as archive:
        assert archive.secret() == SECRET


@pytest.mark.parametrize("kind", ["sqlite", "postgresql"])
def test_what_was_restored_gives_the_same_backup_again(fresh_books: Engine, tmp_path: Path, kind: str):
    fill(fresh_books)
    first = take_backup(fresh_books, tmp_path / "first.zip", SECRET).manifest

    with empty_place(kind, tmp_path / "elsewhere") as place:
        restore(tmp_path / "first.zip", place)
        second = take_backup(place.engine, tmp_path / "second.zip", place.secret()).manifest

    assert parts_but(SIGNED_OUT, second) == parts_but(SIGNED_OUT, first)


def test_a_value_that_is_not_there_and_a_null_in_a_document_stay_two_things(place: Place, tmp_path: Path):
    fill(place.engine)
    take_backup(place.engine, tmp_path / "all.zip", SECRET)
    asked = text("SELECT count(*) FROM history WHERE before IS NULL")

    with (
        open_archive(tmp_path / "all.zip") as archive,
        tried(archive, tmp_path) as held,
        held.engine.connect() as there,
        place.engine.connect() as here,
    ):
        assert there.execute(asked).scalar() == here.execute(asked).scalar() == 1


def test_whoever_was_signed_in_when_the_backup_was_taken_signs_in_again(place: Place, tmp_path: Path):
    fill(place.engine)
    take_backup(place.engine, tmp_path / "all.zip", SECRET)

    with empty_place("sqlite", tmp_path / "elsewhere") as there:
        restore(tmp_path / "all.zip", there)
        with across_shops(there.engine) as db:
            signed_in = db.execute(select(func.count(SignIn.id))).scalar_one()
            still_open = db.execute(select(func.count()).where(KeyLink.used_at.is_(None))).scalar_one()

    assert (signed_in, still_open) == (0, 0)


def test_a_backup_is_for_its_owner_alone_and_an_ordinary_zip(place: Place, tmp_path: Path):
    fill(place.engine)
    path = take_backup(place.engine, tmp_path / "all.zip", SECRET).path

    with zipfile.ZipFile(path) as packed:
        customers = [json.loads(line) for line in packed.open("tables/customer.jsonl")]

    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert len(customers) == 2
    assert [name.name for name in tmp_path.glob(".*")] == []


def test_a_backup_does_not_replace_a_file_unless_told_to(place: Place, tmp_path: Path):
    path = tmp_path / "all.zip"
    path.write_text("something else")

    with pytest.raises(FileIsThere):
        take_backup(place.engine, path, SECRET)

    assert path.read_text() == "something else"
    assert take_backup(place.engine, path, SECRET, overwrite=True).size == path.stat().st_size


def test_a_backup_that_fails_leaves_nothing_behind(tmp_path: Path):
    engine = open_engine(f"sqlite:///{tmp_path / 'casewright.db'}")
    migrate(engine)
    fill(engine)
    with engine.begin() as connection:
        connection.execute(text("PRAGMA ignore_check_constraints=ON"))
        connection.execute(text("UPDATE quote SET offer = 'not JSON'"))

    with pytest.raises(ValueError, match="Expecting"):
        take_backup(engine, tmp_path / "all.zip", SECRET)

    assert sorted(path.name for path in tmp_path.glob("*.zip*")) == []
    assert [path.name for path in tmp_path.glob(".*")] == []
    engine.dispose()


def test_an_empty_database_is_no_backup(tmp_path: Path):
    engine = open_engine(f"sqlite:///{tmp_path / 'casewright.db'}")

    with pytest.raises(NothingThere):
        take_backup(engine, tmp_path / "all.zip", SECRET)

    engine.dispose()


def test_a_backup_while_people_work_holds_one_moment(fresh_books: Engine, tmp_path: Path):
    shop = new_shop(None, fresh_books, Clock())
    stop, acknowledged, refused = threading.Event(), [], []

    def work(name: str) -> None:
        number = 0
        while not stop.is_set():
            number += 1
            facts = CustomerFacts(name=f"{name} {number}")
            try:
                with writing(fresh_books, shop.shop_id) as db:
                    add_customer(db, facts, "Ada Marsh", datetime.now(UTC))
                acknowledged.append(facts.name)
            except Exception as error:
                refused.append(error)

    writers = [threading.Thread(target=work, args=(f"writer {number}",)) for number in range(4)]
    for writer in writers:
        writer.start()
    seen = []
    for number in range(5):
        before = set(acknowledged)
        take_backup(fresh_books, tmp_path / f"{number}.zip", SECRET)
        seen.append(before)
    stop.set()
    for writer in writers:
        writer.join()

    assert refused == []
    assert len(seen[-1]) > len(seen[0])
    for number, before in enumerate(seen):
        names, told = customers_in(tmp_path / f"{number}.zip")
        assert before <= set(names)
        assert len(names) == len(set(names)) == told


def customers_in(path: Path) -> tuple[list[str], int]:
    """The customers of a backup, and how many sentences its histories have: one for each customer."""
    with (
        TemporaryDirectory() as folder,
        open_archive(path) as archive,
        tried(archive, Path(folder)) as held,
        across_shops(held.engine) as db,
    ):
        told = db.execute(select(func.count(History.id))).scalar_one()
        return list(db.scalars(select(Customer.name))), told


def test_an_older_backup_is_brought_forward(tmp_path: Path):
    old = open_engine(f"sqlite:///{tmp_path / 'old.db'}")
    bring_to(old, "0001")
    fill(old)
    taken = take_backup(old, tmp_path / "old.zip", SECRET)
    old.dispose()

    with empty_place("sqlite", tmp_path / "elsewhere") as place:
        restored = restore(tmp_path / "old.zip", place)

        assert taken.manifest.revision == "0001"
        assert present_revision(place.engine) == newest_revision()
        assert restored.rows == taken.manifest.rows()


def test_a_database_of_a_newer_program_is_not_backed_up_by_an_older_one(fresh_books: Engine, tmp_path: Path):
    with fresh_books.begin() as connection:
        connection.execute(text("UPDATE alembic_version SET version_num = '9999'"))

    with pytest.raises(NewerDatabase, match="newer casewright"):
        take_backup(fresh_books, tmp_path / "all.zip", SECRET)
