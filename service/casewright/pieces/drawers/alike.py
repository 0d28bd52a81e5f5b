"""Drawers that are alike in something, together."""

from collections.abc import Callable, Iterable

from casewright.pieces.drawers.parts import Drawer


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
