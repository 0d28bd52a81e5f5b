"""How sure the feet of some jobs are, before anybody has seen the boards."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import refusal
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.pieces.takeoff.on_hand import blanks_of
from casewright.records.jobs import Job
from casewright.shop.figures import figures_from
from casewright.shop.refusals import Refused
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office
from casewright.web.stock.needs import jobs_at_hand
from casewright.web.stock.sorts import CUTS
from casewright.wood.enough_feet import LOADS, SURE, EnoughFeet, board_habit, enough_feet
from casewright.wood.grades import GradeName
from casewright.wood.strips import Blank

router = APIRouter()
SEED = 20_270
KEPT = 64


@dataclass(frozen=True, slots=True, kw_only=True)
class ChanceShown:
    """One wood, cut and class: what is ordered, and what loads of boards say."""

    words: str
    rough: str
    ordered: int
    found: EnoughFeet
    boards: str
    never: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChancePage(Page):
    """How sure the feet are."""

    template: ClassVar[str] = "stock/chance.html"
    jobs: Sequence[Job]
    lines: Sequence[ChanceShown]
    loads: int
    sure: float
    back: str


@router.get("/stock/needs/chance")
def show_chance(visit: Office) -> Response:
    """Draws loads of boards for each wood of some jobs."""
    chosen = [each[:13] for each in visit.request.query_params.getlist("job") if each]
    if not chosen:
        raise Refused("Choose the jobs first whose feet are to be looked at.", 422)
    try:
        at_hand = jobs_at_hand(visit, chosen)
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None
    together: dict[tuple[str, str, str, str], list[tuple[str, OrderLine]]] = {}
    for job, each in zip(at_hand.jobs, at_hand.at_hand, strict=True):
        for line in each.estimate.order:
            key = (line.wood, line.cut.value, line.bought.name, line.grade.value)
            together.setdefault(key, []).append((str(job.number) if len(at_hand.jobs) > 1 else "", line))
    figures = at_hand.at_hand[0].figures_text
    page = ChancePage(
        title="How sure the feet are",
        jobs=at_hand.jobs,
        lines=[_line(members, figures) for members in together.values()],
        loads=LOADS,
        sure=SURE,
        back="/stock/needs?" + "&".join(f"job={each}" for each in chosen),
    )
    return show(visit, page)


def _line(members: Sequence[tuple[str, OrderLine]], figures: str) -> ChanceShown:
    first = members[0][1]
    blanks = tuple(
        Blank(
            width=each.width,
            length=each.length,
            count=each.count,
            mark=f"{mark}: {each.mark}" if mark else each.mark,
            is_glued=each.is_glued,
        )
        for mark, line in members
        for each in blanks_of(part for group in line.groups for part in group.lines)
    )
    found = _drawn(blanks, first.grade, first.bought.rough, first.wood, figures)
    cut = CUTS.get(first.cut.value, "")
    words = " ".join(part for part in (first.wood, first.bought.name, cut, first.grade.value) if part)
    habit = board_habit(first.grade)
    return ChanceShown(
        words=words[:1].upper() + words[1:],
        rough=f"{sum(group.rough for _, line in members for group in line.groups):.2f}",
        ordered=sum(line.feet for _, line in members),
        found=found,
        boards=f"boards {habit.widths[0]:g} to {habit.widths[2]:g} in wide, {habit.lengths[0]:g} to "
        f"{habit.lengths[2]:g} ft long, {habit.clear[0] * 100:.0f} to {habit.clear[1] * 100:.0f} % clear: "
        f"{found.evidence}",
        never=", ".join(found.never),
    )


@lru_cache(maxsize=KEPT)
def _drawn(
    blanks: tuple[Blank, ...], grade: GradeName, thickness: float, wood: str, figures: str
) -> EnoughFeet:
    """Values in, values out: the same parts and figures draw the same loads, so they are kept a while."""
    shop = figures_from(figures)
    return enough_feet(
        blanks,
        grade,
        thickness,
        seed=SEED,
        kerf=shop.spec.kerf,
        end_trim=shop.spec.end_trim,
        edge_trim=shop.spec.edge_trim,
        average=shop.board_width(wood),
    )
