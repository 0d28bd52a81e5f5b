"""Why a part has no place."""

from collections import Counter
from collections.abc import Iterator, Sequence

from casewright.cutting.plans.blanks import Blank
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.values import Unplaced
from casewright.cutting.plans.wanted import Wanted, fits_any
from casewright.measure.saying import Words, say
from casewright.measure.units import TICKS_PER_INCH


def unplaced_of(blanks: Sequence[Blank], asked: Wanted, lot: Lot) -> Iterator[Unplaced]:
    """The parts for which there was no room, with why.

    Args:
        blanks: the blanks that lie nowhere
        asked: what was to be laid out
        lot: their lot

    Returns:
        One entry for each part and reason.

    Source: common practice.
    """
    glued = {panel.blank for panel in asked.panels}
    found: Counter[tuple[str, Words]] = Counter()
    for blank in blanks:
        is_torn = blank in glued and bool(lot.grounds)
        why = f"no room is left for all of its strips in {_name(lot)}" if is_torn else reason(blank, lot)
        found.update((code, why) for code in blank.codes)
    for (code, why), number in found.items():
        yield Unplaced(code=code, count=number, reason=why)


def _name(lot: Lot) -> str:
    return f"{lot.wood} {lot.thickness_class}".strip()


def reason(blank: Blank, lot: Lot) -> Words:
    """Why a blank lies nowhere.

    Args:
        blank: the blank
        lot: its lot

    Returns:
        A sentence without its full stop.

    Source: common practice.
    """
    kind = "sheet" if lot.is_sheets else "board"
    name = _name(lot)
    if not lot.grounds:
        return f"no {kind} of {name} is in the stock"
    if fits_any(blank, lot.grounds):
        return f"the {kind}s of {name} are used up, or what is free of them is too small"
    if not any(ground.thickness >= blank.thickness for ground in lot.grounds):
        return say(
            "no {} is {} thick, as two from one thickness need", kind, blank.thickness / TICKS_PER_INCH
        )
    spots = [ground.usable.flipped() if ground.grain_across else ground.usable for ground in lot.grounds]
    longest, widest = max(spot.length for spot in spots), max(spot.width for spot in spots)
    if blank.length > longest:
        return say(
            "it is {} long, and the longest {} gives {} once its ends are cut off",
            blank.length / TICKS_PER_INCH,
            kind,
            longest / TICKS_PER_INCH,
        )
    if blank.width > widest:
        return say(
            "it is {} wide, and the widest {} gives {} once its edges are straight",
            blank.width / TICKS_PER_INCH,
            kind,
            widest / TICKS_PER_INCH,
        )
    return say(
        "no {} is both {} long and {} wide", kind, blank.length / TICKS_PER_INCH, blank.width / TICKS_PER_INCH
    )
