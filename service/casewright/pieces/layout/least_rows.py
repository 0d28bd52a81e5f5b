"""Rows that do not fit: what is said first of a piece too low for its drawers."""

from collections.abc import Iterable

from casewright.measure.rounding import up_to
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.asked.graduation import SIXTEENTH, CannotGraduate
from casewright.pieces.asked.layout_spec import Row
from casewright.pieces.rules.drawer_rules import least_opening

LEAST_BACK = 1 / 2
"""A drawer whose back is lower than this is none (common practice) [in]."""
DOVETAILED_BACK = 1.0
"""A back of this height holds a tail between two usual half pins (common practice) [in]."""


def least_for(drawers: Drawers, back: Inches = LEAST_BACK) -> Inches:
    """The lowest opening in which the drawers of a piece have any height left.

    Args:
        drawers: how they are made
        back: how high their backs are at least [in]

    Returns:
        The height [in]

    Source: geometry of the drawer.
    """
    groove, gaps = drawers.groove, drawers.clearances
    whole = drawers.screwed_under or (
        isinstance(drawers.bottom, PlyBottom) and drawers.bottom.hold == "four grooves"
    )
    return least_opening(
        groove_height=groove.height,
        groove_width=groove.width,
        foot=0.0 if whole else groove.height + groove.width,
        back=back,
        drop=drawers.drop,
        gap=gaps.top + gaps.bottom,
    )


def refuse_too_many_rows(
    rows: Iterable[Row], drawers: Drawers, total: Inches, where: Words, height: Inches
) -> None:
    """Refuses rows that do not fit one above the other, before anything in a drawer is blamed for it.

    Args:
        rows: the rows of a stack, from the top down
        drawers: how the drawers are made
        total: what is left for their openings, between what divides them [in]
        where: the field of the height that was given, or the column
        height: that height [in]

    Raises:
        CannotGraduate: with the height, what it leaves, and the height that would do

    Source: geometry of the case.
    """
    asked = tuple(rows)
    free = [row for row in asked if row.height is None and row.drawers]
    locked = sum(row.height for row in asked if row.height is not None)
    least = least_for(drawers)
    lacking = locked + least * len(free) - total
    # Locked rows that take all of it are told by themselves.
    if not free or lacking <= 1e-9 or 0 < total <= locked:
        return
    left = total - locked
    wanted = least_for(drawers, DOVETAILED_BACK if drawers.back_kind == "through dovetail" else LEAST_BACK)
    needed = height - total + locked + len(free) * up_to(wanted, SIXTEENTH)
    leaves: Words = ""
    if left <= 0:
        leaves = "what divides them leaves nothing, and "
    elif left < height:
        leaves = say("that leaves {} for {}, and ", left, "one" if len(free) == 1 else f"{len(free)} of them")
    raise CannotGraduate(
        say(
            "{}: {:d} row{} not fit in {}: {}a drawer takes an opening of {:up} or more; {}",
            where,
            len(asked),
            " does" if len(asked) == 1 else "s do",
            height,
            leaves,
            wanted,
            say("make it {:up 16} or more", needed)
            if len(asked) == 1
            else say(
                "equal rows want {:up 16} at the least, and rows that grow more; or take rows out", needed
            ),
        )
    )
