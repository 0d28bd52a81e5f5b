"""Panels and single parts planned together: each strip as wide as the board in hand allows."""

from collections import Counter
from collections.abc import Sequence

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.problem import Piece
from casewright.cutting.panels.problem import Panel as AskedPanel
from casewright.cutting.panels.problem import PanelAnswer, PanelProblem, StripRule
from casewright.cutting.panels.solving import plan_panels
from casewright.cutting.plans.blanks import Blank, strip_blanks
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import Bed, Filled, Grid, Lies, grid_for, lies_at
from casewright.cutting.plans.phases import Outcome, by_wish, shut_for
from casewright.cutting.plans.strips import Panel
from casewright.cutting.plans.wanted import Wanted
from casewright.measure.units import Ticks


def glued_together(start: Desk, asked: Wanted, budget: Budget) -> Outcome | None:
    """A layout in which the strips of panels and all single parts are chosen together.

    Args:
        start: what lies already; it is not changed
        asked: what is laid out
        budget: time and steps

    Returns:
        The layout; None where the parts ask for what this engine does not know: a number of strips, several
        rules for strips, one log, a thicker board, or that nothing is glued.

    Source: the engine for panels.
    """
    desk = start.copy(None)
    rules = {(panel.narrowest, panel.widest, panel.jointing, panel.strips) for panel in asked.panels}
    blanks = [*asked.blanks, *(panel.blank for panel in asked.panels)]
    wishes = by_wish(blanks, desk.lot)
    if len(rules) != 1 or any(wish.one_tree or wish.thinnest for wish in wishes):
        return None
    narrowest, widest, jointing, strips = next(iter(rules))
    if strips or widest - jointing < 2 * (narrowest - jointing):
        return None
    pickiest = [wish for wish in wishes if not wish.takes_sap] + [
        wish for wish in wishes if not wish.takes_back
    ]

    least = min(min(blank.length, blank.width) for blank in blanks)
    beds = list(
        desk.beds(
            lambda ground: True,
            lambda ground: tuple(spot for wish in [*wishes, *pickiest] for spot in shut_for(ground, wish)),
            min(least, narrowest),
        )
    )
    if not beds:
        return None
    sizes = [
        jointing + desk.kerf,
        *(blank.length + desk.kerf for blank in blanks),
        *(blank.width + desk.kerf for blank in asked.blanks),
        *(panel.blank.width for panel in asked.panels),
    ]
    grid = grid_for(sizes, beds, desk.kerf)
    beds = [bed for bed in beds if min(bed.spot.length, bed.spot.width) + desk.kerf >= grid.step]
    singles: dict[tuple[int, int], list[Blank]] = {}
    for blank in asked.blanks:
        singles.setdefault((blank.length, blank.width), []).append(blank)
    kinds = Counter(asked.panels)
    least, most = max(1, grid.up(narrowest - jointing)), (widest - jointing) // grid.step
    if most < 2 * least:  # so it may be in whole steps, though it was not before
        return None
    rule = StripRule(allowance=grid.up(jointing + desk.kerf), narrowest=least, widest=most)
    answer = plan_panels(
        PanelProblem(
            panels=tuple(
                AskedPanel(
                    width=grid.up(panel.blank.width),
                    length=grid.up(panel.blank.length + desk.kerf),
                    count=count,
                )
                for panel, count in kinds.items()
            ),
            pieces=tuple(
                Piece(width=grid.up(width + desk.kerf), length=grid.up(length + desk.kerf), count=len(held))
                for (length, width), held in singles.items()
            ),
            stocks=tuple(grid.stock(bed) for bed in beds),
            strips=rule,
        ),
        budget,
    )
    filled = _filled(answer, beds, list(kinds), list(singles.values()), grid)
    desk.keep(filled)
    is_whole = grid.is_exact and len(wishes) == 1 and not start.begun
    return Outcome(
        desk=desk,
        unplaced=filled.unplaced,
        broken=(),
        bound=filled.bound if is_whole else 0,
        proven=filled.proven and is_whole,
    )


def _filled(
    answer: PanelAnswer,
    beds: Sequence[Bed],
    panels: Sequence[Panel],
    singles: Sequence[list[Blank]],
    grid: Grid,
) -> Filled:
    """The engine's answer on the boards: strips of whole panels only."""
    waiting = [list(held) for held in singles]
    whole = {(each.panel, each.copy): len(each.strips) for each in answer.panels}
    nets: dict[tuple[int, int], list[Ticks]] = {key: [] for key in whole}
    for board in answer.boards:
        for laid in board.laid:
            if laid.panel is not None and (laid.panel, laid.copy) in nets:
                sawn = laid.net * grid.step + panels[laid.panel].jointing
                nets[laid.panel, laid.copy].append(sawn)
    strips = {
        (panel, copy): list(
            [panels[panel].blank]
            if len(widths) == 1
            else strip_blanks(panels[panel].blank, widths, panel=copy + 1)
        )
        for (panel, copy), widths in nets.items()
    }
    filled = []
    for board in answer.boards:
        bed = beds[board.stock]
        lies: list[Lies] = []
        for laid in board.laid:
            at = laid.rect.x * grid.step, laid.rect.y * grid.step
            if laid.piece is not None:
                lies.append(lies_at(waiting[laid.piece].pop(), bed, at))
            elif laid.panel is not None and (laid.panel, laid.copy) in strips:
                lies.append(lies_at(strips[laid.panel, laid.copy].pop(0), bed, at))
        if lies:
            filled.append((bed, tuple(lies)))
    lacking = [blank for held in waiting for blank in held]
    for place, number in enumerate(answer.unplaced_panels):
        lacking += [panels[place].blank] * number
    return Filled(beds=tuple(filled), unplaced=tuple(lacking), bound=answer.bound, proven=answer.proven)
