"""Which of the joint cards that were printed are wrong now, and in what; the others hold."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from casewright.measure.saying import Words, say, strung
from casewright.papers.gauge_sheet import parts_text
from casewright.papers.joint_cards import JointCardsPaper
from casewright.papers.says import Facts, card_facts, divider_facts, dividers_of, other_facts, parts_of
from casewright.papers.settings_card import SettingsCard

LENGTHS_ONLY = "slope"
MOST_SAID = 3
FINE = 1e-4
"""From a 64th by more than this, in 64ths, a size is said in thousandths: that is how it is set."""
Now = Mapping[str, Facts]
"""What the cards would say now, by part and figure."""
Causes = Mapping[str, tuple[Words, ...]]
"""What was measured since, by drawer, such as `side A-R1-1-SL measured 23/64`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStanding:
    """Whether one printed card holds.

    Attributes:
        among: which cards it stands among: `card`, `other` or `dividers`
        place: its place among them
        title: what it is of
        drawers: the drawers that it serves
        wrong: why it is out of date, a sentence each; none where it holds
    """

    among: str
    place: int
    title: str
    drawers: tuple[str, ...]
    wrong: tuple[Words, ...]


def cards_standing(paper: JointCardsPaper, now: Now, causes: Causes) -> tuple[CardStanding, ...]:
    """Every card of a set, each with what is wrong on it now.

    Args:
        paper: the cards as they were printed
        now: what cards would say that were printed now
        causes: what was measured since

    Returns:
        The cards in their order, those of the dividers last.
    """
    return (
        *(
            CardStanding(
                among="card",
                place=place,
                title=card.title,
                drawers=card.drawers,
                wrong=tuple(_wrong(card.parts, partial(card_facts, card), now, causes)),
            )
            for place, card in enumerate(paper.cards)
        ),
        *(
            CardStanding(
                among="other",
                place=place,
                title=card.title,
                drawers=drawers_of(card),
                wrong=tuple(_wrong(parts_of(card), partial(other_facts, card), now, causes)),
            )
            for place, card in enumerate(paper.others)
        ),
        *(
            CardStanding(
                among="dividers",
                place=place,
                title=f"Dividers of unit {card.unit_code}",
                drawers=(),
                wrong=tuple(_changed(dict(divider_facts(card)), now.get(dividers_of(card), {}))),
            )
            for place, card in enumerate(paper.dividers)
        ),
    )


def drawers_of(card: SettingsCard) -> tuple[str, ...]:
    """The drawers whose bottoms a card is of; none for a card of the case."""
    if card.kind != "bottom-groove":
        return ()
    return tuple(dict.fromkeys(code.rpartition("-")[0] for code in parts_of(card)))


def _wrong(parts: Iterable[str], facts: Callable[[str], Facts], now: Now, causes: Causes) -> Iterator[Words]:
    """What was measured at a drawer of the card first, then what differs by it, alike parts together."""
    found: dict[tuple[Any, ...], tuple[list[str], Facts, Facts]] = {}
    gone = []
    for code in parts:
        then = facts(code)
        is_now = now.get(code)
        if is_now is None:
            gone.append(code)
            continue
        differs = {name: is_now.get(name) for name, was in then.items() if is_now.get(name) != was}
        if differs:
            key = tuple(sorted((name, value or ()) for name, value in differs.items()))
            found.setdefault(key, ([], then, is_now))[0].append(code)
    wrong = dict.fromkeys(code.rpartition("-")[0] for codes, _, _ in found.values() for code in codes)
    for drawer in wrong:
        yield from causes.get(drawer, ())
    for codes, then, is_now in found.values():
        yield strung(": ", (parts_text(codes), strung(", ", tuple(_changed(then, is_now)))))
    if gone:
        yield f"{parts_text(gone)}: no longer in the design"


def _changed(then: Facts, now: Facts) -> Iterator[Words]:
    """Figure by figure; of many, the first few and how many more."""
    names = [name for name, was in then.items() if now.get(name) != was]
    for name in names[:MOST_SAID]:
        said = name.partition(", ")[2] or name
        was, is_now = then[name], now.get(name)
        if is_now and len(was) == len(is_now) == 1 and said != LENGTHS_ONLY:
            fine = any(abs(size * 64 - round(size * 64)) > FINE for size in (is_now[0], was[0]))
            words = "{} is {:.3 bare} now, here {:.3 bare}" if fine else "{} is {:bare} now, here {:bare}"
            yield say(words, said, is_now[0], was[0])
        else:
            yield f"{said} is another now"
    if len(names) > MOST_SAID:
        yield f"and {len(names) - MOST_SAID} more figures"
