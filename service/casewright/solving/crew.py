"""Who works on layouts: one process beside the pages takes them from the queue, one after the other.

The queue is the table itself, so any number of services on one database share it, and what was under way when
one of them ended is begun anew by another.
"""

import json
import os
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import datetime
from queue import Empty, SimpleQueue
from threading import Event, Lock, Thread
from typing import Any

from sqlalchemy import Engine

from casewright.records.layouts import CutLayout
from casewright.records.sessions import across_shops, writing
from casewright.shop.layouts import claim_next, end_layout, note_progress

COMMAND = (sys.executable, "-m", "casewright.solving.worker")
BEAT = 0.3
"""So often progress is kept, and it is asked whether somebody wants a stop [s]."""
GRACE = 300.0
"""A layout that takes so much longer than it was given is ended; the first one waits for the compiler [s]."""
IDLE = 300.0
"""The process ends when nobody asked for anything for so long [s]."""
FAILED = (
    "The layout could not be worked out: its process ended by itself, most likely for want of memory. "
    "Lay out fewer parts at a time."
)
TOO_LONG = "The layout took much longer than it was given and was ended. Lay out fewer parts at a time."


@dataclass
class Crew:
    """The worker of one service, started when somebody first asks for a layout.

    Attributes:
        engine: the database
        clock: gives the present moment
        command: what starts the process
    """

    engine: Engine
    clock: Callable[[], datetime]
    command: tuple[str, ...] = COMMAND
    _lock: Lock = field(default_factory=Lock)
    _asked: Event = field(default_factory=Event)
    _thread: Thread | None = None
    _worker: "Worker | None" = None
    _ends: bool = False

    def wake(self) -> None:
        """Says that a layout waits; returns at once."""
        with self._lock:
            self._asked.set()
            if not self._ends and (self._thread is None or not self._thread.is_alive()):
                self._thread = Thread(target=self._work, name="layouts", daemon=True)
                self._thread.start()

    def end(self) -> None:
        """Ends the process and waits for it."""
        self._ends = True
        self._asked.set()
        if self._worker is not None:
            self._worker.kill()
        if self._thread is not None:
            self._thread.join(timeout=5)

    def _work(self) -> None:
        """Takes layouts until none came for a while."""
        while not self._ends:
            self._asked.clear()
            with across_shops(self.engine, write=True) as db:
                layout = claim_next(db, self.clock())
            if layout is not None:
                self._lay_out(layout)
            elif not self._asked.wait(IDLE):
                break
        if self._worker is not None:
            self._worker.kill()
            self._worker = None

    def _lay_out(self, layout: CutLayout) -> None:
        """One layout, from its beginning to its end in the books."""
        if self._worker is None or not self._worker.is_alive:
            self._worker = Worker(self.command)
        worker, shop_id = self._worker, layout.shop_id
        worker.send({"id": layout.id, "file": layout.asked, "seconds": layout.seconds, "seed": layout.seed})
        progress: dict[str, Any] = {}
        waited, is_stopping = 0.0, False
        while not self._ends:
            said = worker.hear(BEAT)
            if said is not None and said.get("id") != layout.id:
                continue
            if said is not None and "progress" in said:
                progress = said["progress"]
                continue
            if said is not None:
                self._end(layout, said)
                return
            waited += BEAT
            if not worker.is_alive:
                worker.kill()
                self._end(layout, {"refused": FAILED})
                return
            if waited > layout.seconds + GRACE:
                worker.kill()
                self._end(layout, {"refused": TOO_LONG})
                return
            with writing(self.engine, shop_id) as db:
                wants_stop = note_progress(db, layout.id, progress, self.clock())
            if wants_stop and not is_stopping:
                worker.send({"stop": layout.id})
                is_stopping = True

    def _end(self, layout: CutLayout, said: dict[str, Any]) -> None:
        with writing(self.engine, layout.shop_id) as db:
            end_layout(db, layout.id, self.clock(), answer=said.get("done"), message=said.get("refused", ""))


class Worker:
    """The process, with what it says line by line."""

    def __init__(self, command: tuple[str, ...]) -> None:
        self._process = subprocess.Popen(  # noqa: S603 - our own module
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            encoding="utf-8",
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},  # it finds what this process found
        )
        if self._process.stdin is None or self._process.stdout is None:
            raise RuntimeError("the process has neither input nor output")
        self._input, self._output = self._process.stdin, self._process.stdout
        self._said: SimpleQueue[dict[str, Any]] = SimpleQueue()
        self._ear = Thread(target=self._listen, daemon=True)
        self._ear.start()

    @property
    def is_alive(self) -> bool:
        """Does it still work?"""
        return self._process.poll() is None

    def send(self, what: dict[str, Any]) -> None:
        """Hands it a line; one that has ended takes nothing, which its silence then shows."""
        with suppress(OSError):
            self._input.write(json.dumps(what) + "\n")
            self._input.flush()

    def hear(self, seconds: float) -> dict[str, Any] | None:
        """The next thing that it says, waited for so long."""
        try:
            return self._said.get(timeout=seconds)
        except Empty:
            return None

    def kill(self) -> None:
        """Ends it at once."""
        self._process.kill()
        self._process.wait()
        self._ear.join()
        with suppress(OSError):  # what was never taken in is lost with it
            self._input.close()

    def _listen(self) -> None:
        with self._output:
            for line in self._output:
                self._said.put(json.loads(line))
