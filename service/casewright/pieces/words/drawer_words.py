"""The drawers of a unit in plain words: fronts, corners, bottoms, and how they run."""

from collections.abc import Iterator

from casewright.measure.lengths import LengthUnit
from casewright.pieces.asked.drawer_spec import Drawers, PlyBottom
from casewright.pieces.built.construct import Construction
from casewright.pieces.words.wording import number_word, sentence, sized

FRONTS = {
    "half-blind dovetail": "dovetailed to its front (wedge-shaped joints that show only when it is open)",
    "through dovetail": "dovetailed to its front (wedge-shaped joints that lock into each other)",
    "sliding dovetail": "slid into its front with a long dovetail at the end of each side",
    "lock rabbet": "locked to its front by a tongue in a groove",
    "box joint": "joined to its front by square fingers that interlock",
    "rabbet and pins": "set into its front and pinned with wood",
}
"""How a drawer is joined to its front."""
BACKS = {
    "through dovetail": "dovetailed to its back",
    "housing": "has its back let into grooves across the sides",
    "as the front": "joined to its back likewise",
}
STYLES = {
    "cock-beaded": "sits flush in the case, with a fine bead around it",
    "lipped": "has a lip that closes over the edges of its opening",
    "full overlay": "stands before the case and covers it but for a narrow gap",
    "half overlay": "stands before the case and covers the edges of its opening",
    "applied front": "is a board of its own, screwed to its box from inside",
}
"""What a front is like that does not sit plainly flush in its opening."""

RUNS = {
    "runners": "runs wood on wood, fitted to its own opening",
    "side-hung": "hangs on strips of wood at its sides, fitted to its own opening",
    "centre guide": "runs wood on wood, led by a strip under its middle",
    "full-length runners": "runs wood on wood, carried over the whole depth of the case",
    "slides": "runs on metal slides",
}
"""What a drawer runs on."""


def drawer_words(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """How the drawers are made.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes

    Returns:
        A sentence, and one before it for fronts of another style than inset.

    Source: common practice of quotes: no word of the trade without its meaning.
    """
    drawers, one = unit.spec.drawers, len(unit.drawers) == 1
    style = STYLES.get(drawers.style.kind)
    if style:
        yield f"{'The drawer front' if one else 'Each drawer front'} {style}."
    bar = ""
    if any(drawer.bottom.muntin is not None for drawer in unit.drawers):
        bar = " (with a bar under its middle" + ("" if one else " where the drawer is wide") + ")"
    runs = RUNS[drawers.running.kind]
    yield (
        f"{'The drawer' if one else 'Every drawer'} {_corners(drawers)}, has sides "
        f"{sized(drawers.side, shown)} thick and {_bottom(drawers)}{bar}, and {runs}."
    )
    yield from notched_words(unit, shown)
    if drawers.lining:
        yield f"{'It is' if one else 'The drawers are'} lined, at the bottom and all around."
    if unit.spec.use.locks_one_at_a_time and not one:
        yield "An interlock (catches tied to one another) lets one drawer open at a time, against tipping."


def notched_words(unit: Construction, shown: LengthUnit) -> Iterator[str]:
    """What is left free for pipes, in the drawers that are notched.

    Args:
        unit: the unit, worked out
        shown: the unit of its sizes

    Returns:
        A sentence for each size of recess; none where no drawer has one.

    Source: common practice of quotes.
    """
    sizes: dict[tuple[str, str], int] = {}
    for drawer in unit.drawers:
        if notch := drawer.sizes.notch:
            key = (sized(notch.width, shown), sized(notch.depth, shown))
            sizes[key] = sizes.get(key, 0) + 1
    for (wide, deep), number in sizes.items():
        alone = len(unit.drawers) == 1
        which = (
            "The drawer is" if alone else "One drawer is" if number == 1 else f"{_many(number)} drawers are"
        )
        yield (
            f"{which} made in the shape of a U, with a recess {wide} wide and {deep} deep at the back that "
            "leaves the pipes free."
        )


def _many(number: int) -> str:
    return sentence(number_word(number)).rstrip(".")


def _corners(drawers: Drawers) -> str:
    front, back = drawers.front_joint.kind, drawers.back_kind
    if (front, back) == ("half-blind dovetail", "through dovetail"):
        return (
            "is dovetailed at all four corners (wedge-shaped joints that lock into each other; at the "
            "front they show only when the drawer is open)"
        )
    joined = ", " if back == "housing" else " and "
    return f"is {FRONTS[front]}{joined}{BACKS[back]}"


def _bottom(drawers: Drawers) -> str:
    held = "screwed under it" if drawers.screwed_under else "held in grooves"
    if isinstance(drawers.bottom, PlyBottom):
        return f"a bottom of {drawers.bottom.sheet} {held}"
    return f"a solid wood bottom {held} so that it can swell and shrink"
