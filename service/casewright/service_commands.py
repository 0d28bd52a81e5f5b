"""The options of the commands that run and look after the service. Light: it loads nothing of the service."""

import argparse
from collections.abc import Callable
from typing import Any

Run = Callable[[argparse.Namespace], int]


def add_service_commands(commands: Any, run: Callable[[str, argparse.Namespace], int]) -> None:
    """Adds the commands of the service.

    Args:
        commands: where argparse keeps its commands
        run: what is called with the command's name and what was given
    """

    def command(name: str, words: str, example: str) -> argparse.ArgumentParser:
        made: argparse.ArgumentParser = commands.add_parser(
            name, help=words, description=f"{words[0].upper()}{words[1:]}.", epilog=f"For example: {example}"
        )
        made.add_argument(
            "--data", metavar="DIR", help="the data folder; else CASEWRIGHT_DATA, else your own"
        )
        made.add_argument("--database-url", metavar="URL", help="the database; else CASEWRIGHT_DATABASE_URL")
        made.set_defaults(run=lambda given: run(name, given))
        return made

    serve = command("serve", "start the service", "casewright serve --port 8080")
    serve.add_argument("--host", help="the address to listen on; 0.0.0.0 lets the shop's network in")
    serve.add_argument("--port", help="the port to listen on; 0 takes a free one")
    serve.add_argument("--open", action="store_true", help="open the first page in a browser")
