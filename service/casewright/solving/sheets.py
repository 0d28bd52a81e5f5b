"""How many sheets some parts take, laid out in a process beside the pages."""

from functools import lru_cache

from pydantic import TypeAdapter

from casewright.pieces.takeoff.sheets_asked import SheetsAsked, SheetsLaid
from casewright.solving.beside import NoAnswer, answer_beside

MODULE = "casewright.solving.sheets_worker"
MOST_PARTS = 400
"""Parts of all sheets together; so many are laid out while somebody waits."""
KEPT = 128
QUESTIONS = TypeAdapter(tuple[SheetsAsked, ...])
ANSWERS = TypeAdapter(tuple[SheetsLaid, ...])


def laid_sheets(asked: tuple[SheetsAsked, ...]) -> tuple[SheetsLaid, ...]:
    """The sheets that are taken, one question after the other; the same question is answered from memory.

    Args:
        asked: the questions, one for each kind of sheet

    Returns:
        An answer for each.

    Raises:
        NoAnswer: there are too many parts, or the work took too long or broke off
    """
    if sum(part.count for each in asked for part in each.parts) > MOST_PARTS:
        raise NoAnswer(f"Sheets are laid out for {MOST_PARTS} parts at most.")
    return _answers(asked)


@lru_cache(maxsize=KEPT)
def _answers(asked: tuple[SheetsAsked, ...]) -> tuple[SheetsLaid, ...]:
    return ANSWERS.validate_json(answer_beside(MODULE, QUESTIONS.dump_json(asked)))
