"""The options of the command that lays parts out on stock. Light: it loads nothing of what lays them out."""

import argparse
from collections.abc import Callable
from typing import Any

MOST_SECONDS = 600.0


def add_cut_command(
    commands: Any,
    run: Callable[[argparse.Namespace], int],
    output_options: Callable[[argparse.ArgumentParser], None],
) -> None:
    """Adds `casewright cut`.

    Args:
        commands: where argparse keeps its commands
        run: what is called with what was given
        output_options: adds the options that say how an answer is printed
    """
    words = "lay parts out on boards, sheets and lengths: what comes out of which, in which order"
    cut = commands.add_parser(
        "cut",
        help=words,
        description=f"cut: {words}.",
        epilog="For example: casewright cut chest.json --stock rack.json --seconds 10 --svg layouts",
    )
    cut.add_argument(
        "file",
        nargs="?",
        help="a cut file, or a unit file with --stock; - reads the input; left out, an example",
    )
    cut.add_argument(
        "--stock", metavar="FILE", help="a cut file without parts: the boards, sheets and lengths there are"
    )
    cut.add_argument("--shop", metavar="FILE", help="for a unit file: the shop's own figures")
    cut.add_argument(
        "--seconds", type=seconds, default=2.0, metavar="S", help="how long to look for better; left out: 2"
    )
    cut.add_argument(
        "--seed", type=int, default=0, metavar="N", help="look elsewhere for a better one; left out: 0"
    )
    cut.add_argument("--svg", metavar="DIR", help="also write a drawing of each board into this folder")
    cut.add_argument("--schema", action="store_true", help="print the JSON Schema of the cut file and stop")
    output_options(cut)
    cut.set_defaults(run=run)


def seconds(typed: str) -> float:
    """How long to work, from what was typed."""
    try:
        value = float(typed)
    except ValueError:
        value = -1.0
    if not 0 <= value <= MOST_SECONDS:
        raise argparse.ArgumentTypeError(f"{typed} is no time to work; give 0 to 600 seconds, such as 10")
    return value
