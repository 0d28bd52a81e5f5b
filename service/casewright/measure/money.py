"""Money in whole cents, multiplied and rounded in one place."""

from decimal import Decimal
from fractions import Fraction

from casewright.measure.units import Cents, Count, Number

Factor = int | float | Decimal | Fraction


def exact(value: Factor) -> Fraction:
    """The number that a person wrote: 0.1 typed as a float is one tenth, not its binary neighbour.

    Args:
        value: a whole number, decimal, fraction, or a float that stands for what was typed, to 15 digits

    Returns:
        The exact fraction.

    Source: a float gives back any decimal of 15 digits (IEEE 754, double precision). What stands after them
    is left over from a sum: a rate kept as 0.06849999999999999 was 6.85 divided by 100.
    """
    return Fraction(f"{float(value):.15g}") if isinstance(value, float) else Fraction(value)


def times(amount: Cents, *factors: Factor) -> Cents:
    """An amount multiplied, exactly, and rounded once to whole cents; half a cent goes up.

    Args:
        amount: the price or rate [cent]
        factors: quantities and rates, each taken as the decimal that was written

    Returns:
        The amount of the line [cent]

    Source: common practice: each line is rounded once, and sums are of rounded lines.
    """
    product = Fraction(amount)
    for factor in factors:
        product *= exact(factor)
    return round_half_up(product)


def round_half_up(value: Fraction) -> Count:
    """The nearest whole number; a half goes away from zero.

    Args:
        value: any exact number

    Returns:
        The whole number [dimensionless]

    Source: common practice.
    """
    whole, rest = divmod(abs(value), 1)
    rounded = int(whole) + (1 if rest * 2 >= 1 else 0)
    return rounded if value >= 0 else -rounded


def share(amount: Cents, shares: tuple[Number, ...]) -> tuple[Cents, ...]:
    """An amount split by parts of a whole, to the cent, so that the parts add up to it.

    Args:
        amount: what is to be split [cent]
        shares: the parts, which add up to one [dimensionless]

    Returns:
        One amount for each share; the last takes what rounding left [cent]

    Source: common practice.
    """
    parts = [times(amount, part) for part in shares[:-1]]
    return (*parts, amount - sum(parts))


def in_proportion(amount: Cents, weights: tuple[Number, ...]) -> tuple[Cents, ...]:
    """An amount divided in proportion to some weights, to the cent, so that the parts add up to it.

    Each part is first rounded down; the cents that are left go one each to the parts that lost most by it,
    the earlier first where two lost the same.

    Args:
        amount: what is to be divided, 0 or more [cent]
        weights: one for each part, none below nothing; all of them nothing divides equally [dimensionless]

    Returns:
        One amount for each weight [cent]

    Raises:
        ValueError: there is nothing to divide between, or something is below nothing.

    Source: the method of the largest remainder.
    """
    if not weights or min(weights) < 0 or amount < 0:
        raise ValueError("An amount of 0 or more is divided between weights of 0 or more.")
    exacts = [exact(weight) for weight in weights] if any(weights) else [Fraction(1)] * len(weights)
    total = sum(exacts)
    ideal = [amount * weight / total for weight in exacts]
    whole = [int(part) for part in ideal]
    by_loss = sorted(range(len(whole)), key=lambda place: whole[place] - ideal[place])
    for place in by_loss[: amount - sum(whole)]:
        whole[place] += 1
    return tuple(whole)


def from_decimal(value: Factor, digits: Count = 2) -> Cents:
    """Cents from an amount in whole currency units, such as 9.50.

    Args:
        value: the amount as it was typed
        digits: how many decimals the currency has [dimensionless]

    Returns:
        The amount in its smallest unit [cent]

    Source: common practice.
    """
    return round_half_up(exact(value) * 10**digits)


def as_decimal(amount: Cents, digits: Count = 2) -> Decimal:
    """The amount in whole currency units, exact.

    Args:
        amount: the amount in its smallest unit [cent]
        digits: how many decimals the currency has [dimensionless]

    Returns:
        A decimal with just that many digits.

    Source: common practice.
    """
    return Decimal(amount).scaleb(-digits)


def show_money(amount: Cents, symbol: str = "$", digits: Count = 2) -> str:
    """The amount as it is printed, with thousands set apart.

    Args:
        amount: the amount in its smallest unit [cent]
        symbol: what stands before it
        digits: how many decimals the currency has [dimensionless]

    Returns:
        Text such as `$12,058.21`.

    Source: common practice.
    """
    sign = "-" if amount < 0 else ""
    return f"{sign}{symbol}{as_decimal(abs(amount), digits):,}"
