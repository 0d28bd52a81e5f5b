"""The gauge groups of a whole unit: sides that agree within 1/64 share a setting, whatever their drawer."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from casewright.joinery.gauges import GaugeGroup, Thicknesses, gauge_groups
from casewright.joinery.limits import LIMITS
from casewright.measure.ledger import Ledger
from casewright.measure.units import Inches
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import NOTHING, DrawerSizes

SIDES = ("SL", "SR")
"""The marks of a drawer's sides: left and right."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchGauges:
    """What the measured sides of a unit set their gauges by.

    Attributes:
        in_rabbet: mark of each measured side, and its thickness in the rabbet [in]
        settings: mark of each side that was measured in its rabbet, and its setting of gauge 2 [in]
        for_back: mark of each side of a drawer with a measured side, and the setting of the gauge for the
            back at its end [in]
    """

    in_rabbet: Thicknesses
    settings: Thicknesses
    for_back: Mapping[str, Inches]


def batch_gauges(spec: UnitSpec, sizes: Sequence[DrawerSizes], ledger: Ledger) -> BatchGauges:
    """The settings of the second gauge, and of the gauge for the backs, for all drawers of a unit together.

    Each setting is that of the thinnest side that it serves. A side that was measured beside its rabbet,
    at its full thickness, sets no gauge.

    Args:
        spec: what the maker chose, with what was measured
        sizes: the drawers
        ledger: keeps the working

    Returns:
        The fewest settings that serve all the measured sides.

    Source: common practice: sides that agree within 1/64 share one gauge setting.
    """
    if not spec.measured.parts:
        return BatchGauges(in_rabbet=(), settings=(), for_back={})
    in_rabbet = tuple(side for each in sizes for side in _in_rabbet(spec, each))
    full = dict(side for each in sizes for side in full_sides(spec, each))
    rabbeted = bool(sizes) and sizes[0].rabbet > 0
    close = LIMITS.gauge_tolerance.value
    sound = tuple(side for side in in_rabbet if not rabbeted or side[1] < full[side[0]] - close)
    groups = gauge_groups(sound, spec.drawers.proud, ledger=ledger)
    thick = tuple(side for each in sizes if _planed(spec, each) for side in full_sides(spec, each))
    backs = gauge_groups(thick, ledger=ledger.under("backs"))
    return BatchGauges(
        in_rabbet=in_rabbet, settings=tuple(_settings(groups)), for_back=dict(_settings(backs))
    )


def full_sides(spec: UnitSpec, sizes: DrawerSizes) -> Iterator[tuple[str, Inches]]:
    """The sides of a drawer, each with its full thickness.

    Args:
        spec: what the maker chose
        sizes: the drawer

    Returns:
        Mark and thickness, as measured or as drawn [in]

    Source: common practice: a measured size beats a designed one.
    """
    for mark, thickness in zip(SIDES, (sizes.left_side, sizes.right_side), strict=True):
        yield f"{spec.code}-{sizes.code}-{mark}", thickness


def _in_rabbet(spec: UnitSpec, sizes: DrawerSizes) -> Iterator[tuple[str, Inches]]:
    for mark in SIDES:
        part = spec.measured.parts.get(f"{sizes.code}-{mark}", NOTHING)
        if part.in_rabbet or part.thickness:
            left = part.in_rabbet or (part.thickness or 0.0) - sizes.rabbet
            yield f"{spec.code}-{sizes.code}-{mark}", left


def _planed(spec: UnitSpec, sizes: DrawerSizes) -> bool:
    """Whether a side of the drawer was measured at its full thickness."""
    return any(spec.measured.parts.get(f"{sizes.code}-{mark}", NOTHING).thickness for mark in SIDES)


def _settings(groups: tuple[GaugeGroup, ...]) -> Iterator[tuple[str, Inches]]:
    return ((mark, group.setting) for group in groups for mark in group.marks)
