"""The demo at the bench: tap by tap, as makers would have tapped it, spread over the days of the work."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import select

from casewright.labour.stages import before_marking, case_stages, drawer_stages, dry_fit, place_of
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.measuring import Measurable, measurable
from casewright.records.bench import Carcase, Drawer
from casewright.records.jobs import Unit
from casewright.records.people import Person
from casewright.records.sessions import Fenced
from casewright.shop.bench import (
    Hand,
    Place,
    add_note,
    case_place,
    reach_stage,
    set_sizes,
    set_ticks,
    take_back_stage,
)

ORDER = (
    ("case", "panels"),
    ("drawer", "milled"),
    ("case", "joints"),
    ("case", "glued"),
    ("case", "frames"),
    ("drawer", "fitted"),
    ("drawer", "joints"),
    ("drawer", "dry"),
    ("drawer", "glued"),
    ("drawer", "run"),
    ("case", "closed"),
    ("drawer", "stops"),
    ("case", "finished"),
    ("drawer", "finished"),
    ("drawer", "in"),
    ("case", "inspected"),
)
"""The order in which one maker works: all drawers through one stage, then all through the next."""
OFF = (0.0, -1 / 64, 0.0, 1 / 64, 0.0, 1 / 32, -1 / 64)
"""What openings come out at beside the drawing, one after another [in]."""
PLANED = (0.0, -1 / 64, 0.0, 0.0, -1 / 64)
"""The same for the sides as they come from the plane [in]."""
MEASURED_BEFORE = {"fitted": ("opening.height", "opening.width"), "joints": ("SL.thickness", "SR.thickness")}
MORNING, HOURS = time(8, 15), 8.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """A piece of work at the bench.

    Attributes:
        db: the session
        unit: what is built
        built: the same, worked out
        person: in whose account it is tapped
        who: the invented name of whoever taps
        days: the working days over which it goes, in the shop's time
        zone: the shop's time zone
        script: how far it went: stage of the case, stages of the drawers, notes, what was taken back
    """

    db: Fenced
    unit: Unit
    built: Construction
    person: Person
    who: str
    days: tuple[date, ...]
    zone: ZoneInfo
    script: Mapping[str, Any]

    def moment(self, step: int, steps: int) -> datetime:
        """The moment of one of many steps, spread over the hours of the days."""
        share = len(self.days) * step / max(1, steps)
        day = min(int(share), len(self.days) - 1)
        start = datetime.combine(self.days[day], MORNING, self.zone)
        return start + timedelta(hours=HOURS * min(share - day, 0.999))

    def hand(self, mark: str, now: datetime) -> Hand:
        """Whose tap it is."""
        return Hand(mark=mark, now=now, who=self.who, person_id=self.person.id, is_maker=True)


def working_days(first: date, last: date) -> tuple[date, ...]:
    """The days from Monday to Friday between two days; the last day itself where there is none."""
    days = (first + timedelta(days=number) for number in range((last - first).days + 1))
    return tuple(day for day in days if day.weekday() < 5) or (last,)


def work_at_bench(bench: Bench) -> None:
    """Taps every piece of a unit as far as the script says."""
    pieces = bench.db.scalars(
        select(Carcase.id).where(Carcase.unit_id == bench.unit.id).order_by(Carcase.piece)
    ).all()
    for carcase_id in pieces:
        case = case_place(bench.db, carcase_id)
        drawers = bench.db.scalars(
            select(Drawer).where(Drawer.carcase_id == carcase_id).order_by(Drawer.position)
        ).all()
        places = [replace(case, drawer=drawer) for drawer in drawers]
        steps = list(_steps(bench, case, places))
        with bench.db.no_autoflush:
            for number, (place, stage) in enumerate(steps):
                _reach(bench, place, stage, bench.moment(number, len(steps)))
            _half_ticked(bench, places, bench.moment(1, 1))
        bench.db.flush()


def _steps(bench: Bench, case: Place, drawers: list[Place]) -> Iterator[tuple[Place, str]]:
    """Everything that is reached, one after another."""
    case_end = place_of(bench.script["case"], case_stages())
    for what, stage in ORDER:
        if what == "case":
            if place_of(stage, case_stages()) <= case_end:
                yield case, stage
        else:
            yield from ((each, stage) for each in drawers if _goes_to(bench, each, stage))


def _goes_to(bench: Bench, place: Place, stage: str) -> bool:
    ends: Mapping[str, str] = bench.script["drawers"]
    end = ends.get(_code(place), ends.get("*", ""))
    return bool(end) and place_of(stage, drawer_stages()) <= place_of(end, drawer_stages())


def _code(place: Place) -> str:
    return place.drawer.code if place.drawer else ""


def _mark(place: Place, stage: str) -> str:
    """The mark of a tap; that of the row that it is about makes it the only one."""
    return f"demo-{(place.drawer or place.carcase).id}-{stage}"


def _reach(bench: Bench, place: Place, stage: str, now: datetime) -> None:
    code, mark = _code(place), _mark(place, stage)
    if code and stage in MEASURED_BEFORE:
        sizes = {size: (value, "") for size, value in _sizes(bench, place, MEASURED_BEFORE[stage])}
        set_sizes(bench.db, place, sizes, bench.hand(f"{mark}-size", now))
    if code and stage == "joints":
        looked = {line.code: True for line in before_marking()}
        set_ticks(bench.db, place, looked, bench.hand(f"{mark}-look", now))
    if code and stage == "glued":
        ticks = {line.code: True for line in dry_fit()}
        set_ticks(bench.db, place, ticks, bench.hand(f"{mark}-tick", now))
    if code and bench.script["undo"].get(code) == stage:
        early = now - timedelta(minutes=6)
        reach_stage(bench.db, place, stage, bench.hand(f"{mark}-early", early))
        take_back_stage(bench.db, place, stage, bench.hand(f"{mark}-back", now - timedelta(minutes=2)))
    reach_stage(bench.db, place, stage, bench.hand(mark, now))
    note = bench.script["notes"].get(code, "")
    if note and not place.progress.notes and stage in {"joints", "dry"}:
        add_note(bench.db, place, note, bench.hand(f"{mark}-note", now))


def _sizes(bench: Bench, place: Place, names: tuple[str, ...]) -> Iterator[tuple[str, float]]:
    asked: dict[str, Measurable] = {each.size: each for each in measurable(bench.built, _code(place))}
    turn = place.drawer.position if place.drawer else 0
    for step, name in enumerate(names):
        off = OFF if name.startswith("opening") else PLANED
        yield name, asked[name].designed + off[(turn + step) % len(off)]


def _half_ticked(bench: Bench, places: list[Place], now: datetime) -> None:
    """The lists of the dry-fit that somebody has begun."""
    for place in places:
        count = bench.script["half_ticked"].get(_code(place), 0)
        ticks = {line.code: True for line in dry_fit()[:count]}
        set_ticks(bench.db, place, ticks, bench.hand(_mark(place, "begun"), now))
