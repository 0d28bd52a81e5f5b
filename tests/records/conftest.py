"""A place on SQLite for what is the same on both databases."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from casewright.upkeep.place import Place
from databases import migrated


@pytest.fixture
def place(tmp_path: Path) -> Iterator[Place]:
    """A place with an empty database and a key of the links."""
    folder = tmp_path / "shop"
    folder.mkdir(mode=0o700)
    (folder / "secret").write_text("0123456789abcdef" * 4)
    (folder / "secret").chmod(0o600)
    with migrated("sqlite", folder) as engine:
        yield Place(engine=engine, data=folder)
