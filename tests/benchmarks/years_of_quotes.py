"""The quotes of a shop of years, each with the offer that a customer would read."""

import json
from datetime import UTC, datetime, timedelta
from functools import cache

from years import MIXES, NAME, TAX, Filled, Row, built, figures

from casewright.drawing.elevation import elevation
from casewright.pieces.asked.reading import read_as
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.costs.job_estimate import JobEstimate, estimate_job
from casewright.pieces.words.offer import Party, offer
from casewright.records.base import new_id
from casewright.records.jobs import JobState
from casewright.records.papers import Quote, QuoteState
from casewright.shop.issuing import estimate_kept
from casewright.shop.links import token_hash
from casewright.shop.quote_links import link_token


def add_quotes(filled: Filled, quotes: int, now: datetime) -> None:
    """Quotes over the jobs in turn: the later ones of a job supersede the earlier."""
    jobs = filled.rows["job"]
    for number in range(1, quotes + 1):
        job = jobs[(number - 1) % len(jobs)]
        is_last = number + len(jobs) > quotes
        at = min(job["created_at"] + timedelta(days=10 + number // len(jobs)), now)
        filled.rows["quote"].append(
            _quote(filled, job, number, at, _answer(job) if is_last else QuoteState.SUPERSEDED)
        )


def _answer(job: Row) -> QuoteState:
    return {
        JobState.LOST: QuoteState.DECLINED,
        JobState.ENQUIRY: QuoteState.DRAFT,
        JobState.QUOTED: QuoteState.SENT,
    }.get(job["state"], QuoteState.ACCEPTED)


def _quote(filled: Filled, job: Row, number: int, at: datetime, state: QuoteState) -> Row:
    draft = state is QuoteState.DRAFT
    offered = None if draft else _offer(MIXES[job["number"] % len(MIXES)])
    return {
        "shop_id": job["shop_id"],
        "id": new_id(),
        "job_id": job["id"],
        "number": number,
        "revision": 1,
        "state": state,
        "offer": None
        if offered is None
        else offered | {"quote_number": str(number), "job_name": job["name"]},
        "basis": None if draft else _basis(filled, job, at),
        "total_cents": None if offered is None else offered["total_cents"],
        "note": "As we discussed.",
        "link_serial": 1,
        "link_hash": None,
        "issued_at": None if draft else at,
        "valid_until": None if draft else (at + timedelta(days=30)).date(),
        "opened_at": None,
        "answered_at": None,
        "answered_name": "",
        "answer_note": "",
        "created_at": at,
        "version": 2,
    }


@cache
def _estimate(mix: tuple[tuple[str, int], ...]) -> JobEstimate:
    """What the units of a job come to; worked out once, as thousands of times would be too slow."""
    specs = tuple(
        read_as(UnitSpec, json.loads(built(key)[0]) | {"code": code, "count": count})
        for code, (key, count) in zip("ABCDEF", mix, strict=False)
    )
    return estimate_job(specs, figures(), datetime(2027, 1, 4, tzinfo=UTC).date())


@cache
def _offer(mix: tuple[tuple[str, int], ...]) -> Row:
    """What a quote over some units says."""
    estimate = _estimate(mix)
    made = offer(
        estimate,
        figures(),
        offered_by=Party(name=NAME, lines=("1 Marrow Street",)),
        customer=Party(name="Ines Varga", lines=("16 Mill Terrace",)),
        job_number="1",
        job_name="Dresser",
        quote_number="1",
        drawings={each.unit.spec.code: elevation(each.unit).svg() for each in estimate.units},
    )
    held: Row = made.model_dump(mode="json")
    return held


def _basis(filled: Filled, job: Row, at: datetime) -> Row:
    """What an offer was made from."""
    units = [row for row in filled.rows["unit"] if row["job_id"] == job["id"]]
    specs = {row["unit_id"]: row["spec"] for row in filled.rows["unit_revision"]}
    return {
        "form": 1,
        "on": at.date().isoformat(),
        "figures_revision": 1,
        "figures": {"name": NAME, "symbol": "$", "tax_rate": TAX},
        "own": job["own"],
        "units": [
            {
                "id": row["id"],
                "code": row["code"],
                "name": row["name"],
                "revision": row["revision"],
                "spec": specs[row["id"]],
            }
            for row in units
        ],
        "options": [],
        "estimate": estimate_kept(_estimate(MIXES[job["number"] % len(MIXES)])),
    }


def add_link(filled: Filled, secret: bytes) -> str:
    """Gives the last quote that waits for an answer its link."""
    row = next(each for each in reversed(filled.rows["quote"]) if each["state"] is QuoteState.SENT)
    token = link_token(Quote(shop_id=filled.shop_id, id=row["id"], link_serial=1), secret)
    row["link_hash"] = token_hash(token)
    return f"/quote/{filled.shop_id}.{token}"
