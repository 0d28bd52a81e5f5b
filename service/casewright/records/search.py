"""One box over jobs, customers, quotes, papers, units, drawers and notes; no query looks over the fence."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from sqlalchemy import ColumnElement, Select, and_, false, func, or_, select

from casewright.records.bench import Carcase, Drawer
from casewright.records.customers import contains
from casewright.records.jobs import Customer, Job, JobState, Unit
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.sessions import Fenced

MOST = 20
"""How many of each kind are shown."""
SHORTEST_SLIP = 4
LONGEST_SLIP = 16
"""Words of this many letters are looked for with one letter wrong."""
MOST_WORDS = 6
JOB = re.compile(r"(?:job[ -]?|#)?0*(\d{1,7})", re.I)
QUOTE = re.compile(r"q(?:uote)?[ -]?0*(\d{1,7})", re.I)
PAPERS = {
    PaperKind.LUMBER_ORDER: re.compile(r"(?:l|(?:lumber )?order)[ -]?0*(\d{1,7})", re.I),
    PaperKind.CUT_LIST: re.compile(r"(?:c|cut list)[ -]?0*(\d{1,7})", re.I),
    PaperKind.CAUTION_SHEET: re.compile(r"(?:s|(?:caution )?sheet)[ -]?0*(\d{1,7})", re.I),
    PaperKind.JOINT_CARDS: re.compile(r"(?:j|(?:joint )?cards)[ -]?0*(\d{1,7})", re.I),
}
"""How the number of a paper is written: L-0003, l3, cut list 7."""
DRAWER = re.compile(r"(?:0*(\d{1,7})-)?(?:([a-z]{1,2})-)?(r\d{1,2}(?:-\d{1,2})?)", re.I)
UNIT = re.compile(r"(?:job[ -]?|#)?0*(\d{1,7})-([a-z]{1,2})", re.I)
PHONE = re.compile(r"[\d\s()+./-]{5,}")


class JobFound(NamedTuple):
    """A job that was found."""

    id: str
    number: int
    name: str
    state: JobState
    customer: str
    asked: str
    note: str
    demo: bool


class CustomerFound(NamedTuple):
    """A customer who was found."""

    id: str
    name: str
    email: str
    phone: str
    note: str
    demo: bool


class QuoteFound(NamedTuple):
    """A quote that was found."""

    id: str
    number: int
    revision: int
    state: QuoteState
    job: int
    name: str
    demo: bool


class PaperFound(NamedTuple):
    """A paper that was found."""

    id: str
    kind: PaperKind
    number: int
    revision: int
    job: int
    name: str
    demo: bool


class UnitFound(NamedTuple):
    """A unit that was found."""

    id: str
    code: str
    name: str
    job: int
    job_name: str
    demo: bool


class DrawerFound(NamedTuple):
    """A drawer that was found."""

    id: str
    code: str
    unit: str
    piece: int
    pieces: int
    stage: str
    job: int
    job_name: str
    demo: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What a search found, kind by kind; one more of a kind than is shown where there are more.

    Attributes:
        jobs: by number, name or customer
        customers: by name, telephone or e-mail
        quotes: by number
        papers: by kind and number
        units: by name, or by job and code
        drawers: by their code
        noted_jobs: jobs in whose notes it stands
        noted_customers: customers in whose notes it stands
        by_a_slip: whether nothing was found as it was written, and these differ from it by a letter
    """

    jobs: Sequence[JobFound] = ()
    customers: Sequence[CustomerFound] = ()
    quotes: Sequence[QuoteFound] = ()
    papers: Sequence[PaperFound] = ()
    units: Sequence[UnitFound] = ()
    drawers: Sequence[DrawerFound] = ()
    noted_jobs: Sequence[JobFound] = ()
    noted_customers: Sequence[CustomerFound] = ()
    by_a_slip: bool = False

    @property
    def is_empty(self) -> bool:
        """Whether nothing was found."""
        kinds = (self.jobs, self.customers, self.quotes, self.papers, self.units, self.drawers)
        return not any((*kinds, self.noted_jobs, self.noted_customers))


Matcher = Callable[[ColumnElement[str], str], ColumnElement[bool]]


def search(db: Fenced, text: str) -> Found:
    """Whatever bears the words that were typed; where nothing does, what differs from them by one letter.

    At most ten queries, however much there is.
    """
    words = text.split()[:MOST_WORDS]
    if not words:
        return Found()
    found = Found(
        jobs=_jobs(db, text, words),
        customers=_customers(db, text, words),
        quotes=_quotes(db, text),
        papers=_papers(db, text),
        units=_units(db, text, words),
        drawers=_drawers(db, text),
        noted_jobs=_noted_jobs(db, words),
        noted_customers=_noted_customers(db, words),
    )
    if not found.is_empty or not any(SHORTEST_SLIP <= len(word) <= LONGEST_SLIP for word in words):
        return found
    return Found(
        jobs=_jobs(db, "", words, _nearly),
        customers=_customers(db, "", words, _nearly),
        units=_units(db, "", words, _nearly),
        by_a_slip=True,
    )


def _within(column: ColumnElement[str], word: str) -> ColumnElement[bool]:
    return column.ilike(contains(word), escape="\\")


def _nearly(column: ColumnElement[str], word: str) -> ColumnElement[bool]:
    """That a column holds a word with one letter wrong, missing, too many, or two of them exchanged."""
    if not SHORTEST_SLIP <= len(word) <= LONGEST_SLIP:
        return _within(column, word)
    return or_(*(column.ilike(pattern, escape="\\") for pattern in dict.fromkeys(slips(word))))


def slips(word: str) -> Iterator[str]:
    """Patterns for a word with one letter wrong, missing, too many, or two neighbours exchanged."""
    signs = [contains(sign)[1:-1] for sign in word]
    for place in range(len(signs)):
        before, after = "".join(signs[:place]), "".join(signs[place + 1 :])
        yield f"%{before}_{after}%"
        yield f"%{before}{after}%"
        yield f"%{before}_{signs[place]}{after}%"
        if place + 1 < len(signs):
            yield f"%{before}{signs[place + 1]}{signs[place]}{''.join(signs[place + 2 :])}%"


def _each(words: Sequence[str], matches: Matcher, *columns: Any) -> ColumnElement[bool]:
    """That every word stands in one of the columns."""
    return and_(*(or_(*(matches(column, word) for column in columns)) for word in words))


def _jobs(db: Fenced, text: str, words: Sequence[str], matches: Matcher = _within) -> list[JobFound]:
    numbered = JOB.fullmatch(text.strip())
    is_numbered = Job.number == int(numbered[1]) if numbered else false()
    asked = _job_select().where(or_(is_numbered, _each(words, matches, Job.name, Customer.name)))
    return [JobFound._make(row) for row in db.execute(asked)]


def _noted_jobs(db: Fenced, words: Sequence[str]) -> list[JobFound]:
    asked = _job_select().where(_each(words, _within, Job.note, Job.asked))
    return [JobFound._make(row) for row in db.execute(asked)]


def _job_select() -> Select[*tuple[Any, ...]]:
    return (
        select(Job.id, Job.number, Job.name, Job.state, Customer.name, Job.asked, Job.note, Job.demo)
        .join(Customer, and_(Customer.shop_id == Job.shop_id, Customer.id == Job.customer_id))
        .order_by(Job.number.desc())
        .limit(MOST + 1)
    )


def _customers(
    db: Fenced, text: str, words: Sequence[str], matches: Matcher = _within
) -> list[CustomerFound]:
    digits = re.sub(r"\D", "", text) if PHONE.fullmatch(text) else ""
    by_phone = _bare(Customer.phone).like(f"%{digits}%") if len(digits) >= 5 else false()
    by_words = _each(words, matches, Customer.name, Customer.email, Customer.phone)
    asked = _customer_select().where(or_(by_phone, by_words))
    return [CustomerFound._make(row) for row in db.execute(asked)]


def _noted_customers(db: Fenced, words: Sequence[str]) -> list[CustomerFound]:
    asked = _customer_select().where(_each(words, _within, Customer.note, Customer.address))
    return [CustomerFound._make(row) for row in db.execute(asked)]


def _customer_select() -> Select[*tuple[Any, ...]]:
    note = Customer.address + "\n" + Customer.note
    return (
        select(Customer.id, Customer.name, Customer.email, Customer.phone, note, Customer.demo)
        .order_by(func.lower(Customer.name), Customer.id)
        .limit(MOST + 1)
    )


def _bare(column: Any) -> Any:
    """A telephone number without what people put between its digits."""
    for sign in (" ", "-", "(", ")", ".", "/", "+"):
        column = func.replace(column, sign, "")
    return column


def _quotes(db: Fenced, text: str) -> list[QuoteFound]:
    plain = text.strip()
    numbered = QUOTE.fullmatch(plain)
    if not numbered:
        return []
    asked = (
        select(Quote.id, Quote.number, Quote.revision, Quote.state, Job.number, Job.name, Job.demo)
        .join(Job, and_(Job.shop_id == Quote.shop_id, Job.id == Quote.job_id))
        .where(Quote.number == int(numbered[1]))
        .order_by(Quote.revision.desc())
        .limit(MOST + 1)
    )
    return [QuoteFound._make(row) for row in db.execute(asked)]


def _papers(db: Fenced, text: str) -> list[PaperFound]:
    plain = text.strip()
    kind = next((kind for kind, written in PAPERS.items() if written.fullmatch(plain)), None)
    numbered = PAPERS[kind].fullmatch(plain) if kind else None
    if not numbered:
        return []
    asked = (
        select(Paper.id, Paper.kind, Paper.number, Paper.revision, Job.number, Job.name, Job.demo)
        .join(Job, and_(Job.shop_id == Paper.shop_id, Job.id == Paper.job_id))
        .where(Paper.kind == kind, Paper.number == int(numbered[1]))
        .order_by(Paper.revision.desc())
        .limit(MOST + 1)
    )
    return [PaperFound._make(row) for row in db.execute(asked)]


def _units(db: Fenced, text: str, words: Sequence[str], matches: Matcher = _within) -> list[UnitFound]:
    coded = UNIT.fullmatch(text.strip())
    by_code = and_(Job.number == int(coded[1]), Unit.code == coded[2].upper()) if coded else false()
    asked = (
        select(Unit.id, Unit.code, Unit.name, Job.number, Job.name, Job.demo)
        .join(Job, and_(Job.shop_id == Unit.shop_id, Job.id == Unit.job_id))
        .where(Unit.ended_at.is_(None), or_(by_code, _each(words, matches, Unit.name)))
        .order_by(Job.number.desc(), Unit.code)
        .limit(MOST + 1)
    )
    return [UnitFound._make(row) for row in db.execute(asked)]


def _drawers(db: Fenced, text: str) -> list[DrawerFound]:
    coded = DRAWER.fullmatch(text.strip())
    if not coded:
        return []
    job, unit, code = coded[1], coded[2], coded[3].upper()
    asked = (
        select(
            *(Drawer.id, Drawer.code, Unit.code, Carcase.piece, Unit.count, Drawer.stage),
            *(Job.number, Job.name, Job.demo),
        )
        .join(Carcase, and_(Carcase.shop_id == Drawer.shop_id, Carcase.id == Drawer.carcase_id))
        .join(Unit, and_(Unit.shop_id == Drawer.shop_id, Unit.id == Drawer.unit_id))
        .join(Job, and_(Job.shop_id == Drawer.shop_id, Job.id == Drawer.job_id))
        .where(
            Drawer.gone.is_(False),
            Drawer.code == code if "-" in code else or_(Drawer.code == code, Drawer.code.like(f"{code}-%")),
            Job.number == int(job) if job else Job.state.not_in([JobState.CLOSED, JobState.LOST]),
            *([Unit.code == unit.upper()] if unit else []),
        )
        .order_by(Job.number.desc(), Unit.code, Carcase.piece, Drawer.position)
        .limit(MOST + 1)
    )
    return [DrawerFound._make(row) for row in db.execute(asked)]
