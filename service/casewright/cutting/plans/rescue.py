"""What becomes of blanks for which there was no room: sets part by part, panels whole or not at all."""

from collections import Counter
from collections.abc import Iterator

from casewright.cutting.asked.cut_file import CutFile
from casewright.cutting.budget import Budget
from casewright.cutting.plans.blanks import Blank, Broken, single
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.filling import Lies
from casewright.cutting.plans.lots import Lot
from casewright.cutting.plans.phases import Outcome, lay_out
from casewright.cutting.plans.strips import Panel
from casewright.cutting.plans.wanted import Wanted
from casewright.measure.units import Count

NO_ROOM = "no board had room for it in one piece"


def rescued(outcome: Outcome, asked: Wanted, file: CutFile, stages: Count, budget: Budget) -> Outcome:
    """A layout in which nothing is half done.

    A set or pair without room in one piece is laid out part by part, wherever there still is some. Of a panel
    that lacks a strip the others are taken away again.

    Args:
        outcome: the layout as the engine left it
        asked: what was to be laid out
        file: the cut file
        stages: how often the direction may change, 2 or 3 [dimensionless]
        budget: time and steps

    Returns:
        The layout.

    Source: common practice: a panel without one of its strips is none.
    """
    if not any(len(blank.codes) > 1 or blank.one_tree or blank.inside[0].strip for blank in outcome.unplaced):
        return outcome
    desk = outcome.desk.copy(outcome.desk.way)
    lot = desk.lot
    torn = Counter(blank.inside[0].code for blank in outcome.unplaced if blank.inside[0].strip)
    lacking = [blank for blank in outcome.unplaced if not blank.inside[0].strip]
    for code in torn:
        lacking += [panel.blank for panel in _panels(asked, code)[_keep_whole(desk, code) :]]
    freed: list[Blank] = []
    broken = list(outcome.broken)
    for blank in lacking:
        is_whole = len(blank.codes) > 1 or bool(blank.one_tree)
        parts = list(_by_themselves(blank, lot, file)) if is_whole else []
        freed += parts or [blank]
        if name := blank.matched or blank.one_tree:
            broken.append(Broken(name=name, way="", reason=NO_ROOM))
    glued = {panel.blank for panel in asked.panels}
    panels = [blank for blank in freed if blank in glued]
    others = [blank for blank in freed if blank not in glued]
    again = lay_out(desk, others, desk.way, stages, budget, as_pickiest=False)
    return Outcome(
        desk=again.desk,
        unplaced=(*again.unplaced, *panels),
        broken=tuple(broken),
        bound=0,
        proven=False,
    )


def _panels(asked: Wanted, code: str) -> list[Panel]:
    """The panels of a part, or of a set that is glued up as one."""
    return [
        panel
        for panel in asked.panels
        if code == (panel.blank.matched if len(panel.blank.inside) > 1 else panel.blank.inside[0].code)
    ]


def _keep_whole(desk: Desk, code: str) -> int:
    """Takes away every strip of a panel that is not whole; how many panels are left."""
    strips: dict[int, list[tuple[tuple[str, int], Lies]]] = {}
    total = 0
    for key, lies in desk.begun.items():
        for each in lies:
            inside = each.blank.inside[0]
            if inside.code == code and inside.strip:
                strips.setdefault(inside.strip, []).append((key, each))
                total = inside.strips
    whole = min((len(strips.get(number, ())) for number in range(1, total + 1)), default=0)
    for held in strips.values():
        for key, each in held[whole:]:
            desk.begun[key].remove(each)
            if not desk.begun[key]:
                del desk.begun[key]
    return whole


def _by_themselves(blank: Blank, lot: Lot, file: CutFile) -> Iterator[Blank]:
    """The parts of a blank, each by itself."""
    for code in blank.codes:
        if code in lot.by_code:
            yield single(lot.by_code[code], file.saw, has_allowance=not lot.is_sheets)
