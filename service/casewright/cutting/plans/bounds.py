"""Below which no layout costs, however it is made: whole boards that have the area that the parts need."""

import math
from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

import highspy
import numpy as np

from casewright.cutting.plans.blanks import Blank
from casewright.cutting.plans.desk import Desk
from casewright.cutting.plans.ground import Ground
from casewright.cutting.plans.strips import Panel
from casewright.cutting.plans.wanted import fits
from casewright.measure.units import Count, Ticks

SECONDS = 0.3
TOLERANCE = 1e-6
MOST_STEPS = 60_000


def least_cost(
    blanks: Sequence[Blank],
    panels: Sequence[Blank],
    grounds: Sequence[Ground],
    costs: Mapping[str, Count],
    begun: Mapping[str, Count],
    kerf: Ticks,
) -> Count:
    """Below which no layout costs.

    Rule: whole boards at the least cost that give the area of all blanks together, and of those blanks that
    fit on some of the boards alone; a kerf is reckoned to each blank and to each board, and a board gives no
    more than blanks end to end, or side by side, can take of it

    Args:
        blanks: what is laid out
        panels: what may be glued up, each in one piece and without any jointing: its strips fit anywhere
        grounds: the boards or sheets
        costs: what each of them counts, by its mark [dimensionless]
        begun: how many of each are cut in any case, since something was put there by hand [dimensionless]
        kerf: what a cut takes [tick]

    Returns:
        The bound, in the measure of the costs [dimensionless]

    Source: arithmetic; a covering knapsack, solved or bounded by HiGHS.
    """
    areas = _usable(blanks, panels, grounds, kerf)
    needs = _needs(blanks, panels, grounds, kerf)
    if not needs or not grounds:
        return sum(costs[code] * number for code, number in begun.items())
    model = highspy.Highs()  # type: ignore[no-untyped-call]
    model.setOptionValue("output_flag", False)
    model.setOptionValue("time_limit", SECONDS)
    for ground in grounds:
        least = float(begun.get(ground.stock.code, 0))
        model.addVar(least, highspy.kHighsInf if ground.limit is None else float(max(ground.limit, least)))
    places = np.arange(len(grounds), dtype=np.int32)
    model.changeColsCost(
        len(grounds), places, np.array([float(costs[ground.stock.code]) for ground in grounds])
    )
    model.changeColsIntegrality(len(grounds), places, np.full(len(grounds), highspy.HighsVarType.kInteger))
    for fitting, need in needs.items():
        some = np.array(sorted(fitting), dtype=np.int32)
        shares = np.array([areas[place] / need for place in some])
        model.addRow(1.0 - TOLERANCE, highspy.kHighsInf, len(some), some, shares)
    model.run()
    bound = model.getInfo().mip_dual_bound
    if not math.isfinite(bound):
        return 0
    # Whatever is bought, it costs a whole number of the costs' common measure.
    measure = math.gcd(*(costs[ground.stock.code] for ground in grounds))
    return max(0, math.ceil(bound * (1 - TOLERANCE) / measure - TOLERANCE) * measure)


def what_lies(desk: Desk, panels: Sequence[Panel]) -> tuple[list[Blank], list[Blank]]:
    """What has a place, of which a bound can speak where something else has none.

    Args:
        desk: what lies, and on what
        panels: what may be glued up

    Returns:
        The blanks in one piece, and the panels, each in one piece. What was put by hand is left out; of parts
        that could come two from one thickness every other one is, for so they might be laid out.

    Source: a layout of less is no dearer.
    """
    by_code = desk.lot.by_code
    lying = [each.blank for lies in desk.begun.values() for each in lies if not each.by_hand]
    glued = Counter(blank.inside[0].code for blank in lying if blank.inside[0].strip == 1)
    whole: list[Blank] = []
    for panel in panels:
        code = panel.blank.matched if len(panel.blank.inside) > 1 else panel.blank.inside[0].code
        if glued[code]:
            glued[code] -= 1
            whole.append(panel.blank)
    pairs = {
        code for each in desk.lot.sets if each.way in ("book", "slip") for row in each.rows for code in row
    }
    blanks: list[Blank] = []
    halves: Counter[tuple[Ticks, Ticks]] = Counter()
    for blank in lying:
        if blank.inside[0].strip:
            continue
        code = blank.inside[0].code
        if len(blank.codes) == 1 and (code in pairs or (code in by_code and by_code[code].resaw)):
            halves[blank.length, blank.width] += 1
            if halves[blank.length, blank.width] % 2 == 0:
                continue
        blanks.append(blank)
    return blanks, whole


def _usable(
    blanks: Sequence[Blank], panels: Sequence[Blank], grounds: Sequence[Ground], kerf: Ticks
) -> list[int]:
    """How much of each board blanks can take: along any line across it no more than sizes add up to."""
    along = {blank.length + kerf for blank in (*blanks, *panels)}
    across = {blank.width + kerf for blank in blanks}
    turns = any(blank.may_turn for blank in blanks) or not all(ground.has_grain for ground in grounds)
    if turns:
        along = across = along | across
    spots = [ground.usable.flipped() if ground.grain_across else ground.usable for ground in grounds]
    lengths = _reach(along, [spot.length + kerf for spot in spots])
    widths = [spot.width + kerf for spot in spots]
    # Strips of panels are as wide as may be: then every width can be reached.
    reached = widths if panels else _reach(across, widths)
    return [
        min(length * width, (spot.length + kerf) * most)
        for spot, length, width, most in zip(spots, lengths, widths, reached, strict=True)
    ]


def _reach(sizes: Collection[Ticks], rooms: Sequence[Ticks]) -> list[Ticks]:
    """For each room the greatest sum of sizes within it; the room itself where sums are too fine."""
    step = math.gcd(*sizes)
    most = max(rooms, default=0)
    if not step or most // step > MOST_STEPS:
        return list(rooms)
    sums, mask = 1, (1 << (most // step + 1)) - 1
    for size in sizes:
        shift = size // step
        while shift <= most // step:  # each round doubles how often the size may be in a sum
            sums |= (sums << shift) & mask
            shift *= 2
    return [((sums & ((1 << (room // step + 1)) - 1)).bit_length() - 1) * step for room in rooms]


def _needs(
    blanks: Sequence[Blank], panels: Sequence[Blank], grounds: Sequence[Ground], kerf: Ticks
) -> dict[frozenset[int], int]:
    """The area that is needed of all boards, and of those on which alone some of the blanks fit."""
    everywhere = frozenset(range(len(grounds)))
    kinds: dict[tuple[int, int, bool], frozenset[int]] = {}
    areas: Counter[frozenset[int]] = Counter()
    for blank in blanks:
        kind = (blank.length, blank.width, blank.may_turn)
        if kind not in kinds:
            # Two that are meant to come from one thickness may still be sawn singly from a thinner board.
            flat = replace(blank, thickness=0)
            kinds[kind] = frozenset(place for place in everywhere if fits(flat, grounds[place])) or everywhere
        areas[kinds[kind]] += (blank.length + kerf) * (blank.width + kerf)
    areas[everywhere] += sum((panel.length + kerf) * (panel.width + kerf) for panel in panels)
    return {
        some: need
        for some in areas
        if (need := sum(area for fitting, area in areas.items() if fitting <= some))
    }
