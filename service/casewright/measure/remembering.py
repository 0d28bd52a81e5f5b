"""Results that are kept: a unit is worked out anew at every pause in typing, and much of it is alike."""

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import TypeVar

from casewright.measure.ledger import UNKEPT, Ledger
from casewright.measure.units import Count

Asked = TypeVar("Asked")
Answer = TypeVar("Answer")

KEPT = 256
"""So many results of one function are kept, a few kilobytes each: those of a few units. More would cost in
every pass of the garbage collector what they save."""


def remembered(work: Callable[[Asked, Ledger], Answer]) -> Callable[..., Answer]:
    """A function whose result is kept for the same question, and whose working waits until somebody reads it.

    An edit leaves most boards of a unit as they were, and many are alike; their joints need not be worked out
    again. A question is the same when all its values are. The ledger owes the working of each, and makes it
    from that very question, with the figures that its values come from; so the numbers of a result do not
    themselves say which figures they are.

    Args:
        work: from a frozen dataclass and a ledger to a frozen result; nothing else goes into it

    Returns:
        The same function. Without a ledger that keeps the working, or with one that has no prefix to owe it
        under, it works everything out each time.

    Source: common practice.
    """

    @lru_cache(maxsize=KEPT)
    def kept(asked: Asked) -> Answer:
        return work(asked, UNKEPT)

    @wraps(work)
    def answer(asked: Asked, ledger: Ledger = UNKEPT) -> Answer:
        if not ledger.named(""):
            return work(asked, ledger)
        found = kept(asked)
        ledger.owe(work, asked)
        return found

    return answer


def of_the_same(most: Count) -> Callable[[Callable[[Asked], Answer]], Callable[[Asked], Answer]]:
    """A function whose result is kept for as long as it is asked of the very same object.

    Args:
        most: so many objects are kept alive for it at a time

    Returns:
        What makes such a function of one from a frozen object to a frozen result; nothing else goes into it.

    Source: common practice.
    """

    def made(work: Callable[[Asked], Answer]) -> Callable[[Asked], Answer]:
        # Each result lies beside its object, which thereby stays alive, so that no other gets its identity.
        kept: dict[int, tuple[Asked, Answer]] = {}

        @wraps(work)
        def answer(asked: Asked) -> Answer:
            held = kept.get(id(asked))
            if held is None:
                if len(kept) >= most:
                    kept.clear()
                held = kept[id(asked)] = (asked, work(asked))
            return held[1]

        return answer

    return made
