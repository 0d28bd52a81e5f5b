"""What is done to a piece to see whether it tips: full drawers opened, a child's weight, carpet, a push."""

from casewright.measure.units import Degrees, Inches, InchPounds, Pounds, PoundsForce
from casewright.stability.limits import Limits, house_limits
from casewright.stability.masses import (
    Drawer,
    Leaf,
    Mass,
    Piece,
    contents,
    empty,
    hung_on,
    hung_on_leaf,
    new_mass,
    shut,
    swung,
    tilt_of,
    together,
)
from casewright.stability.tipping import Kind, Moving, Situation, new_moving, new_situation

FILLED_FROM = 0.5
"""Drawers are filled where so much of their room, or more, can be open at once (from memory of 9.2.1)."""


def all_open_filled(piece: Piece) -> Situation:
    """Every drawer open and full of clothes, every door open.

    Args:
        piece: the piece

    Returns:
        The situation.

    Source: ASTM F2057-23, 9.2.1, simulated clothing load; geometry from memory, hold the standard.
    """
    full = ((mass, drawer) for drawer in piece.drawers for mass in (empty(drawer), contents(drawer)))
    return Situation(
        kind=Kind.ALL_OPEN,
        standing=(piece.case, *map(swung, piece.leaves)),
        moving=tuple(new_moving(mass=mass, travel=drawer.travel) for mass, drawer in full),
    )


def is_filled(drawer: Drawer, piece: Piece) -> bool:
    """Whether a drawer that an interlock lets open alone is tried full of clothes.

    Args:
        drawer: the one that opens
        piece: for the room in all of them

    Returns:
        True when it has half of all the room, or more.

    Source: from memory of ASTM F2057-23, 9.2.1; hold the standard.
    """
    return drawer.volume >= FILLED_FROM * sum(each.volume for each in piece.drawers)


def one_open(piece: Piece, label: str) -> Situation:
    """One drawer open, as an interlock allows, and full where it has half of the room; every door open.

    The drawers that stay shut are taken as empty, so that what lies in them does not help to hold.

    Args:
        piece: the piece
        label: the drawer that opens

    Returns:
        The situation.

    Raises:
        ValueError: there is no such drawer.

    Source: ASTM F2057-23, 4.6 and 9.2.1, the latter from memory; hold the standard.
    """
    pulled = drawer_called(piece, label)
    others = tuple(empty(drawer) for drawer in piece.drawers if drawer is not pulled)
    return _one_open(piece, pulled, others)


def _one_open(piece: Piece, pulled: Drawer, closed: tuple[Mass, ...]) -> Situation:
    inside = (contents(pulled),) if is_filled(pulled, piece) else ()
    return Situation(
        kind=Kind.ONE_OPEN,
        about=pulled.label,
        standing=(piece.case, *map(swung, piece.leaves), *closed),
        moving=tuple(new_moving(mass=mass, travel=pulled.travel) for mass in (empty(pulled), *inside)),
    )


def child_on_leaf(piece: Piece, leaf: Leaf, weight: Pounds, block: Inches) -> Situation:
    """A child's weight on the free edge of one open door, everything else shut, on carpet.

    Args:
        piece: the piece
        leaf: the leaf it hangs on
        weight: the child's [lb]
        block: under the rear edge; 0 on a level floor [in]

    Returns:
        The situation.

    Source: ASTM F2057-23, 9.2.3, that it is done to doors too from memory; hold the standard.
    """
    others = tuple(shut(each) for each in piece.leaves if each is not leaf)
    return Situation(
        kind=Kind.CHILD_DOOR,
        about=leaf.label,
        standing=(
            piece.case,
            *(empty(drawer) for drawer in piece.drawers),
            *others,
            swung(leaf),
            hung_on_leaf(leaf, weight),
        ),
        moving=(),
        tilt=tilt_of(block, piece.support_depth) if block else 0.0,
    )


def child_on_drawer(
    piece: Piece, label: str, weight: Pounds, block: Inches = 0.0, others_open: bool = False
) -> Situation:
    """A child's weight on the front of one open, empty drawer, on a level floor or on carpet.

    Args:
        piece: the piece
        label: the drawer it hangs on
        weight: the child's [lb]
        block: under the rear edge, for carpet; 0 on a level floor [in]
        others_open: the other drawers and the doors are open as well; shut unless said otherwise

    Returns:
        The situation.

    Raises:
        ValueError: there is no such drawer.

    Source: ASTM F2057-23, 9.2.3, reaction on carpet with child weight; how many drawers are open is from
        memory, hold the standard.
    """
    pulled = drawer_called(piece, label)
    others = tuple(drawer for drawer in piece.drawers if drawer is not pulled)
    out = tuple(map(_opened, (pulled, *others) if others_open else (pulled,)))
    closed = () if others_open else tuple(empty(drawer) for drawer in others)
    doors = tuple(map(swung if others_open else shut, piece.leaves))
    tilt = tilt_of(block, piece.support_depth) if block else 0.0
    return _child_on(piece, pulled, weight, tilt, out, (*closed, *doors))


def _opened(drawer: Drawer) -> Moving:
    return new_moving(mass=empty(drawer), travel=drawer.travel)


def _child_on(
    piece: Piece,
    pulled: Drawer,
    weight: Pounds,
    tilt: Degrees,
    out: tuple[Moving, ...],
    closed: tuple[Mass, ...],
) -> Situation:
    return new_situation(
        kind=Kind.CHILD_CARPET if tilt else Kind.CHILD_LEVEL,
        about=pulled.label,
        standing=(piece.case, *closed),
        moving=(new_moving(mass=hung_on(pulled, weight), travel=pulled.travel), *out),
        tilt=tilt,
    )


def drawer_called(piece: Piece, label: str) -> Drawer:
    """A drawer of the piece by its code.

    Args:
        piece: the piece
        label: the code

    Returns:
        The drawer.

    Raises:
        ValueError: there is none, with the codes that there are.

    Source: common practice.
    """
    for drawer in piece.drawers:
        if drawer.label == label:
            return drawer
    labels = ", ".join(drawer.label for drawer in piece.drawers)
    raise ValueError(f"There is no drawer {label}; there are: {labels}.")


def push_at_top(piece: Piece, force: PoundsForce, highest: Inches) -> Situation:
    """Every drawer and door open, all empty, and an outward push near the top.

    Args:
        piece: the piece
        force: of the push [force_pound]
        highest: the highest point at which it acts; lower where the piece is lower [in]

    Returns:
        The situation.

    Source: ASTM F2057-23, 9.2.2, simulated horizontal dynamic force; force and height from memory, hold the
        standard.
    """
    return _push_on(piece, force, highest, "", (), tuple(map(_opened, piece.drawers)))


def _push_on(
    piece: Piece,
    force: PoundsForce,
    highest: Inches,
    about: str,
    closed: tuple[Mass, ...],
    moving: tuple[Moving, ...],
) -> Situation:
    return Situation(
        kind=Kind.PUSH,
        about=about,
        standing=(piece.case, *map(swung, piece.leaves), *closed),
        moving=moving,
        push=push_moment(force, piece.height, highest),
    )


def push_moment(force: PoundsForce, height: Inches, highest: Inches) -> InchPounds:
    """The moment of an outward push.

    Rule: force * min(height, highest)

    Args:
        force: of the push [force_pound]
        height: of the piece [in]
        highest: the highest point at which the push acts [in]

    Returns:
        The moment [in-lb]

    Source: statics; ASTM F2057-23, 9.2.2, its figures from memory.
    """
    return force * min(height, highest)


def _without(whole: Mass, one: Mass) -> tuple[Mass, ...]:
    """What is left of drawers taken together when one is pulled; so a large bank is tried in one pass."""
    weight = whole.weight - one.weight
    if weight <= one.weight * 1e-9:
        return ()
    return (
        new_mass(
            label="the other drawers",
            weight=weight,
            x=(whole.weight * whole.x - one.weight * one.x) / weight,
            z=(whole.weight * whole.z - one.weight * one.z) / weight,
        ),
    )


def situations(piece: Piece, limits: Limits | None = None) -> tuple[Situation, ...]:
    """Every situation a piece is tried in.

    Args:
        piece: the piece
        limits: weights, forces and the block; None for what a shop starts with

    Returns:
        Full drawers open, all of them or one after the other where an interlock lets no two open; a child on
        each drawer, level and on carpet; a child on each door; a push.

    Source: ASTM F2057-23, 9.2.1 to 9.2.3; a design screen, its geometry from memory.
    """
    held = limits or house_limits()
    opened = [_opened(drawer) for drawer in piece.drawers]
    closed = together("all drawers", [each.mass for each in opened])
    doors = tuple(map(shut, piece.leaves))
    alone = [
        (drawer, moving, _without(closed, moving.mass))
        for drawer, moving in zip(piece.drawers, opened, strict=True)
    ]
    pushed = (held.push_force, held.push_height)
    loads: tuple[Situation, ...] = (all_open_filled(piece),) if piece.drawers or piece.leaves else ()
    pushes: tuple[Situation, ...] = (push_at_top(piece, *pushed),)
    if piece.one_at_a_time and len(piece.drawers) > 1:
        loads = tuple(_one_open(piece, drawer, others) for drawer, _, others in alone)
        pushes = tuple(
            _push_on(piece, *pushed, drawer.label, others, (moving,)) for drawer, moving, others in alone
        )
    return (
        *loads,
        *(
            _child_on(piece, drawer, held.child_weight, tilt, (moving,), (*others, *doors))
            for tilt in (0.0, tilt_of(held.block_thickness, piece.support_depth))
            for drawer, moving, others in alone
        ),
        *(child_on_leaf(piece, leaf, held.child_weight, held.block_thickness) for leaf in piece.leaves),
        *pushes,
    )
