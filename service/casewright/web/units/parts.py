"""The parts of a unit: finished and rough sizes, and the same for other programs."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.papers.csv_files import cut_list_csv, lumber_order_csv
from casewright.papers.cut_list import cut_list_paper
from casewright.papers.head import PaperHead
from casewright.papers.order import order_paper
from casewright.papers.unit_report import in_order
from casewright.papers.writing import Writing, several
from casewright.pieces.asked.reading import write_unit
from casewright.pieces.built.construct import Construction
from casewright.pieces.costs.estimate import Estimate
from casewright.pieces.layout.fitted import SmallPart
from casewright.pieces.layout.parts import SIZES
from casewright.pieces.takeoff.rough import RoughLine
from casewright.shop.refusals import NotFound
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.result import Shown, shown_size
from casewright.web.units.worked import Seen, UnitHead, see_built_unit

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class PartShown:
    """One line of the finished cut list."""

    line: str
    name: str
    quantity: int
    wood: str
    sizes: tuple[Shown, ...]
    other: str
    grain: str
    face: str
    ends: tuple[str, ...]
    codes: tuple[str, ...]
    measured: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughShown:
    """One line of the rough cut list, for all units that are alike."""

    line: str
    name: str
    quantity: int
    bought: str
    width: Shown
    length: Shown
    boards: int
    feet: Shown
    grade: str
    resaw: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutListPage(Page):
    """The cut list of a unit."""

    template: ClassVar[str] = "units/cut_list.html"
    head: UnitHead
    unit: str
    parts: tuple[PartShown, ...]
    rough: tuple[RoughShown, ...]
    offcuts: tuple[SmallPart, ...]
    count: int
    refusal: str


@router.get("/units/{unit_id}/cut-list")
def show_cut_list(visit: Office, unit_id: str) -> Response:
    """Finished and rough sizes of every part."""
    seen = see_built_unit(visit, unit_id)
    built, held = seen.built, seen.worked.held
    page = CutListPage(
        title=f"Parts of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        unit=seen.writing.unit.value,
        parts=tuple(_parts(built, seen.writing)),
        rough=tuple(_rough(held.takeoff.lines, built, seen.writing)) if held else (),
        offcuts=tuple(_offcuts(built, seen.writing)),
        count=built.spec.count,
        refusal=seen.worked.refusal,
    )
    return show(visit, page)


def _parts(unit: Construction, writing: Writing) -> Iterator[PartShown]:
    for line in in_order(unit.lines):
        part = line.part
        sizes = [getattr(part, name) for name in SIZES]
        yield PartShown(
            line=line.line,
            name=part.name,
            quantity=line.quantity,
            wood=part.wood + ("" if part.cut == "flat" or part.sheet else f", {part.cut.sawn}"),
            sizes=tuple(shown_size(size, writing, line.line) for size in sizes),
            other=" × ".join(writing.other(size) for size in sizes),
            grain=part.grain.value,
            face=part.face.value,
            ends=tuple(dict.fromkeys(writing.said(end) for end in part.ends if end)),
            codes=line.codes,
            measured=part.measured,
        )


def _offcuts(unit: Construction, writing: Writing) -> Iterator[SmallPart]:
    for each in unit.small_parts:
        yield replace(each, size=writing.said(each.size), note=writing.said(each.note))


def _rough(lines: tuple[RoughLine, ...], unit: Construction, writing: Writing) -> Iterator[RoughShown]:
    place = {line.line: number for number, line in enumerate(in_order(unit.lines))}
    for line in sorted(lines, key=lambda each: place[each.line]):
        grade = line.grade.grade
        yield RoughShown(
            line=line.line,
            name=line.of.part.name,
            quantity=line.quantity,
            bought=line.bought.name,
            width=shown_size(line.width, writing, f"{line.figures}.rough_width"),
            length=shown_size(line.length, writing, f"{line.figures}.rough_length"),
            boards=line.boards,
            feet=Shown(text=f"{line.rough:.2f}", figure=f"{line.figures}.rough_feet"),
            grade=f"{grade.name}{', wide' if line.grade.wide else ''}" if grade else "none: pick by hand",
            resaw=_resawn(line),
        )


def _resawn(line: RoughLine) -> str:
    """What is sawn in two through its thickness: blanks of parts that match, or what would save wood."""
    if line.is_matched:
        return f"{several(line.blanks, 'blank')} of this size, sawn in two to match"
    return f"two from one {line.resaw.bought.name} saves wood" if line.resaw else ""


@router.get("/units/{unit_id}/cut-list.csv")
def show_cut_list_csv(visit: Office, unit_id: str) -> Response:
    """The cut list as CSV."""
    seen = see_built_unit(visit, unit_id)
    held = _estimated(seen)
    paper = cut_list_paper(paper_head(visit, seen), [(held.unit, held.takeoff)])
    return _file(seen, "cut-list.csv", cut_list_csv(paper), "text/csv")


@router.get("/units/{unit_id}/order.csv")
def show_order_csv(visit: Office, unit_id: str) -> Response:
    """The lumber order as CSV; no price is in it."""
    seen = see_built_unit(visit, unit_id)
    held = _estimated(seen)
    counts = {held.unit.spec.code: held.takeoff.count}
    paper = order_paper(
        paper_head(visit, seen), held.order, held.takeoff.sheets, held.unit.hardware, counts=counts
    )
    return _file(seen, "order.csv", lumber_order_csv(paper), "text/csv")


@router.get("/units/{unit_id}/unit-file.json")
def show_unit_file(visit: Office, unit_id: str, revision: int | None = None) -> Response:
    """The unit file, to be kept or to start another unit from."""
    seen = see_built_unit(visit, unit_id, revision)
    return _file(seen, "unit.json", write_unit(seen.loaded.spec).encode(), "application/json")


def _estimated(seen: Seen) -> Estimate:
    if seen.worked.held is None:
        raise NotFound(f"cut list of this unit yet: {seen.worked.refusal}")
    return seen.worked.held


def paper_head(visit: Visit, seen: Seen) -> PaperHead:
    """The head of a paper of the unit's job."""
    return PaperHead(
        shop=visit.shop.name,
        job_number=str(seen.head.job.number),
        job_name=seen.head.job.name,
        revision=seen.head.revision.number,
        unit=LengthUnit(seen.writing.unit),
    )


def _file(seen: Seen, name: str, body: bytes, kind: str) -> Response:
    called = f"job-{seen.head.job.number}-{seen.head.unit.code}-{name}"
    headers = {"content-disposition": f'attachment; filename="{called}"'}
    return Response(body, media_type=f"{kind}; charset=utf-8", headers=headers)
