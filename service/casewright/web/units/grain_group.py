"""The group of the form that asks for the wood on the face: what matches, and what is given up."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from casewright.pieces.asked.grain_spec import ROLES
from casewright.web.units.fields import Asked, Choices, Group, Kind, ask

WISHES = "grain.wishes"
LISTED = ("one_tree", "quarter", "no_sap", "given_up", "faces")
"""Fields of the file that stand line by line in one field of the form."""
WORDS = {"one tree": "one_tree", "quartersawn": "quarter", "no sap": "no_sap"}
GIVEN_UP = re.compile(r"(?P<name>.+?)\s+given up\s*:\s*(?P<reason>.+)", re.IGNORECASE)
FACE = re.compile(r"(?P<role>\w+)\s+face\s+(?P<letter>\w+)", re.IGNORECASE)
WISH = re.compile(rf"(?P<role>\w+)\s+(?P<wish>{'|'.join(WORDS)})", re.IGNORECASE)
PAIRS: Choices = (
    ("no", "no (usual)"),
    ("book-matched", "book-matched"),
    ("slip-matched", "slip-matched"),
    ("in sequence", "in sequence"),
    ("one tree", "one tree"),
)

GRAIN_GROUP = Group(
    key="grain",
    title="Wood on the face",
    note="Which parts match in figure. The lumber list gives the blank that each match takes.",
    fields=(
        ask(
            "grain.fronts",
            "Drawer fronts match",
            (
                ("", "as they are in sequence (usual)"),
                ("rows and columns", "in rows and columns"),
                ("along each row", "along each row"),
                ("down the case", "down the case"),
                ("one tree", "one tree"),
                ("no", "no"),
            ),
            hint="",
            is_wide=True,
        ),
        ask("grain.doors", "Two doors match", PAIRS, hint=""),
        ask("grain.sides", "The two sides match", PAIRS, hint=""),
        ask("grain.top", "Halves of the top match", PAIRS[:3], hint=""),
        Asked(
            name=WISHES,
            label="Other wishes, one a line",
            kind=Kind.LINES,
            hint=(
                "A kind of part and one tree, quartersawn, no sap or face A to D; or a match that is given "
                "up, with its reason: fronts of row 1 given up: one was remade. Kinds of part: "
                f"{', '.join(ROLES)}."
            ),
            example="fronts no sap",
        ),
    ),
)


def wish_lines(data: Mapping[str, Any]) -> str:
    """The wishes of a unit file, one a line.

    Args:
        data: what the file holds
    """
    return "\n".join(_lines(data.get("grain") or {}))


def _lines(held: Mapping[str, Any]) -> Iterator[str]:
    for words, name in WORDS.items():
        for role in held.get(name) or ():
            yield f"{role} {words}"
    for role, letter in (held.get("faces") or {}).items():
        yield f"{role} face {letter}"
    for each in held.get("given_up") or ():
        yield f"{each['name']} given up: {each['reason']}"


def put_wishes(data: dict[str, Any], text: str) -> None:
    """Puts lines of wishes into a unit file's data; what is none is left for the schema to refuse.

    Args:
        data: what the file is to hold
        text: the lines as they were typed
    """
    for line in filter(None, map(str.strip, text.splitlines())):
        place = data.setdefault("grain", {})
        if found := GIVEN_UP.fullmatch(line):
            place.setdefault("given_up", []).append(found.groupdict())
        elif found := FACE.fullmatch(line):
            place.setdefault("faces", {})[found["role"].casefold()] = found["letter"].upper()
        elif found := WISH.fullmatch(line):
            place.setdefault(WORDS[found["wish"].casefold()], []).append(found["role"].casefold())
        else:
            place.setdefault("no_sap", []).append(line[:80])


def is_wish(path: str) -> bool:
    """Whether a problem's path means one of the wishes that stand line by line.

    Args:
        path: the path within the unit file
    """
    return path.startswith(tuple(f"grain.{name}" for name in LISTED))
