"""What a job takes otherwise than when an order was issued for it, line by line."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.pricing.prices import PriceKind
from casewright.records.changed_since import ChangedUnit, units_changed_since
from casewright.records.stock import OrderLine, OrderState, SupplyOrder
from casewright.records.stock_lists import TO_ORDER_FOR, JobRow
from casewright.web.frame.visits import Visit
from casewright.web.stock.needs import JobsAtHand, jobs_at_hand
from casewright.web.stock.sheet_needs import sheet_areas
from casewright.web.stock.wanted import much_words, need_of, words_of

LITTLE = 0.005
"""A difference that is smaller than what is shown of it is none."""
SQUARE_INCHES = 144


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChanged:
    """One line: how much the jobs took of it when it was ordered, how much now, the difference; in words."""

    words: str
    then: str
    now: str
    difference: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderChanges:
    """What changed after an order was issued.

    Attributes:
        units: which units, in words
        lines: the lines that differ
        trouble: why it cannot be told; empty where it can
        jobs: the ids of the jobs that take otherwise
    """

    units: Sequence[str]
    lines: Sequence[LineChanged]
    trouble: str
    jobs: Sequence[str]


def changes_since(
    visit: Visit, order: SupplyOrder, jobs: Sequence[JobRow], lines: Sequence[OrderLine]
) -> OrderChanges | None:
    """What changed in the jobs of an order since; None where nothing did, or it is over with them.

    Args:
        visit: the request
        order: the order
        jobs: its jobs
        lines: its lines
    """
    open_jobs = [job for job in jobs if job.state in TO_ORDER_FOR]
    if order.state is OrderState.CALLED_OFF or not open_jobs:
        return None
    changed = units_changed_since(visit.db, [job.id for job in open_jobs], order.issued_at)
    if not changed:
        return None
    numbers = {job.id: job.number for job in open_jobs}
    touched = [job.id for job in open_jobs if job.id in {each.job_id for each in changed}]
    units = tuple(_unit_words(each, numbers, order) for each in changed)
    try:
        at_hand = jobs_at_hand(visit, touched)
    except REFUSALS as error:
        return OrderChanges(units=units, lines=(), trouble=refusal(error, visit.unit), jobs=touched)
    found = (*_of_lines(lines, touched, at_hand), *_new_lines(lines, at_hand))
    return OrderChanges(units=units, lines=found, trouble="", jobs=touched)


def _unit_words(each: ChangedUnit, numbers: Mapping[str, int], order: SupplyOrder) -> str:
    did = "was taken out" if each.ended_at and each.ended_at > order.issued_at else "was changed"
    return f"unit {each.code} of job {numbers[each.job_id]} {did}"


def _of_lines(lines: Sequence[OrderLine], jobs: Sequence[str], at_hand: JobsAtHand) -> Iterator[LineChanged]:
    areas = sheet_areas(at_hand)
    for line in lines:
        need, now_of = need_of(line), at_hand.shares
        is_area = need.kind is PriceKind.SHEET
        kept: Mapping[str, float] = line.detail.get("areas" if is_area else "needs", {})
        if not kept:
            continue  # it was issued before lines kept what their jobs took
        current = areas if is_area else now_of
        then = math.fsum(kept.get(job, 0.0) for job in jobs)
        now = math.fsum(current.get(need.key, {}).get(job, 0.0) for job in jobs)
        if is_area:
            then, now = then / SQUARE_INCHES, now / SQUARE_INCHES
        # What is shown can be checked with a pencil.
        then, now = round(then, 2), round(now, 2)
        if abs(now - then) > LITTLE:
            unit = "sq ft of parts" if is_area else ""
            yield LineChanged(
                words=words_of(need),
                then=_much(then, line, unit),
                now=_much(now, line, unit),
                difference=f"{_much(abs(now - then), line, unit)} {'more' if now > then else 'less'}",
            )


def _much(quantity: float, line: OrderLine, unit: str) -> str:
    rounded = round(quantity, 2)
    return f"{rounded:g} {unit}" if unit else much_words(rounded, need_of(line))


def _new_lines(lines: Sequence[OrderLine], at_hand: JobsAtHand) -> Iterator[LineChanged]:
    """What is taken now and was ordered of nobody, of the kinds that this order is about."""
    kinds = {line.kind for line in lines}
    for need in at_hand.needs:
        before = at_hand.before.get(need.key)
        much = need.quantity - (before.cut if before else 0.0)
        if need.kind.value in kinds and not (before and before.orders) and much > LITTLE:
            yield LineChanged(
                words=words_of(need),
                then="nothing",
                now=much_words(round(much, 2), need),
                difference="not ordered yet",
            )
