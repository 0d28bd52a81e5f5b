"""One layout: how far it is, then board by board what comes out of it, and the cuts to tick off."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from fastapi import APIRouter
from markupsafe import Markup
from starlette.background import BackgroundTask
from starlette.responses import Response

from casewright.measure.lengths import LengthUnit
from casewright.papers.chalk_out import bar_words, broken_words, chalk_out_pdf, left_words, size_words
from casewright.papers.cutting_data import most_saved
from casewright.records.jobs import Job
from casewright.records.layouts import UNDER_WAY, CutLayout, LayoutState, ticked
from casewright.shop.jobs import load_job
from casewright.shop.layouts import layout_with_all, stop_layout, tick_cut
from casewright.shop.putting_away import boards_cut
from casewright.shop.refusals import Refused
from casewright.web.cutting.again import ask_again
from casewright.web.cutting.crews import crew_of
from casewright.web.cutting.hand import (
    NAMES,
    BoardToPlace,
    boards_to_place,
    freed,
    parts_to_place,
    put_words,
    stock_to_place,
    with_part,
)
from casewright.web.cutting.put_away import AwayShown, away_shown, labels_of
from casewright.web.cutting.short import ShortList, short_list
from casewright.web.frame.pages import Page, drawing, form_of, see, show
from casewright.web.frame.pdfs import paper_for, pdf_answer
from casewright.web.frame.typed import Form, Reader
from casewright.web.frame.unbroken import unbroken
from casewright.web.frame.visits import Everybody, Office, Visit

router = APIRouter()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepShown:
    """One cut: what is set and done, its sizes kept whole, and whether it is made."""

    number: int
    words: str | Markup
    done: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardShown:
    """A board or sheet that is cut up.

    Attributes:
        name: its mark
        anchor: of its place on the page
        size: its length and width, in words
        place: where it lies
        used: how much of it becomes parts, in percent
        view: the drawing
        steps: its cuts in order
        set_ups: how often fence or stop are set
        left: what is worth keeping, in words
    """

    name: str
    anchor: str
    size: str
    place: str
    used: str
    view: Markup
    steps: Sequence[StepShown]
    set_ups: int
    left: Sequence[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class WayShown:
    """One way in which the first cuts could run, and what came of it."""

    name: str
    used: str
    cost: str
    unplaced: int
    cuts: int
    set_ups: int
    taken: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LotShown:
    """All boards of one wood and class, or sheets of one kind.

    Attributes:
        title: what they are
        is_cut: is anything cut at all?
        used: how much of the boards becomes parts, in percent
        waste: the rest
        above: how far it can be from the best possible, in a sentence
        cost: what the boards cost, in words; empty for who sees no money
        ways: the ways that were tried
        boards: board by board
        bars: stock that is only cut to length, in words
        bar_views: the same drawn, what is cut alike once
        short: what has no place, with ways out
        troubles: what could not be kept together or put where it was wanted
    """

    title: str
    is_cut: bool
    used: str
    waste: str
    above: str
    cost: str
    ways: Sequence[WayShown]
    boards: Sequence[BoardShown]
    bars: Sequence[tuple[str, str, str]]
    bar_views: Sequence[Markup]
    short: ShortList
    troubles: Sequence[str]


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutPage(Page):
    """A layout.

    Attributes:
        layout: which
        job: for which job
        is_office: may it be changed, and is money shown?
        under_way: is it still waited for or worked on?
        progress: how far it is, in words
        share: how much of the time is over, in percent
        lots: what came of it
        seconds: how long it took
        form: for putting a part by hand
        names: of its fields
        boards_to_place: the boards with their parts, to drag them on
        part_choices: the parts that may be put by hand
        board_choices: the boards that they may be put on
        by_hand: what was put by hand already, in words
        away: boards that are put away, and what came of them
        labels: what came of them, as the address of their labels names it
        is_all_away: is no board left to put away?
        unit: in which unit bare numbers are read
    """

    template: ClassVar[str] = "cutting/layout.html"
    layout: CutLayout
    job: Job
    is_office: bool
    under_way: bool
    progress: str
    share: int
    lots: Sequence[LotShown]
    seconds: str
    form: Form
    names: Mapping[str, str]
    boards_to_place: Sequence[BoardToPlace]
    part_choices: Sequence[tuple[str, str]]
    board_choices: Sequence[tuple[str, str]]
    by_hand: Sequence[str]
    away: Sequence[AwayShown]
    labels: str
    is_all_away: bool
    unit: str


@router.get("/cutting/{layout_id}")
def show_layout(visit: Everybody, layout_id: str) -> Response:
    """A layout, or how far it is."""
    layout = layout_with_all(visit.db, layout_id)
    answer = show(visit, page_of(visit, layout, form_of()))
    if layout.state in UNDER_WAY:
        # After a restart nobody works on it until somebody is told.
        answer.background = BackgroundTask(crew_of(visit.request).wake)
    elif visit.wants_block:
        answer.headers["hx-refresh"] = "true"
    return answer


@router.post("/cutting/{layout_id}/by-hand")
def put_by_hand(visit: Office, layout_id: str) -> Response:
    """Asks for the same layout with one part where a person put it, or with none."""
    layout = layout_with_all(visit.db, layout_id)
    read = Reader(visit.typed)
    asked = freed(layout.asked) if read.ticked("free") else with_part(layout, read, visit.unit)
    if read.faults:
        return show(visit, page_of(visit, layout, read.form), 422)

    return ask_again(visit, layout, asked)


def page_of(visit: Visit, layout: CutLayout, form: Form) -> LayoutPage:
    """The page of a layout, with what was typed into its form."""
    boards = boards_cut(visit.db, layout) if layout.answer else ()
    return LayoutPage(
        title=f"Layout {layout.number}",
        layout=layout,
        job=load_job(visit.db, layout.job_id),
        is_office=visit.sees_prices,
        under_way=layout.state in UNDER_WAY,
        progress=_progress(layout),
        share=min(100, round(100 * layout.progress.get("seconds", 0) / layout.seconds)),
        lots=tuple(_lots(visit, layout)),
        seconds=f"{layout.answer['seconds']:.1f}" if layout.answer else "",
        form=form,
        names=NAMES,
        boards_to_place=boards_to_place(layout.answer or {}),
        part_choices=[(code, code) for code in parts_to_place(layout.asked)] if layout.answer else [],
        board_choices=[(name, name) for name in stock_to_place(layout.asked)] if layout.answer else [],
        by_hand=put_words(layout.asked, visit.unit),
        away=away_shown(boards, visit.unit),
        labels=labels_of(boards),
        is_all_away=all(each.put_away is not None for each in boards),
        unit=visit.unit.value,
    )


@router.post("/cutting/{layout_id}/stop")
def stop(visit: Office, layout_id: str) -> Response:
    """Ends the search with the best layout so far."""
    stop_layout(visit.db, layout_id)
    return see(f"/cutting/{layout_id}")


@router.post("/cutting/{layout_id}/cuts")
def tick(visit: Everybody, layout_id: str) -> Response:
    """Ticks a cut off, or takes the tick back."""
    board, step = visit.typed.get("board"), visit.typed.get("step")
    if not step.isascii() or not step.isdigit() or len(step) > 5:
        raise Refused("A cut has a number; tap it on the page of its layout.", 422)
    tick_cut(
        visit.db,
        layout_id,
        board,
        int(step),
        is_done=visit.typed.get("done") == "1",
        tap=visit.typed.once or f"{layout_id}-{board}-{step}-{visit.now.timestamp()}",
        who=visit.who,
        now=visit.now,
    )
    return see(f"/cutting/{layout_id}#{anchor(board)}")


@router.get("/cutting/{layout_id}/chalk-out.pdf")
def chalk_out(visit: Everybody, layout_id: str, sheet: str = "") -> Response:
    """The layout on paper: a drawing of each board, its cuts, what is left."""
    layout = layout_with_all(visit.db, layout_id)
    if layout.answer is None:
        raise Refused("There is no layout to print yet.", 409)
    job = load_job(visit.db, layout.job_id)
    paper = paper_for(sheet, visit.shop)
    answer = layout.answer
    return pdf_answer(
        f"layout-{job.number}-{layout.number}",
        lambda: chalk_out_pdf(answer, f"Job {job.number}, layout {layout.number}", paper),
    )


def anchor(name: str) -> str:
    """The place of a board on the page."""
    return "board-" + "".join(sign if sign.isalnum() else "-" for sign in name)


def _progress(layout: CutLayout) -> str:
    if layout.state is LayoutState.WAITING:
        return "It waits for its turn."
    cost, bound = layout.progress.get("cost"), layout.progress.get("bound")
    if not cost:
        return "The first layout is being made."
    if not bound:
        return "There is a layout; a better one is looked for."
    saved = most_saved(max(0.0, 100 * (cost / bound - 1)))
    if saved == "0.0":
        return "Nothing could be saved on what is laid out so far; the rest is being worked on."
    return (
        f"On what is laid out so far, no layout could save more than {saved} % of the wood. Looking for it."
    )


def _lots(visit: Visit, layout: CutLayout) -> Iterator[LotShown]:
    answer = layout.answer or {}
    done = ticked(visit.db, layout.id) if answer else frozenset()
    bar_views = answer.get("length_drawings", ())
    for number, (lot, views) in enumerate(
        zip(answer.get("lots", ()), answer.get("drawings", ()), strict=True)
    ):
        money = visit.is_owner and lot["cost_in"] == "money"
        symbol = visit.shop.symbol
        yield LotShown(
            title=" ".join(filter(None, (lot["wood"], lot["class"]))),
            is_cut=bool(lot["layouts"] or lot["lengths"]),
            used=f"{lot['percent_used']:.1f}",
            waste="" if lot["percent_waste"] is None else f"{lot['percent_waste']:.1f}",
            above=_above(lot),
            cost=f"{symbol}{lot['cost'] / 100:,.2f}" if money else "",
            ways=tuple(
                WayShown(
                    name=each["first_cut"],
                    used=f"{each['percent_used']:.1f}",
                    cost=f"{symbol}{each['cost'] / 100:,.2f}" if money else "",
                    unplaced=each["unplaced"],
                    cuts=each.get("cuts", 0),
                    set_ups=each.get("set_ups", 0),
                    taken=each["taken"],
                )
                for each in lot["tried"]
            ),
            boards=tuple(
                _board(board, view, done, visit.unit)
                for board, view in zip(lot["layouts"], views, strict=True)
            ),
            bars=tuple(bar_words(each, visit.unit) for each in lot["lengths"]),
            bar_views=tuple(map(drawing, bar_views[number] if bar_views else ())),
            short=short_list(visit, layout, number, lot),
            troubles=tuple(broken_words(lot)),
        )


def _above(lot: Mapping[str, Any]) -> str:
    if lot["proven_best"]:
        return "Proven best: no layout of these parts on this stock takes less."
    above = lot["percent_above_best_possible"]
    if above is None:
        return "How far from the best possible is not known."
    is_whole = lot.get("bound_is_for", "all parts") == "all parts"
    if not is_whole and not above:
        return "Nothing could be saved: the parts that have a place cannot come from less wood as they lie."
    of = "" if is_whole else " of the parts that have a place, as it is laid out,"
    return f"No layout{of} could save more than {most_saved(above)}\N{NO-BREAK SPACE}% of this wood."


def _board(
    board: Mapping[str, Any], view: str, done: frozenset[tuple[str, int]], unit: LengthUnit
) -> BoardShown:
    name = board["name"]
    return BoardShown(
        name=name,
        anchor=anchor(name),
        size=size_words(board, unit),
        place=board["place"],
        used=f"{board['percent_used']:.0f}",
        view=drawing(view),
        steps=tuple(
            StepShown(
                number=step["number"], words=unbroken(step["words"]), done=(name, step["number"]) in done
            )
            for step in board["steps"]
        ),
        set_ups=board["set_ups"],
        left=tuple(left_words(each, unit) for each in board["left"]),
    )
