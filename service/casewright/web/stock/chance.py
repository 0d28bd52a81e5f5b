"""How sure the feet of some jobs are, before anybody has seen the boards."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import refusal
from casewright.papers.order_pdf import USES
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.takeoff.feet_asked import SURE, EnoughFeet, feet_asked
from casewright.pieces.takeoff.lumber import OrderLine
from casewright.records.jobs import Job
from casewright.shop.figures import figures_from
from casewright.shop.refusals import Refused
from casewright.solving.beside import NoAnswer
from casewright.solving.feet import MOST_PARTS, enough_for
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office
from casewright.web.stock.needs import JobsAtHand, jobs_at_hand
from casewright.web.stock.sorts import CUTS
from casewright.wood.loads import board_habit
from casewright.wood.waste import NoWasteFigure, mill_waste, order_feet_from_net

router = APIRouter()
SEED = 20_270
Members = Sequence[tuple[str, OrderLine]]


@dataclass(frozen=True, slots=True, kw_only=True)
class ChanceShown:
    """One wood, cut, class and grade: what is ordered, and what loads of boards say.

    Attributes:
        words: what it is
        rough: feet of its parts on rough size, in words
        ordered: feet that the order has
        wastes: with what waste they were reckoned, and on what ground, a line for each use
        mill: what a mill's published yield would take, in words; empty where none is published
        found: what the loads say; None where there are too many parts to draw loads for
        parts: how many parts there are
        never: what no load held, in words
        habit: from which boards the loads were drawn
    """

    words: str
    rough: str
    ordered: int
    wastes: Sequence[str]
    mill: str
    found: EnoughFeet | None
    parts: int
    never: str
    habit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChancePage(Page):
    """How sure the feet are."""

    template: ClassVar[str] = "stock/chance.html"
    jobs: Sequence[Job]
    lines: Sequence[ChanceShown]
    most_parts: int
    sure: float
    back: str


@router.get("/stock/needs/chance")
def show_chance(visit: Office) -> Response:
    """Draws loads of boards for each wood of some jobs, and lays them out."""
    chosen = [each[:13] for each in visit.request.query_params.getlist("job") if each]
    if not chosen:
        raise Refused("Choose the jobs first whose feet are to be looked at.", 422)
    try:
        at_hand = jobs_at_hand(visit, chosen)
        lines = _lines(at_hand)
    except REFUSALS as error:
        raise Refused(refusal(error, visit.unit), 422) from None
    except NoAnswer as error:
        raise Refused(str(error), 503) from None
    page = ChancePage(
        title="How sure the feet are",
        jobs=at_hand.jobs,
        lines=lines,
        most_parts=MOST_PARTS,
        sure=SURE,
        back="/stock/needs?" + "&".join(f"job={each}" for each in chosen),
    )
    return show(visit, page)


def _lines(at_hand: JobsAtHand) -> tuple[ChanceShown, ...]:
    together: dict[tuple[str, str, str, str], list[tuple[str, OrderLine]]] = {}
    several = len(at_hand.jobs) > 1
    for job, each in zip(at_hand.jobs, at_hand.at_hand, strict=True):
        for line in each.estimate.order:
            key = (line.wood, line.cut.value, line.bought.name, line.grade.value)
            together.setdefault(key, []).append((f"{job.number}: " if several else "", line))
    figures = figures_from(at_hand.at_hand[0].figures_text)
    asked = tuple(feet_asked(members, figures, seed=SEED) for members in together.values())
    return tuple(
        _shown(members, found, sum(part.count for part in each.parts))
        for members, each, found in zip(together.values(), asked, enough_for(asked), strict=True)
    )


def _shown(members: Members, found: EnoughFeet | None, parts: int) -> ChanceShown:
    first = members[0][1]
    cut = CUTS.get(first.cut.value, "")
    words = " ".join(part for part in (first.wood, first.bought.name, cut, first.grade.value) if part)
    habit = board_habit(first.grade)
    return ChanceShown(
        words=words[:1].upper() + words[1:],
        rough=f"{sum(group.rough for _, line in members for group in line.groups):.2f}",
        ordered=sum(line.feet for _, line in members),
        wastes=tuple(dict.fromkeys(_wastes(members))),
        mill=_mill(members),
        found=found,
        parts=parts,
        never=", ".join(found.never) if found else "",
        habit=f"{habit.widths[0]:g} to {habit.widths[2]:g} in wide, {habit.lengths[0]:g} to "
        f"{habit.lengths[2]:g} ft long, {habit.clear[0] * 100:.0f} to {habit.clear[1] * 100:.0f} % clear "
        f"({habit.evidence})",
    )


def _wastes(members: Members) -> Iterator[str]:
    for _, line in members:
        for group in line.groups:
            yield f"{group.waste.fraction * 100:.3g} % waste, {USES[group.use]} ({group.waste.evidence})"


def _mill(members: Members) -> str:
    """What a mill takes for clear strips is published on net size: a check from outside."""
    try:
        waste = mill_waste(members[0][1].grade)
    except NoWasteFigure:
        return ""
    net = sum(group.net for _, line in members for group in line.groups)
    return f"{order_feet_from_net(net, waste):.0f} bd ft by a mill's yield ({waste.evidence})"
