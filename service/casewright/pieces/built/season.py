"""A unit through the year, worked out only when somebody asks: gaps, parts, cuts compared, fit advice."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Inches, PerPercent
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.part_year import PartYear, through_thickness
from casewright.pieces.built.season_advice import fit_advice
from casewright.pieces.built.year_parts import parts_through
from casewright.pieces.drawers.alike import drawers_alike
from casewright.pieces.drawers.year import DrawerYear, drawer_year, height_and_opening
from casewright.pieces.layout.season import across, moisture_rise
from casewright.pieces.layout.year import Year, year_at_home
from casewright.wood.movement import Cut, movement

LAG = (
    "Wood follows the air with a lag: thin parts by days, wide panels by weeks, finished ones by more. These "
    "figures take every part as following at once. That is the wide side: real gaps swing a little less."
)
"""What the figures leave out, and to which side (common practice)."""
SAME = 0.25
"""Moistures this close are one to a meter [%]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutMoves:
    """How much a drawer's front or sides would move, sawn one way.

    Attributes:
        cut: how the board is sawn
        is_used: whether it is sawn so here
        width: coefficient in its width, which is the height of the drawer [1 per % moisture]
        thickness: coefficient in its thickness [1 per % moisture]
        year: how much the tallest drawer grows from the driest month to the wettest [in]
    """

    cut: Cut
    is_used: bool
    width: PerPercent
    thickness: PerPercent
    year: Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardMoves:
    """The direction rule for one board of the drawers.

    Attributes:
        part: fronts, or sides
        wood: its wood
        cuts: the same board flat-sawn, rift-sawn and quartersawn
    """

    part: str
    wood: str
    cuts: tuple[CutMoves, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitYear:
    """A unit through the year.

    Attributes:
        unit: the unit, with a ledger of its own that holds the year too
        year: the year at home
        drawers: the drawers, those alike together
        parts: everything else that moves
        boards: the direction rule, board by board
        when: how the wood stands when it is fitted, in a sentence
        fit: what to plane the drawers to, now and in other months
        more: what else is set by the season, and what the figures leave out
    """

    unit: Construction
    year: Year
    drawers: tuple[DrawerYear, ...]
    parts: tuple[PartYear, ...]
    boards: tuple[BoardMoves, ...]
    when: Words
    fit: tuple[Words, ...]
    more: tuple[Words, ...]


def unit_year(unit: Construction) -> UnitYear:
    """A unit through the year.

    Args:
        unit: the unit, worked out; nothing is added to its ledger

    Returns:
        Every gap and every other part, month by month, and how to fit them.

    Source: Wood Handbook, FPL-GTR-282 (2021), chapters 4 and 13.
    """
    ledger = unit.ledger.copied()
    spec = unit.spec
    year = year_at_home(spec.season, unit.climate, ledger)
    groups = drawers_alike(unit.drawers, height_and_opening)
    drawers = tuple(drawer_year(spec, group, year, ledger) for group in groups)
    parts = tuple(parts_through(unit, year, ledger))
    return UnitYear(
        unit=replace(unit, ledger=ledger),
        year=year,
        drawers=drawers,
        parts=parts,
        boards=tuple(_boards(unit, year, ledger)),
        when=_when(year),
        fit=(*(_gap_now(each) for each in drawers), *_otherwise(year, drawers)),
        more=(
            *fit_advice(unit, year, ledger),
            LAG,
        ),
    )


def with_year(unit: Construction, asked: str) -> Construction:
    """The unit whose ledger holds the figure that is asked for, if the year at home holds it.

    Args:
        unit: the unit, worked out
        asked: the name of a figure

    Returns:
        The unit itself, or one with the year in its ledger.

    Source: common practice.
    """
    name = asked.strip()
    is_known = name in unit.ledger
    is_of_the_year = name == "year" or name.startswith(("year.", "moisture", "moves."))
    return unit_year(unit).unit if is_of_the_year and not is_known else unit


def _boards(unit: Construction, year: Year, ledger: Ledger) -> Iterator[BoardMoves]:
    tallest = max(drawer.sizes.height for drawer in unit.drawers)
    swing = moisture_rise(unit.climate.driest, unit.climate.wettest)
    for part, timber in (("Fronts", unit.spec.woods.of("fronts")), ("Sides", unit.spec.woods.drawers)):
        cuts = []
        for cut in (Cut.FLAT, Cut.RIFT, Cut.QUARTER):
            sawn_so = timber.model_copy(update={"cut": cut})
            moves = across(sawn_so, ledger)
            grows = ledger.take(
                f"year.{part.lower()}.{cut}", movement, size=tallest, coefficient=moves, change=swing
            )
            cuts.append(
                CutMoves(
                    cut=cut,
                    is_used=cut is timber.cut,
                    width=moves,
                    thickness=through_thickness(sawn_so, ledger),
                    year=grows,
                )
            )
        yield BoardMoves(part=part, wood=timber.wood, cuts=tuple(cuts))


def _when(year: Year) -> Words:
    place = f"The wood is worked at {year.now:.1f} %"
    if year.fitted is None:
        return f"{place}. No month of fitting is given; the heights below hold for wood at that moisture."
    home = year.at(year.fitted)
    if not year.has_reading:
        return (
            f"Fitted in {year.fitted.value} at {year.now:.1f} %, what the home comes to in that month. "
            "Nobody has measured the wood in the shop: do, before it is planed."
        )
    if abs(home - year.now) < SAME:
        return f"Fitted in {year.fitted.value} at {year.now:.1f} %: the wood stands as the home does then."
    drier = "drier" if year.now < home else "wetter"
    way = "grow" if year.now < home else "shrink"
    return (
        f"Fitted in {year.fitted.value} at {year.now:.1f} %: {abs(home - year.now):.1f} % {drier} than the "
        f"home in that month ({home:.1f} %), so the drawers {way} within weeks of being brought there."
    )


def _gap_now(each: DrawerYear) -> Words:
    """One group of drawers: plane to so much; so large is the gap then, and at the ends of the year."""
    least, greatest = each.least, each.greatest
    return say(
        "{}: plane to {}, which leaves {} above; in {} the gap is {:.3}, in {} {}.",
        ", ".join(code.partition("-")[2] for code in each.codes),
        each.height,
        each.front.now,
        greatest[0].value,
        greatest[1],
        least[0].value,
        say("{:.3}", least[1]) if least[1] > 0 else say("it binds by {:.3}", -least[1]),
    )


def _otherwise(year: Year, drawers: tuple[DrawerYear, ...]) -> Iterator[Words]:
    """What to leave if the drawers are fitted at the other end of the year."""
    for month, is_dry in ((year.driest, True), (year.wettest, False)):
        if abs(year.at(month) - year.now) < SAME:
            continue
        leaves = strung(
            "; ",
            (
                say(
                    "{} {} ({})",
                    ", ".join(code.partition("-")[2] for code in each.codes),
                    fit.leave,
                    fit.height,
                )
                for each in drawers
                for fit in (each.fit(month),)
            ),
        )
        yield say(
            "If you fit in {} instead, with wood at {:.1f} %, leave {} (height in brackets): {}.",
            month.value,
            year.at(month),
            "more, for the wood will only swell"
            if is_dry
            else "no more than the least, for it will only shrink",
            leaves,
        )
