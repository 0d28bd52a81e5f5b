"""The groups of a unit's form for what closes a case and what it stands on: top, base, back."""

from casewright.web.units.fields import Asked, Choices, Group, Kind, ask
from casewright.wood.sheets import sheets

CARCASE = ("construction.kind", "carcase")
"""Base and back count for a carcase only."""
BASE = "base.kind"
USUAL_BASE, NO_BASE = "plinth", "none"
BASES: Choices = (
    ("plinth", "plinth (usual)"),
    ("brackets", "bracket feet"),
    ("turned", "turned feet"),
    ("toe", "toe base"),
    (NO_BASE, "none: on its own sides"),
)


def sheet_kinds() -> Choices:
    """Every kind of sheet in the table."""
    return tuple((kind, kind) for kind in dict.fromkeys(each.kind for each in sheets()))


def nominals() -> Choices:
    """Every thickness that a sheet is sold by, thin ones first."""
    found = sorted({each.nominal: each.thickness for each in sheets()}.items(), key=lambda pair: pair[1])
    return tuple((nominal, f"{nominal} in") for nominal, _ in found)


def _base(name: str, label: str, *kinds: str, choices: Choices = (), lead: bool = False) -> Asked:
    return ask(f"base.{name}", label, choices, (BASE, *kinds), lead=lead)


SHELL_GROUPS = (
    Group(
        key="top",
        title="Top",
        fields=(
            ask("top.thickness", "Thickness", lead=True),
            ask("top.overhang_sides", "Overhang, sides", lead=True),
            ask("top.overhang_front", "Overhang, front", lead=True),
            ask("top.overhang_back", "Overhang, back"),
        ),
    ),
    Group(
        key="base",
        title="Base",
        when=CARCASE,
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
            _base("apart", "Cross members, apart", "toe"),
            _base("facing", "Its face", "toe"),
            _base("levelling", "Left for levelling", "toe"),
        ),
    ),
    Group(
        key="back",
        title="Back",
        when=CARCASE,
        fields=(
            ask("back.thickness", "Thickness", lead=True),
            ask("back.rabbet", "Into each side"),
            ask("back.lap", "Shiplap"),
            ask("back.gap", "Gap at each lap"),
            ask("back.boards", "Boards"),
            ask("back.widest", "Widest board"),
        ),
    ),
)
