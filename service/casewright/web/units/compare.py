"""Two to four ways to make a unit, side by side: revisions, options, units of its job, starting units."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from math import inf, isfinite
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.page import Drawing
from casewright.drawing.small import small_elevations
from casewright.measure.saying import say
from casewright.papers.writing import Writing
from casewright.pieces.asked.presets import Preset, presets
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.built.construct import Construction
from casewright.pieces.costs.estimate import Estimate
from casewright.records.jobs import OwnStart
from casewright.records.quotes import options_of
from casewright.records.units import revisions_of
from casewright.shop.options import option_text
from casewright.shop.own_starts import own_starts, start_spec
from casewright.shop.units import load_unit, spec_text, units_of
from casewright.stability.tip_checks import factor_shown
from casewright.web.frame.pages import Page, drawing, show
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.findings import checks_of
from casewright.web.units.worked import Seen, UnitHead, Worked, see_unit, work_out

router = APIRouter()
MOST = 4
"""Variants side by side, with the unit as it is."""


PLAIN = (
    "Size overall: wide, deep, high",
    "Made",
    "Drawers in each",
    "Parts in each",
    "Hours",
    "Price before tax",
    "Weight of one, empty",
    "Least tip factor (screen)",
    "Safe travel, all open",
    "Stops",
    "Cautions",
)
"""Lines that every variant has, in their order."""
BOUGHT_AFTER = 4
"""How many of them stand before woods and sheets."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """Another way that can be put beside the unit.

    Attributes:
        key: its name in the address, such as `revision-2`
        words: what it is
        is_chosen: does it stand beside the unit now?
    """

    key: str
    words: str
    is_chosen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """One column.

    Attributes:
        words: what it is
        worked: what comes out of it
        drawing: its front, small
        refusal: why it cannot be built or priced; empty where it can
    """

    words: str
    worked: Worked
    drawing: Markup | None
    refusal: str


MORE, FEWER = ("more", "less"), ("more", "fewer")
OTHERWISE = "otherwise"
"""What is said of a difference that is too small to be written."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """What one variant has in a line.

    Attributes:
        text: as it is printed
        numbers: what it says, rounded as it is printed
        words: of each number, what it is where it is greater than the first variant's, and where it is less
        written: how a difference is printed
    """

    text: str
    numbers: tuple[float, ...]
    words: tuple[tuple[str, str], ...] = (MORE,)
    written: Callable[[float], str] = "{:.0f}".format

    def beside(self, first: "Figure | None") -> str:
        """How it differs from the first variant's, in words; empty where it does not."""
        if first is None:
            return "only here"
        if self.text == first.text:
            return ""
        said = [
            f"{self.written(abs(mine - other))} {words[mine < other]}"
            for mine, other, words in zip(self.numbers, first.numbers, self.words, strict=True)
            if isfinite(mine - other) and self.written(abs(mine - other)) != self.written(0)
        ]
        return ", ".join(said) or OTHERWISE


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One line.

    Attributes:
        name: what is compared
        cells: what stands in each column, and in words how it differs from the first; empty where it does not
    """

    name: str
    cells: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ComparePage(Page):
    """Ways to make a unit, side by side.

    Attributes:
        head: the unit
        variants: the columns, the unit as it is first
        lines: what is compared
        offered: everything that can be put beside it
        note: what was left out of what was asked for; empty for nothing
    """

    template: ClassVar[str] = "units/compare.html"
    head: UnitHead
    variants: tuple[Variant, ...]
    lines: tuple[Compared, ...]
    offered: tuple[Offered, ...]
    note: str


@router.get("/units/{unit_id}/compare")
def show_compare(visit: Office, unit_id: str) -> Response:
    """The unit beside up to three other ways to make it."""
    seen = see_unit(visit, unit_id)
    ways = dict(_ways(visit, seen))
    asked = [key for key in dict.fromkeys(visit.request.query_params.getlist("with")) if key in ways]
    chosen = asked[: MOST - 1]
    worked = {"now": seen.worked} | {key: _worked(visit, seen, ways[key][1]) for key in chosen}
    built = {key: each.unit for key, each in worked.items() if each.unit}
    fronts = dict(zip(built, small_elevations(list(built.values())), strict=True))
    variants = tuple(
        _variant(key, ways[key][0] if key in ways else "As it is now", each, fronts.get(key))
        for key, each in worked.items()
    )
    page = ComparePage(
        title=f"Compare unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        variants=variants,
        lines=tuple(_lines(variants, seen.writing)),
        offered=tuple(
            Offered(key=key, words=words, is_chosen=key in chosen) for key, (words, _) in ways.items()
        ),
        note=f"At most {MOST} stand side by side; the others were left out." if len(asked) >= MOST else "",
    )
    return show(visit, page)


def _ways(visit: Visit, seen: Seen) -> Iterator[tuple[str, tuple[str, Callable[[], str]]]]:
    """Every other way, by its key: what it is called, and how its choices are found."""
    loaded = seen.loaded
    for each in revisions_of(visit.db, loaded.unit.id):
        if each.number != loaded.unit.revision:
            words = f"Revision {each.number}{f': {each.note}' if each.note else ''}"
            yield f"revision-{each.number}", (words, partial(_text, visit, loaded.unit.id, each.number))
    for option in options_of(visit.db, (loaded.unit.id,)):
        yield f"option-{option.id}", (f"Option: {option.label}", partial(option_text, loaded, option))
    for other in units_of(visit.db, loaded.job):
        if other.unit.id != loaded.unit.id:
            words = f"Unit {other.unit.code}: {other.unit.name}"
            yield f"unit-{other.unit.id}", (words, partial(_text, visit, other.unit.id))
    for preset in presets():
        yield f"start-{preset.key}", (f"Start: {preset.name}", partial(_start, preset))
    for own in own_starts(visit.db):
        yield f"own-{own.id}", (f"Shop’s own start: {own.name}", partial(_own_start, own))


def _text(visit: Visit, unit_id: str, number: int | None = None) -> str:
    return load_unit(visit.db, unit_id, number).text


def _start(preset: Preset) -> str:
    return spec_text(preset.spec())


def _own_start(own: OwnStart) -> str:
    return spec_text(start_spec(own))


def _worked(visit: Visit, seen: Seen, text: Callable[[], str]) -> Worked:
    try:
        return work_out(text(), seen.figures, visit.today, seen.writing.unit)
    except CannotRead:
        return Worked(unit=None, held=None, refusal="The unit has changed, so that this no longer fits it.")


def _variant(key: str, words: str, worked: Worked, front: Drawing | None) -> Variant:
    shown = drawing(front.svg(prefix=key)) if front else None
    return Variant(words=words, worked=worked, drawing=shown, refusal=worked.refusal)


def _lines(variants: Sequence[Variant], writing: Writing) -> Iterator[Compared]:
    """What is compared, line by line."""
    found = [dict(_figures(each.worked, writing)) for each in variants]
    names = dict.fromkeys(name for each in found for name in each)
    for name in sorted(names, key=_section):  # woods and sheets of every column stand together
        yield Compared(name=name, cells=tuple(_cells([each.get(name) for each in found])))


def _cells(figures: Sequence[Figure | None]) -> Iterator[tuple[str, str]]:
    """What stands in each column of a line, the first one's own first."""
    for each in figures:
        if each is None:
            yield "–", "" if figures[0] is None else "none"
        else:
            yield each.text, each.beside(figures[0])


def _section(name: str) -> int:
    """Where a line stands: before, among or behind what is bought."""
    return BOUGHT_AFTER if name not in PLAIN else PLAIN.index(name) + (PLAIN.index(name) >= BOUGHT_AFTER)


def _count(number: int) -> Figure:
    return Figure(text=str(number), numbers=(number,), words=(FEWER,))


def _figures(worked: Worked, writing: Writing) -> Iterator[tuple[str, Figure]]:
    unit, held = worked.unit, worked.held
    if unit is None:
        return
    yield PLAIN[0], _overall(unit, writing)
    yield "Made", _count(unit.spec.count)
    yield "Drawers in each", _count(len(unit.drawers))
    yield "Parts in each", _count(len(unit.parts))
    if held:
        yield from _bought(held)
        hours = round(held.hours, 1)
        yield "Hours", Figure(text=f"{hours:.1f} h", numbers=(hours,), written="{:.1f} h".format)
        asked = held.price.asked
        yield "Price before tax", Figure(text=writing.money(asked), numbers=(asked,), written=_money(writing))
    pounds = round(unit.masses.total)
    heavier = (("heavier", "lighter"),)
    yield (
        "Weight of one, empty",
        Figure(text=f"{pounds} lb", numbers=(pounds,), words=heavier, written="{:.0f} lb".format),
    )
    yield from _standing(unit, writing)
    checks = checks_of(held.findings if held else unit.findings, writing.unit)
    yield "Stops", _count(len(checks.stops))
    yield "Cautions", _count(len(checks.cautions))


def _money(writing: Writing) -> Callable[[float], str]:
    return lambda cents: writing.money(round(cents))


def _overall(unit: Construction, writing: Writing) -> Figure:
    spec = unit.spec
    sizes = (float(spec.overall_width), float(spec.overall_depth), float(unit.face.overall_height))
    return Figure(
        text=f"{writing.sizes(*sizes)} {writing.unit}",
        numbers=sizes,
        words=(("wider", "narrower"), ("deeper", "shallower"), ("higher", "lower")),
        written=lambda inches: f"{writing.size(inches)} {writing.unit}",
    )


def _bought(held: Estimate) -> Iterator[tuple[str, Figure]]:
    for line in held.order:
        cut = "" if line.cut == "flat" else f", {line.cut.sawn}"
        feet = Figure(text=f"{line.feet} bd ft", numbers=(line.feet,), written="{:.0f} bd ft".format)
        yield f"{line.wood}{cut}, {line.bought.name}", feet
    for each in held.takeoff.sheets:
        yield f"Sheets: {each.sheet}", _count(each.count)


def _standing(unit: Construction, writing: Writing) -> Iterator[tuple[str, Figure]]:
    if unit.stand.cases:
        text = factor_shown(min(each.factor for each in unit.stand.cases))
        number = float(text) if text[0].isdecimal() else inf  # “no limit”
        yield "Least tip factor (screen)", Figure(text=text, numbers=(number,), written="{:.2f}".format)
    travel = unit.stand.safe_travel
    yield (
        "Safe travel, all open",
        Figure(
            text=writing.said(say("{:down}", travel)),
            numbers=(travel,),
            written=lambda inches: f"{writing.size(inches)} {writing.unit}",
        ),
    )
