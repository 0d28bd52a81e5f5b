"""How the parts of a unit are marked out: where others are let in, and how their joints are divided."""

from collections.abc import Iterator, Mapping, Sequence

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.families.through.joint import ThroughJoint
from casewright.joinery.joint import Joint
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.sizes import INNER_BACK, INNER_SIDES, SHORT_BACKS
from casewright.pieces.layout.parts import Box, Part

EXACT = 4
"""Decimals of an inch to which two places are one."""


def marks_of(unit: Construction) -> Mapping[str, object]:
    """How every part of a unit is marked out; two parts with equal marks take the same cuts.

    Args:
        unit: the unit

    Returns:
        By the code of the part, something to be compared and no more.

    Source: geometry of the piece; the layouts of its joints.
    """
    owned = {drawer.code: drawer for drawer in unit.drawers}
    case = []
    marks: dict[str, object] = {}
    for part in unit.parts:
        drawer = owned.get(part.code.rsplit("-", 1)[0])
        if drawer is None:
            case.append(part)
        else:
            marks[part.code] = _in_drawer(part, drawer)
    marks.update(_in_case(case))
    return marks


def _in_drawer(part: Part, drawer: Drawer) -> object:
    front, back = _laid_out(drawer.joints.front), _laid_out(drawer.joints.back)
    ends = tuple(map(str, part.ends))
    cut_at = {"F": (front,), "BF": (front,), "SL": (front, back), "SR": (front, back), "B": (back,)}
    if around := drawer.joints.notch:
        rear, head = _laid_out(around.rear), _laid_out(around.head)
        cut_at |= dict.fromkeys(SHORT_BACKS, (back, rear)) | dict.fromkeys(INNER_SIDES, (head, rear))
        cut_at[INNER_BACK] = (head,)
    return (ends, *cut_at.get(part.code.rsplit("-", 1)[-1], ()))


def _laid_out(joint: Joint) -> str:
    """How a joint is laid out: its tails, or what it is set to where it has none."""
    if isinstance(joint, HalfBlindJoint | ThroughJoint):
        return repr(joint.layout)
    return repr([(each.name, each.value) for each in joint.settings])


def _in_case(parts: Sequence[Part]) -> Iterator[tuple[str, object]]:
    """Where the others of the case reach into each part: housings, mortises, dovetails."""
    for part in parts:
        reaching = {
            place
            for other in parts
            if other is not part
            for place in (_overlap(part.box, other.box),)
            if place is not None
        }
        yield part.code, (tuple(map(str, part.ends)), frozenset(reaching))


def _overlap(box: Box, other: Box) -> tuple[Inches, ...] | None:
    """From where to where another part reaches into this one, from its own corner; None where it does not."""
    found: list[Inches] = []
    for start, size, begin, length in (
        (box.x, box.width, other.x, other.width),
        (box.y, box.depth, other.y, other.depth),
        (box.z, box.height, other.z, other.height),
    ):
        low, high = max(start, begin), min(start + size, begin + length)
        if high - low < 10**-EXACT:
            return None
        found += [round(low - start, EXACT), round(high - start, EXACT)]
    return tuple(found)
