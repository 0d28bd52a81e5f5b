"""The demo's layout: boards that were on the rack, what the solver answered once, and what was put away.

The answer is kept beside the demo as it was given, for solving it anew would hold up whoever looks for the
first time; `tests/make_demo_layout.py` makes it, and a test says when the job has other parts by now.
"""

import json
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from importlib.resources import files
from typing import Any

from casewright.measure.lengths import LengthUnit, parse_length
from casewright.pieces.asked.shop import Shop as Figures
from casewright.records.base import new_id
from casewright.records.jobs import Job
from casewright.records.layouts import CutTick
from casewright.records.sessions import Fenced
from casewright.records.stock import PieceKind
from casewright.shop.cut_files import sort_called
from casewright.shop.layouts import ask_layout, cuts_of, end_layout
from casewright.shop.putting_away import boards_cut, put_away
from casewright.shop.stock import PieceFacts, StockSort, label, make_piece

MARK = re.compile(r"BXX\d\d")
"""What stands in the kept layout for the label of a board: the shop's next one when the demo comes in."""
SECONDS = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutter:
    """Who cuts, and when.

    Attributes:
        office: who asked for the layout
        bench: who cut by it
        tallied: when the boards came on the rack
        asked: when the layout was asked for
        cut: when the boards were cut and put away
    """

    office: str
    bench: str
    tallied: datetime
    asked: datetime
    cut: datetime


@cache
def kept_layout(unit: str) -> str:
    """The layout as it is kept beside the demo, as JSON: `asked` and `answer`.

    Args:
        unit: of its words and drawings, `in` or `mm`
    """
    return (files("casewright.shop") / "data" / f"demo_layout_{unit}.json").read_text(encoding="utf-8")


def lay_out_demo(db: Fenced, job: Job, unit: LengthUnit, figures: Figures, who: Cutter) -> None:
    """Puts boards on the rack, a layout of a job on them, and what was left of them back on the rack.

    Args:
        db: the session
        job: the demo's job
        unit: the shop's unit
        figures: the shop's figures
        who: who cuts, and when
    """
    text = kept_layout(unit.value)
    labels = dict(_boards(db, json.loads(text)["asked"]["boards"], who))
    held = json.loads(MARK.sub(lambda found: labels[found[0]], text))
    layout = ask_layout(db, job.id, held["asked"], seconds=SECONDS, seed=0, who=who.office, now=who.asked)
    end_layout(db, layout.id, who.asked, answer=held["answer"])
    db.add_all(
        CutTick(
            id=(tick := new_id()),
            layout_id=layout.id,
            job_id=job.id,
            board=board,
            step=step,
            is_done=True,
            tap=tick,
            at=who.cut,
            who=who.bench,
        )
        for board, step in cuts_of(held["answer"])
    )
    db.flush()
    boards = [(each, each.left) for each in boards_cut(db, layout)]
    put_away(db, layout, job, boards, figures, who.bench, who.cut)


def _boards(db: Fenced, boards: Iterable[Mapping[str, Any]], who: Cutter) -> Iterable[tuple[str, str]]:
    """Tallies the boards of the layout; gives for each mark its label."""
    for board in boards:
        sort = sort_called(board["wood"], board["class"])
        facts = PieceFacts(
            width=_inches(board["width"]),
            length=_inches(board["length"]),
            moisture=7.0,
            place=board["place"],
        )
        made = make_piece(
            db,
            PieceKind.BOARD,
            StockSort(material=sort.material, size=sort.size, cut=sort.cut),
            facts,
            "",
            who.bench,
            who.tallied,
            cost_cents=round(float(board["cost"]) * 100),
            demo=True,
        )
        yield board["code"], label(made)


def _inches(size: str) -> float:
    return float(parse_length(size, LengthUnit.INCH))
