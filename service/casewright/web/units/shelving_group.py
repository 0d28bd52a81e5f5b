"""The group of the form that asks how shelves are made."""

from casewright.web.units.fields import Group, ask

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
        ask("shelving.setback", "Behind the front, or behind doors"),
    ),
)
