"""The sums of which a price is made, each a rule of its own so that it can be asked for its reason."""

from casewright.measure.money import times
from casewright.measure.units import Cents, Hours, Number


def marked_up(amount: Cents, markup: Number) -> Cents:
    """Materials or outwork as they are charged.

    Rule: amount * (1 + markup)

    Args:
        amount: what was paid [cent]
        markup: what is added, as a part of it [dimensionless]

    Returns:
        What is charged, rounded once [cent]

    Raises:
        ValueError: the mark-up is below zero.

    Source: common practice.
    """
    if markup < 0:
        raise ValueError("A mark-up is added to the cost; it is 0 or more.")
    return amount + times(amount, markup)


def labour_amount(hours: Hours, rate: Cents, factor: Number = 1.0) -> Cents:
    """What the hours come to.

    Rule: hours * factor * rate, rounded once to the cent

    Args:
        hours: estimated hours, allowance included, to 0.01 h [hour]
        rate: for one hour [cent]
        factor: for the risk that they run over, to 4 decimals [dimensionless]

    Returns:
        The amount [cent]

    Raises:
        ValueError: the hours are below zero.

    Source: common practice.
    """
    if hours < 0:
        raise ValueError("Hours are 0 or more.")
    return times(rate, hours, factor)


def contingency_amount(hours: Hours, rate: Cents, factor: Number) -> Cents:
    """The part of the labour that is there in case the job runs over.

    Rule: hours * factor * rate - hours * rate, each rounded to the cent

    Args:
        hours: estimated hours [hour]
        rate: for one hour [cent]
        factor: for the risk that they run over [dimensionless]

    Returns:
        The amount; below zero for a shop whose jobs run short [cent]

    Source: common practice; as a difference, so that base and contingency add up to the labour to the cent.
    """
    return labour_amount(hours, rate, factor) - labour_amount(hours, rate)


def delivery_amount(distance: Number, per_distance: Cents) -> Cents:
    """What driving costs.

    Rule: distance * per_distance

    Args:
        distance: the whole way, there and back, in the unit of the rate [in its own unit]
        per_distance: for one mile or kilometre [cent]

    Returns:
        The amount [cent]

    Raises:
        ValueError: the distance is below zero.

    Source: common practice.
    """
    if distance < 0:
        raise ValueError("A distance is 0 or more.")
    return times(per_distance, distance)


def asked_price(before_rounding: Cents, step: Cents, minimum: Cents = 0) -> Cents:
    """The price that is asked, before tax.

    Rule: the larger of before_rounding and minimum, up to the next whole multiple of step

    Args:
        before_rounding: the sum of all lines [cent]
        step: the price is a whole multiple of it [cent]
        minimum: the least that a job is taken on for [cent]

    Returns:
        The price [cent]

    Raises:
        ValueError: the step is not at least a cent.

    Source: common practice.
    """
    if step < 1:
        raise ValueError("A price is rounded up to a step of at least one cent, such as 10.00.")
    return -(-max(before_rounding, minimum) // step) * step


def tax_amount(price: Cents, tax_rate: Number, taxable_share: Number = 1.0) -> Cents:
    """The tax on a price.

    Rule: price * taxable_share * tax_rate, rounded once to the cent

    Args:
        price: before tax [cent]
        tax_rate: of the place where it is owed [dimensionless]
        taxable_share: the part of the price on which it is owed; 0 for a resale or an exempt customer
            [dimensionless]

    Returns:
        The tax [cent]

    Raises:
        ValueError: the share is not between 0 and 1, or the rate is below zero.

    Source: common practice: tax last, on the sum that the law names.
    """
    if not 0 <= taxable_share <= 1 or tax_rate < 0:
        raise ValueError("The taxable share is between 0 and 1, and the tax rate 0 or more.")
    return times(price, taxable_share, tax_rate)


def out_of_pocket(
    *,
    direct: Cents,
    hours: Hours,
    cost_rate: Cents,
    factor: Number,
    outwork: Cents,
    delivery: Cents,
    extras: Cents,
) -> Cents:
    """What the piece takes, with no mark-up and no profit anywhere.

    Rule: direct + hours * factor * cost_rate + outwork + delivery + extras

    Args:
        direct: direct materials as bought [cent]
        hours: estimated hours [hour]
        cost_rate: what an hour costs the shop [cent]
        factor: the median for the expected cost, a surer one for the least acceptable [dimensionless]
        outwork: what others are paid [cent]
        delivery: what driving costs [cent]
        extras: fixed extras [cent]

    Returns:
        The cost [cent]

    Source: common practice.
    """
    return direct + labour_amount(hours, cost_rate, factor) + outwork + delivery + extras
