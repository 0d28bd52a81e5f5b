"""The server's own side: silent and slow callers are hung up on, and nobody else notices them."""

import asyncio
from collections.abc import Awaitable, Callable
from contextlib import closing, suppress
from socket import socket

import pytest
import uvicorn

from casewright.web.frame import connections
from casewright.web.frame.connections import Connection

SOON = 30.0  # seconds; a caller that is hung up on is so after a fifth of one here, but on a busy machine
ASK = b"GET / HTTP/1.1\r\nHost: shop.test\r\n\r\n"
BEGUN = b"POST / HTTP/1.1\r\nHost: shop.test\r\nContent-Length: 100000\r\n\r\nname="
Speak = Callable[[asyncio.StreamWriter], Awaitable[None]]


async def page(scope, receive, send):
    """An application that reads what is sent, thinks, and answers."""
    while (await receive()).get("more_body"):
        pass
    await asyncio.sleep(0.5)
    with suppress(Exception):
        await send({"type": "http.response.start", "status": 200, "headers": [(b"content-length", b"2")]})
        await send({"type": "http.response.body", "body": b"ok"})


async def nothing(writer: asyncio.StreamWriter) -> None:
    """Says nothing at all."""


async def half_a_head(writer: asyncio.StreamWriter) -> None:
    writer.write(ASK[:20])


async def half_a_form(writer: asyncio.StreamWriter) -> None:
    writer.write(BEGUN)


async def letter_by_letter(writer: asyncio.StreamWriter) -> None:
    writer.write(BEGUN)
    with suppress(ConnectionError):
        for _ in range(100):
            writer.write(b"x")
            await writer.drain()
            await asyncio.sleep(0.05)


async def call(speak: Speak) -> bytes:
    """What a caller hears until it is hung up on."""
    listener = socket()
    listener.bind(("127.0.0.1", 0))
    config = uvicorn.Config(page, http=Connection, log_config=None, lifespan="off", access_log=False)
    server = uvicorn.Server(config)
    with closing(listener):
        running = asyncio.create_task(server.serve(sockets=[listener]))
        while not server.started:
            await asyncio.sleep(0.01)
        reader, writer = await asyncio.open_connection(*listener.getsockname())
        speaking = asyncio.create_task(speak(writer))
        heard = await asyncio.wait_for(reader.read(), SOON)
        await speaking
        writer.close()
        server.should_exit = True
        await running
    return heard


@pytest.fixture(autouse=True)
def impatient(monkeypatch):
    monkeypatch.setattr(connections, "LOOKS_EVERY", 0.05)
    monkeypatch.setattr(connections, "WAITS", 0.2)


@pytest.mark.parametrize("speak", [nothing, half_a_head, half_a_form, letter_by_letter])
def test_who_keeps_the_service_waiting_is_hung_up_on(speak):
    assert b"200 OK" not in asyncio.run(call(speak))


async def ask_twice(writer: asyncio.StreamWriter) -> None:
    writer.write(ASK)
    await asyncio.sleep(0.6)
    writer.write(ASK)


def test_who_asks_is_answered_however_long_the_answer_takes(monkeypatch):
    monkeypatch.setattr(connections, "WAITS", 0.45)  # less than the answer takes, more than lies between two

    assert asyncio.run(call(ask_twice)).count(b"200 OK") == 2
