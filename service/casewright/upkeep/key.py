"""The key under which links to quotes are made: as set, or kept in the data folder and made once."""

import fcntl
import os
import secrets
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from casewright.folders import called
from casewright.settings import BadSetting, Settings
from casewright.upkeep.archive import FileIsThere, new_file

SECRET = "secret"  # noqa: S105 - the name of a file
LEAST = 32
"""No key is shorter [bytes]: with fewer, a link could be guessed. Ours have 64 signs, for 256 bits."""


def link_secret(settings: Settings) -> bytes:
    """The key of the links; one is made where there is none, and all who start at once get the same.

    Raises:
        BadSetting: the file is empty or cut, or it cannot be read or made; with what to do
    """
    if settings.secret:
        return settings.secret.encode()
    path = settings.data / SECRET
    try:
        settings.data.mkdir(parents=True, exist_ok=True, mode=0o700)
        if not path.exists():
            _make(path)
        key = path.read_bytes().strip()
    except OSError as error:
        raise BadSetting(
            f"The key of the links in {path} cannot be used ({error.strerror}); see that the user who runs "
            "the service may read it, and write to its folder."
        ) from None
    if not is_whole(key):
        raise BadSetting(
            f"{path}, the key of the links, has {len(key)} bytes, not {LEAST} or more: it is empty or cut. "
            f"Put it back from a copy, or from a backup with `{called('restore FILE --force')}`. Without "
            "one, delete it and start again: a new one is made, and links to quotes that were sent no longer "
            "open."
        )
    return key


def is_whole(key: bytes) -> bool:
    """Whether a key is long enough to be one."""
    return len(key) >= LEAST


def _make(path: Path) -> None:
    with _alone(path.parent), suppress(FileIsThere), new_file(path, overwrite=False) as file:
        file.write(secrets.token_hex(LEAST).encode())


@contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Holds up others who would make it: on a disk that knows no second name for a file, each has its own."""
    held = os.open(folder, os.O_RDONLY)
    try:
        with suppress(OSError):  # a disk over the network may not know locks on a folder
            fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)
