"""Options of a draft: another wood, finish or number, each shown by what it would change in the price."""

from fastapi import APIRouter
from starlette.responses import Response

from casewright.measure.saying import refusal
from casewright.pieces.asked.reading import CannotRead
from casewright.pieces.built.refusals import REFUSALS
from casewright.shop.figures import figures
from casewright.shop.keeping import once
from casewright.shop.options import OtherWay, add_option, other_spec, remove_option
from casewright.shop.quotes import LoadedQuote, load_quote
from casewright.shop.refusals import Refused
from casewright.shop.units import LoadedUnit, units_of
from casewright.web.frame.pages import see
from casewright.web.frame.typed import Reader
from casewright.web.frame.visits import Office, Visit
from casewright.web.quotes.option_form import read_way
from casewright.web.quotes.page import show_again

router = APIRouter()


@router.post("/quotes/{quote_id}/options")
def save_option(visit: Office, quote_id: str) -> Response:
    """Adds an option to a unit of the draft's job."""
    held = load_quote(visit.db, quote_id)
    read = Reader(visit.typed)
    label = read.line("label", most=120, needed="Write what the customer reads, such as In walnut.")
    units = units_of(visit.db, held.job)
    loaded = next((each for each in units if each.unit.id == read.typed.get("unit")), None)
    if loaded is None:
        read.fault("unit", "Choose one of the units.")
    way = read_way(read, visit)
    if read.faults or loaded is None:
        return show_again(visit, held, option=read.form)
    try:
        return see(once(visit.db, visit.typed.once, visit.now, lambda: _add(visit, held, loaded, label, way)))
    except (*REFUSALS, CannotRead) as error:
        read.fault("label", refusal(error, visit.unit))
    except Refused as refused:
        read.fault("label", str(refused))
    return show_again(visit, held, option=read.form)


def _add(visit: Visit, held: LoadedQuote, loaded: LoadedUnit, label: str, way: OtherWay) -> str:
    own = figures(visit.db, visit.shop, held.job)
    add_option(visit.db, loaded, label, other_spec(loaded, way), own, visit.who, visit.now)
    return f"/quotes/{held.quote.id}?said=added#options"


@router.post("/quotes/{quote_id}/options/{option_id}/removal")
def save_option_removal(visit: Office, quote_id: str, option_id: str) -> Response:
    """Takes an option out of what is offered."""
    held = load_quote(visit.db, quote_id)
    remove_option(visit.db, option_id, units_of(visit.db, held.job), visit.who, visit.now)
    return see(f"/quotes/{held.quote.id}#options", "removed")
