"""How a unit stands: scope, every situation with its factor, safe travel, remedies, weights, carrying."""

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.ground import is_hung
from casewright.drawing.standing import standing_view
from casewright.measure.rounding import up_to
from casewright.measure.saying import say
from casewright.papers.stand_words import (
    FIXED,
    ONLY_THE_TEST,
    SIDEWAYS,
    alone_line,
    limit_words,
    mending,
    others_open_words,
    scope_words,
    shown_verdict,
    together_line,
    verdict_of,
    wall_lines,
)
from casewright.papers.writing import Writing
from casewright.pieces.built.masses import Mass
from casewright.pieces.built.standing import Limit, Standing, basis_of, unit_standing
from casewright.stability.limits import house_limits, rows
from casewright.stability.tip_checks import SOURCES, factor_shown, what_is_done, worst_cases
from casewright.stability.tipping import TipCase
from casewright.web.frame.pages import Page, drawing, show
from casewright.web.frame.visits import Office
from casewright.web.units.findings import Checks, checks_of
from casewright.web.units.result import Shown, named
from casewright.web.units.worked import UnitHead, see_built_unit

router = APIRouter()
STRENGTH = {
    "bottom sag",
    "shelf sag",
    "rail sag",
    "top sag",
    "racking",
    "jam",
    "drawer shape",
    "runner wear",
    "slide load",
    "wall fixings",
}
"""Checks of strength and use, by their names."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitShown:
    """One of the three limits of the rule."""

    name: str
    found: str
    least: str
    is_reached: bool
    source: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseShown:
    """One situation."""

    kind: str
    about: str
    holding: Shown
    tipping: Shown
    factor: Shown
    verdict: str
    state: str
    source: str
    basis: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ViewShown:
    """The worst of one kind of situation, drawn."""

    title: str
    done: str
    factor: str
    verdict: str
    state: str
    view: Markup


@dataclass(frozen=True, slots=True, kw_only=True)
class FurtherShown:
    """All that can be open, at one travel."""

    why: str
    travel: str
    factor: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightShown:
    """One part, or several together, with weight and centre."""

    code: str
    name: str
    wood: str
    weight: Shown
    x: str
    y: str
    z: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CarryShown:
    """Something that is carried in one piece."""

    what: str
    weight: str
    people: Shown
    noun: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StabilityPage(Page):
    """How a unit stands.

    Attributes:
        head: the unit
        unit: `in` or `mm`
        moments: the unit of its moments
        screen: what the screen is not
        fixed: what holds of a piece that is fixed to the building; empty for one that stands free
        scope: whether the rule covers the piece
        limits: the three limits of the rule
        is_free: whether it stands free
        is_hung: whether it hangs, its height above the floor unknown
        target: the factor that is wanted, and its ground
        views: the worst of each kind of situation, drawn
        cases: every situation
        together: how far all drawers may come out together
        travels: the same, and how far each may come out alone
        further: how it would stand further out
        others: what is said of a child with the other drawers open
        remedies: what would mend it, the wall restraint last; none for a piece that is fixed
        not_enough: what helps and does not suffice by itself
        sideways: what is not reckoned
        carries: what has to be carried
        each: what one person is asked to carry
        wall: what is said of the wall fixings
        strength: what is checked of shelves, rails, bottoms, runners and fixings
        masses: the case, each drawer and the whole
        parts: every part
    """

    template: ClassVar[str] = "units/stability.html"
    head: UnitHead
    unit: str
    moments: str
    screen: str
    fixed: str
    scope: str
    limits: tuple[LimitShown, ...]
    is_free: bool
    is_hung: bool
    target: tuple[str, str]
    views: tuple[ViewShown, ...]
    cases: tuple[CaseShown, ...]
    together: Shown | None
    travels: tuple[str, ...]
    further: tuple[FurtherShown, ...]
    others: str
    remedies: tuple[str, ...]
    not_enough: tuple[str, ...]
    sideways: str
    carries: tuple[CarryShown, ...]
    each: str
    wall: tuple[str, ...]
    strength: Checks
    masses: tuple[WeightShown, ...]
    parts: tuple[WeightShown, ...]


@router.get("/units/{unit_id}/stability")
def show_stability(visit: Office, unit_id: str) -> Response:
    """How a unit stands with its drawers open, what would mend it, and what it weighs part by part."""
    seen = see_built_unit(visit, unit_id)
    held, writing = unit_standing(seen.built), seen.writing
    found, is_free = mending(held), held.unit.stand.use.free_standing
    page = StabilityPage(
        title=f"Stability of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        unit=writing.unit.value,
        moments=writing.moments,
        screen=ONLY_THE_TEST,
        fixed="" if is_free else FIXED,
        scope=writing.said(scope_words(held)),
        limits=tuple(_limit(each, writing) for each in held.limits),
        is_free=is_free,
        is_hung=is_hung(held.unit),
        target=(f"{house_limits().target_factor:g}", f"{basis_of('target_factor')}"),
        views=tuple(_view(case, held, writing) for case in worst_cases(held.cases)),
        cases=tuple(_case(case, held, writing) for case in held.cases),
        together=_together(held, writing),
        travels=tuple(writing.said(line) for line in (alone_line(held),) if line),
        further=tuple(
            FurtherShown(
                why=each.why, travel=writing.size(each.travel), factor=factor_shown(each.case.factor)
            )
            for each in held.further
        ),
        others=writing.said(others_open_words(held)),
        remedies=tuple(map(writing.said, found.enough)),
        not_enough=tuple(map(writing.said, found.not_enough)),
        sideways=SIDEWAYS,
        carries=tuple(
            CarryShown(
                what=each.what,
                weight=f"{up_to(each.weight, 1):.0f} lb",
                people=Shown(text=str(each.people), figure=named(each.people)),
                noun="person" if each.people == 1 else "people",
            )
            for each in held.carries
        ),
        each=f"{held.unit.spec.use.lift_lb:g} lb",
        wall=tuple(map(writing.said, wall_lines(held.wall))) if held.wall else (),
        strength=checks_of((each for each in seen.built.findings if each.rule in STRENGTH), writing.unit),
        masses=tuple(_masses(held, writing)),
        parts=tuple(_parts(held, writing)),
    )
    return show(visit, page)


def _limit(each: Limit, writing: Writing) -> LimitShown:
    return LimitShown(
        name=each.name,
        found=writing.said(limit_words(each, each.found)),
        least=writing.said(limit_words(each, each.least)),
        is_reached=each.is_reached,
        source=each.source,
        basis=each.basis,
    )


def _case(case: TipCase, held: Standing, writing: Writing) -> CaseShown:
    limit = SOURCES[case.situation.kind]
    return CaseShown(
        kind=str(case.situation.kind),
        about=case.situation.about,
        holding=Shown(text=writing.moment(case.holding), figure=named(case.holding)),
        tipping=Shown(text=writing.moment(case.tipping), figure=named(case.tipping)),
        factor=Shown(text=factor_shown(case.factor), figure=named(case.factor)),
        verdict=shown_verdict(case, held),
        state=_state(case, held),
        source=str(rows()[limit]["source"]),
        basis=basis_of(limit),
    )


def _state(case: TipCase, held: Standing) -> str:
    """The class of its verdict; none for a piece of which nothing is asked."""
    return verdict_of(case, held) if held.unit.stand.use.free_standing else ""


def _view(case: TipCase, held: Standing, writing: Writing) -> ViewShown:
    return ViewShown(
        title=str(case.situation.kind),
        done=writing.said(what_is_done(case, held.unit.stand.piece, house_limits())),
        factor=factor_shown(case.factor),
        verdict=shown_verdict(case, held),
        state=_state(case, held),
        view=drawing(standing_view(held.unit, case, writing.unit).svg()),
    )


def _together(held: Standing, writing: Writing) -> Shown | None:
    if not together_line(held):
        return None
    travel = held.unit.stand.safe_travel
    return Shown(text=writing.said(say("{:down bare}", travel)), figure=named(travel))


def _masses(held: Standing, writing: Writing) -> list[WeightShown]:
    masses = held.unit.masses
    total = Shown(text=f"{masses.total:.2f}", figure=named(masses.total))
    drawers = [_mass(code, "drawer with its pulls", mass, writing) for code, mass in masses.drawers.items()]
    doors = [_mass(code, "door", mass, writing) for code, mass in masses.leaves.items()]
    return [
        _mass("", "case", masses.case, writing),
        *drawers,
        *doors,
        _mass("", "whole piece, empty and shut", masses.whole, writing, total),
    ]


def _mass(code: str, name: str, mass: Mass, writing: Writing, weight: Shown | None = None) -> WeightShown:
    return WeightShown(
        code=code,
        name=name,
        wood="",
        weight=weight or Shown(text=f"{mass.weight:.2f}"),
        x=writing.fine(mass.x, 2),
        y=writing.fine(mass.y, 2),
        z=writing.fine(mass.z, 2),
    )


def _parts(held: Standing, writing: Writing) -> list[WeightShown]:
    return [
        WeightShown(
            code=each.code,
            name=each.name,
            wood=each.wood or "bought",
            weight=Shown(text=f"{each.weight:.2f}", figure=named(each.weight)),
            x=writing.fine(each.x, 2),
            y=writing.fine(each.y, 2),
            z=writing.fine(each.z, 2),
        )
        for each in held.parts
    ]
