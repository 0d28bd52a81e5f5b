"""What all drawers of a unit share, chosen where the maker left it out."""

from casewright.joinery.defaults import USUAL, Usual, chosen_lap, chosen_rabbet
from casewright.joinery.gauges import first_gauge
from casewright.measure.ledger import Ledger
from casewright.measure.saying import say
from casewright.pieces.asked.slide_spec import OwnSlide
from casewright.pieces.asked.spec import UnitSpec
from casewright.pieces.drawers.sizes import CannotBuild, DrawerMake
from casewright.pieces.layout.season import across


def shared_construction(
    spec: UnitSpec, ledger: Ledger, usual: Usual = USUAL, slide: OwnSlide | None = None
) -> DrawerMake:
    """Fills in what the drawers of a unit share.

    Args:
        spec: what the maker chose
        ledger: keeps the working
        usual: the shop's habits
        slide: the metal slide that they run on; None for wood

    Returns:
        The construction that all drawers share.

    Raises:
        CannotBuild: the lap leaves nothing of the front to cut sockets into

    Source: the defaults of the joinery, each with its own source.
    """
    drawers = spec.drawers
    chosen = []
    lap, rabbet = drawers.lap, drawers.rabbet
    if lap is None:
        chosen.append(chosen_lap(drawers.front, usual))
        lap = ledger.given("drawers.lap", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if rabbet is None:
        chosen.append(chosen_rabbet(drawers.side, usual))
        rabbet = ledger.given("drawers.rabbet", chosen[-1].value, say("chosen: {}", chosen[-1].why))
    if lap >= drawers.front:
        raise CannotBuild(
            say(
                "drawers.lap: a lap of {} leaves nothing of a front {:bare} thick; make it {:bare}",
                lap,
                drawers.front,
                chosen_lap(drawers.front, usual).value,
            )
        )
    if rabbet >= drawers.side:
        raise CannotBuild(
            say(
                "drawers.rabbet: a rabbet of {} leaves nothing of a side {:bare} thick; make it {:bare}",
                rabbet,
                drawers.side,
                chosen_rabbet(drawers.side, usual).value,
            )
        )
    return DrawerMake(
        drawers=drawers,
        back=drawers.side if drawers.back is None else drawers.back,
        lap=lap,
        rabbet=rabbet,
        gauge_1=ledger.take("drawers.gauge_1", first_gauge, front=drawers.front, lap=lap),
        front_moves=across(spec.woods.of("fronts"), ledger),
        side_moves=across(spec.woods.drawers, ledger),
        chosen=tuple(chosen),
        slide=slide,
    )
