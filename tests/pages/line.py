"""The line between a visitor and the application: a request goes over at once, its answer comes back whole.

Starlette's own, which can stream, goes to and fro between two threads eight times for each.
"""

import atexit
from collections.abc import Awaitable, Callable, MutableMapping
from contextlib import ExitStack, suppress
from functools import cache
from typing import Any
from urllib.parse import unquote

import anyio
import httpx2
from anyio.from_thread import BlockingPortal, start_blocking_portal

Message = MutableMapping[str, Any]
Application = Callable[[Message, Callable[[], Awaitable[Message]], Callable[[Message], Awaitable[None]]], Any]
PORTS = {"http": 80, "https": 443}


@cache
def running_loop() -> BlockingPortal:
    """The event loop that serves all visitors of this process: a new one takes as long as a small page."""
    running = ExitStack()
    atexit.register(running.close)
    return running.enter_context(start_blocking_portal())


class Line(httpx2.BaseTransport):
    """Brings requests from one address to the application."""

    def __init__(self, app: Application, address: str) -> None:
        self.app, self.address = app, address

    def handle_request(self, request: httpx2.Request) -> httpx2.Response:
        """The answer, whole; where the application fails without one, an empty 500."""
        path, _, query = request.url.raw_path.partition(b"?")
        scope = {
            "type": "http",
            "http_version": "1.1",
            "method": request.method,
            "path": unquote(request.url.path),
            "raw_path": path,
            "root_path": "",
            "scheme": request.url.scheme,
            "query_string": query,
            "headers": [(name.lower(), value) for name, value in request.headers.raw],
            "client": (self.address, 50_000),
            "server": (request.url.host, request.url.port or PORTS[request.url.scheme]),
            "state": {},
        }
        status, headers, content = running_loop().call(answered, self.app, scope, request.read())
        body = b"" if request.method == "HEAD" else content
        return httpx2.Response(status, headers=headers, stream=httpx2.ByteStream(body), request=request)


async def answered(
    app: Application, scope: Message, body: bytes
) -> tuple[int, list[tuple[bytes, bytes]], bytes]:
    """What the application answers to a request: status, headers and content."""
    came, ended = [{"type": "http.request", "body": body}], anyio.Event()
    head: list[Message] = []
    content: list[bytes] = []

    async def receive() -> Message:
        if came:
            return came.pop()
        await ended.wait()
        return {"type": "http.disconnect"}

    async def send(message: Message) -> None:
        if message["type"] == "http.response.start":
            head.append(message)
        else:
            content.append(message.get("body", b""))
            if not message.get("more_body", False):
                ended.set()

    with suppress(Exception):  # the answer is what is looked at; why there is none stands in the log
        await app(scope, receive, send)
    first = head[0] if head else {"status": 500, "headers": []}
    return first["status"], list(first["headers"]), b"".join(content)
