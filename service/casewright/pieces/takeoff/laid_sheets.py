"""How many sheets some parts take, laid out together."""

import math
from collections import Counter

from casewright.cutting.budget import Budget
from casewright.cutting.guillotine.problem import Answer, Piece, Problem, Stock
from casewright.cutting.guillotine.solving import solve
from casewright.measure.units import Count, Inches
from casewright.pieces.takeoff.sheets_asked import SheetsAsked, SheetsLaid

STEP = 64
"""Parts of an inch in which sheets are laid out; a part is rounded up, a sheet down."""
ROUNDS = 120
DEAR = 1_000
"""What a new sheet costs for its area beside the rack, so that what is on hand is used first."""


def lay_sheets(asked: SheetsAsked) -> SheetsLaid:
    """The new sheets that parts take, in cuts from edge to edge, with what is on the rack used first.

    Args:
        asked: the parts, the rack, the sheet and the saw

    Returns:
        How many sheets, and which pieces of the rack are used.

    Source: computed by the engine for sheets, in three stages of cuts; kerf and trim are the shop's.
    """
    stocks = []
    for piece in asked.on_hand:
        trim = 0.0 if piece.is_offcut else 2 * asked.trim
        if min(piece.width, piece.length) > trim:
            stocks.append((piece.id, _stock(asked, piece.width - trim, piece.length - trim, 1, 1)))
    new = len(stocks)
    whole = _stock(asked, asked.width - 2 * asked.trim, asked.length - 2 * asked.trim, DEAR, None)
    problem = Problem(
        pieces=tuple(
            Piece(
                width=_up(each.width + asked.kerf),
                length=_up(each.length + asked.kerf),
                count=each.count,
                may_turn=each.may_turn,
            )
            for each in asked.parts
        ),
        stocks=(*(stock for _, stock in stocks), whole),
    )
    # By steps, so that the same jobs take the same sheets on any machine.
    answer = solve(problem, Budget(now=lambda: 0.0, steps=ROUNDS))
    on_hand = sum(stock.cost for _, stock in stocks)
    return SheetsLaid(
        sheets=sum(sheet.copies for sheet in answer.sheets if sheet.stock == new),
        fewest=max(0, math.ceil((answer.bound - on_hand) / whole.cost)),
        taken=tuple(
            (stocks[sheet.stock][0], _jobs_on(asked, answer, place))
            for place, sheet in enumerate(answer.sheets)
            if sheet.stock != new
        ),
        too_large=sum(answer.unplaced),
    )


def _jobs_on(asked: SheetsAsked, answer: Answer, place: int) -> tuple[str, ...]:
    """The jobs whose parts lie on a sheet, the one with most of its area first."""
    areas: Counter[str] = Counter()
    for placed in answer.sheets[place].placed:
        areas[asked.parts[placed.piece].job] += placed.width * placed.length
    return tuple(job for job, _ in sorted(areas.items(), key=lambda each: (-each[1], each[0])))


def _stock(asked: SheetsAsked, width: Inches, length: Inches, dear: Count, limit: Count | None) -> Stock:
    across, along = _down(width + asked.kerf), _down(length + asked.kerf)
    return Stock(width=across, length=along, cost=across * along * dear // STEP, limit=limit)


def _up(size: Inches) -> Count:
    return math.ceil(size * STEP - 1e-6)


def _down(size: Inches) -> Count:
    return math.floor(size * STEP + 1e-6)
