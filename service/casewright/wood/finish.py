"""How much finish to buy."""

from dataclasses import dataclass
from functools import cache

from casewright.measure.rounding import up_to
from casewright.measure.units import Count, Number, Quarts, SquareFeet, SquareFeetPerQuart
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """One kind of finish, as far as it decides how much to buy.

    Attributes:
        name: such as `wiping varnish`
        coverage: what a quart covers in one coat [sq ft per quart]
        loss: what is lost beside the piece, as a part of what goes on it [dimensionless]
        aliases: other names for it
        evidence: where the coverage comes from
        loss_evidence: where the loss comes from
    """

    name: str
    coverage: SquareFeetPerQuart
    loss: Number
    aliases: tuple[str, ...]
    evidence: Evidence
    loss_evidence: Evidence

    def __post_init__(self) -> None:
        if self.coverage <= 0 or self.loss < 0:
            raise ValueError(f"{self.name}: a quart covers something, and what is lost is not below nothing.")


@cache
def finishes() -> tuple[Finish, ...]:
    """Every finish in the table.

    Returns:
        The finishes, wiped and brushed ones first.

    Source: common practice, from labels; measure your own and replace it.
    """
    return tuple(
        Finish(
            name=row["name"],
            coverage=row["coverage_sq_ft_per_quart"],
            loss=row["loss"],
            aliases=tuple(row["aliases"]),
            evidence=evidence_of(row),
            loss_evidence=evidence_of({"basis": row["basis"], "source": row["loss_source"]}),
        )
        for row in document("finishes")["finishes"]
    )


def finish(name: str) -> Finish:
    """The finish that goes by a name.

    Args:
        name: its name or another one in use

    Returns:
        The finish.

    Raises:
        ValueError: no finish goes by that name; those in the table are named.

    Source: common practice, from labels.
    """
    plain = " ".join(name.casefold().split())
    for each in finishes():
        if plain == each.name or plain in each.aliases:
            return each
    known = ", ".join(each.name for each in finishes())
    raise ValueError(f"“{name}” is not a finish in the table, which has {known}.")


def coated_area(area: SquareFeet, coats: Count) -> SquareFeet:
    """A surface counted once for each coat; add these up for `quarts_needed`.

    Rule: area * coats

    Args:
        area: the surface [sq ft]
        coats: how many coats it gets [dimensionless]

    Returns:
        Area to be covered in all [sq ft]

    Source: common practice.
    """
    return area * coats


def quarts_needed(area: SquareFeet, coverage: SquareFeetPerQuart, loss: Number) -> Quarts:
    """How much finish the coats take, before it is rounded up to what is sold.

    Rule: area / coverage * (1 + loss)

    Args:
        area: the surfaces, each counted once for each of its coats; see `coated_area` [sq ft]
        coverage: what a quart covers in one coat [sq ft per quart]
        loss: what is lost beside the piece, as a part of what goes on it [dimensionless]

    Returns:
        Finish, unrounded [quart]

    Source: common practice.
    """
    return area / coverage * (1 + loss)


def whole_quarts(quarts: Quarts) -> Count:
    """How many quarts to buy.

    Rule: quarts, rounded up

    Args:
        quarts: what the coats take [quart]

    Returns:
        Whole quarts [dimensionless]

    Source: common practice.
    """
    return int(up_to(quarts, 1))
