"""What the commands of the service do. Loaded only for those who ask for one."""

import argparse
import os
from collections.abc import Callable

from casewright.serving import serve
from casewright.settings import Settings, read_settings
from casewright.upkeep.answers import Answer, say
from casewright.upkeep.keeping_commands import KEEPING
from casewright.upkeep.people_commands import PEOPLE

GIVEN = ("data", "database_url", "host", "port")


def run(name: str, given: argparse.Namespace) -> int:
    """Runs one command.

    Args:
        name: the command
        given: its options

    Returns:
        The exit status.
    """
    chosen = {option: getattr(given, option, None) for option in GIVEN}
    settings = read_settings(os.environ, **chosen)
    return COMMANDS[name](settings, given)


def _serve(settings: Settings, given: argparse.Namespace) -> int:
    return serve(settings, open_browser=getattr(given, "open", False))


def _answering(
    command: Callable[[Settings, argparse.Namespace], Answer],
) -> Callable[[Settings, argparse.Namespace], int]:
    return lambda settings, given: say(command(settings, given), as_json=given.json)


COMMANDS: dict[str, Callable[[Settings, argparse.Namespace], int]] = {
    "serve": _serve,
    **{name: _answering(command) for name, command in (KEEPING | PEOPLE).items()},
}
