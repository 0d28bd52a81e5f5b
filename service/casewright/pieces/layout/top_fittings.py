"""What holds a top: wooden buttons from offcuts, or screws and clips that are bought."""

from collections.abc import Iterator

from casewright.measure.saying import say
from casewright.measure.units import Count
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.openings import Face
from casewright.pieces.rules.case_rules import fixings

BOUGHT = {"slots": "top screw", "clips": "top clip"}
"""What is bought to hold a top, by the way it is held."""


def top_fixings(spec: UnitSpec, face: Face) -> Count:
    """How many fixings hold the top: along front and rear rail, or both kickers.

    Args:
        spec: what the maker chose
        face: the width between the sides

    Returns:
        The fixings; none for a top that is a part of the case.

    Source: common practice.
    """
    if not spec.top.over:
        return 0
    # On legs the screws go up through the two kickers, front to back.
    along = face.opening_depth if spec.legs and spec.legs.fixing == "slots" else face.clear_width
    return 2 * fixings(length=along, spacing=spec.top.spacing)


def top_buttons(spec: UnitSpec, face: Face) -> Iterator[SmallPart]:
    """The wooden buttons that hold a top.

    Args:
        spec: what the maker chose
        face: the width between the sides

    Returns:
        The small parts of one unit; none where something else holds it.

    Source: common practice.
    """
    how = spec.legs.fixing if spec.legs else spec.top.fixing
    if how == "buttons":
        along = "the side and back aprons" if spec.legs else "both sub-top rails"
        yield SmallPart(
            name="Top button",
            quantity=top_fixings(spec, face),
            size=say("{:bare} × {:bare} × {:fraction}", 3 / 4, 1.0, 1.5),
            note=f"along {along}; tight at the front, with slack towards the back",
        )


def top_hardware(spec: UnitSpec, face: Face) -> Iterator[HardwareItem]:
    """What is bought by the piece to hold the top.

    Args:
        spec: what the maker chose
        face: the width between the sides

    Returns:
        The items; none for buttons, or where the top is a part of the case.

    Source: common practice.
    """
    item = BOUGHT.get(spec.legs.fixing if spec.legs else spec.top.fixing)
    if item and spec.legs:
        note = "up through the kickers: a round hole in front, slots behind it"
        yield HardwareItem(item=item, quantity=top_fixings(spec, face), note=note)
    elif item:
        note = "round holes in front, slots at the rear" if item == "top screw" else "let into both rails"
        if item == "top screw" and spec.has_case_top:
            note = f"up through the case top: {note}"
        yield HardwareItem(item=item, quantity=top_fixings(spec, face), note=note)
