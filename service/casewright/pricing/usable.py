"""What lumber really costs: the bill set against the wood that became parts."""

from casewright.measure.money import exact, in_proportion, round_half_up, times
from casewright.measure.units import BoardFeet, Cents, Number


def cost_per_usable_foot(bill: Cents, usable: BoardFeet) -> Cents | None:
    """The cost of a foot of finished parts: that, and not the price of a foot, compares suppliers.

    Rule: bill / feet of finished parts made from it

    Args:
        bill: what was paid for the lumber [cent]
        usable: feet of the parts that were made from it, on finished size [bd ft]

    Returns:
        The cost of one foot; None where nothing was made of it [cent]

    Source: common practice.
    """
    if usable <= 0:
        return None
    return round_half_up(exact(bill) / exact(usable))


def claim(price: Cents, billed: BoardFeet, received: BoardFeet) -> Cents:
    """What to ask back for what was billed and did not come.

    Rule: price * (billed - received), nothing where more came than was billed

    Args:
        price: of one foot or piece, as billed [cent]
        billed: feet or pieces on the bill [bd ft]
        received: feet or pieces that came and stay [bd ft]

    Returns:
        The amount [cent]

    Source: common practice.
    """
    short = exact(billed) - exact(received)
    return times(price, short) if short > 0 else 0


def cost_of_each(bill: Cents, feet: tuple[Number, ...]) -> tuple[Cents, ...]:
    """A bill divided over the boards that came for it, by their feet, to the cent.

    Rule: bill * feet of the board / feet of all boards

    Args:
        bill: what was paid [cent]
        feet: the feet of each board, or one for each sheet [dimensionless]

    Returns:
        The cost of each; together they are the bill [cent]

    Source: common practice.
    """
    return in_proportion(bill, feet) if feet else ()
