"""What stands before and behind every page: headers, no posts from other sites, a log line."""

import logging
import secrets
import time
from urllib.parse import urlsplit

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import Request
from starlette.responses import HTMLResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from casewright.web.frame.errors import trouble

log = logging.getLogger("casewright.web")

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'; "
    "object-src 'none'"
)
ALWAYS = {
    "content-security-policy": POLICY,
    "x-content-type-options": "nosniff",
    "x-frame-options": "DENY",
    # Not no-referrer, not even for secret links: it makes the Origin of their own forms null, and then a form
    # could not be told from another site's. This one sends no word of a page to any other site either.
    "referrer-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), microphone=(), geolocation=(), payment=(), usb=()",
}
UNSAFE = {"POST", "PUT", "PATCH", "DELETE"}
LAST_WORDS = (
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>This did not work</title>'
    "<h1>This did not work</h1><p>Something in the program went wrong. Nothing was half saved. Go back.</p>"
)
"""For when not even the page for a fault can be made."""
SECRET_PATHS = ("/quote/", "/invitation/", "/password/")
"""Paths whose last part is a secret: it never reaches a log."""
LETTERS = "/quote/"
"""Where the pages of customers' links are."""


class Guards:
    """Middleware around the whole application."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Guards one request."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        bare = scope["method"] == "HEAD"
        if bare:  # a page that can be got can be asked for its head
            scope = {**scope, "method": "GET"}
        scope.setdefault("state", {})["reference"] = secrets.token_hex(4)
        if host_of(scope) is None:  # nothing that builds an address from it may meet it
            headers = [(name, value) for name, value in scope["headers"] if name != b"host"]
            scope = {**scope, "headers": headers}
            app: ASGIApp = _not_understood
        else:
            app = self._app_for(scope)
        started = time.perf_counter()
        status, replaced = 0, False

        async def send_with_headers(message: Message) -> None:
            nonlocal status, replaced
            if replaced:
                return
            if message["type"] == "http.response.start":
                status = message["status"]
                replaced = _is_bare_refusal(message)
                if replaced:
                    await trouble(Request(scope), status)(scope, receive, send_completed)
                    return
                _complete(MutableHeaders(scope=message), scope)
            elif bare:
                message = {**message, "body": b""}
            await send(message)

        async def send_completed(message: Message) -> None:
            if message["type"] == "http.response.start":
                _complete(MutableHeaders(scope=message), scope)
            await send(message)

        try:
            await app(scope, receive, send_with_headers)
        except Exception:
            if status == 0:  # otherwise the page for a fault has been sent and the trace logged
                log.exception("fault", extra={"reference": scope["state"]["reference"]})
                await HTMLResponse(LAST_WORDS, 500)(scope, receive, send_with_headers)
        finally:
            taken = (time.perf_counter() - started) * 1000
            log.info(
                "request",
                extra={
                    "method": scope["method"],
                    "path": loggable(scope["path"]),
                    "status": status,
                    "ms": round(taken, 1),
                    "reference": scope["state"]["reference"],
                },
            )

    def _app_for(self, scope: Scope) -> ASGIApp:
        if comes_from_elsewhere(scope["method"], Headers(scope=scope), scope["path"]):
            return _refuse
        return _not_read if is_unreadable(scope) else self.app


async def _not_understood(scope: Scope, receive: Receive, send: Send) -> None:
    await trouble(Request(scope), 400)(scope, receive, send)


async def _not_read(scope: Scope, receive: Receive, send: Send) -> None:
    await trouble(Request(scope), 404)(scope, receive, send)


def is_unreadable(scope: Scope) -> bool:
    """Whether an address holds signs that no page's address has, and that a database would refuse."""
    return (
        any(ord(sign) < 32 or ord(sign) == 127 for sign in scope["path"]) or b"%00" in scope["query_string"]
    )


def _is_bare_refusal(start: Message) -> bool:
    """Whether the framework refuses a body for its size before any page of ours is asked."""
    kind = Headers(raw=start["headers"]).get("content-type", "")
    return start["status"] == 413 and kind.startswith("text/plain")


async def _refuse(scope: Scope, receive: Receive, send: Send) -> None:
    page = trouble(
        Request(scope),
        403,
        "This was sent from a page that is not part of this service, so it was not taken. Open the form here "
        "and send it again.",
    )
    await page(scope, receive, send)


def _is_trustworthy(scope: Scope) -> bool:
    """Whether browsers heed an opener policy here; on a shop's own network they only complain of it."""
    return scope.get("scheme") == "https" or host_of(scope) in {"localhost", "127.0.0.1", "::1"}


def host_of(scope: Scope) -> str | None:
    """The host that a request names, in small letters; empty for none, None for what cannot be one."""
    try:
        return urlsplit(f"//{Headers(scope=scope).get('host', '')}").hostname or ""
    except ValueError:  # such as a bracket that is never closed
        return None


def _complete(headers: MutableHeaders, scope: Scope) -> None:
    for name, value in ALWAYS.items():
        headers.setdefault(name, value)
    headers.setdefault("cache-control", "no-store")
    if _is_trustworthy(scope):
        headers.setdefault("cross-origin-opener-policy", "same-origin")
    if scope.get("scheme") == "https":
        headers.setdefault("strict-transport-security", "max-age=31536000")
    if scope["path"].startswith(SECRET_PATHS):
        headers["x-robots-tag"] = "noindex, nofollow"


def loggable(path: str) -> str:
    """A path without the secret that a link carries."""
    for secret in SECRET_PATHS:
        if path.startswith(secret):
            return f"{secret}…"
    return path[:200]


def comes_from_elsewhere(method: str, headers: Headers, path: str = "/") -> bool:
    """Whether a request that would change something was sent by a page of another site.

    Browsers say where a post comes from in Sec-Fetch-Site, and on plain http in Origin. A request that says
    nothing is refused, too. From a page that sends no referrer, such as a customer's quote, Origin is `null`:
    that is let through there, where no cookie speaks for anybody and only the secret address opens anything.
    """
    if method not in UNSAFE:
        return False
    site = headers.get("sec-fetch-site")
    if site is not None:
        return site not in {"same-origin", "none"}
    origin = headers.get("origin")
    if origin == "null" and path.startswith(LETTERS):
        return False
    return origin is None or _netloc(origin) != headers.get("host", "").lower()


def _netloc(address: str) -> str | None:
    try:
        return urlsplit(address).netloc.lower()
    except ValueError:
        return None
