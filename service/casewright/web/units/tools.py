"""The tools beside the drawing: which opening is chosen, and what can be done to it."""

from collections.abc import Mapping
from dataclasses import dataclass

from casewright.pieces.asked.edits import codes_of
from casewright.web.units.rows import Shape, field_of, shape_of, typed_rows

HELD = {"": "drawer", "drawer": "drawer", "open": "open", "doors": "doors"}
Button = tuple[str, str]
"""The word of what it does, and what stands on it."""
BUTTONS: tuple[tuple[str, tuple[Button, ...]], ...] = (
    (
        "Its row",
        (
            ("above", "Add above"),
            ("below", "Add below"),
            ("up", "Up"),
            ("down", "Down"),
            ("remove", "Take out"),
            ("spell", "A line for each column"),
        ),
    ),
    ("Split it", (("across", "side by side"), ("rows", "one above the other"))),
    ("Join it", (("join", "With its neighbour"), ("one", "Its column into one"))),
    ("Make it", (("drawer", "A drawer"), ("open", "Open"), ("doors", "Doors"))),
    ("Its size", (("height", "Set height"), ("width", "Set width"))),
)
"""What can be done to an opening, in the order of the page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """An opening that can be chosen.

    Attributes:
        mark: its code without the R, such as `1-2`
        words: what it is called
        field: the id of the field in which it begins
    """

    mark: str
    words: str
    field: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tools:
    """The tools.

    Attributes:
        at: the opening that is chosen
        places: every opening
        note: what went with the last change, or why it could not be made
        into: into how many it is to be split, as typed
        to: the size that it is to have, as typed
        buttons: what can be done
    """

    at: str
    places: tuple[Place, ...]
    note: str = ""
    into: str = "2"
    to: str = ""
    buttons: tuple[tuple[str, tuple[Button, ...]], ...] = BUTTONS

    @property
    def field(self) -> str:
        """The id of the field in which the chosen opening begins."""
        return next((each.field for each in self.places if each.mark == self.at), "rows-title")

    @property
    def measured(self) -> str:
        """The id of the field of what was measured of the chosen opening, or of the group of them all."""
        return f"measured-R{self.at}-height" if self.at else "group-measured"


def tools_of(values: Mapping[str, str], at: str = "", note: str = "") -> Tools:
    """The tools for what stands in a form.

    Args:
        values: the text of every field
        at: the opening that is chosen; the first where there is no such opening
        note: what is to be said of the last change
    """
    shape = shape_of(values)
    places = tuple(_place(code.removeprefix("R"), shape) for code in codes_of(typed_rows(values)))
    return Tools(at=at if any(each.mark == at for each in places) else "", places=places, note=note)


def _place(mark: str, shape: Shape) -> Place:
    return Place(mark=mark, words=f"R{mark}", field=field_at(mark, shape))


PARTS = {"top": "top-thickness", "base": "base-height", "side": "case-side"}
"""The field to which a part in the drawing leads, by its name there."""


def field_at(code: str, shape: Shape) -> str:
    """The id of the field to which a place in the drawing leads.

    Args:
        code: of an opening or row, such as `R1-2`, or the name of a part
        shape: the rows of the form
    """
    name = field_of(shape, code.removeprefix("R")) if code not in PARTS else ""
    return PARTS.get(code) or name.replace(".", "-") or "rows-title"
