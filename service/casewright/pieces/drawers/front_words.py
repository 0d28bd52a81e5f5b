"""Which front is meant: where a box has a front of its own behind the show front, it is joined by that."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from casewright.joinery.called import Names, renamed
from casewright.measure.findings import Finding
from casewright.pieces.asked.drawer_spec import Drawers

OF_THE_BOX: Names = (
    ("front", "box’s front"),
    ("front to back", "front to back"),
    ("show front", "show front"),
    ("applied front", "applied front"),
)
"""What a joint calls front is the box's own; what is said of others, and of directions, stays."""


def of_the_box(drawers: Drawers, findings: Iterable[Finding]) -> Iterator[Finding]:
    """What is found of the joints in front, said of the board that they are cut on.

    Args:
        drawers: how the drawers are made
        findings: checks of the joints between the sides and what they are joined to in front

    Yields:
        The same checks; where the box has a front of its own, they speak of that.

    Source: common practice: a show front is screwed to a box that is dovetailed by itself.
    """
    if not drawers.has_box_front:
        yield from findings
        return
    for each in findings:
        message, remedy = (renamed(words, OF_THE_BOX) for words in (each.message, each.remedy))
        yield replace(each, message=message, remedy=remedy)
