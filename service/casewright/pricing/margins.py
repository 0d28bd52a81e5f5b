"""Mark-up and margin, which are taken for one another at the maker's cost."""

from casewright.measure.money import exact, round_half_up
from casewright.measure.units import Cents, Number


def markup_of(price: Cents, cost: Cents) -> Number:
    """What was added to the cost, as a part of the cost.

    Rule: (price - cost) / cost

    Args:
        price: what is asked [cent]
        cost: what it takes [cent]

    Returns:
        The mark-up [dimensionless]

    Raises:
        ValueError: it costs nothing.

    Source: common practice: 100 sold at 150 is a mark-up of 50 %.
    """
    if cost <= 0:
        raise ValueError("What costs nothing has no mark-up.")
    return (price - cost) / cost


def margin_of(price: Cents, cost: Cents) -> Number:
    """What is left of the price after the cost, as a part of the price.

    Rule: (price - cost) / price

    Args:
        price: what is asked [cent]
        cost: what it takes [cent]

    Returns:
        The margin [dimensionless]

    Raises:
        ValueError: it is given away.

    Source: common practice: 100 sold at 150 is a margin of a third.
    """
    if price <= 0:
        raise ValueError("What is given away has no margin.")
    return (price - cost) / price


def markup_from_margin(margin: Number) -> Number:
    """The mark-up that leaves a margin.

    Rule: margin / (1 - margin)

    Args:
        margin: the part of the price wanted [dimensionless]

    Returns:
        The part of the cost to add [dimensionless]

    Raises:
        ValueError: the margin is the whole price or more.

    Source: common practice: a margin of a third is a mark-up of 50 %.
    """
    refuse_margin(margin)
    return margin / (1 - margin)


def price_from_margin(cost: Cents, margin: Number) -> Cents:
    """The price that leaves a margin.

    Rule: cost / (1 - margin)

    Args:
        cost: what it takes [cent]
        margin: the part of the price wanted [dimensionless]

    Returns:
        The price, to the cent [cent]

    Raises:
        ValueError: the margin is the whole price or more.

    Source: common practice: a margin of 40 % on a cost of 600 is a price of 1000.
    """
    refuse_margin(margin)
    return round_half_up(cost / (1 - exact(margin)))


def refuse_margin(margin: Number) -> None:
    """Refuses a margin that no price can leave.

    Args:
        margin: the part of the price [dimensionless]

    Raises:
        ValueError: it is the whole price or more.

    Source: common practice.
    """
    if margin >= 1:
        raise ValueError(f"A margin of {margin:.0%} would be the whole price; give a part such as 0.40.")
