"""The process that lays sheets out: questions come in once, answers go out once.

python -m casewright.solving.sheets_worker
"""

import sys

from casewright.pieces.takeoff.laid_sheets import lay_sheets
from casewright.solving.memory import limit_memory
from casewright.solving.sheets import ANSWERS, QUESTIONS


def main() -> None:
    """Answers what stands in its input, in the same order."""
    limit_memory()
    asked = QUESTIONS.validate_json(sys.stdin.buffer.read())
    sys.stdout.buffer.write(ANSWERS.dump_json(tuple(map(lay_sheets, asked))))


if __name__ == "__main__":
    main()
