"""Links that are good once: an invitation, a way to a new password. Only the hash of a secret is kept."""

import re
import secrets
from datetime import datetime, timedelta
from hashlib import sha256

from sqlalchemy import or_, select, update

from casewright.records.base import ID_LENGTH, SIGNS
from casewright.records.people import KeyLink, LinkKind, Person, Role
from casewright.records.sessions import Fenced
from casewright.shop.keeping import note_history
from casewright.shop.refusals import Refused

INVITED_FOR = timedelta(days=7)
RESET_FOR = timedelta(minutes=30)
SECRET = re.compile(rf"[{SIGNS}]{{{ID_LENGTH}}}\.[A-Za-z0-9_-]{{20,60}}")
"""What a cookie or a link carries: the shop, and a token of which only the hash is kept."""


class WrongLink(Refused):
    """A secret that opens nothing: no link, a used one, one that has run out. Whoever catches it counts it.

    Attributes:
        door: the door that it was tried at
    """

    def __init__(self, kind: LinkKind) -> None:
        super().__init__("This link has been used, or it has run out. Ask who sent it for a new one.", 404)
        self.door = f"{kind.value} link"


def token_hash(token: str) -> str:
    """What is kept of a secret that was handed out."""
    return sha256(token.encode()).hexdigest()


def shop_of_secret(secret: str) -> str:
    """The shop that a cookie or a link names; empty for what cannot be one."""
    return secret.partition(".")[0] if SECRET.fullmatch(secret) else ""


def invite(db: Fenced, maker: Person, role: Role, now: datetime) -> str:
    """A link that lets one new person in.

    Returns:
        The secret part of the link.
    """
    note_history(db, maker.name, now, f"Invited somebody as {role.value}.")
    return _new_link(db, LinkKind.INVITATION, role, maker, now, INVITED_FOR)


def offer_new_password(db: Fenced, person: Person, maker: Person, now: datetime) -> str:
    """A link with which a person sets a new password; earlier ones stop working.

    Returns:
        The secret part of the link.
    """
    end_resets(db, person, now)
    said = f"Made a link to a new password for {person.name}."
    note_history(db, maker.name, now, said, shop_id=person.shop_id)
    return _new_link(db, LinkKind.RESET, person.role, maker, now, RESET_FOR, person)


def end_resets(db: Fenced, person: Person, now: datetime) -> None:
    """Ends every open link with which a person could set a new password."""
    db.execute(
        update(KeyLink)
        .where(
            KeyLink.shop_id == person.shop_id,
            KeyLink.kind == LinkKind.RESET,
            KeyLink.person_id == person.id,
            KeyLink.used_at.is_(None),
        )
        .values(used_at=now)
    )


def end_links_of(db: Fenced, maker: Person, now: datetime) -> None:
    """Ends every open link that a person made, for whomever: one kept back would be a way in again.

    Links of which it is not known who made them end, too.
    """
    db.execute(
        update(KeyLink)
        .where(
            KeyLink.shop_id == maker.shop_id,
            KeyLink.used_at.is_(None),
            or_(KeyLink.made_by_id == maker.id, KeyLink.made_by_id.is_(None)),
        )
        .values(used_at=now)
    )


def _new_link(
    db: Fenced,
    kind: LinkKind,
    role: Role,
    maker: Person,
    now: datetime,
    lasts: timedelta,
    person: Person | None = None,
) -> str:
    token = secrets.token_urlsafe(24)
    shop_id = person.shop_id if person else db.shop_id
    db.add(
        KeyLink(
            shop_id=shop_id,
            kind=kind,
            token_hash=token_hash(token),
            person_id=person.id if person else None,
            role=role,
            made_by=maker.name,
            made_by_id=maker.id,
            created_at=now,
            ends_at=now + lasts,
        )
    )
    return f"{shop_id}.{token}"


def find_link(db: Fenced, kind: LinkKind, secret: str, now: datetime, *, use: bool = False) -> KeyLink:
    """The link that a secret opens.

    Args:
        db: a session across shops
        kind: what the link is for
        secret: the secret part of its address
        now: the moment
        use: whether it is about to be used: of several who come at once, the first takes it

    Raises:
        WrongLink: no link, a used one, or one that has run out; the same sentence for all
    """
    shop_id, _, token = secret.partition(".")
    asked = select(KeyLink).where(
        KeyLink.shop_id == shop_id,
        KeyLink.kind == kind,
        KeyLink.token_hash == token_hash(token),
        KeyLink.used_at.is_(None),
        KeyLink.ends_at > now,
    )
    if not shop_of_secret(secret):
        found = None
    else:
        found = db.scalars(asked.with_for_update() if use else asked).first()
    if found is None:
        raise WrongLink(kind)
    return found
