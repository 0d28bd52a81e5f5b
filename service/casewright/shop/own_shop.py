"""What a shop says of itself: how it is reached, how it measures and prints, and its terms."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from datetime import datetime
from typing import Any

from casewright.records.people import Shop
from casewright.records.sessions import Fenced
from casewright.shop.figures import save_figures
from casewright.shop.keeping import note_history
from casewright.shop.own_figures import held_figures


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopFacts:
    """What a shop says of itself."""

    name: str
    address: str
    phone: str
    email: str
    unit: str
    denominator: int
    currency: str
    symbol: str
    time_zone: str
    paper: str
    quote_days: int
    terms: str


def change_shop(db: Fenced, shop: Shop, facts: ShopFacts, tax_rate: float, who: str, now: datetime) -> None:
    """Changes what the shop says of itself, and the tax in its figures where that differs.

    Args:
        db: the session
        shop: the shop
        facts: what is to hold
        tax_rate: the tax as a share of the price
        who: who saves
        now: the moment
    """
    wanted: Mapping[str, Any] = asdict(facts)
    before = {name: getattr(shop, name) for name in wanted}
    changed = [name for name in wanted if wanted[name] != before[name]]
    for name in changed:
        setattr(shop, name, wanted[name])
    if changed:
        note_history(
            db,
            who,
            now,
            f"Changed what the shop says of itself: {', '.join(changed).replace('_', ' ')}.",
            before={name: before[name] for name in changed},
            after={name: wanted[name] for name in changed},
        )
    held = held_figures(db, shop)
    if held.get("tax_rate") != tax_rate:
        save_figures(db, shop, {**held, "tax_rate": tax_rate}, shop.figures, who, now)
