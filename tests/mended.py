"""A piece with one remedy carried out, to see whether it mends what it is said to mend."""

from dataclasses import replace

from casewright.measure.units import Inches, Pounds
from casewright.stability.masses import Mass, Piece, together
from casewright.stability.remedies import BEFORE_REAR, body_share


def with_ballast(piece: Piece, weight: Pounds) -> Piece:
    """The piece with a weight low at the back of its case.

    Args:
        piece: the piece
        weight: what is added [lb]

    Returns:
        A new piece.

    Source: statics.
    """
    added = Mass(label="added", weight=weight, x=piece.support_depth - BEFORE_REAR)
    return replace(piece, case=together("case", (piece.case, added)))


def with_feet_forward(piece: Piece, distance: Inches) -> Piece:
    """The piece with its front feet further forward.

    Args:
        piece: the piece
        distance: how far [in]

    Returns:
        A new piece: everything in it lies that much further behind the pivot.

    Source: geometry.
    """
    return replace(
        piece,
        case=replace(piece.case, x=piece.case.x + distance),
        drawers=tuple(replace(each, front=each.front + distance) for each in piece.drawers),
        leaves=tuple(replace(each, front=each.front + distance) for each in piece.leaves),
        support_depth=piece.support_depth + distance,
    )


def with_deeper_body(piece: Piece, depth: Inches) -> Piece:
    """The piece with a deeper body and drawers that open no further: reckoned without the added wood.

    Args:
        piece: the piece
        depth: what is added [in]

    Returns:
        A new piece.

    Source: geometry: the case's centre goes back by its share of what is added.
    """
    share = body_share(piece.case.x, piece.support_depth)
    return replace(
        piece,
        case=replace(piece.case, x=piece.case.x + share * depth),
        support_depth=piece.support_depth + depth,
    )
