"""What a discount eats: the profit, then what was put by for a bad run, then the maker's own pay."""

from dataclasses import dataclass
from enum import StrEnum

from casewright.measure.money import show_money, times
from casewright.measure.units import Cents, Number
from casewright.pricing.price import Price


class Reach(StrEnum):
    """How far down a price has come among the three numbers."""

    ASKED = "as asked"
    PROFIT = "eats profit and mark-up"
    RISK = "eats what was put by for a bad run"
    LOSS = "below cost"


@dataclass(frozen=True, slots=True, kw_only=True)
class Discount:
    """What a discount does.

    Attributes:
        price: what is left of the asked price, before tax [cent]
        off: what was taken off [cent]
        reach: which of the three numbers it has come down to
        over_cost: what is left over the expected cost; below zero for a loss [cent]
        over_lowest: what is left over the least that can be accepted [cent]
        message: the same as a sentence
    """

    price: Cents
    off: Cents
    reach: Reach
    over_cost: Cents
    over_lowest: Cents
    message: str


def discount_of(asked: Cents, share: Number) -> Cents:
    """A discount given as a share of the asked price.

    Rule: asked * share

    Args:
        asked: the price before tax [cent]
        share: the part taken off [dimensionless]

    Returns:
        The amount taken off [cent]

    Source: common practice.
    """
    return times(asked, share)


def reach_of(reached: Cents, asked: Cents, lowest: Cents, cost: Cents) -> Reach:
    """Which of the three numbers a price has come down to; a price asked too low is told so as well.

    Args:
        reached: the price after the discount, before tax [cent]
        asked: what was asked [cent]
        lowest: the least that can be accepted [cent]
        cost: what it takes if it goes as usual [cent]

    Returns:
        As asked, into the profit, into the risk, or below cost.

    Source: common practice.
    """
    if reached < cost:
        return Reach.LOSS
    if reached < lowest:
        return Reach.RISK
    return Reach.ASKED if reached >= asked else Reach.PROFIT


def discounted(held: Price, off: Cents, symbol: str = "$") -> Discount:
    """What a discount does to a price.

    Args:
        held: the price
        off: what is to be taken off, before tax [cent]
        symbol: what stands before money

    Returns:
        What is left and which of the three numbers it still reaches.

    Raises:
        ValueError: it is below zero, or more than the price.

    Source: common practice.
    """
    if not 0 <= off <= held.asked:
        raise ValueError(f"A discount is between 0 and the asked price of {show_money(held.asked, symbol)}.")
    reached = held.asked - off
    reach = reach_of(reached, held.asked, held.lowest, held.cost)
    return Discount(
        price=reached,
        off=off,
        reach=reach,
        over_cost=reached - held.cost,
        over_lowest=reached - held.lowest,
        message=sentence(held, reached, reach, symbol),
    )


def sentence(held: Price, reached: Cents, reach: Reach, symbol: str) -> str:
    """A discount as a sentence for the maker.

    Args:
        held: the price
        reached: what is left of it [cent]
        reach: which of the three numbers it has come down to
        symbol: what stands before money

    Returns:
        One sentence, with the number that it has passed.

    Source: common practice.
    """
    left, lowest, cost = (show_money(amount, symbol) for amount in (reached, held.lowest, held.cost))
    passed = show_money(abs(reached - held.cost), symbol)
    sentences = {
        Reach.ASKED: f"{left} is the price as asked.",
        Reach.PROFIT: f"{left} gives away profit and mark-up only; the lowest acceptable price is {lowest}.",
        Reach.RISK: f"{left} is below the lowest acceptable price of {lowest}; a bad run would not be paid.",
        Reach.LOSS: f"{left} is {passed} below the expected cost of {cost}; the maker's own pay makes it up.",
    }
    return sentences[reach]
