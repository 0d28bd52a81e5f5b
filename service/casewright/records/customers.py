"""Questions about customers."""

from collections.abc import Sequence
from typing import NamedTuple

from sqlalchemy import func, or_, select

from casewright.records.jobs import Customer, Job
from casewright.records.sessions import Fenced

A_PAGE = 50


class CustomerRow(NamedTuple):
    """One line of the list of customers."""

    id: str
    name: str
    email: str
    phone: str
    jobs: int


def contains(text: str) -> str:
    """A pattern that finds text anywhere; its own wild signs stand for themselves."""
    plain = text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_")
    return f"%{plain}%"


def list_customers(db: Fenced, words: str = "", page: int = 1) -> tuple[Sequence[CustomerRow], int]:
    """A page of customers in the order of their names, and how many there are."""
    found = select(Customer)
    if words:
        like = contains(words)
        found = found.where(
            or_(
                Customer.name.ilike(like, escape="\\"),
                Customer.email.ilike(like, escape="\\"),
                Customer.phone.ilike(like, escape="\\"),
            )
        )
    total = db.execute(found.with_only_columns(func.count(Customer.id))).scalar_one()
    jobs = (
        select(func.count(Job.id))
        .where(Job.shop_id == Customer.shop_id, Job.customer_id == Customer.id)
        .scalar_subquery()
    )
    rows = db.execute(
        found.with_only_columns(Customer.id, Customer.name, Customer.email, Customer.phone, jobs)
        .order_by(func.lower(Customer.name), Customer.id)
        .limit(A_PAGE)
        .offset((page - 1) * A_PAGE)
    )
    return [CustomerRow(*row) for row in rows], total


def jobs_of(db: Fenced, customer_id: str) -> Sequence[Job]:
    """A customer's jobs, the newest first."""
    return db.scalars(select(Job).where(Job.customer_id == customer_id).order_by(Job.number.desc())).all()
