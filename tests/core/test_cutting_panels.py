"""Glued-up panels planned from boards: every plan is checked by code that knows nothing of the planner."""

import random
import time
from itertools import combinations

import pytest

from casewright.cutting.budget import Budget, Progress
from casewright.cutting.guillotine.problem import Piece, Rect, Stock
from casewright.cutting.panels.bounds import least_cost
from casewright.cutting.panels.clear import clear_across, clear_along
from casewright.cutting.panels.gluing import put_together
from casewright.cutting.panels.kernels import section_net, strip_net, takes
from casewright.cutting.panels.problem import Panel, PanelAnswer, PanelProblem, StripRule
from casewright.cutting.panels.solving import plan_panels
from panelwork import equal_strips, random_job, wrong_with


def planned(problem: PanelProblem, steps: int = 2, seed: int = 1) -> PanelAnswer:
    """A plan after so many rounds, however busy the machine is."""
    return plan_panels(problem, Budget(now=time.perf_counter, steps=steps, seed=seed))


@pytest.mark.parametrize("seed", range(12))
def test_plans_hold(seed: int) -> None:
    problem = random_job(seed, panels=3 + seed, pieces=seed % 4, defects=seed % 3)
    answer = planned(problem)
    assert wrong_with(problem, answer) == []
    assert not any(answer.unplaced_panels)
    assert not any(answer.unplaced_pieces)
    assert answer.bound <= answer.cost


def test_same_seed_same_plan() -> None:
    problem = random_job(3, panels=6, pieces=2)
    one, other = planned(problem, seed=5), planned(problem, seed=5)
    assert (one.cost, one.boards, one.panels) == (other.cost, other.boards, other.panels)


def test_planned_together_takes_less_than_equal_strips() -> None:
    """Over a few small jobs; the bench measures forty."""
    together = equal = 0
    for seed in range(6):
        problem = random_job(seed, panels=6)
        together += planned(problem, steps=4).cost
        equal += planned(equal_strips(problem), steps=4).cost
    assert together < equal


def test_one_board_that_just_makes_the_panel() -> None:
    """Four strips of 5 net and 1 for saw and jointing each fill a board of 24 to the last step."""
    rule = StripRule(allowance=1, narrowest=2, widest=5)
    boards = (Stock(width=24, length=100, cost=7, limit=1), Stock(width=60, length=100, cost=9))
    problem = PanelProblem(panels=(Panel(width=20, length=100),), pieces=(), stocks=boards, strips=rule)
    answer = planned(problem)
    assert wrong_with(problem, answer) == []
    assert (answer.cost, answer.bound, answer.proven) == (7, 7, True)
    assert answer.panels[0].strips == (5, 5, 5, 5)


def test_narrower_boards_make_it_together() -> None:
    """Fixed strips of 10 fit neither board; 12 and 8 net do."""
    rule = StripRule(allowance=2, narrowest=4, widest=14)
    boards = (Stock(width=14, length=50, cost=14, limit=1), Stock(width=10, length=50, cost=10, limit=1))
    problem = PanelProblem(panels=(Panel(width=20, length=50),), pieces=(), stocks=boards, strips=rule)
    answer = planned(problem)
    assert sorted(answer.panels[0].strips) == [8, 12]
    assert answer.proven
    assert planned(equal_strips(problem)).unplaced_pieces == (1,)


def test_too_few_boards_say_what_is_left() -> None:
    rule = StripRule(allowance=2, narrowest=4, widest=14)
    problem = PanelProblem(
        panels=(Panel(width=20, length=50, count=3),),
        pieces=(Piece(width=90, length=10),),
        stocks=(Stock(width=24, length=50, cost=1, limit=1),),
        strips=rule,
    )
    answer = planned(problem)
    assert wrong_with(problem, answer) == []
    assert (answer.unplaced_panels, answer.unplaced_pieces, answer.proven) == ((2,), (1,), False)


def test_nothing_asked_costs_nothing() -> None:
    problem = PanelProblem(panels=(), pieces=(), stocks=(Stock(width=5, length=5, cost=3),), strips=RULE)
    answer = planned(problem)
    assert (answer.cost, answer.boards, answer.proven) == (0, (), True)


RULE = StripRule(allowance=1, narrowest=2, widest=6)


@pytest.mark.parametrize("seed", range(200))
def test_bound_is_never_above_the_optimum(seed: int) -> None:
    """Tiny jobs whose least cost is found by trying every set of boards.

    Strips here are as long as the boards, so a board makes strips side by side and nothing else.
    """
    draw = random.Random(seed)  # noqa: S311 - the same job on every run
    widths = [draw.randint(3, 14) for _ in range(draw.randint(2, 4))]
    costs = [draw.randint(1, 20) for _ in widths]
    panel = draw.randint(3, 16)
    problem = PanelProblem(
        panels=(Panel(width=panel, length=10),),
        pieces=(),
        stocks=tuple(
            Stock(width=width, length=10, cost=cost, limit=1)
            for width, cost in zip(widths, costs, strict=True)
        ),
        strips=RULE,
    )
    made = [_most_net(width) for width in widths]
    best = min(
        (
            sum(costs[board] for board in some)
            for size in range(1, len(widths) + 1)
            for some in combinations(range(len(widths)), size)
            if sum(made[board] for board in some) >= panel
        ),
        default=None,
    )
    if best is not None:
        assert least_cost(problem) <= best
        answer = planned(problem, steps=1)
        assert wrong_with(problem, answer) == []
        if not any(answer.unplaced_panels):
            assert answer.cost >= best


def _most_net(width: int) -> int:
    """The greatest net width of strips from a board, by trying every number of them."""
    return max(
        min(width - count * RULE.allowance, count * RULE.widest)
        if width - count * RULE.allowance >= count * RULE.narrowest
        else 0
        for count in range(width + 1)
    )


@pytest.mark.parametrize(
    ("room", "lacking", "net"),
    [
        (8, 20, 6),  # the widest strip
        (5, 20, 4),  # what the room gives
        (2, 20, 0),  # not even the narrowest
        (9, 7, 5),  # what would be left is narrower than any strip, so this one gives some away
        (9, 1, 2),  # the last one is no narrower than a strip may be
        (9, 4, 4),  # what completes the panel
    ],
)
def test_next_strip(room: int, lacking: int, net: int) -> None:
    assert strip_net(room, lacking, (1, 2, 6)) == net


@pytest.mark.parametrize(
    ("room", "lacking", "even", "net"),
    [
        (100, 300, False, 68),  # the widest would leave 24, and the narrowest strip takes 28
        (100, 300, True, 46),  # two alike
        (152, 300, False, 72),  # the other half is another of 72
        (104, 300, False, 72),  # 28 are left, just a strip
        (100, 50, True, 50),  # all that the panel lacks
        (27, 300, False, 0),
    ],
)
def test_next_strip_of_a_section_leaves_room_for_another(
    room: int, lacking: int, even: bool, net: int
) -> None:
    """Strips of 24 to 72, each of which costs 4 more."""
    assert section_net(room, lacking, (4, 24, 72), even) == net


def test_what_a_panel_takes_counts_the_strips_that_it_needs() -> None:
    """145 wide needs three strips of at most 72, with one of 24 done two; 140 needs two anyway."""
    rule = 4, 24, 72
    assert [takes(width, rule) for width in (0, 72, 145, 121, 140, 116)] == [0, 76, 157, 129, 148, 124]


def test_clear_wood_round_a_knot() -> None:
    board = Stock(width=10, length=100, cost=1, forbidden=(Rect(x=40, y=3, length=5, width=2),))
    assert set(clear_across(board)) == {
        Rect(x=0, y=0, length=40, width=10),
        Rect(x=45, y=0, length=55, width=10),
        Rect(x=40, y=0, length=5, width=3),
        Rect(x=40, y=5, length=5, width=5),
    }
    assert set(clear_along(board)) == {
        Rect(x=0, y=0, length=100, width=3),
        Rect(x=0, y=5, length=100, width=5),
        Rect(x=0, y=3, length=40, width=2),
        Rect(x=45, y=3, length=55, width=2),
    }


def test_clear_wood_between_defects_that_overlap_and_reach_the_end() -> None:
    board = Stock(
        width=10,
        length=100,
        cost=1,
        forbidden=(
            Rect(x=90, y=0, length=10, width=10),
            Rect(x=10, y=0, length=20, width=4),
            Rect(x=20, y=2, length=20, width=4),
        ),
    )
    assert set(clear_across(board)) == {
        Rect(x=0, y=0, length=10, width=10),
        Rect(x=40, y=0, length=50, width=10),
        Rect(x=10, y=6, length=30, width=4),
    }


def test_glue_lines_keep_off_joints() -> None:
    """With the 4 first and the 6 last lines lie at 4 and 9, off the stretch from 5 to 8."""
    order, trimmed, clear = put_together([6, 5, 4], 15, [(5, 8), (10, 11)])
    assert clear
    assert trimmed == 0
    assert order == (4, 5, 6)


def test_glue_lines_move_with_what_is_trimmed() -> None:
    """Two strips of 6 for a panel of 10: trimmed all from one edge, the line lies at 4 or 6, else at 5."""
    order, trimmed, clear = put_together([6, 6], 10, [(5, 5)])
    assert (order, clear) == ((6, 6), True)
    assert trimmed in {0, 2}


def test_glue_line_that_cannot_be_clear_is_said() -> None:
    assert put_together([5, 5], 10, [(1, 9)]) == ((5, 5), 0, False)


def test_progress_is_told_and_a_stop_is_heeded() -> None:
    said: list[Progress] = []
    budget = Budget(now=time.perf_counter, steps=50, stop=lambda: bool(said), tell=said.append)
    problem = random_job(2, panels=5)
    answer = plan_panels(problem, budget)
    assert len(said) == 1
    assert said[0].cost == answer.cost
    assert wrong_with(problem, answer) == []


@pytest.mark.parametrize("widest", [3, 1])
def test_limits_that_leave_no_two_strips_are_refused(widest: int) -> None:
    with pytest.raises(ValueError, match="twice as wide"):
        StripRule(allowance=1, narrowest=2, widest=widest)


def test_a_panel_without_size_is_refused() -> None:
    with pytest.raises(ValueError, match="no panel"):
        Panel(width=0, length=4)
