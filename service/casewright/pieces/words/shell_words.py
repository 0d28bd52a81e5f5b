"""What closes a case and what it stands on, in plain words."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.crate_spec import Crate
from casewright.pieces.asked.shell_spec import BackKind, BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.bases import foot_count
from casewright.pieces.layout.openings import Face
from casewright.pieces.words.wording import joined, number_word, sized

BACKS: dict[BackKind, str] = {
    "shiplap": "The back is of solid boards, lapped at their edges so that each can swell and shrink.",
    "tongued": "The back is of solid boards, tongued into each other so that each can swell and shrink.",
    "panelled": "The back is a frame with panels that lie loose in it, free to swell and shrink.",
    "rabbeted-ply": "The back is of plywood, let into the sides.",
    "grooved-ply": "The back is of plywood, held in grooves all round.",
    "none": "It has no back: the wall behind it closes it.",
}


def closing_words(spec: UnitSpec, face: Face, shown: LengthUnit) -> Iterator[str]:
    """Top, base and back of a carcase in plain words.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor
        shown: the unit of its sizes

    Returns:
        A sentence for each.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    yield top_words(spec, shown)
    yield _base(spec, face, shown)
    yield BACKS[spec.back.kind]


def crate_words(spec: UnitSpec, crate: Crate, face: Face, shown: LengthUnit) -> Iterator[str]:
    """A crate of crossing strips in its case, in plain words.

    Args:
        spec: what the maker chose
        crate: the strips
        face: what of the case stands on the floor
        shown: the unit of its sizes

    Returns:
        A sentence for each thing.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    thick = sized(spec.case.side, shown)
    boards = f"The case is built of four solid boards, its sides {thick} thick and dovetailed"
    body = {
        "solid": f"{boards} to top and bottom",
        "plywood": f"The case is built of plywood {thick} thick",
        "framed": f"Its sides are frames {thick} thick around panels that lie loose in them",
    }[spec.case.sides]
    yield (
        f"{body}; strips {sized(crate.strip, shown)} thick, notched over each other where they cross, part "
        "it into openings and carry the drawers."
    )
    yield from closing_words(spec, face, shown)


def top_words(spec: UnitSpec, shown: LengthUnit) -> str:
    """The top in plain words.

    Args:
        spec: what the maker chose
        shown: the unit of its sizes

    Returns:
        A sentence.

    Source: common practice of quotes.
    """
    top = spec.top
    if spec.legs is None and top.is_dovetailed:
        thick = sized(top.thickness, shown)
        return f"The top, {thick} thick, is a part of the case, dovetailed between its sides."
    if spec.legs is None and not top.over:
        return "It has no top of its own."
    sides, front = top.overhang_sides, top.overhang_front
    if sides == front == 0:
        stands = f"is flush with the {'legs' if spec.legs else 'case'}"
    elif sides == front:
        stands = f"stands over the sides and the front by {sized(front, shown)}"
    else:
        places = [("the sides", sides), ("the front", front)]
        over = [f"{name} by {sized(size, shown)}" for name, size in places if size]
        flush = [name for name, size in places if not size]
        stands = f"stands over {joined(over)}" + (f" and is flush with {flush[0]}" if flush else "")
    return (
        f"The top, {sized(top.thickness, shown)} thick, {stands}; it is held by fixings that let it move "
        "with the seasons."
    )


def _base(spec: UnitSpec, face: Face, shown: LengthUnit) -> str:
    base = spec.stands_on
    if spec.hangs:
        return "It hangs on the wall, on bevelled cleats that hook over each other, screwed to the studs."
    if isinstance(base, Plinth):
        corner = "mitred" if base.corner == "mitred" else "butted"
        back = f", set back by {sized(base.setback, shown)}" if base.setback else ""
        return (
            f"It stands on a plinth (a closed base) {sized(base.height, shown)} high, {corner} at the front "
            f"corners{back}."
        )
    if isinstance(base, BracketFeet):
        return (
            f"It stands on bracket feet (boards mitred at the corners and sawn to a bracket) "
            f"{sized(base.height, shown)} high."
        )
    if isinstance(base, TurnedFeet):
        count = f"{number_word(foot_count(spec, face))} feet"
        return (
            f"It stands on {count} turned on the lathe, {sized(base.diameter, shown)} thick, that hold it "
            f"{sized(base.height, shown)} above the floor."
        )
    if isinstance(base, ToeBase):
        return (
            f"It stands on a toe base (a low box of its own, levelled on the floor) "
            f"{sized(base.height, shown)} high and {sized(base.toe_space, shown)} back from the front, so "
            "that there is room for the toes."
        )
    return "The case stands straight on the floor, without a base."
