"""How the doors are made and hung, in words that a customer reads."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.door_spec import FramedLeaf
from casewright.pieces.built.construct import Construction
from casewright.pieces.words.wording import number_word, sized

HELD = {
    "battens": "boards glued up, kept flat by battens behind them",
    "breadboard": "boards glued up, kept flat by a cross piece at each end",
    "plain": "boards glued up",
    "ply": "plywood",
}
HUNG = {
    "inset": "set within its opening",
    "half overlay": "lying over a part of the edges of its opening",
    "full overlay": "covering the edges of its opening",
}


def door_words(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """How the doors are made and hung.

    Args:
        unit: the unit, worked out
        shown: the unit of sizes

    Yields:
        One or two sentences; nothing where there are no doors.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    if not unit.doors:
        return
    chosen, make = unit.spec.doors, unit.spec.doors.make
    leaves = sum(len(door.plan.leaves) for door in unit.doors)
    start = "The door is" if leaves == 1 else "Every door is"
    thick = sized(unit.doors[0].plan.thickness, shown)
    if isinstance(make, FramedLeaf):
        panel = "a plywood panel" if make.ply else "a panel that is free to swell and shrink"
        made = f"a frame {thick} thick around {panel}"
    else:
        made = f"{HELD[make.held]}, {thick} thick"
    hinges = {len(door.hinges) for door in unit.doors}
    count = f" on {number_word(hinges.pop())} hinges" if len(hinges) == 1 else ""
    yield f"{start} {made}, {HUNG[chosen.style]}{count}."
    if chosen.wood is not None and (isinstance(make, FramedLeaf) or make.held != "ply"):
        yield f"{'The door is' if leaves == 1 else 'The doors are'} of solid {chosen.wood.wood}."
