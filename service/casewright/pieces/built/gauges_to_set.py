"""Every gauge of a unit, each setting once: what is easily set instead, and the parts that it serves."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from casewright.joinery.gauges import GaugeGroup, groups_as_set
from casewright.joinery.joint import Setting, Tool
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.saying import Words
from casewright.measure.units import Inches
from casewright.pieces.built.construct import Construction
from casewright.pieces.built.end_joints import drawer_ends
from casewright.pieces.drawers.batch_gauges import SIDES
from casewright.pieces.drawers.drawer import Drawer
from casewright.pieces.drawers.front_sets import FrontSet, front_sets
from casewright.pieces.drawers.tool_checks import GAUGE_FOR_BACK, GAUGE_FOR_SIDES
from casewright.pieces.layout.joints import PlacedJoint

Held = TypeVar("Held")
OF_DIVIDERS = ("socket_depth", "shoulder")
"""The settings of a sliding dovetail that are gauged: length of the tail, and its shoulders."""

OF_THE_CASE = {
    "carcase": "Corners of the case",
    "sliding": "Dividers",
    "frame-tenon": "Frames",
    "leg-tenon": "Legs and aprons",
    "hinge": "Hinges of the doors",
}
"""What a gauge of the case is called by the family of its joint."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeToSet:
    """One setting of one gauge.

    Attributes:
        name: which gauge
        setting: what it is set to [in]
        wrong: what is easily set instead, each size once [in]
        wrong_text: what the worst of them would do; empty without such a trap
        serves: codes of the parts that it serves; of a part with two settings with its end, `A-R1-1-B left`
        unmeasured: those of them that have not been measured and are set as drawn
        where: from which face or edge it is run
    """

    name: str
    setting: Inches
    wrong: tuple[Inches, ...] = ()
    wrong_text: Words = ""
    serves: tuple[str, ...]
    unmeasured: tuple[str, ...] = ()
    where: str


def gauges_to_set(unit: Construction) -> tuple[GaugeToSet, ...]:
    """The gauges of a unit's joints: first and second of the fronts, those of the backs, those of the case.

    Args:
        unit: the unit, worked out

    Returns:
        Each setting once, in the order of the work.

    Source: common practice: a gauge that is set once serves all that agree within 1/64.
    """
    sets = front_sets(unit.drawers)
    return (
        *_first(sets, unit.drawers),
        *_second(sets, unit.drawers),
        *_backs(unit.drawers),
        *_ends(unit),
        *_case(unit),
    )


def _first(sets: Iterable[FrontSet], drawers: Sequence[Drawer]) -> Iterator[GaugeToSet]:
    for setting, found in _by_setting((each.joint.gauge_1, each) for each in sets):
        codes = {code for each in found for code in each.codes}
        rabbet = "; width of the rabbet" if any(each.joint.given.rabbet > 0 for each in found) else ""
        yield GaugeToSet(
            name="Gauge 1",
            setting=setting,
            serves=tuple(
                f"{each.code}-{mark}"
                for each in drawers
                if each.code in codes
                for mark in (each.sizes.joined, *SIDES)
            ),
            where=f"sockets, from the inside face of the front; baseline on the sides{rabbet}",
        )


def _second(sets: Iterable[FrontSet], drawers: Sequence[Drawer]) -> Iterator[GaugeToSet]:
    """One setting over all layouts, with what the wrong one does to the sides that it harms most."""
    order = {f"{each.code}-{mark}": place for place, each in enumerate(drawers) for mark in SIDES}
    for setting, found in _by_setting((each.joint.gauge_2, each) for each in sets):
        groups = [group for each in found for group in each.joint.gauge_groups]
        drawn = next((each for each in found if not each.joint.gauge_groups), None)
        text = drawn.joint.wrong_gauge_text if drawn else _together(setting, groups).wrong_text
        yield GaugeToSet(
            name="Gauge 2",
            setting=setting,
            wrong=_once(wrong for each in found for wrong in wrong_of(each)),
            wrong_text=text,
            serves=tuple(sorted((mark for each in found for mark in each.sides), key=order.__getitem__)),
            unmeasured=tuple(
                sorted((mark for each in found for mark in each.unmeasured), key=order.__getitem__)
            ),
            where="on the inside face of the front, from its end",
        )


def _together(setting: Inches, groups: Sequence[GaugeGroup]) -> GaugeGroup:
    """The sides of one setting, whatever layout they are of."""
    left = [pair for each in groups for pair in zip(each.marks, each.in_rabbet, strict=True)]
    full = [pair for each in groups for pair in zip(each.marks, each.full, strict=True)]
    settings = tuple((mark, setting) for mark, _ in left)
    return groups_as_set(tuple(left), settings, tuple(full))[0]


def wrong_of(found: FrontSet) -> tuple[Inches, ...]:
    """What is struck out beside the second gauge of a set.

    Args:
        found: the set

    Returns:
        The full thicknesses of its sides, each once; none without a rabbet [in]

    Source: geometry of the joint.
    """
    joint = found.joint
    if joint.gauge_groups:
        return joint.gauge_groups[0].wrong
    return () if joint.wrong_gauge_2 is None else (joint.wrong_gauge_2,)


def _backs(drawers: Iterable[Drawer]) -> Iterator[GaugeToSet]:
    held = tuple((each, joint) for each in drawers if (joint := each.joints.through))
    for setting, found in _by_setting((joint.gauge_side, each) for each, joint in held):
        yield GaugeToSet(
            name=GAUGE_FOR_SIDES,
            setting=setting,
            serves=tuple(f"{each.code}-{mark}" for each in found for mark in SIDES),
            where="baseline of the tails, from the end",
        )
    ends = (
        (setting, (joint, code))
        for each, joint in held
        for end, setting in joint.back_ends
        for code in _back_ends(each, end)
    )
    for setting, pairs in _by_setting(ends):
        joints = [joint for joint, _ in pairs]
        yield GaugeToSet(
            name=GAUGE_FOR_BACK,
            setting=setting,
            wrong=_once(joint.wrong_gauge_back for joint in joints if joint.wrong_gauge_back is not None),
            wrong_text=joints[0].wrong_gauge_text,
            serves=tuple(code for _, code in pairs),
            where="both faces, from the end",
        )


def _back_ends(drawer: Drawer, end: str) -> tuple[str, ...]:
    """The back of a drawer with the end that is meant; beside a notch the short back that has it."""
    marks = drawer.sizes.backs
    if len(marks) == 1:
        return (f"{drawer.code}-{marks[0]} {end}".rstrip(),)
    meant = {"left": marks[:1], "right": marks[1:]}.get(end, marks)
    return tuple(f"{drawer.code}-{mark}" for mark in meant)


def _ends(unit: Construction) -> Iterator[GaugeToSet]:
    """The gauges of the drawers' other joints, front and back apart, then those around notches."""
    for end in ("front", "back"):
        placed = [each for each in drawer_ends(unit) if each.key.startswith(end)]
        yield from _placed(placed, f"Drawer {end}")
    yield from _placed((each for each in drawer_ends(unit) if each.key.startswith("notch")), "Around a notch")


def _case(unit: Construction) -> Iterator[GaugeToSet]:
    """The gauges of the joints of the case; joints of one family that share a setting together."""
    yield from _placed(unit.case_joints)


def _placed(joints: Iterable[PlacedJoint], name: str = "") -> Iterator[GaugeToSet]:
    """The gauges of joints under a name; where none is given, under that of their family in the case."""
    found: dict[tuple[str, str], list[tuple[Inches, tuple[Setting, PlacedJoint]]]] = {}
    for placed in joints:
        for each in placed.joint.settings:
            if each.tool is Tool.GAUGE or (placed.kind == "sliding" and each.name in OF_DIVIDERS):
                found.setdefault((placed.kind, each.name), []).append((each.value, (each, placed)))
    for (kind, _), pairs in found.items():
        for setting, held in _by_setting(pairs):
            first = held[0][0]
            yield GaugeToSet(
                name=f"{name or OF_THE_CASE.get(kind, kind.capitalize())}, {str(first.label).lower()}",
                setting=setting,
                wrong=_once(each.wrong for each, _ in held if each.wrong is not None),
                serves=tuple(dict.fromkeys(code for _, placed in held for code in placed.parts)),
                where=str(first.note),
            )


def _by_setting(pairs: Iterable[tuple[Inches, Held]]) -> list[tuple[Inches, list[Held]]]:
    """What has the same setting together, the lowest setting first."""
    found: dict[Inches, list[Held]] = {}
    for setting, each in pairs:
        key = next((known for known in found if abs(known - setting) <= TOLERANCE), setting)
        found.setdefault(key, []).append(each)
    return sorted(found.items(), key=lambda each: each[0])


def _once(sizes: Iterable[Inches]) -> tuple[Inches, ...]:
    found: list[Inches] = []
    for size in sizes:
        if not any(abs(size - known) <= TOLERANCE for known in found):
            found.append(size)
    return tuple(sorted(found))
