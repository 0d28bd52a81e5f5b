"""Time, steps and stops of the work on a layout."""

import math

import pytest

from casewright.cutting.budget import Budget, Progress


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.time = 100.0

    def __call__(self) -> float:
        return self.time


def test_the_time_begins_when_the_budget_is_made():
    clock = Clock()
    budget = Budget(now=clock, seconds=2)

    clock.time = 100.5

    assert (budget.spent(), budget.left()) == (0.5, 1.5)


def test_no_time_is_left_after_the_end():
    clock = Clock()
    budget = Budget(now=clock, seconds=2)

    clock.time = 103

    assert budget.left() == 0
    assert not budget.allows(0)


def test_a_stop_leaves_no_time():
    asked = [False]
    budget = Budget(now=Clock(), seconds=2, stop=lambda: asked[0])
    before = budget.left()

    asked[0] = True

    assert (before, budget.left(), budget.allows(0)) == (2, 0, False)


def test_steps_end_the_work_whatever_the_clock_says():
    budget = Budget(now=Clock(), steps=3)

    assert [budget.allows(step) for step in range(5)] == [True, True, True, False, False]
    assert budget.left() == math.inf


@pytest.mark.parametrize(
    ("limits", "words"),
    [
        ({"seconds": -1}, "no -1 seconds"),
        ({"seconds": math.nan}, "no nan seconds"),
        ({"steps": -1}, "no -1 st"),
    ],
)
def test_limits_below_nothing_are_refused(limits, words):
    with pytest.raises(ValueError, match=words):
        Budget(now=Clock(), **limits)


def test_what_is_told_reaches_who_listens():
    heard = []
    budget = Budget(now=Clock(), tell=heard.append)

    budget.tell(Progress(cost=12, bound=11, seconds=0.2))

    assert heard == [Progress(cost=12, bound=11, seconds=0.2)]
