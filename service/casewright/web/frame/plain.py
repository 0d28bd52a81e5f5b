"""What needs no shop: static files, health and readiness, the first address."""

from shutil import disk_usage

from fastapi import APIRouter, Request
from sqlalchemy.exc import DatabaseError
from sqlalchemy.exc import TimeoutError as PoolTimeout
from starlette.responses import JSONResponse, PlainTextResponse, Response

from casewright.records.engine import newest_revision, present_revision
from casewright.records.people import Role
from casewright.web.frame.assets import by_address
from casewright.web.frame.errors import trouble
from casewright.web.frame.pages import see
from casewright.web.frame.visits import Everybody, engine_of

router = APIRouter()
YEAR = "public, max-age=31536000, immutable"
LEAST_ROOM = 50_000_000
"""Bytes that the disk should have free."""
NO_ROOM = "Less than 50 MB are free where the data are: make room, or soon nothing can be saved."


@router.api_route("/static/{path:path}", methods=["GET", "HEAD"])
def show_static(request: Request, path: str) -> Response:
    """A static file, by the address that carries its content's hash."""
    found = by_address().get(f"/static/{path}")
    if found is None:
        return trouble(request, 404)
    headers = {"cache-control": YEAR, "vary": "accept-encoding"}
    if "gzip" in request.headers.get("accept-encoding", "") and len(found.packed) < len(found.body):
        return Response(
            found.packed,
            media_type=None,
            headers=headers | {"content-encoding": "gzip", "content-type": found.kind},
        )
    return Response(found.body, headers=headers | {"content-type": found.kind})


@router.api_route("/healthz", methods=["GET", "HEAD"])
def show_health() -> Response:
    """Whether the process works: it answers. To start it again would mend nothing else."""
    return JSONResponse({"status": "ok"})


@router.api_route("/readyz", methods=["GET", "HEAD"])
def show_readiness(request: Request) -> Response:
    """Whether the service can do its work: its database answers, in the form that it needs.

    A disk that is nearly full is a warning only: all is read as before, and to be taken out of service for it
    would help nobody.
    """
    engine = engine_of(request)
    try:
        right_form = present_revision(engine) == newest_revision()
    except (DatabaseError, PoolTimeout):
        return JSONResponse({"status": "ill", "database": False}, 503)
    folder = engine.url.database if engine.dialect.name == "sqlite" else None
    room = disk_usage(folder.rpartition("/")[0] or "/").free > LEAST_ROOM if folder else True
    status = "ill" if not right_form else "ok" if room else "degraded"
    said: dict[str, object] = {"status": status, "database": right_form, "disk": room}
    if not room:
        said["warning"] = NO_ROOM
    return JSONResponse(said, 200 if right_form else 503)


@router.api_route("/robots.txt", methods=["GET", "HEAD"])
def show_robots() -> Response:
    """Nothing here is for search engines."""
    return PlainTextResponse("User-agent: *\nDisallow: /\n")


@router.get("/")
def show_start(visit: Everybody) -> Response:
    """Where a person's day begins."""
    return see("/board" if visit.person.role is Role.BENCH else "/jobs")


OPEN = {"/static/{path:path}", "/healthz", "/readyz", "/robots.txt"}
"""Paths that need no role: they show nothing of any shop."""
