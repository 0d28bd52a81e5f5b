"""Results that are kept with their working, since a unit is worked out anew at every pause in typing."""

from collections.abc import Callable
from dataclasses import fields
from functools import lru_cache, wraps
from operator import attrgetter
from typing import TypeVar

from casewright.measure.ledger import UNKEPT, Figure, Ledger, Unkept
from casewright.measure.units import Count

Asked = TypeVar("Asked")
Answer = TypeVar("Answer")

KEPT = 256
"""So many results of one function are kept, some ten kilobytes each: those of a few units. More would cost in
every pass of the garbage collector what they save."""


def remembered(work: Callable[[Asked, Ledger], Answer]) -> Callable[..., Answer]:
    """A function whose result and working are kept for the same question under the same name.

    An edit leaves most boards of a unit as they were; their joints need not be worked out again. A question
    is the same when all its values are, and when those that come from other figures come from the same ones:
    the working names them.

    Args:
        work: from a frozen dataclass and a ledger to a frozen result; nothing else goes into it

    Returns:
        The same function. Without a ledger that keeps the working it works everything out each time.

    Source: common practice.
    """

    @lru_cache(maxsize=KEPT)
    def kept(asked: Asked, origins: tuple[str | None, ...], under: str) -> tuple[Answer, Ledger]:
        ledger = Ledger()
        return work(asked, ledger.under(under) if under else ledger), ledger

    @wraps(work)
    def answer(asked: Asked, ledger: Ledger = UNKEPT) -> Answer:
        if isinstance(ledger, Unkept):
            return work(asked, ledger)
        found, working = kept(asked, _origins(asked), ledger.named("").removesuffix("."))
        ledger.repeat(working)
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


VALUES: dict[type, Callable[[object], tuple[object, ...]]] = {}
"""How the values of each kind of question are read."""


def _origins(asked: object) -> tuple[str | None, ...]:
    """For each value of a question, the figure that it comes from."""
    kind = type(asked)
    if kind not in VALUES:
        VALUES[kind] = attrgetter(*(field.name for field in fields(asked)), "__class__")  # type: ignore[arg-type]
    return tuple([value.name if type(value) is Figure else None for value in VALUES[kind](asked)])
