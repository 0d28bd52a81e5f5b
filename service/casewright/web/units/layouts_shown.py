"""The layouts of a row and of its family as their page prints and draws them."""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass

from markupsafe import Markup

from casewright.drawing.layout_choices import LayoutShown, layouts_drawing
from casewright.drawing.tail_joints import half_blind_drawing, through_drawing
from casewright.joinery.choose import Choice
from casewright.joinery.families.half_blind.joint import HalfBlindJoint
from casewright.joinery.layout import TailLayout
from casewright.measure.units import Count, Inches
from casewright.papers.writing import Writing, several
from casewright.pieces.built.refusals import REFUSALS
from casewright.pieces.drawers.layouts import DrawerEnd
from casewright.web.frame.pages import drawing
from casewright.web.units.findings import Checks, checks_of
from casewright.web.units.layout_sight import Sight, same

BEST = 3
"""So many layouts are shown for their looks alone."""
SHOWN = 5
"""So many are drawn side by side, which is what the paper holds; the others that pass stand in a list."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceShown:
    """One layout of the row.

    Attributes:
        heading: its place by its looks, or what it is
        words: its tails and its pin in words
        tails: how many
        pin: width of the pin
        pitch: setting of the dividers
        tail: width of a tail at the end of the board
        score: of 100, or that it does not pass
        why: why points are off, or why it does not pass
        checks: what the checks of the row's joints say
        value: what its button sends
        look: address that works it out in full
        is_now: whether it is what is cut now
        is_yours: whether it is what is typed
        drawn: as it is drawn
    """

    heading: str
    words: str
    tails: Count
    pin: str
    pitch: str
    tail: str
    score: str
    why: tuple[str, ...]
    checks: Checks
    value: str
    look: str
    is_now: bool
    is_yours: bool
    drawn: LayoutShown


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherShown:
    """One more layout that passes: place, tails and pin in words, score, and where it is worked out."""

    place: Count
    words: str
    score: str
    look: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyShown:
    """All rows with one width of the pin.

    Attributes:
        pin: that width
        pitch: the spacing that the rows share
        score: the mean of the rows', or that some row does not pass
        rows: each row with its tails and score, in words
        why: which rows do not pass, and why
        value: what its button sends
        is_now: whether it is the pin of the unit now
    """

    pin: str
    pitch: str
    score: str
    rows: tuple[str, ...]
    why: tuple[str, ...]
    value: str
    is_now: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RowLink:
    """A row at one end, to be looked at."""

    address: str
    words: str
    is_here: bool


def row_links(sight: Sight, address: str) -> Iterator[tuple[str, tuple[RowLink, ...]]]:
    """Every row at both ends: what the end is called, and its rows."""
    for end, called in ((DrawerEnd.FRONT, "Fronts"), (DrawerEnd.BACK, "Backs")):
        yield (
            called,
            tuple(
                RowLink(
                    address=layouts_address(address, mark, end),
                    words=f"Row {mark}",
                    is_here=(mark, end) == (sight.row, sight.end),
                )
                for mark in sight.marks
            ),
        )


def layouts_address(unit: str, row: str, end: DrawerEnd) -> str:
    """The page of the layouts of one row at one end."""
    return f"{unit}/layouts?row={row}&end={end.value}"


def choices_shown(sight: Sight, writing: Writing, address: str) -> Iterator[ChoiceShown]:
    """What is typed; then, by place, what is cut now, the best, and the best with other numbers of tails."""
    keys: list[tuple[Count, Inches]] = [(sight.own.tails, sight.own.pin)] if sight.own else []
    wanted = ((each.count, each.pin) for each in (*sight.choices[:BEST], *_best_of_each_count(sight)))
    for key in ((sight.layout.count, sight.set_out.pin), *wanted):
        if len(keys) < SHOWN and not any(key[0] == count and same(key[1], pin) for count, pin in keys):
            keys.append(key)
    first = 1 if sight.own else 0
    for count, pin in (*keys[:first], *sorted(keys[first:], key=lambda key: _order(sight, *key))):
        # A row is ranked by its first drawer; another one of it may have been measured too low for a layout.
        with suppress(*REFUSALS):
            yield _choice_shown(sight, count, pin, writing, address)


def _choice_shown(sight: Sight, count: Count, pin: Inches, writing: Writing, address: str) -> ChoiceShown:
    choice, layout = sight.choice(count, pin), sight.joints(count, pin)[0].layout
    is_now = count == sight.layout.count and same(pin, sight.set_out.pin)
    is_yours = sight.own is not None and count == sight.own.tails and same(pin, sight.own.pin)
    heading = "yours" if is_yours else str(_order(sight, count, pin)) if choice else "now"
    score = None if choice is None else float(choice.score)
    return ChoiceShown(
        heading=f"{heading}, as it is" if is_now and heading != "now" else heading,
        words=layout_words(count, pin, writing),
        tails=count,
        pin=writing.size(pin),
        pitch=writing.size(layout.pitch),
        tail=writing.size(layout.tail_width),
        score="does not pass" if score is None else f"{score:.1f}",
        why=tuple(map(writing.said, choice.reasons if choice else (sight.why_not(count, pin),))),
        checks=checks_of(sight.findings(count, pin), writing.unit),
        value=f"{count} {float(pin):.9f}",
        look=_look(sight, count, pin, address),
        is_now=is_now,
        is_yours=is_yours,
        drawn=LayoutShown(heading="as it is" if heading == "now" else heading, layout=layout, score=score),
    )


def _best_of_each_count(sight: Sight) -> Iterator[Choice]:
    """The best pin for every number of tails, the best looking number first."""
    found: set[Count] = set()
    for each in sight.choices:
        if each.count not in found:
            found.add(each.count)
            yield each


def _order(sight: Sight, count: Count, pin: Inches) -> Count:
    """The place of a layout among all that pass; behind them where it does not."""
    choice = sight.choice(count, pin)
    return len(sight.choices) + 1 if choice is None else sight.choices.index(choice) + 1


def layout_words(count: Count, pin: Inches, writing: Writing) -> str:
    """A layout in a few words, such as `5 tails, pin 1/8`."""
    return f"{several(count, 'tail')}, pin {writing.size(pin)}"


def _look(sight: Sight, count: Count, pin: Inches, address: str) -> str:
    # In inches whatever the shop reads: a pin of 3/32 has no short size in millimetres.
    return f"{layouts_address(address, sight.row, sight.end)}&tails={count}&pin={float(pin):.9f}in"


def others_shown(
    sight: Sight, shown: Sequence[ChoiceShown], writing: Writing, address: str
) -> Iterator[OtherShown]:
    """The layouts that pass and are not drawn."""
    drawn = {(each.tails, each.pin) for each in shown}
    for place, each in enumerate(sight.choices, start=1):
        if (each.count, writing.size(each.pin)) not in drawn:
            yield OtherShown(
                place=place,
                words=layout_words(each.count, each.pin, writing),
                score=f"{each.score:.1f}",
                look=_look(sight, each.count, each.pin, address),
            )


def refused_lines(sight: Sight, writing: Writing) -> Iterator[str]:
    """Why other numbers of tails, and other pins, do not pass; alike ones once."""
    for why, count, pins in sight.refused():
        listed = ", ".join(writing.size(pin) for pin in pins)
        narrow = not any(sight.set_out.passes(pin) for pin in pins)
        said = writing.said(why)
        yield said if narrow else f"{several(count, 'tail')} with a pin of {listed}: {said}"


def choices_drawing(sight: Sight, shown: Sequence[ChoiceShown], writing: Writing) -> Markup:
    """The layouts of the row side by side."""
    title = f"Row {sight.row}, {sight.end.value}: {', '.join(sight.codes)}"
    drawn = [each.drawn for each in shown]
    return drawing(layouts_drawing(drawn, title, writing.unit, "layouts-of-row").svg())


def families_shown(sight: Sight, writing: Writing) -> Iterator[FamilyShown]:
    """All rows for every width of the pin."""
    for each in sight.families:
        taken = [row.taken for row in each.rows]
        rows = (
            f"row {mark}: {several(row.count, 'tail')}, {row.score:.1f}"
            for mark, row in zip(sight.marks, taken, strict=True)
            if row
        )
        yield FamilyShown(
            pin=writing.size(each.pin),
            pitch="" if each.pitch is None else writing.size(each.pitch),
            score="not for every row" if each.refused else f"{each.score:.1f}",
            rows=tuple(rows),
            why=tuple(writing.said(refused.why) for refused in each.refused),
            value=f"pin {float(each.pin):.9f}",
            is_now=same(each.pin, sight.set_out.pin),
        )


def family_drawing(sight: Sight, writing: Writing) -> Markup:
    """All rows side by side with the pin that is looked at; nothing where none can be drawn."""
    shown = [
        LayoutShown(heading=f"row {mark}", layout=layout, score=score)
        for mark, layout, score in sight.family_layouts()
    ]
    if not shown:
        return Markup()
    title = f"All rows, {sight.end.value}, pins of {writing.size(sight.pin)}"
    return drawing(layouts_drawing(shown, title, writing.unit, "layouts-of-family").svg())


def joint_drawing(sight: Sight, count: Count, pin: Inches, writing: Writing) -> Markup:
    """The joint with a layout, drawn in full with its settings."""
    joint = sight.joints(count, pin)[0]
    draw = half_blind_drawing if isinstance(joint, HalfBlindJoint) else through_drawing
    return drawing(draw(joint, sight.codes, writing.unit, "your-joint").svg())


def layout_of(sight: Sight) -> TailLayout:
    """The layout that is looked at: as typed, else as it is."""
    return sight.joints(sight.own.tails, sight.own.pin)[0].layout if sight.own else sight.layout
