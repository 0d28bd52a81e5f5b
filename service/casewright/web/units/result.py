"""What comes out of a unit, beside its form: drawings, openings, checks, wood, price and date."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup

from casewright.drawing.elevation import elevation
from casewright.drawing.opened import opened_view
from casewright.drawing.page import Drawing
from casewright.drawing.plan import plan_view
from casewright.drawing.section import section
from casewright.measure.findings import Finding
from casewright.measure.ledger import Figure, WholeFigure
from casewright.measure.lengths import LengthUnit
from casewright.papers.writing import Writing
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.overall import DEPTH, WIDTH
from casewright.pieces.costs.estimate import Estimate
from casewright.web.frame.filters import day
from casewright.web.frame.pages import drawing
from casewright.web.units.findings import Checks, checks_of, nowhere
from casewright.web.units.rows import shape_in
from casewright.web.units.tools import field_at
from casewright.web.units.worked import Worked

KEPT = 16
VIEWS = {"front": "Front", "section": "Section", "plan": "Plan", "opened": "Open"}
"""The drawings of a unit, by the names under which they are asked for: what their tabs are called."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A figure as it is printed, and the name by which its working is asked for.

    Attributes:
        text: the figure
        figure: its name in the working; empty where it has none
    """

    text: str
    figure: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningShown:
    """One opening and the drawer that goes into it."""

    code: str
    height: Shown
    width: Shown
    depth: Shown
    drawer_height: Shown
    drawer_width: Shown
    drawer_length: Shown
    gap_now: Shown
    gap_wettest: Shown
    measured: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FeetShown:
    """One line of the lumber order."""

    wood: str
    bought: str
    feet: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class MoneyShown:
    """Hours, price and date.

    Attributes:
        hours: the hours, with the allowance
        price: asked, before tax
        tax: the tax
        total: with tax
        ready: the day to promise
        weeks: until then
    """

    hours: Shown
    price: Shown
    tax: Shown
    total: Shown
    ready: str
    weeks: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """What comes out of a unit.

    Attributes:
        view: which drawing is shown
        drawn: that drawing
        overall: width, depth and height over all
        drawers: how many
        weight: empty, in pounds
        openings: openings and drawers
        checks: every check
        feet: the lumber order
        money: hours, price and date; None where it cannot be priced
        unpriced: why there is no price; empty where there is one
    """

    view: str
    drawn: Markup
    overall: tuple[Shown, Shown, Shown]
    drawers: int
    weight: Shown
    openings: tuple[OpeningShown, ...]
    checks: Checks
    feet: tuple[FeetShown, ...]
    money: MoneyShown | None
    unpriced: str

    @property
    def told(self) -> str:
        """All of it in one sentence, for those who cannot see it change."""
        if self.money is None:
            return f"Worked out, without a price; {self.checks.words}."
        asked = self.money.price.text
        return f"Worked out: {asked} before tax, ready {self.money.ready}; {self.checks.words}."


def gap_shown(gap: float, written: Callable[[float], str], figure: str = "") -> Shown:
    """A gap; where there is none left, by how much the drawer binds.

    Args:
        gap: below zero where the drawer is larger than its opening [in]
        written: how sizes are written
        figure: its name in the working, where the number does not carry one
    """
    text = f"binds by {written(-gap)}" if gap < 0 else written(gap)
    return Shown(text=text, figure=named(gap) or figure)


def named(value: object) -> str:
    """The name of a figure in the working; empty for a number that has none."""
    return value.name if isinstance(value, Figure | WholeFigure) else ""


def shown_size(inches: float, writing: Writing, figure: str = "") -> Shown:
    """A size as the unit's pages print it."""
    return Shown(text=writing.size(inches), figure=named(inches) or figure)


def result_of(
    worked: Worked,
    writing: Writing,
    view: str = "front",
    field: Callable[[Finding], str] = nowhere,
) -> Result | None:
    """What comes out of a unit; None where it cannot be built.

    Args:
        worked: the unit, worked out
        writing: how it is written
        view: the drawing that is looked at
        field: gives the id of the form's field that a check is about
    """
    if worked.unit is None:
        return None
    unit, held = worked.unit, worked.held
    # Without a form beside it, there is nothing for the places in the front elevation to lead to.
    drawn = UNLINKED if view == "front" and field is nowhere else view
    return Result(
        view=view,
        drawn=unit_drawing(unit, writing.unit, drawn),
        overall=(
            Shown(text=writing.size(unit.spec.overall_width), figure=WIDTH),
            Shown(text=writing.size(unit.spec.overall_depth), figure=DEPTH),
            Shown(text=writing.size(unit.face.overall_height), figure="overall_height"),
        ),
        drawers=len(unit.drawers) * unit.spec.count,
        weight=Shown(text=f"{unit.masses.total:.0f} lb", figure=named(unit.masses.total)),
        openings=tuple(_openings(unit, writing)),
        checks=checks_of(held.findings if held else unit.findings, writing.unit, field),
        feet=_feet(held),
        money=money_of(held, writing) if held else None,
        unpriced=worked.refusal,
    )


def drawn_sizes(worked: Worked, writing: Writing) -> dict[str, dict[str, str]]:
    """What every opening of a unit measures by the drawing, by its code and the name of the size."""
    face = worked.unit.face if worked.unit else None
    return {
        each.code: {
            "height": writing.size(each.designed_height),
            "width": writing.size(each.designed_width),
            "depth": writing.size(each.designed_depth),
        }
        for each in ((*face.openings, *face.spaces) if face else ())
    }


UNLINKED = "unlinked"
PLAIN = {UNLINKED: elevation}
"""Views in which no place leads anywhere, beside no form."""
DRAWN: dict[str, Callable[[Construction, LengthUnit, Callable[[str], str]], Drawing]] = {
    "front": elevation,
    "section": section,
    "plan": plan_view,
    "opened": opened_view,
}


def _drawn(unit: Construction, shown: LengthUnit, view: str) -> Drawing:
    """A view; in one of the editor's every place leads to its field of the form."""
    if view in PLAIN:
        return PLAIN[view](unit, shown)
    shape = shape_in(unit.spec.model_dump(include={"rows"})["rows"])
    return DRAWN[view](unit, shown, lambda code: f"#{field_at(code, shape)}")


@lru_cache(maxsize=KEPT)
def _drawing(key: "_Same", shown: LengthUnit, view: str) -> Markup:
    return drawing(_drawn(key.unit, shown, view).svg())


class _Same:
    """A unit as a key: the same object is the same unit. It holds the unit, so that its identity lasts."""

    def __init__(self, unit: Construction) -> None:
        self.unit = unit

    def __hash__(self) -> int:
        return id(self.unit)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.unit is self.unit


def unit_drawing(unit: Construction, shown: LengthUnit, view: str) -> Markup:
    """One of the drawings of a unit; kept a while, as the unit itself is."""
    return _drawing(_Same(unit), shown, view)


def _openings(unit: Construction, writing: Writing) -> Iterator[OpeningShown]:
    for each in unit.drawers:
        sizes, opening = each.sizes, each.sizes.opening
        wettest = min(sizes.gaps.wettest_front, sizes.gaps.wettest_side)
        yield OpeningShown(
            code=opening.code,
            height=shown_size(opening.height, writing),
            width=shown_size(opening.width, writing),
            depth=shown_size(opening.depth, writing),
            drawer_height=shown_size(sizes.height, writing),
            drawer_width=shown_size(sizes.width, writing),
            drawer_length=shown_size(sizes.length, writing),
            gap_now=gap_shown(sizes.gaps.now, writing.size, f"{opening.code}.gap_now"),
            gap_wettest=gap_shown(wettest, writing.fine),
            measured=", ".join(opening.measured),
        )


def _feet(held: Estimate | None) -> tuple[FeetShown, ...]:
    lines = held.order if held else ()
    return tuple(
        FeetShown(
            wood=line.wood + ("" if line.cut == "flat" else f", {line.cut.sawn}"),
            bought=line.bought.name,
            feet=Shown(text=str(line.feet), figure=named(line.feet)),
        )
        for line in lines
    )


def money_of(held: Estimate, writing: Writing) -> MoneyShown:
    """Hours, price and date of an estimate, as its pages print them."""
    price, promise = held.price, held.promise
    return MoneyShown(
        hours=Shown(text=f"{held.hours:.1f} h", figure="hours.total"),
        price=Shown(text=writing.money(price.asked), figure="price.asked"),
        tax=Shown(text=writing.money(price.tax), figure="price.tax"),
        total=Shown(text=writing.money(price.total), figure="price.total"),
        ready=day(promise.promised),
        weeks=Shown(text=f"{promise.promised_weeks:.1f} weeks", figure="promise.promised_weeks"),
    )
