"""The figures of the woods page: the boards that are to be had, and what is lost in breaking them down."""

from casewright.web.settings.lines import Kind, Line, ground_of
from casewright.wood.sheets import sheet_waste

_HABIT = ground_of("common practice")
_SHEETS = sheet_waste().evidence

BOARD_LINES = (
    Line(
        name="kerf",
        label="Kerf of the saw that breaks boards down",
        kind=Kind.LENGTH,
        of=lambda shop: shop.spec.kerf,
        usual=_HABIT,
    ),
    Line(
        name="widest_board",
        label="Widest clear board to be had",
        hint="Wider parts are glued up.",
        kind=Kind.LENGTH,
        of=lambda shop: shop.spec.widest_board,
        usual=_HABIT,
    ),
    Line(
        name="wide_over",
        label="Picked by hand over",
        hint="Rough width from which the yard is asked for wide boards.",
        kind=Kind.LENGTH,
        of=lambda shop: shop.spec.wide_over,
        usual=_HABIT,
    ),
    Line(
        name="end_trim",
        label="Trim at each end of a board",
        kind=Kind.LENGTH,
        of=lambda shop: shop.spec.end_trim,
        usual=_HABIT,
    ),
    Line(
        name="edge_trim",
        label="Taken off to straighten an edge",
        kind=Kind.LENGTH,
        of=lambda shop: shop.spec.edge_trim,
        usual=_HABIT,
    ),
    Line(
        name="sheet_waste",
        label="Waste of sheet goods, of the area bought",
        kind=Kind.PERCENT,
        of=lambda shop: shop.sheet_waste().fraction,
        usual=ground_of(_SHEETS.basis.value, _SHEETS.source.partition(": ")[2]),
        unit="%",
        least=0,
        most=99,
        example="15",
    ),
)
