"""From a page value to HTML: one frozen dataclass for each template, shown in the frame of the site."""

import secrets
from dataclasses import dataclass, fields, replace
from functools import cache
from typing import Any, ClassVar

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from casewright import __version__
from casewright.folders import called, templates
from casewright.web.frame.around import Frame, frame_in
from casewright.web.frame.assets import asset
from casewright.web.frame.filters import FILTERS
from casewright.web.frame.typed import Form
from casewright.web.frame.unbroken import Unbroken
from casewright.web.frame.visits import Visit

SAID = {
    "saved": "Saved.",
    "added": "Added.",
    "sent": "Sent.",
    "removed": "Taken out.",
    "undone": "Taken back.",
    "ended": "Ended.",
    "stopped": "The timer that ran before was stopped; its time is written down.",
    "password": "The new password is set. Sign in with it.",
    "out": "You are signed out.",
}
"""What a page may say after an act. The address names the sentence and never carries one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """What every page says of itself.

    Attributes:
        template: the template that shows it
        title: what the page is, first in the browser's title
    """

    template: ClassVar[str] = ""
    title: str


@cache
def environment() -> Environment:
    """The templates, strict about names they do not know."""
    made = Environment(
        loader=FileSystemLoader(templates()),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        extensions=[Unbroken],
    )
    made.filters.update(FILTERS)
    made.globals.update(asset=asset, called=called, mark=new_mark, program=__version__)
    return made


def new_mark() -> str:
    """A mark for a form, so that sending it twice makes one record."""
    return secrets.token_urlsafe(12)


def frame_of(visit: Visit | None, request: Request) -> Frame:
    """The frame for a visit; a bare one at the door."""
    said = SAID.get(request.query_params.get("said", ""), "")
    if visit is None:
        return Frame(here=request.url.path, said=said)
    return replace(frame_in(request, visit.shop, visit.person), said=said)


def show(visit: Visit, page: Page, status: int = 200) -> Response:
    """A page for somebody who is signed in; only the block that a script asked for."""
    return HTMLResponse(render(page, frame_of(visit, visit.request), visit.wants_block), status)


def show_stranger(request: Request, page: Page, status: int = 200, frame: Frame | None = None) -> Response:
    """A page for somebody at the door."""
    return HTMLResponse(render(page, frame or frame_of(None, request)), status)


def render(page: Page, frame: Frame, block: str = "") -> str:
    """The HTML of a page, or of one block of its template."""
    template = environment().get_template(page.template)
    values: dict[str, Any] = {one.name: getattr(page, one.name) for one in fields(page)}
    values |= {"page": page, "frame": frame}
    if block and block in template.blocks:
        return "".join(template.blocks[block](template.new_context(values)))
    return template.render(values)


def see(address: str, said: str = "") -> Response:
    """Sends the browser on to a page after an act; only ever to this site.

    Args:
        address: a path of this site
        said: which of the sentences in `SAID` the page should show
    """
    if not is_local(address):
        return RedirectResponse("/", 303)
    if said:
        path, hash_sign, part = address.partition("#")
        address = f"{path}{'&' if '?' in path else '?'}said={said}{hash_sign}{part}"
    return RedirectResponse(address, 303)


def is_local(address: str) -> bool:
    """Whether an address is a path of this site and nothing that a browser takes for another host."""
    return (
        len(address) <= 2000
        and address.startswith("/")
        and not address.startswith("//")
        and "\\" not in address
        and all(sign.isprintable() and sign != " " for sign in address)
    )


def drawing(svg: str) -> Markup:
    """A drawing of our own making, to stand in a page as it is. Its texts were escaped when it was drawn."""
    return Markup(svg)  # noqa: S704 - made by casewright.drawing, never typed


def form_of(**values: str) -> Form:
    """A fresh form with its first values."""
    return Form(values=values, once=new_mark())
