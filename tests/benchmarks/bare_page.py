"""The same stack with nothing of ours on it: one query of fifty rows, one table, no guards, no sign-in.

    python tests/benchmarks/bare_page.py DATABASE_URL SHOP --port PORT

It is what the pages of the service are laid beside: a ratio to it says more than a time on some machine.
"""

import sys
from collections.abc import Iterator
from typing import Annotated

import uvicorn
from fastapi import Depends, FastAPI
from jinja2 import Environment
from sqlalchemy import select
from sqlalchemy.orm import Session
from starlette.middleware.gzip import GZipMiddleware
from starlette.responses import HTMLResponse
from starlette.types import ASGIApp

from casewright.records.engine import open_engine
from casewright.records.jobs import Customer, Job

TABLE = """<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bare</title></head><body>
<h1>Bare</h1><table><thead><tr><th>Job</th><th>Customer</th><th>State</th><th>Due</th></tr></thead><tbody>
{% for job, customer in rows %}<tr><th><a href="/jobs/{{ job.id }}">{{ job.number }} {{ job.name }}</a></th>
<td>{{ customer.name }}</td><td>{{ job.state }}</td><td>{{ job.due_on }}</td></tr>
{% endfor %}</tbody></table></body></html>"""
ROWS = 50


def bare_app(database_url: str, shop_id: str) -> ASGIApp:
    """An application with the one page, as it is written first: a session a request, rows as objects."""
    engine = open_engine(database_url).execution_options(read_only=True)
    template = Environment(autoescape=True).from_string(TABLE)
    app = FastAPI(openapi_url=None)

    def session() -> Iterator[Session]:
        with Session(engine) as db:
            yield db

    @app.get("/healthz")
    @app.get("/bare")
    def bare(db: Annotated[Session, Depends(session)]) -> HTMLResponse:
        rows = db.execute(
            select(Job, Customer)
            .join(Customer, (Customer.shop_id == Job.shop_id) & (Customer.id == Job.customer_id))
            .where(Job.shop_id == shop_id)
            .order_by(Job.number.desc())
            .limit(ROWS)
        ).all()
        return HTMLResponse(template.render(rows=rows))

    return GZipMiddleware(app, minimum_size=1000, compresslevel=5)


if __name__ == "__main__":
    url, shop, _, port = sys.argv[1:]
    uvicorn.run(bare_app(url, shop), port=int(port), log_level="error", access_log=False)
