"""The shop's own figures: rates, prices, standards and woods, revision by revision."""

import json
from collections.abc import Mapping
from datetime import datetime
from functools import lru_cache
from typing import Any

from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.shop import Shop as Figures
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.records.jobs import Job
from casewright.records.people import Shop, ShopFigures
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import Stale

OF_A_JOB = ("miles", "outwork", "extras", "risk", "queue_weeks")
"""Figures that a job may have of its own."""


def figures_text(db: Fenced, shop: Shop, job: Job | None = None, revision: int | None = None) -> str:
    """A shop's figures as JSON text, with what a job has of its own.

    The text is the key under which all that follows from it is kept a while.
    """
    held = db.get(ShopFigures, (shop.shop_id, revision or shop.figures))
    spec: dict[str, Any] = dict(held.spec) if held else {}
    spec |= {"name": shop.name, "symbol": shop.symbol}
    if job is not None:
        spec |= {name: value for name, value in job.own.items() if name in OF_A_JOB}
    return json.dumps(spec, sort_keys=True)


@lru_cache(maxsize=64)
def figures_from(text: str) -> Figures:
    """A shop's figures, ready for the core.

    Args:
        text: as `figures_text` gives it
    """
    return figures_of_spec(figures_spec(text))


def figures_spec(text: str) -> ShopSpec:
    """What a shop says of itself, from its text."""
    return read_as(ShopSpec, json.loads(text))


def figures(db: Fenced, shop: Shop, job: Job | None = None) -> Figures:
    """The figures that hold now, for a job or in general."""
    return figures_from(figures_text(db, shop, job))


def save_figures(
    db: Fenced, shop: Shop, spec: Mapping[str, Any], started_from: int, who: str, now: datetime
) -> ShopSpec:
    """Keeps a new revision of the shop's figures; the earlier ones stay.

    Args:
        db: the session
        shop: the shop
        spec: the new figures, as a shop file holds them
        started_from: the revision that the form showed
        who: who saves
        now: the moment

    Returns:
        The figures.

    Raises:
        CannotRead: with a sentence for each field that cannot be used
        Stale: somebody else saved since
    """
    made = read_as(ShopSpec, dict(spec))
    if shop.figures != started_from:
        raise Stale({})
    held = db.get(ShopFigures, (shop.shop_id, shop.figures))
    before: dict[str, Any] = held.spec if held else {}
    after = made.model_dump(mode="json", exclude_unset=True)
    changed = sorted(name for name in {*before, *after} if before.get(name) != after.get(name))
    if not changed:
        return made
    shop.figures += 1
    db.add(ShopFigures(revision=shop.figures, spec=after, at=now, who=who))
    note_history(
        db,
        who,
        now,
        f"Changed the shop's figures: {', '.join(changed)}.",
        before={name: before.get(name) for name in changed},
        after={name: after.get(name) for name in changed},
    )
    return made
