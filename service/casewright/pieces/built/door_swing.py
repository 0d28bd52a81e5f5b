"""How far inset leaves open where a wall, a drawer that is out or another open leaf stands in their way."""

from collections.abc import Iterator, Sequence
from math import asin, atan2, degrees

from casewright.measure.findings import Finding, Verdict
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Degrees, Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.doors.hanging import Door
from casewright.pieces.doors.leaves import Hand, LeafPlan
from casewright.pieces.drawers.drawer import Drawer

ABOUT = 0.25
"""Openings whose edges are so near to one wall share it (common practice) [in]."""
SQUARE = 90.0
SOURCE = "geometry: an inset leaf on butt hinges turns about its front edge"


def opens_to_a_wall(clear: Inches, width: Inches) -> Degrees:
    """How far a leaf opens before its free edge meets something that goes on to the front, such as a wall.

    Rule: 90 + arcsin(clear / width); 180 where clear is no less than width

    Args:
        clear: from the hinged edge to what is in the way [in]
        width: width of the leaf [in]

    Returns:
        The angle from shut [degree]

    Source: geometry.
    """
    return SQUARE + degrees(asin(min(1.0, clear / width)))


def opens_to_a_drawer(clear: Inches, width: Inches, travel: Inches) -> Degrees:
    """How far a leaf opens beside a drawer that is drawn out.

    Rule: 90 + the greater of arcsin(clear / width) and arctan(clear / travel); 180 where clear is no less
    than width

    Args:
        clear: from the hinged edge to the front of the drawer [in]
        width: width of the leaf [in]
        travel: how far the drawer is drawn out [in]

    Returns:
        The angle from shut [degree]

    Source: geometry: its free edge meets the drawer's side, or its face the drawer's front corner.
    """
    if clear >= width:
        return 2 * SQUARE
    return SQUARE + max(degrees(asin(clear / width)), degrees(atan2(clear, travel)))


def swing_checks(
    spec: UnitSpec, doors: Sequence[Door], drawers: Sequence[Drawer], ledger: Ledger
) -> Iterator[Finding]:
    """What inset leaves meet when they are opened past square.

    Args:
        spec: what the maker chose
        doors: the doors
        drawers: the drawers
        ledger: keeps the working

    Yields:
        A caution with the angle for each leaf that meets something.

    Source: geometry.
    """
    hung = [(door, leaf) for door in doors if door.plan.is_inset for leaf in door.plan.leaves]
    for door, leaf in hung:
        under = ledger.under(f"{leaf.code.removeprefix(f'{spec.code}-')}.swing")
        yield from _wall(spec, door, leaf, under)
        yield from _drawn_out(door, leaf, drawers, under)
        if leaf.hinged == "right":
            yield from _other_leaf(door, leaf, hung, under)


def _hinge(door: Door, leaf: LeafPlan) -> Inches:
    """Where the hinged edge of a leaf is, from the outside of the left case side [in]."""
    return leaf.x if leaf.hinged == "left" else leaf.x + door.plan.width


def _between(hand: Hand, hinge: Inches, left: Inches, width: Inches) -> Inches:
    """From a hinged edge outwards to what stands beside it; below zero at the other side [in]."""
    return hinge - left - width if hand == "left" else left - hinge


def _beside(door: Door, bottom: Inches, height: Inches) -> bool:
    opening = door.plan.opening
    return bottom < opening.bottom + opening.height and opening.bottom < bottom + height


def _wall(spec: UnitSpec, door: Door, leaf: LeafPlan, under: Ledger) -> Iterator[Finding]:
    """Built in between walls, a leaf hinged at an outer side opens to the wall."""
    site, edge = spec.site, door.plan.around.left if leaf.hinged == "left" else door.plan.around.right
    if site.recess is None or edge.is_shared:
        return
    gap = max(site.scribe, (site.recess - spec.body.width) / 2)
    angle = under.take("to_the_wall", opens_to_a_wall, clear=edge.thickness + gap, width=door.plan.width)
    if angle < 2 * SQUARE:
        yield _meets(
            leaf, angle, "the wall beside it", "Give it a stay that holds it before its knob strikes."
        )


def _drawn_out(door: Door, leaf: LeafPlan, drawers: Sequence[Drawer], under: Ledger) -> Iterator[Finding]:
    """Of the drawers at its hinged edge, the one that it meets first."""
    hinge, edge = _hinge(door, leaf), _shared(door, leaf)
    found = []
    for drawer in drawers:
        face, opening = drawer.sizes.face, drawer.sizes.opening
        clear = _between(leaf.hinged, hinge, face.left, face.width)
        if 0 < clear <= edge + ABOUT and _beside(door, opening.bottom, opening.height):
            found.append((clear, -drawer.travel, drawer))
    if not found:
        return
    clear, out, drawer = min(found, key=lambda each: each[:2])
    angle = under.take("to_a_drawer", opens_to_a_drawer, clear=clear, width=door.plan.width, travel=-out)
    if angle < 2 * SQUARE:
        what = say("{}, drawn out {},", drawer.code, -out)
        yield _meets(leaf, angle, what, "Hinge it at its other side, or give it a stay that stops it there.")


def _other_leaf(
    door: Door, leaf: LeafPlan, hung: Sequence[tuple[Door, LeafPlan]], under: Ledger
) -> Iterator[Finding]:
    """Two leaves hinged at one upright open against each other: each has half of what is between them."""
    hinge, edge = _hinge(door, leaf), _shared(door, leaf)
    for other, across in hung:
        opening = other.plan.opening
        clear = _hinge(other, across) - hinge
        near = across.hinged == "left" and 0 < clear <= edge + ABOUT
        if not near or not _beside(door, opening.bottom, opening.height):
            continue
        widest = max(door.plan.width, other.plan.width)
        angle = under.take("to_the_other", opens_to_a_wall, clear=clear / 2, width=widest)
        if angle < 2 * SQUARE:
            yield _meets(
                leaf, angle, say("{}, opened as far,", across.code), "Hinge one of them at its other side."
            )


def _shared(door: Door, leaf: LeafPlan) -> Inches:
    """How thick what stands at the hinged edge is, with the gaps beside it; nothing at an outer side [in]."""
    edge = door.plan.around.left if leaf.hinged == "left" else door.plan.around.right
    return edge.thickness if edge.is_shared else 0.0


def _meets(leaf: LeafPlan, angle: Degrees, what: Words, remedy: str) -> Finding:
    return Finding(
        rule="door meets",
        verdict=Verdict.CAUTION,
        message=say("The leaf opens to {:.0f}° and there meets {} at its hinges.", float(angle), what),
        remedy=remedy,
        about=leaf.code,
        found=float(angle),
        needed=2 * SQUARE,
        source=SOURCE,
    )
