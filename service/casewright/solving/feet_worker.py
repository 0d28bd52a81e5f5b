"""The process that draws loads of boards and lays them out: questions come in once, answers go out once.

python -m casewright.solving.feet_worker
"""

import sys
from concurrent.futures import ThreadPoolExecutor

from casewright.pieces.takeoff.enough_feet import enough_feet
from casewright.solving.feet import ANSWERS, QUESTIONS
from casewright.solving.memory import limit_memory

THREADS = 2


def main() -> None:
    """Answers what stands in its input, in the same order."""
    limit_memory()
    asked = QUESTIONS.validate_json(sys.stdin.buffer.read())
    with ThreadPoolExecutor(THREADS) as threads:
        found = tuple(threads.map(enough_feet, asked))
    sys.stdout.buffer.write(ANSWERS.dump_json(found))


if __name__ == "__main__":
    main()
