"""What has changed since a quote was issued, and what the job would be priced at today."""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.papers import QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import OF_A_JOB, figures_text
from casewright.shop.issuing import estimate_kept
from casewright.shop.quotes import LoadedQuote
from casewright.shop.units import LoadedUnit, units_of

NOT_IN_A_PRICE = {"name", "symbol", "basis"}


@dataclass(frozen=True, slots=True, kw_only=True)
class LineThenAndNow:
    """One line of the price, as it was quoted and as it would be today.

    Attributes:
        label: what it is for
        then: what it came to [cent]
        now: what it comes to today [cent]
        worked_then: the sum behind it; empty where there was none
        worked_now: the sum behind it today; empty where there is none
    """

    label: str
    then: int
    now: int
    worked_then: str
    worked_now: str

    @property
    def difference(self) -> int:
        """What it comes to more today [cent]."""
        return self.now - self.then


@dataclass(frozen=True, slots=True, kw_only=True)
class Since:
    """What has changed since a quote was issued.

    Attributes:
        reasons: what is not as it was, each a phrase
        then: the price that was asked, before tax [cent]
        now: the price today; None where it cannot be worked out [cent]
        lines: the lines of the price that differ: for the owner
        trouble: why it cannot be worked out today; empty where it can
    """

    reasons: tuple[str, ...]
    then: int
    now: int | None = None
    lines: tuple[LineThenAndNow, ...] = ()
    trouble: str = ""

    @property
    def difference(self) -> int:
        """What the price would be more today [cent]."""
        return 0 if self.now is None else self.now - self.then


def changed_since(db: Fenced, shop: Shop, held: LoadedQuote, today: date) -> Since | None:
    """What has changed since a quote was issued; None where all is as it was, or it matters no more."""
    basis = held.quote.basis
    if basis is None or held.quote.state is QuoteState.SUPERSEDED:
        return None
    units = units_of(db, held.job)
    text = figures_text(db, shop, held.job)
    reasons = (*_units_changed(basis["units"], units), *_figures_changed(basis["figures"], json.loads(text)))
    if not reasons:
        return None
    then = basis["estimate"]
    try:
        today_kept = estimate_kept(estimated_job(tuple(each.text for each in units), text, today))
    except REFUSALS as error:
        return Since(reasons=reasons, then=then["asked_cents"], trouble=refusal(error, LengthUnit(shop.unit)))
    return Since(
        reasons=reasons,
        then=then["asked_cents"],
        now=today_kept["asked_cents"],
        lines=tuple(_lines(then["lines"], today_kept["lines"])),
    )


def _units_changed(then: Sequence[Mapping[str, Any]], now: Sequence[LoadedUnit]) -> Iterator[str]:
    held = {each.unit.id: each for each in now}
    for each in then:
        unit = held.pop(each["id"], None)
        if unit is None:
            yield f"unit {each['code']} has been taken out"
        elif json.loads(unit.text) != each["spec"]:
            number = unit.revision.number
            yield f"unit {each['code']} is at revision {number}, quoted at {each['revision']}"
    yield from (f"unit {each.unit.code} has been added" for each in held.values())


def _figures_changed(then: Mapping[str, Any], now: Mapping[str, Any]) -> Iterator[str]:
    changed = [name for name in sorted({*then, *now} - NOT_IN_A_PRICE) if then.get(name) != now.get(name)]
    own = [name.replace("_", " ") for name in changed if name in OF_A_JOB]
    shops = [name.replace("_", " ") for name in changed if name not in OF_A_JOB]
    if shops:
        yield f"the shop's figures: {', '.join(shops)}"
    if own:
        yield f"the figures of this job: {', '.join(own)}"


def _lines(then: Sequence[Mapping[str, Any]], now: Sequence[Mapping[str, Any]]) -> Iterator[LineThenAndNow]:
    """The lines that differ, in the order of today's price, then those that are gone."""
    before = {each["label"]: each for each in then}
    after = {each["label"]: each for each in now}
    nothing = {"amount_cents": 0, "working": ""}
    for label in (*after, *(label for label in before if label not in after)):
        was, is_now = before.get(label, nothing), after.get(label, nothing)
        if was != is_now:
            yield LineThenAndNow(
                label=label,
                then=was["amount_cents"],
                now=is_now["amount_cents"],
                worked_then=was["working"],
                worked_now=is_now["working"],
            )
