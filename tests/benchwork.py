"""Work at the bench for the tests: jobs in hand with units, their drawers, and taps as verbs."""

from collections.abc import Iterable, Mapping
from typing import Any

from sqlalchemy import select

from casewright.labour.stages import before_marking, dry_fit
from casewright.records.base import new_id
from casewright.records.bench import BenchEvent, Carcase, Drawer, TimeEntry
from casewright.records.jobs import JobState, Unit
from casewright.records.people import Role, Shop
from casewright.records.sessions import reading, writing
from casewright.shop.bench import Hand, case_place, drawer_place, reach_stage, set_sizes, set_ticks
from casewright.shop.customers import CustomerFacts, add_customer
from casewright.shop.figures import figures
from casewright.shop.jobs import JobFacts, move_job, take_on_job
from casewright.shop.units import add_unit
from pages.visitor import Visitor
from people import ShopInTest
from units import chest, unit

CASE_STAGES = ("panels", "joints", "glued", "frames", "closed", "finished", "inspected")
DRAWER_STAGES = ("milled", "fitted", "joints", "dry", "glued", "run", "stops", "finished", "in")


def job_in_hand(
    shop: ShopInTest,
    name: str = "Hall chest",
    *,
    changes: Mapping[str, Any] | None = None,
    state: JobState = JobState.IN_HAND,
) -> str:
    """A job with one chest of three drawers, by default in hand; its id."""
    with writing(shop.engine, shop.shop_id) as db:
        now, who = shop.clock.now, "Ada Marsh"
        held = db.get_one(Shop, shop.shop_id)
        customer = add_customer(db, CustomerFacts(name="Ines Cole"), who, now)
        db.flush()
        job = take_on_job(db, JobFacts(name=name, customer_id=customer.id), who, now)
        add_unit(db, job, unit(chest(changes)), figures(db, held, job), who, now)
        way = [JobState.ACCEPTED, JobState.IN_HAND, JobState.READY, JobState.DELIVERED]
        for step in way[: way.index(state) + 1] if state in way else []:
            move_job(db, job, step, who, now)
        return job.id


def drawer_ids(shop: ShopInTest, job_id: str) -> dict[str, str]:
    """The drawers of the first case of a job: id by code."""
    with reading(shop.engine, shop.shop_id) as db:
        found = db.execute(
            select(Drawer.code, Drawer.id)
            .join(Carcase, (Carcase.shop_id == Drawer.shop_id) & (Carcase.id == Drawer.carcase_id))
            .where(Drawer.job_id == job_id, Carcase.piece == 1)
            .order_by(Drawer.position)
        )
        return {row.code: row.id for row in found}


def unit_address(shop: ShopInTest, job_id: str) -> str:
    """Where the one unit of a job is edited."""
    with reading(shop.engine, shop.shop_id) as db:
        return f"/units/{db.scalars(select(Unit.id).where(Unit.job_id == job_id)).one()}"


def approved_unit(shop: ShopInTest, owner: Visitor, job_id: str) -> str:
    """Where the one unit of a job is edited, once it is approved as it stands."""
    address = unit_address(shop, job_id)
    owner.get(address)
    owner.send(f"{address}/approval")
    return address


def case_id(shop: ShopInTest, job_id: str) -> str:
    """The first case of a job."""
    with reading(shop.engine, shop.shop_id) as db:
        return db.scalars(select(Carcase.id).where(Carcase.job_id == job_id, Carcase.piece == 1)).one()


def hand(shop: ShopInTest, role: Role = Role.BENCH) -> Hand:
    """Somebody of the shop, about to tap."""
    person = shop.people[role]
    return Hand(
        mark=new_id(),
        now=shop.clock.now,
        who=person.name,
        person_id=person.id,
        is_maker=role is not Role.BENCH,
    )


def case_reaches(shop: ShopInTest, job_id: str, last: str) -> None:
    """Brings a case to a stage."""
    with writing(shop.engine, shop.shop_id) as db:
        place = case_place(db, case_id(shop, job_id))
        for stage in CASE_STAGES[: CASE_STAGES.index(last) + 1]:
            reach_stage(db, place, stage, hand(shop))


def drawer_reaches(shop: ShopInTest, drawer_id: str, last: str) -> None:
    """Brings a drawer to a stage, with all that its gates ask of itself; the case must be ready."""
    with writing(shop.engine, shop.shop_id) as db:
        place = drawer_place(db, drawer_id)
        for stage in DRAWER_STAGES[: DRAWER_STAGES.index(last) + 1]:
            if stage == "fitted":
                set_sizes(db, place, opening(place.drawer.code if place.drawer else ""), hand(shop))
            if stage == "joints":
                set_sizes(db, place, SIDES, hand(shop))
                set_ticks(db, place, {line.code: True for line in before_marking()}, hand(shop))
            if stage == "glued":
                set_ticks(db, place, {line.code: True for line in dry_fit()}, hand(shop))
            reach_stage(db, place, stage, hand(shop))


def look_the_parts_over(shop: ShopInTest, drawer_id: str) -> None:
    """Ticks the list before marking out."""
    with writing(shop.engine, shop.shop_id) as db:
        ticks = {line.code: True for line in before_marking()}
        set_ticks(db, drawer_place(db, drawer_id), ticks, hand(shop))


HEIGHTS = {"R1-1": 5.25, "R2-1": 6.0, "R3-1": 6.75}
"""The openings of the chest, as they are drawn [in]."""
SIDES = {"SL.thickness": (0.5, "1/2"), "SR.thickness": (0.5, "1/2")}


def opening(code: str) -> dict[str, tuple[float | None, str]]:
    """The opening of a drawer of the chest, measured as it was drawn."""
    return {"opening.height": (HEIGHTS[code], ""), "opening.width": (22.5, "22-1/2")}


def events(shop: ShopInTest) -> list[BenchEvent]:
    """Everything that was tapped in a shop, in order."""
    with reading(shop.engine, shop.shop_id) as db:
        return list(db.scalars(select(BenchEvent).order_by(BenchEvent.at, BenchEvent.id)))


def kept_stage(shop: ShopInTest, drawer_id: str) -> str:
    """The stage that stands in a drawer's row."""
    with reading(shop.engine, shop.shop_id) as db:
        return db.get_one(Drawer, (shop.shop_id, drawer_id)).stage


def logged(shop: ShopInTest) -> list[TimeEntry]:
    """Every entry of the shop, in the order in which they were made."""
    with reading(shop.engine, shop.shop_id) as db:
        return list(db.scalars(select(TimeEntry).order_by(TimeEntry.id)))


def start_timer_of(visitor: Visitor, job: str, operation: str = "D06", **more: Any) -> Any:
    """Starts somebody's timer."""
    return visitor.post("/timer", job=job, operation=operation, back="/board", **more)


def minutes(entries: Iterable[TimeEntry]) -> list[float]:
    """The minutes of entries, in order."""
    return [entry.seconds / 60 for entry in entries]
