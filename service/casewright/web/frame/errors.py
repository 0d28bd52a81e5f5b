"""What people see when something cannot be done: a sentence, a way back, and a number for the log."""

import logging
from contextlib import suppress
from dataclasses import dataclass
from http import HTTPStatus
from typing import ClassVar
from urllib.parse import quote

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from sqlalchemy.exc import OperationalError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from sqlalchemy.orm.exc import StaleDataError
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect
from starlette.responses import RedirectResponse, Response

from casewright.records.engine import is_disk_full
from casewright.records.sessions import reading
from casewright.shop.entering import who_is
from casewright.shop.links import shop_of_secret
from casewright.shop.refusals import Refused, Stale, TooMany
from casewright.web.frame.around import Frame, frame_in
from casewright.web.frame.back import way_back
from casewright.web.frame.pages import Page, is_local, see, show_stranger
from casewright.web.frame.rooms import methods_at
from casewright.web.frame.turns import Crowded
from casewright.web.frame.typed import Form, Typed
from casewright.web.frame.visits import NotSignedIn, cookie_name, engine_of, moment

log = logging.getLogger("casewright.web")

SENTENCES = {
    400: "The request could not be read. Go back, look at what you typed, and send it again.",
    404: "There is no such page in this shop. It may have been moved, or the address has a slip in it.",
    405: "This address does not take that kind of request.",
    409: "Somebody else changed this meanwhile. Go back, look at both, and save again.",
    413: "That was more than this page can take: at most 2 MB. Send less at once.",
    422: "The request could not be read. Go back, look at what you typed, and send it again.",
    507: (
        "There is no room left on the disk of this service, so nothing can be saved. Nothing was lost or "
        "half saved: tell whoever looks after it to make room, then send it again."
    ),
    503: "The database is busy. Nothing was lost or half saved; send it again in a moment.",
}
NAMES = {404: "Not found", 403: "Not for you", 409: "This cannot be done", 429: "Too many tries"}
CHANGED = "Changed meanwhile"
BROKEN = (
    "Something in the program went wrong, and it has been written down. Nothing was half saved: "
    "what you saved before is there. Go back, and what you typed should still stand in the form."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TroublePage(Page):
    """A page that says why there is no other."""

    template: ClassVar[str] = "door/trouble.html"
    message: str
    reference: str
    kept: tuple[tuple[str, str], ...] = ()
    action: str = ""
    back: str = ""
    """The page of this site that somebody came from; empty where it is not known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SignInPage(Page):
    """The door."""

    template: ClassVar[str] = "door/sign_in.html"
    form: Form
    next: str
    kept: tuple[tuple[str, str], ...] = ()


def trouble(
    request: Request, status: int, message: str = "", kept: tuple[tuple[str, str], ...] = (), title: str = ""
) -> Response:
    """The page for a status, in the frame of whoever is known to be signed in.

    Args:
        request: the request
        status: why there is no other page
        message: a sentence that says so; empty for that of the status
        kept: what was typed: it is on the page, ready to be sent again
        title: what the page is called; empty for the name of the status
    """
    sentence = message or SENTENCES.get(status) or HTTPStatus(status).description or "That cannot be done."
    page = TroublePage(
        title=title or NAMES.get(status, "This did not work"),
        message=sentence,
        reference=getattr(request.state, "reference", ""),
        kept=kept,
        action=request.url.path,
        back=way_back(request),
    )
    return show_stranger(request, page, status, getattr(request.state, "frame", Frame(here=request.url.path)))


def without_passwords(typed: Typed) -> tuple[tuple[str, str], ...]:
    """What was typed, to be kept on a page; never a password."""
    return tuple((name, value) for name, value in typed.pairs if "password" not in name)


def on_refused(request: Request, error: Exception) -> Response:
    """The shop's rules say no; what somebody wrote is kept on the page."""
    status = error.status if isinstance(error, Refused) else 409
    kept = _typed(request) if status in {409, 422, 429} else ()
    written = any(len(value) > 20 for name, value in kept if name != "once")
    title = CHANGED if isinstance(error, Stale) else ""
    answer = trouble(request, status, str(error), kept if written else (), title)
    if isinstance(error, TooMany):
        answer.headers["retry-after"] = str(error.seconds)
    return answer


def find_frame(request: Request) -> None:
    """Finds out who is signed in where no page was reached that would have asked; one query at most."""
    cookie = request.cookies.get(cookie_name(request), "")
    shop_id = shop_of_secret(cookie)
    if not shop_id or hasattr(request.state, "frame"):
        return
    with suppress(OperationalError, PoolTimeout), reading(engine_of(request), shop_id) as db:
        if found := who_is(db, cookie, moment(request)):
            _, person, shop = found
            request.state.frame = frame_in(request, shop, person)


def on_not_signed_in(request: Request, error: Exception) -> Response:
    """Nobody is signed in: the door, which leads back to where one wanted to go, with what was typed."""
    typed = error.typed if isinstance(error, NotSignedIn) else Typed()
    here = request.url.path + (f"?{request.url.query}" if request.url.query else "")
    if request.method in {"GET", "HEAD"}:
        if here == "/":
            return see("/sign-in")
        return see(f"/sign-in?next={quote(here, safe='/')}") if is_local(here) else see("/sign-in")
    page = SignInPage(title="Sign in", form=Form(), next=request.url.path, kept=without_passwords(typed))
    return show_stranger(request, page, 401)


def on_http(request: Request, error: Exception) -> Response:
    """Whatever the framework refuses: no such page, a wrong method, a body too large."""
    status = error.status_code if isinstance(error, HTTPException) else 400
    if status == 404 and (meant := _without_slash(request)):
        return RedirectResponse(meant, 307)
    find_frame(request)
    answer = trouble(request, status)
    if isinstance(error, HTTPException) and error.headers:
        answer.headers.update(error.headers)
    if status == 405:  # the framework names the methods of one page only, and there may be two at a path
        taken = methods_at(request.app.state.routes, request.url.path)
        answer.headers["allow"] = ", ".join(sorted(taken | ({"HEAD"} if "GET" in taken else set())))
    return answer


def _without_slash(request: Request) -> str:
    """The address that is meant by one with a stroke too many; empty where there is none."""
    path = request.url.path
    meant = path.rstrip("/")
    if request.method != "GET" or meant == path or not is_local(meant):
        return ""
    if not methods_at(request.app.state.routes, meant):
        return ""
    return f"{meant}?{request.url.query}" if request.url.query else meant


def on_unreadable(request: Request, error: Exception) -> Response:
    """An address or a body that does not fit its page."""
    find_frame(request)
    return trouble(request, 404 if request.method in {"GET", "HEAD"} else 400)


def on_stale(request: Request, error: Exception) -> Response:
    """Two saved the same row in the same moment; the second is told, with what was typed."""
    return trouble(request, 409, kept=_typed(request), title=CHANGED)


def on_busy(request: Request, error: Exception) -> Response:
    """The database does not answer in time, or has no room."""
    is_full = is_disk_full(getattr(error, "orig", None))
    said = "disk full" if is_full else "database busy"
    log.warning(said, extra={"reference": request.state.reference, "error": type(error).__name__})
    answer = trouble(request, 507 if is_full else 503, kept=_typed(request))
    answer.headers["retry-after"] = "60" if is_full else "2"
    return answer


def on_gone(request: Request, error: Exception) -> Response:
    """Whoever sent the form hung up before all of it was there: no fault, and nobody left to read of one."""
    return Response(status_code=400)


def on_fault(request: Request, error: Exception) -> Response:
    """A fault of the program: logged with a number that the page shows; what was typed is kept."""
    log.error("fault", exc_info=error, extra={"reference": getattr(request.state, "reference", "")})
    return trouble(request, 500, BROKEN, kept=_typed(request))


def _typed(request: Request) -> tuple[tuple[str, str], ...]:
    """What this request brought, as the page that failed had read it."""
    return without_passwords(getattr(request.state, "typed", Typed()))


def add_handlers(app: FastAPI) -> None:
    """Gives an application these pages."""
    app.add_exception_handler(Refused, on_refused)
    app.add_exception_handler(NotSignedIn, on_not_signed_in)
    app.add_exception_handler(HTTPException, on_http)
    app.add_exception_handler(RequestValidationError, on_unreadable)
    app.add_exception_handler(StaleDataError, on_stale)
    app.add_exception_handler(OperationalError, on_busy)
    app.add_exception_handler(PoolTimeout, on_busy)
    app.add_exception_handler(Crowded, on_busy)
    app.add_exception_handler(ClientDisconnect, on_gone)
    app.add_exception_handler(Exception, on_fault)
