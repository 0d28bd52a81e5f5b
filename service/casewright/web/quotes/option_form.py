"""The form for an option: another wood, finish or number, as far as the price list has a price for it."""

from collections.abc import Sequence
from dataclasses import dataclass

from casewright.pricing.prices import PriceKind, PriceRow
from casewright.shop.figures import figures, figures_from
from casewright.shop.options import OtherWay
from casewright.shop.units import LoadedUnit
from casewright.web.frame.pages import form_of
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.visits import Visit
from casewright.wood.finish import finishes
from casewright.wood.sheets import sheets

Choices = Sequence[tuple[str, str]]
AS_IT_IS = ("", "as it is")
DIVIDERS = (
    AS_IT_IS,
    ("housing", "standing in housings"),
    ("sliding dovetail", "sliding in with a dovetail"),
)
THIN_SHEET = "1/4"
NO_PULLS = {"screws and buttons", "slides", "undermount slides", "wall restraint"}
"""Hardware that the program orders by itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionForm:
    """The form for a new option, with what can be chosen in it."""

    form: Form
    units: Choices
    woods: Choices
    bottoms: Choices
    dividers: Choices
    finishes: Choices
    pulls: Choices


def option_form(
    visit: Visit, units: Sequence[LoadedUnit], figures_text: str, form: Form | None
) -> OptionForm:
    """The form for a new option; it offers what the price list has a price for."""
    rows = figures_from(figures_text).prices.rows
    lumber = sorted({row.item for row in rows if row.kind is PriceKind.LUMBER})
    return OptionForm(
        form=form or form_of(unit=units[0].unit.id if units else ""),
        units=[(each.unit.id, f"{each.unit.code}, {each.unit.name}") for each in units],
        woods=(AS_IT_IS, *((name, name) for name in lumber)),
        bottoms=(AS_IT_IS, ("solid", "solid wood"), *((name, name) for name in thin_sheets())),
        dividers=DIVIDERS,
        finishes=(AS_IT_IS, *((each.name, each.name) for each in finishes())),
        pulls=(AS_IT_IS, *((name, name) for name in _pulls(rows))),
    )


def thin_sheets() -> list[str]:
    """The kinds of sheet that are sold as thin as a drawer bottom."""
    return sorted({each.kind for each in sheets() if each.nominal == THIN_SHEET})


def _pulls(rows: Sequence[PriceRow]) -> list[str]:
    """Hardware with a price that a drawer can be pulled by."""
    return sorted({row.item for row in rows if row.kind is PriceKind.HARDWARE} - NO_PULLS)


def read_way(read: Reader, visit: Visit) -> OtherWay:
    """The other way that a form describes."""
    rows = figures(visit.db, visit.shop).prices.rows
    woods = {"", *(row.item for row in rows if row.kind is PriceKind.LUMBER)}
    coats = read.whole("coats", least=0, most=20, default=-1)
    count = read.whole("count", least=1, most=100, default=0)
    return OtherWay(
        case=read.choice("case", woods),
        fronts=read.choice("fronts", woods),
        drawers=read.choice("drawers", woods),
        bottom=read.choice("bottom", {"", "solid", *thin_sheets()}),
        dividers=read.choice("dividers", [value for value, _ in DIVIDERS]),
        finish=read.choice("finish", {"", *(each.name for each in finishes())}),
        coats=None if coats < 0 else coats,
        pulls=read.choice("pulls", {"", *_pulls(rows)}),
        count=count or None,
    )
