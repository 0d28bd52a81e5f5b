"""The front joints of a unit by what is set for them: one set for each layout and second gauge."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.gauges import GaugeGroup, groups_as_set
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.findings import Finding, Verdict
from casewright.measure.saying import Words, say, strung
from casewright.measure.units import Inches, Number
from casewright.pieces.drawers.batch_gauges import SIDES
from casewright.pieces.drawers.drawer import Drawer


@dataclass(frozen=True, slots=True, kw_only=True)
class Lap:
    """What is left of a front before the tails; a front that was planed thicker keeps more.

    Attributes:
        lap: what is left [in]
        index: the lap index [dimensionless]
        drawers: codes of the drawers that have it
    """

    lap: Inches
    index: Number
    drawers: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FrontSet:
    """Front joints that are set out and gauged alike.

    Attributes:
        joint: the joint as this setting has it; of several the one with the highest lap index
        drawers: the drawers, in the order of the unit
        sides: codes of the sides that the setting of gauge 2 serves
        unmeasured: those of them that have not been measured in their rabbet, and are set as drawn
        laps: the laps of the fronts, the one of most drawers first
        findings: the checks of all of them, each once; one that not all have says whose it is
    """

    joint: HalfBlindJoint
    drawers: tuple[Drawer, ...]
    sides: tuple[str, ...]
    unmeasured: tuple[str, ...]
    laps: tuple[Lap, ...]
    findings: tuple[Finding, ...]

    @property
    def codes(self) -> tuple[str, ...]:
        """The codes of the drawers."""
        return tuple(drawer.code for drawer in self.drawers)

    @property
    def drawn(self) -> tuple[str, ...]:
        """The codes of the drawers whose lap the joint has: drawn, and in the order of work."""
        return next(each.drawers for each in self.laps if abs(each.lap - self.joint.lap) <= TOLERANCE)

    @property
    def advice(self) -> tuple[Words, ...]:
        """The order of work; where the laps differ, first whose it is and is drawn."""
        if len(self.laps) == 1:
            return self.joint.advice
        whose = say(
            "Drawn is {}, with the lap of {}; the order of work is for that lap and serves the others, too.",
            ", ".join(self.drawn),
            self.joint.lap,
        )
        return (whose, *self.joint.advice)


def front_sets(drawers: Iterable[Drawer]) -> tuple[FrontSet, ...]:
    """The front joints of a unit, each layout and setting once.

    Drawers are of one layout where gauge 1, rabbet, groove, tails and chisels are the same; their sides are
    of one set where the second gauge is, too.

    Args:
        drawers: the drawers, in the order of the unit

    Returns:
        The sets, in the order of their first drawers, the lower setting of a layout first.

    Source: common practice: a gauge that is set once serves all that agree within 1/64.
    """
    layouts: dict[tuple[object, ...], list[Drawer]] = {}
    for drawer in drawers:
        if joint := drawer.joints.half_blind:
            layouts.setdefault(_layout(joint), []).append(drawer)
    return tuple(each for alike in layouts.values() for each in _sets(alike))


def half_blind_of(drawer: Drawer) -> HalfBlindJoint:
    """The half-blind front joint of a drawer that has one.

    Args:
        drawer: the drawer

    Returns:
        The joint.

    Raises:
        ValueError: its front is joined otherwise

    Source: common practice.
    """
    joint = drawer.joints.half_blind
    if joint is None:
        raise ValueError(f"The front of {drawer.code} has no half-blind dovetails.")
    return joint


def _layout(joint: HalfBlindJoint) -> tuple[object, ...]:
    given = joint.given
    return (
        *(joint.gauge_1, given.rabbet, given.proud, given.front_excess, given.groove),
        *(joint.layout, joint.chisels),
    )


def _sets(alike: Sequence[Drawer]) -> Iterator[FrontSet]:
    sides: dict[float, list[tuple[Drawer, str, bool]]] = {}
    for drawer in alike:
        for mark in (f"{drawer.code}-{side}" for side in SIDES):
            setting, measured = half_blind_of(drawer).second_gauge_for(mark)
            key = next((known for known in sides if abs(known - setting) <= TOLERANCE), setting)
            sides.setdefault(key, []).append((drawer, mark, measured))
    for setting in sorted(sides):
        yield _set(setting, sides[setting])


def _set(setting: Inches, sides: Sequence[tuple[Drawer, str, bool]]) -> FrontSet:
    drawers = tuple({drawer.code: drawer for drawer, _, _ in sides}.values())
    joint = max((half_blind_of(drawer) for drawer in drawers), key=lambda each: each.lap_index)
    if any(measured or half_blind_of(drawer).gauge_groups for drawer, _, measured in sides):
        joint = joint.at(_group(setting, sides))
    return FrontSet(
        joint=joint,
        drawers=drawers,
        sides=tuple(mark for _, mark, _ in sides),
        unmeasured=tuple(mark for _, mark, measured in sides if not measured),
        laps=tuple(_laps(drawers)),
        findings=tuple(_findings(joint, drawers)),
    )


def _group(setting: Inches, sides: Sequence[tuple[Drawer, str, bool]]) -> GaugeGroup:
    """The sides of a setting together, those that were not measured as they are drawn."""
    left: list[tuple[str, Inches]] = []
    full: list[tuple[str, Inches]] = []
    for drawer, mark, measured in sides:
        given = half_blind_of(drawer).given
        thick = dict(given.full_sides).get(mark, given.side)
        full.append((mark, thick))
        left.append((mark, dict(given.measured_sides)[mark] if measured else thick - given.rabbet))
    settings = tuple((mark, setting) for _, mark, _ in sides)
    rabbeted = half_blind_of(sides[0][0]).given.rabbet > 0
    return groups_as_set(tuple(left), settings, tuple(full) if rabbeted else ())[0]


def _laps(drawers: Sequence[Drawer]) -> Iterator[Lap]:
    found: dict[tuple[float, float], list[str]] = {}
    for drawer in drawers:
        joint = half_blind_of(drawer)
        key = (joint.lap, joint.lap_index)
        # Sides that differ by a 64th give indices that differ behind the point; the lap itself decides.
        known = next((each for each in found if abs(each[0] - joint.lap) <= TOLERANCE), key)
        worse = max(known, key, key=lambda each: each[1])
        found[worse] = [*found.pop(known, []), drawer.code]
    ordered = sorted(found.items(), key=lambda each: (-len(each[1]), each[0][0]))
    return (Lap(lap=lap, index=index, drawers=tuple(codes)) for (lap, index), codes in ordered)


def _findings(joint: HalfBlindJoint, drawers: Sequence[Drawer]) -> Iterator[Finding]:
    """What did not pass at any of the drawers, and what passes at the one that stands for them."""
    whose: dict[tuple[str, str], tuple[Finding, list[str]]] = {}
    for drawer in drawers:
        for finding in half_blind_of(drawer).findings:
            if finding.verdict is not Verdict.PASS:
                key = (finding.rule, str(finding.message))
                whose.setdefault(key, (finding, []))[1].append(drawer.code)
    for finding, codes in whose.values():
        alone = len(codes) == len(drawers)
        words = finding.message if alone else strung(": ", (", ".join(codes), finding.message))
        yield replace(finding, message=words)
    failed = {finding.rule for finding, _ in whose.values()}
    yield from (each for each in joint.findings if each.verdict is Verdict.PASS and each.rule not in failed)
