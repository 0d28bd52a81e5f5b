"""Papers of a job: issued from what holds now, with what was measured, frozen, looked at for staleness."""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from hashlib import sha256
from typing import Any

from casewright.measure.saying import Words
from casewright.pieces.built.measuring import Sizes, measurable, measured_words
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.papers import Paper, PaperKind
from casewright.records.people import Shop
from casewright.records.quotes import paper_with_job, papers_of_kind
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job, worked_unit
from casewright.shop.figures import figures_text
from casewright.shop.keeping import next_number, note_history
from casewright.shop.measured import measured_sizes, text_with
from casewright.shop.refusals import NotFound
from casewright.shop.units import LoadedUnit, units_of

LETTERS = {
    PaperKind.LUMBER_ORDER: "L",
    PaperKind.CUT_LIST: "C",
    PaperKind.JOINT_CARDS: "J",
    PaperKind.CAUTION_SHEET: "S",
}
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
    "yields",
    *OF_THE_RACK,
)
"""The shop's figures that decide what stands on a paper: its boards, its tools, its habits; no money."""
NO_LONGER = "sizes measured at the bench no longer go with the design and are left out"


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """What the papers of a job are made from.

    Attributes:
        units: its units
        texts: each unit's choices with what was measured, as JSON text
        sizes: what was measured of each unit, by drawer and name [in]
        figures: the shop's figures that decide what a paper says
        figures_text: all of the shop's figures, as JSON text
    """

    units: tuple[LoadedUnit, ...]
    texts: tuple[str, ...]
    sizes: tuple[Sizes, ...]
    figures: Mapping[str, Any]
    figures_text: str

    @property
    def basis(self) -> dict[str, Any]:
        """What papers are made from, so far as one asks later what has changed."""
        return {
            "units": [
                {
                    "id": loaded.unit.id,
                    "code": loaded.unit.code,
                    "revision": loaded.revision.number,
                    "measured": sum(map(len, sizes.values())),
                    "sizes": {drawer: dict(found) for drawer, found in sizes.items()},
                    "hash": _hash(text),
                }
                for loaded, text, sizes in zip(self.units, self.texts, self.sizes, strict=True)
            ],
            "figures": dict(self.figures),
        }

    @property
    def mark(self) -> str:
        """A hash of everything that a paper is made from."""
        return _hash([*self.texts, self.figures])


@dataclass(frozen=True, slots=True, kw_only=True)
class JobAtHand(Basis):
    """A job worked out for its papers.

    Attributes:
        estimate: the job worked out
        remark: what the maker must know; empty for nothing
    """

    estimate: JobEstimate
    remark: str = ""


def _hash(value: Any) -> str:
    return sha256(json.dumps(value, sort_keys=True).encode()).hexdigest()


def job_at_hand(db: Fenced, shop: Shop, job: Job, today: date) -> JobAtHand:
    """A job worked out with what holds now, and with what was measured on units that are made once.

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: with a sentence that says what would work
    """
    units = tuple(units_of(db, job))
    text = figures_text(db, shop, job)
    sizes = _measured(db, units)
    remarks = list(_not_as_accepted(units))
    try:
        basis = _basis(units, sizes, text)
        estimate = estimated_job(basis.texts, text, today)
    except REFUSALS:
        if not any(sizes):
            raise
        basis = _basis(units, tuple({} for _ in units), text)
        remarks.append(NO_LONGER)
        estimate = estimated_job(basis.texts, text, today)
    return JobAtHand(
        units=units,
        texts=basis.texts,
        sizes=basis.sizes,
        figures=basis.figures,
        figures_text=text,
        estimate=estimate,
        remark="; ".join(remarks),
    )


def basis_at_hand(db: Fenced, units: Sequence[LoadedUnit], figures: str) -> Basis:
    """What the papers of a job would be made from now, without an estimate; one query.

    Args:
        db: the session
        units: the job's units
        figures: the shop's figures for the job, as JSON text

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: the job cannot be worked out as it was designed
    """
    held = tuple(units)
    sizes = _measured(db, held)
    if any(sizes):
        try:
            basis = _basis(held, sizes, figures)
            for text in basis.texts:
                worked_unit(text, figures)
        except REFUSALS:
            pass
        else:
            return basis
    return _basis(held, tuple({} for _ in held), figures)


def _measured(db: Fenced, units: Sequence[LoadedUnit]) -> tuple[Sizes, ...]:
    measured = measured_sizes(db, units)
    return tuple(measured.get(each.unit.id, {}) for each in units)


def _basis(units: tuple[LoadedUnit, ...], sizes: tuple[Sizes, ...], text: str) -> Basis:
    held: dict[str, Any] = json.loads(text)
    return Basis(
        units=units,
        texts=tuple(text_with(each, found) for each, found in zip(units, sizes, strict=True)),
        sizes=sizes,
        figures={name: held[name] for name in OF_THE_SHOP if name in held},
        figures_text=text,
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
class Written:
    """A paper as it is written.

    Attributes:
        content: the paper, as it is kept
        says: hashes of what it says of each part, and in all
    """

    content: dict[str, Any]
    says: Mapping[str, str]


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
    make: Callable[[Issue], Written],
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
    written = make(issue)
    content = {"paper": written.content, "basis": at_hand.basis, "remark": at_hand.remark}
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
        says=dict(written.says),
    )
    db.add(made)
    db.flush()
    what = f"Issued {kind.value} {issue.number}"
    tail = f", revision {revision}; it supersedes revision {before}." if before else "."
    note_history(db, who, now, f"{what}{tail}", job_id=job.id)
    return made


def stale_reasons(held: LoadedPaper, at_hand: Basis, says_the_same: Callable[[], bool]) -> tuple[str, ...]:
    """What has changed since a paper was issued; nothing where it would say the same today.

    Args:
        held: the paper
        at_hand: what it would be made from now
        says_the_same: whether one that is written now would say the same; asked only where something changed
    """
    if held.paper.basis_hash == at_hand.mark or says_the_same():
        return ()
    units = tuple(_units_changed(held.basis["units"], at_hand.basis["units"]))
    figures = _figures_changed(held.basis["figures"], at_hand.figures)
    listed = ", ".join(name.replace("_", " ") for name in figures)
    reasons = (*units, f"the shop's figures: {listed}") if figures else units
    return reasons or ("something that it was made from",)


def measured_since(held: LoadedPaper, at_hand: Basis) -> dict[str, tuple[Words, ...]]:
    """What was measured of each drawer since a paper was issued.

    Args:
        held: the paper
        at_hand: what it would be made from now

    Returns:
        By the drawer's code, such as `A-R1-1`, in words: side A-R1-1-SL measured 23/64.
    """
    then = {each["id"]: each.get("sizes", {}) for each in held.basis["units"]}
    found: dict[str, tuple[Words, ...]] = {}
    for loaded, text, sizes in zip(at_hand.units, at_hand.texts, at_hand.sizes, strict=True):
        before = then.get(loaded.unit.id, {})
        built = worked_unit(text, at_hand.figures_text)
        for drawer, now in sizes.items():
            code = f"{loaded.unit.code}-{drawer}"
            # A size that was measured for the first time, and as drawn, changed nothing.
            drawn = {each.size: each.designed for each in measurable(built, drawer)}
            words = measured_words(code, now, {**drawn, **before.get(drawer, {})})
            if words:
                found[code] = words
    return found


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
