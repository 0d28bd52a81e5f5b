"""The second gauge of a half-blind joint: its groups, what is struck out, and the side that is drawn."""

from typing import TypedDict

from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.gauges import (
    GaugeGroup,
    gauge_groups,
    groups_as_set,
    second_gauge,
    what_a_wrong_gauge_does,
)
from casewright.measure.ledger import Ledger
from casewright.measure.saying import Words
from casewright.measure.units import Inches


class Seen(TypedDict):
    """The second gauge, what is struck out beside it, and the side by which both are drawn."""

    gauge_2: Inches
    wrong_gauge_2: Inches | None
    wrong_gauge_text: Words
    side_seen: Inches
    rabbet_seen: Inches
    proud_seen: Inches


def seen_at(joint: HalfBlind, groups: tuple[GaugeGroup, ...], gauge_2: Inches) -> Seen:
    """What is set, struck out and drawn for one setting of the second gauge.

    Args:
        joint: what was asked for
        groups: its gauge groups; none where nothing was measured
        gauge_2: the setting [in]

    Returns:
        By the side as drawn, or by the measured side of this setting that the wrong one harms most.

    Source: geometry of the joint.
    """
    group = next((each for each in groups if each.setting == gauge_2), None)
    if group is None:
        return Seen(
            gauge_2=gauge_2,
            wrong_gauge_2=joint.side if joint.rabbet > 0 else None,
            wrong_gauge_text=what_a_wrong_gauge_does(joint.rabbet, too_deep=joint.side - gauge_2),
            side_seen=joint.side,
            rabbet_seen=joint.rabbet,
            proud_seen=joint.proud,
        )
    full, left = group.full[group.worst], group.in_rabbet[group.worst]
    return Seen(
        gauge_2=gauge_2,
        wrong_gauge_2=group.wrong[-1] if group.wrong else None,
        wrong_gauge_text=group.wrong_text,
        side_seen=full,
        rabbet_seen=max(full - left, 0.0),
        proud_seen=left - gauge_2,
    )


def groups_of(joint: HalfBlind, ledger: Ledger) -> tuple[GaugeGroup, ...]:
    """The gauge groups of the measured sides: by the batch's settings where there are any.

    Args:
        joint: what was asked for
        ledger: where the working is kept

    Returns:
        The groups, from the lowest setting to the highest; none where no side was measured in its rabbet.

    Source: common practice: sides that agree within 1/64 share one gauge setting.
    """
    sides = joint.sides_in_rabbet
    full = tuple((mark, dict(joint.full_sides).get(mark, joint.side)) for mark, _ in sides)
    if joint.rabbet <= 0:
        full = ()
    if joint.shared_settings:
        return groups_as_set(sides, joint.shared_settings, full)
    return gauge_groups(sides, joint.proud, joint.limits.gauge_group.value, ledger, full)


def chosen_setting(joint: HalfBlind, groups: tuple[GaugeGroup, ...], ledger: Ledger) -> Inches:
    """The second gauge of the most sides, or of the side as drawn.

    Args:
        joint: what was asked for
        groups: its gauge groups; none where nothing was measured
        ledger: where the working is kept

    Returns:
        The setting [in]

    Source: geometry of the joint.
    """
    if groups:
        return max(groups, key=lambda group: len(group.marks)).setting
    return ledger.take("gauge_2", second_gauge, side=joint.side, rabbet=joint.rabbet, proud=joint.proud)
