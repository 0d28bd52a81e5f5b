"""Payments of a job: writing one down, and correcting one by an entry against it."""

from fastapi import APIRouter
from starlette.responses import Response

from casewright.shop.jobs import load_job
from casewright.shop.keeping import once
from casewright.shop.payments import PaymentFacts, correct_payment, take_payment
from casewright.web.frame.pages import see, show
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.jobs.page import job_page

router = APIRouter()


@router.post("/jobs/{job_id}/payments")
def save_payment(visit: Office, job_id: str) -> Response:
    """Writes a payment down."""
    job = load_job(visit.db, job_id)
    read = Reader(visit.typed)
    facts = read_payment(visit, read)
    if read.faults:
        return show(visit, job_page(visit, job_id, payment=read.form), 422)

    def make() -> str:
        take_payment(visit.db, job, facts, visit.shop.symbol, visit.who, visit.now)
        return f"/jobs/{job.id}#money"

    return see(once(visit.db, visit.typed.once, visit.now, make), "added")


@router.post("/jobs/{job_id}/payments/{payment_id}/correction")
def save_correction(visit: Office, job_id: str, payment_id: str) -> Response:
    """Takes a payment back by an entry against it; both stay."""
    job = load_job(visit.db, job_id)
    why = " ".join(visit.typed.get("why").split())[:300]
    correct_payment(visit.db, job, payment_id, why, visit.shop.symbol, visit.who, visit.now)
    return see(f"/jobs/{job.id}#money", "undone")


def read_payment(visit: Visit, read: Reader) -> PaymentFacts:
    """The payment that a form describes."""
    amount = read.money("amount", negative=True)
    received_on = read.day("received_on", needed="Write the day on which it came in.")
    if not amount:
        read.fault("amount", "A payment of nothing is none. Write what came in, such as 1,250.00.")
    if received_on and received_on > visit.today:
        read.fault("received_on", "This day is still ahead. Write the day on which the money came in.")
    return PaymentFacts(
        amount_cents=amount,
        received_on=received_on or visit.today,
        method=read.line("method", most=60),
        note=read.line("note", most=300),
    )
