"""The blanks that matched parts are cut from: along a board, across a panel, or from its thickness."""

from casewright.measure.units import Count, Inches


def along_length(lengths: Inches, parts: Count, kerf: Inches, trim: Inches) -> Inches:
    """The length of a board from which parts are cut one after the other.

    Rule: lengths + (parts - 1) × kerf + 2 × trim

    Args:
        lengths: finished lengths added up [in]
        parts: how many there are
        kerf: what each saw cut takes [in]
        trim: taken off each end [in]

    Returns:
        The length needed [in]

    Source: geometry of the cut.
    """
    return lengths + (parts - 1) * kerf + 2 * trim


def across_width(widths: Inches, parts: Count, kerf: Inches, edge: Inches) -> Inches:
    """The width of a board or panel from which parts are ripped one above the other.

    Rule: widths + (parts - 1) × kerf + 2 × edge

    Args:
        widths: finished widths added up [in]
        parts: how many there are
        kerf: what each saw cut takes [in]
        edge: taken off each edge to straighten it [in]

    Returns:
        The width needed [in]

    Source: geometry of the cut.
    """
    return widths + (parts - 1) * kerf + 2 * edge
