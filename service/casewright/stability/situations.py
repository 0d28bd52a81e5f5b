"""What is done to a piece to see whether it tips: full drawers opened, a child's weight, carpet, a push."""

from casewright.measure.units import Inches, InchPounds, Pounds, PoundsForce
from casewright.stability.limits import Limits, house_limits
from casewright.stability.masses import Drawer, Mass, Piece, contents, empty, hung_on, tilt_of, together
from casewright.stability.tipping import Kind, Moving, Situation


def all_open_filled(piece: Piece) -> Situation:
    """Every drawer open and full of clothes.

    Args:
        piece: the piece

    Returns:
        The situation.

    Source: ASTM F2057-23, 9.2.1, simulated clothing load; geometry from memory, hold the standard.
    """
    full = ((mass, drawer) for drawer in piece.drawers for mass in (empty(drawer), contents(drawer)))
    return Situation(
        kind=Kind.ALL_OPEN,
        standing=(piece.case,),
        moving=tuple(Moving(mass=mass, travel=drawer.travel) for mass, drawer in full),
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
        others_open: the other drawers are open as well; shut unless said otherwise

    Returns:
        The situation.

    Raises:
        ValueError: there is no such drawer.

    Source: ASTM F2057-23, 9.2.3, reaction on carpet with child weight; how many drawers are open is from
        memory, hold the standard.
    """
    pulled = drawer_called(piece, label)
    others = tuple(drawer for drawer in piece.drawers if drawer is not pulled)
    out = (pulled, *others) if others_open else (pulled,)
    shut = () if others_open else tuple(empty(drawer) for drawer in others)
    return _child_on(piece, pulled, weight, block, out, shut)


def _child_on(
    piece: Piece,
    pulled: Drawer,
    weight: Pounds,
    block: Inches,
    out: tuple[Drawer, ...],
    shut: tuple[Mass, ...],
) -> Situation:
    return Situation(
        kind=Kind.CHILD_CARPET if block else Kind.CHILD_LEVEL,
        about=pulled.label,
        standing=(piece.case, *shut),
        moving=(
            Moving(mass=hung_on(pulled, weight), travel=pulled.travel),
            *(Moving(mass=empty(drawer), travel=drawer.travel) for drawer in out),
        ),
        tilt=tilt_of(block, piece.support_depth) if block else 0.0,
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
    """Every drawer open and empty, and an outward push near the top.

    Args:
        piece: the piece
        force: of the push [force_pound]
        highest: the highest point at which it acts; lower where the piece is lower [in]

    Returns:
        The situation.

    Source: ASTM F2057-23, 9.2.2, simulated horizontal dynamic force; force and height from memory, hold the
        standard.
    """
    return Situation(
        kind=Kind.PUSH,
        standing=(piece.case,),
        moving=tuple(Moving(mass=empty(drawer), travel=drawer.travel) for drawer in piece.drawers),
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
        Mass(
            label="the other drawers",
            weight=weight,
            x=(whole.weight * whole.x - one.weight * one.x) / weight,
            z=(whole.weight * whole.z - one.weight * one.z) / weight,
        ),
    )


def situations(piece: Piece, limits: Limits | None = None) -> tuple[Situation, ...]:
    """Every situation a piece is tried in: all open, a child on each drawer, level and on carpet, a push.

    Args:
        piece: the piece
        limits: weights, forces and the block; None for what a shop starts with

    Returns:
        The situations, in that order.

    Source: ASTM F2057-23, 9.2.1 to 9.2.3; a design screen, its geometry from memory.
    """
    held = limits or house_limits()
    shut = together("all drawers", [empty(drawer) for drawer in piece.drawers])
    return (
        all_open_filled(piece),
        *(
            _child_on(piece, drawer, held.child_weight, block, (drawer,), _without(shut, empty(drawer)))
            for block in (0.0, held.block_thickness)
            for drawer in piece.drawers
        ),
        push_at_top(piece, held.push_force, held.push_height),
    )
