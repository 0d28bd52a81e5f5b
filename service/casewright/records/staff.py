"""Questions about the people of a shop and how they come in."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import select

from casewright.records.people import KeyLink, LinkKind, Person, Role, SignIn
from casewright.records.sessions import Fenced


def list_people(db: Fenced) -> Sequence[Person]:
    """Everybody who works in the shop or has: those who are there first, by name."""
    return db.scalars(select(Person).order_by(Person.ended_at.is_not(None), Person.name, Person.id)).all()


def open_invitations(db: Fenced, now: datetime) -> Sequence[KeyLink]:
    """Invitations that still let somebody in, the first to end first."""
    return db.scalars(
        select(KeyLink)
        .where(KeyLink.kind == LinkKind.INVITATION, KeyLink.used_at.is_(None), KeyLink.ends_at > now)
        .order_by(KeyLink.ends_at, KeyLink.id)
    ).all()


def sign_ins_of(db: Fenced, person_id: str, seen_since: datetime, now: datetime) -> Sequence[SignIn]:
    """Where a person is signed in, the last seen first.

    Args:
        db: a session of the shop
        person_id: the person
        seen_since: a sign-in that was not used since then has ended
        now: the moment
    """
    return db.scalars(
        select(SignIn)
        .where(SignIn.person_id == person_id, SignIn.ends_at > now, SignIn.seen_at > seen_since)
        .order_by(SignIn.seen_at.desc(), SignIn.id)
    ).all()


def owners_held(db: Fenced) -> Sequence[Person]:
    """The shop's owners, held until the act is done: of two who step down at once, one comes second."""
    return db.scalars(
        select(Person)
        .where(Person.role == Role.OWNER, Person.ended_at.is_(None))
        .order_by(Person.id)
        .with_for_update()
        .execution_options(populate_existing=True)
    ).all()
