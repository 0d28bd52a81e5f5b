"""Taking turns: a few requests work at a time and the others wait in line, holding nothing.

A request that is let in holds a session, and needs a thread for each of its steps. Without a line, more
requests than there are threads would take all of them and wait there for what those inside hold, who would
need a thread to go on: everything would stand still until they gave up.
"""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, field
from weakref import WeakKeyDictionary

INSIDE = 16
"""Requests that are at work at a time: fewer than there are threads, and than there are connections."""
WRITERS = 8
"""Of these, as many may write: readers go on while writers wait for the database."""
LOOKERS = 2
"""As many may have something worked out that is not saved: it takes the processor, and the pages share it."""
WAITING = 150
"""As many wait; whoever comes after them is told so at once."""
PATIENCE = 5.0
"""How long they wait [s]."""


class Crowded(Exception):
    """More people ask than can be served in good time."""


@dataclass(slots=True)
class _Line:
    """The line of one event loop."""

    inside: asyncio.Semaphore = field(default_factory=lambda: asyncio.Semaphore(INSIDE))
    writers: asyncio.Semaphore = field(default_factory=lambda: asyncio.Semaphore(WRITERS))
    lookers: asyncio.Semaphore = field(default_factory=lambda: asyncio.Semaphore(LOOKERS))
    waiting: int = 0


class Turns:
    """Who works now and who waits, in this process."""

    def __init__(self) -> None:
        self._lines: WeakKeyDictionary[asyncio.AbstractEventLoop, _Line] = WeakKeyDictionary()

    @asynccontextmanager
    async def take(self, *, writes: bool, looks: bool = False) -> AsyncIterator[None]:
        """Waits for a turn and holds it.

        Args:
            writes: whether the request is to change something
            looks: whether it only has something worked out from a form

        Raises:
            Crowded: too many wait already, or it took too long
        """
        line = self._lines.setdefault(asyncio.get_running_loop(), _Line())
        first = line.writers if writes else line.lookers if looks else None
        asked = (first, line.inside) if first else (line.inside,)
        held = await _stand_in(line, asked)
        try:
            yield
        finally:
            for each in held:
                each.release()


async def _stand_in(line: _Line, asked: tuple[asyncio.Semaphore, ...]) -> list[asyncio.Semaphore]:
    """Stands in line until all that is asked for is held; the room inside comes last."""
    if line.waiting >= WAITING and any(each.locked() for each in asked):
        raise Crowded
    held: list[asyncio.Semaphore] = []
    line.waiting += 1
    try:
        async with asyncio.timeout(PATIENCE):
            for each in asked:
                await each.acquire()
                held.append(each)
    except BaseException as error:
        for each in held:
            each.release()
        if isinstance(error, TimeoutError):
            raise Crowded from None
        raise
    finally:
        line.waiting -= 1
    return held
