"""The demo: an invented shop's work, made by the same verbs as one's own, and taken out without a trace."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from importlib.resources import files
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import func, select, update

from casewright.pieces.asked.reading import parse_json
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, TimeEntry
from casewright.records.jobs import Customer, History, Job, Payment, UnitRevision
from casewright.records.papers import Paper, Quote
from casewright.records.people import Person, Shop
from casewright.records.sessions import Fenced
from casewright.shop.customers import CustomerFacts, facts_of
from casewright.shop.demo.acts import play
from casewright.shop.demo.buying import supplier_of_demo
from casewright.shop.demo.removal import on_the_demo, remove_demo_rows
from casewright.shop.demo.scene import Act, PaperWriter, Scene
from casewright.shop.jobs import JobFacts, take_on_job
from casewright.shop.keeping import note_history
from casewright.shop.refusals import Refused

CAME_IN = "Brought the demo in."
OWN_THINGS = (
    (UnitRevision, UnitRevision.at, "design of a unit", "designs of units"),
    (Quote, Quote.created_at, "quote", "quotes"),
    (Paper, Paper.issued_at, "paper", "papers"),
    (Payment, Payment.at, "payment", "payments"),
    (TimeEntry, TimeEntry.at, "entry of time", "entries of time"),
    (BenchEvent, BenchEvent.at, "tap at the bench", "taps at the bench"),
)
"""What a person may have put into the demo's jobs, with the moment of each and what it is called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DemoStanding:
    """What there is of the demo, and what is the shop's own in it.

    Attributes:
        jobs: how many jobs are the demo's
        customers: how many customers are
        own: what was put into its jobs since it came, as words: it goes with them
        staying: customers of the demo for whom the shop has a job of its own: they stay
    """

    jobs: int
    customers: int
    own: tuple[str, ...]
    staying: tuple[str, ...]


@cache
def _data(name: str) -> dict[str, Any]:
    held: dict[str, Any] = parse_json((files("casewright.shop") / "data" / name).read_text(encoding="utf-8"))
    return held


def bring_demo_in(
    db: Fenced, shop: Shop, person: Person, *, secret: bytes, paper: PaperWriter, now: datetime
) -> None:
    """Plays the demo: customers and jobs, act by act in the order of their time, none of them in the future.

    Args:
        db: a writing session inside the shop
        shop: the shop
        person: in whose account everything is done; the names that it stands under are invented
        secret: the key under which links to quotes are made
        paper: how a paper is written
        now: the moment; the demo's days count from its day

    Raises:
        Refused: it is in already
    """
    if shop.demo:
        raise Refused("The demo is in the shop already.")
    today = now.astimezone(ZoneInfo(shop.time_zone)).date()
    people = _data("demo_jobs.json")["people"]
    scene = Scene(db=db, shop=shop, person=person, secret=secret, paper=paper, today=today, **people)
    customers = {row["key"]: _customer(scene, row) for row in _data("demo_customers.json")["customers"]}
    stock = _data("demo_stock.json")
    supplier_of_demo(scene, stock)
    jobs = [
        row | {"acts": [*row["acts"], *stock["acts"]]} if row["customer"] == stock["job"] else row
        for row in _data("demo_jobs.json")["jobs"]
    ]
    for act, row in sorted(_acts(jobs), key=lambda pair: scene.moment(pair[0])):
        if act is row:
            scene.jobs[row["customer"]] = _take_on(scene, row, customers[row["customer"]])
        else:
            play(scene, scene.jobs[row["customer"]], act)
    # Not through the row: the shop's form must not be stale for this.
    db.execute(update(Shop).where(Shop.shop_id == shop.shop_id).values(demo=True))
    db.refresh(shop)
    note_history(db, person.name, now, CAME_IN)


def _acts(jobs: list[dict[str, Any]]) -> Iterator[tuple[Act, dict[str, Any]]]:
    """Every act with its job; the job itself stands for its taking on."""
    for row in jobs:
        yield row, row
        yield from ((act, row) for act in row["acts"])


def _customer(scene: Scene, row: dict[str, Any]) -> Customer:
    """A customer of the demo. No sentence in the shop's history tells of it: that would stay behind."""
    facts = CustomerFacts(
        **{name: row[name] for name in ("name", "email", "phone", "address", "source", "note")}
    )
    made = Customer(id=new_id(), created_at=scene.moment(row), demo=True, **facts_of(facts))
    scene.db.add(made)
    scene.db.flush()
    return made


def _take_on(scene: Scene, row: dict[str, Any], customer: Customer) -> Job:
    facts = JobFacts(
        name=row["name"],
        customer_id=customer.id,
        asked=row["asked"],
        due_on=scene.day(row["due"]),
        note=row["note"],
    )
    job = take_on_job(scene.db, facts, scene.who, scene.moment(row))
    job.demo = True
    scene.db.flush()
    return job


def take_demo_out(db: Fenced, shop: Shop, who: str, now: datetime) -> None:
    """Takes out every row that hangs on the demo. What is the shop's own stays; numbers are not given again.

    Raises:
        Refused: it is not in the shop
    """
    if not shop.demo:
        raise Refused("The demo is not in the shop.")
    gone = remove_demo_rows(db)
    db.execute(update(Shop).where(Shop.shop_id == shop.shop_id).values(demo=False))
    db.refresh(shop)
    note_history(
        db, who, now, f"Took the demo out: {gone.get('job', 0)} jobs and {gone.get('customer', 0)} customers."
    )


def demo_standing(db: Fenced) -> DemoStanding:
    """What there is of the demo, and what a person has put beside it; ten queries."""
    jobs = db.execute(select(func.count(Job.id)).where(Job.demo.is_(True))).scalar_one()
    customers = db.execute(select(func.count(Customer.id)).where(Customer.demo.is_(True))).scalar_one()
    own_job = select(Job.id).where(
        Job.shop_id == Customer.shop_id, Job.customer_id == Customer.id, Job.demo.is_(False)
    )
    staying = db.scalars(
        select(Customer.name).where(Customer.demo.is_(True), own_job.exists()).order_by(Customer.name)
    ).all()
    return DemoStanding(jobs=jobs, customers=customers, own=tuple(_own_things(db)), staying=tuple(staying))


def _own_things(db: Fenced) -> Iterator[str]:
    """What was put into the demo's jobs after it came: all of the demo itself lies in the past of that."""
    came = db.scalars(
        select(History.at)
        .where(History.job_id.is_(None), History.what == CAME_IN)
        .order_by(History.at.desc())
        .limit(1)
    ).first()
    for table, at, one, many in OWN_THINGS if came else ():
        asked = select(func.count(table.shop_id)).where(on_the_demo(table), at > came)
        count = db.execute(asked).scalar_one()
        if count:
            yield f"{count} {one if count == 1 else many}"
