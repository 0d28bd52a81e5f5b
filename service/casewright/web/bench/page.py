"""A drawer's own page at the bench: what comes next, the numbers that matter, what is measured and ticked."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain
from typing import Any, ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.joint_views import shape_drawing
from casewright.drawing.notch_plan import notch_plan
from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.labour.bench import Again, DrawerProgress, Mark
from casewright.labour.next_step import Step, TakeBack
from casewright.labour.stages import Gate, GateKind, Stage, before_marking, drawer_stages, dry_fit
from casewright.labour.stages import gates as all_gates
from casewright.measure.findings import Finding, Verdict
from casewright.measure.lengths import LengthUnit
from casewright.measure.saying import unit_read
from casewright.papers.gauge_sheet import RULE, gauge_sheet_data
from casewright.papers.writing import Writing
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.measuring import size_words
from casewright.pieces.drawers.drawer import Drawer as DrawerBuilt
from casewright.records.bench import Drawer
from casewright.records.board import BoardRow
from casewright.shop.at_bench import AtBench, at_bench
from casewright.shop.bench import Place, add_note, is_same, set_sizes, set_ticks
from casewright.shop.hours import shop_operations
from casewright.web.bench.hands import hand_of
from casewright.web.bench.job_papers import PaperAtHand, papers_at_hand
from casewright.web.bench.lists import (
    FITTED,
    MOISTURE,
    TickLine,
    as_typed,
    tick_lines,
    typed_beside,
    worked_through_now,
)
from casewright.web.bench.numbers import Number, main_numbers, more_numbers, sides_drawn, size_text
from casewright.web.bench.time import Clock, clock_of, names_of
from casewright.web.frame.pages import Page, drawing, see, show
from casewright.web.frame.paper_says import gauges_now
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Everybody, Visit

router = APIRouter()
STEPS = {LengthUnit.INCH: (1 / 64, "1/64"), LengthUnit.MILLIMETRE: (0.5 / 25.4, "0.5")}
"""By how much a size is stepped up or down, and how that is written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeField:
    """One size that the bench is asked for.

    Attributes:
        name: its name in a tap
        label: what it is
        drawn: the designed size, as text
        inches: what stepping starts from [in]
        needed: whether a stage waits for it
        needed_now: whether the next stage asks for it
        missing: whether the next stage is held for want of it
        off: how far the measured size is from the drawn one, in words; empty where it is not measured
        opened: whether it shows without a tap: measured while no size is waited for, or refused just now
    """

    name: str
    label: str
    drawn: str
    inches: float
    needed: bool
    needed_now: bool
    missing: bool
    off: str
    opened: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchPage(Page):
    """A drawer at the bench."""

    template: ClassVar[str] = "bench/drawer.html"
    row: BoardRow
    before: Drawer | None
    after: Drawer | None
    progress: DrawerProgress
    stages: Sequence[Stage]
    step: Step
    undo: TakeBack
    leave: TakeBack
    case_again: Sequence[Again]
    not_agreed: str
    is_idle: bool
    stops: Sequence[Finding]
    cautions: Sequence[str]
    go_to: Sequence[tuple[str, str]]
    trouble: str
    refused: str
    numbers: Sequence[Number]
    more: Sequence[Number]
    sizes: Sequence[SizeField]
    measures_now: bool
    unit: LengthUnit
    step_size: float
    step_words: str
    marking: Sequence[TickLine]
    marks_now: bool
    moistures: Sequence[tuple[str, str]]
    ticks: Sequence[TickLine]
    fits_now: bool
    fitted: Sequence[tuple[str, str]]
    gauges: Sequence[Mapping[str, Any]]
    gauges_rule: str
    form: Form
    drawings: Sequence[tuple[str, Markup]]
    papers: Sequence[PaperAtHand]
    history: Sequence[tuple[Mark, str]]
    operations: Sequence[tuple[str, str]]
    clock: Clock | None
    back: str


@router.get("/bench/{drawer_id}")
def show_drawer(visit: Everybody, drawer_id: str) -> Response:
    """A drawer at the bench."""
    return show(visit, bench_page(visit, at_bench(visit.db, visit.shop, drawer_id)))


@router.post("/bench/{drawer_id}/sizes")
def save_sizes(visit: Everybody, drawer_id: str) -> Response:
    """Keeps what was measured; a size that cannot be is refused beside its field, and none is kept."""
    held = at_bench(visit.db, visit.shop, drawer_id)
    read = Reader(visit.typed)
    sizes = _typed_sizes(read, held, unit_read(visit.unit, held.unit))
    if not read.faults:
        changes = {name: size for name, (size, _) in sizes.items()}
        for name, sentence in held.refusals(changes).items():
            read.fault(name, sentence)
    if read.faults:
        return show(visit, bench_page(visit, held, form=read.form), 422)
    place = held.place
    set_sizes(visit.db, place, sizes, hand_of(visit))
    return _answer(visit, held, place, "live" if _missing_now(held) else "sizes")


@router.post("/bench/{drawer_id}/marking")
def save_marking(visit: Everybody, drawer_id: str) -> Response:
    """Ticks lines of the list before marking out, or takes ticks off; keeps the moistures."""
    return _save_list(visit, drawer_id, "marking")


@router.post("/bench/{drawer_id}/ticks")
def save_ticks(visit: Everybody, drawer_id: str) -> Response:
    """Ticks lines of the dry-fit list, or takes ticks off; keeps what is measured beside them."""
    return _save_list(visit, drawer_id, "dry-fit")


def _save_list(visit: Visit, drawer_id: str, part: str) -> Response:
    held = at_bench(visit.db, visit.shop, drawer_id)
    read = Reader(visit.typed)
    measured = typed_beside(read, held, visit.unit)
    if read.faults:
        return show(visit, bench_page(visit, held, form=read.form), 422)
    place = held.place
    on = dict.fromkeys(visit.typed.all("tick"), True)
    set_ticks(visit.db, place, on | dict.fromkeys(visit.typed.all("untick"), False), hand_of(visit))
    set_sizes(visit.db, place, measured, hand_of(visit))
    return _answer(visit, held, place, part)


@router.post("/bench/{drawer_id}/notes")
def save_note(visit: Everybody, drawer_id: str) -> Response:
    """Keeps a note about a drawer."""
    held = at_bench(visit.db, visit.shop, drawer_id)
    read = Reader(visit.typed)
    text = read.text("note", most=1000, needed="Write a few words first.")
    if read.faults:
        return show(visit, bench_page(visit, held, form=read.form), 422)
    place = held.place
    add_note(visit.db, place, text, hand_of(visit))
    return _answer(visit, held, place, "notes")


def _answer(visit: Visit, held: AtBench, place: Place, part: str) -> Response:
    """The page again, at the part that was worked on; the part alone where a script asked for it."""
    if visit.wants_block:
        return show(visit, bench_page(visit, replace(held, taps=place.rows)))
    return see(f"/bench/{held.row.drawer.id}#{part}", "saved")


def _typed_sizes(read: Reader, held: AtBench, unit: LengthUnit) -> dict[str, tuple[float | None, str]]:
    """The sizes of the form that differ from what is held; an empty field takes a size back."""
    found: dict[str, tuple[float | None, str]] = {}
    for each in held.measurables:
        if read.typed.has(each.size):
            size = read.length(each.size, unit, needed=False)
            if not is_same(held.progress.measured.get(each.size), size):
                found[each.size] = (size, read.typed.get(each.size).strip())
    return {name: each for name, each in found.items() if name not in read.faults}


def bench_page(visit: Visit, held: AtBench, form: Form | None = None, refused: str = "") -> BenchPage:
    """A drawer's page; two queries beside those for the drawer.

    Args:
        visit: who looks
        held: the drawer
        form: one of the page's forms with its faults; the fields of the others show what is kept
        refused: why a tap does not count
    """
    progress, unit = held.progress, unit_read(visit.unit, held.unit)
    step = held.step.in_unit(unit)
    before, after = held.neighbours
    kept = {mark.name: as_typed(mark, unit) for mark in progress.sizes}
    marking = tick_lines(before_marking(), progress, unit)
    ticks = tick_lines(dry_fit(), progress, unit)
    names = names_of(shop_operations(held.figures))
    now = step.stage.operations if step.stage else ()
    return BenchPage(
        title=f"Drawer {held.row.code}",
        row=held.row,
        before=before,
        after=after,
        progress=progress,
        stages=drawer_stages(),
        step=step,
        undo=held.take_back(visit.now, is_maker=visit.sees_prices),
        leave=held.leave(visit.now, is_maker=visit.sees_prices),
        case_again=held.case.again,
        not_agreed=held.not_agreed,
        is_idle=held.is_idle,
        stops=[each.in_unit(unit) for each in held.findings if each.verdict is Verdict.STOP],
        cautions=[_said(each.in_unit(unit)) for each in held.findings if each.verdict is Verdict.CAUTION],
        go_to=[] if held.is_idle else _go_to(held),
        trouble=held.trouble,
        refused=refused,
        numbers=main_numbers(held.drawer, progress, unit) if held.drawer else (),
        more=more_numbers(held.drawer, unit) if held.drawer else (),
        sizes=_fields(held, form, unit),
        measures_now=bool(_missing_now(held)) and not held.is_idle,
        unit=unit,
        step_size=STEPS[unit][0],
        step_words=STEPS[unit][1],
        marking=marking,
        marks_now=worked_through_now(GateKind.MARKED, marking, held) and not held.is_idle,
        moistures=MOISTURE,
        ticks=ticks,
        fits_now=worked_through_now(GateKind.LIST, ticks, held) and not held.is_idle,
        fitted=FITTED,
        gauges=_gauges(held, unit),
        gauges_rule=RULE.format(size_text(1 / 64, unit)),
        form=Form(values={**kept, **form.values}, faults=form.faults, once=form.once)
        if form
        else Form(values=kept),
        drawings=_drawings(held.drawer, held.worked[0], unit) if held.drawer else (),
        papers=() if visit.wants_block else papers_at_hand(visit, held),
        history=_history(progress, unit, is_gone=held.row.drawer.gone),
        operations=[(code, names[code]) for code in now if code in names],
        clock=clock_of(visit),
        back=f"/bench/{held.row.drawer.id}",
    )


def _gauges(held: AtBench, unit: LengthUnit) -> Sequence[Mapping[str, Any]]:
    """The gauges of the unit that serve a part of this drawer, with all that they serve."""
    if held.drawer is None:
        return ()
    mine, gauges = f"{held.drawer.code}-", gauges_now(held.text, held.figures, unit)
    lines = (line for line in gauges if any(part.startswith(mine) for part in line.serves))
    return gauge_sheet_data(lines, Writing(unit=unit))


def _waits(held: AtBench) -> list[Gate]:
    """What the next stage is held by."""
    gates = [gate for gate in all_gates() if held.step.stage and gate.stage == held.step.stage.code]
    return [gate for gate in gates if gate.reason in held.step.reason]


def _missing_now(held: AtBench) -> set[str]:
    """The sizes for want of which the next stage is held; their fields stand right below it."""
    needs = {name for gate in _waits(held) if gate.kind is GateKind.MEASURED for name in gate.needs}
    return needs & {each.size for each in held.measurables}


def _go_to(held: AtBench) -> list[tuple[str, str]]:
    """The parts of the page, further down, where what the next stage waits for can be done."""
    parts = {
        GateKind.MARKED: ("marking", "Look the parts over"),
        GateKind.LIST: ("dry-fit", "Go through the list"),
    }
    return [parts[gate.kind] for gate in _waits(held) if gate.kind in parts]


def _said(finding: Finding) -> str:
    return f"{finding.message} {finding.remedy}".strip()


def _fields(held: AtBench, form: Form | None, unit: LengthUnit) -> list[SizeField]:
    measured, now = held.progress.measured, _missing_now(held)
    waited_for = set(
        chain.from_iterable(gate.needs for gate in all_gates() if gate.kind is GateKind.MEASURED)
    )
    return [
        SizeField(
            name=each.size,
            label=each.label,
            drawn=size_text(each.designed, unit),
            inches=measured.get(each.size, each.designed),
            needed=each.size in waited_for,
            needed_now=each.size in now,
            missing=each.size in now and not measured.get(each.size),
            off=_off(measured.get(each.size), each.designed, unit),
            opened=(each.size in measured and not now) or bool(form and each.size in form.faults),
        )
        for each in held.measurables
    ]


def _off(found: float | None, drawn: float, unit: LengthUnit) -> str:
    if found is None:
        return ""
    if is_same(found, drawn):
        return "as drawn"
    return f"{size_text(abs(found - drawn), unit)} {'over' if found > drawn else 'under'}"


def _drawings(
    drawer: DrawerBuilt, built: Construction | None, unit: LengthUnit
) -> tuple[tuple[str, Markup], ...]:
    """A drawer's joints, drawn; where its sides are of unlike thickness with the side that is drawn.

    Of a drawer that is notched around pipes its plan first."""
    joints, of = drawer.joints, (drawer.code,)
    if joints.half_blind:
        at_front = half_blind_drawing(joints.half_blind, of, unit, "front-joint")
    else:
        at_front = shape_drawing(joints.front.shape, f"{drawer.code}, front", unit, "front-joint")
    if joints.through:
        at_back = through_drawing(joints.through, of, unit, "back-joint")
    else:
        at_back = shape_drawing(joints.back.shape, f"{drawer.code}, back", unit, "back-joint")
    of_front, of_back = sides_drawn(drawer)
    around: tuple[tuple[str, Markup], ...] = ()
    if built is not None and drawer.sizes.notch is not None:
        around = (("Notch around pipes", drawing(notch_plan(built, drawer, unit).svg())),)
    return (
        *around,
        (f"Front joint{of_front}", drawing(at_front.svg(standalone=False))),
        (f"Back joint{of_back}", drawing(at_back.svg(standalone=False))),
    )


def _history(progress: DrawerProgress, unit: LengthUnit, *, is_gone: bool) -> list[tuple[Mark, str]]:
    """What stands, the latest first, each in words; of a drawer without an opening its sizes too."""
    words = {stage.code: stage.word for stage in drawer_stages()}
    found = [
        *((mark, words[mark.name]) for mark in progress.reached),
        *((mark, f"note: {mark.text}") for mark in progress.notes),
        *(
            (mark, f"measured: {size_words(mark.name)} {as_typed(mark, unit)}")
            for mark in progress.sizes
            if is_gone
        ),
    ]
    return sorted(found, key=lambda each: each[0].at, reverse=True)
