"""Work of some seconds in a process beside the pages: one question, one answer, one process at a time."""

import os
import subprocess
import sys
from threading import Semaphore

PATIENCE = 120.0
"""So long it may take, and so long somebody may wait for whoever asked before [s]."""
_TURN = Semaphore(1)


class NoAnswer(Exception):
    """There is no answer now; the words are for whoever asked."""


def answer_beside(module: str, question: bytes) -> bytes:
    """What a module of this room answers, as a process of its own.

    One process at a time, so that many who ask do not take the machine from everybody else.

    Args:
        module: its name; it reads its input to the end and writes its answer
        question: what it reads

    Returns:
        What it wrote.

    Raises:
        NoAnswer: others have asked before and it takes too long, or the process ended by itself
    """
    if not _TURN.acquire(timeout=PATIENCE):
        raise NoAnswer("Others are having something worked out just now. Ask again in a minute.")
    try:
        done = subprocess.run(  # noqa: S603 - our own module
            (sys.executable, "-m", module),
            input=question,
            capture_output=True,
            timeout=PATIENCE,
            check=True,
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},  # it finds what this process found
        )
    except subprocess.TimeoutExpired:
        raise NoAnswer("This took too long. Choose fewer jobs at a time.") from None
    except subprocess.CalledProcessError:
        raise NoAnswer(
            "This could not be worked out: the process ended by itself, most likely for want of memory. "
            "Choose fewer jobs at a time."
        ) from None
    finally:
        _TURN.release()
    return done.stdout
