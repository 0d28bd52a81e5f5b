"""The woods: what is known of each, and what the shop has found out about its own boards."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import partial
from string import ascii_lowercase
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit, write_length
from casewright.pieces.asked.shop import shop as figures_of_spec
from casewright.pieces.asked.shop_spec import ShopSpec
from casewright.shop.own_figures import held_figures, spec_of
from casewright.web.frame.pages import Page, see, show
from casewright.web.frame.rooms import rooms_for
from casewright.web.frame.typed import Form
from casewright.web.frame.visits import Owner, Visit
from casewright.web.settings.forms import fresh, save
from casewright.web.settings.lines import OWN, Ground, Line, ground_of, grounds_of, is_own
from casewright.web.settings.wood_form import (
    USES,
    field_names,
    grades_bought,
    read_woods,
    wood_rows,
    wood_values,
)
from casewright.web.settings.wood_lines import BOARD_LINES
from casewright.wood.basis import Evidence
from casewright.wood.species import Wood, woods
from casewright.wood.tables import document

router = APIRouter()
FIGURES = ("tangential", "radial", "gravity", "hardness", "elasticity")


@dataclass(frozen=True, slots=True, kw_only=True)
class Species:
    """One wood of the table: each figure with the letter of its source.

    Attributes:
        wood: the wood
        figures: text and letter, in the order of `FIGURES`; empty texts where nothing is known
        board: the usable width of an average board
        board_is_own: whether the shop has said so
    """

    wood: Wood
    figures: tuple[tuple[str, str], ...]
    board: str
    board_is_own: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualWaste:
    """A row of the table of waste that every shop starts with."""

    words: str
    select: float | None
    common: float | None
    ground: Ground


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodsPage(Page):
    """The woods."""

    template: ClassVar[str] = "shop/woods.html"
    form: Form
    board_lines: tuple[Line, ...]
    grounds: Mapping[str, Ground]
    names: Mapping[str, str]
    unit: LengthUnit
    grades: tuple[tuple[str, str], ...]
    uses: tuple[tuple[str, str], ...]
    grade_rows: range
    board_rows: range
    waste_rows: range
    usual_waste: tuple[UsualWaste, ...]
    species: tuple[Species, ...]
    sources: tuple[tuple[str, Ground], ...]
    every_wood: tuple[str, ...]
    words: str
    tabs: tuple[tuple[str, str], ...]


@router.get("/shop/woods")
def show_woods(visit: Owner, q: str = "") -> Response:
    """The woods, and the shop's own figures about them."""
    spec, form = fresh(visit, partial(wood_values, unit=visit.unit))
    return show(visit, _page(visit, spec, form, " ".join(q.split())[:60]))


@router.post("/shop/woods")
def save_woods(visit: Owner) -> Response:
    """Saves the shop's own figures about its woods."""
    again = save(visit, partial(wood_values, unit=visit.unit), partial(read_woods, unit=visit.unit))
    if again is None:
        return see("/shop/woods", "saved")
    form, status = again
    return show(visit, _page(visit, spec_of(held_figures(visit.db, visit.shop)), form), status)


def _page(visit: Visit, spec: ShopSpec, form: Form, words: str = "") -> WoodsPage:
    found = tuple(each for each in woods() if _fits(each, words))
    letters = _letters(found)
    grade = Ground(word=OWN) if is_own(spec, "grade") else ground_of("common practice")
    return WoodsPage(
        title="Woods",
        form=form,
        board_lines=BOARD_LINES,
        grounds=grounds_of(BOARD_LINES, spec) | {"grade": grade},
        names=field_names(),
        unit=visit.unit,
        grades=tuple((each.value, each.value) for each in grades_bought()),
        uses=tuple((use.value, words) for use, words in USES.items()),
        grade_rows=wood_rows(form.values, "grades"),
        board_rows=wood_rows(form.values, "board"),
        waste_rows=wood_rows(form.values, "waste"),
        usual_waste=usual_waste(),
        species=tuple(_species(each, spec, letters, visit.unit) for each in found),
        sources=tuple((letter, _ground(evidence)) for evidence, letter in letters.items()),
        every_wood=tuple(each.name for each in woods()),
        words=words,
        tabs=rooms_for(visit),
    )


def _fits(each: Wood, words: str) -> bool:
    names = " ".join((each.name, each.common_name, each.botanical_name, *each.aliases)).casefold()
    return all(word in names for word in words.casefold().split())


def _letters(found: Iterable[Wood]) -> dict[Evidence, str]:
    """A letter for every source that the shown figures have."""
    known = dict.fromkeys(evidence for each in found for name, evidence in each.grounds if name in FIGURES)
    return dict(zip(known, ascii_lowercase, strict=False))


def _ground(evidence: Evidence) -> Ground:
    return ground_of(evidence.basis.value, evidence.source)


def _species(each: Wood, spec: ShopSpec, letters: Mapping[Evidence, str], unit: LengthUnit) -> Species:
    grounds = dict(each.grounds)
    texts = {
        "tangential": f"{each.tangential:.5f}",
        "radial": f"{each.radial:.5f}",
        "gravity": f"{each.gravity:.2f}",
        "hardness": f"{each.hardness:,.0f}" if each.hardness else "",
        "elasticity": f"{each.elasticity / 1e6:.2f}" if each.elasticity else "",
    }
    return Species(
        wood=each,
        figures=tuple(
            (texts[name], letters.get(grounds[name], "") if name in grounds else "") for name in FIGURES
        ),
        board=write_length(figures_of_spec(spec).board_width(each.name), unit),
        board_is_own=each.name in spec.average_board,
    )


def usual_waste() -> tuple[UsualWaste, ...]:
    """The waste that every shop starts with, first row first."""
    return tuple(
        UsualWaste(
            words=row["row"],
            select=row["select"],
            common=row["common"],
            ground=ground_of(row["basis"], row["source"].partition(": ")[2]),
        )
        for row in document("waste")["rough"]
    )
