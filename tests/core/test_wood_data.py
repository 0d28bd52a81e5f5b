"""The room's data files: every row says where its figures come from."""

from collections.abc import Iterator
from importlib.resources import files
from typing import Any

import pytest

from casewright.wood.basis import Basis
from casewright.wood.tables import document, rows

DOCUMENTS = sorted(
    each.name.removesuffix(".json")
    for each in (files("casewright.wood") / "data").iterdir()
    if each.name.endswith(".json")
)


def grounded(value: Any) -> Iterator[dict[str, Any]]:
    """Every object in a document that carries a basis."""
    if isinstance(value, dict):
        if "basis" in value:
            yield value
        for inner in value.values():
            yield from grounded(inner)
    if isinstance(value, list):
        for inner in value:
            yield from grounded(inner)


@pytest.mark.parametrize("name", DOCUMENTS)
def test_a_file_names_its_public_source(name: str) -> None:
    assert len(document(name)["source"]) > 20


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_row_has_a_known_basis_and_a_source(name: str) -> None:
    found = list(grounded(dict(document(name))))

    assert found
    assert {row["basis"] for row in found} <= {each.value for each in Basis}
    assert all(row["source"].strip() for row in found)


def test_a_file_is_read_once() -> None:
    assert document("waste") is document("waste")
    assert rows("species") is rows("species")


def test_shared_rows_cannot_be_changed() -> None:
    with pytest.raises(TypeError):
        rows("species")[0]["name"] = "oak"  # type: ignore[index]
