"""Questions about customers."""

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

from sqlalchemy import func, or_, select

from casewright.records.jobs import Customer, Job
from casewright.records.sessions import Fenced

A_PAGE = 50
MOST_CHOICES = 500
"""As many a list to choose from may have; further ones are reached by their own page."""


class CustomerRow(NamedTuple):
    """One line of the list of customers."""

    id: str
    name: str
    email: str
    phone: str
    jobs: int
    demo: bool


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
        found.with_only_columns(
            Customer.id, Customer.name, Customer.email, Customer.phone, jobs, Customer.demo
        )
        .order_by(func.lower(Customer.name), Customer.id)
        .limit(A_PAGE)
        .offset((page - 1) * A_PAGE)
    )
    return [CustomerRow(*row) for row in rows], total


def customers_to_choose(db: Fenced, most: int = MOST_CHOICES) -> Sequence[tuple[str, str]]:
    """Id and name of every customer in the order of their names; of very many only the newest.

    Customers of one name are told apart by their e-mail address or telephone.
    """
    newest = (
        select(Customer.id, Customer.name, Customer.email, Customer.phone)
        .order_by(Customer.id.desc())
        .limit(most)
    )
    rows = sorted(db.execute(newest), key=lambda row: (row[1].casefold(), row[0]))
    names = Counter(row[1].casefold() for row in rows)
    return [(row[0], _told_apart(row) if names[row[1].casefold()] > 1 else row[1]) for row in rows]


def _told_apart(row: Sequence[str]) -> str:
    _, name, email, phone = row
    return f"{name} · {email or phone}" if email or phone else name


def jobs_of(db: Fenced, customer_id: str) -> Sequence[Job]:
    """A customer's jobs, the newest first."""
    return db.scalars(select(Job).where(Job.customer_id == customer_id).order_by(Job.number.desc())).all()
