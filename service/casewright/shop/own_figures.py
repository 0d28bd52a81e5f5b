"""The shop's own figures as a person keeps them: a look at a revision, a file taken in, one put back."""

import json
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from casewright.pieces.asked.reading import parse_json, read_as
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.records.people import Shop, ShopFigures
from casewright.records.sessions import Fenced
from casewright.shop.figures import figures_spec, save_figures
from casewright.shop.refusals import NotFound

NOT_OF_A_SHOP = ("outwork", "extras")
"""What a shop file may hold for one job; as figures of the whole shop it would land in every price."""


def held_figures(db: Fenced, shop: Shop, revision: int | None = None) -> dict[str, Any]:
    """A revision of the figures as it was kept, under the shop's present name and sign.

    Args:
        db: the session
        shop: the shop
        revision: which one; None for the one that holds

    Raises:
        NotFound: there is no such revision
    """
    number = shop.figures if revision is None else revision
    held = db.get(ShopFigures, (shop.shop_id, number)) if 1 <= number <= shop.figures else None
    if held is None:
        raise NotFound("revision of the figures")
    return {**held.spec, "name": shop.name, "symbol": shop.symbol}


def spec_of(held: Mapping[str, Any]) -> ShopSpec:
    """Figures as they are kept, read."""
    return figures_spec(json.dumps(held, sort_keys=True))


def figures_file(held: Mapping[str, Any]) -> str:
    """The shop file of these figures: JSON that the command line reads, and that can be taken in again."""
    return spec_of(held).model_dump_json(indent=2, exclude_unset=True) + "\n"


def take_in(db: Fenced, shop: Shop, text: str, started_from: int, who: str, now: datetime) -> ShopSpec:
    """Takes a shop file in as a new revision. Name and sign stay the shop's; what is for one job is left out.

    Raises:
        CannotRead: with a sentence for each thing that cannot be used
        Stale: somebody else saved since
    """
    read = read_as(ShopSpec, parse_json(text))
    held = read.model_dump(mode="json", exclude_unset=True)
    kept = {name: value for name, value in held.items() if name not in NOT_OF_A_SHOP}
    return save_figures(db, shop, {**kept, "name": shop.name, "symbol": shop.symbol}, started_from, who, now)


def put_back(db: Fenced, shop: Shop, revision: int, started_from: int, who: str, now: datetime) -> ShopSpec:
    """Lets an earlier revision hold again, as a new one; nothing in between is lost.

    Raises:
        NotFound: there is no such revision
        Stale: somebody else saved since
    """
    return save_figures(db, shop, held_figures(db, shop, revision), started_from, who, now)
