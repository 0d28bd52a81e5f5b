"""Where the openings of a unit's form were in the revision that it was opened with: a field of the form.

It reads `3 R3-1=R2-1 R2-1=`: of revision 3, what is R3-1 now was R2-1, and what is R2-1 now is new. Being a
field like any other it goes through undo and redo, a reload, and a second look at what somebody else saved.
"""

import re

from casewright.pieces.asked.edit_change import Edited, followed_through
from casewright.shop.units import MadeFrom

FOLLOWS = "follows"
"""The name of the field."""
CODE = r"R[0-9]{1,2}(?:-[0-9]{1,2}){1,7}"
PAIR = re.compile(rf"({CODE})=({CODE})?")
NUMBER = re.compile(r"[0-9]{1,6}")


def opened_with(number: int) -> str:
    """What the field holds when the form is opened.

    Args:
        number: the revision that is opened
    """
    return str(number)


def made_from(text: str, present: int) -> MadeFrom:
    """What the field says; of the present revision with nothing moved, where it cannot be read.

    Args:
        text: what the form carries
        present: the revision that holds now
    """
    number, *pairs = text.split() or [""]
    if not NUMBER.fullmatch(number):
        return MadeFrom(number=present)
    found = [each for each in map(PAIR.fullmatch, pairs) if each]
    return MadeFrom(number=int(number), follows={each[1]: each[2] or "" for each in found})


def followed_text(text: str, edited: Edited) -> str:
    """The field after a change of rows or columns.

    Args:
        text: what the form carried before it
        edited: the change
    """
    number = text.partition(" ")[0]
    follows = followed_through(made_from(text, 0).follows, edited)
    return " ".join([number or "0", *(f"{now}={was}" for now, was in follows.items())])
