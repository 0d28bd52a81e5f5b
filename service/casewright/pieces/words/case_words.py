"""The body of a carcase in plain words: its sides, how it is joined, and what lies between its rows."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.built.construct import Construction
from casewright.pieces.words.wording import sized

CORNERS = {
    "half-blind": "dovetailed to the rails and the bottom",
    "through": "dovetailed to the rails and the bottom, with the joints to be seen at the sides",
    "housing": "let into and screwed to the rails and the bottom",
    "tenon": "joined to the rails by tenons (tongues at the ends of the rails, glued into slots)",
    "dowels": "joined to the rails and the bottom by wooden dowels",
    "loose-tenons": "joined to the rails and the bottom by tenons let into both",
}
DIVIDERS = {
    "rail": "Between the rows lies a rail at the front.",
    "dust-frame": "The frames between the rows are closed by thin panels that keep dust out.",
    "solid": "Boards over the full depth lie between the rows.",
    "none": "Nothing lies between the rows: the drawers hang one right above the other.",
}


def case_words(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """The sides and dividers of a carcase.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes

    Yields:
        A sentence or two.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    case = unit.spec.case
    is_framed = any(len(stack.rows) > 1 for stack in unit.face.stacks)
    frames = "frames inside carry the drawers and" if is_framed else "rails and runners"
    thick, joined = sized(case.side, shown), CORNERS[case.joined]
    if case.is_ply:
        joined = joined.replace("the rails and the bottom", "its top and bottom")
        edges = ", its front edges lipped with solid wood" if case.ply.lipping else ""
        yield f"The case is built of plywood {thick} thick{edges}, {joined}."
    elif case.is_framed:
        yield (
            f"Its sides are frames {thick} thick around panels that lie loose in them, free to swell and "
            f"shrink, so that the sides keep their size; they are {joined}."
        )
    elif case.has_webs:
        yield (
            f"The case is built of solid boards, its sides {thick} thick and {joined}; {frames} leave the "
            "sides free to move with the seasons."
        )
    else:
        yield f"The case is built of solid boards, its sides {thick} thick and {joined}."
    if is_framed and case.divider_kind in DIVIDERS:
        yield DIVIDERS[case.divider_kind]
