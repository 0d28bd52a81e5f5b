"""What a change does to what is made, in sentences for the shop."""

from collections.abc import Iterator, Sequence

from casewright.measure.saying import Words, say
from casewright.pieces.built.rework import Rework
from casewright.pieces.built.rework_fates import Fate, PartFate

MOST_CODES = 12
"""So many codes are named before the rest is counted."""
LEADS = {
    Fate.SCRAPPED: "no longer usable",
    Fate.NEW: "to be made",
    Fate.MODIFIED: "cut to other sizes",
    Fate.DROPPED: "no longer needed, and not cut yet",
}


def change_words(found: Rework, *, with_codes: bool = True) -> Iterator[Words]:
    """What a change does to the parts, in sentences for the shop.

    Args:
        found: what the change does
        with_codes: whether parts are named by their codes, a dozen at most

    Yields:
        How many parts stay, then those that do not, by what becomes of them; hours and wood that are lost.

    Source: common practice: a change is signed with what it costs of the work that is done.
    """
    stay = len(found.of(Fate.UNTOUCHED))
    does = "stays as it is" if stay == 1 else "stay as they are"
    yield f"{stay} of {_counted(len(_before(found)))} {does}."
    for fate, lead in LEADS.items():
        parts = found.of(fate)
        if parts:
            yield f"{_counted(len(parts))} {lead}{f': {_named(parts)}' if with_codes else ''}."
    if found.hours:
        yield f"About {found.hours:.1f} hours have gone into parts that are no longer usable."
    if found.offcut > 0.05:
        yield say("About {:.1f} board feet of finished wood go to the offcut bin.", found.offcut)
    yield "Work on these parts rests until this is signed."


def _counted(number: int) -> str:
    return f"{number} {'part' if number == 1 else 'parts'}"


def _before(found: Rework) -> list[PartFate]:
    return [each for each in found.parts if each.fate is not Fate.NEW]


def _named(parts: Sequence[PartFate]) -> str:
    codes = [each.code for each in parts]
    rest = len(codes) - MOST_CODES
    named = ", ".join(codes[:MOST_CODES])
    return f"{named} and {rest} more" if rest > 0 else named
