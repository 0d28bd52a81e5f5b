"""A shop as it looks after years of work: customers, jobs, drawers, quotes, taps, hours and payments.

The rows are put in as they are, in bulk: the verbs that make them one by one are tried elsewhere.
"""

import json
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

from sqlalchemy import Engine, insert
from years import MIXES, NAME, TAX, Filled, Row, built
from years_of_quotes import add_link, add_quotes

from casewright.labour.stages import case_stages, drawer_stages, dry_fit
from casewright.labour.standards import house_standards
from casewright.pieces.built.construct import Construction
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer, TimeEntry
from casewright.records.jobs import Customer, History, Job, JobState, Payment, Unit, UnitRevision
from casewright.records.papers import Quote
from casewright.records.people import Counter, Person, Role
from casewright.records.sessions import Fenced, across_shops, writing
from casewright.shop.entering import NewPerson, NewShop, keep_signed_in, open_shop

WHO = "Ada Marsh"
YEARS = 3
OPEN = (
    JobState.ENQUIRY,
    JobState.QUOTED,
    JobState.IN_HAND,
    JobState.ACCEPTED,
    JobState.IN_HAND,
    JobState.READY,
    JobState.DELIVERED,
)
NOT_ACCEPTED = {JobState.ENQUIRY, JobState.QUOTED, JobState.LOST}
STILL_OPEN = 28
"""So many of the last jobs are still open; the others are closed or lost."""


def fill(engine: Engine, *, jobs: int, customers: int, quotes: int, now: datetime, secret: bytes) -> Filled:
    """Fills a database with one shop.

    Args:
        engine: a migrated database
        jobs: how many jobs; each has about sixteen drawers
        customers: how many customers
        quotes: how many quotes
        now: the moment at which the years end
        secret: the key under which links to quotes are made
    """
    filled = _open(engine, now)
    rows = filled.rows = {table: [] for table in ORDER}
    for number in range(1, customers + 1):
        rows["customer"].append(_customer(filled.shop_id, number, now))
    for number in range(1, jobs + 1):
        _add_job(filled, number, jobs, now)
    add_quotes(filled, quotes, now)
    filled.link = add_link(filled, secret)
    with writing(engine, filled.shop_id) as db:
        _write(db, rows)
        for name, value in (("job", jobs), ("quote", quotes)):
            db.add(Counter(name=name, value=value))
    if engine.dialect.name == "postgresql":  # which does so by itself, within a minute
        with engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
            connection.exec_driver_sql("ANALYZE")
    return filled


ORDER: dict[str, Any] = {
    "customer": Customer,
    "job": Job,
    "unit": Unit,
    "unit_revision": UnitRevision,
    "carcase": Carcase,
    "drawer": Drawer,
    "bench_event": BenchEvent,
    "time_entry": TimeEntry,
    "payment": Payment,
    "history": History,
    "quote": Quote,
}


def _write(db: Fenced, rows: dict[str, list[Row]]) -> None:
    for name, table in ORDER.items():
        for start in range(0, len(rows[name]), 5_000):
            db.execute(insert(table), rows[name][start : start + 5_000])


def _open(engine: Engine, now: datetime) -> Filled:
    start = now - timedelta(days=365 * YEARS)
    given: dict[str, Any] = {
        "name": NAME,
        "currency": "USD",
        "symbol": "$",
        "unit": "in",
        "time_zone": "America/New_York",
        "paper": "letter",
        "tax_rate": TAX,
    }
    mark = new_id()
    with across_shops(engine, write=True) as db:
        owner = open_shop(
            db,
            NewShop(**given),
            NewPerson(name=WHO, email=f"ada.{mark}@shop.test", password="grain of old walnut"),  # noqa: S106
            start,
        )
        maker = Person(
            shop_id=owner.shop_id,
            id=new_id(),
            name="Cy Roper",
            email=f"cy.{mark}@shop.test",
            role=Role.BENCH,
            password_hash=owner.password_hash,
            created_at=start,
        )
        db.add(maker)
        owner.first_steps_away = True  # long ago
        db.flush()
        cookies = [
            keep_signed_in(db, person, datetime.now(UTC), device="benchmark", address="127.0.0.1")
            for person in (owner, maker)
        ]
        return Filled(owner.shop_id, owner.id, *cookies)


def _customer(shop_id: str, number: int, now: datetime) -> Row:
    return {
        "shop_id": shop_id,
        "id": new_id(),
        "name": f"{FIRST[number % len(FIRST)]} {LAST[number % len(LAST)]}",
        "email": f"customer.{number}@example.com",
        "phone": f"555-{number % 10_000:04d}",
        "address": f"{number} Weir Road\nAlderbridge",
        "source": "craft fair",
        "note": "",
        "demo": False,
        "created_at": now - timedelta(days=365 * YEARS - number % 1000),
        "version": 1,
    }


FIRST = ("Ada", "Ben", "Ines", "Marian", "Nora", "Priya", "Ruth", "Samuel", "Tobias", "Walter", "Helen")
LAST = (
    "Anand",
    "Calder",
    "Fenwick",
    "Hartig",
    "Ostrow",
    "Pell",
    "Varga",
    "Wren",
    "Amsel",
    "Oram",
    "Tull",
    "Ives",
    "Moss",
)


def _add_job(filled: Filled, number: int, of: int, now: datetime) -> None:
    begun = now - timedelta(days=365 * YEARS * (of - number + 1) / (of + 1))
    state = _state(number, of)
    customers = filled.rows["customer"]
    job = {
        "shop_id": filled.shop_id,
        "id": new_id(),
        "number": number,
        "name": f"{('Dresser', 'Cabinet', 'Chest')[number % 3]} for room {number}",
        "customer_id": customers[number * 7 % len(customers)]["id"],
        "state": state,
        "asked": "Drawers for folded clothes, cherry, not too tall.",
        "due_on": (begun + timedelta(days=90)).date(),
        "note": "Second floor, narrow stairs.",
        "own": {"miles": number % 80},
        "demo": False,
        "created_at": begun,
        "moved_at": begun + timedelta(days=60),
        "version": 4,
    }
    filled.rows["job"].append(job)
    for code, (key, count) in zip("ABCDEF", MIXES[number % len(MIXES)], strict=False):
        _add_unit(filled, job, code, key, count)
    _add_hours(filled, job)
    _add_money(filled, job)
    for what in SENTENCES:
        filled.rows["history"].append(_history(job, what))


SENTENCES = (
    "Took on the job.",
    "Added unit A.",
    "Sent the quote.",
    "The job is in hand now.",
    "Money came in.",
)


def _state(number: int, of: int) -> JobState:
    if number > of - STILL_OPEN:
        return OPEN[number % len(OPEN)]
    return JobState.LOST if number % 5 == 0 else JobState.CLOSED


def _add_unit(filled: Filled, job: Row, code: str, key: str, count: int) -> None:
    text, made = built(key)
    spec = json.loads(text) | {"code": code, "count": count}
    at = job["created_at"] + timedelta(days=2)
    unit = {
        "shop_id": filled.shop_id,
        "id": new_id(),
        "job_id": job["id"],
        "code": code,
        "name": spec["name"],
        "count": count,
        "revision": 2,
        "approved": None if job["state"] in NOT_ACCEPTED else 2,
        "ended_at": None,
        "created_at": at,
        "version": 2,
    }
    filled.rows["unit"].append(unit)
    for number in (1, 2):
        filled.rows["unit_revision"].append(
            {
                "shop_id": filled.shop_id,
                "unit_id": unit["id"],
                "number": number,
                "spec": spec,
                "note": "",
                "at": at + timedelta(days=number),
                "who": WHO,
            }
        )
    for piece in range(1, count + 1):
        _add_case(filled, job, unit, piece, made)


def _add_case(filled: Filled, job: Row, unit: Row, piece: int, built: Construction) -> None:
    owned = {"shop_id": filled.shop_id, "job_id": job["id"], "unit_id": unit["id"]}
    case = owned | {"id": new_id(), "piece": piece} | _stage(job, case_stages(), piece)
    filled.rows["carcase"].append(case)
    for position, each in enumerate(built.drawers, 1):
        code = each.code.partition("-")[2]
        drawer = owned | {
            "id": new_id(),
            "carcase_id": case["id"],
            "origin": code,
            "code": code,
            "position": position,
            "gone": False,
        }
        drawer |= _stage(job, drawer_stages(), position)
        filled.rows["drawer"].append(drawer)
        _add_taps(filled, job, case, drawer)


def _stage(job: Row, stages: Any, place: int) -> Row:
    """How far something is: not begun before the job is in hand, part of the way in it, all of it after."""
    reached = 0 if job["state"] in {*NOT_ACCEPTED, JobState.ACCEPTED} else len(stages)
    if job["state"] is JobState.IN_HAND:
        reached = place % (len(stages) - 1)
    at = job["created_at"] + timedelta(days=50) if reached else None
    return {
        "stage": stages[reached - 1].code if reached else "",
        "stage_at": at,
        "stage_by": WHO if reached else "",
    }


def _add_taps(filled: Filled, job: Row, case: Row, drawer: Row) -> None:
    for place, (kind, data) in enumerate(_taps(drawer["stage"])):
        filled.rows["bench_event"].append(
            {
                "shop_id": filled.shop_id,
                "id": new_id(),
                "job_id": job["id"],
                "carcase_id": case["id"],
                "drawer_id": drawer["id"],
                "kind": kind,
                "data": data,
                "tap": new_id(),
                "at": job["created_at"] + timedelta(days=40, minutes=place * 30),
                "who": WHO,
                "person_id": None,
            }
        )


def _taps(last: str) -> Iterator[tuple[str, Row]]:
    """What was tapped until a stage was reached."""
    if not last:
        return
    for stage in drawer_stages():
        if stage.code == "fitted":
            yield "measured", {"size": "opening.height", "value": 5.0}
        if stage.code == "glued":
            yield from (("ticked", {"tick": line.code}) for line in dry_fit())
        yield "reached", {"stage": stage.code}
        if stage.code == last:
            return


def _add_hours(filled: Filled, job: Row) -> None:
    if job["state"] in NOT_ACCEPTED:
        return
    for place, operation in enumerate(house_standards().operations[:30]):
        day = job["created_at"] + timedelta(days=35 + place % 20)
        filled.rows["time_entry"].append(
            {
                "shop_id": filled.shop_id,
                "id": new_id(),
                "job_id": job["id"],
                "unit_id": None,
                "drawer_id": None,
                "operation": operation.code,
                "seconds": 1800 + 60 * (place * 7 % 90),
                "on_day": day.date(),
                "note": "",
                "corrects_id": None,
                "at": day,
                "person_id": filled.person_id,
                "who": WHO,
            }
        )


def _add_money(filled: Filled, job: Row) -> None:
    if job["state"] in NOT_ACCEPTED:
        return
    for part in (0, 1, 2):
        at = job["created_at"] + timedelta(days=20 * (part + 1))
        filled.rows["payment"].append(
            {
                "shop_id": filled.shop_id,
                "id": new_id(),
                "job_id": job["id"],
                "amount_cents": 400_000,
                "received_on": at.date(),
                "method": "bank transfer",
                "note": "",
                "corrects_id": None,
                "at": at,
                "who": WHO,
            }
        )


def _history(job: Row, what: str) -> Row:
    return {
        "shop_id": job["shop_id"],
        "id": new_id(),
        "job_id": job["id"],
        "what": what,
        "before": None,
        "after": None,
        "at": job["created_at"] + timedelta(days=3),
        "who": WHO,
    }
