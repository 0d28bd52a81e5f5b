"""Papers of a job: issued from what holds now, with what was measured, frozen, looked at for staleness."""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from hashlib import sha256
from typing import Any

from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.papers import Paper, PaperKind
from casewright.records.people import Shop
from casewright.records.quotes import paper_with_job, papers_of_kind
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures_text
from casewright.shop.keeping import next_number, note_history
from casewright.shop.measured import measured_sizes, text_with
from casewright.shop.refusals import NotFound
from casewright.shop.units import LoadedUnit, units_of

LETTERS = {PaperKind.LUMBER_ORDER: "L", PaperKind.CUT_LIST: "C", PaperKind.JOINT_CARDS: "J"}
OF_THE_RACK = ("chisels", "cutters", "dividers", "gauges", "looks", "saw_kerf", "saws", "usual")
"""The shop's tools and its usual numbers in joints."""
OF_THE_SHOP = (
    "average_board",
    "edge_trim",
    "end_trim",
    "grade",
    "grades",
    "kerf",
    "sheet_waste",
    "waste",
    "wide_over",
    "widest_board",
    *OF_THE_RACK,
)
"""The shop's figures that decide what stands on a paper: its boards, its tools, its habits; no money."""
BESIDE = {"head", "supplier", "needed_by", "delivery", "surfacing", "remarks"}
"""What a paper says that is not worked out of the job."""
NO_LONGER = "sizes measured at the bench no longer go with the design and are left out"


@dataclass(frozen=True, slots=True, kw_only=True)
class JobAtHand:
    """A job worked out for its papers.

    Attributes:
        units: its units
        texts: each unit's choices with what was measured, as JSON text
        measured: how many sizes were measured, unit by unit
        figures: the shop's figures that decide what a paper says
        estimate: the job worked out
        remark: what the maker must know; empty for nothing
    """

    units: tuple[LoadedUnit, ...]
    texts: tuple[str, ...]
    measured: tuple[int, ...]
    figures: Mapping[str, Any]
    estimate: JobEstimate
    remark: str = ""

    @property
    def basis(self) -> dict[str, Any]:
        """What papers are made from, so far as one asks later what has changed."""
        return {
            "units": [
                {
                    "id": loaded.unit.id,
                    "code": loaded.unit.code,
                    "revision": loaded.revision.number,
                    "measured": measured,
                    "hash": _hash(text),
                }
                for loaded, text, measured in zip(self.units, self.texts, self.measured, strict=True)
            ],
            "figures": dict(self.figures),
        }

    @property
    def mark(self) -> str:
        """A hash of everything that a paper is made from."""
        return _hash([*self.texts, self.figures])


def _hash(value: Any) -> str:
    return sha256(json.dumps(value, sort_keys=True).encode()).hexdigest()


def job_at_hand(db: Fenced, shop: Shop, job: Job, today: date) -> JobAtHand:
    """A job worked out with what holds now, and with what was measured on units that are made once.

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: with a sentence that says what would work
    """
    units = tuple(units_of(db, job))
    text = figures_text(db, shop, job)
    held: dict[str, Any] = json.loads(text)
    figures = {name: held[name] for name in OF_THE_SHOP if name in held}
    designed = tuple(each.text for each in units)
    measured = measured_sizes(db, units)
    sizes = tuple(measured.get(each.unit.id, {}) for each in units)
    counts = tuple(sum(map(len, each.values())) for each in sizes)
    remarks = list(_not_as_accepted(units))
    try:
        texts = tuple(text_with(each, found) for each, found in zip(units, sizes, strict=True))
        estimate = estimated_job(texts, text, today)
    except REFUSALS:
        if not any(counts):
            raise
        texts, counts = designed, (0,) * len(units)
        remarks.append(NO_LONGER)
        estimate = estimated_job(texts, text, today)
    return JobAtHand(
        units=units,
        texts=texts,
        measured=counts,
        figures=figures,
        estimate=estimate,
        remark="; ".join(remarks),
    )


def _not_as_accepted(units: Iterable[LoadedUnit]) -> Iterator[str]:
    for each in units:
        accepted, drawn = each.unit.approved, each.revision.number
        if accepted not in {None, drawn}:
            yield (
                f"unit {each.unit.code} was drawn at revision {drawn}, "
                f"and the customer had accepted revision {accepted}"
            )


def shown_paper_number(kind: PaperKind, number: int) -> str:
    """A paper's number as it is read: L-0003."""
    return f"{LETTERS[kind]}-{number:04d}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Issue:
    """Which issue of a paper is being written.

    Attributes:
        number: its number as it is read
        revision: the first is 1
        supersedes: the revision that it takes the place of; None for the first
    """

    number: str
    revision: int
    supersedes: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LoadedPaper:
    """A paper with its job."""

    paper: Paper
    job: Job

    @property
    def number(self) -> str:
        """The number as it is read."""
        return shown_paper_number(self.paper.kind, self.paper.number)

    @property
    def content(self) -> dict[str, Any]:
        """What it says."""
        held: dict[str, Any] = self.paper.content["paper"]
        return held

    @property
    def basis(self) -> dict[str, Any]:
        """What it was made from."""
        held: dict[str, Any] = self.paper.content["basis"]
        return held

    @property
    def remark(self) -> str:
        """What the maker must know of how it was made."""
        return str(self.paper.content.get("remark", ""))


def load_paper(db: Fenced, paper_id: str) -> LoadedPaper:
    """A paper of the shop.

    Raises:
        NotFound: the shop has no such paper
    """
    found = paper_with_job(db, paper_id)
    if found is None:
        raise NotFound("paper")
    return LoadedPaper(paper=found[0], job=found[1])


def issue_paper(
    db: Fenced,
    job: Job,
    kind: PaperKind,
    at_hand: JobAtHand,
    make: Callable[[Issue], dict[str, Any]],
    who: str,
    now: datetime,
) -> Paper:
    """Issues a paper: the first of its kind under the shop's next number, later ones as its revisions.

    Args:
        db: the session
        job: the job
        kind: which paper
        at_hand: the job, worked out
        make: writes the paper
        who: who issues it
        now: the moment
    """
    earlier = papers_of_kind(db, job.id, kind)
    number = earlier[0].number if earlier else next_number(db, kind.value)
    before = earlier[0].revision if earlier else None
    revision = 1 if before is None else before + 1
    issue = Issue(number=shown_paper_number(kind, number), revision=revision, supersedes=before)
    content = {"paper": make(issue), "basis": at_hand.basis, "remark": at_hand.remark}
    made = Paper(
        id=new_id(),
        job_id=job.id,
        kind=kind,
        number=number,
        revision=revision,
        content=content,
        basis_hash=at_hand.mark,
        issued_at=now,
        who=who,
    )
    db.add(made)
    db.flush()
    what = f"Issued {kind.value} {issue.number}"
    tail = f", revision {revision}; it supersedes revision {before}." if before else "."
    note_history(db, who, now, f"{what}{tail}", job_id=job.id)
    return made


def stale_reasons(
    held: LoadedPaper, at_hand: JobAtHand, make: Callable[[Issue], dict[str, Any]]
) -> tuple[str, ...]:
    """What has changed since a paper was issued; nothing where it would say the same today.

    A tool that is bought or sold changes few papers: where nothing else has changed, the paper is written
    anew and compared.

    Args:
        held: the paper
        at_hand: the job, worked out
        make: writes the paper
    """
    if held.paper.basis_hash == at_hand.mark:
        return ()
    units = tuple(_units_changed(held.basis["units"], at_hand.basis["units"]))
    figures = _figures_changed(held.basis["figures"], at_hand.figures)
    if not units and figures and set(figures) <= set(OF_THE_RACK) and _says_the_same(held, make):
        return ()
    listed = ", ".join(name.replace("_", " ") for name in figures)
    reasons = (*units, f"the shop's figures: {listed}") if figures else units
    return reasons or ("something that it was made from",)


def _says_the_same(held: LoadedPaper, make: Callable[[Issue], dict[str, Any]]) -> bool:
    paper = held.paper
    now = make(Issue(number=held.number, revision=paper.revision, supersedes=None))
    then = held.content
    return all(then.get(name) == now.get(name) for name in {*then, *now} - BESIDE)


def _units_changed(then: Sequence[Mapping[str, Any]], now: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    held = {each["id"]: each for each in now}
    for was in then:
        unit = held.pop(was["id"], None)
        if unit is None:
            yield f"unit {was['code']} has been taken out"
        elif unit["revision"] != was["revision"]:
            yield f"unit {was['code']} is at revision {unit['revision']}, here it is {was['revision']}"
        elif unit["hash"] != was["hash"]:
            yield f"sizes of unit {was['code']} have been measured at the bench since"
    yield from (f"unit {each['code']} has been added" for each in held.values())


def _figures_changed(then: Mapping[str, Any], now: Mapping[str, Any]) -> tuple[str, ...]:
    return tuple(name for name in sorted(OF_THE_SHOP) if then.get(name) != now.get(name))
