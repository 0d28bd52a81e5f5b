"""One box for everything: jobs, customers, quotes, papers, units, drawers, notes."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.stages import drawer_stages
from casewright.records.search import (
    MOST,
    CustomerFound,
    DrawerFound,
    Found,
    JobFound,
    PaperFound,
    QuoteFound,
    UnitFound,
    search,
)
from casewright.shop.papers import shown_paper_number
from casewright.shop.quotes import shown_number
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office

router = APIRouter()
OneFound = JobFound | CustomerFound | QuoteFound | PaperFound | UnitFound | DrawerFound
AROUND = 60
"""Letters on each side of a word that was found in a note."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """One thing that was found."""

    address: str
    name: str
    more: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """What was found of one kind."""

    name: str
    hits: tuple[Hit, ...]
    has_more: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchPage(Page):
    """What a search found."""

    template: ClassVar[str] = "search/results.html"
    words: str
    kinds: tuple[Kind, ...]
    by_a_slip: bool


@router.get("/search")
def show_search(visit: Office, q: str = "") -> Response:
    """Whatever bears the words that were typed."""
    words = " ".join(q.replace("\x00", "").split())[:100]
    found = search(visit.db, words)
    kinds = tuple(kind for kind in _kinds(found, words) if kind.hits)
    return show(visit, SearchPage(title="Search", words=words, kinds=kinds, by_a_slip=found.by_a_slip))


def _kinds(found: Found, words: str) -> tuple[Kind, ...]:
    return (
        _kind(
            "Jobs",
            [
                Hit(
                    address=f"/jobs/{one.id}",
                    name=f"{one.number} · {one.name}",
                    more=_of(one, f"{one.customer}, {one.state.value}"),
                )
                for one in found.jobs
            ],
        ),
        _kind(
            "Customers",
            [
                Hit(
                    address=f"/customers/{one.id}",
                    name=one.name,
                    more=_of(one, ", ".join(part for part in (one.phone, one.email) if part)),
                )
                for one in found.customers
            ],
        ),
        _kind(
            "Quotes",
            [
                Hit(
                    address=f"/quotes/{one.id}",
                    name=f"{shown_number(one.number)}, revision {one.revision}",
                    more=_of(one, f"{one.state.value}, job {one.job} · {one.name}"),
                )
                for one in found.quotes
            ],
        ),
        _kind(
            "Papers",
            [
                Hit(
                    address=f"/papers/{one.id}",
                    name=f"{shown_paper_number(one.kind, one.number)}, revision {one.revision}",
                    more=_of(one, f"{one.kind.value}, job {one.job} · {one.name}"),
                )
                for one in found.papers
            ],
        ),
        _kind(
            "Units",
            [
                Hit(
                    address=f"/units/{one.id}",
                    name=f"{one.job}-{one.code} {one.name}",
                    more=_of(one, f"job {one.job} · {one.job_name}"),
                )
                for one in found.units
            ],
        ),
        _kind("Drawers", [_drawer(one) for one in found.drawers]),
        _kind(
            "Notes",
            [
                *(
                    Hit(
                        address=f"/jobs/{one.id}",
                        name=f"Job {one.number} · {one.name}",
                        more=_of(one, excerpt(f"{one.asked}\n{one.note}", words)),
                    )
                    for one in found.noted_jobs
                ),
                *(
                    Hit(
                        address=f"/customers/{one.id}",
                        name=one.name,
                        more=_of(one, excerpt(one.note, words)),
                    )
                    for one in found.noted_customers
                ),
            ],
        ),
    )


def _of(one: OneFound, more: str) -> str:
    """What stands below something that was found; what is the demo's says so first."""
    return ", ".join(part for part in ("demo" if one.demo else "", more) if part)


def _kind(name: str, hits: Sequence[Hit]) -> Kind:
    return Kind(name=name, hits=tuple(hits[:MOST]), has_more=len(hits) > MOST)


def _drawer(one: DrawerFound) -> Hit:
    stage = next((each.word for each in drawer_stages() if each.code == one.stage), "not begun")
    piece = f", piece {one.piece} of {one.pieces}" if one.pieces > 1 else ""
    return Hit(
        address=f"/bench/{one.id}",
        name=f"{one.job}-{one.unit}-{one.code}{piece}",
        more=_of(one, f"{stage}, job {one.job} · {one.job_name}"),
    )


def excerpt(text: str, words: str) -> str:
    """The part of a note in which the first of the words stands."""
    plain = " ".join(text.split())
    first = words.split(maxsplit=1)[0] if words else ""
    at = max(0, plain.casefold().find(first.casefold()))
    start, end = max(0, at - AROUND), at + len(first) + AROUND
    return f"{'…' if start else ''}{plain[start:end].strip()}{'…' if end < len(plain) else ''}"
