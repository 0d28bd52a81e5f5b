"""The caution sheet as PDF: what was found, what to tell the customer, what to fix, and who carries it."""

from typing import Any

from casewright.measure.lengths import LengthUnit
from casewright.measure.rounding import up_to
from casewright.papers.caution_sheet import (
    CaseRow,
    CautionSheetPaper,
    Told,
    UnitCaution,
    caution_sheet_paper,
)
from casewright.papers.cleaning import name, words
from casewright.papers.head import PaperHead, head_data, loose_head
from casewright.papers.pdf import Paper, render
from casewright.papers.stand_words import FIXED, unfixed_word
from casewright.papers.writing import Writing, several
from casewright.pieces.built.construct import Construction
from casewright.stability.limits import house_limits
from casewright.stability.tip_checks import factor_shown

MOST_CODES = 12
"""How many drawers a line names; of more it says how many."""
WORDS = {"pass": "holds", "caution": "less than wanted", "stop": "tips"}


def caution_sheet_pdf(sheet: CautionSheetPaper, paper: Paper = Paper.LETTER) -> bytes:
    """The caution sheet of a job.

    Args:
        sheet: the caution sheet, as it is kept
        paper: the sheet of paper

    Returns:
        A PDF: unit by unit what the screen found, then what the customer is told, and what is fixed.
    """
    return render("caution_sheet", caution_sheet_data(sheet), paper)


def loose_caution_sheet(unit: Construction, shown: LengthUnit, paper: Paper = Paper.LETTER) -> bytes:
    """The caution sheet of a unit that belongs to no job.

    Args:
        unit: the unit, worked out
        shown: in which sizes are written
        paper: the sheet of paper

    Returns:
        A PDF.
    """
    sheet = caution_sheet_paper(PaperHead(job_number="", unit=shown), (unit,))
    data = caution_sheet_data(sheet) | loose_head("Caution sheet", unit.spec.name, shown, what="Piece")
    return render("caution_sheet", data, paper)


def caution_sheet_data(sheet: CautionSheetPaper) -> dict[str, Any]:
    """The caution sheet as it is read, on paper and on a page.

    Args:
        sheet: the caution sheet, as it is kept

    Returns:
        Every figure in words, the drawing as SVG.
    """
    writing = Writing(unit=sheet.head.unit)
    return head_data(sheet.head, "Caution sheet") | {
        "screen": words(sheet.screen),
        "target": f"{house_limits().target_factor:g}",
        "moments": writing.moments,
        "units": [_unit(each, writing) for each in sheet.units],
        "label": [_told(each) for each in sheet.label],
        "wording": words(sheet.wording),
        "restraint": [_told(each) for each in sheet.restraint],
        "certificate": _told(sheet.certificate) if any(each.covered for each in sheet.units) else [],
    }


def _told(each: Told) -> list[str]:
    return [words(each.text), words(each.source)]


def _unit(unit: UnitCaution, writing: Writing) -> dict[str, Any]:
    alike = f" × {unit.count}" if unit.count > 1 else ""
    return {
        "title": f"{name(unit.code, 20)}: {name(unit.name)}{alike}",
        "covered": unit.covered,
        "scope": words(unit.scope),
        "limits": [
            [
                name(each.name),
                words(each.found),
                words(each.least),
                "yes" if each.reached else "no",
                each.basis,
            ]
            for each in unit.limits
        ],
        "cases": [_case(each, writing, unit.is_fixed) for each in unit.cases],
        "travels": [words(line) for line in unit.travels],
        "others": words(unit.others),
        "remedies": [words(line) for line in unit.remedies],
        "not_enough": [words(line) for line in unit.not_enough],
        "fixed": words(FIXED) if unit.is_fixed else "",
        "carries": [
            [words(each.what), f"{up_to(each.weight_lb, 1):.0f} lb", several(each.people, "person", "people")]
            for each in unit.carries
        ],
        "wall": [words(line) for line in unit.wall],
        "composite": words(unit.composite),
        "view": unit.view,
        "alt": f"{name(unit.name)} from the side, in the situation in which it stands worst.",
    }


def _so_it(row: CaseRow) -> str:
    """What a piece does in a situation: it tips below 1, whether or not the rule asks for it."""
    return WORDS["stop"] if row.factor is not None and row.factor < 1 else WORDS[row.verdict]


def _case(row: CaseRow, writing: Writing, is_fixed: bool) -> dict[str, str]:
    named = ", ".join(row.of[:MOST_CODES])
    if len(row.of) > MOST_CODES:
        named += f" and {several(len(row.of) - MOST_CODES, 'more', 'more')}"
    return {
        "done": words(row.done),
        "of": words(named),
        "holding": writing.moment(row.holding_in_lb),
        "tipping": writing.moment(row.tipping_in_lb),
        "factor": "no limit" if row.factor is None else factor_shown(row.factor),
        "verdict": unfixed_word(row.factor) if is_fixed else _so_it(row),
        "state": "" if is_fixed else row.verdict,
        "basis": row.basis,
    }
