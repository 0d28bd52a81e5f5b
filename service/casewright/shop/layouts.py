"""Laying out a job's parts: asking for it, stopping it, noting how far it is, ticking cuts off."""

from collections.abc import Mapping, Sequence
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import undefer

from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.layouts import UNDER_WAY, CutLayout, CutTick, LayoutState
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import NotFound, Refused

MOST_SECONDS = 60.0
MOST_WAITING = 5
"""So many layouts of one shop may be under way: one core works on them one after the other."""
MOST_PARTS = 2_000
"""Parts of one layout, counted singly; it answers for so many within time and memory."""
MOST_STOCK = 1_000
LOST_AFTER = timedelta(seconds=30)
"""A layout that nobody said anything of for so long is worked on by nobody any more."""
MOST_TRIES = 2
BROKE_OFF = (
    "The service stopped while this was worked on, twice. Ask for it again; if it breaks off again, lay out "
    "fewer parts at a time."
)


def ask_layout(
    db: Fenced, job_id: str, asked: Mapping[str, Any], *, seconds: float, seed: int, who: str, now: datetime
) -> CutLayout:
    """Puts a layout in the queue.

    Args:
        db: the session
        job_id: for which job
        asked: the cut file, as its JSON would hold it
        seconds: how long it may be worked on
        seed: another one looks elsewhere
        who: who asked
        now: the moment

    Raises:
        NotFound: there is no such job
        Refused: too much at once
    """
    job = db.get(Job, (db.shop_id, job_id))
    if job is None:
        raise NotFound("job")
    _within_limits(asked, seconds)
    waiting = db.scalar(select(func.count(CutLayout.id)).where(CutLayout.state.in_(UNDER_WAY)))
    if (waiting or 0) >= MOST_WAITING:
        raise Refused(
            f"{waiting} layouts are under way already. Wait for one of them, or stop it, then ask again."
        )
    last = db.scalar(select(func.max(CutLayout.number)).where(CutLayout.job_id == job_id))
    layout = CutLayout(
        id=new_id(),
        job_id=job_id,
        number=(last or 0) + 1,
        asked=dict(asked),
        seconds=seconds,
        seed=seed,
        created_at=now,
        who=who,
        demo=job.demo,
    )
    db.add(layout)
    note_history(db, who, now, f"Asked for layout {layout.number} of the parts on the stock.", job_id=job_id)
    return layout


def _within_limits(asked: Mapping[str, Any], seconds: float) -> None:
    if not 0 < seconds <= MOST_SECONDS:
        raise Refused(f"A layout may be worked on for up to {MOST_SECONDS:g} seconds.", 422)
    parts = sum(part.get("count", 1) for part in asked.get("parts", ()))
    if parts > MOST_PARTS:
        raise Refused(
            f"These are {parts:,} parts; one layout takes up to {MOST_PARTS:,}. Lay out one unit at a time.",
            422,
        )
    stock = sum(len(asked.get(kind, ())) for kind in ("boards", "sheets", "lengths"))
    if stock > MOST_STOCK:
        raise Refused(
            f"These are {stock:,} pieces of stock; one layout chooses from up to {MOST_STOCK:,}. Leave some "
            "out.",
            422,
        )


def layout_with_all(db: Fenced, layout_id: str) -> CutLayout:
    """A layout with what was asked and what came of it.

    Raises:
        NotFound: there is no such layout
    """
    found = db.scalar(
        select(CutLayout)
        .where(CutLayout.id == layout_id)
        .options(undefer(CutLayout.asked), undefer(CutLayout.answer))
    )
    if found is None:
        raise NotFound("layout")
    return found


def stop_layout(db: Fenced, layout_id: str) -> CutLayout:
    """Asks whoever works on it to end with the best so far; one that waits is taken out of the queue.

    Raises:
        NotFound: there is no such layout
    """
    layout = db.get(CutLayout, (db.shop_id, layout_id))
    if layout is None:
        raise NotFound("layout")
    if layout.state is LayoutState.WAITING:
        layout.state, layout.message = LayoutState.REFUSED, "It was stopped before its turn came."
    elif layout.state is LayoutState.WORKING:
        layout.stop_asked = True
    return layout


def claim_next(db: Fenced, now: datetime) -> CutLayout | None:
    """The next layout of any shop, marked as worked on; None where none waits.

    One that somebody began and left is begun anew, and given up when that happened before.

    Args:
        db: a session across shops that writes
        now: the moment
    """
    lost = db.scalars(
        select(CutLayout).where(CutLayout.state == LayoutState.WORKING, CutLayout.beat_at < now - LOST_AFTER)
    )
    for layout in lost:
        if layout.tries >= MOST_TRIES:
            layout.state, layout.message, layout.ended_at = LayoutState.REFUSED, BROKE_OFF, now
        else:
            layout.state = LayoutState.WAITING
    db.flush()
    found = db.scalar(
        select(CutLayout)
        .where(CutLayout.state == LayoutState.WAITING)
        .order_by(CutLayout.created_at, CutLayout.id)
        .limit(1)
        .options(undefer(CutLayout.asked))
        .with_for_update(skip_locked=True)
    )
    if found is not None:
        found.state, found.beat_at, found.tries = LayoutState.WORKING, now, found.tries + 1
    return found


def note_progress(db: Fenced, layout_id: str, progress: Mapping[str, Any], now: datetime) -> bool:
    """Notes how far it is; says whether somebody asked for a stop.

    Args:
        db: the session of its shop
        layout_id: which
        progress: cost, bound and seconds of the best so far
        now: the moment
    """
    layout = db.get(CutLayout, (db.shop_id, layout_id))
    if layout is None:
        return True
    layout.progress, layout.beat_at = dict(progress), now
    return layout.stop_asked


def end_layout(
    db: Fenced, layout_id: str, now: datetime, *, answer: Mapping[str, Any] | None = None, message: str = ""
) -> None:
    """Keeps what came of it, or why nothing did.

    Args:
        db: the session of its shop
        layout_id: which
        now: the moment
        answer: the layout with its drawings; None where there is none
        message: why, in whole sentences
    """
    layout = db.get(CutLayout, (db.shop_id, layout_id))
    if layout is None:
        return
    layout.state = LayoutState.REFUSED if answer is None else LayoutState.DONE
    layout.answer = None if answer is None else dict(answer)
    layout.message, layout.ended_at = message, now


def tick_cut(
    db: Fenced, layout_id: str, board: str, step: int, *, is_done: bool, tap: str, who: str, now: datetime
) -> None:
    """Notes at the bench that a cut is made, or that it was ticked by mistake.

    Args:
        db: the session
        layout_id: of which layout
        board: the board's mark
        step: the number of the cut
        is_done: made, or taken back
        tap: the mark of the tap; one that came before changes nothing
        who: who cut
        now: the moment

    Raises:
        NotFound: there is no such layout, board or cut
    """
    layout = layout_with_all(db, layout_id)
    if step not in {number for name, number in cuts_of(layout.answer or {}) if name == board}:
        raise NotFound("cut")
    if db.scalar(select(CutTick.id).where(CutTick.tap == tap)):
        return
    db.add(
        CutTick(
            id=new_id(),
            layout_id=layout_id,
            job_id=layout.job_id,
            board=board,
            step=step,
            is_done=is_done,
            tap=tap,
            at=now,
            who=who,
        )
    )


def cuts_of(answer: Mapping[str, Any]) -> Sequence[tuple[str, int]]:
    """Every cut of a layout: the board's name and the cut's number, in the order in which they are made."""
    return [
        (board["name"], step["number"])
        for lot in answer.get("lots", ())
        for board in lot["layouts"]
        for step in board["steps"]
    ]
