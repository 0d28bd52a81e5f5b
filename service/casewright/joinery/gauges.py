"""The two settings of a marking gauge, and how sides of uneven thickness share the second one."""

from dataclasses import dataclass

from casewright.joinery.limits import LIMITS
from casewright.joinery.spacing import TOLERANCE
from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.saying import Words, say
from casewright.measure.units import Inches

Thicknesses = tuple[tuple[str, Inches], ...]
"""Marks of sides, each with a thickness or a setting [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeGroup:
    """Sides that share one setting of the second gauge.

    Attributes:
        setting: what the gauge is set to for all of them [in]
        marks: the marks of the sides, as they were measured, thinnest first
        in_rabbet: their thicknesses in the rabbet, in the order of the marks [in]
        full: their full thicknesses, beside the rabbet, in the order of the marks [in]
    """

    setting: Inches
    marks: tuple[str, ...]
    in_rabbet: tuple[Inches, ...]
    full: tuple[Inches, ...]

    @property
    def thinnest(self) -> Inches:
        """The least thickness in the rabbet [in]."""
        return self.in_rabbet[0]

    @property
    def thickest(self) -> Inches:
        """The greatest thickness in the rabbet [in]."""
        return self.in_rabbet[-1]

    @property
    def wrong(self) -> tuple[Inches, ...]:
        """The full thicknesses that are easily set instead, each once, the greatest last [in].

        A side of which no rabbet was taken has none.
        """
        traps = {
            round(full / TOLERANCE): full
            for full, left in zip(self.full, self.in_rabbet, strict=True)
            if full - left > TOLERANCE
        }
        return tuple(traps[key] for key in sorted(traps))

    @property
    def worst(self) -> int:
        """The place of the side at which the wrong setting is deepest; of equal ones the thinnest."""
        return max(range(len(self.marks)), key=lambda place: (round(self.full[place] / TOLERANCE), -place))

    @property
    def wrong_text(self) -> Words:
        """What the wrong setting would do to the side that it harms most; empty without such a trap."""
        if not self.wrong:
            return ""
        worst = self.worst
        alike = [
            mark
            for mark, full, left in zip(self.marks, self.full, self.in_rabbet, strict=True)
            if abs(full - self.full[worst]) <= TOLERANCE and abs(left - self.in_rabbet[worst]) <= TOLERANCE
        ]
        return what_a_wrong_gauge_does(
            self.full[worst] - self.in_rabbet[worst],
            too_deep=self.full[worst] - self.setting,
            sides=tuple(alike),
        )


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


def what_a_wrong_gauge_does(
    rabbet: Inches, board: str = "front", too_deep: Inches | None = None, sides: tuple[str, ...] = ()
) -> Words:
    """What happens when the second gauge is set to the full thickness of a rabbeted side.

    Args:
        rabbet: depth of the registration rabbet, which is the slot that a side set flush leaves [in]
        board: what carries the sockets, `front` or `back`
        too_deep: by how much the wrong setting is over the right one; the rabbet when left out, which it is
            where a side is not to stand proud [in]
        sides: marks of the sides that were measured; none where the joint is as drawn

    Returns:
        A sentence for the card; empty when there is no rabbet and so no trap.

    Source: geometry of the joint.
    """
    if rabbet <= TOLERANCE:
        return ""
    return say(
        "Every socket{} would be {} too deep: flush, the side leaves an open slot of {:bare} behind "
        "each tail; pushed in until it bears, both ends of the {} stand {:bare} proud, and planed flush "
        "the drawer is {:bare} narrower than its opening wants.",
        _for(sides),
        rabbet if too_deep is None else too_deep,
        rabbet,
        board,
        rabbet,
        2 * rabbet,
    )


def _for(sides: tuple[str, ...]) -> str:
    """Of which sides is spoken; of many, the first two and how many more."""
    if not sides:
        return ""
    more = f" and {len(sides) - 2} more" if len(sides) > 2 else ""
    return f" for {', '.join(sides[:2])}{more}"


def gauge_groups(
    measured: Thicknesses,
    proud: Inches = 0.0,
    within: Inches = LIMITS.gauge_group.value,
    ledger: Ledger = UNKEPT,
    full: Thicknesses = (),
) -> tuple[GaugeGroup, ...]:
    """The fewest settings of the second gauge that serve all the sides.

    Each group is set by its thinnest side, so that no side of it sinks below the end of the front; the others
    stand proud by 1/64 at most, and are planed flush.

    Args:
        measured: mark of each side, and its thickness measured in the rabbet [in]
        proud: how far the sides are to stand proud for planing [in]
        within: how closely the sides of one group agree [in]
        ledger: where the working is kept
        full: mark of each side, and its full thickness; a side that is left out has no rabbet [in]

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
    return tuple(
        _group(
            ledger.take(f"gauge_2_{number}", second_gauge_as_measured, thickness=group[0][1], proud=proud),
            group,
            full,
        )
        for number, group in enumerate(groups, start=1)
    )


def groups_as_set(
    measured: Thicknesses, settings: Thicknesses, full: Thicknesses = ()
) -> tuple[GaugeGroup, ...]:
    """The sides of one joint by the settings that the whole batch has, of which it is a part.

    Args:
        measured: mark of each side, and its thickness measured in the rabbet [in]
        settings: mark of each side, and the setting of the batch that serves it [in]
        full: mark of each side, and its full thickness; a side that is left out has no rabbet [in]

    Returns:
        The groups, from the lowest setting to the highest.

    Source: common practice: a gauge that is set once serves all that agree within 1/64.
    """
    by_mark = dict(settings)
    groups: dict[Inches, list[tuple[str, Inches]]] = {}
    for side in sorted(measured, key=lambda each: (by_mark[each[0]], each[1])):
        groups.setdefault(by_mark[side[0]], []).append(side)
    return tuple(_group(setting, sides, full) for setting, sides in groups.items())


def _group(setting: Inches, sides: list[tuple[str, Inches]], full: Thicknesses) -> GaugeGroup:
    beside = dict(full)
    return GaugeGroup(
        setting=setting,
        marks=tuple(mark for mark, _ in sides),
        in_rabbet=tuple(thickness for _, thickness in sides),
        full=tuple(beside.get(mark, thickness) for mark, thickness in sides),
    )
