"""The same layout asked for again, with something changed."""

from collections.abc import Mapping
from typing import Any

from starlette.background import BackgroundTask
from starlette.responses import Response

from casewright.records.layouts import CutLayout
from casewright.shop.keeping import once
from casewright.shop.layouts import ask_layout
from casewright.web.cutting.crews import crew_of
from casewright.web.frame.pages import see
from casewright.web.frame.visits import Visit


def ask_again(visit: Visit, layout: CutLayout, asked: Mapping[str, Any]) -> Response:
    """Asks for a layout in the time of one before it; a form that is sent twice counts once."""

    def make() -> str:
        again = ask_layout(
            visit.db,
            layout.job_id,
            asked,
            seconds=layout.seconds,
            seed=layout.seed,
            who=visit.who,
            now=visit.now,
        )
        return f"/cutting/{again.id}"

    answer = see(once(visit.db, visit.typed.once, visit.now, make))
    answer.background = BackgroundTask(crew_of(visit.request).wake)
    return answer
