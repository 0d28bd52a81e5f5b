"""The widths of the columns of a row: typed ones as they are, the others sharing what is left."""

from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches
from casewright.pieces.asked.graduation import CannotGraduate
from casewright.pieces.asked.layout_spec import Row
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.layout.row_heights import row_words
from casewright.pieces.rules import case_rules as rules

NARROWEST = 1.0
"""A column narrower than this is none [in]."""


def column_widths(spec: UnitSpec, row: Row, code: str, clear: Inches, ledger: Ledger) -> tuple[Inches, ...]:
    """The clear widths of the columns of a row.

    Args:
        spec: what the maker chose
        row: the row as it was asked for
        code: its code, such as `R2`
        clear: between the walls of its stack [in]
        ledger: keeps the working

    Returns:
        The widths, from the left [in]

    Raises:
        CannotGraduate: they do not add up, or leave a column nothing; the row is named by its path

    Source: geometry of the case.
    """
    typed = row.column_widths
    if typed == (None,):
        return (clear,)
    fixed = sum(width for width in typed if width is not None)
    shared = sum(1 for width in typed if width is None)
    left = clear - (len(typed) - 1) * spec.frame.upright - fixed
    if shared == 0:
        if abs(left) > 1e-6:
            raise CannotGraduate(_not_closing(code, clear, left))
        return tuple(width or 0.0 for width in typed)
    if left / shared < NARROWEST:
        raise CannotGraduate(
            say("{} leaves {} for a drawer; use fewer columns", row_words(code), max(0.0, left / shared))
        )
    width = ledger.take(
        f"{code}.column_width",
        rules.column_width,
        clear=clear,
        upright=spec.frame.upright,
        columns=len(typed),
        fixed=fixed,
        shared=shared,
    )
    return tuple(width if typed_width is None else typed_width for typed_width in typed)


def _not_closing(code: str, clear: Inches, left: Inches) -> Words:
    if "-" in code:
        return say(
            "the widths of {} and its uprights add up to {} but its column is {:bare} wide inside; "
            "leave one width out (null)",
            row_words(code),
            clear - left,
            clear,
        )
    return say(
        "the widths of {} and its uprights add up to {} but the case is {:bare} wide inside; leave one "
        "width out (null)",
        row_words(code),
        clear - left,
        clear,
    )
