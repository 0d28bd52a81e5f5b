"""What the log of finished jobs teaches the shop's hours."""

import json
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from casewright.labour.actuals import compare
from casewright.labour.learning import Lesson, lesson
from casewright.labour.operations import Method, Operation, minutes_by
from casewright.pieces.built.refusals import REFUSALS
from casewright.records.finished import (
    Logged,
    finished_jobs,
    logged_on,
    minutes_by_revision,
    unit_revisions_of,
)
from casewright.records.people import Shop
from casewright.records.sessions import Fenced
from casewright.shop.estimating import estimated_job
from casewright.shop.figures import figures, figures_from, figures_text, save_figures
from casewright.shop.own_figures import held_figures

TO_KEEP = 2
"""Decimals of a taught standard."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taught:
    """What the log says of one operation.

    Attributes:
        one: the operation as the shop does it now
        method: by hand or with machine help: the one that was logged
        lesson: the standard before and after, what taught it, and what was set aside
        is_own: whether the standard before was the shop's own
    """

    one: Operation
    method: Method
    lesson: Lesson
    is_own: bool

    @property
    def key(self) -> str:
        """Operation and method, as a form names them."""
        return f"{self.one.code}.{self.method.value}"

    @property
    def minutes(self) -> float:
        """The standard as it would be kept [min]."""
        return round(self.lesson.new, TO_KEEP)


def what_the_log_teaches(db: Fenced, shop: Shop, today: date) -> tuple[Taught, ...]:
    """The standards that finished jobs would move, in the order of the work; six queries at most.

    A job teaches a standard only when its work on it began after the shop last set that standard, so that no
    hour is learned from twice.

    Args:
        db: the session
        shop: the shop
        today: the day, for the estimates
    """
    jobs = finished_jobs(db)
    if not jobs:
        return ()
    logged, units = logged_on(db, jobs), unit_revisions_of(db, jobs)
    set_on = _set_on(minutes_by_revision(db), ZoneInfo(shop.time_zone))
    actuals: dict[tuple[str, Method], list[float]] = {}
    for job in jobs:
        texts = tuple(json.dumps(each.spec, sort_keys=True) for each in units.get(job.id, []))
        fresh = [
            each
            for each in logged
            if each.job_id == job.id and each.begun_on > set_on.get(each.operation, date.min)
        ]
        for key, minutes in _minutes_each(texts, figures_text(db, shop, job), today, fresh).items():
            actuals.setdefault(key, []).append(minutes)
    held = figures(db, shop)
    return tuple(
        Taught(
            one=one,
            method=method,
            lesson=lesson(old, actuals[one.code, method]),
            is_own=one.code in held.spec.minutes,
        )
        for one in held.standards.operations
        for method in Method
        if (one.code, method) in actuals and (old := minutes_by(one, method)) is not None
    )


def _minutes_each(
    texts: tuple[str, ...], figures_key: str, today: date, logged: Sequence[Logged]
) -> Mapping[tuple[str, Method], float]:
    """The minutes that one of each counted thing took in a job: the standard times actual over estimated."""
    if not texts or not logged:
        return {}
    try:
        labour = estimated_job(texts, figures_key, today).labour
    except REFUSALS:
        return {}
    allowance = figures_from(figures_key).standards.allowance
    found = compare(labour, [(each.operation, each.seconds / 60) for each in logged], allowance)
    ratios = {line.code: line.ratio for line in found.lines if line.ratio}
    return {
        (line.code, line.method): line.each * ratios[line.code]
        for line in labour
        if line.code in ratios and line.each
    }


def _set_on(revisions: Sequence[tuple[datetime, Mapping[str, Any]]], zone: ZoneInfo) -> dict[str, date]:
    """The shop's day on which each of its own standards became what it is; revisions come latest first."""
    now = revisions[0][1] if revisions else {}
    days: dict[str, date] = {}
    for code, own in now.items():
        for at, held in revisions:
            if held.get(code) != own:
                break
            days[code] = at.astimezone(zone).date()
    return days


def take_lessons(
    db: Fenced,
    shop: Shop,
    keys: Collection[str],
    started_from: int,
    who: str,
    now: datetime,
    today: date,
) -> int:
    """Takes what the log teaches into the shop's own minutes.

    Args:
        db: the session
        shop: the shop
        keys: which of the lessons, as `Taught.key` names them
        started_from: the revision that the page showed
        who: who decides
        now: the moment
        today: the day

    Returns:
        How many standards were set.

    Raises:
        Stale: somebody else saved since
    """
    held = held_figures(db, shop)
    minutes: dict[str, dict[str, Any]] = {code: dict(own) for code, own in held.get("minutes", {}).items()}
    wanted = [each for each in what_the_log_teaches(db, shop, today) if each.key in keys]
    for each in wanted:
        minutes.setdefault(each.one.code, {})[each.method.value] = each.minutes
    if wanted:
        save_figures(db, shop, {**held, "minutes": minutes}, started_from, who, now)
    return len(wanted)
