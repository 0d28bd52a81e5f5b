"""Restoring: nothing that is in use or that would be lost is replaced, and what was there is kept aside."""

import errno
import os
import stat
from pathlib import Path

import pytest
from filling import fill
from sqlalchemy import Engine, func, select, text

from casewright.records.engine import open_engine
from casewright.records.jobs import Customer
from casewright.records.sessions import across_shops
from casewright.shop.refusals import Refused
from casewright.upkeep.archive import BadArchive
from casewright.upkeep.backup import take_backup
from casewright.upkeep.place import Place
from casewright.upkeep.restore import restore
from databases import migrated


@pytest.fixture
def good(place: Place, tmp_path: Path) -> Path:
    """A backup of the place, which holds what it was taken of."""
    fill(place.engine)
    taken = take_backup(place.engine, tmp_path / "good.zip", place.secret()).path
    place.engine.dispose()
    return taken


def customers(engine: Engine) -> int:
    with across_shops(engine) as db:
        return db.execute(select(func.count(Customer.id))).scalar_one()


def test_data_that_are_there_are_replaced_only_when_told_to(good: Path, place: Place):
    with pytest.raises(Refused, match="--force"):
        restore(good, place)

    assert restore(good, place, force=True).rows["customer"] == 2


def test_data_that_were_replaced_can_be_had_back(good: Path, place: Place):
    with place.engine.begin() as connection:
        connection.execute(text("UPDATE customer SET name = 'Since then'"))
    place.engine.dispose()

    kept = restore(good, place, force=True).kept
    assert kept is not None
    restore(kept, place, force=True)

    with across_shops(place.engine) as db:
        assert set(db.scalars(select(Customer.name))) == {"Since then"}


@pytest.mark.parametrize("force", [False, True])
def test_a_database_in_use_is_never_replaced(good: Path, place: Place, force: bool):
    service = open_engine(place.engine.url.render_as_string())
    count = customers(service)

    with pytest.raises(Refused, match="stop it first"):
        restore(good, place, force=force)

    assert customers(service) == count
    service.dispose()


def test_postgresql_in_use_is_never_replaced(good: Path, tmp_path: Path):
    with migrated("postgresql", tmp_path) as engine:
        service = open_engine(engine.url.render_as_string(hide_password=False))
        customers(service)

        with pytest.raises(Refused, match="stop it first"):
            restore(good, Place(engine=engine, data=tmp_path / "data"), force=True)

        service.dispose()


def test_postgresql_is_replaced_as_a_whole_and_kept_aside(good: Path, tmp_path: Path):
    with migrated("postgresql", tmp_path) as engine:
        there = Place(engine=engine, data=tmp_path / "data")
        restore(good, there)
        with pytest.raises(Refused, match="--force"):
            restore(good, there)

        kept = restore(good, there, force=True).kept

        assert customers(engine) == 2
        assert kept is not None
        assert kept.parent == there.data / "backups"


def test_what_postgresql_cannot_hold_is_refused_and_what_was_there_stays(place: Place, tmp_path: Path):
    fill(place.engine)
    take_backup(place.engine, tmp_path / "first.zip", None)
    with place.engine.begin() as connection:
        connection.execute(text("UPDATE customer SET name = 'a' || char(0) || 'b', version = 7"))
    take_backup(place.engine, tmp_path / "second.zip", None)

    with migrated("postgresql", tmp_path) as engine:
        there = Place(engine=engine, data=tmp_path / "data")
        restore(tmp_path / "first.zip", there)
        with pytest.raises(BadArchive, match="PostgreSQL does not take"):
            restore(tmp_path / "second.zip", there, force=True)

        with across_shops(engine) as db:
            assert 7 not in set(db.scalars(select(Customer.version)))


def test_a_damaged_database_is_kept_as_it_is_and_replaced(good: Path, place: Place):
    live = Path(place.engine.url.database or "")
    live.write_bytes(b"\0" * 8192)

    kept = restore(good, place, force=True).kept

    assert customers(place.engine) == 2
    assert kept is not None
    assert kept.read_bytes() == b"\0" * 8192


def test_the_key_comes_back_with_the_data_for_its_owner_alone(good: Path, place: Place):
    key = place.secret()
    place.secret_file.write_text("another key, long enough to be one of ours")

    restore(good, place, force=True)

    assert place.secret() == key
    assert stat.S_IMODE(place.secret_file.stat().st_mode) == 0o600


def test_a_key_that_is_a_setting_is_left_alone(good: Path, place: Place):
    place.secret_file.write_text("another key, long enough to be one of ours")

    restore(good, Place(engine=place.engine, data=place.data, keeps_secret=False), force=True)

    assert place.secret_file.read_text().startswith("another key")


def test_a_restored_database_is_for_its_owner_alone_and_nothing_else_is_left(good: Path, tmp_path: Path):
    engine = open_engine(f"sqlite:///{tmp_path / 'new' / 'casewright.db'}")
    there = Place(engine=engine, data=tmp_path / "new")

    restore(good, there)

    assert sorted(os.listdir(there.data)) == ["casewright.db", "casewright.db.lock", "secret"]
    assert stat.S_IMODE(there.data.stat().st_mode) == 0o700
    assert stat.S_IMODE((there.data / "casewright.db").stat().st_mode) == 0o600
    engine.dispose()


@pytest.fixture
def two_disks(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> tuple[Path, Path]:
    """Two folders between which nothing can be moved by a change of name, as between two disks."""
    disks = (tmp_path / "one disk", tmp_path / "another disk")
    rename = os.replace

    def replace(path: Path, target: Path) -> Path:
        if path.is_relative_to(disks[0]) != Path(target).is_relative_to(disks[0]):
            raise OSError(errno.EXDEV, os.strerror(errno.EXDEV), str(path))
        rename(path, target)
        return target

    for disk in disks:
        disk.mkdir()
    monkeypatch.setattr(Path, "replace", replace)
    return disks


def test_the_database_may_be_on_another_disk_than_the_data_folder(
    good: Path, place: Place, two_disks: tuple[Path, Path]
):
    data, other = two_disks
    engine = open_engine(f"sqlite:///{other / 'books' / 'casewright.db'}")
    there = Place(engine=engine, data=data / "data")

    restore(good, there)
    kept = restore(good, there, force=True).kept

    assert customers(engine) == 2
    assert kept is not None
    assert kept.parent == data / "data" / "backups"
    assert sorted(os.listdir(other / "books")) == [
        "casewright.db",
        "casewright.db-shm",
        "casewright.db-wal",
        "casewright.db.lock",
    ]
    engine.dispose()
