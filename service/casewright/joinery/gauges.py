"""The two settings of a marking gauge, and how sides of uneven thickness share the second one."""

from dataclasses import dataclass

from casewright.joinery.limits import LIMITS
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeGroup:
    """Sides that share one setting of the second gauge.

    Attributes:
        setting: what the gauge is set to for all of them [in]
        marks: the marks of the sides, as they were measured, thinnest first
        thinnest: the least thickness in the rabbet [in]
        thickest: the greatest thickness in the rabbet [in]
    """

    setting: Inches
    marks: tuple[str, ...]
    thinnest: Inches
    thickest: Inches


def first_gauge(front: Inches, lap: Inches) -> Inches:
    """The first gauge: depth of the sockets, baseline of the tails, and width of the rabbet in the side.

    On the ends of the front it is run from the inside face, so that a front of another thickness changes the
    lap and not the joint.

    Rule: front - lap

    Args:
        front: thickness of the front [in]
        lap: what is to be left before the tails [in]

    Returns:
        The gauge setting [in]

    Source: geometry of the joint; reference face as in Fine Woodworking, 2007 special issue, p. 84.
    """
    return front - lap


def second_gauge(side: Inches, rabbet: Inches, proud: Inches = 0.0) -> Inches:
    """What is left of the side after the registration rabbet: the line on the inside face of the front.

    The full thickness of the side would be wrong: the rabbet takes its depth from the inside of the tails, so
    a line at the full thickness makes every socket too deep by the rabbet.

    Rule: side - rabbet - proud

    Args:
        side: thickness of the side [in]
        rabbet: depth of the registration rabbet [in]
        proud: how far the side is to stand proud for planing [in]

    Returns:
        The gauge setting from the end of the front [in]

    Source: geometry of the joint.
    """
    return side - rabbet - proud


def second_gauge_as_measured(thickness: Inches, proud: Inches = 0.0) -> Inches:
    """The second gauge for a side that has been measured in its rabbet.

    Rule: thickness - proud

    Args:
        thickness: the side's thickness measured in the rabbet [in]
        proud: how far the side is to stand proud for planing [in]

    Returns:
        The gauge setting from the end of the front [in]

    Source: geometry of the joint; a measured size beats a nominal one.
    """
    return thickness - proud


def what_a_wrong_gauge_does(rabbet: Inches, board: str = "front") -> Words:
    """What happens when the second gauge is set to the full thickness of a rabbeted side.

    Args:
        rabbet: depth of the registration rabbet, by which every socket would be too deep [in]
        board: what carries the sockets, `front` or `back`

    Returns:
        A sentence for the card; empty when there is no rabbet and so no trap.

    Source: geometry of the joint.
    """
    if rabbet <= TOLERANCE:
        return ""
    return say(
        "Every socket would be {} too deep: flush, the side leaves an open slot of {:bare} behind "
        "each tail; pushed in until it bears, both ends of the {} stand {:bare} proud, and planed flush "
        "the drawer is {:bare} narrower than its opening wants.",
        rabbet,
        rabbet,
        board,
        rabbet,
        2 * rabbet,
    )


def gauge_groups(
    measured: tuple[tuple[str, Inches], ...],
    proud: Inches = 0.0,
    within: Inches = LIMITS.gauge_group.value,
    ledger: Ledger = UNKEPT,
) -> tuple[GaugeGroup, ...]:
    """The fewest settings of the second gauge that serve all the sides.

    Each group is set by its thinnest side, so that no side of it sinks below the end of the front; the others
    stand proud by 1/64 at most, and are planed flush.

    Args:
        measured: mark of each side, and its thickness measured in the rabbet [in]
        proud: how far the sides are to stand proud for planing [in]
        within: how closely the sides of one group agree [in]
        ledger: where the working is kept

    Returns:
        The groups, from the thinnest sides to the thickest.

    Source: common practice: sides that agree within 1/64 share one gauge setting.
    """
    groups: list[list[tuple[str, Inches]]] = []
    for side in sorted(measured, key=lambda each: each[1]):
        if groups and side[1] - groups[-1][0][1] <= within + TOLERANCE:
            groups[-1].append(side)
        else:
            groups.append([side])
    return tuple(_group(number, group, proud, ledger) for number, group in enumerate(groups, start=1))


def _group(number: int, sides: list[tuple[str, Inches]], proud: Inches, ledger: Ledger) -> GaugeGroup:
    thinnest = sides[0][1]
    return GaugeGroup(
        setting=ledger.take(f"gauge_2_{number}", second_gauge_as_measured, thickness=thinnest, proud=proud),
        marks=tuple(mark for mark, _ in sides),
        thinnest=thinnest,
        thickest=sides[-1][1],
    )
