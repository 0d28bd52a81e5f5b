"""Time at work: a timer for each person, entries in the log, and taking an entry back by its opposite."""

import re
from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from sqlalchemy import select

from casewright.records.base import new_id
from casewright.records.bench import Drawer, TimeEntry, Timer
from casewright.records.jobs import Job
from casewright.records.people import Person, Role, Shop
from casewright.records.sessions import Fenced
from casewright.shop.jobs import OVER, refuse_if_over
from casewright.shop.refusals import NotFound, Refused

MINUTE = 60
LONGEST = 24 * 60 * MINUTE
"""The longest entry: a day and a night [s]."""
WRITE = "write time down for it"
HOW = "Write minutes such as 45, or hours such as 1:30, 1.5 or 6h30m."


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What time is spent on.

    Attributes:
        job_id: the job
        operation: the code of an operation of the hours; empty for none of them
        drawer_id: the drawer; None where it is for none in particular
    """

    job_id: str
    operation: str
    drawer_id: str | None = None


def read_minutes(text: str) -> int:
    """Seconds from typed minutes or hours: 45, 1:30, 1 h 30, 6h30m, 1.5 h, 1.5.

    A whole number alone is minutes; one with a decimal is hours, since nobody writes half minutes down.

    Raises:
        Refused: it is no time, with how to write one
    """
    plain = " ".join(text.lower().replace(",", ".").split())
    clock = re.fullmatch(r"(\d{1,2}):([0-5]?\d)", plain, re.ASCII)
    hours = re.fullmatch(
        r"(\d{1,2}(?:\.\d{1,2})?) ?h(?:ours?)?(?: ?(\d{1,2}) ?(?:m|min|minutes)?)?", plain, re.ASCII
    )
    decimal = re.fullmatch(r"\d{0,2}\.\d{1,2}", plain, re.ASCII)
    minutes = re.fullmatch(r"(\d{1,4}) ?(?:m|min|minutes)?", plain, re.ASCII)
    if clock:
        seconds = (int(clock[1]) * 60 + int(clock[2])) * MINUTE
    elif hours:
        seconds = round(float(hours[1]) * 60 + int(hours[2] or 0)) * MINUTE
    elif decimal:
        seconds = round(float(plain) * 60) * MINUTE
    elif minutes:
        seconds = int(minutes[1]) * MINUTE
    else:
        raise Refused(f"“{text[:20]}” is not a time. {HOW}" if plain else f"This is empty. {HOW}", 422)
    if not MINUTE <= seconds <= LONGEST:
        raise Refused("An entry is from 1 minute to 24 hours; write longer work day by day.", 422)
    return seconds


def elapsed_seconds(timer: Timer, now: datetime) -> int:
    """How long a timer has run, pauses left out."""
    running = (now - timer.running_since).total_seconds() if timer.running_since else 0.0
    return timer.kept_seconds + max(0, int(running))


def whole_minutes(seconds: int) -> int:
    """Seconds of the nearest whole minute, one minute at the least."""
    return max(MINUTE, (seconds + MINUTE // 2) // MINUTE * MINUTE)


def start_timer(db: Fenced, shop: Shop, person: Person, work: Work, now: datetime) -> TimeEntry | None:
    """Starts a person's timer; one that runs on other work is stopped first, and its time is kept.

    Args:
        db: the session
        shop: the shop, for its day
        person: who works
        work: on what
        now: the moment

    Returns:
        The entry that the timer before it ended in; None where there was none.

    Raises:
        NotFound: the shop has no such job or drawer
        Refused: the job is closed or lost
    """
    _refuse_strange(db, work)
    held = _held(db, person)
    if (
        held is not None
        and Work(job_id=held.job_id, operation=held.operation, drawer_id=held.drawer_id) == work
    ):
        held.running_since = held.running_since or now
        return None
    ended = stop_timer(db, shop, person, now) if held is not None else None
    db.add(
        Timer(
            person_id=person.id,
            job_id=work.job_id,
            drawer_id=work.drawer_id,
            operation=work.operation,
            started_at=now,
            kept_seconds=0,
            running_since=now,
        )
    )
    return ended


def pause_timer(db: Fenced, person: Person, now: datetime) -> None:
    """Lets a person's timer rest; one that rests already goes on resting."""
    held = _held(db, person)
    if held is not None and held.running_since:
        held.kept_seconds, held.running_since = elapsed_seconds(held, now), None


def go_on(db: Fenced, person: Person, now: datetime) -> None:
    """Lets a person's timer run on after a pause.

    Raises:
        Refused: its job has been closed or lost meanwhile; what ran before can be written down
    """
    held = _held(db, person)
    if held is not None and held.running_since is None:
        _refuse_over(db, held.job_id)
        held.running_since = now


def stop_timer(
    db: Fenced, shop: Shop, person: Person, now: datetime, seconds: int | None = None
) -> TimeEntry | None:
    """Ends a person's timer in an entry of the log, on the day on which it was started.

    Args:
        db: the session
        shop: the shop, for its day
        person: whose timer
        now: the moment
        seconds: how long the work took, where the timer was forgotten; None for what it shows

    Returns:
        The entry; None where no timer ran.
    """
    held = _held(db, person)
    if held is None:
        return None
    ran = elapsed_seconds(held, now) if seconds is None else seconds
    work = Work(job_id=held.job_id, operation=held.operation, drawer_id=held.drawer_id)
    day = held.started_at.astimezone(ZoneInfo(shop.time_zone)).date()
    db.delete(held)
    db.flush()
    note = "" if ran <= LONGEST else "The timer ran longer than a day; a day was written down."
    return _write(db, person, work, min(whole_minutes(ran), LONGEST), day, person.name, now, note)


def drop_timer(db: Fenced, person: Person, started: str) -> None:
    """Ends a person's timer without an entry: it was started by mistake.

    Args:
        db: the session
        person: whose timer
        started: when the timer that is meant was started, as ISO 8601; one that was started since runs on
    """
    held = _held(db, person)
    if held is not None and held.started_at.isoformat() == started:
        db.delete(held)


def log_time(
    db: Fenced, person: Person, work: Work, seconds: int, day: date, who: str, now: datetime, note: str = ""
) -> TimeEntry:
    """Writes down time that was worked.

    Args:
        db: the session
        person: who worked
        work: on what
        seconds: how long
        day: on which day
        who: who writes it down
        now: the moment
        note: a few words

    Raises:
        NotFound: the shop has no such job or drawer
        Refused: the job is closed or lost
    """
    _refuse_strange(db, work)
    return _write(db, person, work, seconds, day, who, now, note)


def take_back_time(
    db: Fenced, job: Job, entry_id: str, person: Person, now: datetime, why: str = ""
) -> TimeEntry | None:
    """Takes an entry back by its opposite; the entry itself stays in the log.

    Args:
        db: the session
        job: the job
        entry_id: the entry
        person: who takes it back: the one who worked, the owner or a maker
        now: the moment
        why: what was wrong with it; asked for where the job is over, since its hours were read as final

    Returns:
        The opposite; None where it was taken back before.

    Raises:
        NotFound: the job has no such entry
        Refused: it is somebody else's, or is itself the opposite of one, or a reason is asked for
    """
    entry = db.get(TimeEntry, (db.shop_id, entry_id))
    if entry is None or entry.job_id != job.id:
        raise NotFound("entry")
    if entry.person_id != person.id and person.role is Role.BENCH:
        raise Refused("This is somebody else's time; they, the owner or a maker can take it back.", 403)
    if entry.corrects_id is not None:
        raise Refused("This takes an entry back already; write the time down anew instead.")
    if db.scalars(select(TimeEntry).where(TimeEntry.corrects_id == entry.id)).first() is not None:
        return None
    if job.state in OVER and not why.strip():
        raise Refused(
            f"The job is {job.state.value}. Write in a few words what was wrong with this time, such as: "
            "it belongs to another job.",
            422,
        )
    opposite = TimeEntry(
        id=new_id(),
        job_id=entry.job_id,
        unit_id=entry.unit_id,
        drawer_id=entry.drawer_id,
        operation=entry.operation,
        seconds=-entry.seconds,
        on_day=entry.on_day,
        note=why.strip(),
        corrects_id=entry.id,
        at=now,
        person_id=entry.person_id,
        who=person.name,
    )
    db.add(opposite)
    return opposite


def _held(db: Fenced, person: Person) -> Timer | None:
    return db.get(Timer, (db.shop_id, person.id), with_for_update=True)


def _refuse_strange(db: Fenced, work: Work) -> None:
    _refuse_over(db, work.job_id)
    if work.drawer_id is not None:
        drawer = db.get(Drawer, (db.shop_id, work.drawer_id))
        if drawer is None or drawer.job_id != work.job_id:
            raise NotFound("drawer")


def _refuse_over(db: Fenced, job_id: str) -> None:
    job = db.get(Job, (db.shop_id, job_id))
    if job is None:
        raise NotFound("job")
    refuse_if_over(job, WRITE)


def _write(
    db: Fenced, person: Person, work: Work, seconds: int, day: date, who: str, now: datetime, note: str
) -> TimeEntry:
    drawer = db.get(Drawer, (db.shop_id, work.drawer_id)) if work.drawer_id else None
    made = TimeEntry(
        id=new_id(),
        job_id=work.job_id,
        unit_id=drawer.unit_id if drawer else None,
        drawer_id=work.drawer_id,
        operation=work.operation,
        seconds=seconds,
        on_day=day,
        note=note,
        at=now,
        person_id=person.id,
        who=who,
    )
    db.add(made)
    return made
