"""The groups of the form that ask how the drawers are made: their fronts, their corners, their bottoms."""

from casewright.web.units.fields import Asked, Choices, Group, Kind, ask
from casewright.web.units.shell_groups import nominals, sheet_kinds

STYLE, FRONT, BACK = "drawers.style.kind", "drawers.front_joint.kind", "drawers.back_joint.kind"
BOTTOM, SLIPS = "drawers.bottom.kind", "drawers.groove.slips"
STYLES: Choices = (
    ("inset", "in the opening, flush (usual)"),
    ("cock-beaded", "in the opening, with a bead"),
    ("lipped", "lipped, over the edges of the opening"),
    ("full overlay", "before the case, covering it"),
    ("half overlay", "before the case, over the edges"),
    ("applied front", "screwed to a box in the opening"),
)
FRONTS: Choices = (
    ("half-blind dovetail", "half-blind dovetail (usual)"),
    ("through dovetail", "through dovetail"),
    ("sliding dovetail", "sliding dovetail, for a wider front"),
    ("lock rabbet", "lock rabbet"),
    ("box joint", "box joint"),
    ("rabbet and pins", "rabbet and pins"),
)
BACKS: Choices = (
    ("through dovetail", "through dovetail (usual)"),
    ("housing", "housing, the sides running on"),
    ("as the front", "as the front"),
)
BEADED, LIPPED, FULL, HALF = (
    (STYLE, kind) for kind in ("cock-beaded", "lipped", "full overlay", "half overlay")
)
BOXED = (STYLE, "full overlay", "half overlay", "applied front")
TAILED = (FRONT, "half-blind dovetail", "through dovetail")
SLOPED = (FRONT, "half-blind dovetail", "through dovetail", "sliding dovetail")
HALF_BLIND, SLID, LOCKED, BOX, PINNED = (
    (FRONT, kind)
    for kind in ("half-blind dovetail", "sliding dovetail", "lock rabbet", "box joint", "rabbet and pins")
)
TAILED_BACK, HOUSED = (BACK, "through dovetail"), (BACK, "housing")


def _choice(name: str, label: str, choices: Choices) -> Asked:
    return Asked(
        name=name,
        label=label,
        kind=Kind.CHOICE,
        choices=choices,
        usual=choices[0][0],
        lead=True,
        bare=True,
        is_wide=True,
    )


DRAWERS_GROUP = Group(
    key="drawers",
    title="Drawers",
    fields=(
        _choice(STYLE, "Fronts", STYLES),
        ask("drawers.front", "Front", lead=True),
        ask("drawers.box_front", "Box’s own front", when=BOXED),
        ask("drawers.style.bead", "Bead", when=BEADED),
        ask("drawers.style.projection", "Bead stands proud", when=BEADED),
        ask("drawers.style.rabbet", "Bead let in", when=BEADED),
        ask("drawers.style.lip", "Lip", when=LIPPED),
        ask("drawers.style.thick", "Lip thickness", when=LIPPED),
        ask("drawers.style.bottom", "Lip at the bottom too", when=LIPPED, hint=""),
        ask("drawers.style.edge", "Edge reveal", when=FULL),
        ask("drawers.style.gap", "Gap between fronts", when=FULL),
        ask("drawers.style.share", "Heights shared", when=FULL),
        ask("drawers.style.overlay", "Overlay", when=HALF),
        ask("drawers.side", "Side", lead=True),
        ask("drawers.back", "Back"),
        ask("drawers.drop", "Back below the sides"),
    ),
)
JOINTS_GROUP = Group(
    key="joints",
    title="Drawer joints",
    note="A size that is left empty follows from the rules of its joint.",
    fields=(
        _choice(FRONT, "Sides and front", FRONTS),
        ask("drawers.lap", "Lap", when=HALF_BLIND),
        ask("drawers.rabbet", "Registration rabbet", when=HALF_BLIND),
        ask("drawers.proud", "Side stands proud", when=HALF_BLIND),
        ask("drawers.front_joint.slope", "Front: slope, one in", when=SLOPED, hint="Left empty: as usual."),
        ask(
            "drawers.front_joint.half_pin",
            "Front: half pin",
            when=TAILED,
            hint="At the end of the tail board.",
        ),
        ask("drawers.front_joint.pin", "Front: pin", when=TAILED, hint="At the end of the tail board."),
        ask("drawers.front_joint.depth", "Socket depth", when=SLID),
        ask("drawers.front_joint.shoulder", "Tail’s shoulder", when=SLID),
        ask("drawers.front_joint.stop", "Socket ends below the top", when=SLID),
        ask("drawers.front_joint.lip", "Lip", when=(FRONT, "lock rabbet", "rabbet and pins")),
        ask("drawers.front_joint.tongue", "Tongue", when=LOCKED),
        ask("drawers.front_joint.reach", "Groove for the tongue, depth", when=LOCKED),
        ask("drawers.front_joint.from_end", "Groove from the end", when=LOCKED),
        ask(
            "drawers.front_joint.finger",
            "Finger",
            when=BOX,
            hint="Width, which is its cutter's. Left empty: a cutter about as wide as the thinner board is "
            "thick, with which the groove for the bottom lies in one finger, where there is such a cutter.",
        ),
        ask("drawers.front_joint.play", "Play of a finger", when=BOX),
        ask("drawers.front_joint.height", "Height of the box", when=BOX),
        ask("drawers.front_joint.thick", "Pin thickness", when=PINNED),
        ask("drawers.front_joint.long", "Pin length", when=PINNED),
        ask("drawers.front_joint.edge", "First pins from the edge", when=PINNED),
        ask("drawers.front_joint.spacing", "Pin to pin at the most", when=PINNED),
        _choice(BACK, "Sides and back", BACKS),
        ask(
            "drawers.back_joint.slope", "Back: slope, one in", when=TAILED_BACK, hint="Left empty: as usual."
        ),
        ask(
            "drawers.back_joint.half_pin",
            "Back: half pin",
            when=TAILED_BACK,
            hint="At the end of the tail board.",
        ),
        ask("drawers.back_joint.pin", "Back: pin", when=TAILED_BACK, hint="At the end of the tail board."),
        ask("drawers.back_joint.depth", "Housing for the back, depth", when=HOUSED),
        ask("drawers.back_joint.set_in", "Back set in from the end", when=HOUSED),
        ask("drawers.back_joint.play", "Play of the back", when=HOUSED),
    ),
)
BOTTOMS_GROUP = Group(
    key="bottoms",
    title="Drawer bottoms",
    fields=(
        Asked(
            name=BOTTOM,
            label="Bottom",
            kind=Kind.CHOICE,
            choices=(("solid", "solid wood (usual)"), ("ply", "plywood")),
            usual="solid",
            lead=True,
            bare=True,
        ),
        ask("drawers.bottom.thickness", "Thickness", when=(BOTTOM, "solid")),
        ask("drawers.bottom.edges", "Edges", when=(BOTTOM, "solid")),
        ask("drawers.bottom.screwed_under", "Screwed under the box", when=(BOTTOM, "solid")),
        ask("drawers.bottom.sheet", "Sheet", sheet_kinds(), (BOTTOM, "ply")),
        ask("drawers.bottom.nominal", "Sold as", nominals(), (BOTTOM, "ply")),
        ask("drawers.bottom.measures", "Sheet measures", when=(BOTTOM, "ply")),
        ask("drawers.bottom.hold", "Held", when=(BOTTOM, "ply")),
        ask("drawers.bottom.over", "Past the back"),
        ask("drawers.bottom_play", "Play at each side"),
        ask("drawers.groove.height", "Groove above the edge"),
        ask("drawers.groove.width", "Groove width"),
        ask("drawers.groove.depth", "Groove depth"),
        Asked(name=SLIPS, label="Slips carry the groove at the sides", kind=Kind.TICK, usual=False),
        ask(f"{SLIPS}.thickness", "Slip thickness", when=(SLIPS, "slips")),
        ask(f"{SLIPS}.height", "Slip height", when=(SLIPS, "slips")),
        ask(f"{SLIPS}.depth", "Groove depth in a slip", when=(SLIPS, "slips")),
        ask(
            "drawers.muntin.use",
            "Bar under the middle",
            hint="Auto: where a bottom is wider than the limit below, or would sag too far. Plywood of "
            "3/8 in or more needs none for its width.",
        ),
        ask("drawers.muntin.over", "Bar when wider than"),
        ask("drawers.muntin.width", "Bar width"),
        ask("drawers.muntin.thickness", "Bar thickness"),
    ),
)
