"""Connections that keep the service waiting: who opens one and says nothing, or too slowly, is hung up on."""

import asyncio
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

LOOKS_EVERY = 10.0
"""How often a connection is looked at [s]."""
WAITS = 60.0
"""As long may one be waited for: for a request, or for the rest of one [s]."""


class Connection(H11Protocol):
    """A connection of the server's own kind that is not waited for without end."""

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Begins to look at it now and then."""
        super().connection_made(transport)
        self._waited = 0.0
        self._last: Any = None
        self.loop.call_later(LOOKS_EVERY, self._look)

    def _look(self) -> None:
        if self.transport.is_closing():
            return
        is_other = self.cycle is not self._last
        self._last = self.cycle
        self._waited = 0.0 if is_other or self._is_at_work() else self._waited + LOOKS_EVERY
        if self._waited >= WAITS:
            self.transport.close()
            return
        self.loop.call_later(LOOKS_EVERY, self._look)

    def _is_at_work(self) -> bool:
        """Whether a whole request has come in and is being answered."""
        return self.cycle is not None and not self.cycle.response_complete and not self.cycle.more_body
