"""The checks of a half-blind joint: lap, gauges, tails, groove, chisels and woods."""

from collections.abc import Iterator

from casewright.joinery.checks import (
    chisels_at_hand,
    half_pin_width,
    moisture_apart,
    neck_width,
    pin_width,
    rabbet_depth,
    slope_limit,
    tail_width_limit,
)
from casewright.joinery.chisels import Chisels
from casewright.joinery.families.half_blind.asked import HalfBlind
from casewright.joinery.families.half_blind.gauging import Seen
from casewright.joinery.front_checks import (
    front_hardness,
    front_thickness,
    gauge_spread,
    groove_hidden,
    measured_in_the_rabbet,
    second_gauge_as_set,
    tail_in_socket,
)
from casewright.joinery.gauges import GaugeGroup
from casewright.joinery.groove import GrooveFit
from casewright.joinery.groove_left import wood_behind_groove
from casewright.joinery.lap_checks import front_needed, lap_is_sound, lap_strength, lap_thickness, thicker_lap
from casewright.joinery.layout import TailLayout
from casewright.joinery.proud import proud_for_planing
from casewright.measure.findings import Finding
from casewright.measure.saying import Words
from casewright.measure.units import Inches, Number


def findings_of(
    joint: HalfBlind,
    gauge_1: Inches,
    seen: Seen,
    lap: tuple[Inches, Number],
    groups: tuple[GaugeGroup, ...],
    layout: TailLayout,
    chisels: Chisels,
    fit: GrooveFit | None,
) -> Iterator[Finding]:
    """Every check of a half-blind joint, in the order in which they are read.

    Args:
        joint: what was asked for
        gauge_1: the first gauge [in]
        seen: the side that is drawn, and the second gauge as set
        lap: its thickness, and how hard it is bent [in, dimensionless]
        groups: the settings of the second gauge for measured sides
        layout: the row of tails
        chisels: which chisels clear it
        fit: how the groove lies against the lowest tail; None without a groove

    Returns:
        One finding for each check, passes too.

    Source: common practice; each check names its own.
    """
    side, limits, mark = joint.side, joint.limits, joint.mark
    right = tuple(group.setting for group in groups) or (seen["gauge_2"],)
    thicker: Words = ""
    if not lap_is_sound(*lap, limits):
        thicker = thicker_lap(joint.front, side, lap[0], limits, locked=joint.locked_gauge_1 is not None)
    laps = lap_thickness(lap[0], limits, mark, thicker), lap_strength(side, *lap, limits, mark, thicker)
    yield from laps
    entered = joint.entered_second_gauge
    yield second_gauge_as_set(
        seen["side_seen"], seen["rabbet_seen"], seen["proud_seen"], right, entered, limits, mark
    )
    yield rabbet_depth(side, joint.rabbet, limits, mark)
    yield neck_width(layout, side, limits, mark)
    yield pin_width(joint.pin, joint.rack.kerf, limits, mark)
    yield half_pin_width(joint.half_pin, limits, mark)
    if joint.groove and fit:
        yield groove_hidden(joint.groove, fit, limits, mark)
        thinnest = min([side, *(left + joint.rabbet for _, left in joint.measured_sides)])
        if joint.groove.in_side:
            yield wood_behind_groove(thinnest, joint.groove.depth, "side", about=mark)
        yield wood_behind_groove(joint.front, joint.groove.depth, "front", about=mark)
    if joint.proud > 0:
        yield proud_for_planing(joint.proud, "The sides", limits, mark)
    yield tail_width_limit(layout, side, limits, mark)
    failed = any(each.remedy for each in laps)
    for_lap = front_needed(joint.front, side, lap[0], limits) if failed else 0.0
    yield front_thickness(joint.front, side, limits, mark, for_lap)
    if joint.measured_sides:
        beside = joint.sides_beside_rabbet
        yield measured_in_the_rabbet(side, joint.rabbet, joint.measured_sides, beside, mark)
    if groups:
        yield gauge_spread(groups, limits, mark)
    yield slope_limit(joint.slope, limits, mark)
    yield chisels_at_hand(layout, chisels, joint.rack, mark)
    if joint.front_moisture is not None and joint.side_moisture is not None:
        yield moisture_apart(joint.front_moisture, joint.side_moisture, limits, mark)
    length, depth = joint.measured_tail_length, joint.measured_socket_depth
    if length is not None or depth is not None:
        yield tail_in_socket(gauge_1 if length is None else length, gauge_1 if depth is None else depth, mark)
    if joint.front_gravity is not None and joint.side_gravity is not None:
        yield front_hardness(joint.front_gravity, joint.side_gravity, limits, mark)
