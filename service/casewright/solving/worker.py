"""The process that lays parts out: jobs and stops come in a line each, progress and answers go out likewise.

    python -m casewright.solving.worker

It ends when its input does, so it never outlives the service that started it.
"""

import json
import os
import sys
import time
from collections.abc import Mapping
from queue import SimpleQueue
from threading import Thread
from typing import Any, TextIO

from casewright.cutting.asked.cut_file import CutFile, cut_file_of
from casewright.cutting.budget import Budget, Progress
from casewright.cutting.plans.plan import plan_cuts
from casewright.cutting.plans.values import CutPlan
from casewright.drawing.bar_layout import alike, bar_drawing
from casewright.drawing.board_layout import board_drawing
from casewright.measure.json_files import CannotRead
from casewright.papers.cutting_data import cutting_data
from casewright.solving.memory import limit_memory

TOO_MUCH_MEMORY = (
    "This took more memory than a layout may. Lay out fewer parts at a time: one unit, or one wood."
)
WARM_UP: dict[str, Any] = {
    "cut_file": 1,
    "parts": [
        {"code": "P", "wood": "w", "class": "4/4", "length": "20", "width": "4", "count": 3},
        {"code": "G", "wood": "w", "class": "4/4", "length": "20", "width": "14", "glue_up": {}},
    ],
    "boards": [{"code": "B", "wood": "w", "class": "4/4", "length": "96", "width": "9", "count": 4}],
}
"""Enough to load all that a job needs before the first one comes."""


def main() -> None:
    """Works until the input ends."""
    limit_memory()
    jobs: SimpleQueue[dict[str, Any] | None] = SimpleQueue()
    stops: set[str] = set()
    Thread(target=_listen, args=(sys.stdin, jobs, stops), daemon=True).start()
    plan_cuts(cut_file_of(WARM_UP), Budget(now=time.monotonic, seconds=0.05, steps=1))
    while (job := jobs.get()) is not None:
        _say({"id": job["id"], **_answer(job, stops)})


def _listen(lines: TextIO, jobs: SimpleQueue[dict[str, Any] | None], stops: set[str]) -> None:
    """Takes in jobs and stops while another job is worked on."""
    for line in lines:
        said = json.loads(line)
        if "stop" in said:
            stops.add(said["stop"])
        else:
            jobs.put(said)
    jobs.put(None)


def _answer(job: Mapping[str, Any], stops: set[str]) -> dict[str, Any]:
    """The layout of one job, or why there is none, in words for whoever asked."""

    def tell(progress: Progress) -> None:
        _say(
            {
                "id": job["id"],
                "progress": {
                    "cost": progress.cost,
                    "bound": progress.bound,
                    "seconds": round(progress.seconds, 2),
                },
            }
        )

    budget = Budget(
        now=time.monotonic,
        seconds=job["seconds"],
        seed=job.get("seed", 0),
        stop=lambda: job["id"] in stops,
        tell=tell,
    )
    try:
        file = cut_file_of(job["file"])
        return {"done": answer_of(file, plan_cuts(file, budget))}
    except CannotRead as error:
        return {"refused": str(error)}
    except MemoryError:
        return {"refused": TOO_MUCH_MEMORY}


def answer_of(file: CutFile, plan: CutPlan) -> dict[str, Any]:
    """A layout as it is kept: its values, a drawing of each board in the same order, of lengths too.

    Args:
        file: what was asked
        plan: its layout
    """
    return {
        **cutting_data(plan),
        "drawings": [
            [board_drawing(board, file.unit, lettered=False).svg() for board in lot.boards]
            for lot in plan.lots
        ],
        "length_drawings": [
            [bar_drawing(bars, lot.wood, file.unit).svg() for bars in alike(lot.lengths)] for lot in plan.lots
        ],
    }


def _say(what: Mapping[str, Any]) -> None:
    try:
        sys.stdout.write(json.dumps(what) + "\n")
        sys.stdout.flush()
    except BrokenPipeError:
        os._exit(0)  # whoever asked is gone


if __name__ == "__main__":
    main()
