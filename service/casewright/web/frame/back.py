"""The way back from a page that says why there is no other."""

from urllib.parse import parse_qsl, urlencode, urlsplit

from starlette.requests import Request

from casewright.web.frame.pages import is_local
from casewright.web.frame.rooms import methods_at


def way_back(request: Request) -> str:
    """The page of this site that somebody came from; empty where it is not known or is this one.

    Whoever came from an address that only takes forms is led to the page above it, and no page says again
    what was done before it was left.
    """
    try:
        came = urlsplit(request.headers.get("referer", ""))
    except ValueError:  # such as a bracket that is never closed
        return ""
    if not came.netloc or came.netloc.lower() != request.headers.get("host", "").lower():
        return ""
    path = _page_at(request, came.path) if is_local(came.path) else ""
    if not path or (request.method == "GET" and path == request.url.path):
        return ""
    asked = [(name, value) for name, value in parse_qsl(came.query, keep_blank_values=True) if name != "said"]
    address = f"{path}?{urlencode(asked)}" if asked and path == came.path else path
    return address if is_local(address) else path


def _page_at(request: Request, path: str) -> str:
    """The path itself where it is a page's, else that of the page above it; empty where there is none."""
    if "app" not in request.scope:  # refused before any page was asked
        return path
    routes = request.app.state.routes
    while path and "GET" not in methods_at(routes, path):
        path = path.rpartition("/")[0]
    return path
