"""Rough sizes: what is cut from the board so that the finished part is in it."""

from dataclasses import dataclass
from functools import cache

from casewright.measure.rounding import TOLERANCE, up_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches
from casewright.wood.basis import Evidence, evidence_of
from casewright.wood.tables import document


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowances:
    """How much larger than finished a shop cuts its parts.

    Attributes:
        end: over the length of a part cut alone [in]
        ganged_end: over the length of each part that shares a blank with others [in]
        edge: over the width of a part from one board [in]
        panel_edge: over the width of a glued panel, once [in]
        board: over the width of a glued panel, for each of its boards [in]
        shortest: the shortest blank that is safe in the planer [in]
        evidence: whose habit it is
    """

    end: Inches
    ganged_end: Inches
    edge: Inches
    panel_edge: Inches
    board: Inches
    shortest: Inches
    evidence: Evidence

    def __post_init__(self) -> None:
        sizes = (self.end, self.ganged_end, self.edge, self.panel_edge, self.board, self.shortest)
        if min(sizes) < 0:
            raise ValueError(
                say("An allowance makes a part larger; {:exact} would make it smaller.", min(sizes))
            )


@cache
def usual_allowances() -> Allowances:
    """The allowances of the trade, for a shop that has not set its own.

    Returns:
        1 in over length, 1/4 in over width, and what a panel takes.

    Source: common practice.
    """
    row = document("allowances")["allowances"]
    return Allowances(
        end=row["end_in"],
        ganged_end=row["ganged_end_in"],
        edge=row["edge_in"],
        panel_edge=row["panel_edge_in"],
        board=row["board_in"],
        shortest=row["shortest_in"],
        evidence=evidence_of(row),
    )


def is_ganged(length: Inches, pieces: Count, allowances: Allowances | None = None) -> bool:
    """Whether parts of one size are to go through the planer together in one blank.

    Args:
        length: finished length of each part [in]
        pieces: how many there are of the same section [dimensionless]
        allowances: the shop's own, if it has set any

    Returns:
        True for two or more parts that are each too short for the planer.

    Source: common practice.
    """
    return pieces > 1 and length < (allowances or usual_allowances()).shortest - TOLERANCE


def rough_length(length: Inches, ganged: bool = False, allowances: Allowances | None = None) -> Inches:
    """The length to cut a part from the board.

    Rule: length + end, or length + ganged_end when ganged; usually length + 1, or length + 1/2

    Args:
        length: finished length [in]
        ganged: true when it shares a blank with others of its section
        allowances: the shop's own, if it has set any

    Returns:
        Rough length [in]

    Source: common practice.
    """
    allowed = allowances or usual_allowances()
    return length + (allowed.ganged_end if ganged else allowed.end)


def boards_in_panel(width: Inches, average: Inches) -> Count:
    """How many boards a panel is glued up from.

    Rule: width / average, rounded up

    Args:
        width: finished width of the panel [in]
        average: usable width of a usual board of the wood [in]

    Returns:
        Number of boards, at least one [dimensionless]

    Raises:
        ValueError: either width is not above nothing.

    Source: common practice.
    """
    if not (width > 0 and average > 0):
        raise ValueError(say("A panel {:exact} wide cannot be made of boards {:exact} wide.", width, average))
    return int(up_to(width / average, 1))


def rough_width(width: Inches, boards: Count = 1, allowances: Allowances | None = None) -> Inches:
    """The width to cut or glue up for a part.

    Rule: width + edge for one board; width + panel_edge + boards * board for a panel; usually width + 1/4,
    or width + 1/2 + boards / 4

    Args:
        width: finished width [in]
        boards: how many boards it is glued up from [dimensionless]
        allowances: the shop's own, if it has set any

    Returns:
        Rough width, the sum over the boards of a panel [in]

    Raises:
        ValueError: there is less than one board.

    Source: common practice.
    """
    if boards < 1:
        raise ValueError(f"A part is made of one board or more, not of {boards}.")
    allowed = allowances or usual_allowances()
    if boards == 1:
        return width + allowed.edge
    return width + allowed.panel_edge + boards * allowed.board
