"""Prices that rose between the quote and its acceptance, line by line."""

from collections.abc import Iterable
from dataclasses import dataclass

from casewright.measure.money import exact, round_half_up
from casewright.measure.units import Cents, Hours, Number
from casewright.pricing.materials import MaterialLine
from casewright.pricing.rules import labour_amount, marked_up


@dataclass(frozen=True, slots=True, kw_only=True)
class Rise:
    """One line then and now.

    Attributes:
        label: what it is for
        old: as quoted, with the mark-up [cent]
        new: as it would be quoted today [cent]
        difference: new less old [cent]
    """

    label: str
    old: Cents
    new: Cents
    difference: Cents


def rise_amount(amount: Cents, rise: Number, markup: Number = 0.0) -> Cents:
    """What a rise by a share adds to the price.

    Rule: amount * rise * (1 + markup)

    Args:
        amount: the line as bought at the old price [cent]
        rise: how much dearer, as a part of it [dimensionless]
        markup: on materials [dimensionless]

    Returns:
        What the price rises by, rounded once [cent]

    Source: common practice.
    """
    return round_half_up(amount * exact(rise) * (1 + exact(markup)))


def material_rises(
    old: Iterable[MaterialLine], new: Iterable[MaterialLine], markup: Number
) -> tuple[Rise, ...]:
    """How each material line has changed; lines that stand alone come from or go to nothing.

    Args:
        old: the lines as quoted
        new: the same lines at today's prices
        markup: on materials [dimensionless]

    Returns:
        One rise for each line that differs, in the order of the quote, new lines last.

    Source: common practice.
    """
    before, after = totals(old), totals(new)
    labels = dict.fromkeys([*before, *after])
    pairs = [
        (label, marked_up(before.get(label, 0), markup), marked_up(after.get(label, 0), markup))
        for label in labels
    ]
    return tuple(
        Rise(label=label, old=then, new=now, difference=now - then)
        for label, then, now in pairs
        if then != now
    )


def totals(lines: Iterable[MaterialLine]) -> dict[str, Cents]:
    """What the lines come to, by their labels.

    Args:
        lines: material lines

    Returns:
        Label and amount; lines of one label are added [cent]

    Source: common practice.
    """
    added: dict[str, Cents] = {}
    for line in lines:
        added[line.label] = added.get(line.label, 0) + line.amount
    return added


def labour_rise(hours: Hours, factor: Number, old_rate: Cents, new_rate: Cents) -> Rise:
    """How the labour has changed when the shop's rate did.

    Args:
        hours: estimated hours [hour]
        factor: for the risk [dimensionless]
        old_rate: as quoted [cent]
        new_rate: today's [cent]

    Returns:
        Labour then and now.

    Source: common practice.
    """
    old, new = labour_amount(hours, old_rate, factor), labour_amount(hours, new_rate, factor)
    return Rise(label="labour", old=old, new=new, difference=new - old)
