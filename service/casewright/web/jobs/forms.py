"""Forms about a job: taking it on, changing what is known of it, moving it along."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.records.customers import customers_to_choose
from casewright.records.jobs import Job, JobState
from casewright.shop.customers import CustomerFacts, add_customer, load_customer
from casewright.shop.jobs import JobFacts, change_job, load_job, move_job, take_on_job
from casewright.shop.keeping import once
from casewright.shop.left_open import ENDS, left_open
from casewright.shop.refusals import Stale
from casewright.web.frame.pages import Page, form_of, see, show
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Office, Visit

router = APIRouter()
NAMES = {
    "name": "What is it?",
    "customer_id": "Customer",
    "new.name": "New customer, name",
    "new.email": "New customer, e-mail",
    "due_on": "Wanted by",
}
"""What the fields are called in the list of problems."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NewJobPage(Page):
    """The form for a new job, with its customer."""

    template: ClassVar[str] = "jobs/new.html"
    form: Form
    customers: Sequence[tuple[str, str]]
    names: dict[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeJobPage(Page):
    """The form for what is known of a job."""

    template: ClassVar[str] = "jobs/change.html"
    form: Form
    job: Job
    customers: Sequence[tuple[str, str]]
    names: dict[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class LostJobPage(Page):
    """Why a job was lost."""

    template: ClassVar[str] = "jobs/lost.html"
    form: Form
    job: Job


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOpenPage(Page):
    """What is open on a job that is about to be delivered or closed."""

    template: ClassVar[str] = "jobs/left_open.html"
    job: Job
    state: JobState
    sentences: Sequence[str]


@router.get("/jobs/new")
def new_job(visit: Office, customer: str = "") -> Response:
    """The form for a new job; a customer may be chosen already."""
    return show(visit, _new_page(visit, form_of(customer_id=customer[:13])))


@router.post("/jobs")
def save_new_job(visit: Office) -> Response:
    """Takes a job on, and its customer where they are new."""
    read = Reader(visit.typed)
    facts, newcomer = read_job(read), _read_newcomer(read)
    if read.faults:
        return show(visit, _new_page(visit, read.form), 422)

    def make() -> str:
        known = facts.customer_id or _take_down(visit, newcomer)
        job = take_on_job(visit.db, _for_customer(facts, known), visit.who, visit.now)
        return f"/jobs/{job.id}"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.get("/jobs/{job_id}/change")
def show_job_form(visit: Office, job_id: str) -> Response:
    """The form for what is known of a job."""
    job = load_job(visit.db, job_id)
    values = {
        "name": job.name,
        "customer_id": job.customer_id,
        "asked": job.asked,
        "due_on": job.due_on.isoformat() if job.due_on else "",
        "note": job.note,
        "version": str(job.version),
    }
    return show(visit, _change_page(visit, job, form_of(**values)))


@router.post("/jobs/{job_id}/change")
def save_job(visit: Office, job_id: str) -> Response:
    """Saves what was changed; of two who save at once the second sees both."""
    job = load_job(visit.db, job_id)
    read = Reader(visit.typed)
    facts, version = read_job(read), read.whole("version", least=1, most=10**8)
    if not facts.customer_id:
        read.fault("customer_id", "Choose a customer from the list.")
    if read.faults:
        return show(visit, _change_page(visit, job, read.form), 422)
    try:
        change_job(visit.db, job, facts, version, visit.who, visit.now)
    except Stale as stale:
        return show(visit, _change_page(visit, job, _with_theirs(visit, job, read, stale)), 409)
    return see(f"/jobs/{job.id}", "saved")


@router.post("/jobs/{job_id}/state")
def save_state(visit: Office, job_id: str) -> Response:
    """Moves a job along; a lost one says why."""
    job = load_job(visit.db, job_id)
    read = Reader(visit.typed)
    state = JobState(read.choice("state", [each.value for each in JobState]))
    needed = "Write why, in a few words: the next one may be won by it." if state is JobState.LOST else ""
    why = read.line("why", most=300, needed=needed)
    if read.faults:
        return show(visit, LostJobPage(title=_lost_title(job), form=read.form, job=job), 422)
    if (job.state, state) in ENDS and (said := left_open(visit.db, job).sentences(visit.shop.symbol)):
        if visit.typed.get("sure") != "1":
            return see(f"/jobs/{job.id}/left-open")
        why = "; ".join(said)
    move_job(visit.db, job, state, visit.who, visit.now, why=why)
    return see(f"/jobs/{job.id}", "saved")


@router.get("/jobs/{job_id}/left-open")
def show_left_open(visit: Office, job_id: str) -> Response:
    """Names what is open before a job is delivered or closed; a job at another state has its own page."""
    job = load_job(visit.db, job_id)
    state = next((to for was, to in ENDS if was is job.state), None)
    if state is None:
        return see(f"/jobs/{job.id}")
    said = left_open(visit.db, job).sentences(visit.shop.symbol)
    verb = "Close" if state is JobState.CLOSED else "Deliver"
    title = f"{verb} job {job.number}"
    return show(visit, LeftOpenPage(title=title, job=job, state=state, sentences=said))


@router.get("/jobs/{job_id}/lost")
def show_lost_form(visit: Office, job_id: str) -> Response:
    """Asks why a job was lost."""
    job = load_job(visit.db, job_id)
    return show(visit, LostJobPage(title=_lost_title(job), form=form_of(), job=job))


def read_job(read: Reader) -> JobFacts:
    """The job that a form describes; its customer may be missing."""
    return JobFacts(
        name=read.line("name", needed="Write what it is, such as Walnut dresser for the hall."),
        customer_id=read.line("customer_id", most=13),
        asked=read.text("asked", most=5000),
        due_on=read.day("due_on"),
        note=read.text("note", most=5000),
    )


def _read_newcomer(read: Reader) -> CustomerFacts:
    """A new customer in the form for a new job. One is needed where none is chosen, and none where one is."""
    facts = CustomerFacts(
        name=read.line("new.name"),
        email=read.email("new.email"),
        phone=read.line("new.phone", most=60),
        address=read.text("new.address", most=1000),
    )
    chosen = bool(read.typed.get("customer_id"))
    if chosen and any((facts.name, facts.email, facts.phone, facts.address)):
        read.fault(
            "customer_id",
            "A customer is chosen, and a new one is written below. Keep one: choose “a new customer”, "
            "or empty the fields below.",
        )
    if not chosen and not facts.name:
        read.fault("new.name", "Write the new customer's name, or choose a customer you know.")
    return facts


def _take_down(visit: Visit, newcomer: CustomerFacts) -> str:
    made = add_customer(visit.db, newcomer, visit.who, visit.now)
    visit.db.flush()
    return made.id


def _for_customer(facts: JobFacts, customer_id: str) -> JobFacts:
    return JobFacts(
        name=facts.name,
        customer_id=customer_id,
        asked=facts.asked,
        due_on=facts.due_on,
        note=facts.note,
    )


def _new_page(visit: Visit, form: Form) -> NewJobPage:
    customers = _choices(visit, form.values.get("customer_id", ""))
    return NewJobPage(title="Take on a job", form=form, customers=customers, names=NAMES)


def _change_page(visit: Visit, job: Job, form: Form) -> ChangeJobPage:
    customers = _choices(visit, form.values.get("customer_id", ""))
    title = f"Change job {job.number}"
    return ChangeJobPage(title=title, form=form, job=job, customers=customers, names=NAMES)


def _choices(visit: Visit, chosen: str) -> Sequence[tuple[str, str]]:
    """The customers to choose from, the chosen one among them however old."""
    known = customers_to_choose(visit.db)
    if not chosen or any(each == chosen for each, _ in known):
        return known
    return [(chosen, load_customer(visit.db, chosen).name), *known]


def _with_theirs(visit: Visit, job: Job, read: Reader, stale: Stale) -> Form:
    """What was typed, with what somebody else saved meanwhile beside it."""
    theirs = dict(stale.theirs)
    if "customer_id" in theirs:
        theirs["customer_id"] = load_customer(visit.db, theirs["customer_id"]).name
    return Form(values={**read.form.values, "version": str(job.version)}, theirs=theirs, is_stale=True)


def _lost_title(job: Job) -> str:
    return f"Job {job.number} is lost"
