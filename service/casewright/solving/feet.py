"""How sure some feet are, worked out in a process beside the pages."""

from functools import lru_cache

from pydantic import TypeAdapter

from casewright.measure.units import Count
from casewright.pieces.takeoff.feet_asked import EnoughFeet, FeetAsked
from casewright.solving.beside import answer_beside

MODULE = "casewright.solving.feet_worker"
MOST_PARTS = 200
"""Parts of one wood, cut and class; for so many the answer takes some seconds."""
KEPT = 128
QUESTIONS = TypeAdapter(tuple[FeetAsked, ...])
ANSWERS = TypeAdapter(tuple[EnoughFeet, ...])


def parts_of(asked: FeetAsked) -> Count:
    """How many parts a question is about, counted singly."""
    return sum(part.count for part in asked.parts)


def enough_for(asked: tuple[FeetAsked, ...]) -> tuple[EnoughFeet | None, ...]:
    """The feet that are enough for some woods, one question after the other.

    The same question has the same answer, so answers are kept for a while.

    Args:
        asked: the questions

    Returns:
        An answer for each; None for one that is about too many parts.

    Raises:
        NoAnswer: others have asked before and it takes too long, or the process ended by itself
    """
    may = [each for each in asked if parts_of(each) <= MOST_PARTS]
    answers = dict(zip(may, _answers(tuple(may)), strict=True)) if may else {}
    return tuple(answers.get(each) for each in asked)


@lru_cache(maxsize=KEPT)
def _answers(asked: tuple[FeetAsked, ...]) -> tuple[EnoughFeet, ...]:
    return ANSWERS.validate_json(answer_beside(MODULE, QUESTIONS.dump_json(asked)))
