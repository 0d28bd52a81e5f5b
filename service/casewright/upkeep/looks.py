"""What the doctor found at one place."""

from dataclasses import dataclass
from enum import StrEnum


class Health(StrEnum):
    """How it stands."""

    FINE = "fine"
    LOOK = "look"
    """Nothing is broken; somebody should look at it."""
    WRONG = "wrong"


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """What was found.

    Attributes:
        at: what was looked at
        health: how it stands
        found: what was found, in a sentence
        todo: what to do; empty where nothing is
    """

    at: str
    health: Health
    found: str
    todo: str = ""


def fine(at: str, found: str) -> Look:
    """All is well."""
    return Look(at=at, health=Health.FINE, found=found)


def look(at: str, found: str, todo: str) -> Look:
    """Somebody should look at it."""
    return Look(at=at, health=Health.LOOK, found=found, todo=todo)


def wrong(at: str, found: str, todo: str) -> Look:
    """Something is wrong."""
    return Look(at=at, health=Health.WRONG, found=found, todo=todo)
