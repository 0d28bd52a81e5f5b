"""The groups of a unit's form for what closes a case and what it stands on: top, base, back."""

from casewright.web.units.fields import Asked, Choices, Group, Kind, ask
from casewright.wood.sheets import sheets

WITH_CASE = ("construction.kind", "carcase", "crate")
"""Base and back count where there is a case."""
BASE = "base.kind"
USUAL_BASE, NO_BASE = "plinth", "none"
BASES: Choices = (
    ("plinth", "plinth (usual)"),
    ("brackets", "bracket feet"),
    ("turned", "turned feet"),
    ("toe", "toe base"),
    (NO_BASE, "none: on its own sides"),
)

CLEAT = "cleat"
FIXING = "top.fixing"
MOVING = ("buttons", "slots", "clips")
FIXINGS: Choices = (
    ("buttons", "buttons, or screws through plywood (usual)"),
    ("slots", "screws in slots of the rails"),
    ("clips", "metal clips"),
    ("dovetails", "dovetails, between the sides"),
    ("none", "nothing: there is no top"),
)
BACK = "back.kind"
BACKS: Choices = (
    ("shiplap", "shiplap boards (usual)"),
    ("tongued", "tongued boards"),
    ("panelled", "frame with panels"),
    ("rabbeted-ply", "plywood in rabbets"),
    ("grooved-ply", "plywood in grooves"),
    ("none", "none"),
)
BOARDED, PLY = ("shiplap", "tongued"), ("rabbeted-ply", "grooved-ply")


def sheet_kinds() -> Choices:
    """Every kind of sheet in the table."""
    return tuple((kind, kind) for kind in dict.fromkeys(each.kind for each in sheets()))


def nominals() -> Choices:
    """Every thickness that a sheet is sold by, thin ones first."""
    found = sorted({each.nominal: each.thickness for each in sheets()}.items(), key=lambda pair: pair[1])
    return tuple((nominal, f"{nominal} in") for nominal, _ in found)


def _base(name: str, label: str, *kinds: str, choices: Choices = (), lead: bool = False) -> Asked:
    return ask(f"base.{name}", label, choices, (BASE, *kinds), lead=lead)


def _back(name: str, label: str, *kinds: str, choices: Choices = (), lead: bool = False) -> Asked:
    return ask(f"back.{name}", label, choices, (BACK, *kinds), lead=lead)


SHELL_GROUPS = (
    Group(
        key="top",
        title="Top",
        fields=(
            ask("top.thickness", "Thickness", lead=True),
            ask("top.overhang_sides", "Overhang at the sides", lead=True),
            ask("top.overhang_front", "Overhang at the front", lead=True),
            ask("top.overhang_back", "Overhang at the back"),
        ),
    ),
    Group(
        key="top-fixing",
        title="Top held by",
        when=WITH_CASE,
        note="Dovetailed between the sides, or with none at all, it has no overhang: leave those empty.",
        fields=(
            ask(FIXING, "Held by", FIXINGS, hint="", lead=True, bare=True, is_wide=True),
            ask("top.spacing", "Fixings, apart", when=(FIXING, *MOVING)),
            ask("top.slack", "Rear fixings give", when=(FIXING, *MOVING)),
        ),
    ),
    Group(
        key="base",
        title="Base",
        when=WITH_CASE,
        fields=(
            Asked(
                name=BASE, label="It stands on", kind=Kind.CHOICE, choices=BASES, usual="plinth", lead=True
            ),
            _base("height", "Height", "plinth", "brackets", "turned", "toe", lead=True),
            _base("thickness", "Thickness of its boards", "plinth", "brackets", "toe"),
            _base("setback", "Set back", "plinth", "brackets", "turned"),
            _base("corner", "Front corners", "plinth"),
            _base("width", "Foot, each way", "brackets"),
            _base("diameter", "Foot, thickest", "turned"),
            _base("pad", "Foot, on the floor", "turned"),
            _base("number", "Feet", "turned"),
            _base("layers", "Glued up from", "turned"),
            _base("block", "Block above a foot", "turned"),
            _base("tenon", "Foot tenon, thick", "turned"),
            _base("forward", "Feet before the case", "brackets", "turned"),
            _base("rear", "Rear feet stand in", "brackets", "turned"),
            _base("toe_space", "Room for the toes", "toe"),
            _base("made_of", "Made of", "toe"),
            _base("sheet", "Sheet", "toe", choices=sheet_kinds()),
            _base("nominal", "Sold as", "toe", choices=nominals()),
            _base("measures", "Sheet measures", "toe"),
            _base("apart", "Cross members, apart", "toe"),
            _base("facing", "Its face", "toe"),
            _base("levelling", "Left for levelling", "toe"),
        ),
    ),
    Group(
        key="back",
        title="Back",
        when=WITH_CASE,
        fields=(
            ask(BACK, "Back", BACKS, hint="", lead=True, bare=True),
            _back("thickness", "Thickness", *BOARDED, "panelled", lead=True),
            _back("rabbet", "Into each side", *BOARDED, "panelled", "rabbeted-ply"),
            _back("lap", "Shiplap, or tongue's length", *BOARDED),
            _back("tongue", "Tongue, thick", "tongued"),
            _back("gap", "Gap at each lap", *BOARDED),
            _back("boards", "Boards", *BOARDED),
            _back("widest", "Widest board", *BOARDED),
            _back("panelling.stile", "Stile", "panelled"),
            _back("panelling.top_rail", "Top rail", "panelled"),
            _back("panelling.bottom_rail", "Bottom rail", "panelled"),
            _back("panelling.middle_rails", "Middle rails", "panelled"),
            _back("panelling.muntins", "Muntins", "panelled"),
            _back("panelling.panel", "Panel", "panelled"),
            _back("panelling.groove_depth", "Panel's groove, deep", "panelled"),
            _back("ply.sheet", "Sheet", *PLY, choices=sheet_kinds()),
            _back("ply.nominal", "Sold as", *PLY, choices=nominals()),
            _back("ply.measures", "Sheet measures", *PLY),
            _back("groove", "Into each groove", "grooved-ply"),
            _back("play", "Groove cut deeper by", *PLY),
            _back("behind", "Wood behind it", "grooved-ply"),
        ),
    ),
    Group(
        key="wall",
        title="Wall",
        when=WITH_CASE,
        note="For a piece that hangs on the wall, or is built in between walls.",
        fields=(
            Asked(name=CLEAT, label="It hangs on a cleat", kind=Kind.TICK, usual=False),
            ask("cleat.height", "Cleat, height", when=(CLEAT, CLEAT)),
            ask("cleat.thickness", "Cleat, thickness", when=(CLEAT, CLEAT)),
            ask("cleat.room", "Cleat lies", when=(CLEAT, CLEAT), is_wide=True),
            ask("cleat.studs", "Studs, apart", when=(CLEAT, CLEAT)),
            ask("cleat.screws", "Screws in each stud", when=(CLEAT, CLEAT)),
            ask("site.scribe", "Scribe strip"),
            ask("site.recess", "Between the walls"),
            ask("site.out_of_plumb", "Walls out of plumb"),
        ),
    ),
)
