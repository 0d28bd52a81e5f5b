"""What the log keeps of the door: who came in or was refused, by their ids and never by name."""

import logging

from starlette.requests import Request

log = logging.getLogger("casewright.door")


def note_event(
    request: Request, act: str, result: str, *, shop: str = "", person: str = "", role: str = ""
) -> None:
    """Writes one line into the log.

    Args:
        request: the request
        act: what was tried, such as sign-in
        result: how it ended: ok, failed, refused, too many
        shop: the shop's id
        person: the person's id
        role: their role, or the one that was given
    """
    said = {"act": act, "result": result, "shop": shop, "person": person, "role": role}
    reference = getattr(request.state, "reference", "")
    log.info("door", extra={name: text for name, text in said.items() if text} | {"reference": reference})
