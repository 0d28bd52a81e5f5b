"""One way out, tried: parts that found no place are laid out anew on what is free and what is untouched."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.asked.parts_spec import CutPart
from casewright.cutting.budget import Budget
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.making_up import made_up
from casewright.cutting.plans.phases import lay_out
from casewright.cutting.plans.rescue import rescued
from casewright.cutting.plans.wanted import wanted
from casewright.cutting.plans.worths import Worths
from casewright.measure.units import Count

ANEW = "\N{PRIME}"
"""Behind the mark of a part that is laid out anew: strips of its fellows lie on the boards already."""

STEPS = 2
"""So many rounds of improvement has each trial: for few parts the first layout is all but the best."""
PATIENCE = 0.5
"""A trial takes no longer, however much is tried [s]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Where parts may be laid out anew.

    Attributes:
        file: the cut file
        lot: boards or sheets, and what they are
        desk: what lies on them already
        stages: how often the direction of cuts may change [dimensionless]
        worths: what they are worth
        budget: time and steps
    """

    file: CutFile
    lot: Lot
    desk: Desk
    stages: Count
    worths: Worths
    budget: Budget


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What came of it.

    Attributes:
        placed: the parts that find a place, each as often as it does
        begun: the boards and sheets that are begun for them, with their names
    """

    placed: tuple[str, ...]
    begun: tuple[tuple[str, Ground], ...]

    def cost(self, worths: Worths) -> Count:
        """What is begun for it counts.

        Args:
            worths: what boards are worth

        Returns:
            The sum [dimensionless]

        Source: arithmetic.
        """
        return sum(worths.of(ground.stock) for _, ground in self.begun)


def tried(table: Table, parts: Sequence[CutPart], more: Sequence[Ground]) -> Found:
    """What comes of laying parts out anew.

    Args:
        table: where
        parts: the parts, as they are asked for now and as often as they have no place
        more: boards or sheets besides those of the table

    Returns:
        Which of them find a place, and on what.

    Source: the engines of this room.
    """
    # By steps, so that what a busy machine proposes is what a quiet one does.
    own = table.budget.steps
    budget = replace(table.budget, seconds=PATIENCE, steps=STEPS if own is None else min(STEPS, own))
    grounds = (*table.lot.grounds, *more)
    anew = tuple(part.model_copy(update={"code": part.code + ANEW, "placed": ()}) for part in parts)
    lot = replace(
        table.lot,
        parts=anew,
        sets=(),
        grounds=grounds,
        costs={ground.stock.code: table.worths.of(ground.stock) for ground in grounds},
    )
    begun = {key: list(lies) for key, lies in table.desk.begun.items()}
    desk = Desk(lot, table.desk.kerf, table.desk.offcuts, None, begun)
    asked = wanted(lot, table.file.saw)
    blanks = [*asked.blanks, *made_up(desk, asked, table.stages, budget)]
    first = lay_out(desk, blanks, None, table.stages, budget, as_pickiest=False)
    made = rescued(first, asked, table.file, table.stages, budget)
    lacking = Counter(code for blank in made.unplaced for code in blank.codes)
    placed = [part.code for part in parts for _ in range(part.count - lacking[part.code + ANEW])]
    return Found(
        placed=tuple(placed),
        begun=tuple(
            (code if (ground := made.desk.ground(code)).limit == 1 else f"{code} no. {number}", ground)
            for code, number in made.desk.begun
            if (code, number) not in table.desk.begun
        ),
    )
