"""The card for the dividers: setting, steps and landing, the walk drawn, and the move that corrects it."""

from dataclasses import dataclass

from markupsafe import Markup
from starlette.requests import Request

from casewright.drawing.divider_walk import walk_drawing
from casewright.joinery.dividers import correction_lines, stepping_of
from casewright.joinery.layout import TailLayout
from casewright.measure.saying import Words
from casewright.papers.writing import Writing
from casewright.pieces.drawers.layouts import DrawerEnd
from casewright.web.frame.pages import drawing
from casewright.web.frame.typed import Reader, Typed, clean

WAYS = (("past", "past the mark"), ("short", "short of the mark"))
"""On which side of the mark the last step can land."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DividerCard:
    """How one joint is stepped out.

    Attributes:
        id: the id of the joint on its page, of which the ids of the card's fields are made
        setting: what the dividers are set to
        steps: how many steps are walked
        overshoot: how far past the mark the last must land
        lines: the work, in order
        walk: the walk, drawn
        kept: what else the address of the page holds, name by name
        landed: how far off the last step was read, as typed
        way: on which side of the mark
        fault: what is wrong with that
        answer: what to do about it; empty where nothing was asked
    """

    id: str
    setting: str
    steps: int
    overshoot: str
    lines: tuple[str, ...]
    walk: Markup
    kept: tuple[tuple[str, str], ...]
    landed: str
    way: str
    fault: str
    answer: tuple[str, ...]

    @property
    def ways(self) -> tuple[tuple[str, str], ...]:
        """The sides to choose from."""
        return WAYS

    @property
    def is_asked(self) -> bool:
        """Whether a landing was typed for this joint."""
        return bool(self.answer or self.fault)


def asked_of(request: Request) -> Typed:
    """The fields of a form that was sent by GET: what stands in the address, read as a form is."""
    return Typed(
        tuple((name[:200], clean(value)[:200]) for name, value in request.query_params.multi_items())
    )


def card_id(code: str, end: DrawerEnd) -> str:
    """The id of a drawer's joint on a page, by the drawer's code within the unit."""
    return f"joint-{code}-{end.value}"


def divider_card(
    layout: TailLayout,
    known: str,
    title: str,
    writing: Writing,
    asked: Typed,
    kept: tuple[tuple[str, str], ...] = (),
) -> DividerCard:
    """The card for one layout, with the answer where a landing was typed for it.

    Args:
        layout: where the tails stand
        known: the id of the joint on its page
        title: what the joint is
        writing: how the page writes
        asked: what was asked of the page
        kept: what else its address has to hold
    """
    steps = stepping_of(layout)
    is_this = asked.get("of") == known
    fields = Reader(asked if is_this else Typed())
    landed = fields.length("landed", writing.unit) if is_this else None
    way = fields.typed.get("way")
    lines: tuple[Words, ...] = ()
    if landed is not None:
        lines = correction_lines(steps, -landed if way == "short" else landed)
    return DividerCard(
        id=known,
        setting=writing.size(steps.setting),
        steps=steps.steps,
        overshoot=writing.size(steps.overshoot),
        lines=tuple(writing.said(line) for line in steps.lines()),
        walk=drawing(walk_drawing(layout, title, writing.unit, f"{known}-walk").svg()),
        kept=kept,
        landed=fields.typed.get("landed"),
        way="short" if way == "short" else "past",
        fault=fields.faults.get("landed", ""),
        answer=tuple(writing.said(line) for line in lines),
    )
