"""The service as a process of its own, as a shop starts it: what it prints is kept, and it must stop."""

import http.client
import os
import re
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from threading import Thread

SERVICE = Path(__file__).resolve().parents[1] / "service"
TO_START = 180.0  # seconds; a start takes about one, and very long where the machine does much else
TO_STOP = 30.0  # it lets requests under way end, for ten
STOPPED_AS_TOLD = (0, -signal.SIGTERM)


@dataclass
class Served:
    """A running service: where it answers, in which folder it works, what it has printed so far."""

    port: int
    folder: Path
    process: subprocess.Popen[str]
    said: list[str] = field(default_factory=list)
    reader: Thread | None = None

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    @property
    def lan_url(self) -> str:
        """The same service by a name, as on a shop's own network: browsers trust plain http less there."""
        return f"http://shop.test:{self.port}"

    def printed(self, pattern: str) -> str:
        """What the pattern's group matches in the first printed line that has it, waited for if need be."""
        ends = time.monotonic() + TO_START
        while time.monotonic() < ends:
            found = next((match for line in self.said if (match := re.search(pattern, line))), None)
            if found:
                return found.group(1)
            time.sleep(0.05)
        raise RuntimeError(f"No line with {pattern} was printed:\n{self.last_words()}")

    def last_words(self) -> str:
        """The last lines that it printed, for a failed test's message; one that has ended is heard out."""
        if self.reader and self.process.poll() is not None:
            self.reader.join(TO_STOP)
        return "\n".join(self.said[-30:])

    def is_healthy(self) -> bool:
        """Whether /healthz answers that all is well."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=5)
        try:
            connection.request("GET", "/healthz")
            return connection.getresponse().status == 200
        except OSError:
            return False
        finally:
            connection.close()


def from_checkout(data: Path) -> AbstractContextManager[Served]:
    """The service of this checkout, for a shop whose books lie in this folder."""
    command = [sys.executable, "-P", "-m", "casewright", "serve", "--data", str(data)]
    return serve(command, data, PYTHONPATH=str(SERVICE))


@contextmanager
def serve(command: list[str], folder: Path, **variables: str) -> Iterator[Served]:
    """The running service of a command, in a folder and on a free port; stopped as a system stops it."""
    outside = {
        name: text for name, text in os.environ.items() if not name.startswith(("CASEWRIGHT_", "PYTHON"))
    }
    own = outside | {"PYTHONUNBUFFERED": "1"} | variables
    port = free_port()
    parts = [*command, "--port", str(port)]
    with subprocess.Popen(
        parts, env=own, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as process:
        served = Served(port, folder, process)
        served.reader = Thread(target=keep_lines, args=(served,))
        served.reader.start()
        try:
            wait_until_healthy(served)
            yield served
        finally:
            stop(served)
            served.reader.join()


def free_port() -> int:
    """A port that nothing listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
    return port


def keep_lines(served: Served) -> None:
    """Reads what the service prints until it ends, so that it never waits for a reader."""
    for line in served.process.stdout or ():
        served.said.append(line.rstrip("\n"))


def wait_until_healthy(served: Served) -> None:
    """Returns when the service answers; one that ends instead shows what it printed."""
    ends = time.monotonic() + TO_START
    while not served.is_healthy():
        if served.process.poll() is not None or time.monotonic() > ends:
            raise RuntimeError(f"The service did not start:\n{served.last_words()}")
        time.sleep(0.05)


def stop(served: Served) -> None:
    """Ends the service; one that does not end, or not well, is a fault of its own."""
    if served.process.poll() is None:
        served.process.terminate()
    try:
        status = served.process.wait(TO_STOP)
    except subprocess.TimeoutExpired:
        served.process.kill()
        raise RuntimeError(f"The service did not stop when told:\n{served.last_words()}") from None
    if status not in STOPPED_AS_TOLD:
        raise RuntimeError(f"The service ended with status {status}:\n{served.last_words()}")
