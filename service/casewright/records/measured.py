"""What was measured at the bench, size by size."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from sqlalchemy import select

from casewright.labour.bench import EventKind
from casewright.records.bench import BenchEvent, Carcase, Drawer
from casewright.records.board import Tapped
from casewright.records.sessions import Fenced


class SizeTap(NamedTuple):
    """One size that was tapped in, and where it was measured."""

    unit_id: str
    piece: int
    drawer: str
    tap: Tapped


def size_taps(db: Fenced, unit_ids: Iterable[str]) -> Sequence[SizeTap]:
    """The sizes of the drawers of some units, in the order of time; one query.

    Drawers that have no opening in the present design are left out.
    """
    # Asked by the case, so that a database starts from few taps and not from all of the shop.
    cases = select(Carcase.id).where(Carcase.unit_id.in_(list(unit_ids)))
    columns = [getattr(BenchEvent, name) for name in Tapped._fields]
    found = db.execute(
        select(Drawer.unit_id, Carcase.piece, Drawer.code, *columns)
        .join(BenchEvent, (BenchEvent.shop_id == Drawer.shop_id) & (BenchEvent.drawer_id == Drawer.id))
        .join(Carcase, (Carcase.shop_id == Drawer.shop_id) & (Carcase.id == Drawer.carcase_id))
        .where(
            BenchEvent.carcase_id.in_(cases),
            Drawer.gone.is_(False),
            BenchEvent.kind == EventKind.MEASURED.value,
        )
        .order_by(BenchEvent.at, BenchEvent.id)
    )
    return [SizeTap(unit_id, piece, drawer, Tapped(*tap)) for unit_id, piece, drawer, *tap in found]
