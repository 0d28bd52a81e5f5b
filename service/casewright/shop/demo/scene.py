"""Where the demo is played: its shop, its invented people, and the day from which its acts count."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from casewright.records.jobs import Job
from casewright.records.people import Person, Shop
from casewright.records.sessions import Fenced
from casewright.shop.papers import Issue, JobAtHand, Written
from casewright.shop.units import LoadedUnit, units_of

Act = Mapping[str, Any]
WritesIssue = Callable[[Issue], Written]
"""Writes one issue of a paper."""
PaperWriter = Callable[[Shop, Job, JobAtHand, date, Act], WritesIssue]
"""How a paper of a job is written; the words of papers are another room's."""


@dataclass(slots=True, kw_only=True)
class Scene:
    """Where the demo is played.

    Attributes:
        db: the session
        shop: the shop
        person: in whose account it is done
        office: the invented name under which the office's acts stand
        bench: the invented name under which the work at the bench stands
        secret: the key under which links are made
        paper: how a paper is written
        today: the day from which the acts count
        jobs: the demo's jobs by customer
        paid: what came in so far, by job [cent]
    """

    db: Fenced
    shop: Shop
    person: Person
    office: str
    bench: str
    secret: bytes
    paper: PaperWriter
    today: date
    jobs: dict[str, Job] = field(default_factory=dict)
    paid: dict[str, int] = field(default_factory=dict)

    @property
    def who(self) -> str:
        """The name that goes into the history."""
        return self.office

    @property
    def zone(self) -> ZoneInfo:
        """The shop's time zone."""
        return ZoneInfo(self.shop.time_zone)

    def moment(self, act: Act) -> datetime:
        """When an act was done."""
        clock = time.fromisoformat(act.get("time", "08:00"))
        return datetime.combine(
            self.today + timedelta(days=act.get("day", act.get("from"))), clock, self.zone
        )

    def day(self, number: int | None) -> date | None:
        """A day, counted from today."""
        return None if number is None else self.today + timedelta(days=number)

    def units(self, job: Job) -> list[LoadedUnit]:
        """The units of a job as they stand."""
        return units_of(self.db, job)
