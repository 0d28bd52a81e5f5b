"""Drawers that are alike in something, together."""

from collections.abc import Callable, Iterable

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.pieces.drawers.drawer import Drawer


def drawers_alike(drawers: Iterable[Drawer], asked_for: Callable[[Drawer], object]) -> list[list[Drawer]]:
    """Drawers that are alike in something, together.

    Args:
        drawers: the drawers
        asked_for: in what they are to be alike, such as the joint that is asked for; need not be hashable

    Returns:
        The groups in the order of their first drawers.

    Source: common practice: what is alike is set out once.
    """
    groups: list[tuple[object, list[Drawer]]] = []
    for drawer in drawers:
        asked = asked_for(drawer)
        found = next((members for other, members in groups if other == asked), None)
        if found is None:
            groups.append((asked, [drawer]))
        else:
            found.append(drawer)
    return [members for _, members in groups]


def half_blind_alike(drawers: Iterable[Drawer]) -> list[tuple[HalfBlindJoint, list[Drawer]]]:
    """The half-blind front joints of drawers, each once with the drawers that have it.

    Args:
        drawers: the drawers

    Returns:
        The joint of the first of them, and all of them; nothing where the fronts are joined otherwise.

    Source: common practice: what is alike is set out once.
    """
    held = [each for each in drawers if each.joints.half_blind]
    groups = drawers_alike(held, lambda each: each.joints.front.given)
    return [(joint, members) for members in groups if (joint := members[0].joints.half_blind)]


def through_alike(drawers: Iterable[Drawer]) -> list[tuple[ThroughJoint, list[Drawer]]]:
    """The through dovetails of the backs of drawers, each once with the drawers that have it.

    Args:
        drawers: the drawers

    Returns:
        The joint of the first of them, and all of them; nothing where the backs are joined otherwise.

    Source: common practice: what is alike is set out once.
    """
    held = [each for each in drawers if each.joints.through]
    groups = drawers_alike(held, lambda each: each.joints.back.given)
    return [(joint, members) for members in groups if (joint := members[0].joints.through)]
