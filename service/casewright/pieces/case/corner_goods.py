"""What the corners of a case take besides boards: dowels and screws to buy, loose tenons from offcuts."""

from collections.abc import Iterable, Iterator

from casewright.joinery.butted_row import RowJoint
from casewright.joinery.families.housing.joint import HousingJoint
from casewright.measure.saying import say
from casewright.measure.units import Count
from casewright.pieces.case.corner_joints import BOTTOM, RAILS, SCREW_MARGIN, SCREW_SPACING, TOP
from casewright.pieces.layout.fitted import HardwareItem, SmallPart
from casewright.pieces.layout.joints import PlacedJoint
from casewright.pieces.rules.corner_rules import fastenings

SPARE = 10
"""One more dowel or screw for so many that are used (common practice)."""


def corner_hardware(joints: Iterable[PlacedJoint]) -> Iterator[HardwareItem]:
    """Dowels and screws of the corners.

    Args:
        joints: the joints of the case

    Yields:
        An item for each kind that there is.

    Source: common practice.
    """
    dowels = screws = 0
    for placed in of_corners(joints):
        joint = placed.joint
        if isinstance(joint, RowJoint) and placed.kind == "dowels":
            dowels += placed.places * joint.given.count
        elif isinstance(joint, HousingJoint) and is_screwed(placed) and joint.given.length:
            screws += placed.places * fastenings(joint.given.length, SCREW_MARGIN, SCREW_SPACING)
    for item, quantity in (("dowel", dowels), ("case screw", screws)):
        if quantity:
            yield HardwareItem(
                item=item, quantity=quantity, spare=quantity // SPARE, note="corners of the case"
            )


def corner_small_parts(joints: Iterable[PlacedJoint]) -> Iterator[SmallPart]:
    """Loose tenons, which are cut from offcuts.

    Args:
        joints: the joints of the case

    Yields:
        A line for each size.

    Source: common practice.
    """
    sizes: dict[tuple[float, float, float], Count] = {}
    for placed in of_corners(joints):
        joint = placed.joint
        if isinstance(joint, RowJoint) and placed.kind == "loose-tenon":
            key = (joint.given.thick, joint.given.along, joint.given.length)
            sizes[key] = sizes.get(key, 0) + placed.places * joint.given.count
    for size, quantity in sizes.items():
        yield SmallPart(
            name="Loose tenon",
            quantity=quantity,
            size=say("{:bare} × {:bare} × {:fraction}", *size),
            note="corners of the case; grain along its length, edges rounded to the mortise",
        )


def of_corners(joints: Iterable[PlacedJoint]) -> Iterator[PlacedJoint]:
    """The corners among the joints of a case: rails or top, and bottom, whatever their number."""
    return (placed for placed in joints if placed.key.rstrip("_0123456789") in (RAILS, TOP, BOTTOM))


def is_screwed(placed: PlacedJoint) -> bool:
    """Whether a housed corner is screwed through the side; a bottom that has to slide is not."""
    return placed.title.endswith("screwed")
