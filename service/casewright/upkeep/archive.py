"""The one file of a backup: an ordinary ZIP with a manifest, the tables as lines of JSON, and the secret.

Its last 64 signs are the SHA-256 of everything before them, so that no bit of it can change unseen, and the
manifest has the SHA-256 of each part. Nothing in it is ever written to the place that its name says: parts
are read one by one, by the names that we know.
"""

import hashlib
import io
import json
import os
import re
import secrets
import stat
import zipfile
import zlib
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import IO, Any, cast

from casewright.folders import called

FORM = 1
KIND = "casewright backup"
MANIFEST = "manifest.json"
SECRET = "secret"  # noqa: S105 - the name of a part
TABLE = re.compile(r"tables/[a-z_]{1,60}\.jsonl")
SEAL = b"casewright backup, SHA-256 of all before: "
DIGEST = 64
PIECE = 1 << 20
LONGEST_LINE = 64 << 20
MOST_PARTS = 200
MOST_BYTES = 32 << 30
MOST_TIMES = 400
"""What a part may be packed to: rows that are much alike come near 100, a trap near 1,000."""
LEVEL = 3


class BadArchive(Exception):
    """A file that is no backup, or a damaged one; the message is a whole sentence."""


class FileIsThere(Exception):
    """A file of this name exists already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of an archive.

    Attributes:
        name: its name in the archive
        rows: how many lines it has
        size: how long it is unpacked [bytes]
        sha256: of its content, unpacked
    """

    name: str
    rows: int
    size: int
    sha256: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Manifest:
    """What an archive says of itself.

    Attributes:
        form: the form of the archive
        program: the version of the program that made it
        revision: the form of the database
        at: the moment that it shows, in UTC
        database: where it came from: sqlite or postgresql
        parts: its parts
    """

    form: int
    program: str
    revision: str
    at: str
    database: str
    parts: tuple[Part, ...]

    def rows(self) -> dict[str, int]:
        """How many rows each table has."""
        return {
            part.name.removeprefix("tables/").removesuffix(".jsonl"): part.rows
            for part in self.parts
            if part.name != SECRET
        }


class NewArchive:
    """An archive that is being written."""

    def __init__(self, packed: zipfile.ZipFile) -> None:
        self._packed = packed
        self.parts: list[Part] = []

    def add(self, name: str, lines: Iterable[bytes]) -> None:
        """Adds a part, line by line."""
        info = zipfile.ZipInfo(name)
        info.compress_type = zipfile.ZIP_DEFLATED
        info.external_attr = (stat.S_IFREG | 0o600) << 16
        digest, size, rows = hashlib.sha256(), 0, 0
        with self._packed.open(info, "w", force_zip64=True) as part:
            for line in lines:
                digest.update(line)
                part.write(line)
                size, rows = size + len(line), rows + 1
        self.parts.append(Part(name=name, rows=rows, size=size, sha256=digest.hexdigest()))

    def close(self, manifest: Manifest) -> None:
        """Adds the manifest, as the last part."""
        facts = {"kind": KIND, **asdict(manifest)}
        self.add(MANIFEST, [json.dumps(facts, indent=1).encode() + b"\n"])


@contextmanager
def new_archive(target: Path, *, overwrite: bool) -> Iterator[NewArchive]:
    """An archive that takes its place when it is whole; until then, or if anything fails, nothing is there.

    Raises:
        FileIsThere: there is a file already, and it is not to be overwritten
    """
    with new_file(target, overwrite=overwrite) as file:
        with zipfile.ZipFile(file, "w", compresslevel=LEVEL) as packed:
            packed.comment = SEAL + b"0" * DIGEST
            yield NewArchive(packed)
        file.seek(-DIGEST, os.SEEK_END)
        held = file.tell()
        file.seek(0)
        seal = _digest(file, held)
        file.seek(held)
        file.write(seal)


@contextmanager
def new_file(target: Path, *, overwrite: bool) -> Iterator[IO[bytes]]:
    """A file for its owner alone that takes its place when it is whole.

    Raises:
        FileIsThere: there is a file already, and it is not to be overwritten
    """
    if target.exists() and not overwrite:
        raise FileIsThere(target)
    hidden = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    made = os.open(hidden, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600)
    try:
        with os.fdopen(made, "w+b") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        put_in_place(hidden, target, overwrite=overwrite)
    finally:
        hidden.unlink(missing_ok=True)


def put_in_place(hidden: Path, target: Path, *, overwrite: bool) -> None:
    """Gives a finished file its name, so that it outlives a power cut.

    Raises:
        FileIsThere: somebody else took the name meanwhile
    """
    if overwrite:
        hidden.replace(target)
    else:
        try:
            target.hardlink_to(hidden)
        except FileExistsError:
            raise FileIsThere(target) from None
        except OSError:  # a disk that knows no second name for a file
            hidden.replace(target)
    folder = os.open(target.parent, os.O_RDONLY)
    with suppress(OSError):
        os.fsync(folder)
    os.close(folder)


def _digest(file: IO[bytes], length: int) -> bytes:
    digest = hashlib.sha256()
    while length > 0 and (piece := file.read(min(PIECE, length))):
        digest.update(piece)
        length -= len(piece)
    return digest.hexdigest().encode()


class Archive:
    """A backup that is read; its seal fits, and it says what it holds."""

    def __init__(self, packed: zipfile.ZipFile, manifest: Manifest) -> None:
        self._packed = packed
        self.manifest = manifest
        self._parts = {part.name: part for part in manifest.parts}

    @property
    def has_secret(self) -> bool:
        """Whether it holds the key of the links."""
        return SECRET in self._parts

    @property
    def size(self) -> int:
        """How long it is unpacked [bytes]."""
        return sum(part.size for part in self.manifest.parts)

    def secret(self) -> bytes:
        """The key of the links."""
        return b"".join(self.lines(SECRET)).strip()

    def lines(self, name: str) -> Iterator[bytes]:
        """The lines of a part; of a table that the archive has not, none.

        Raises:
            BadArchive: the part is not what the manifest says
        """
        part = self._parts.get(name)
        if part is None:
            return
        digest, rows = hashlib.sha256(), 0
        with (
            _as_damage(),
            self._packed.open(name) as packed,
            io.BufferedReader(cast(io.RawIOBase, packed), PIECE) as file,
        ):
            while line := file.readline(LONGEST_LINE + 1):
                if len(line) > LONGEST_LINE:
                    raise BadArchive(f"The backup cannot be used: {name} has a line longer than any row.")
                digest.update(line)
                rows += 1
                yield line
        if digest.hexdigest() != part.sha256 or rows != part.rows:
            raise BadArchive(f"The backup cannot be used: {name} is not what its manifest says.")


@contextmanager
def open_archive(path: Path) -> Iterator[Archive]:
    """Opens a backup, and looks at it from outside before anything in it is read.

    Raises:
        BadArchive: it is no backup, it is damaged, or it is built to do harm
        OSError: it cannot be read at all
    """
    with path.open("rb") as file:
        _check_seal(file)
        with _as_damage():
            packed = zipfile.ZipFile(file)
        with packed:
            with _as_damage():
                infos = _checked(packed)
                manifest = _manifest(packed)
            _compare(manifest, infos)
            yield Archive(packed, manifest)


@contextmanager
def _as_damage() -> Iterator[None]:
    try:
        yield
    except (
        zipfile.BadZipFile,
        zlib.error,
        EOFError,
        RuntimeError,  # also where the file names a way of packing that zipfile lacks
        KeyError,
        OSError,
        ValueError,
    ) as error:
        raise BadArchive(f"The backup is damaged ({type(error).__name__}); take another one.") from None


def _check_seal(file: IO[bytes]) -> None:
    size = file.seek(0, os.SEEK_END)
    start = size - len(SEAL) - DIGEST
    file.seek(max(start, 0))
    end = file.read(len(SEAL) + DIGEST)
    file.seek(0)
    head = file.read(2)
    if not end.startswith(SEAL):
        cut = head == b"PK"
        raise BadArchive(
            "The backup was cut short or is damaged: its seal is not there. Take another one."
            if cut
            else f"This is no backup of casewright; `{called('backup FILE')}` makes one."
        )
    file.seek(0)
    if not secrets.compare_digest(_digest(file, size - DIGEST), end[len(SEAL) :]):
        raise BadArchive("The backup is damaged: its seal does not fit. Take another one.")
    file.seek(0)


def _checked(packed: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    """What is in it, by name, when all of it can be there."""
    infos = packed.infolist()
    named = {info.filename: info for info in infos}
    if len(infos) > MOST_PARTS or len(named) != len(infos):
        raise BadArchive("The backup cannot be used: it has parts too many, or twice.")
    for info in infos:
        known = info.filename in {MANIFEST, SECRET} or TABLE.fullmatch(info.filename)
        kind = stat.S_IFMT(info.external_attr >> 16)
        if not known or kind not in {0, stat.S_IFREG} or info.flag_bits & 1:
            raise BadArchive("The backup cannot be used: it holds something that no backup of ours holds.")
        if info.file_size > PIECE and info.file_size > MOST_TIMES * max(info.compress_size, 1):
            raise BadArchive("The backup cannot be used: a part of it would unpack to far more than it is.")
    if sum(info.file_size for info in infos) > MOST_BYTES:
        raise BadArchive("The backup cannot be used: it would unpack to more than 32 GB.")
    if named.get(MANIFEST) is None or named[MANIFEST].file_size > PIECE:
        raise BadArchive("The backup cannot be used: it has no manifest.")
    return named


def _manifest(packed: zipfile.ZipFile) -> Manifest:
    try:
        facts: dict[str, Any] = json.loads(packed.read(MANIFEST))
        kind, form = facts.pop("kind"), facts["form"]
        parts = tuple(Part(**part) for part in facts.pop("parts"))
        manifest = Manifest(**facts, parts=parts)
        texts = (manifest.program, manifest.revision, manifest.at, manifest.database)
        sound = kind == KIND and type(form) is int and all(type(text) is str for text in texts)
        sound = sound and all(type(part.rows) is int and type(part.size) is int for part in parts)
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        sound = False
    if not sound:
        raise BadArchive("The backup cannot be used: its manifest cannot be read.")
    if form != FORM:
        raise BadArchive(
            f"The backup has form {form}, made by casewright {manifest.program[:20]}; this version reads "
            f"form {FORM}. Restore it with that version, or a newer one."
        )
    return manifest


def _compare(manifest: Manifest, infos: dict[str, zipfile.ZipInfo]) -> None:
    said = {part.name: part.size for part in manifest.parts}
    held = {name: info.file_size for name, info in infos.items() if name != MANIFEST}
    if said != held or len(said) != len(manifest.parts):
        raise BadArchive("The backup cannot be used: its manifest speaks of other parts than it has.")
