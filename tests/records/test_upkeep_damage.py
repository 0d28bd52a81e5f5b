"""A damaged or hostile backup is refused, and the data that are there stay as they are."""

import hashlib
import json
import random
import stat
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from filling import fill
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from casewright.upkeep.archive import SEAL, BadArchive, open_archive
from casewright.upkeep.backup import take_backup
from casewright.upkeep.place import Place
from casewright.upkeep.rehearsal import tried
from casewright.upkeep.restore import restore

CHANCE = random.Random(20270301)  # noqa: S311 - the same damage on every run


@pytest.fixture
def good(place: Place, tmp_path: Path) -> Path:
    """A good backup of a place that holds something."""
    fill(place.engine)
    return take_backup(place.engine, tmp_path / "good.zip", place.secret()).path


def fingerprint(place: Place) -> dict[str, str]:
    """What is kept at a place, to the last row."""
    aside = place.data.parent / "fingerprint.zip"
    taken = take_backup(place.engine, aside, place.secret(), overwrite=True)
    place.engine.dispose()
    return {part.name: part.sha256 for part in taken.manifest.parts}


def sealed(path: Path, parts: dict[str, bytes], **of_infos: Any) -> Path:
    """An archive with a seal that fits, whatever is in it; `of_infos` are set on every part's entry."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in parts.items():
            info = zipfile.ZipInfo(name)
            info.compress_type = zipfile.ZIP_DEFLATED
            for key, value in of_infos.items():
                setattr(info, key, value)
            packed.writestr(info, content)
        packed.comment = SEAL + b"0" * 64
    content = path.read_bytes()[:-64]
    path.write_bytes(content + hashlib.sha256(content).hexdigest().encode())
    return path


def parts_of(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as packed:
        return {name: packed.read(name) for name in packed.namelist()}


def with_manifest(parts: dict[str, bytes], /, **changes: Any) -> dict[str, bytes]:
    """Parts with a manifest that speaks the truth about them, but for the changes."""
    manifest = json.loads(parts["manifest.json"])
    manifest["parts"] = [
        {
            "name": name,
            "rows": content.count(b"\n"),
            "size": len(content),
            "sha256": hashlib.sha256(content).hexdigest(),
        }
        for name, content in parts.items()
        if name != "manifest.json"
    ]
    return {**parts, "manifest.json": json.dumps(manifest | changes).encode()}


def refused(path: Path, folder: Path) -> str:
    """With which sentence a backup is refused when it is tried."""
    with pytest.raises(BadArchive) as caught, open_archive(path) as archive, tried(archive, folder):
        pass
    return str(caught.value)


def test_fifty_damaged_backups_are_refused_and_nothing_is_touched(good: Path, place: Place, tmp_path: Path):
    content = good.read_bytes()
    damaged = [content[: CHANCE.randrange(len(content))] for _ in range(25)]
    damaged += [flipped(content, CHANCE.randrange(len(content) * 8)) for _ in range(25)]
    before = fingerprint(place)
    files = sorted(each.name for each in place.data.iterdir())

    for number, each in enumerate(damaged):
        path = tmp_path / f"damaged {number}.zip"
        path.write_bytes(each)
        with pytest.raises(BadArchive):
            restore(path, place, force=True)

    assert fingerprint(place) == before
    assert sorted(each.name for each in place.data.iterdir()) == files


def flipped(content: bytes, bit: int) -> bytes:
    changed = bytearray(content)
    changed[bit // 8] ^= 1 << bit % 8
    return bytes(changed)


@pytest.mark.parametrize("bit", range(0, 8 * 600, 331))
def test_no_bit_at_the_end_can_be_changed_either(good: Path, tmp_path: Path, bit: int):
    content = good.read_bytes()
    good.write_bytes(flipped(content, len(content) * 8 - 1 - bit))

    assert refused(good, tmp_path)


@pytest.mark.parametrize(
    "content", [b"", b"PK", b"no backup", b"PK\x03\x04" + b"\0" * 500, b"\0" * 2_000_000]
)
def test_what_is_no_backup_is_refused_with_a_sentence(tmp_path: Path, content: bytes):
    path = tmp_path / "it.zip"
    path.write_bytes(content)

    assert refused(path, tmp_path).endswith(".")


def test_an_archive_that_is_sealed_anew_but_true_is_taken(good: Path, tmp_path: Path):
    path = sealed(tmp_path / "again.zip", with_manifest(parts_of(good)))

    with open_archive(path) as archive, tried(archive, tmp_path) as held:
        assert held.rows["customer"] == 2


@pytest.mark.parametrize(
    "name",
    [
        "../../etc/cron.d/job",
        "/etc/passwd",
        "tables/../../secret",
        "tables/customer.jsonl/../x",
        "tables\\customer.jsonl",
        "casewright.db",
        "tables/",
        "tables/Customer.jsonl",
    ],
)
def test_a_part_with_a_name_that_is_not_ours_is_refused(good: Path, tmp_path: Path, name: str):
    path = sealed(tmp_path / "bad.zip", with_manifest({**parts_of(good), name: b"{}\n"}))

    assert "no backup of ours" in refused(path, tmp_path)


@pytest.mark.parametrize(
    ("of_infos", "why"),
    [
        ({"external_attr": (stat.S_IFLNK | 0o777) << 16}, "no backup of ours"),
        ({"external_attr": (stat.S_IFIFO | 0o600) << 16}, "no backup of ours"),
    ],
)
def test_links_and_pipes_are_refused(good: Path, tmp_path: Path, of_infos: dict[str, int], why: str):
    path = sealed(tmp_path / "bad.zip", with_manifest(parts_of(good)), **of_infos)

    assert why in refused(path, tmp_path)


def test_a_part_that_would_unpack_to_far_more_than_it_is_is_refused(good: Path, tmp_path: Path):
    bomb = {**parts_of(good), "tables/customer.jsonl": b"\0" * 200_000_000}

    path = sealed(tmp_path / "bomb.zip", with_manifest(bomb))

    assert path.stat().st_size < 1_000_000
    assert "far more" in refused(path, tmp_path)


def test_a_part_that_is_there_twice_is_refused(good: Path, tmp_path: Path):
    with pytest.warns(UserWarning, match="Duplicate"), zipfile.ZipFile(good, "a") as packed:
        packed.writestr("tables/customer.jsonl", b"")
    content = good.read_bytes()[:-64]
    good.write_bytes(content + hashlib.sha256(content).hexdigest().encode())

    assert "twice" in refused(good, tmp_path)


def changed_line(
    parts: dict[str, bytes], table: str, change: Callable[[dict[str, Any]], object]
) -> dict[str, bytes]:
    """Parts in which the first row of a table was changed."""
    name = f"tables/{table}.jsonl"
    first, *others = parts[name].splitlines(keepends=True)
    row = json.loads(first)
    change(row)
    return {**parts, name: b"".join([json.dumps(row).encode() + b"\n", *others])}


@pytest.mark.parametrize(
    ("table", "change", "why"),
    [
        ("customer", lambda row: row.update(name=5), "name is no text"),
        ("customer", lambda row: row.update(demo="yes"), "demo is no yes or no"),
        ("customer", lambda row: row.update(created_at="2027-03-01T10:00:00"), "created_at is no moment"),
        ("customer", lambda row: row.update(version=True), "version is no whole number"),
        ("customer", lambda row: row.update(version=2**63), "version is no whole number"),
        ("job", lambda row: row.update(due_on="2027-02-30"), "due_on is no day"),
        ("customer", lambda row: row.update(price=1), "columns that the table has not"),
        ("customer", lambda row: row.pop("name"), "do not fit together"),
        ("job", lambda row: row.update(customer_id="0000000000000"), "do not fit together"),
        ("job", lambda row: row.update(state="flown"), "do not fit together"),
    ],
)
def test_rows_that_no_shop_has_are_refused(
    good: Path, tmp_path: Path, table: str, change: Callable[[dict[str, Any]], object], why: str
):
    parts = changed_line(parts_of(good), table, change)

    path = sealed(tmp_path / "bad.zip", with_manifest(parts))

    assert why in refused(path, tmp_path)


@pytest.mark.parametrize(
    "line", [b"[]\n", b"5\n", b"{\n", b"\xff\xfe\n", b'{"name": NaN}\n', b"[" * 100_000 + b"\n", b"\n"]
)
def test_lines_that_are_no_rows_are_refused(good: Path, tmp_path: Path, line: bytes):
    parts = {**parts_of(good), "tables/attempt.jsonl": line}

    path = sealed(tmp_path / "bad.zip", with_manifest(parts))

    assert "attempt" in refused(path, tmp_path)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"form": 2}, "reads form 1"),
        ({"form": "1"}, "manifest"),
        ({"kind": "something else"}, "manifest"),
        ({"parts": []}, "other parts"),
        ({"parts": 5}, "manifest"),
        ({"more": 5}, "manifest"),
        ({"revision": "0001' --"}, "newer casewright"),
        ({"revision": None}, "manifest"),
    ],
)
def test_a_manifest_that_is_not_ours_is_refused(
    good: Path, tmp_path: Path, changes: dict[str, object], why: str
):
    path = sealed(tmp_path / "bad.zip", with_manifest(parts_of(good), **changes))

    with pytest.raises(Exception, match=why), open_archive(path) as archive, tried(archive, tmp_path):
        pass


def test_a_part_with_another_hash_than_the_manifest_says_is_refused(good: Path, tmp_path: Path):
    parts = parts_of(good)
    parts["tables/customer.jsonl"] = parts["tables/customer.jsonl"].replace(b"1 name", b"2 name")

    assert "not what its manifest says" in refused(sealed(tmp_path / "bad.zip", parts), tmp_path)


def test_a_table_that_is_missing_is_refused(good: Path, tmp_path: Path):
    parts = parts_of(good)
    del parts["tables/bench_event.jsonl"]

    path = sealed(tmp_path / "bad.zip", with_manifest(parts))

    assert "its tables" in refused(path, tmp_path)


def test_a_refused_backup_leaves_a_folder_that_was_not_there_as_it_was(
    good: Path, tmp_path: Path, place: Place
):
    good.write_bytes(good.read_bytes()[:-1])
    nowhere = Place(engine=place.engine, data=tmp_path / "nowhere")

    with pytest.raises(BadArchive):
        restore(good, nowhere)

    assert not nowhere.data.exists()


def test_the_triggers_guard_what_was_restored(good: Path, tmp_path: Path):
    change = text("UPDATE history SET what = 'nothing'")

    with (
        open_archive(good) as archive,
        tried(archive, tmp_path) as held,
        pytest.raises(IntegrityError, match="written once"),
        held.engine.begin() as connection,
    ):
        connection.execute(change)
