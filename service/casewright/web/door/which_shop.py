"""Somebody with one address and one password in several shops says which door they mean.

The password was right once and is not asked again: each shop on the page carries a mark that only this
service can make. It stands in the page and never in an address, holds for a few minutes, and no longer than
the password.
"""

import hmac
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from typing import ClassVar

from starlette.requests import Request

from casewright.records.people import Person
from casewright.records.sessions import Fenced
from casewright.shop.entering import Membership
from casewright.web.frame.pages import Page

LASTS = timedelta(minutes=10)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopOffered:
    """A shop to choose.

    Attributes:
        name: its name
        role: as what the person comes in
        mark: what shows that they may
    """

    name: str
    role: str
    mark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WhichShopPage(Page):
    """The shops that an address and a password open."""

    template: ClassVar[str] = "door/which_shop.html"
    shops: tuple[ShopOffered, ...]
    next: str
    kept: tuple[tuple[str, str], ...]


def offered(request: Request, found: Iterable[Membership], now: datetime) -> tuple[ShopOffered, ...]:
    """The shops as the page offers them."""
    until = str(int((now + LASTS).timestamp()))
    return tuple(
        ShopOffered(
            name=each.shop,
            role=each.person.role.value,
            mark=".".join((each.person.shop_id, each.person.id, until, _proof(request, each.person, until))),
        )
        for each in found
    )


def chosen(request: Request, db: Fenced, mark: str, now: datetime) -> Person | None:
    """Who comes in by a mark; None for one that was made up, has run out, or is older than the password.

    Args:
        request: whose service has the key of the marks
        db: a session across shops
        mark: as it was sent
        now: the moment
    """
    shop_id, _, rest = mark.partition(".")
    person_id, _, rest = rest.partition(".")
    until, _, proof = rest.partition(".")
    person = db.get(Person, (shop_id, person_id))
    if person is None or person.ended_at is not None:
        return None
    if not hmac.compare_digest(proof.encode(), _proof(request, person, until).encode()):
        return None
    return person if now < datetime.fromtimestamp(int(until), UTC) else None  # a number: the proof is ours


def _proof(request: Request, person: Person, until: str) -> str:
    key: bytes = request.app.state.secret
    said = f"which shop\n{person.shop_id}\n{person.id}\n{until}\n{person.password_hash}"
    return hmac.new(key, said.encode(), sha256).hexdigest()
