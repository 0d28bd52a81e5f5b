"""Shares of one, as people write them: in per cent."""

from casewright.measure.money import Factor, exact
from casewright.measure.units import Number


def share_of_percent(percent: Factor) -> Number:
    """The share of one that somebody wrote in per cent: 6.85 is 0.0685, not its neighbour just below.

    Args:
        percent: the number that stood before the sign [percent]

    Returns:
        The share, as the float that stands for its decimal [dimensionless]

    Source: common practice. A float divided by 100 can land beside the decimal, and tax on it a cent off.
    """
    return float(exact(percent) / 100)


def show_percent(share: Number) -> str:
    """A share of one as it is printed, with every digit that was typed.

    Args:
        share: as it is kept [dimensionless]

    Returns:
        Text such as `8.1875 %`.

    Source: common practice. Six decimals are as many as a field takes; what stands after them is no figure.
    """
    return f"{share * 100:.6f}".rstrip("0").rstrip(".") + " %"


def show_part(share: Number) -> str:
    """The part that one of several has of a whole, as it is printed: to three digits.

    Args:
        share: as it is kept [dimensionless]

    Returns:
        Text such as `33.3 %`.

    Source: common practice. A third has no last digit; beside it stands the amount, to the cent.
    """
    return f"{share * 100:.3g} %"
