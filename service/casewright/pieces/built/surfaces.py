"""The surfaces to prepare and finish, and how much finish they take."""

from dataclasses import dataclass
from math import pi

from casewright.measure.ledger import Ledger
from casewright.measure.units import Count, Inches, SquareFeet, SquareInches
from casewright.pieces.asked.shell_spec import BracketFeet, Plinth, ToeBase, TurnedFeet
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.case.bases import foot_count, grounds
from casewright.pieces.doors.hanging import Door
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.layout.openings import Face, Space
from casewright.pieces.layout.parts import Part
from casewright.pieces.rules import drawer_rules, leg_rules
from casewright.pieces.rules.door_rules import leaf_area
from casewright.pieces.rules.notch_rules import more_inside

SQUARE_INCHES = 144


@dataclass(frozen=True, slots=True, kw_only=True)
class Surfaces:
    """Areas of one unit.

    Attributes:
        show: what is seen when the drawers are closed [sq ft]
        inside: what is seen when they are open [sq ft]
    """

    show: float
    inside: float


def top_area(length: Inches, width: Inches, thickness: Inches) -> SquareInches:
    """The upper face of the top, with its front edge and its ends.

    Rule: length × width + thickness × (length + 2 × width)

    Args:
        length: length of the top [in]
        width: depth of the top [in]
        thickness: thickness of the top [in]

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return length * width + thickness * (length + 2 * width)


def case_area(width: Inches, depth: Inches, height: Inches) -> SquareInches:
    """The outside of both sides, and the whole front: rails, edges and drawer fronts together.

    Rule: height × (width + 2 × depth)

    Args:
        width: width of the case body [in]
        depth: depth of the case body [in]
        height: height of the case body [in]

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return height * (width + 2 * depth)


def square_feet(area: SquareInches) -> SquareFeet:
    """An area in square feet.

    Rule: area / 144

    Args:
        area: an area [sq in]

    Returns:
        The same area [sq ft]

    Source: a square foot is 144 square inches.
    """
    return area / SQUARE_INCHES


def space_area(width: Inches, height: Inches, depth: Inches, shelves: Count) -> SquareInches:
    """The inside of an open space, or behind doors: back, both ends, floor and ceiling, and every shelf.

    Rule: height × (width + 2 × depth) + 2 × (1 + shelves) × width × depth

    Args:
        width: clear width [in]
        height: clear height [in]
        depth: clear depth [in]
        shelves: how many shelves, each finished on both faces

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return height * (width + 2 * depth) + 2 * (1 + shelves) * width * depth


def knee_area(width: Inches, height: Inches, depth: Inches) -> SquareInches:
    """The sides of a knee space and what closes it above; its back is counted with the front.

    Rule: depth × (2 × height + width)

    Args:
        width: clear width [in]
        height: clear height, from the floor [in]
        depth: clear depth [in]

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return depth * (2 * height + width)


def surfaces(
    spec: UnitSpec,
    face: Face,
    drawers: tuple[Drawer, ...],
    doors: tuple[Door, ...],
    top: Part | None,
    ledger: Ledger,
) -> Surfaces:
    """The areas of one unit that are prepared and finished.

    Args:
        spec: what the maker chose
        face: the heights of the case
        drawers: the drawers
        doors: the doors
        top: the part that is the top; None where there is none
        ledger: keeps the working

    Returns:
        The areas.

    Source: common practice: show faces and edges, doors on both faces; inside the drawers the sides, the back
        and the bottom.
    """
    under, body = ledger.under("surfaces"), spec.body
    show = under.take("case", case_area, width=body.width, depth=body.depth, height=face.body_height)
    if top:
        show += under.take("top", top_area, length=top.length, width=top.width, thickness=top.thickness)
    show += base_area(spec, face, under)
    if spec.legs is not None:
        show += under.take("legs", leg_rules.legs_area, leg=spec.legs.leg, below=face.base_height)
    for door in doors:
        one = under.take(
            f"door_{door.plan.opening.code}",
            leaf_area,
            width=door.plan.width,
            height=door.plan.height,
            thickness=door.plan.thickness,
        )
        show += len(door.plan.leaves) * one
    inside = sum(_inside(drawer, ledger) for drawer in drawers)
    for space in face.spaces:
        area = _of_space(space, ledger)
        if space.holds == "doors":
            inside += area
        else:
            show += area
    return Surfaces(
        show=under.take("show", square_feet, area=show),
        inside=under.take("inside", square_feet, area=inside),
    )


def _of_space(space: Space, ledger: Ledger) -> float:
    sizes = {"width": space.width, "height": space.height, "depth": space.depth}
    if space.knee:
        return ledger.take(f"{space.code}.area", knee_area, **sizes)
    return ledger.take(f"{space.code}.area", space_area, **sizes, shelves=space.shelves)


def foot_area(around: Inches, height: Inches, feet: Count) -> SquareInches:
    """The outside of the feet of a case.

    Rule: feet × around × height

    Args:
        around: what is seen of a foot, measured round it [in]
        height: height of a foot [in]
        feet: how many there are

    Returns:
        The area [sq in]

    Source: geometry.
    """
    return feet * around * height


def base_area(spec: UnitSpec, face: Face, under: Ledger) -> SquareInches:
    """What is seen of the base.

    Args:
        spec: what the maker chose
        face: what of the case stands on the floor
        under: keeps the working

    Returns:
        The area; nothing without a base, or on legs [sq in]

    Source: geometry: of a bracket foot its two faces, of a turned one its round, of a toe base its face.
    """
    base, body = spec.stands_on, spec.body
    if isinstance(base, Plinth):
        return sum(
            under.take(
                f"plinth{each.under}", case_area, width=each.width, depth=body.depth, height=base.height
            )
            for each in grounds(spec, face)
        )
    if isinstance(base, BracketFeet):
        return under.take(
            "feet", foot_area, around=2 * base.width, height=base.height, feet=4 * len(face.pedestals)
        )
    if isinstance(base, TurnedFeet):
        return under.take(
            "feet",
            foot_area,
            around=pi * base.diameter,
            height=base.height,
            feet=foot_count(spec, face),
        )
    if isinstance(base, ToeBase):
        return sum(
            under.take(f"toe_face{each.under}", case_area, width=each.width, depth=0.0, height=base.height)
            for each in grounds(spec, face)
        )
    return 0.0


def _inside(drawer: Drawer, ledger: Ledger) -> float:
    sizes, notch = drawer.sizes, drawer.sizes.notch
    around = 0.0
    if notch is not None:
        around = ledger.take(
            f"{sizes.code}.notch_area",
            more_inside,
            taken_wide=notch.around,
            taken_deep=notch.taken,
            back=sizes.back_height,
        )
    return around + ledger.take(
        f"{sizes.code}.inside_area",
        drawer_rules.inside_area,
        depth=sizes.inside.depth,
        side=sizes.height,
        width=sizes.inside.width,
        back=sizes.back_height,
    )
