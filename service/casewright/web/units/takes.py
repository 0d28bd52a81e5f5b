"""What a unit takes: lumber and goods, hours, checks."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.standards import LabourLine, WoodFactor
from casewright.papers.cautions import caution_lines, may_be_resawn
from casewright.papers.writing import Writing, several
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pieces.takeoff.sequences import sequence_words, yard_size
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office
from casewright.web.units.findings import Checks, checks_of
from casewright.web.units.result import Shown, named
from casewright.web.units.worked import UnitHead, see_built_unit

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetBehind:
    """Feet that are bought with one waste."""

    use: str
    lines: tuple[str, ...]
    net: str
    rough: Shown
    waste: str
    ground: str
    order: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderShown:
    """One line of the lumber order, and how its feet came about."""

    wood: str
    bought: str
    grade: str
    feet: Shown
    exact: Shown
    longest: str
    needs: tuple[str, ...]
    sequences: tuple[str, ...]
    note: str
    behind: tuple[FeetBehind, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Good:
    """Something that is bought by the piece, sheet or quart."""

    item: str
    quantity: str
    note: str
    figure: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class LumberPage(Page):
    """What is bought for a unit."""

    template: ClassVar[str] = "units/lumber.html"
    head: UnitHead
    order: tuple[OrderShown, ...]
    goods: tuple[Good, ...]
    count: int
    refusal: str


@router.get("/units/{unit_id}/lumber")
def show_lumber(visit: Office, unit_id: str) -> Response:
    """The lumber order, sheets, hardware and finish of a unit."""
    seen = see_built_unit(visit, unit_id)
    held = seen.worked.held
    page = LumberPage(
        title=f"Lumber for unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        order=tuple(_order(line, seen.writing) for line in held.order) if held else (),
        goods=tuple(_goods(held)) if held else (),
        count=seen.head.unit.count,
        refusal=seen.worked.refusal,
    )
    return show(visit, page)


def _order(line: OrderLine, writing: Writing) -> OrderShown:
    return OrderShown(
        wood=line.wood + ("" if line.cut == "flat" else f", {line.cut.sawn}"),
        bought=line.bought.name,
        grade=str(line.grade),
        feet=Shown(text=str(line.feet), figure=named(line.feet)),
        exact=Shown(text=f"{line.exact:.2f}", figure=_exact(line)),
        longest=_picked(line.longest, writing),
        needs=tuple(
            f"{several(need.quantity, 'board')} at least {_picked(need.width, writing)} wide × "
            f"{_picked(need.length, writing)} long, for {', '.join(need.lines)}"
            + (" (of the sequence)" if need.matched else "")
            for need in line.needs
        ),
        sequences=tuple(sequence_words(found, writing.unit) for found in line.sequences),
        note=line.grade_note,
        behind=tuple(
            FeetBehind(
                use=group.use.value,
                lines=tuple(each.line for each in group.lines),
                net=f"{group.net:.2f}",
                rough=Shown(text=f"{group.rough:.2f}", figure=named(group.rough)),
                waste=f"{group.waste.fraction:.0%}",
                ground=f"{group.waste.row} ({group.waste.evidence.basis})",
                order=Shown(text=f"{group.order:.2f}", figure=named(group.order)),
            )
            for group in line.groups
        ),
    )


def _picked(inches: float, writing: Writing) -> str:
    """A least size as a yard picks it."""
    return writing.size(yard_size(inches, writing.unit))


def _exact(line: OrderLine) -> str:
    """The name of the exact feet behind whole ones."""
    return named(line.exact) or f"{named(line.feet).removesuffix('.feet')}.exact"


def _goods(held: Estimate) -> Iterator[Good]:
    for each in held.takeoff.sheets:
        yield Good(
            item=str(each.sheet),
            quantity=several(each.count, "sheet"),
            note=f"{each.note}, {each.exact:.2f} exactly",
            figure=named(each.exact),
        )
    count = held.takeoff.count
    for item in held.unit.hardware:
        spare = f"and {item.spare * count} spare; " if item.spare else ""
        yield Good(item=item.item, quantity=str(item.quantity * count), note=spare + item.note)
    yield Good(
        item=held.finish.product,
        quantity=several(held.finish.buy, "quart"),
        note=f"{held.finish.quarts:.2f} with losses",
        figure="finish.quarts",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class OperationShown:
    """One operation with its standard."""

    code: str
    name: str
    quantity: str
    counted: Shown
    each: Shown
    method: str
    factor: str
    minutes: Shown
    standard: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkShown:
    """One part of the work."""

    name: str
    operations: tuple[OperationShown, ...]
    minutes: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HoursPage(Page):
    """The hours of a unit."""

    template: ClassVar[str] = "units/hours.html"
    head: UnitHead
    work: tuple[WorkShown, ...]
    minutes: Shown
    hours: Shown
    allowance: str
    factor: WoodFactor | None
    refusal: str


@router.get("/units/{unit_id}/hours")
def show_hours(visit: Office, unit_id: str) -> Response:
    """The hours of a unit, operation by operation."""
    seen = see_built_unit(visit, unit_id)
    held = seen.worked.held
    minutes, hours = (held.minutes, held.hours) if held else (0.0, 0.0)
    page = HoursPage(
        title=f"Hours for unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        work=tuple(_work(held)) if held else (),
        minutes=Shown(text=f"{minutes:,.0f} min", figure="hours.minutes"),
        hours=Shown(text=f"{hours:,.2f} h", figure="hours.total"),
        allowance=f"{hours * 60 / minutes - 1:.0%}" if minutes else "",
        factor=held.wood_factor if held else None,
        refusal=seen.worked.refusal,
    )
    return show(visit, page)


def _work(held: Estimate) -> Iterator[WorkShown]:
    for group, lines in groupby(held.labour, key=lambda line: line.group):
        members = list(lines)
        yield WorkShown(
            name=str(group.value),
            operations=tuple(_operation(line, held) for line in members),
            minutes=f"{sum(line.minutes for line in members):,.0f}",
        )


def _operation(line: LabourLine, held: Estimate) -> OperationShown:
    driver = line.driver.value if line.driver else ""
    standard = f"hours.standard.{line.code}"
    return OperationShown(
        code=line.code,
        name=line.name,
        quantity=f"{line.quantity:,.6g}",
        counted=Shown(text=driver.replace("_", " "), figure=f"counted.{driver}" if driver else ""),
        each=Shown(text=f"{line.each:g}", figure=standard),
        method=line.method.value,
        factor=f"{line.factor:g}",
        minutes=Shown(text=f"{line.minutes:,.0f}", figure=f"hours.minutes.{line.code}"),
        standard=_ground(str(held.ledger[standard].basis)),
    )


def _ground(basis: str) -> str:
    """Where a standard comes from, in a few words; its working has all of them."""
    if basis.startswith("the shop file"):
        return "the shop's own"
    return basis.partition(", by ")[0].rpartition("(")[2].rstrip(")")


@dataclass(frozen=True, slots=True, kw_only=True)
class ChecksPage(Page):
    """Every check of a unit."""

    template: ClassVar[str] = "units/checks.html"
    head: UnitHead
    checks: Checks
    cautions: tuple[str, ...]
    refusal: str


@router.get("/units/{unit_id}/checks")
def show_checks(visit: Office, unit_id: str) -> Response:
    """Every check of a unit, what stops first, and the usual cautions."""
    seen = see_built_unit(visit, unit_id)
    unit, held = seen.built, seen.worked.held
    page = ChecksPage(
        title=f"Checks of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        checks=checks_of(held.findings if held else unit.findings, seen.writing.unit),
        cautions=caution_lines(unit, may_be_resawn(held.takeoff) if held else False),
        refusal=seen.worked.refusal,
    )
    return show(visit, page)
