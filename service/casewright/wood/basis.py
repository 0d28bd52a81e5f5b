"""On what ground a figure stands: printed, a habit of the trade, remembered, computed, or learned."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Basis(StrEnum):
    """How well a figure is known."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice"
    FROM_MEMORY = "from memory"
    COMPUTED = "computed"
    LEARNED = "learned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """The ground of one figure.

    Attributes:
        basis: published, common practice, from memory, computed, or learned from the shop's own work
        source: the document and table, or what the shop learned it from
    """

    basis: Basis
    source: str

    def __post_init__(self) -> None:
        if not self.source.strip():
            raise ValueError("A figure without a source cannot be defended; say where it comes from.")

    def __str__(self) -> str:
        return self.source if self.source.startswith(str(self.basis)) else f"{self.basis}: {self.source}"


def evidence_of(row: Mapping[str, object]) -> Evidence:
    """The ground that a row of a data file gives for its figures.

    Args:
        row: any row with a `basis` and a `source`

    Returns:
        The evidence.

    Source: common practice.
    """
    return Evidence(basis=Basis(str(row["basis"])), source=str(row["source"]))
