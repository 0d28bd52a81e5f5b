"""Puts the service together: database, pages, guards."""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

from fastapi import FastAPI
from sqlalchemy import Engine
from starlette.middleware.gzip import GZipMiddleware
from starlette.types import ASGIApp

from casewright import __version__
from casewright.solving.crew import Crew
from casewright.web.frame.errors import add_handlers
from casewright.web.frame.guards import Guards
from casewright.web.frame.turns import Turns
from casewright.web.quotes.customer_link import NoQuote, on_no_quote
from casewright.web.routes import ROUTERS

LARGEST_BODY = 2_000_000


def _now() -> datetime:
    return datetime.now(UTC)


def create_app(
    engine: Engine,
    *,
    secret: bytes,
    address: str = "",
    data: Path | None = None,
    clock: Callable[[], datetime] = _now,
) -> FastAPI:
    """The application.

    Args:
        engine: its database, in the present form
        secret: the key under which links are made
        address: how people reach it from outside; empty: as they asked for it
        data: the folder with the note of the last backup; None where there is none
        clock: gives the present moment

    Returns:
        An application without guards; `guarded` puts them around it.
    """
    app = FastAPI(
        title="Casewright",
        version=__version__,
        openapi_url=None,
        docs_url=None,
        redoc_url=None,
        redirect_slashes=False,  # it would name the host as the caller wrote it; errors.py does it without
        max_body_size=LARGEST_BODY,
    )
    app.state.engine = engine
    app.state.secret = secret
    app.state.address = address
    app.state.data = data
    app.state.clock = clock
    app.state.turns = Turns()
    app.state.crew = Crew(engine, clock)
    add_handlers(app)
    app.add_exception_handler(NoQuote, on_no_quote)
    app.state.routes = tuple(route for router in ROUTERS for route in router.routes)
    for router in ROUTERS:
        app.include_router(router)
    return app


def guarded(app: FastAPI) -> ASGIApp:
    """The application with what stands before and behind every page."""
    return Guards(GZipMiddleware(app, minimum_size=1000, compresslevel=5))
