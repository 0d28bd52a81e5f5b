"""Parts that were put somewhere by hand: they stay there."""

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.cutting.asked.parts_spec import CutPart, PlacedByHand, Saw
from casewright.cutting.plans.blanks import single
from casewright.cutting.plans.desk import Desk, Key
from casewright.cutting.plans.filling import Lies
from casewright.cutting.plans.sawing import CannotBeSawn
from casewright.cutting.plans.spots import Spot
from casewright.measure.lengths import to_ticks
from casewright.measure.saying import Words, say
from casewright.measure.units import TICKS_PER_INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class NotThere:
    """A part that cannot stay where it was put.

    Attributes:
        code: the part
        reason: why
    """

    code: str
    reason: Words


def put_by_hand(desk: Desk, saw: Saw) -> Iterator[NotThere]:
    """Puts every part where it was put by hand.

    Args:
        desk: the lot, nothing of it laid out yet
        saw: kerf and allowances

    Returns:
        A reason for each part that cannot lie there; it is not laid out elsewhere.

    Source: common practice.
    """
    for part in desk.lot.parts:
        for hand in part.placed:
            reason = _put(desk, part, hand, saw)
            if reason:
                yield NotThere(code=part.code, reason=reason)


def _put(desk: Desk, part: CutPart, hand: PlacedByHand, saw: Saw) -> Words:
    key: Key = (hand.on, hand.number)
    known = [ground for ground in desk.lot.grounds if ground.stock.code == hand.on]
    if not known:
        return say("{} has no room once its ends and edges are cut off", hand.on)
    ground = known[0]
    blank = single(part, saw, has_allowance=not desk.lot.is_sheets)
    along = blank.length, blank.width
    lies_across = hand.turned != ground.grain_across
    length, width = reversed(along) if lies_across else along
    spot = Spot(to_ticks(hand.from_end), to_ticks(hand.from_edge), length, width)
    if not ground.outer.holds(spot):
        return say(
            "put by hand at {} from the end and {} from the edge it reaches beyond {}, which is {} × {}",
            hand.from_end,
            hand.from_edge,
            hand.on,
            ground.outer.length / TICKS_PER_INCH,
            ground.outer.width / TICKS_PER_INCH,
        )
    others = desk.begun.get(key, [])
    for other in others:
        if spot.meets(other.spot, desk.kerf):
            return say(
                "put by hand on {} it leaves no {} of kerf to {}",
                hand.on,
                desk.kerf / TICKS_PER_INCH,
                other.blank.codes[0],
            )
    lies = Lies(blank=blank, spot=spot, turned=hand.turned, by_hand=True)
    try:
        desk.sawn(ground, [*others, lies])
    except CannotBeSawn:
        return say("put by hand on {} it lies so that no straight cut gets it out", hand.on)
    desk.begun.setdefault(key, []).append(lies)
    return ""
