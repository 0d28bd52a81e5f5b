"""What is chosen of a row of dowels or loose tenons where it was left out, each choice with its reason."""

from collections.abc import Callable
from dataclasses import dataclass

from casewright.joinery.butted import usual_row_margin
from casewright.joinery.butted_row import RowLimits, usual_piece_length, usual_side_depth
from casewright.joinery.joint import Choosing, Chosen, Measure
from casewright.measure.saying import Words, say
from casewright.measure.units import Count, Inches


@dataclass(frozen=True, slots=True, kw_only=True)
class RowPlaces:
    """Where the pieces of a row stand, and how deep they go.

    Attributes:
        side_depth: depth of a hole in the case side [in]
        length: length of a piece [in]
        margin: from each edge to the first and the last [in]
    """

    side_depth: Inches
    length: Inches
    margin: Inches


def row_places(take: Choosing, limits: RowLimits, width: Inches, case_side: Inches) -> RowPlaces:
    """Depth, length and margin of a row, typed or chosen.

    Args:
        take: what was typed
        limits: the usual numbers of the family
        width: length of the joint [in]
        case_side: thickness of the case side [in]

    Returns:
        The places.

    Source: common practice.
    """
    depth = take.or_choose("side_depth", _depth, limits, case_side)
    return RowPlaces(
        side_depth=depth,
        length=take.or_choose("length", _length, limits, depth),
        margin=take.or_choose("margin", _margin, limits, width),
    )


def chosen_spacing(limits: RowLimits) -> Chosen:
    """How far apart the pieces of a row stand.

    Args:
        limits: the usual numbers of the family

    Returns:
        The choice.

    Source: common practice.
    """
    why = "Close enough to keep the boards flat against each other."
    return _length_of("spacing", limits.spacing.value, why, limits.spacing.source)


def row_pieces(
    take: Choosing,
    name: str,
    counts: Callable[[Inches, Inches, Inches], Count],
    limits: RowLimits,
    why: str,
    width: Inches,
    margin: Inches,
) -> Count:
    """How many pieces a row has, typed or chosen: their number settles their spacing, or is settled by it.

    Args:
        take: what was typed
        name: what the number is called, such as `dowels`
        counts: how many there are, by width, margin and spacing
        limits: the usual numbers of the family
        why: the reason, with room for the spacing
        width: length of the joint [in]
        margin: from each edge to the first and the last [in]

    Returns:
        The number [dimensionless]

    Source: common practice.
    """
    typed = take.optional(name)
    if typed is not None:
        return int(typed)
    spacing = take.or_choose("spacing", chosen_spacing, limits)
    return int(take.or_choose(name, _count, name, counts(width, margin, spacing), say(why, spacing), limits))


def _count(name: str, value: Count, why: Words, limits: RowLimits) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.COUNT, why=why, source=limits.spacing.source)


def _depth(limits: RowLimits, case_side: Inches) -> Chosen:
    left = limits.left_usual
    why = say("To {} of the outside face of the {} side.", left.value, case_side)
    return _length_of("side_depth", usual_side_depth(case_side, left.value), why, left.source)


def _length(limits: RowLimits, side_depth: Inches) -> Chosen:
    step = limits.length_step.value
    value = usual_piece_length(side_depth, limits.length_times.value, step)
    why = say("Three times the depth in the side, {}, up to {}.", side_depth, step)
    return _length_of("length", value, why, limits.length_times.source)


def _margin(limits: RowLimits, width: Inches) -> Chosen:
    usual = limits.margin
    value = usual_row_margin(width, usual.value, limits.margin_step.value)
    why = say("{} is usual; on narrow boards a quarter of them.", usual.value)
    return _length_of("margin", value, why, usual.source)


def _length_of(name: str, value: Inches, why: Words, source: str) -> Chosen:
    return Chosen(name=name, value=value, measure=Measure.LENGTH, why=why, source=source)
