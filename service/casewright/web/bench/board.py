"""The board: which drawer has reached what, across the room, and one tap to move it on."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import groupby
from typing import ClassVar
from urllib.parse import parse_qsl, urlencode, urlsplit

from fastapi import APIRouter
from starlette.responses import Response

from casewright.labour.stages import Stage, case_stages, drawer_stages, place_of
from casewright.measure.lengths import LengthUnit
from casewright.records.board import (
    A_PAGE,
    BoardFilter,
    BoardRow,
    JobInHand,
    board_rows,
    jobs_in_hand,
    stage_counts,
    tapped,
)
from casewright.shop.board import Group, Line, at_or_after, groups_of, just_before
from casewright.web.bench.time import Clock, clock_of
from casewright.web.frame.pages import Page, show
from casewright.web.frame.visits import Everybody, Visit

router = APIRouter()
ASKED_MOST = "glued"
"""The stage that is asked for across the room where no other is named."""
MOST_CODES = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A stage of the drawers, with how many of those in hand have reached it."""

    code: str
    word: str
    meaning: str
    reached: int
    next: int
    total: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """The answer that the board gives across the room.

    Attributes:
        words: what was asked, such as Glued up
        count: how many drawers
        total: of how many
        codes: which: the mark of each case with the codes of its drawers
        more: how many more there are than are listed
    """

    words: str
    count: int
    total: int
    codes: tuple[tuple[str, tuple[str, ...]], ...]
    more: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the address asks for.

    Attributes:
        stage: a stage of the drawers; empty for none
        how: whether it has been reached, or is next
        job: the id of a job; empty for all
        page: the page
    """

    stage: str = ""
    how: str = "reached"
    job: str = ""
    page: int = 1

    def address(self, **changes: object) -> str:
        """The address of the board that asks for this, with some of it changed."""
        asked = replace(self, **{"page": 1} | changes)  # type: ignore[arg-type]
        parts = {
            "stage": asked.stage,
            "how": asked.how if asked.stage and asked.how != "reached" else "",
            "job": asked.job,
            "page": asked.page if asked.page > 1 else "",
        }
        query = urlencode({name: value for name, value in parts.items() if value})
        return f"/board?{query}" if query else "/board"


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPage(Page):
    """The board."""

    template: ClassVar[str] = "bench/board.html"
    columns: Sequence[Column]
    answer: Answer
    groups: Sequence[Group]
    jobs: Sequence[JobInHand]
    stages: Sequence[Stage]
    case_stages: Sequence[Stage]
    asked: Asked
    back: str
    total: int
    pages: int
    clock: Clock | None
    refused: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LinePage(Page):
    """One drawer of the board alone, for a script."""

    template: ClassVar[str] = "bench/board_line.html"
    line: Line
    stages: Sequence[Stage]
    back: str
    line_refused: str


@router.get("/board")
def show_board(visit: Everybody, stage: str = "", how: str = "", job: str = "", page: str = "1") -> Response:
    """The board, or those of its drawers that have reached a stage or come to it next."""
    return show(visit, board_page(visit, read_asked(stage, how, job, page)))


def read_asked(stage: str, how: str, job: str, page: str) -> Asked:
    """What an address asks for; what cannot be is passed over."""
    return Asked(
        stage=stage if stage in {each.code for each in drawer_stages()} else "",
        how="next" if how == "next" else "reached",
        job=job[:20],
        page=max(1, int(page[:5])) if page.isascii() and page.isdigit() else 1,
    )


def asked_again(back: str) -> Asked:
    """What the address of the board asked for from which somebody tapped."""
    query = dict(parse_qsl(urlsplit(back).query))
    return read_asked(
        query.get("stage", ""), query.get("how", ""), query.get("job", ""), query.get("page", "1")
    )


def board_page(visit: Visit, asked: Asked, refused: str = "") -> BoardPage:
    """The board as it is asked for; seven queries, however many drawers there are."""
    db = visit.db
    counts = stage_counts(db, asked.job)
    wanted = BoardFilter(job_id=asked.job, stages=_wanted(asked) if asked.stage else None)
    total = _count(counts, wanted.stages)
    pages = max(1, -(-total // A_PAGE))
    asked = replace(asked, page=min(asked.page, pages))
    rows = board_rows(db, wanted, asked.page)
    taps = tapped(db, {row.carcase.id for row in rows}) if rows else ()
    return BoardPage(
        title="Board",
        columns=_columns(counts),
        answer=_answer(visit, asked, counts),
        groups=[_as_read(each, visit.unit) for each in groups_of(rows, taps, visit.now)],
        jobs=jobs_in_hand(db),
        stages=drawer_stages(),
        case_stages=case_stages(),
        asked=asked,
        back=asked.address(page=asked.page),
        total=total,
        pages=pages,
        clock=clock_of(visit),
        refused=refused,
    )


def _as_read(group: Group, unit: LengthUnit) -> Group:
    return replace(group, drawers=tuple(line_as_read(each, unit) for each in group.drawers))


def line_as_read(line: Line, unit: LengthUnit) -> Line:
    """A line with what holds it in the shop's unit."""
    return replace(line, step=line.step.in_unit(unit))


def _wanted(asked: Asked) -> tuple[str, ...]:
    return just_before(asked.stage) if asked.how == "next" else at_or_after(asked.stage)


def _count(counts: dict[str, int], stages: Sequence[str] | None) -> int:
    return sum(count for stage, count in counts.items() if stages is None or stage in stages)


def _columns(counts: dict[str, int]) -> list[Column]:
    return [
        Column(
            code=each.code,
            word=each.word,
            meaning=each.meaning,
            reached=_count(counts, at_or_after(each.code)),
            next=_count(counts, just_before(each.code)),
            total=_count(counts, None),
        )
        for each in drawer_stages()
    ]


def _answer(visit: Visit, asked: Asked, counts: dict[str, int]) -> Answer:
    """The count and the codes of those that have reached the stage that is asked for."""
    question = replace(asked, stage=asked.stage or ASKED_MOST)
    stage = drawer_stages()[place_of(question.stage, drawer_stages())]
    stages = _wanted(question)
    found = board_rows(visit.db, BoardFilter(job_id=asked.job, stages=stages), size=MOST_CODES)
    count = _count(counts, stages)
    codes = tuple(
        (mark, tuple(row.drawer.code for row in members)) for mark, members in groupby(found, key=_case_mark)
    )
    next_words = f"Next is “{stage.word}”"
    return Answer(
        words=next_words if question.how == "next" else stage.word.capitalize(),
        count=count,
        total=_count(counts, None),
        codes=codes,
        more=count - len(found),
    )


def _case_mark(row: BoardRow) -> str:
    return row.code.replace(f"-{row.drawer.code}", "")
