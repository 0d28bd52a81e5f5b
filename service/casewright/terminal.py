"""What the commands say to the terminal, and what they read and write: text in, files and text out."""

import argparse
import json
import re
import sys
from collections.abc import Mapping
from importlib.resources import files
from pathlib import Path

from casewright.measure.lengths import LengthUnit
from casewright.papers.writing import Writing

FINE = 0
CHEST = "my-chest.json"


class Unusable(Exception):
    """Input that cannot be used; the message is the sentence that is shown."""


def read_text(name: str, help_words: str = f"`casewright example > {CHEST}` makes a file") -> str:
    """The text of a file, or of the input for -; where it has none, it is said with where one comes from."""
    if name == "-":
        return sys.stdin.read()
    try:
        return Path(name).read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise Unusable(f"{name} is not text, and this reads JSON; {help_words}") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "no such name can be"
        raise Unusable(f"{name} cannot be read ({reason}); {help_words}") from None


UNSEEN = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")
"""Control signs, but the end of a line, and signs that turn the direction of writing."""


def write_files(folder: Path, files: Mapping[str, bytes], option: str) -> None:
    """Writes files into a folder, which is made if need be."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for name, held in files.items():
            (folder / name).write_bytes(held)
    except OSError as error:
        raise Unusable(
            f"{option}: {folder} cannot be written ({error.strerror}); name another folder"
        ) from None


def package_text(name: str, room: str = "casewright.pieces") -> str:
    """One of the example files that come with the program."""
    return files(room).joinpath("data", name).read_text(encoding="utf-8")


def writing_of(given: argparse.Namespace, unit: LengthUnit, symbol: str) -> Writing:
    """How the answer is written: as asked, else in the file's own unit."""
    return Writing(unit=given.unit or unit, denominator=given.fraction, symbol=symbol)


def show(text: str) -> int:
    """Prints text; a sign from a file that would command the terminal is shown as a mark."""
    sys.stdout.write(UNSEEN.sub("\ufffd", text).rstrip("\n") + "\n")
    return FINE


def show_json(data: object) -> int:
    """Prints data."""
    return show(json.dumps(data, ensure_ascii=False, indent=2, allow_nan=False))
