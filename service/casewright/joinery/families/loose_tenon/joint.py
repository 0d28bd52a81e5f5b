"""A board joined by loose tenons to the face of a case side."""

from casewright.joinery.butted import row_count
from casewright.joinery.butted_checks import row_joint
from casewright.joinery.butted_chosen import row_pieces, row_places
from casewright.joinery.butted_row import ButtedRow, PieceWords, RowJoint, RowLimits
from casewright.joinery.chisels import RACK, Rack
from casewright.joinery.joint import Choosing, Chosen, JointKind, Measure, Measured, Solved, Values, fields
from casewright.joinery.sourced import sourced
from casewright.joinery.spacing import TOLERANCE
from casewright.joinery.tenons import how_mortised
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.rounding import down_to
from casewright.measure.saying import say
from casewright.measure.units import Count, Inches

LIMITS = RowLimits(**sourced("loose_tenon_limits"))
"""The limits of a shop that has set none of its own."""
WIDTH, WIDTH_STEP = 1.5, 1 / 16
"""How wide a loose tenon is on a wide board, and the step of a narrower one (common practice) [in]."""
PART = 3
"""A loose tenon is about so many parts of the thinner board thick (common practice)."""

WHY = "As many as stand no more than {} apart; one in a board narrower than that."
"""Why so many."""


def usual_loose_tenon(thinner: Inches, rack: Rack = RACK) -> Inches:
    """The thickness of a loose tenon: the chisel nearest to a third of the thinner board, up to its half.

    Rule: the chisel nearest to thinner / 3, of those up to thinner / 2; a third where there is none

    Args:
        thinner: thickness of the thinner board [in]
        rack: the shop's chisels

    Returns:
        The thickness [in]

    Source: common practice.
    """
    third, most = thinner / PART, thinner / LIMITS.part.value
    fitting = [chisel for chisel in rack.chisels if chisel <= most + TOLERANCE]
    return min(fitting, key=lambda chisel: abs(chisel - third), default=third)


def usual_loose_width(width: Inches) -> Inches:
    """The width of a loose tenon along the joint.

    Rule: 1-1/2 in, or half of a narrower board down to 1/16

    Args:
        width: length of the joint [in]

    Returns:
        The width [in]

    Source: common practice.
    """
    return min(WIDTH, down_to(width / 2, WIDTH_STEP) or width / 2)


def loose_count(width: Inches, margin: Inches, spacing: Inches) -> Count:
    """How many loose tenons stand along a joint.

    Rule: (width - 2 * margin) / spacing, rounded up, and one; one alone where width is less than spacing

    Args:
        width: length of the joint, from edge to edge [in]
        margin: from each edge to the middle of the first [in]
        spacing: the most from middle to middle [in]

    Returns:
        The number [dimensionless]

    Source: common practice.
    """
    return 1 if width < spacing - TOLERANCE else row_count(width, margin, spacing)


def loose_tenoned(
    width: Inches,
    board: Inches,
    case_side: Inches,
    inside_width: Inches,
    mark: str,
    rack: Rack = RACK,
    ledger: Ledger = UNKEPT,
) -> RowJoint:
    """A corner of a case with loose tenons, everything chosen by the usual rules.

    Args:
        width: length of the joint, from the front edge to the rear edge [in]
        board: thickness of the board that butts [in]
        case_side: thickness of the case side [in]
        inside_width: between the case sides [in]
        mark: code of the joint, for its findings
        rack: the shop's chisels and cutters
        ledger: where the working is kept

    Returns:
        The joint.

    Raises:
        CannotBeLaidOut: the board is too narrow or too thin for loose tenons

    Source: common practice.
    """
    given = {"width": width, "board": board, "case_side": case_side, "inside_width": inside_width}
    asked, _ = _asked(Choosing(given, ledger, FIELDS), rack, mark)
    return row_joint(asked, ledger)


def _chosen_tenon(thinner: Inches, rack: Rack) -> Chosen:
    return Chosen(
        name="tenon",
        value=usual_loose_tenon(thinner, rack),
        measure=Measure.LENGTH,
        why=say("The chisel nearest to a third of the {} board.", thinner),
        source=LIMITS.part.source,
    )


def _chosen_width(width: Inches) -> Chosen:
    return Chosen(
        name="tenon_width",
        value=usual_loose_width(width),
        measure=Measure.LENGTH,
        why=say("{} is usual; on narrow boards half of them.", WIDTH),
        source="common practice: a loose tenon is 1-1/2 in wide",
    )


def _asked(take: Choosing, rack: Rack, mark: str = "") -> tuple[ButtedRow, tuple[Chosen, ...]]:
    """The joint from plain numbers; whatever was left out is chosen."""
    width, board, case_side = take.number("width"), take.number("board"), take.number("case_side")
    tenon = take.or_choose("tenon", _chosen_tenon, min(board, case_side), rack)
    along = take.or_choose("tenon_width", _chosen_width, width)
    places = row_places(take, LIMITS, width, case_side)
    count = row_pieces(take, "tenons", loose_count, LIMITS, WHY, width, places.margin)
    row = ButtedRow(
        width=width,
        board=board,
        case_side=case_side,
        thick=tenon,
        along=along,
        side_depth=places.side_depth,
        length=places.length,
        margin=places.margin,
        count=count,
        words=PieceWords(
            one="loose tenon",
            hole="mortise",
            tool="Chisel or cutter",
            made=say("as the tenon is thick: {}", how_mortised(tenon, rack)),
            is_round=False,
        ),
        limits=LIMITS,
        inside_width=take.optional("inside_width"),
        mark=mark,
    )
    return row, take.chosen


def _solve(values: Values, measured: Measured, rack: Rack, ledger: Ledger) -> Solved:
    """A corner with loose tenons from plain numbers."""
    row, chosen = _asked(Choosing(values, ledger, FIELDS), rack)
    return Solved(joint=row_joint(row, ledger), chosen=chosen)


FIELDS = fields("loose_tenon")

KIND = JointKind(
    name="loose-tenon",
    title="Board joined by loose tenons to a case side",
    fields=FIELDS,
    solve=_solve,
)
