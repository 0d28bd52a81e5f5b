"""Linear and whole-number programs: HiGHS, silent and on one thread."""

from collections.abc import Callable

import highspy


def program() -> highspy.Highs:
    """An empty program that says nothing and takes one core."""
    make: Callable[[], highspy.Highs] = highspy.Highs
    made = make()
    made.setOptionValue("output_flag", False)
    made.setOptionValue("threads", 1)
    return made
