"""The command line: the program `casewright`, and `python -m casewright`."""

import gc
import sys


def start() -> int:
    """Loads the program and runs the command that was typed.

    Nothing that is loaded is garbage, and to look for some all the while takes a seventh of the start.
    """
    gc.disable()
    from casewright.cli import main  # noqa: PLC0415 - this is what is loaded

    gc.freeze()
    gc.enable()
    return main()


if __name__ == "__main__":
    sys.exit(start())
