"""How long a layout may be worked on, how it is told to stop, and what it says while it works.

The engines read no clock and draw no seed of their own: both are handed in here. A limit in steps makes an
answer that does not depend on how busy the machine is, which tests and a second look at the same job need.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, field

from casewright.measure.units import Count, Number, Seconds


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a layout has come.

    Attributes:
        cost: of the best layout so far, in the unit of the stock's costs [in its own unit]
        bound: below which no layout can cost, in the same unit [in its own unit]
        seconds: since the work began [s]
    """

    cost: Number
    bound: Number
    seconds: Seconds


def never() -> bool:
    """Nobody asks for a stop."""
    return False


def say_nothing(progress: Progress) -> None:
    """Nobody listens.

    Args:
        progress: what would have been said
    """


@dataclass(frozen=True, slots=True, kw_only=True)
class Budget:
    """The time and the steps that a layout may take; the time begins when the budget is made.

    Attributes:
        now: a clock that only goes forward, such as `time.monotonic`, or `time.process_time` where others
            share the machine [s]
        seconds: how long the work may take [s]
        steps: how many rounds of improvement may be made; each engine says what its round is [1]
        seed: the same seed, and an end by steps, give the same layout
        stop: asked between rounds; the best layout so far is the answer as soon as it is true
        tell: called whenever layout or bound became better
        began: what the clock said when the budget was made [s]
    """

    now: Callable[[], float]
    seconds: Seconds = math.inf
    steps: Count | None = None
    seed: int = 0
    stop: Callable[[], bool] = never
    tell: Callable[[Progress], None] = say_nothing
    began: Seconds = field(init=False)

    def __post_init__(self) -> None:
        """Note when the work began, and refuse limits that are none."""
        if math.isnan(self.seconds) or self.seconds < 0:
            raise ValueError(f"A layout takes no {self.seconds:g} seconds: give 0 or more.")
        if self.steps is not None and self.steps < 0:
            raise ValueError(f"A layout takes no {self.steps} steps: give 0 or more.")
        object.__setattr__(self, "began", self.now())

    def spent(self) -> Seconds:
        """How long the work has taken [s]."""
        return self.now() - self.began

    def left(self) -> Seconds:
        """How long it may still take, nothing once a stop is asked for [s]."""
        return 0.0 if self.stop() else max(0.0, self.seconds - self.spent())

    def allows(self, step: Count) -> bool:
        """May this round of improvement still be made?

        Args:
            step: how many were made before it [1]

        Returns:
            Whether there are steps and time left, and nobody asked for a stop.
        """
        return (self.steps is None or step < self.steps) and self.left() > 0
