"""Jobs for tests of pages: as many as are needed, each in a state, without going through its forms."""

from datetime import timedelta
from typing import Any

from casewright.records.base import new_id
from casewright.records.jobs import Customer, Job, JobState
from casewright.records.papers import Quote, QuoteState
from casewright.records.people import Shop
from casewright.records.sessions import Fenced, writing
from casewright.shop.figures import figures
from casewright.shop.units import add_unit
from people import ShopInTest
from units import chest, unit


def take_on(
    db: Fenced, shop: ShopInTest, number: int, state: JobState = JobState.ENQUIRY, **facts: Any
) -> Job:
    """A job with a customer of its own."""
    now = shop.clock.now
    customer = Customer(id=new_id(), name=facts.pop("customer", f"Customer {number}"), created_at=now)
    db.add(customer)
    db.flush()
    given: dict[str, Any] = {"name": f"Chest {number}", "own": {}} | facts
    job = Job(
        id=new_id(),
        number=number,
        customer_id=customer.id,
        state=state,
        created_at=now,
        moved_at=now,
        **given,
    )
    db.add(job)
    db.flush()
    return job


def with_unit(db: Fenced, shop: ShopInTest, job: Job, **changes: Any) -> str:
    """Gives a job a small chest of three drawers; its id."""
    held = db.get_one(Shop, shop.shop_id)
    made = add_unit(db, job, unit(chest(changes)), figures(db, held, job), "Ada Marsh", shop.clock.now)
    db.flush()
    return made.id


def offer_of(net: int = 1_000_000, tax: int = 60_000) -> dict[str, Any]:
    """As much of an offer as the pages of a job read: a total in four stages."""
    total = net + tax
    shares = {"signing": 10, "before material is bought": 40, "three quarters complete": 25, "completion": 25}
    stages = [
        {"trigger": trigger, "share": share / 100, "amount_cents": total * share // 100}
        for trigger, share in shares.items()
    ]
    return {"net_cents": net, "tax_cents": tax, "total_cents": total, "stages": stages}


def with_quote(
    db: Fenced, shop: ShopInTest, job: Job, state: QuoteState, number: int = 0, **facts: Any
) -> str:
    """Gives a job a quote that stands in a state; its id."""
    now = shop.clock.now
    sent = state is not QuoteState.DRAFT
    offer = offer_of() if sent else None
    given: dict[str, Any] = {
        "id": new_id(),
        "job_id": job.id,
        "number": number or job.number,
        "revision": 1,
        "state": state,
        "offer": offer,
        "total_cents": offer["total_cents"] if offer else None,
        "issued_at": now if sent else None,
        "valid_until": now.date() + timedelta(days=30) if sent else None,
        "answered_at": now if state in {QuoteState.ACCEPTED, QuoteState.DECLINED} else None,
        "created_at": now,
    } | facts
    made = Quote(**given)
    db.add(made)
    db.flush()
    return made.id


def many_jobs(shop: ShopInTest, count: int, state: JobState = JobState.ENQUIRY, first: int = 1) -> None:
    """So many jobs of one state."""
    with writing(shop.engine, shop.shop_id) as db:
        for number in range(first, first + count):
            take_on(db, shop, number, state)
