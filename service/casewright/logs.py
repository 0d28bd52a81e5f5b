"""The log: one line of JSON an event, on standard error. No personal data goes into it."""

import json
import logging
import sys
import traceback
from datetime import UTC, datetime
from typing import Any

OWN = ("method", "path", "status", "ms", "reference", "error", "act", "role", "result", "shop", "person")
"""What an event may carry besides its sentence."""


class JsonLines(logging.Formatter):
    """Formats a record as one line of JSON, so that no name can forge a second line."""

    def format(self, record: logging.LogRecord) -> str:
        """The line."""
        line: dict[str, Any] = {
            "at": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "event": record.getMessage(),
        }
        line |= {name: getattr(record, name) for name in OWN if hasattr(record, name)}
        if record.exc_info and record.exc_info[0]:
            # The message of an exception may hold what somebody typed; its place in the code does not.
            line["error"] = record.exc_info[0].__name__
            line["where"] = [
                f"{step.filename}:{step.lineno} {step.name}"
                for step in traceback.extract_tb(record.exc_info[2])[-12:]
            ]
        return json.dumps(line, ensure_ascii=True)


def set_up_logs(where: str) -> None:
    """Sends the log of this program and of its server where the settings say."""
    root = logging.getLogger()
    root.handlers.clear()
    root.setLevel(logging.WARNING)
    if where == "none":
        root.addHandler(logging.NullHandler())
        return
    handler = logging.StreamHandler(sys.stderr)
    handler.setFormatter(JsonLines())
    root.addHandler(handler)
    logging.getLogger("casewright").setLevel(logging.INFO)
