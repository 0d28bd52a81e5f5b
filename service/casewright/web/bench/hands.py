"""Who taps: a person of the shop, at a moment, with a mark that makes the tap count once."""

from casewright.shop.bench import Hand
from casewright.web.frame.pages import new_mark
from casewright.web.frame.visits import Visit


def hand_of(visit: Visit) -> Hand:
    """Who taps; a tap without a mark of its own gets one."""
    return Hand(
        mark=visit.typed.once[:40] or new_mark(),
        now=visit.now,
        who=visit.who,
        person_id=visit.person.id,
        is_maker=visit.sees_prices,
    )
