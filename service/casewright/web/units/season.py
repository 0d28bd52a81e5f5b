"""A unit through the year: the gap above each drawer, everything else that moves, how to fit."""

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from casewright.drawing.year import ratio_for, year_line
from casewright.papers.writing import Writing
from casewright.pieces.built.part_year import PartYear
from casewright.pieces.built.season import BoardMoves, UnitYear, unit_year
from casewright.pieces.drawers.year import DrawerYear
from casewright.web.frame.pages import Page, drawing, show
from casewright.web.frame.visits import Office
from casewright.web.units.result import Shown, gap_shown, named
from casewright.web.units.worked import UnitHead, see_built_unit
from casewright.wood.year import MONTHS, Month, home_climates

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthShown:
    """One month: what the home comes to, and whether it is that of fitting."""

    name: str
    moisture: Shown
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MonthGap:
    """One month of a drawer: the gap above front and sides, and how it would be fitted then."""

    name: str
    front: Shown
    side: Shown
    height: Shown
    leave: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerShown:
    """Drawers alike, through the year.

    Attributes:
        codes: the drawers
        line: the gap as a line over the year
        height: what to plane to now
        now: the gap then
        driest: of front and side the larger, when driest
        wettest: of front and side the smaller, when wettest
        least: the month of the least gap, and the gap
        greatest: likewise the greatest
        verdict: whether it keeps the gap that is wanted
        is_one: whether front and sides move alike
        leaves: what to leave above it when it is fitted in the driest and in the wettest month
        months: every month
    """

    codes: str
    line: Markup
    height: Shown
    now: Shown
    driest: Shown
    wettest: Shown
    least: tuple[str, Shown]
    greatest: tuple[str, Shown]
    verdict: str
    is_one: bool
    leaves: tuple[tuple[Shown, Shown], ...]
    months: tuple[MonthGap, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartShown:
    """One size of another part, through the year."""

    part: str
    made_of: str
    what: str
    now: Shown
    driest: Shown
    wettest: Shown
    limit: str
    verdict: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CutShown:
    """One board of the drawers, sawn one way."""

    part: str
    sawn: str
    is_used: bool
    width: Shown
    thickness: Shown
    year: Shown


@dataclass(frozen=True, slots=True, kw_only=True)
class SeasonPage(Page):
    """A unit through the year.

    Attributes:
        head: the unit
        unit: `in` or `mm`
        now: moisture of the wood as it is worked
        ground: where the months come from
        months: the home, month by month
        driest: the month in which the home is driest
        wettest: and wettest
        wanted: the gap that is wanted when wettest
        drawers: every distinct drawer
        parts: everything else
        cuts: the direction rule
        when: how the wood stands when it is fitted
        fit: what to plane to
        more: what else is set by the season
        climates: the usual years that the form offers, with their ground
    """

    template: ClassVar[str] = "units/season.html"
    head: UnitHead
    unit: str
    now: Shown
    ground: str
    months: tuple[MonthShown, ...]
    driest: str
    wettest: str
    wanted: Shown
    drawers: tuple[DrawerShown, ...]
    parts: tuple[PartShown, ...]
    cuts: tuple[CutShown, ...]
    when: str
    fit: tuple[str, ...]
    more: tuple[str, ...]
    climates: tuple[tuple[str, str], ...]


@router.get("/units/{unit_id}/season")
def show_season(visit: Office, unit_id: str) -> Response:
    """The gaps of a unit's drawers over the year, and how to fit them in the month in which it is built."""
    seen = see_built_unit(visit, unit_id)
    found, writing = unit_year(seen.built), seen.writing
    year, ratio = found.year, ratio_for(found.drawers)
    page = SeasonPage(
        title=f"Season of unit {seen.head.unit.code} · {seen.head.unit.name}",
        head=seen.head,
        unit=writing.unit.value,
        now=_percent(year.now),
        ground=year.ground,
        months=tuple(
            MonthShown(name=month.value, moisture=_percent(year.at(month)), mark=_mark(month, found))
            for month in MONTHS
        ),
        driest=year.driest.value,
        wettest=year.wettest.value,
        wanted=_size(found.drawers[0].limit, writing),
        drawers=tuple(_drawer(each, found, writing, ratio) for each in found.drawers),
        parts=tuple(_part(each, writing) for each in found.parts),
        cuts=tuple(shown for board in found.boards for shown in _cuts(board, writing)),
        when=writing.said(found.when),
        fit=tuple(map(writing.said, found.fit)),
        more=tuple(map(writing.said, found.more)),
        climates=tuple(
            (each.name, f"{each.driest:.1f} to {each.wettest:.1f} %; {each.average_from}; {each.swing_from}")
            for each in home_climates()
        ),
    )
    return show(visit, page)


def _percent(moisture: float) -> Shown:
    return Shown(text=f"{moisture:.1f}", figure=named(moisture))


def _size(inches: float, writing: Writing) -> Shown:
    return Shown(text=writing.size(inches), figure=named(inches))


def _fine(inches: float, writing: Writing) -> Shown:
    return Shown(text=writing.fine(inches), figure=named(inches))


def _mark(month: Month, found: UnitYear) -> str:
    """What is special in a month."""
    year = found.year
    words = ((year.driest, "driest"), (year.wettest, "wettest"), (year.fitted, "fitted"))
    return ", ".join(word for marked, word in words if marked is month)


def _drawer(each: DrawerYear, found: UnitYear, writing: Writing, ratio: float) -> DrawerShown:
    year = found.year
    return DrawerShown(
        codes=", ".join(code.partition("-")[2] for code in each.codes),
        line=drawing(year_line(each, year, writing.unit, ratio).svg()),
        height=_size(each.height, writing),
        now=gap_shown(each.front.now, writing.size),
        driest=gap_shown(max(each.front.driest, each.side.driest), writing.fine),
        wettest=gap_shown(min(each.front.wettest, each.side.wettest), writing.fine),
        least=(each.least[0].value, gap_shown(each.least[1], writing.fine)),
        greatest=(each.greatest[0].value, gap_shown(each.greatest[1], writing.fine)),
        verdict="pass" if each.keeps else "stop",
        is_one=each.is_one,
        leaves=tuple(
            (_size(fit.leave, writing), _size(fit.height, writing))
            for fit in (each.fit(year.driest), each.fit(year.wettest))
        ),
        months=tuple(
            MonthGap(
                name=month.value,
                front=gap_shown(each.front.months[month.place], writing.fine),
                side=gap_shown(each.side.months[month.place], writing.fine),
                height=_size(each.fit(month).height, writing),
                leave=_size(each.fit(month).leave, writing),
            )
            for month in MONTHS
        ),
    )


def _through(each: PartYear, size: float, writing: Writing) -> Shown:
    """A gap or a reach that must not fall below its limit; what has none is a movement either way."""
    if each.limit is None or size >= 0:
        return _fine(size, writing)
    if each.what.startswith("reach"):
        return Shown(text=f"short by {writing.fine(-size)}", figure=named(size))
    return gap_shown(size, writing.fine)


def _part(each: PartYear, writing: Writing) -> PartShown:
    return PartShown(
        part=each.part,
        made_of=each.made_of,
        what=each.what,
        now=_through(each, each.through.now, writing),
        driest=_through(each, each.through.driest, writing),
        wettest=_through(each, each.through.wettest, writing),
        limit="" if each.limit is None else writing.fine(each.limit),
        verdict="" if each.limit is None else "pass" if each.passes else "stop",
        note=writing.said(each.note),
    )


def _cuts(board: BoardMoves, writing: Writing) -> tuple[CutShown, ...]:
    return tuple(
        CutShown(
            part=f"{board.part}, {board.wood}",
            sawn=each.cut.sawn,
            is_used=each.is_used,
            width=Shown(text=f"{each.width:.5f}", figure=named(each.width)),
            thickness=Shown(text=f"{each.thickness:.5f}", figure=named(each.thickness)),
            year=_fine(each.year, writing),
        )
        for each in board.cuts
    )
