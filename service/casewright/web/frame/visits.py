"""A visit: who asks, of which shop, with which session. Every route says who may come in."""

from collections.abc import AsyncIterator, Callable, Iterator
from contextlib import AbstractContextManager
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from typing import Annotated, Any
from zoneinfo import ZoneInfo

from fastapi import Depends, Request
from sqlalchemy import Engine

from casewright.measure.lengths import LengthUnit
from casewright.records.people import Person, Role, Shop
from casewright.records.sessions import Fenced, across_shops, in_passing, reading, writing
from casewright.shop.entering import note_seen, who_is
from casewright.shop.links import shop_of_secret
from casewright.shop.refusals import Refused
from casewright.web.frame.around import frame_in
from casewright.web.frame.events import note_event
from casewright.web.frame.turns import Turns
from casewright.web.frame.typed import Typed, read_typed

SEEN_EVERY = timedelta(minutes=10)
SAFE = {"GET", "HEAD"}


class NotSignedIn(Exception):
    """The page is for people of the shop, and nobody is signed in."""

    def __init__(self, typed: Typed) -> None:
        self.typed = typed


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """One request of somebody who is signed in.

    Attributes:
        request: the request
        db: a session inside the person's shop; it reads for GET and writes for POST
        shop: the shop
        person: who asks
        sign_in: the id of the sign-in
        now: the moment, in UTC
        typed: the form that was sent
    """

    request: Request
    db: Fenced
    shop: Shop
    person: Person
    sign_in: str
    now: datetime
    typed: Typed

    @property
    def who(self) -> str:
        """The name that goes into records of what was done."""
        return self.person.name

    @property
    def today(self) -> date:
        """The day in the shop's own time zone."""
        return self.day_of(self.now)

    def day_of(self, moment: datetime) -> date:
        """The day of a moment, in the shop's own time zone."""
        return moment.astimezone(ZoneInfo(self.shop.time_zone)).date()

    @property
    def unit(self) -> LengthUnit:
        """The unit in which the shop thinks."""
        return LengthUnit(self.shop.unit)

    @property
    def is_owner(self) -> bool:
        """Whether cost, wage and margin may be shown."""
        return self.person.role is Role.OWNER

    @property
    def sees_prices(self) -> bool:
        """Whether prices may be shown at all."""
        return self.person.role in {Role.OWNER, Role.MAKER}

    @property
    def wants_block(self) -> str:
        """The block of the page that a script asked for; empty for the whole page."""
        return self.request.headers.get("x-block", "") if self.request.headers.get("hx-request") else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Call:
    """One request of somebody whose shop is not known: at the door, or with a link.

    Attributes:
        request: the request
        db: a session across shops; it reads for GET and writes for POST
        now: the moment, in UTC
        typed: the form that was sent
    """

    request: Request
    db: Fenced
    now: datetime
    typed: Typed


def cookie_name(request: Request) -> str:
    """The name of the sign-in cookie; over TLS it is held to this host."""
    return "__Host-casewright" if request.url.scheme == "https" else "casewright"


def engine_of(request: Request) -> Engine:
    """The database of the application."""
    engine: Engine = request.app.state.engine
    return engine


def address_of(request: Request) -> str:
    """Where a request came from."""
    return request.client.host if request.client else "unknown"


def site_of(request: Request) -> str:
    """The address of this site, for links that are handed on: as it was set, else as it was asked for."""
    return request.app.state.address or f"{request.url.scheme}://{request.url.netloc}"


def moment(request: Request) -> datetime:
    """The present moment, by the application's clock."""
    clock: Callable[[], datetime] = request.app.state.clock
    return clock().astimezone(UTC)


def in_turn(*, reads: bool = False) -> Any:
    """A dependency that gives the form once it is the request's turn.

    It waits after the whole form has come in, so that a slow sender holds nobody up.

    Args:
        reads: a POST that saves nothing
    """

    async def wait(request: Request, typed: Annotated[Typed, Depends(read_typed)]) -> AsyncIterator[Typed]:
        turns: Turns = request.app.state.turns
        posts = request.method not in SAFE
        async with turns.take(writes=posts and not reads, looks=posts and reads):
            yield typed

    return Depends(wait, scope="function")


def allow(*roles: Role, reads: bool = False) -> Any:
    """A dependency that lets people of some roles in, with a session that fits the request.

    Args:
        roles: who may come in
        reads: a POST that saves nothing
    """

    def enter(request: Request, typed: Annotated[Typed, in_turn(reads=reads)]) -> Iterator[Visit]:
        now = moment(request)
        cookie = request.cookies.get(cookie_name(request), "")
        shop_id = shop_of_secret(cookie)
        if not shop_id:
            raise NotSignedIn(typed)
        with _session(request, shop_id, reads=reads) as db:
            found = who_is(db, cookie, now)
            if found is None:
                raise NotSignedIn(typed)
            sign_in, person, shop = found
            # For the pages that say why there is no other: they are made when this session has ended.
            request.state.frame = frame_in(request, shop, person)
            visit = Visit(
                request=request, db=db, shop=shop, person=person, sign_in=sign_in.id, now=now, typed=typed
            )
            if person.role not in roles:
                note_event(request, "page", "refused", shop=shop_id, person=person.id, role=person.role)
                raise Refused(_reserved(roles), 403)
            is_due = now - sign_in.seen_at >= SEEN_EVERY
            yield visit
        if is_due:
            _note_seen(visit)

    enter.roles = frozenset(roles)  # type: ignore[attr-defined]
    return Depends(enter, scope="function")


def _session(request: Request, shop_id: str, *, reads: bool) -> AbstractContextManager[Fenced]:
    if reads or request.method in SAFE:
        return reading(engine_of(request), shop_id)
    return writing(engine_of(request), shop_id)


def _note_seen(visit: Visit) -> None:
    """Remembers now and then that somebody is here, after the page's own session has ended."""
    shop_id, person_id = visit.shop.shop_id, visit.person.id
    in_passing(
        engine_of(visit.request),
        shop_id,
        lambda db: note_seen(db, shop_id, person_id, visit.now, visit.sign_in),
    )


def _reserved(roles: tuple[Role, ...]) -> str:
    names = " or ".join(f"the {role.value}" for role in roles)
    return f"This page is for {names} of the shop. Ask them, or sign in as one of them."


def strangers(*, reads: bool = False) -> Any:
    """A dependency for pages that anybody may ask for: the door, and what a secret link opens."""

    def enter(request: Request, typed: Annotated[Typed, in_turn(reads=reads)]) -> Iterator[Call]:
        write = not reads and request.method not in SAFE
        with across_shops(engine_of(request), write=write) as db:
            yield Call(request=request, db=db, now=moment(request), typed=typed)

    enter.roles = frozenset()  # type: ignore[attr-defined]
    return Depends(enter, scope="function")


Owner = Annotated[Visit, allow(Role.OWNER)]
Office = Annotated[Visit, allow(Role.OWNER, Role.MAKER)]
OfficeLooks = Annotated[Visit, allow(Role.OWNER, Role.MAKER, reads=True)]
Everybody = Annotated[Visit, allow(*Role)]
Stranger = Annotated[Call, strangers()]
