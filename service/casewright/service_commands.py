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
    _add_keeping(command)
    _add_people(command)


def _add_keeping(command: Callable[[str, str, str], argparse.ArgumentParser]) -> None:
    """Backup and restore, export, the doctor."""
    backup = command(
        "backup",
        "write all that the service keeps into one file, while it runs",
        "casewright backup casewright-2027-03-01.zip",
    )
    backup.add_argument("file", metavar="FILE", help="the file to write")
    backup.add_argument("--force", action="store_true", help="replace a file of this name")

    verify = command(
        "verify-backup",
        "restore a backup into a folder of its own, look at all of it, and take it away again",
        "casewright verify-backup casewright-2027-03-01.zip",
    )
    verify.add_argument("file", metavar="FILE", help="the backup")

    restore = command(
        "restore",
        "put a backup in the place of the data; the service must not run",
        "casewright restore casewright-2027-03-01.zip",
    )
    restore.add_argument("file", metavar="FILE", help="the backup")
    restore.add_argument(
        "--force", action="store_true", help="replace data that are there, after a backup of them"
    )

    export = command(
        "export",
        "write all of a shop as open JSON, with the papers that it issued",
        "casewright export marrow-street.zip",
    )
    export.add_argument(
        "to", metavar="FILE|DIR", help="a .zip file, a .json file (without papers), or a new folder"
    )
    export.add_argument("--shop", metavar="NAME", help="the shop, by name or id, where there are several")
    export.add_argument("--force", action="store_true", help="replace a file of this name")

    doctor = command("doctor", "look over the service and its data, and say what to do", "casewright doctor")
    migrate = command(
        "migrate", "bring the database to this version's form, after a backup of it", "casewright migrate"
    )
    for each in (backup, verify, restore, export, doctor, migrate):
        each.add_argument("--json", action="store_true", help="print the answer for machines")


def _add_people(command: Callable[[str, str, str], argparse.ArgumentParser]) -> None:
    """Shops and people, without a page."""
    create = command(
        "create-user",
        "add somebody to a shop, or make a shop with its owner",
        "casewright create-user ada@shop.example --name 'Ada Marsh' --role owner --new-shop 'Marrow Street'",
    )
    create.add_argument("email", metavar="EMAIL", help="the e-mail address to sign in with")
    create.add_argument("--name", help="the person's name; left out, the front of the address")
    create.add_argument(
        "--role", choices=("owner", "maker", "bench"), help="left out: maker, or owner of a new shop"
    )
    create.add_argument("--shop", metavar="NAME", help="the shop, by name or id, where there are several")
    create.add_argument("--new-shop", metavar="NAME", help="make this shop, with this person as its owner")
    create.add_argument("--currency", default="USD", help="of a new shop; left out: USD")
    create.add_argument("--unit", choices=("in", "mm"), default="in", help="of a new shop; left out: in")
    create.add_argument(
        "--time-zone", metavar="ZONE", default="America/New_York", help="such as Europe/Vienna"
    )
    create.add_argument(
        "--paper", choices=("letter", "a4"), default="letter", help="of a new shop; left out: letter"
    )
    create.add_argument("--tax", metavar="PERCENT", default="0", help="of a new shop, such as 6; left out: 0")

    reset = command(
        "reset-password", "give somebody a new password", "casewright reset-password ada@shop.example"
    )
    ends = command("end-sessions", "sign somebody out everywhere", "casewright end-sessions ada@shop.example")
    for each in (reset, ends):
        each.add_argument("email", metavar="EMAIL", help="the person's e-mail address")
    people = command("list-users", "list who works in which shop", "casewright list-users")
    for each in (reset, ends, people):
        each.add_argument("--shop", metavar="NAME", help="the shop, by name or id, where there are several")
    for each in (create, reset):
        each.add_argument(
            "--password-stdin", action="store_true", help="read the password from the input, not from you"
        )
    for each in (create, reset, ends, people):
        each.add_argument("--json", action="store_true", help="print the answer for machines")
