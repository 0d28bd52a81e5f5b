"""How panels are made up of strips: tried, one kind of panel after the other."""

from collections import Counter
from collections.abc import Iterator

from casewright.cutting.budget import Budget
from casewright.cutting.plans.blanks import Blank, strip_blanks
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import part_of
from casewright.cutting.plans.phases import lay_out
from casewright.cutting.plans.strips import Panel, choices
from casewright.cutting.plans.wanted import Wanted
from casewright.measure.units import Number, Ticks

STRIPS_SHARE = 0.4
"""Of the time, for choosing how panels are made up [1]."""
TRIALS = 12
"""So many trials of strips share that time."""


def made_up(desk: Desk, asked: Wanted, stages: int, budget: Budget) -> list[Blank]:
    """The strips of all panels: by trial, each kind of panel made up in the ways that it may be.

    Args:
        desk: what lies already
        asked: what is laid out
        stages: how often the direction may change, 2 or 3 [dimensionless]
        budget: time and steps

    Returns:
        A blank for each strip, and one for each panel that comes in one piece.

    Source: this program's own.
    """
    kinds: dict[Panel, int] = Counter(asked.panels)
    options = {kind: list(dict.fromkeys(choices(kind, desk.lot.grounds))) for kind in kinds}
    chosen = {kind: held[0] for kind, held in options.items()}
    if all(len(held) == 1 for held in options.values()):
        return list(_made_of(kinds, chosen))
    own = part_of(budget, budget.left() * STRIPS_SHARE)
    time = own.left() / TRIALS

    def tried(choice: dict[Panel, tuple[Ticks, ...]]) -> tuple[Number, ...]:
        blanks = [*asked.blanks, *_made_of(kinds, choice)]
        some = part_of(own, time, quiet=True)
        made = lay_out(desk, blanks, None, stages, some, as_pickiest=True)
        return made.lacking, made.desk.cost(), sum(map(len, choice.values()))

    best = tried(chosen)
    for trial in range(TRIALS if budget.steps is not None else 10_000):
        moves = [
            (kind, option) for kind, held in options.items() for option in held if option != chosen[kind]
        ]
        if trial >= len(moves) or own.left() <= 0:
            break
        kind, option = moves[trial]
        other = {**chosen, kind: option}
        if (found := tried(other)) < best:
            best, chosen = found, other
    return list(_made_of(kinds, chosen))


def _made_of(kinds: dict[Panel, int], chosen: dict[Panel, tuple[Ticks, ...]]) -> Iterator[Blank]:
    for kind, number in kinds.items():
        widths = chosen[kind]
        for _ in range(number):
            yield from [kind.blank] if len(widths) == 1 else strip_blanks(kind.blank, widths)
