"""What a paper of a job would say now, and whether those that are issued hold, for pages that list them."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

from casewright.measure.lengths import LengthUnit
from casewright.papers.caution_sheet import caution_sheet_paper
from casewright.papers.cut_list import cut_list_paper
from casewright.papers.gauge_sheet import GaugeLine, gauge_lines
from casewright.papers.head import JobPaper, PaperHead
from casewright.papers.joint_cards import joint_cards_paper
from casewright.papers.order import order_paper
from casewright.papers.order_pdf import order_words
from casewright.papers.says import WHOLE, finished_hash, part_facts, says_of, short
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.costs.job_estimate import JobEstimate
from casewright.records.job_page import PaperRow, contents_of
from casewright.records.papers import PaperKind
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job, worked_unit
from casewright.shop.papers import Basis

KEPT = 64
Says = Mapping[str, str]
_of_before: dict[str, Says] = {}
"""What papers say that were issued before that was kept with them; they never change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderWords:
    """What an order says beside what is worked out."""

    supplier: str = ""
    needed_by: date | None = None
    delivery: str = ""
    surfacing: str = ""
    remarks: tuple[str, ...] = ()


def paper_of(
    kind: PaperKind, head: PaperHead, estimate: JobEstimate, words: OrderWords | None = None
) -> JobPaper:
    """A paper of a job as it is kept.

    Args:
        kind: which paper
        head: who, what and when
        estimate: the job, worked out
        words: what an order says beside
    """
    if kind is PaperKind.CUT_LIST:
        return cut_list_paper(head, ((each.unit, each.takeoff) for each in estimate.units))
    if kind is PaperKind.JOINT_CARDS:
        return joint_cards_paper(head, (each.unit for each in estimate.units))
    if kind is PaperKind.CAUTION_SHEET:
        return caution_sheet_paper(head, (each.unit for each in estimate.units))
    words = words or OrderWords()
    return order_paper(
        head,
        estimate.order,
        estimate.sheets,
        estimate.hardware,
        finishes=estimate.finishes,
        materials=estimate.materials,
        counts={each.unit.spec.code: each.unit.spec.count for each in estimate.units},
        supplier=words.supplier,
        needed_by=words.needed_by,
        delivery=words.delivery,
        surfacing=words.surfacing or order_words()["surfacing"],
        remarks=words.remarks,
    )


@lru_cache(maxsize=KEPT)
def says_now(kind: PaperKind, texts: tuple[str, ...], figures: str, today: date, unit: LengthUnit) -> Says:
    """What a paper would say that is issued now. Values in, values out, so that it is kept a while.

    Args:
        kind: which paper
        texts: each unit's choices with what was measured, as JSON text
        figures: the shop's figures, as JSON text
        today: the day from which the promise counts
        unit: the shop's unit

    Raises:
        CannotBuild, CannotGraduate, CannotBeLaidOut …: with a sentence that says what would work
    """
    if kind is PaperKind.JOINT_CARDS:
        return _cards_say(facts_now(texts, figures))
    paper = paper_of(kind, _head(today, unit), estimated_job(texts, figures, today))
    return says_of(kind, paper.model_dump(mode="json"))


@lru_cache(maxsize=KEPT)
def facts_now(texts: tuple[str, ...], figures: str) -> Mapping[str, Mapping[str, tuple[float, ...]]]:
    """The figures that joint cards would have for each part, were they printed now; as `says_now`."""
    units = (worked_unit(text, figures) for text in texts)
    return part_facts(joint_cards_paper(_head(date.min, LengthUnit.INCH), units, drawn=False))


def _cards_say(facts: Mapping[str, object]) -> Says:
    found = {code: short(each) for code, each in facts.items()}
    return found | {WHOLE: short(found)}


def _head(today: date, unit: LengthUnit) -> PaperHead:
    return PaperHead(
        shop="",
        number="",
        job_number="",
        job_name="",
        revision=1,
        issued_on=today,
        supersedes=None,
        unit=unit,
    )


def newest_of(rows: Iterable[PaperRow]) -> dict[PaperKind, PaperRow]:
    """The newest paper of each kind.

    Args:
        rows: the papers of one job
    """
    found: dict[PaperKind, PaperRow] = {}
    for row in sorted(rows, key=lambda each: -each.revision):
        found.setdefault(row.kind, row)
    return found


def said_of(db: Fenced, rows: Sequence[PaperRow]) -> dict[str, Says]:
    """What issued papers say, by their ids; a query only for some from before that was kept with them.

    Args:
        db: the session
        rows: the papers
    """
    unknown = [row.id for row in rows if row.says is None and row.id not in _of_before]
    for paper_id, kind, content in contents_of(db, unknown) if unknown else ():
        _of_before[paper_id] = says_of(kind, content["paper"])
    return {row.id: row.says if row.says is not None else _of_before[row.id] for row in rows}


def stale_papers(
    db: Fenced, rows: Sequence[PaperRow], basis: Callable[[], Basis], today: date, unit: LengthUnit
) -> set[str]:
    """The papers, of the newest of each kind, that say something else than one that is issued now.

    Args:
        db: the session
        rows: the papers of one job
        basis: what its papers would be made from now; asked only where there are papers
        today: the day
        unit: the shop's unit

    Returns:
        The ids of those that are out of date; all of them where the job cannot be worked out any more.
    """
    newest = newest_of(rows).values()
    if not newest:
        return set()
    try:
        at_hand = basis()
        changed = [row for row in newest if row.basis_hash != at_hand.mark]
        said = said_of(db, changed)
        texts, figures = at_hand.texts, at_hand.figures_text
        return {
            row.id
            for row in changed
            if said[row.id][WHOLE] != says_now(row.kind, texts, figures, today, unit)[WHOLE]
        }
    except REFUSALS:
        return {row.id for row in newest}


def wrong_for_drawer(
    row: PaperRow, said: Says, built: Construction, text: str, figures: str, code: str
) -> bool:
    """Whether a paper is wrong for one drawer, whatever holds of the others.

    Args:
        row: the paper, one that the bench reads
        said: what it says
        built: the drawer's unit, worked out with what was measured
        text: the unit's choices with what was measured, as JSON text
        figures: the shop's figures, as JSON text
        code: the drawer's code with that of its unit
    """
    mine = [part for part in built.parts if part.code.startswith(f"{code}-")]
    if row.kind is PaperKind.JOINT_CARDS:
        cards = says_now(row.kind, (text,), figures, date.min, LengthUnit.INCH)
        return any(said.get(part.code) != cards.get(part.code) for part in mine)
    return any(said.get(part.code) != finished_hash(part.thickness, part.width, part.length) for part in mine)


@lru_cache(maxsize=KEPT)
def gauges_now(text: str, figures: str, unit: LengthUnit) -> tuple[GaugeLine, ...]:
    """Every gauge of a unit that is set; as `says_now`.

    Args:
        text: the unit's choices with what was measured, as JSON text
        figures: the shop's figures, as JSON text
        unit: in which their words are read
    """
    return tuple(gauge_lines(worked_unit(text, figures), unit))
