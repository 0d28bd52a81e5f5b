"""Where an export goes: a ZIP file, a folder, or one JSON file. Each takes its place when it is whole."""

import json
import secrets
import shutil
import zipfile
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Any, Protocol

from casewright.upkeep.archive import FileIsThere, new_file


class Sink(Protocol):
    """What takes an export, part by part."""

    takes_papers: bool

    def text(self, name: str, text: str) -> None:
        """Takes what is to be read first."""

    def rows(self, table: str, rows: Iterable[dict[str, Any]]) -> int:
        """Takes the rows of a table; says how many they were."""

    def file(self, name: str, content: bytes) -> None:
        """Takes a paper."""

    def facts(self, facts: dict[str, Any]) -> None:
        """Takes what is said of the export; nothing comes after it."""


@contextmanager
def sink_for(target: Path, *, overwrite: bool) -> Iterator[Sink]:
    """What takes an export to this place.

    Raises:
        FileIsThere: there is something already
    """
    if target.suffix == ".zip":
        with (
            new_file(target, overwrite=overwrite) as file,
            zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as zipped,
        ):
            yield ToZip(zipped)
    elif target.suffix == ".json":
        with new_file(target, overwrite=overwrite) as file:
            yield ToJson(file)
    else:
        with _new_folder(target) as folder:
            yield ToFolder(folder)


@contextmanager
def _new_folder(target: Path) -> Iterator[Path]:
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise FileIsThere(target)
    hidden = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    try:
        hidden.mkdir(mode=0o700)
        yield hidden
        hidden.replace(target)
    finally:
        shutil.rmtree(hidden, ignore_errors=True)


def _array(rows: Iterable[dict[str, Any]]) -> Iterator[bytes]:
    """A JSON array, row by row, each on a line of its own."""
    before = b"[\n"
    for row in rows:
        yield before + json.dumps(row, ensure_ascii=False).encode("utf-8", "backslashreplace")
        before = b",\n"
    yield b"[]" if before == b"[\n" else b"\n]"


class ToZip:
    """An export as a ZIP file."""

    takes_papers = True

    def __init__(self, zipped: zipfile.ZipFile) -> None:
        self._zipped = zipped

    def text(self, name: str, text: str) -> None:
        self._zipped.writestr(name, text)

    def rows(self, table: str, rows: Iterable[dict[str, Any]]) -> int:
        count = -1
        with self._zipped.open(f"data/{table}.json", "w", force_zip64=True) as file:
            for piece in _array(rows):
                file.write(piece)
                count += 1
            file.write(b"\n")
        return count

    def file(self, name: str, content: bytes) -> None:
        self._zipped.writestr(name, content)

    def facts(self, facts: dict[str, Any]) -> None:
        self._zipped.writestr("export.json", json.dumps(facts, indent=1) + "\n")


class ToFolder:
    """An export as a folder."""

    takes_papers = True

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def text(self, name: str, text: str) -> None:
        (self._folder / name).write_text(text, encoding="utf-8")

    def rows(self, table: str, rows: Iterable[dict[str, Any]]) -> int:
        count = -1
        path = self._folder / "data" / f"{table}.json"
        path.parent.mkdir(exist_ok=True)
        with path.open("wb") as file:
            for piece in _array(rows):
                file.write(piece)
                count += 1
            file.write(b"\n")
        return count

    def file(self, name: str, content: bytes) -> None:
        path = self._folder / name
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(content)

    def facts(self, facts: dict[str, Any]) -> None:
        (self._folder / "export.json").write_text(json.dumps(facts, indent=1) + "\n", encoding="utf-8")


class ToJson:
    """An export as one JSON file."""

    takes_papers = False

    def __init__(self, file: IO[bytes]) -> None:
        self._file = file

    def text(self, name: str, text: str) -> None:
        about = json.dumps(text.splitlines(), ensure_ascii=False, indent=1)
        self._file.write(f'{{"about": {about},\n"data": {{'.encode())
        self._comma = ""

    def rows(self, table: str, rows: Iterable[dict[str, Any]]) -> int:
        self._file.write(f'{self._comma}\n"{table}": '.encode())
        self._comma, count = ",", -1
        for piece in _array(rows):
            self._file.write(piece)
            count += 1
        return count

    def file(self, name: str, content: bytes) -> None:
        raise TypeError("one JSON file holds no papers: ask takes_papers first")

    def facts(self, facts: dict[str, Any]) -> None:
        self._file.write(f'\n}},\n"export": {json.dumps(facts, indent=1)}}}\n'.encode())
