"""A board doweled to the face of a case side."""

from casewright.joinery.butted import row_count, usual_row_margin
from casewright.joinery.butted_checks import row_joint
from casewright.joinery.butted_row import (
    ButtedRow,
    PieceWords,
    RowJoint,
    RowLimits,
    usual_piece_length,
    usual_side_depth,
)
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


def _chosen_depth(case_side: Inches) -> Chosen:
    return Chosen(
        name="side_depth",
        value=usual_side_depth(case_side, LIMITS.left_usual.value),
        measure=Measure.LENGTH,
        why=say("To {} of the outside face of the {} side.", LIMITS.left_usual.value, case_side),
        source=LIMITS.left_usual.source,
    )


def _chosen_length(side_depth: Inches) -> Chosen:
    return Chosen(
        name="length",
        value=usual_piece_length(side_depth, LIMITS.length_times.value, LIMITS.length_step.value),
        measure=Measure.LENGTH,
        why=say("Three times the depth in the side, {}, up to {}.", side_depth, LIMITS.length_step.value),
        source=LIMITS.length_times.source,
    )


def _chosen_margin(width: Inches) -> Chosen:
    return Chosen(
        name="margin",
        value=usual_row_margin(width, LIMITS.margin.value, LIMITS.margin_step.value),
        measure=Measure.LENGTH,
        why=say("{} is usual; on narrow boards a quarter of them.", LIMITS.margin.value),
        source=LIMITS.margin.source,
    )


def _chosen_spacing() -> Chosen:
    return Chosen(
        name="spacing",
        value=LIMITS.spacing.value,
        measure=Measure.LENGTH,
        why="Close enough to keep the boards flat against each other.",
        source=LIMITS.spacing.source,
    )


def _chosen_dowels(width: Inches, margin: Inches, spacing: Inches) -> Chosen:
    return Chosen(
        name="dowels",
        value=row_count(width, margin, spacing),
        measure=Measure.COUNT,
        why=say("As many as stand no more than {} apart.", spacing),
        source=LIMITS.spacing.source,
    )


def _asked(take: Choosing, mark: str = "") -> tuple[ButtedRow, tuple[Chosen, ...]]:
    """The joint from plain numbers; whatever was left out is chosen."""
    width, board, case_side = take.number("width"), take.number("board"), take.number("case_side")
    dowel = take.or_choose("dowel", _chosen_dowel, min(board, case_side))
    side_depth = take.or_choose("side_depth", _chosen_depth, case_side)
    length = take.or_choose("length", _chosen_length, side_depth)
    margin = take.or_choose("margin", _chosen_margin, width)
    count = take.optional("dowels")
    # The number of dowels settles their spacing, so that one is chosen only where the other is not given.
    if count is None:
        spacing = take.or_choose("spacing", _chosen_spacing)
        count = take.or_choose("dowels", _chosen_dowels, width, margin, spacing)
    row = ButtedRow(
        width=width,
        board=board,
        case_side=case_side,
        thick=dowel,
        along=dowel,
        side_depth=side_depth,
        length=length,
        margin=margin,
        count=int(count),
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
