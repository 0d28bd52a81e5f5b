"""Which of a shop's figures are still those of the example, so that no quote goes out on them unnoticed."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from casewright.pieces.asked.shop import Shop as Figures
from casewright.pricing.materials import MaterialLine
from casewright.pricing.prices import PriceKind, PriceRow, key_of
from casewright.pricing.rate import example_year

EXAMPLE = "example"


@dataclass(frozen=True, slots=True, kw_only=True)
class StillExamples:
    """How many figures of each kind are not the shop's own, of how many.

    Attributes:
        prices: prices of the made-up price book
        all_prices: all prices
        times: operations with the times that every shop starts with
        all_times: all operations
        costs: yearly costs with the name and the amount of the made-up year
        all_costs: all yearly costs
        minimum: the least charge is the example's
        ratios: how many jobs the shop's own risk is learned from
    """

    prices: int
    all_prices: int
    times: int
    all_times: int
    costs: int
    all_costs: int
    minimum: bool
    ratios: int


def still_examples(figures: Figures) -> StillExamples:
    """Counts what is left of the example."""
    made_up = {(cost.name, cost.amount) for cost in example_year().costs}
    return StillExamples(
        prices=sum(row.basis.startswith(EXAMPLE) for row in figures.prices.rows),
        all_prices=len({key_of(row) for row in figures.prices.rows}),
        times=sum(one.code not in figures.spec.minutes for one in figures.standards.operations),
        all_times=len(figures.standards.operations),
        costs=sum((cost.name, cost.amount) in made_up for cost in figures.year.costs),
        all_costs=len(figures.year.costs),
        minimum=figures.spec.minimum is None,
        ratios=len(figures.history.ratios),
    )


def example_words(materials: Iterable[MaterialLine], figures: Figures) -> Iterator[str]:
    """What a price still takes from an example shop, a sentence for each.

    Args:
        materials: its lines of material
        figures: the figures that it stands on
    """
    rows = {(row.kind, f"{row.item} {row.size}".strip()): row for row in figures.prices.rows}
    named = [line.label for line in materials if _is_example(line, rows)]
    if named:
        yield f"Prices of an example shop: {', '.join(dict.fromkeys(named))}."
    spec = figures.spec
    if spec.yearly_costs is None:
        yield "The hourly rate is worked out from an example's yearly costs."
    if spec.miles and any(kind is PriceKind.TRAVEL and _says_example(row) for (kind, _), row in rows.items()):
        yield "The price of a mile is an example's."
    if not spec.ratios:
        yield "How past jobs ran against their estimates is not known yet; a usual margin stands for it."


def _is_example(line: MaterialLine, rows: Mapping[tuple[PriceKind, str], PriceRow]) -> bool:
    row = rows.get((line.kind, line.priced_as))
    return row is not None and _says_example(row)


def _says_example(row: PriceRow) -> bool:
    return row.basis.startswith(EXAMPLE)
