"""From the editor of a unit: what is typed there, kept as another way to make it, not as a revision."""

from fastapi import APIRouter
from starlette.responses import Response

from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.words.otherwise import otherwise
from casewright.records.papers import QuoteState
from casewright.records.quotes import quote_rows
from casewright.shop.estimating import worked_unit
from casewright.shop.figures import figures_from
from casewright.shop.keeping import once
from casewright.shop.options import add_option
from casewright.shop.units import spec_text
from casewright.web.frame.pages import see
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.units.editor import work_unit_out
from casewright.web.units.form import read_values, values_of
from casewright.web.units.worked import Seen, see_unit

router = APIRouter()
NOT_OF_THE_UNIT = {"do", "once", "note"}
"""Fields of the form that say what to do with it, not what is built."""
MOST = 120


@router.post("/units/{unit_id}/options")
def save_unit_option(visit: Office, unit_id: str) -> Response:
    """Keeps what is typed in the editor as an option; what cannot be built is shown there again."""
    seen = see_unit(visit, unit_id)
    values = {name: value for name, value in visit.typed.values().items() if name not in NOT_OF_THE_UNIT}
    spec = read_values(values, seen.loaded.spec).spec
    opened = read_values(values_of(seen.loaded.text), seen.loaded.spec).spec
    figures = figures_from(seen.figures)
    page = work_unit_out(visit, unit_id)
    if spec is None or page.status_code != 200:
        return page

    def make() -> str:
        label = Reader(visit.typed).line("note", most=MOST)[:MOST] or _label(seen, spec)
        add_option(visit.db, seen.loaded, label, spec, figures, visit.who, visit.now, base=opened)
        return _back(visit, seen)

    return see(once(visit.db, visit.typed.once, visit.now, make))


def _label(seen: Seen, spec: UnitSpec) -> str:
    """What an option without a name is called: the first thing that it changes."""
    code = seen.loaded.unit.code
    text = spec_text(spec.model_copy(update={"code": code}))
    said = otherwise(seen.built, worked_unit(text, seen.figures), seen.writing.unit)
    first = said.partition(". ")[0].removesuffix(".")
    return first[:MOST] or "Made otherwise"


def _back(visit: Visit, seen: Seen) -> str:
    """The draft that offers it, where the job has one; else the unit as it was."""
    rows = quote_rows(visit.db, seen.loaded.job.id)
    draft = next((row for row in rows if row.state is QuoteState.DRAFT), None)
    return f"/quotes/{draft.id}?said=added#options" if draft else f"{seen.head.address}?said=added"
