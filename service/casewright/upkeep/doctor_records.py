"""The doctor's look at what is kept: sums and states that follow from other rows still follow from them."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from sqlalchemy import func, or_, select
from sqlalchemy.orm import InstrumentedAttribute

from casewright.labour.bench import BenchEvent as Tap
from casewright.labour.bench import Progress, case_progress, drawer_progress
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.board import Tapped
from casewright.records.jobs import History, Job, Unit, UnitRevision
from casewright.records.papers import Paper, PaperKind, Quote, QuoteState
from casewright.records.people import Counter, Person, Role, Shop, ShopFigures, SignIn
from casewright.records.sessions import Fenced
from casewright.shop.bench import again_words, tap_from
from casewright.shop.entering import IDLE
from casewright.upkeep.looks import Look, fine, look, wrong

ASK = "Take a backup now, and ask those who look after casewright: this should not be."
NUMBERED: dict[str, InstrumentedAttribute[int]] = {
    "job": Job.number,
    "quote": Quote.number,
    **dict.fromkeys(PaperKind, Paper.number),
}
"""What has numbers of its own, by the name under which they are counted."""


def newest_moment(db: Fenced) -> datetime | None:
    """When something was last kept."""
    asked = (func.max(History.at), func.max(SignIn.seen_at), func.max(Shop.created_at))
    found = [db.execute(select(newest)).scalar() for newest in asked]
    return max((each for each in found if each is not None), default=None)


def look_at_shops(db: Fenced, now: datetime) -> Iterator[Look]:
    """Every shop has an owner, a time zone that exists, and the figures that it names."""
    shops = db.scalars(select(Shop)).all()
    owned = set(
        db.scalars(select(Person.shop_id).where(Person.role == Role.OWNER, Person.ended_at.is_(None)))
    )
    figures = {(row[0], row[1]) for row in db.execute(select(ShopFigures.shop_id, ShopFigures.revision))}
    for shop in shops:
        if shop.shop_id not in owned:
            todo = f"casewright create-user EMAIL --role owner --shop {shop.shop_id}"
            yield wrong("shops", f"{shop.name} has no owner who could sign in.", todo)
        if (shop.shop_id, shop.figures) not in figures:
            yield wrong("shops", f"{shop.name} names figures that are not there.", ASK)
        try:
            ZoneInfo(shop.time_zone)
        except (ZoneInfoNotFoundError, ValueError):
            todo = "Choose another on the shop's page, or install tzdata."
            yield wrong("shops", f"{shop.name} is in an unknown time zone, {shop.time_zone}.", todo)
    yield fine("shops", f"{len(shops)} shop{'' if len(shops) == 1 else 's'}.")


def look_at_stages(db: Fenced, now: datetime) -> Iterator[Look]:
    """The stage that is kept of each drawer and case is the one that its taps lead to."""
    taps, unread = _all_taps(db)
    off = [
        f"case {carcase.id}"
        for carcase in db.scalars(select(Carcase))
        if _is_off(carcase, case_progress(taps[carcase.shop_id, carcase.id, None]))
    ]
    off += [
        f"drawer {drawer.id}"
        for drawer in db.scalars(select(Drawer))
        if _is_off(drawer, drawer_progress(taps[drawer.shop_id, drawer.carcase_id, drawer.id]))
    ]
    if unread:
        yield wrong("stages", f"{unread} taps cannot be read.", ASK)
    if off:
        todo = "Tap the next stage of each and take it back: that works its stage out anew. Then look again."
        yield wrong("stages", f"{len(off)} are not where their taps lead, such as {off[0]}.", todo)
    elif not unread:
        yield fine("stages", "Drawers and cases are where their taps lead.")


def _is_off(row: Carcase | Drawer, progress: Progress) -> bool:
    return (row.stage, row.again) != (progress.stage, again_words(progress))


def _all_taps(db: Fenced) -> tuple[dict[tuple[str, str, str | None], list[Tap]], int]:
    """Every tap by shop, case and drawer, and how many cannot be read."""
    taps: dict[tuple[str, str, str | None], list[Tap]] = defaultdict(list)
    unread, row = 0, BenchEvent
    asked = select(row.shop_id, row.carcase_id, row.drawer_id, row.id, row.kind, row.data, row.at, row.who)
    for shop_id, *rest in db.execute(asked.execution_options(yield_per=500)):
        held = Tapped(*rest)
        try:
            taps[shop_id, held.carcase_id, held.drawer_id].append(tap_from(held))
        except (ValueError, TypeError, KeyError):
            unread += 1
    return taps, unread


def look_at_quotes(db: Fenced, now: datetime) -> Iterator[Look]:
    """A quote that was sent holds what it offered, and its total is the one that was offered."""
    total = Quote.offer["total_cents"].as_integer()
    off = db.execute(
        select(func.count(Quote.id)).where(
            Quote.state != QuoteState.DRAFT,
            or_(total.is_(None), Quote.total_cents.is_(None), total != Quote.total_cents),
        )
    ).scalar_one()
    if off:
        yield wrong("quotes", f"{off} that were sent do not hold the total that they offered.", ASK)
    else:
        yield fine("quotes", "Each that was sent holds what it offered.")


def look_at_numbers(db: Fenced, now: datetime) -> Iterator[Look]:
    """No number will be given out again."""
    for name, number in NUMBERED.items():
        owner = number.class_
        asked = select(owner.shop_id, func.max(number).label("most")).group_by(owner.shop_id)
        given = (asked.where(owner.kind == name) if owner is Paper else asked).subquery()
        counted = select(Counter.shop_id, Counter.value).where(Counter.name == name).subquery()
        behind = db.execute(
            select(func.count())
            .select_from(given.outerjoin(counted, counted.c.shop_id == given.c.shop_id))
            .where(func.coalesce(counted.c.value, 0) < given.c.most)
        ).scalar_one()
        if behind:
            yield wrong("numbers", f"The count of {name}s is behind the numbers given out.", ASK)
            return
    yield fine("numbers", "Jobs, quotes and papers will get numbers of their own.")


def look_at_units(db: Fenced, now: datetime) -> Iterator[Look]:
    """Every unit has the revision that it names."""
    lost = db.execute(
        select(func.count(Unit.id))
        .select_from(Unit)
        .outerjoin(
            UnitRevision,
            (UnitRevision.shop_id == Unit.shop_id)
            & (UnitRevision.unit_id == Unit.id)
            & (UnitRevision.number == Unit.revision),
        )
        .where(UnitRevision.number.is_(None))
    ).scalar_one()
    if lost:
        yield wrong("units", f"{lost} name a revision that is not there.", RESTORE_UNITS)
    else:
        yield fine("units", "Each has the revision that it names.")


RESTORE_UNITS = "Open each unit and save it again; what was chosen last is gone."


def look_at_sign_ins(db: Fenced, now: datetime) -> Iterator[Look]:
    """Sign-ins that can no longer be used."""
    held = db.execute(select(func.count(SignIn.id))).scalar_one()
    old = db.execute(
        select(func.count(SignIn.id)).where(or_(SignIn.ends_at < now, SignIn.seen_at < now - IDLE))
    ).scalar_one()
    long_gone = db.execute(
        select(func.count(SignIn.id)).where(SignIn.ends_at < now - timedelta(days=90))
    ).scalar_one()
    said = f"{held - old} in use, {old} that have run out."
    if long_gone > 100:
        yield look("sign-ins", said, "They do no harm, and go when somebody of that shop signs in.")
    else:
        yield fine("sign-ins", said)
