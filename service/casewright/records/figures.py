"""Queries about the revisions of a shop's figures."""

from collections.abc import Sequence

from sqlalchemy import select

from casewright.records.people import ShopFigures
from casewright.records.sessions import Fenced

A_PAGE = 20


def list_revisions(db: Fenced, number: int = 1) -> Sequence[ShopFigures]:
    """A page of revisions, the latest first, and one more below it to be compared with.

    Args:
        db: the session
        number: which page, from 1
    """
    return db.scalars(
        select(ShopFigures)
        .order_by(ShopFigures.revision.desc())
        .limit(A_PAGE + 1)
        .offset((number - 1) * A_PAGE)
    ).all()
