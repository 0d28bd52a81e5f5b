"""The key of the links: made once and whole, the same for all who start at once, refused when it was cut."""

import os
import stat
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier

import pytest
from filling import fill

from casewright.cli import main
from casewright.settings import BadSetting, Settings, read_settings
from casewright.upkeep.backup import take_backup
from casewright.upkeep.key import link_secret
from casewright.upkeep.place import Place
from casewright.upkeep.restore import restore

SERVICE = Path(__file__).resolve().parents[2] / "service"
AT_ONCE = 8


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """A data folder that is not there yet."""
    return read_settings({}, data=tmp_path / "shop")


def test_it_is_made_once_for_its_owner_alone_and_nothing_else_is_left(settings: Settings):
    key = link_secret(settings)

    assert link_secret(settings) == key
    assert len(key) == 64
    assert os.listdir(settings.data) == ["secret"]
    assert stat.S_IMODE((settings.data / "secret").stat().st_mode) == 0o600


def test_it_outlives_a_power_cut_before_it_is_used(settings: Settings, monkeypatch: pytest.MonkeyPatch):
    synced: list[str] = []
    fsync = os.fsync

    def noting(file: int) -> None:
        synced.append(Path(os.readlink(f"/proc/self/fd/{file}")).name)
        fsync(file)

    monkeypatch.setattr(os, "fsync", noting)

    link_secret(settings)

    content, folder = synced
    assert content.startswith(".secret.")
    assert folder == "shop"


def test_a_power_cut_while_it_is_made_leaves_none(settings: Settings, monkeypatch: pytest.MonkeyPatch):
    def cut(file: int) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(os, "fsync", cut)
    with pytest.raises(BadSetting, match="Input/output error"):
        link_secret(settings)
    monkeypatch.undo()

    assert os.listdir(settings.data) == []
    assert len(link_secret(settings)) == 64


def without_second_names(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path, target: Path) -> None:
        raise OSError(1, "Operation not permitted")

    monkeypatch.setattr(Path, "hardlink_to", refuse)


def as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """An ordinary disk."""


@pytest.mark.parametrize("disk", [as_it_is, without_second_names])
def test_all_who_start_at_once_have_the_same(
    settings: Settings, monkeypatch: pytest.MonkeyPatch, disk: Callable[[pytest.MonkeyPatch], None]
):
    disk(monkeypatch)
    ready = Barrier(AT_ONCE)

    def start(_: int) -> bytes:
        ready.wait()
        return link_secret(settings)

    for _ in range(20):
        with ThreadPoolExecutor(AT_ONCE) as pool:
            keys = set(pool.map(start, range(AT_ONCE)))
        assert keys == {(settings.data / "secret").read_bytes()}
        (settings.data / "secret").unlink()


def test_two_processes_that_start_at_once_have_the_same(settings: Settings):
    code = (
        "import sys; from casewright.settings import read_settings; "
        "from casewright.upkeep.key import link_secret; sys.stdin.read(1); "
        "print(link_secret(read_settings({}, data=sys.argv[1])).decode())"
    )
    started = [
        subprocess.Popen(
            [sys.executable, "-c", code, str(settings.data)],
            env=os.environ | {"PYTHONPATH": str(SERVICE)},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        for _ in range(2)
    ]
    for each in started:
        assert each.stdin is not None
        each.stdin.write("x")
        each.stdin.flush()

    keys = {each.communicate(timeout=60)[0].strip() for each in started}

    assert keys == {(settings.data / "secret").read_text()}


@pytest.mark.parametrize("content", [b"", b"\n", b"0123456789abcdef", b"0" * 31 + b"\n"])
def test_an_empty_or_cut_one_is_refused_with_what_to_do_and_left_as_it_is(settings: Settings, content: bytes):
    settings.data.mkdir()
    (settings.data / "secret").write_bytes(content)

    with pytest.raises(BadSetting, match=r"empty or cut\. Put it back .* delete it and start again"):
        link_secret(settings)

    assert (settings.data / "secret").read_bytes() == content


def test_the_service_does_not_start_with_a_cut_one(tmp_path: Path, capsys: pytest.CaptureFixture[str]):
    data = tmp_path / "shop"
    data.mkdir(mode=0o700)
    (data / "secret").write_text("cut")

    status = main(["serve", "--port", "0", "--data", str(data)])

    assert status == 2
    assert "empty or cut" in capsys.readouterr().err
    assert os.listdir(data) == ["secret"]


def test_one_that_was_set_is_used_and_no_file_is_made(tmp_path: Path):
    held = read_settings({"CASEWRIGHT_SECRET": "k" * 32}, data=tmp_path / "shop")

    assert link_secret(held) == b"k" * 32
    assert not held.data.exists()


def test_a_cut_one_in_a_backup_does_not_replace_a_whole_one(place: Place, tmp_path: Path):
    fill(place.engine)
    backup = take_backup(place.engine, tmp_path / "cut.zip", b"cut").path
    place.engine.dispose()
    whole = place.secret()

    done = restore(backup, place, force=True)

    assert place.secret() == whole
    assert done.has_secret is False
