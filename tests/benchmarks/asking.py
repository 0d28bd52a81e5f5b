"""Asking a running service for pages: how long it took there and here, what came, how much at once."""

import gzip
import http.client
import json
import re
import socket
import threading
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from urllib.parse import urlencode

from serving import Served

LINKED = re.compile(r'<(?:link[^>]*rel="stylesheet"[^>]*href|script[^>]*src)="([^"]+)"')
AT_ONCE = 4
MILLISECONDS = 1000


@dataclass(frozen=True)
class Asked:
    """One page as it is asked for.

    Attributes:
        name: what it is called in the table
        path: its address
        cookie: who asks; empty for a stranger
        form: what is sent; None for a page that is only looked at
        headers: further headers
    """

    name: str
    path: str
    cookie: str = ""
    form: tuple[tuple[str, str], ...] | None = None
    headers: Mapping[str, str] = field(default_factory=dict)

    @property
    def method(self) -> str:
        """How it is asked for."""
        return "GET" if self.form is None else "POST"

    @property
    def body(self) -> str:
        """The form as it is sent."""
        return urlencode(self.form or ())

    def all_headers(self, port: int) -> dict[str, str]:
        """What a browser would send along."""
        sent = {"Host": f"127.0.0.1:{port}", "Accept-Encoding": "gzip", **self.headers}
        if self.cookie:
            sent["Cookie"] = f"casewright={self.cookie}"
        if self.form is not None:
            sent |= {
                "Origin": f"http://127.0.0.1:{port}",
                "Content-Type": "application/x-www-form-urlencoded",
                "Content-Length": str(len(self.body)),
            }
        return sent


@dataclass(frozen=True)
class Answer:
    """What came.

    Attributes:
        status: the status
        packed: the body as it came over the wire
        here: the time that it took, as it was felt here [ms]
    """

    status: int
    packed: bytes
    here: float

    @property
    def text(self) -> str:
        """The page."""
        plain = gzip.decompress(self.packed) if self.packed[:2] == b"\x1f\x8b" else self.packed
        return plain.decode()


def ask(connection: http.client.HTTPConnection, asked: Asked) -> Answer:
    """Asks once."""
    start = time.perf_counter()
    connection.request(asked.method, asked.path, asked.body or None, asked.all_headers(connection.port))
    answer = connection.getresponse()
    packed = answer.read()
    return Answer(answer.status, packed, (time.perf_counter() - start) * MILLISECONDS)


def ask_often(served: Served, asked: Asked, times: int, warm_up: int = 3) -> tuple[list[Answer], list[float]]:
    """Asks one after another.

    Returns:
        The answers, and the times that the server's own log gives [ms].
    """
    connection = http.client.HTTPConnection("127.0.0.1", served.port, timeout=30)
    for _ in range(warm_up):
        ask(connection, asked)
    time.sleep(0.05)
    before = len(logged(served))
    answers = [ask(connection, asked) for _ in range(times)]
    connection.close()
    return answers, _logged_since(served, before, times)


def logged(served: Served) -> list[float]:
    """The times of all requests in the server's log [ms]."""
    lines = [line for line in list(served.said) if line.startswith("{")]
    events = [json.loads(line) for line in lines]
    return [event["ms"] for event in events if event["event"] == "request"]


def _logged_since(served: Served, before: int, times: int) -> list[float]:
    ends = time.monotonic() + 5
    while time.monotonic() < ends:
        found = logged(served)[before:]
        if len(found) >= times:
            return found
        time.sleep(0.02)
    raise RuntimeError(f"The log has {len(found)} of {times} requests:\n{served.last_words()}")


def weight(served: Served, asked: Asked) -> int:
    """What a page weighs over the wire, with its style sheets and scripts [bytes]."""
    connection = http.client.HTTPConnection("127.0.0.1", served.port, timeout=30)
    page = ask(connection, asked)
    linked = {ask(connection, Asked(path, path)) for path in LINKED.findall(page.text)}
    connection.close()
    return len(page.packed) + sum(len(each.packed) for each in linked)


def requests_per_second(port: int, asked: Asked, seconds: float) -> float:
    """How many answers come when a few ask at once, each as fast as it is answered [1 per s]."""
    stop = time.perf_counter() + seconds
    counts = [0] * AT_ONCE
    askers = [
        threading.Thread(target=_ask_until, args=(port, asked, stop, counts, n)) for n in range(AT_ONCE)
    ]
    start = time.perf_counter()
    for each in askers:
        each.start()
    for each in askers:
        each.join()
    return sum(counts) / (time.perf_counter() - start)


def _ask_until(port: int, asked: Asked, stop: float, counts: list[int], place: int) -> None:
    """Over a bare socket: the asker shares the machine with the server and must not be the slow one."""
    head = "".join(f"{name}: {value}\r\n" for name, value in asked.all_headers(port).items())
    sent = f"{asked.method} {asked.path} HTTP/1.1\r\n{head}\r\n{asked.body}".encode()
    with socket.create_connection(("127.0.0.1", port), timeout=30) as line:
        while time.perf_counter() < stop:
            line.sendall(sent)
            _read_answer(line)
            counts[place] += 1


def _read_answer(line: socket.socket) -> None:
    held = b""
    while b"\r\n\r\n" not in held:
        held += line.recv(65536)
    head, _, body = held.partition(b"\r\n\r\n")
    if not head.startswith(b"HTTP/1.1 200"):
        raise RuntimeError(head.decode(errors="replace").splitlines()[0])
    length = next(
        int(value)
        for name, _, value in (each.partition(b":") for each in head.splitlines())
        if name.lower() == b"content-length"
    )
    missing = length - len(body)
    while missing > 0:
        missing -= len(line.recv(65536))
