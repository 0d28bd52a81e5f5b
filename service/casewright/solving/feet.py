"""How sure some feet are, worked out in a process beside the pages."""

import os
import subprocess
import sys
from functools import lru_cache
from threading import Semaphore

from pydantic import TypeAdapter

from casewright.measure.units import Count
from casewright.pieces.takeoff.feet_asked import EnoughFeet, FeetAsked

COMMAND = (sys.executable, "-m", "casewright.solving.feet_worker")
MOST_PARTS = 200
"""Parts of one wood, cut and class; for so many the answer takes some seconds."""
PATIENCE = 120.0
"""So long it may take, and so long somebody may wait for whoever asked before [s]."""
KEPT = 128
QUESTIONS = TypeAdapter(tuple[FeetAsked, ...])
ANSWERS = TypeAdapter(tuple[EnoughFeet, ...])
_TURN = Semaphore(1)


class NoAnswer(Exception):
    """The loads could not be drawn now; the words are for whoever asked."""


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
    """One process at a time, so that many who ask do not take the machine from everybody else."""
    if not _TURN.acquire(timeout=PATIENCE):
        raise NoAnswer("Others are having loads drawn just now. Ask again in a minute.")
    try:
        done = subprocess.run(  # noqa: S603 - our own module
            COMMAND,
            input=QUESTIONS.dump_json(asked),
            capture_output=True,
            timeout=PATIENCE,
            check=True,
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},  # it finds what this process found
        )
    except subprocess.TimeoutExpired:
        raise NoAnswer("Drawing the loads took too long. Choose fewer jobs at a time.") from None
    except subprocess.CalledProcessError:
        raise NoAnswer(
            "The loads could not be drawn: the process ended by itself, most likely for want of memory. "
            "Choose fewer jobs at a time."
        ) from None
    finally:
        _TURN.release()
    return ANSWERS.validate_json(done.stdout)
