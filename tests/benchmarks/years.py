"""What a shop of years is filled with: the rows so far, and units that are worked out once for all jobs."""

from dataclasses import dataclass, field
from functools import cache
from typing import Any

from casewright.pieces.asked.presets import preset
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop import shop as figures_of
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.built.construct import Construction, construct
from casewright.shop.units import spec_text

MIXES = (
    (("collectors-cabinet", 1),),
    (("dresser", 2),),
    (("collectors-cabinet", 1),),
    (("low-chest", 1), ("dresser", 1)),
)
"""Units of one job after another, with how many alike: sixteen drawers a job on average."""
NAME, TAX = "Marrow Street Furniture", 0.06
Row = dict[str, Any]


@dataclass
class Filled:
    """The shop, with what a visitor needs to find a way in.

    Attributes:
        shop_id: the shop
        person_id: its owner
        owner: the cookie of its owner
        bench: the cookie of somebody at the bench
        link: the path of a quote's link
        rows: the rows of each table, as they were put in
    """

    shop_id: str
    person_id: str
    owner: str
    bench: str
    link: str = ""
    rows: dict[str, list[Row]] = field(default_factory=dict)

    def count(self, table: str) -> int:
        """How many rows a table got."""
        return len(self.rows[table])


@cache
def built(key: str) -> tuple[str, Construction]:
    spec = preset(key).spec()
    return spec_text(spec), construct(spec, figures())


@cache
def figures() -> Figures:
    return figures_of(read_as(ShopSpec, {"name": NAME, "symbol": "$", "tax_rate": TAX}))
