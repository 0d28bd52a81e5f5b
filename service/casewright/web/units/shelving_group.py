"""The group of the form that asks how shelves are made."""

from casewright.web.units.fields import Group, ask
from casewright.web.units.shell_groups import nominals, sheet_kinds

SHELVING_GROUP = Group(
    key="shelving",
    title="Shelves",
    note="They count where a column that is open, or has doors, has shelves.",
    fields=(
        ask("shelving.thickness", "Thickness", lead=True),
        ask(
            "shelving.fixing",
            "Fixed",
            (("pins", "loose on pins (usual)"), ("housings", "housed at both ends")),
            lead=True,
        ),
        ask("shelving.edge", "Front edge of show wood"),
        ask("shelving.play", "Room at each end on pins"),
        ask(
            "shelving.floor",
            "Floor over a web frame",
            (("plywood", "thin plywood laid on it (usual)"), ("none", "none")),
        ),
        ask("shelving.floor_sheet.sheet", "Floor’s sheet", sheet_kinds()),
        ask("shelving.floor_sheet.nominal", "Floor, sold as", nominals()),
        ask("shelving.floor_sheet.measures", "Floor’s sheet measures"),
        ask("shelving.floor_edge", "Strip in front of the floor"),
        ask("shelving.setback", "Behind the front, or behind doors"),
    ),
)
