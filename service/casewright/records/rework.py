"""Where the pieces of a unit stand at the bench, and the time that was written down for their drawers."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from sqlalchemy import func, select

from casewright.records.bench import Carcase, Drawer, TimeEntry
from casewright.records.sessions import Fenced


class Standing(NamedTuple):
    """One drawer of a piece, with the stage of its case."""

    piece: int
    carcase_id: str
    case_stage: str
    drawer_id: str
    origin: str
    stage: str


def standing_of_unit(db: Fenced, unit_id: str) -> Sequence[Standing]:
    """Every drawer of every piece of a unit, those without an opening now too; one query."""
    found = db.execute(
        select(Carcase.piece, Carcase.id, Carcase.stage, Drawer.id, Drawer.origin, Drawer.stage)
        .join(Drawer, (Drawer.shop_id == Carcase.shop_id) & (Drawer.carcase_id == Carcase.id))
        .where(Carcase.unit_id == unit_id)
        .order_by(Carcase.piece, Drawer.position, Drawer.origin)
    )
    return [Standing(*row) for row in found]


def seconds_of_drawers(db: Fenced, unit_id: str) -> Mapping[str, int]:
    """The time that was written down for each drawer of a unit, by the drawer's id; one query."""
    found = db.execute(
        select(TimeEntry.drawer_id, func.sum(TimeEntry.seconds))
        .where(TimeEntry.unit_id == unit_id, TimeEntry.drawer_id.is_not(None))
        .group_by(TimeEntry.drawer_id)
    )
    return {drawer_id: int(seconds) for drawer_id, seconds in found if drawer_id}
