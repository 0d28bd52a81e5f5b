"""The corners of the drawers that are joined otherwise than by the usual dovetails, each joint once."""

from collections.abc import Iterator, Sequence

from casewright.joinery.called import Called
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.joint import Joint
from casewright.measure.saying import Words, say
from casewright.pieces.asked.drawer_fronts import Lipped
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.ends import (
    BOX,
    HALF_BLIND,
    HOUSING,
    LOCK_RABBET,
    PINNED,
    SLIDING,
    THROUGH,
)
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.joints import PlacedJoint

FACES = (
    "At the inner back the outside of the corner lies within the drawer, at the short backs where the pipes "
    "are: mark the faces before anything is cut."
)
"""Which way the corners around a notch are turned."""
BOTTOM_FIRST = (
    "Glue the inner sides to the inner back, slide the bottom on from the front, then the short backs from "
    "the sides, and the sides of the drawer last."
)
BOTTOM_LAST = (
    "Glue the inner sides to the inner back, the short backs to them, and the sides of the drawer last; the "
    "bottom goes in when the glue is dry."
)
"""How a notched drawer goes together: with its bottom in grooves all round, or under its backs."""
PINS_IN_FRONT = (("back", "front"),)
NAMES = {
    THROUGH: "through dovetail",
    SLIDING: "sliding dovetail",
    LOCK_RABBET: "lock rabbet",
    BOX: "box joint",
    PINNED: "rabbet and pins",
    HOUSING: "housing",
}
"""What the joints are called on cards, by the names of their families."""


def drawer_ends(unit: Construction) -> tuple[PlacedJoint, ...]:
    """The drawers' front joints but half-blind dovetails, and their back joints but through dovetails.

    Args:
        unit: the unit, worked out

    Returns:
        The joints, drawers with the same joint together.

    Source: common practice: what is alike is set out once.
    """
    return tuple(_ends(unit))


def _ends(unit: Construction) -> Iterator[PlacedJoint]:
    for end, usual in (("front", HALF_BLIND), ("back", THROUGH)):
        for held in _alike(unit.drawers, end):
            first = held[0]
            family = getattr(first.joints, f"{end}_family")
            if family == usual:
                break
            boards = {each.code: each.sizes.backs if end == "back" else (each.sizes.joined,) for each in held}
            yield PlacedJoint(
                key=f"{end}_{first.sizes.code}",
                kind=family,
                title=f"Drawer {end}, {NAMES[family]}",
                places=2 * len(held),
                serves=(
                    (end, tuple(f"{code}-{mark}" for code, marks in boards.items() for mark in marks)),
                    ("side", tuple(f"{each.code}-{mark}" for each in held for mark in ("SL", "SR"))),
                ),
                joint=_called(getattr(first.joints, end), end),
                working=f"{first.sizes.code}.{end}_joint",
                drawers=tuple(each.code for each in held),
                advice=tuple(_advice(unit, end, family)),
            )
    yield from _notches(unit)


def _notches(unit: Construction) -> Iterator[PlacedJoint]:
    """The corners around notches: those at the short backs and at the inner back together where alike."""
    groups: list[tuple[object, list[tuple[Drawer, str, Joint]]]] = []
    for drawer in unit.drawers:
        if (around := drawer.joints.notch) is None:
            continue
        for place, joint in (("rear", around.rear), ("head", around.head)):
            asked = _asked(joint)
            found = next((members for other, members in groups if other == asked), None)
            if found is None:
                found = []
                groups.append((asked, found))
            found.append((drawer, place, joint))
    for _, held in groups:
        first, place, joint = held[0]
        grooved = not (unit.spec.drawers.screwed_under or first.sizes.back_foot)
        family = first.joints.notch.family if first.joints.notch else ""
        codes = tuple(dict.fromkeys(drawer.code for drawer, _, _ in held))
        backs = tuple(
            f"{drawer.code}-{mark}"
            for drawer, where, _ in held
            for mark in (SHORT_BACKS if where == "rear" else (INNER_BACK,))
        )
        yield PlacedJoint(
            key=f"notch_{place}_{first.sizes.code}",
            kind=family,
            title=f"Drawer around the notch, {NAMES[family]}",
            places=2 * len(held),
            serves=(
                ("back", backs),
                ("side", tuple(f"{code}-{mark}" for code in codes for mark in INNER_SIDES)),
            ),
            joint=joint,
            working=f"{first.sizes.code}.notch_{place}_joint",
            drawers=codes,
            advice=(FACES, BOTTOM_FIRST if grooved else BOTTOM_LAST),
        )


def _alike(drawers: Sequence[Drawer], end: str) -> list[list[Drawer]]:
    groups: list[tuple[object, list[Drawer]]] = []
    for drawer in drawers:
        asked = _asked(getattr(drawer.joints, end))
        found = next((members for other, members in groups if other == asked), None)
        if found is None:
            groups.append((asked, [drawer]))
        else:
            found.append(drawer)
    return [members for _, members in groups]


def _asked(joint: Joint) -> object:
    """What decides a joint and its card, whatever drawer it belongs to."""
    return [(each.name, each.value) for each in joint.settings], getattr(_inner(joint), "layout", None)


def _called(joint: Joint, end: str) -> Joint:
    """A through dovetail knows its pin board as the back; at the front it is the front."""
    if end == "back" or not isinstance(joint, ThroughJoint):
        return joint
    return Called(of=joint, names=PINS_IN_FRONT, without=("lower_edge_offset",))


def _inner(joint: Joint) -> Joint:
    return joint.of if isinstance(joint, Called) else joint


def _advice(unit: Construction, end: str, family: str) -> Iterator[Words]:
    style = unit.spec.drawers.style
    if end == "front" and isinstance(style, Lipped):
        yield say("Lay it out inside the rabbet of the front, {:bare} from its ends.", style.lip)
    if end == "front" and unit.spec.drawers.has_box_front:
        yield "It joins the box's own front; the show front is screwed on from inside when the box is done."
    if family == HOUSING:
        yield "Left and right side are cut as a pair; the back goes in last, and the bottom under it."
