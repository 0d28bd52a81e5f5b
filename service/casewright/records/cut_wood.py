"""Questions about wood that was cut up for jobs."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import func, or_, select

from casewright.records.sessions import Fenced
from casewright.records.stock import Delivery, OrderJob, PieceState, StockEvent, StockPiece


def cut_up_for(db: Fenced, job_ids: Sequence[str]) -> Sequence[tuple[StockPiece, datetime]]:
    """Lumber of the rack that was cut up for some jobs and when; not what came for an order of theirs."""
    theirs = (
        select(Delivery.id)
        .join(OrderJob, (OrderJob.shop_id == Delivery.shop_id) & (OrderJob.order_id == Delivery.order_id))
        .where(OrderJob.job_id.in_(job_ids))
    )
    at = (
        select(func.max(StockEvent.at))
        .where(StockEvent.shop_id == StockPiece.shop_id, StockEvent.piece_id == StockPiece.id)
        .where(StockEvent.kind == "use")
        .scalar_subquery()
    )
    rows = db.execute(
        select(StockPiece, at)
        .where(StockPiece.state == PieceState.USED, StockPiece.is_sheet.is_(False))
        .where(StockPiece.for_job.in_(job_ids))
        .where(or_(StockPiece.delivery_id.is_(None), StockPiece.delivery_id.not_in(theirs)))
        .order_by(StockPiece.id)
    )
    return [(row[0], row[1] or row[0].created_at) for row in rows]
