"""What a field of the form is called where another choice makes it something else."""

from collections.abc import Mapping
from dataclasses import replace

from casewright.web.units.drawer_groups import BOXED, FRONT
from casewright.web.units.fields import Asked
from casewright.web.units.groups import RULE

STYLE, DIVIDER = "drawers.style.kind", "case.divider_kind"
OPENING_HEIGHT, FRONT_HEIGHT = "Opening height", "Height of the front"
BY_THE_BOX = {FRONT: "Sides and the box’s front", "drawers.front": "Show front"}
"""Labels where a box has a front of its own behind the show front."""


def heights_are_fronts(values: Mapping[str, str]) -> bool:
    """Whether what is typed as the height of a row is that of its front.

    Args:
        values: the text of every field

    Returns:
        True where fronts cover the case, nothing lies between them, and no contents set their heights.
    """
    covered = values.get(STYLE, "") == "full overlay" and values.get(DIVIDER, "") == "none"
    return covered and values.get(RULE, "") != "contents"


def has_box_front(values: Mapping[str, str]) -> bool:
    """Whether the box of a drawer has a front of its own.

    Args:
        values: the text of every field
    """
    style, joint = values.get(STYLE, ""), values.get(FRONT, "")
    return style == "applied front" or (style in BOXED[1:] and joint != "sliding dovetail")


def labelled(asked: Asked, values: Mapping[str, str]) -> Asked:
    """A field with the label that it has in this case.

    Args:
        asked: the field
        values: the text of every field
    """
    if asked.name in BY_THE_BOX and has_box_front(values):
        return replace(asked, label=BY_THE_BOX[asked.name])
    if asked.name.endswith(".height") and asked.name.startswith("rows.") and heights_are_fronts(values):
        return replace(asked, label=asked.label.replace(": height", ": height of the front"))
    return asked
