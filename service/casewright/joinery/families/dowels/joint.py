"""A board doweled to the face of a case side."""

from casewright.joinery.butted import row_count
from casewright.joinery.butted_checks import row_joint
from casewright.joinery.butted_chosen import row_pieces, row_places
from casewright.joinery.butted_row import ButtedRow, PieceWords, RowJoint, RowLimits
from casewright.joinery.chisels import Rack
from casewright.joinery.joint import Choosing, Chosen, JointKind, Measure, Measured, Solved, Values, fields
from casewright.joinery.sourced import sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import say
from casewright.measure.units import Inches

LIMITS = RowLimits(**sourced("dowels_limits"))
"""The limits of a shop that has set none of its own."""
DOWELS: tuple[Inches, ...] = (1 / 4, 5 / 16, 3 / 8, 1 / 2)
"""The thicknesses that dowels are sold in (common practice) [in]."""
WORDS = PieceWords(
    one="dowel", hole="hole", tool="Drill", made="as thick as a dowel; try it on scrap", is_round=True
)

WHY = "As many as stand no more than {} apart."
"""Why so many."""


def usual_dowel(thinner: Inches) -> Inches:
    """The thickness of a dowel: the thickest that is sold up to half of the thinner board.

    Rule: the greatest of 1/4, 5/16, 3/8 and 1/2 that is no more than thinner / 2; half of a thinner board

    Args:
        thinner: thickness of the thinner board [in]

    Returns:
        The thickness [in]

    Source: common practice.
    """
    return max((each for each in DOWELS if each <= thinner / 2 + TOLERANCE), default=thinner / 2)


def doweled(
    width: Inches,
    board: Inches,
    case_side: Inches,
    inside_width: Inches,
    mark: str,
    ledger: Ledger = UNKEPT,
) -> RowJoint:
    """A doweled corner of a case, everything chosen by the usual rules.

    Args:
        width: length of the joint, from the front edge to the rear edge [in]
        board: thickness of the board that butts [in]
        case_side: thickness of the case side [in]
        inside_width: between the case sides [in]
        mark: code of the joint, for its findings
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the board is too narrow or too thin for dowels

    Source: common practice.
    """
    given = {"width": width, "board": board, "case_side": case_side, "inside_width": inside_width}
    asked, _ = _asked(Choosing(given, ledger, FIELDS), mark)
    return row_joint(asked, ledger)


def _chosen_dowel(thinner: Inches) -> Chosen:
    return Chosen(
        name="dowel",
        value=usual_dowel(thinner),
        measure=Measure.LENGTH,
        why=say("The thickest that is sold, up to half of the {} board.", thinner),
        source=LIMITS.part.source,
    )


def _asked(take: Choosing, mark: str = "") -> tuple[ButtedRow, tuple[Chosen, ...]]:
    """The joint from plain numbers; whatever was left out is chosen."""
    width, board, case_side = take.number("width"), take.number("board"), take.number("case_side")
    dowel = take.or_choose("dowel", _chosen_dowel, min(board, case_side))
    places = row_places(take, LIMITS, width, case_side)
    count = row_pieces(take, "dowels", row_count, LIMITS, WHY, width, places.margin)
    row = ButtedRow(
        width=width,
        board=board,
        case_side=case_side,
        thick=dowel,
        along=dowel,
        side_depth=places.side_depth,
        length=places.length,
        margin=places.margin,
        count=count,
        words=WORDS,
        limits=LIMITS,
        inside_width=take.optional("inside_width"),
        mark=mark,
    )
    return row, take.chosen


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A doweled corner from plain numbers."""
    row, chosen = _asked(Choosing(values, ledger, FIELDS))
    return Solved(joint=row_joint(row, ledger), chosen=chosen)


FIELDS = fields("dowels")

KIND = JointKind(
    name="dowels",
    title="Board doweled to a case side",
    fields=FIELDS,
    solve=_solve,
)
