"""Which of the joint cards that were printed are wrong now, and in what; the others hold."""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from types import MappingProxyType
from typing import Any

from casewright.measure.saying import Words, say, strung
from casewright.papers.gauge_sheet import GaugeLine, parts_text
from casewright.papers.joint_cards import JointCardsPaper
from casewright.papers.says import Facts, card_facts, divider_facts, dividers_of, other_facts, parts_of
from casewright.papers.settings_card import SettingsCard

GAUGES = "Gauges to set"
"""The title of the list before the cards."""
SLOPE = "slope"
NO_LENGTHS = ("bevel", "steps", "pins", "first pins", "boards", "mitre of the tenon's end")
"""Figures that are degrees or counts."""
BY_NAME: Mapping[re.Pattern[str], tuple[str, ...]] = MappingProxyType(
    {
        re.compile("dividers$"): ("", ", overshoot"),
        re.compile(r"tail \d+$"): (
            ", lower edge at the end",
            ", upper edge at the end",
            ", lower edge at the baseline",
            ", upper edge at the baseline",
        ),
    }
)
"""What the sizes are of a figure that has several."""
MOST_SAID = 3
FINE = 1e-4
"""From a 64th by more than this, in 64ths, a size is said in thousandths: that is how it is set."""
Sizes = tuple[float, ...]
Now = Mapping[str, Facts]
"""What the cards would say now, by part and figure."""
Causes = Mapping[str, tuple[Words, ...]]
"""What was measured since, by drawer, such as `side A-R1-1-SL measured 23/64`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CardStanding:
    """Whether one printed card holds.

    Attributes:
        among: which cards it stands among: `gauges`, the list of them, `card`, `other` or `dividers`
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


def cards_standing(
    paper: JointCardsPaper, now: Now, causes: Causes, gauges: Sequence[GaugeLine] = ()
) -> tuple[CardStanding, ...]:
    """Every card of a set, each with what is wrong on it now.

    Args:
        paper: the cards as they were printed
        now: what cards would say that were printed now
        causes: what was measured since
        gauges: the list of gauges as it would be printed now; left out, the printed one is not looked at

    Returns:
        The list of gauges, then the cards in their order, those of the dividers last.
    """
    listed = CardStanding(
        among="gauges",
        place=0,
        title=GAUGES,
        drawers=(),
        wrong=tuple(_list_wrong(paper, gauges, causes)) if gauges else (),
    )
    return (
        *((listed,) if gauges and paper.gauges else ()),
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
                wrong=tuple(figures_changed(dict(divider_facts(card)), now.get(dividers_of(card), {}))),
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
        if differs and [*figures_changed(then, is_now)]:
            key = tuple(sorted((name, value or ()) for name, value in differs.items()))
            found.setdefault(key, ([], then, is_now))[0].append(code)
    wrong = dict.fromkeys(code.rpartition("-")[0] for codes, _, _ in found.values() for code in codes)
    for drawer in wrong:
        yield from causes.get(drawer, ())
    for codes, then, is_now in found.values():
        yield strung(": ", (parts_text(codes), strung(", ", tuple(figures_changed(then, is_now)))))
    if gone:
        yield f"{parts_text(gone)}: no longer in the design"


def figures_changed(then: Facts, now: Facts) -> Iterator[Words]:
    """Figure by figure, those that print unlike; of many, the first few and how many more.

    Args:
        then: the figures as they were printed, by their names
        now: the figures as they would be printed now

    Yields:
        Words such as `gauge 2 is 13/32 now, here 7/16`.
    """
    found = [
        words
        for name, was in then.items()
        if now.get(name) != was
        for words in _said(name.partition(", ")[2] or name, was, now.get(name, ()))
    ]
    yield from found[:MOST_SAID]
    more = len(found) - MOST_SAID
    if more > 0:
        yield f"and {more} more {'figure' if more == 1 else 'figures'}"


def _said(name: str, was: Sizes, is_now: Sizes) -> Iterator[Words]:
    """One figure, or of several by one name each that prints unlike; nothing where all print alike."""
    names = next((each for word, each in BY_NAME.items() if word.match(name)), ())
    if names and len(was) == len(is_now) == len(names):
        for own, then, now in zip(names, was, is_now, strict=True):
            yield from _said(f"{name}{own}", (then,), (now,))
        return
    if not is_now:
        yield say("{} is {} here, and none now", name, _sizes(name, was, was))
        return
    here, there = _sizes(name, was, (*was, *is_now)), _sizes(name, is_now, (*was, *is_now))
    if str(here) != str(there):
        yield say("{} is {} now, here {}", name, there, here)


def _sizes(name: str, sizes: Sizes, beside: Sizes) -> Words:
    """Sizes as they are set: in thousandths where one of those beside them is no 64th."""
    if name == SLOPE:
        return strung(" and ", (f"1:{size:g}" for size in sizes))
    if name in NO_LENGTHS:
        return strung(" and ", (f"{size:g}" for size in sizes))
    fine = any(abs(size * 64 - round(size * 64)) > FINE for size in beside)
    return strung(" and ", (say("{:.3 bare}" if fine else "{:bare}", size) for size in sizes))


def _list_wrong(paper: JointCardsPaper, gauges: Sequence[GaugeLine], causes: Causes) -> Iterator[Words]:
    """What differs on the list of gauges: the parts that one of them serves together, by its settings."""
    then, now = _served(paper.gauges), _served(gauges)
    found: dict[tuple[str, Sizes, Sizes], list[str]] = {}
    for name, code in dict.fromkeys((*then, *now)):
        was, is_now = then.get((name, code), ()), now.get((name, code), ())
        if was != is_now:
            found.setdefault((name, was, is_now), []).append(code)
    said = [(key, codes) for key, codes in found.items() if not (key[1] and key[2]) or [*_said(*key)]]
    for drawer in dict.fromkeys(code.rpartition("-")[0] for _, codes in said for code in codes):
        yield from causes.get(drawer, ())
    for (name, was, is_now), codes in said:
        if was:
            yield strung(": ", (parts_text(codes), *_said(name[:1].lower() + name[1:], was, is_now)))
        else:
            yield say("{}: {} is {} now, here none", parts_text(codes), name, _sizes(name, is_now, is_now))


def _served(lines: Iterable[GaugeLine]) -> dict[tuple[str, str], Sizes]:
    """The settings of each gauge for each part; a part with one at either end has both."""
    found: dict[tuple[str, str], Sizes] = {}
    for line in lines:
        for code in line.serves:
            key = line.name, code.partition(" ")[0]
            found[key] = (*found.get(key, ()), round(float(line.value_in), 6))
    return {key: tuple(sorted(sizes)) for key, sizes in found.items()}
