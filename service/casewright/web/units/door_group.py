"""The group of the form that asks how doors are made."""

from casewright.web.units.fields import Asked, Choices, Group, Kind, ask
from casewright.wood.sheets import sheets

MAKE, HELD = "doors.make.kind", "doors.make.held"
GAINS = (("both", "door and case, half each (usual)"), ("door", "the door alone"), ("none", "nothing"))
FRAMED, SLAB = (MAKE, "frame-and-panel"), (MAKE, "slab")


def _sheet_kinds() -> Choices:
    return tuple((kind, kind) for kind in dict.fromkeys(each.kind for each in sheets()))


def _nominals() -> Choices:
    found = sorted({each.nominal: each.thickness for each in sheets()}.items(), key=lambda pair: pair[1])
    return tuple((nominal, f"{nominal} in") for nominal, _ in found)


def door_group(woods: Choices, cuts: Choices) -> Group:
    """How doors are made; which openings have doors is said by the rows.

    Args:
        woods: the woods to choose from, each with its words
        cuts: how they may be sawn
    """
    return Group(
        key="doors",
        title="Doors",
        note="They count where a row or a column holds doors.",
        fields=(
            Asked(
                name=MAKE,
                label="A door is",
                kind=Kind.CHOICE,
                choices=(("frame-and-panel", "a frame with a panel (usual)"), ("slab", "a slab")),
                usual="frame-and-panel",
                lead=True,
                bare=True,
            ),
            ask("doors.style", "Hung", lead=True, bare=True),
            ask("doors.thickness", "Thickness", lead=True),
            ask("doors.make.stile", "Stile", when=FRAMED),
            ask("doors.make.top_rail", "Top rail", when=FRAMED),
            ask("doors.make.bottom_rail", "Bottom rail", when=FRAMED),
            ask("doors.make.middle_rails", "Middle rails", when=FRAMED),
            ask("doors.make.muntins", "Muntins", when=FRAMED),
            ask("doors.make.panel", "Panel", when=FRAMED),
            ask("doors.make.groove_depth", "Groove depth", when=FRAMED),
            ask("doors.make.groove_width", "Groove width", when=FRAMED),
            ask("doors.make.play", "Panel play at each side", when=FRAMED),
            ask(HELD, "Kept flat by", when=SLAB),
            ask("doors.make.batten", "Batten or end", when=SLAB),
            ask("doors.make.batten_thickness", "Batten thickness", when=SLAB),
            ask("doors.make.tongue", "Tongue in an end", when=SLAB),
            ask("doors.make.sheet", "Sheet, if plywood", _sheet_kinds(), SLAB),
            ask("doors.make.nominal", "Sold as", _nominals(), SLAB),
            ask("doors.gap", "Gap around"),
            ask("doors.meeting", "Gap between two"),
            ask("doors.overlay", "Half overlay"),
            ask("doors.reveal", "Reveal of a full overlay"),
            ask("doors.hinge", "Hinge"),
            ask("doors.hinge_length", "Hinge length"),
            ask("doors.hinge_offset", "Hinge from the end"),
            ask("doors.hinge_gains", "Hinges let into", GAINS),
            ask("doors.hinge_leaf", "Leaf of the hinge"),
            ask("doors.hinge_closed", "Closed hinge, thick"),
            ask("doors.knob", "Knob"),
            ask("doors.catch", "Catch"),
            ask(
                "doors.wood.wood",
                "Doors",
                (("", "as the case"), *woods),
                hint="",
                needed=False,
            ),
            ask("doors.wood.cut", "Doors, sawn", cuts, hint="", needed=False),
            ask(
                "doors.panel_wood.wood",
                "Door panels",
                (("", "as their frames"), *woods),
                hint="",
                needed=False,
            ),
            ask("doors.panel_wood.cut", "Door panels, sawn", cuts, hint="", needed=False),
        ),
    )
