"""What of the figure a customer is promised, and what is given up, in plain words."""

from collections.abc import Iterator

from casewright.pieces.asked.grain_spec import GrainWishes, Role
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.words.wording import joined, sentence

SAID: dict[Role, str] = {
    "top": "top",
    "sides": "sides",
    "rails": "rails",
    "base": "base",
    "legs": "legs and aprons",
    "fronts": "drawer fronts",
    "doors": "doors",
    "drawers": "drawer sides and backs",
    "inside": "parts inside",
    "back": "back",
}
OPENED = {
    "book-matched": "sawn from one board and opened like a book, so that they mirror each other",
    "slip-matched": "sawn from one board and laid side by side, so that one repeats the other",
    "in sequence": "cut one after another, so that the figure runs on",
    "one tree": "cut from one tree",
}


def grain_words(spec: UnitSpec) -> Iterator[str]:
    """What is wished of the wood on the face.

    Args:
        spec: what the maker chose

    Yields:
        A sentence for each wish, and one for each match that is given up.

    Source: common practice of quotes: what is not matched is named before it is signed.
    """
    wishes = spec.grain
    if wishes.fronts == "one tree":
        yield "The drawer fronts are cut from one tree."
    elif wishes.fronts == "down the case":
        yield "The figure of the drawer fronts runs on from the top of the case to the bottom."
    for what, wish in (
        ("panels of the doors", wishes.doors),
        ("two sides of the case", wishes.sides),
        ("halves of the top", wishes.top),
    ):
        if wish in OPENED:
            yield f"The {what} are {OPENED[wish]}."
    yield from _roles(wishes)
    for each in wishes.given_up:
        yield f"Not matched, as agreed: {each.name} ({each.reason.rstrip('.')})."


def _roles(wishes: GrainWishes) -> Iterator[str]:
    for roles, does in (
        (wishes.one_tree, "from one tree"),
        (wishes.quarter, "quartersawn"),
        (wishes.no_sap, "free of sapwood on the face"),
    ):
        if roles:
            named = [f"the {SAID[role]}" for role in dict.fromkeys(roles)]
            verb = "is" if len(named) == 1 and not named[0].endswith("s") else "are"
            yield sentence(f"{joined(named)} {verb} {does}")
