"""The cookies: who is signed in, and which device an account has been signed in on before."""

import hmac
import secrets
from datetime import datetime, timedelta
from hashlib import sha256

from starlette.requests import Request
from starlette.responses import Response

from casewright.records.people import Person
from casewright.records.sessions import Fenced
from casewright.shop.entering import LONGEST, fold_email, keep_signed_in, sign_out, who_is
from casewright.web.frame.typed import clean
from casewright.web.frame.visits import address_of, cookie_name

KNOWN_FOR = timedelta(days=365)


def let_in(request: Request, db: Fenced, person: Person, now: datetime, response: Response) -> Response:
    """Signs a person in on this device: always with a fresh secret, whatever the browser brought along."""
    held = who_is(db, request.cookies.get(cookie_name(request), ""), now)
    if held is not None:
        sign_out(db, held[1].id, held[0].id)
    device = clean(request.headers.get("user-agent", ""))
    secret = keep_signed_in(db, person, now, device=device, address=address_of(request))
    _set(request, response, cookie_name(request), secret, LONGEST)
    _set(request, response, _known_name(request), _known_mark(request, person.email), KNOWN_FOR)
    return response


def let_out(request: Request, response: Response) -> Response:
    """Takes the sign-in from this device; the browser is asked to forget what it kept of the pages."""
    response.delete_cookie(
        cookie_name(request), secure=_is_secure(request), httponly=True, samesite="lax"
    )  # without Secure a browser would not touch a __Host- cookie
    response.headers["clear-site-data"] = '"cache", "storage"'
    return response


def known_device(request: Request, email: str) -> str:
    """The mark of this device if the account has been signed in on it before; empty otherwise."""
    held = request.cookies.get(_known_name(request), "")
    nonce, _, proof = held.partition(".")
    if not (nonce.isascii() and proof.isascii()):
        return ""
    return nonce if hmac.compare_digest(proof, _proof(request, nonce, email)) else ""


def _known_name(request: Request) -> str:
    return f"{cookie_name(request)}-known"


def _known_mark(request: Request, email: str) -> str:
    nonce = known_device(request, email) or secrets.token_hex(8)
    return f"{nonce}.{_proof(request, nonce, email)}"


def _proof(request: Request, nonce: str, email: str) -> str:
    key: bytes = request.app.state.secret
    return hmac.new(key, f"known device\n{nonce}\n{fold_email(email)}".encode(), sha256).hexdigest()


def _set(request: Request, response: Response, name: str, value: str, lasts: timedelta) -> None:
    response.set_cookie(
        name,
        value,
        max_age=int(lasts.total_seconds()),
        httponly=True,
        samesite="lax",
        secure=_is_secure(request),
    )


def _is_secure(request: Request) -> bool:
    return request.url.scheme == "https"
