"""The groups of a unit's form for what a carcase is built of: sides, corners, dividers, thicknesses."""

from casewright.web.units.fields import Choices, Group, ask
from casewright.web.units.shell_groups import WITH_CASE, nominals, sheet_kinds

SIDES, CORNER, DIVIDER = "case.sides", "case.corner", "case.divider_kind"
SIDE_KINDS: Choices = (
    ("solid", "solid boards (usual)"),
    ("framed", "frames with panels"),
    ("plywood", "plywood with a lipping"),
)
CORNERS: Choices = (
    ("", "as is usual for the sides"),
    ("half-blind", "carcase dovetails, lapped"),
    ("through", "carcase dovetails, through"),
    ("housing", "housings and screws"),
    ("tenon", "tenons"),
    ("dowels", "dowels"),
    ("loose-tenons", "loose tenons"),
)
DIVIDERS: Choices = (
    ("web-frame", "web frames (usual)"),
    ("rail", "a front rail alone"),
    ("dust-frame", "web frames with dust panels"),
    ("solid", "boards over the full depth"),
    ("none", "nothing: the drawers hang"),
)
FRAMED, PLYWOOD, DUSTED = (SIDES, "framed"), (SIDES, "plywood"), (DIVIDER, "dust-frame")

CASE_GROUPS = (
    Group(
        key="case-sides",
        title="Sides, corners and dividers",
        when=WITH_CASE,
        note=(
            "Dovetails and tenons want solid wood; plywood takes dowels, loose tenons or housings, and has a "
            "top and bottom of its own sheet."
        ),
        fields=(
            ask(SIDES, "Sides", SIDE_KINDS, hint="", lead=True, bare=True, is_wide=True),
            ask(CORNER, "Corners", CORNERS, hint="", is_wide=True),
            ask("case.corner_tenon", "Rail tenon, long", when=(CORNER, "tenon")),
            ask(DIVIDER, "Between two rows", DIVIDERS, hint="", lead=True, bare=True, is_wide=True),
            ask("case.panelling.stile", "Stile", when=FRAMED),
            ask("case.panelling.top_rail", "Top rail", when=FRAMED),
            ask("case.panelling.bottom_rail", "Bottom rail", when=FRAMED),
            ask("case.panelling.middle_rails", "Middle rails", when=FRAMED),
            ask("case.panelling.middle_rail", "Middle rail, wide", when=FRAMED),
            ask("case.panelling.muntins", "Muntins", when=FRAMED),
            ask("case.panelling.muntin", "Muntin, wide", when=FRAMED),
            ask("case.panelling.panel", "Panel", when=FRAMED),
            ask("case.panelling.groove_depth", "Panel’s groove, deep", when=FRAMED),
            ask("case.panelling.groove_width", "Panel’s groove, wide", when=FRAMED),
            ask("case.panelling.play", "Panel’s play", when=FRAMED),
            ask("case.panelling.tenon", "Rails’ tenons", when=FRAMED),
            ask("case.ply.sheet", "Sheet", sheet_kinds(), PLYWOOD),
            ask("case.ply.nominal", "Sold as", nominals(), PLYWOOD),
            ask("case.ply.measures", "Sheet measures", when=PLYWOOD),
            ask("case.ply.lipping", "Lipping of front edges", when=PLYWOOD),
            ask("case.dust.sheet", "Dust panel’s sheet", sheet_kinds(), DUSTED),
            ask("case.dust.nominal", "Dust panel, sold as", nominals(), DUSTED),
            ask("case.dust.measures", "Dust panel’s sheet measures", when=DUSTED),
            ask("case.dust.groove", "Dust panel’s groove, deep", when=DUSTED),
        ),
    ),
    Group(
        key="case",
        title="Case",
        when=WITH_CASE,
        fields=(
            ask("case.side", "Side", lead=True),
            ask("case.sub_top_rail", "Rails under the top", when=(SIDES, "solid", "framed")),
            ask("case.bottom", "Bottom"),
            ask("case.divider", "Divider", lead=True),
            ask("case.upright", "Upright"),
            ask("case.rail_width", "Rail width"),
            ask("case.lipping", "Lipping"),
            ask("case.lap", "Carcase lap"),
            ask("case.divider_end", "Divider meets the side by"),
            ask("case.housing", "Housing depth"),
            ask("case.upright_housing", "Housing depth of uprights"),
            ask("case.divider_shoulder", "Divider shoulder"),
            ask("case.corner_half_pin", "Corner half pin"),
            ask("case.corner_pin", "Corner pin"),
            ask("case.carcase_slope", "Carcase slope, one in"),
        ),
    ),
)
