"""The working of any figure of a unit: the rule, what went in and from where, and the source."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.ledger import Ledger
from casewright.measure.printing import Style, hints, unit_of
from casewright.measure.working import Explanation, NoSuchFigure, explain
from casewright.papers.why import MOST, figures_behind
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.pieces.built.asked_for import with_asked
from casewright.pieces.built.construct import Construction
from casewright.pieces.layout.parts import PartLine
from casewright.pricing.prices import PriceKind
from casewright.shop.figures import figures_from
from casewright.shop.refusals import Refused
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.figure_names import OF_THE_SHOP, in_per_cent, plain_name
from casewright.web.units.form import asked_fields
from casewright.web.units.groups import HEIGHTS
from casewright.web.units.rows import shape_in
from casewright.web.units.worked import Seen, UnitHead, see_built_unit, see_unit

router = APIRouter()
DRAWN = "design"
"""How an address asks for the unit as it was drawn, whatever the bench has measured since."""
RESERVED = {"price", "rate", "risk"}
"""Groups of figures that show how a price is made up: for the owner."""
OPEN = re.compile(r"price\.(asked|tax|total|stage_\d+|unit_[A-Z0-9]+)")
"""Figures among them whose value, and nothing behind it, everybody in the office may see."""
NAME = re.compile(r"[\w-]+(?:\.[\w-]+)+|opening_total|body_height|overall_height|clear_width|opening_depth")
OWNERS = "How a price is made up is for the owner of the shop; ask them."


@dataclass(frozen=True, slots=True, kw_only=True)
class Went:
    """One thing that went into a figure, and the figures that it came from.

    Attributes:
        of_the_shop: for the owner, whether it stands in the shop's figures
        is_own: whether the shop has put its own there; an example's holds until then
    """

    name: str
    meaning: str
    value: str
    origins: tuple[str, ...]
    of_the_shop: bool = False
    is_own: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureShown:
    """One figure with its working.

    Attributes:
        name: its name
        words: what it is called in plain words; empty where it has its name alone
        value: what came out
        what: what it is
        rule: the formula
        inputs: what went in
        source: where the rule comes from
        basis: for a figure that was given, who gave it
        follow: other figures that the basis names
        field: the field of the form in which it stands; empty for none
    """

    name: str
    words: str
    value: str
    what: str
    rule: str
    inputs: tuple[Went, ...]
    source: str
    basis: str
    follow: tuple[str, ...]
    field: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingPage(Page):
    """Where a figure comes from.

    Attributes:
        head: the unit
        asked: what was asked for
        about: the line of the cut list that was asked for, in words; empty for a figure
        codes: the codes of its parts
        figures: the figures, with their working
        left: how many more there are
        shop_revision: the revision of the shop's figures that was worked with
        groups: every group of figures, when nothing was asked for: name, first figures, how many
        trouble: why nothing was found
        drawn: whether it is the unit as it was drawn, which the editor shows, without what the bench measured
        left_out: how many sizes from the bench are left out
    """

    template: ClassVar[str] = "units/working.html"
    head: UnitHead
    asked: str
    about: str
    codes: tuple[str, ...]
    figures: tuple[FigureShown, ...]
    left: int
    shop_revision: int
    groups: tuple[tuple[str, tuple[str, ...], int], ...]
    trouble: str
    drawn: bool = False
    left_out: int = 0


@router.get("/units/{unit_id}/working")
def show_working(visit: Office, unit_id: str, figure: str = "", of: str = "") -> Response:
    """The working of a figure, of a line of the cut list, of a drawer or of an operation."""
    asked, trouble = " ".join(figure.split())[:120], ""
    seen, left_out = see_built_unit(visit, unit_id), 0
    if of == DRAWN:
        left_out, seen = seen.head.measured, see_unit(visit, unit_id)
    unit = with_asked(seen.built, asked)
    seen = replace(seen, worked=replace(seen.worked, unit=unit))
    names: tuple[str, ...] = ()
    if asked:
        try:
            names = figures_behind(unit, asked)
        except NoSuchFigure:
            trouble = f"No figure of this unit is called “{asked[:60]}”. The list below has them all."
    names = _allowed(visit, unit.ledger, names)
    page = replace(_page(visit, seen, asked, names, trouble), drawn=of == DRAWN, left_out=left_out)
    return show(visit, page, 404 if trouble else 200)


def _allowed(visit: Visit, ledger: Ledger, names: tuple[str, ...]) -> tuple[str, ...]:
    """The figures that this person may see.

    Raises:
        Refused: they asked for figures that are the owner's, and for nothing else
    """
    allowed = tuple(name for name in names if visit.is_owner or OPEN.fullmatch(name) or is_open(ledger, name))
    if names and not allowed:
        raise Refused(OWNERS, 403)
    return allowed


def is_open(ledger: Ledger, name: str) -> bool:
    """Whether a figure, and all that went into it, is free of money and of what a price is made of."""
    if name.partition(".")[0] in RESERVED:
        return False
    working = ledger[name]
    kinds = [working.kind] if working.rule is None else list(hints(working.rule).values())
    return all(getattr(unit_of(kind), "name", "") != "cent" for kind in kinds)


def _page(visit: Visit, seen: Seen, asked: str, names: tuple[str, ...], trouble: str) -> WorkingPage:
    unit = seen.built
    line = next((each for each in unit.lines if asked == each.line or asked in each.codes), None)
    style = Style(length=seen.writing.unit, symbol=seen.writing.symbol)
    return WorkingPage(
        title=f"Where {plain_name(asked, unit) or asked} comes from"
        if asked and not trouble
        else "Figures and their working",
        head=seen.head,
        asked=asked,
        about=_about(seen, line) if line else "",
        codes=line.codes if line else (),
        figures=tuple(_figure(visit, seen, explain(unit.ledger, name, style)) for name in names[:MOST]),
        shop_revision=visit.shop.figures,
        left=max(0, len(names) - MOST),
        groups=() if names else tuple(_groups(visit, unit.ledger)),
        trouble=trouble,
    )


def _about(seen: Seen, line: PartLine) -> str:
    part = line.part
    sizes = seen.writing.sizes(part.thickness, part.width, part.length)
    measured = f", measured: {', '.join(part.measured)}" if part.measured else ""
    return f"{line.line}: {part.name}, {line.quantity} of {part.wood}, {sizes}{measured}"


def _figure(visit: Visit, seen: Seen, told: Explanation) -> FigureShown:
    """One figure; for whoever is not the owner, an open price without what is behind it."""
    unit, ledger = seen.built, seen.built.ledger
    if not visit.is_owner and not is_open(ledger, told.figure):
        return FigureShown(
            name=told.figure,
            words=plain_name(told.figure, unit),
            value=told.value,
            what="Given, as the owner's figures make it.",
            rule="",
            inputs=(),
            source="",
            basis=OWNERS,
            follow=(),
            field="",
        )
    return FigureShown(
        name=told.figure,
        words=plain_name(told.figure, unit),
        value=told.value,
        what=told.what,
        rule=told.rule,
        inputs=tuple(_inputs(visit, seen, told)),
        source=told.source,
        basis=told.basis,
        follow=tuple(_named_in(visit, ledger, told)),
        field=_field_of(unit, told.figure),
    )


def _inputs(visit: Visit, seen: Seen, told: Explanation) -> Iterator[Went]:
    ledger, own = seen.built.ledger, figures_from(seen.figures).spec
    for each in told.inputs:
        origins = tuple(name for name in each.origin.split(", ") if name in ledger)
        hidden = not visit.is_owner and any(not is_open(ledger, name) for name in origins)
        yield Went(
            name=each.name,
            meaning=each.meaning,
            value="the owner's" if hidden else in_per_cent(each),
            origins=() if hidden else origins,
            of_the_shop=visit.is_owner and not origins and each.name in OF_THE_SHOP,
            is_own=_is_own(own, each.name, told.figure),
        )


def _is_own(own: ShopSpec, name: str, figure: str) -> bool:
    """Whether the shop has put its own figure in the place of the example's."""
    if name == "per_distance":
        return any(price.kind is PriceKind.TRAVEL for price in own.prices)
    called = "outwork_markup" if (name, figure) == ("markup", "price.outwork") else OF_THE_SHOP.get(name, "")
    return bool(called) and getattr(own, called) is not None


def _named_in(visit: Visit, ledger: Ledger, told: Explanation) -> Iterator[str]:
    """Figures that the ground of a given figure names."""
    for name in dict.fromkeys(NAME.findall(told.basis)):
        if name in ledger and name != told.figure and (visit.is_owner or is_open(ledger, name)):
            yield name


def _field_of(unit: Construction, figure: str) -> str:
    """The id of the form's field in which a figure stands; empty where it stands in none."""
    if figure in {f"body.{name}" for name in HEIGHTS}:
        return "body-height"
    shape = shape_in(unit.spec.model_dump(include={"rows"})["rows"])
    known = {each.name for each in asked_fields(shape)}
    if figure.startswith("measured."):
        return "measured"
    name = re.sub(r"(\.widths)\.\d+$", r"\1", figure)
    return name.replace(".", "-") if name in known else ""


def _groups(visit: Visit, ledger: Ledger) -> Iterator[tuple[str, tuple[str, ...], int]]:
    """Every group of figures that this person may see."""
    groups: dict[str, list[str]] = {}
    for working in ledger:
        name = working.figure
        if visit.is_owner or OPEN.fullmatch(name) or is_open(ledger, name):
            groups.setdefault(name.partition(".")[0], []).append(name)
    for head, names in groups.items():
        yield head, tuple(names[:6]), len(names)
