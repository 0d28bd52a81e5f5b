"""The files of a unit that belongs to no job: what is bored in full size, and its caution sheet."""

from casewright.measure.lengths import LengthUnit
from casewright.papers.boring import boring_files
from casewright.papers.caution_sheet_pdf import loose_caution_sheet
from casewright.papers.pdf import Paper
from casewright.pieces.built.construct import Construction


def unit_files(unit: Construction, shown: LengthUnit) -> dict[str, bytes]:
    """Templates and caution sheet of a unit, to be printed.

    Args:
        unit: the unit, worked out
        shown: in which sizes are written

    Returns:
        The bytes by the files' names: on A4 beside millimetres, on Letter beside inches.
    """
    sheet = Paper.A4 if shown is LengthUnit.MILLIMETRE else Paper.LETTER
    caution = loose_caution_sheet(unit, shown, sheet)
    return {**boring_files(unit, shown, sheet), f"{unit.spec.code}-caution-sheet.pdf": caution}
