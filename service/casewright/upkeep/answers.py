"""What a command answers: words for people, data for machines, and an exit status."""

import getpass
import json
import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from casewright.papers.cleaning import clean_text
from casewright.shop.refusals import Refused

FINE, WRONG = 0, 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """An answer.

    Attributes:
        words: for people, line by line
        data: the same for machines
        status: 0 fine, 1 something is wrong
    """

    words: tuple[str, ...]
    data: dict[str, Any] = field(default_factory=dict)
    status: int = FINE


def say(answer: Answer, *, as_json: bool) -> int:
    """Prints an answer and hands its status on; a sign that would command the terminal is left out."""
    if as_json:
        sys.stdout.write(json.dumps(answer.data, indent=2) + "\n")
    else:
        sys.stdout.write("".join(f"{clean_text(line)}\n" for line in answer.words))
    return answer.status


def read_password(*, from_input: bool) -> str:
    """A password, from the first line of the input, or typed twice without being shown.

    Raises:
        Refused: there is nobody to ask, or the two are not the same
    """
    if from_input:
        return sys.stdin.readline().removesuffix("\n").removesuffix("\r")
    if not sys.stdin.isatty():
        raise Refused("There is nobody to ask for the password; give it on the input with --password-stdin.")
    first = getpass.getpass("New password: ")
    if getpass.getpass("Once more: ") != first:
        raise Refused("The two are not the same; nothing was changed.")
    return first


def size_of(size: int) -> str:
    """A size as people read it."""
    return f"{size / 1e6:.1f} MB" if size >= 1e6 else f"{max(1, round(size / 1e3))} kB"


def table(rows: Sequence[tuple[str, ...]]) -> list[str]:
    """Rows with their columns in line."""
    widths = [max(map(len, each)) for each in zip(*rows, strict=True)]
    return ["  ".join(map(str.ljust, row, widths)).rstrip() for row in rows]
