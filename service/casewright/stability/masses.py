"""Where the weight of a piece sits: the case, its drawers, what is in them and what hangs on them.

The pivot is the front lower edge, the line about which the piece would tip. `x` counts from it to the back:
what is behind it is positive and holds. `z` counts from the floor up.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from casewright.measure.making import maker, quickly_made
from casewright.measure.units import (
    CubicFeet,
    Degrees,
    Inches,
    InchPounds,
    Pounds,
)


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Mass:
    """A weight and where its centre is.

    Attributes:
        label: what it is
        weight: how heavy [lb]
        x: behind the pivot; below zero before it [in]
        z: above the floor [in]
    """

    label: str
    weight: Pounds
    x: Inches
    z: Inches = 0.0

    def __post_init__(self) -> None:
        if self.weight < 0:
            raise ValueError(f"{self.label} weighs less than nothing; give its weight in pounds.")


new_mass = maker(Mass)
"""Makes a mass as `Mass` does, and sooner: a piece is tried in dozens of situations."""


@quickly_made
@dataclass(frozen=True, slots=True, kw_only=True)
class Drawer:
    """A drawer as far as tipping goes.

    Attributes:
        label: its code
        weight: empty [lb]
        centre: of the empty drawer, behind its own front face [in]
        height: of that centre above the floor [in]
        travel: how far it comes out before its stops or slides hold it [in]
        load_height: where a weight hung over its front takes hold, above the floor [in]
        fill_weight: of what is in it [lb]
        fill_centre: of what is in it, behind the drawer's own front face [in]
        front: where the closed drawer's front face is, behind the pivot; below zero before it [in]
        volume: the room in it, as the rule counts it [cu ft]
        full: how far it would come out without stops; 0 where that is not known [in]
    """

    label: str
    weight: Pounds
    centre: Inches
    height: Inches
    travel: Inches
    load_height: Inches
    fill_weight: Pounds = 0.0
    fill_centre: Inches = 0.0
    front: Inches = 0.0
    volume: CubicFeet = 0.0
    full: Inches = 0.0

    def __post_init__(self) -> None:
        if min(self.weight, self.fill_weight) < 0:
            raise ValueError(f"Drawer {self.label} weighs less than nothing; give its weight in pounds.")
        if self.travel < 0:
            raise ValueError(f"Drawer {self.label} comes out by less than nothing; its travel is 0 or more.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """One leaf of a door as far as tipping goes.

    Attributes:
        label: its code
        weight: how heavy [lb]
        width: from its hinges to its free edge [in]
        height: of its centre above the floor [in]
        load_height: of its upper edge, over which a weight hangs, above the floor [in]
        front: where its face is when shut, behind the pivot; below zero before it [in]
        centre: of the leaf, behind its face [in]
    """

    label: str
    weight: Pounds
    width: Inches
    height: Inches
    load_height: Inches
    front: Inches = 0.0
    centre: Inches = 0.0

    def __post_init__(self) -> None:
        if self.weight < 0 or self.width <= 0:
            raise ValueError(f"Door {self.label} has a weight and a width above 0; give both.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece as far as tipping goes.

    Attributes:
        case: everything that stays when all the drawers are out, doors apart
        drawers: in any order
        height: from the floor to the top [in]
        support_depth: from the front line of the feet to the rear one [in]
        leaves: its doors, each leaf for itself
        one_at_a_time: an interlock lets one drawer open at a time
    """

    case: Mass
    drawers: tuple[Drawer, ...]
    height: Inches
    support_depth: Inches
    leaves: tuple[Leaf, ...] = ()
    one_at_a_time: bool = False

    def __post_init__(self) -> None:
        if min(self.height, self.support_depth) <= 0:
            raise ValueError("Give the height of the piece and the depth of its feet, both above 0.")


def at_travel(piece: Piece, travel: Inches) -> Piece:
    """The same piece with every drawer stopped at one travel.

    Args:
        piece: the piece
        travel: how far each drawer comes out [in]

    Returns:
        A new piece.

    Source: common practice.
    """
    return replace(piece, drawers=tuple(replace(drawer, travel=travel) for drawer in piece.drawers))


def total_weight(piece: Piece) -> Pounds:
    """What the piece weighs, empty.

    Args:
        piece: the piece

    Returns:
        Case, drawers and doors [lb]

    Source: common practice.
    """
    weights = [*(each.weight for each in piece.drawers), *(each.weight for each in piece.leaves)]
    return piece.case.weight + math.fsum(weights)


def empty(drawer: Drawer) -> Mass:
    """A closed drawer, empty.

    Args:
        drawer: the drawer

    Returns:
        Its weight at its place behind the pivot.

    Source: geometry.
    """
    return new_mass(label=drawer.label, weight=drawer.weight, x=drawer.front + drawer.centre, z=drawer.height)


def together(label: str, masses: Sequence[Mass]) -> Mass:
    """Several weights as one, at their common centre.

    Args:
        label: what they are together
        masses: the weights

    Returns:
        Their sum; at the pivot where there is no weight.

    Source: statics.
    """
    weight = math.fsum(mass.weight for mass in masses)
    if weight <= 0:
        return new_mass(label=label, weight=0.0, x=0.0)
    return new_mass(
        label=label,
        weight=weight,
        x=math.fsum(mass.weight * mass.x for mass in masses) / weight,
        z=math.fsum(mass.weight * mass.z for mass in masses) / weight,
    )


def contents(drawer: Drawer) -> Mass:
    """What is in a closed drawer.

    Args:
        drawer: the drawer

    Returns:
        Its weight at its place behind the pivot; as high as the drawer's own centre, which matters on a
        slope only.

    Source: geometry.
    """
    return new_mass(
        label=f"{drawer.label} contents",
        weight=drawer.fill_weight,
        x=drawer.front + drawer.fill_centre,
        z=drawer.height,
    )


def hung_on(drawer: Drawer, weight: Pounds) -> Mass:
    """A weight hung over the front of a drawer, while that is still closed.

    Args:
        drawer: the drawer
        weight: how heavy [lb]

    Returns:
        The weight at the drawer's front face and load height.

    Source: ASTM F2057-23, 9.2.3, as reported by a test laboratory.
    """
    return new_mass(label=f"on {drawer.label}", weight=weight, x=drawer.front, z=drawer.load_height)


def shut(leaf: Leaf) -> Mass:
    """A leaf that is shut.

    Args:
        leaf: the leaf

    Returns:
        Its weight at its place behind the pivot.

    Source: geometry.
    """
    return new_mass(label=leaf.label, weight=leaf.weight, x=leaf.front + leaf.centre, z=leaf.height)


def swung(leaf: Leaf) -> Mass:
    """A leaf that is open, square to the front.

    Args:
        leaf: the leaf

    Returns:
        Its weight half its width before the face.

    Source: geometry: hinged at the face, opened by 90 degrees.
    """
    return new_mass(label=leaf.label, weight=leaf.weight, x=leaf.front - leaf.width / 2, z=leaf.height)


def hung_on_leaf(leaf: Leaf, weight: Pounds) -> Mass:
    """A weight hung over the free edge of an open leaf.

    Args:
        leaf: the leaf
        weight: how heavy [lb]

    Returns:
        The weight the leaf's whole width before the face, at its upper edge.

    Source: from memory of ASTM F2057-23; hold the standard.
    """
    return new_mass(label=f"on {leaf.label}", weight=weight, x=leaf.front - leaf.width, z=leaf.load_height)


def tilt_of(block: Inches, support_depth: Inches) -> Degrees:
    """How far a piece leans forward with a block under its rear edge.

    Rule: atan(block / support_depth)

    Args:
        block: thickness of the block [in]
        support_depth: from the front line of the feet to the rear one [in]

    Returns:
        The angle [degree]

    Source: geometry; a block of 0.43 in stands for carpet in ASTM F2057-23, 9.2.3.
    """
    return math.degrees(math.atan(block / support_depth))


def leaned(x: Inches, z: Inches, tilt: Degrees) -> Inches:
    """How far behind the pivot a point comes to lie when the piece leans forward.

    Rule: x * cos(tilt) - z * sin(tilt)

    Args:
        x: behind the pivot, standing level [in]
        z: above the floor, standing level [in]
        tilt: how far it leans forward [degree]

    Returns:
        The distance behind the pivot, level with the floor [in]

    Source: geometry: rotation about the pivot.
    """
    angle = math.radians(tilt)
    return x * math.cos(angle) - z * math.sin(angle)


def moment(masses: Iterable[Mass], tilt: Degrees = 0.0) -> InchPounds:
    """The moment of some weights about the pivot.

    Rule: sum of weight * (x * cos(tilt) - z * sin(tilt))

    Args:
        masses: the weights
        tilt: how far the piece leans forward [degree]

    Returns:
        Above zero where they hold, below where they tip [in-lb]

    Source: statics.
    """
    angle = math.radians(tilt)
    cos, sin = math.cos(angle), math.sin(angle)
    return math.fsum([mass.weight * (mass.x * cos - mass.z * sin) for mass in masses])
