"""Money that came in for a job: written down once, and corrected only by an entry against it."""

from dataclasses import dataclass
from datetime import date, datetime

from sqlalchemy import select

from casewright.measure.money import show_money
from casewright.records.base import new_id
from casewright.records.jobs import Job, Payment
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused


@dataclass(frozen=True, slots=True, kw_only=True)
class PaymentFacts:
    """What is known of a payment.

    Attributes:
        amount_cents: how much; below zero for money that went back [cent]
        received_on: on which day
        method: how it was paid
        note: anything else
    """

    amount_cents: int
    received_on: date
    method: str = ""
    note: str = ""


def take_payment(db: Fenced, job: Job, facts: PaymentFacts, symbol: str, who: str, now: datetime) -> Payment:
    """Writes a payment down.

    Args:
        db: the session
        job: what it is for
        facts: the payment
        symbol: the sign of the currency, for the history
        who: who writes it down
        now: the moment

    Raises:
        Refused: it is of nothing
    """
    if not facts.amount_cents:
        raise Refused("A payment of nothing is none; write the amount that came in.", 422)
    made = _payment(job, facts, who, now)
    db.add(made)
    amount = show_money(abs(facts.amount_cents), symbol)
    how = f" ({facts.method})" if facts.method else ""
    did = "Took in" if facts.amount_cents > 0 else "Paid back"
    note_history(db, who, now, f"{did} {amount}{how}.", job_id=job.id)
    return made


def correct_payment(
    db: Fenced, job: Job, payment_id: str, why: str, symbol: str, who: str, now: datetime
) -> None:
    """Takes a payment back by an entry against it; both stay in the books. Done twice, it counts once.

    Args:
        db: the session
        job: what it was for
        payment_id: which payment
        why: what was wrong with it
        symbol: the sign of the currency, for the history
        who: who corrects it
        now: the moment

    Raises:
        NotFound: the job has no such payment
        Refused: it is a correction itself
    """
    held = db.scalars(
        select(Payment).where(Payment.id == payment_id, Payment.job_id == job.id).with_for_update()
    ).first()
    if held is None:
        raise NotFound("payment")
    if held.corrects_id:
        raise Refused("This entry is a correction already. Write the payment down anew instead.")
    if db.scalars(select(Payment.id).where(Payment.corrects_id == held.id)).first():
        return
    facts = PaymentFacts(
        amount_cents=-held.amount_cents, received_on=held.received_on, method=held.method, note=why
    )
    against = _payment(job, facts, who, now)
    against.corrects_id = held.id
    db.add(against)
    amount = show_money(held.amount_cents, symbol)
    said = f": {why.rstrip('.')}" if why else ""
    note_history(db, who, now, f"Corrected a payment of {amount}{said}.", job_id=job.id)


def _payment(job: Job, facts: PaymentFacts, who: str, now: datetime) -> Payment:
    return Payment(
        id=new_id(),
        job_id=job.id,
        amount_cents=facts.amount_cents,
        received_on=facts.received_on,
        method=facts.method,
        note=facts.note,
        at=now,
        who=who,
    )
