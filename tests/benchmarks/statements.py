"""How many statements each page sends to the database, counted in this process."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from asking import Asked
from sqlalchemy import Engine, event
from starlette.testclient import TestClient

from casewright.app import create_app, guarded

NO_WORK = ("BEGIN", "PRAGMA", "COMMIT", "ROLLBACK", "SAVEPOINT", "RELEASE")


@dataclass(frozen=True)
class Counted:
    """One page, counted.

    Attributes:
        status: how it answered
        statements: how many statements it took
        text: the page
    """

    status: int
    statements: int
    text: str


def statements(engine: Engine, pages: Iterable[Asked], secret: bytes) -> dict[str, Counted]:
    """Asks for each page once and counts, page by page."""
    heard: list[str] = []

    def hear(_: Any, __: Any, statement: str, *___: Any) -> None:
        if not statement.lstrip().upper().startswith(NO_WORK):
            heard.append(statement)

    event.listen(engine, "before_cursor_execute", hear)
    app = guarded(create_app(engine, secret=secret))
    found = {}
    with TestClient(app, base_url="http://127.0.0.1:80", raise_server_exceptions=False) as browser:
        for asked in pages:
            heard.clear()
            headers = {name: text for name, text in asked.all_headers(80).items() if name != "Host"}
            headers |= {"Origin": "http://127.0.0.1"} if asked.form is not None else {}
            answer = browser.request(
                asked.method, asked.path, content=asked.body or None, headers=headers, follow_redirects=False
            )
            found[asked.name] = Counted(answer.status_code, len(heard), answer.text)
    event.remove(engine, "before_cursor_execute", hear)
    return found
