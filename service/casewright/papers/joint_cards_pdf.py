"""The joint cards as PDF: figures to be read at arm's length, the wrong gauge struck out, the joint drawn."""

from typing import Any

from casewright.papers.bench import tools_named
from casewright.papers.cleaning import name, words
from casewright.papers.full_size_pdf import full_size_pdf
from casewright.papers.gauge_sheet import RULE, gauge_sheet_data
from casewright.papers.head import head_data
from casewright.papers.joint_cards import (
    DividerCard,
    GaugeFigure,
    JointCard,
    JointCardsPaper,
    SizeRow,
)
from casewright.papers.pdf import Paper, render
from casewright.papers.settings_card_pdf import settings_card_data
from casewright.papers.warned import warned_data
from casewright.papers.writing import Writing, several

MOST_PARTS = 8


def joint_cards_pdf(cards: JointCardsPaper, paper: Paper = Paper.LETTER) -> bytes:
    """The joint cards of a job, each on a sheet of its own with its drawing on the back.

    Args:
        cards: the cards, as they are kept
        paper: the sheet

    Returns:
        A PDF whose figures are 24 points high at the least.
    """
    return render("joint_cards", joint_cards_data(cards), paper)


def joint_templates_pdf(cards: JointCardsPaper, paper: Paper = Paper.LETTER) -> bytes:
    """The templates that were kept with the joint cards, in full size.

    Args:
        cards: the cards, as they are kept
        paper: the sheet

    Returns:
        A PDF in which an inch is an inch, if it is printed as it is.
    """
    return full_size_pdf(cards.head, (strip.named() for strip in cards.strips), paper)


def joint_cards_data(cards: JointCardsPaper) -> dict[str, Any]:
    """The joint cards as they are read, on paper and on a page.

    Args:
        cards: the cards, as they are kept

    Returns:
        Every setting and note in words, drawings as SVG.
    """
    writing = Writing(unit=cards.head.unit)
    return head_data(cards.head, "Joint cards") | {
        "unit": writing.unit.value,
        "gauges": gauge_sheet_data(cards.gauges, writing),
        "gauges_rule": RULE.format(writing.size(1 / 64)),
        "cards": [_card(card, writing) for card in cards.cards],
        "others": [settings_card_data(card, writing) for card in cards.others],
        "dividers": [_divider(card, writing) for card in cards.dividers],
        "cautions": [words(caution) for caution in cards.cautions],
        "has_templates": bool(cards.strips),
    }


def _both(inches: float, writing: Writing) -> list[str]:
    """A size as it is set, and the same in the other unit."""
    return [writing.size(inches), writing.other(inches)]


def _card(card: JointCard, writing: Writing) -> dict[str, Any]:
    count = len(card.tails)
    return {
        "title": name(card.title),
        "tools": tools_named(card.kind),
        "drawers": name(", ".join(card.drawers), 160),
        "parts": words(_parts(card.parts)),
        "gauges": [_gauge(gauge, writing) for gauge in card.gauges],
        "wrong_text": words(card.wrong_text),
        "steps": [
            ["Tails", str(count), ""],
            ["Half pin", *_both(card.half_pin_in, writing)],
            ["Dividers", *_both(card.divider_in, writing)],
            ["Past the mark", *_both(card.overshoot_in, writing)],
            ["Slope", f"1:{card.slope:g}", f"{card.bevel_degrees:.1f}°"],
        ],
        "walk": _walk(card, writing),
        "measured_from": words(card.measured_from),
        "tails": [
            [_both(size, writing) for size in corners]
            for corners in (
                (tail.lower_end_in, tail.upper_end_in, tail.lower_base_in, tail.upper_base_in)
                for tail in card.tails
            )
        ],
        "sizes": [_size(size, writing) for size in card.sizes],
        "advice": [words(line) for line in card.advice],
        "warned": [warned_data(warned) for warned in card.warned],
        "ticks": [words(line) for line in card.ticks],
        "drawing": card.drawing,
        "walk_drawing": card.walk_drawing,
        "walk_alt": f"The walk with the dividers: {name(card.title)}, {name(', '.join(card.drawers), 160)}.",
        "alt": f"{name(card.title)}, drawn to scale: plan and both ends, put together and apart.",
    }


def _parts(parts: tuple[str, ...]) -> str:
    """Which parts a card serves; of many, the first and how many more."""
    if len(parts) <= MOST_PARTS:
        return ", ".join(parts)
    return f"{', '.join(parts[:MOST_PARTS])} and {several(len(parts) - MOST_PARTS, 'more', 'more')}"


def _gauge(gauge: GaugeFigure, writing: Writing) -> dict[str, Any]:
    value, other = _both(gauge.value_in, writing)
    if value.startswith("≈"):
        other = f"{writing.fine(gauge.value_in)} {writing.unit.value} · {other}"
    struck = (*gauge.also_wrong_in, *(() if gauge.wrong_in is None else (gauge.wrong_in,)))
    wrong = [writing.size(size) for size in struck]
    return {"name": gauge.name, "value": value, "other": other, "wrong": wrong, "note": words(gauge.note)}


def _walk(card: JointCard, writing: Writing) -> list[str]:
    count, unit = len(card.tails), writing.unit.value
    half, pin = writing.size(card.half_pin_in), writing.size(card.overshoot_in)
    return [
        f"Mark a half pin of {half} {unit} at both edges. From the lower mark step up {count}×: each but "
        f"the last is the lower edge of the next tail; the last lands {pin} {unit} past the upper mark.",
        f"From the upper mark step down {count}× for the upper edges.",
        f"If the last step lands long by {writing.size(1 / 64)} {unit}, close the dividers by "
        f"{writing.fine(card.correction_in, 4)} {unit}; if short, open them as much. Then step again.",
    ]


def _size(row: SizeRow, writing: Writing) -> list[str]:
    other = " × ".join(writing.other(each) for each in row.values_in)
    return [name(row.name), writing.sizes(*row.values_in), other, words(row.note)]


def _divider(card: DividerCard, writing: Writing) -> dict[str, Any]:
    return {
        "title": f"Sliding dovetails of the dividers, unit {name(card.unit_code, 20)}",
        "slope": f"Slope 1:{card.slope:g}",
        "sizes": [_size(size, writing) for size in card.sizes],
        "tops": [_both(top, writing) for top in card.tops_in],
        "warned": [warned_data(warned) for warned in card.warned],
    }
