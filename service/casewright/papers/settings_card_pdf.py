"""The card of a joint as PDF: one sheet, what is set in large type, wrong values struck out."""

from collections.abc import Iterable
from typing import Any

from casewright.joinery.joint import Measure
from casewright.measure.lengths import LengthUnit
from casewright.papers.bench import tools_named
from casewright.papers.cleaning import name, words
from casewright.papers.head import loose_head
from casewright.papers.joint_settings import setting_text, wrong_text
from casewright.papers.pdf import Paper, render
from casewright.papers.positions import Positions
from casewright.papers.settings_card import CardSetting, Served, SettingsCard
from casewright.papers.warned import warned_data
from casewright.papers.writing import Writing, several

MOST_PARTS = 8
"""How many codes of parts a card names of one board; of more it says how many."""
SMALLEST = 1 / 64
"""What a rule still shows [in]."""
OTHER = {LengthUnit.INCH: LengthUnit.MILLIMETRE, LengthUnit.MILLIMETRE: LengthUnit.INCH}


def settings_cards_pdf(cards: Iterable[SettingsCard], unit: LengthUnit, paper: Paper = Paper.LETTER) -> bytes:
    """Cards of joints that belong to no job, each on a sheet of its own.

    Args:
        cards: the cards, as they are kept
        unit: in which sizes are written
        paper: the sheet

    Returns:
        A PDF in which what is set is 24 points high at the least.
    """
    writing = Writing(unit=unit)
    held = [settings_card_data(card, writing) for card in cards]
    title = held[0]["title"] if len(held) == 1 else f"{len(held)} joints"
    return render("joint_card", loose_head("Joint card", title, unit) | {"cards": held}, paper)


def settings_card_data(card: SettingsCard, writing: Writing) -> dict[str, Any]:
    """The card of a joint as it is read, on paper and on a page.

    Args:
        card: the card, as it is kept
        writing: how sizes are written

    Returns:
        What `settings-card` of `templates/papers/settings_card.typ` prints: every number and note in words,
        drawings as SVG.
    """
    return {
        "title": name(card.title),
        "unit": writing.unit.value,
        "other_unit": OTHER[writing.unit].value,
        "unit_code": name(card.unit_code, 20),
        "serves": [_served(each) for each in card.serves],
        "large": [_setting(each, writing) for each in card.settings if each.big],
        "rest": [_setting(each, writing) for each in card.settings if not each.big],
        "wrong_text": words(card.wrong_text),
        "positions": [_positions(each, writing) for each in card.positions],
        "advice": [words(line) for line in card.advice],
        "warned": [warned_data(each) for each in card.warned],
        "drawing": card.drawing,
        "alt": f"{name(card.title)}, drawn to scale: cut open, put together and drawn apart.",
        "walk": card.walk,
        "walk_alt": f"The walk with the dividers, move by move, for: {name(card.title)}.",
        "cautions": [words(line) for line in card.cautions],
        "tools": "" if card.cautions else tools_named(card.kind),
    }


def _served(served: Served) -> list[str]:
    parts = served.parts
    named = ", ".join(parts[:MOST_PARTS])
    if len(parts) > MOST_PARTS:
        named += f" and {several(len(parts) - MOST_PARTS, 'more', 'more')}"
    return [name(served.board), words(named)]


def _setting(row: CardSetting, writing: Writing) -> dict[str, str]:
    value, other = setting_text(row.setting, writing), ""
    if row.measure.is_length:
        other = _in_the_other(row, writing)
        if value.startswith("≈"):
            other = f"{writing.fine(row.value)} {writing.unit.value} · {other}"
    return {
        "label": words(row.label),
        "value": value,
        "other": other,
        "wrong": wrong_text(row.setting, writing),
        "note": words(row.note),
    }


def _in_the_other(row: CardSetting, writing: Writing) -> str:
    """A length in the unit that is not the shop's, as fine as it is in the shop's."""
    if row.measure is not Measure.FINE and not 0 < abs(row.value) < SMALLEST:
        return writing.other(row.value)
    return Writing(unit=OTHER[writing.unit]).fine(row.value, 4)


def _positions(table: Positions, writing: Writing) -> dict[str, Any]:
    return {
        "title": name(table.title),
        "what": name(table.what),
        "columns": [name(column) for column in table.columns],
        "rows": [
            [name(row.name, 20), *([writing.size(at), writing.other(at)] for at in row.at_in)]
            for row in table.rows
        ],
    }
