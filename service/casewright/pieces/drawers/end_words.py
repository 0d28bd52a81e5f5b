"""What is cut on the ends of a drawer's boards, in words for the cut list."""

from casewright.measure.saying import Words, say
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

END_OF_A_BOARD = {
    HALF_BLIND: "half-blind dovetail, sockets",
    THROUGH: "through dovetail, pins",
    SLIDING: "sliding dovetail, socket across the inside",
    LOCK_RABBET: "lock rabbet, tongue",
    BOX: "box joint, a finger at the bottom",
    PINNED: "rabbet for the side, pinned",
    HOUSING: "in the housing of the side",
}
"""Of the board that lies across the sides, by the family of its joint."""
END_OF_A_SIDE = {
    HALF_BLIND: "half-blind dovetail, tails",
    THROUGH: "through dovetail, tails",
    SLIDING: "sliding dovetail, tail",
    LOCK_RABBET: "lock rabbet, groove across the inside",
    BOX: "box joint, a space at the bottom",
    PINNED: "square, pinned in the rabbet",
    HOUSING: "housing for the back",
}
"""Of the side, likewise."""


def ends_of_a_side(drawer: Drawer) -> tuple[Words, Words]:
    """What is cut on the front end and on the rear end of a side.

    Args:
        drawer: the drawer

    Returns:
        The words for both ends.

    Source: common practice.
    """
    joints, rabbet = drawer.joints, drawer.sizes.rabbet
    front: Words = END_OF_A_SIDE[joints.front_family]
    if rabbet:
        front = say("{}, rabbet {:fraction}", front, rabbet)
    return front, END_OF_A_SIDE[joints.back_family]
